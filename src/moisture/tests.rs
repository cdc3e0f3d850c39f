//! Moisture of a room, by hand and by its own laws.

use super::*;
use crate::job::Now;
use proptest::prelude::*;
use serde_json::{Value, json};

const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

/// A job with these entries and, of a surface, this reading.
fn job(entries: &[(&str, &str)], surface: Option<&str>) -> Value {
    let entries: Vec<_> = entries.iter().map(|(field, text)| json!({"field": field, "text": text})).collect();
    let readings: Vec<_> = surface
        .map(|text| {
            json!({"id": 7, "of": "surface", "name": "Steel", "taken": {"ms": NOW.ms - 9e9, "offset_min": -300},
                "entries": [{"field": "temperature", "text": text}]})
        })
        .into_iter()
        .collect();
    json!({"format": "foamwright-job", "version": 4, "id": "test", "next_id": 100, "foam": 3,
        "foams": [{"id": 3, "entries": []}], "entries": entries, "readings": readings})
}

fn worked(job: Value) -> (Moisture, Vec<Finding>) {
    let job: Job = serde_json::from_value(job).expect("a job");
    let estimate = crate::estimate(&job, NOW);
    (estimate.moisture, estimate.findings)
}

/// 30 × 40 × 10 ft, 30 °F and 80 % outdoors.
const SHOP: [(&str, &str); 5] = [
    ("room_length", "30 ft"),
    ("room_width", "40 ft"),
    ("room_height", "10 ft"),
    ("outdoor_air", "30 F"),
    ("outdoor_humidity", "80"),
];
const PROPANE: [(&str, &str); 2] = [("heater_fuel", "propane"), ("heater_power", "100000")];

fn shop(more: &[(&str, &str)], surface: Option<&str>) -> (Moisture, Vec<Finding>) {
    worked(job(&[&SHOP, more].concat(), surface))
}

/// A shop of 12,000 ft³ with 100,000 Btu/h of propane: dew points of 76, 60, 48 and 38 °F at ½, 1, 2 and 4 air changes, as a
/// spreadsheet over the same law gives them with 7.5 lb/h (stoichiometry: 7.55).
#[test]
fn an_unvented_heater_in_a_shop() {
    let (found, _) = shop(&[&PROPANE[..], &[("coldest_surface", "50 F")]].concat(), None);
    assert_eq!(found.room_ft3, Some(12_000.0));
    assert!((found.water_lb_hr.0 - 7.55).abs() < 0.01, "{:?}", found.water_lb_hr);
    assert!((found.outdoor_dew_f.expect("dew").0 - 24.6).abs() < 0.05);
    let dew = |changes: f64| {
        let one = found.at.iter().find(|one| one.changes == changes).expect("listed");
        assert_eq!(one.above_f, Some(50.0 - one.dew_f.0));
        one.dew_f.0.round()
    };
    assert_eq!([0.5, 1.0, 2.0, 4.0].map(dew), [76.0, 60.0, 48.0, 38.0]);
    assert_eq!(found.sealed_hour_dew_f.map(|dew| dew.0.round()), Some(60.0));
    // Steel at 50 °F: "go only above about 2½".
    let least = found.least_changes.expect("some do");
    assert!((2.3..2.6).contains(&least), "{least}");
    // At just so many the spread is kept to the last digit.
    let (at, _) = shop(&[&PROPANE[..], &[("coldest_surface", "50 F")]].concat(), None);
    let ratio = ratio_at(at.outdoor_dew_f.expect("dew").0).expect("in range");
    let dew = dew_of_ratio(ratio + at.water_lb_hr.0 / (AIR_LB_FT3 * 12_000.0 * least)).expect("in range");
    assert!((50.0 - 5.0 - dew).abs() < 1e-9, "{dew}");
}

#[test]
fn the_typed_air_changes_stand_in_their_place() {
    let (found, _) = shop(&[&PROPANE[..], &[("air_changes", "3")]].concat(), None);
    let listed: Vec<_> = found.at.iter().map(|one| one.changes).collect();
    assert_eq!(listed, [0.5, 1.0, 2.0, 3.0, 4.0, 8.0]);
    assert_eq!(found.at.iter().filter(|one| one.above_f.is_some()).count(), 0, "no surface is known");
    let (found, _) = shop(&[&PROPANE[..], &[("air_changes", "2")]].concat(), None);
    assert_eq!(found.at.len(), 5);
}

/// What was read stands in where nothing was typed, an old reading too; the typed one wins.
#[test]
fn the_coldest_surface() {
    assert_eq!(shop(&[], Some("52")).0.coldest_f, Some(Fahrenheit(52.0)));
    assert_eq!(shop(&[("coldest_surface", "48")], Some("52")).0.coldest_f, Some(Fahrenheit(48.0)));
    assert_eq!(shop(&[], None).0.coldest_f, None);
    assert_eq!(shop(&[("dew_spread", "7")], None).0.spread_f, 7.0);
    assert_eq!(shop(&[], None).0.spread_f, 5.0);
    assert_eq!(shop(&[("dew_spread", "wide")], None).0.spread_f, 5.0);
}

