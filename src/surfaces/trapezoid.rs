//! A trapezoid: the mean of its two parallel sides × the height between them.

use super::family::{Family, Figure, Sizes};
use super::outline::Of;
use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FAMILY: Family = Family {
    figure: |sizes| Figure::plane(corners(sizes).to_vec()),
    lines: |sizes, lines| {
        let [left, right, top_right, top_left] = corners(sizes);
        lines.edge(Of::Surface("length"), left, right);
        lines.edge(Of::Rest, right, top_right);
        lines.edge(Of::Surface("top"), top_right, top_left);
        lines.edge(Of::Rest, top_left, left);
        lines.upright("height");
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Trapezoid,
    "flat",
    &[
        Asked::needed("length"),
        Asked::needed("top"),
        Asked::needed("height"),
        Asked::may("top_offset"),
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::framing("framing_share", false),
        Asked::may("times"),
    ],
)
.openings()
.framed();

/// From the left end of the base to that of the top: over the middle unless it was entered. It moves the drawing
/// and not the area.
fn offset(sizes: &Sizes) -> f64 {
    match sizes.has("top_offset") {
        true => sizes.of("top_offset"),
        false => (sizes.of("length") - sizes.of("top")) / 2.0,
    }
}

/// Its corners, counterclockwise from the left end of the base.
fn corners(sizes: &Sizes) -> [(f64, f64); 4] {
    let (base, top, height, offset) =
        (sizes.of("length"), sizes.of("top"), sizes.of("height"), offset(sizes));
    let shift = (-offset).max(0.0);
    [(shift, 0.0), (shift + base, 0.0), (shift + offset + top, height), (shift + offset, height)]
}

/// (Base + top) ÷ 2 × height.
fn extent(sizes: &Sizes) -> Extent {
    let (base, top, height) = (sizes.of("length"), sizes.of("top"), sizes.of("height"));
    let offset = offset(sizes);
    let width_in = base.max(offset + top) - offset.min(0.0);
    Extent { width_in, height_in: height, gross_ft2: (base + top) / 2.0 * height / 144.0 }
}
