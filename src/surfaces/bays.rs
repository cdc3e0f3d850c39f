//! Bays by count: so many along × so many rows × clear width × clear height.
//!
//! Without a count the bays follow from a run and a spacing: run ÷ spacing, a begun bay counting whole.

use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FORM: ShapeForm = ShapeForm {
    shape: Shape::Bays,
    entries: &[
        Asked::may("bays"),
        Asked::needed("run").without("bays"),
        Asked::may("spacing").without("bays"),
        Asked::may("rows"),
        Asked::needed("bay_width"),
        Asked::needed("bay_height"),
        Asked::may("times"),
    ],
    openings: false,
    framing: false,
    places: false,
};

/// Bays along the run: typed, or worked out. What a binary fraction may lose in the division starts no bay.
pub(super) fn along(measure: &dyn Fn(&str) -> f64, way: &str) -> f64 {
    match way {
        "count" => measure("bays"),
        _ if measure("spacing") > 0.0 => libm::ceil(measure("run") / measure("spacing") - 1e-9).max(0.0),
        _ => 0.0,
    }
}

/// The clear bays pushed together, as nothing between them is foamed.
pub(super) fn extent(measure: &dyn Fn(&str) -> f64, way: &str) -> Extent {
    Extent::plane(along(measure, way) * measure("bay_width"), measure("rows") * measure("bay_height"))
}
