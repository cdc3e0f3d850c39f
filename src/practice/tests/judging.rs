//! One answer, judged: tolerance, the order in which verdicts are tried, slips of scenes and of kinds, hints.

use super::*;

#[test]
fn the_right_answers_are_right_and_say_how() {
    let marked = marked(&right());
    assert_eq!(verdicts(&marked), [Verdict::Right; 7]);
    assert_eq!((marked.points, marked.of), (7.0, 7));
    assert!(marked.steps.iter().all(|step| !step.carried && step.slip.is_empty()));
    let signs: Vec<&str> = marked.steps[2].how.iter().map(|piece| piece.is).collect();
    assert_eq!(signs, ["figure", "minus", "figure"]);
    assert_eq!((marked.steps[2].how[0].value, marked.steps[2].how[2].value), (160.0, 29.5));
    // Read off, so nothing to say.
    assert!(marked.steps[1].how.is_empty());
}

#[test]
fn half_a_percent_is_right_and_a_hair_more_is_not() {
    for (value, verdict) in [
        (160.8, Verdict::Right),
        (159.2, Verdict::Right),
        (160.801, Verdict::Wrong),
        (159.199, Verdict::Wrong),
    ] {
        assert_eq!(marked(&but(&[(0, value)])).steps[0].verdict, verdict, "{value}");
    }
}

#[test]
fn the_wider_of_two_tolerances_counts() {
    let made = alone(Units::Us, is(2.0, Kind::Length).within(0.0625, 0.5));
    assert_eq!(judged(&made, 2.0625).verdict, Verdict::Right);
    assert_eq!(judged(&made, 2.07).verdict, Verdict::Wrong);
    let made = alone(Units::Us, is(200.0, Kind::Length).within(0.0625, 0.5));
    assert_eq!(judged(&made, 201.0).verdict, Verdict::Right);
    // Near nothing a share of it is nothing; what is stated in the unit still holds.
    let made = alone(Units::Us, is(0.0, Kind::Temperature).within(0.5, 0.0));
    assert_eq!(judged(&made, -0.5).verdict, Verdict::Right);
    assert_eq!(judged(&made, -0.51).verdict, Verdict::Wrong);
}

#[test]
fn a_scenes_slip_is_named_before_one_of_its_kind() {
    // 30 is the decimal point of 300 moved, and what the scene knows better.
    let made = alone(Units::Us, is(300.0, Kind::Area).slip("depth_forgotten", figure(30.0, Kind::Area)));
    assert_eq!(named(&made, 30.0), "depth_forgotten");
    assert_eq!(named(&made, 3000.0), "decimal_moved");
    // The first of two that come to the same.
    let twice = is(300.0, Kind::Area)
        .slip("openings_forgotten", figure(280.0, Kind::Area))
        .slip("openings_twice", figure(280.0, Kind::Area));
    assert_eq!(named(&alone(Units::Us, twice), 280.5), "openings_forgotten");
}

#[test]
fn a_slip_that_comes_to_the_right_answer_is_no_slip() {
    let ask = is(300.0, Kind::Area)
        .slip("openings_forgotten", figure(301.0, Kind::Area))
        .slip("openings_twice", figure(301.6, Kind::Area));
    let made = alone(Units::Us, ask);
    assert_eq!(judged(&made, 301.0).verdict, Verdict::Right);
    // 302 is within the tolerance of 301, but 301 is right.
    assert_eq!(named(&made, 302.0), "openings_twice");
}

#[test]
fn a_slip_of_the_job_is_worked_out_by_the_core() {
    let marked = marked(&but(&[(1, 17.5), (6, 0.0)]));
    assert_eq!((marked.steps[1].verdict, marked.steps[1].slip), (Verdict::Slip, "one_of_several"));
    assert_eq!((marked.steps[6].verdict, marked.steps[6].slip), (Verdict::Slip, "air_for_surface"));
    assert!(marked.steps[1].how.is_empty());
}

#[test]
fn a_slip_says_what_was_done_instead() {
    let marked = marked(&but(&[(3, 320.0)]));
    let step = &marked.steps[3];
    assert_eq!((step.verdict, step.slip, step.points), (Verdict::Slip, "gross_for_net", 0.0));
    let figures: Vec<f64> =
        step.how.iter().filter(|piece| piece.is == "figure").map(|piece| piece.value).collect();
    assert_eq!(figures, [160.0, 2.0]);
}

