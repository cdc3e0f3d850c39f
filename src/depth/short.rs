//! What is said where a depth falls short of what the energy code or a rule against water asks, and where no rule
//! asks for a depth.
//!
//! A figure that was read warns. One from memory is a note that sends to the code book, and one that was worked
//! out warns of the roof, not of the code.

use super::choose::NOISE_IN;
use super::code_marks::small_ceilings;
use super::place::{self, Said};
use super::{Around, Bound, Depth, Mark, Rule, Stands};
use crate::climate::{Component, Edition, Work, small_ceiling};
use crate::findings::{Code, Finding, Trust};
use crate::job::{DepthWay, Part, Reader, field};
use crate::measure::{Inches, Kind};

/// The part of the job in which something that was not said is asked.
fn asked_at(around: &Around<'_>, name: &str) -> (Part, u32) {
    match field(Part::Job, name) {
        Some(_) => (Part::Job, 0),
        None => (Part::Surface, around.surface.id),
    }
}

/// Why the rules ask for no depth: what was not said, a row that no foam here meets, or nothing at all.
pub(super) fn nothing_asked(around: Around<'_>, said: &Said, asked: &[Mark], reader: &mut Reader) {
    let missing = place::missing(around.place, around.component, said);
    for name in &missing {
        let (part, id) = asked_at(&around, name);
        let finding = Finding::new(Code::Needed, part, id, name);
        if !reader.findings.contains(&finding) {
            reader.say(finding);
        }
    }
    for mark in asked.iter().filter(|mark| mark.rule == Rule::FillFloor && mark.stands == Stands::NotSaid) {
        // How deep a cavity is that is to be filled.
        if mark.trust.decides() && around.place.work.is_some() {
            reader.say(Finding::new(Code::Needed, Part::Surface, around.surface.id, "cavity"));
        }
    }
    let reached = asked.iter().filter(|mark| out_of_reach(mark)).count();
    for mark in asked.iter().filter(|mark| out_of_reach(mark)) {
        beyond(mark, &around, reader);
    }
    if missing.is_empty() && reached == 0 {
        reader.say(Finding::new(Code::NoLeastHere, Part::Surface, around.surface.id, "depth_way"));
    }
}

fn out_of_reach(mark: &Mark) -> bool {
    mark.stands == Stands::BeyondSheet && mark.trust.decides()
}

/// What a rule asks, in words of its own table: the row as printed, else R or U.
fn row(mark: &Mark, reader: &Reader) -> String {
    match (mark.printed, mark.asks, mark.bound) {
        ("", Some(u), Bound::Mean) => ["U ", &reader.figure(Kind::Number, u)].concat(),
        ("", Some(r), _) => reader.figure(Kind::Resistance, r),
        (printed, ..) => ["R-", printed].concat(),
    }
}

fn beyond(mark: &Mark, around: &Around<'_>, reader: &mut Reader) {
    let finding = Finding::new(Code::CodeOutOfReach, Part::Surface, around.surface.id, "code_path")
        .with("row", row(mark, reader));
    reader.say(finding);
}

