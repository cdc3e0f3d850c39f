//! The band around a floor: rim joists, with the ledge of the sill plate and the lap onto the foundation.
//!
//! The run is unrolled side by side, a side on which joists land first. On those sides the joists' ends are
//! taken out over the depth of the band, laid out as the members of any framed plane. The ledge and the lap
//! are strips along the whole run; what the joists cover of the ledge is left in, which errs towards more foam.

use super::family::{Asking, Family, Figure, Sizes, Ways};
use super::members::Layout;
use super::outline::{Lines, Of};
use super::{Asked, Extent, MemberRect, Piece, Rect, ShapeForm, Side};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Shape, entry};
use crate::measure::Kind;

pub(super) const FAMILY: Family = Family {
    ways,
    parts,
    members: Some(ends),
    figure: |sizes| {
        let [lap, ledge, top] = heights(sizes);
        let mut strips: Vec<f64> =
            [lap, ledge].into_iter().filter(|edge| *edge > 0.0 && *edge < top).collect();
        strips.dedup();
        // Open block cores are somewhere else on the wall.
        Figure { strips, apart: cores_ft2(sizes) > 0.0, ..Figure::default() }
    },
    lines,
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::RimRun,
    "walls",
    &[
        Asked::may("perimeter"),
        Asked::needed("length").without("perimeter"),
        Asked::needed("width").without("perimeter"),
        Asked::needed("band"),
        Asked::may("joists_land").without("perimeter"),
        Asked::may("landing_run").with("perimeter"),
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::framing("plies", false).against(),
        Asked::may("first_parallel"),
        Asked::may("sill_lap"),
        Asked::may("foundation_lap"),
        Asked::may("core_count"),
        Asked::needed("core_size").with("core_count"),
        Asked::may("times"),
    ],
)
.framed();

/// The questions answered by a press; `None` while the parallel sides are to be left out of a run of which
/// nobody has said where joists land. The way is how the run came about: `typed`, `sides`, or `landing` where
/// the parallel sides are left out.
fn ways(asking: &Asking, reader: &mut Reader) -> Option<Ways> {
    if !asking.complete {
        return Some(Ways::default());
    }
    let (id, entries) = (asking.surface.id, &asking.surface.entries);
    let typed = entry(entries, "perimeter").is_some();
    let asked = if typed { "landing_run" } else { "joists_land" };
    let landing = match typed {
        true if asking.of("landing_run") > 0.0 => "run",
        true => "",
        false => reader.choice(Part::Surface, id, entries, "joists_land").unwrap_or_default(),
    };
    let measure = |field: &str| asking.of(field);
    let landing_in = landing_of(&measure, landing);
    let whole_in = run_of(&measure, if typed { "typed" } else { "sides" }, landing);
    if landing == "run" && asking.of("landing_run") > whole_in {
        let (given, most) =
            (reader.figure(Kind::Length, asking.of("landing_run")), reader.figure(Kind::Length, whole_in));
        let finding = Finding::new(Code::AboveLimit, Part::Surface, id, "landing_run");
        reader.say(finding.with("given", given).with("most", most));
    }
    let way = match reader.choice(Part::Surface, id, entries, "first_parallel") {
        Some("out_of_reach") if landing.is_empty() => {
            reader.say(Finding::new(Code::Needed, Part::Surface, id, asked));
            return None;
        }
        Some("out_of_reach") => {
            let left = reader.figure(Kind::Length, whole_in - landing_in);
            let finding = Finding::new(Code::ParallelOutOfReach, Part::Surface, id, "first_parallel");
            reader.say(finding.with("left", left));
            "landing"
        }
        _ if typed => "typed",
        _ => "sides",
    };
    if landing.is_empty() && asking.surface.deduct_framing {
        reader.say(Finding::new(Code::JoistsNotSaid, Part::Surface, id, asked));
    }
    Some(Ways { landing, ..Ways::by(way) })
}

/// The run on which joists land, in inches.
fn landing_of(measure: &dyn Fn(&str) -> f64, landing: &str) -> f64 {
    match landing {
        "length" => 2.0 * measure("length"),
        "width" => 2.0 * measure("width"),
        "run" => measure("landing_run").min(measure("perimeter")),
        _ => 0.0,
    }
}

/// The run that is foamed, in inches.
fn run_of(measure: &dyn Fn(&str) -> f64, way: &str, landing: &str) -> f64 {
    match way {
        "landing" => landing_of(measure, landing),
        "typed" => measure("perimeter"),
        _ => 2.0 * (measure("length") + measure("width")),
    }
}

