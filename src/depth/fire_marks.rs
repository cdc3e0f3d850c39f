//! The rules of fire: what may stay exposed, what has to stand over the rest, and what no foam may be.

use super::cover::{asked, enough};
use super::marks::NOISE;
use super::{Around, Bound, CoverAsked, Exposure, Mark, Rule, Stands};
use crate::climate::Component;
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

/// Whether the exception for a rim holds at this depth, covered or not: what the sheet shows, and no further.
pub(super) fn rim_excepts(around: &Around<'_>, exposure: Exposure, thickest: Inches) -> bool {
    let Some(foam) = around.foam.filter(|_| exposure.rim) else { return false };
    let most = foam.tested_in.map_or(0.0, |tested| tested.0.min(RIM_MOST_IN));
    gathered(&rim_sheet(foam)).0 == Stands::Applies && thickest.0 <= most + NOISE
}

/// The rules of fire as they bear on a surface. `thickest` is the thickest aim.
///
/// A thermal barrier is asked for everywhere (R316.4), but for a rim within its exception (R316.5.11), and but for
/// attics (R316.5.3) and crawlspaces (R316.5.4) that are entered only to service something: there an ignition barrier
/// is enough (that condition as an inspector's article quotes it of 2006). What faces the weather is coated instead. A cover that was chosen and is not enough leaves the rule
/// standing, and so does one that only a test report can judge.
pub(super) fn fire_marks(around: &Around<'_>, exposure: Exposure, thickest: Inches) -> Vec<Mark> {
    let Some(foam) = around.foam else { return Vec::new() };
    let code = |mark: Mark, section: &'static str, (stands, lacks)| {
        let edition = if section.is_empty() { "" } else { "IRC 2018" };
        Mark { section, edition, stands, lacks, ..mark }
    };
    let condition = |rule, trust| Mark::new(rule, Bound::Condition, None, trust);
    let mut all = Vec::new();
    let (sheet, lacks) = gathered(&rim_sheet(foam));
    let rim = match (exposure.open, exposure.rim) {
        (Some(false), _) => (Stands::Covered, Vec::new()),
        (None, _) => (Stands::NotSaid, Vec::new()),
        (Some(true), false) => (Stands::Elsewhere, Vec::new()),
        (Some(true), true) => (sheet, lacks),
    };
    let asked = asked(around, exposure, thickest);
    // A cover of which nothing is known yet but that there is one counts; one that is not enough does not.
    let held = match exposure.open {
        Some(false) if exposure.cover.is_empty() => Stands::Covered,
        Some(false) if enough(asked, exposure.cover, around.place.edition) == Some(true) => Stands::Covered,
        None => Stands::NotSaid,
        _ => Stands::Applies,
    };
    let barrier = match (held, asked) {
        (Stands::Applies, CoverAsked::Nothing | CoverAsked::Ignition | CoverAsked::Weather) => {
            Stands::Excepted
        }
        (held, _) => held,
    };
    if let (Stands::Applies, Some(_)) = (rim.0, foam.tested_in) {
        let at = Mark::new(Rule::TestedThickness, Bound::Most, foam.tested_in, Trust::YourSheet);
        all.push(code(at, "R316.5.11", (Stands::Applies, Vec::new())));
    }
    let at = Mark::new(Rule::RimExposed, Bound::Most, Some(Inches(RIM_MOST_IN)), Trust::Read);
    all.push(code(at, "R316.5.11", rim));
    all.push(code(condition(Rule::Barrier, Trust::Read), "R316.4", (barrier, Vec::new())));
    match asked {
        CoverAsked::Ignition => {
            let section = match around.component {
                Some(Component::AtticFloor | Component::RoofDeck) => "R316.5.3",
                Some(Component::CrawlWall) => "R316.5.4",
                _ => "R316.5.3, R316.5.4",
            };
            all.push(code(condition(Rule::Ignition, Trust::Retold), section, (held, Vec::new())));
        }
        CoverAsked::Weather => {
            all.push(code(condition(Rule::Weather, Trust::Practice), "", (held, Vec::new())));
        }
        _ => {}
    }
    if exposure.room == Some("garage") {
        let at = condition(Rule::Garage, Trust::Memory);
        all.push(code(at, "R302.6", (Stands::Applies, Vec::new())));
    }
    let burning = gathered(&[("flame", at_most(foam.flame, FLAME)), ("smoke", at_most(foam.smoke, SMOKE))]);
    all.push(code(condition(Rule::Burning, Trust::Read), "R316.3", burning));
    all
}
