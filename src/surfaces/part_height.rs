//! A band around a footprint or along a run, from one height to another.

use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FORM: ShapeForm = ShapeForm {
    shape: Shape::Band,
    entries: &[
        Asked::may("perimeter"),
        Asked::needed("length").without("perimeter"),
        Asked::needed("width").without("perimeter"),
        Asked::may("from_height"),
        Asked::needed("to_height"),
        Asked::may("times"),
    ],
    openings: true,
    framing: false,
    places: false,
};

/// The run, in inches: typed, or 2 × (length + width).
pub(super) fn run(measure: &dyn Fn(&str) -> f64, way: &str) -> f64 {
    if way == "typed" { measure("perimeter") } else { 2.0 * (measure("length") + measure("width")) }
}

/// Run × (upper − lower height).
pub(super) fn extent(measure: &dyn Fn(&str) -> f64, way: &str) -> Extent {
    Extent::plane(run(measure, way), (measure("to_height") - measure("from_height")).max(0.0))
}
