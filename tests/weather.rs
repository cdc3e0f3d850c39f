//! What a forecast may do to a job: say when work may be possible, and nothing else.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod job_folders;

use foamwright::job::{Job, Now};
use foamwright::weather::{Says, Stretch, curve};
use job_folders::{all, opened};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::path::Path;

fn set(job: &mut Value, field: &str, text: &str) {
    let entries = job["entries"].as_array_mut().unwrap();
    entries.retain(|one| one["field"] != field);
    entries.push(json!({ "field": field, "text": text }));
}

fn day(id: u32, date: &str, low: &str, high: &str) -> Value {
    json!({ "id": id, "entries": [
        { "field": "date", "text": date }, { "field": "low", "text": low }, { "field": "high", "text": high }
    ] })
}

/// The best weather there is makes no verdict better, and takes no finding away.
#[test]
fn a_forecast_changes_no_verdict() {
    for folder in all() {
        let now: Now = opened(&folder.join("now.json"));
        let mut job: Value = opened(&folder.join("job.json"));
        let before = foamwright::estimate(&serde_json::from_value::<Job>(job.clone()).unwrap(), now);
        job["forecast"] =
            json!([day(901, "2026-10-14", "70 F", "75 F"), day(902, "2026-10-15", "70 F", "75 F")]);
        if job["entries"].is_null() {
            job["entries"] = json!([]);
        }
        for (field, text) in [("latitude", "48.1"), ("longitude", "11.6"), ("heated_air", "72 F")] {
            set(&mut job, field, text);
        }
        set(&mut job, "outer_wall", "sheathing_siding");
        let after = foamwright::estimate(&serde_json::from_value::<Job>(job).unwrap(), now);
        assert_eq!(before.readiness.verdict, after.readiness.verdict, "{}", folder.display());
        assert_eq!(before.readiness.checks, after.readiness.checks, "{}", folder.display());
        // What the job's own forecast had to say belongs to that one.
        let kept = before.findings.iter().filter(|one| one.at.part != foamwright::job::Part::Forecast);
        for found in kept {
            let place = matches!(found.at.field.as_str(), "longitude" | "latitude");
            assert!(place || after.findings.contains(found), "{}: {found:?}", folder.display());
        }
    }
}

fn fall_day(job: &Value) -> Vec<Stretch> {
    let job: Job = serde_json::from_value(job.clone()).unwrap();
    let now = Now { ms: 1_792_012_200_000.0, offset_min: 120 };
    foamwright::estimate(&job, now).weather.days[1].stretches.clone()
}

fn says(stretches: &[Stretch], minute: f64) -> Says {
    let here = stretches.iter().find(|one| minute >= one.from_min.0 && minute <= one.to_min.0);
    here.map_or(Says::Outside, |one| one.says)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever is said of a heated room and of masonry: an hour that is outside stays outside, and none becomes
    /// "inside" by it.
    #[test]
    fn what_surfaces_do_only_takes_away(
        low in 20..80_i32, swing in 0..40_i32, room in 40..110_i32, brick in any::<bool>(), wall in 0..3_usize,
    ) {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/jobs/hours-of-a-fall-day/job.json");
        let mut job: Value = opened(&file);
        for field in ["heated_air", "outer_wall", "masonry_kind"] {
            job["entries"].as_array_mut().unwrap().retain(|one| one["field"] != field);
        }
        job["forecast"][1] = day(302, "2026-10-16", &low.to_string(), &(low + swing).to_string());
        let bare = fall_day(&job);
        set(&mut job, "heated_air", &room.to_string());
        set(&mut job, "outer_wall", ["sheathing", "sheathing_siding", "block"][wall]);
        set(&mut job, "masonry_kind", if brick { "brick" } else { "concrete" });
        let with = fall_day(&job);
        for minute in (5..1_440).step_by(10).map(f64::from) {
            let (before, after) = (says(&bare, minute), says(&with, minute));
            prop_assert_eq!(before == Says::Outside, after == Says::Outside);
            prop_assert!(after != Says::Inside || before == Says::Inside);
        }
    }
}

/// A day is drawn from midnight to midnight, and a surface only where something was said of it.
#[test]
fn a_day_is_drawn() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/jobs/hours-of-a-fall-day/job.json");
    let mut job: Job = opened(&file);
    let now = Now { ms: 1_792_012_200_000.0, offset_min: 120 };
    let drawn = curve(&job, 302, now).unwrap();
    assert_eq!(drawn.from.0, 20_742.0 * 1_440.0);
    assert_eq!([drawn.air_f.len(), drawn.heated_f.len(), drawn.masonry_f.len()], [97; 3]);
    // One day ends as the next begins, but for what sunrise and sunset moved in a day.
    let next = curve(&job, 303, now).unwrap();
    assert!((drawn.air_f[96] - next.air_f[0]).abs() < 0.2, "{} {}", drawn.air_f[96], next.air_f[0]);
    job.entries.retain(|one| one.field != "masonry_kind");
    assert!(curve(&job, 302, now).unwrap().masonry_f.is_empty());
    assert!(curve(&job, 999, now).is_none());
}

