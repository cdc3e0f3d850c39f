//! Where the moisture of the air comes from: unvented heaters, drying plaster, fresh concrete, people; and what it
//! does to the dew point at so many air changes an hour.
//!
//! An estimate, against which a reading always wins: it lifts no verdict and gives none.

mod sources;
#[cfg(test)]
mod tests;

use crate::findings::{Code, Finding};
use crate::job::{End, Job, Part, Reader, ReadingOf};
use crate::measure::{Fahrenheit, Kind, Pounds, decimal};
use crate::readiness::Readiness;
use crate::readiness::moist_air::{dew_of_ratio, dew_point, ratio_at};
use serde::Serialize;

pub use sources::{Gives, Source, concrete_lb_hr, heater_lb_hr, mud_lb_hr, people_lb_hr};

/// Dry air weighs so many pounds a cubic foot: the standard air of the ventilating trade (70 °F, sea level).
///
/// Source: ASHRAE Handbook—Fundamentals, standard air.
pub const AIR_LB_FT3: f64 = 0.075;

/// The air changes an hour for which the dew point is shown: ½ is a closed room, 8 a strong fan.
const CHANGES: [f64; 5] = [0.5, 1.0, 2.0, 4.0, 8.0];

/// What a closed room has where nobody said: ½ an hour. From memory; it may warn and decides nothing.
const CLOSED_ROOM: f64 = 0.5;

/// The entries of the room: of a range the end that makes more of the moisture.
const ROOM: [(&str, End); 7] = [
    ("room_length", |band| band.likely),
    ("room_width", |band| band.likely),
    ("room_height", |band| band.likely),
    ("outdoor_air", |band| band.high),
    ("outdoor_humidity", |band| band.high),
    ("air_changes", |band| band.low),
    ("coldest_surface", |band| band.low),
];

/// The room at so many air changes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct AtChanges {
    /// Air changes an hour.
    pub changes: f64,
    /// The dew point that it settles at. Where it lies above the air's temperature, water settles on everything.
    pub dew_f: Fahrenheit,
    /// How far the coldest surface stays above it; negative: it sweats.
    pub above_f: Option<f64>,
}

/// What moisture does to the room.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Moisture {
    /// The room's volume in cubic feet.
    pub room_ft3: Option<f64>,
    /// The dew point outdoors.
    pub outdoor_dew_f: Option<Fahrenheit>,
    /// Each source.
    pub sources: Vec<Source>,
    /// All of them.
    pub water_lb_hr: Pounds,
    /// The coldest surface: typed, or the coldest that was read.
    pub coldest_f: Option<Fahrenheit>,
    /// At ½, 1, 2, 4 and 8 air changes an hour, and at the number that was typed, rising. Empty where no source is
    /// known, or one only by half.
    pub at: Vec<AtChanges>,
    /// After one hour without any air change, begun with the air outdoors.
    pub sealed_hour_dew_f: Option<Fahrenheit>,
    /// The least air changes at which the coldest surface stays the spread above the dew point; none where none do.
    pub least_changes: Option<f64>,
    /// The spread that it has to keep.
    pub spread_f: f64,
}

