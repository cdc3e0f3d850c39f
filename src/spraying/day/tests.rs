use super::*;
use crate::findings::Code;
use proptest::prelude::*;
use serde_json::{Value, json};

/// 08:00 on a day of October 2026, somewhere.
const START: f64 = 1_792_012_200_000.0;
const MIN: f64 = 60_000.0;

const BEFORE: [&str; 10] =
    ["carton", "mask", "protection", "out", "air", "flames", "readings", "valves", "bare", "test_shot"];

/// Two surfaces, 2 in and 3 in in lifts of at most 1 in with a wait of 15 minutes, and what was marked.
struct Case {
    job: Value,
    next_id: u32,
}

impl Case {
    fn new() -> Self {
        let surface = |id: u32, depth: &str| {
            json!({"id": id, "shape": "typed_area", "entries": [
                {"field": "area", "text": "50"}, {"field": "depth", "text": depth},
            ]})
        };
        Self {
            job: json!({
                "format": "foamwright-job", "version": 2, "id": "test", "next_id": 1000, "foam": 3,
                "surfaces": [surface(1, "2"), surface(2, "3")],
                "foams": [{"id": 3, "entries": [
                    {"field": "largest_lift", "text": "1"}, {"field": "wait", "text": "15 min"},
                    {"field": "cylinder_least", "text": "70"}, {"field": "cylinder_most", "text": "90"},
                ]}],
                "kits": [{"id": 4, "name": "Medium 160", "entries": [
                    {"field": "label_yield", "text": "160"}, {"field": "price", "text": "284"},
                ]}],
                "events": [],
            }),
            next_id: 100,
        }
    }

    /// With everything before the spraying marked at the start.
    fn ready() -> Self {
        let mut case = Self::new();
        for key in BEFORE {
            case.step(key, 0.0);
        }
        case
    }

    fn event(&mut self, event: Value) -> u32 {
        let id = self.next_id;
        self.next_id += 1;
        let mut event = event;
        event["id"] = json!(id);
        self.job["events"].as_array_mut().expect("a list").push(event);
        id
    }

    fn mark(&mut self, what: &str, key: &str, minute: f64) -> u32 {
        self.event(json!({"what": what, "key": key, "at": {"ms": START + minute * MIN, "offset_min": -300}}))
    }

    fn step(&mut self, key: &str, minute: f64) -> u32 {
        self.mark("step", key, minute)
    }

    fn lift(&mut self, surface: u32, lift: u32, minute: f64) -> u32 {
        self.event(json!({
            "what": "lift", "surface": surface, "lift": lift,
            "at": {"ms": START + minute * MIN, "offset_min": -300},
        }))
    }

    fn undo(&mut self, id: u32) {
        self.job["events"].as_array_mut().expect("a list").retain(|one| one["id"] != id);
    }

    fn at(&self, minute: f64) -> (Day, Vec<Code>) {
        let job: Job = serde_json::from_value(self.job.clone()).expect("a job");
        let now = Now { ms: START + minute * MIN, offset_min: -300 };
        let estimate = crate::estimate(&job, now);
        (estimate.day, estimate.findings.iter().map(|one| one.code).collect())
    }

    /// What is next: key, surface, lift, and minutes until it may be done (0: now; none: the label's matter).
    fn next(&self, minute: f64) -> Option<(&'static str, u32, u32, Option<f64>)> {
        let (day, _) = self.at(minute);
        let step = day.steps[day.next? as usize];
        assert_eq!(step.state, StepState::Next);
        let wait = step.ready_ms.map_or(0.0, |ready| ((ready - START) / MIN - minute).max(0.0));
        Some((step.key, step.surface, step.lift, (!step.label_wait).then_some(wait)))
    }
}

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

/// The second kit far less than the first, from cold cylinders. Kits rescaled: two of 160 board feet.
#[test]
fn the_second_kit_gave_far_less() {
    let mut case = Case::ready();
    let mut kit = |on: &str, off: Value, minute: f64| {
        case.event(json!({"what": "kit_on", "key": "4", "at": {"ms": START + minute * MIN, "offset_min": 0},
            "entries": [{"field": "cylinder_a", "text": on}, {"field": "cylinder_b", "text": "75 F"}]}));
        case.event(json!({"what": "kit_off", "at": {"ms": START + (minute + 40.0) * MIN, "offset_min": 0},
            "entries": off}));
    };
    kit(
        "76 F",
        json!([{"field": "sprayed_area", "text": "66 ft2"}, {"field": "mean_depth", "text": "2 in"}]),
        1.0,
    );
    kit(
        "18 C",
        json!([{"field": "sprayed_area", "text": "45 ft2"}, {"field": "mean_depth", "text": "1 3/4 in"}]),
        50.0,
    );
    let (day, codes) = case.at(100.0);
    let [first, second] = day.runs.as_slice() else { panic!("{:?}", day.runs) };
    assert_eq!(first.in_place, Some(crate::measure::BoardFeet(132.0)));
    assert_eq!(first.achieved_pct, Some(137.0 / 160.0 * 100.0));
    assert_eq!(first.planned_pct, Some(86.0));
    assert!(!first.outside && second.outside);
    let achieved = second.achieved_pct.expect("a factor");
    assert!((achieved - (78.75 + 5.0) / 160.0 * 100.0).abs() < 1e-9);
    assert_eq!(codes.iter().filter(|code| **code == Code::KitGaveLess).count(), 1);
    assert_eq!(codes.iter().filter(|code| **code == Code::KitCold).count(), 1, "64.4 °F is under 70");
}

