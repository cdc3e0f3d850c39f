//! A whole crawlspace in climate zone 5: rim and foundation walls, from the tape to kits, lifts, the morning's readings,
//! and the one thing that is wrong.

use super::super::formula::{area, at, figure, number, step};
use super::super::made::{Ask, Making, change};
use super::super::{Formula, Topic};
use super::crawl_day;
use super::trade::{
    aim, aims_over, between, label, lifts, long, oversprays, rows, short, to_spray, usable, yields,
};
use super::{Scene, sheet};
use crate::job::{DepthWay, Shape};
use crate::measure::Kind;

pub const SCENE: Scene = Scene {
    key: "crawl",
    levels: &[4],
    topics: &[
        Topic::Areas,
        Topic::Depth,
        Topic::BoardFeet,
        Topic::Allowances,
        Topic::Kits,
        Topic::Lifts,
        Topic::Temperatures,
        Topic::Price,
    ],
    make,
};

/// Of the walls in the list of surfaces; the rim comes before them.
const WALLS: usize = 1;
/// What zone 5 asks of a crawlspace wall where foam runs unbroken, in either edition: the student reads it off the table.
const ASKED: f64 = 15.0;
/// Joists by name, and how high they are.
const JOISTS: [(&str, f64, f64); 3] = [("2x8", 8.0, 7.25), ("2x10", 10.0, 9.25), ("2x12", 12.0, 11.25)];

/// A measure of the walls.
fn of_walls(measure: &str) -> Formula {
    at(&format!("surfaces.{WALLS}.area.measures.{measure}"), Kind::Length)
}

fn around() -> Formula {
    number(2.0) * (of_walls("length") + of_walls("width"))
}

/// Width × height × count of an opening of the walls.
fn opening(which: usize) -> Formula {
    let of = |name: &str, kind| at(&format!("surfaces.{WALLS}.area.openings.{which}.{name}"), kind);
    of("count", Kind::Count) * area(of("width_in", Kind::Length), of("height_in", Kind::Length))
}

fn make(m: &mut Making, _level: u8) {
    let length = f64::from(m.draw.whole(264, 408));
    let width = f64::from(m.draw.whole(192, 300));
    let height = f64::from(m.draw.whole(28, 44));
    let (joist, nominal, band) = m.draw.one_of(&JOISTS).unwrap_or(("2x10", 10.0, 9.25));
    let rim_depth = f64::from(m.draw.whole(4, 6)) / 2.0;
    let edition = m.draw.one_of(&["2021", "2012_2018"]).unwrap_or("2021");
    let foam_rows = rows(m);
    let (lift, wait) = match m.draw.heads() {
        true => (1.0, 5 * m.draw.whole(4, 8)),
        false => (1.5, 5 * m.draw.whole(8, 12)),
    };
    let about = f64::from(20 * m.draw.whole(13, 24));
    let cents_each = m.draw.whole(140, 170);
    let vents = m.draw.whole(3, 6);
    let vent = (16.0, 8.0);
    let hatch = (f64::from(m.draw.whole(24, 32)), f64::from(m.draw.whole(18, 24)));

    let sides = [("length", long(m, length)), ("width", long(m, width))];
    let [(_, length_said), (_, width_said)] = sides.clone();
    let (band_said, rim_said, height_said) = (short(m, band), m.tape(rim_depth, true), long(m, height));
    let more = [("band", band_said.clone()), ("depth", rim_said.clone())];
    m.surface(Shape::RimRun, &[&sides[..], &more].concat());
    let more = [
        ("height", height_said.clone()),
        ("target_r", m.r(ASKED)),
        ("component", "crawl_wall".to_owned()),
        ("runs", "across".to_owned()),
    ];
    m.surface(Shape::Footprint, &[&sides[..], &more].concat());
    let sizes = [vent, hatch].map(|(wide, high)| (short(m, wide), short(m, high)));
    for ((wide, high), count) in sizes.iter().zip([vents, 1]) {
        let entries = [("width", wide.clone()), ("height", high.clone()), ("count", count.to_string())];
        m.opening(&entries);
    }
    if let Some(walls) = m.job.surfaces.get_mut(WALLS) {
        walls.depth_way = DepthWay::TargetR;
    }
    for (field, word) in [("zone", "5a"), ("edition", edition), ("work", "new")] {
        m.of_job(field, word);
    }
    let [(vent_wide, vent_high), (hatch_wide, hatch_high)] = sizes;
    for (key, text) in [
        ("length", length_said),
        ("width", width_said),
        ("band", band_said),
        ("rim_depth", rim_said),
        ("height", height_said),
        ("vents", vents.to_string()),
        ("vent_width", vent_wide),
        ("vent_height", vent_high),
        ("hatch_width", hatch_wide),
        ("hatch_height", hatch_high),
        ("joist", joist.to_owned()),
    ] {
        m.says(key, text);
    }
    aims_over(m);
    let over = oversprays(m);
    let (factor, loss) = yields(m);
    let around = 2.0 * (length + width) / 144.0;
    let holes = (f64::from(vents) * vent.0 * vent.1 + hatch.0 * hatch.1) / 144.0;
    let aim = between(&foam_rows, ASKED).unwrap_or_default() + 0.5;
    // Metric readings come out a little below: half of the difference is taken off.
    let in_place = 0.992 * (around * band * rim_depth + (around * height - holes) * aim);
    let label = label(in_place * (1.0 + over / 100.0), about, factor, loss);
    m.kit(label, 5 * (label * cents_each / 500));
    let windows = crawl_day::windows(m);
    let entries = [("largest_lift", short(m, lift)), ("wait", format!("{wait} min"))];
    m.foam("F1", &foam_rows, &[&entries[..], &windows].concat());
    let trouble = crawl_day::readings(m);
    // What the helper's sheet says of the walls: right, but where a long wall stands on it once too often.
    let [length, width, height] = [length, width, height].map(|inches| sheet::taped(m, inches));
    let long_walls = if trouble.wall_twice() { 3.0 } else { 2.0 };
    let sheet = (long_walls * length + 2.0 * width) * height / 144.0;
    m.gives("sheet", sheet, Kind::Area);

    let ids: Vec<u32> = m.job.surfaces.iter().map(|surface| surface.id).collect();
    ids.iter().for_each(|id| m.shows("outline", *id, &[]));
    m.shows("place", 0, &[]);
    m.shows("code_table", ids.get(WALLS).copied().unwrap_or(0), &[3.0, 4.0, 5.0, 6.0]);
    m.shows("foam", m.job.foam, &[]);
    m.shows("kits", 0, &[]);
    m.shows("readings", 0, &[]);
    crawl_day::table(m);

    areas(m, nominal);
    amounts(m);
    crawl_day::ask(m, trouble);
}

