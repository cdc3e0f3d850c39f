//! The nozzle, the cylinder, the hours of the label and another day.

use super::*;

#[test]
fn thirty_seconds_from_letting_the_trigger_go() {
    let mut case = Case::ready();
    assert_eq!(case.at(1.0).0.nozzle_until_ms, None);
    case.mark("idle", "", 1.0);
    assert_eq!(case.at(1.2).0.nozzle_until_ms, Some(START + MIN + 30_000.0));
    case.mark("fault", "dark", 1.3);
    assert_eq!(case.at(60.0).0.nozzle_until_ms, Some(START + MIN + 30_000.0), "it stays over");
    let again = case.mark("trigger", "", 2.0);
    assert_eq!(case.at(2.0).0.nozzle_until_ms, None);
    case.undo(again);
    case.lift(1, 1, 2.0);
    assert_eq!(case.at(2.0).0.nozzle_until_ms, None, "a lift that was marked was sprayed");
    // A stamp from the future: the nozzle counts as set.
    case.mark("idle", "", 500.0);
    assert_eq!(case.at(3.0).0.nozzle_until_ms, Some(START + 3.0 * MIN));
}

/// Every lift sprayed by minute 60.
fn sprayed() -> Case {
    let mut case = Case::ready();
    for (surface, lift, minute) in [(1, 1, 1.0), (2, 1, 8.0), (1, 2, 20.0), (2, 2, 28.0), (2, 3, 60.0)] {
        case.lift(surface, lift, minute);
    }
    case
}

#[test]
fn an_empty_cylinder_bleeds_for_a_quarter_of_an_hour() {
    let mut case = sprayed();
    for key in ["lock", "probe", "heat", "posted", "purge_container"] {
        assert_eq!(case.next(61.0), Some((key, 0, 0, Some(0.0))));
        case.step(key, 61.0);
    }
    case.mark("skip", "part_used", 61.0);
    case.step("empty_bleed", 62.0);
    case.step("empty_open", 63.0);
    assert_eq!(case.next(70.0), Some(("empty_left", 0, 0, Some(8.0))));
    assert_eq!(case.next(78.0), Some(("empty_left", 0, 0, Some(0.0))));
    case.step("empty_left", 78.0);
    let (day, _) = case.at(79.0);
    assert_eq!((day.next, day.skipped, day.done as usize), (None, 1, day.steps.len() - 1));
    // The next kit that is emptied wants it all again.
    case.mark("kit_on", "4", 79.0);
    case.mark("kit_off", "", 80.0);
    assert_eq!(case.next(81.0), Some(("part_used", 0, 0, Some(0.0))));
}

/// No empty cylinder, no timer.
#[test]
fn what_does_not_apply_takes_its_followers_along() {
    let mut case = sprayed();
    case.mark("skip", "empty_bleed", 61.0);
    let (day, _) = case.at(62.0);
    let states: Vec<_> =
        day.steps.iter().filter(|step| step.key.starts_with("empty")).map(|step| step.state).collect();
    assert_eq!(states, [StepState::Skipped; 3]);
    // A line that always applies cannot be left out.
    case.mark("skip", "lock", 61.0);
    assert_eq!(case.next(62.0), Some(("lock", 0, 0, Some(0.0))));
}

/// Work stops with surfaces left, and goes on the next day: the lists before and after stand undone again,
/// the lifts do not.
#[test]
fn another_day() {
    let mut case = Case::ready();
    case.lift(1, 1, 1.0);
    case.step("stop", 2.0);
    let (day, _) = case.at(3.0);
    assert!(day.stopped && !day.stale);
    assert_eq!(case.next(3.0), Some(("lock", 0, 0, Some(0.0))));
    case.step("lock", 3.0);
    assert!(case.at(604.0).0.stale, "ten hours after the last mark");
    case.step("again", 1_440.0);
    let (day, _) = case.at(1_440.0);
    assert!(!day.stopped);
    assert_eq!(case.next(1_440.0), Some(("carton", 0, 0, Some(0.0))));
    assert_eq!(day.done, 1, "the lift");
    for key in BEFORE {
        case.step(key, 1_441.0);
    }
    case.lift(2, 1, 1_442.0);
    assert_eq!(case.next(1_442.0), Some(("lift", 1, 2, Some(0.0))));
    assert!(!case.at(1_442.0).0.stopped);
}

/// After the lock more was sprayed: it is locked again.
#[test]
fn what_follows_spraying_follows_it_again() {
    let mut case = sprayed();
    case.step("lock", 61.0);
    assert_eq!(case.next(61.0).map(|next| next.0), Some("probe"));
    case.lift(2, 3, 62.0);
    assert_eq!(case.next(63.0).map(|next| next.0), Some("lock"));
}

/// The label's hours from the last spraying, and only when it is over; a silent label gives no time.
#[test]
fn reentry_is_the_labels_hours_or_nothing() {
    let mut case = sprayed();
    assert_eq!((case.at(70.0).0.reentry_ms, case.at(70.0).0.cure_ms), (None, None));
    case.job["foams"][0]["entries"]
        .as_array_mut()
        .expect("a list")
        .push(json!({"field": "reentry", "text": "24 to 30"}));
    let (day, _) = case.at(70.0);
    assert_eq!(day.reentry_min, Some(Minutes(1_800.0)), "the longer end of a range");
    assert_eq!(day.reentry_ms, Some(START + 1_860.0 * MIN));
    // A second foam whose label is silent.
    case.job["foams"].as_array_mut().expect("a list").push(json!({"id": 5, "entries": []}));
    case.job["surfaces"][0]["foam"] = json!(5);
    assert_eq!(case.at(70.0).0.reentry_ms, None);
    case.job["foams"][1]["entries"] = json!([{"field": "reentry", "text": "2"}]);
    assert_eq!(case.at(70.0).0.reentry_ms, Some(START + 1_860.0 * MIN), "the longest of the labels");
    // Spraying goes on.
    case.job["surfaces"][1]["entries"][1]["text"] = json!("6");
    assert_eq!(case.at(70.0).0.reentry_ms, None);
    case.step("stop", 71.0);
    assert_eq!(case.at(72.0).0.reentry_ms, Some(START + 1_860.0 * MIN));
    // "0 h" is no label's.
    case.job["foams"][1]["entries"] = json!([{"field": "reentry", "text": "0"}]);
    assert_eq!(case.at(72.0).0.reentry_ms, None);
}
