//! The drawing of a surface: the same members and openings that its area is made of, with dimension lines.

use super::family::{Figure, Sizes};
use super::openings::Hole;
use super::takeoff::{Framing, Takeoff};
use super::{
    Column, Dimension, EdgeLine, Extent, MemberRect, OpeningRect, Outline, Piece, Rect, Side, View, net,
};
use crate::findings::At;
use crate::job::Part;
use crate::measure::{Kind, Style, Units, write};

/// More members than this are not drawn: no screen could show them.
pub(super) const DRAWN: usize = 2_000;

/// Anything shorter is not dimensioned.
const LEAST_IN: f64 = 1.0 / 32.0;

pub(super) fn outline(takeoff: &Takeoff, surface: u32, units: Units) -> Outline {
    let extent = takeoff.extent(Column::Likely);
    let (rects, mut members) = net::drawn(takeoff, Column::Likely);
    let placed = takeoff.holes.iter().filter(|hole| hole.place.is_some()).zip(rects);
    let placed: Vec<(&Hole, Rect)> = placed.filter(|(_, rect)| rect.w_in > 0.0 && rect.h_in > 0.0).collect();
    let too_many = members.len() > DRAWN;
    if too_many {
        members.clear();
    }
    let not_placed =
        takeoff.holes.iter().filter(|hole| hole.place.is_none() && hole.count.likely > 0.0).count();
    let openings =
        placed.iter().map(|(hole, rect)| OpeningRect { id: hole.id, name: hole.name.clone(), rect: *rect });
    let openings = openings.collect();
    let sizes = takeoff.sizes(Column::Likely);
    let Figure { view, polygon, faces, strips, bays, apart } = (takeoff.family.figure)(&sizes);
    let mut lines =
        Lines { surface, units, extent, placed: &placed, dimensions: Vec::new(), edges: Vec::new() };
    (takeoff.family.lines)(&sizes, &mut lines);
    lines.openings();
    if let Some(layout) = takeoff.layout(Column::Likely) {
        lines.spacing(layout.spacing_in, &members);
    }
    let exact = matches!(view, View::Elevation | View::Unrolled | View::Unfolded | View::Size);
    Outline {
        width_in: extent.width_in,
        height_in: extent.height_in,
        view,
        polygon,
        faces,
        strips,
        bays,
        members,
        openings,
        not_placed: not_placed as u32,
        dimensions: lines.dimensions,
        edges: lines.edges,
        true_shape: view != View::Size,
        net_drawn: exact
            && !too_many
            && !apart
            && not_placed == 0
            && !matches!(takeoff.framing, Framing::Share(_) | Framing::Spaced { .. }),
    }
}

/// Where equal parts of a length meet; none where they are more than could be drawn.
pub(super) fn edges(each: f64, whole: f64) -> Vec<f64> {
    if each < LEAST_IN || whole / each > DRAWN as f64 {
        return Vec::new();
    }
    (1..DRAWN).map(|n| n as f64 * each).take_while(|edge| *edge < whole - LEAST_IN).collect()
}

/// What a dimension line measures.
#[derive(Clone, Copy)]
pub(super) enum Of<'a> {
    /// A measure of the surface.
    Surface(&'a str),
    /// A measure of an opening, as long as it was entered.
    Opening(&'a Hole, &'a str, f64),
    /// An edge that is walked, as long as it was entered.
    Leg(u32, f64),
    /// What is left over between two others.
    Rest,
}

/// The dimension lines of one drawing.
pub(super) struct Lines<'a> {
    surface: u32,
    units: Units,
    extent: Extent,
    placed: &'a [(&'a Hole, Rect)],
    dimensions: Vec<Dimension>,
    edges: Vec<EdgeLine>,
}

