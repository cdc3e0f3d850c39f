//! Earlier rounds of readings beside the present one: what each spot did over time, and which of two things brought a
//! surface nearer to the dew point.
//!
//! Rounds are drawn and never count: the verdict rests on `job.readings` alone.

use crate::job::{Job, ReadingOf};
use serde::Serialize;

/// One reading of a series.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Point {
    /// When, in ms since 1970 UTC.
    pub ms: f64,
    /// Degrees Fahrenheit, or percent of humidity or wood moisture.
    pub value: f64,
}

/// What one spot did.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Series {
    /// What was read; dew points that follow from air and humidity are among them.
    pub of: ReadingOf,
    /// The spot's name.
    pub name: String,
    /// Its readings, oldest first.
    pub points: Vec<Point>,
}

/// Which of two things moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Moved {
    /// The air took up moisture.
    AirWetter,
    /// The surface got colder.
    SurfaceColder,
    /// The surface got warmer or the air drier: it is better than it was.
    Better,
    /// Neither moved by more than the meters' error.
    Neither,
}

/// Which reading is to blame for a surface's nearness to the dew point.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Blame {
    /// The spot.
    pub name: String,
    /// What moved most since the first round.
    pub moved: Moved,
    /// How far the dew point rose since, in °F.
    pub dew_rose_f: f64,
    /// How far the surface fell since, in °F.
    pub surface_fell_f: f64,
    /// How far it is above the dew point now.
    pub above_f: f64,
}

/// Earlier rounds and the present one.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Rounds {
    /// A series for each spot that was read more than once.
    pub series: Vec<Series>,
    /// For each surface that was read in an earlier round and in this one.
    pub blame: Vec<Blame>,
    /// The surfaces of this round from the coldest up, by their names.
    pub coldest: Vec<String>,
}

/// The rounds of a job.
pub fn rounds(_job: &Job) -> Rounds {
    Rounds { series: Vec::new(), blame: Vec::new(), coldest: Vec::new() }
}
