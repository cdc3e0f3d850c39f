//! What has to stand over the foam, and what it costs.

use super::fire_marks::rim_excepts;
use super::{Around, Exposure};
use crate::climate::Edition;
use crate::findings::Trust;
use crate::job::{Part, Reader, entry};
use crate::measure::{Cents, Inches, SquareFeet};
use serde::Serialize;

/// What the fire rules ask over foam in a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum CoverAsked {
    /// Nobody has said what the room is used for.
    NotSaid,
    /// A thermal barrier.
    Thermal,
    /// An ignition barrier is enough: an attic or crawlspace that is entered only to service something.
    Ignition,
    /// The foam faces the weather: a coating against sun and rain.
    Weather,
    /// Nothing: the exception for a rim holds.
    Nothing,
}

/// The cover over the foam of a surface.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Cover {
    /// What is asked.
    pub asked: CoverAsked,
    /// The cover that was chosen, a word of the table of fields; empty where none was.
    pub chosen: &'static str,
    /// Whether it is one of those that are asked for; `None` where none was chosen, and where only a test report can
    /// tell.
    pub enough: Option<bool>,
    /// How far that is to be trusted; `None` where no table lists it.
    pub trust: Option<Trust>,
    /// Its price for a square foot.
    pub price_ft2: Option<Cents>,
    /// The area that it covers: the whole outline less the openings; `None` where neither cover nor price is known.
    pub area_ft2: Option<SquareFeet>,
    /// What it costs.
    pub cost: Option<Cents>,
}

/// Whether a cover is a thermal barrier, and how far that is to be trusted; `None` for one that no table lists. Every
/// listed cover that is not a thermal barrier is an ignition barrier, and a thermal barrier is one too.
///
/// Thermal barriers (IRC R316.4): ½ in gypsum board was read; one tested to NFPA 275 and 23/32 in wood panel as the
/// edition of 2015 is quoted in a forum of inspectors, the panel not yet in the texts quoted of earlier ones. Ignition
/// barriers (R316.5.3, R316.5.4): 3/8 in particleboard, ¼ in hardboard, 3/8 in gypsum, 0.016 in steel and ¼ in
/// fiber-cement were read in the edition of 2018; 1½ in mineral fiber and ¼ in wood panel as an inspector's article
/// quotes that of 2006.
pub(super) fn thermal(cover: &str, edition: Option<Edition>) -> Option<(bool, Trust)> {
    Some(match cover {
        "gypsum" => (true, Trust::Read),
        "tested_barrier" => (true, Trust::Retold),
        "wood_panel" => (edition != Some(Edition::Y2009), Trust::Retold),
        "mineral_fiber" | "thin_panel" => (false, Trust::Retold),
        "particleboard" | "hardboard" | "thin_gypsum" | "steel_sheet" | "fiber_cement" => {
            (false, Trust::Read)
        }
        _ => return None,
    })
}

/// What is asked over the foam of a surface. `thickest` is the thickest aim.
///
/// In words: the use of the room here, else that of the job's. Open to weather: a coating. A rim within its
/// exception: nothing. Entered only to service something: an ignition barrier. Any other room: a thermal barrier.
pub(super) fn asked(around: &Around<'_>, exposure: Exposure, thickest: Inches) -> CoverAsked {
    let of_job = || entry(&around.job.entries, "room_use").map(|entered| entered.text.trim());
    match exposure.room.or_else(of_job) {
        Some("weather") => CoverAsked::Weather,
        _ if rim_excepts(around, exposure, thickest) => CoverAsked::Nothing,
        Some("service") => CoverAsked::Ignition,
        Some("living" | "storage" | "garage") => CoverAsked::Thermal,
        _ => CoverAsked::NotSaid,
    }
}

/// Whether a cover is enough for what is asked. A coating that was tested without a barrier is enough only by its
/// report for this foam, at this thickness or more (IRC R316.6, as an inspector's article quotes that of 2006): no
/// table can say.
pub(super) fn enough(asked: CoverAsked, cover: &str, edition: Option<Edition>) -> Option<bool> {
    match (asked, thermal(cover, edition)) {
        (CoverAsked::Nothing, listed) => listed.map(|_| true),
        (CoverAsked::Weather, _) => None,
        (CoverAsked::NotSaid, Some((thermal, _))) => thermal.then_some(true),
        (CoverAsked::Thermal, Some((thermal, _))) => Some(thermal),
        (CoverAsked::Ignition, Some(_)) => Some(true),
        (CoverAsked::Thermal | CoverAsked::Ignition, None) if cover == "none" => Some(false),
        (_, None) => None,
    }
}

/// The cover of a surface. In words: cost = price for a square foot × (whole outline − openings), to the cent.
pub(super) fn cover(around: &Around<'_>, exposure: Exposure, thickest: Inches, reader: &mut Reader) -> Cover {
    let surface = around.surface;
    let asked = asked(around, exposure, thickest);
    let (chosen, edition) = (exposure.cover, around.place.edition);
    let price = reader.take(Part::Surface, surface.id, &surface.entries, "cover_price");
    let price_ft2 = price.map(|taken| Cents(libm::round(taken.value.likely) as i64));
    let covered = |gross: SquareFeet, openings: SquareFeet| SquareFeet((gross.0 - openings.0).max(0.0));
    let area = around.area.filter(|_| !chosen.is_empty() || price.is_some());
    let area_ft2 = area.map(|area| covered(area.gross_ft2.likely, area.openings_ft2.likely));
    let cost = price_ft2.zip(area_ft2).filter(|_| chosen != "none");
    Cover {
        asked,
        chosen,
        enough: enough(asked, chosen, edition),
        trust: thermal(chosen, edition).map(|(_, trust)| trust),
        price_ft2,
        area_ft2,
        // Far below what whole numbers hold: the table of fields bounds both.
        cost: cost.map(|(price, area)| Cents(libm::round(price.0 as f64 * area.0) as i64)),
    }
}

/// What all covers cost; `None` where none has a price. A sum that is past all bounds stays at the bound.
pub(crate) fn together(costs: impl Iterator<Item = Cents>) -> Option<Cents> {
    costs.reduce(|sum, cost| Cents(sum.0.saturating_add(cost.0)))
}
