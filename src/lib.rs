//! Foamwright: from tape measure to areas, depth, board feet, kits, lifts and go/hold, for people who
//! insulate and seal buildings with disposable two-component spray-foam kits.
//!
//! The rooms, in the order in which the work is done:
//!
//! | room | what it does |
//! |---|---|
//! | [`measure`] | what a tape, thermometer or label says |
//! | [`job`] | what a person entered |
//! | [`findings`] | what the tool has to say about it |
//! | [`surfaces`] | shapes → gross, openings, framing, net, outline |
//! | [`foam`] | a foam's data sheet |
//! | [`depth`] | how thick: aim, least promised, most allowed |
//! | [`quantity`] | net area × depth → board feet |
//! | [`kits`] | usable yield, what to buy |
//! | [`spraying`] | lifts and waits, and the day sheet |
//! | [`readiness`] | go, hold or not read |
//! | [`working`] | how each figure was reached |
//!
//! One call does the whole job: [`estimate`].

pub mod depth;
pub mod findings;
pub mod foam;
pub mod job;
pub mod kits;
pub mod measure;
pub mod quantity;
pub mod readiness;
pub mod spraying;
pub mod surfaces;
pub mod working;

#[cfg(target_arch = "wasm32")]
mod browser;

use crate::depth::Depth;
use crate::findings::{Code, Finding};
use crate::foam::Foam;
use crate::job::{DepthWay, Job, Now, Part, Reader};
use crate::kits::Purchase;
use crate::measure::{Band, BoardFeet};
use crate::quantity::Quantity;
use crate::readiness::Readiness;
use crate::spraying::{Day, Lifts, SprayPlan};
use crate::surfaces::SurfaceArea;
use serde::Serialize;

/// Everything that follows from one surface.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SurfaceEstimate {
    /// The surface's id in the job.
    pub id: u32,
    /// The foam it gets: an id in the job's foams; 0 where the job holds no such sheet.
    pub foam: u32,
    /// Its areas.
    pub area: Option<SurfaceArea>,
    /// Its depths.
    pub depth: Option<Depth>,
    /// Net area × aim.
    pub in_place: Option<Band<BoardFeet>>,
    /// Its lifts.
    pub lifts: Option<Lifts>,
}

/// Everything that follows from a job, every intermediate figure included.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Estimate {
    /// The day on which to spray, in days since 1970-01-01.
    pub spray_day: Option<f64>,
    /// Each surface, in the job's order.
    pub surfaces: Vec<SurfaceEstimate>,
    /// The foam sheets as read, in the job's order.
    pub foams: Vec<Foam>,
    /// Board feet.
    pub quantity: Quantity,
    /// Kits.
    pub purchase: Purchase,
    /// Lifts and nozzles.
    pub spraying: SprayPlan,
    /// The day sheet: what is done, what is next, what waits.
    pub day: Day,
    /// Go, hold or not read.
    pub readiness: Readiness,
    /// What there is to say, in the order in which the work is done.
    pub findings: Vec<Finding>,
}

/// Works out a whole job as of an instant.
///
/// Never fails: what cannot be read or worked out is `None`, with a finding beside its field, and the rest
/// goes on.
pub fn estimate(job: &Job, now: Now) -> Estimate {
    let mut reader = Reader::new(job.units);
    let foams: Vec<Foam> = job.foams.iter().filter_map(|sheet| foam::sheet(sheet, &mut reader)).collect();
    let foam_of = |id: u32| foams.iter().find(|foam| foam.id == if id == 0 { job.foam } else { id });
    let spray_day = reader.take(Part::Job, 0, &job.entries, "spray_date").map(|taken| taken.value.likely);
    let allowances = quantity::allowances(job, &mut reader);
    let sizes = kits::sizes(job, foam_of(0), &mut reader);

    let mut surfaces = Vec::with_capacity(job.surfaces.len());
    for surface in &job.surfaces {
        let foam = foam_of(surface.foam);
        if foam.is_none() {
            reader.say(Finding::new(Code::NoSheet, Part::Surface, surface.id, "foam"));
        }
        let area = surfaces::measure(surface, &mut reader);
        let one_kit = match surface.depth_way {
            DepthWay::OneKit => sizes
                .iter()
                .find(|size| size.kit == surface.depth_kit)
                .map(|size| (size.usable, allowances.factor())),
            DepthWay::Typed | DepthWay::TargetR | DepthWay::LeftOver => None,
        };
        let around = depth::Around { job, surface, area: area.as_ref(), foam, one_kit };
        let depth = depth::choose(around, &mut reader);
        let in_place = area.as_ref().zip(depth.as_ref()).map(|(area, depth)| Band {
            low: area.net_ft2.low * depth.aim_in.low,
            likely: area.net_ft2.likely * depth.aim_in.likely,
            high: area.net_ft2.high * depth.aim_in.high,
        });
        let lifts = depth
            .as_ref()
            .zip(foam)
            .and_then(|(depth, foam)| spraying::lifts(surface, depth, foam, &mut reader));
        surfaces.push(SurfaceEstimate {
            id: surface.id,
            foam: foam.map_or(0, |foam| foam.id),
            area,
            depth,
            in_place,
            lifts,
        });
    }

    let in_place: Vec<_> = surfaces.iter().map(|one| one.in_place).collect();
    let quantity = quantity::board_feet(&in_place, allowances);
    let stock = kits::stock(job, foam_of(0), spray_day, now, &mut reader);
    let purchase = kits::purchase(job, sizes, stock, &quantity, &mut reader);
    let lifts: Vec<_> = surfaces.iter().map(|one| one.lifts).collect();
    let spraying = spraying::plan(&lifts, &quantity, &purchase);
    let mut used: Vec<&Foam> = Vec::new();
    for foam in surfaces.iter().filter_map(|one| foam_of(one.foam)).chain(foam_of(0)) {
        if !used.iter().any(|known| known.id == foam.id) {
            used.push(foam);
        }
    }
    let day = spraying::day(job, &surfaces, &used, &purchase, now, &mut reader);
    let readiness = readiness::check(job, &used, &purchase.stock, now, &mut reader);
    Estimate {
        spray_day,
        surfaces,
        foams: foams.clone(),
        quantity,
        purchase,
        spraying,
        day,
        readiness,
        findings: reader.findings,
    }
}
