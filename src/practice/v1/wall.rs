//! A wall with two windows and a door: what is gross, what is taken out, what is left, and what it takes at a depth.

use super::super::Topic;
use super::super::formula::{area, at, number, step};
use super::super::made::{Ask, Making};
use super::Scene;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "wall", levels: &[1], topics: &[Topic::Areas, Topic::BoardFeet], make };

const LENGTH: &str = "surfaces.0.area.measures.length";
const HEIGHT: &str = "surfaces.0.area.measures.height";
const GROSS: &str = "surfaces.0.area.gross_ft2";
const OPENINGS: &str = "surfaces.0.area.openings_ft2";
const WINDOW: [&str; 2] = ["surfaces.0.area.openings.0.width_in", "surfaces.0.area.openings.0.height_in"];
const DOOR: [&str; 2] = ["surfaces.0.area.openings.2.width_in", "surfaces.0.area.openings.2.height_in"];
const NET: &str = "surfaces.0.area.net_ft2";
const DEPTH: &str = "surfaces.0.depth.aim_in";
const IN_PLACE: &str = "surfaces.0.in_place";

fn make(m: &mut Making, _level: u8) {
    // A wall of 16 to 28 ft by 7½ to 9½ ft, two windows that are alike and a door. The windows take 10 ft 4 in from
    // one end at most, the door 4 ft 2 in from the other: they never meet, and none reaches the top.
    let length = f64::from(m.draw.whole(192, 336));
    let height = f64::from(m.draw.whole(180, 228)) / 2.0;
    let window = (f64::from(m.draw.whole(24, 44)), f64::from(m.draw.whole(30, 54)));
    let door = (f64::from(m.draw.whole(30, 38)), f64::from(m.draw.whole(76, 82)));
    let depth = f64::from(m.draw.whole(3, 6)) / 2.0;
    let from_end = f64::from(m.draw.whole(12, 24));
    let sill = f64::from(m.draw.whole(20, 30));
    let door_at_right = m.draw.heads();
    let from_left = |from_end: f64, wide: f64, right: bool| {
        if right { length - from_end - wide } else { from_end }
    };

    let entries = [
        ("length", m.tape(length, false)),
        ("height", m.tape(height, false)),
        ("depth", m.tape(depth, true)),
    ];
    let surface = m.surface(Shape::Rectangle, &entries);
    for from_end in [from_end, from_end + window.0 + 12.0] {
        let left = from_left(from_end, window.0, !door_at_right);
        let entries = [
            ("width", m.tape(window.0, true)),
            ("height", m.tape(window.1, true)),
            ("from_left", m.tape(left, true)),
            ("sill", m.tape(sill, true)),
        ];
        m.opening(&entries);
    }
    let left = from_left(12.0, door.0, door_at_right);
    let entries = [
        ("width", m.tape(door.0, true)),
        ("height", m.tape(door.1, true)),
        ("from_left", m.tape(left, true)),
    ];
    m.opening(&entries);
    for (key, inches, short) in [
        ("length", length, false),
        ("height", height, false),
        ("window_wide", window.0, true),
        ("window_high", window.1, true),
        ("door_wide", door.0, true),
        ("door_high", door.1, true),
        ("depth", depth, true),
    ] {
        m.says(key, m.tape(inches, short));
    }
    let id = m.job.surfaces.get(surface).map_or(0, |one| one.id);
    m.shows("outline", id, &[]);

    let side = |path: &str| at(path, Kind::Length);
    let [window, door] = [WINDOW, DOOR].map(|[wide, high]| area(side(wide), side(high)));
    m.ask(
        Ask::new("gross_area", Topic::Areas, Kind::Area)
            .at(GROSS)
            .by(area(side(LENGTH), side(HEIGHT)))
            .slip("sides_added", m.sides_added(side(LENGTH) + side(HEIGHT)))
            .slip("sides_added", m.sides_added(number(2.0) * (side(LENGTH) + side(HEIGHT)))),
    );
    m.ask(
        Ask::new("openings_area", Topic::Areas, Kind::Area)
            .at(OPENINGS)
            .by(number(2.0) * window.clone() + door.clone())
            .slip("one_of_several", window.clone() + door)
            .slip("one_of_several", number(2.0) * window),
    );
    m.ask(
        Ask::new("net_area", Topic::Areas, Kind::Area)
            .at(NET)
            .by(step("gross_area") - step("openings_area"))
            .slip("openings_forgotten", step("gross_area"))
            .slip("openings_twice", step("gross_area") - step("openings_area") - step("openings_area")),
    );
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .at(IN_PLACE)
            .by(step("net_area") * at(DEPTH, Kind::Length))
            .slip("gross_for_net", step("gross_area") * at(DEPTH, Kind::Length)),
    );
}
