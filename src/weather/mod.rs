//! The weather ahead: a day's course from its lowest and highest temperature, the sun, what surfaces make of it, and
//! the hours in which the work can be done.
//!
//! Everything here is an estimate. It may turn an hour into "measure first", never one that is outside into one that
//! is inside: the sun on a wall is never counted for a cold surface.

use crate::foam::Foam;
use crate::job::{Job, Now, Reader};
use crate::measure::{Fahrenheit, Minutes, WallMinutes};
use serde::Serialize;

/// What a stretch of the day is good for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Says {
    /// The air is inside the labels' window, and so is the estimate of each surface.
    Inside,
    /// The air is inside; a surface may not be, or the edge of the window is within the error: measure first.
    MeasureFirst,
    /// The air is outside.
    Outside,
}

/// A stretch of a day.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Stretch {
    /// From, in minutes after that day's midnight.
    pub from_min: Minutes,
    /// To.
    pub to_min: Minutes,
    /// What it is good for.
    pub says: Says,
}

/// What kind of surface an estimate is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Facing {
    /// Sheathing, boards, thin steel in the shade: follows the air within half an hour.
    Thin,
    /// The inner face of sheathing in front of a heated room.
    Heated,
    /// Thick masonry or concrete in the shade: swings less, and later.
    Masonry,
}

/// What a kind of surface does on a day.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SurfaceDay {
    /// Which kind.
    pub facing: Facing,
    /// Its coldest, and when, in minutes after midnight.
    pub low_f: Fahrenheit,
    /// When that is.
    pub low_at_min: Minutes,
    /// Its warmest.
    pub high_f: Fahrenheit,
    /// When that is.
    pub high_at_min: Minutes,
    /// From when the estimate is inside the labels' window for surfaces; none where it never is.
    pub from_min: Option<Minutes>,
    /// Until when.
    pub to_min: Option<Minutes>,
}

/// Whether the sun rises on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Sun {
    /// It rises and sets.
    Rises,
    /// It stays up.
    NeverSets,
    /// It stays down.
    NeverRises,
    /// The place is not known; 6 and 18 o'clock stand in.
    NoPlace,
}

/// A day of the forecast.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Ahead {
    /// Its id in the job.
    pub id: u32,
    /// Its date, in days since 1970-01-01.
    pub day: f64,
    /// Its lowest temperature, towards sunrise.
    pub low_f: Fahrenheit,
    /// Its highest.
    pub high_f: Fahrenheit,
    /// The sun.
    pub sun: Sun,
    /// Sunrise in minutes after midnight by the clock on the wall.
    pub sunrise_min: Minutes,
    /// Sunset.
    pub sunset_min: Minutes,
    /// Whether the day before and the day after are in the forecast too; where not, this day's own stand in.
    pub neighbors: bool,
    /// The whole day, cut where what it is good for changes. Empty where the air never is inside.
    pub stretches: Vec<Stretch>,
    /// From when the air is inside the labels' window, likely; none where it never is.
    pub air_from_min: Option<Minutes>,
    /// Until when.
    pub air_to_min: Option<Minutes>,
    /// How far both edges may be off, either way.
    pub edge_min: Minutes,
    /// What surfaces do.
    pub surfaces: Vec<SurfaceDay>,
    /// The dew point of the forecast, if it was typed.
    pub dew_f: Option<Fahrenheit>,
    /// From when on the estimate of the coldest kind of surface lies too near to it; none where it never does.
    pub dew_close: bool,
}

/// Bringing a slab, a wall or sheathing to temperature under a tent: an order of magnitude.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct HeatPlan {
    /// What it has to reach: the labels' least for surfaces.
    pub to_f: Fahrenheit,
    /// What the ground itself takes up, in Btu.
    pub stored_btu: f64,
    /// What goes through the tent, in Btu per hour.
    pub lost_btu_hr: f64,
    /// How long it takes with the air held at the tent's temperature; none where that never does it.
    pub hours: Option<f64>,
    /// The power that it takes, in Btu per hour.
    pub power_btu_hr: Option<f64>,
}

/// The weather ahead.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Weather {
    /// The days of the forecast by date.
    pub days: Vec<Ahead>,
    /// Position in `days` of the day of spraying.
    pub spray_day: Option<u32>,
    /// Whether the time of spraying that the job says lies in a stretch that is inside; none where it is not known.
    pub at_start: Option<Says>,
    /// Tent and heat, where it was asked for.
    pub heat: Option<HeatPlan>,
}

/// The course of one day, to be drawn: made while it is shown. One figure every 15 minutes, from midnight on.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct DayCurve {
    /// Midnight.
    pub from: WallMinutes,
    /// The air, in °F.
    pub air_f: Vec<f64>,
    /// Thin surfaces in front of a heated room; empty where that is not known.
    pub heated_f: Vec<f64>,
    /// Masonry; empty where nobody said that there is any.
    pub masonry_f: Vec<f64>,
}

/// The forecast, a day each, and the heat plan.
pub fn ahead(_job: &Job, _foams: &[&Foam], _now: Now, _reader: &mut Reader) -> Weather {
    Weather { days: Vec::new(), spray_day: None, at_start: None, heat: None }
}

/// The course of one day of the forecast.
pub fn curve(_job: &Job, _id: u32, _now: Now) -> Option<DayCurve> {
    None
}
