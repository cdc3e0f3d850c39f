//! What to buy: the usable yield of a kit, and the whole number of each size that is enough at the least cost.

use crate::foam::Foam;
use crate::job::{Job, KitCount, Reader};
use crate::measure::{Band, BoardFeet, Cents, Pounds};
use crate::quantity::Quantity;
use serde::Serialize;

/// One kit size as read from its sheet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct KitSize {
    /// The sheet's id in the job.
    pub kit: u32,
    /// Board feet on the label.
    pub label: BoardFeet,
    /// Label × factor.
    pub after_factor: BoardFeet,
    /// What stays in hoses, purge and test shot.
    pub fixed_loss: BoardFeet,
    /// Label × factor − fixed loss, never below zero.
    pub usable: BoardFeet,
    /// Price of one, if the sheet says.
    pub price: Option<Cents>,
    /// How many can be had, if there is a limit.
    pub limit: Option<u32>,
    /// Net weight of chemicals, both cylinders, if the sheet says.
    pub net_weight_lb: Option<Pounds>,
    /// Chemical that the label's board feet need: board feet × density ÷ 12.
    pub needs_lb: Option<Pounds>,
    /// Nozzles in the carton, if the sheet says.
    pub nozzles: Option<u32>,
}

/// A whole number of each size.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Mix {
    /// How many of each size; sizes with none are left out.
    pub buy: Vec<KitCount>,
    /// Kits in all.
    pub kits: u32,
    /// What they cost; `None` where a price is blank.
    pub cost: Option<Cents>,
    /// Board feet on the labels.
    pub label: BoardFeet,
    /// Usable board feet.
    pub usable: BoardFeet,
    /// Usable less what is needed; negative where it is not enough.
    pub left: BoardFeet,
    /// Whether it is enough.
    pub enough: bool,
    /// The yield factor in percent of label below which it stops being enough.
    pub break_factor_pct: f64,
}

/// Why a job is too big for disposable kits.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct TooBig {
    /// Board feet to spray.
    pub to_spray: BoardFeet,
    /// The board feet above which a spray rig is the better tool.
    pub limit: BoardFeet,
    /// Kits of the largest size that it would take.
    pub largest_kits: u32,
    /// The number of those from which a spray rig is the better tool.
    pub kits_limit: u32,
}

/// The purchase.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Purchase {
    /// The factor used, in percent of label.
    pub yield_factor_pct: f64,
    /// Every size on offer that has a yield.
    pub sizes: Vec<KitSize>,
    /// The least-cost mix that is enough; ties go to the one that leaves less over.
    pub least: Option<Mix>,
    /// The same at the low and the high end of what was measured, where a range was given.
    pub least_at_low: Option<Mix>,
    /// See `least_at_low`.
    pub least_at_high: Option<Mix>,
    /// Each size alone, as many as are enough, in the order of the sizes.
    pub alone: Vec<Mix>,
    /// The mix that counts: the person's choice, else the least-cost one.
    pub buy: Option<Mix>,
    /// Whether `buy` is the person's choice.
    pub chosen: bool,
    /// What the person's choice costs more than the least.
    pub dearer_by: Option<Cents>,
    /// Set where the job is too big for kits.
    pub too_big: Option<TooBig>,
}

/// The sizes on offer, read from the job's kit sheets (`foam` gives the density for the mass check).
pub fn sizes(_job: &Job, _foam: Option<&Foam>, _reader: &mut Reader) -> Vec<KitSize> {
    Vec::new()
}

/// What to buy for a quantity.
pub fn purchase(_job: &Job, sizes: Vec<KitSize>, _quantity: &Quantity, _reader: &mut Reader) -> Purchase {
    Purchase {
        yield_factor_pct: 86.0,
        sizes,
        least: None,
        least_at_low: None,
        least_at_high: None,
        alone: Vec::new(),
        buy: None,
        chosen: false,
        dearer_by: None,
        too_big: None,
    }
}

/// The least-cost whole number of each size whose usable yield reaches `need`; ties go to less left over,
/// then to fewer kits. `None` where the limits do not allow enough. Sizes without a price or with nothing usable are not on offer.
pub fn least_cost(_sizes: &[KitSize], _need: BoardFeet) -> Option<Vec<KitCount>> {
    None
}

/// A need with its range.
pub type Need = Band<BoardFeet>;
