//! What gives off water, and how much of it in an hour.

use crate::findings::{Code, Finding};
use crate::job::{End, Job, Part, Reader, entry};
use crate::measure::Pounds;
use serde::Serialize;

/// What gives off water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Gives {
    /// An unvented heater.
    Heater,
    /// Joint compound or plaster that dries.
    Mud,
    /// Fresh concrete.
    Concrete,
    /// People at work.
    People,
}

/// A source of water.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Source {
    /// What it is.
    pub gives: Gives,
    /// Water in an hour.
    pub water_lb_hr: Pounds,
}

/// Water weighs 18.01528 g a mole; a Btu is 1.05505585262 kJ, a pound 453.59237 g: NIST SP 811, appendix B.
const WATER_G: f64 = 18.015_28;
const KJ_BTU: f64 = 1.055_055_852_62;
const G_LB: f64 = 453.592_37;

/// Joint compound as it is mixed is about 40 % water, which is gone in a day. From memory, common practice.
const MUD_WATER: f64 = 0.4;
/// Concrete of 28 days gives off about 15 lb of water to 1,000 ft² in a day, and less with the square root of its age.
/// From memory: the order of magnitude.
const CONCRETE_LB_FT2_DAY: f64 = 0.015;
const CONCRETE_AGE_DAYS: f64 = 28.0;
/// Work on one's feet: about 625 Btu of latent heat in an hour, at about 1,050 Btu to the pound of sweat. From memory of
/// the ASHRAE Handbook's table of heat gains from people; public tables give 510 for light and 670 for moderate work.
const PERSON_LB_HR: f64 = 625.0 / 1_050.0;

/// Moles of water from a mole of fuel, and the heat that the mole gives in kJ with the water condensed (gross heating
/// value, by which heaters are rated): propane C₃H₈, methane CH₄ for natural gas, dodecane C₁₂H₂₆ for kerosene.
/// Dodecane has a little more hydrogen than kerosene: it errs by a twelfth to the moist side.
///
/// Source: standard enthalpies of formation and combustion, tests/published/moist_people.json.
fn fuel(word: &str) -> Option<(f64, f64)> {
    match word {
        "propane" => Some((4.0, 2_219.2)),
        "natural_gas" => Some((2.0, 890.6)),
        "kerosene" => Some((13.0, 8_086.5)),
        _ => None,
    }
}

/// Pounds of water in an hour from an unvented heater: power ÷ heat of a mole × moles of water × 18.015 g.
///
/// ```
/// let water = foamwright::moisture::heater_lb_hr("propane", 100_000.0).unwrap();
/// assert!((water - 7.55).abs() < 0.01);
/// ```
pub fn heater_lb_hr(word: &str, btu_hr: f64) -> Option<f64> {
    let (moles, kj) = fuel(word)?;
    Some(btu_hr * KJ_BTU / kj * moles * WATER_G / G_LB)
}

/// Pounds of water in an hour from joint compound or plaster put on within a day: weight × 40 % ÷ 24.
pub fn mud_lb_hr(weight_lb: f64) -> f64 {
    weight_lb * MUD_WATER / 24.0
}

/// Pounds of water in an hour from a concrete slab: area × 0.015 lb/ft² ÷ 24 × √(28 days ÷ age). Younger than a day it
/// counts as a day old: while water stands on it, it gives off several times more.
pub fn concrete_lb_hr(area_ft2: f64, age_min: f64) -> f64 {
    let days = (age_min / 1_440.0).max(1.0);
    area_ft2 * CONCRETE_LB_FT2_DAY / 24.0 * libm::sqrt(CONCRETE_AGE_DAYS / days)
}

/// Pounds of water in an hour from people on their feet at work: 625 Btu/h of latent heat each.
pub fn people_lb_hr(count: f64) -> f64 {
    count * PERSON_LB_HR
}

/// The entries of the sources: of a range the end that gives off more.
const GIVEN: [(&str, End); 5] = [
    ("heater_power", |band| band.high),
    ("mud_weight", |band| band.high),
    ("concrete_area", |band| band.high),
    ("concrete_age", |band| band.low),
    ("people_inside", |band| band.high),
];

/// Every source of a job, and whether each that was begun is known: half of one would foretell air that is too dry.
pub(super) fn all(job: &Job, reader: &mut Reader) -> (Vec<Source>, bool) {
    let mut read = [None; 5];
    reader.of_job(&job.entries, &GIVEN, &mut read);
    let [power, mud, area, age, people] = read;
    let fuel = reader.choice(Part::Job, 0, &job.entries, "heater_fuel");
    // A heater without its fuel, fresh concrete without its age: asked for beside the field.
    for (begun, field) in [(power, "heater_fuel"), (area, "concrete_age")] {
        if begun.is_some_and(|begun| begun > 0.0) && entry(&job.entries, field).is_none() {
            reader.say(Finding::new(Code::Needed, Part::Job, 0, field));
        }
    }
    let nothing = |given: Option<f64>| given.filter(|given| *given == 0.0);
    let heater = power.zip(fuel).and_then(|(power, fuel)| heater_lb_hr(fuel, power));
    let concrete = area.zip(age).map(|(area, age)| concrete_lb_hr(area, age));
    let mut sources = Vec::new();
    let mut whole = true;
    for (gives, field, water) in [
        (Gives::Heater, "heater_power", heater.or(nothing(power))),
        (Gives::Mud, "mud_weight", mud.map(mud_lb_hr)),
        (Gives::Concrete, "concrete_area", concrete.or(nothing(area))),
        (Gives::People, "people_inside", people.map(people_lb_hr)),
    ] {
        match water {
            Some(water) if water > 0.0 => sources.push(Source { gives, water_lb_hr: Pounds(water) }),
            Some(_) => {}
            // Typed and not to be taken, or waiting for its other half.
            None => whole &= entry(&job.entries, field).is_none(),
        }
    }
    (sources, whole)
}