impl Lines<'_> {
    /// Of a plane: one measure along it, under its openings, and one up; an empty one follows from others.
    pub(super) fn plane(&mut self, along: &str, up: &str) {
        let width = self.extent.width_in;
        let under = self.chain(self.placed, width);
        self.put(of_surface(along), Side::Bottom, under, (0.0, width));
        self.upright(up);
    }

    /// The whole height.
    pub(super) fn upright(&mut self, field: &str) {
        self.put(of_surface(field), Side::Left, 0, (0.0, self.extent.height_in));
    }

    /// The first row at the left that no opening takes.
    pub(super) fn rows_left(&self) -> u32 {
        self.placed.len() as u32 + 1
    }

    /// A line along an edge of a figure, from one corner to another.
    pub(super) fn edge(&mut self, of: Of, from: (f64, f64), to: (f64, f64)) {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = (dx * dx + dy * dy).sqrt();
        if length < LEAST_IN {
            return;
        }
        let (at, length) = self.named(of, length);
        let text = self.text(length);
        self.edges.push(EdgeLine { at, from, to, text });
    }

    /// How high each opening stands, and how high it is.
    fn openings(&mut self) {
        let height = self.extent.height_in;
        for (row, (hole, rect)) in (1..).zip(self.placed) {
            let sill = hole.place.map_or(0.0, |(_, sill)| sill);
            self.put(Of::Opening(hole, "sill", sill), Side::Left, row, (0.0, rect.y_in));
            let tall = Of::Opening(hole, "height", hole.height.likely);
            self.put(tall, Side::Left, row, (rect.y_in, rect.top_in()));
            self.put(Of::Rest, Side::Left, row, (rect.top_in(), height));
        }
    }

    /// From the left end to the right along the openings, each with its width and the rests between them; gives
    /// the row under it. An opening that stands over another one has no place in the chain: its width then gets
    /// a row of its own. Distances from the left end that the chain does not show are drawn above.
    fn chain(&mut self, placed: &[(&Hole, Rect)], width: f64) -> u32 {
        let mut order: Vec<&(&Hole, Rect)> = Vec::new();
        for one in placed {
            let place = order.partition_point(|other| other.1.x_in.total_cmp(&one.1.x_in).is_le());
            order.insert(place, one);
        }
        let (mut end, mut rows, mut above) = (0.0, 0, 0);
        for (hole, rect) in &order {
            let (left, right) = (rect.x_in, rect.right_in());
            let from_left =
                Of::Opening(hole, "from_left", hole.place.map_or(0.0, |(from_left, _)| from_left));
            let over = left < end - LEAST_IN;
            if end == 0.0 {
                self.put(from_left, Side::Bottom, 0, (0.0, left));
            } else {
                if !over {
                    self.put(Of::Rest, Side::Bottom, 0, (end, left));
                }
                self.put(from_left, Side::Top, above, (0.0, left));
                above += 1;
            }
            let row = if over { rows } else { 0 };
            self.put(Of::Opening(hole, "width", hole.width.likely), Side::Bottom, row, (left, right));
            rows = rows.max(1) + u32::from(over);
            if !over {
                end = right;
            }
        }
        if end > 0.0 {
            self.put(Of::Rest, Side::Bottom, 0, (end, width));
        }
        rows
    }

    /// The four walls of a footprint side by side.
    pub(super) fn walls(&mut self, sizes: &Sizes) {
        let (length, width) = (sizes.of("length"), sizes.of("width"));
        let walls = [
            (Of::Surface("length"), length),
            (Of::Surface("width"), width),
            (Of::Rest, length),
            (Of::Rest, width),
        ];
        let mut from = 0.0;
        for (of, wall) in walls {
            self.put(of, Side::Bottom, 0, (from, from + wall));
            from += wall;
        }
        self.put(Of::Rest, Side::Bottom, 1, (0.0, self.extent.width_in));
    }

    /// The spacing, from center to center of the first two whole layout members that are next to each other.
    fn spacing(&mut self, spacing_in: f64, members: &[MemberRect]) {
        let center = |one: &MemberRect| one.rect.x_in + one.rect.w_in / 2.0;
        let whole = || members.iter().filter(|one| one.piece == Piece::Stud).map(center);
        let pair =
            whole().zip(whole().skip(1)).find(|(left, right)| (right - left - spacing_in).abs() < LEAST_IN);
        if let Some(pair) = pair {
            let row = self.dimensions.iter().filter(|one| one.side == Side::Top).count() as u32;
            self.put(Of::Surface("spacing"), Side::Top, row, pair);
        }
    }

    /// A line along a side of the drawing.
    pub(super) fn put(&mut self, of: Of, side: Side, row: u32, (from_in, to_in): (f64, f64)) {
        if to_in - from_in < LEAST_IN {
            return;
        }
        let (at, length) = self.named(of, to_in - from_in);
        let text = self.text(length);
        self.dimensions.push(Dimension { at, side, row, from_in, to_in, text });
    }

    /// What it measures, and as long as it was entered.
    fn named(&self, of: Of, drawn: f64) -> (At, f64) {
        let (part, id, field, length) = match of {
            Of::Surface(field) => (Part::Surface, self.surface, field, drawn),
            Of::Opening(hole, field, length) => (Part::Opening, hole.id, field, length),
            Of::Leg(id, length) => (Part::Leg, id, "length", length),
            Of::Rest => (Part::Surface, self.surface, "", drawn),
        };
        (At { part, id, field: field.to_owned() }, length)
    }

    fn text(&self, length_in: f64) -> String {
        let style = match self.units {
            Units::Us => Style::FeetInches,
            Units::Metric => Style::Metric,
        };
        write(Kind::Length, length_in, style)
    }
}

fn of_surface(field: &str) -> Of<'_> {
    if field.is_empty() { Of::Rest } else { Of::Surface(field) }
}
