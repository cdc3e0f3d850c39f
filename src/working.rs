//! How each figure was reached: one constant table of steps. The page fills it from the
//! [`Estimate`](crate::Estimate); nothing of it is computed twice.

use serde::Serialize;

/// What a step's paths start from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Scope {
    /// One of `estimate.surfaces`.
    Surface,
    /// The estimate itself.
    Job,
    /// One of `estimate.purchase.sizes`.
    Kit,
    /// One of `estimate.readiness.checks`.
    Check,
}

/// One step of the working.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Step {
    /// The key of its words (what it is, the formula in words, and why).
    pub code: &'static str,
    /// What the paths start from.
    pub scope: Scope,
    /// Where the result stands.
    pub result: &'static str,
    /// Where the inputs stand; `measures.length` means the measure of that field.
    pub inputs: &'static [&'static str],
    /// The unit of the result (`ft2`, `in`, `bdft`, `f`, `usd`, `each`, `min`, `pct`, `lb`, `r`).
    pub unit: &'static str,
    /// The key of its source.
    pub source: &'static str,
}

/// Every step, in the order in which the work is done.
pub fn steps() -> &'static [Step] {
    &[]
}
