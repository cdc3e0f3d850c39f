//! What there is to say about the depths of a surface.

use super::choose::NOISE_IN;
use super::fire_marks::{self, FLAME, RIM_DENSITY_LEAST, RIM_DENSITY_MOST, RIM_FLAME, RIM_MOST_IN, SMOKE};
use super::{Around, Depth, DepthBy, Exposure, Rule, Stands, aim_field};
use crate::findings::{Code, Finding};
use crate::foam::Foam;
use crate::job::{Part, Reader, Surface};
use crate::measure::{Inches, Kind};

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
    let Some(foam) = around.foam else { return };
    fire(depth, surface, foam, exposure, reader);
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
            let Some(target) = depth.target_r.filter(|target| promised < *target) else { return };
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

/// A finding on a foam sheet, said once however many surfaces it is about.
fn once(finding: Finding, reader: &mut Reader) {
    if !reader.findings.contains(&finding) {
        reader.say(finding);
    }
}

/// The rules of fire: what may stay exposed, and what no foam may be.
fn fire(depth: &Depth, surface: &Surface, foam: &Foam, exposure: Exposure, reader: &mut Reader) {
    let on_sheet = |code, field: &str| Finding::new(code, Part::Foam, foam.id, field);
    for (field, shown, most) in [("flame", foam.flame, FLAME), ("smoke", foam.smoke, SMOKE)] {
        if let Some(shown) = shown.filter(|shown| *shown > most + NOISE_IN) {
            let finding = on_sheet(Code::BurnsTooFast, field)
                .with("given", reader.figure(Kind::Number, shown))
                .with("most", reader.figure(Kind::Number, most));
            once(finding, reader);
        }
    }
    if exposure.open != Some(true) {
        return;
    }
    let found = |code, field: &str| Finding::new(code, Part::Surface, surface.id, field);
    if !exposure.rim {
        reader.say(found(Code::CoverAsked, "exposure"));
        return;
    }
    for (field, stands) in fire_marks::rim_sheet(foam) {
        let (kind, shown, most) = match field {
            "density" => (Kind::Density, foam.density_range.map(|range| range.high.0), RIM_DENSITY_MOST),
            "flame" => (Kind::Number, foam.flame, RIM_FLAME),
            _ => (Kind::Number, foam.smoke, SMOKE),
        };
        match stands {
            Stands::Blank => once(on_sheet(Code::ExposedBlank, field), reader),
            Stands::Outside => {
                let low = foam.density_range.filter(|_| field == "density").map(|range| range.low.0);
                let low = low.filter(|low| *low < RIM_DENSITY_LEAST);
                let finding = on_sheet(Code::ExposedOutside, field)
                    .with("given", reader.figure(kind, low.or(shown).unwrap_or(0.0)))
                    .with("most", reader.figure(kind, if low.is_some() { RIM_DENSITY_LEAST } else { most }));
                once(finding, reader);
            }
            _ => {}
        }
    }
    let rim = depth.marks.iter().find(|mark| mark.rule == Rule::RimExposed);
    if rim.is_none_or(|mark| mark.stands != Stands::Applies) {
        reader.say(found(Code::ExposedNotAvailable, "exposure"));
        return;
    }
    // What the crew aims at is judged, and what was typed as the most that may stay.
    let typed = depth.most_by == DepthBy::Typed && depth.most_in > depth.thickest_aim_in;
    let (at, thickest) = match typed {
        true => ("most", depth.most_in),
        false => (aim_field(surface.depth_way), depth.thickest_aim_in),
    };
    let limits =
        [(Code::ExposedTooThick, Some(Inches(RIM_MOST_IN))), (Code::ExposedOverTested, foam.tested_in)];
    for (code, most) in limits {
        if let Some(most) = most.filter(|most| thickest.0 > most.0 + NOISE_IN) {
            let finding = found(code, at)
                .with("given", reader.figure(Kind::Length, thickest.0))
                .with("most", reader.figure(Kind::Length, most.0));
            reader.say(finding);
        }
    }
    if depth.most_by == DepthBy::Exposed {
        let finding = found(Code::NoToleranceLeft, at)
            .with("given", reader.figure(Kind::Length, depth.thickest_aim_in.0 + depth.over_in.0))
            .with("most", reader.figure(Kind::Length, depth.most_in.0));
        reader.say(finding);
    }
}
