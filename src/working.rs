//! How each figure was reached: a constant table of steps for each room. The page fills it from the
//! [`Estimate`](crate::Estimate); nothing of it is computed twice.
//!
//! # Paths
//!
//! A [path](Step::result) starts at the thing its [`Scope`] names and goes down by names joined with dots:
//!
//! * on an object, a name is its member (`area.gross_ft2`);
//! * on a list whose things have a `field`, a name picks the thing with that field and takes its value
//!   (`area.measures.length`);
//! * on any other list, a name is taken of each of its things, and blanks are left out
//!   (`surfaces.in_place` is the foam in place of every surface that has any).
//!
//! What a path ends at is a number, a word, or a [`Band`](crate::measure::Band) of low, likely and high: then
//! the step holds in each of the three columns by itself.
//!
//! # Which steps stand
//!
//! A step stands for a thing where its [`When`] holds, its result is there (a list that holds nothing of that
//! name is none) and no list among its inputs is empty (a surface without openings takes none out); its inputs
//! are there then.
//! `recompute` (a test) resolves every step on every job of `tests/jobs/`, works its result out again from
//! nothing but its inputs, and fails for a step without a formula of its own, for one that never stands and
//! for one whose words are missing.
//!
//! # Units
//!
//! The result has the step's [`unit`](Step::unit). An input that is the result of another step has that one's
//! unit; a measure has its field's; any other says it at the end of its name (`_ft2`, `_in`, `_length` in inches, `_pct`).
//!
//! # Adding a step
//!
//! One row in the table of its room (`working/<room>.rs`), its formula in `working/recompute.rs`, and its words
//! (`what`, `formula`, `why`) in `www/words/*/working.json`, where a placeholder is the last name of an
//! input's path.

mod assembly;
mod conditioning;
mod depth;
mod kits;
mod moisture;
mod people;
mod quantity;
mod readiness;
#[cfg(test)]
mod recompute;
mod spraying;
mod surfaces;
mod weather;

use serde::Serialize;

/// What a step's paths start from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Scope {
    /// One of `estimate.surfaces`.
    Surface,
    /// One of the `area.openings` of one of `estimate.surfaces`.
    Opening,
    /// The estimate itself.
    Job,
    /// One of `estimate.purchase.sizes`.
    Kit,
    /// One of `estimate.day.runs`.
    Run,
    /// One of `estimate.purchase.stock`.
    Stock,
    /// One of `estimate.readiness.checks`.
    Check,
    /// One of `estimate.weather.days`.
    Forecast,
    /// One of `estimate.conditioning`.
    Warming,
}

/// Where a step stands: the word at a path is one of these.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct When {
    /// A path from the step's scope.
    pub at: &'static str,
    /// The words that may stand there.
    pub is: &'static [&'static str],
}

/// One step of the working.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Step {
    /// The key of its words (what it is, the formula in words, and why).
    pub code: &'static str,
    /// What the paths start from.
    pub scope: Scope,
    /// Where the step stands; `None`: wherever its result is there.
    pub when: Option<When>,
    /// Where the result stands.
    pub result: &'static str,
    /// Where the inputs stand; `measures.length` means the measure of that field.
    pub inputs: &'static [&'static str],
    /// The unit of the result (`ft2`, `in`, `ft_in`, `bdft`, `f`, `f_step`, `usd`, `each`, `number`, `cfm`, `min`, `hr`, `clock`,
    /// `wall`, `btu`, `btuh`, `pct`, `mph`, `lb`, `r`, `u`).
    pub unit: &'static str,
    /// The key of its source.
    pub source: &'static str,
}

impl Step {
    const fn when(mut self, at: &'static str, is: &'static [&'static str]) -> Self {
        self.when = Some(When { at, is });
        self
    }
}

const fn step(
    code: &'static str,
    scope: Scope,
    result: &'static str,
    inputs: &'static [&'static str],
    unit: &'static str,
    source: &'static str,
) -> Step {
    Step { code, scope, when: None, result, inputs, unit, source }
}

const TAPE: &str = "your_tape";

/// The tables, in the order in which the work is done.
const TABLES: [&[Step]; 11] = [
    surfaces::STEPS,
    depth::STEPS,
    assembly::STEPS,
    quantity::STEPS,
    kits::STEPS,
    spraying::STEPS,
    conditioning::STEPS,
    readiness::STEPS,
    weather::STEPS,
    moisture::STEPS,
    people::STEPS,
];

/// Every step, in the order in which the work is done.
pub fn steps() -> impl Iterator<Item = &'static Step> {
    TABLES.into_iter().flatten()
}
