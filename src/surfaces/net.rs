//! Gross − openings − framing = net, in each of three columns.

use super::cover::cover;
use super::gable;
use super::members::layers;
use super::takeoff::{Framing, Takeoff};
use super::walk;
use super::{Column, FramingBy, Measure, MemberRect, OpeningArea, Piece, PieceSum, Rect, SurfaceArea};
use crate::measure::{Band, Inches, SquareFeet};

/// One column of a surface's areas, in square feet. `net = gross − openings − framing` holds exactly.
struct Areas {
    /// The outline of one of them.
    one: f64,
    gross: f64,
    /// What each opening takes out, in the order of the list: no spot is taken twice.
    taken: Vec<f64>,
    openings: f64,
    /// What the openings that have a place leave.
    clear: f64,
    /// What each kind of member has, by its rank.
    pieces: Vec<f64>,
    share_pct: f64,
    framing: f64,
    net: f64,
    wrap: f64,
    members: Vec<MemberRect>,
}

/// The openings that have a place, cut to the plane, and the members between them.
pub(super) fn drawn(takeoff: &Takeoff, column: Column) -> (Vec<Rect>, Vec<MemberRect>) {
    let extent = takeoff.extent(column);
    let plane = Rect::between(0.0, 0.0, extent.width_in, extent.height_in);
    let nothing = Rect::between(0.0, 0.0, 0.0, 0.0);
    let placed = takeoff.holes.iter().filter_map(|hole| hole.rect(column));
    // An opening that lies wholly outside keeps its rank, without any area.
    let openings: Vec<Rect> = placed.map(|rect| rect.within(plane).unwrap_or(nothing)).collect();
    let inside: Vec<Rect> = openings.iter().copied().filter(|rect| *rect != nothing).collect();
    let members = takeoff.layout(column).map(|layout| match takeoff.family.members {
        Some(members) => members(&takeoff.sizes(column), &layout),
        None => layout.members(extent.width_in, extent.height_in, &inside),
    });
    let members = members.unwrap_or_default();
    let members = match takeoff.top(column) {
        Some(top) => gable::cut(members, top),
        None => members,
    };
    (openings, members)
}

fn areas(takeoff: &Takeoff, column: Column) -> Areas {
    let gross = takeoff.extent(column).gross_ft2;
    let (rects, members) = drawn(takeoff, column);
    let has = cover(&layers(&rects, &members), rects.len() + Piece::ALL.len(), takeoff.top(column));
    let mut placed = has.iter().map(|area| area / 144.0);
    let mut taken: Vec<f64> = takeoff
        .holes
        .iter()
        .map(|hole| if hole.place.is_some() { placed.next().unwrap_or(0.0) } else { 0.0 })
        .collect();
    let pieces: Vec<f64> = placed.collect();

    let clear = (gross - taken.iter().sum::<f64>()).max(0.0);
    let mut left = clear.min(takeoff.opened(column).gross_ft2);
    for (hole, taken) in takeoff.holes.iter().zip(&mut taken).filter(|(hole, _)| hole.place.is_none()) {
        *taken = hole.whole_ft2(column).min(left);
        left -= *taken;
    }
    let openings = taken.iter().sum::<f64>().min(gross);
    let counted: f64 = pieces.iter().sum();
    let share_pct = match takeoff.framing {
        Framing::Nothing => 0.0,
        Framing::Share(share) => column.against(share),
        Framing::Spaced { spacing, member_in } => (member_in / column.of(spacing) * 100.0).min(100.0),
        Framing::Pieces { .. } if clear > 0.0 => counted / clear * 100.0,
        Framing::Pieces { .. } => 0.0,
    };
    let framing = match by(takeoff) {
        FramingBy::Nothing => 0.0,
        FramingBy::Pieces => counted,
        FramingBy::Share | FramingBy::Spacing | FramingBy::Estimated => {
            (gross - openings) * share_pct / 100.0
        }
    }
    .min(gross - openings);
    let net = (gross - openings - framing).max(0.0);
    let (one, times) = (gross, column.of(takeoff.times));
    // Of the wrap goes what goes of the area.
    let left = if gross > 0.0 { net / gross } else { 0.0 };
    let wrap = (takeoff.family.wrap_ft2_in)(&takeoff.sizes(column)) * times * left;
    if times == 1.0 {
        return Areas { one, gross, taken, openings, clear, pieces, share_pct, framing, net, wrap, members };
    }
    // All of them: openings and framing first, so that net = gross − openings − framing holds to the last bit.
    let (gross, openings, framing) = (gross * times, openings * times, framing * times);
    let all = |list: Vec<f64>| list.iter().map(|area| area * times).collect();
    Areas {
        one,
        gross,
        taken: all(taken),
        openings,
        clear: clear * times,
        pieces: all(pieces),
        share_pct,
        framing,
        net: (gross - openings - framing).max(0.0),
        wrap,
        members,
    }
}

