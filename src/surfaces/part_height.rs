//! A band around a footprint or along a run, from one height to another.

use super::family::{Asking, Family, Sizes, Ways};
use super::footprint::around;
use super::outline::Of;
use super::{Asked, Extent, ShapeForm, Side};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Shape};

pub(super) const FAMILY: Family = Family {
    ways: |asking, reader| {
        crossing(asking, reader);
        Some(Ways::by(if asking.has("perimeter") { "typed" } else { "sides" }))
    },
    parts: |sizes| vec![("run_length", run(sizes))],
    lines: |sizes, lines| {
        match sizes.way() {
            "sides" => lines.walls(sizes),
            _ => lines.put(Of::Surface("perimeter"), Side::Bottom, 0, (0.0, run(sizes))),
        }
        lines.upright(if sizes.of("from_height") == 0.0 { "to_height" } else { "" });
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Band,
    "walls",
    &[
        Asked::may("perimeter"),
        Asked::needed("length").without("perimeter"),
        Asked::needed("width").without("perimeter"),
        Asked::may("from_height").against(),
        Asked::needed("to_height"),
        Asked::may("times"),
    ],
)
.openings();

/// Says so where the upper edge is no higher than the lower one.
pub(super) fn crossing(asking: &Asking, reader: &mut Reader) {
    if asking.complete && asking.of("from_height") >= asking.of("to_height") {
        reader.say(Finding::new(Code::HeightsCross, Part::Surface, asking.surface.id, "to_height"));
    }
}

/// The run, in inches: typed, or 2 × (length + width).
fn run(sizes: &Sizes) -> f64 {
    if sizes.way() == "typed" { sizes.of("perimeter") } else { around(sizes) }
}

/// Run × (upper − lower height).
fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(run(sizes), (sizes.of("to_height") - sizes.of("from_height")).max(0.0))
}
