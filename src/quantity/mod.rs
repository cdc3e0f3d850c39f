//! Net area × depth → board feet, each allowance on its own line.

use crate::job::{Job, Reader};
use crate::measure::{Band, BoardFeet};
use serde::Serialize;

/// The shares that are added to the foam in place, in percent.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Allowances {
    /// What the crew sprays over the aim.
    pub over_depth_pct: f64,
    /// Any other waste; nothing unless it was switched on.
    pub other_waste_pct: f64,
}

impl Allowances {
    /// Everything added, as a factor on the foam in place: 1 + over-depth + other waste.
    pub fn factor(self) -> f64 {
        1.0 + (self.over_depth_pct + self.other_waste_pct) / 100.0
    }
}

/// Board feet of the whole job.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Quantity {
    /// The allowances used.
    pub allowances: Allowances,
    /// Net area × aim, over the surfaces that are complete.
    pub in_place: Band<BoardFeet>,
    /// The line for over-depth.
    pub over_depth: Band<BoardFeet>,
    /// The line for other waste.
    pub other_waste: Band<BoardFeet>,
    /// In place and both lines.
    pub to_spray: Band<BoardFeet>,
    /// The same, rounded up once: the figure on the sheet.
    pub to_spray_up: Band<BoardFeet>,
    /// Surfaces that are complete.
    pub surfaces: u32,
    /// Surfaces in the job.
    pub of: u32,
}

/// The allowances of a job.
pub fn allowances(_job: &Job, _reader: &mut Reader) -> Allowances {
    Allowances { over_depth_pct: 0.0, other_waste_pct: 0.0 }
}

/// Adds up the board feet in place of each surface (`None` for one that is not complete).
pub fn board_feet(in_place: &[Option<Band<BoardFeet>>], allowances: Allowances) -> Quantity {
    let nothing = Band::exactly(BoardFeet(0.0));
    Quantity {
        allowances,
        in_place: nothing,
        over_depth: nothing,
        other_waste: nothing,
        to_spray: nothing,
        to_spray_up: nothing,
        surfaces: 0,
        of: in_place.len() as u32,
    }
}
