//! The mistakes that have a name.

/// Every slip by name: words `slip.<name>` in `practice.json`. Those of [`GENERAL`] are looked for at any step of
/// their kind; the others are named where a scene knows them.
pub const SLIPS: &[&str] = &[
    // reading a tape
    "tenths_for_inches",
    "fraction_halved",
    "foot_off",
    "hook_inch",
    // areas
    "openings_forgotten",
    "openings_twice",
    "one_of_several",
    "gross_for_net",
    "twelve_for_144",
    "whole_rectangle",
    "half_twice",
    "one_pair_of_sides",
    "lap_forgotten",
    "one_surface_only",
    "one_gable",
    // framing
    "nominal_lumber",
    "framing_forgotten",
    "framing_twice",
    "last_stud_missing",
    "clear_spacing",
    "one_side_only",
    "ends_on_all_sides",
    "ends_on_wrong_sides",
    // pitch
    "slope_as_plan",
    "whole_span",
    "rise_for_slope",
    "one_plane",
    "ends_forgotten",
    // depth, code
    "r_of_first_inch",
    "promise_for_aim",
    "rounded_down",
    "zone_beside",
    "cavity_for_continuous",
    // board feet, allowances
    "cubic_feet",
    "one_44_for_12",
    "depth_forgotten",
    "allowance_forgotten",
    "allowance_alone",
    "allowance_divided",
    // kits
    "label_for_usable",
    "loss_forgotten",
    "loss_before_factor",
    "factor_forgotten",
    "not_whole",
    "large_only",
    "small_only",
    // lifts
    "one_lift_more",
    "wait_after_last",
    "waits_forgotten",
    // temperatures, warming
    "celsius_for_fahrenheit",
    "air_for_surface",
    "margin_from_air",
    "spread_in_dew_point",
    "age_forgotten",
    "mean_of_cylinders",
    "one_in_window_is_enough",
    "shorter_of_two",
    "skin_for_core",
    "wrong_day_half",
    "end_for_beginning",
    "edge_forgotten",
    "edge_backward",
    "spread_forgotten",
    "spread_taken_off",
    // true R
    "r_of_mean_depth",
    "mean_of_r",
    "r_across_framing",
    "films_forgotten",
    // price
    "tax_forgotten",
    "tax_on_delivery",
    "delivery_forgotten",
    "one_kit_only",
    // anywhere
    "inches_for_feet",
    "feet_for_inches",
    "decimal_moved",
];
