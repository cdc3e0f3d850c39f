//! From the way chosen to the three depths, and what there is to say about them.

use super::parts::of_another_kind;
use super::place::{self, Said};
use super::{
    AimBy, Around, Depth, DepthBy, Existing, Exposure, Left, Mark, Rule, Stands, Wrapped, cover, judge,
    marks, short, there_in, to_add, window,
};
use crate::findings::{Code, Finding};
use crate::foam::Between;
use crate::job::{DepthWay, Part, Reader, Shape, Surface, entry, field};
use crate::measure::{Band, BoardFeet, Inches, Kind, RValue, SquareFeet};
use crate::surfaces::SurfaceArea;

/// What binary fractions may lose in a sum of depths: far below what a probe can tell.
pub(super) const NOISE_IN: f64 = 1e-9;

/// The aim, and what it was worked out from.
#[derive(Clone, Copy)]
struct Aim {
    aim: Band<f64>,
    by: AimBy,
    kit: Option<(BoardFeet, f64, SquareFeet)>,
    left: Option<Left>,
    wrapped: Option<Wrapped>,
}

/// The depth that a target needs, the listed thicknesses it lies between, and the target.
type Needed = (Inches, Option<Between>, RValue);

/// The depths of a surface; `None` while something is missing, with the findings that say so.
///
/// In words: typed: the aim is what was typed; target R: aim = depth at which the sheet reaches the target +
/// under, over the thickest old foam of another kind; one kit: aim = usable board feet of the kit ÷ (area ×
/// everything added); left over: aim = what is left ÷ the area that shares it; both over what is there; rules: aim
/// = the larger of the least that they ask for + under and the mean that they ask for.
/// Promised = what was typed, else for a target the depth it needs, for the rules their least, else the low end of the aim − under, never
/// below zero. Most = what was typed, else the high end of the aim + over, but no more than may stay exposed
/// at a rim left exposed. Under ½ in and over ¼ in unless entered: common practice, or the crew's own log.
pub fn choose(around: Around<'_>, reader: &mut Reader) -> Option<Depth> {
    let Around { job, surface, foam, .. } = around;
    let foam = foam.filter(|_| surface.shape.claims_r());
    let entries = &surface.entries;
    let mut tolerance = |name| reader.take(Part::Job, 0, &job.entries, name).map(|taken| taken.value.likely);
    let (under, over) = (tolerance("under_aim"), tolerance("over_aim"));
    let mut typed = |name| reader.take(Part::Surface, surface.id, entries, name).map(|taken| taken.value);
    let (promise, typed_most) = (typed("promise"), typed("most"));
    let cavity = cavity(surface, around.area, reader);
    let exposure = exposure(surface, reader);
    let there = around.existing;
    let counts = of_another_kind(there);
    let old = counts.map_or(0.0, |there| there.depth_in.high.0);
    // A target that was entered is a least whichever way the aim was chosen; only its own way insists on it.
    let needed = match surface.depth_way {
        DepthWay::TargetR => needed(around, reader),
        DepthWay::Typed | DepthWay::Rules => {
            let target = reader.take(Part::Surface, surface.id, entries, "target_r");
            let target = target.map(|taken| RValue(taken.value.likely));
            target.zip(foam).and_then(|(r, foam)| Some((foam.depth_for(r)?, foam.between_for(r), r)))
        }
        DepthWay::OneKit | DepthWay::LeftOver => None,
    };
    let said = Said::of(surface, reader);
    let least = needed.map(|(depth, ..)| Inches(depth.0 + old));
    let asked = marks::asked(&around, &said, least, cavity);
    let found = match surface.depth_way {
        DepthWay::Typed => typed_aim(around, reader),
        DepthWay::TargetR => needed.zip(under).map(|((depth, ..), under)| Aim {
            aim: Band::exactly(depth.0 + under + old),
            by: if counts.is_some() { AimBy::TargetOverOld } else { AimBy::Target },
            kit: None,
            left: None,
            wrapped: None,
        }),
        DepthWay::OneKit => kit_aim(around, reader),
        DepthWay::LeftOver => left_aim(around, reader),
        DepthWay::Rules => under.and_then(|under| rules_aim(around, &said, &asked, under, reader)),
    };
    let (Aim { aim, by, kit, left, wrapped }, under, over) = (found?, under?, over?);

    let aims_at_target = matches!(by, AimBy::Target | AimBy::TargetOverOld);
    let least_asked = window(&asked).least_in.filter(|_| by == AimBy::Rules);
    let (promised, promised_by) = match (promise, least_asked, needed.filter(|_| aims_at_target)) {
        (Some(typed), ..) => (typed.likely, DepthBy::Typed),
        (None, Some(least), _) => (least.0, DepthBy::Rules),
        (None, None, Some((needed, ..))) if counts.is_some() => (needed.0 + old, DepthBy::TargetOverOld),
        (None, None, Some((needed, ..))) => (needed.0, DepthBy::Target),
        (None, None, None) => ((aim.low - under).max(0.0), DepthBy::Aim),
    };
    let marks = marks::marks(&around, exposure, asked, cavity, Inches(aim.high));
    let cap = marks.iter().filter(|one| {
        matches!(one.rule, Rule::RimExposed | Rule::TestedThickness) && one.stands == Stands::Applies
    });
    let cap = cap.filter_map(|one| one.at_in).reduce(|known, one| if one < known { one } else { known });
    let (most, most_by) = match (typed_most, cap) {
        (Some(typed), _) => (typed.likely, DepthBy::Typed),
        (None, Some(cap)) if aim.high <= cap.0 + NOISE_IN && aim.high + over > cap.0 + NOISE_IN => {
            (cap.0, DepthBy::Exposed)
        }
        (None, _) => (aim.high + over, DepthBy::Aim),
    };
    let aim_in = aim.map(Inches);
    let existing = there.map(|there| Existing { add_in: to_add(aim_in, Some(&there)), ..there });
    // The R of old foam is known only where it is the sheet's own; where it is not, new foam alone counts.
    let planning_in = Inches((aim.likely - counts.map_or(0.0, |there| there.depth_in.likely.0)).max(0.0));
    let promised_r = foam.and_then(|foam| foam.promised_r(Inches(promised - old)));
    let depth = Depth {
        way: surface.depth_way,
        aim_by: by,
        aim_in,
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
        kit_usable: kit.map(|(usable, ..)| usable),
        kit_factor: kit.map(|(_, factor, _)| factor),
        kit_ft2: kit.map(|(.., area)| area),
        wrapped,
        left,
        existing,
        planning_in,
        planning_between: foam.and_then(|foam| foam.between_at(planning_in)),
        planning_r: foam.and_then(|foam| foam.planning_r(planning_in)),
        promised_r: promised_r.map(|listed| listed.r),
        promised_r_at_in: promised_r.map(|listed| listed.thickness_in),
        cavity_in: cavity,
        exposed_most_in: cap,
        component: around.component,
        assembly: around.build.zip(foam).and_then(|(build, foam)| build.with(foam, planning_in)),
        cover: cover::cover(&around, exposure, Inches(aim.high), reader),
        window: window(&marks),
        marks,
        missing: place::missing(around.place, around.component, &said),
    };
    judge::judge(&depth, around, exposure, reader);
    Some(depth)
}

