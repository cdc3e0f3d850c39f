//! A round duct or a pipe wrapped outside.
//!
//! In words: the foam is length × π × ((radius + depth)² − radius²).

use super::cylinder::{around, around_way};
use super::family::{Family, Figure, Sizes};
use super::{Asked, Extent, ShapeForm, View};
use crate::job::Shape;
use core::f64::consts::PI;

pub(super) const FAMILY: Family = Family {
    ways: |asking, _| Some(around_way(asking)),
    parts: |sizes| vec![("around_length", around(sizes))],
    wrap_ft2_in: |sizes| PI * sizes.of("length") / 144.0,
    figure: |_| Figure { view: View::Unrolled, ..Figure::default() },
    lines: |sizes, lines| {
        lines.plane("length", if sizes.way() == "diameter" { "" } else { "circumference" });
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::RoundDuct,
    "ducts",
    &[
        Asked::may("diameter"),
        Asked::needed("circumference").without("diameter"),
        Asked::needed("length"),
        Asked::may("times"),
    ],
);

/// Circumference × length.
fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(sizes.of("length"), around(sizes))
}
