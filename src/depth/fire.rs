//! What there is to say about fire: what may stay exposed, the cover over the rest, and what no foam may be.

use super::choose::NOISE_IN;
use super::fire_marks::{self, FLAME, RIM_DENSITY_LEAST, RIM_DENSITY_MOST, RIM_FLAME, RIM_MOST_IN, SMOKE};
use super::{Around, Cover, CoverAsked, Depth, DepthBy, Exposure, Rule, Stands, aim_field};
use crate::climate::Edition;
use crate::findings::{Code, Finding};
use crate::foam::Foam;
use crate::job::{Part, Reader};
use crate::measure::{Inches, Kind};

/// What there is to say about the cover that was chosen.
fn of_cover(cover: &Cover, exposure: Exposure, edition: Option<Edition>) -> Option<Code> {
    match cover.chosen {
        "" => None,
        // Nothing over foam that is said to be covered, or a cover over foam that is said to stay bare.
        "none" => exposure.unclear.then_some(Code::CoverUnclear),
        _ if exposure.unclear => Some(Code::CoverUnclear),
        "tested_coating" if cover.enough.is_none() && cover.asked != CoverAsked::Weather => {
            Some(Code::CoverByReport)
        }
        _ if cover.enough == Some(false) => Some(Code::CoverNotEnough),
        "wood_panel" | "fiber_cement"
            if cover.enough == Some(true)
                && cover.asked != CoverAsked::Nothing
                && !edition.is_some_and(Edition::newer_map) =>
        {
            Some(Code::CoverSinceNewer)
        }
        _ => None,
    }
}

/// A finding on a foam sheet, said once however many surfaces it is about.
fn once(finding: Finding, reader: &mut Reader) {
    if !reader.findings.contains(&finding) {
        reader.say(finding);
    }
}

/// The rules of fire: what may stay exposed, and what no foam may be.
pub(super) fn fire(depth: &Depth, around: &Around<'_>, foam: &Foam, exposure: Exposure, reader: &mut Reader) {
    let surface = around.surface;
    let on_sheet = |code, field: &str| Finding::new(code, Part::Foam, foam.id, field);
    for (field, shown, most) in [("flame", foam.flame, FLAME), ("smoke", foam.smoke, SMOKE)] {
        if let Some(shown) = shown.filter(|shown| *shown > most + NOISE_IN) {
            let finding = on_sheet(Code::BurnsTooFast, field)
                .with("given", reader.figure(Kind::Number, shown))
                .with("most", reader.figure(Kind::Number, most));
            once(finding, reader);
        }
    }
    let found = |code, field: &str| Finding::new(code, Part::Surface, surface.id, field);
    let cover = &depth.cover;
    if let Some(code) = of_cover(cover, exposure, around.place.edition) {
        reader.say(found(code, "cover"));
    }
    if exposure.open != Some(true) {
        return;
    }
    if cover.asked == CoverAsked::Weather {
        reader.say(found(Code::BareInWeather, "exposure"));
        return;
    }
    if !exposure.rim {
        let ignition = cover.asked == CoverAsked::Ignition;
        reader.say(found(if ignition { Code::IgnitionAsked } else { Code::CoverAsked }, "exposure"));
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
