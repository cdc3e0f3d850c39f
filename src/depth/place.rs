//! What a surface is in its building, and what the rules ask of it in each climate zone.

use super::{Around, Rule, choose, existing, marks};
use crate::assembly;
use crate::climate::{self, Component, Place, Zone, r_row};
use crate::foam;
use crate::job::{Job, Part, Reader, Shape, Surface};
use crate::measure::Inches;
use crate::surfaces;
use serde::Serialize;

/// What a surface is in the building: as said, or a rim by its shape.
pub(crate) fn component(surface: &Surface, reader: &mut Reader) -> Option<Component> {
    let said = reader.choice(Part::Surface, surface.id, &surface.entries, "component");
    let said = said.and_then(Component::named);
    said.or((surface.shape == Shape::RimRun).then_some(Component::Rim))
}

/// What was pressed of a surface that the rules hang on.
#[derive(Clone, Copy)]
pub(super) struct Said {
    /// Whether the foam runs unbroken across the members.
    pub(super) across: bool,
    /// Which way through the energy code was chosen: a word of the table of fields.
    pub(super) path: &'static str,
    /// Whether the work opens the cavity; `None` while nobody has said.
    pub(super) opened: Option<bool>,
    /// What stands on the room side: a word of the table of fields.
    pub(super) inner: Option<&'static str>,
    /// Whether the roof is tiled.
    pub(super) tile: bool,
}

impl Said {
    /// Reads it.
    pub(super) fn of(surface: &Surface, reader: &mut Reader) -> Self {
        let mut word = |field| reader.choice(Part::Surface, surface.id, &surface.entries, field);
        Said {
            across: word("runs") == Some("across"),
            path: word("code_path").unwrap_or("r_value"),
            opened: word("cavity_opened").map(|word| word == "yes"),
            inner: word("inner_retarder"),
            tile: word("tile_roof") == Some("yes"),
        }
    }
}

/// What was not said, so that the rules of the energy code cannot be asked; nothing for what no house table is for.
pub(super) fn missing(place: &Place, component: Option<Component>, said: &Said) -> Vec<&'static str> {
    if matches!(component, Some(Component::ColdRoom | Component::Other)) {
        return Vec::new();
    }
    let standing = matches!(place.work, Some(climate::Work::Alteration | climate::Work::InsulationOnly));
    let mut all = Vec::new();
    for (field, lacks) in [
        ("work", place.work.is_none()),
        ("zone", place.zone.is_none()),
        ("edition", place.edition.is_none()),
        ("component", component.is_none()),
        ("cavity_opened", standing && said.opened.is_none()),
    ] {
        if lacks {
            all.push(field);
        }
    }
    all
}

/// What the rules ask of a surface in one zone.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ZoneDepth {
    /// The zone.
    pub zone: Zone,
    /// What the R-value table prints there; empty where it has no row or the edition is not said.
    pub printed: &'static str,
    /// The least depth, or the least on the mean where that is more.
    pub least_in: Option<Inches>,
    /// The rule that decides it.
    pub least_by: Option<Rule>,
    /// The most.
    pub most_in: Option<Inches>,
    /// The rule that decides it.
    pub most_by: Option<Rule>,
    /// Whether they cross.
    pub cross: bool,
    /// What was not said besides the zone, so that rules could not be asked: the same in every zone.
    pub missing: Vec<&'static str>,
}

/// What the rules ask of a surface in every zone, warmest first; empty where no surface has this id.
///
/// The same marks as for the surface itself, with the zone replaced and the user's own target left out.
pub fn by_zone(job: &Job, surface: u32) -> Vec<ZoneDepth> {
    let Some(surface) = job.surfaces.iter().find(|one| one.id == surface) else { return Vec::new() };
    // What there is to say about the entries is said with the estimate.
    let mut reader = Reader::new(job.units);
    let reader = &mut reader;
    let sheet =
        job.foams.iter().find(|one| one.id == if surface.foam == 0 { job.foam } else { surface.foam });
    let foam = sheet.and_then(|sheet| foam::sheet(sheet, reader));
    let area = surfaces::measure(surface, reader);
    let component = component(surface, reader);
    let build = assembly::build(surface, component, area.as_ref(), reader);
    let place = climate::place(job, reader);
    let said = Said::of(surface, reader);
    let mut missing = missing(&place, component, &said);
    missing.retain(|field| *field != "zone");
    let exposure = choose::exposure(surface, reader);
    let cavity = choose::cavity(surface, area.as_ref(), reader);
    let existing = existing(surface, reader);
    let in_zone = |zone| {
        let place = Place { zone: Some(zone), ..place };
        let around = Around {
            job,
            place: &place,
            surface,
            component,
            build: build.as_ref(),
            largest: None,
            area: area.as_ref(),
            foam: foam.as_ref(),
            existing,
            spread_ft2: None,
            growth: 0.0,
            one_kit: None,
            left: None,
        };
        let asked = marks::asked(&around, &said, None, cavity);
        let open = marks::window(&marks::marks(&around, exposure, asked, cavity, Inches(0.0)));
        let least = marks::least_aim(open, Inches(0.0));
        let crosses = |most: Inches| least.is_some_and(|(least, _)| least.0 > most.0 + marks::NOISE);
        let row =
            place.edition.zip(component).and_then(|(edition, component)| r_row(edition, zone, component));
        ZoneDepth {
            zone,
            printed: row.map_or("", |row| row.printed),
            least_in: least.map(|(least, _)| least),
            least_by: least.map(|(_, rule)| rule),
            most_in: open.most_in,
            most_by: open.most_by,
            cross: open.most_in.is_some_and(crosses),
            missing: missing.clone(),
        }
    };
    Zone::all().map(in_zone).collect()
}
