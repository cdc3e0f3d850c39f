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

const FORM: ShapeForm = ShapeForm {
    shape: Shape::Footprint,
    group: "walls",
    entries: &[Asked::needed("length"), Asked::needed("width"), Asked::needed("height"), Asked::may("times")],
    openings: true,
    framing: false,
    places: false,
    legs: false,
};

/// The four walls unrolled side by side, so that what is drawn is the whole area.
fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(2.0 * (sizes.of("length") + sizes.of("width")), sizes.of("height"))
}
