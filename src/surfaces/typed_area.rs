//! An area typed as such: framing and openings are out of it already.

use super::family::{Family, Figure, Sizes};
use super::{Asked, Extent, ShapeForm, View};
use crate::job::Shape;

pub(super) const FAMILY: Family = Family {
    figure: |_| Figure { view: View::Size, ..Figure::default() },
    lines: |_, _| {},
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm =
    ShapeForm::new(Shape::TypedArea, "flat", &[Asked::needed("area"), Asked::may("times")]);

/// Drawn as a square of its size, since nothing is known of its shape.
fn extent(sizes: &Sizes) -> Extent {
    let gross_ft2 = sizes.of("area");
    let side_in = (gross_ft2 * 144.0).sqrt();
    Extent { width_in: side_in, height_in: side_in, gross_ft2 }
}
