//! Lifts of equal thickness between the least and the largest, the waiting between them, and the day on which
//! they are sprayed.

mod day;
#[cfg(test)]
mod tests;
mod wait;

use crate::depth::aim_field;
use crate::findings::{Code, Finding};
use crate::foam::Foam;
use crate::job::{Part, Reader, Surface};
use crate::kits::Purchase;
use crate::measure::{BoardFeet, Inches, Kind, Minutes};
use crate::quantity::Quantity;
use serde::Serialize;

pub use day::{BLEED_MIN, Day, DayStep, IDLE_MS, KitRun, Phase, ReentryHeld, STALE_MS, StepState, day};
pub use wait::table_min;

/// Depths are counted in lifts with this tolerance: 3.00 in of 1 in lifts is three, never four, and so is a
/// probe's own error more. Common practice, no source.
pub const LIFT_TOLERANCE_IN: f64 = 1.0 / 32.0;

/// Above this a single lift is a fire matter and no waiting time is given: trade and fire officials' warnings.
pub const THICK_LIFT_IN: f64 = 2.0;

/// Foam that one nozzle sprays: 30 to 50 board feet in the trade. Common practice, no source.
pub const FEET_PER_NOZZLE: f64 = 40.0;

/// What binary fractions may lose: far below what a probe can tell.
const NOISE: f64 = 1e-9;

/// The lifts of one surface.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Lifts {
    /// How many.
    pub count: u32,
    /// The depth that is sprayed in them: what is added at the deepest spot.
    pub of_in: Inches,
    /// What is added at the deepest spot of the ground's plane, its pockets left out.
    pub plane_in: Inches,
    /// Thickness of each.
    pub each_in: Inches,
    /// The thickest that the label allows.
    pub largest_in: Inches,
    /// Wait after each before the next on the same spot; `None` over two inches where the label says nothing:
    /// no time is given then.
    pub wait_min: Option<Minutes>,
    /// All the waits, if nothing else is sprayed meanwhile.
    pub waits_min: Option<Minutes>,
    /// Which of label, practice and table asked for the longest wait.
    pub wait_by: WaitBy,
    /// What the label asks for, if it does.
    pub label_min: Option<Minutes>,
}

/// What asked for the wait.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum WaitBy {
    /// The label.
    Label,
    /// The trade's quarter of an hour.
    Practice,
    /// The table of cooling by thickness.
    Table,
    /// Lifts over two inches: no time is given, the label governs.
    LabelOnly,
}

/// Lifts of the whole job.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SprayPlan {
    /// Lifts over all surfaces: the "passes" of the answer bar.
    pub lifts: u32,
    /// All that is sprayed, what goes on with the left-over foam included.
    pub feet_bdft: BoardFeet,
    /// Kits to be sprayed from: those bought and those from the shelf that count.
    pub kits: u32,
    /// Nozzles to have at hand.
    pub nozzles: u32,
    /// Nozzles in the cartons bought and with the kits from the shelf, if every sheet says.
    pub nozzles_in_cartons: Option<u32>,
}

/// The lifts for a depth that is added; `None` where that is nothing. The deepest spot of a surface rules
/// it: what is added at the deepest spot of its plane, and the deepest pocket under that.
///
/// In words: count = (depth − 1/32 in) ÷ largest lift, rounded up; each = depth ÷ count; wait = the longest of the
/// label's, 15 minutes and the [table](table_min). The least lift is checked, not enforced.
pub fn lifts(
    surface: &Surface,
    plane: Inches,
    pocket: Inches,
    foam: &Foam,
    reader: &mut Reader,
) -> Option<Lifts> {
    let largest = foam.largest_lift_in.0;
    let added = plane + pocket;
    if !(added.0 > 0.0 && largest > 0.0) {
        return None;
    }
    let count_of = |depth: f64| {
        libm::ceil((depth - LIFT_TOLERANCE_IN) / largest - NOISE).clamp(1.0, f64::from(u32::MAX))
    };
    let count = count_of(added.0);
    let each = added.0 / count;
    let found = |code| Finding::new(code, Part::Surface, surface.id, aim_field(surface.depth_way));
    if count > 1.0 && each < foam.least_lift_in.0 - NOISE {
        let finding = found(Code::LiftsCross)
            .with("count", (count as u32).to_string())
            .with("given", reader.figure(Kind::Length, each))
            .with("least", reader.figure(Kind::Length, foam.least_lift_in.0));
        reader.say(finding);
    }
    let open = count_of(plane.0);
    if open < count {
        let finding = Finding::new(Code::PocketsRuleLifts, Part::Surface, surface.id, "pockets")
            .with("given", reader.figure(Kind::Length, added.0))
            .with("count", (count as u32).to_string())
            .with("open", (open as u32).to_string());
        reader.say(finding);
    }
    let thick = each > THICK_LIFT_IN + NOISE;
    if thick {
        let given = reader.figure(Kind::Length, each);
        reader.say(found(Code::ThickLift).with("given", given));
    }
    let (wait_min, wait_by) = if thick {
        (foam.wait_min, WaitBy::LabelOnly)
    } else {
        let (wait, by) = wait::longest(foam.wait_min, Inches(each), count as u32);
        (Some(wait), by)
    };
    Some(Lifts {
        count: count as u32,
        of_in: added,
        plane_in: plane,
        each_in: Inches(each),
        largest_in: foam.largest_lift_in,
        wait_min,
        waits_min: wait_min.map(|wait| Minutes(wait.0 * (count - 1.0))),
        wait_by,
        label_min: foam.wait_min,
    })
}

/// The job's lifts and nozzles.
///
/// In words: nozzles = board feet to spray ÷ 40, rounded up, and one for the stop after each lift and one for
/// each kit; nothing to spray needs none. Common practice, no source.
pub fn plan(lifts: &[Option<Lifts>], quantity: &Quantity, purchase: &Purchase) -> SprayPlan {
    let lifts = lifts.iter().flatten().fold(0, |sum: u32, one| sum.saturating_add(one.count));
    let kits = purchase.buy.as_ref().map_or(0, |buy| buy.kits).saturating_add(purchase.stock_kits);
    let feet_bdft = quantity.all_sprayed();
    let feet = feet_bdft.0;
    let nozzles = if feet > 0.0 {
        (libm::ceil(feet / FEET_PER_NOZZLE - NOISE) as u32).saturating_add(lifts).saturating_add(kits)
    } else {
        0
    };
    let nozzles_in_cartons = purchase.buy.as_ref().and_then(|_| {
        purchase
            .lines
            .iter()
            .try_fold(purchase.stock_nozzles?, |sum: u32, line| Some(sum.saturating_add(line.nozzles?)))
    });
    SprayPlan { lifts, feet_bdft, kits, nozzles, nozzles_in_cartons }
}
