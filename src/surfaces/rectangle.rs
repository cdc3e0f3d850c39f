//! A plane without framing, or a strip: length × height.

use super::family::{Family, Sizes};
use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FAMILY: Family = Family::new(FORM, extent);

const FORM: ShapeForm = ShapeForm::new(
    Shape::Rectangle,
    "flat",
    &[Asked::needed("length"), Asked::needed("height"), Asked::may("times")],
)
.placed();

fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(sizes.of("length"), sizes.of("height"))
}
