//! A roof plane from its plan and its pitch: length along the eave × plan run × √(1 + pitch²).

use super::family::{Family, Sizes};
use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FAMILY: Family = Family {
    parts: |sizes| vec![("slope_length", slope(sizes))],
    // The slope follows from the plan.
    lines: |_, lines| lines.plane("length", ""),
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::PitchedPlane,
    "roofs",
    &[
        Asked::needed("length"),
        Asked::needed("plan_run"),
        Asked::needed("pitch"),
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::framing("plies", false).against(),
        Asked::framing("plates", false),
        Asked::framing("framing_share", false),
        Asked::may("times"),
    ],
)
.placed()
.framed();

/// The length along the slope, in inches: plan run × √(1 + pitch²), the pitch being rise per run.
fn slope(sizes: &Sizes) -> f64 {
    sizes.of("plan_run") * slope_factor(sizes.of("pitch"))
}

/// How much longer a slope is than its run in the plan: √(1 + pitch²), the pitch being rise per run.
pub(super) fn slope_factor(pitch: f64) -> f64 {
    (1.0 + pitch * pitch).sqrt()
}

fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(sizes.of("length"), slope(sizes))
}
