//! Two areas, each at its own depth: board feet of each, and of both.

use super::super::Topic;
use super::super::formula::{Formula, at, step};
use super::super::made::{Ask, Making};
use super::Scene;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "board_feet", levels: &[1], topics: &[Topic::BoardFeet], make };

/// Square meters in a square foot.
const M2: f64 = 0.092_903_04;

/// A figure of a surface.
fn of(surface: usize, name: &str, kind: Kind) -> Formula {
    at(&format!("surfaces.{surface}.{name}"), kind)
}

fn net(surface: usize) -> Formula {
    of(surface, "area.net_ft2", Kind::Area)
}

fn depth(surface: usize) -> Formula {
    of(surface, "depth.aim_in", Kind::Length)
}

/// The step to the board feet of one surface.
fn ask(m: &mut Making, surface: usize, thing: &'static str) {
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .of(thing)
            .at(format!("surfaces.{surface}.in_place"))
            .by(net(surface) * depth(surface)),
    );
}

fn make(m: &mut Making, _level: u8) {
    let wall = f64::from(m.draw.whole(96, 240));
    let ceiling = f64::from(m.draw.whole(60, 160));
    // The ceiling gets half an inch to two inches more than the wall, which gets 1½ to 3 in.
    let wall_halves = m.draw.whole(3, 6);
    let ceiling_halves = wall_halves + m.draw.whole(1, 4);
    let places =
        [("wall", "wall_depth", wall, wall_halves), ("ceiling", "ceiling_depth", ceiling, ceiling_halves)];
    for (area_key, depth_key, ft2, halves) in places {
        let (area, depth) = (m.area(ft2), m.tape(f64::from(halves) / 2.0, true));
        m.surface(Shape::TypedArea, &[("area", area.clone()), ("depth", depth.clone())]);
        m.says(area_key, area);
        m.says(depth_key, depth);
    }
    ask(m, 0, "wall");
    ask(m, 1, "ceiling");
    // As many board feet as both are square feet or meters.
    let areas = (net(0) + net(1)).scaled(if m.metric() { M2 } else { 1.0 });
    m.ask(
        Ask::new("board_feet_sum", Topic::BoardFeet, Kind::FoamVolume)
            .at("quantity.in_place")
            .by(step("board_feet/wall") + step("board_feet/ceiling"))
            .slip("one_depth_for_all", (net(0) + net(1)) * depth(0))
            .slip("one_depth_for_all", (net(0) + net(1)) * depth(1))
            .slip("depth_forgotten", areas),
    );
}
