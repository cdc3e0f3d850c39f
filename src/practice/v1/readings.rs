//! Readings on site: the dew point of the air, how far the coldest surface is above it, what is outside the label's
//! windows, and whether foam may go on.

use super::super::Topic;
use super::super::formula::{at, step};
use super::super::made::{Ask, Making, change};
use super::Scene;
use super::trade::spread;
use crate::job::{Job, ReadingOf};
use crate::measure::Kind;
use crate::readiness::moist_air::dew_point;

pub const SCENE: Scene = Scene { key: "readings", levels: &[1, 2], topics: &[Topic::Temperatures], make };

const DEW: &str = "readiness.dew.point_f";
const SPREAD: &str = "readiness.dew.spread_f";
const LEAST: &str = "readiness.dew.least_surface_f";
const LABEL: &str = "foams.0.surface.least_f";
const AIR: &str = "readiness.checks.2.value_f";
const VERDICT: &str = "readiness.verdict";
/// Where surfaces stand in the list of checks: after the cylinders, the air and its humidity.
const SURFACES: [(&str, &str); 2] = [
    ("readiness.checks.4.value_f", "readiness.checks.4.least_f"),
    ("readiness.checks.5.value_f", "readiness.checks.5.least_f"),
];
/// What is to blame, and where the core says so.
const BLAME: &[(&str, &str)] = &[
    ("none", "readiness.verdict=go"),
    ("cylinder_a", "readiness.checks.0.state=outside"),
    ("cylinder_b", "readiness.checks.1.state=outside"),
    ("air", "readiness.checks.2.state=outside"),
    ("surface_1", "readiness.checks.4.state=outside"),
    ("surface_2", "readiness.checks.5.state=outside"),
];
const BLAMED: &[&str] = &["none", "cylinder_a", "cylinder_b", "air", "surface_1", "surface_2"];
/// How far an answer read off a table of whole rows may be off, in °F.
const READ: f64 = 1.0;
/// The usual spread between dew point and surface, in °F.
const SPREAD_F: f64 = 5.0;
/// How far a label's limit lies at least from that of the dew point: twice what an answer may be off, and what whole degrees
/// of the other scale take off it.
const APART: f64 = 4.0;

fn make(m: &mut Making, level: u8) {
    m.of_job("flames_out", "yes");
    spread(m);
    if level == 1 { one_surface(m) } else { whole_round(m) }
}

/// Moist air over one surface; everything else is well inside.
fn one_surface(m: &mut Making) {
    let air = m.draw.whole(70, 86);
    let humidity = 10 * m.draw.whole(4, 6);
    let dew = dew(air, humidity);
    // Two degrees above the dew point, or at least three above what it asks for and four below the air.
    let room = air - whole(dew) - 9;
    let surface = if m.draw.heads() {
        whole(dew) + 2
    } else {
        let over = m.draw.whole(3, room.clamp(3, 9));
        whole(dew + SPREAD_F) + over
    };
    let (a, b) = (m.draw.whole(75, 82), m.draw.whole(75, 82));
    windows(m, [70, 90, 50, 95, 40, 95]);
    readings(m, [a, b, air, humidity]);
    reading(m, ReadingOf::Surface, surface);
    table(m, air, humidity, false);
    shown(m);

    let (coldest, _) = SURFACES[0];
    ask_dew(m, surface);
    ask_margin(m, coldest);
    let reaches = step("least_surface") - at(coldest, Kind::Temperature);
    let verdict = Ask::choice("verdict", Topic::Temperatures, &["go", "hold"])
        .word(VERDICT)
        .by(reaches.class(&[0.0]))
        .slip_job("air_for_surface", m, VERDICT, |job| read_as(job, 4, air_text));
    m.ask(verdict);
}

/// What is wrong on a round.
#[derive(Clone, Copy, PartialEq)]
enum Wrong {
    Nothing,
    /// One cylinder by a little: the mean of both is inside.
    OneCylinder,
    /// One cylinder by so much that the mean is outside too.
    ColdCylinder,
    NearDew,
    ColdSurface,
    ColdAir,
}

