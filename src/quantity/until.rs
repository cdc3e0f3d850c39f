//! What is known of a surface's foam while a measure is missing: so much for every so much of it.

use super::spread;
use crate::depth::Depth;
use crate::job::{Part, Reader, Shape, Surface};
use crate::measure::{Band, BoardFeet, Inches, SquareFeet, Units};
use serde::Serialize;

/// The foam for each 100 ft² (10 m²) of a surface that is not measured, or for each foot (meter) of its run where
/// only that is missing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Until {
    /// What is told: `run`, a piece of the run; `area`, a piece of the area.
    pub by: &'static str,
    /// For a run: the height or width across it, in inches.
    pub across_length: Option<Band<f64>>,
    /// For a run: the piece of it that is told, one foot or one meter, in inches.
    pub run_length: Option<f64>,
    /// The area that is told: of a piece of the run, before openings and framing; else of 100 ft² or 10 m² to foam.
    pub area_ft2: Band<SquareFeet>,
    /// What is added there: the aim less the foam that is there.
    pub add_in: Band<Inches>,
    /// What an uneven or curved ground takes more, in percent.
    pub uneven_pct: Band<f64>,
    /// The foam in place on that area.
    pub feet: Band<BoardFeet>,
}

/// The foam for a piece of a surface whose depth is known and whose area is not.
///
/// In words: feet = area × what is added × (1 + uneven ÷ 100); the area is 100 ft² (10 m² in a metric job), or one
/// foot (one meter) of the run × the height or width across it. Patches have areas or shares of their own, so
/// nothing is told of a surface that has some; nor of what is wrapped, whose foam is not its area × its depth.
pub fn until(surface: &Surface, depth: &Depth, uneven_pct: Band<f64>, units: Units) -> Option<Until> {
    let wrapped = matches!(surface.shape, Shape::Cylinder | Shape::BoxDuct | Shape::RoundDuct);
    if wrapped || !surface.patches.is_empty() {
        return None;
    }
    let metric = units == Units::Metric;
    let across_length = across(surface, units);
    let run_length = across_length.map(|_| if metric { 1000.0 / 25.4 } else { 12.0 });
    let area_ft2 = match across_length.zip(run_length) {
        Some((across, run)) => across.map(|across| SquareFeet(across * run / 144.0)),
        None => Band::exactly(SquareFeet(if metric { 10.0 / 0.092_903_04 } else { 100.0 })),
    };
    let add_in = depth.add_in();
    let flat = spread(area_ft2, add_in);
    let more = |feet: BoardFeet, percent: f64| BoardFeet(feet.0 * (1.0 + percent / 100.0));
    let feet = Band {
        low: more(flat.low, uneven_pct.low),
        likely: more(flat.likely, uneven_pct.likely),
        high: more(flat.high, uneven_pct.high),
    };
    let by = if across_length.is_some() { "run" } else { "area" };
    Some(Until { by, across_length, run_length, area_ft2, add_in, uneven_pct, feet })
}

/// The measure across the run of a plane, where it is known and the run is not.
fn across(surface: &Surface, units: Units) -> Option<Band<f64>> {
    let field = match surface.shape {
        Shape::Rectangle | Shape::FramedWall | Shape::FramedSlope => "height",
        Shape::FramedFloor => "width",
        Shape::Strip => "strip_width",
        _ => return None,
    };
    // What there is to say of the entries was said when the surface was measured.
    let mut quiet = Reader::new(units);
    let mut value = |field| quiet.take(Part::Surface, surface.id, &surface.entries, field);
    if value("length").is_some() {
        return None;
    }
    value(field).map(|taken| taken.value)
}
