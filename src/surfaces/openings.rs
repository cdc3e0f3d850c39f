//! Windows, doors and other holes: what was entered of them, and what is wrong with it.

use super::cover::Top;
use super::{Column, Rect};
use crate::findings::{Code, Finding};
use crate::job::{Opening, Part, Reader, entry};
use crate::measure::{Band, Kind};

/// Openings that a drawing holds; the area of any more is taken out, but they get no place.
const DRAWN: usize = 60;

/// Further past the edge than this (an inch's sixteen-thousandth) counts as outside.
const PAST_IN: f64 = 1.0 / 16_384.0;

/// An opening as entered. Lengths in inches.
#[derive(Debug, Clone)]
pub(super) struct Hole {
    pub(super) id: u32,
    pub(super) name: String,
    pub(super) width: Band<f64>,
    pub(super) height: Band<f64>,
    pub(super) count: Band<f64>,
    /// From the left end and from the lower edge, for a single opening that has a place.
    pub(super) place: Option<(f64, f64)>,
}

impl Hole {
    /// Width × height × count in square feet; the low column has the largest openings.
    pub(super) fn whole_ft2(&self, column: Column) -> f64 {
        column.against(self.width) * column.against(self.height) * column.against(self.count) / 144.0
    }

    /// Where it is, if it has a place.
    pub(super) fn rect(&self, column: Column) -> Option<Rect> {
        let (x_in, y_in) = self.place?;
        Some(Rect { x_in, y_in, w_in: column.against(self.width), h_in: column.against(self.height) })
    }
}

/// Every opening of a surface; `None` while one of them is incomplete, with the findings that say so.
pub(super) fn take(openings: &[Opening], places: bool, reader: &mut Reader) -> Option<Vec<Hole>> {
    let mut placed = 0;
    let mut holes = Vec::with_capacity(openings.len());
    for (number, opening) in openings.iter().enumerate() {
        let (id, entries) = (opening.id, &opening.entries);
        let width = reader.need(Part::Opening, id, entries, "width");
        let height = reader.need(Part::Opening, id, entries, "height");
        let count = reader.take(Part::Opening, id, entries, "count");
        let mut complete = true;
        let mut place = None;
        if places && entry(entries, "from_left").is_some() {
            let from_left = reader.take(Part::Opening, id, entries, "from_left");
            let sill = reader.take(Part::Opening, id, entries, "sill");
            complete = from_left.is_some() && sill.is_some();
            let single = count.is_some_and(|count| count.value == Band::exactly(1.0));
            place = from_left.zip(sill).filter(|_| single && placed < DRAWN);
            placed += usize::from(place.is_some());
        }
        let hole = width.zip(height).zip(count).filter(|_| complete).map(|((width, height), count)| Hole {
            id,
            name: name(opening, number),
            width: width.value,
            height: height.value,
            count: count.value,
            place: place.map(|(from_left, sill)| (from_left.value.likely, sill.value.likely)),
        });
        holes.push(hole);
    }
    holes.into_iter().collect()
}

/// What it is called in a finding: its name, or its letter on the drawing.
fn name(opening: &Opening, number: usize) -> String {
    match opening.name.trim() {
        "" => letter(number),
        name => name.to_owned(),
    }
}

/// The letter of an opening by its place in the list: A to Z, then AA, AB.
fn letter(number: usize) -> String {
    let one = |at: usize| char::from(b'A'.saturating_add(u8::try_from(at % 26).unwrap_or_default()));
    let rounds = number / 26;
    if rounds == 0 { one(number).into() } else { [one(rounds - 1), one(number)].into_iter().collect() }
}

/// What is wrong with the openings of a plane, by their likely sizes.
pub(super) fn check(
    surface: u32,
    holes: &[Hole],
    plane: Rect,
    top: Option<Top>,
    gross_ft2: f64,
    reader: &mut Reader,
) {
    let found = |code, hole: &Hole, field| {
        Finding::new(code, Part::Opening, hole.id, field).with("name", &*hole.name)
    };
    for (number, hole) in holes.iter().enumerate() {
        let size = Rect { x_in: 0.0, y_in: 0.0, w_in: hole.width.likely, h_in: hole.height.likely };
        let rect = hole.rect(Column::Likely).unwrap_or(size);
        let (right, up) = (rect.right_in() - plane.right_in(), rect.top_in() - plane.top_in());
        // Under slopes its upper corners are what reaches out.
        let up = match top.filter(|_| hole.place.is_some() && right <= PAST_IN) {
            Some(top) => up.max(rect.top_in() - top.at(rect.x_in).min(top.at(rect.right_in()))),
            None => up,
        };
        let counted = hole.count.likely > 0.0;
        if counted && right.max(up) > PAST_IN {
            let field = match (hole.place, right >= up) {
                (Some(_), true) => "from_left",
                (Some(_), false) => "sill",
                (None, true) => "width",
                (None, false) => "height",
            };
            let past = reader.figure(Kind::Length, right.max(up));
            reader.say(found(Code::OpeningOutside, hole, field).with("past", past));
        }
        if hole.place.is_none() {
            continue;
        }
        for other in holes.iter().take(number) {
            if other.rect(Column::Likely).is_some_and(|other| overlaps(other, rect)) {
                reader.say(found(Code::OpeningsOverlap, hole, "from_left").with("other", &*other.name));
            }
        }
    }
    let whole: f64 = holes.iter().map(|hole| hole.whole_ft2(Column::Likely)).sum();
    if whole > gross_ft2 * (1.0 + 1e-9) {
        let (given, most) = (reader.figure(Kind::Area, whole), reader.figure(Kind::Area, gross_ft2));
        let finding = Finding::new(Code::OpeningsExceed, Part::Surface, surface, "");
        reader.say(finding.with("given", given).with("most", most));
    }
}

fn overlaps(one: Rect, other: Rect) -> bool {
    one.x_in.max(other.x_in) + PAST_IN < one.right_in().min(other.right_in())
        && one.y_in.max(other.y_in) + PAST_IN < one.top_in().min(other.top_in())
}