fn landing_run(sizes: &Sizes) -> f64 {
    landing_of(&|field| sizes.of(field), sizes.landing())
}

fn run(sizes: &Sizes) -> f64 {
    run_of(&|field| sizes.of(field), sizes.way(), sizes.landing())
}

/// Run × height of all strips, and the block cores.
fn extent(sizes: &Sizes) -> Extent {
    let [.., height] = heights(sizes);
    let plane = Extent::plane(run(sizes), height);
    Extent { gross_ft2: plane.gross_ft2 + cores_ft2(sizes), ..plane }
}

fn parts(sizes: &Sizes) -> Vec<(&'static str, f64)> {
    let run = run(sizes);
    let mut parts = Vec::new();
    if !sizes.landing().is_empty() {
        parts.push(("landing_length", landing_run(sizes)));
    }
    parts.push(("run_length", run));
    parts.push(("band_ft2", run * sizes.of("band") / 144.0));
    for (field, part) in [("sill_lap", "ledge_ft2"), ("foundation_lap", "lap_ft2")] {
        if sizes.has(field) {
            parts.push((part, run * sizes.of(field) / 144.0));
        }
    }
    if sizes.has("core_count") {
        parts.push(("cores_ft2", cores_ft2(sizes)));
    }
    parts
}

/// Its sides side by side, its strips one over the other.
fn lines(sizes: &Sizes, lines: &mut Lines) {
    let names = match (sizes.way(), sizes.landing()) {
        ("typed", "") => ["perimeter", ""],
        ("typed", _) | (_, "run") => ["landing_run", ""],
        ("landing", side) => [side, side],
        (_, "width") => ["width", "length"],
        _ => ["length", "width"],
    };
    let mut from = 0.0;
    let sides = sides(sizes);
    for ((side, _), of) in sides.iter().zip(names.iter().chain(&["", ""])) {
        let of = if of.is_empty() { Of::Rest } else { Of::Surface(of) };
        lines.put(of, Side::Bottom, 0, (from, from + side));
        from += side;
    }
    if sides.len() > 1 {
        let of = if sizes.way() == "typed" { Of::Surface("perimeter") } else { Of::Rest };
        lines.put(of, Side::Bottom, 1, (0.0, run(sizes)));
    }
    let [lap, ledge, top] = heights(sizes);
    lines.put(Of::Surface("foundation_lap"), Side::Left, 1, (0.0, lap));
    lines.put(Of::Surface("sill_lap"), Side::Left, 1, (lap, ledge));
    lines.put(Of::Surface("band"), Side::Left, 1, (ledge, top));
    if ledge > 0.0 {
        lines.put(Of::Rest, Side::Left, 0, (0.0, top));
    }
}

/// The edges of the strips, from the foundation up: lap, ledge, band.
fn heights(sizes: &Sizes) -> [f64; 3] {
    let lap = sizes.of("foundation_lap");
    let ledge = lap + sizes.of("sill_lap");
    [lap, ledge, ledge + sizes.of("band")]
}

/// Open block cores, in square feet.
fn cores_ft2(sizes: &Sizes) -> f64 {
    sizes.of("core_count") * sizes.of("core_size")
}

/// The sides in the order in which they are unrolled, and whether joists land on each.
fn sides(sizes: &Sizes) -> Vec<(f64, bool)> {
    let (length, width) = (sizes.of("length"), sizes.of("width"));
    let landing = sizes.landing();
    let (first, second) = if landing == "width" { (width, length) } else { (length, width) };
    let lands = !landing.is_empty();
    let whole = run(sizes);
    let landing_in = landing_run(sizes);
    match (sizes.way(), landing) {
        ("landing", "run") => vec![(whole, true)],
        ("landing", _) => vec![(first, true), (first, true)],
        ("typed", "") => vec![(whole, false)],
        ("typed", _) => vec![(landing_in, true), (whole - landing_in, false)],
        _ => vec![(first, lands), (second, false), (first, lands), (second, false)],
    }
}

/// The ends of the joists where they land.
fn ends(sizes: &Sizes, layout: &Layout) -> Vec<MemberRect> {
    let [_, low, top] = heights(sizes);
    let mut members = Vec::new();
    let mut start = 0.0;
    for (side, lands) in sides(sizes) {
        if lands && side > 0.0 && top > low {
            for (from, to) in layout.uprights(side) {
                let rect = Rect::between(start + from, low, start + to.min(side), top);
                members.push(MemberRect { piece: Piece::Stud, rect });
            }
        }
        start += side;
    }
    members
}