/// A forecast of the days of the fall day's job with the dew points and ranges that are given, and nothing said of
/// surfaces.
fn bare(days: [Value; 3]) -> Value {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/jobs/hours-of-a-fall-day/job.json");
    let mut job: Value = opened(&file);
    for field in ["heated_air", "outer_wall", "masonry_kind"] {
        job["entries"].as_array_mut().unwrap().retain(|one| one["field"] != field);
    }
    job["forecast"] = days.into();
    job
}

fn steady(low: &str, high: &str, dew: Option<&str>) -> Value {
    let dates = [(301, "2026-10-15"), (302, "2026-10-16"), (303, "2026-10-17")];
    bare(dates.map(|(id, date)| {
        let mut day = day(id, date, low, high);
        if let Some(dew) = dew {
            day["entries"].as_array_mut().unwrap().push(json!({ "field": "dew", "text": dew }));
        }
        day
    }))
}

/// Surfaces stay 5 °F above the dew point (ASTM D7234 and the coating trade's rule): 70 °F against 69 °F is not dry.
#[test]
fn near_the_dew_point_is_measured_first() {
    let all = |job: &Value| fall_day(job).iter().map(|one| one.says).collect::<Vec<_>>();
    assert_eq!(all(&steady("70 F", "70 F", None)), [Says::Inside]);
    assert_eq!(all(&steady("70 F", "70 F", Some("65 F"))), [Says::Inside]);
    for dew in ["65.1 F", "69 F", "75 F", "60 to 66 F"] {
        assert_eq!(all(&steady("70 F", "70 F", Some(dew))), [Says::MeasureFirst], "{dew}");
    }
    // A night that comes near it, and a noon that does not: the air is inside all day.
    let day = fall_day(&steady("62 F", "84 F", Some("60 F")));
    assert_eq!((says(&day, 420.0), says(&day, 840.0)), (Says::MeasureFirst, Says::Inside), "{day:?}");
}

/// Of a range the low's low decides at the cold edge and the high's high at the hot one; what is likely decides what is
/// outside.
#[test]
fn both_ends_of_a_range_count() {
    let of = |low: &str, high: &str| fall_day(&steady(low, high, None));
    let at = |day: &[Stretch], minute| says(day, minute);
    // The least for air and surfaces is 60 °F, the most is 90 °F.
    assert_eq!(at(&of("65 F", "75 F"), 420.0), Says::Inside);
    assert_eq!(at(&of("58 to 72 F", "75 F"), 420.0), Says::MeasureFirst);
    assert_eq!(at(&of("65 F", "80 F"), 900.0), Says::Inside);
    assert_eq!(at(&of("65 F", "68 to 92 F"), 900.0), Says::MeasureFirst);
    // A high that may not be reached takes the noon away too.
    assert_eq!(at(&of("50 F", "80 F"), 900.0), Says::Inside);
    assert_eq!(at(&of("50 F", "58 to 102 F"), 900.0), Says::MeasureFirst);
    // Ends that cross say nothing for sure.
    assert!(of("60 to 80 F", "72 to 78 F").iter().all(|one| one.says != Says::Inside));
    let typed = |job: &Value| {
        let job: Job = serde_json::from_value(job.clone()).unwrap();
        foamwright::estimate(&job, Now { ms: 1_792_012_200_000.0, offset_min: 120 }).weather.days[1].clone()
    };
    let day = typed(&steady("40 to 50 F", "70 F", None));
    assert_eq!(day.low_f.0, 45.0, "what is drawn is likely");
}

/// A slab from 40 °F to the label's 60 °F: of ranges the slow ends, and no area, no plan.
#[test]
fn a_heat_plan_takes_the_slow_ends() {
    let plan = |given: &[(&str, &str)]| {
        let mut job = steady("70 F", "75 F", None);
        let usual = [
            ("heat_what", "slab"),
            ("heat_area", "400"),
            ("heat_thickness", "4 in"),
            ("heat_from", "40 F"),
            ("heat_air", "80 F"),
            ("heat_outside", "30 F"),
            ("tent_area", "900"),
        ];
        for (field, text) in usual.iter().chain(given) {
            set(&mut job, field, text);
        }
        let job: Job = serde_json::from_value(job).unwrap();
        foamwright::estimate(&job, Now { ms: 1_792_012_200_000.0, offset_min: 120 }).weather.heat
    };
    let hours = |given: &[(&str, &str)]| plan(given).unwrap().hours;
    assert_eq!(hours(&[("heat_air", "70 to 80 F")]), hours(&[("heat_air", "70 F")]));
    assert_eq!(hours(&[("heat_air", "60 to 80 F")]), None, "its low end never does it");
    assert_eq!(hours(&[("heat_from", "30 to 40 F")]), hours(&[("heat_from", "30 F")]));
    assert_eq!(hours(&[("heat_thickness", "4 to 6 in")]), hours(&[("heat_thickness", "6 in")]));
    assert_eq!(plan(&[("tent_area", "500 to 900"), ("heat_outside", "30 to 50 F")]), plan(&[]));
    assert!(plan(&[]).is_some_and(|plan| plan.hours.is_some_and(f64::is_finite)));
    assert_eq!(plan(&[("heat_area", "0")]), None);
}
