//! Air through the zone, cautions, and the van.

use super::*;
use crate::findings::Severity;
use crate::job::Now;
use proptest::prelude::*;
use serde_json::{Value, json};

const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

/// 100 ft² at 5 in: 500 board feet, for two Large kits.
fn job(entries: &[(&str, &str)]) -> Value {
    let listed = |entries: &[(&str, &str)]| -> Value {
        entries.iter().map(|(field, text)| json!({"field": field, "text": text})).collect()
    };
    json!({"format": "foamwright-job", "version": 4, "id": "test", "next_id": 100, "foam": 3,
        "entries": listed(entries),
        "surfaces": [{"id": 1, "shape": "typed_area", "entries": listed(&[("area", "100"), ("depth", "5")])}],
        "foams": [{"id": 3, "entries": []}],
        "kits": [{"id": 4, "sheet": "large", "name": "Large 480",
            "entries": listed(&[("label_yield", "480"), ("price", "750"), ("gross_weight", "104 lb")])}]})
}

fn worked(job: &Value) -> (People, Vec<Finding>) {
    let job: Job = serde_json::from_value(job.clone()).expect("a job");
    let estimate = crate::estimate(&job, NOW);
    (estimate.people, estimate.findings)
}

const ZONE: [(&str, &str); 3] = [("room_length", "20 ft"), ("room_width", "15 ft"), ("room_height", "8 ft")];

/// 2,400 ft³ and 350 cfm, down to 5 %: 20.54 min at K 1, 61.63 at K 3 (physics checks, worked apart with numpy).
#[test]
fn a_zone_and_its_fan() {
    let with = |more: &[(&str, &str)]| worked(&job(&[&ZONE, more].concat())).0.exhaust.expect("a zone");
    let bare = with(&[]);
    assert_eq!((bare.zone_ft3, bare.wanted.0), (2_400.0, 400.0), "ten air changes by default");
    assert_eq!((bare.flow, bare.flow_changes, bare.purge_min, bare.holds_5_pa), (None, None, None, None));
    let fan = with(&[("exhaust_flow", "350"), ("purge_left", "5"), ("mixing", "1")]);
    assert!((fan.purge_min.expect("minutes").0 - 20.542_164).abs() < 1e-6);
    assert_eq!(fan.flow_changes, Some(8.75));
    let usual = with(&[("exhaust_flow", "350"), ("purge_left", "5")]);
    assert!((usual.purge_min.expect("minutes").0 - 61.626_492).abs() < 1e-6, "K is 3 by default");
    let leaks = with(&[("leak_area", "20 in2")]);
    assert!((leaks.holds_5_pa.expect("flow").0 / 51.215_793 - 1.0).abs() < 0.005);
    assert!(worked(&job(&[("exhaust_flow", "350")])).0.exhaust.is_none(), "no zone");
    assert_eq!(with(&[("exhaust_flow", "0")]).purge_min, None);
    // Of a range the weaker fan and the worse mixing.
    let ranges = with(&[("exhaust_flow", "300 to 400"), ("mixing", "2 to 4")]);
    assert_eq!((ranges.flow.expect("flow").0, ranges.mixing), (300.0, 4.0));
}

#[test]
fn a_caution_stands_beside_its_answer_and_stops_nothing() {
    let all = [
        Code::OccupantsIn,
        Code::ExtraCare,
        Code::Sensitized,
        Code::NotIsolated,
        Code::AirHandlerOn,
        Code::FluePulled,
    ];
    let said = |entries: &[(&str, &str)]| -> Vec<(Code, String)> {
        let (_, findings) = worked(&job(entries));
        let mine = findings.into_iter().filter(|one| all.contains(&one.code));
        mine.inspect(|one| assert_ne!(one.severity, Severity::Stop))
            .map(|one| (one.code, one.at.field))
            .collect()
    };
    let one = |code: Code, field: &str| vec![(code, field.to_owned())];
    assert_eq!(said(&[("occupants", "in_house")]), one(Code::OccupantsIn, "occupants"));
    assert_eq!(said(&[("occupants", "away"), ("children", "no"), ("asthma", "not_known")]), []);
    assert_eq!(said(&[("children", "yes")]), one(Code::ExtraCare, "children"));
    assert_eq!(said(&[("sensitized", "yes")]), one(Code::Sensitized, "sensitized"));
    assert_eq!(said(&[("isolated", "no"), ("air_handler_off", "yes")]), one(Code::NotIsolated, "isolated"));
    assert_eq!(said(&[("air_handler_off", "no")]), one(Code::AirHandlerOn, "air_handler_off"));
    let fan = |answer| said(&[&ZONE[..], &[("exhaust_flow", "350"), ("flue_near", answer)]].concat());
    assert_eq!(fan("yes"), one(Code::FluePulled, "flue_near"));
    assert_eq!(fan("not_known"), one(Code::FluePulled, "flue_near"));
    assert_eq!(fan("no"), []);
    // A fan pulls whether or not its flow is known and the room was measured.
    assert_eq!(said(&[("flue_near", "yes")]), one(Code::FluePulled, "flue_near"));
    assert_eq!(said(&[("flue_near", "not_known")]), one(Code::FluePulled, "flue_near"));
}

