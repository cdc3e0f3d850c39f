//! Kits brought to temperature. The hours of the curve themselves are no formula: its words say how they come about.

use super::{Scope as S, Step, step};

pub(super) const STEPS: &[Step] = &[
    step(
        "warm_plan",
        S::Warming,
        "warm_up.plan_min",
        &["warm_up.slow_min", "warm_up.label_min"],
        "min",
        "warm_estimate",
    ),
    step(
        "warm_in_by",
        S::Warming,
        "warm_up.in_by",
        &["warm_up.spray_at", "warm_up.plan_min"],
        "wall",
        "conditioning",
    ),
];
