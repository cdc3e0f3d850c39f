//! The rules that say how thick foam may be or must be, each with the place where it stands.
//!
//! A mark is one rule as it bears on one surface: the depth that it names, where it comes from, and whether
//! it applies here. [`window`] is the one function from marks to the depths that may be chosen. A mark from
//! memory, or one that does not apply, decides nothing. The inspector and local code govern all of them.

use super::choose::reach;
use super::code_marks::code_marks;
use super::fire_marks::fire_marks;
use super::moisture_marks::moisture_marks;
use super::place::Said;
use super::reminders::reminders;
use super::{Around, Exposure};
use crate::findings::Trust;
use crate::job::entry;
use crate::measure::Inches;
use serde::Serialize;

/// What binary fractions may lose: far below what a probe or a laboratory can tell.
pub(super) const NOISE: f64 = 1e-9;

/// Which rule a mark stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Rule {
    /// The depth that the user's target R needs.
    Target,
    /// Foam left exposed at a sill plate, header or rim joist.
    RimExposed,
    /// Foam left exposed is tested to this thickness and no further.
    TestedThickness,
    /// The depth of the cavity.
    Cavity,
    /// A thermal barrier over foam.
    Barrier,
    /// Flame spread and smoke of any foam.
    Burning,
    /// The effective R of the whole that the user wants, met at the mean depth.
    WholeTarget,
    /// The energy code's R-value row.
    CodeR,
    /// The energy code's U-factor row, met by the whole assembly at the mean depth.
    CodeU,
    /// A cavity that the work opens is filled.
    FillCavity,
    /// A floor whose cavity is filled, R-19 at least.
    FillFloor,
    /// A small ceiling without an attic: R-30.
    SmallCeiling,
    /// No least R for this kind of work.
    NoLeast,
    /// Foam under an unvented roof with other insulation below it: the table.
    UnventedTable,
    /// The same as a share of the whole R.
    UnventedShare,
    /// Foam against the sheathing with other insulation in front and painted board: it stays warm enough.
    ClassThree,
    /// The class of the retarder on the room side.
    InnerRetarder,
    /// Under a cold zone's unvented roof the foam is, or is covered by, a retarder of class II.
    FoamRetarder,
    /// An ignition barrier over foam where people come only to service something.
    Ignition,
    /// Foam that faces the weather is coated against sun and rain.
    Weather,
    /// What separates a garage from the house.
    Garage,
    /// The ground of an unvented crawlspace is covered.
    CrawlGround,
    /// An unvented crawlspace gets supply or exhaust air.
    CrawlAir,
    /// A room kept cold: its vapor moves inward.
    ColdRoom,
    /// How far one of the largest kit reaches on this surface.
    KitReach,
    /// The thinnest lift.
    LeastLift,
    /// The thickest lift.
    LargestLift,
}

/// What a rule bounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Bound {
    /// The depth from below.
    Least,
    /// The depth from above.
    Most,
    /// The mean depth from below.
    Mean,
    /// Each lift, not the depth.
    Lift,
    /// Nothing: it only says how far something reaches.
    Reach,
    /// No depth: it asks for something else.
    Condition,
}

/// Whether a mark applies here, and if not, why.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Stands {
    /// It applies.
    Applies,
    /// The foam is covered.
    Covered,
    /// Nobody has said yet whether the foam is covered.
    NotSaid,
    /// It is for sill plates, headers and rim joists only.
    Elsewhere,
    /// The foam sheet is silent on what it asks for: never a pass.
    Blank,
    /// The foam sheet shows a figure outside what it asks for.
    Outside,
    /// Another rule takes its place.
    Excepted,
    /// Another way to satisfy the code was chosen.
    NotChosen,
    /// It is not asked in this climate zone.
    NotInZone,
    /// It is not asked for this kind of work.
    NotThisWork,
    /// Nothing stands in front of the foam.
    NothingInFront,
    /// The retarder on the room side is another one.
    OtherRetarder,
    /// What stands or was measured here does not meet it.
    NotMet,
    /// No thickness that the foam sheet lists reaches it.
    BeyondSheet,
}

/// One rule as it bears on one surface.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Mark {
    /// The rule.
    pub rule: Rule,
    /// What it bounds.
    pub bound: Bound,
    /// The depth that it names, if it names one.
    pub at_in: Option<Inches>,
    /// What it asks, where that is not a depth: R, U, perms, or a share of the whole in percent.
    pub asks: Option<f64>,
    /// What the code's table prints there; empty where there is no such row.
    pub printed: &'static str,
    /// The section of the code; empty where no code is meant.
    pub section: &'static str,
    /// The edition in which it was read.
    pub edition: &'static str,
    /// How far it is to be trusted.
    pub trust: Trust,
    /// Whether it applies.
    pub stands: Stands,
    /// Fields of the foam sheet that are blank or outside what the rule asks for.
    pub lacks: Vec<&'static str>,
}

