//! A strip or bead that only seals: run × width. No R is claimed for it.

use super::family::{Family, Sizes};
use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FAMILY: Family =
    Family { lines: |_, lines| lines.plane("length", "strip_width"), ..Family::new(FORM, extent) };

const FORM: ShapeForm = ShapeForm::new(
    Shape::Strip,
    "seals",
    &[Asked::needed("length"), Asked::may("strip_width"), Asked::may("times")],
);

impl Shape {
    /// Whether foam on it may be said to insulate. What only seals (a strip, a gap, holes around pipes) claims no
    /// R: neither a promise nor a planning figure is made of its depth.
    pub fn claims_r(self) -> bool {
        !matches!(self, Self::Strip | Self::Gap | Self::Penetrations)
    }
}

fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(sizes.of("length"), sizes.of("strip_width"))
}
