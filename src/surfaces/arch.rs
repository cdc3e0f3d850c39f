//! A curved roof or an arch: a part of a circle along a length. The foam on it is taken as on a plane, which for a
//! roof foamed from below errs towards more foam.

use super::circle::{Arc, rise_of};
use super::family::{Asking, Family, Figure, Sizes, Ways};
use super::{Asked, Extent, ShapeForm, View};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Shape};
use crate::measure::Kind;

pub(super) const FAMILY: Family = Family {
    ways,
    parts: |sizes| vec![("arc_length", arc(sizes).length)],
    figure: |_| Figure { view: View::Unrolled, ..Figure::default() },
    lines: |_, lines| lines.plane("length", ""),
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Arch,
    "round",
    &[
        Asked::needed("span"),
        Asked::may("rise"),
        Asked::needed("radius").without("rise").against(),
        Asked::needed("length"),
        Asked::may("times"),
    ],
)
.openings();

/// By rise or by radius; `None` where no circle of that radius spans so far.
fn ways(asking: &Asking, reader: &mut Reader) -> Option<Ways> {
    if asking.has("rise") {
        return Some(Ways::by("rise"));
    }
    let (span, radius) = (asking.band("span"), asking.band("radius"));
    if asking.complete && span.high > 2.0 * radius.low {
        let finding = Finding::new(Code::RadiusTooShort, Part::Surface, asking.surface.id, "radius")
            .with("given", reader.figure(Kind::Length, radius.low))
            .with("least", reader.figure(Kind::Length, span.high / 2.0));
        reader.say(finding);
        return None;
    }
    Some(Ways::by("radius"))
}

fn arc(sizes: &Sizes) -> Arc {
    let span = sizes.of("span");
    let rise = if sizes.way() == "rise" { sizes.of("rise") } else { rise_of(span, sizes.of("radius")) };
    Arc::risen(span, rise)
}

/// Arc × length.
fn extent(sizes: &Sizes) -> Extent {
    Extent::plane(sizes.of("length"), arc(sizes).length)
}
