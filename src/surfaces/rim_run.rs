//! The band around a floor: rim joists, with the ledge of the sill plate and the lap onto the foundation.
//!
//! The run is unrolled side by side, a side on which joists land first. On those sides the joists' ends are
//! taken out over the depth of the band, laid out as the members of any framed plane. The ledge and the lap
//! are strips along the whole run; what the joists cover of the ledge is left in, which errs towards more foam.

use super::members::Layout;
use super::{Asked, MemberRect, Piece, Rect, ShapeForm};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Shape, Surface, entry};
use crate::measure::Kind;

pub(super) const FORM: ShapeForm = ShapeForm {
    shape: Shape::RimRun,
    entries: &[
        Asked::may("perimeter"),
        Asked::needed("length").without("perimeter"),
        Asked::needed("width").without("perimeter"),
        Asked::needed("band"),
        Asked::may("joists_land").without("perimeter"),
        Asked::may("landing_run").with("perimeter"),
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::may("first_parallel"),
        Asked::may("sill_lap"),
        Asked::may("foundation_lap"),
        Asked::may("core_count"),
        Asked::needed("core_size").with("core_count"),
        Asked::may("times"),
    ],
    openings: false,
    framing: true,
    places: false,
};

/// How the run came about: `typed`, `sides`, or `landing` where the parallel sides are left out.
pub(super) type Way = &'static str;

/// Where joists land: `length`, `width`, `run`, or nowhere that is known.
pub(super) type Landing = &'static str;

/// The questions answered by a press; `None` while the parallel sides are to be left out of a run of which
/// nobody has said where joists land.
pub(super) fn ways(
    surface: &Surface,
    measure: &dyn Fn(&str) -> f64,
    reader: &mut Reader,
) -> Option<(Way, Landing)> {
    let (id, entries) = (surface.id, &surface.entries);
    let typed = entry(entries, "perimeter").is_some();
    let asked = if typed { "landing_run" } else { "joists_land" };
    let landing = match typed {
        true if measure("landing_run") > 0.0 => "run",
        true => "",
        false => reader.choice(Part::Surface, id, entries, "joists_land").unwrap_or_default(),
    };
    let landing_in = landing_run(measure, landing);
    let whole_in = run(measure, if typed { "typed" } else { "sides" }, landing);
    if landing == "run" && measure("landing_run") > whole_in {
        let (given, most) =
            (reader.figure(Kind::Length, measure("landing_run")), reader.figure(Kind::Length, whole_in));
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
    if landing.is_empty() && surface.deduct_framing {
        reader.say(Finding::new(Code::JoistsNotSaid, Part::Surface, id, asked));
    }
    Some((way, landing))
}

/// The run on which joists land, in inches.
pub(super) fn landing_run(measure: &dyn Fn(&str) -> f64, landing: Landing) -> f64 {
    match landing {
        "length" => 2.0 * measure("length"),
        "width" => 2.0 * measure("width"),
        "run" => measure("landing_run").min(measure("perimeter")),
        _ => 0.0,
    }
}

/// The run that is foamed, in inches.
pub(super) fn run(measure: &dyn Fn(&str) -> f64, way: Way, landing: Landing) -> f64 {
    match way {
        "landing" => landing_run(measure, landing),
        "typed" => measure("perimeter"),
        _ => 2.0 * (measure("length") + measure("width")),
    }
}

/// The edges of the strips, from the foundation up: lap, ledge, band.
pub(super) fn heights(measure: &dyn Fn(&str) -> f64) -> [f64; 3] {
    let lap = measure("foundation_lap");
    let ledge = lap + measure("sill_lap");
    [lap, ledge, ledge + measure("band")]
}

/// Open block cores, in square feet.
pub(super) fn cores_ft2(measure: &dyn Fn(&str) -> f64) -> f64 {
    measure("core_count") * measure("core_size")
}

/// The sides in the order in which they are unrolled, and whether joists land on each.
pub(super) fn sides(measure: &dyn Fn(&str) -> f64, way: Way, landing: Landing) -> Vec<(f64, bool)> {
    let (length, width) = (measure("length"), measure("width"));
    let (first, second) = if landing == "width" { (width, length) } else { (length, width) };
    let lands = !landing.is_empty();
    let whole = run(measure, way, landing);
    let landing_in = landing_run(measure, landing);
    match (way, landing) {
        ("landing", "run") => vec![(whole, true)],
        ("landing", _) => vec![(first, true), (first, true)],
        ("typed", "") => vec![(whole, false)],
        ("typed", _) => vec![(landing_in, true), (whole - landing_in, false)],
        _ => vec![(first, lands), (second, false), (first, lands), (second, false)],
    }
}

/// The ends of the joists where they land.
pub(super) fn ends(
    measure: &dyn Fn(&str) -> f64,
    way: Way,
    landing: Landing,
    layout: &Layout,
) -> Vec<MemberRect> {
    let [_, low, top] = heights(measure);
    let mut members = Vec::new();
    let mut start = 0.0;
    for (side, lands) in sides(measure, way, landing) {
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
