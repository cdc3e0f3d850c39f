//! Board feet of one surface, line by line.

use super::Ground;
use crate::depth::{Depth, Patched, to_add};
use crate::foam::Foam;
use crate::job::{Part, Reader, Surface};
use crate::measure::{Band, BoardFeet, Inches, RValue, SquareFeet};
use crate::surfaces::SurfaceArea;
use serde::Serialize;

/// How the foam in place of a surface adds up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Sum {
    /// Net area × aim, and nothing else.
    Plain,
    /// (Net area + wrap × aim) × aim, and nothing else.
    Wrapped,
    /// From its [`Lines`].
    Lines,
    /// From its [`Lines`], each over an area that changes with the depth.
    WrappedLines,
    /// From its [`Lines`], one of which fills pockets.
    Filled,
    /// From its [`Lines`], both.
    WrappedFilled,
}

/// The lines of a surface with old foam, patches or an uneven ground.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Lines {
    /// Net area without the patches.
    pub rest_ft2: Band<SquareFeet>,
    /// What is there already, on the mean and at both ends; zero where nothing is.
    pub there_in: Band<Inches>,
    /// What is added there.
    pub add_in: Band<Inches>,
    /// Half-way through what is added, the area without the patches; of a plane the same.
    pub mean_ft2: Band<SquareFeet>,
    /// Foam there.
    pub rest: Band<BoardFeet>,
    /// The patches.
    pub patches: Vec<PatchFoam>,
    /// The rest and the patches.
    pub flat: Band<BoardFeet>,
    /// What an uneven or curved ground takes more, in percent.
    pub uneven_pct: Band<f64>,
    /// The line for it.
    pub uneven: Band<BoardFeet>,
    /// What fills the pockets of rough stone to a plane.
    pub fill: Option<Band<BoardFeet>>,
}

/// One patch.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct PatchFoam {
    /// Its id in the job.
    pub id: u32,
    /// Its area.
    pub area_ft2: Band<SquareFeet>,
    /// Its depth, old foam included.
    pub depth_in: Band<Inches>,
    /// What is added there: its depth less what is there.
    pub add_in: Band<Inches>,
    /// Its area × what is added; of what is wrapped, its area half-way through that.
    pub feet: Band<BoardFeet>,
    /// The R that may be promised there.
    pub promised_r: Option<RValue>,
    /// The listed thickness of that R.
    pub promised_r_at_in: Option<Inches>,
}

/// What an uneven or curved ground takes more than its plane, in percent of the foam on it; nothing unless
/// entered.
pub fn uneven(surface: &Surface, reader: &mut Reader) -> Band<f64> {
    let taken = reader.take(Part::Surface, surface.id, &surface.entries, "uneven");
    taken.map_or(Band::exactly(0.0), |taken| taken.value)
}

/// Net area without the patches: least where they are largest, never below zero.
pub fn rest(net: Band<SquareFeet>, patches: &[Patched]) -> Band<SquareFeet> {
    let all = |of: fn(&Band<SquareFeet>) -> SquareFeet| -> f64 {
        patches.iter().map(|one| of(&one.area_ft2).0).sum()
    };
    let less = |net: SquareFeet, taken: f64| SquareFeet((net.0 - taken).max(0.0));
    Band {
        low: less(net.low, all(|band| band.high)),
        likely: less(net.likely, all(|band| band.likely)),
        high: less(net.high, all(|band| band.low)),
    }
}

/// Area × depth, each end by itself.
pub fn spread(area: Band<SquareFeet>, depth: Band<Inches>) -> Band<BoardFeet> {
    Band { low: area.low * depth.low, likely: area.likely * depth.likely, high: area.high * depth.high }
}

/// What each square foot of a surface grows by with an inch of depth: wrap ÷ net area. Half the curvature: 1 ÷ (2 ×
/// radius) outside a pipe, less than zero inside a tank, zero for a plane.
pub fn growth(area: &SurfaceArea) -> Band<f64> {
    let (wrap, net) = (area.wrap_ft2_in, area.net_ft2);
    let share = |wrap: f64, net: SquareFeet| if net.0 > 0.0 { wrap / net.0 } else { 0.0 };
    Band {
        low: share(wrap.low, net.low),
        likely: share(wrap.likely, net.likely),
        high: share(wrap.high, net.high),
    }
}