/// Both cylinders, the air, two surfaces, against the label: at most one reading is outside.
fn whole_round(m: &mut Making) {
    use Wrong as W;
    let kinds =
        [W::Nothing, W::Nothing, W::OneCylinder, W::ColdCylinder, W::NearDew, W::ColdSurface, W::ColdAir];
    let wrong = m.draw.one_of(&kinds).unwrap_or(W::Nothing);
    let cylinder_least = m.draw.one_of(&[65, 70, 75]).unwrap_or(70);
    let label = m.draw.one_of(&[45, 50, 55, 60]).unwrap_or(50);
    let over = m.draw.whole(20, 26);
    let (dry, moist) = (10 * m.draw.whole(2, 3), 10 * m.draw.whole(4, 5));
    let beyond = m.draw.whole(3, 6);
    let (second, first_is_colder, a_is_colder) = (m.draw.whole(3, 6), m.draw.heads(), m.draw.heads());
    let warm = m.draw.whole(5, 9);
    let inside = m.draw.whole(3, 6);

    let (air_least, label) = if wrong == W::ColdAir { (60, 40) } else { (label, label) };
    let air = if wrong == W::ColdAir { air_least - beyond } else { label + over };
    let humidity = match wrong {
        W::NearDew => 60,
        W::ColdSurface => dry,
        _ => moist,
    };
    let dew = dew(air, humidity);
    let surface_least = apart(label, dew + SPREAD_F);
    let limit = whole(dew + SPREAD_F).max(surface_least);
    let coldest = match wrong {
        W::NearDew => whole(dew) + 2,
        W::ColdSurface => surface_least - beyond,
        _ => limit + inside,
    };
    let other = coldest.max(limit) + second;
    let (cold, warmer) = match wrong {
        W::OneCylinder => (cylinder_least - beyond, cylinder_least + beyond + warm),
        W::ColdCylinder => (cylinder_least - beyond - 8, cylinder_least + warm),
        _ => (cylinder_least + warm - 1, cylinder_least + warm + 1),
    };
    let (a, b) = if a_is_colder { (cold, warmer) } else { (warmer, cold) };
    windows(m, [cylinder_least, cylinder_least + 20, air_least, 95, surface_least, 95]);
    readings(m, [a, b, air, humidity]);
    let surfaces = if first_is_colder { [coldest, other] } else { [other, coldest] };
    for surface in surfaces {
        reading(m, ReadingOf::Surface, surface);
    }
    table(m, air, humidity, true);
    shown(m);

    let [first, other_spot] = SURFACES;
    let of_coldest = if first_is_colder { first } else { other_spot };
    let surface = |path| at(path, Kind::Temperature);
    ask_dew(m, coldest);
    m.ask(
        Ask::new("surface_limit", Topic::Temperatures, Kind::Temperature)
            .within(READ, 0.0)
            .at(of_coldest.1)
            .by(step("least_surface").larger(surface(LABEL)))
            .slip("lower_limit", step("least_surface").smaller(surface(LABEL))),
    );
    ask_margin(m, of_coldest.0);
    let paths: Vec<&str> = BLAME.iter().map(|(_, path)| *path).collect();
    m.ask(Ask::choice("governing", Topic::Temperatures, BLAMED).words(&paths));
    let verdict = Ask::choice("verdict", Topic::Temperatures, &["go", "hold"]).word(VERDICT);
    let (colder, _) = if a_is_colder { (0, 1) } else { (1, 0) };
    let spot = if first_is_colder { 4 } else { 5 };
    // What the one who passes over it holds to be read instead.
    let verdict = match wrong {
        W::Nothing => verdict,
        W::OneCylinder => {
            let mean = m.degrees((a + b) / 2);
            verdict.slip_job("mean_of_cylinders", m, VERDICT, |job| {
                read_as(job, 0, |_| Some(mean.clone()));
                read_as(job, 1, |_| Some(mean.clone()));
            })
        }
        W::ColdCylinder => verdict.slip_job("one_in_window_is_enough", m, VERDICT, |job| {
            read_as(job, colder, |job| text_of(job, 1 - colder));
        }),
        W::NearDew => verdict.slip_job("air_for_surface", m, VERDICT, |job| read_as(job, spot, air_text)),
        W::ColdSurface => verdict.slip_job("one_in_window_is_enough", m, VERDICT, |job| {
            read_as(job, spot, |job| text_of(job, 9 - spot));
        }),
        W::ColdAir => {
            let label = m.degrees(air_least);
            verdict.slip_job("one_in_window_is_enough", m, VERDICT, |job| {
                read_as(job, 2, |_| Some(label.clone()));
            })
        }
    };
    m.ask(verdict);
}

