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

/// A row of a table of least R: over members of 3½ in, over members of 5½ in.
fn least(row: (f64, f64), deep: bool, trust: Trust) -> Option<ClassThree> {
    let least_r = if deep { row.1 } else { row.0 };
    Some(ClassThree { least_r, trust })
}

/// The least R of continuous insulation, or by the foam variant of foam against the sheathing, with an interior
/// retarder of class III; `None` where the table asks none. `deep` is a member of 5½ in or more (2×6).
///
/// IRC 2021 Table R702.7(3), 2018 Table R702.7.1: marine 4 was read, 5 to 8 in public notes that were held against
/// the building code's twin. Up to 2018 zone 8 stands with 7; the higher figure of 2021 is taken.
pub fn class_three(zone: Zone, deep: bool) -> Option<ClassThree> {
    match zone.number() {
        4 if zone.is_marine_4() => least((2.5, 3.75), deep, Trust::Read),
        5 => least((5.0, 7.5), deep, Trust::Retold),
        6 => least((7.5, 11.25), deep, Trust::Retold),
        7 => least((10.0, 15.0), deep, Trust::Retold),
        8 => least((12.5, 20.0), deep, Trust::Retold),
        _ => None,
    }
}

/// Whether a class of retarder (1, 2 or 3) may stand on the room side in a zone, by the table of 2021; `None` where
/// it is not known. Class III counts as permitted also where [`class_three`] asks something for it.
///
/// IRC 2021 Table R702.7(2): zone 1 was read, the rest is from memory; of class I in zone 4 a public text says the
/// contrary.
pub fn inner_class(zone: Zone, class: u8) -> Option<(bool, Trust)> {
    let warm = zone.number() < 3;
    let mixed = matches!(zone.number(), 3 | 4) && !zone.is_marine_4();
    let permitted = match class {
        1 => !warm && !mixed,
        2 => !warm,
        3 => true,
        _ => return None,
    };
    Some((permitted, if zone.number() == 1 { Trust::Read } else { Trust::Memory }))
}
