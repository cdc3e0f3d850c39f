//! Air through the zone, and what the van carries.

use super::{Scope as S, Step, step};

pub(super) const STEPS: &[Step] = &[
    step(
        "fan_wanted",
        S::Job,
        "people.exhaust.wanted",
        &["people.exhaust.zone_ft3", "people.exhaust.changes"],
        "cfm",
        "exhaust_changes",
    ),
    step(
        "fan_changes",
        S::Job,
        "people.exhaust.flow_changes",
        &["people.exhaust.flow", "people.exhaust.zone_ft3"],
        "number",
        "purge_table",
    ),
    step(
        "purge_time",
        S::Job,
        "people.exhaust.purge_min",
        &[
            "people.exhaust.zone_ft3",
            "people.exhaust.mixing",
            "people.exhaust.flow",
            "people.exhaust.left_pct",
        ],
        "min",
        "purge_table",
    ),
    step(
        "load_gross",
        S::Job,
        "people.load.gross_lb",
        &["people.load.kits.count", "people.load.kits.gross_lb"],
        "lb",
        "carton",
    ),
];
