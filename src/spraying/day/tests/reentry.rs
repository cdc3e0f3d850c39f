//! The label's hours, with the exhaust off for a while, across midnight and with a smell.

use super::*;

/// Sprayed by minute 60 and stopped; the label says 24 h for everybody and 12 h for workers.
fn over() -> Case {
    let mut case = Case::ready();
    case.lift(1, 1, 60.0);
    case.step("stop", 61.0);
    let entries = case.job["foams"][0]["entries"].as_array_mut().expect("a list");
    entries.push(json!({"field": "reentry", "text": "24"}));
    entries.push(json!({"field": "reentry_workers", "text": "12"}));
    case
}

/// Minutes from the start for everybody and for workers, and what holds them.
fn times(case: &Case, minute: f64) -> (Option<f64>, Option<f64>, Option<ReentryHeld>) {
    let (day, _) = case.at(minute);
    let from = |ms: Option<f64>| ms.map(|ms| (ms - START) / MIN);
    (from(day.reentry_ms), from(day.reentry_workers_ms), day.reentry_held)
}

const DAY_END: f64 = 60.0 + 1_440.0;
const WORKERS_END: f64 = 60.0 + 720.0;

#[test]
fn hours_without_exhaust_are_added() {
    let mut case = over();
    assert_eq!(times(&case, 70.0), (Some(DAY_END), Some(WORKERS_END), None));
    case.mark("exhaust_off", "", 100.0);
    assert_eq!(times(&case, 110.0), (None, None, Some(ReentryHeld::ExhaustOff)));
    case.mark("exhaust_on", "", 190.0);
    assert_eq!(times(&case, 200.0), (Some(DAY_END + 90.0), Some(WORKERS_END + 90.0), None));
    // Off again over midnight (08:00 + 900 min is 23:00, + 1,080 is 02:00): only everybody's hours still run.
    case.mark("exhaust_off", "", 900.0);
    assert_eq!(times(&case, 901.0), (None, Some(WORKERS_END + 90.0), Some(ReentryHeld::ExhaustOff)));
    case.mark("exhaust_on", "", 1_080.0);
    assert_eq!(times(&case, 1_100.0), (Some(DAY_END + 270.0), Some(WORKERS_END + 90.0), None));
    // Once they are over the fan may be off.
    case.mark("exhaust_off", "", DAY_END + 271.0);
    assert_eq!(times(&case, DAY_END + 400.0), (Some(DAY_END + 270.0), Some(WORKERS_END + 90.0), None));
}

/// Marks of before the last spraying count from it on; the checklist's own line says that air moves again.
#[test]
fn the_exhaust_was_off_while_foam_was_sprayed() {
    let mut case = Case::ready();
    case.mark("exhaust_off", "", 30.0);
    case.lift(1, 1, 60.0);
    case.step("stop", 61.0);
    case.job["foams"][0]["entries"]
        .as_array_mut()
        .expect("a list")
        .push(json!({"field": "reentry", "text": "24"}));
    assert_eq!(times(&case, 62.0), (None, None, Some(ReentryHeld::ExhaustOff)));
    let on = case.mark("exhaust_on", "", 90.0);
    assert_eq!(times(&case, 100.0).0, Some(DAY_END + 30.0));
    case.undo(on);
    case.step("air", 75.0);
    assert_eq!(times(&case, 100.0).0, Some(DAY_END + 15.0));
    // More is sprayed: the hours start anew, and what was off before it is past.
    case.lift(1, 2, 120.0);
    case.step("stop", 121.0);
    assert_eq!(times(&case, 130.0).0, Some(DAY_END + 60.0));
}

