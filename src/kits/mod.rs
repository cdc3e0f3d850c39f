//! What to buy: the usable yield of a kit, and the whole number of each size that is enough at the least cost.

mod least;
mod mix;
mod price;
mod purchase;
mod sizes;
mod stock;
#[cfg(test)]
mod tests;

use crate::job::KitCount;
use crate::measure::{Band, BoardFeet, Cents, Pounds, PoundsPerCubicFoot};
use serde::Serialize;

pub use least::{Found, search};
pub use price::Price;
pub use purchase::purchase;
pub use sizes::{largest, sizes};
pub use stock::{Counts, ShareBy, Stock, StockState, stock};

/// One kit size as read from its sheet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct KitSize {
    /// The sheet's id in the job.
    pub kit: u32,
    /// Board feet on the label.
    pub label: BoardFeet,
    /// The yield factor, in percent of label.
    pub factor_pct: f64,
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
    /// Density of the job's foam, for the mass check.
    pub density_lb_ft3: Option<PoundsPerCubicFoot>,
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
    /// What stays in their hoses.
    pub fixed_loss: BoardFeet,
    /// Usable board feet.
    pub usable: BoardFeet,
    /// Usable and what counts from the shelf, less what is needed; negative where it is not enough.
    pub left: BoardFeet,
    /// Whether it is enough, with what counts from the shelf.
    pub enough: bool,
    /// The yield factor in percent of label below which it stops being enough, kits from the shelf included;
    /// 0 for no kits at all.
    pub break_factor_pct: f64,
}

/// One line of the purchase.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Line {
    /// An id in the job's kits.
    pub kit: u32,
    /// How many.
    pub count: u32,
    /// Board feet on their labels.
    pub label: BoardFeet,
    /// What stays in their hoses.
    pub fixed_loss: BoardFeet,
    /// Their usable board feet.
    pub usable: BoardFeet,
    /// What they cost, if the sheet says.
    pub cost: Option<Cents>,
    /// Nozzles in their cartons, if the sheet says.
    pub nozzles: Option<u32>,
}

/// Why a job is too big for disposable kits.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct TooBig {
    /// Board feet to spray.
    pub to_spray: BoardFeet,
    /// The board feet above which a spray rig is the better tool.
    pub limit: BoardFeet,
    /// Usable board feet of the largest size; 0 where there is none.
    pub largest_usable: BoardFeet,
    /// Kits of the largest size that it would take; 0 where there is none.
    pub largest_kits: u32,
    /// The number of those from which a spray rig is the better tool.
    pub kits_limit: u32,
}

/// Where the foam comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Supply {
    /// All of it is bought.
    Bought,
    /// Kits that are already there come first, the rest is bought.
    ShelfFirst,
}

/// The purchase.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Purchase {
    /// The factor used, in percent of label.
    pub yield_factor_pct: f64,
    /// Where the foam comes from: `shelf_first` where any kit is already there.
    pub supply: Supply,
    /// The kits that are already there, in the job's order.
    pub stock: Vec<Stock>,
    /// What counts of them.
    pub from_stock: BoardFeet,
    /// Board feet of label behind that: of an opened kit, label × least share × 70 %.
    pub stock_label: BoardFeet,
    /// Fixed losses of the sealed ones among them.
    pub stock_loss: BoardFeet,
    /// How many of them count.
    pub stock_kits: u32,
    /// Nozzles that are there with them, if all were counted.
    pub stock_nozzles: Option<u32>,
    /// What is still to be bought for: board feet to spray less what counts from the shelf, never below zero.
    pub to_buy: Band<BoardFeet>,
    /// Every size on offer that has a yield.
    pub sizes: Vec<KitSize>,
    /// The least-cost mix that is enough; ties go to the one that leaves less over.
    pub least: Option<Mix>,
    /// What it costs.
    pub least_cost: Option<Cents>,
    /// The same at the low and the high end of what was measured, where a range was given.
    pub least_at_low: Option<Mix>,
    /// See `least_at_low`.
    pub least_at_high: Option<Mix>,
    /// Each size alone, as many as are enough, in the order of the sizes.
    pub alone: Vec<Mix>,
    /// Other ways to reach it, cheapest first, five at most: each size alone, one kit more of a size than the
    /// least-cost mix has, fewer of the largest, the largest with one other size. All are enough, none with
    /// a kit to spare, and within the limits.
    pub others: Vec<Mix>,
    /// The mix that counts: the person's choice, else the least-cost one.
    pub buy: Option<Mix>,
    /// Its lines.
    pub lines: Vec<Line>,
    /// What is to be paid for it, with tax and delivery; `None` where that is not known.
    pub price: Option<Price>,
    /// Whether `buy` is the person's choice.
    pub chosen: bool,
    /// What the person's choice costs more than the least.
    pub dearer_by: Option<Cents>,
    /// Set where the job is too big for kits.
    pub too_big: Option<TooBig>,
}

/// The least-cost whole number of each size whose usable yield reaches `need`; ties go to less left over,
/// then to fewer kits. `None` where the limits do not allow enough, or where nothing is needed. Sizes without
/// a price or with nothing usable are not on offer.
///
/// In words: the counts that make Σ count × price least while Σ count × usable ≥ need, a shortfall of a
/// billionth of the largest kit not counting. The method and its limits: [`search`].
///
/// ```
/// use foamwright::job::KitCount;
/// use foamwright::kits::{KitSize, least_cost};
/// use foamwright::measure::{BoardFeet, Cents};
/// let size = |kit, label: f64, cents| KitSize {
///     kit,
///     label: BoardFeet(label),
///     factor_pct: 86.0,
///     after_factor: BoardFeet(label * 0.86),
///     fixed_loss: BoardFeet(5.0),
///     usable: BoardFeet(label * 0.86 - 5.0),
///     price: Some(Cents(cents)),
///     limit: None,
///     net_weight_lb: None,
///     density_lb_ft3: None,
///     needs_lb: None,
///     nozzles: None,
/// };
/// let sizes = [size(1, 40.0, 9_200), size(2, 160.0, 28_400), size(3, 480.0, 75_000)];
/// // 2 × 407.8 = 815.6 board feet.
/// let mix = least_cost(&sizes, BoardFeet(812.0));
/// assert_eq!(mix, Some(vec![KitCount { kit: 3, count: 2 }]));
/// ```
pub fn least_cost(sizes: &[KitSize], need: BoardFeet) -> Option<Vec<KitCount>> {
    search(sizes, need, purchase::MOST_STEPS).map(|found| found.buy)
}

/// A need with its range.
pub type Need = Band<BoardFeet>;
