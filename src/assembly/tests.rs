use super::*;
use crate::climate::Component;
use crate::findings::{Code, Finding};
use crate::foam::{Foam, sheet};
use crate::job::{FoamSheet, Part, Reader, Surface, field};
use crate::measure::{Inches, RValue, Units};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::path::Path;

mod reading;
mod walls;

/// A sheet of foam with these rows: thickness in inches, R.
fn foam(rows: &[(f64, f64)]) -> Foam {
    let row = |(at, (inches, r)): (usize, &(f64, f64))| {
        json!({ "id": 100 + at, "entries": [
            { "field": "thickness", "text": format!("{inches} in") }, { "field": "r", "text": format!("{r}") }
        ] })
    };
    let rows: Vec<_> = rows.iter().enumerate().map(row).collect();
    let read: FoamSheet =
        serde_json::from_value(json!({ "id": 7, "entries": [], "r_at": rows })).expect("a sheet");
    let mut reader = Reader::new(Units::Us);
    let foam = sheet(&read, &mut reader).expect("defaults");
    assert_eq!(reader.findings, []);
    foam
}

/// Foam at R-6.0 an inch, listed to 8 in.
fn six() -> Foam {
    foam(&[(1.0, 6.0), (8.0, 48.0)])
}

/// A layer at R, of no thickness that is known.
fn at(position: Position, r: f64) -> LayerR {
    let (insulation, airy) = (position == Position::Cavity, position == Position::Cavity);
    LayerR { id: 1, material: "typed", position, thickness_in: None, r: RValue(r), insulation, airy }
}

fn wall(layers: &[(Position, f64)], share: f64, member_in: f64) -> Build {
    Build {
        layers: layers.iter().map(|(position, r)| at(*position, *r)).collect(),
        outside_film: RValue(0.17),
        inside_film: RValue(0.68),
        framing_share: Some(share),
        member_in: Some(Inches(member_in)),
        from_memory: false,
        steel: false,
        across: false,
        over_edges: false,
        whole_r: None,
        from_outside: false,
    }
}

fn u(build: &Build, foam: &Foam, depth: f64) -> f64 {
    build.with(foam, Inches(depth)).expect("a U").u
}

fn close(given: f64, wanted: f64, tolerance: f64) {
    assert!((given - wanted).abs() <= tolerance, "{given}, wanted {wanted}");
}