/// Whether the foam stays exposed, and whether at a rim: a rim joist is one without being asked. A spot that
/// nobody has named is not one: the exception is for rims only.
pub(super) fn exposure(surface: &Surface, reader: &mut Reader) -> Exposure {
    let mut word = |field| reader.choice(Part::Surface, surface.id, &surface.entries, field);
    let (said, cover, room) = (word("exposure"), word("cover").unwrap_or_default(), word("room"));
    let chosen = match cover {
        "" => None,
        cover => Some(cover == "none"),
    };
    let said = match said {
        Some("exposed") => Some(true),
        Some("covered") => Some(false),
        _ => None,
    };
    let unclear = said.zip(chosen).is_some_and(|(said, chosen)| said != chosen);
    let open = if unclear { Some(true) } else { said.or(chosen) };
    let rim = word("spot") == Some("rim") || surface.shape == Shape::RimRun;
    Exposure { open, rim, room, cover, unclear }
}

/// How deep the cavity is: as typed, of a range of bays the shallowest; else by the members.
pub(super) fn cavity(surface: &Surface, area: Option<&SurfaceArea>, reader: &mut Reader) -> Option<Inches> {
    let typed = reader.take(Part::Surface, surface.id, &surface.entries, "cavity");
    typed.map(|taken| Inches(taken.value.low)).or(area.and_then(|area| area.cavity_in))
}

/// The field in which the aim was set.
pub(crate) fn aim_field(way: DepthWay) -> &'static str {
    match way {
        DepthWay::Typed => "depth",
        DepthWay::TargetR => "target_r",
        DepthWay::OneKit => "depth_kit",
        DepthWay::LeftOver | DepthWay::Rules => "depth_way",
    }
}

fn typed_aim(around: Around<'_>, reader: &mut Reader) -> Option<Aim> {
    let surface = around.surface;
    // A strip or bead that only seals is an inch unless it is said otherwise: common practice.
    let aim = if surface.shape == Shape::Strip && entry(&surface.entries, "depth").is_none() {
        Band::exactly(1.0)
    } else {
        reader.need(Part::Surface, surface.id, &surface.entries, "depth")?.value
    };
    Some(Aim { aim, by: AimBy::Typed, kit: None, left: None, wrapped: None })
}

