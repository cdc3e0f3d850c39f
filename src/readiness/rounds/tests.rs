//! Rounds of readings over a morning.

use super::*;
use crate::job::Now;
use serde_json::{Value, json};

const START: f64 = 1_792_012_200_000.0;
const MIN: f64 = 60_000.0;

fn reading(of: &str, name: &str, text: &str, minute: f64) -> Value {
    let field = if of == "humidity" { "humidity" } else { "temperature" };
    json!({"id": 1, "of": of, "name": name, "entries": [{"field": field, "text": text}],
        "taken": {"ms": START + minute * MIN, "offset_min": -300}})
}

/// Air, humidity and the surfaces of one round, a few minutes apart.
fn round(air: &str, humidity: &str, surfaces: &[(&str, &str)], minute: f64) -> Vec<Value> {
    let mut all = vec![reading("air", "", air, minute), reading("humidity", "", humidity, minute + 2.0)];
    all.extend(surfaces.iter().map(|(name, text)| reading("surface", name, text, minute + 5.0)));
    all
}

fn worked(entries: Value, rounds: &[Value], readings: &[Value]) -> Rounds {
    let job = json!({"format": "foamwright-job", "version": 4, "id": "test", "next_id": 100,
        "entries": entries, "rounds": rounds, "readings": readings});
    rounds_of(&job)
}

fn rounds_of(job: &Value) -> Rounds {
    rounds(&serde_json::from_value::<Job>(job.clone()).expect("a job"))
}

fn blame(first: Vec<Value>, now: Vec<Value>) -> Vec<Blame> {
    worked(json!([]), &first, &now).blame
}

#[test]
fn what_each_spot_did_oldest_first() {
    let mut earlier = round("50", "60", &[("North", "48")], 60.0);
    earlier.extend(round("45", "60", &[("North", "46"), ("South", "50")], 0.0));
    let found = worked(json!([]), &earlier, &round("55", "70", &[("north", "47"), ("Sill", "40")], 120.0));
    let of = |of, name: &str| found.series.iter().find(|one| one.of == of && one.name == name);
    let values = |of, name| -> Vec<f64> { self::values(of_series(&found, of, name)) };
    assert_eq!(values(ReadingOf::Surface, "North"), [46.0, 48.0, 47.0], "capitals are no other spot");
    assert_eq!(values(ReadingOf::Air, ""), [45.0, 50.0, 55.0]);
    assert!(
        of(ReadingOf::Surface, "South").is_none() && of(ReadingOf::Surface, "Sill").is_none(),
        "read once"
    );
    // The dew points of air and humidity of the same round: ASHRAE's equations, in moist_air.
    let dews = values(ReadingOf::DewPoint, "");
    let by_hand =
        [(45.0, 60.0), (50.0, 60.0), (55.0, 70.0)].map(|(air, wet)| dew_point(air, wet).expect("dew"));
    assert_eq!(dews, by_hand);
    assert_eq!(found.coldest, ["Sill", "north"]);
}

fn of_series<'a>(found: &'a Rounds, of: ReadingOf, name: &str) -> Option<&'a Series> {
    found.series.iter().find(|one| one.of == of && one.name == name)
}

fn values(series: Option<&Series>) -> Vec<f64> {
    series.map(|series| series.points.iter().map(|point| point.value).collect()).unwrap_or_default()
}

/// From 42 °F and 54 % the heater leads to 60 °F and 60 %: the dew point rises by 19 °F, the wall by 1.
#[test]
fn the_air_took_up_moisture() {
    let found = blame(round("42", "54", &[("Wall", "30")], 0.0), round("60", "60", &[("Wall", "31")], 90.0));
    let [one] = found.as_slice() else { panic!("{found:?}") };
    assert_eq!(one.moved, Moved::AirWetter);
    let (first, now) = (dew_point(42.0, 54.0).expect("dew"), dew_point(60.0, 60.0).expect("dew"));
    assert_eq!((one.dew_rose_f, one.surface_fell_f, one.above_f), (now - first, -1.0, 31.0 - now));
}

#[test]
fn the_surface_got_colder() {
    let found = blame(round("60", "40", &[("Rim", "55")], 0.0), round("60", "41", &[("Rim", "44")], 90.0));
    assert_eq!((found[0].moved, found[0].surface_fell_f), (Moved::SurfaceColder, 11.0));
}

