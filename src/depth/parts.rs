//! What a surface is made up of: foam that is there already, and patches at another depth.

use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Surface, entry};
use crate::measure::{Band, Inches, Kind, SquareFeet};
use crate::surfaces::SurfaceArea;
use serde::Serialize;

/// Foam that is on the surface already.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Existing {
    /// Its depth: the thinnest, the mean and the thickest that was probed.
    pub depth_in: Band<Inches>,
    /// Whether it is the foam of the sheet, so that its R counts.
    pub same: bool,
    /// What is added to it for the aim: the aim less what is there, never below zero.
    pub add_in: Band<Inches>,
}

/// Foam that is there and is not the sheet's: its R does not count.
pub(super) fn of_another_kind(existing: Option<Existing>) -> Option<Existing> {
    existing.filter(|there| !there.same)
}

/// The mean of what is there, in inches; zero where nothing is.
pub(crate) fn there_in(existing: Option<&Existing>) -> f64 {
    existing.map_or(0.0, |there| there.depth_in.likely.0)
}

/// What has to be added for a depth: in words, the depth less what is there, never below zero; least where
/// the old foam is thickest.
pub(crate) fn to_add(depth: Band<Inches>, existing: Option<&Existing>) -> Band<Inches> {
    let Some(there) = existing else { return depth };
    let less = |depth: Inches, there: Inches| Inches((depth.0 - there.0).max(0.0));
    Band {
        low: less(depth.low, there.depth_in.high),
        likely: less(depth.likely, there.depth_in.likely),
        high: less(depth.high, there.depth_in.low),
    }
}

/// Reads what is there; `None` where nothing was entered.
pub fn existing(surface: &Surface, reader: &mut Reader) -> Option<Existing> {
    let taken = reader.take(Part::Surface, surface.id, &surface.entries, "existing")?;
    let same = reader.choice(Part::Surface, surface.id, &surface.entries, "existing_same") == Some("yes");
    let depth_in = taken.value.map(Inches);
    (depth_in.high.0 > 0.0).then_some(Existing { depth_in, same, add_in: Band::exactly(Inches(0.0)) })
}

/// A patch of a surface at a depth of its own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patched {
    /// Its id in the job.
    pub id: u32,
    /// Its net area.
    pub area_ft2: Band<SquareFeet>,
    /// Its depth, foam that is there already included.
    pub depth_in: Band<Inches>,
}

/// The patches of a surface, in its order; `None` where one is not complete or all take more than the surface.
///
/// A patch's area is as typed, or a share of the surface's net area; where both are filled in the area counts.
pub fn patches(surface: &Surface, area: Option<&SurfaceArea>, reader: &mut Reader) -> Option<Vec<Patched>> {
    let mut all = Vec::with_capacity(surface.patches.len());
    let mut complete = true;
    for patch in &surface.patches {
        let by_share = entry(&patch.entries, "area").is_none() && entry(&patch.entries, "share").is_some();
        let area_ft2 = if by_share {
            let share = reader.take(Part::Patch, patch.id, &patch.entries, "share");
            share.zip(area).map(|(share, area)| Band {
                low: SquareFeet(area.net_ft2.low.0 * share.value.low / 100.0),
                likely: SquareFeet(area.net_ft2.likely.0 * share.value.likely / 100.0),
                high: SquareFeet(area.net_ft2.high.0 * share.value.high / 100.0),
            })
        } else {
            let typed = reader.need(Part::Patch, patch.id, &patch.entries, "area");
            typed.map(|area| area.value.map(SquareFeet))
        };
        let depth = reader.need(Part::Patch, patch.id, &patch.entries, "depth");
        match area_ft2.zip(depth) {
            Some((area_ft2, depth)) => {
                all.push(Patched { id: patch.id, area_ft2, depth_in: depth.value.map(Inches) });
            }
            None => complete = false,
        }
    }
    let taken: f64 = all.iter().map(|one| one.area_ft2.likely.0).sum();
    let net = area.map_or(f64::INFINITY, |area| area.net_ft2.likely.0);
    if taken > net * (1.0 + 1e-9) {
        let finding = Finding::new(Code::PatchesExceed, Part::Surface, surface.id, "patches")
            .with("given", reader.figure(Kind::Area, taken))
            .with("most", reader.figure(Kind::Area, net));
        reader.say(finding);
        return None;
    }
    complete.then_some(all)
}
