//! The rules of fire: what may stay exposed, what has to stand over the rest, and what no foam may be.

use super::marks::NOISE;
use super::{Around, Bound, Exposure, Mark, Rule, Stands};
use crate::findings::Trust;
use crate::foam::Foam;
use crate::measure::{Band, Inches, PoundsPerCubicFoot};

/// The thickest that spray foam may be at a sill plate, header or rim joist without a thermal barrier, the
/// limit belonging to it. IRC 2018 R316.5.11, read: 3¼ in; its 83 mm is the code's own rounding.
pub const RIM_MOST_IN: f64 = 3.25;
/// The density that the same exception asks for at least, lb/ft³, the limit belonging to it. IRC 2018
/// R316.5.11, read. The 2006 edition (R314.5.11) began at 1.5, read second-hand.
pub const RIM_DENSITY_LEAST: f64 = 0.5;
/// The density that it allows at most, the limit belonging to it.
pub const RIM_DENSITY_MOST: f64 = 2.0;
/// The flame spread that it allows at most. IRC 2018 R316.5.11, read.
pub const RIM_FLAME: f64 = 25.0;
/// The smoke developed that it allows at most; the same figure holds for foam in general (R316.3). Read.
pub const SMOKE: f64 = 450.0;
/// The flame spread that foam in general may have at most, at its tested thickness. R316.3; read in the
/// building code's twin.
pub const FLAME: f64 = 75.0;

/// What a sheet shows, held against a limit.
pub(super) fn at_most(shown: Option<f64>, most: f64) -> Stands {
    match shown {
        None => Stands::Blank,
        Some(shown) if shown <= most + NOISE => Stands::Applies,
        Some(_) => Stands::Outside,
    }
}

fn dense(shown: Option<Band<PoundsPerCubicFoot>>) -> Stands {
    match shown {
        None => Stands::Blank,
        Some(shown) if shown.low.0 >= RIM_DENSITY_LEAST - NOISE => {
            at_most(Some(shown.high.0), RIM_DENSITY_MOST)
        }
        Some(_) => Stands::Outside,
    }
}

/// What the rim's exception asks of the sheet, field by field.
pub(super) fn rim_sheet(foam: &Foam) -> [(&'static str, Stands); 4] {
    [
        ("density", dense(foam.density_range)),
        ("flame", at_most(foam.flame, RIM_FLAME)),
        ("smoke", at_most(foam.smoke, SMOKE)),
        ("tested_thickness", at_most(foam.tested_in.map(|_| 0.0), 0.0)),
    ]
}

/// Gathers what is known of several fields: outside is worse than blank, blank worse than met.
pub(super) fn gathered(fields: &[(&'static str, Stands)]) -> (Stands, Vec<&'static str>) {
    let lacks = fields.iter().filter(|(_, stands)| *stands != Stands::Applies).map(|(field, _)| *field);
    let has = |wanted| fields.iter().any(|(_, stands)| *stands == wanted);
    let stands = match (has(Stands::Outside), has(Stands::Blank)) {
        (true, _) => Stands::Outside,
        (_, true) => Stands::Blank,
        _ => Stands::Applies,
    };
    (stands, lacks.collect())
}

/// The rules of fire as they bear on a surface. `thickest` is the thickest aim.
pub(super) fn fire_marks(around: &Around<'_>, exposure: Exposure, thickest: Inches) -> Vec<Mark> {
    let Some(foam) = around.foam else { return Vec::new() };
    let code =
        |mark: Mark, section, edition, (stands, lacks)| Mark { section, edition, stands, lacks, ..mark };
    let mut all = Vec::new();
    let (sheet, lacks) = gathered(&rim_sheet(foam));
    let tested = foam.tested_in.filter(|tested| tested.0 < thickest.0 - NOISE);
    let rim = match (exposure.open, exposure.rim) {
        (Some(false), _) => (Stands::Covered, Vec::new()),
        (None, _) => (Stands::NotSaid, Vec::new()),
        (Some(true), false) => (Stands::Elsewhere, Vec::new()),
        (Some(true), true) => (sheet, lacks),
    };
    // The exception holds for what the sheet shows and no further: beyond it the barrier is asked for.
    let excepted = rim.0 == Stands::Applies && thickest.0 <= RIM_MOST_IN + NOISE && tested.is_none();
    let barrier = match (exposure.open, excepted) {
        (Some(false), _) => Stands::Covered,
        (None, _) => Stands::NotSaid,
        (_, true) => Stands::Excepted,
        (_, false) => Stands::Applies,
    };
    if let (Stands::Applies, Some(_)) = (rim.0, foam.tested_in) {
        let at = Mark::new(Rule::TestedThickness, Bound::Most, foam.tested_in, Trust::YourSheet);
        all.push(code(at, "R316.5.11", "IRC 2018", (Stands::Applies, Vec::new())));
    }
    let at = Mark::new(Rule::RimExposed, Bound::Most, Some(Inches(RIM_MOST_IN)), Trust::Read);
    all.push(code(at, "R316.5.11", "IRC 2018", rim));
    let at = Mark::new(Rule::Barrier, Bound::Condition, None, Trust::Read);
    all.push(code(at, "R316.4", "IRC 2018", (barrier, Vec::new())));
    let burning = gathered(&[("flame", at_most(foam.flame, FLAME)), ("smoke", at_most(foam.smoke, SMOKE))]);
    let at = Mark::new(Rule::Burning, Bound::Condition, None, Trust::Read);
    all.push(code(at, "R316.3", "IRC 2018", burning));
    all
}