/// The meters' error: 5 % and 1 °F make ±3 °F of a dew point, ±1 °F of a surface.
#[test]
fn within_the_meters_error_neither_moved() {
    let moved = |dew: f64, surface: f64| super::moved(dew, surface, 3.0, 1.0);
    assert_eq!(moved(3.0, 1.0), Moved::Neither);
    assert_eq!(moved(3.01, 1.0), Moved::AirWetter);
    assert_eq!(moved(3.0, 1.01), Moved::SurfaceColder);
    assert_eq!(moved(4.0, 4.5), Moved::SurfaceColder);
    assert_eq!(moved(4.5, 4.0), Moved::AirWetter);
    assert_eq!(moved(2.0, 1.5), Moved::SurfaceColder, "the dew point's rise is within its error");
    assert_eq!(moved(-3.01, 0.0), Moved::Better);
    assert_eq!(moved(0.0, -1.01), Moved::Better);
    // Both rose: what counts is whether the surface came nearer.
    assert_eq!(moved(4.0, -6.0), Moved::Better);
    assert_eq!(moved(6.0, -4.0), Moved::AirWetter);
    assert_eq!(moved(f64::NAN, f64::NAN), Moved::Neither);
    // A better meter, typed: a smaller error tells what the usual one cannot.
    let first = round("60", "40", &[("Rim", "55")], 0.0);
    let now = round("60", "43", &[("Rim", "55")], 90.0);
    assert_eq!(worked(json!([]), &first, &now).blame[0].moved, Moved::Neither);
    let better =
        json!([{"field": "meter_rh_error", "text": "2"}, {"field": "meter_temp_error", "text": "0.5"}]);
    assert_eq!(worked(better, &first, &now).blame[0].moved, Moved::AirWetter);
}

/// What has no time, no number or no partner is in no series and blames nothing.
#[test]
fn what_cannot_be_placed_blames_nothing() {
    let first = round("60", "40", &[("Rim", "55")], 0.0);
    // Only in the present round, or only in an earlier one.
    assert!(blame(vec![], first.clone()).is_empty());
    assert!(blame(first.clone(), round("60", "40", &[("Sill", "55")], 90.0)).is_empty());
    // No dew point near the present reading: humidity 16 minutes from the air.
    let far = vec![
        reading("air", "", "60", 90.0),
        reading("humidity", "", "60", 106.0),
        reading("surface", "Rim", "50", 90.0),
    ];
    assert!(blame(first.clone(), far).is_empty());
    let mut untimed = round("60", "60", &[("Rim", "50")], 90.0);
    untimed[2]["taken"] = Value::Null;
    assert!(blame(first.clone(), untimed).is_empty());
    let found = worked(json!([]), &first, &round("60", "wet", &[("Rim", "cold")], 90.0));
    assert!(found.blame.is_empty() && found.coldest.is_empty());
    // The same reading kept and still listed is one point.
    let found = worked(json!([]), &first, &first);
    assert_eq!(found, Rounds { series: vec![], blame: vec![], coldest: vec!["Rim".to_owned()] });
}

/// A dew point that a meter shows is taken as it is; the warmest air of the round goes with a humidity.
#[test]
fn dew_points_shown_and_worked_out() {
    let mut now = vec![reading("dew_point", "", "45", 90.0), reading("surface", "Rim", "50", 91.0)];
    let first = round("60", "40", &[("Rim", "55")], 0.0);
    let found = blame(first.clone(), now.clone());
    assert_eq!(found[0].above_f, 5.0);
    now.push(reading("air", "", "60", 90.0));
    now.push(reading("air", "Loft", "66", 95.0));
    now.push(reading("humidity", "", "60", 91.0));
    let found = blame(first, now);
    let warm = dew_point(66.0, 60.0).expect("dew");
    assert_eq!(found[0].above_f, 50.0 - warm, "the nearest in time, with the warmest air");
}

/// Earlier rounds count for nothing: the verdict is the same with and without them.
#[test]
fn rounds_never_touch_the_verdict() {
    let now = Now { ms: START + 100.0 * MIN, offset_min: -300 };
    let verdict = |rounds: Vec<Value>| {
        let job = json!({"format": "foamwright-job", "version": 4, "id": "test", "next_id": 100, "rounds": rounds,
            "readings": round("70", "40", &[("Rim", "66")], 90.0)});
        let job: Job = serde_json::from_value(job).expect("a job");
        crate::estimate(&job, now).readiness
    };
    let mut earlier = round("20", "99", &[("Rim", "10"), ("", "wide")], 0.0);
    earlier.push(reading("cylinder_a", "", "75", 1.0));
    assert_eq!(verdict(vec![]), verdict(earlier));
}
