//! The energy code as it bears on one surface: which of its rows is asked for, and what depth of foam meets it.
//!
//! The kind of work comes first. A new part takes the table; on a part that stands a cavity that the work opens is
//! filled, and one that it does not open owes nothing (both from memory). Of the ways through the table the one
//! that was chosen applies; the others are listed as not chosen.

use super::marks::NOISE;
use super::parts::of_another_kind;
use super::place::{Said, component};
use super::{Around, Bound, Mark, Rule, Stands};
use crate::assembly::{Build, Position};
use crate::climate::{
    Component, Edition, ROption, RRow, Work, floor_fill, r_row, small_ceiling, u_row, warm_humid_frees,
};
use crate::findings::Trust;
use crate::foam::Foam;
use crate::job::{Job, Reader, entry};
use crate::measure::{Inches, RValue};
use crate::surfaces;

/// What a row asks at least before a floor that fills its cavity, or a small ceiling, may stand in its place.
const EXCEPTED_FROM_R: f64 = 30.0;

/// What foam lies on and among, for the rows of the table.
#[derive(Clone, Copy)]
pub(super) struct Among<'a> {
    /// The foam.
    pub(super) foam: &'a Foam,
    /// Whether it runs unbroken across the members.
    pub(super) across: bool,
    /// R of the insulation in front of it between the members.
    pub(super) fill_r: f64,
    /// R of the insulation that runs unbroken, the foam left out.
    pub(super) continuous_r: f64,
    /// Old foam whose R does not count, at its thickest: all of it lies under the new.
    pub(super) old_in: f64,
}

impl<'a> Among<'a> {
    /// The foam among what a surface is built of. A rim is always cut by its joists.
    pub(super) fn of(around: &Around<'a>, said: &Said, foam: &'a Foam) -> Self {
        let build = around.build;
        let across = build.map_or(said.across, |build| build.across);
        Among {
            foam,
            across: across && around.component != Some(Component::Rim),
            fill_r: build.map_or(0.0, |build| build.fill_r().0),
            continuous_r: build.map_or(0.0, |build| build.continuous_r().0),
            old_in: old_in(around),
        }
    }

    /// The depth at which the foam itself reaches an R, old foam included; zero where it has none to reach.
    pub(super) fn depth_for(&self, r: f64) -> Option<Inches> {
        if r <= NOISE {
            return Some(Inches(0.0));
        }
        self.foam.depth_for(RValue(r)).map(|depth| Inches(depth.0 + self.old_in))
    }

    /// What one way through a row asks of the foam; `None` where no foam here can meet it.
    ///
    /// In words: between members: cavity R − fill, if the continuous part is met without the foam. Unbroken: the
    /// continuous part less what runs unbroken already, if fill meets the cavity part; where no continuous part
    /// is open, the cavity part less fill, since unbroken foam is worth no less than foam between members.
    fn asks(&self, option: ROption) -> Option<f64> {
        let continuous_met = self.continuous_r >= option.continuous - NOISE;
        match (continuous_met, self.across) {
            (true, _) => Some((option.cavity - self.fill_r).max(0.0)),
            (false, true) if self.fill_r >= option.cavity - NOISE => {
                Some((option.continuous - self.continuous_r).max(0.0))
            }
            _ => None,
        }
    }

    /// The cheapest way through a row that foam here can meet: the least R that one of them asks of it, and its
    /// depth, which is `None` beyond the foam sheet. `None` where no way can be met by foam here.
    pub(super) fn cheapest(&self, row: &RRow) -> Option<(f64, Option<Inches>)> {
        let asked = row.options.iter().filter_map(|option| self.asks(*option));
        let least = asked.reduce(f64::min)?;
        Some((least, self.depth_for(least)))
    }
}

/// Old foam whose R does not count: its thickest.
pub(super) fn old_in(around: &Around<'_>) -> f64 {
    of_another_kind(around.existing).map_or(0.0, |there| there.depth_in.high.0)
}

