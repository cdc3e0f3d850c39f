//! Go, hold or not read: three temperatures and the moisture of the air against the label's windows.

use crate::foam::Foam;
use crate::job::{Job, Now, Reader, ReadingOf};
use crate::measure::{Band, Fahrenheit, Minutes};
use serde::Serialize;

/// The verdict on spraying now.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Every reading is there, fresh and inside its limits.
    Go,
    /// At least one fresh reading is outside its limits.
    Hold,
    /// Nothing is outside, but something is missing or too old.
    NotRead,
}

/// What one reading says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum ReadState {
    /// Inside its limits.
    Inside,
    /// Inside by little.
    Close,
    /// Outside its limits.
    Outside,
    /// Too old, or without a time: counts as not read.
    Old,
    /// Not taken or not understood.
    NotRead,
}

/// One reading against its limits.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Check {
    /// The reading's id in the job; 0 where none has been entered.
    pub id: u32,
    /// What it was taken of.
    pub of: ReadingOf,
    /// The spot's name.
    pub name: String,
    /// Temperature; humidity and dew point readings have theirs in `Dew`.
    pub value_f: Option<Fahrenheit>,
    /// Minutes since it was taken.
    pub age_min: Option<Minutes>,
    /// What it says.
    pub state: ReadState,
    /// The lower limit: the label's least or, for a surface, dew point + spread if that is higher.
    pub least_f: Option<Fahrenheit>,
    /// The upper limit.
    pub most_f: Option<Fahrenheit>,
    /// Degrees inside the nearer limit; negative: outside by so much.
    pub inside_by_f: Option<f64>,
    /// Whether the lower limit is the dew point's.
    pub least_is_dew: bool,
}

/// Moisture of the air.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Dew {
    /// The reading it comes from.
    pub id: u32,
    /// Dew point over water, as meters show it; low and high are the meter's error.
    pub point_f: Band<Fahrenheit>,
    /// Frost point, where the dew point is below freezing.
    pub frost_f: Option<Fahrenheit>,
    /// Relative humidity used, in percent.
    pub humidity_pct: Option<f64>,
    /// Air temperature used.
    pub air_f: Option<Fahrenheit>,
    /// The least a surface may have: dew point + spread.
    pub least_surface_f: Fahrenheit,
    /// The spread used.
    pub spread_f: f64,
}

/// The verdict and everything it rests on.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Readiness {
    /// Go, hold or not read.
    pub verdict: Verdict,
    /// For GO: the instant at which the first reading grows old, in ms since 1970 UTC.
    pub until_ms: Option<f64>,
    /// Position in the estimate's findings of the one to blame, for HOLD and NOT READ.
    pub blame: Option<u32>,
    /// Position in `checks` of the reading that is inside by the least.
    pub closest: Option<u32>,
    /// Every reading, in the order cylinder A, cylinder B, air, humidity or dew point, surfaces.
    pub checks: Vec<Check>,
    /// Moisture of the air, if it was read.
    pub dew: Option<Dew>,
}

/// The verdict at an instant, for the foams that the job uses (the narrowest window counts). `reader.findings` may already hold findings of other rooms;
/// `blame` is a position in that whole list.
pub fn check(_job: &Job, _foams: &[&Foam], _now: Now, _reader: &mut Reader) -> Readiness {
    Readiness {
        verdict: Verdict::NotRead,
        until_ms: None,
        blame: None,
        closest: None,
        checks: Vec::new(),
        dew: None,
    }
}
