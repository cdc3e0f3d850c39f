//! The one table of fields: what each box takes, its unit, its limits, its default and where those come from.
//!
//! It feeds the check, the message, the hint in the page and the job file's schema.

mod words;

use crate::measure::{Kind, Unit, Units};
use serde::{Deserialize, Serialize};
use words::{COMPONENTS, COVERS, CYLINDERS, MATERIALS, PACKS, PATHS, SHARES, YES_NO, YES_NO_UNSEEN, ZONES};

/// A part of the job that has entries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// The job itself.
    Job,
    /// A surface.
    Surface,
    /// An opening in a surface.
    Opening,
    /// An edge of a plane that is walked along its edges.
    Leg,
    /// A layer of what a surface is built of.
    Layer,
    /// A foam sheet.
    Foam,
    /// One tested thickness of a foam sheet.
    RRow,
    /// A kit sheet.
    Kit,
    /// A patch of a surface that gets another depth.
    Patch,
    /// A kit that is already there.
    Owned,
    /// A reading on site.
    Reading,
    /// Kits that are warmed together.
    Warming,
    /// A temperature read while they warm.
    WarmReading,
    /// A day of the forecast.
    Forecast,
    /// Something that was done on the day.
    Event,
    /// The purchase.
    Purchase,
}

/// One field: a row of the table.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Field {
    /// The part that it belongs to.
    pub part: Part,
    /// Its name within the part.
    pub field: &'static str,
    /// What it measures.
    pub kind: Kind,
    /// The unit of a bare number when the job is in US units.
    pub us: Unit,
    /// The unit of a bare number when the job is in metric units.
    pub metric: Unit,
    /// The least that is taken, in the unit that the kind is held in.
    pub least: f64,
    /// The most that is taken.
    pub most: f64,
    /// Above this a value is taken, but asked about.
    pub unlikely: f64,
    /// What holds while the box is blank, as text in the US unit; empty: a blank stays a blank.
    pub default: &'static str,
    /// Where the default and the limits come from: a key of the table of sources.
    pub source: &'static str,
    /// For [`Kind::Choice`]: the words that may be pressed, in the order in which they are shown. For a measure:
    /// published figures that may be pressed instead of typed.
    pub choices: &'static [&'static str],
}

impl Field {
    /// The unit of a bare number under these units.
    pub fn unit(&self, units: Units) -> Unit {
        match units {
            Units::Us => self.us,
            Units::Metric => self.metric,
        }
    }
}

const SITE: &str = "site_limit";

const fn row(
    part: Part,
    field: &'static str,
    kind: Kind,
    us: Unit,
    metric: Unit,
    least: f64,
    most: f64,
) -> Field {
    Field {
        part,
        field,
        kind,
        us,
        metric,
        least,
        most,
        unlikely: most,
        default: "",
        source: SITE,
        choices: &[],
    }
}

/// A field in which one of a few words is pressed.
const fn one_of(part: Part, field: &'static str, choices: &'static [&'static str]) -> Field {
    Field { choices, ..row(part, field, Kind::Choice, Unit::One, Unit::One, 0.0, 0.0) }
}

impl Field {
    const fn unlikely(mut self, above: f64) -> Self {
        self.unlikely = above;
        self
    }
    const fn default(mut self, text: &'static str, source: &'static str) -> Self {
        self.default = text;
        self.source = source;
        self
    }
    const fn offers(mut self, figures: &'static [&'static str]) -> Self {
        self.choices = figures;
        self
    }
    const fn source(mut self, source: &'static str) -> Self {
        self.source = source;
        self
    }
}

use Kind as K;
use Part as P;
use Unit as U;

