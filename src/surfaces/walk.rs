//! A plane walked along its edges: a length and a turn for each, from corner to corner.
//!
//! A walk that ends beside where it began has a gap. One of at most 1 % of the way around is taken for what a tape
//! leaves, and spread by the compass rule (N. Bowditch; any book of surveying): each edge takes of it as much as
//! it is long. A larger one is no tape's error: a length or a turn is wrong, and nothing is worked out.
//! (1 % is common practice, no source; a survey's own limits are far closer.) A last edge without a length goes
//! straight back to where the walk began.
//!
//! Where the walk begins, and which way around it goes, changes nothing: the gap is a sum over all edges, each
//! takes its share of it, and the area by the shoelace formula is a sum over all corners.

use super::{Column, Walked};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Surface, entry};
use crate::measure::angle::{cosine, sine};
use crate::measure::{Band, Kind};

/// The largest gap that is spread, as a share of the way around. Common practice, no source.
const SPREAD: f64 = 0.01;

/// A gap or a closing edge of less than this is none: a sixteenth of an inch.
const CLOSED_IN: f64 = 1.0 / 16.0;

/// More edges than this are not taken.
const MOST: usize = 200;

/// A corner, in inches from where the walk begins, the first edge running to the right.
pub(super) type Corner = (f64, f64);

/// An edge as entered.
#[derive(Debug, Clone, Copy)]
pub(super) struct LegRead {
    pub(super) id: u32,
    /// In inches; `None` for a last one that closes the walk.
    pub(super) length: Option<Band<f64>>,
    /// In degrees, to the left; less than zero to the right.
    turn: Band<f64>,
}

impl LegRead {
    pub(super) fn is_single(&self) -> bool {
        self.turn.is_single() && self.length.is_none_or(|length| length.is_single())
    }
}

/// A walk with its gap spread.
#[derive(Default)]
pub(super) struct Laid {
    lengths: Vec<f64>,
    turns: Vec<f64>,
    pub(super) corners: Vec<Corner>,
    pub(super) perimeter: f64,
    pub(super) gap: f64,
    /// The last edge where it was left blank.
    pub(super) closing: Option<f64>,
}

/// Every edge of a surface; `None` while it makes no plane, with the findings that say why.
pub(super) fn take(surface: &Surface, reader: &mut Reader) -> Option<Vec<LegRead>> {
    let found = |code| Finding::new(code, Part::Surface, surface.id, "legs");
    let count = surface.legs.len();
    if count < 3 {
        reader.say(found(Code::LegsFew).with("count", count.to_string()));
        return None;
    }
    if count > MOST {
        reader.say(found(Code::AboveLimit).with("given", count.to_string()).with("most", MOST.to_string()));
        return None;
    }
    let mut legs = Vec::with_capacity(count);
    let mut complete = true;
    for (number, leg) in surface.legs.iter().enumerate() {
        let closes = number + 1 == count && entry(&leg.entries, "length").is_none();
        let length = if closes { None } else { reader.need(Part::Leg, leg.id, &leg.entries, "length") };
        let turn = turn(leg.id, &leg.entries, reader);
        complete &= closes || length.is_some();
        match turn {
            Some(turn) => legs.push(LegRead { id: leg.id, length: length.map(|one| one.value), turn }),
            None => complete = false,
        }
    }
    (complete && stands(surface, &legs, reader)).then_some(legs)
}

fn turn(id: u32, entries: &[crate::job::Entered], reader: &mut Reader) -> Option<Band<f64>> {
    let way = reader.choice(Part::Leg, id, entries, "turn")?;
    if way == "straight" {
        return Some(Band::exactly(0.0));
    }
    let Band { low, likely, high } = reader.take(Part::Leg, id, entries, "angle")?.value;
    Some(match way {
        "right" => Band { low: -high, likely: -likely, high: -low },
        _ => Band { low, likely, high },
    })
}

