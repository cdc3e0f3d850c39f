//! Board feet, of one surface and of all.

use super::{Scope as S, Step, TAPE, step};

/// What the foam goes on, the sheet of one pitch, and what it has more than its plane.
const ON: &str = "ground.on";
const SHEET: &str = "ground.developed_in";
const MORE: &str = "ground.more_pct";
const PROFILE: &[&str] = &["ground.measures.rib_pitch", "ground.measures.rib_depth"];

pub(super) const STEPS: &[Step] = &[
    step(
        "ground_ribbed",
        S::Surface,
        SHEET,
        &[
            "ground.measures.rib_top",
            "ground.measures.rib_bottom",
            "ground.measures.rib_depth",
            "ground.measures.rib_pitch",
        ],
        "in",
        "profile",
    )
    .when(ON, &["ribbed"]),
    step("ground_wave", S::Surface, SHEET, PROFILE, "in", "profile").when(ON, &["wave"]),
    step("ground_ribs", S::Surface, SHEET, PROFILE, "in", "ribs").when(ON, &["ribs"]),
    step("ground_more", S::Surface, MORE, &[SHEET, "ground.measures.rib_pitch"], "pct", "profile")
        .when(ON, &["ribbed", "wave", "ribs"]),
    step("ground_typed", S::Surface, MORE, &["ground.measures.ground_factor"], "pct", TAPE)
        .when(ON, &["factor"]),
    step("ground_uneven", S::Surface, "lines.uneven_pct", &["ground.typed_pct", MORE], "pct", "uneven")
        .when(ON, &["ribbed", "wave", "ribs", "factor"]),
    step("surface_in_place", S::Surface, "in_place", &["area.net_ft2", "depth.aim_in"], "bdft", "board_foot")
        .when("in_place_by", &["plain"]),
    step(
        "surface_wrapped",
        S::Surface,
        "in_place",
        &["area.net_ft2", "area.wrap_ft2_in", "depth.aim_in"],
        "bdft",
        "wrapped",
    )
    .when("in_place_by", &["wrapped"]),
    step("rest_area", S::Surface, "lines.rest_ft2", &["area.net_ft2", "lines.patches.area_ft2"], "ft2", TAPE),
    step(
        "rest_in_place",
        S::Surface,
        "lines.rest",
        &["lines.rest_ft2", "lines.add_in"],
        "bdft",
        "board_foot",
    )
    .when("in_place_by", &["lines", "filled"]),
    step(
        "mean_area",
        S::Surface,
        "lines.mean_ft2",
        &["lines.rest_ft2", "area.net_ft2", "area.wrap_ft2_in", "lines.there_in", "lines.add_in"],
        "ft2",
        "wrapped",
    )
    .when("in_place_by", &["wrapped_lines", "wrapped_filled"]),
    step("rest_wrapped", S::Surface, "lines.rest", &["lines.mean_ft2", "lines.add_in"], "bdft", "board_foot")
        .when("in_place_by", &["wrapped_lines", "wrapped_filled"]),
    step(
        "patches_in_place",
        S::Surface,
        "lines.flat",
        &["lines.rest", "lines.patches.feet"],
        "bdft",
        "board_foot",
    ),
    step("uneven", S::Surface, "lines.uneven", &["lines.flat", "lines.uneven_pct"], "bdft", "uneven"),
    step("lines_in_place", S::Surface, "in_place", &["lines.flat", "lines.uneven"], "bdft", "board_foot")
        .when("in_place_by", &["lines", "wrapped_lines"]),
    step(
        "until_area",
        S::Surface,
        "until.area_ft2",
        &["until.across_length", "until.run_length"],
        "ft2",
        TAPE,
    )
    .when("until.by", &["run"]),
    step(
        "until_feet",
        S::Surface,
        "until.feet",
        &["until.area_ft2", "until.add_in", "until.uneven_pct"],
        "bdft",
        "board_foot",
    ),
    step("fill", S::Surface, "lines.fill", &["area.net_ft2", "ground.pocket_in"], "bdft", "pockets"),
    step(
        "filled_in_place",
        S::Surface,
        "in_place",
        &["lines.flat", "lines.uneven", "lines.fill"],
        "bdft",
        "board_foot",
    )
    .when("in_place_by", &["filled", "wrapped_filled"]),
    step("in_place", S::Job, "quantity.in_place", &["surfaces.bought"], "bdft", "board_foot"),
    step(
        "over_depth",
        S::Job,
        "quantity.over_depth",
        &["quantity.in_place", "quantity.allowances.over_depth_pct"],
        "bdft",
        "over_depth",
    ),
    step(
        "other_waste",
        S::Job,
        "quantity.other_waste",
        &["quantity.in_place", "quantity.allowances.other_waste_pct"],
        "bdft",
        "waste_off",
    ),
    step(
        "to_spray",
        S::Job,
        "quantity.to_spray",
        &["quantity.in_place", "quantity.over_depth", "quantity.other_waste"],
        "bdft",
        "board_foot",
    ),
    step("to_spray_up", S::Job, "quantity.to_spray_up", &["quantity.to_spray"], "bdft", "rounded_up"),
];