fn needed(around: Around<'_>, reader: &mut Reader) -> Option<Needed> {
    let surface = around.surface;
    let target = reader.need(Part::Surface, surface.id, &surface.entries, "target_r")?.value.likely;
    let foam = around.foam?;
    let Some(thickest) = foam.thickest() else {
        judge::no_listed_r(foam, reader);
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
    Some((needed, foam.between_for(RValue(target)), RValue(target)))
}

fn kit_aim(around: Around<'_>, reader: &mut Reader) -> Option<Aim> {
    let Around { job, surface, .. } = around;
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
    let over = around.spread_ft2?;
    let (whole, growth) = (over.0 * factor, around.growth);
    let wrapped = wrapped(
        around,
        usable,
        whole * (1.0 + 2.0 * growth * there_in(around.existing.as_ref())),
        whole * growth,
    );
    let spread = wrapped.map_or(usable.0 / whole, |wrapped| wrapped.added());
    let aim = over_old(around, spread, "depth_kit", reader)?;
    let by = match wrapped {
        Some(_) => AimBy::Wrapped,
        None if around.existing.is_some() => AimBy::KitOverOld,
        None => AimBy::Kit,
    };
    Some(Aim { aim, by, kit: Some((usable, factor, over)), left: None, wrapped })
}

fn left_aim(around: Around<'_>, reader: &mut Reader) -> Option<Aim> {
    let surface = around.surface;
    let Some(left) = around.left.filter(|left| left.feet_bdft.0 > 0.0) else {
        reader.say(Finding::new(Code::NothingLeft, Part::Surface, surface.id, "depth_way"));
        return None;
    };
    let wrapped = wrapped(around, left.feet_bdft, left.over_ft2.0, left.growth_ft2_in);
    let spread = wrapped.map_or(left.feet_bdft.0 / left.over_ft2.0, |wrapped| wrapped.added());
    let aim = over_old(around, spread, "depth_way", reader)?;
    let by = match wrapped {
        Some(_) => AimBy::Wrapped,
        None if around.existing.is_some() => AimBy::LeftOverOld,
        None => AimBy::LeftOver,
    };
    Some(Aim { aim, by, kit: None, left: Some(left), wrapped })
}

/// The aim that the rules ask for; `None` where none of them asks for a depth, with the findings that say why.
fn rules_aim(
    around: Around<'_>,
    said: &Said,
    asked: &[Mark],
    under: f64,
    reader: &mut Reader,
) -> Option<Aim> {
    let open = window(asked);
    let Some((aim, rule)) = marks::least_aim(open, Inches(under)) else {
        short::nothing_asked(around, said, asked, reader);
        return None;
    };
    let by = if open.least_by == Some(rule) { AimBy::Rules } else { AimBy::RulesMean };
    Some(Aim { aim: Band::exactly(aim.0), by, kit: None, left: None, wrapped: None })
}

/// How far one kit reaches on a surface: the depth at which its board feet are used up, over what is there.
pub(super) fn reach(around: &Around<'_>, usable: BoardFeet, factor: f64) -> Option<Inches> {
    let whole = around.spread_ft2?.0 * factor;
    let there = there_in(around.existing.as_ref());
    let begins = whole * (1.0 + 2.0 * around.growth * there);
    let wrapped = wrapped(*around, usable, begins, whole * around.growth);
    let added = wrapped.map_or(usable.0 / whole, |wrapped| wrapped.added());
    (added > 0.0 && added.is_finite()).then_some(Inches(added + there))
}

/// An amount of foam over an area that changes with the depth; `None` for planes.
fn wrapped(around: Around<'_>, feet: BoardFeet, begins: f64, growth: f64) -> Option<Wrapped> {
    (growth != 0.0).then_some(Wrapped {
        feet_bdft: feet,
        begins_ft2: SquareFeet(begins),
        growth_ft2_in: growth,
        there_in: Inches(there_in(around.existing.as_ref())),
    })
}

/// What is spread over a surface, on top of the mean of what is there; `None` for nothing, and with a finding
/// for more than the table of fields takes.
fn over_old(around: Around<'_>, spread: f64, at: &str, reader: &mut Reader) -> Option<Band<f64>> {
    if spread.is_nan() {
        reader.say(Finding::new(Code::DeeperThanRound, Part::Surface, around.surface.id, at));
    }
    if !(spread > 0.0 && spread.is_finite()) {
        return None;
    }
    let aim = spread + there_in(around.existing.as_ref());
    let most = field(Part::Surface, "depth").map_or(f64::INFINITY, |row| row.most);
    if aim > most {
        let finding = Finding::new(Code::AboveLimit, Part::Surface, around.surface.id, at)
            .with("given", reader.figure(Kind::Length, aim))
            .with("most", reader.figure(Kind::Length, most));
        reader.say(finding);
        return None;
    }
    Some(Band::exactly(aim))
}
