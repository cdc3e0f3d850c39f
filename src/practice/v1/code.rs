//! What the energy code asks in a climate zone, the depth for it from the data sheet, the aim above it, and what class of
//! vapor retarder the foam is at that depth.

use super::super::Topic;
use super::super::formula::{at, figure, step};
use super::super::made::{Ask, Making, R_OF_RSI, change, plain};
use super::{Scene, sheet};
use crate::climate::{Component, Edition, ROption, Zone, r_row};
use crate::job::{DepthWay, Shape};
use crate::measure::{Kind, Unit};

pub const SCENE: Scene =
    Scene { key: "code", levels: &[3], topics: &[Topic::Depth, Topic::Code], make: without_board };
/// The same with a rigid board outside of the sheathing, which counts as the continuous part of a row.
pub const BOARD: Scene =
    Scene { key: "code_board", levels: &[3], topics: &[Topic::Depth, Topic::Code], make: with_board };

const ASKS: &str = "surfaces.0.depth.marks.0.asks";
const LEAST: &str = "surfaces.0.depth.window.least_in";
const AIM: &str = "surfaces.0.depth.aim_in";
const UNDER: &str = "surfaces.0.depth.under_in";
const PERMEANCE: &str = "foams.0.permeance_1_in";
/// One perm at 0 °C in ng/(s·m²·Pa): as the tool converts it.
const METRIC_PERM: f64 = 57.2135;
const LISTED: [f64; 11] = [1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0];

/// A wall or floor in a zone, and the zone that is read by mistake.
struct Place {
    component: &'static str,
    edition: &'static str,
    zone: u8,
    beside: u8,
    across: bool,
}

const fn place(component: &'static str, edition: &'static str, zone: u8, beside: u8) -> Place {
    Place { component, edition, zone, beside, across: false }
}

impl Place {
    const fn across(mut self) -> Self {
        self.across = true;
        self
    }
}

/// Rows that somebody read in a public copy, and that differ from those beside them.
const PLACES: &[Place] = &[
    place("wall", "2021", 2, 3),
    place("wall", "2021", 3, 2),
    place("wall", "2021", 3, 4),
    place("wall", "2021", 4, 3),
    place("wall", "2012_2018", 3, 2),
    place("rim", "2021", 3, 4),
    place("rim", "2021", 4, 3),
    place("basement_wall", "2021", 4, 3).across(),
    place("basement_wall", "2021", 5, 4).across(),
    place("basement_wall", "2021", 5, 4),
    place("basement_wall", "2021", 4, 5),
    place("basement_wall", "2012_2018", 4, 5).across(),
    place("basement_wall", "2012_2018", 5, 4),
    place("crawl_wall", "2021", 4, 5).across(),
    place("crawl_wall", "2021", 5, 4).across(),
    place("crawl_wall", "2012_2018", 5, 4),
    place("crawl_wall", "2012_2018", 4, 3).across(),
    place("floor", "2021", 4, 5),
    place("floor", "2012_2018", 3, 2),
    place("floor", "2021", 5, 4),
];

/// The same, of walls with a board outside.
const BOARDED: &[Place] =
    &[place("wall", "2021", 3, 4), place("wall", "2021", 4, 3), place("wall", "2012_2018", 6, 5)];

fn without_board(m: &mut Making, _level: u8) {
    make(m, PLACES, 0);
}

fn with_board(m: &mut Making, _level: u8) {
    make(m, BOARDED, 5);
}

