//! Framed planes: a wall between its ends, a floor or ceiling, a roof slope.
//!
//! All three are length × the run of one member (stud, joist, rafter), with members on center along the
//! length. They differ in what the run is called and in how an opening is framed.

use super::family::{Family, Sizes};
use super::members::Lay;
use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

const fn form(shape: Shape, group: &'static str, entries: &'static [Asked]) -> ShapeForm {
    ShapeForm::new(shape, group, entries).placed().framed()
}

pub(super) const WALL: Family = Family::new(form(Shape::FramedWall, "walls", BY_HEIGHT), extent_up);
pub(super) const FLOOR: Family = Family {
    lines: |_, lines| lines.plane("length", "width"),
    ..Family::new(form(Shape::FramedFloor, "roofs", BY_WIDTH), extent_across)
};
pub(super) const SLOPE: Family = Family::new(form(Shape::FramedSlope, "roofs", BY_HEIGHT), extent_up);

const BY_HEIGHT: &[Asked] = &[
    Asked::needed("length"),
    Asked::needed("height"),
    Asked::framing("spacing", false),
    Asked::framing("member", true),
    Asked::framing("plies", false).against(),
    Asked::framing("plates", false),
    Asked::framing("framing_share", false),
    Asked::may("times"),
];

const BY_WIDTH: &[Asked] = &[
    Asked::needed("length"),
    Asked::needed("width"),
    Asked::framing("spacing", false),
    Asked::framing("member", true),
    Asked::framing("plies", false).against(),
    Asked::framing("plates", false),
    Asked::framing("framing_share", false),
    Asked::may("times"),
];

/// A wall or a slope: its members run up its height.
fn extent_up(sizes: &Sizes) -> Extent {
    Extent::plane(sizes.of("length"), sizes.of("height"))
}

/// A floor or ceiling: its members run across its width.
fn extent_across(sizes: &Sizes) -> Extent {
    Extent::plane(sizes.of("length"), sizes.of("width"))
}

/// How an opening is framed.
pub(super) fn lay(shape: Shape) -> Lay {
    match shape {
        Shape::FramedFloor | Shape::FramedSlope | Shape::PitchedPlane => Lay::Joists,
        _ => Lay::Studs,
    }
}
