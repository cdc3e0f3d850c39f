//! What a surface is built of, and how much heat the whole of it lets through.
//!
//! The layers from the outside in, the foam among them, the members between which it lies, and the films of air
//! on both faces. Two bounds are worked out: heat that stays in its path (parallel path, the figure for wood), and
//! heat that spreads freely in each plane (isothermal planes, the upper bound of U). Steel framing is refused:
//! neither holds for it.

mod build;
mod fit;
mod materials;
mod paths;
#[cfg(test)]
mod tests;

use crate::measure::{Inches, RValue};
use serde::Serialize;

pub use build::build;
pub use materials::{Material, SOFTWOOD_R_IN, material};

/// Where a layer lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Position {
    /// Outside of what the foam is sprayed on, that layer included.
    Outside,
    /// Between the members, in front of the foam.
    Cavity,
    /// On the room side of the members.
    Inside,
}

/// A layer as read.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct LayerR {
    /// Its id in the job.
    pub id: u32,
    /// Its material: a word of the table of fields.
    pub material: &'static str,
    /// Where it lies.
    pub position: Position,
    /// Its thickness, where it was typed or the material has one.
    pub thickness_in: Option<Inches>,
    /// Its R.
    pub r: RValue,
    /// Whether it counts as insulation to the code's R-value table.
    pub insulation: bool,
    /// Whether air passes through it, as through batts and loose fill.
    pub airy: bool,
}

/// What a surface is built of, its foam left out.
#[derive(Debug, Clone, PartialEq)]
pub struct Build {
    /// Its layers, from the outside in.
    pub layers: Vec<LayerR>,
    /// The film of air outside; an attic or a crawlspace counts as still air.
    pub outside_film: RValue,
    /// The film of air inside.
    pub inside_film: RValue,
    /// How much of the area members take, 0 to 1; `None` while that is not known.
    pub framing_share: Option<f64>,
    /// How deep the members are; `None` while that is not known: then as deep as the foam.
    pub member_in: Option<Inches>,
    /// Whether R of a film or of a layer is from memory: U of the whole then decides nothing.
    pub from_memory: bool,
    /// Whether the members are steel: no U-factor is worked out.
    pub steel: bool,
    /// Whether the foam runs unbroken across the members' edges or over a plain wall.
    pub across: bool,
    /// Whether the foam also covers the edges of the members that it lies between.
    pub over_edges: bool,
    /// The R that is wanted of the whole, framing and films included.
    pub whole_r: Option<RValue>,
    /// Whether it is sprayed on the layers of the room side, so that its bays open to the cold: onto a ceiling from
    /// the attic, under a floor from below.
    pub from_outside: bool,
}

/// The whole of it with foam at a depth. All R in °F·ft²·h/Btu.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Assembly {
    /// The layers, from the outside in.
    pub layers: Vec<LayerR>,
    /// R of the film of air outside.
    pub outside_film_r: RValue,
    /// R of the film of air inside.
    pub inside_film_r: RValue,
    /// The foam's depth, on the mean.
    pub foam_in: Inches,
    /// Its R at that depth, for planning.
    pub foam_r: RValue,
    /// R of the outer layers together, films left out.
    pub outside_r: RValue,
    /// R of what lies in front of the foam between the members.
    pub fill_r: RValue,
    /// R of the layers on the room side together.
    pub inside_r: RValue,
    /// `framed` where members take a share of it, else `plain`.
    pub by: &'static str,
    /// R of what every path goes through: films, layers outside and inside, foam over the members.
    pub both_r: RValue,
    /// R through the foam and everything before and behind it.
    pub foam_path_r: RValue,
    /// How deep a member counts; `None` without members.
    pub member_in: Option<Inches>,
    /// R of the foam that lies over the members too, part of the foam's.
    pub foam_over_r: RValue,
    /// R through a member and everything before and behind it; `None` without members.
    pub member_path_r: Option<RValue>,
    /// How much of the area members take, in percent.
    pub framing_pct: f64,
    /// U of the whole by parallel paths.
    pub u: f64,
    /// U of the whole by isothermal planes: its upper bound.
    pub u_isothermal: f64,
    /// 1 ÷ U.
    pub effective_r: RValue,
}

impl Build {
    /// R of the insulation in front of the foam between the members.
    pub fn fill_r(&self) -> RValue {
        let filled =
            self.layers.iter().filter(|layer| layer.position == Position::Cavity && layer.insulation);
        filled.map(|layer| layer.r).sum()
    }

    /// R of the insulation in front of the foam through which air passes.
    pub fn airy_r(&self) -> RValue {
        let airy = self.layers.iter().filter(|layer| layer.position != Position::Outside && layer.airy);
        airy.map(|layer| layer.r).sum()
    }

    /// R of the insulation that runs unbroken across the members, the foam left out.
    pub fn continuous_r(&self) -> RValue {
        let all = self.layers.iter().filter(|layer| layer.position != Position::Cavity && layer.insulation);
        all.map(|layer| layer.r).sum()
    }
}
