//! What the scenes of temperatures, warming, true R and the code take for granted of the core, and what every data sheet
//! has to be like.

use super::super::made::{Making, NOW};
use super::super::{Answer, By, Core, Made, OnHost, Seed, mark, slips_of, solve};
use super::{Scene, across_framing, attic, code, crawl, forecast, readings, target, uneven, warm_up};
use crate::Estimate;
use crate::depth::Rule;
use crate::findings::Trust;
use crate::measure::{Kind, Style, Units, write};
use crate::readiness::{ReadState, moist_air::dew_point};

/// Exercises of one scene, in both units, with their estimates.
fn each(scene: Scene, level: u8, mut judge: impl FnMut(&Made, &Estimate)) {
    for number in 0..150 {
        for units in [Units::Us, Units::Metric] {
            let seed = Seed { version: 1, level, number };
            let mut making = Making::new(seed, units, scene.key);
            (scene.make)(&mut making, level);
            let made = making.done();
            let estimate = crate::estimate(&made.exercise.job, NOW);
            judge(&made, &estimate);
        }
    }
}

#[test]
fn the_code_row_that_is_asked_was_read_and_alone_decides() {
    for scene in [code::SCENE, code::BOARD] {
        each(scene, 3, |made, estimate| {
            let depth = estimate.surfaces[0].depth.as_ref().expect("a depth");
            let row = &depth.marks[0];
            assert_eq!((row.rule, row.trust), (Rule::CodeR, Trust::Read), "{}", made.exercise.seed);
            assert_eq!(depth.window.least_by, Some(Rule::CodeR));
            assert_eq!(depth.window.mean_by, None);
            assert!(depth.aim_in.likely.0 < 6.0, "{}: beyond the sheet", made.exercise.seed);
        });
    }
}

/// Whoever writes the framing's share for what it takes of the R is told so, never that he is right; both systems of units
/// have one wall.
#[test]
fn the_framing_share_is_never_the_loss() {
    let mut walls = Vec::new();
    each(across_framing::SCENE, 3, |made, estimate| {
        let framing = made.exercise.given.iter().find(|one| one.key == "framing").expect("given").value;
        let solved = solve(made, &mut OnHost);
        let (step, loss) = (made.exercise.steps.last().expect("a step"), solved.last().expect("a step"));
        assert_eq!(step.key, "framing_loss");
        let off = (loss.as_ref().expect("a loss").value - framing).abs();
        assert!(off > step.within, "{}: {off} points", made.exercise.seed);
        let depth = estimate.surfaces[0].depth.as_ref().expect("a depth");
        walls.push((framing, depth.aim_in.likely.0));
    });
    for pair in walls.chunks(2) {
        assert_eq!(pair[0].0, pair[1].0);
        assert!((pair[0].1 - pair[1].1).abs() < 0.1, "{pair:?}");
    }
}

/// A pair of the own row is told before the row beside.
#[test]
fn half_of_a_pair_is_told_before_the_zone_beside() {
    for scene in [code::SCENE, code::BOARD] {
        let mut both = 0;
        each(scene, 3, |made, estimate| {
            let row = &estimate.surfaces[0].depth.as_ref().expect("a depth").marks[0];
            let by = made.ways[0].slips.iter().find(|slip| slip.name == "zone_beside").map(|slip| &slip.by);
            let Some(By::Job(job, path)) = by else { panic!("no zone beside") };
            let beside = OnHost.figures(job, NOW, std::slice::from_ref(path))[0].expect("an R");
            let in_a_pair = row.printed.split(" or ").filter(|way| !way.starts_with("0+")).any(|way| {
                let parts = way.trim_end_matches("ci").split_once('+');
                parts.is_some_and(|(one, other)| [one, other].contains(&beside.to_string().as_str()))
            });
            if in_a_pair && (beside - row.asks.expect("an R")).abs() > 1e-9 {
                both += 1;
                let answer = Answer { value: Some(beside), ..Answer::default() };
                assert_eq!(
                    mark(made, &[answer], &mut OnHost).steps[0].slip,
                    "half_of_pair",
                    "{}",
                    made.exercise.seed
                );
            }
        });
        assert!(both > 20, "{}: {both}", scene.key);
    }
}

