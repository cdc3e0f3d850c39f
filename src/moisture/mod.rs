//! Where the moisture of the air comes from: unvented heaters, drying plaster, fresh concrete, people; and what it
//! does to the dew point at so many air changes an hour.
//!
//! An estimate, against which a reading always wins.

use crate::job::{Job, Reader};
use crate::measure::{Fahrenheit, Pounds};
use crate::readiness::Readiness;
use serde::Serialize;

/// What gives off water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Gives {
    /// An unvented heater.
    Heater,
    /// Joint compound or plaster that dries.
    Mud,
    /// Fresh concrete.
    Concrete,
    /// People at work.
    People,
}

/// A source of water.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Source {
    /// What it is.
    pub gives: Gives,
    /// Water in an hour.
    pub water_lb_hr: Pounds,
}

/// The room at so many air changes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct AtChanges {
    /// Air changes an hour.
    pub changes: f64,
    /// The dew point that it settles at.
    pub dew_f: Fahrenheit,
    /// How far the coldest surface stays above it; negative: it sweats.
    pub above_f: Option<f64>,
}

/// What moisture does to the room.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Moisture {
    /// The room's volume in cubic feet.
    pub room_ft3: Option<f64>,
    /// The dew point outdoors.
    pub outdoor_dew_f: Option<Fahrenheit>,
    /// Each source.
    pub sources: Vec<Source>,
    /// All of them.
    pub water_lb_hr: Pounds,
    /// The coldest surface: typed, or the coldest that was read.
    pub coldest_f: Option<Fahrenheit>,
    /// At ½, 1, 2, 4 and 8 air changes an hour, and at the number that was typed, rising.
    pub at: Vec<AtChanges>,
    /// After one hour without any air change.
    pub sealed_hour_dew_f: Option<Fahrenheit>,
    /// The least air changes at which the coldest surface stays the spread above the dew point; none where none do.
    pub least_changes: Option<f64>,
    /// The spread that it has to keep.
    pub spread_f: f64,
}

/// Moisture of a job.
pub fn moisture(_job: &Job, _readiness: &Readiness, _reader: &mut Reader) -> Moisture {
    Moisture {
        room_ft3: None,
        outdoor_dew_f: None,
        sources: Vec::new(),
        water_lb_hr: Pounds(0.0),
        coldest_f: None,
        at: Vec::new(),
        sealed_hour_dew_f: None,
        least_changes: None,
        spread_f: 0.0,
    }
}