#[test]
fn slips_of_lengths() {
    // 4′-6″ as 4.6 ft and 54 ft; 4′-11″ as 4.11 ft.
    let made = alone(Units::Us, is(54.0, Kind::Length));
    assert_eq!(named(&made, 4.6 * 12.0), "tenths_for_inches");
    assert_eq!(named(&made, 54.0 * 12.0), "inches_for_feet");
    assert_eq!(named(&made, 4.5), "");
    let made = alone(Units::Us, is(54.0, Kind::Length).short());
    assert_eq!((named(&made, 4.5), named(&made, 54.0 * 12.0)), ("feet_for_inches", ""));
    assert_eq!(named(&alone(Units::Us, is(59.0, Kind::Length)), 4.11 * 12.0), "tenths_for_inches");
    // Whole feet have no inches to be taken for tenths.
    assert_eq!(named(&alone(Units::Us, is(48.0, Kind::Length)), 48.0 * 1.05), "");
    // Nor has a depth: 3 in for 2½ in is something else.
    assert_eq!(named(&alone(Units::Us, is(2.5, Kind::Length).short()), 3.0), "");
    // Meters have no twelfths.
    let made = alone(Units::Metric, is(54.0, Kind::Length));
    assert_eq!((named(&made, 4.6 * 12.0), named(&made, 54.0 * 12.0)), ("", ""));
    assert_eq!(named(&made, 540.0), "decimal_moved");
}

#[test]
fn slips_of_areas_and_foam() {
    let made = alone(Units::Us, is(81.0, Kind::Area));
    assert_eq!((named(&made, 972.0), named(&made, 6.75)), ("twelve_for_144", "twelve_for_144"));
    assert_eq!(named(&alone(Units::Metric, is(81.0, Kind::Area)), 972.0), "");
    // 81 ft² at 2 in, in either order.
    let (net, deep) = (|| figure(81.0, Kind::Area), || figure(2.0, Kind::Length));
    let foam = |formula| Ask::new("one", Topic::BoardFeet, Kind::FoamVolume).by(formula);
    for formula in [net() * deep(), deep() * net()] {
        let made = alone(Units::Us, foam(formula));
        assert_eq!((named(&made, 13.5), named(&made, 1944.0)), ("cubic_feet", "one_44_for_12"));
        assert_eq!((named(&made, 81.0), named(&made, 382.28)), ("depth_forgotten", ""));
    }
    // 7.525 m² at 50.8 mm are 382.28 L. Nobody there has a figure of square feet, or divides by 12.
    let made = alone(Units::Metric, foam(net() * deep()));
    assert_eq!((named(&made, 382.28), named(&made, 7.525)), ("liters_for_board_feet", "depth_forgotten"));
    assert_eq!(named(&made, 3.189), "depth_forgotten");
    assert_eq!([81.0, 13.5, 1944.0].map(|value| named(&made, value)), [""; 3]);
    // What is no area times a depth has none of them.
    for units in [Units::Us, Units::Metric] {
        let made = alone(units, is(162.0, Kind::FoamVolume));
        assert_eq!([13.5, 1944.0, 382.28].map(|value| named(&made, value)), [""; 3]);
    }
}

#[test]
fn a_depth_is_forgotten_of_a_wrong_area_too() {
    let net = || Ask::new("net", Topic::Areas, Kind::Area).by(figure(81.0, Kind::Area));
    for (units, forgotten) in [(Units::Us, 95.0), (Units::Metric, 8.826)] {
        let mut m = making(units);
        m.ask(net());
        let feet = step("net") * figure(2.0, Kind::Length);
        m.ask(Ask::new("feet", Topic::BoardFeet, Kind::FoamVolume).by(feet));
        let marked = mark(&m.done(), &given(&[Some(95.0), Some(forgotten)]), &mut Listed);
        assert_eq!((marked.steps[1].slip, marked.steps[1].carried), ("depth_forgotten", true));
    }
}

