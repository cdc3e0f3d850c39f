//! What the foam goes on: ribbed or corrugated metal, ribs, rough stone, or a factor.
//!
//! | file | holds |
//! |---|---|
//! | `ribbed` | the profile of a metal sheet |
//! | `ribs` | ribs and frames that are covered |
//! | `stone` | pockets of rough stone |
//!
//! A profile makes more of each square foot: it is a share on top of the foam, with whatever share was typed for a
//! curve. Pockets that are filled take so much foam whatever the depth is.
//!
//! To add a ground: its word in the field `ground`, a row of [`GROUNDS`], its formula, and its words.

mod ribbed;
mod ribs;
mod stone;
#[cfg(test)]
mod tests;

use super::uneven;
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Surface, entry};
use crate::measure::{Band, Inches, Kind};
use crate::surfaces::{Asked, Measure};
use serde::Serialize;

/// What a ground asks for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct GroundForm {
    /// The word pressed in the field `ground`.
    pub ground: &'static str,
    /// Its entries in the order in which they are asked, all of [`Part::Surface`].
    pub entries: &'static [Asked],
}

/// Every ground that asks for something; a flat one does not.
const GROUNDS: [GroundForm; 5] = [
    GroundForm {
        ground: "ribbed",
        entries: &[
            Asked::needed("rib_pitch"),
            Asked::needed("rib_depth"),
            Asked::needed("rib_top"),
            Asked::may("rib_bottom"),
        ],
    },
    GroundForm { ground: "wave", entries: PROFILE },
    GroundForm { ground: "ribs", entries: PROFILE },
    GroundForm {
        ground: "stone",
        entries: &[
            Asked::needed("stone_way").elsewhere(),
            Asked::may("pockets").elsewhere(),
            Asked::may("uneven").elsewhere(),
        ],
    },
    GroundForm { ground: "factor", entries: &[Asked::needed("ground_factor")] },
];

const PROFILE: &[Asked] = &[Asked::needed("rib_pitch"), Asked::needed("rib_depth")];

/// What every ground asks for.
pub fn grounds() -> impl Iterator<Item = &'static GroundForm> {
    GROUNDS.iter()
}

/// What the ground of a surface makes more of its foam.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Ground {
    /// The word pressed: `flat` where none was.
    pub on: &'static str,
    /// For stone, `fill` to a plane or `follow` it; else empty.
    pub way: &'static str,
    /// The measures of its profile. The pitch runs against the rest: its low is the widest.
    pub measures: Vec<Measure>,
    /// For a profile: the length of the sheet in one pitch, in inches.
    pub developed_in: Option<Band<f64>>,
    /// What it has more than its plane, in percent.
    pub more_pct: Band<f64>,
    /// The share typed for an uneven or curved ground, in percent.
    pub typed_pct: Band<f64>,
    /// For stone that is filled: the mean pocket.
    pub pocket_in: Inches,
    /// The deepest pocket: what the foam may be thicker there than anywhere else.
    pub deepest_in: Inches,
}

impl Ground {
    fn flat(typed_pct: Band<f64>) -> Self {
        let (measures, nothing) = (Vec::new(), Inches(0.0));
        let more_pct = Band::exactly(0.0);
        Self {
            on: "flat",
            way: "",
            measures,
            developed_in: None,
            more_pct,
            typed_pct,
            pocket_in: nothing,
            deepest_in: nothing,
        }
    }

    /// What the foam takes more than on a plane, in percent. In words: (1 + share typed) × (1 + share of the
    /// profile) − 1.
    pub fn uneven_pct(&self) -> Band<f64> {
        if self.more_pct == Band::exactly(0.0) {
            return self.typed_pct;
        }
        let both = |typed: f64, more: f64| ((1.0 + typed / 100.0) * (1.0 + more / 100.0) - 1.0) * 100.0;
        Band {
            low: both(self.typed_pct.low, self.more_pct.low),
            likely: both(self.typed_pct.likely, self.more_pct.likely),
            high: both(self.typed_pct.high, self.more_pct.high),
        }
    }

