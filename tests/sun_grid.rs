//! Sunrise and sunset over a grid of latitudes and dates, through the whole estimate.
//!
//! `cargo test --test sun_grid` writes it to `tmp/sun_grid.json` in the target folder, for `tests/live/sun_check.py`.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::job::{Job, Now};
use foamwright::weather::Sun;
use serde_json::json;
use std::path::Path;

/// 2026-01-01 and 2027-01-01, in days since 1970-01-01.
const YEAR: std::ops::Range<u32> = 20_454..20_819;

fn date(day: u32) -> String {
    let (mut day, mut month) = (day - YEAR.start, 0);
    let long = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    while day >= long[month] {
        day -= long[month];
        month += 1;
    }
    format!("2026-{:02}-{:02}", month + 1, day + 1)
}

#[test]
fn writes_the_grid_for_the_live_check() {
    let mut rows = Vec::new();
    let (mut up, mut down) = (0, 0);
    for north in (-80..=80).step_by(4) {
        for east in [-156.8, -93.27, 2.35, 151.21] {
            // The clock of the zone that lies nearest.
            let offset = (east / 15.0_f64).round() as i32 * 60;
            let days: Vec<u32> = YEAR.step_by(9).collect();
            let forecast: Vec<_> = days.iter().map(|day| json!({ "id": day, "offset_min": offset, "entries": [
                { "field": "date", "text": date(*day) }, { "field": "low", "text": "40" }, { "field": "high", "text": "60" }
            ] })).collect();
            let job: Job = serde_json::from_value(json!({
                "format": "foamwright-job", "version": 4, "id": "sun", "next_id": 1, "forecast": forecast, "entries": [
                    { "field": "latitude", "text": north.to_string() },
                    { "field": "longitude", "text": east.to_string() }
                ]
            }))
            .unwrap();
            let estimate = foamwright::estimate(&job, Now { ms: 0.0, offset_min: 0 });
            assert_eq!(estimate.weather.days.len(), days.len(), "{north} {east}: {:?}", estimate.findings);
            for day in estimate.weather.days {
                let sun = match day.sun {
                    Sun::Rises => "rises",
                    Sun::NeverSets => "up",
                    Sun::NeverRises => "down",
                    Sun::NoPlace => panic!("{north} {east}"),
                };
                up += u32::from(sun == "up");
                down += u32::from(sun == "down");
                rows.push(json!([north, east, offset, day.day, sun, day.sunrise_min.0, day.sunset_min.0]));
            }
        }
    }
    assert_eq!(rows.len(), 41 * 4 * 41);
    assert!(up > 100 && down > 100, "polar days {up}, polar nights {down}");
    let columns = ["latitude", "longitude", "offset_min", "day", "sun", "sunrise_min", "sunset_min"];
    let grid = json!({ "columns": columns, "rows": rows });
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join("sun_grid.json");
    std::fs::write(&file, grid.to_string()).unwrap();
    println!("{}", file.display());
}
