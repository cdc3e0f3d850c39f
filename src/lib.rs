//! Foamwright: from tape measure to areas, depth, board feet, kits, lifts and go/hold, for people who
//! insulate and seal buildings with disposable two-component spray-foam kits.
//!
//! The rooms, in the order in which the work is done:
//!
//! | room | what it does |
//! |---|---|
//! | [`measure`] | what a tape, thermometer or label says |
//! | [`job`] | what a person entered |
//! | [`before`] | what has to be settled before foam |
//! | [`findings`] | what the tool has to say about it |
//! | [`surfaces`] | shapes → gross, openings, framing, net, outline |
//! | [`foam`] | a foam's data sheet |
//! | [`climate`] | place → climate zone; the code tables with their editions |
//! | [`assembly`] | what a surface is built of: effective R and U of the whole |
//! | [`depth`] | how thick: aim, least promised, most allowed |
//! | [`quantity`] | net area × depth → board feet |
//! | [`kits`] | usable yield, what to buy |
//! | [`spraying`] | lifts and waits, and the day sheet |
//! | [`conditioning`] | kits brought to temperature in time, and how long they stay so |
//! | [`weather`] | a day's course, the sun, the hours inside the window |
//! | [`readiness`] | go, hold or not read |
//! | [`moisture`] | what gives off water, and the dew point that comes of it |
//! | [`people`] | who is out, air through the zone, the van |
//! | [`calendar`] | every date of the job |
//! | [`working`] | how each figure was reached |
//! | `practice` | exercises, their worked answers, marking |
//!
//! One call does the whole job: [`estimate`].

pub mod assembly;
pub mod before;
pub mod calendar;
pub mod climate;
pub mod conditioning;
pub mod depth;
pub mod findings;
pub mod foam;
pub mod job;
pub mod kits;
pub mod measure;
pub mod moisture;
mod one_surface;
pub mod people;
#[cfg(any(not(target_arch = "wasm32"), feature = "practice"))]
pub mod practice;
pub mod quantity;
pub mod readiness;
pub mod spraying;
pub mod surfaces;
pub mod weather;
pub mod working;

#[cfg(target_arch = "wasm32")]
mod browser;

use crate::before::Before;
use crate::calendar::Dated;
use crate::climate::Place;
use crate::conditioning::Conditioning;
use crate::findings::Finding;
use crate::foam::Foam;
use crate::job::{DepthWay, Job, Now, Part, Reader, Surface};
use crate::kits::Purchase;
use crate::measure::Cents;
use crate::moisture::Moisture;
use crate::one_surface::Begun;
use crate::people::People;
use crate::quantity::Quantity;
use crate::readiness::{Readiness, Rounds};
use crate::spraying::{Day, SprayPlan};
use crate::weather::Weather;
use serde::Serialize;

pub use one_surface::SurfaceEstimate;

/// Everything that follows from a job, every intermediate figure included.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Estimate {
    /// The day on which to spray, in days since 1970-01-01.
    pub spray_day: Option<f64>,
    /// Where the job stands, and by which book.
    pub place: Place,
    /// What has to be settled before foam: stops, preparations, sentences, and what nobody has looked at.
    pub before: Before,
    /// Each surface, in the job's order.
    pub surfaces: Vec<SurfaceEstimate>,
    /// The foam sheets as read, in the job's order.
    pub foams: Vec<Foam>,
    /// Board feet.
    pub quantity: Quantity,
    /// Kits.
    pub purchase: Purchase,
    /// What the covers over foam cost, as far as they have a price.
    pub cover_cost: Option<Cents>,
    /// Lifts and nozzles.
    pub spraying: SprayPlan,
    /// The day sheet: what is done, what is next, what waits.
    pub day: Day,
    /// Kits that are brought to temperature.
    pub conditioning: Vec<Conditioning>,
    /// The forecast.
    pub weather: Weather,
    /// Go, hold or not read.
    pub readiness: Readiness,
    /// Earlier rounds of readings; they count for nothing.
    pub rounds: Rounds,
    /// Where the moisture of the air comes from.
    pub moisture: Moisture,
    /// Air through the zone, and the van.
    pub people: People,
    /// Every date.
    pub calendar: Vec<Dated>,
    /// What there is to say, in the order in which the work is done.
    pub findings: Vec<Finding>,
}

