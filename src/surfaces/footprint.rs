//! The walls around a rectangular footprint: 2 × (length + width) × height.

use super::family::{Family, Sizes};
use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FAMILY: Family = Family {
    lines: |sizes, lines| {
        lines.walls(sizes);
        lines.upright("height");
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Footprint,
    "walls",
    &[Asked::needed("length"), Asked::needed("width"), Asked::needed("height"), Asked::may("times")],
)
.openings();

/// Once around: 2 × (length + width), in inches.
pub(super) fn around(sizes: &Sizes) -> f64 {
    2.0 * (sizes.of("length") + sizes.of("width"))
}

/// The four walls unrolled side by side, so that what is drawn is the whole area.
fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(around(sizes), sizes.of("height"))
}