/// Everything there is to say of a depth that falls short of what was asked.
pub(super) fn short(depth: &Depth, around: &Around<'_>, at_aim: &str, reader: &mut Reader) {
    let id = around.surface.id;
    let found = |code, field: &str| Finding::new(code, Part::Surface, id, field);
    if depth.way == DepthWay::Rules
        && let Some(name) = depth.missing.first()
    {
        let (part, at) = asked_at(around, name);
        reader.say(Finding::new(Code::CodeNotAsked, part, at, name));
    }
    let partly = Finding::new(Code::EditionPartly, Part::Job, 0, "edition");
    let asked = !matches!(around.component, None | Some(Component::ColdRoom | Component::Other));
    if asked && around.place.edition == Some(Edition::Y2024) && !reader.findings.contains(&partly) {
        reader.say(partly);
    }
    let new = matches!(around.place.work, Some(Work::New | Work::Addition));
    let aside = |stands| matches!(stands, Stands::NotChosen | Stands::NotInZone);
    let ways = [Rule::CodeU, Rule::FillFloor, Rule::SmallCeiling];
    let mut chosen = depth.marks.iter().filter(|mark| ways.contains(&mark.rule) && !aside(mark.stands));
    if new && chosen.any(|mark| !mark.trust.decides()) {
        reader.say(found(Code::WayFromMemory, "code_path"));
    }
    for mark in &depth.marks {
        match (mark.rule, mark.stands) {
            (Rule::CodeR | Rule::CodeU | Rule::FillFloor | Rule::UnventedTable, Stands::BeyondSheet)
                if out_of_reach(mark) =>
            {
                beyond(mark, around, reader);
            }
            (Rule::WholeTarget, Stands::BeyondSheet) => {
                let r = reader.figure(Kind::Resistance, mark.asks.unwrap_or_default());
                reader.say(found(Code::WholeOutOfReach, "whole_r").with("r", r));
            }
            (Rule::SmallCeiling, Stands::NotMet) => {
                let most = around.place.edition.map_or(0.0, |edition| small_ceiling(edition).most_ft2);
                let gross = small_ceilings(around.job).unwrap_or_default();
                let finding = found(Code::SmallCeilingTooLarge, "code_path")
                    .with("given", reader.figure(Kind::Area, gross))
                    .with("most", reader.figure(Kind::Area, most));
                reader.say(finding);
            }
            (Rule::FoamRetarder | Rule::ClassThree, Stands::Blank) => {
                if let Some(foam) = around.foam {
                    let finding = Finding::new(Code::FoamPermeanceBlank, Part::Foam, foam.id, "permeance");
                    if !reader.findings.contains(&finding) {
                        reader.say(finding);
                    }
                }
            }
            (Rule::InnerRetarder, Stands::NotMet) => {
                reader.say(found(Code::RetarderNotAllowed, "inner_retarder"));
            }
            (Rule::UnventedShare, Stands::Applies | Stands::BeyondSheet) => {
                share_short(depth, around, mark, at_aim, reader);
            }
            (_, Stands::Applies) => {
                let (code, held) = match (code_of(mark), mark.bound) {
                    (Some(code), Bound::Mean) => (code, depth.aim_in.likely),
                    (Some(code), _) => (code, depth.promised_in),
                    (None, _) => continue,
                };
                let Some(least) = mark.at_in.filter(|at| held.0 < at.0 - NOISE_IN) else { continue };
                reader.say(below(found(code, at_aim), mark, held, least, reader));
            }
            _ => {}
        }
    }
}

/// Says that the foam's share of the whole R, at the depth promised, is less than what keeps its face warm: even
/// where no thickness on the sheet reaches it. In words: share = foam R ÷ (foam R + R in front).
fn share_short(depth: &Depth, around: &Around<'_>, mark: &Mark, at_aim: &str, reader: &mut Reader) {
    let new = Inches((depth.promised_in.0 - depth.old_in().0).max(0.0));
    let foam_r = around.foam.and_then(|foam| foam.planning_r(new));
    let Some(((foam_r, build), asked)) = foam_r.zip(around.build).zip(mark.asks) else { return };
    let share = foam_r.0 / (foam_r.0 + build.airy_r().0);
    // A share is told to a tenth of a percent, and rounded down.
    let given = (share * 1000.0).floor() / 10.0;
    if share < asked / 100.0 - NOISE_IN {
        let finding = Finding::new(Code::ShareShort, Part::Surface, around.surface.id, at_aim)
            .with("given", reader.figure(Kind::Percent, given))
            .with("share", reader.figure(Kind::Percent, asked));
        reader.say(finding);
    }
}

/// What is said where a depth is less than a mark asks.
fn code_of(mark: &Mark) -> Option<Code> {
    Some(match (mark.rule, mark.trust) {
        (Rule::ClassThree, _) => Code::ClassThreeShort,
        (
            Rule::CodeR | Rule::CodeU | Rule::FillCavity | Rule::FillFloor | Rule::SmallCeiling,
            Trust::Memory,
        ) => Code::CodeShortMemory,
        (Rule::CodeR | Rule::FillFloor | Rule::SmallCeiling, _) => Code::CodeShort,
        (Rule::CodeU, _) => Code::CodeUShort,
        (Rule::WholeTarget, _) => Code::WholeShort,
        (Rule::UnventedTable, _) => Code::UnventedShort,
        (Rule::FoamRetarder, _) => Code::FoamTooOpen,
        _ => return None,
    })
}

fn below(finding: Finding, mark: &Mark, held: Inches, least: Inches, reader: &Reader) -> Finding {
    let finding = finding
        .with("given", reader.figure(Kind::Length, held.0))
        .with("least", reader.figure(Kind::Length, least.0));
    match mark.rule {
        Rule::CodeR | Rule::FillFloor | Rule::SmallCeiling | Rule::CodeU if mark.trust.decides() => {
            finding.with("row", row(mark, reader))
        }
        Rule::UnventedTable | Rule::WholeTarget => {
            finding.with("r", reader.figure(Kind::Resistance, mark.asks.unwrap_or_default()))
        }
        _ => finding,
    }
}
