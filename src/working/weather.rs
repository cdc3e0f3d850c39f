//! The hours of a day, the sun, and the heat plan.

use super::{Scope as S, Step, step};

/// What the course of a day's air and its window follow from.
const COURSE: &[&str] = &[
    "low_f",
    "high_f",
    "sunrise_min",
    "sunset_min",
    "before_low_f",
    "before_high_f",
    "next_low_f",
    "air_least_f",
    "air_most_f",
];
const SKY: &[&str] = &["day", "latitude", "longitude", "offset_min"];

pub(super) const STEPS: &[Step] = &[
    step("sunrise", S::Forecast, "sunrise_min", SKY, "clock", "sun").when("sun", &["rises"]),
    step("sunset", S::Forecast, "sunset_min", SKY, "clock", "sun").when("sun", &["rises"]),
    step("air_from", S::Forecast, "air_from_min", COURSE, "clock", "day_curve"),
    step("air_to", S::Forecast, "air_to_min", COURSE, "clock", "day_curve"),
    step(
        "heat_stored",
        S::Job,
        "weather.heat.stored_btu",
        &["weather.heat.takes_btu", "weather.heat.from_f", "weather.heat.to_f"],
        "btu",
        "heat_plan",
    ),
    step(
        "heat_hours",
        S::Job,
        "weather.heat.hours",
        &[
            "weather.heat.takes_btu",
            "weather.heat.passes_btu_hr",
            "weather.heat.air_f",
            "weather.heat.from_f",
            "weather.heat.to_f",
        ],
        "hr",
        "heat_plan",
    ),
    step(
        "heat_lost",
        S::Job,
        "weather.heat.lost_btu_hr",
        &["weather.heat.tent_ft2", "weather.heat.air_f", "weather.heat.outside_f"],
        "btuh",
        "heat_plan",
    ),
    step(
        "heat_power",
        S::Job,
        "weather.heat.power_btu_hr",
        &["weather.heat.lost_btu_hr", "weather.heat.stored_btu", "weather.heat.hours"],
        "btuh",
        "heat_plan",
    ),
];