/// Whether it closes and crosses nowhere.
fn stands(surface: &Surface, legs: &[LegRead], reader: &mut Reader) -> bool {
    let laid = laid(legs, Column::Likely);
    let found = |code| Finding::new(code, Part::Surface, surface.id, "legs");
    if let (Some(length), Some(last)) = (laid.closing, legs.last()) {
        if length > CLOSED_IN {
            let length = reader.figure(Kind::Length, length);
            reader.say(Finding::new(Code::LegsClosed, Part::Leg, last.id, "length").with("length", length));
        }
    } else if laid.gap > CLOSED_IN {
        let share = laid.gap / laid.perimeter;
        let code = if share > SPREAD { Code::LegsOpen } else { Code::LegsSpread };
        let (gap, share) =
            (reader.figure(Kind::Length, laid.gap), reader.figure(Kind::Percent, share * 100.0));
        reader.say(found(code).with("gap", gap).with("share", share));
        if code == Code::LegsOpen {
            return false;
        }
    }
    if laid.corners.len() < 3 {
        reader.say(found(Code::LegsFew).with("count", laid.corners.len().to_string()));
        return false;
    }
    match crossing(&laid.corners) {
        Some((one, other)) => {
            let id = legs.get(other).map_or(0, |leg| leg.id);
            let finding = Finding::new(Code::LegsCross, Part::Leg, id, "length");
            reader.say(finding.with("one", (one + 1).to_string()).with("other", (other + 1).to_string()));
            false
        }
        None => true,
    }
}

/// The walk in one column. An edge or a turn of a range stands at the end that makes the plane smaller (in the low
/// column) or larger (in the high one) while all others are likely.
pub(super) fn laid(legs: &[LegRead], column: Column) -> Laid {
    let (lengths, turns) = sized(legs, column);
    let laid = lay(legs, &lengths, &turns);
    Laid { lengths, turns, ..laid }
}

fn sized(legs: &[LegRead], column: Column) -> (Vec<f64>, Vec<f64>) {
    let bands = |leg: &LegRead| (leg.length.unwrap_or(Band::exactly(0.0)), leg.turn);
    let (lengths, turns): (Vec<f64>, Vec<f64>) =
        legs.iter().map(bands).map(|(length, turn)| (length.likely, turn.likely)).unzip();
    if column == Column::Likely || legs.iter().all(LegRead::is_single) {
        return (lengths, turns);
    }
    let (mut all, area) = ((lengths.clone(), turns.clone()), |lengths: &[f64], turns: &[f64]| {
        shoelace(&lay(legs, lengths, turns).corners).abs()
    });
    let larger = column == Column::High;
    let pick =
        |band: Band<f64>, low: f64, high: f64| if (high >= low) == larger { band.high } else { band.low };
    for (number, leg) in legs.iter().enumerate() {
        let (length, turn) = bands(leg);
        let with = |list: &[f64], value: f64| -> Vec<f64> {
            list.iter().enumerate().map(|(at, one)| if at == number { value } else { *one }).collect()
        };
        let long = |value| area(&with(&lengths, value), &turns);
        let far = |value| area(&lengths, &with(&turns, value));
        if let Some(one) = all.0.get_mut(number).filter(|_| !length.is_single()) {
            *one = pick(length, long(length.low), long(length.high));
        }
        if let Some(one) = all.1.get_mut(number).filter(|_| !turn.is_single()) {
            *one = pick(turn, far(turn.low), far(turn.high));
        }
    }
    all
}

fn lay(legs: &[LegRead], lengths: &[f64], turns: &[f64]) -> Laid {
    let blank = legs.last().is_some_and(|leg| leg.length.is_none());
    let mut corners = Vec::with_capacity(legs.len() + 1);
    let (mut at, mut heading, mut gone) = ((0.0, 0.0), 0.0, Vec::with_capacity(legs.len()));
    let mut perimeter = 0.0;
    for (length, turn) in lengths.iter().zip(turns) {
        corners.push(at);
        gone.push(perimeter);
        let (east, north) = toward(heading);
        at = (at.0 + length * east, at.1 + length * north);
        heading += turn;
        perimeter += length;
    }
    let gap = (at.0 * at.0 + at.1 * at.1).sqrt();
    if blank {
        if gap <= CLOSED_IN {
            corners.pop();
        }
        return Laid { corners, perimeter: perimeter + gap, closing: Some(gap), ..Laid::default() };
    }
    for (corner, gone) in corners.iter_mut().zip(gone).filter(|_| perimeter > 0.0) {
        let share = gone / perimeter;
        *corner = (corner.0 - at.0 * share, corner.1 - at.1 * share);
    }
    Laid { corners, perimeter, gap, ..Laid::default() }
}

