//! From the tape to the area to foam.

use super::{Scope as S, Step, TAPE, step};

/// The outline of one of several.
const ONE: &str = "area.one_ft2";
const RUN: &str = "area.parts.run_length";
const LANDING: &str = "area.parts.landing_length";
const BAYS: &str = "area.parts.bays_along";
const SLOPE: &str = "area.parts.slope_length";
const RISE: &str = "area.parts.rise_length";
const AROUND: &str = "area.parts.around_length";
const ARC: &str = "area.parts.arc_length";
const WALL: &str = "area.parts.wall_ft2";
const WRAP: &str = "area.wrap_ft2_in";
const NET: &str = "area.net_ft2";
const SIDES: &[&str] = &["area.measures.length", "area.measures.width"];

const HIP: &[&str] = &["area.measures.length", "area.measures.width", "area.measures.pitch"];
const HIPS: &[&str] = &["hip_roof"];
const WALK: &[&str] = &["area.walk.length_in", "area.walk.turn_deg"];
/// Circles, spheres and their parts.
const CIRCLE: &str = "circle";

/// A share of what the openings leave.
const SHARE: &[&str] = &["area.gross_ft2", "area.openings_ft2", "area.framing_share_pct"];

pub(super) const STEPS: &[Step] = &[
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
    step(
        "room_floor",
        S::Surface,
        "area.parts.floor_ft2",
        &["area.measures.length", "area.measures.width"],
        "ft2",
        TAPE,
    ),
    step(
        "room_ceiling",
        S::Surface,
        "area.parts.ceiling_ft2",
        &["area.measures.length", "area.measures.width"],
        "ft2",
        TAPE,
    ),
    step(
        "room_front",
        S::Surface,
        "area.parts.front_ft2",
        &["area.measures.length", "area.measures.height"],
        "ft2",
        TAPE,
    ),
    step(
        "room_right",
        S::Surface,
        "area.parts.right_ft2",
        &["area.measures.width", "area.measures.height"],
        "ft2",
        TAPE,
    ),
    step(
        "room_back",
        S::Surface,
        "area.parts.back_ft2",
        &["area.measures.length", "area.measures.height"],
        "ft2",
        TAPE,
    ),
    step(
        "room_left",
        S::Surface,
        "area.parts.left_ft2",
        &["area.measures.width", "area.measures.height"],
        "ft2",
        TAPE,
    ),
    step("gross_room", S::Surface, ONE, &["area.strips_ft2"], "ft2", TAPE).when("area.shape", &["room"]),
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
    step("hip_rise", S::Surface, RISE, HIP, "ft_in", "hip").when("area.shape", HIPS),
    step("hip_slope", S::Surface, SLOPE, HIP, "ft_in", "hip").when("area.shape", HIPS),
    step("hip_length", S::Surface, "area.parts.hip_length", HIP, "ft_in", "hip"),
    step("ridge_length", S::Surface, "area.parts.ridge_length", SIDES, "ft_in", "hip"),
    step("gross_hip", S::Surface, ONE, HIP, "ft2", "hip").when("area.shape", HIPS),
    step("gross_triangle", S::Surface, ONE, &["area.measures.length", "area.measures.height"], "ft2", TAPE)
        .when("area.way", &["base_height"]),
    step(
        "gross_heron",
        S::Surface,
        ONE,
        &["area.measures.length", "area.measures.side_b", "area.measures.side_c"],
        "ft2",
        "heron",
    )
    .when("area.way", &["three_sides"]),
    step(
        "triangle_height",
        S::Surface,
        "area.parts.height_length",
        &[ONE, "area.measures.length"],
        "ft_in",
        "heron",
    ),
    step(
        "gross_trapezoid",
        S::Surface,
        ONE,
        &["area.measures.length", "area.measures.top", "area.measures.height"],
        "ft2",
        TAPE,
    )
    .when("area.shape", &["trapezoid"]),
    step("walk_around", S::Surface, "area.parts.perimeter_length", &["area.walk.length_in"], "ft_in", TAPE),
    step("walk_gap", S::Surface, "area.parts.gap_length", WALK, "ft_in", "closing"),
    step("walk_closing", S::Surface, "area.parts.closing_length", WALK, "ft_in", TAPE),
    step("gross_polygon", S::Surface, ONE, &["area.walk.x_in", "area.walk.y_in"], "ft2", "shoelace")
        .when("area.shape", &["polygon"]),
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
    step("gross_gap", S::Surface, ONE, &["area.measures.length", "area.measures.gap_width"], "ft2", TAPE)
        .when("area.shape", &["gap"]),
    step(
        "gross_penetrations",
        S::Surface,
        ONE,
        &["area.measures.holes", "area.measures.hole_size", "area.measures.pipe_size"],
        "ft2",
        TAPE,
    )
    .when("area.shape", &["penetrations"]),
    step("arc_rise", S::Surface, ARC, &["area.measures.span", "area.measures.rise"], "ft_in", CIRCLE)
        .when("area.way", &["rise"]),
    step("arc_radius", S::Surface, ARC, &["area.measures.span", "area.measures.radius"], "ft_in", CIRCLE)
        .when("area.way", &["radius"]),
    step("gross_arch", S::Surface, ONE, &[ARC, "area.measures.length"], "ft2", TAPE)
        .when("area.shape", &["arch"]),
    step("around_diameter", S::Surface, AROUND, &["area.measures.diameter"], "ft_in", CIRCLE)
        .when("area.way", &["diameter"]),
    step("around_typed", S::Surface, AROUND, &["area.measures.circumference"], "ft_in", TAPE)
        .when("area.way", &["circumference"]),
    step(
        "around_sides",
        S::Surface,
        AROUND,
        &["area.parts.wide_sides", "area.measures.width", "area.parts.high_sides", "area.measures.height"],
        "ft_in",
        TAPE,
    )
    .when("area.shape", &["box_duct"]),
    step(
        "cylinder_wall",
        S::Surface,
        WALL,
        &[AROUND, "area.measures.from_height", "area.measures.to_height"],
        "ft2",
        TAPE,
    ),
    step("cylinder_ends", S::Surface, "area.parts.ends_ft2", &["area.parts.ends", AROUND], "ft2", CIRCLE),
    step("gross_cylinder", S::Surface, ONE, &["area.strips_ft2"], "ft2", TAPE)
        .when("area.shape", &["cylinder"]),
    step("gross_dome", S::Surface, ONE, &["area.measures.diameter", "area.measures.rise"], "ft2", CIRCLE)
        .when("area.shape", &["dome"]),
    step("gross_around", S::Surface, ONE, &[AROUND, "area.measures.length"], "ft2", TAPE)
        .when("area.shape", &["box_duct", "round_duct"]),
    step("times", S::Surface, "area.gross_ft2", &[ONE, "area.measures.times"], "ft2", TAPE)
        .when("area.many", &["times"]),
    step("opening", S::Opening, "whole_ft2", &["width_in", "height_in", "count"], "ft2", TAPE),
    step("openings", S::Surface, "area.openings_ft2", &["area.openings.taken_ft2"], "ft2", TAPE),
    step(
        "built_member",
        S::Surface,
        "area.parts.built_length",
        &["area.measures.member", "area.measures.plies"],
        "in",
        TAPE,
    ),
    step(
        "counted_share",
        S::Surface,
        "area.framing_share_pct",
        &["area.pieces.area_ft2", "area.clear_ft2"],
        "pct",
        "drawn_framing",
    )
    .when("area.framing_by", &["pieces", "estimated"]),
    step(
        "spacing_share",
        S::Surface,
        "area.framing_share_pct",
        &["area.measures.member", "area.measures.spacing"],
        "pct",
        "spacing_share",
    )
    .when("area.framing_by", &["spacing"]),
    step("framing_pieces", S::Surface, "area.framing_ft2", &["area.pieces.area_ft2"], "ft2", "drawn_framing")
        .when("area.framing_by", &["pieces"]),
    step("framing_estimated", S::Surface, "area.framing_ft2", SHARE, "ft2", "drawn_framing")
        .when("area.framing_by", &["estimated"]),
    step("framing_share", S::Surface, "area.framing_ft2", SHARE, "ft2", "framing_share")
        .when("area.framing_by", &["share", "spacing"]),
    step(
        "net",
        S::Surface,
        "area.net_ft2",
        &["area.gross_ft2", "area.openings_ft2", "area.framing_ft2"],
        "ft2",
        TAPE,
    ),
    step("wrap_inside", S::Surface, WRAP, &[WALL, AROUND, "area.parts.ends", ONE, NET], "ft2", CIRCLE)
        .when("area.side", &["inside"]),
    step("wrap_outside", S::Surface, WRAP, &[WALL, AROUND, "area.parts.ends", ONE, NET], "ft2", CIRCLE)
        .when("area.side", &["outside"]),
    step(
        "wrap_box_duct",
        S::Surface,
        WRAP,
        &["area.parts.wide_sides", "area.parts.high_sides", "area.measures.length", ONE, NET],
        "ft2",
        CIRCLE,
    )
    .when("area.shape", &["box_duct"]),
    step("wrap_round_duct", S::Surface, WRAP, &["area.measures.length", ONE, NET], "ft2", CIRCLE)
        .when("area.shape", &["round_duct"]),
];