/// Works out a whole job as of an instant.
///
/// Never fails: what cannot be read or worked out is `None`, with a finding beside its field, and the rest
/// goes on.
pub fn estimate(job: &Job, now: Now) -> Estimate {
    let mut reader = Reader::new(job.units);
    let place = climate::place(job, &mut reader);
    let before = before::walkthrough(job, &mut reader);
    let foams: Vec<Foam> = job.foams.iter().filter_map(|sheet| foam::sheet(sheet, &mut reader)).collect();
    let foam_of = |id: u32| foams.iter().find(|foam| foam.id == if id == 0 { job.foam } else { id });
    let spray_day = reader.take(Part::Job, 0, &job.entries, "spray_date").map(|taken| taken.value.likely);
    let allowances = quantity::allowances(job, &mut reader);
    let sizes = kits::sizes(job, foam_of(0), &mut reader);

    let one_kit = |surface: &Surface| {
        let size = sizes.iter().find(|size| size.kit == surface.depth_kit);
        size.filter(|_| surface.depth_way == DepthWay::OneKit).map(|size| (size.usable, allowances.factor()))
    };
    // What the surfaces that get whatever is left need is known last, and raises no purchase.
    // The largest kit that may be bought: how far it reaches stands on the ruler.
    let largest = kits::largest(&sizes).map(|size| (size.kit, size.usable, allowances.factor()));
    let mut surfaces = Vec::with_capacity(job.surfaces.len());
    let mut waiting = Vec::new();
    for (at, surface) in job.surfaces.iter().enumerate() {
        let begun = Begun::new(job, &place, surface, foam_of(surface.foam), &mut reader);
        match surface.depth_way {
            DepthWay::LeftOver => waiting.push((at, begun)),
            _ => surfaces.push(begun.finish(one_kit(surface), None, largest, &mut reader)),
        }
    }
    let in_place: Vec<_> = surfaces.iter().map(|one| one.in_place).collect();
    let mut quantity = quantity::board_feet(&in_place, allowances);
    let stock = kits::stock(job, foam_of(0), spray_day, now, &mut reader);
    let purchase = kits::purchase(job, sizes, stock, &quantity, &mut reader);
    let left = one_surface::left(&waiting, &purchase, &quantity);
    for (at, begun) in waiting {
        surfaces.insert(at, begun.finish(None, left, largest, &mut reader));
    }
    quantity.with_left_over(&surfaces);
    let lifts: Vec<_> = surfaces.iter().map(|one| one.lifts).collect();
    let spraying = spraying::plan(&lifts, &quantity, &purchase);
    let mut used: Vec<&Foam> = Vec::new();
    for foam in surfaces.iter().filter_map(|one| foam_of(one.foam)).chain(foam_of(0)) {
        if !used.iter().any(|known| known.id == foam.id) {
            used.push(foam);
        }
    }
    let day = spraying::day(job, &surfaces, &used, &purchase, now, &mut reader);
    let conditioning = conditioning::groups(job, &used, now, &mut reader);
    let weather = weather::ahead(job, &used, now, &mut reader);
    let readiness = readiness::check(job, &used, &purchase.stock, &conditioning, now, &mut reader);
    let moisture = moisture::moisture(job, &readiness, &mut reader);
    let people = people::people(job, &purchase, &spraying, moisture.room_ft3, &mut reader);
    let calendar = calendar::calendar(job, &conditioning, &purchase.stock, &day, now, &mut reader);
    let covers = surfaces.iter().filter_map(|one| one.depth.as_ref()?.cover.cost);
    let cover_cost = depth::covers(covers);
    Estimate {
        spray_day,
        place,
        before,
        surfaces,
        foams: foams.clone(),
        quantity,
        purchase,
        cover_cost,
        spraying,
        day,
        conditioning,
        weather,
        readiness,
        rounds: readiness::rounds(job),
        moisture,
        people,
        calendar,
        findings: reader.findings,
    }
}
