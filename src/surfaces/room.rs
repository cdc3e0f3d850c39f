//! A room of six faces, each on or off: floor, ceiling and four walls, unfolded in true size.
//!
//! The walls stand side by side as one walks around them with the front first; the floor hangs under the front
//! wall and the ceiling over it.

use super::family::{Family, Figure, Sizes, Ways};
use super::outline::Of;
use super::{Asked, Extent, Face, Rect, ShapeForm, Side, View};
use crate::job::Shape;

/// A face: its field and name, and what its area is called.
const FACES: [(&str, &str); 6] = [
    ("floor", "floor_ft2"),
    ("ceiling", "ceiling_ft2"),
    ("front_wall", "front_ft2"),
    ("right_wall", "right_ft2"),
    ("back_wall", "back_ft2"),
    ("left_wall", "left_ft2"),
];

pub(super) const FAMILY: Family = Family {
    ways: |asking, reader| {
        let mut off = [false; 6];
        for (off, (field, _)) in off.iter_mut().zip(FACES) {
            *off = asking.pressed(field, reader) == Some("no");
        }
        Some(Ways { off, ..Ways::default() })
    },
    parts: |sizes| foamed(sizes).map(|((_, part), rect)| (part, rect.w_in * rect.h_in / 144.0)).collect(),
    walls: |sizes| {
        let walls = || foamed(sizes).filter(|((field, _), _)| field.ends_with("_wall")).map(|(_, rect)| rect);
        let width_in = walls().map(|rect| rect.w_in).fold(0.0, f64::max);
        let height_in = walls().map(|rect| rect.h_in).fold(0.0, f64::max);
        let gross_ft2 = walls().map(|rect| rect.w_in * rect.h_in / 144.0).sum();
        Some(Extent { width_in, height_in, gross_ft2 })
    },
    figure: |sizes| {
        let faces = FACES.iter().zip(rects(sizes)).zip(sizes.takeoff.ways.off);
        let faces =
            faces.map(|(((name, _), rect), off)| Face { name, corners: rect.corners(), foamed: !off });
        Figure { view: View::Unfolded, faces: faces.collect(), ..Figure::default() }
    },
    lines: |sizes, lines| {
        let (length, width, height) = (sizes.of("length"), sizes.of("width"), sizes.of("height"));
        lines.put(Of::Surface("length"), Side::Bottom, 0, (0.0, length));
        lines.put(Of::Surface("width"), Side::Left, 0, (0.0, width));
        lines.put(Of::Surface("height"), Side::Left, 0, (width, width + height));
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Room,
    "walls",
    &[
        Asked::needed("length"),
        Asked::needed("width"),
        Asked::needed("height"),
        Asked::may("floor"),
        Asked::may("ceiling"),
        Asked::may("front_wall"),
        Asked::may("right_wall"),
        Asked::may("back_wall"),
        Asked::may("left_wall"),
        Asked::may("times"),
    ],
)
.openings();

/// The faces that are on, each length × width, length × height or width × height.
fn extent(sizes: &Sizes) -> Extent {
    let (length, width, height) = (sizes.of("length"), sizes.of("width"), sizes.of("height"));
    let gross_ft2 = foamed(sizes).map(|(_, rect)| rect.w_in * rect.h_in / 144.0).sum();
    Extent { gross_ft2, ..Extent::plane(2.0 * (length + width), 2.0 * width + height) }
}

/// Where each face is drawn, in the order of [`FACES`].
fn rects(sizes: &Sizes) -> [Rect; 6] {
    let (length, width, height) = (sizes.of("length"), sizes.of("width"), sizes.of("height"));
    let at = |x_in, y_in, w_in, h_in| Rect { x_in, y_in, w_in, h_in };
    [
        at(0.0, 0.0, length, width),
        at(0.0, width + height, length, width),
        at(0.0, width, length, height),
        at(length, width, width, height),
        at(length + width, width, length, height),
        at(2.0 * length + width, width, width, height),
    ]
}

/// The faces that are on.
fn foamed(sizes: &Sizes) -> impl Iterator<Item = ((&'static str, &'static str), Rect)> {
    let off = sizes.takeoff.ways.off;
    FACES.into_iter().zip(rects(sizes)).zip(off).filter(|(_, off)| !off).map(|(face, _)| face)
}
