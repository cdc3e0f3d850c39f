//! A foam's data sheet: R by tested thickness, density, temperature windows, lifts and waits.
//!
//! Every product rule is a default of the sheet and can be edited on the page: the label on the carton
//! governs. A blank is a blank and never counts as a pass.

use crate::job::{FoamSheet, Reader};
use crate::measure::{Fahrenheit, Inches, Minutes, PoundsPerCubicFoot, RValue};
use serde::Serialize;

/// A window of temperature, both ends belonging to it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Window {
    /// The least.
    pub least_f: Fahrenheit,
    /// The most.
    pub most_f: Fahrenheit,
    /// Whether either end is the tool's default, the sheet being silent.
    pub default: bool,
}

/// R at a thickness that was tested.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ListedR {
    /// The thickness.
    pub thickness_in: Inches,
    /// The R that the sheet lists for it.
    pub r: RValue,
}

/// A foam sheet as read.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Foam {
    /// The sheet's id in the job.
    pub id: u32,
    /// R by thickness, thinnest first.
    pub listed: Vec<ListedR>,
    /// Density in place, if the sheet says.
    pub density: Option<PoundsPerCubicFoot>,
    /// Chemical temperature window, both cylinders.
    pub cylinder: Window,
    /// Air temperature window.
    pub air: Window,
    /// Surface temperature window.
    pub surface: Window,
    /// The thickest lift.
    pub largest_lift_in: Inches,
    /// The thinnest lift.
    pub least_lift_in: Inches,
    /// Waiting time between lifts that the label asks for, if it does.
    pub wait_min: Option<Minutes>,
    /// Cure time that the label asks for, if it does.
    pub cure_min: Option<Minutes>,
}

/// Reads a foam sheet. What cannot be read leaves a finding and falls back to the default, or to a blank.
pub fn sheet(_sheet: &FoamSheet, _reader: &mut Reader) -> Option<Foam> {
    None
}

impl Foam {
    /// R at a depth for **planning**: straight between listed thicknesses, in proportion below the first
    /// and beyond the last. Never for a receipt. `None` where the sheet lists nothing.
    pub fn planning_r(&self, _depth: Inches) -> Option<RValue> {
        None
    }

    /// The R that may be promised at a depth: the listed thickness itself, or the next listed below.
    pub fn promised_r(&self, _depth: Inches) -> Option<ListedR> {
        None
    }

    /// The least depth at which the planning R reaches a target; `None` beyond the thickest listed.
    pub fn depth_for(&self, _target: RValue) -> Option<Inches> {
        None
    }
}