/// Moisture of a job.
///
/// In words: water in the room's air = water in the air outdoors + water given off in an hour ÷ (0.075 lb/ft³ × volume
/// × air changes an hour), each in pounds to a pound of dry air; the dew point is where that saturates. Source: mass
/// balance of a mixed room; ASHRAE Handbook—Fundamentals, chapter 1.
pub fn moisture(job: &Job, readiness: &Readiness, reader: &mut Reader) -> Moisture {
    let mut read = [None; 7];
    reader.of_job(&job.entries, &ROOM, &mut read);
    let [length, width, height, outdoor_air, outdoor_humidity, typed_changes, typed_coldest] = read;
    let volume = || Some(length? * width? * height? / 1_728.0);
    let room_ft3 = volume().filter(|volume| *volume > 0.0);
    let outdoor_dew = outdoor_air.zip(outdoor_humidity).and_then(|(air, wet)| dew_point(air, wet));
    let mut coldest = typed_coldest;
    if typed_coldest.is_none() {
        for check in readiness.checks.iter().filter(|check| check.of == ReadingOf::Surface) {
            let colder = check.value_f.filter(|value| coldest.is_none_or(|known| value.0 < known));
            coldest = colder.map(|value| value.0).or(coldest);
        }
    }
    let spread_f = readiness.dew.as_ref().map_or_else(|| own_spread(job), |dew| dew.spread_f);

    let (sources, whole) = sources::all(job, reader);
    let water = sources.iter().fold(0.0, |sum, source| sum + source.water_lb_hr.0);
    let mut found = Moisture {
        room_ft3,
        outdoor_dew_f: outdoor_dew.map(Fahrenheit),
        sources,
        water_lb_hr: Pounds(water),
        coldest_f: coldest.map(Fahrenheit),
        at: Vec::new(),
        sealed_hour_dew_f: None,
        least_changes: None,
        spread_f,
    };
    let ratio = outdoor_dew.and_then(ratio_at);
    let Some((volume, outside)) = room_ft3.zip(ratio).filter(|_| whole && !found.sources.is_empty()) else {
        return found;
    };
    // Pounds to the pound that one air change an hour carries off.
    let rise = water / (AIR_LB_FT3 * volume);
    let at = |changes: f64| {
        let dew = dew_of_ratio(outside + rise / changes)?;
        Some(AtChanges { changes, dew_f: Fahrenheit(dew), above_f: coldest.map(|coldest| coldest - dew) })
    };
    for changes in CHANGES.into_iter().chain(typed_changes) {
        // The typed one among them in its place, once.
        let place = found.at.partition_point(|one| one.changes < changes);
        if found.at.get(place).is_none_or(|known| known.changes > changes)
            && let Some(one) = at(changes)
        {
            found.at.insert(place, one);
        }
    }
    found.sealed_hour_dew_f = dew_of_ratio(outside + rise).map(Fahrenheit);
    let room_for = coldest.and_then(|coldest| ratio_at(coldest - spread_f)).map(|most| most - outside);
    found.least_changes = room_for.filter(|room| *room > 0.0).map(|room| rise / room);
    if let Some(coldest) = coldest {
        heater_wets(&found, coldest, at(typed_changes.unwrap_or(CLOSED_ROOM)), reader);
    }
    found
}

/// A heater whose water takes the coldest surface below the spread can turn a GO into a HOLD: said beside its power.
fn heater_wets(found: &Moisture, coldest: f64, at: Option<AtChanges>, reader: &mut Reader) {
    let short = |at: &AtChanges| at.above_f.is_some_and(|above| above < found.spread_f - 1e-9);
    let heated = found.sources.iter().any(|source| source.gives == Gives::Heater);
    let Some(at) = at.filter(|at| heated && short(at)) else { return };
    let finding = Finding::new(Code::HeaterWets, Part::Job, 0, "heater_power")
        .with("changes", decimal(at.changes, 2))
        .with("dew", reader.figure(Kind::Temperature, at.dew_f.0))
        .with("given", reader.figure(Kind::Temperature, coldest))
        .with("spread", reader.figure(Kind::TemperatureStep, found.spread_f));
    reader.say(finding);
}

/// The job's own spread, or the default where it cannot be taken; what is wrong with it has been said by then.
fn own_spread(job: &Job) -> f64 {
    let mut quiet = Reader::new(job.units);
    let own = quiet.take(Part::Job, 0, &job.entries, "dew_spread").map(|taken| taken.value.high);
    own.or_else(|| quiet.take(Part::Job, 0, &[], "dew_spread").map(|taken| taken.value.high))
        .unwrap_or_default()
}
