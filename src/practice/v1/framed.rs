//! A framed wall without openings: its studs and plates counted, and what lies between them.

use super::super::Topic;
use super::super::formula::{Formula, area, at, figure, number, step};
use super::super::made::{Ask, Making, change};
use super::Scene;
use crate::job::{Job, Shape};
use crate::measure::Kind;

pub const SCENE: Scene =
    Scene { key: "framed", levels: &[2], topics: &[Topic::Areas, Topic::Framing, Topic::BoardFeet], make };

const LENGTH: &str = "surfaces.0.area.measures.length";
const HEIGHT: &str = "surfaces.0.area.measures.height";
const SPACING: &str = "surfaces.0.area.measures.spacing";
const MEMBER: &str = "surfaces.0.area.measures.member";
const PLATES: &str = "surfaces.0.area.measures.plates";
const GROSS: &str = "surfaces.0.area.gross_ft2";
/// Studs are the first kind of piece.
const STUDS: &str = "surfaces.0.area.pieces.0.count";
const FRAMING: &str = "surfaces.0.area.framing_ft2";
const NET: &str = "surfaces.0.area.net_ft2";
const DEPTH: &str = "surfaces.0.depth.aim_in";
const IN_PLACE: &str = "surfaces.0.in_place";

/// How thick a 2x4 or 2x6 is by its name, in inches.
const NAMED: f64 = 2.0;

fn length(path: &str) -> Formula {
    at(path, Kind::Length)
}

/// The same wall with another text in one entry.
fn with(field: &'static str, text: &'static str) -> impl FnOnce(&mut Job) {
    move |job: &mut Job| {
        if let Some(surface) = job.surfaces.first_mut() {
            change(&mut surface.entries, field, text);
        }
    }
}

/// Draws the wall.
fn wall(m: &mut Making) {
    // The last bay is more than a stud narrower than the others, and wider than a stud and a half, so that length ÷
    // spacing, up, and one more is how many studs there are, in inches as in millimeters.
    let spacing = m.draw.one_of(&[16, 16, 24]).unwrap_or(16);
    let bays = if spacing == 16 { m.draw.whole(8, 22) } else { m.draw.whole(5, 14) };
    let run = f64::from(bays * spacing + m.draw.whole(4, 12));
    let height = f64::from(m.draw.whole(180, 216)) / 2.0;
    let plates = m.draw.one_of(&[2, 3, 3]).unwrap_or(3);
    let depth = f64::from(m.draw.whole(3, 6)) / 2.0;
    // A 2x4 or 2x6 is 1½ in thick; on a metric tape 38 mm.
    let thick = if m.metric() { "38 mm" } else { "1 1/2 in" };
    let stud = if m.draw.heads() { "2x4" } else { "2x6" };

    let entries = [
        ("length", m.tape(run, false)),
        ("height", m.tape(height, false)),
        ("spacing", m.tape(f64::from(spacing), true)),
        ("member", thick.to_owned()),
        ("plates", plates.to_string()),
        ("depth", m.tape(depth, true)),
    ];
    let surface = m.surface(Shape::FramedWall, &entries);
    if let Some(surface) = m.job.surfaces.get_mut(surface) {
        surface.deduct_framing = true;
    }
    for (key, text) in entries {
        match key {
            "plates" => m.gives("plates", f64::from(plates), Kind::Count),
            _ => m.says(key, text),
        }
    }
    m.says("stud", stud);
    let id = m.job.surfaces.get(surface).map_or(0, |one| one.id);
    m.shows("outline", id, &[]);
}

fn make(m: &mut Making, _level: u8) {
    wall(m);
    let two = if m.metric() { "50 mm" } else { "2 in" };

    m.ask(
        Ask::new("gross_area", Topic::Areas, Kind::Area)
            .at(GROSS)
            .by(area(length(LENGTH), length(HEIGHT)))
            .slip("sides_added", m.sides_added(length(LENGTH) + length(HEIGHT)))
            .slip("sides_added", m.sides_added(number(2.0) * (length(LENGTH) + length(HEIGHT)))),
    );
    let bays = |each: Formula| (length(LENGTH) / each).up();
    m.ask(
        Ask::new("stud_count", Topic::Framing, Kind::Count)
            .at(STUDS)
            .by(bays(length(SPACING)) + number(1.0))
            .slip("last_stud_missing", bays(length(SPACING)))
            .slip("clear_spacing", bays(length(SPACING) + length(MEMBER)) + number(1.0)),
    );
    m.ask(
        Ask::new("bay_width", Topic::Framing, Kind::Length)
            .short()
            .by(length(SPACING) - length(MEMBER))
            .within(1.0 / 16.0, 0.0)
            .slip("clear_spacing", length(SPACING))
            .slip("nominal_lumber", length(SPACING) - figure(NAMED, Kind::Length)),
    );
    let studs = |high: Formula| area(step("stud_count") * length(MEMBER), high);
    let within = || at(PLATES, Kind::Count) * length(MEMBER);
    let covered = studs(length(HEIGHT) - within()) + area(within(), length(LENGTH));
    let framing = Ask::new("framing_area", Topic::Framing, Kind::Area)
        .at(FRAMING)
        .by(covered)
        .slip_job("nominal_lumber", m, FRAMING, with("member", two))
        .slip_job("plates_forgotten", m, FRAMING, with("plates", "0"))
        .slip("plates_forgotten", studs(length(HEIGHT) - within()));
    m.ask(framing);
    m.ask(
        Ask::new("net_area", Topic::Areas, Kind::Area)
            .at(NET)
            .by(step("gross_area") - step("framing_area"))
            .slip("framing_forgotten", step("gross_area"))
            .slip("framing_twice", step("gross_area") - step("framing_area") - step("framing_area"))
            .slip_job("nominal_lumber", m, NET, with("member", two)),
    );
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .at(IN_PLACE)
            .by(step("net_area") * length(DEPTH))
            .slip("gross_for_net", step("gross_area") * length(DEPTH)),
    );
}
