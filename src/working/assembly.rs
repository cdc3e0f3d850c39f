//! U of the whole, from what a surface is built of.

use super::{Scope as S, Step, step};

const SOURCE: &str = "u_paths";

pub(super) const STEPS: &[Step] = &[
    step(
        "both_r",
        S::Surface,
        "depth.assembly.both_r",
        &[
            "depth.assembly.outside_film_r",
            "depth.assembly.outside_r",
            "depth.assembly.foam_over_r",
            "depth.assembly.inside_r",
            "depth.assembly.inside_film_r",
        ],
        "r",
        SOURCE,
    ),
    step(
        "foam_path_r",
        S::Surface,
        "depth.assembly.foam_path_r",
        &["depth.assembly.both_r", "depth.planning_r", "depth.assembly.foam_over_r", "depth.assembly.fill_r"],
        "r",
        SOURCE,
    ),
    step(
        "member_path_r",
        S::Surface,
        "depth.assembly.member_path_r",
        &["depth.assembly.both_r", "depth.assembly.member_in"],
        "r",
        SOURCE,
    ),
    step(
        "u_framed",
        S::Surface,
        "depth.assembly.u",
        &["depth.assembly.framing_pct", "depth.assembly.foam_path_r", "depth.assembly.member_path_r"],
        "u",
        SOURCE,
    )
    .when("depth.assembly.by", &["framed"]),
    step("u_plain", S::Surface, "depth.assembly.u", &["depth.assembly.foam_path_r"], "u", SOURCE)
        .when("depth.assembly.by", &["plain"]),
    step(
        "u_isothermal",
        S::Surface,
        "depth.assembly.u_isothermal",
        &[
            "depth.assembly.both_r",
            "depth.assembly.framing_pct",
            "depth.assembly.foam_path_r",
            "depth.assembly.member_path_r",
        ],
        "u",
        SOURCE,
    )
    .when("depth.assembly.by", &["framed"]),
    step("effective_r", S::Surface, "depth.assembly.effective_r", &["depth.assembly.u"], "r", SOURCE),
];
