//! Dew and frost points over a grid of air and humidity.
//!
//! `cargo test --test dew_grid` holds them against CoolProp's real-gas moist air, stored in
//! `tests/published/dew_point.json` (remade by `tests/oracles/dew_point.py`), and writes a finer grid of our
//! own to `tmp/dew_grid.json` in the target folder, for `tests/live/psychrolib_check.py`.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::readiness::moist_air::{
    FREEZING_F, dew_point, frost_point, saturation_over_ice, saturation_over_water,
};
use serde_json::{Value, json};
use std::path::Path;

/// What references other than a meter call the dew point: over water from freezing up, over ice below, with
/// humidity over ice where the air itself is at or below freezing.
fn dew_or_frost(air_f: f64, humidity_pct: f64) -> f64 {
    let humidity_over_water = if air_f <= FREEZING_F {
        humidity_pct * saturation_over_ice(air_f).unwrap() / saturation_over_water(air_f).unwrap()
    } else {
        humidity_pct
    };
    frost_point(air_f, humidity_over_water).unwrap_or_else(|| dew_point(air_f, humidity_pct).unwrap())
}

#[test]
fn agrees_with_a_real_gas_model() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/published/dew_point.json");
    let stored: Value = serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap();
    let rows = stored["rows"].as_array().unwrap();
    assert_eq!(rows.len(), 19 * 20);
    let (mut over_water, mut over_ice) = (0.0_f64, 0.0_f64);
    for row in rows {
        let [air, humidity, wanted] = [0, 1, 2].map(|column| row[column].as_f64().unwrap());
        let off = (dew_or_frost(air, humidity) - wanted).abs();
        if wanted < FREEZING_F { over_ice = over_ice.max(off) } else { over_water = over_water.max(off) }
    }
    println!("{}: over water within {over_water:.4} °F, over ice within {over_ice:.4} °F", stored["tool"]);
    // The reference is another formulation of saturation, over water and over ice, and adds the enhancement
    // factor of a real gas, which the Handbook's equations leave out: some hundredths of a degree on a dew
    // point, a tenth of what a site meter shows. A Magnus form would already be off by 0.05 °F, ice taken for
    // water by up to 6 °F.
    assert!(over_water < 0.03, "{over_water}");
    assert!(over_ice < 0.03, "{over_ice}");
}

#[test]
fn writes_the_grid_for_the_live_check() {
    let mut rows = Vec::new();
    for air in (-40..=140).step_by(2).map(f64::from) {
        for humidity in std::iter::once(1.0).chain((5..=100).step_by(5).map(f64::from)) {
            let dew = dew_point(air, humidity).unwrap();
            assert!(dew <= air + 1e-9, "{air} °F, {humidity} %: {dew}");
            if let Some(frost) = frost_point(air, humidity) {
                assert!(frost >= dew - 1e-9, "{air} °F, {humidity} %: frost {frost} under dew {dew}");
            }
            rows.push(json!([air, humidity, dew, dew_or_frost(air, humidity)]));
        }
    }
    assert_eq!(rows.len(), 91 * 21);
    let grid =
        json!({ "columns": ["air_f", "humidity_pct", "dew_over_water_f", "dew_or_frost_f"], "rows": rows });
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join("dew_grid.json");
    std::fs::write(&file, grid.to_string()).unwrap();
    println!("{}", file.display());
}
