//! Unvented roofs (IRC R806.5): air-impermeable insulation under the deck, with other insulation below it.

use super::Zone;
use crate::findings::Trust;

/// What an unvented roof with two kinds of insulation asks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unvented {
    /// The least R of the air-impermeable insulation; zero under tile in zones 2B and 3B.
    pub least_r: f64,
    /// How far that is to be trusted.
    pub trust: Trust,
    /// The same as a share of the whole R, against the ceiling for which the table was made.
    pub share: f64,
    /// Whether the foam has to be, or be covered by, a retarder of class II.
    pub class_two: bool,
}

/// The row of a zone.
///
/// IRC 2012 to 2021 Table R806.5, alike in all of them: read whole in a public rule check, zone 1 in a national
/// laboratory's drawings too; the zero under tile is from memory. The share is worked out: the least R against R-38
/// in zones 1 to 3 and R-49 above, the ceilings of 2018. The table was not raised when ceilings went to R-60.
/// Class II in zones 5 to 8: read in extracts of the building code's twin.
pub fn unvented(zone: Zone, tile: bool) -> Unvented {
    let row = |least_r, share| Unvented { least_r, trust: Trust::Read, share, class_two: zone.number() >= 5 };
    match (zone.number(), zone.letter()) {
        (2 | 3, Some('b')) if tile => Unvented { trust: Trust::Memory, ..row(0.0, 0.0) },
        (..=3, _) => row(5.0, 0.13),
        (4, Some('c')) => row(10.0, 0.20),
        (4, _) => row(15.0, 0.31),
        (5, _) => row(20.0, 0.41),
        (6, _) => row(25.0, 0.51),
        (7, _) => row(30.0, 0.61),
        _ => row(35.0, 0.71),
    }
}
