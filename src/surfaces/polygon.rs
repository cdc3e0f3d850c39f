//! Any plane, walked along its edges: its corners, and from them the area by the shoelace formula.

use super::family::{Family, Figure, Sizes};
use super::outline::Of;
use super::walk::{self, Corner};
use super::{Asked, Extent, ShapeForm};
use crate::job::Shape;

pub(super) const FAMILY: Family = Family {
    parts: |sizes| {
        let laid = walk::laid(sizes.legs(), sizes.column);
        let mut parts = vec![("perimeter_length", laid.perimeter)];
        parts.push(match laid.closing {
            Some(length) => ("closing_length", length),
            None => ("gap_length", laid.gap),
        });
        parts
    },
    figure: |sizes| Figure::plane(drawn(sizes).into_iter().map(|(_, corner)| corner).collect()),
    lines: |sizes, lines| {
        let corners = drawn(sizes);
        let next = corners.iter().cycle().skip(1);
        for ((of, from), (_, to)) in corners.iter().zip(next) {
            lines.edge(*of, *from, *to);
        }
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Polygon,
    "flat",
    &[
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::framing("framing_share", false),
        Asked::may("times"),
    ],
)
.openings()
.framed()
.walked();

/// Its corners counterclockwise from the lower left of the drawing, each with the edge that follows it.
fn drawn(sizes: &Sizes) -> Vec<(Of<'static>, Corner)> {
    let laid = walk::laid(sizes.legs(), sizes.column);
    let (low, _) = bounds(&laid.corners);
    let edge = |(number, corner): (usize, &Corner)| {
        let of = sizes.legs().get(number).map_or(Of::Rest, |leg| {
            Of::Leg(leg.id, leg.length.map_or(laid.closing.unwrap_or(0.0), |length| length.likely))
        });
        (of, (corner.0 - low.0, corner.1 - low.1))
    };
    let mut all: Vec<(Of, Corner)> = laid.corners.iter().enumerate().map(edge).collect();
    if walk::shoelace(&laid.corners) < 0.0 {
        // Walked clockwise: turned round, the edge that led to a corner follows it.
        let before: Vec<Of> =
            all.iter().cycle().skip(all.len().saturating_sub(1)).map(|one| one.0).take(all.len()).collect();
        for (one, of) in all.iter_mut().zip(before) {
            one.0 = of;
        }
        all.reverse();
    }
    all
}

fn bounds(corners: &[Corner]) -> (Corner, Corner) {
    let first = corners.first().copied().unwrap_or_default();
    corners.iter().fold((first, first), |(low, high), corner| {
        ((low.0.min(corner.0), low.1.min(corner.1)), (high.0.max(corner.0), high.1.max(corner.1)))
    })
}

fn extent(sizes: &Sizes) -> Extent {
    let corners = walk::laid(sizes.legs(), sizes.column).corners;
    let (low, high) = bounds(&corners);
    Extent {
        width_in: high.0 - low.0,
        height_in: high.1 - low.1,
        gross_ft2: walk::shoelace(&corners).abs() / 144.0,
    }
}
