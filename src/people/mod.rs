//! The people: who has to be out, how air is moved through the zone, and what goes into the van.
//!
//! Nothing here is a clearance. Air figures are an "air exchange estimate"; the label, the safety data sheet and the
//! law govern.

#[cfg(test)]
mod tests;

use crate::findings::{Code, Finding};
use crate::job::{End, Job, KitSheet, Part, Reader};
use crate::kits::{Counts, Purchase};
use crate::measure::{CubicFeetPerMinute, Kind, Minutes, Pounds};
use crate::spraying::SprayPlan;
use serde::Serialize;

/// Cubic feet a minute through a square foot of leak at one inch of water, in the trade's form of the orifice equation,
/// from memory of the ventilation handbooks. A sharp-edged hole, 0.65 × √(2 × pressure ÷ 1.204 kg/m³), gives 2,603.
const ORIFICE_CFM: f64 = 2_610.0;
/// 5 Pa in inches of water of 39.2 °F, 249.0889 Pa each: NIST SP 811, appendix B. The draw that an enclosure is commonly
/// asked to hold; from memory.
const FIVE_PA_IN: f64 = 5.0 / 249.088_9;

/// What a vehicle may carry of such cylinders where the entry cannot be read: as the table of fields has it.
const MOST_LB: f64 = 440.0;

/// The entries: of a range the end that asks for more air, takes longer, or makes more to carry.
const ENTRIES: [(&str, End); 9] = [
    ("exhaust_flow", |band| band.low),
    ("exhaust_changes", |band| band.high),
    ("mixing", |band| band.high),
    ("purge_left", |band| band.low),
    ("leak_area", |band| band.high),
    // Read for its faults only; the page shows it as it was typed.
    ("mask_run", |band| band.high),
    ("crew", |band| band.high),
    ("zone_entries", |band| band.high),
    ("vehicle_most", |band| band.low),
];

/// Exhaust from the zone.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Exhaust {
    /// The zone's volume in cubic feet.
    pub zone_ft3: f64,
    /// Air changes an hour that are aimed at.
    pub changes: f64,
    /// The flow that gives them: volume × changes ÷ 60.
    pub wanted: CubicFeetPerMinute,
    /// The fan's flow, if it was typed.
    pub flow: Option<CubicFeetPerMinute>,
    /// The air changes that it gives.
    pub flow_changes: Option<f64>,
    /// The mixing factor K, at least 1.
    pub mixing: f64,
    /// The share that is to be left, in percent.
    pub left_pct: f64,
    /// Air exchange estimate: volume × K ÷ flow × ln(100 ÷ share left), once nothing gives off any more. Never a
    /// clearance: foam gives off for hours.
    pub purge_min: Option<Minutes>,
    /// The flow that holds 5 Pa across the leaks that were typed.
    pub holds_5_pa: Option<CubicFeetPerMinute>,
}

/// What goes into the van.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Load {
    /// Kits by size: those that are bought, then those of the stock that are used.
    pub kits: Vec<LoadKit>,
    /// All kits, where every gross weight is known.
    pub gross_lb: Option<Pounds>,
    /// What a vehicle may carry of such cylinders: from memory, "check the rules for transport".
    pub most_lb: Pounds,
    /// Whether what is known of their weight is over that; never a stop.
    pub over: bool,
    /// Coveralls for a day: people × entries. Common practice, no source.
    pub suits: Option<u32>,
    /// Pairs of gloves for a day: people × entries, and a pair a person to spare. Common practice, no source.
    pub gloves: Option<u32>,
    /// Pairs of cartridges: one a person and day of spraying, unless the change schedule asks for more.
    pub cartridges: Option<u32>,
    /// Nozzles of the spray plan.
    pub nozzles: Option<u32>,
}

/// Kits of one size in the van.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct LoadKit {
    /// Its part in the job: an id in the kits or in the stock.
    pub kit: u32,
    /// Whether it comes from the stock.
    pub owned: bool,
    /// How many.
    pub count: u32,
    /// One of them with its carton, if it is known.
    pub gross_lb: Option<Pounds>,
}

/// The people of a job.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct People {
    /// Exhaust, where the zone's size is known.
    pub exhaust: Option<Exhaust>,
    /// The van.
    pub load: Load,
}

