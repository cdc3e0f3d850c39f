use super::*;
use crate::depth::{Around, choose};
use crate::measure::Units;
use proptest::prelude::*;
use serde_json::json;

/// The lifts of an aim, a largest and a least lift and a label's wait, and the codes found.
fn lifts_of(aim: &str, largest: &str, least: &str, wait: &str) -> (Option<Lifts>, Vec<Code>) {
    let job: crate::job::Job = serde_json::from_value(json!({
        "format": "foamwright-job", "version": 2, "id": "test", "next_id": 9,
        "surfaces": [{"id": 1, "shape": "typed_area", "entries": [{"field": "depth", "text": aim}]}],
        "foams": [{"id": 2, "entries": [
            {"field": "largest_lift", "text": largest},
            {"field": "least_lift", "text": least},
            {"field": "wait", "text": wait},
        ]}],
    }))
    .expect("a job");
    let mut reader = Reader::new(Units::Us);
    let foam = crate::foam::sheet(&job.foams[0], &mut reader).expect("a foam");
    let place = crate::climate::place(&job, &mut reader);
    let around = Around {
        job: &job,
        place: &place,
        surface: &job.surfaces[0],
        component: None,
        build: None,
        largest: None,
        area: None,
        foam: None,
        existing: None,
        spread_ft2: None,
        growth: 0.0,
        one_kit: None,
        left: None,
    };
    let depth = choose(around, &mut reader).expect("depths");
    let lifts = lifts(&job.surfaces[0], depth.add_in().likely, Inches(0.0), &foam, &mut reader);
    (lifts, reader.findings.iter().map(|one| one.code).filter(|code| *code != Code::Unlikely).collect())
}

fn count(aim: &str, largest: &str) -> u32 {
    lifts_of(aim, largest, "", "").0.expect("lifts").count
}

/// 3.00 in of 1 in lifts is three, never four (case A22); a thirty-second of an inch adds none, more does.
#[test]
fn a_thirty_second_adds_no_lift() {
    for (aim, largest, lifts) in [
        ("3.00", "1", 3),
        ("3 1/32", "1", 3),
        ("3 1/16", "1", 4),
        ("2 31/32", "1", 3),
        ("1/2", "1", 1),
        ("1 1/32", "1", 1),
        ("1.94", "1", 2),
        ("7", "1", 7),
        ("4", "1 1/2", 3),
        ("76.2 mm", "1", 3),
        ("3", "25.4 mm", 3),
        ("0.01", "1", 1),
    ] {
        assert_eq!(count(aim, largest), lifts, "{aim} in lifts of {largest}");
    }
    assert_eq!(lifts_of("0", "1", "", "").0, None);
}

/// 1.1 in of at most 1 in each is two of 0.55, under a least of ¾.
#[test]
fn lifts_that_fit_nowhere() {
    assert_eq!(lifts_of("1.1", "1", "3/4", "").1, [Code::LiftsCross]);
    assert_eq!(lifts_of("1.5", "1", "3/4", "").1, []);
    assert_eq!(lifts_of("1", "1", "3/4", "").1, []);
}

/// Over two inches no time is given: only the label's.
#[test]
fn thick_lifts_are_the_labels_matter() {
    let (lifts, codes) = lifts_of("6", "3", "", "");
    let lifts = lifts.expect("lifts");
    assert_eq!(
        (lifts.count, lifts.wait_by, lifts.wait_min, lifts.waits_min),
        (2, WaitBy::LabelOnly, None, None)
    );
    assert_eq!(codes, [Code::ThickLift]);
    assert_eq!(lifts_of("6", "3", "", "2 h").0.expect("lifts").wait_min, Some(Minutes(120.0)));
    assert_eq!(lifts_of("6", "2", "", "").1, []);
}

#[test]
fn the_longest_wait_counts() {
    for (aim, largest, label, wait, by) in [
        ("2", "1", "", 15.0, WaitBy::Practice),
        ("2", "1", "10 min", 15.0, WaitBy::Practice),
        ("2", "1", "15 min", 15.0, WaitBy::Label),
        ("2", "1", "30 min", 30.0, WaitBy::Label),
        ("4", "2", "", 20.0, WaitBy::Table),
        ("4", "2", "20 min", 20.0, WaitBy::Label),
        ("6", "2", "", 53.0, WaitBy::Table),
        ("3", "1", "", 15.0, WaitBy::Practice),
        ("4.5", "1.5", "", 34.0, WaitBy::Table),
    ] {
        let lifts = lifts_of(aim, largest, "", label).0.expect("lifts");
        assert_eq!((lifts.wait_min, lifts.wait_by), (Some(Minutes(wait)), by), "{aim} by {largest}, {label}");
        assert_eq!(lifts.waits_min, Some(Minutes(wait * f64::from(lifts.count - 1))));
    }
}

/// What the model gave for lifts on sheathing, in minutes until the core is below 120 °F, and for 2 in on foam
/// still at 70, 100 and 120 °F; the table never asks for less.
#[test]
fn the_table_lies_above_the_model() {
    for (inches, minutes) in [(0.5, 1.8), (1.0, 5.2), (1.5, 10.7), (2.0, 18.0)] {
        assert!(table_min(Inches(inches), 2).expect("a time").0 >= minutes, "{inches}");
    }
    for minutes in [34.0, 42.0, 53.0] {
        assert!(table_min(Inches(2.0), 3).expect("a time").0 >= minutes);
    }
    for none in [-0.1, 2.01, f64::NAN, f64::INFINITY] {
        assert_eq!(table_min(Inches(none), 2), None);
    }
}

proptest! {
    /// Equal lifts add up to the aim, and none passes the largest by more than the tolerance.
    #[test]
    fn lifts_add_up(aim in 0.1..30.0f64, largest in 0.1..6.0f64) {
        let (lifts, _) = lifts_of(&aim.to_string(), &largest.to_string(), "0", "");
        let lifts = lifts.unwrap();
        let each = lifts.each_in.0;
        prop_assert!((each * f64::from(lifts.count) - aim).abs() < 1e-9);
        prop_assert!(each * f64::from(lifts.count) <= largest * f64::from(lifts.count) + LIFT_TOLERANCE_IN + 1e-6);
        // One lift fewer would not do.
        if lifts.count > 1 {
            prop_assert!(aim / f64::from(lifts.count - 1) > largest);
        }
    }

    /// A thicker lift never waits less, and more of them never less than two.
    #[test]
    fn thicker_waits_longer(thin in 0.0..2.0f64, more in 0.0..2.0f64, count in 1u32..9) {
        let thick = (thin + more).min(2.0);
        prop_assert!(table_min(Inches(thin), count).unwrap() <= table_min(Inches(thick), count).unwrap());
        prop_assert!(table_min(Inches(thin), 2).unwrap() <= table_min(Inches(thin), count.max(2)).unwrap());
    }
}
