//! Vapor retarders on the room side (IRC R702.7).

use super::Zone;
use crate::findings::Trust;

/// What stands outside of an interior retarder of class III.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassThree {
    /// The least R outside the cavity insulation.
    pub least_r: f64,
    /// How far the table's value is to be trusted.
    pub trust: Trust,
}

/// The least R of continuous insulation, or by the foam variant of foam against the sheathing, with an interior
/// retarder of class III; `None` where the table asks none. `deep` is a member of 5½ in or more (2×6).
pub fn class_three(_zone: Zone, _deep: bool) -> Option<ClassThree> {
    None
}

/// Whether a class of retarder (1, 2 or 3) may stand on the room side in a zone, by the table of 2021; `None` where
/// it is not known.
pub fn inner_class(_zone: Zone, _class: u8) -> Option<(bool, Trust)> {
    None
}
