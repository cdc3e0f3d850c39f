//! How thick, and why: the aim, the least promised and the most allowed of a surface.

use crate::foam::Foam;
use crate::job::{Job, Reader, Surface};
use crate::measure::{Band, BoardFeet, Inches, RValue};
use crate::surfaces::SurfaceArea;
use serde::Serialize;

/// The three depths of a surface. Board feet follow the aim; R and the paperwork follow the promise;
/// trimming follows the most allowed.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Depth {
    /// What the crew aims at.
    pub aim_in: Band<Inches>,
    /// The thinnest reading that will be found.
    pub promised_in: Inches,
    /// The thickest that may stay.
    pub most_in: Inches,
    /// For a target R: the depth at which the sheet's R reaches it.
    pub needed_in: Option<Inches>,
    /// For a target R: the target.
    pub target_r: Option<RValue>,
    /// R at the aim, for planning only.
    pub planning_r: Option<RValue>,
    /// The R that may be promised: the sheet's at `promised_r_at_in`.
    pub promised_r: Option<RValue>,
    /// The listed thickness at or next below the promised depth.
    pub promised_r_at_in: Option<Inches>,
    /// The cavity's depth: typed, or from the members.
    pub cavity_in: Option<Inches>,
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

/// The depths of a surface; `None` while something is missing, with the findings that say so.
pub fn choose(_around: Around<'_>, _reader: &mut Reader) -> Option<Depth> {
    None
}
