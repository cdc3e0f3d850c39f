//! Water given off, and the air that carries it away.

use super::{Scope as S, Step, step};

pub(super) const STEPS: &[Step] = &[
    step(
        "moist_water",
        S::Job,
        "moisture.water_lb_hr",
        &["moisture.sources.water_lb_hr"],
        "lb",
        "heater_water",
    ),
    step(
        "moist_sealed",
        S::Job,
        "moisture.sealed_hour_dew_f",
        &["moisture.outdoor_dew_f", "moisture.water_lb_hr", "moisture.room_ft3"],
        "f",
        "moist_balance",
    ),
    step(
        "moist_least",
        S::Job,
        "moisture.least_changes",
        &[
            "moisture.coldest_f",
            "moisture.spread_f",
            "moisture.outdoor_dew_f",
            "moisture.water_lb_hr",
            "moisture.room_ft3",
        ],
        "number",
        "moist_balance",
    ),
];