#[test]
fn sides_added_are_as_many_feet_or_meters() {
    // 20 ft by 8 ft: 28. The same in metric, 6.096 m by 2.4384 m: 8.5344, an area of 91.864 ft².
    for (units, added) in [(Units::Us, 28.0), (Units::Metric, 91.864)] {
        let mut m = making(units);
        let sides = m.sides_added(at("length", Kind::Length) + at("height", Kind::Length));
        let by = area(at("length", Kind::Length), at("height", Kind::Length));
        m.ask(Ask::new("one", Topic::Areas, Kind::Area).by(by).slip("sides_added", sides));
        let made = m.done();
        assert_eq!((judged(&made, 160.0).verdict, named(&made, added)), (Verdict::Right, "sides_added"));
    }
}

#[test]
fn slips_of_degrees_by_the_scale_in_hand() {
    // 50 °F is 10 °C: who writes 10 into a box in °F, or 50 into one in °C.
    let made = alone(Units::Us, is(50.0, Kind::Temperature));
    assert_eq!(named(&made, 10.0), "celsius_for_fahrenheit");
    assert_eq!(named(&made, 500.0), "decimal_moved");
    let made = alone(Units::Metric, is(50.0, Kind::Temperature));
    assert_eq!(named(&made, 50.0 * 1.8 + 32.0), "celsius_for_fahrenheit");
    // 100 °C for 10 °C, 1 °C for 10 °C.
    assert_eq!((named(&made, 212.0), named(&made, 33.8)), ("decimal_moved", "decimal_moved"));
}

#[test]
fn slips_of_whole_things() {
    // 286 over 120 is 2.383: 3 kits.
    let made = alone(Units::Us, up(ratio(286.0, 120.0)));
    assert_eq!(judged(&made, 3.0).verdict, Verdict::Right);
    assert_eq!(named(&made, 2.0), "rounded_down");
    // However far it is written out.
    for part in [286.0 / 120.0, 2.4, 2.38, 2.383] {
        assert_eq!(named(&made, part), "not_whole", "{part}");
    }
    assert_eq!(named(&made, 2.5), "");
    assert_eq!(judged(&made, 4.0).verdict, Verdict::Wrong);
    // A part that is as good as whole is the whole number that it seems.
    let made = alone(Units::Us, up(ratio(2.96, 1.0)));
    assert_eq!((judged(&made, 3.0).verdict, named(&made, 2.0)), (Verdict::Right, "rounded_down"));
    // An even division leaves nothing to round.
    let made = alone(Units::Us, up(ratio(240.0, 120.0)));
    assert_eq!((judged(&made, 2.0).verdict, judged(&made, 1.0).verdict), (Verdict::Right, Verdict::Wrong));
}

#[test]
fn what_nobody_can_write_is_no_slip_to_be_told() {
    let noon = |off: f64| figure(720.0 + off, Kind::Clock);
    let clock =
        is(720.0, Kind::Clock).slip("wrong_day_half", noon(720.0)).slip("edge_forgotten", noon(-60.0));
    let told = |ask| -> Vec<&str> {
        let made = alone(Units::Us, ask);
        super::super::slips_of(&made, &mut Listed).into_iter().map(|(_, name, _)| name).collect()
    };
    assert_eq!(told(clock), ["edge_forgotten"]);
    let wait = is(60.0, Kind::Duration).slip("waits_forgotten", figure(-5.0, Kind::Duration));
    assert_eq!(told(wait), ["decimal_moved", "decimal_moved"]);
    let cold = is(40.0, Kind::Temperature).slip("spread_taken_off", figure(-5.0, Kind::Temperature));
    assert!(told(cold).contains(&"spread_taken_off"));
}

#[test]
fn hints_cost_a_quarter_each_and_no_more_than_the_step() {
    for (hints, points) in [(0, 1.0), (1, 0.75), (2, 0.5), (4, 0.0), (5, 0.0), (255, 0.0)] {
        let mut answers = right();
        answers[0].hints = hints;
        let marked = marked(&answers);
        assert_eq!((marked.steps[0].points, marked.points), (points, 6.0 + points), "{hints}");
        assert_eq!(marked.steps[0].verdict, Verdict::Right);
    }
    // What is wrong or left out gives nothing, and takes nothing from others.
    let mut answers = but(&[(0, 1.0)]);
    answers[0].hints = 3;
    answers[6] = Answer { hints: 1, ..Answer::default() };
    let marked = marked(&answers);
    assert_eq!((marked.steps[0].points, marked.steps[6].points), (0.0, 0.0));
    assert_eq!(marked.steps[1].points, 1.0);
}

