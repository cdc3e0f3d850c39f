//! Lifts of equal thickness between the least and the largest, and the waiting between them.

use crate::depth::Depth;
use crate::foam::Foam;
use crate::job::{Reader, Surface};
use crate::kits::Purchase;
use crate::measure::{Inches, Minutes};
use crate::quantity::Quantity;
use serde::Serialize;

/// The lifts of one surface.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Lifts {
    /// How many.
    pub count: u32,
    /// Thickness of each.
    pub each_in: Inches,
    /// Wait after each before the next on the same spot.
    pub wait_min: Minutes,
    /// All the waits, if nothing else is sprayed meanwhile.
    pub waits_min: Minutes,
    /// Which of label, practice and table asked for the longest wait.
    pub wait_by: WaitBy,
}

/// What asked for the wait.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum WaitBy {
    /// The label.
    Label,
    /// The trade's quarter of an hour.
    Practice,
    /// The table of cooling by thickness.
    Table,
    /// Lifts over two inches: no time is given, the label governs.
    LabelOnly,
}

/// Lifts of the whole job.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SprayPlan {
    /// Lifts over all surfaces: the "passes" of the answer bar.
    pub lifts: u32,
    /// Nozzles to have at hand.
    pub nozzles: u32,
    /// Nozzles in the cartons bought, if every sheet says.
    pub nozzles_in_cartons: Option<u32>,
}

/// The lifts of a surface.
pub fn lifts(_surface: &Surface, _depth: &Depth, _foam: &Foam, _reader: &mut Reader) -> Option<Lifts> {
    None
}

/// The job's lifts and nozzles.
pub fn plan(lifts: &[Option<Lifts>], _quantity: &Quantity, _purchase: &Purchase) -> SprayPlan {
    SprayPlan {
        lifts: lifts.iter().flatten().map(|one| one.count).sum(),
        nozzles: 0,
        nozzles_in_cartons: None,
    }
}
