//! How thick, and why: the aim, the least promised and the most allowed of a surface.

mod choose;
mod code_marks;
mod cover;
#[cfg(test)]
mod cover_tests;
#[cfg(test)]
mod decide_tests;
mod fire;
mod fire_marks;
mod judge;
mod marks;
mod moisture_marks;
mod parts;
mod place;
mod reminders;
#[cfg(test)]
mod rim_tests;
mod short;
#[cfg(test)]
mod tests;
mod whole_target;

use crate::assembly::{Assembly, Build};
use crate::climate::{Component, Place};
use crate::foam::{Between, Foam};
use crate::job::{DepthWay, Job, Surface};
use crate::measure::{Band, BoardFeet, Inches, RValue, SquareFeet};
use crate::surfaces::SurfaceArea;
use serde::Serialize;

pub(crate) use choose::aim_field;
pub use choose::choose;
pub(crate) use cover::together as covers;
pub use cover::{Cover, CoverAsked};
pub use fire_marks::{FLAME, RIM_DENSITY_LEAST, RIM_DENSITY_MOST, RIM_FLAME, RIM_MOST_IN, SMOKE};
pub use marks::{Bound, DepthWindow, Mark, Rule, Stands, window};
pub use parts::{Existing, Patched, existing, patches};
pub(crate) use parts::{there_in, to_add};
pub(crate) use place::component;
pub use place::{ZoneDepth, by_zone};

/// The three depths of a surface. Board feet follow the aim; R and the paperwork follow the promise;
/// trimming follows the most allowed. None of the three is rounded.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Depth {
    /// How the aim was arrived at.
    pub way: DepthWay,
    /// Which formula gave the aim.
    pub aim_by: AimBy,
    /// What the crew aims at, foam that is there already included.
    pub aim_in: Band<Inches>,
    /// The low end of the aim, where a range was typed; else the aim.
    pub thinnest_aim_in: Inches,
    /// The high end of the aim, where a range was typed; else the aim.
    pub thickest_aim_in: Inches,
    /// The thinnest reading that will be found.
    pub promised_in: Inches,
    /// Where the promise comes from.
    pub promised_by: DepthBy,
    /// The thickest that may stay.
    pub most_in: Inches,
    /// Where the most comes from.
    pub most_by: DepthBy,
    /// How far under the aim the thinnest reading may be.
    pub under_in: Inches,
    /// How far over the aim the thickest may be.
    pub over_in: Inches,
    /// For a target R: the depth at which the sheet's R reaches it.
    pub needed_in: Option<Inches>,
    /// The listed thicknesses between which `needed_in` lies.
    pub needed_between: Option<Between>,
    /// For a target R: the target.
    pub target_r: Option<RValue>,
    /// For one kit: its usable board feet, less what the patches take.
    pub kit_usable: Option<BoardFeet>,
    /// For one kit: everything added to the foam in place, as a factor.
    pub kit_factor: Option<f64>,
    /// For one kit: the area over which it spreads, patches left out.
    pub kit_ft2: Option<SquareFeet>,
    /// For an amount of foam around something round or boxed: how much, over what.
    pub wrapped: Option<Wrapped>,
    /// For what is left over: how much, over what area.
    pub left: Option<Left>,
    /// Foam that is there already.
    pub existing: Option<Existing>,
    /// The depth of foam whose R is known: the aim, less old foam that is not of the sheet.
    pub planning_in: Inches,
    /// The listed thicknesses between which that lies, or past which: the planning R lies on the straight
    /// line through them.
    pub planning_between: Option<Between>,
    /// R at it, for planning only.
    pub planning_r: Option<RValue>,
    /// The R that may be promised: the sheet's at `promised_r_at_in`.
    pub promised_r: Option<RValue>,
    /// The listed thickness at or next below the promised depth.
    pub promised_r_at_in: Option<Inches>,
    /// The cavity's depth: typed, or from the members.
    pub cavity_in: Option<Inches>,
    /// The most that may stay exposed at this rim, where it is left exposed and the exception is available.
    pub exposed_most_in: Option<Inches>,
    /// What it is in the building; `None` while nobody has said.
    pub component: Option<Component>,
    /// What it is built of, with foam at the aim; `None` where that was not entered.
    pub assembly: Option<Assembly>,
    /// The cover that foam asks for here, and what it costs.
    pub cover: Cover,
    /// Every rule that bears on it.
    pub marks: Vec<Mark>,
    /// The depths that those leave open.
    pub window: DepthWindow,
    /// What was not said, so that rules could not be asked: fields of the job or of the surface.
    pub missing: Vec<&'static str>,
}

