//! Unvented roofs (IRC R806.5): air-impermeable insulation under the deck, with other insulation below it.

use super::Zone;

/// What an unvented roof with two kinds of insulation asks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unvented {
    /// The least R of the air-impermeable insulation; zero under tile in zones 2B and 3B.
    pub least_r: f64,
    /// The same as a share of the whole R, against the ceiling for which the table was made.
    pub share: f64,
    /// Whether the foam has to be, or be covered by, a retarder of class II.
    pub class_two: bool,
}

/// The row of a zone.
pub fn unvented(_zone: Zone, _tile: bool) -> Unvented {
    Unvented { least_r: 0.0, share: 0.0, class_two: false }
}
