//! Round holes around pipes and wires: each a ring between the hole and what runs through it. No R is claimed.

use super::circle;
use super::family::{Family, Figure, Sizes};
use super::outline::Of;
use super::{Asked, Extent, Face, ShapeForm, Side, View};
use crate::findings::{Code, Finding};
use crate::job::{Part, Shape};
use crate::measure::Kind;
use core::f64::consts::PI;

/// Holes that are drawn; of more only the area is known.
const DRAWN: f64 = 60.0;

/// Corners of a round hole as drawn.
const CORNERS: u32 = 32;

/// From one hole to the next on the drawing, in hole sizes.
const APART: f64 = 1.25;

pub(super) const FAMILY: Family = Family {
    ways: |asking, reader| {
        let (hole, pipe) = (asking.of("hole_size"), asking.of("pipe_size"));
        if asking.complete && pipe >= hole && hole > 0.0 {
            let figure = |size| reader.figure(Kind::Length, size);
            let (given, most) = (figure(pipe), figure(hole));
            let finding = Finding::new(Code::PipeFillsHole, Part::Surface, asking.surface.id, "pipe_size");
            reader.say(finding.with("given", given).with("most", most));
            return None;
        }
        Some(Default::default())
    },
    figure,
    lines: |sizes, lines| {
        let (hole, extent) = (sizes.of("hole_size"), extent(sizes));
        if drawn(sizes) {
            let left = (APART - 1.0) / 2.0 * hole;
            lines.put(Of::Surface("hole_size"), Side::Bottom, 0, (left, left + hole));
            let pipe = sizes.of("pipe_size");
            let left = (APART * hole - pipe) / 2.0;
            lines.put(Of::Surface("pipe_size"), Side::Bottom, 1, (left, left + pipe));
        } else {
            lines.put(Of::Rest, Side::Bottom, 0, (0.0, extent.width_in));
        }
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Penetrations,
    "seals",
    &[
        Asked::needed("holes"),
        Asked::needed("hole_size"),
        Asked::may("pipe_size").against(),
        Asked::needed("depth").elsewhere(),
        Asked::may("times"),
    ],
);

/// π/4 × (hole² − pipe²) of each; drawn side by side in rows.
fn extent(sizes: &Sizes) -> Extent {
    let (hole, pipe) = (sizes.of("hole_size"), sizes.of("pipe_size"));
    let ring_in2 = PI / 4.0 * (hole * hole - pipe * pipe).max(0.0);
    let gross_ft2 = sizes.of("holes") * ring_in2 / 144.0;
    if !drawn(sizes) {
        let side = (gross_ft2 * 144.0).sqrt();
        return Extent { gross_ft2, ..Extent::plane(side, side) };
    }
    let (columns, rows) = grid(sizes.of("holes"));
    let apart = APART * hole;
    Extent { gross_ft2, ..Extent::plane(columns * apart, rows * apart) }
}

/// Whether each hole has a place on the drawing.
fn drawn(sizes: &Sizes) -> bool {
    let holes = sizes.of("holes");
    holes > 0.0 && holes <= DRAWN && sizes.of("hole_size") > 0.0
}

/// Columns and rows in which holes are drawn.
fn grid(holes: f64) -> (f64, f64) {
    let columns = holes.sqrt().ceil();
    (columns, (holes / columns).ceil())
}

fn figure(sizes: &Sizes) -> Figure {
    if !drawn(sizes) {
        return Figure { view: View::Size, ..Figure::default() };
    }
    let (holes, hole, pipe) = (sizes.of("holes"), sizes.of("hole_size"), sizes.of("pipe_size"));
    let (columns, rows) = grid(holes);
    let apart = APART * hole;
    let mut faces = Vec::new();
    for number in 0..holes as u32 {
        let number = f64::from(number);
        let row = (number / columns).floor();
        let (x, y) = ((number - row * columns + 0.5) * apart, (rows - row - 0.5) * apart);
        // A cut leads from the outer edge to the inner one and back, so that the ring is one outline.
        let mut corners = ring((x, y), hole);
        if pipe > 0.0 {
            corners.extend(ring((x, y), pipe).into_iter().rev());
        }
        faces.push(Face { name: "hole", corners, foamed: true });
    }
    Figure { faces, ..Figure::default() }
}

/// Once around, to where it began.
fn ring(middle: (f64, f64), across: f64) -> Vec<(f64, f64)> {
    let mut corners = circle::drawn(middle, across / 2.0, CORNERS);
    corners.extend(corners.first().copied());
    corners
}
