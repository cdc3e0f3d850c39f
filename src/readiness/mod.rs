//! Go, hold or not read: three temperatures and the moisture of the air against the label's windows.
//!
//! What has to be there: both cylinders, the air, its humidity or dew point, and at least one surface. Any
//! number of surfaces may be named. Each reading carries its time and counts for a while; then it counts as
//! not read. Every reading that is listed counts, also a second one of the same thing: a new reading is
//! written over the old one. A listed reading that is blank is not read. Only humidity and dew point stand
//! in for each other: one of the two is enough.
//!
//! What may have to be there besides: the moisture of wood for every surface that is said to be wood, wind
//! where a label limits it, the answers about a surface's material, and that flames are out. Kits at hand are
//! held against their dates, and those that came into a warm room against the label's hours there. A forecast, a kit's
//! date and an estimate of a cold core can only take a GO away.
//!
//! A window is closed at both ends: 60 °F is inside 60 to 90 °F. A surface also has to be at least the
//! spread (5 °F, published coating practice) above the dew point of the air; below either it is outside.
//!
//! Nothing here softens a HOLD. A limit that was typed and cannot be understood, on the foam sheet or in
//! the job, gives no GO either.

mod ages;
mod dew;
mod limits;
pub mod moist_air;
mod own_kits;
mod questions;
mod readings;
mod rounds;
mod spots;
mod verdict;
mod warm_room;
mod weather;
mod windows;

pub use dew::Dew;
pub(crate) use limits::narrowest;
pub use rounds::{Blame, Moved, Point, Rounds, Series, rounds};

use crate::conditioning::Conditioning;
use crate::foam::Foam;
use crate::job::{Job, Now, Part, Reader, ReadingOf};
use crate::kits::Stock;
use crate::measure::{Fahrenheit, Minutes};
use limits::Limits;
use readings::Desk;
use serde::Serialize;
use verdict::Tally;

/// The verdict on spraying now.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Every reading is there, fresh and inside its limits.
    Go,
    /// At least one fresh reading is outside its limits.
    Hold,
    /// Nothing is outside, but something is missing or too old.
    NotRead,
}

/// What one reading says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum ReadState {
    /// Inside its limits.
    Inside,
    /// Inside by little.
    Close,
    /// Outside its limits.
    Outside,
    /// Too old, or without a time that can be right: counts as not read.
    Old,
    /// Not taken or not understood.
    NotRead,
}

/// One reading against its limits.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Check {
    /// The reading's id in the job; 0 where none has been entered.
    pub id: u32,
    /// What it was taken of.
    pub of: ReadingOf,
    /// The spot's name.
    pub name: String,
    /// Temperature; humidity and dew point readings have theirs in `Dew`. Where a range was read, the end
    /// nearer to its limit (or further outside): that one counts.
    pub value_f: Option<Fahrenheit>,
    /// Minutes since it was taken.
    pub age_min: Option<Minutes>,
    /// What it says.
    pub state: ReadState,
    /// The lower limit: the label's least or, for a surface, dew point + spread if that is higher.
    pub least_f: Option<Fahrenheit>,
    /// The upper limit.
    pub most_f: Option<Fahrenheit>,
    /// Degrees inside the nearer limit; negative: outside by so much.
    pub inside_by_f: Option<f64>,
    /// Whether the lower limit is the dew point's.
    pub least_is_dew: bool,
    /// Wood moisture in percent or wind in miles per hour; of a range its upper end.
    pub value: Option<f64>,
    /// The limit for it: wood has to be below, wind may be at it.
    pub most: Option<f64>,
    /// `most` − `value`; negative: over by so much.
    pub inside_by: Option<f64>,
}

/// Something whose time ends a GO.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Next {
    /// A reading or a kit at hand.
    pub part: Part,
    /// Its id in the job.
    pub id: u32,
    /// The last instant at which it counts, in ms since 1970 UTC.
    pub until_ms: f64,
}