/// At most one reading is outside, all are read, and what decides lies further from its limit than an answer may be off.
#[test]
fn readings_leave_no_doubt() {
    for level in [1, 2] {
        each(readings::SCENE, level, |made, estimate| {
            let checks = &estimate.readiness.checks;
            let outside = checks.iter().filter(|check| check.state == ReadState::Outside).count();
            let seed = &made.exercise.seed;
            assert!(outside <= 1, "{seed}: {outside} outside");
            for check in checks {
                assert!(!matches!(check.state, ReadState::Old | ReadState::NotRead), "{seed}");
                assert!(check.inside_by_f.is_none_or(|by| by.abs() > 1.0), "{seed}: {check:?}");
            }
        });
    }
}

/// The limit of the label is never taken for that of the dew point: whichever counts, the other one is wrong, even beside a
/// dew point that was read as far off as may be.
#[test]
fn both_limits_of_a_surface_lie_apart() {
    each(readings::SCENE, 2, |made, estimate| {
        let least = estimate.readiness.dew.as_ref().expect("a dew point").least_surface_f.0;
        let label = estimate.foams[0].surface.least_f.0;
        let step = made.exercise.steps.iter().find(|step| step.key == "surface_limit").expect("the step");
        let seed = &made.exercise.seed;
        assert!((least - label).abs() > 2.0 * step.within, "{seed}: {least} {label}");
    });
}

/// The least of a surface is the dew point and the distance as both are written.
#[test]
fn the_distance_from_the_dew_point_adds_up_as_written() {
    for (scene, level) in [(readings::SCENE, 1), (readings::SCENE, 2), (forecast::SCENE, 3)] {
        each(scene, level, |made, _| {
            let at =
                made.exercise.steps.iter().position(|step| step.key == "least_surface").expect("the step");
            let solved = solve(made, &mut OnHost);
            let solved = solved[at].as_ref().expect("an answer");
            let style = match made.exercise.job.units {
                Units::Us => Style::Us,
                Units::Metric => Style::MetricUsual,
            };
            let tenths = |kind, value| {
                let text = write(kind, value, style).replace('−', "-");
                let number = text.split('\u{a0}').next().and_then(|number| number.parse::<f64>().ok());
                (10.0 * number.expect("a number")).round()
            };
            let sum: f64 = solved
                .how
                .iter()
                .filter(|one| one.is == "figure")
                .map(|one| tenths(one.kind, one.value))
                .sum();
            assert_eq!(sum, tenths(Kind::Temperature, solved.value), "{}", made.exercise.seed);
        });
    }
}

/// At half a day's length the other end of the window is twelve hours off too: then it is the other end.
#[test]
fn the_other_end_of_a_window_is_told_before_the_other_half_of_the_day() {
    let mut near = 0;
    each(forecast::SCENE, 3, |made, _| {
        let solved = solve(made, &mut OnHost);
        let value = |at: usize| solved[at].as_ref().expect("a time").value;
        let (from, to) = (value(0), value(1));
        let latest = to + made.exercise.steps[1].within;
        assert!(latest < 1_440.0, "{}: the window does not end on that day", made.exercise.seed);
        let slips = slips_of(made, &mut OnHost);
        for (at, name, end) in [(0, "end_for_beginning", to), (1, "beginning_for_end", from)] {
            assert!(slips.contains(&(at, name, end)), "{} {name}", made.exercise.seed);
        }
        let half = |at| slips.iter().any(|(place, name, _)| (*place, *name) == (at, "wrong_day_half"));
        if (to - from - 720.0).abs() < 30.0 {
            near += 1;
            assert!(!half(0) && !half(1), "{}", made.exercise.seed);
        }
    });
    assert!(near > 10, "{near} windows of half a day");
}

/// The core by the slow edge lies well below what is asked, which is the likely one.
#[test]
fn the_slow_curve_is_another_answer() {
    each(warm_up::SCENE, 3, |made, _| {
        let at = made.exercise.steps.iter().position(|step| step.key == "core_then").expect("the step");
        let right = solve(made, &mut OnHost)[at].as_ref().expect("a core").value;
        let slips = slips_of(made, &mut OnHost);
        let slow = slips.iter().find(|(place, name, _)| (*place, *name) == (at, "slow_for_likely"));
        let (_, _, slow) = slow.expect("the slip is told");
        assert!(
            *slow < right - 2.0 * made.exercise.steps[at].within,
            "{}: {slow} {right}",
            made.exercise.seed
        );
    });
}

