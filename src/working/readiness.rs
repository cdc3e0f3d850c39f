//! Readings against their limits.

use super::{Scope as S, Step, step};

pub(super) const STEPS: &[Step] = &[
    step(
        "dew_point",
        S::Job,
        "readiness.dew.point_f",
        &[
            "readiness.dew.air_f",
            "readiness.dew.humidity_pct",
            "readiness.dew.meter_f",
            "readiness.dew.meter_pct",
        ],
        "f",
        "dew_point",
    )
    .when("readiness.dew.of", &["humidity"]),
    step("frost_point", S::Job, "readiness.dew.frost_f", &["readiness.dew.point_f"], "f", "frost_point"),
    step(
        "least_surface",
        S::Job,
        "readiness.dew.least_surface_f",
        &["readiness.dew.point_f", "readiness.dew.spread_f"],
        "f",
        "dew_spread",
    ),
    step("wood_room", S::Check, "inside_by", &["value", "most"], "pct", "wood_moisture")
        .when("of", &["wood_moisture"]),
    step("wind_room", S::Check, "inside_by", &["value", "most"], "mph", "foam_sheet").when("of", &["wind"]),
    step("inside_by", S::Check, "inside_by_f", &["value_f", "least_f", "most_f"], "f_step", "label_windows"),
];
