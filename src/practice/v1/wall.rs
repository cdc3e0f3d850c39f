//! A wall with windows: what is gross, what is taken out, what is left, and what it takes at a depth.

use super::super::Topic;
use super::super::formula::{area, at, step};
use super::super::made::{Ask, Making};
use super::Scene;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "wall", levels: &[1], topics: &[Topic::Areas, Topic::BoardFeet], make };

const LENGTH: &str = "surfaces.0.area.measures.length";
const HEIGHT: &str = "surfaces.0.area.measures.height";
const GROSS: &str = "surfaces.0.area.gross_ft2";
const OPENINGS: &str = "surfaces.0.area.openings_ft2";
const NET: &str = "surfaces.0.area.net_ft2";
const DEPTH: &str = "surfaces.0.depth.aim_in";
const IN_PLACE: &str = "surfaces.0.in_place";

fn make(m: &mut Making, _level: u8) {
    // A wall of 12 to 28 ft in inches by 7½ to 9½ ft, two windows that are alike and one that is not.
    let length = f64::from(m.draw.whole(144, 336));
    let height = f64::from(m.draw.whole(180, 228)) / 2.0;
    let window = (f64::from(m.draw.whole(24, 44)), f64::from(m.draw.whole(30, 54)));
    let door = (f64::from(m.draw.whole(30, 38)), f64::from(m.draw.whole(76, 82)));
    let depth = f64::from(m.draw.whole(2, 6)) / 2.0;
    let tape = |m: &Making, inches| m.tape(inches, false);
    let short = |m: &Making, inches| m.tape(inches, true);

    let entries = [("length", tape(m, length)), ("height", tape(m, height)), ("depth", short(m, depth))];
    let surface = m.surface(Shape::Rectangle, &entries);
    let (wide, high) = (short(m, window.0), short(m, window.1));
    // The windows stand a third of what the door leaves from the left end, the door stands at the right.
    let from_left = f64::from(m.draw.whole(12, 24));
    let sill = f64::from(m.draw.whole(20, 30));
    let second = from_left + window.0 + 12.0;
    for left in [from_left, second] {
        let entries = [
            ("width", wide.clone()),
            ("height", high.clone()),
            ("from_left", short(m, left)),
            ("sill", short(m, sill)),
        ];
        m.opening(&entries);
    }
    let (door_wide, door_high) = (short(m, door.0), short(m, door.1));
    if m.draw.heads() {
        let entries = [
            ("width", door_wide.clone()),
            ("height", door_high.clone()),
            ("from_left", short(m, length - door.0 - 12.0)),
        ];
        m.opening(&entries);
    }
    m.says("depth", short(m, depth));
    let id = m.job.surfaces.get(surface).map_or(0, |one| one.id);
    m.shows("outline", id, &[]);

    let whole = || area(at(LENGTH, Kind::Length), at(HEIGHT, Kind::Length));
    m.ask(
        Ask::new("gross_area", Topic::Areas, Kind::Area).at(GROSS).by(whole()).slip(
            "one_pair_of_sides",
            (at(LENGTH, Kind::Length) + at(HEIGHT, Kind::Length)).scaled(1.0 / 12.0),
        ),
    );
    let one_less = Ask::new("openings_area", Topic::Areas, Kind::Area).at(OPENINGS).slip_job(
        "one_of_several",
        m,
        OPENINGS,
        |job| {
            if let Some(surface) = job.surfaces.first_mut() {
                surface.openings.remove(0);
            }
        },
    );
    m.ask(one_less);
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
            .slip("gross_for_net", step("gross_area") * at(DEPTH, Kind::Length))
            .slip("depth_forgotten", step("net_area")),
    );
}
