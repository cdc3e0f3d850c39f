//! Degree-days → climate zone, by the thresholds of either edition.

use super::Zone;
use crate::job::{Job, Reader};
use serde::Serialize;

/// What typed degree-days say of the zone, by the thresholds of either map.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ByDegreeDays {
    /// By the thresholds up to 2018; `None` where they name a zone that the United States do not have.
    pub up_to_2018: Option<Zone>,
    /// By those of 2021.
    pub from_2021: Option<Zone>,
}

/// Classifies a job's typed degree-days; `None` while one of them or the moisture region is missing.
pub fn by_degree_days(_job: &Job, _reader: &mut Reader) -> Option<ByDegreeDays> {
    None
}
