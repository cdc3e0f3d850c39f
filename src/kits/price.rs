//! What is to be paid: the kits, the sales tax on them, and what comes after the tax.

use super::Mix;
use crate::job::{Job, Part, Reader, entry};
use crate::measure::Cents;
use serde::Serialize;

/// Parts of a percent in which the rate of the tax is held: a rate has four places at most.
const PARTS: i64 = 1_000_000;

/// The same in the whole.
const WHOLE: i64 = 100 * PARTS;

/// What is to be paid.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Price {
    /// What the kits cost.
    pub kits: Cents,
    /// The rate of the sales tax, in percent; 0 where none was entered.
    pub tax_pct: f64,
    /// The sales tax on the kits.
    pub tax: Cents,
    /// Delivery and other costs of the job; 0 where no kit is bought, since nothing is delivered then.
    pub delivery: Cents,
    /// All of it.
    pub total: Cents,
}

/// The price of the purchase that counts; of a range that was entered, its likely value. Mixes are still compared
/// by what their kits cost.
///
/// `None` where that is not known, and where tax or delivery were entered but cannot be read: a sum without them
/// would be too low. A blank adds nothing.
///
/// In words: kits + kits × rate, to the cent + delivery.
pub(super) fn price(job: &Job, buy: Option<&Mix>, reader: &mut Reader) -> Option<Price> {
    let mut added = |name| match entry(&job.entries, name) {
        Some(_) => reader.take(Part::Job, 0, &job.entries, name).map(|taken| taken.value.likely),
        None => Some(0.0),
    };
    let (rate, delivery) = (added("sales_tax"), added("delivery"));
    let (rate, delivery) = (libm::round(rate? * PARTS as f64) as i64, libm::round(delivery?) as i64);
    let buy = buy?;
    let kits = buy.cost?;
    let tax = tax(kits, rate);
    let delivery = Cents(if buy.kits > 0 { delivery } else { 0 });
    let total = Cents(kits.0.saturating_add(tax.0).saturating_add(delivery.0));
    Some(Price { kits, tax_pct: rate as f64 / PARTS as f64, tax, delivery, total })
}

/// The tax on a whole invoice at a rate in millionths of a percent, to the cent, half a cent counting as a cent. The
/// whole millions of dollars are taken by themselves, so that no product passes the bounds of an integer.
///
/// Source: Streamlined Sales and Use Tax Agreement, section 324: carried to the third decimal place, and up to the next
/// cent where that is greater than four; read as Rhode Island adopted it (General Laws § 44-18.1-25). A seller may
/// round each item by itself instead, and differ by cents.
pub(super) const fn tax(kits: Cents, rate: i64) -> Cents {
    let (millions, rest) = (kits.0 / WHOLE, kits.0 % WHOLE);
    Cents(millions * rate + (rest * rate + WHOLE / 2) / WHOLE)
}