impl Depth {
    /// What is sprayed: the aim less the foam that is there.
    pub fn add_in(&self) -> Band<Inches> {
        self.existing.map_or(self.aim_in, |there| there.add_in)
    }

    /// Old foam whose R does not count: its thickest.
    pub fn old_in(&self) -> Inches {
        parts::of_another_kind(self.existing).map_or(Inches(0.0), |there| there.depth_in.high)
    }
}

/// What is left over for the surfaces that get whatever is left.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Left {
    /// Usable board feet that the purchase for all other surfaces leaves, less what patches take.
    pub feet_bdft: BoardFeet,
    /// The area of all surfaces that share it, each with its factor for uneven ground and the job's allowances; of
    /// what is wrapped, over the foam that is there.
    pub over_ft2: SquareFeet,
    /// What that area grows by with each inch that is added, counted half-way through it.
    pub growth_ft2_in: f64,
}

/// An amount of foam that is spread over an area which changes with its depth. In words: depth = what is there +
/// 2 × feet ÷ (begins + √(begins² + 4 × growth × feet)): the root of (begins + growth × added) × added = feet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Wrapped {
    /// Usable board feet.
    pub feet_bdft: BoardFeet,
    /// The area where it begins, with everything added to the foam in place.
    pub begins_ft2: SquareFeet,
    /// What that area grows by with each inch, counted half-way through it.
    pub growth_ft2_in: f64,
    /// Foam that is there already, on the mean.
    pub there_in: Inches,
}

impl Wrapped {
    /// What is added, in inches; not a number where the foam is more than there is room for.
    pub(crate) fn added(&self) -> f64 {
        let (feet, begins) = (self.feet_bdft.0, self.begins_ft2.0);
        2.0 * feet / (begins + (begins * begins + 4.0 * self.growth_ft2_in * feet).sqrt())
    }
}

/// Whether the foam stays exposed, and where.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Exposure {
    /// Whether it stays exposed; `None` where nobody has said.
    pub open: Option<bool>,
    /// Whether it is a sill plate, header or rim joist.
    pub rim: bool,
    /// What the room is used for here, a word of the table of fields; `None` where the job's own use holds.
    pub room: Option<&'static str>,
    /// The cover that was chosen, a word of the table of fields; empty where none was.
    pub cover: &'static str,
    /// Whether the two answers gainsay each other: the foam then counts as exposed.
    pub unclear: bool,
}

/// Which formula gave an aim.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum AimBy {
    /// It was typed.
    Typed,
    /// From a target R.
    Target,
    /// From a target R, over old foam that does not count for it.
    TargetOverOld,
    /// From the least depth that the rules ask for.
    Rules,
    /// From the mean depth that the rules ask for.
    RulesMean,
    /// From one kit.
    Kit,
    /// From one kit, over old foam.
    KitOverOld,
    /// From what is left.
    LeftOver,
    /// From what is left, over old foam.
    LeftOverOld,
    /// From one kit or from what is left, around something round or boxed.
    Wrapped,
}

/// Where a promise or a most comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum DepthBy {
    /// It was typed.
    Typed,
    /// From the aim and the tolerance.
    Aim,
    /// The depth that a target R needs.
    Target,
    /// The same over old foam that does not count for it.
    TargetOverOld,
    /// The least depth that the rules ask for.
    Rules,
    /// What may stay exposed.
    Exposed,
}

/// What the depth of one surface depends on.
#[derive(Debug, Clone, Copy)]
pub struct Around<'a> {
    /// The job, for its tolerances.
    pub job: &'a Job,
    /// Where the job stands, and by which book.
    pub place: &'a Place,
    /// The surface.
    pub surface: &'a Surface,
    /// What it is in the building; `None` while nobody has said.
    pub component: Option<Component>,
    /// What it is built of besides the foam; `None` where that was not entered.
    pub build: Option<&'a Build>,
    /// The largest kit that may be bought: its id, its usable board feet, and everything added to the foam in place, as a factor.
    pub largest: Option<(u32, BoardFeet, f64)>,
    /// Its areas.
    pub area: Option<&'a SurfaceArea>,
    /// Its foam.
    pub foam: Option<&'a Foam>,
    /// Foam that is there already.
    pub existing: Option<Existing>,
    /// The area that an amount of foam spreads over: net, patches left out.
    pub spread_ft2: Option<SquareFeet>,
    /// What each square foot of it grows by with an inch of depth.
    pub growth: f64,
    /// Usable board feet of one kit of the size it names, and everything added to the foam in place, as a factor.
    pub one_kit: Option<(BoardFeet, f64)>,
    /// What is left over, where the surface gets that.
    pub left: Option<Left>,
}