/// A mark twice counts once; a stamp from the future ends no spell, and begins one.
#[test]
fn odd_marks_never_shorten_it() {
    let mut case = over();
    case.mark("exhaust_off", "", 100.0);
    case.mark("exhaust_off", "", 130.0);
    case.mark("exhaust_on", "", 160.0);
    case.mark("exhaust_on", "", 170.0);
    assert_eq!(times(&case, 200.0).0, Some(DAY_END + 60.0));
    case.mark("exhaust_off", "", 5_000.0);
    assert_eq!(times(&case, 200.0).0, None);
    case.mark("exhaust_on", "", 6_000.0);
    assert_eq!(times(&case, 200.0), (None, None, Some(ReentryHeld::ExhaustOff)));
    // A clock that was put back between the two marks takes nothing off.
    let mut case = over();
    case.mark("exhaust_off", "", 100.0);
    case.mark("exhaust_on", "", 80.0);
    assert_eq!(times(&case, 200.0).0, Some(DAY_END));
}

#[test]
fn while_there_is_a_smell_no_time_is_given() {
    let mut case = over();
    let smell = |text: &str| json!([{"field": "smell", "text": text}]);
    case.job["entries"] = smell("yes");
    assert_eq!(times(&case, 70.0), (None, None, Some(ReentryHeld::Smell)));
    assert_eq!(times(&case, 9_000.0), (None, None, Some(ReentryHeld::Smell)), "nor after the hours");
    case.job["entries"] = smell("no");
    assert_eq!(times(&case, 70.0), (Some(DAY_END), Some(WORKERS_END), None));
    // The cure does not go by it.
    case.job["foams"][0]["entries"]
        .as_array_mut()
        .expect("a list")
        .push(json!({"field": "cure", "text": "24"}));
    case.job["entries"] = smell("yes");
    assert_eq!(case.at(70.0).0.cure_ms, Some(START + DAY_END * MIN));
}

/// A silent label gives no time, and nothing is said to hold what nobody knows.
#[test]
fn an_unknown_label_gives_no_time() {
    let mut case = over();
    case.job["foams"][0]["entries"]
        .as_array_mut()
        .expect("a list")
        .retain(|one| one["field"] != "reentry_workers");
    assert_eq!(times(&case, 70.0), (Some(DAY_END), None, None));
    case.job["foams"][0]["entries"].as_array_mut().expect("a list").retain(|one| one["field"] != "reentry");
    assert_eq!(times(&case, 70.0), (None, None, None));
    case.job["entries"] = json!([{"field": "smell", "text": "yes"}]);
    assert_eq!(times(&case, 70.0), (None, None, None));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 48, ..ProptestConfig::default() })]

    /// No marks of the exhaust ever bring the time forward.
    #[test]
    fn the_exhaust_never_shortens_the_hours(marks in prop::collection::vec((any::<bool>(), 0.0..3_000.0_f64), 0..8)) {
        let mut case = over();
        for (off, minute) in marks {
            case.mark(if off { "exhaust_off" } else { "exhaust_on" }, "", minute);
        }
        let (day, workers, held) = times(&case, 3_100.0);
        prop_assert!(day.is_none_or(|day| day >= DAY_END) && workers.is_none_or(|workers| workers >= WORKERS_END));
        prop_assert_eq!(held.is_some(), day.is_none() || workers.is_none());
    }
}

/// Whoever leaves out the line that asks for exhaust has none, until a mark says that it runs.
#[test]
fn exhaust_that_was_left_out_is_off() {
    let mut case = over();
    case.mark("skip", "air", 20.0);
    assert_eq!(times(&case, 70.0), (None, None, Some(ReentryHeld::ExhaustOff)));
    let on = case.mark("exhaust_on", "", 100.0);
    assert_eq!(times(&case, 110.0), (Some(DAY_END + 40.0), Some(WORKERS_END + 40.0), None));
    case.undo(on);
    case.step("air", 90.0);
    assert_eq!(times(&case, 110.0).0, Some(DAY_END + 30.0));
    // Another line that was left out takes nothing off.
    let mut case = over();
    case.mark("skip", "mask", 20.0);
    assert_eq!(times(&case, 70.0).0, Some(DAY_END));
}