#[test]
fn what_nobody_can_write_is_no_slip() {
    use super::super::slips_of;
    let half_day = || figure(720.0, Kind::Clock);
    let begins = |minutes| {
        let ask = is(minutes, Kind::Clock).slip("wrong_day_half", figure(minutes, Kind::Clock) + half_day());
        ask.slip("wrong_day_half", figure(minutes, Kind::Clock) - half_day())
    };
    // Twelve hours off 8:30 am is 8:30 pm, and not half past eight of the day before.
    for (minutes, told) in [(510.0, 1_230.0), (1_230.0, 510.0)] {
        let made = alone(Units::Us, begins(minutes));
        assert_eq!(slips_of(&made, &mut Listed), [(0, "wrong_day_half", told)]);
        assert_eq!((named(&made, told), named(&made, -210.0)), ("wrong_day_half", ""));
    }
    // Less than no foam; but a surface may be below the dew point, and air below nought.
    for (kind, told) in [(Kind::FoamVolume, false), (Kind::Duration, false), (Kind::TemperatureStep, true)] {
        let made = alone(Units::Us, is(8.0, kind).slip("loss_forgotten", figure(-3.0, kind)));
        assert_eq!(slips_of(&made, &mut Listed).iter().any(|slip| slip.2 == -3.0), told, "{kind:?}");
        assert_eq!(named(&made, -3.0) == "loss_forgotten", told);
    }
}

#[test]
fn whole_feet_are_no_tenths_where_there_is_less_than_an_inch() {
    let told = |inches| {
        let made = alone(Units::Us, is(inches, Kind::Length).within(1.0 / 16.0, 0.0));
        super::super::slips_of(&made, &mut Listed).iter().any(|slip| slip.1 == "tenths_for_inches")
    };
    assert_eq!([156.1875, 156.9375, 157.0, 160.0].map(told), [false, false, true, true]);
}

#[test]
fn no_sum_is_written_beside_a_word() {
    let ask = Ask::choice("one", Topic::Code, &["class_2", "class_3"]).by(number(0.87).class(&[1.0]));
    let made = alone(Units::Us, ask.slip("permeance_of_an_inch", number(2.6).class(&[1.0])));
    assert_eq!((judged(&made, 0.0).verdict, named(&made, 1.0)), (Verdict::Right, "permeance_of_an_inch"));
    assert!(judged(&made, 0.0).how.is_empty() && judged(&made, 1.0).how.is_empty());
    assert!(super::super::solve(&made, &mut Listed).iter().flatten().all(|one| one.how.is_empty()));
}

#[test]
fn metric_foam_is_divided_by_the_liters_of_a_board_foot() {
    let net = || figure(1_000.0, Kind::Area) - area(figure(12.0, Kind::Length), figure(24.0, Kind::Length));
    let deep = || figure(2.0, Kind::Length);
    let signs = |units, formula: Formula| {
        let made = alone(units, Ask::new("one", Topic::BoardFeet, Kind::FoamVolume).by(formula));
        let solved = super::super::solve(&made, &mut Listed).remove(0).unwrap();
        solved.how.iter().map(|piece| piece.is).filter(|is| *is != "figure").collect::<Vec<_>>().join(" ")
    };
    assert_eq!(signs(Units::Us, net() * deep()), "open minus times close times");
    assert_eq!(signs(Units::Metric, net() * deep()), "open minus times close times over liters");
    assert_eq!(
        signs(Units::Metric, figure(300.0, Kind::FoamVolume) / (deep() * (number(2.0) * net()))),
        "over open times times open minus times close over liters close"
    );
    // An area of two lengths, and a share on top of the foam, are no liters.
    assert_eq!(signs(Units::Metric, area(deep(), deep())), "times");
    let more = number(1.0) + share(figure(10.0, Kind::Percent));
    assert_eq!(signs(Units::Metric, figure(300.0, Kind::FoamVolume) * more), "times open plus close");
}
