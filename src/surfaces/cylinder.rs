//! A tank, a bin or a pipe, whole or a band of it, foamed inside or outside, with or without its ends.
//!
//! In words: the foam of the wall is π × height × (radius² − (radius − depth)²) inside and the reverse outside. An
//! end brings the corner where it meets the wall: inside it is in the wall's foam already, 2π × radius × depth²;
//! outside it is rounded, a quarter of a circle once around. What is of third order in the depth is left out.

use super::circle::{CORNERS, area_around, drawn};
use super::family::{Asking, Family, Figure, Sizes, Ways};
use super::outline::Of;
use super::part_height::crossing;
use super::{Asked, Extent, Face, Rect, ShapeForm, Side, View};
use crate::findings::{Code, Finding};
use crate::job::{Part, Shape};
use core::f64::consts::PI;

pub(super) const FAMILY: Family = Family {
    ways: |asking, reader| {
        crossing(asking, reader);
        let Some(side) = asking.pressed("side", reader) else {
            reader.say(Finding::new(Code::Needed, Part::Surface, asking.surface.id, "side"));
            return None;
        };
        let [top, bottom] = ["end_top", "end_bottom"].map(|end| asking.pressed(end, reader) != Some("yes"));
        Some(Ways { side, off: [top, bottom, true, true, true, true], ..around_way(asking) })
    },
    parts: |sizes| {
        vec![
            ("around_length", around(sizes)),
            ("ends", ends(sizes)),
            ("wall_ft2", wall_ft2(sizes)),
            ("ends_ft2", ends_ft2(sizes)),
        ]
    },
    wrap_ft2_in: |sizes| {
        let (wall, ends) = (PI * height(sizes), ends(sizes) * around(sizes));
        (if sizes.takeoff.ways.side == "inside" { -wall - ends } else { wall + PI / 4.0 * ends }) / 144.0
    },
    figure,
    lines: |sizes, lines| {
        let (around, low) = (around(sizes), bottom(sizes));
        let across = around / PI;
        let of = if sizes.way() == "diameter" { Of::Rest } else { Of::Surface("circumference") };
        lines.put(of, Side::Bottom, 0, (0.0, around));
        let tall = if sizes.of("from_height") == 0.0 { Of::Surface("to_height") } else { Of::Rest };
        lines.put(tall, Side::Left, 0, (low, low + height(sizes)));
        let of = if sizes.way() == "diameter" { Of::Surface("diameter") } else { Of::Rest };
        let end = if sizes.takeoff.ways.off[0] { 0.0 } else { low + height(sizes) };
        if ends(sizes) > 0.0 {
            lines.put(of, Side::Left, 1, (end, end + across));
        }
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Cylinder,
    "round",
    &[
        Asked::may("diameter"),
        Asked::needed("circumference").without("diameter"),
        Asked::needed("to_height"),
        Asked::may("from_height").against(),
        Asked::may("end_top"),
        Asked::may("end_bottom"),
        Asked::needed("side"),
        Asked::may("times"),
    ],
)
.openings();

/// Whether a round surface was measured across or around.
pub(super) fn around_way(asking: &Asking) -> Ways {
    Ways::by(if asking.has("diameter") { "diameter" } else { "circumference" })
}

/// Once around, in inches: typed, or π × diameter.
pub(super) fn around(sizes: &Sizes) -> f64 {
    if sizes.way() == "diameter" { PI * sizes.of("diameter") } else { sizes.of("circumference") }
}

fn height(sizes: &Sizes) -> f64 {
    (sizes.of("to_height") - sizes.of("from_height")).max(0.0)
}

/// How many ends are foamed.
fn ends(sizes: &Sizes) -> f64 {
    sizes.foamed().iter().sum()
}

fn wall_ft2(sizes: &Sizes) -> f64 {
    around(sizes) * height(sizes) / 144.0
}

fn ends_ft2(sizes: &Sizes) -> f64 {
    ends(sizes) * area_around(around(sizes)) / 144.0
}

/// Where the wall stands on the drawing: over its lower end.
fn bottom(sizes: &Sizes) -> f64 {
    if sizes.takeoff.ways.off[1] { 0.0 } else { around(sizes) / PI }
}

/// The wall unrolled, a foamed end over and under it.
fn figure(sizes: &Sizes) -> Figure {
    let (around, low, tall) = (around(sizes), bottom(sizes), height(sizes));
    let radius = around / PI / 2.0;
    let wall = Rect::between(0.0, low, around, low + tall).corners();
    let mut faces = vec![Face { name: "wall", corners: wall, foamed: true }];
    let [top, under, ..] = sizes.takeoff.ways.off;
    for (off, name, middle) in [(top, "end_top", low + tall + radius), (under, "end_bottom", radius)] {
        if !off {
            faces.push(Face { name, corners: drawn((around / 2.0, middle), radius, CORNERS), foamed: true });
        }
    }
    Figure { view: View::Unrolled, faces, ..Figure::default() }
}

/// Circumference × height + ends × radius² × π.
fn extent(sizes: &Sizes) -> Extent {
    let across = around(sizes) / PI;
    Extent {
        width_in: around(sizes),
        height_in: height(sizes) + ends(sizes) * across,
        gross_ft2: wall_ft2(sizes) + ends_ft2(sizes),
    }
}