/// The people of a job, in a zone of so many cubic feet.
pub fn people(
    job: &Job,
    purchase: &Purchase,
    spraying: &SprayPlan,
    zone_ft3: Option<f64>,
    reader: &mut Reader,
) -> People {
    let mut read = [None; 9];
    reader.of_job(&job.entries, &ENTRIES, &mut read);
    let [flow, changes, mixing, left_pct, leaks, _, crew, entries, most] = read;
    let flow = flow.filter(|flow| *flow > 0.0);
    cautions(job, reader);
    // In words: flow = volume × air changes ÷ 60; minutes = volume × K ÷ flow × ln(100 ÷ share left); flow that holds
    // 5 Pa = 2,610 × leak in ft² × √(5 Pa in inches of water). Source of the decay: CDC, Guidelines for Environmental
    // Infection Control in Health-Care Facilities (2003), table B.1 and its note.
    let exhaust = || {
        let (zone_ft3, changes, mixing, left_pct) = (zone_ft3?, changes?, mixing?, left_pct?);
        Some(Exhaust {
            zone_ft3,
            changes,
            wanted: CubicFeetPerMinute(zone_ft3 * changes / 60.0),
            flow: flow.map(CubicFeetPerMinute),
            flow_changes: flow.map(|flow| flow * 60.0 / zone_ft3),
            mixing,
            left_pct,
            purge_min: flow.map(|flow| Minutes(purge_min(zone_ft3, flow, mixing, left_pct))),
            holds_5_pa: leaks.map(|leaks| CubicFeetPerMinute(leak_cfm(leaks, FIVE_PA_IN))),
        })
    };
    let exhaust = exhaust();
    let mut load = carried(job, purchase, reader);
    load.most_lb = Pounds(most.unwrap_or(MOST_LB));
    let known = load
        .kits
        .iter()
        .fold(0.0, |sum, kit| sum + f64::from(kit.count) * kit.gross_lb.unwrap_or_default().0);
    let whole = !load.kits.is_empty() && load.kits.iter().all(|kit| kit.gross_lb.is_some());
    load.gross_lb = whole.then_some(Pounds(known));
    load.over = known > load.most_lb.0 + 1e-9;
    if load.over {
        let finding = Finding::new(Code::VehicleOver, Part::Job, 0, "vehicle_most")
            .with("given", reader.figure(Kind::Weight, known))
            .with("most", reader.figure(Kind::Weight, load.most_lb.0));
        reader.say(finding);
    }
    if let Some(crew) = crew {
        let a_day = crew * entries.unwrap_or_default();
        load.suits = entries.map(|_| a_day as u32);
        load.gloves = entries.map(|_| (a_day + crew) as u32);
        load.cartridges = Some(crew as u32);
    }
    load.nozzles = (spraying.lifts > 0).then_some(spraying.nozzles);
    People { exhaust, load }
}

/// Minutes until a share of what was in the air is left, once nothing gives off any more: volume × K ÷ flow × ln(100 ÷
/// share left in percent). An air exchange estimate.
///
/// ```
/// // CDC table B.1: 10 air changes an hour, 99 % removed: 28 minutes.
/// assert_eq!(foamwright::people::purge_min(1_200.0, 200.0, 1.0, 1.0).round(), 28.0);
/// ```
pub fn purge_min(zone_ft3: f64, flow_cfm: f64, mixing: f64, left_pct: f64) -> f64 {
    zone_ft3 * mixing / flow_cfm * libm::log(100.0 / left_pct)
}

/// What is in the air after so many minutes, where something goes on giving off: start × e^(−t) + gives × K ÷ flow ×
/// (1 − e^(−t)), with t = flow × minutes ÷ (K × volume). `start` in anything per cubic foot, `gives` in the same per
/// minute. [`purge_min`] is when it is down to a share with nothing giving off. How much foam gives off is not known
/// here, so no page says it of a room: it is the check that a source keeps a room from ever being purged.
pub fn left_in_air(start: f64, gives: f64, zone_ft3: f64, flow_cfm: f64, mixing: f64, minutes: f64) -> f64 {
    let through = flow_cfm / mixing;
    let fell = libm::exp(-through * minutes / zone_ft3);
    start * fell + gives / through * (1.0 - fell)
}

/// Cubic feet a minute through leaks of so many square feet under so many inches of water: 2,610 × area × √pressure.
pub fn leak_cfm(leak_ft2: f64, water_in: f64) -> f64 {
    ORIFICE_CFM * leak_ft2 * libm::sqrt(water_in)
}

/// What public guidance asks of the people around, beside the answer that it follows from.
fn cautions(job: &Job, reader: &mut Reader) {
    let mut said = |name: &str| reader.choice(Part::Job, 0, &job.entries, name);
    let told = [
        (Code::OccupantsIn, "occupants", said("occupants") == Some("in_house")),
        (Code::ExtraCare, "children", said("children") == Some("yes")),
        (Code::ExtraCare, "asthma", said("asthma") == Some("yes")),
        (Code::Sensitized, "sensitized", said("sensitized") == Some("yes")),
        (Code::NotIsolated, "isolated", said("isolated") == Some("no")),
        (Code::AirHandlerOn, "air_handler_off", said("air_handler_off") == Some("no")),
        (Code::FluePulled, "flue_near", matches!(said("flue_near"), Some("yes" | "not_known"))),
    ];
    for (code, field, holds) in told {
        if holds {
            reader.say(Finding::new(code, Part::Job, 0, field));
        }
    }
}

/// The kits that ride along.
fn carried(job: &Job, purchase: &Purchase, reader: &mut Reader) -> Load {
    let mut gross: Vec<(&KitSheet, f64)> = Vec::new();
    for sheet in &job.kits {
        if let Some(taken) = reader.take(Part::Kit, sheet.id, &sheet.entries, "gross_weight") {
            gross.push((sheet, taken.value.high));
        }
    }
    let mut kits = Vec::new();
    for line in purchase.lines.iter().filter(|line| line.count > 0) {
        let known = gross.iter().find(|known| known.0.id == line.kit);
        let gross_lb = known.map(|known| Pounds(known.1));
        kits.push(LoadKit { kit: line.kit, owned: false, count: line.count, gross_lb });
    }
    for stock in purchase.stock.iter().filter(|stock| stock.counts == Counts::Yes) {
        // A kit of the stock weighs what the same sheet of the catalogue says, and once opened no more than that.
        let own = job.stock.iter().find(|sheet| sheet.id == stock.kit).filter(|own| !own.sheet.is_empty());
        let known = own.and_then(|own| gross.iter().find(|known| known.0.sheet == own.sheet));
        let gross_lb = known.map(|known| Pounds(known.1));
        kits.push(LoadKit { kit: stock.kit, owned: true, count: 1, gross_lb });
    }
    Load {
        kits,
        gross_lb: None,
        most_lb: Pounds(MOST_LB),
        over: false,
        suits: None,
        gloves: None,
        cartridges: None,
        nozzles: None,
    }
}
