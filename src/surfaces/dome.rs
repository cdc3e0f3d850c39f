//! A dome: a cap of a sphere, by its diameter at the foot and its rise. The foam on it is taken as on a plane, which
//! for a dome foamed from below errs towards more foam.

use super::circle::Arc;
use super::family::{Family, Figure, Sizes};
use super::outline::Of;
use super::{Asked, Extent, Face, ShapeForm, Side, View};
use crate::job::Shape;
use core::f64::consts::PI;

pub(super) const FAMILY: Family = Family {
    figure: |sizes| {
        let (across, rise) = (sizes.of("diameter"), sizes.of("rise"));
        let width = extent(sizes).width_in;
        let cap = Arc::risen(across, rise);
        let corners = cap.corners(across, rise).into_iter().map(|(x, y)| (x + (width - across) / 2.0, y));
        let faces = vec![Face { name: "dome", corners: corners.collect(), foamed: true }];
        Figure { view: View::Section, faces, ..Figure::default() }
    },
    lines: |sizes, lines| {
        let (across, width) = (sizes.of("diameter"), extent(sizes).width_in);
        let left = (width - across) / 2.0;
        lines.put(Of::Surface("diameter"), Side::Bottom, 0, (left, left + across));
        lines.upright("rise");
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Dome,
    "round",
    &[Asked::needed("diameter"), Asked::needed("rise"), Asked::may("times")],
)
.openings();

/// π × (half the diameter² + rise²): the cap of a sphere, up to the whole of it.
fn extent(sizes: &Sizes) -> Extent {
    let (half, rise) = (sizes.of("diameter") / 2.0, sizes.of("rise"));
    // Past half a sphere it bulges over its foot.
    let width_in = if rise > half { 2.0 * Arc::risen(2.0 * half, rise).radius } else { 2.0 * half };
    Extent { width_in, height_in: rise, gross_ft2: PI * (half * half + rise * rise) / 144.0 }
}
