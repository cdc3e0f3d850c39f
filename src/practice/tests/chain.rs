//! Answers that go on from earlier ones: rounded, wrong, shown, left out.

use super::*;

#[test]
fn a_wrong_step_costs_itself_and_nothing_after_it() {
    // Gross 170 instead of 160, and everything after it done right from there.
    let net = 170.0 - 29.5;
    let spray = net * 2.0 * 1.1;
    let marked = marked(&but(&[(0, 170.0), (2, net), (3, net * 2.0), (4, spray)]));
    let wanted = [
        Verdict::Wrong,
        Verdict::Right,
        Verdict::Carried,
        Verdict::Carried,
        Verdict::Carried,
        // 309.1 over 120 is 3 kits as well.
        Verdict::Right,
        Verdict::Right,
    ];
    assert_eq!(verdicts(&marked), wanted);
    assert_eq!(marked.points, 6.0);
    assert!(marked.steps[3].carried);
    // The arithmetic beside the mark is the student's own.
    assert_eq!(marked.steps[3].how[0].value, net);
}

#[test]
fn a_wrong_step_in_the_middle_carries_from_there_on() {
    let marked = marked(&but(&[(2, 160.0), (3, 320.0), (4, 352.0)]));
    let wanted = [
        Verdict::Right,
        Verdict::Right,
        Verdict::Slip,
        Verdict::Carried,
        Verdict::Carried,
        Verdict::Right,
        Verdict::Right,
    ];
    assert_eq!(verdicts(&marked), wanted);
    assert_eq!(marked.steps[2].slip, "openings_forgotten");
}

#[test]
fn back_on_the_right_track_is_right() {
    let marked = marked(&but(&[(0, 170.0)]));
    assert_eq!(verdicts(&marked)[1..], [Verdict::Right; 6]);
}

#[test]
fn a_slip_is_named_with_wrong_earlier_answers_too() {
    // Gross 170; then the openings are taken out twice from it.
    let twice = marked(&but(&[(0, 170.0), (2, 170.0 - 59.0)]));
    assert_eq!((twice.steps[2].verdict, twice.steps[2].slip), (Verdict::Slip, "openings_twice"));
    assert!(twice.steps[2].carried);
    assert_eq!(twice.steps[2].how[0].value, 170.0);
    // One of the slips of its kind: cubic feet of a wrong net area.
    let cubic = marked(&but(&[(2, 100.0), (3, 200.0 / 12.0)]));
    assert_eq!((cubic.steps[3].verdict, cubic.steps[3].slip), (Verdict::Slip, "cubic_feet"));
    assert!(cubic.steps[3].carried);
    // With right earlier answers the same slip carries nothing.
    let cubic = marked(&but(&[(3, 261.0 / 12.0)]));
    assert_eq!((cubic.steps[3].slip, cubic.steps[3].carried), ("cubic_feet", false));
}

#[test]
fn carried_goes_before_a_slip_that_comes_to_the_same() {
    // Who left the openings out and went on has 320 bd ft: the net was wrong, this step is not.
    let marked = marked(&but(&[(2, 160.0), (3, 320.0)]));
    assert_eq!(verdicts(&marked)[2..4], [Verdict::Slip, Verdict::Carried]);
    // Without the wrong net it is the slip of this step.
    let marked = self::marked(&but(&[(3, 320.0)]));
    assert_eq!((verdicts(&marked)[3], marked.steps[3].slip), (Verdict::Slip, "gross_for_net"));
}

#[test]
fn rounding_on_the_way_stays_right() {
    // Half a percent too much at each of three steps: each is right from the one before.
    let (net, feet) = (130.5 * 1.004, 130.5 * 1.004 * 2.0 * 1.004);
    let marked = marked(&but(&[(2, net), (3, feet), (4, feet * 1.1 * 1.004)]));
    assert_eq!(verdicts(&marked), [Verdict::Right; 7]);
    assert!(marked.steps.iter().all(|step| !step.carried));
    assert_eq!(marked.points, 7.0);
    // The same figure out of the blue is not.
    let marked = self::marked(&but(&[(4, feet * 1.1 * 1.004)]));
    assert_eq!(verdicts(&marked)[4], Verdict::Wrong);
}

#[test]
fn what_was_shown_is_gone_on_from() {
    // A wrong net, then shown; the board feet of the wrong one are wrong, those of the shown one right.
    let mut answers = but(&[(2, 100.0), (3, 200.0)]);
    answers[2].shown = true;
    let wrong = marked(&answers);
    assert_eq!(verdicts(&wrong)[2..4], [Verdict::Shown, Verdict::Wrong]);
    answers[3].value = Some(261.0);
    let marked = marked(&answers);
    assert_eq!(verdicts(&marked)[2..4], [Verdict::Shown, Verdict::Right]);
    assert!(!marked.steps[3].carried);
    assert_eq!((marked.steps[2].points, marked.points), (0.0, 6.0));
}

#[test]
fn a_step_that_is_shown_after_a_wrong_one_is_the_right_one() {
    // Gross wrong, net shown (the right one), board feet from the shown net.
    let mut answers = but(&[(0, 170.0)]);
    answers[2] = Answer { shown: true, ..Answer::default() };
    assert_eq!(verdicts(&marked(&answers))[2..5], [Verdict::Shown, Verdict::Right, Verdict::Right]);
}

#[test]
fn a_step_left_out_is_gone_on_with_in_the_head() {
    // Gross 170, no net, board feet from 170 − 29.5.
    let mut answers = but(&[(0, 170.0), (3, 281.0)]);
    answers[2].value = None;
    let marked = marked(&answers);
    assert_eq!(verdicts(&marked)[..4], [Verdict::Wrong, Verdict::Right, Verdict::Blank, Verdict::Carried]);
    assert!(marked.steps[3].carried);
    // Two left out.
    let mut answers = but(&[(0, 170.0), (4, 309.1)]);
    (answers[2].value, answers[3].value) = (None, None);
    assert_eq!(verdicts(&self::marked(&answers))[4], Verdict::Carried);
    // Left out after nothing wrong: right, and nothing is carried.
    let mut answers = right();
    (answers[2].value, answers[3].value) = (None, None);
    let marked = self::marked(&answers);
    assert_eq!(verdicts(&marked)[2..5], [Verdict::Blank, Verdict::Blank, Verdict::Right]);
    assert!(!marked.steps[4].carried);
    assert_eq!(marked.points, 5.0);
}

#[test]
fn only_what_a_step_takes_over_makes_it_carried() {
    // The openings are wrong; the gross area does not come of them.
    let marked = marked(&but(&[(1, 40.0), (2, 120.0), (3, 240.0)]));
    assert_eq!(verdicts(&marked)[..4], [Verdict::Right, Verdict::Wrong, Verdict::Carried, Verdict::Carried]);
}

#[test]
fn kits_are_counted_from_what_a_student_has() {
    // 400 to spray instead of 287.1: 4 kits of 120.
    let four = marked(&but(&[(4, 400.0), (5, 4.0)]));
    assert_eq!(verdicts(&four)[4..6], [Verdict::Wrong, Verdict::Carried]);
    let down = marked(&but(&[(4, 410.0), (5, 3.42)]));
    assert_eq!(
        (verdicts(&down)[5], down.steps[5].slip, down.steps[5].carried),
        (Verdict::Slip, "not_whole", true)
    );
}
