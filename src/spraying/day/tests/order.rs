//! What is next, and what waits for what.

use super::*;

#[test]
fn before_the_trigger_in_the_order_of_work() {
    let mut case = Case::new();
    for key in BEFORE {
        assert_eq!(case.next(0.0), Some((key, 0, 0, Some(0.0))));
        case.step(key, 0.0);
    }
    assert_eq!(case.next(0.0), Some(("lift", 1, 1, Some(0.0))));
}

/// What was passed over stays next, whatever was done after it.
#[test]
fn nothing_before_the_trigger_is_passed_over() {
    let mut case = Case::ready();
    let flames = case.job["events"][5]["id"].as_u64().expect("an id") as u32;
    case.undo(flames);
    case.lift(1, 1, 1.0);
    assert_eq!(case.next(2.0), Some(("flames", 0, 0, Some(0.0))));
}

/// One surface cools while the other is sprayed; where both cool, the one that waits the shortest.
#[test]
fn the_first_that_may_be_done_now_is_next() {
    let mut case = Case::ready();
    case.lift(1, 1, 10.0);
    assert_eq!(case.next(10.0), Some(("lift", 2, 1, Some(0.0))));
    case.lift(2, 1, 20.0);
    assert_eq!(case.next(20.0), Some(("lift", 1, 2, Some(5.0))), "both cool: the first is ready at 25");
    assert_eq!(case.next(24.9).map(|next| next.1), Some(1));
    assert_eq!(case.next(25.0), Some(("lift", 1, 2, Some(0.0))), "a wait ends at its very instant");
    case.lift(1, 2, 26.0);
    assert_eq!(case.next(26.0), Some(("lift", 2, 2, Some(9.0))));
    assert_eq!(case.next(40.0), Some(("lift", 2, 2, Some(0.0))));
    case.lift(2, 2, 41.0);
    case.lift(2, 3, 57.0);
    assert_eq!(case.next(57.0), Some(("lock", 0, 0, Some(0.0))));
}

/// The clock of the wall, midnight and the zone play no part: instants do.
#[test]
fn waits_run_across_midnight_and_zones() {
    let mut case = Case::ready();
    case.lift(1, 1, 0.0);
    case.lift(2, 1, 0.0);
    let midnight = (86_400_000.0 - START.rem_euclid(86_400_000.0)) / MIN;
    let lift = case.job["events"].as_array_mut().expect("a list").last_mut().expect("a lift");
    lift["at"] = json!({"ms": START + (midnight - 5.0) * MIN, "offset_min": 600});
    assert_eq!(case.next(midnight + 5.0), Some(("lift", 1, 2, Some(0.0))));
    case.lift(1, 2, midnight + 5.0);
    assert_eq!(case.next(midnight + 5.0), Some(("lift", 2, 2, Some(5.0))));
}

/// A lift sprayed out of order, or one beyond the plan, heats the spot all the same.
#[test]
fn the_wait_is_from_the_last_lift_on_the_spot() {
    let mut case = Case::ready();
    case.lift(2, 2, 10.0);
    case.lift(1, 7, 12.0);
    assert_eq!(case.next(12.0), Some(("lift", 2, 1, Some(13.0))));
    let (day, _) = case.at(12.0);
    assert_eq!(day.done, 11, "the lift beyond the plan is no line of it");
    assert_eq!(day.last_spray_ms, Some(START + 12.0 * MIN));
}

/// A lift that came too soon is spoken of; one that came in time, or was marked twice, is not.
#[test]
fn a_lift_before_its_wait_is_over() {
    for (lift, minute, early) in
        [(2, 10.0, true), (2, 14.4, true), (2, 14.6, false), (2, 15.0, false), (1, 2.0, false)]
    {
        let mut case = Case::ready();
        case.lift(2, 1, 0.0);
        case.lift(1, 1, 1.0);
        case.lift(2, lift, minute);
        assert_eq!(case.at(60.0).1.contains(&Code::LiftEarly), early, "lift {lift} at {minute}");
    }
}

