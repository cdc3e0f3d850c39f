//! What metal profiles have more than their plane, over a grid, by the entries that a person would make.
//!
//! `cargo test --test ground_grid` writes `tmp/ground_grid.json` in the target folder, for
//! `tests/live/ground_check.py`, which integrates the same profiles numerically.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::job::{Reader, Surface};
use foamwright::measure::Units;
use foamwright::quantity::ground;
use serde_json::json;
use std::path::Path;

/// The length of sheet in one pitch, in inches, and what is more than the plane, in percent.
fn developed(on: &str, measures: &[(&str, f64)]) -> (f64, f64) {
    let measures = measures.iter().map(|(field, value)| (*field, format!("{value} in")));
    let entries = measures.chain([("ground", on.to_owned())]);
    let entries: Vec<_> = entries.map(|(field, text)| json!({ "field": field, "text": text })).collect();
    let surface = json!({ "id": 1, "name": "", "shape": "rectangle", "entries": entries });
    let surface: Surface = serde_json::from_value(surface).expect("a surface");
    let mut reader = Reader::new(Units::Us);
    let ground = ground(&surface, &mut reader).unwrap_or_else(|| panic!("{on}: {:?}", reader.findings));
    (ground.developed_in.expect("a profile").likely, ground.more_pct.likely)
}

#[test]
fn writes_the_grid() {
    let mut rows = Vec::new();
    for pitch in [1.25, 2.5, 3.0, 6.0, 9.0, 12.0, 24.0] {
        for share in [0.0, 0.0625, 0.125, 0.1875, 0.25, 0.375, 0.5] {
            let depth = pitch * share;
            let profile = [("rib_pitch", pitch), ("rib_depth", depth)];
            for (top, bottom) in [(0.0, 0.0), (0.125, 0.25), (0.25, 0.25), (0.25, 0.75), (0.0625, 0.5)] {
                let (top, bottom) = (top * pitch, bottom * pitch);
                let flats = [("rib_top", top), ("rib_bottom", bottom)];
                let (long, more) = developed("ribbed", &[&profile[..], &flats].concat());
                rows.push(json!(["ribbed", pitch, depth, top, bottom, long, more]));
            }
            for on in ["wave", "ribs"] {
                let (long, more) = developed(on, &profile);
                rows.push(json!([on, pitch, depth, 0.0, 0.0, long, more]));
            }
        }
    }
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("ground_grid.json");
    std::fs::write(path, serde_json::to_string(&json!({ "rows": rows })).unwrap()).unwrap();
}
