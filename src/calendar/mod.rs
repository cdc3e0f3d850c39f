//! The dates of a job in one list: when the kits go into the warm room, the day of spraying, purges, last days, the
//! label's hours, papers due. The page shows it and writes it as a calendar file.

use crate::conditioning::Conditioning;
use crate::job::{Job, Now, Part, Reader};
use crate::kits::Stock;
use crate::measure::WallMinutes;
use crate::spraying::Day;
use serde::Serialize;

/// What a date is for: the key of its words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum DateOf {
    /// Kits go into the warm room, at the latest.
    WarmUp,
    /// Kits are ready, by the later of curve and label.
    Ready,
    /// Spraying begins.
    Spray,
    /// The label's hours before workers go back in are over. Never a clearance.
    ReentryWorkers,
    /// The label's hours before anybody goes back in are over. Never a clearance.
    Reentry,
    /// The label's cure time is over: heat is kept on until then.
    Cured,
    /// An opened kit is purged.
    Purge,
    /// An opened kit's last day.
    OpenedEnds,
    /// A sealed kit's date.
    ShelfLife,
    /// The certificate and the receipt are due.
    Certificate,
}

/// One date.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Dated {
    /// What it is for.
    pub of: DateOf,
    /// The part that it belongs to.
    pub part: Part,
    /// Its id there; 0 for the job.
    pub id: u32,
    /// The kit's or group's name, if it has one.
    pub name: String,
    /// When; for a whole day its midnight.
    pub at: WallMinutes,
    /// Whether the whole day is meant.
    pub all_day: bool,
    /// For what comes again: every so many days …
    pub every_days: Option<f64>,
    /// … up to and with this day.
    pub until: Option<WallMinutes>,
    /// Whether it lies behind us.
    pub past: bool,
}

/// Every date of a job, in order.
pub fn calendar(
    _job: &Job,
    _conditioning: &[Conditioning],
    _stock: &[Stock],
    _day: &Day,
    _now: Now,
    _reader: &mut Reader,
) -> Vec<Dated> {
    Vec::new()
}
