//! A rim joist run around a house, with its lap onto the foundation: from the tape to the kits.

use super::super::Topic;
use super::super::formula::{Formula, area, at, figure, number, step};
use super::super::made::{Ask, Making};
use super::Scene;
use super::trade::{label, long, short, usable, yields};
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene {
    key: "rim",
    levels: &[3],
    topics: &[Topic::Areas, Topic::Framing, Topic::BoardFeet, Topic::Kits],
    make,
};

const LENGTH: &str = "surfaces.0.area.measures.length";
const WIDTH: &str = "surfaces.0.area.measures.width";
const BAND: &str = "surfaces.0.area.measures.band";
const LAP: &str = "surfaces.0.area.measures.foundation_lap";
const SPACING: &str = "surfaces.0.area.measures.spacing";
const MEMBER: &str = "surfaces.0.area.measures.member";
const DEPTH: &str = "surfaces.0.depth.aim_in";

/// Joists by name, and how high they are.
const JOISTS: [(&str, f64, f64); 3] = [("2x8", 8.0, 7.25), ("2x10", 10.0, 9.25), ("2x12", 12.0, 11.25)];
/// By the same name: how thick a joist is said to be, and how thick it is.
const THICK: (f64, f64) = (2.0, 1.5);

fn inches(path: &str) -> Formula {
    at(path, Kind::Length)
}

fn make(m: &mut Making, _level: u8) {
    // The joists' spaces along the long sides, whole but for the last one, which is at least a quarter of a space: so
    // that rounding a reading changes no count.
    let spacing = m.draw.one_of(&[16.0, 24.0]).unwrap_or(16.0);
    let whole = match spacing > 20.0 {
        true => m.draw.whole(16, 24),
        false => m.draw.whole(24, 36),
    };
    let rest = f64::from(m.draw.whole(2, 4)) / 8.0 * spacing;
    let length = f64::from(whole) * spacing + rest;
    let width = f64::from(m.draw.whole(240, 348));
    let (joist, nominal, band) = m.draw.one_of(&JOISTS).unwrap_or(("2x10", 10.0, 9.25));
    let lap = f64::from(m.draw.whole(4, 8)) / 2.0;
    let depth = f64::from(m.draw.whole(4, 6)) / 2.0;
    let about = f64::from(20 * m.draw.whole(6, 10));
    let cents_each = m.draw.whole(180, 220);

    let entries = [
        ("length", long(m, length)),
        ("width", long(m, width)),
        ("band", short(m, band)),
        ("joists_land", "length".to_owned()),
        ("spacing", short(m, spacing)),
        ("member", short(m, THICK.1)),
        ("foundation_lap", m.tape(lap, true)),
        ("depth", m.tape(depth, true)),
    ];
    m.surface(Shape::RimRun, &entries);
    let [length_said, width_said, band_said, _, spacing_said, member_said, lap_said, depth_said] = &entries;
    for (key, (_, text)) in [
        ("length", length_said),
        ("width", width_said),
        ("band", band_said),
        ("spacing", spacing_said),
        ("member", member_said),
        ("lap", lap_said),
        ("depth", depth_said),
    ] {
        m.says(key, text.as_str());
    }
    m.says("joist", joist);
    let id = m.job.surfaces.last_mut().map_or(0, |surface| {
        surface.deduct_framing = true;
        surface.id
    });
    let (factor, loss) = yields(m);
    let ends = 2.0 * (f64::from(whole) + 2.0) * THICK.1 * band;
    let feet = 0.995 * (2.0 * (length + width) * (band + lap) - ends) / 144.0 * depth;
    let label = label(feet, about, factor, loss);
    m.kit(label, 5 * (label * cents_each / 500));
    m.shows("outline", id, &[]);
    m.shows("kits", 0, &[]);

    areas(m, nominal);
    let gross = || step("band_area") + step("lap_area");
    let depth = || inches(DEPTH);
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .at("surfaces.0.in_place")
            .by(step("net_area") * depth())
            .slip("gross_for_net", gross() * depth()),
    );
    m.ask(usable(0, ""));
    let label = at("purchase.sizes.0.label", Kind::FoamVolume);
    m.ask(
        Ask::new("kits", Topic::Kits, Kind::Count)
            .at("purchase.buy.kits")
            .by((step("board_feet") / step("usable")).up())
            .slip("kits_by_label", (step("board_feet") / label).up()),
    );
}

/// From the sides to the area that gets foam.
fn areas(m: &mut Making, nominal: f64) {
    let sides = || inches(LENGTH) + inches(WIDTH);
    m.ask(
        Ask::new("perimeter", Topic::Areas, Kind::Length)
            .at("surfaces.0.area.parts.run_length")
            .by(number(2.0) * sides())
            .slip("one_pair_of_sides", sides()),
    );
    let by_name = |inches: f64| figure(inches, Kind::Length);
    m.ask(
        Ask::new("band_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.parts.band_ft2")
            .by(area(step("perimeter"), inches(BAND)))
            .slip("nominal_band", area(step("perimeter"), by_name(nominal)))
            .slip("one_pair_of_sides", area(sides(), inches(BAND))),
    );
    let spaces = |side: &str, spacing: Formula| (inches(side) / spacing).up();
    let ends = |side: &str| spaces(side, inches(SPACING)) + number(1.0);
    m.ask(
        Ask::new("landing_ends", Topic::Framing, Kind::Count)
            .at("surfaces.0.area.pieces.0.count")
            .by(number(2.0) * ends(LENGTH))
            .slip("last_stud_missing", number(2.0) * spaces(LENGTH, inches(SPACING)))
            .slip("one_side_only", ends(LENGTH))
            .slip("ends_on_all_sides", number(2.0) * (ends(LENGTH) + ends(WIDTH)))
            .slip("ends_on_wrong_sides", number(2.0) * ends(WIDTH))
            .slip(
                "clear_spacing",
                number(2.0) * (spaces(LENGTH, inches(SPACING) + inches(MEMBER)) + number(1.0)),
            ),
    );
    m.ask(
        Ask::new("members_area", Topic::Framing, Kind::Area)
            .at("surfaces.0.area.framing_ft2")
            .within(0.06, 0.5)
            .by(area(step("landing_ends") * inches(MEMBER), inches(BAND)))
            .slip("nominal_lumber", area(step("landing_ends") * by_name(THICK.0), inches(BAND))),
    );
    m.ask(
        Ask::new("lap_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.parts.lap_ft2")
            .by(area(step("perimeter"), inches(LAP)))
            .slip("one_pair_of_sides", area(sides(), inches(LAP))),
    );
    m.ask(
        Ask::new("net_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.net_ft2")
            .by(step("band_area") + step("lap_area") - step("members_area"))
            .slip("framing_forgotten", step("band_area") + step("lap_area"))
            .slip("lap_forgotten", step("band_area") - step("members_area"))
            .slip(
                "framing_twice",
                step("band_area") + step("lap_area") - step("members_area") - step("members_area"),
            ),
    );
}
