//! A strip or bead that only seals: run × width. No R is claimed for it.

use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FORM: ShapeForm = ShapeForm {
    shape: Shape::Strip,
    entries: &[Asked::needed("length"), Asked::may("strip_width"), Asked::may("times")],
    openings: false,
    framing: false,
    places: false,
};

impl Shape {
    /// Whether foam on it may be said to insulate. A strip that only seals claims no R: neither a promise nor a
    /// planning figure is made of its depth.
    pub fn claims_r(self) -> bool {
        self != Self::Strip
    }
}

pub(super) fn extent(measure: &dyn Fn(&str) -> f64) -> Extent {
    Extent::plane(measure("length"), measure("strip_width"))
}