/// The verdict and everything it rests on.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Readiness {
    /// Go, hold or not read.
    pub verdict: Verdict,
    /// For GO: the instant at which the first reading grows old, in ms since 1970 UTC.
    pub until_ms: Option<f64>,
    /// Position in the estimate's findings of the one to blame, for HOLD and NOT READ.
    pub blame: Option<u32>,
    /// Position in `checks` of the reading that is inside by the least.
    pub closest: Option<u32>,
    /// What has to be read again, the first to grow old first; kits at hand by their dates among them.
    pub next: Vec<Next>,
    /// Positions in `checks` of the temperatures inside their limits, the nearest to its limit first.
    pub nearest: Vec<u32>,
    /// Every reading, in the order cylinder A, cylinder B, air, humidity or dew point, surfaces, wood, wind,
    /// forecast, storage.
    pub checks: Vec<Check>,
    /// Moisture of the air, if it was read.
    pub dew: Option<Dew>,
}

/// The verdict at an instant, for the foams that the job uses (the narrowest window counts).
/// `reader.findings` may already hold findings of other rooms; `blame` is a position in that whole list.
///
/// HOLD: at least one fresh reading is outside its limits, or something is to be put right first; the one furthest
/// outside is to blame. Otherwise
/// NOT READ: something is missing, too old or not understood; the first in the order of work is to blame.
/// Otherwise GO, until the first reading grows old.
pub fn check(
    job: &Job,
    foams: &[&Foam],
    stock: &[Stock],
    conditioning: &[Conditioning],
    now: Now,
    reader: &mut Reader,
) -> Readiness {
    let mut tally = Tally::default();
    let limits = Limits::of(job, foams, reader, &mut tally);
    let mut desk = Desk { job, now, limits, reader, tally: &mut tally, checks: Vec::new() };

    desk.not_yet();
    desk.own_kits(stock);
    desk.warm_room(conditioning);
    let mut cylinders = desk.rows(&[ReadingOf::CylinderA], limits.cylinder_age_min);
    cylinders.extend(desk.rows(&[ReadingOf::CylinderB], limits.cylinder_age_min));
    for row in &cylinders {
        desk.count(row, limits.cylinder_age_min);
        desk.hold_against(row, limits.cylinder, None);
    }
    desk.cylinders_apart(&cylinders);

    let air = desk.rows(&[ReadingOf::Air], limits.site_age_min);
    for row in &air {
        desk.count(row, limits.site_age_min);
        desk.hold_against(row, limits.air, None);
    }
    let dew = desk.moisture(&air, &limits);

    let surfaces = desk.rows(&[ReadingOf::Surface], limits.site_age_min);
    let wood = desk.listed(ReadingOf::WoodMoisture, limits.wood_age_min);
    for row in &surfaces {
        desk.spot(row, &wood, dew.as_ref());
    }
    desk.wood(&wood);
    desk.wind();
    desk.night_low();
    desk.storage();
    desk.flames();

    let checks = desk.checks;
    let (verdict, until_ms, blame) = tally.verdict();
    let nearest = nearest(&checks);
    let closest = nearest.first().copied();
    Readiness { verdict, until_ms, blame, closest, next: tally.next().to_vec(), nearest, checks, dew }
}

/// The temperatures that are inside, the one by the least first; of two equal ones the first in the order of
/// work.
fn nearest(checks: &[Check]) -> Vec<u32> {
    let mut inside: Vec<(f64, u32)> = Vec::new();
    for (position, check) in checks.iter().enumerate() {
        let counts = matches!(check.state, ReadState::Inside | ReadState::Close);
        if let (Some(by), Ok(position)) = (check.inside_by_f.filter(|_| counts), u32::try_from(position)) {
            // Put in place one by one: the general sort would be a dozen times the code.
            let place = inside.partition_point(|one| one.0.total_cmp(&by).is_le());
            inside.insert(place, (by, position));
        }
    }
    inside.into_iter().map(|(_, position)| position).collect()
}
