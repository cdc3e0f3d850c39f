//! The formulas of moist air and of air through the zone.

use super::{Given, settles_at, sum};
use crate::readiness::moist_air;
use serde_json::Value;

/// Pounds of water to a pound of dry air at sea level, at a dew point.
fn water_of(dew_f: f64) -> f64 {
    let vapor = moist_air::saturation_over_water(dew_f).expect("in range");
    0.621_945 / (101_325.0 / vapor - 1.0)
}

/// The formula of a step of these rooms.
pub(super) fn formula(code: &str) -> Option<fn(&Given) -> Value> {
    Some(match code {
        // moisture: pounds of water to a pound of air, by the ratio of vapor to dry air
        "moist_water" => |given| sum(&given.all(0)),
        "moist_sealed" => |given| {
            let gained = given.one(1) / (0.075 * given.one(2));
            let ratio = water_of(given.one(0)) + gained;
            settles_at(101_325.0 / (1.0 + 0.621_945 / ratio), moist_air::saturation_over_water).into()
        },
        "moist_least" => |given| {
            let room = water_of(given.one(0) - given.one(1)) - water_of(given.one(2));
            (given.one(3) / (0.075 * given.one(4)) / room).into()
        },
        // people
        "fan_wanted" => |given| (given.one(0) * given.one(1) / 60.0).into(),
        "fan_changes" => |given| (given.one(0) * 60.0 / given.one(1)).into(),
        // By the share that is left after each minute.
        "purge_time" => |given| {
            let a_minute = given.one(2) / (given.one(0) * given.one(1));
            (libm::log10(given.one(3) / 100.0) / (-a_minute * core::f64::consts::LOG10_E)).into()
        },
        "load_gross" => |given| {
            let each: Vec<f64> = given.all(0).iter().zip(&given.all(1)).map(|(one, two)| one * two).collect();
            sum(&each)
        },
        _ => return None,
    })
}