/// How framing is taken out.
fn by(takeoff: &Takeoff) -> FramingBy {
    match takeoff.framing {
        Framing::Nothing => FramingBy::Nothing,
        Framing::Share(_) => FramingBy::Share,
        Framing::Spaced { .. } => FramingBy::Spacing,
        Framing::Pieces { .. } if all_placed(takeoff) => FramingBy::Pieces,
        Framing::Pieces { .. } => FramingBy::Estimated,
    }
}

/// Whether every opening that is there has a place.
pub(super) fn all_placed(takeoff: &Takeoff) -> bool {
    takeoff.holes.iter().all(|hole| hole.place.is_some() || hole.count.high == 0.0)
}

/// The areas of a surface.
///
/// The low column has the smallest surface, the largest openings and the closest framing, the high one the
/// reverse. Moving an opening or the last member by an inch can take a whole stud out of the count, so an
/// outer column may pass the likely one; it is then the likely one, and `low ≤ likely ≤ high` holds for the
/// net area always.
pub(super) fn area(takeoff: &Takeoff) -> SurfaceArea {
    let likely = areas(takeoff, Column::Likely);
    let outer = |column| (!takeoff.is_single()).then(|| areas(takeoff, column));
    let (low, high) = (outer(Column::Low), outer(Column::High));
    let low = low.as_ref().filter(|low| low.net <= likely.net).unwrap_or(&likely);
    let high = high.as_ref().filter(|high| high.net >= likely.net).unwrap_or(&likely);
    let band = |of: &dyn Fn(&Areas) -> f64| Band { low: of(low), likely: of(&likely), high: of(high) };
    let area = |of: &dyn Fn(&Areas) -> f64| band(of).map(SquareFeet);
    // Which column of the entries an outer column shows.
    let shows = |outer: &Areas, column| if core::ptr::eq(outer, &likely) { Column::Likely } else { column };
    let (low_shows, high_shows) = (shows(low, Column::Low), shows(high, Column::High));
    let entered = |value: Band<f64>| Band {
        low: low_shows.against(value),
        likely: value.likely,
        high: high_shows.against(value),
    };

    let measures = takeoff.measures.iter().map(|measure| {
        let Band { likely, .. } = measure.value;
        let value = match takeoff.pulls(measure.field) {
            true => entered(measure.value),
            false => Band { low: low_shows.of(measure.value), likely, high: high_shows.of(measure.value) },
        };
        Measure { value, ..measure.clone() }
    });
    let openings = takeoff.holes.iter().enumerate().map(|(number, hole)| OpeningArea {
        id: hole.id,
        placed: hole.place.is_some(),
        width_in: entered(hole.width).map(Inches),
        height_in: entered(hole.height).map(Inches),
        count: entered(hole.count),
        whole_ft2: Band {
            low: SquareFeet(hole.whole_ft2(low_shows)),
            likely: SquareFeet(hole.whole_ft2(Column::Likely)),
            high: SquareFeet(hole.whole_ft2(high_shows)),
        },
        taken_ft2: area(&|areas| areas.taken.get(number).copied().unwrap_or(0.0)),
    });
    let pieces = Piece::ALL.iter().map(|piece| PieceSum {
        piece: *piece,
        count: likely.members.iter().filter(|member| member.piece == *piece).count() as u32,
        area_ft2: area(&|areas| areas.pieces.get(*piece as usize).copied().unwrap_or(0.0)),
    });
    let parts_of = |column| takeoff.parts(column);
    let (low_parts, high_parts) = (parts_of(low_shows), parts_of(high_shows));
    let parts = parts_of(Column::Likely).into_iter().enumerate().map(|(number, (field, likely))| {
        let of = |parts: &[(&'static str, f64)]| parts.get(number).map_or(likely, |part| part.1);
        let value = Band { low: of(&low_parts), likely, high: of(&high_parts) };
        Measure { field, value, default: false }
    });
    let parts: Vec<Measure> = parts.collect();
    let strips = parts.iter().filter(|part| part.field.ends_with("_ft2")).map(|part| part.value);
    let strips: Vec<Band<f64>> = strips.collect();
    let nothing = Band::exactly(SquareFeet(0.0));
    let pieces = pieces.filter(|sum| sum.area_ft2 != nothing);
    SurfaceArea {
        shape: takeoff.shape(),
        measures: measures.collect(),
        way: takeoff.ways.way,
        landing: takeoff.ways.landing,
        walk: walk::walked(&takeoff.legs, low_shows, high_shows),
        side: takeoff.ways.side,
        strips_ft2: strips,
        parts,
        one_ft2: area(&|areas| areas.one),
        many: if takeoff.times == Band::exactly(1.0) { "" } else { "times" },
        claims_r: takeoff.shape().claims_r(),
        gross_ft2: area(&|areas| areas.gross),
        openings_ft2: area(&|areas| areas.openings),
        framing_ft2: area(&|areas| areas.framing),
        net_ft2: area(&|areas| areas.net),
        wrap_ft2_in: band(&|areas| areas.wrap),
        framing_by: by(takeoff),
        members: likely.members.len() as u32,
        cavity_in: takeoff.cavity_in,
        openings: openings.collect(),
        clear_ft2: area(&|areas| areas.clear),
        framing_share_pct: band(&|areas| areas.share_pct),
        pieces: pieces.collect(),
    }
}
