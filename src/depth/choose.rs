//! From the way chosen to the three depths, and what there is to say about them.

use super::{Around, Depth, DepthBy};
use crate::findings::{Code, Finding};
use crate::foam::{Between, Foam};
use crate::job::{DepthWay, Part, Reader, field};
use crate::measure::{Band, BoardFeet, Inches, Kind, RValue};

/// What binary fractions may lose in a sum of depths: far below what a probe can tell.
const NOISE_IN: f64 = 1e-9;

/// The aim, and what it was worked out from.
#[derive(Clone, Copy)]
struct Aim {
    aim: Band<f64>,
    needed: Option<(Inches, Option<Between>, RValue)>,
    kit: Option<(BoardFeet, f64)>,
}

/// The depths of a surface; `None` while something is missing, with the findings that say so.
///
/// In words: typed: the aim is what was typed; target R: aim = depth at which the sheet reaches the target +
/// under; one kit: aim = usable board feet of the kit ÷ (net area × everything added). Promised = what was
/// typed, else for a target the depth it needs, else the low end of the aim − under, never below zero. Most =
/// what was typed, else the high end of the aim + over. Under ½ in and over ¼ in unless entered: common
/// practice, or the crew's own log.
pub fn choose(around: Around<'_>, reader: &mut Reader) -> Option<Depth> {
    let Around { job, surface, foam, .. } = around;
    let entries = &surface.entries;
    let mut tolerance = |name| reader.take(Part::Job, 0, &job.entries, name).map(|taken| taken.value.likely);
    let (under, over) = (tolerance("under_aim"), tolerance("over_aim"));
    let mut typed = |name| reader.take(Part::Surface, surface.id, entries, name).map(|taken| taken.value);
    let (promise, most) = (typed("promise"), typed("most"));
    // Of a range of bays the shallowest counts.
    let cavity = typed("cavity").map(|depth| Inches(depth.low));
    let cavity = cavity.or(around.area.and_then(|area| area.cavity_in));
    let found = match surface.depth_way {
        DepthWay::Typed => typed_aim(around, reader),
        DepthWay::TargetR => target_aim(around, under, reader),
        DepthWay::OneKit => kit_aim(around, reader),
        DepthWay::LeftOver => None,
    };
    let (Aim { aim, needed, kit }, under, over) = (found?, under?, over?);

    let (promised, promised_by) = match (promise, needed) {
        (Some(typed), _) => (typed.likely, DepthBy::Typed),
        (None, Some((needed, ..))) => (needed.0, DepthBy::Target),
        (None, None) => ((aim.low - under).max(0.0), DepthBy::Aim),
    };
    let (most, most_by) = match most {
        Some(typed) => (typed.likely, DepthBy::Typed),
        None => (aim.high + over, DepthBy::Aim),
    };
    let promised_r = foam.and_then(|foam| foam.promised_r(Inches(promised)));
    let depth = Depth {
        way: surface.depth_way,
        aim_in: aim.map(Inches),
        thinnest_aim_in: Inches(aim.low),
        thickest_aim_in: Inches(aim.high),
        promised_in: Inches(promised),
        promised_by,
        most_in: Inches(most),
        most_by,
        under_in: Inches(under),
        over_in: Inches(over),
        needed_in: needed.map(|(depth, ..)| depth),
        needed_between: needed.and_then(|(_, between, _)| between),
        target_r: needed.map(|(.., target)| target),
        kit_usable: kit.map(|(usable, _)| usable),
        kit_factor: kit.map(|(_, factor)| factor),
        planning_between: foam.and_then(|foam| foam.between_at(Inches(aim.likely))),
        planning_r: foam.and_then(|foam| foam.planning_r(Inches(aim.likely))),
        promised_r: promised_r.map(|listed| listed.r),
        promised_r_at_in: promised_r.map(|listed| listed.thickness_in),
        cavity_in: cavity,
    };
    judge(&depth, around, reader);
    Some(depth)
}