/// One inch in a direction: degrees to the left of the first edge. A quarter turn is exact.
fn toward(degrees: f64) -> (f64, f64) {
    // Whole turns are taken off without `%`, which is a loop of its own in the core.
    let turned = degrees - 360.0 * libm::trunc(degrees / 360.0);
    let quarters = turned / 90.0;
    match quarters as i32 {
        whole if f64::from(whole) == quarters => match whole.rem_euclid(4) {
            0 => (1.0, 0.0),
            1 => (0.0, 1.0),
            2 => (-1.0, 0.0),
            _ => (0.0, -1.0),
        },
        _ => {
            let angle = turned.to_radians();
            (cosine(angle), sine(angle))
        }
    }
}

/// Half the sum over all edges of x × next y − next x × y, seen from the first corner: the area in square inches,
/// less than zero for a walk that goes around clockwise.
pub(super) fn shoelace(corners: &[Corner]) -> f64 {
    let first = corners.first().copied().unwrap_or_default();
    let from = |corner: &Corner| (corner.0 - first.0, corner.1 - first.1);
    let sum = |(one, next): (&Corner, &Corner)| {
        let (one, next) = (from(one), from(next));
        one.0 * next.1 - next.0 * one.1
    };
    corners.iter().zip(corners.iter().cycle().skip(1)).map(sum).sum::<f64>() / 2.0
}

/// The first two edges that cross or touch where they should not.
fn crossing(corners: &[Corner]) -> Option<(usize, usize)> {
    let edges: Vec<(Corner, Corner)> =
        corners.iter().copied().zip(corners.iter().copied().cycle().skip(1)).collect();
    let last = edges.len().saturating_sub(1);
    for (other, second) in edges.iter().enumerate() {
        for (one, first) in edges.iter().enumerate().take(other) {
            let faulty = if other == one + 1 {
                folds_back(*first, *second)
            } else if one == 0 && other == last {
                folds_back(*second, *first)
            } else {
                meet(*first, *second)
            };
            if faulty {
                return Some((one, other));
            }
        }
    }
    None
}

/// Twice the area of the triangle of three corners; more than zero where the third lies to the left.
fn side(from: Corner, to: Corner, corner: Corner) -> f64 {
    (to.0 - from.0) * (corner.1 - from.1) - (corner.0 - from.0) * (to.1 - from.1)
}

/// Whether an edge runs back over the one before it.
fn folds_back((from, corner): (Corner, Corner), (_, to): (Corner, Corner)) -> bool {
    let (one, next) = ((corner.0 - from.0, corner.1 - from.1), (to.0 - corner.0, to.1 - corner.1));
    let (along, across) = (one.0 * next.0 + one.1 * next.1, one.0 * next.1 - next.0 * one.1);
    along < 0.0 && across.abs() <= -along * 1e-9
}

fn meet((a, b): (Corner, Corner), (c, d): (Corner, Corner)) -> bool {
    let apart = |a: f64, b: f64, c: f64, d: f64| a.max(b) < c.min(d) || c.max(d) < a.min(b);
    !apart(a.0, b.0, c.0, d.0)
        && !apart(a.1, b.1, c.1, d.1)
        && side(a, b, c) * side(a, b, d) <= 0.0
        && side(c, d, a) * side(c, d, b) <= 0.0
}

/// The edges for the working, each column as it was laid.
pub(super) fn walked(legs: &[LegRead], low: Column, high: Column) -> Vec<Walked> {
    if legs.is_empty() {
        return Vec::new();
    }
    let columns = [low, Column::Likely, high].map(|column| laid(legs, column));
    let one = |(number, leg): (usize, &LegRead)| {
        let band = |of: &dyn Fn(&Laid) -> Option<f64>| {
            let [low, likely, high] = columns.each_ref().map(|laid| of(laid).unwrap_or(0.0));
            Band { low, likely, high }
        };
        Walked {
            id: leg.id,
            length_in: band(&|laid| match leg.length {
                Some(_) => laid.lengths.get(number).copied(),
                None => laid.closing,
            }),
            turn_deg: band(&|laid| laid.turns.get(number).copied()),
            x_in: band(&|laid| laid.corners.get(number).map(|corner| corner.0)),
            y_in: band(&|laid| laid.corners.get(number).map(|corner| corner.1)),
        }
    };
    legs.iter().enumerate().map(one).collect()
}
