//! How each figure was reached: one constant table of steps. The page fills it from the
//! [`Estimate`](crate::Estimate); nothing of it is computed twice.
//!
//! # Paths
//!
//! A [path](Step::result) starts at the thing its [`Scope`] names and goes down by names joined with dots:
//!
//! * on an object, a name is its member (`area.gross_ft2`);
//! * on a list whose things have a `field`, a name picks the thing with that field and takes its value
//!   (`area.measures.length`);
//! * on any other list, a name is taken of each of its things, and blanks are left out
//!   (`surfaces.in_place` is the foam in place of every surface that has any).
//!
//! What a path ends at is a number, a word, or a [`Band`](crate::measure::Band) of low, likely and high: then
//! the step holds in each of the three columns by itself.
//!
//! # Which steps stand
//!
//! A step stands for a thing where its [`When`] holds, its result is there (a list that holds nothing of that
//! name is none) and no list among its inputs is empty (a surface without openings takes none out); its inputs
//! are there then.
//! `recompute` (a test) resolves every step on every job of `tests/jobs/`, works its result out again from
//! nothing but its inputs, and fails for a step without a formula of its own, for one that never stands and
//! for one whose words are missing.
//!
//! # Units
//!
//! The result has the step's [`unit`](Step::unit). An input that is the result of another step has that one's
//! unit; a measure has its field's; any other says it at the end of its name (`_ft2`, `_in`, `_length` in inches, `_pct`).
//!
//! # Adding a step
//!
//! One row in the table below under the room's own line, its formula in `working/recompute.rs`, and its words
//! (`what`, `formula`, `why`) in `www/words/*/working.json`, where a placeholder is the last name of an
//! input's path.

#[cfg(test)]
mod recompute;

use serde::Serialize;

/// What a step's paths start from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Scope {
    /// One of `estimate.surfaces`.
    Surface,
    /// One of the `area.openings` of one of `estimate.surfaces`.
    Opening,
    /// The estimate itself.
    Job,
    /// One of `estimate.purchase.sizes`.
    Kit,
    /// One of `estimate.day.runs`.
    Run,
    /// One of `estimate.purchase.stock`.
    Stock,
    /// One of `estimate.readiness.checks`.
    Check,
}

/// Where a step stands: the word at a path is one of these.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct When {
    /// A path from the step's scope.
    pub at: &'static str,
    /// The words that may stand there.
    pub is: &'static [&'static str],
}

/// One step of the working.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Step {
    /// The key of its words (what it is, the formula in words, and why).
    pub code: &'static str,
    /// What the paths start from.
    pub scope: Scope,
    /// Where the step stands; `None`: wherever its result is there.
    pub when: Option<When>,
    /// Where the result stands.
    pub result: &'static str,
    /// Where the inputs stand; `measures.length` means the measure of that field.
    pub inputs: &'static [&'static str],
    /// The unit of the result (`ft2`, `in`, `ft_in`, `bdft`, `f`, `f_step`, `usd`, `each`, `min`, `pct`, `mph`, `lb`, `r`).
    pub unit: &'static str,
    /// The key of its source.
    pub source: &'static str,
}

impl Step {
    const fn when(mut self, at: &'static str, is: &'static [&'static str]) -> Self {
        self.when = Some(When { at, is });
        self
    }
}

const fn step(
    code: &'static str,
    scope: Scope,
    result: &'static str,
    inputs: &'static [&'static str],
    unit: &'static str,
    source: &'static str,
) -> Step {
    Step { code, scope, when: None, result, inputs, unit, source }
}

use Scope as S;

const TAPE: &str = "your_tape";

/// The outline of one of several.
const ONE: &str = "area.one_ft2";
const RUN: &str = "area.parts.run_length";
const LANDING: &str = "area.parts.landing_length";
const BAYS: &str = "area.parts.bays_along";
const SLOPE: &str = "area.parts.slope_length";
const RISE: &str = "area.parts.rise_length";
const SIDES: &[&str] = &["area.measures.length", "area.measures.width"];

/// A share of what the openings leave.
const SHARE: &[&str] = &["area.gross_ft2", "area.openings_ft2", "area.framing_share_pct"];