/// The dew point and what it asks of a surface.
fn ask_dew(m: &mut Making, surface: i32) {
    let text = m.degrees(surface);
    let dew = Ask::new("dew_point", Topic::Temperatures, Kind::Temperature)
        .within(READ, 0.0)
        .at(DEW)
        .slip_job("surface_for_air", m, DEW, |job| read_as(job, 2, |_| Some(text.clone())));
    m.ask(dew);
    let spread = || at(SPREAD, Kind::TemperatureStep);
    m.ask(
        Ask::new("least_surface", Topic::Temperatures, Kind::Temperature)
            .within(READ, 0.0)
            .at(LEAST)
            .by(step("dew_point") + spread())
            .slip("spread_forgotten", step("dew_point"))
            .slip("spread_taken_off", step("dew_point") - spread()),
    );
}

/// How far a surface is above the dew point.
fn ask_margin(m: &mut Making, surface: &str) {
    m.ask(
        Ask::new("margin", Topic::Temperatures, Kind::TemperatureStep)
            .within(READ, 0.0)
            .by(at(surface, Kind::Temperature) - step("dew_point"))
            .slip("margin_from_air", at(AIR, Kind::Temperature) - step("dew_point")),
    );
}

/// A label's limit for surfaces, five degrees further from that of the dew point where the two could be taken for one.
fn apart(label: i32, by_dew: f64) -> i32 {
    match f64::from(label) - by_dew {
        off if off.abs() >= APART => label,
        off if off < 0.0 => label - 5,
        _ => label + 5,
    }
}

fn dew(air: i32, humidity: i32) -> f64 {
    dew_point(f64::from(air), f64::from(humidity)).unwrap_or_default()
}

#[allow(clippy::cast_possible_truncation, reason = "a temperature of the weather")]
fn whole(f: f64) -> i32 {
    libm::round(f) as i32
}

/// The label's windows: cylinders, air, surfaces.
fn windows(m: &mut Making, f: [i32; 6]) {
    let fields =
        ["cylinder_least", "cylinder_most", "air_least", "air_most", "surface_least", "surface_most"];
    let entries: Vec<(&str, String)> =
        fields.iter().zip(f).map(|(field, f)| (*field, m.degrees(f))).collect();
    m.foam("F1", &[], &entries);
}

/// Both cylinders, the air and its humidity, all fresh.
fn readings(m: &mut Making, [a, b, air, humidity]: [i32; 4]) {
    reading(m, ReadingOf::CylinderA, a);
    reading(m, ReadingOf::CylinderB, b);
    reading(m, ReadingOf::Air, air);
    m.reading(ReadingOf::Humidity, 10, &[("humidity", humidity.to_string())]);
}

fn reading(m: &mut Making, of: ReadingOf, f: i32) {
    let text = m.degrees(f);
    m.reading(of, 10, &[("temperature", text)]);
}

fn shown(m: &mut Making) {
    let foam = m.job.foam;
    m.shows("readings", 0, &[]);
    m.shows("foam", foam, &[]);
}

/// A table of dew points around what was read: the air in its own rows of five degrees (two in Celsius) or, `between`, in
/// none of them; its humidity in one of the columns of ten percent.
fn table(m: &mut Making, air: i32, humidity: i32, between: bool) {
    let row = m.draw.whole(0, 3);
    let column = m.draw.whole(0, 1);
    let off = m.draw.whole(1, 4);
    let (read, apart) = match m.metric() {
        true => (libm::round(f64::from(air - 32) / 1.8), 2.0),
        false => (f64::from(air), 5.0),
    };
    let off = match (between, m.metric()) {
        (false, _) => 0.0,
        (true, true) => 1.0,
        (true, false) => f64::from(off),
    };
    let rows = (0..5).map(|at| read - off + apart * f64::from(at - row));
    let airs: Vec<f64> = rows.map(|air| if m.metric() { air * 1.8 + 32.0 } else { air }).collect();
    let columns: Vec<f64> = (0..4).map(|at| f64::from(humidity + 10 * (at - column))).collect();
    let mut all = vec![5.0, 4.0];
    all.extend(&airs);
    all.extend(&columns);
    all.extend(airs.iter().flat_map(|air| columns.iter().filter_map(|pct| dew_point(*air, *pct))));
    m.shows("dew_table", 0, &all);
}

/// Another text in one of the readings.
fn read_as(job: &mut Job, reading: usize, text: impl Fn(&Job) -> Option<String>) {
    let text = text(job);
    if let (Some(reading), Some(text)) = (job.readings.get_mut(reading), text) {
        change(&mut reading.entries, "temperature", text);
    }
}

fn text_of(job: &Job, reading: usize) -> Option<String> {
    Some(job.readings.get(reading)?.entries.first()?.text.clone())
}

fn air_text(job: &Job) -> Option<String> {
    text_of(job, 2)
}