impl Mark {
    /// A mark that applies and names no section: the rest of it is put in with `..`.
    pub(super) fn new(rule: Rule, bound: Bound, at_in: Option<Inches>, trust: Trust) -> Self {
        Mark {
            rule,
            bound,
            at_in,
            asks: None,
            printed: "",
            section: "",
            edition: "",
            trust,
            stands: Stands::Applies,
            lacks: Vec::new(),
        }
    }
}

/// The depths that the marks leave open.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct DepthWindow {
    /// The largest of the leasts.
    pub least_in: Option<Inches>,
    /// Whose it is.
    pub least_by: Option<Rule>,
    /// The smallest of the mosts.
    pub most_in: Option<Inches>,
    /// Whose it is.
    pub most_by: Option<Rule>,
    /// How far the least is above the most, where they cross: no depth meets both.
    pub gap_in: Option<Inches>,
    /// The largest mean that is asked for.
    pub mean_in: Option<Inches>,
    /// Whose it is.
    pub mean_by: Option<Rule>,
}

/// Which rules decide.
///
/// In words: least = the largest least, most = the smallest most, over the marks that apply and are not from
/// memory; of two alike the first listed decides. They cross where least − most is above zero.
pub fn window(marks: &[Mark]) -> DepthWindow {
    let mut open = DepthWindow {
        least_in: None,
        least_by: None,
        most_in: None,
        most_by: None,
        gap_in: None,
        mean_in: None,
        mean_by: None,
    };
    for mark in marks.iter().filter(|one| one.stands == Stands::Applies && one.trust.decides()) {
        let Some(at) = mark.at_in else { continue };
        match mark.bound {
            Bound::Least if open.least_in.is_none_or(|known| at > known) => {
                (open.least_in, open.least_by) = (Some(at), Some(mark.rule));
            }
            Bound::Most if open.most_in.is_none_or(|known| at < known) => {
                (open.most_in, open.most_by) = (Some(at), Some(mark.rule));
            }
            Bound::Mean if open.mean_in.is_none_or(|known| at > known) => {
                (open.mean_in, open.mean_by) = (Some(at), Some(mark.rule));
            }
            _ => {}
        }
    }
    let gap = open.least_in.zip(open.most_in).map(|(least, most)| Inches(least.0 - most.0));
    open.gap_in = gap.filter(|gap| gap.0 > NOISE);
    open
}

/// The aim that the rules ask for, and whose it is; `None` where none asks for any depth.
///
/// In words: aim = the larger of least + under and the mean.
pub fn least_aim(open: DepthWindow, under: Inches) -> Option<(Inches, Rule)> {
    let over = |at: Option<Inches>| at.filter(|at| at.0 > NOISE);
    let least = over(open.least_in).map(|at| Inches(at.0 + under.0)).zip(open.least_by);
    let mean = over(open.mean_in).zip(open.mean_by);
    match (least, mean) {
        (Some(least), Some(mean)) if mean.0 > least.0 => Some(mean),
        (Some(least), _) => Some(least),
        (None, mean) => mean,
    }
}

/// What the user's target, the energy code and the rules against water ask of a surface: none of it hangs on the
/// aim. `needed` is the depth for the target.
pub(super) fn asked(
    around: &Around<'_>,
    said: &Said,
    needed: Option<Inches>,
    cavity: Option<Inches>,
) -> Vec<Mark> {
    let target = needed.map(|at| Mark::new(Rule::Target, Bound::Least, Some(at), Trust::YourTarget));
    let mut all: Vec<Mark> = target.into_iter().collect();
    all.extend(super::whole_target::whole_target(around));
    all.extend(code_marks(around, said, cavity));
    all.extend(moisture_marks(around, said, cavity));
    all
}

/// Every rule that bears on a surface. `asked` is what does not hang on the aim, `thickest` the thickest aim.
pub(super) fn marks(
    around: &Around<'_>,
    exposure: Exposure,
    asked: Vec<Mark>,
    cavity: Option<Inches>,
    thickest: Inches,
) -> Vec<Mark> {
    let mut all = asked;
    all.extend(fire_marks(around, exposure, thickest));
    all.extend(reminders(around));
    if let Some(cavity) = cavity {
        all.push(Mark::new(Rule::Cavity, Bound::Most, Some(cavity), Trust::YourTape));
    }
    if let Some(foam) = around.foam {
        let entries = around.job.foams.iter().find(|sheet| sheet.id == foam.id).map(|sheet| &sheet.entries);
        let trust = |field| match entries.and_then(|entries| entry(entries, field)) {
            Some(_) => Trust::YourSheet,
            None => Trust::Practice,
        };
        let (least, largest) = (foam.least_lift_in, foam.largest_lift_in);
        all.push(Mark::new(Rule::LeastLift, Bound::Lift, Some(least), trust("least_lift")));
        all.push(Mark::new(Rule::LargestLift, Bound::Lift, Some(largest), trust("largest_lift")));
    }
    if let Some(reach) = around.largest.and_then(|(_, usable, factor)| reach(around, usable, factor)) {
        all.push(Mark::new(Rule::KitReach, Bound::Reach, Some(reach), Trust::Derived));
    }
    all
}
