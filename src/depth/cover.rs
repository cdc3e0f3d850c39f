//! What has to stand over the foam, and what it costs.

use super::{Around, Exposure};
use crate::job::Reader;
use crate::measure::{Cents, SquareFeet};
use serde::Serialize;

/// What the fire rules ask over foam in a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum CoverAsked {
    /// Nobody has said what the room is used for.
    NotSaid,
    /// A thermal barrier.
    Thermal,
    /// An ignition barrier is enough: an attic or crawlspace that is entered only to service something.
    Ignition,
    /// Nothing: the exception for a rim holds.
    Nothing,
}

/// The cover over the foam of a surface.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Cover {
    /// What is asked.
    pub asked: CoverAsked,
    /// The cover that was chosen, a word of the table of fields; empty where none was.
    pub chosen: &'static str,
    /// Whether it is one of those that are asked for; `None` where none was chosen.
    pub enough: Option<bool>,
    /// Its price for a square foot.
    pub price_ft2: Option<Cents>,
    /// The area that it covers: the whole outline less the openings.
    pub area_ft2: Option<SquareFeet>,
    /// What it costs.
    pub cost: Option<Cents>,
}

/// The cover of a surface.
pub(super) fn cover(_around: &Around<'_>, _exposure: Exposure, _reader: &mut Reader) -> Cover {
    Cover {
        asked: CoverAsked::NotSaid,
        chosen: "",
        enough: None,
        price_ft2: None,
        area_ft2: None,
        cost: None,
    }
}
