//! An area typed as such: framing and openings are out of it already.

use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FORM: ShapeForm = ShapeForm {
    shape: Shape::TypedArea,
    entries: &[Asked::needed("area"), Asked::may("times")],
    openings: false,
    framing: false,
    places: false,
};

/// Drawn as a square of its size, since nothing is known of its shape.
pub(super) fn extent(measure: &dyn Fn(&str) -> f64) -> Extent {
    let gross_ft2 = measure("area");
    let side_in = (gross_ft2 * 144.0).sqrt();
    Extent { width_in: side_in, height_in: side_in, gross_ft2 }
}