/// Straight between the rows and columns of the table lies the core's own dew point.
#[test]
fn the_table_gives_the_dew_point() {
    for level in [1, 2] {
        each(readings::SCENE, level, |made, estimate| {
            let dew = estimate.readiness.dew.as_ref().expect("a dew point");
            let (air, pct) = (dew.air_f.expect("air").0, dew.humidity_pct.expect("humidity"));
            let table = made.exercise.shown.iter().find(|one| one.what == "dew_table").expect("a table");
            let (rows, columns) = (&table.at[2..7], &table.at[7..11]);
            let column = columns.iter().position(|one| *one == pct).expect("its column");
            let below = rows.iter().rposition(|one| *one <= air + 1e-9).expect("a row");
            let cell = |row: usize| (table.at[11 + 4 * row + column] * 10.0).round() / 10.0;
            let between = match rows.get(below + 1) {
                Some(next) if air > rows[below] + 1e-9 => {
                    cell(below) + (air - rows[below]) / (next - rows[below]) * (cell(below + 1) - cell(below))
                }
                _ => cell(below),
            };
            assert!((between - dew.point_f.likely.0).abs() < 0.2, "{}: {between}", made.exercise.seed);
            assert!((dew_point(air, pct).expect("a dew point") - dew.point_f.likely.0).abs() < 1e-9);
        });
    }
}

/// Whole hours up, the time asked for is no later than the core's own, and by less than an hour earlier.
#[test]
fn kits_are_in_no_later_than_the_core_says() {
    each(warm_up::SCENE, 3, |made, estimate| {
        let in_by = estimate.conditioning[0].warm_up.and_then(|one| one.in_by).expect("a time").0;
        let solved = solve(made, &mut OnHost);
        let value = |key: &str| {
            let at = made.exercise.steps.iter().position(|step| step.key == key).expect("the step");
            solved[at].as_ref().expect("an answer").value
        };
        let day = estimate.spray_day.expect("a day") - value("days_before");
        let asked = day * 1_440.0 + value("in_room_by");
        let earlier = in_by - asked;
        assert!((-1e-6..60.0).contains(&earlier), "{}: {earlier} minutes earlier", made.exercise.seed);
        assert!((0.0..1_440.0).contains(&value("in_room_by")));
        assert!(asked > NOW.wall().0, "{}: too late already", made.exercise.seed);
    });
}

/// Every sheet is one of a closed-cell kit foam: an inch at each row, and no span between two rows adds less
/// an inch than the one before it.
#[test]
fn data_sheets_are_of_foam_that_there_is() {
    let scenes = [
        (target::SCENE, 2),
        (uneven::SCENE, 2),
        (across_framing::SCENE, 3),
        (code::SCENE, 3),
        (code::BOARD, 3),
        (crawl::SCENE, 4),
        (attic::SCENE, 4),
        (attic::HIP, 4),
    ];
    for (scene, level) in scenes {
        each(scene, level, |made, estimate| {
            let seed = &made.exercise.seed;
            let (mut below, mut least) = ((0.0, 0.0), 0.0);
            assert!(estimate.foams[0].listed.len() >= 4, "{} {seed}: a short sheet", scene.key);
            for row in &estimate.foams[0].listed {
                let (inches, r) = (row.thickness_in.0, row.r.0);
                assert!((5.6..7.2).contains(&(r / inches)), "{} {seed}: R-{r} at {inches} in", scene.key);
                let adds = (r - below.1) / (inches - below.0);
                assert!(adds >= least - 1e-6, "{} {seed}: {adds} after {least} at {inches} in", scene.key);
                (below, least) = ((inches, r), adds);
            }
        });
    }
}

/// A depth that was worked out from the first row alone lies further from the right one than anybody's rounding.
#[test]
fn the_first_row_alone_misleads_by_more_than_a_sixteenth() {
    for (scene, level) in [(target::SCENE, 2), (crawl::SCENE, 4), (attic::SCENE, 4), (attic::HIP, 4)] {
        each(scene, level, |made, _| {
            let (seed, solved) = (&made.exercise.seed, solve(made, &mut OnHost));
            let told = slips_of(made, &mut OnHost);
            let of_depth = |at: usize| ["aim", "depth_for_r"].contains(&made.exercise.steps[at].key);
            let (at, _, value) = told
                .iter()
                .find(|(at, name, _)| *name == "r_of_first_inch" && of_depth(*at))
                .unwrap_or_else(|| panic!("{} {seed}: not told apart", scene.key));
            let right = solved[*at].as_ref().expect("an answer").value;
            assert!((value - right).abs() > 1.0 / 16.0, "{} {seed}: {value} for {right}", scene.key);
        });
    }
}
