//! A long gap filled with a bead: run × width of the gap. No R is claimed for it.

use super::family::{Family, Sizes};
use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FAMILY: Family =
    Family { lines: |_, lines| lines.plane("length", "gap_width"), ..Family::new(FORM, extent) };

const FORM: ShapeForm = ShapeForm::new(
    Shape::Gap,
    "seals",
    &[
        Asked::needed("length"),
        Asked::needed("gap_width"),
        Asked::needed("depth").elsewhere(),
        Asked::may("times"),
    ],
);

fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(sizes.of("length"), sizes.of("gap_width"))
}
