//! A box duct wrapped outside, each of its four sides on or off.
//!
//! In words: the foam is length × (sides around × depth + corners × π × depth² ÷ 4): where two foamed sides meet,
//! the foam turns around the corner as a quarter of a circle.

use super::family::{Asking, Family, Figure, Sizes, Ways};
use super::outline::Of;
use super::{Asked, Extent, Face, Rect, ShapeForm, Side, View};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Shape};
use core::f64::consts::PI;

/// In the order in which they lie on the drawing, from below: around the duct.
const SIDES: [&str; 4] = ["side_bottom", "side_left", "side_top", "side_right"];

pub(super) const FAMILY: Family = Family {
    ways,
    parts: |sizes| {
        let (wide, high) = sides(sizes);
        vec![("wide_sides", wide), ("high_sides", high), ("around_length", around(sizes))]
    },
    wrap_ft2_in: |sizes| {
        let (wide, high) = sides(sizes);
        wide * high * PI / 4.0 * sizes.of("length") / 144.0
    },
    figure: |sizes| {
        let length = sizes.of("length");
        let mut low = 0.0;
        let faces = SIDES.into_iter().zip(across(sizes)).zip(sizes.takeoff.ways.off);
        let faces = faces.map(|((name, across), off)| {
            let top = low + across;
            let corners = Rect::between(0.0, low, length, top).corners();
            low = top;
            Face { name, corners, foamed: !off }
        });
        Figure { view: View::Unfolded, faces: faces.collect(), ..Figure::default() }
    },
    lines: |sizes, lines| {
        lines.put(Of::Surface("length"), Side::Bottom, 0, (0.0, sizes.of("length")));
        let (wide, high) = (sizes.of("width"), sizes.of("height"));
        lines.put(Of::Surface("width"), Side::Left, 0, (0.0, wide));
        lines.put(Of::Surface("height"), Side::Left, 0, (wide, wide + high));
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::BoxDuct,
    "ducts",
    &[
        Asked::needed("width"),
        Asked::needed("height"),
        Asked::needed("length"),
        Asked::may("side_top"),
        Asked::may("side_bottom"),
        Asked::may("side_left"),
        Asked::may("side_right"),
        Asked::may("times"),
    ],
);

fn ways(asking: &Asking, reader: &mut Reader) -> Option<Ways> {
    let [bottom, left, top, right] = SIDES.map(|side| asking.pressed(side, reader) == Some("no"));
    if bottom && left && top && right {
        reader.say(Finding::new(Code::NoSideFoamed, Part::Surface, asking.surface.id, "side_top"));
        return None;
    }
    Some(Ways { off: [bottom, left, top, right, true, true], ..Ways::default() })
}

/// How wide each side is.
fn across(sizes: &Sizes) -> [f64; 4] {
    let (wide, high) = (sizes.of("width"), sizes.of("height"));
    [wide, high, wide, high]
}

/// How many of its sides as wide and as high as the duct are foamed. Each of one kind meets each of the other at
/// a corner.
fn sides(sizes: &Sizes) -> (f64, f64) {
    let [bottom, left, top, right, ..] = sizes.foamed();
    (bottom + top, left + right)
}

/// The foamed sides, once around.
fn around(sizes: &Sizes) -> f64 {
    let (wide, high) = sides(sizes);
    wide * sizes.of("width") + high * sizes.of("height")
}

/// Foamed sides around × length.
fn extent(sizes: &Sizes) -> Extent {
    Extent {
        width_in: sizes.of("length"),
        height_in: 2.0 * (sizes.of("width") + sizes.of("height")),
        gross_ft2: around(sizes) * sizes.of("length") / 144.0,
    }
}
