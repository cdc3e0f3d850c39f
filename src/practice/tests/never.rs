//! What is no answer, too large an answer, too many and too few of them: judged, never broken.

use super::*;
use proptest::prelude::*;

#[test]
fn what_is_no_number_is_no_answer() {
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        for at in 0..RIGHT.len() {
            let marked = marked(&but(&[(at, value)]));
            let mut wanted = [Verdict::Right; 7];
            wanted[at] = Verdict::Blank;
            assert_eq!(verdicts(&marked), wanted, "{value} at {at}");
            assert_eq!(marked.points, 6.0);
        }
    }
}

#[test]
fn huge_answers_are_wrong_and_break_nothing() {
    for value in [1e15, 1e300, f64::MAX, -f64::MAX] {
        for at in 0..RIGHT.len() {
            let marked = marked(&but(&[(at, value)]));
            assert_eq!(verdicts(&marked)[at], Verdict::Wrong, "{value} at {at}");
            assert_eq!(marked.steps.iter().filter(|step| step.verdict == Verdict::Right).count(), 6);
        }
    }
}

#[test]
fn fewer_answers_than_steps_leave_the_rest_blank_and_more_are_passed_over() {
    let nothing = marked(&[]);
    assert_eq!((verdicts(&nothing), nothing.points, nothing.of), (vec![Verdict::Blank; 7], 0.0, 7));
    let two = marked(&right()[..2]);
    assert_eq!(verdicts(&two)[..3], [Verdict::Right, Verdict::Right, Verdict::Blank]);
    let mut more = right();
    more.extend(given(&[Some(1.0), Some(f64::NAN)]));
    let more = marked(&more);
    assert_eq!((verdicts(&more), more.of), (vec![Verdict::Right; 7], 7));
}

#[test]
fn an_exercise_whose_answer_is_not_known_is_never_marked_against_it() {
    let made = alone(Units::Us, Ask::new("one", Topic::Areas, Kind::Area).at("nowhere"));
    assert_eq!(judged(&made, 5.0).verdict, Verdict::Blank);
    assert_eq!(super::super::solve(&made, &mut Listed), [None]);
    assert!(super::super::slips_of(&made, &mut Listed).is_empty());
    // A word that is none of the choices.
    let made = alone(Units::Us, Ask::choice("one", Topic::Code, &["a", "b"]).word("word"));
    assert_eq!(super::super::solve(&made, &mut Listed), [None]);
}

fn any_answer() -> impl Strategy<Value = Answer> {
    let near =
        (0..RIGHT.len(), -3i32..=3).prop_map(|(at, tenth)| RIGHT[at] * (1.0 + f64::from(tenth) / 10.0));
    let value = prop_oneof![
        2 => Just(None),
        3 => any::<f64>().prop_map(Some),
        5 => near.prop_map(Some),
    ];
    (value, any::<u8>(), any::<bool>()).prop_map(|(value, hints, shown)| Answer { value, hints, shown })
}

proptest! {
    #[test]
    fn any_answers_are_judged_and_their_points_add_up(
        answers in proptest::collection::vec(any_answer(), 0..10),
        metric in any::<bool>(),
    ) {
        let made = wall(if metric { Units::Metric } else { Units::Us });
        let marked = mark(&made, &answers, &mut Listed);
        prop_assert_eq!(marked.steps.len(), 7);
        prop_assert!((0.0..=7.0).contains(&marked.points));
        for (at, step) in marked.steps.iter().enumerate() {
            let given = answers.get(at).copied().unwrap_or_default();
            let earns = matches!(step.verdict, Verdict::Right | Verdict::Carried);
            prop_assert!(earns || step.points == 0.0);
            prop_assert_eq!(step.verdict == Verdict::Slip, !step.slip.is_empty());
            prop_assert_eq!(step.verdict == Verdict::Shown, given.shown);
            let blank = !given.shown && !given.value.is_some_and(f64::is_finite);
            prop_assert_eq!(step.verdict == Verdict::Blank, blank);
            prop_assert!(step.verdict != Verdict::Carried || step.carried);
            prop_assert!(step.how.iter().all(|piece| piece.value.is_finite()));
        }
    }

    /// A step's mark never follows from a later one.
    #[test]
    fn later_answers_change_no_earlier_mark(
        answers in proptest::collection::vec(any_answer(), 7),
        upto in 0usize..7,
    ) {
        let whole = marked(&answers);
        let begun = marked(&answers[..upto]);
        prop_assert_eq!(&whole.steps[..upto], &begun.steps[..upto]);
    }
}
