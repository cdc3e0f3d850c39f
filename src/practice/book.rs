//! Fixed exercises: worked examples that somebody has published, with their source. They are numbered, and no number
//! is ever given twice.

use super::{Made, Seed};
use crate::measure::Units;

/// The example of a number.
pub fn exercise(_seed: Seed, _units: Units) -> Option<Made> {
    None
}

/// The seeds of all examples.
pub fn seeds() -> Vec<Seed> {
    Vec::new()
}