/// How deep foam is that fills a cavity, with what lies in front of it taken off; `None` where the cavity or the
/// thickness of something in it is not known.
fn filled(cavity: Option<Inches>, build: Option<&Build>) -> Option<Inches> {
    let layers = build.map_or(&[][..], |build| &build.layers);
    let mut in_front = 0.0;
    for layer in layers.iter().filter(|layer| layer.position == Position::Cavity) {
        in_front += layer.thickness_in?.0;
    }
    cavity.map(|cavity| Inches((cavity.0 - in_front).max(0.0)))
}

/// What the code asks of work on a part that stands; from memory.
fn standing(around: &Around<'_>, said: &Said, cavity: Option<Inches>) -> Option<Mark> {
    if !matches!(around.place.work?, Work::Alteration | Work::InsulationOnly) {
        return None;
    }
    let at = filled(cavity, around.build);
    let fill = Mark::new(Rule::FillCavity, Bound::Least, at, Trust::Memory);
    Some(match said.opened {
        Some(true) if at.is_some() => fill,
        Some(false) => Mark::new(Rule::NoLeast, Bound::Condition, None, Trust::Memory),
        _ => Mark { stands: Stands::NotSaid, ..fill },
    })
}

/// Every row of the energy code that bears on a surface; none while the zone, the edition, the foam or what the
/// surface is has not been said.
pub(super) fn code_marks(around: &Around<'_>, said: &Said, cavity: Option<Inches>) -> Vec<Mark> {
    let foam = around.foam.filter(|_| around.surface.shape.claims_r());
    let Some((foam, component)) = foam.zip(around.component) else { return Vec::new() };
    if matches!(component, Component::ColdRoom | Component::Other) {
        return Vec::new();
    }
    let mut all: Vec<Mark> = standing(around, said, cavity).into_iter().collect();
    let Some((edition, zone)) = around.place.edition.zip(around.place.zone) else { return all };
    let among = Among::of(around, said, foam);
    let row = r_row(edition, zone, component);
    let most_r = row.map_or(0.0, |row| row.options.iter().map(|one| one.cavity).fold(0.0, f64::max));
    let fills = component == Component::Floor && most_r >= EXCEPTED_FROM_R;
    let small = component == Component::RoofDeck && most_r > EXCEPTED_FROM_R;
    // A way that this part of the building does not have leaves the row itself.
    let path = match said.path {
        "fill" if !fills => "r_value",
        "small_ceiling" if !small => "r_value",
        "u_factor" if u_row(edition, zone, component).is_none() => "r_value",
        path => path,
    };
    // A note from memory frees nothing.
    let freed = around.place.warm_humid == Some(true)
        && warm_humid_frees(edition, zone, component).is_some_and(Trust::decides);
    let stands = |by: &str| match around.place.work {
        None => Stands::NotSaid,
        Some(Work::Alteration | Work::InsulationOnly) => Stands::NotThisWork,
        Some(_) if freed => Stands::NotInZone,
        Some(_) if path != by => Stands::NotChosen,
        Some(_) => Stands::Applies,
    };
    if let Some(row) = row {
        all.push(r_mark(&row, &among, stands("r_value")));
        if fills {
            all.push(floor_mark(&row, &among, edition, filled(cavity, around.build), stands("fill")));
        }
        if small {
            all.push(ceiling_mark(around, &among, edition, stands("small_ceiling")));
        }
    }
    if let Some(row) = u_row(edition, zone, component) {
        let known = around.build.filter(|build| build.with(foam, Inches(1.0)).is_some());
        let there = of_another_kind(around.existing).map_or(0.0, |there| there.depth_in.likely.0);
        let at = known.and_then(|build| build.depth_for_u(foam, row.most));
        // A row that was read decides nothing over films or layers whose R is from memory.
        let trust = if known.is_some_and(|build| build.from_memory) { Trust::Memory } else { row.trust };
        let stands = match (stands("u_factor"), known.is_some(), at) {
            (Stands::Applies, false, _) => Stands::NotSaid,
            (Stands::Applies, true, None) => Stands::BeyondSheet,
            (stands, ..) => stands,
        };
        all.push(Mark {
            asks: Some(row.most),
            section: row.section,
            edition: row.edition,
            stands,
            ..Mark::new(Rule::CodeU, Bound::Mean, at.map(|at| Inches(at.0 + there)), trust)
        });
    }
    all
}