    /// A measure; zero where it was not entered.
    fn of(&self, field: &str) -> Band<f64> {
        let measure = self.measures.iter().find(|one| one.field == field);
        measure.map_or(Band::exactly(0.0), |one| one.value)
    }
}

/// What a surface's foam goes on; `None` while something that its ground needs is missing or cannot be, with a
/// finding that says so. What only seals is taken as flat: its ground is not asked.
pub fn ground(surface: &Surface, reader: &mut Reader) -> Option<Ground> {
    let (id, entries) = (surface.id, &surface.entries);
    let mut ground = Ground::flat(uneven(surface, reader));
    if !surface.shape.claims_r() {
        return Some(ground);
    }
    let on = reader.choice(Part::Surface, id, entries, "ground").unwrap_or("flat");
    let Some(form) = GROUNDS.iter().find(|form| form.ground == on) else { return Some(ground) };
    ground.on = form.ground;
    let mut complete = true;
    for asked in form.entries.iter().filter(|asked| !asked.elsewhere) {
        if !asked.needed && entry(entries, asked.field).is_none() {
            continue;
        }
        let Some(taken) = reader.need(Part::Surface, id, entries, asked.field) else {
            complete = false;
            continue;
        };
        let Band { low, likely, high } = taken.value;
        // The wider the pitch, the fewer ribs.
        let value =
            if asked.field == "rib_pitch" { Band { low: high, likely, high: low } } else { taken.value };
        ground.measures.push(Measure { field: asked.field, value, default: taken.default });
    }
    if !complete {
        return None;
    }
    if on == "stone" {
        return stone::stone(surface, ground, reader);
    }
    if on == "factor" {
        ground.more_pct = ground.of("ground_factor").map(|factor| (factor - 1.0) * 100.0);
        return Some(ground);
    }
    profile(surface, ground, reader)
}

/// A ground that has a profile: how much longer the sheet is than its plane.
fn profile(surface: &Surface, mut ground: Ground, reader: &mut Reader) -> Option<Ground> {
    let (pitch, depth, top) = (ground.of("rib_pitch"), ground.of("rib_depth"), ground.of("rib_top"));
    let typed = entry(&surface.entries, "rib_bottom").is_some();
    let mut bottom = ground.of("rib_bottom");
    // Upright webs have the most of it.
    if ground.on == "ribbed" && !typed {
        let left = |pitch: f64, top: f64| (pitch - top).max(0.0);
        bottom = Band {
            low: left(pitch.low, top.low),
            likely: left(pitch.likely, top.likely),
            high: left(pitch.high, top.high),
        };
        ground.measures.push(Measure { field: "rib_bottom", value: bottom, default: true });
    }
    // What has to fit, and into what, at the end where it fits worst.
    let flats = if typed { top.high + bottom.high } else { top.high };
    let (field, given, most) = match ground.on {
        "ribbed" => (if typed { "rib_bottom" } else { "rib_top" }, flats, pitch.high),
        "wave" => ("rib_depth", depth.high, pitch.high / 2.0),
        _ => ("", 0.0, 0.0),
    };
    if given > most * (1.0 + 1e-9) {
        let finding = Finding::new(Code::ProfileImpossible, Part::Surface, surface.id, field)
            .with("given", reader.figure(Kind::Length, given))
            .with("most", reader.figure(Kind::Length, most));
        reader.say(finding);
        return None;
    }
    let column = |of: fn(Band<f64>) -> f64| match ground.on {
        "ribbed" => ribbed::ribbed_in(of(pitch), of(depth), of(top), of(bottom)),
        "wave" => ribbed::wave_in(of(pitch), of(depth)),
        _ => ribs::over_ribs_in(of(pitch), of(depth)),
    };
    let developed =
        Band { low: column(|one| one.low), likely: column(|one| one.likely), high: column(|one| one.high) };
    let more = |long: f64, pitch: f64| (long / pitch - 1.0).max(0.0) * 100.0;
    ground.more_pct = Band {
        low: more(developed.low, pitch.low),
        likely: more(developed.likely, pitch.likely),
        high: more(developed.high, pitch.high),
    };
    ground.developed_in = Some(developed);
    Some(ground)
}
