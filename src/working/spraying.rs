//! Passes, nozzles and what each kit gave.

use super::{Scope as S, Step, TAPE, step};

pub(super) const STEPS: &[Step] = &[
    step(
        "lifts_over_pockets",
        S::Surface,
        "lifts.of_in",
        &["lifts.plane_in", "ground.deepest_in"],
        "in",
        "pockets",
    )
    .when("ground.on", &["stone"]),
    step("lifts", S::Surface, "lifts.count", &["lifts.of_in", "lifts.largest_in"], "each", "largest_lift"),
    step("lift_each", S::Surface, "lifts.each_in", &["lifts.of_in", "lifts.count"], "in", "largest_lift"),
    step("wait_label", S::Surface, "lifts.wait_min", &["lifts.label_min"], "min", "foam_sheet")
        .when("lifts.wait_by", &["label", "label_only"]),
    step("wait_practice", S::Surface, "lifts.wait_min", &[], "min", "wait_practice")
        .when("lifts.wait_by", &["practice"]),
    step(
        "wait_table",
        S::Surface,
        "lifts.wait_min",
        &["lifts.each_in", "lifts.count"],
        "min",
        "cooling_table",
    )
    .when("lifts.wait_by", &["table"]),
    step("waits", S::Surface, "lifts.waits_min", &["lifts.wait_min", "lifts.count"], "min", "wait_practice"),
    step("all_lifts", S::Job, "spraying.lifts", &["surfaces.lifts.count"], "each", "largest_lift"),
    step(
        "nozzles",
        S::Job,
        "spraying.nozzles",
        &["spraying.feet_bdft", "spraying.lifts", "spraying.kits"],
        "each",
        "nozzles",
    ),
    step(
        "nozzles_in_cartons",
        S::Job,
        "spraying.nozzles_in_cartons",
        &["purchase.lines.nozzles"],
        "each",
        "carton",
    )
    .when("purchase.supply", &["bought"]),
    step(
        "nozzles_with_shelf",
        S::Job,
        "spraying.nozzles_in_cartons",
        &["purchase.lines.nozzles", "purchase.stock_nozzles"],
        "each",
        "carton",
    )
    .when("purchase.supply", &["shelf_first"]),
    step("run_in_place", S::Run, "in_place", &["area_ft2", "depth_in"], "bdft", TAPE),
    step("run_achieved", S::Run, "achieved_pct", &["in_place", "fixed_loss", "label"], "pct", "yield_factor"),
];