fn r_mark(row: &RRow, among: &Among<'_>, stands: Stands) -> Mark {
    let asked = row.options.iter().any(|one| one.cavity > 0.0 || one.continuous > 0.0);
    let cheapest = among.cheapest(row);
    let at = cheapest.and_then(|(_, at)| at).filter(|_| asked);
    let stands = match (stands, asked, at) {
        (Stands::Applies, false, _) => Stands::NotInZone,
        (Stands::Applies, true, None) => Stands::BeyondSheet,
        (stands, ..) => stands,
    };
    Mark {
        asks: cheapest.map(|(r, _)| r),
        printed: row.printed,
        section: row.section,
        edition: row.edition,
        stands,
        ..Mark::new(Rule::CodeR, Bound::Least, at, row.trust)
    }
}

/// A floor whose cavity is filled: at least to the cavity's depth, and to R-19 in all.
fn floor_mark(
    row: &RRow,
    among: &Among<'_>,
    edition: Edition,
    filled: Option<Inches>,
    stands: Stands,
) -> Mark {
    let (least_r, trust) = floor_fill(edition);
    let trust = if row.trust.decides() { trust } else { row.trust };
    let asks = (least_r - among.fill_r).max(0.0);
    let reached = among.depth_for(asks);
    let stands = match (stands, filled, reached) {
        (Stands::Applies, None, _) => Stands::NotSaid,
        (Stands::Applies, Some(_), None) => Stands::BeyondSheet,
        (stands, ..) => stands,
    };
    let at = filled.zip(reached).map(|(filled, reached)| Inches(filled.0.max(reached.0)));
    Mark {
        asks: Some(asks),
        section: row.section,
        edition: row.edition,
        stands,
        ..Mark::new(Rule::FillFloor, Bound::Least, at, trust)
    }
}

/// The gross area of all ceilings of a job that go by the row for small ones, of ranges the larger; `None` while one
/// of them is not measured.
pub(super) fn small_ceilings(job: &Job) -> Option<f64> {
    let mut reader = Reader::new(job.units);
    let mut sum = 0.0;
    for surface in &job.surfaces {
        let small =
            entry(&surface.entries, "code_path").is_some_and(|one| one.text.trim() == "small_ceiling");
        if small && component(surface, &mut reader) == Some(Component::RoofDeck) {
            sum += surfaces::measure(surface, &mut reader)?.gross_ft2.high.0;
        }
    }
    Some(sum)
}

/// A ceiling without an attic that is small enough for R-30.
fn ceiling_mark(around: &Around<'_>, among: &Among<'_>, edition: Edition, stands: Stands) -> Mark {
    let row = small_ceiling(edition);
    let asks = (row.least_r - among.fill_r).max(0.0);
    let at = among.depth_for(asks);
    let gross = around.area.and_then(|_| small_ceilings(around.job));
    let stands = match (stands, gross, at) {
        (Stands::Applies, None, _) => Stands::NotSaid,
        (Stands::Applies, Some(gross), _) if gross > row.most_ft2 + NOISE => Stands::NotMet,
        (Stands::Applies, Some(_), None) => Stands::BeyondSheet,
        (stands, ..) => stands,
    };
    Mark {
        asks: Some(asks),
        section: row.section,
        edition: "IECC 2018",
        stands,
        ..Mark::new(Rule::SmallCeiling, Bound::Least, at, row.trust)
    }
}
