//! A roof plane from its plan and its pitch: length along the eave × plan run × √(1 + pitch²).

use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FORM: ShapeForm = ShapeForm {
    shape: Shape::PitchedPlane,
    entries: &[
        Asked::needed("length"),
        Asked::needed("plan_run"),
        Asked::needed("pitch"),
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::framing("plates", false),
        Asked::framing("framing_share", false),
        Asked::may("times"),
    ],
    openings: true,
    framing: true,
    places: true,
};

/// The length along the slope, in inches: plan run × √(1 + pitch²), the pitch being rise per run.
pub(super) fn slope(measure: &dyn Fn(&str) -> f64) -> f64 {
    let pitch = measure("pitch");
    measure("plan_run") * (1.0 + pitch * pitch).sqrt()
}

pub(super) fn extent(measure: &dyn Fn(&str) -> f64) -> Extent {
    Extent::plane(measure("length"), slope(measure))
}