/// The walls before openings.
fn around_area() -> Formula {
    area(around(), of_walls("height"))
}

/// Rim, walls, and the depth of the walls.
fn areas(m: &mut Making, nominal: f64) {
    let band = at("surfaces.0.area.measures.band", Kind::Length);
    let half = || of_walls("length") + of_walls("width");
    m.ask(
        Ask::new("band_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.net_ft2")
            .by(area(around(), band.clone()))
            .slip("nominal_band", area(around(), figure(nominal, Kind::Length)))
            .slip("one_pair_of_sides", area(half(), band)),
    );
    let openings = || opening(0) + opening(1);
    m.ask(
        Ask::new("net_area", Topic::Areas, Kind::Area)
            .of("walls")
            .at(format!("surfaces.{WALLS}.area.net_ft2"))
            .by(around_area() - openings())
            .slip("openings_forgotten", around_area())
            .slip("openings_twice", around_area() - openings() - openings())
            .slip("one_pair_of_sides", area(half(), of_walls("height")) - openings()),
    );
    let path = format!("surfaces.{WALLS}.depth.aim_in");
    let beside = |m: &Making, name, r: f64| {
        let text = m.r(r);
        let mut job = m.job.clone();
        if let Some(walls) = job.surfaces.get_mut(WALLS) {
            change(&mut walls.entries, "target_r", text);
        }
        (name, job)
    };
    // The row of zone 4, and the figure for foam in a cavity.
    let (zone, zone_job) = beside(m, "zone_beside", 10.0);
    let (cavity, cavity_job) = beside(m, "cavity_for_continuous", 19.0);
    let asked = aim(WALLS, "walls").slip_job(zone, m, path.clone(), |job| *job = zone_job).slip_job(
        cavity,
        m,
        path,
        |job| *job = cavity_job,
    );
    m.ask(asked);
}

/// Board feet, kits, cost, lifts and waits.
fn amounts(m: &mut Making) {
    let depth = || at("surfaces.0.depth.aim_in", Kind::Length);
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .of("rim")
            .at("surfaces.0.in_place")
            .by(step("band_area") * depth()),
    );
    let gross = around_area();
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .of("walls")
            .at(format!("surfaces.{WALLS}.in_place"))
            .by(step("net_area/walls") * step("aim/walls"))
            .slip("gross_for_net", gross * step("aim/walls")),
    );
    let sum = || step("board_feet/rim") + step("board_feet/walls");
    m.ask(to_spray(&sum).slip("one_surface_only", step("board_feet/walls")));
    m.ask(usable(0, ""));
    let label = at("purchase.sizes.0.label", Kind::FoamVolume);
    m.ask(
        Ask::new("kits", Topic::Kits, Kind::Count)
            .at("purchase.buy.kits")
            .by((step("to_spray") / step("usable")).up())
            .slip("kits_by_label", (step("to_spray") / label).up())
            .slip("allowance_forgotten", (sum() / step("usable")).up()),
    );
    let price = || at("purchase.sizes.0.price", Kind::Money);
    m.ask(
        Ask::new("kits_cost", Topic::Price, Kind::Money)
            .at("purchase.price.kits")
            .within(50.0, 0.0)
            .by(step("kits") * price())
            .slip("one_kit_only", price()),
    );
    m.ask(lifts(WALLS, step("aim/walls")).of("walls"));
    let wait = || at("foams.0.wait_min", Kind::Duration);
    m.ask(
        Ask::new("wait_total", Topic::Lifts, Kind::Duration)
            .of("walls")
            .at(format!("surfaces.{WALLS}.lifts.waits_min"))
            .by((step("lifts/walls") - number(1.0)) * wait())
            .slip("wait_after_last", step("lifts/walls") * wait()),
    );
}
