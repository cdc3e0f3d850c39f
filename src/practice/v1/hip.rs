//! A hip roof from plan and pitch: plan × slope factor, and what it takes at a depth.

use super::super::Topic;
use super::super::formula::{Formula, area, at, number, step};
use super::super::made::{Ask, Making};
use super::Scene;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene =
    Scene { key: "hip", levels: &[3], topics: &[Topic::Areas, Topic::Pitch, Topic::BoardFeet], make };

const LENGTH: &str = "surfaces.0.area.measures.length";
const WIDTH: &str = "surfaces.0.area.measures.width";
const PITCH: &str = "surfaces.0.area.measures.pitch";
const GROSS: &str = "surfaces.0.area.gross_ft2";
const DEPTH: &str = "surfaces.0.depth.aim_in";
const IN_PLACE: &str = "surfaces.0.in_place";

fn length(path: &str) -> Formula {
    at(path, Kind::Length)
}

fn make(m: &mut Making, _level: u8) {
    // The roof of a garage or a shop: 20 to 29 ft by 13 to 18 ft, 3 to 10 in 12; at most 2½ in, so that it is still
    // a job for kits.
    let long = f64::from(m.draw.whole(240, 348));
    let wide = f64::from(m.draw.whole(156, 216));
    let pitch = m.draw.whole(3, 10);
    let depth = f64::from(m.draw.whole(3, 5)) / 2.0;

    let entries = [
        ("length", m.tape(long, false)),
        ("width", m.tape(wide, false)),
        ("pitch", format!("{pitch}/12")),
        ("depth", m.tape(depth, true)),
    ];
    let surface = m.surface(Shape::HipRoof, &entries);
    for (key, text) in entries {
        m.says(key, text);
    }
    let id = m.job.surfaces.get(surface).map_or(0, |one| one.id);
    m.shows("outline", id, &[]);

    let pitch = || at(PITCH, Kind::Pitch);
    m.ask(
        Ask::new("plan_area", Topic::Areas, Kind::Area)
            .by(area(length(LENGTH), length(WIDTH)))
            .slip("sides_added", m.sides_added(length(LENGTH) + length(WIDTH)))
            .slip("sides_added", m.sides_added(number(2.0) * (length(LENGTH) + length(WIDTH)))),
    );
    m.ask(
        Ask::new("slope_factor", Topic::Pitch, Kind::Number)
            .by((number(1.0) + pitch() * pitch()).root())
            .slip("root_forgotten", number(1.0) + pitch() * pitch())
            .slip("run_plus_rise", number(1.0) + pitch())
            .slip("rise_for_slope", pitch()),
    );
    m.ask(
        Ask::new("roof_area", Topic::Areas, Kind::Area)
            .at(GROSS)
            .by(step("plan_area") * step("slope_factor"))
            .slip("slope_as_plan", step("plan_area"))
            .slip("rise_for_slope", step("plan_area") * pitch()),
    );
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .at(IN_PLACE)
            .by(step("roof_area") * length(DEPTH))
            .slip("slope_as_plan", step("plan_area") * length(DEPTH)),
    );
}
