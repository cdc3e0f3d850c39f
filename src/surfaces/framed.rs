//! Framed planes: a wall between its ends, a floor or ceiling, a roof slope.
//!
//! All three are length × the run of one member (stud, joist, rafter), with members on center along the
//! length. They differ in what the run is called and in how an opening is framed.

use super::members::Lay;
use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

const fn form(shape: Shape, entries: &'static [Asked]) -> ShapeForm {
    ShapeForm { shape, entries, openings: true, framing: true, places: true }
}

pub(super) const WALL: ShapeForm = form(Shape::FramedWall, BY_HEIGHT);
pub(super) const FLOOR: ShapeForm = form(Shape::FramedFloor, BY_WIDTH);
pub(super) const SLOPE: ShapeForm = form(Shape::FramedSlope, BY_HEIGHT);

const BY_HEIGHT: &[Asked] = &[
    Asked::needed("length"),
    Asked::needed("height"),
    Asked::framing("spacing", false),
    Asked::framing("member", true),
    Asked::framing("plates", false),
    Asked::framing("framing_share", false),
    Asked::may("times"),
];

const BY_WIDTH: &[Asked] = &[
    Asked::needed("length"),
    Asked::needed("width"),
    Asked::framing("spacing", false),
    Asked::framing("member", true),
    Asked::framing("plates", false),
    Asked::framing("framing_share", false),
    Asked::may("times"),
];

/// A wall or a slope: its members run up its height.
pub(super) fn extent_up(measure: &dyn Fn(&str) -> f64) -> Extent {
    Extent::plane(measure("length"), measure("height"))
}

/// A floor or ceiling: its members run across its width.
pub(super) fn extent_across(measure: &dyn Fn(&str) -> f64) -> Extent {
    Extent::plane(measure("length"), measure("width"))
}

/// How an opening is framed.
pub(super) fn lay(shape: Shape) -> Lay {
    match shape {
        Shape::FramedFloor | Shape::FramedSlope | Shape::PitchedPlane => Lay::Joists,
        _ => Lay::Studs,
    }
}
