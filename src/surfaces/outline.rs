//! The drawing of a surface: the same members and openings that its area is made of, with dimension lines.

use super::openings::Hole;
use super::rim_run;
use super::takeoff::{Framing, Takeoff};
use super::{Column, Dimension, Extent, MemberRect, OpeningRect, Outline, Piece, Rect, Side, net};
use crate::findings::At;
use crate::job::{Part, Shape};
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
    let (width, height) = (extent.width_in, extent.height_in);
    let value = |field: &str| takeoff.value(field, Column::Likely);
    let polygon = match takeoff.top(Column::Likely) {
        Some(top) => {
            vec![(0.0, 0.0), (width, 0.0), (width, top.eave), (width / 2.0, height), (0.0, top.eave)]
        }
        None => Vec::new(),
    };
    let mut strips = Vec::new();
    if takeoff.shape == Shape::RimRun {
        let [lap, ledge, _] = rim_run::heights(&value);
        strips.extend([lap, ledge].into_iter().filter(|edge| *edge > 0.0 && *edge < height));
        strips.dedup();
    }
    let mut bays = Vec::new();
    if takeoff.shape == Shape::Bays {
        let (each, row) = (value("bay_width"), value("bay_height"));
        bays = edges(each, width);
        strips = edges(row, height);
    }
    // Open block cores are somewhere else on the wall.
    let cores = takeoff.shape == Shape::RimRun && rim_run::cores_ft2(&value) > 0.0;
    let mut lines = Lines { surface, units, dimensions: Vec::new() };
    lines.draw(takeoff, extent, &placed, &members);
    Outline {
        width_in: extent.width_in,
        height_in: extent.height_in,
        polygon,
        strips,
        bays,
        members,
        openings,
        not_placed: not_placed as u32,
        dimensions: lines.dimensions,
        true_shape: takeoff.shape != Shape::TypedArea,
        net_drawn: !too_many && !cores && not_placed == 0 && !matches!(takeoff.framing, Framing::Share(_)),
    }
}

/// Where equal parts of a length meet; none where they are more than could be drawn.
fn edges(each: f64, whole: f64) -> Vec<f64> {
    if each < LEAST_IN || whole / each > DRAWN as f64 {
        return Vec::new();
    }
    (1..DRAWN).map(|n| n as f64 * each).take_while(|edge| *edge < whole - LEAST_IN).collect()
}

/// What a dimension line measures.
#[derive(Clone, Copy)]
enum Of<'a> {
    /// A measure of the surface.
    Surface(&'a str),
    /// A measure of an opening, as long as it was entered.
    Opening(&'a Hole, &'a str, f64),
    /// What is left over between two others.
    Rest,
}

struct Lines {
    surface: u32,
    units: Units,
    dimensions: Vec<Dimension>,
}

