//! The people: who has to be out, how air is moved through the zone, and what goes into the van.
//!
//! Nothing here is a clearance. Air figures are an "air exchange estimate"; the label, the safety data sheet and the
//! law govern.

use crate::job::{Job, Reader};
use crate::kits::Purchase;
use crate::measure::{CubicFeetPerMinute, Minutes, Pounds};
use crate::spraying::{Day, SprayPlan};
use serde::Serialize;

/// Exhaust from the zone.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Exhaust {
    /// The zone's volume in cubic feet.
    pub zone_ft3: f64,
    /// Air changes an hour that are aimed at.
    pub changes: f64,
    /// The flow that gives them: volume × changes ÷ 60.
    pub wanted: CubicFeetPerMinute,
    /// The fan's flow, if it was typed.
    pub flow: Option<CubicFeetPerMinute>,
    /// The air changes that it gives.
    pub flow_changes: Option<f64>,
    /// The mixing factor K, at least 1.
    pub mixing: f64,
    /// The share that is to be left, in percent.
    pub left_pct: f64,
    /// Air exchange estimate: volume × K ÷ flow × ln(100 ÷ share left), once nothing gives off any more.
    pub purge_min: Option<Minutes>,
    /// The flow that holds 5 Pa across the leaks that were typed.
    pub holds_5_pa: Option<CubicFeetPerMinute>,
}

/// What goes into the van.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Load {
    /// Kits by size: id, how many, gross weight of one if it is known.
    pub kits: Vec<LoadKit>,
    /// All kits, where every gross weight is known.
    pub gross_lb: Option<Pounds>,
    /// What a vehicle may carry of such cylinders: from memory, "check the rules for transport".
    pub most_lb: Pounds,
    /// Whether it is over; never a stop.
    pub over: bool,
    /// Coveralls: people × entries.
    pub suits: Option<u32>,
    /// Pairs of gloves: people × entries, and a pair a person to spare.
    pub gloves: Option<u32>,
    /// Pairs of cartridges: people × days of spraying, unless the change schedule asks for more.
    pub cartridges: Option<u32>,
    /// Nozzles of the spray plan.
    pub nozzles: Option<u32>,
}

/// Kits of one size in the van.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct LoadKit {
    /// Its part in the job: an id in the kits or in the stock.
    pub kit: u32,
    /// Whether it comes from the stock.
    pub owned: bool,
    /// How many.
    pub count: u32,
    /// One of them with its carton, if it is known.
    pub gross_lb: Option<Pounds>,
}

/// The people of a job.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct People {
    /// Exhaust, where the zone's size is known.
    pub exhaust: Option<Exhaust>,
    /// The van.
    pub load: Load,
}

/// The people of a job.
pub fn people(
    _job: &Job,
    _purchase: &Purchase,
    _spraying: &SprayPlan,
    _day: &Day,
    _reader: &mut Reader,
) -> People {
    People {
        exhaust: None,
        load: Load {
            kits: Vec::new(),
            gross_lb: None,
            most_lb: Pounds(0.0),
            over: false,
            suits: None,
            gloves: None,
            cartridges: None,
            nozzles: None,
        },
    }
}
