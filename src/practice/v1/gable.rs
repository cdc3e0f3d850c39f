//! A gable end with a window: its height from base and pitch, its area, and on level 3 what it takes in foam and kits.

use super::super::Topic;
use super::super::formula::{Formula, area, at, number, step};
use super::super::made::{Ask, Making};
use super::Scene;
use super::trade::usable;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "gable", levels: &[2], topics: &[Topic::Areas, Topic::Pitch], make };

/// The same on level 3: from the gable to kits.
pub const TO_KITS: Scene = Scene {
    key: "gable_kits",
    levels: &[3],
    topics: &[Topic::Areas, Topic::Pitch, Topic::BoardFeet, Topic::Kits],
    make,
};

const LENGTH: &str = "surfaces.0.area.measures.length";
const PITCH: &str = "surfaces.0.area.measures.pitch";
const PEAK: &str = "surfaces.0.area.parts.rise_length";
const GROSS: &str = "surfaces.0.area.gross_ft2";
const OPENINGS: &str = "surfaces.0.area.openings_ft2";
const NET: &str = "surfaces.0.area.net_ft2";
const WINDOW: [&str; 2] = ["surfaces.0.area.openings.0.width_in", "surfaces.0.area.openings.0.height_in"];
const DEPTH: &str = "surfaces.0.depth.aim_in";
const IN_PLACE: &str = "surfaces.0.in_place";
const LABEL: &str = "purchase.sizes.0.label";
const KITS: &str = "purchase.alone.0.kits";

fn length(path: &str) -> Formula {
    at(path, Kind::Length)
}

/// Draws the gable, and where it goes on to kits its depth; says how much foam that takes, as drawn.
fn gable(m: &mut Making, to_kits: bool) -> f64 {
    // 14 to 26 ft wide, 4 to 10 in 12: at least 28 in high, so that any of the windows has room under the slopes.
    let base = f64::from(m.draw.whole(168, 312));
    let pitch = m.draw.whole(4, 10);
    let window = (f64::from(m.draw.whole(12, 24)), f64::from(m.draw.whole(12, 18)));
    let depth = f64::from(m.draw.whole(3, 6)) / 2.0;
    let rise = f64::from(pitch) / 12.0;
    let room = (base - window.0) / 2.0 * rise - window.1;

    let mut entries = vec![("length", m.tape(base, false)), ("pitch", format!("{pitch}/12"))];
    if to_kits {
        entries.push(("depth", m.tape(depth, true)));
    }
    let surface = m.surface(Shape::Gable, &entries);
    for (key, text) in entries {
        m.says(key, text);
    }
    let entries = [
        ("width", m.tape(window.0, true)),
        ("height", m.tape(window.1, true)),
        ("from_left", m.tape((base - window.0) / 2.0, true)),
        ("sill", m.tape(libm::floor(room / 2.0), true)),
    ];
    m.opening(&entries);
    m.says("window_wide", m.tape(window.0, true));
    m.says("window_high", m.tape(window.1, true));
    let id = m.job.surfaces.get(surface).map_or(0, |one| one.id);
    m.shows("outline", id, &[]);
    (base * base / 4.0 * rise - window.0 * window.1) / 144.0 * depth
}

fn make(m: &mut Making, level: u8) {
    let to_kits = level > 2;
    let feet = gable(m, to_kits);
    areas(m);
    if to_kits {
        kits(m, feet);
    }
}

fn areas(m: &mut Making) {
    let pitch = || at(PITCH, Kind::Pitch);
    m.ask(
        Ask::new("peak_height", Topic::Pitch, Kind::Length)
            .at(PEAK)
            .by(length(LENGTH) / number(2.0) * pitch())
            .slip("whole_span", length(LENGTH) * pitch())
            .slip("pitch_turned", length(LENGTH) / number(2.0) / pitch()),
    );
    let around = || area(length(LENGTH), step("peak_height"));
    m.ask(
        Ask::new("gable_area", Topic::Areas, Kind::Area)
            .at(GROSS)
            .by(around() / number(2.0))
            .slip("whole_rectangle", around())
            .slip("half_twice", around() / number(4.0)),
    );
    // A tenth of a square foot is more than half a percent of a window.
    m.ask(Ask::new("openings_area", Topic::Areas, Kind::Area).at(OPENINGS).within(0.06, 0.5).by(window()));
    m.ask(
        Ask::new("net_area", Topic::Areas, Kind::Area)
            .at(NET)
            .by(step("gable_area") - step("openings_area"))
            .slip("openings_forgotten", step("gable_area"))
            .slip("openings_twice", step("gable_area") - step("openings_area") - step("openings_area")),
    );
}

fn window() -> Formula {
    let [wide, high] = WINDOW.map(length);
    area(wide, high)
}

fn kits(m: &mut Making, feet: f64) {
    // Kits of one invented size. By their labels one or two would nearly be used up; less what is lost that is one
    // too few.
    let by_label = if m.draw.heads() { m.draw.whole(90, 98) } else { m.draw.whole(180, 194) };
    #[allow(clippy::cast_possible_truncation, reason = "tens up to some hundred")]
    let label = 10 * libm::ceil(feet / f64::from(by_label) * 10.0).max(3.0) as i32;
    let factor = m.draw.whole(80, 88);
    let loss = m.draw.whole(4, 6);
    m.kit(label, label * 2 + 60);
    m.of_job("yield_factor", factor.to_string());
    m.of_job("fixed_loss", loss.to_string());
    m.gives("label", f64::from(label), Kind::FoamVolume);
    m.gives("factor", f64::from(factor), Kind::Percent);
    m.gives("loss", f64::from(loss), Kind::FoamVolume);

    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .at(IN_PLACE)
            .by(step("net_area") * length(DEPTH))
            .slip("gross_for_net", step("gable_area") * length(DEPTH)),
    );
    m.ask(usable(0, ""));
    m.ask(
        Ask::new("kits", Topic::Kits, Kind::Count)
            .at(KITS)
            .by((step("board_feet") / step("usable")).up())
            .slip("kits_by_label", (step("board_feet") / at(LABEL, Kind::FoamVolume)).up()),
    );
}