/// Half a source is no source, and without it nothing is foretold: it would be too dry.
#[test]
fn half_a_source_foretells_nothing() {
    let needed = |entries: &[(&str, &str)]| {
        let (found, findings) = shop(entries, None);
        assert!(found.at.is_empty() && found.sealed_hour_dew_f.is_none() && found.least_changes.is_none());
        let fields = findings.into_iter().filter(|one| one.code == Code::Needed).map(|one| one.at.field);
        fields.filter(|field| field != "length").collect::<Vec<_>>()
    };
    assert_eq!(needed(&[("heater_power", "100000")]), ["heater_fuel"]);
    assert_eq!(needed(&[("concrete_area", "400"), ("people_inside", "2")]), ["concrete_age"]);
    assert!(
        needed(&[("mud_weight", "many"), ("people_inside", "2")]).is_empty(),
        "its own finding stands there"
    );
    assert!(needed(&[]).is_empty(), "no source at all");
    assert!(needed(&[("heater_power", "0"), ("concrete_area", "0")]).is_empty());
    let (found, _) = shop(&[("heater_power", "0"), ("people_inside", "2")], None);
    assert_eq!(found.at.len(), 5, "a typed nothing gives nothing and holds nothing up");
}

/// A heater turns a spread that was kept into one that is not: said beside its power, at the air changes typed, or at those
/// of a closed room.
#[test]
fn a_heater_can_take_a_go_away() {
    let said = |more: &[(&str, &str)]| {
        let (_, findings) = shop(more, None);
        let found = findings.into_iter().find(|one| one.code == Code::HeaterWets)?;
        assert_eq!(
            (found.at.field.as_str(), found.severity),
            ("heater_power", crate::findings::Severity::Warn)
        );
        found.figures.into_iter().find(|one| one.name == "changes").map(|one| one.text)
    };
    let with =
        |more: &[(&'static str, &'static str)]| [&PROPANE[..], &[("coldest_surface", "50")], more].concat();
    assert_eq!(said(&with(&[])).as_deref(), Some("0.5"));
    assert_eq!(said(&with(&[("air_changes", "2")])).as_deref(), Some("2"));
    assert_eq!(said(&with(&[("air_changes", "2.6")])), None, "moved out as fast as it is made");
    assert_eq!(said(&[("coldest_surface", "50"), ("people_inside", "40")]), None, "no heater");
    assert_eq!(said(&PROPANE), None, "no surface");
}

/// Where the air outdoors is already too moist for the surface, no air changes help.
#[test]
fn no_air_changes_dry_a_surface_below_the_outdoor_dew_point() {
    let (found, _) = shop(&[&PROPANE[..], &[("coldest_surface", "29")]].concat(), None);
    assert_eq!(found.least_changes, None, "24.6 + 5 is over 29");
    assert_eq!(found.at.len(), 5);
}

#[test]
fn each_source_by_hand() {
    // From memory, as the words beside them say: 100 lb of compound, 40 % water in a day.
    assert!((mud_lb_hr(100.0) - 100.0 * 0.4 / 24.0).abs() < 1e-12);
    // 1,000 ft² at 28 days: 15 lb a day; at 7 days twice as much; at an hour as at a day.
    assert!((concrete_lb_hr(1_000.0, 28.0 * 1_440.0) * 24.0 - 15.0).abs() < 1e-9);
    assert!((concrete_lb_hr(1_000.0, 7.0 * 1_440.0) * 24.0 - 30.0).abs() < 1e-9);
    assert_eq!(concrete_lb_hr(1_000.0, 60.0), concrete_lb_hr(1_000.0, 1_440.0));
    assert!((people_lb_hr(2.0) - 1.19).abs() < 0.001);
    assert_eq!(heater_lb_hr("coal", 1.0), None);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 64, ..ProptestConfig::default() })]

    /// More air never raises the dew point, a bigger heater never lowers it, and what keeps the spread keeps it with more.
    #[test]
    fn more_air_is_never_wetter(btu in 1_000.0..500_000.0_f64, changes in 0.02..60.0_f64, coldest in 20.0..90.0_f64) {
        let (power, changed, cold) = (format!("{btu:.0}"), format!("{changes:.2}"), format!("{coldest:.1}"));
        let entries = [("heater_fuel", "kerosene"), ("heater_power", power.as_str()), ("air_changes", changed.as_str()),
            ("coldest_surface", cold.as_str())];
        let (found, _) = shop(&entries, None);
        for pair in found.at.windows(2) {
            prop_assert!(pair[0].changes < pair[1].changes && pair[1].dew_f.0 <= pair[0].dew_f.0);
        }
        prop_assert!(found.at.iter().all(|one| one.dew_f.0 >= found.outdoor_dew_f.expect("dew").0 - 1e-9));
        for one in &found.at {
            let keeps = one.above_f.expect("a surface") >= found.spread_f;
            prop_assert_eq!(keeps, found.least_changes.is_some_and(|least| one.changes >= least - 1e-12));
        }
        let more = format!("{:.0}", btu * 1.1 + 1.0);
        let (wetter, _) = shop(&[entries[0], ("heater_power", &more), entries[2], entries[3]], None);
        for (one, two) in found.at.iter().zip(&wetter.at) {
            prop_assert!(two.dew_f.0 > one.dew_f.0);
        }
    }
}
