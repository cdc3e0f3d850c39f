//! A triangle: base × height ÷ 2, or from its three sides.
//!
//! By its sides it is Heron's formula in the form that keeps its accuracy for a needle (W. Kahan, "Miscalculating
//! area and angles of a needle-like triangle", 2014): with a ≥ b ≥ c,
//! ¼ √((a + (b + c)) (c − (a − b)) (c + (a − b)) (a + (b − c))). Of a range, the longest side pulls the other way
//! where it lies over an obtuse corner: the longer it is, the flatter the triangle.

use super::family::{Asking, Family, Figure, Sizes, Ways};
use super::outline::Of;
use super::{Asked, Extent, ShapeForm};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Shape};
use crate::measure::Kind;

const SIDES: [&str; 3] = ["length", "side_b", "side_c"];

pub(super) const FAMILY: Family = Family {
    ways: |asking, reader| match asking.has("side_b") {
        true => possible(asking, reader).then(|| Ways::by("three_sides")),
        false => Some(Ways::by("base_height")),
    },
    parts: |sizes| match by_sides(sizes) {
        true => vec![("height_length", height(sizes))],
        false => Vec::new(),
    },
    against: |sizes| {
        let ([(longest, a), (_, b), (_, c)], three) = (sorted(|side| sizes.of(side)), by_sides(sizes));
        if three && a * a > b * b + c * c { longest } else { "" }
    },
    figure: |sizes| {
        let (corners, _) = drawn(sizes);
        Figure::plane(corners.to_vec())
    },
    lines: |sizes, lines| {
        let ([left, right, top], _) = drawn(sizes);
        let (three, measure) = (by_sides(sizes), Of::Surface);
        lines.edge(measure("length"), left, right);
        lines.edge(if three { measure("side_b") } else { Of::Rest }, right, top);
        lines.edge(if three { measure("side_c") } else { Of::Rest }, top, left);
        lines.upright(if three { "" } else { "height" });
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::Triangle,
    "flat",
    &[
        Asked::needed("length"),
        Asked::needed("height").without("side_b"),
        Asked::may("side_b"),
        Asked::needed("side_c").with("side_b"),
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::framing("framing_share", false),
        Asked::may("times"),
    ],
)
.openings()
.framed();

fn by_sides(sizes: &Sizes) -> bool {
    sizes.way() == "three_sides"
}

/// The sides with their names, the longest first.
fn sorted(of: impl Fn(&str) -> f64) -> [(&'static str, f64); 3] {
    let [mut a, mut b, mut c] = SIDES.map(|side| (side, of(side)));
    if a.1 < b.1 {
        core::mem::swap(&mut a, &mut b);
    }
    if b.1 < c.1 {
        core::mem::swap(&mut b, &mut c);
    }
    if a.1 < b.1 {
        core::mem::swap(&mut a, &mut b);
    }
    [a, b, c]
}

/// Whether three sides can meet; a finding beside the longest where they cannot.
fn possible(asking: &Asking, reader: &mut Reader) -> bool {
    if !SIDES.iter().all(|side| asking.measures.iter().any(|one| one.field == *side)) {
        return true;
    }
    let [(longest, a), (_, b), (_, c)] = sorted(|side| asking.of(side));
    let meet = c > a - b;
    if !meet {
        let (given, most) = (reader.figure(Kind::Length, a), reader.figure(Kind::Length, b + c));
        let found = Finding::new(Code::SidesCannotMeet, Part::Surface, asking.surface.id, longest);
        reader.say(found.with("given", given).with("others", most));
    }
    meet
}

/// Heron, in square inches.
fn heron(sizes: &Sizes) -> f64 {
    let [(_, a), (_, b), (_, c)] = sorted(|side| sizes.of(side));
    ((a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c))).max(0.0).sqrt() / 4.0
}

/// Over the base, in inches.
fn height(sizes: &Sizes) -> f64 {
    match (by_sides(sizes), sizes.of("length")) {
        (true, base) if base > 0.0 => 2.0 * heron(sizes) / base,
        (true, _) => 0.0,
        (false, _) => sizes.of("height"),
    }
}

/// Its corners, counterclockwise from the left end of the base, and how wide they are. A base with a height alone has
/// its top drawn over the middle; where the top lies does not change the area.
fn drawn(sizes: &Sizes) -> ([(f64, f64); 3], f64) {
    let base = sizes.of("length");
    let (b, c) = (sizes.of("side_b"), sizes.of("side_c"));
    let over = match by_sides(sizes) && base > 0.0 {
        true => (base + (c - b) * (c + b) / base) / 2.0,
        false => base / 2.0,
    };
    let left = over.min(0.0);
    let corners = [(-left, 0.0), (base - left, 0.0), (over - left, height(sizes))];
    (corners, base.max(over) - left)
}

fn extent(sizes: &Sizes) -> Extent {
    let area = match by_sides(sizes) {
        true => heron(sizes),
        false => sizes.of("length") * sizes.of("height") / 2.0,
    };
    Extent { width_in: drawn(sizes).1, height_in: height(sizes), gross_ft2: area / 144.0 }
}
