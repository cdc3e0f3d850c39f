//! The words that may be pressed in a field, in the order in which they are shown.

/// Published framing shares in percent. Of walls: 25 at 16 in and 22 at 24 in (ASHRAE; California Title 24,
/// appendix JA4); 23 and 20 as energy raters take by default (trade press; the second from memory). Of ceilings
/// and rafters: 10 at 16 in and 7 at 24 in (appendix JA4, from memory). Offered, never taken by themselves.
pub(super) const SHARES: &[&str] = &["25", "22", "23", "20", "10", "7"];

/// The climate zones that the United States have, with the letter of their moisture region.
pub(super) const ZONES: &[&str] =
    &["1a", "2a", "2b", "3a", "3b", "3c", "4a", "4b", "4c", "5a", "5b", "5c", "6a", "6b", "7", "8"];

/// What a surface is in the building: the columns of the code's tables, and what lies beside them.
pub(super) const COMPONENTS: &[&str] = &[
    "attic_floor",
    "roof_deck",
    "wall",
    "rim",
    "mass_wall_inside",
    "mass_wall_outside",
    "floor",
    "basement_wall",
    "crawl_wall",
    "cold_room",
    "other",
];

/// The ways in which a surface may satisfy the energy code.
pub(super) const PATHS: &[&str] = &["r_value", "u_factor", "fill", "small_ceiling", "accepted", "none"];

/// What may stand over foam.
pub(super) const COVERS: &[&str] = &[
    "gypsum",
    "wood_panel",
    "tested_barrier",
    "mineral_fiber",
    "thin_panel",
    "particleboard",
    "hardboard",
    "thin_gypsum",
    "steel_sheet",
    "fiber_cement",
    "tested_coating",
    "none",
];

/// Materials with a published resistance, and `typed` for one whose R stands on its label.
pub(super) const MATERIALS: &[&str] = &[
    "typed",
    "gypsum_3_8",
    "gypsum_1_2",
    "gypsum_5_8",
    "plywood_1_2",
    "osb_7_16",
    "fiberboard_1_2",
    "softwood",
    "hardwood",
    "bevel_siding",
    "hollow_siding",
    "stucco",
    "face_brick",
    "common_brick",
    "concrete",
    "block_8",
    "shingles",
    "building_paper",
    "batt",
    "loose_fill",
    "rigid_board",
    "second_foam",
];

/// Cylinders by their weight of chemical: sizes of a generic kind, no maker's.
pub(super) const CYLINDERS: &[&str] = &["small", "medium", "large", "xl"];

/// What a cylinder stands in.
pub(super) const PACKS: &[&str] = &["carton", "bare", "box_r5", "box_r10"];

/// The words of a question that is answered with yes or no.
pub(super) const YES_NO: &[&str] = &["yes", "no"];

/// The same, for what nobody may have looked at yet.
pub(super) const YES_NO_UNSEEN: &[&str] = &["yes", "no", "not_known"];
