//! Rules against water that gathers behind the room side: unvented roofs (IRC R806.5) and retarders (R702.7).
//!
//! They hang on the zone and on what stands in front of the foam. Table R806.5 is alike from 2012 to 2021; where the
//! edition is another one, or where a table of 2021 is held against an older one, the figure counts as memory. Full foam has nothing in front of it and no rule of two kinds of insulation.

use super::code_marks::Among;
use super::marks::NOISE;
use super::place::Said;
use super::{Around, Bound, Mark, Rule, Stands};
use crate::assembly::{Build, Position};
use crate::climate::{Component, Edition, Zone, class_three, inner_class, unvented};
use crate::findings::Trust;
use crate::foam::Foam;
use crate::measure::Inches;

/// The permeance of a retarder of class II at most, in perms, the limit belonging to it. IRC R702.7, read.
const CLASS_TWO_PERM: f64 = 1.0;
/// The permeance that foam against the sheathing may have at most at its depth where the room side has class III,
/// in perms: residential code of 2018, note to Table R702.7.1, and 2021 R702.7.1. From memory, found in no public page.
const FOAM_MOST_PERM: f64 = 1.5;
/// A member deeper than a 2×4 counts as 2×6 in the table of class III, in inches: that asks for more.
const SHALLOW_MEMBER_IN: f64 = 3.5;

/// The rules against water that fit what the surface is; none while the zone has not been said.
pub(super) fn moisture_marks(around: &Around<'_>, said: &Said, cavity: Option<Inches>) -> Vec<Mark> {
    let foam = around.foam.filter(|_| around.surface.shape.claims_r());
    let Some((foam, zone)) = foam.zip(around.place.zone) else { return Vec::new() };
    let among = Among::of(around, said, foam);
    match around.component {
        Some(Component::RoofDeck) => roof(around, said, zone, &among),
        Some(Component::Wall) => wall(around, said, zone, &among, cavity),
        Some(Component::Rim) if around.build.is_some_and(|build| build.airy_r().0 > 0.0) => {
            wall(around, said, zone, &among, cavity)
        }
        _ => Vec::new(),
    }
}

/// The depth at which foam lets no more vapor through than a limit: its permeance at 1 in ÷ the limit.
fn tight_at(foam: &Foam, most_perm: f64, old_in: f64) -> Option<Inches> {
    foam.permeance_1_in.map(|perm| Inches(perm / most_perm + old_in))
}

/// Whether air-permeable insulation stands in front of the foam.
fn in_front(build: Option<&Build>, r: f64) -> Stands {
    match build {
        None => Stands::NotSaid,
        Some(_) if r > 0.0 => Stands::Applies,
        Some(_) => Stands::NothingInFront,
    }
}

fn roof(around: &Around<'_>, said: &Said, zone: Zone, among: &Among<'_>) -> Vec<Mark> {
    let code = |rule, bound, at, trust| Mark {
        section: "R806.5",
        edition: "IRC 2012–2021",
        ..Mark::new(rule, bound, at, trust)
    };
    let airy = around.build.map_or(0.0, |build| build.airy_r().0);
    let front = in_front(around.build, airy);
    // That tile frees a roof is from memory, and the table was not read in the editions of 2009 and 2024: its row
    // stays, and decides nothing.
    let trust = match around.place.edition {
        Some(Edition::Y2009 | Edition::Y2024) => Trust::Memory,
        _ => unvented(zone, said.tile).trust,
    };
    let row = unvented(zone, false);
    let at = among.depth_for(row.least_r);
    let table = match (front, at) {
        (Stands::Applies, None) => Stands::BeyondSheet,
        (stands, _) => stands,
    };
    let mut all = vec![Mark {
        asks: Some(row.least_r),
        stands: table,
        ..code(Rule::UnventedTable, Bound::Least, at, trust)
    }];
    // Foam R ≥ share × (foam R + other R), so foam R ≥ other R × share ÷ (1 − share).
    let needed = airy * row.share / (1.0 - row.share);
    let at = among.depth_for(needed).filter(|_| needed > 0.0);
    let share = match (front, at) {
        (Stands::Applies, None) => Stands::BeyondSheet,
        (stands, _) => stands,
    };
    all.push(Mark {
        asks: Some(row.share * 100.0),
        stands: share,
        ..Mark::new(Rule::UnventedShare, Bound::Least, at, Trust::Derived)
    });
    let at = tight_at(among.foam, CLASS_TWO_PERM, among.old_in);
    let (stands, lacks) = match (row.class_two, at) {
        (false, _) => (Stands::NotInZone, Vec::new()),
        (true, None) => (Stands::Blank, vec!["permeance"]),
        (true, Some(_)) => (Stands::Applies, Vec::new()),
    };
    all.push(Mark {
        asks: Some(CLASS_TWO_PERM),
        stands,
        lacks,
        ..code(Rule::FoamRetarder, Bound::Least, at, Trust::Retold)
    });
    // No retarder of class I stands on the room side of an unvented roof, whatever lies between.
    if said.inner == Some("class_1") {
        let stands = Stands::NotMet;
        all.push(Mark { stands, ..code(Rule::InnerRetarder, Bound::Condition, None, Trust::Retold) });
    }
    all
}