/// The field in which the aim was set.
pub(crate) fn aim_field(way: DepthWay) -> &'static str {
    match way {
        DepthWay::Typed => "depth",
        DepthWay::TargetR => "target_r",
        DepthWay::OneKit => "depth_kit",
        DepthWay::LeftOver => "depth_way",
    }
}

fn typed_aim(around: Around<'_>, reader: &mut Reader) -> Option<Aim> {
    let surface = around.surface;
    let taken = reader.need(Part::Surface, surface.id, &surface.entries, "depth")?;
    Some(Aim { aim: taken.value, needed: None, kit: None })
}

fn target_aim(around: Around<'_>, under: Option<f64>, reader: &mut Reader) -> Option<Aim> {
    let surface = around.surface;
    let target = reader.need(Part::Surface, surface.id, &surface.entries, "target_r")?.value.likely;
    let foam = around.foam?;
    let Some(thickest) = foam.thickest() else {
        no_listed_r(foam, reader);
        return None;
    };
    if target <= 0.0 {
        reader.say(Finding::new(Code::Needed, Part::Surface, surface.id, "target_r"));
        return None;
    }
    let Some(needed) = foam.depth_for(RValue(target)) else {
        let finding = Finding::new(Code::TargetBeyondSheet, Part::Surface, surface.id, "target_r")
            .with("given", reader.figure(Kind::Resistance, target))
            .with("most", reader.figure(Kind::Length, thickest.thickness_in.0));
        reader.say(finding);
        return None;
    };
    let between = foam.between_for(RValue(target));
    Some(Aim {
        aim: Band::exactly(needed.0 + under?),
        needed: Some((needed, between, RValue(target))),
        kit: None,
    })
}

fn kit_aim(around: Around<'_>, reader: &mut Reader) -> Option<Aim> {
    let Around { job, surface, area, .. } = around;
    let at_field = |code| Finding::new(code, Part::Surface, surface.id, "depth_kit");
    if surface.depth_kit == 0 {
        reader.say(at_field(Code::Needed));
        return None;
    }
    if job.kit_sheet(surface.depth_kit).is_none() {
        reader.say(at_field(Code::NoSheet));
        return None;
    }
    let (usable, factor) = around.one_kit?;
    let net = area?.net_ft2.likely.0;
    if usable.0 <= 0.0 || net <= 0.0 || factor <= 0.0 {
        return None;
    }
    let aim = usable.0 / (net * factor);
    let most = field(Part::Surface, "depth").map_or(0.0, |row| row.most);
    if aim > most {
        let finding = at_field(Code::AboveLimit)
            .with("given", reader.figure(Kind::Length, aim))
            .with("most", reader.figure(Kind::Length, most));
        reader.say(finding);
        return None;
    }
    Some(Aim { aim: Band::exactly(aim), needed: None, kit: Some((usable, factor)) })
}

/// Says once that a foam lists no R.
fn no_listed_r(foam: &Foam, reader: &mut Reader) {
    let finding = Finding::new(Code::NoListedR, Part::Foam, foam.id, "r_at");
    if !reader.findings.contains(&finding) {
        reader.say(finding);
    }
}

fn judge(depth: &Depth, around: Around<'_>, reader: &mut Reader) {
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
    let Some(foam) = around.foam else { return };
    if aim.0 < foam.least_lift_in.0 - NOISE_IN {
        let finding = found(Code::ThinnerThanLift, aim_at)
            .with("given", inches(reader, aim))
            .with("least", inches(reader, foam.least_lift_in));
        reader.say(finding);
    }
    match (foam.listed.first(), depth.promised_r) {
        (None, _) => no_listed_r(foam, reader),
        (Some(thinnest), None) => {
            let field = if depth.promised_by == DepthBy::Typed { "promise" } else { aim_at };
            let finding = found(Code::BelowListed, field)
                .with("given", inches(reader, depth.promised_in))
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