/// A sealed kit of the stock has a factor like one that was bought; one that had been opened has none.
#[test]
fn a_kit_of_the_stock() {
    for (state, achieved) in [("sealed", Some((100.0 + 5.0) / 160.0 * 100.0)), ("opened", None)] {
        let mut case = Case::ready();
        case.job["stock"] = json!([{"id": 7, "name": "From the shelf", "entries": [
            {"field": "label_yield", "text": "160"}, {"field": "state", "text": state},
        ]}]);
        case.mark("kit_on", "7", 0.0);
        case.event(json!({"what": "kit_off", "at": {"ms": START, "offset_min": 0}, "entries": [
            {"field": "sprayed_area", "text": "50"}, {"field": "mean_depth", "text": "2"},
        ]}));
        let (day, _) = case.at(1.0);
        assert_eq!((day.runs[0].kit, day.runs[0].achieved_pct), (7, achieved), "{state}");
        assert_eq!(day.runs[0].in_place, Some(crate::measure::BoardFeet(100.0)));
    }
}

/// An opened kit opens its valves in the list; one without an end, a sheet or a depth has no factor.
#[test]
fn a_kit_that_says_nothing_gets_no_factor() {
    let mut case = Case::new();
    for key in BEFORE.into_iter().take(7) {
        case.step(key, 0.0);
    }
    case.mark("kit_off", "", 0.0);
    case.mark("kit_on", "99", 1.0);
    assert_eq!(case.next(1.0).map(|next| next.0), Some("bare"));
    let (day, _) = case.at(1.0);
    assert_eq!((day.runs.len(), day.runs[0].kit, day.runs[0].achieved_pct), (1, 0, None));
    assert_eq!(day.runs[0].off, 0, "a kit that was ended before it was opened ends nothing");
}

/// A surface of thousands of lifts, as a damaged file may ask for, is listed in part, and never called sprayed.
#[test]
fn endless_lifts_are_cut_off() {
    let mut case = Case::ready();
    case.job["foams"][0]["entries"] = json!([
        {"field": "largest_lift", "text": "0.1"}, {"field": "least_lift", "text": "0"}, {"field": "reentry", "text": "24"},
    ]);
    case.job["surfaces"][0]["entries"][1]["text"] = json!("36");
    let (day, _) = case.at(0.0);
    assert_eq!(day.unlisted, 300);
    for lift in 1..=60 {
        case.lift(1, lift, 1.0);
    }
    for lift in 1..=30 {
        case.lift(2, lift, 1.0);
    }
    assert_eq!(case.at(2.0).0.reentry_ms, None);
}

/// Any event.
fn any_event() -> impl Strategy<Value = Value> {
    let keys = prop_oneof![
        proptest::sample::select(ROWS.iter().map(|row| row.key).collect::<Vec<_>>()),
        proptest::sample::select(vec!["", "stop", "again", "edges", "4", "x"]),
    ];
    let whats = proptest::sample::select(vec![
        "step", "lift", "skip", "idle", "trigger", "kit_on", "kit_off", "fault",
    ]);
    (whats, keys, 0u32..4, 0u32..5, -30.0..200.0f64).prop_map(|(what, key, surface, lift, minute)| {
        json!({"what": what, "key": key, "surface": surface, "lift": lift,
            "at": {"ms": START + minute * MIN, "offset_min": -300}})
    })
}

proptest! {
    /// Whatever was marked: at most one next, never more done than there is, and what is next is not yet done.
    #[test]
    fn at_most_one_is_next(events in proptest::collection::vec(any_event(), 0..40), minute in 0.0..300.0f64) {
        let mut case = Case::new();
        for event in events {
            case.event(event);
        }
        let (day, _) = case.at(minute);
        let of = |state| day.steps.iter().filter(|step| step.state == state).count();
        prop_assert_eq!(of(StepState::Next), usize::from(day.next.is_some()));
        prop_assert_eq!(day.done as usize, of(StepState::Done));
        prop_assert!(day.done + day.skipped <= day.steps.len() as u32);
        for step in &day.steps {
            prop_assert_eq!(step.done_ms.is_some(), step.state == StepState::Done);
            if step.state == StepState::Done {
                prop_assert!(step.done_ms.unwrap() <= START + minute * MIN);
            }
        }
        if let Some(at) = day.next {
            let next = day.steps[at as usize];
            let now = START + minute * MIN;
            // Where it waits, nothing else of its phase could have been done.
            if next.ready_ms.is_some_and(|ready| ready > now) {
                let others = day.steps.iter().filter(|step| step.phase == next.phase);
                let sooner = others.filter(|step| step.state == StepState::Waiting).find(|step| {
                    step.ready_ms.is_some_and(|ready| ready < next.ready_ms.unwrap())
                });
                prop_assert_eq!(sooner, None);
            }
        }
    }

    /// Following what is next, and waiting where it says so, comes to an end with every line done.
    #[test]
    fn following_it_ends(first in "[1-4]", second in "[1-4]", step in 0.5..20.0f64) {
        let mut case = Case::new();
        case.job["surfaces"][0]["entries"][1]["text"] = json!(first);
        case.job["surfaces"][1]["entries"][1]["text"] = json!(second);
        let mut minute = 0.0;
        for _ in 0..60 {
            let Some((key, surface, lift, wait)) = case.next(minute) else { break };
            minute += wait.expect("a time") + if key == "lift" { step } else { 0.0 };
            if key == "lift" {
                case.lift(surface, lift, minute);
            } else {
                case.step(key, minute);
            }
        }
        let (day, _) = case.at(minute);
        prop_assert_eq!(day.next, None);
        prop_assert_eq!(day.done as usize, day.steps.len());
    }
}