#[test]
fn an_event_taken_away_is_undone() {
    let mut case = Case::ready();
    let before = case.at(30.0);
    let lift = case.lift(1, 1, 29.0);
    assert_eq!(case.next(30.0), Some(("lift", 2, 1, Some(0.0))));
    assert_eq!(case.at(30.0).0.steps[10].event, lift);
    case.undo(lift);
    assert_eq!(case.at(30.0), before);
}

#[test]
fn marks_of_a_removed_surface_are_no_lines() {
    let mut case = Case::ready();
    case.lift(1, 1, 1.0);
    case.job["surfaces"].as_array_mut().expect("a list").remove(0);
    let (day, _) = case.at(2.0);
    assert!(day.steps.iter().all(|step| step.surface != 1));
    assert_eq!((day.done, day.last_spray_ms), (10, Some(START + MIN)));
    case.job["surfaces"] = json!([]);
    let (day, _) = case.at(2.0);
    assert_eq!((day.steps.len(), day.next, day.done), (0, None, 0));
}

/// A stamp from the future, or none that a clock can show: the wait starts now, and is never over early.
#[test]
fn a_clock_that_was_set_back_ends_no_wait() {
    for ms in [START + 300.0 * MIN, 1e300, -1.0] {
        let mut case = Case::ready();
        let lift = case.lift(1, 1, 0.0);
        case.lift(2, 1, 2.0);
        for event in case.job["events"].as_array_mut().expect("a list") {
            if event["id"] == lift {
                event["at"]["ms"] = json!(ms);
            }
        }
        for minute in [5.0, 60.0] {
            let (day, codes) = case.at(minute);
            let step = day.steps.iter().find(|step| step.surface == 1 && step.lift == 2).expect("a step");
            assert_eq!(step.ready_ms, Some(START + (minute + 15.0) * MIN), "{ms}");
            assert!(codes.contains(&Code::EventAhead));
            assert_eq!(day.reentry_ms, None);
        }
    }
    // A clock one minute ahead is within what clocks differ by.
    let mut case = Case::ready();
    case.lift(1, 1, 1.0);
    assert!(!case.at(0.0).1.contains(&Code::EventAhead));
}

/// Over two inches nothing gives the time: no countdown, and other surfaces come first.
#[test]
fn a_thick_lift_has_no_countdown() {
    let mut case = Case::ready();
    case.job["foams"][0]["entries"] = json!([{"field": "largest_lift", "text": "2.5"}]);
    case.job["surfaces"][0]["entries"][1]["text"] = json!("5");
    case.job["surfaces"][1]["entries"][1]["text"] = json!("2");
    case.lift(1, 1, 1.0);
    assert_eq!(case.next(2.0), Some(("lift", 2, 1, Some(0.0))));
    case.lift(2, 1, 2.0);
    assert_eq!(case.next(600.0), Some(("lift", 1, 2, None)));
    let (day, _) = case.at(600.0);
    assert_eq!(day.steps[11].ready_ms, None);
}

#[test]
fn edges_come_before_the_first_lift_of_a_framed_surface() {
    let mut case = Case::ready();
    case.job["surfaces"][1] = json!({"id": 2, "shape": "framed_wall", "entries": [
        {"field": "length", "text": "10 ft"}, {"field": "height", "text": "8 ft"}, {"field": "depth", "text": "2"},
    ]});
    case.lift(1, 1, 1.0);
    assert_eq!(case.next(2.0), Some(("edges", 2, 0, Some(0.0))));
    let edges = case.event(json!({
        "what": "step", "key": "edges", "surface": 2, "at": {"ms": START + 3.0 * MIN, "offset_min": 0},
    }));
    assert_eq!(case.next(3.0), Some(("lift", 2, 1, Some(0.0))));
    assert_eq!(case.at(3.0).0.last_spray_ms, Some(START + 3.0 * MIN), "edges are foam too");
    case.undo(edges);
    case.lift(2, 1, 4.0);
    let (day, _) = case.at(4.0);
    let step = day.steps.iter().find(|step| step.key == "edges").expect("a step");
    assert_eq!(step.state, StepState::Skipped, "a lift over edges that nobody marked");
}
