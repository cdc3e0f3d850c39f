//! How thick, and why: the aim, the least promised and the most allowed of a surface.

mod choose;
#[cfg(test)]
mod tests;

use crate::foam::{Between, Foam};
use crate::job::{DepthWay, Job, Surface};
use crate::measure::{Band, BoardFeet, Inches, RValue};
use crate::surfaces::SurfaceArea;
use serde::Serialize;

pub(crate) use choose::aim_field;
pub use choose::choose;

/// The three depths of a surface. Board feet follow the aim; R and the paperwork follow the promise;
/// trimming follows the most allowed. None of the three is rounded.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Depth {
    /// How the aim was arrived at.
    pub way: DepthWay,
    /// What the crew aims at.
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
    /// For one kit: its usable board feet.
    pub kit_usable: Option<BoardFeet>,
    /// For one kit: everything added to the foam in place, as a factor.
    pub kit_factor: Option<f64>,
    /// The listed thicknesses between which the aim lies, or past which: the planning R lies on the straight
    /// line through them.
    pub planning_between: Option<Between>,
    /// R at the aim, for planning only.
    pub planning_r: Option<RValue>,
    /// The R that may be promised: the sheet's at `promised_r_at_in`.
    pub promised_r: Option<RValue>,
    /// The listed thickness at or next below the promised depth.
    pub promised_r_at_in: Option<Inches>,
    /// The cavity's depth: typed, or from the members.
    pub cavity_in: Option<Inches>,
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
}

/// What the depth of one surface depends on.
#[derive(Debug, Clone, Copy)]
pub struct Around<'a> {
    /// The job, for its tolerances.
    pub job: &'a Job,
    /// The surface.
    pub surface: &'a Surface,
    /// Its areas.
    pub area: Option<&'a SurfaceArea>,
    /// Its foam.
    pub foam: Option<&'a Foam>,
    /// Usable board feet of one kit of the size it names, and the share added for over-depth and waste.
    pub one_kit: Option<(BoardFeet, f64)>,
}