/// The area half-way through added foam: in words, area × (1 + growth × (2 × what is there + what is added)).
pub fn mean(
    area: Band<SquareFeet>,
    there: Band<Inches>,
    add: Band<Inches>,
    growth: Band<f64>,
) -> Band<SquareFeet> {
    let grown = |area: SquareFeet, there: Inches, add: Inches, growth: f64| {
        SquareFeet(area.0 * (1.0 + growth * (2.0 * there.0 + add.0)))
    };
    Band {
        low: grown(area.low, there.high, add.low, growth.low),
        likely: grown(area.likely, there.likely, add.likely, growth.likely),
        high: grown(area.high, there.low, add.high, growth.high),
    }
}

/// The depth at which foam that grows inwards closes what it lies in, in inches; infinite where it does not. Up to
/// there more depth is more foam.
pub fn closes_in(growth: Band<f64>) -> f64 {
    let least = growth.low.min(growth.likely).min(growth.high);
    if least < 0.0 { -0.5 / least } else { f64::INFINITY }
}

/// The foam in place of one surface; with its lines where there are more than one.
///
/// In words: in place = (net area − patches) × what is added + the sum of each patch's area × what is added
/// there, the share for an uneven ground on top, and net area × mean pocket where pockets are filled. Without any
/// of these it is net area × aim. Of what is wrapped each area is the one half-way through what is added, and a patch grows as the
/// rest does.
pub fn in_place(
    surface: &Surface,
    area: &SurfaceArea,
    depth: &Depth,
    patches: &[Patched],
    ground: &Ground,
    foam: Option<&Foam>,
) -> (Band<BoardFeet>, Option<Lines>) {
    let existing = depth.existing.as_ref();
    let there_in = existing.map_or(Band::exactly(Inches(0.0)), |there| there.depth_in);
    let growth = growth(area);
    let laid = |area, add| spread(mean(area, there_in, add, growth), add);
    let uneven_pct = ground.uneven_pct();
    let fill = (ground.pocket_in.0 > 0.0).then(|| spread(area.net_ft2, Band::exactly(ground.pocket_in)));
    if existing.is_none() && patches.is_empty() && uneven_pct.high <= 0.0 && fill.is_none() {
        return (laid(area.net_ft2, depth.aim_in), None);
    }
    let rest_ft2 = rest(area.net_ft2, patches);
    let add_in = depth.add_in();
    let mean_ft2 = mean(rest_ft2, there_in, add_in, growth);
    let rest = spread(mean_ft2, add_in);
    let patches: Vec<PatchFoam> = patches
        .iter()
        .map(|patch| {
            let add_in = to_add(patch.depth_in, existing);
            let promised = Inches((patch.depth_in.low.0 - depth.under_in.0 - depth.old_in().0).max(0.0));
            let r = foam.filter(|_| surface.shape.claims_r()).and_then(|foam| foam.promised_r(promised));
            PatchFoam {
                id: patch.id,
                area_ft2: patch.area_ft2,
                depth_in: patch.depth_in,
                add_in,
                feet: laid(patch.area_ft2, add_in),
                promised_r: r.map(|listed| listed.r),
                promised_r_at_in: r.map(|listed| listed.thickness_in),
            }
        })
        .collect();
    let column = |of: fn(&Band<BoardFeet>) -> BoardFeet| -> BoardFeet {
        of(&rest) + patches.iter().map(|one| of(&one.feet)).sum::<BoardFeet>()
    };
    let flat = Band {
        low: column(|band| band.low),
        likely: column(|band| band.likely),
        high: column(|band| band.high),
    };
    let share = |feet: BoardFeet, percent: f64| BoardFeet(feet.0 * percent / 100.0);
    let uneven = Band {
        low: share(flat.low, uneven_pct.low),
        likely: share(flat.likely, uneven_pct.likely),
        high: share(flat.high, uneven_pct.high),
    };
    let filled = fill.unwrap_or(Band::exactly(BoardFeet(0.0)));
    let in_place = Band {
        low: flat.low + uneven.low + filled.low,
        likely: flat.likely + uneven.likely + filled.likely,
        high: flat.high + uneven.high + filled.high,
    };
    let lines = Lines { rest_ft2, there_in, add_in, mean_ft2, rest, patches, flat, uneven_pct, uneven, fill };
    (in_place, Some(lines))
}