/// Every field, part by part in the order in which a page shows them.
const FIELDS: &[Field] = &[
    row(P::Job, "spray_date", K::Date, U::Date, U::Date, 0.0, 73_000.0),
    row(P::Job, "over_depth", K::Percent, U::Pct, U::Pct, 0.0, 100.0)
        .unlikely(30.0)
        .default("0", "over_depth"),
    row(P::Job, "other_waste", K::Percent, U::Pct, U::Pct, 0.0, 100.0)
        .unlikely(30.0)
        .default("0", "waste_off"),
    row(P::Job, "yield_factor", K::Percent, U::Pct, U::Pct, 10.0, 120.0)
        .unlikely(100.0)
        .default("86", "yield_factor"),
    row(P::Job, "fixed_loss", K::FoamVolume, U::BdFt, U::BdFt, 0.0, 200.0)
        .unlikely(30.0)
        .default("5", "fixed_loss"),
    row(P::Job, "too_big", K::FoamVolume, U::BdFt, U::BdFt, 1.0, 100_000.0).default("1800", "too_big"),
    row(P::Job, "too_big_kits", K::Count, U::Each, U::Each, 1.0, 999.0).default("4", "too_big"),
    row(P::Job, "sales_tax", K::Percent, U::Pct, U::Pct, 0.0, 30.0).unlikely(12.0).source("sales_tax"),
    row(P::Job, "delivery", K::Money, U::Usd, U::Usd, 0.0, 10_000_000.0).source("quote"),
    row(P::Job, "under_aim", K::Length, U::In, U::Mm, 0.0, 3.0)
        .unlikely(1.0)
        .default("1/2", "depth_tolerance"),
    row(P::Job, "over_aim", K::Length, U::In, U::Mm, 0.0, 3.0)
        .unlikely(1.0)
        .default("1/4", "depth_tolerance"),
    row(P::Job, "dew_spread", K::TemperatureStep, U::F, U::C, 0.0, 50.0)
        .unlikely(20.0)
        .default("5", "dew_spread"),
    row(P::Job, "cylinders_apart", K::TemperatureStep, U::F, U::C, 0.0, 50.0).default("5", "cylinders_apart"),
    row(P::Job, "wood_most", K::Percent, U::Pct, U::Pct, 1.0, 100.0)
        .unlikely(20.0)
        .default("19", "wood_moisture"),
    row(P::Job, "site_age", K::Duration, U::Min, U::Min, 1.0, 1_440.0).default("120", "reading_age"),
    row(P::Job, "cylinder_age", K::Duration, U::Min, U::Min, 1.0, 1_440.0).default("60", "reading_age"),
    row(P::Job, "wood_age", K::Duration, U::Min, U::Min, 1.0, 1_440.0).default("120", "reading_age"),
    row(P::Job, "forecast_age", K::Duration, U::Hr, U::Hr, 1.0, 1_440.0).default("12", "forecast_age"),
    row(P::Job, "meter_rh_error", K::Percent, U::Pct, U::Pct, 0.0, 30.0).default("5", "meter_error"),
    row(P::Job, "meter_temp_error", K::TemperatureStep, U::F, U::C, 0.0, 20.0).default("1", "meter_error"),
    one_of(P::Job, "outdoors", YES_NO),
    one_of(P::Job, "heat_kept", YES_NO),
    one_of(P::Job, "flames_out", YES_NO),
    one_of(P::Job, "heater_lit", &["vented", "unvented", "electric", "none"]),
    one_of(P::Job, "closed_cavity", YES_NO),
    one_of(P::Job, "frame_gaps", YES_NO),
    one_of(P::Job, "flues", YES_NO),
    one_of(P::Job, "water", YES_NO),
    one_of(P::Job, "rot", YES_NO),
    one_of(P::Job, "old_fill", YES_NO),
    one_of(P::Job, "retarder", &["inside", "outside", "both", "none", "not_known"]),
    one_of(P::Job, "knob_tube", YES_NO_UNSEEN),
    one_of(P::Job, "open_boxes", YES_NO),
    one_of(P::Job, "lights", YES_NO_UNSEEN),
    one_of(P::Job, "pipes", YES_NO),
    one_of(P::Job, "fire_blocking", YES_NO_UNSEEN),
    one_of(P::Job, "termites", YES_NO_UNSEEN),
    one_of(P::Job, "asbestos", YES_NO_UNSEEN),
    one_of(P::Job, "old_paint", YES_NO_UNSEEN),
    one_of(P::Job, "room_use", &["living", "storage", "service", "weather"]),
    one_of(P::Job, "work", &["new", "addition", "alteration", "insulation_only"]),
    row(P::Job, "zip", K::Zip, U::One, U::One, 0.0, 99_999.0).source("zones"),
    row(P::Job, "county", K::Zip, U::One, U::One, 1_001.0, 99_999.0).source("zones"),
    one_of(P::Job, "zone", ZONES).source("zones"),
    one_of(P::Job, "edition", &["2009", "2012_2018", "2021", "2024"]),
    row(P::Job, "hdd65", K::Number, U::One, U::One, 0.0, 25_000.0).unlikely(16_000.0).source("degree_days"),
    row(P::Job, "cdd50", K::Number, U::One, U::One, 0.0, 15_000.0).unlikely(11_000.0).source("degree_days"),
    one_of(P::Job, "moist_region", &["a", "b", "c"]).source("degree_days"),
    one_of(P::Job, "warm_humid", YES_NO),
    row(P::Job, "spray_time", K::Clock, U::Clock, U::Clock, 0.0, 1_439.0).default("8:00 am", "spray_time"),
    row(P::Job, "latitude", K::Coordinate, U::Arc, U::Arc, -90.0, 90.0).source("position"),
    row(P::Job, "longitude", K::Coordinate, U::Arc, U::Arc, -180.0, 180.0).source("position"),
    row(P::Job, "heated_air", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(110.0),
    one_of(P::Job, "outer_wall", &["sheathing", "sheathing_siding", "block"]),
    one_of(P::Job, "masonry_kind", &["concrete", "brick"]),
    one_of(P::Job, "heat_what", &["slab", "masonry", "sheathing", "steel"]),
    row(P::Job, "heat_area", K::Area, U::Ft2, U::M2, 0.0, 1_000_000.0).unlikely(20_000.0),
    row(P::Job, "heat_thickness", K::Length, U::In, U::Mm, 0.01, 48.0).unlikely(16.0),
    row(P::Job, "heat_from", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(110.0),
    row(P::Job, "heat_air", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(130.0),
    row(P::Job, "heat_outside", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(130.0),
    row(P::Job, "tent_area", K::Area, U::Ft2, U::M2, 0.0, 1_000_000.0).unlikely(20_000.0),
    row(P::Job, "room_length", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(2_400.0),
    row(P::Job, "room_width", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(2_400.0),
    row(P::Job, "room_height", K::Length, U::Ft, U::M, 0.0, 2_400.0).unlikely(360.0),
    row(P::Job, "outdoor_air", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(120.0),
    row(P::Job, "outdoor_humidity", K::Percent, U::Pct, U::Pct, 1.0, 100.0),
    row(P::Job, "air_changes", K::Number, U::One, U::One, 0.01, 100.0).unlikely(30.0),
    one_of(P::Job, "heater_fuel", &["propane", "natural_gas", "kerosene"]),
    row(P::Job, "heater_power", K::Power, U::Btuh, U::Kw, 0.0, 10_000_000.0).unlikely(600_000.0),
    row(P::Job, "mud_weight", K::Weight, U::Lb, U::Kg, 0.0, 20_000.0).unlikely(2_000.0),
    row(P::Job, "concrete_area", K::Area, U::Ft2, U::M2, 0.0, 1_000_000.0).unlikely(20_000.0),
    row(P::Job, "concrete_age", K::Duration, U::Day, U::Day, 0.0, 5_256_000.0),
    row(P::Job, "people_inside", K::Count, U::Each, U::Each, 0.0, 1_000.0).unlikely(50.0),
    row(P::Job, "coldest_surface", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(120.0),
    row(P::Job, "crew", K::Count, U::Each, U::Each, 0.0, 100.0).unlikely(12.0),
    row(P::Job, "zone_entries", K::Count, U::Each, U::Each, 1.0, 100.0)
        .unlikely(20.0)
        .default("2", "zone_entries"),
    one_of(P::Job, "occupants", &["none", "away", "in_house"]),
    one_of(P::Job, "children", YES_NO_UNSEEN),
    one_of(P::Job, "asthma", YES_NO_UNSEEN),
    one_of(P::Job, "sensitized", YES_NO_UNSEEN),
    one_of(P::Job, "isolated", YES_NO),
    one_of(P::Job, "air_handler_off", YES_NO),
    one_of(P::Job, "flue_near", YES_NO_UNSEEN),
    row(P::Job, "exhaust_flow", K::Airflow, U::Cfm, U::Lps, 0.0, 1_000_000.0).unlikely(20_000.0),
    row(P::Job, "exhaust_changes", K::Number, U::One, U::One, 0.1, 100.0)
        .unlikely(40.0)
        .default("10", "exhaust_changes"),
    row(P::Job, "mixing", K::Number, U::One, U::One, 1.0, 10.0).default("3", "mixing"),
    row(P::Job, "purge_left", K::Percent, U::Pct, U::Pct, 0.01, 50.0).default("1", "purge_table"),
    row(P::Job, "leak_area", K::Area, U::In2, U::M2, 0.0, 100.0).unlikely(20.0),
    one_of(P::Job, "smell", YES_NO),
    row(P::Job, "mask_run", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(4_800.0),
    row(P::Job, "vehicle_most", K::Weight, U::Lb, U::Kg, 0.0, 100_000.0).default("440", "vehicle_most"),
    row(P::Job, "certificate_due", K::Date, U::Date, U::Date, 0.0, 73_000.0),
    row(P::Surface, "area", K::Area, U::Ft2, U::M2, 0.0, 1_000_000.0).unlikely(20_000.0),
    row(P::Surface, "length", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(2_400.0),
    row(P::Surface, "width", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(2_400.0),
    row(P::Surface, "height", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(480.0),
    row(P::Surface, "spacing", K::Length, U::In, U::Mm, 1.0, 240.0).unlikely(60.0).default("16", "spacing"),
    row(P::Surface, "member", K::Member, U::In, U::Mm, 0.1, 24.0).unlikely(12.0),
    row(P::Surface, "plies", K::Count, U::Each, U::Each, 1.0, 3.0).default("1", SITE),
    row(P::Surface, "plates", K::Count, U::Each, U::Each, 0.0, 10.0).default("0", "between_plates"),
    row(P::Surface, "framing_share", K::Percent, U::Pct, U::Pct, 0.0, 95.0)
        .unlikely(45.0)
        .source("framing_share")
        .offers(SHARES),
    row(P::Surface, "perimeter", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(4_800.0),
    row(P::Surface, "band", K::Length, U::In, U::Mm, 0.0, 120.0).unlikely(24.0),
    one_of(P::Surface, "joists_land", &["length", "width"]),
    row(P::Surface, "landing_run", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(4_800.0),
    one_of(P::Surface, "first_parallel", &["in_reach", "out_of_reach"]),
    row(P::Surface, "sill_lap", K::Length, U::In, U::Mm, 0.0, 48.0).unlikely(12.0),
    row(P::Surface, "foundation_lap", K::Length, U::In, U::Mm, 0.0, 120.0).unlikely(24.0),
    row(P::Surface, "core_count", K::Count, U::Each, U::Each, 0.0, 10_000.0).unlikely(500.0),
    row(P::Surface, "core_size", K::Area, U::In2, U::M2, 0.0, 10.0).unlikely(1.0),
    row(P::Surface, "bays", K::Count, U::Each, U::Each, 0.0, 10_000.0).unlikely(500.0),
    row(P::Surface, "run", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(4_800.0),
    row(P::Surface, "rows", K::Count, U::Each, U::Each, 0.0, 1_000.0).unlikely(50.0).default("1", SITE),
    row(P::Surface, "bay_width", K::Length, U::In, U::Mm, 0.0, 1_200.0).unlikely(60.0),
    row(P::Surface, "bay_height", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(480.0),
    row(P::Surface, "plan_run", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(720.0),
    row(P::Surface, "pitch", K::Pitch, U::In12, U::In12, 0.0, 10.0).unlikely(2.0),
    row(P::Surface, "rise", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(480.0),
    row(P::Surface, "wall_height", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(480.0).default("0", SITE),
    row(P::Surface, "side_b", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(2_400.0),
    row(P::Surface, "side_c", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(2_400.0),
    row(P::Surface, "top", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(2_400.0),
    row(P::Surface, "top_offset", K::Length, U::Ft, U::M, 0.0, 120_000.0).unlikely(2_400.0),
    row(P::Leg, "length", K::Length, U::Ft, U::M, 0.1, 120_000.0).unlikely(2_400.0),
    one_of(P::Leg, "turn", &["left", "right", "straight"]).default("left", SITE),
    row(P::Leg, "angle", K::Number, U::One, U::One, 0.0, 180.0).unlikely(150.0).default("90", SITE),
    row(P::Surface, "from_height", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(480.0).default("0", SITE),
    row(P::Surface, "to_height", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(480.0),
    row(P::Surface, "strip_width", K::Length, U::In, U::Mm, 0.0, 120.0).unlikely(24.0).default("4", "strip"),
    row(P::Surface, "span", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(1_200.0),
    row(P::Surface, "radius", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(1_200.0),
    row(P::Surface, "diameter", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(1_200.0),
    row(P::Surface, "circumference", K::Length, U::Ft, U::M, 0.0, 36_000.0).unlikely(3_600.0),
    one_of(P::Surface, "end_top", YES_NO).default("no", SITE),
    one_of(P::Surface, "end_bottom", YES_NO).default("no", SITE),
    one_of(P::Surface, "side", &["inside", "outside"]),
    one_of(P::Surface, "side_top", YES_NO).default("yes", SITE),
    one_of(P::Surface, "side_bottom", YES_NO).default("yes", SITE),
    one_of(P::Surface, "side_left", YES_NO).default("yes", SITE),
    one_of(P::Surface, "side_right", YES_NO).default("yes", SITE),
    row(P::Surface, "times", K::Count, U::Each, U::Each, 0.0, 1_000.0).unlikely(50.0).default("1", SITE),
    one_of(P::Surface, "ground", &["flat", "ribbed", "wave", "ribs", "stone", "factor"])
        .default("flat", "uneven"),
    row(P::Surface, "rib_pitch", K::Length, U::In, U::Mm, 0.1, 240.0).unlikely(60.0),
    row(P::Surface, "rib_depth", K::Length, U::In, U::Mm, 0.0, 60.0).unlikely(12.0),
    row(P::Surface, "rib_top", K::Length, U::In, U::Mm, 0.0, 240.0).unlikely(24.0),
    row(P::Surface, "rib_bottom", K::Length, U::In, U::Mm, 0.0, 240.0).unlikely(24.0),
    one_of(P::Surface, "stone_way", &["fill", "follow"]),
    row(P::Surface, "pockets", K::Probes, U::In, U::Mm, 0.0, 24.0).unlikely(8.0).source("your_tape"),
    row(P::Surface, "ground_factor", K::Number, U::One, U::One, 1.0, 5.0).unlikely(2.0),
    one_of(P::Surface, "floor", YES_NO).default("yes", SITE),
    one_of(P::Surface, "ceiling", YES_NO).default("yes", SITE),
    one_of(P::Surface, "front_wall", YES_NO).default("yes", SITE),
    one_of(P::Surface, "right_wall", YES_NO).default("yes", SITE),
    one_of(P::Surface, "back_wall", YES_NO).default("yes", SITE),
    one_of(P::Surface, "left_wall", YES_NO).default("yes", SITE),
    row(P::Surface, "gap_width", K::Length, U::In, U::Mm, 0.0, 24.0).unlikely(3.0),
    row(P::Surface, "holes", K::Count, U::Each, U::Each, 0.0, 10_000.0).unlikely(500.0),
    row(P::Surface, "hole_size", K::Length, U::In, U::Mm, 0.0, 48.0).unlikely(12.0),
    row(P::Surface, "pipe_size", K::Length, U::In, U::Mm, 0.0, 48.0).unlikely(12.0).default("0", SITE),
    row(P::Surface, "cavity", K::Length, U::In, U::Mm, 0.0, 120.0).unlikely(24.0),
    row(P::Surface, "depth", K::Length, U::In, U::Mm, 0.0, 36.0).unlikely(12.0),
    row(P::Surface, "existing", K::Probes, U::In, U::Mm, 0.0, 36.0).unlikely(12.0).source("your_tape"),
    one_of(P::Surface, "existing_same", YES_NO),
    one_of(P::Surface, "exposure", &["covered", "exposed", "not_known"]),
    one_of(P::Surface, "spot", &["rim", "elsewhere"]),
    one_of(P::Surface, "component", COMPONENTS),
    one_of(P::Surface, "cavity_opened", YES_NO),
    one_of(P::Surface, "runs", &["between", "across"]),
    one_of(P::Surface, "over_edges", YES_NO),
    one_of(P::Surface, "framing", &["wood", "steel"]),
    row(P::Surface, "whole_r", K::Resistance, U::R, U::Rsi, 0.0, 200.0).unlikely(80.0),
    one_of(P::Surface, "code_path", PATHS).default("r_value", SITE),
    one_of(P::Surface, "inner_retarder", &["class_1", "class_2", "class_3", "none"]),
    one_of(P::Surface, "tile_roof", YES_NO),
    one_of(P::Surface, "room", &["living", "storage", "service", "garage", "weather"]),
    one_of(P::Surface, "cover", COVERS),
    row(P::Surface, "cover_price", K::Money, U::Usd, U::Usd, 0.0, 100_000.0).unlikely(2_000.0).source("shop"),
    one_of(P::Surface, "seals", &["top_plates", "chases", "soffits", "holes", "gaps", "sill_joint"]),
    row(P::Surface, "uneven", K::Percent, U::Pct, U::Pct, 0.0, 200.0).unlikely(60.0).default("0", "uneven"),
    row(P::Surface, "target_r", K::Resistance, U::R, U::Rsi, 0.0, 200.0).unlikely(80.0),
    row(P::Surface, "promise", K::Length, U::In, U::Mm, 0.0, 36.0).unlikely(12.0),
    row(P::Surface, "most", K::Length, U::In, U::Mm, 0.0, 36.0).unlikely(12.0),
    row(P::Patch, "area", K::Area, U::Ft2, U::M2, 0.0, 1_000_000.0).unlikely(20_000.0),
    row(P::Patch, "share", K::Percent, U::Pct, U::Pct, 0.0, 100.0),
    row(P::Patch, "depth", K::Length, U::In, U::Mm, 0.0, 36.0).unlikely(12.0),
    one_of(P::Layer, "made_of", MATERIALS),
    one_of(P::Layer, "position", &["outside", "cavity", "inside"]),
    row(P::Layer, "thickness", K::Length, U::In, U::Mm, 0.0, 36.0).unlikely(16.0),
    row(P::Layer, "layer_r", K::Resistance, U::R, U::Rsi, 0.0, 100.0).unlikely(60.0).source("layer_label"),
    row(P::Opening, "width", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(480.0),
    row(P::Opening, "height", K::Length, U::Ft, U::M, 0.0, 12_000.0).unlikely(480.0),
    row(P::Opening, "count", K::Count, U::Each, U::Each, 0.0, 1_000.0).unlikely(100.0).default("1", SITE),
    row(P::Opening, "from_left", K::Length, U::Ft, U::M, 0.0, 120_000.0),
    row(P::Opening, "sill", K::Length, U::Ft, U::M, 0.0, 12_000.0).default("0", "lower_edge"),
    row(P::Foam, "density", K::Density, U::LbFt3, U::KgM3, 0.1, 20.0).unlikely(5.0).source("foam_sheet"),
    row(P::Foam, "cylinder_least", K::Temperature, U::F, U::C, -20.0, 150.0).default("70", "chemical_window"),
    row(P::Foam, "cylinder_most", K::Temperature, U::F, U::C, -20.0, 150.0).default("90", "chemical_window"),
    row(P::Foam, "air_least", K::Temperature, U::F, U::C, -20.0, 150.0).default("60", "site_window"),
    row(P::Foam, "air_most", K::Temperature, U::F, U::C, -20.0, 150.0).default("90", "site_window"),
    row(P::Foam, "surface_least", K::Temperature, U::F, U::C, -20.0, 150.0).default("60", "site_window"),
    row(P::Foam, "surface_most", K::Temperature, U::F, U::C, -20.0, 150.0).default("90", "site_window"),
    row(P::Foam, "largest_lift", K::Length, U::In, U::Mm, 0.1, 12.0)
        .unlikely(3.0)
        .default("1", "largest_lift"),
    row(P::Foam, "least_lift", K::Length, U::In, U::Mm, 0.0, 6.0).unlikely(2.0).default("1/2", "least_lift"),
    row(P::Foam, "wait", K::Duration, U::Min, U::Min, 0.0, 2_880.0).unlikely(240.0),
    row(P::Foam, "cure", K::Duration, U::Hr, U::Hr, 0.0, 20_160.0),
    row(P::Foam, "reentry", K::Duration, U::Hr, U::Hr, 1.0, 20_160.0).source("foam_sheet"),
    row(P::Foam, "reentry_workers", K::Duration, U::Hr, U::Hr, 1.0, 20_160.0).source("foam_sheet"),
    row(P::Foam, "conditioning", K::Duration, U::Hr, U::Hr, 0.0, 20_160.0).default("24", "conditioning"),
    row(P::Foam, "open_days", K::Duration, U::Day, U::Day, 1_440.0, 525_600.0)
        .unlikely(129_600.0)
        .default("30", "open_days"),
    row(P::Foam, "purge_days", K::Duration, U::Day, U::Day, 1_440.0, 129_600.0)
        .unlikely(43_200.0)
        .default("7", "weekly_purge"),
    row(P::Foam, "storage_least", K::Temperature, U::F, U::C, -20.0, 150.0).default("60", "storage"),
    row(P::Foam, "storage_most", K::Temperature, U::F, U::C, -20.0, 150.0).default("120", "storage"),
    row(P::Foam, "wind_most", K::Speed, U::Mph, U::Kmh, 0.0, 100.0).unlikely(40.0).source("foam_sheet"),
    row(P::Foam, "permeance", K::Permeance, U::Perm, U::Metricperm, 0.0, 200.0),
    row(P::Foam, "flame", K::Number, U::One, U::One, 0.0, 1_000.0),
    row(P::Foam, "smoke", K::Number, U::One, U::One, 0.0, 5_000.0),
    row(P::Foam, "tested_thickness", K::Length, U::In, U::Mm, 0.0, 36.0),
    row(P::RRow, "thickness", K::Length, U::In, U::Mm, 0.1, 36.0).source("foam_sheet"),
    row(P::RRow, "r", K::Resistance, U::R, U::Rsi, 0.1, 300.0).source("foam_sheet"),
    row(P::Kit, "label_yield", K::FoamVolume, U::BdFt, U::BdFt, 1.0, 20_000.0)
        .unlikely(2_000.0)
        .source("carton"),
    row(P::Kit, "price", K::Money, U::Usd, U::Usd, 0.0, 10_000_000.0).source("carton"),
    row(P::Kit, "net_weight", K::Weight, U::Lb, U::Kg, 0.1, 2_000.0).source("carton"),
    row(P::Kit, "nozzles", K::Count, U::Each, U::Each, 0.0, 1_000.0).source("carton"),
    row(P::Kit, "gross_weight", K::Weight, U::Lb, U::Kg, 0.1, 2_000.0).source("carton"),
    row(P::Kit, "limit", K::Count, U::Each, U::Each, 0.0, 999.0).source("shop"),
    row(P::Owned, "label_yield", K::FoamVolume, U::BdFt, U::BdFt, 1.0, 20_000.0)
        .unlikely(2_000.0)
        .source("carton"),
    one_of(P::Owned, "state", &["sealed", "opened"]),
    row(P::Owned, "expires", K::Date, U::Date, U::Date, 0.0, 73_000.0).source("carton"),
    row(P::Owned, "opened", K::Date, U::Date, U::Date, 0.0, 73_000.0),
    row(P::Owned, "last_purge", K::Date, U::Date, U::Date, 0.0, 73_000.0),
    row(P::Owned, "a_label", K::Weight, U::Lb, U::Kg, 0.1, 1_000.0).source("carton"),
    row(P::Owned, "a_weight", K::Weight, U::Lb, U::Kg, 0.0, 1_000.0),
    row(P::Owned, "a_left", K::Percent, U::Pct, U::Pct, 0.0, 100.0),
    row(P::Owned, "b_label", K::Weight, U::Lb, U::Kg, 0.1, 1_000.0).source("carton"),
    row(P::Owned, "b_weight", K::Weight, U::Lb, U::Kg, 0.0, 1_000.0),
    row(P::Owned, "b_left", K::Percent, U::Pct, U::Pct, 0.0, 100.0),
    row(P::Owned, "nozzles", K::Count, U::Each, U::Each, 0.0, 1_000.0),
    row(P::Owned, "storage", K::Temperature, U::F, U::C, -60.0, 250.0),
    one_of(P::Owned, "use", YES_NO).default("yes", SITE),
    row(P::Reading, "temperature", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(130.0),
    row(P::Reading, "humidity", K::Percent, U::Pct, U::Pct, 1.0, 100.0),
    row(P::Reading, "moisture", K::Percent, U::Pct, U::Pct, 1.0, 200.0).unlikely(60.0),
    row(P::Reading, "wind", K::Speed, U::Mph, U::Kmh, 0.0, 200.0).unlikely(60.0),
    one_of(P::Reading, "material", &["wood", "masonry", "metal", "old_foam", "other"]),
    one_of(P::Reading, "how", &["contact", "infrared"]),
    one_of(P::Reading, "masonry_dry", YES_NO),
    one_of(P::Warming, "cylinder", CYLINDERS).source("cylinder_sizes"),
    row(P::Warming, "diameter", K::Length, U::In, U::Mm, 3.0, 30.0).unlikely(16.0).source("your_tape"),
    row(P::Warming, "height", K::Length, U::In, U::Mm, 3.0, 60.0).unlikely(30.0).source("your_tape"),
    row(P::Warming, "liquid", K::Weight, U::Lb, U::Kg, 0.5, 500.0).unlikely(80.0).source("carton"),
    row(P::Warming, "start", K::Temperature, U::F, U::C, -60.0, 150.0).unlikely(120.0),
    row(P::Warming, "room", K::Temperature, U::F, U::C, -60.0, 150.0).unlikely(100.0),
    row(P::Warming, "night", K::Temperature, U::F, U::C, -60.0, 150.0).unlikely(100.0),
    row(P::Warming, "night_from", K::Clock, U::Clock, U::Clock, 0.0, 1_439.0).default("10:00 pm", "set_back"),
    row(P::Warming, "night_to", K::Clock, U::Clock, U::Clock, 0.0, 1_439.0).default("6:00 am", "set_back"),
    one_of(P::Warming, "pack", PACKS).default("carton", "cylinder_pack"),
    one_of(P::Warming, "crowded", &["free", "half", "three_quarters"]).default("free", "cylinder_pack"),
    one_of(P::Warming, "out_place", &["van", "crawlspace", "attic", "outdoors"]),
    row(P::Warming, "out_air", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(150.0),
    one_of(P::Warming, "out_pack", PACKS).default("carton", "cylinder_pack"),
    row(P::WarmReading, "skin", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(130.0),
    row(P::WarmReading, "liquid", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(130.0),
    row(P::Forecast, "date", K::Date, U::Date, U::Date, 0.0, 73_000.0),
    row(P::Forecast, "low", K::Temperature, U::F, U::C, -100.0, 150.0).unlikely(110.0),
    row(P::Forecast, "high", K::Temperature, U::F, U::C, -100.0, 150.0).unlikely(120.0),
    row(P::Forecast, "dew", K::Temperature, U::F, U::C, -100.0, 120.0).unlikely(90.0),
    row(P::Event, "cylinder_a", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(130.0),
    row(P::Event, "cylinder_b", K::Temperature, U::F, U::C, -60.0, 250.0).unlikely(130.0),
    row(P::Event, "sprayed_area", K::Area, U::Ft2, U::M2, 0.0, 1_000_000.0).unlikely(10_000.0),
    row(P::Event, "mean_depth", K::Length, U::In, U::Mm, 0.0, 36.0).unlikely(12.0),
];

/// Every field of the table.
pub fn fields() -> &'static [Field] {
    FIELDS
}

/// The field of this name in this part.
pub fn field(part: Part, name: &str) -> Option<&'static Field> {
    FIELDS.iter().find(|row| row.part == part && row.field == name)
}
