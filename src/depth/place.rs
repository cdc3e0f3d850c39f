//! What a surface is in its building, and what the rules ask of it in each climate zone.

use super::Rule;
use crate::climate::{Component, Zone};
use crate::job::{Job, Part, Reader, Shape, Surface};
use crate::measure::Inches;
use serde::Serialize;

/// What a surface is in the building: as said, or a rim by its shape.
pub(crate) fn component(surface: &Surface, reader: &mut Reader) -> Option<Component> {
    let said = reader.choice(Part::Surface, surface.id, &surface.entries, "component");
    let said = said.and_then(Component::named);
    said.or((surface.shape == Shape::RimRun).then_some(Component::Rim))
}

/// What the rules ask of a surface in one zone.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ZoneDepth {
    /// The zone.
    pub zone: Zone,
    /// What the R-value table prints there; empty where it has no row.
    pub printed: &'static str,
    /// The least depth.
    pub least_in: Option<Inches>,
    /// The rule that decides it.
    pub least_by: Option<Rule>,
    /// The most.
    pub most_in: Option<Inches>,
    /// The rule that decides it.
    pub most_by: Option<Rule>,
    /// Whether they cross.
    pub cross: bool,
}

/// What the rules ask of a surface in every zone, warmest first; empty where no surface has this id.
pub fn by_zone(_job: &Job, _surface: u32) -> Vec<ZoneDepth> {
    Vec::new()
}