#[test]
fn what_goes_into_the_van() {
    let (people, findings) = worked(&job(&[("crew", "2"), ("zone_entries", "3")]));
    let load = people.load;
    assert_eq!(load.kits, [LoadKit { kit: 4, owned: false, count: 2, gross_lb: Some(Pounds(104.0)) }]);
    assert_eq!((load.gross_lb, load.most_lb, load.over), (Some(Pounds(208.0)), Pounds(440.0), false));
    assert_eq!((load.suits, load.gloves, load.cartridges), (Some(6), Some(8), Some(2)));
    assert!(load.nozzles.is_some_and(|nozzles| nozzles > 0));
    assert!(!findings.iter().any(|one| one.code == Code::VehicleOver));
    assert_eq!(worked(&job(&[])).0.load.suits, None, "nobody said how many");
}

/// At the limit it may ride along, above it there is a note from memory, never a stop.
#[test]
fn over_what_a_vehicle_may_carry() {
    let at = |most: &str| {
        let (people, findings) = worked(&job(&[("vehicle_most", most)]));
        let said = findings.into_iter().find(|one| one.code == Code::VehicleOver);
        assert_eq!(people.load.over, said.is_some());
        said.map(|one| (one.severity, one.at.field, one.source))
    };
    assert_eq!(at("208"), None);
    assert_eq!(at("207.9"), Some((Severity::Note, "vehicle_most".to_owned(), "vehicle_most")));
    // A kit without a weight: no sum, but what is known may be too much already.
    let mut other = job(&[("vehicle_most", "100")]);
    other["kits"].as_array_mut().expect("kits").push(json!({"id": 5, "entries": [
        {"field": "label_yield", "text": "100"}, {"field": "price", "text": "900"}]}));
    other["purchase"] = json!({"buy": [{"kit": 4, "count": 1}, {"kit": 5, "count": 1}], "reason": ""});
    let load = worked(&other).0.load;
    assert_eq!((load.gross_lb, load.over, load.kits.len()), (None, true, 2));
}

/// Kits of the stock that count ride along; one of a known sheet weighs what that one says.
#[test]
fn kits_of_the_stock() {
    let mut with = job(&[]);
    with["stock"] = json!([
        {"id": 8, "sheet": "large", "entries": [
            {"field": "label_yield", "text": "480"}, {"field": "state", "text": "sealed"},
            {"field": "expires", "text": "2027-06-30"}]},
        {"id": 9, "sheet": "", "entries": [{"field": "label_yield", "text": "480"},
            {"field": "state", "text": "sealed"}, {"field": "expires", "text": "2020-01-01"}]},
    ]);
    let load = worked(&with).0.load;
    let kit = |kit, owned, count| LoadKit { kit, owned, count, gross_lb: Some(Pounds(104.0)) };
    assert_eq!(load.kits, [kit(4, false, 1), kit(8, true, 1)]);
    with["stock"][0]["sheet"] = json!("");
    let load = worked(&with).0.load;
    assert_eq!((load.kits[1].gross_lb, load.gross_lb), (None, None));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Worse mixing, less flow and less that may be left never shorten the estimate.
    #[test]
    fn worse_is_never_sooner(
        volume in 10.0..1e6_f64, flow in 1.0..1e5_f64, mixing in 1.0..10.0_f64, left in 0.01..50.0_f64, by in 1.0..3.0_f64,
    ) {
        let minutes = purge_min(volume, flow, mixing, left);
        prop_assert!(minutes > 0.0);
        prop_assert!(purge_min(volume, flow, mixing * by, left) >= minutes);
        prop_assert!(purge_min(volume, flow / by, mixing, left) >= minutes);
        prop_assert!(purge_min(volume, flow, mixing, left / by) >= minutes);
    }
}