impl Lines {
    fn draw(&mut self, takeoff: &Takeoff, extent: Extent, placed: &[(&Hole, Rect)], members: &[MemberRect]) {
        let (width, height) = (extent.width_in, extent.height_in);
        match takeoff.shape {
            Shape::TypedArea => return,
            Shape::Footprint => self.walls(takeoff, width),
            Shape::Band if takeoff.way == "sides" => self.walls(takeoff, width),
            Shape::Band => self.put(Of::Surface("perimeter"), Side::Bottom, 0, (0.0, width)),
            Shape::RimRun => return self.rim(takeoff, (width, height), members),
            Shape::Bays => {
                let value = |field: &str| takeoff.value(field, Column::Likely);
                self.put(Of::Surface("bay_width"), Side::Bottom, 0, (0.0, value("bay_width")));
                self.put(Of::Rest, Side::Bottom, 1, (0.0, width));
                self.put(Of::Surface("bay_height"), Side::Left, 1, (0.0, value("bay_height")));
                return self.put(Of::Rest, Side::Left, 0, (0.0, height));
            }
            _ => {
                let under = self.chain(placed, width);
                self.put(Of::Surface("length"), Side::Bottom, under, (0.0, width));
            }
        }
        match takeoff.shape {
            Shape::FramedFloor => self.put(Of::Surface("width"), Side::Left, 0, (0.0, height)),
            Shape::Strip => self.put(Of::Surface("strip_width"), Side::Left, 0, (0.0, height)),
            Shape::Band if takeoff.value("from_height", Column::Likely) == 0.0 => {
                self.put(Of::Surface("to_height"), Side::Left, 0, (0.0, height));
            }
            // The slope follows from the plan, the ridge from wall and rise.
            Shape::PitchedPlane | Shape::Gable | Shape::Band => {
                self.put(Of::Rest, Side::Left, 0, (0.0, height));
            }
            _ => self.put(Of::Surface("height"), Side::Left, 0, (0.0, height)),
        }
        if let Some(top) = takeoff.top(Column::Likely) {
            let rise = if takeoff.way == "rise" { Of::Surface("rise") } else { Of::Rest };
            let row = placed.len() as u32 + 1;
            self.put(Of::Surface("wall_height"), Side::Left, row, (0.0, top.eave));
            self.put(rise, Side::Left, row, (top.eave, height));
        }
        for (row, (hole, rect)) in (1..).zip(placed) {
            let sill = hole.place.map_or(0.0, |(_, sill)| sill);
            self.put(Of::Opening(hole, "sill", sill), Side::Left, row, (0.0, rect.y_in));
            self.put(
                Of::Opening(hole, "height", hole.height.likely),
                Side::Left,
                row,
                (rect.y_in, rect.top_in()),
            );
            self.put(Of::Rest, Side::Left, row, (rect.top_in(), height));
        }
        if let Some(layout) = takeoff.layout(Column::Likely) {
            self.spacing(layout.spacing_in, members);
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

    /// A rim: its sides side by side, its strips one over the other.
    fn rim(&mut self, takeoff: &Takeoff, (width, height): (f64, f64), members: &[MemberRect]) {
        let value = |field: &str| takeoff.value(field, Column::Likely);
        let names = match (takeoff.way, takeoff.landing) {
            ("typed", "") => ["perimeter", ""],
            ("typed", _) | (_, "run") => ["landing_run", ""],
            ("landing", side) => [side, side],
            (_, "width") => ["width", "length"],
            _ => ["length", "width"],
        };
        let mut from = 0.0;
        let sides = rim_run::sides(&value, takeoff.way, takeoff.landing);
        for ((side, _), of) in sides.iter().zip(names.iter().chain(&["", ""])) {
            let of = if of.is_empty() { Of::Rest } else { Of::Surface(of) };
            self.put(of, Side::Bottom, 0, (from, from + side));
            from += side;
        }
        if sides.len() > 1 {
            let of = if takeoff.way == "typed" { Of::Surface("perimeter") } else { Of::Rest };
            self.put(of, Side::Bottom, 1, (0.0, width));
        }
        let [lap, ledge, top] = rim_run::heights(&value);
        self.put(Of::Surface("foundation_lap"), Side::Left, 1, (0.0, lap));
        self.put(Of::Surface("sill_lap"), Side::Left, 1, (lap, ledge));
        self.put(Of::Surface("band"), Side::Left, 1, (ledge, top));
        if ledge > 0.0 {
            self.put(Of::Rest, Side::Left, 0, (0.0, height));
        }
        if let Some(layout) = takeoff.layout(Column::Likely) {
            self.spacing(layout.spacing_in, members);
        }
    }

    /// The four walls side by side.
    fn walls(&mut self, takeoff: &Takeoff, run: f64) {
        let value = |field: &str| takeoff.value(field, Column::Likely);
        let (length, width) = (value("length"), value("width"));
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
        self.put(Of::Rest, Side::Bottom, 1, (0.0, run));
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

    fn put(&mut self, of: Of, side: Side, row: u32, (from_in, to_in): (f64, f64)) {
        if to_in - from_in < LEAST_IN {
            return;
        }
        let (part, id, field, length) = match of {
            Of::Surface(field) => (Part::Surface, self.surface, field, to_in - from_in),
            Of::Opening(hole, field, length) => (Part::Opening, hole.id, field, length),
            Of::Rest => (Part::Surface, self.surface, "", to_in - from_in),
        };
        let style = match self.units {
            Units::Us => Style::FeetInches,
            Units::Metric => Style::Metric,
        };
        let at = At { part, id, field: field.to_owned() };
        let text = write(Kind::Length, length, style);
        self.dimensions.push(Dimension { at, side, row, from_in, to_in, text });
    }
}