fn make(m: &mut Making, places: &[Place], board: u8) {
    #[allow(clippy::cast_possible_truncation, reason = "a short list")]
    let at_place = m.draw.below(places.len() as u32) as usize;
    let Some(place) = places.get(at_place) else { return };
    let rows = sheet::rows(m, &LISTED);
    let mut permeance = f64::from(m.draw.whole(10, 34)) / 10.0;
    let (length, height) = (f64::from(m.draw.whole(10, 30)), f64::from(m.draw.whole(6, 10)));
    let asked = asks(place, board);
    let thicker = rows.iter().position(|(_, r)| sheet::listed(m, *r) >= asked).unwrap_or_default();
    // Not so near to the limit of a class that rounding decides.
    let about = rows.get(thicker).map_or(1.0, |(inches, r)| inches * asked / r);
    if (permeance / about - 1.0).abs() < 0.12 {
        permeance += 0.3 * about;
    }
    let permeance = match m.metric() {
        true => plain(permeance * METRIC_PERM, 0),
        false => plain(permeance, 1),
    };
    m.foam("F1", &rows, &[("permeance", permeance)]);
    m.of_job("work", "new");
    m.of_job("edition", place.edition);
    m.of_job("zone", zone(place.zone));
    let under = if m.metric() { "12 mm" } else { "1/2 in" };
    m.of_job("under_aim", under);
    let entries = [
        ("length", m.tape(length * 12.0, false)),
        ("height", m.tape(height * 12.0, false)),
        ("component", place.component.to_owned()),
        ("runs", runs(place.across).to_owned()),
    ];
    m.surface(Shape::Rectangle, &entries);
    if let Some(surface) = m.job.surfaces.last_mut() {
        surface.depth_way = DepthWay::Rules;
    }
    if board > 0 {
        if let Some(surface) = m.job.surfaces.last_mut() {
            change(&mut surface.entries, "framing_share", "23");
        }
        // As boards are sold everywhere, and as the table prints it.
        let r = format!("R-{board}");
        m.says("board", r.clone());
        m.layer(&[("made_of", "rigid_board".into()), ("position", "outside".into()), ("layer_r", r)]);
    }
    m.says("under", under);
    m.gives("class_two", 1.0, Kind::Permeance);
    let id = m.job.surfaces.first().map_or(0, |one| one.id);
    let foam = m.job.foam;
    m.shows("place", 0, &[]);
    m.shows("code_table", id, &[2.0, 3.0, 4.0, 5.0, 6.0]);
    m.shows("foam", foam, &[]);

    let depth = |key| Ask::new(key, Topic::Depth, Kind::Length).short().within(0.07, 0.0);
    let code = Ask::new("code_r", Topic::Code, Kind::Resistance).at(ASKS);
    let beside = |ask: Ask, m: &Making| {
        ask.slip_job("zone_beside", m, ASKS, |job| change(&mut job.entries, "zone", zone(place.beside)))
    };
    // One part of a pair of the own row is nearer at hand than the row of another zone.
    let code =
        halves(place, board).fold(code, |ask, half| ask.slip("half_of_pair", figure(half, Kind::Resistance)));
    // With a board, leaving it out is likelier than the row beside; without one there is only the row's other figure.
    let code = if board > 0 {
        let bare = code.slip_job("board_forgotten", m, ASKS, |job| {
            job.surfaces.iter_mut().for_each(|surface| surface.layers.clear());
        });
        beside(bare, m)
    } else {
        beside(code, m).slip_job("cavity_for_continuous", m, ASKS, |job| {
            if let Some(surface) = job.surfaces.first_mut() {
                change(&mut surface.entries, "runs", runs(!place.across));
            }
        })
    };
    // The table prints R in every country.
    let code = match m.metric() {
        true => code.slip("r_for_rsi", at(ASKS, Kind::Resistance).scaled(R_OF_RSI)),
        false => code,
    };
    m.ask(code);

    let listed = |at_row: usize, field: &str, kind| at(&format!("foams.0.listed.{at_row}.{field}"), kind);
    let inches = |at_row| listed(at_row, "thickness_in", Kind::Length);
    let r = |at_row| listed(at_row, "r", Kind::Resistance);
    let by_first = || step("code_r") / r(0) * inches(0);
    let least = match thicker.checked_sub(1) {
        None => depth("depth_code").at(LEAST).by(by_first()),
        Some(thinner) => depth("depth_code")
            .at(LEAST)
            .by(inches(thinner)
                + (step("code_r") - r(thinner)) / (r(thicker) - r(thinner))
                    * (inches(thicker) - inches(thinner)))
            .slip("depth_of_row_below", inches(thinner))
            .slip("r_of_first_inch", by_first()),
    };
    m.ask(least);
    m.ask(
        depth("aim")
            .at(AIM)
            .by(step("depth_code") + at(UNDER, Kind::Length))
            .slip("promise_for_aim", step("depth_code"))
            .slip("tolerance_taken_off", step("depth_code") - at(UNDER, Kind::Length)),
    );
    let inch = || figure(1.0, Kind::Length);
    m.ask(
        Ask::new("permeance", Topic::Code, Kind::Permeance)
            .units(Unit::Perm, Unit::Metricperm)
            .within(0.0, 3.0)
            .by(at(PERMEANCE, Kind::Permeance) * (inch() / step("depth_code")))
            .slip("permeance_times_depth", at(PERMEANCE, Kind::Permeance) * (step("depth_code") / inch()))
            .slip("permeance_of_an_inch", at(PERMEANCE, Kind::Permeance)),
    );
    m.ask(
        Ask::choice("retarder", Topic::Code, &["class_2", "class_3"])
            .by(step("permeance").class(&[1.0]))
            .slip("permeance_of_an_inch", at(PERMEANCE, Kind::Permeance).class(&[1.0])),
    );
}

/// What the row asks of foam here: the least of the ways that it can meet. Where on the sheet the depth lies, no more: the
/// answer itself is the estimator's.
fn asks(place: &Place, board: u8) -> f64 {
    let there = f64::from(board);
    let ways = ways(place).iter().filter_map(|way| match place.across {
        _ if way.continuous <= there => Some(way.cavity),
        true if way.cavity <= 0.0 => Some(way.continuous - there),
        _ => None,
    });
    ways.fold(f64::INFINITY, f64::min)
}

/// The ways of the place's row.
fn ways(place: &Place) -> &'static [ROption] {
    let known = Edition::named(place.edition)
        .zip(Zone::named(zone(place.zone)))
        .zip(Component::named(place.component));
    let row = known.and_then(|((edition, zone), component)| r_row(edition, zone, component));
    row.map_or(&[][..], |row| row.options)
}

/// Either part of each pair of the place's row that the board does not make whole: alone it meets nothing.
fn halves(place: &Place, board: u8) -> impl Iterator<Item = f64> {
    let there = f64::from(board);
    let pairs = ways(place).iter().filter(move |way| way.cavity > 0.0 && way.continuous > there);
    pairs.flat_map(|way| [way.cavity, way.continuous])
}

fn zone(number: u8) -> &'static str {
    match number {
        2 => "2a",
        3 => "3a",
        4 => "4a",
        5 => "5a",
        _ => "6a",
    }
}

fn runs(across: bool) -> &'static str {
    if across { "across" } else { "between" }
}