fn wall(
    around: &Around<'_>,
    said: &Said,
    zone: Zone,
    among: &Among<'_>,
    cavity: Option<Inches>,
) -> Vec<Mark> {
    let code = |rule, bound, at, trust| Mark {
        section: "R702.7",
        edition: "IRC 2021",
        ..Mark::new(rule, bound, at, trust)
    };
    // A member whose depth nobody has said counts as deep: that asks for more.
    let member = around.build.and_then(|build| build.member_in).or(cavity);
    let row = class_three(zone, member.is_none_or(|member| member.0 > SHALLOW_MEMBER_IN + NOISE));
    let outside = around.build.map_or(0.0, outside_r);
    let airy = around.build.map_or(0.0, |build| build.airy_r().0);
    // Only since 2021 does insulation outside of the sheathing count with the foam.
    let counts = if around.place.edition.is_some_and(Edition::newer_map) { outside } else { 0.0 };
    let asks = row.map(|row| (row.least_r - counts).max(0.0));
    let tight = tight_at(among.foam, FOAM_MOST_PERM, among.old_in);
    let warm = asks.and_then(|r| among.depth_for(r));
    let at = warm.map(|warm| Inches(tight.map_or(warm.0, |tight| tight.0.max(warm.0))));
    let mut lacks = Vec::new();
    let stands = match (row, in_front(around.build, airy), said.inner) {
        (None, ..) => Stands::NotInZone,
        (_, front @ (Stands::NotSaid | Stands::NothingInFront), _) => front,
        (_, _, None) => Stands::NotSaid,
        (_, _, Some(inner)) if inner != "class_3" => Stands::OtherRetarder,
        _ if tight.is_none() => {
            lacks.push("permeance");
            Stands::Blank
        }
        _ if at.is_none() => Stands::BeyondSheet,
        _ => Stands::Applies,
    };
    let mut all =
        vec![Mark { asks, stands, lacks, ..code(Rule::ClassThree, Bound::Least, at, Trust::Memory) }];
    let class = match said.inner {
        Some("class_1") => 1,
        Some("class_2") => 2,
        Some("class_3") => 3,
        _ => return all,
    };
    if let Some((allowed, trust)) = inner_class(zone, class) {
        let trust = if around.place.edition == Some(Edition::Y2021) { trust } else { Trust::Memory };
        let stands = if allowed { Stands::Applies } else { Stands::NotMet };
        all.push(Mark { stands, ..code(Rule::InnerRetarder, Bound::Condition, None, trust) });
    }
    all
}

/// R of the insulation outside of what the foam is sprayed on.
fn outside_r(build: &Build) -> f64 {
    let outside = build.layers.iter().filter(|layer| layer.position == Position::Outside && layer.insulation);
    outside.map(|layer| layer.r.0).sum()
}
