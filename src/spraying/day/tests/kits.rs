//! What each kit gave, and properties of any list of marks.

use super::*;

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