const STEPS: &[Step] = &[
    // surfaces
    step("gross_typed", S::Surface, "area.one_ft2", &["area.measures.area"], "ft2", TAPE)
        .when("area.shape", &["typed_area"]),
    step(
        "gross_plane",
        S::Surface,
        "area.one_ft2",
        &["area.measures.length", "area.measures.height"],
        "ft2",
        TAPE,
    )
    .when("area.shape", &["rectangle", "framed_wall", "framed_slope"]),
    step(
        "gross_floor",
        S::Surface,
        "area.one_ft2",
        &["area.measures.length", "area.measures.width"],
        "ft2",
        TAPE,
    )
    .when("area.shape", &["framed_floor"]),
    step(
        "gross_footprint",
        S::Surface,
        "area.one_ft2",
        &["area.measures.length", "area.measures.width", "area.measures.height"],
        "ft2",
        TAPE,
    )
    .when("area.shape", &["footprint"]),
    step("run_typed", S::Surface, RUN, &["area.measures.perimeter"], "ft_in", TAPE)
        .when("area.way", &["typed"]),
    step("run_sides", S::Surface, RUN, SIDES, "ft_in", TAPE).when("area.way", &["sides"]),
    step("landing_length", S::Surface, LANDING, &["area.measures.length"], "ft_in", TAPE)
        .when("area.landing", &["length"]),
    step("landing_width", S::Surface, LANDING, &["area.measures.width"], "ft_in", TAPE)
        .when("area.landing", &["width"]),
    step(
        "landing_typed",
        S::Surface,
        LANDING,
        &["area.measures.landing_run", "area.measures.perimeter"],
        "ft_in",
        TAPE,
    )
    .when("area.landing", &["run"]),
    step("run_landing", S::Surface, RUN, &[LANDING], "ft_in", "rim").when("area.way", &["landing"]),
    step("rim_band", S::Surface, "area.parts.band_ft2", &[RUN, "area.measures.band"], "ft2", "rim"),
    step("rim_ledge", S::Surface, "area.parts.ledge_ft2", &[RUN, "area.measures.sill_lap"], "ft2", "rim"),
    step("rim_lap", S::Surface, "area.parts.lap_ft2", &[RUN, "area.measures.foundation_lap"], "ft2", "rim"),
    step(
        "rim_cores",
        S::Surface,
        "area.parts.cores_ft2",
        &["area.measures.core_count", "area.measures.core_size"],
        "ft2",
        TAPE,
    ),
    step("gross_rim", S::Surface, ONE, &["area.strips_ft2"], "ft2", "rim").when("area.shape", &["rim_run"]),
    step("bays_typed", S::Surface, BAYS, &["area.measures.bays"], "each", TAPE).when("area.way", &["count"]),
    step("bays_from_run", S::Surface, BAYS, &["area.measures.run", "area.measures.spacing"], "each", TAPE)
        .when("area.way", &["run"]),
    step(
        "gross_bays",
        S::Surface,
        ONE,
        &[BAYS, "area.measures.rows", "area.measures.bay_width", "area.measures.bay_height"],
        "ft2",
        TAPE,
    )
    .when("area.shape", &["bays"]),
    step(
        "slope_length",
        S::Surface,
        SLOPE,
        &["area.measures.plan_run", "area.measures.pitch"],
        "ft_in",
        TAPE,
    )
    .when("area.shape", &["pitched_plane"]),
    step("gross_pitched", S::Surface, ONE, &["area.measures.length", SLOPE], "ft2", TAPE)
        .when("area.shape", &["pitched_plane"]),
    step("rise_typed", S::Surface, RISE, &["area.measures.rise"], "ft_in", TAPE).when("area.way", &["rise"]),
    step("rise_pitch", S::Surface, RISE, &["area.measures.length", "area.measures.pitch"], "ft_in", TAPE)
        .when("area.way", &["pitch"]),
    step(
        "gross_gable",
        S::Surface,
        ONE,
        &["area.measures.length", "area.measures.wall_height", RISE],
        "ft2",
        TAPE,
    )
    .when("area.shape", &["gable"]),
    step(
        "gross_band",
        S::Surface,
        ONE,
        &[RUN, "area.measures.from_height", "area.measures.to_height"],
        "ft2",
        TAPE,
    )
    .when("area.shape", &["band"]),
    step(
        "gross_strip",
        S::Surface,
        ONE,
        &["area.measures.length", "area.measures.strip_width"],
        "ft2",
        "strip",
    )
    .when("area.shape", &["strip"]),
    step("times", S::Surface, "area.gross_ft2", &[ONE, "area.measures.times"], "ft2", TAPE)
        .when("area.many", &["times"]),
    step("opening", S::Opening, "whole_ft2", &["width_in", "height_in", "count"], "ft2", TAPE),
    step("openings", S::Surface, "area.openings_ft2", &["area.openings.taken_ft2"], "ft2", TAPE),
    step(
        "counted_share",
        S::Surface,
        "area.framing_share_pct",
        &["area.pieces.area_ft2", "area.clear_ft2"],
        "pct",
        "drawn_framing",
    )
    .when("area.framing_by", &["pieces", "estimated"]),
    step("framing_pieces", S::Surface, "area.framing_ft2", &["area.pieces.area_ft2"], "ft2", "drawn_framing")
        .when("area.framing_by", &["pieces"]),
    step("framing_estimated", S::Surface, "area.framing_ft2", SHARE, "ft2", "drawn_framing")
        .when("area.framing_by", &["estimated"]),
    step("framing_share", S::Surface, "area.framing_ft2", SHARE, "ft2", "framing_share")
        .when("area.framing_by", &["share"]),
    step(
        "net",
        S::Surface,
        "area.net_ft2",
        &["area.gross_ft2", "area.openings_ft2", "area.framing_ft2"],
        "ft2",
        TAPE,
    ),
    // depth
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
    // quantity, one surface
    step("surface_in_place", S::Surface, "in_place", &["area.net_ft2", "depth.aim_in"], "bdft", "board_foot")
        .when("in_place_by", &["plain"]),
    step("rest_area", S::Surface, "lines.rest_ft2", &["area.net_ft2", "lines.patches.area_ft2"], "ft2", TAPE),
    step(
        "rest_in_place",
        S::Surface,
        "lines.rest",
        &["lines.rest_ft2", "lines.add_in"],
        "bdft",
        "board_foot",
    ),
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
        .when("in_place_by", &["lines"]),
    // quantity
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
    // kits
    step("after_factor", S::Kit, "after_factor", &["label", "factor_pct"], "bdft", "yield_factor"),
    step("usable", S::Kit, "usable", &["after_factor", "fixed_loss"], "bdft", "fixed_loss"),
    step("needs_weight", S::Kit, "needs_lb", &["label", "density_lb_ft3"], "lb", "mass_check"),
    step("stock_after_factor", S::Stock, "after_factor", &["label", "factor_pct"], "bdft", "yield_factor"),
    step("share_a", S::Stock, "a_share_pct", &["a_weight_lb", "a_label_lb"], "pct", "part_used")
        .when("a_by", &["weight"]),
    step("share_b", S::Stock, "b_share_pct", &["b_weight_lb", "b_label_lb"], "pct", "part_used")
        .when("b_by", &["weight"]),
    step("least_share", S::Stock, "least_share_pct", &["a_share_pct", "b_share_pct"], "pct", "part_used"),
    step("stock_sealed", S::Stock, "usable", &["after_factor", "fixed_loss"], "bdft", "fixed_loss")
        .when("state", &["sealed"]),
    step(
        "stock_opened",
        S::Stock,
        "usable",
        &["after_factor", "least_share_pct", "kept_pct"],
        "bdft",
        "part_used",
    )
    .when("state", &["opened"]),
    step("from_stock", S::Job, "purchase.from_stock", &["purchase.stock.counted"], "bdft", "part_used"),
    step(
        "to_buy",
        S::Job,
        "purchase.to_buy",
        &["quantity.to_spray", "purchase.from_stock"],
        "bdft",
        "board_foot",
    )
    .when("purchase.supply", &["shelf_first"]),
    step("bought_label", S::Job, "purchase.buy.label", &["purchase.lines.label"], "bdft", "carton"),
    step("bought_usable", S::Job, "purchase.buy.usable", &["purchase.lines.usable"], "bdft", "yield_factor"),
    step("bought_cost", S::Job, "purchase.buy.cost", &["purchase.lines.cost"], "usd", "carton"),
    step(
        "left_over",
        S::Job,
        "purchase.buy.left",
        &["purchase.buy.usable", "quantity.to_spray"],
        "bdft",
        "board_foot",
    )
    .when("purchase.supply", &["bought"]),
    step(
        "left_over_shelf",
        S::Job,
        "purchase.buy.left",
        &["purchase.from_stock", "purchase.buy.usable", "quantity.to_spray"],
        "bdft",
        "board_foot",
    )
    .when("purchase.supply", &["shelf_first"]),
    step(
        "break_factor",
        S::Job,
        "purchase.buy.break_factor_pct",
        &["quantity.to_spray", "purchase.lines.fixed_loss", "purchase.lines.label"],
        "pct",
        "yield_factor",
    )
    .when("purchase.supply", &["bought"]),
    step(
        "break_factor_shelf",
        S::Job,
        "purchase.buy.break_factor_pct",
        &[
            "quantity.to_spray",
            "purchase.buy.fixed_loss",
            "purchase.stock_loss",
            "purchase.buy.label",
            "purchase.stock_label",
        ],
        "pct",
        "part_used",
    )
    .when("purchase.supply", &["shelf_first"]),
    step(
        "dearer_by",
        S::Job,
        "purchase.dearer_by",
        &["purchase.buy.cost", "purchase.least_cost"],
        "usd",
        "carton",
    ),
    step(
        "largest_kits",
        S::Job,
        "purchase.too_big.largest_kits",
        &["purchase.too_big.to_spray", "purchase.too_big.largest_usable"],
        "each",
        "too_big",
    ),
    // spraying
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
    // readiness
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

/// Every step, in the order in which the work is done.
pub fn steps() -> &'static [Step] {
    STEPS
}
