//! A plane without framing, or a strip: length × height.

use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FORM: ShapeForm = ShapeForm {
    shape: Shape::Rectangle,
    entries: &[Asked::needed("length"), Asked::needed("height"), Asked::may("times")],
    openings: true,
    framing: false,
    places: true,
};

pub(super) fn extent(measure: &dyn Fn(&str) -> f64) -> Extent {
    Extent::plane(measure("length"), measure("height"))
}
