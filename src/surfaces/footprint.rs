//! The walls around a rectangular footprint: 2 × (length + width) × height.

use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FORM: ShapeForm = ShapeForm {
    shape: Shape::Footprint,
    entries: &[Asked::needed("length"), Asked::needed("width"), Asked::needed("height"), Asked::may("times")],
    openings: true,
    framing: false,
    places: false,
};

/// The four walls unrolled side by side, so that what is drawn is the whole area.
pub(super) fn extent(measure: &dyn Fn(&str) -> f64) -> Extent {
    Extent::plane(2.0 * (measure("length") + measure("width")), measure("height"))
}
