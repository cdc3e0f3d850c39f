//! The three depths of a surface.

use super::{Scope as S, Step, step};

pub(super) const STEPS: &[Step] = &[
    step(
        "depth_needed",
        S::Surface,
        "depth.needed_in",
        &[
            "depth.target_r",
            "depth.needed_between.thinner_in",
            "depth.needed_between.thinner_r",
            "depth.needed_between.thicker_in",
            "depth.needed_between.thicker_r",
        ],
        "in",
        "foam_sheet",
    ),
    step(
        "aim_target",
        S::Surface,
        "depth.aim_in",
        &["depth.needed_in", "depth.under_in"],
        "in",
        "depth_tolerance",
    )
    .when("depth.aim_by", &["target"]),
    step(
        "aim_target_over_old",
        S::Surface,
        "depth.aim_in",
        &["depth.needed_in", "depth.under_in", "depth.existing.depth_in"],
        "in",
        "depth_tolerance",
    )
    .when("depth.aim_by", &["target_over_old"]),
    step(
        "aim_rules",
        S::Surface,
        "depth.aim_in",
        &["depth.window.least_in", "depth.under_in"],
        "in",
        "depth_tolerance",
    )
    .when("depth.aim_by", &["rules"]),
    step("aim_rules_mean", S::Surface, "depth.aim_in", &["depth.window.mean_in"], "in", "energy_code")
        .when("depth.aim_by", &["rules_mean"]),
    step(
        "aim_kit",
        S::Surface,
        "depth.aim_in.likely",
        &["depth.kit_usable", "depth.kit_ft2", "depth.kit_factor"],
        "in",
        "board_foot",
    )
    .when("depth.aim_by", &["kit"]),
    step(
        "aim_kit_over_old",
        S::Surface,
        "depth.aim_in.likely",
        &["depth.kit_usable", "depth.kit_ft2", "depth.kit_factor", "depth.existing.depth_in"],
        "in",
        "board_foot",
    )
    .when("depth.aim_by", &["kit_over_old"]),
    step(
        "aim_left",
        S::Surface,
        "depth.aim_in.likely",
        &["depth.left.feet_bdft", "depth.left.over_ft2"],
        "in",
        "left_over",
    )
    .when("depth.aim_by", &["left_over"]),
    step(
        "aim_left_over_old",
        S::Surface,
        "depth.aim_in.likely",
        &["depth.left.feet_bdft", "depth.left.over_ft2", "depth.existing.depth_in"],
        "in",
        "left_over",
    )
    .when("depth.aim_by", &["left_over_old"]),
    step(
        "aim_wrapped",
        S::Surface,
        "depth.aim_in.likely",
        &[
            "depth.wrapped.feet_bdft",
            "depth.wrapped.begins_ft2",
            "depth.wrapped.growth_ft2_in",
            "depth.wrapped.there_in",
        ],
        "in",
        "wrapped",
    )
    .when("depth.aim_by", &["wrapped"]),
    step(
        "promised_aim",
        S::Surface,
        "depth.promised_in",
        &["depth.thinnest_aim_in", "depth.under_in"],
        "in",
        "depth_tolerance",
    )
    .when("depth.promised_by", &["aim"]),
    step("promised_target", S::Surface, "depth.promised_in", &["depth.needed_in"], "in", "foam_sheet")
        .when("depth.promised_by", &["target"]),
    step(
        "promised_target_over_old",
        S::Surface,
        "depth.promised_in",
        &["depth.needed_in", "depth.existing.depth_in"],
        "in",
        "foam_sheet",
    )
    .when("depth.promised_by", &["target_over_old"]),
    step("promised_rules", S::Surface, "depth.promised_in", &["depth.window.least_in"], "in", "marks")
        .when("depth.promised_by", &["rules"]),
    step(
        "most_aim",
        S::Surface,
        "depth.most_in",
        &["depth.thickest_aim_in", "depth.over_in"],
        "in",
        "depth_tolerance",
    )
    .when("depth.most_by", &["aim"]),
    step("most_exposed", S::Surface, "depth.most_in", &["depth.exposed_most_in"], "in", "irc_rim")
        .when("depth.most_by", &["exposed"]),
    step(
        "rules_gap",
        S::Surface,
        "depth.window.gap_in",
        &["depth.window.least_in", "depth.window.most_in"],
        "in",
        "marks",
    ),
    step(
        "to_add",
        S::Surface,
        "depth.existing.add_in",
        &["depth.aim_in", "depth.existing.depth_in"],
        "in",
        "your_tape",
    ),
    step(
        "planning_r",
        S::Surface,
        "depth.planning_r",
        &[
            "depth.planning_in",
            "depth.planning_between.thinner_in",
            "depth.planning_between.thinner_r",
            "depth.planning_between.thicker_in",
            "depth.planning_between.thicker_r",
        ],
        "r",
        "planning_only",
    ),
    step(
        "cover_area",
        S::Surface,
        "depth.cover.area_ft2",
        &["area.gross_ft2", "area.openings_ft2"],
        "ft2",
        "cover_area",
    ),
    step(
        "cover_cost",
        S::Surface,
        "depth.cover.cost",
        &["depth.cover.price_ft2", "depth.cover.area_ft2"],
        "usd",
        "shop",
    ),
    step("covers_cost", S::Job, "cover_cost", &["surfaces.depth.cover.cost"], "usd", "shop"),
];
