//! What there is to say about the depths of a surface.

use super::choose::NOISE_IN;
use super::fire;
use super::short::short;
use super::{Around, Depth, DepthBy, Exposure, Mark, Rule, Stands, aim_field};
use crate::findings::{Code, Finding};
use crate::foam::Foam;
use crate::job::{Part, Reader, Surface};
use crate::measure::{Inches, Kind, RValue};

/// Says once that a foam lists no R.
pub(super) fn no_listed_r(foam: &Foam, reader: &mut Reader) {
    let finding = Finding::new(Code::NoListedR, Part::Foam, foam.id, "r_at");
    if !reader.findings.contains(&finding) {
        reader.say(finding);
    }
}

/// Everything there is to say about the depths of a surface.
pub(super) fn judge(depth: &Depth, around: Around<'_>, exposure: Exposure, reader: &mut Reader) {
    let surface = around.surface;
    let aim_at = aim_field(surface.depth_way);
    let found = |code, field: &str| Finding::new(code, Part::Surface, surface.id, field);
    let inches = |reader: &Reader, depth: Inches| reader.figure(Kind::Length, depth.0);
    let aim = depth.aim_in.likely;

    let over_aim = depth.promised_in.0 > aim.0 + NOISE_IN;
    if over_aim || aim.0 > depth.most_in.0 + NOISE_IN {
        let typed_promise = over_aim && depth.promised_by == DepthBy::Typed;
        let at = match (typed_promise, depth.most_by) {
            (true, _) => "promise",
            (false, DepthBy::Typed) => "most",
            (false, _) => aim_at,
        };
        let finding = found(Code::DepthsCross, at)
            .with("least", inches(reader, depth.promised_in))
            .with("given", inches(reader, aim))
            .with("most", inches(reader, depth.most_in));
        reader.say(finding);
    }
    if let Some(cavity) = depth.cavity_in
        && aim.0 > cavity.0 + NOISE_IN
    {
        let finding = found(Code::DeeperThanCavity, aim_at)
            .with("given", inches(reader, aim))
            .with("most", inches(reader, cavity));
        reader.say(finding);
    }
    if let Some(gap) = depth.window.gap_in.and(depth.window.least_in.zip(depth.window.most_in)) {
        let finding = found(Code::RulesCross, if depth.target_r.is_some() { "target_r" } else { aim_at })
            .with("least", inches(reader, gap.0))
            .with("most", inches(reader, gap.1));
        reader.say(finding);
    }
    over_old(depth, surface, reader);
    short(depth, &around, aim_at, reader);
    let Some(foam) = around.foam else { return };
    fire::fire(depth, &around, foam, exposure, reader);
    let add = depth.add_in().likely;
    if add.0 > 0.0 && add.0 < foam.least_lift_in.0 - NOISE_IN {
        let finding = found(Code::ThinnerThanLift, aim_at)
            .with("given", inches(reader, add))
            .with("least", inches(reader, foam.least_lift_in));
        reader.say(finding);
    }
    if !surface.shape.claims_r() {
        return;
    }
    match (foam.listed.first(), depth.promised_r) {
        (None, _) => no_listed_r(foam, reader),
        (Some(thinnest), None) => {
            let field = if depth.promised_by == DepthBy::Typed { "promise" } else { aim_at };
            let finding = found(Code::BelowListed, field)
                .with("given", inches(reader, Inches((depth.promised_in.0 - depth.old_in().0).max(0.0))))
                .with("least", inches(reader, thinnest.thickness_in));
            reader.say(finding);
        }
        (Some(_), Some(promised)) => {
            // What was reached between two listed thicknesses was reached for planning: it is on no receipt.
            let reached = depth.marks.iter().filter(|mark| asks_r(mark, depth.promised_in));
            let asked = reached.filter_map(|mark| mark.asks).fold(0.0, f64::max);
            let target = RValue(depth.target_r.map_or(0.0, |target| target.0).max(asked));
            if promised.0 >= target.0 - NOISE_IN {
                return;
            }
            let finding = found(Code::TargetNotPromised, aim_at)
                .with("given", inches(reader, depth.promised_in))
                .with("r", reader.figure(Kind::Resistance, promised.0))
                .with("target", reader.figure(Kind::Resistance, target.0))
                .with(
                    "listed",
                    foam.listed_for(target).map_or_else(String::new, |one| inches(reader, one.thickness_in)),
                );
            reader.say(finding);
        }
    }
}

/// Whether a mark that decides asks R of the foam, and is met at a depth.
fn asks_r(mark: &Mark, depth: Inches) -> bool {
    matches!(mark.rule, Rule::CodeR | Rule::FillFloor | Rule::SmallCeiling | Rule::UnventedTable)
        && mark.stands == Stands::Applies
        && mark.trust.decides()
        && mark.at_in.is_some_and(|at| at.0 <= depth.0 + NOISE_IN)
}

/// What is said of old foam.
fn over_old(depth: &Depth, surface: &Surface, reader: &mut Reader) {
    let Some(there) = depth.existing else { return };
    let found = |code| Finding::new(code, Part::Surface, surface.id, "existing");
    if there.add_in.likely.0 <= 0.0 {
        let finding = found(Code::NothingToAdd)
            .with("given", reader.figure(Kind::Length, there.depth_in.likely.0))
            .with("aim", reader.figure(Kind::Length, depth.aim_in.likely.0));
        reader.say(finding);
    } else {
        reader.say(found(Code::OldFoam));
    }
}
