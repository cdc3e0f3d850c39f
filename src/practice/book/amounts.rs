//! Board feet by their definition, and the depth that a code's table asks for.

use super::super::Topic;
use super::super::formula::{area, at, number, step};
use super::super::made::{Ask, Making, R_OF_RSI};
use super::{exact, exact_foam, exact_r};
use crate::job::{DepthWay, Shape};
use crate::measure::Kind;

/// 10 m × 4 m × 25 mm, one cubic meter of foam. A metric case: it is given in meters whatever the person works in.
pub fn cubic_meter(m: &mut Making) {
    let [length, width, depth] = ["10 m", "4 m", "25 mm"];
    let entries =
        [("length", length), ("height", width), ("depth", depth)].map(|(key, text)| (key, text.to_owned()));
    m.surface(Shape::Rectangle, &entries);
    for (key, text) in [("length", length), ("width", width), ("depth", depth)] {
        m.says(key, text);
    }
    let id = m.job.surfaces.last().map_or(0, |surface| surface.id);
    m.shows("outline", id, &[]);
    let of = |measure: &str| at(&format!("surfaces.0.area.measures.{measure}"), Kind::Length);
    m.ask(
        Ask::new("gross_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.gross_ft2")
            .by(area(of("length"), of("height"))),
    );
    let depth = at("surfaces.0.depth.aim_in", Kind::Length);
    let feet = Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
        .at("surfaces.0.in_place")
        .by(step("gross_area") * depth);
    // Without its depth, or with an inch for 25 mm: in US units both come to the same.
    m.ask(if m.metric() { feet } else { feet.slip("inch_for_25_mm", step("gross_area")) });
}

/// Foam under an unvented roof deck in zone 4A, R-38 batts below it: the table of the residential code, at R-6 an inch.
pub fn deck(m: &mut Making) {
    for (field, word) in [("zone", "4a"), ("edition", "2012_2018"), ("work", "new"), ("under_aim", "0")] {
        m.of_job(field, word);
    }
    let area = if m.metric() { "10 m2" } else { "100 ft2" };
    let entries = [
        ("area", area.to_owned()),
        ("component", "roof_deck".to_owned()),
        ("cavity", exact(m, "14 in", 14.0)),
        ("framing_share", "10".to_owned()),
    ];
    let deck = m.surface(Shape::TypedArea, &entries);
    let entries =
        [("made_of", "batt".to_owned()), ("position", "cavity".to_owned()), ("layer_r", exact_r(m, 38.0))];
    m.layer(&entries);
    if let Some(deck) = m.job.surfaces.get_mut(deck) {
        deck.depth_way = DepthWay::Rules;
    }
    let lift = exact(m, "1 in", 1.0);
    let rows = [("1 in", 1.0, 6.0), ("2 in", 2.0, 12.0), ("3 in", 3.0, 18.0), ("4 in", 4.0, 24.0)];
    exact_foam(m, &rows, &[("largest_lift", lift)]);
    m.says("batt", m.r(38.0));
    m.shows("place", 0, &[]);
    m.shows("foam", m.job.foam, &[]);
    const ASKS: &str = "surfaces.0.depth.marks.3.asks";
    let asked = Ask::new("unvented_r", Topic::Code, Kind::Resistance).within(0.06, 0.0).at(ASKS);
    // The table prints R in every country.
    let asked = if m.metric() {
        m.shows("r_units", 0, &[]);
        asked.slip("r_for_rsi", at(ASKS, Kind::Resistance).scaled(R_OF_RSI))
    } else {
        asked
    };
    m.ask(asked);
    let row = |name: &str, kind| at(&format!("foams.0.listed.0.{name}"), kind);
    m.ask(
        Ask::new("depth_for_r", Topic::Depth, Kind::Length)
            .short()
            .at("surfaces.0.depth.window.least_in")
            .by(step("unvented_r") / row("r", Kind::Resistance) * row("thickness_in", Kind::Length)),
    );
    let largest = at("surfaces.0.lifts.largest_in", Kind::Length);
    let count = (step("depth_for_r") / largest).up();
    m.ask(
        Ask::new("lifts", Topic::Lifts, Kind::Count)
            .at("surfaces.0.lifts.count")
            .by(count.clone())
            .slip("one_lift_more", count + number(1.0)),
    );
}
