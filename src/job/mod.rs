//! What a person entered about a job, and nothing that follows from it.
//!
//! A measured entry is kept as text, with the unit of its box and, where it was asked, the meaning chosen.
//! Any text decodes; a bad one becomes a [finding](crate::findings::Finding) beside its field and stops
//! nothing else. Everything derived is in [`Estimate`](crate::Estimate).

pub mod document;
mod fields;
mod reader;
mod site;

pub use fields::{Field, Part, field, fields};
pub(crate) use reader::End;
pub use reader::{Reader, Taken};
pub use site::{Event, EventOf, ForecastDay, ReadingOf, SiteReading, WarmReading, Warming};

use crate::measure::{Sense, Unit, Units, WallMinutes};
use serde::{Deserialize, Serialize};

/// The version of the job document that this build writes.
pub const JOB_VERSION: u32 = 4;

/// An entry as typed: the text, the unit of the box it was typed into, and the meaning pressed if it had two.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Entered {
    /// Which field of its part: a name from the [table of fields](fields()).
    pub field: String,
    /// What was typed, untouched.
    pub text: String,
    /// The unit of the box at the time of typing; without one, the field's own for the job's units.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(target_arch = "wasm32", tsify(optional))]
    pub unit: Option<Unit>,
    /// The meaning pressed, where the text has more than one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(target_arch = "wasm32", tsify(optional))]
    pub sense: Option<Sense>,
}

/// An instant and the clock that the person saw: milliseconds since 1970 UTC, and minutes east of UTC.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Now {
    /// Milliseconds since 1970-01-01T00:00Z.
    pub ms: f64,
    /// Minutes east of UTC (−300 for US Central in summer).
    pub offset_min: i32,
}

impl Now {
    /// What the clock on the wall showed: minutes since the wall's own 1970-01-01 00:00.
    pub fn wall(self) -> WallMinutes {
        WallMinutes(self.ms / 60_000.0 + f64::from(self.offset_min))
    }
}

/// A whole job: the document that is kept on the device, saved to a file and sent on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Job {
    /// Always `foamwright-job`.
    pub format: String,
    /// The document's version, [`JOB_VERSION`].
    pub version: u32,
    /// Random, made once; two files with the same id are states of one job.
    pub id: String,
    /// The next id for a listed thing. Ids are never used again.
    pub next_id: u32,
    /// What a bare number means, and how figures are written.
    #[serde(default)]
    pub units: Units,
    /// The job's name.
    #[serde(default)]
    pub name: String,
    /// The site's address or any other line that finds it again.
    #[serde(default)]
    pub place: String,
    /// Free text.
    #[serde(default)]
    pub note: String,
    /// Entries of the whole job ([`Part::Job`]): date, allowances, limits.
    #[serde(default)]
    pub entries: Vec<Entered>,
    /// The foam of every surface that names none of its own: an id in `foams`.
    #[serde(default)]
    pub foam: u32,
    /// What is to be foamed.
    #[serde(default)]
    pub surfaces: Vec<Surface>,
    /// Copies of the foam sheets that the job was worked out with.
    #[serde(default)]
    pub foams: Vec<FoamSheet>,
    /// Copies of the kit sheets that may be bought.
    #[serde(default)]
    pub kits: Vec<KitSheet>,
    /// Kits that are already there, sealed or opened: copies from the person's shelf ([`Part::Owned`]).
    #[serde(default)]
    pub stock: Vec<KitSheet>,
    /// The purchase that the person chose over the least-cost one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(target_arch = "wasm32", tsify(optional))]
    pub purchase: Option<ChosenPurchase>,
    /// Temperatures and humidity read on site.
    #[serde(default)]
    pub readings: Vec<SiteReading>,
    /// Readings of earlier rounds, kept to be drawn beside the present ones. They count for nothing.
    #[serde(default)]
    pub rounds: Vec<SiteReading>,
    /// Kits that are warmed before the day, each group of them in one place.
    #[serde(default)]
    pub warming: Vec<Warming>,
    /// The forecast, a day each.
    #[serde(default)]
    pub forecast: Vec<ForecastDay>,
    /// What was done on the day, in the order in which it was done.
    #[serde(default)]
    pub events: Vec<Event>,
}

/// How a surface is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// An area typed as such, framing already out.
    TypedArea,
    /// Length × height of one plane without framing.
    Rectangle,
    /// The walls around a footprint: 2 × (length + width) × height.
    Footprint,
    /// A framed wall: studs on center, plates, openings.
    FramedWall,
    /// A framed floor or ceiling: joists on center.
    FramedFloor,
    /// A framed slope: rafters on center, measured along the slope.
    FramedSlope,
    /// The band around a floor: rim joists, with the lap onto sill plate and foundation.
    RimRun,
    /// Bays counted in both directions.
    Bays,
    /// A roof plane from its plan and its pitch.
    PitchedPlane,
    /// A gable: a triangle, with or without the wall under it.
    Gable,
    /// A band around a footprint or along a run, from one height to another.
    Band,
    /// A strip or bead that only seals: no R is claimed for it.
    Strip,
    /// A hip roof from its plan and its pitch: four planes.
    HipRoof,
    /// A triangle, by base and height or by its three sides.
    Triangle,
    /// A trapezoid: two parallel sides and the height between them.
    Trapezoid,
    /// Any plane, walked along its edges: a length and a turn each.
    Polygon,
    /// A curved roof or an arch, by its span and its rise or radius.
    Arch,
    /// A tank, bin or pipe, inside or outside.
    Cylinder,
    /// A dome, by its diameter and its rise.
    Dome,
    /// A box duct wrapped outside.
    BoxDuct,
    /// A round duct or pipe wrapped outside.
    RoundDuct,
    /// A room with each of its six faces on or off.
    Room,
    /// A long gap filled with a bead: no R is claimed for it.
    Gap,
    /// Holes around pipes and wires: no R is claimed for them.
    Penetrations,
}

/// How a surface's depth is arrived at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum DepthWay {
    /// The aim is typed.
    #[default]
    Typed,
    /// The least depth that reaches a target R on the foam's sheet.
    TargetR,
    /// Whatever one kit of a given size gives on this surface.
    OneKit,
    /// Whatever the kits for all other surfaces leave over.
    LeftOver,
    /// The least depth that the rules ask for here.
    Rules,
}

/// Something to be foamed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Surface {
    /// From the job's counter.
    pub id: u32,
    /// What the crew calls it.
    #[serde(default)]
    pub name: String,
    /// How it is measured.
    pub shape: Shape,
    /// Its measures and depth entries ([`Part::Surface`]). Entries that the present shape does not use are
    /// kept: changing the shape and back loses nothing.
    #[serde(default)]
    pub entries: Vec<Entered>,
    /// Whether framing is taken out of the area (only framed shapes have any).
    #[serde(default)]
    pub deduct_framing: bool,
    /// Windows, doors and other holes.
    #[serde(default)]
    pub openings: Vec<Opening>,
    /// Patches of it that get another depth.
    #[serde(default)]
    pub patches: Vec<Patch>,
    /// The edges of a [`Shape::Polygon`], in the order in which they are walked.
    #[serde(default)]
    pub legs: Vec<Leg>,
    /// What it is built of besides the foam, from the outside in.
    #[serde(default)]
    pub layers: Vec<Layer>,
    /// How the depth is arrived at.
    #[serde(default)]
    pub depth_way: DepthWay,
    /// For [`DepthWay::OneKit`]: an id in the job's kits.
    #[serde(default)]
    pub depth_kit: u32,
    /// The foam of this surface, an id in the job's foams; 0 = the job's foam.
    #[serde(default)]
    pub foam: u32,
}

/// A window, door or other hole in a surface.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Opening {
    /// From the job's counter.
    pub id: u32,
    /// What it is called on the drawing.
    #[serde(default)]
    pub name: String,
    /// Width, height, count and place ([`Part::Opening`]).
    #[serde(default)]
    pub entries: Vec<Entered>,
}

/// A part of a surface that gets another depth than the rest.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Patch {
    /// From the job's counter.
    pub id: u32,
    /// What the crew calls it.
    #[serde(default)]
    pub name: String,
    /// Its area or its share of the surface, and its depth ([`Part::Patch`]).
    #[serde(default)]
    pub entries: Vec<Entered>,
}

/// One edge of a plane that is walked along its edges.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Leg {
    /// From the job's counter.
    pub id: u32,
    /// Its length, and which way and how far one turns at its end ([`Part::Leg`]).
    #[serde(default)]
    pub entries: Vec<Entered>,
}

/// A layer of what a surface is built of, besides the foam and the films of air.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Layer {
    /// From the job's counter.
    pub id: u32,
    /// What the crew calls it.
    #[serde(default)]
    pub name: String,
    /// Its material, place, thickness and R ([`Part::Layer`]).
    #[serde(default)]
    pub entries: Vec<Entered>,
}

/// A foam's data sheet as the person holds it. A blank is a blank: it never counts as a pass.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct FoamSheet {
    /// From the job's counter.
    pub id: u32,
    /// The catalogue's id of this sheet (`sample-closed-a`), to say when the catalogue has moved on.
    #[serde(default)]
    pub sheet: String,
    /// The catalogue's version of this sheet.
    #[serde(default)]
    pub version: u32,
    /// The foam's name.
    #[serde(default)]
    pub name: String,
    /// Density, windows, lifts, waits, limits ([`Part::Foam`]).
    #[serde(default)]
    pub entries: Vec<Entered>,
    /// R at each thickness that was tested.
    #[serde(default)]
    pub r_at: Vec<RAtThickness>,
}

/// One row of a foam sheet: R at a tested thickness.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct RAtThickness {
    /// From the job's counter.
    pub id: u32,
    /// Thickness and R ([`Part::RRow`]).
    #[serde(default)]
    pub entries: Vec<Entered>,
}

/// A kit's sheet: what is on the carton and what it costs. In a job's `stock` it is a kit that is already
/// there, with what is left in it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct KitSheet {
    /// From the job's counter.
    pub id: u32,
    /// The catalogue's id of this sheet.
    #[serde(default)]
    pub sheet: String,
    /// The catalogue's version of this sheet.
    #[serde(default)]
    pub version: u32,
    /// The kit's name.
    #[serde(default)]
    pub name: String,
    /// Label yield, price, net weight, nozzles, most to buy ([`Part::Kit`]); of a kit that is there, its label
    /// yield, dates and what is left ([`Part::Owned`]).
    #[serde(default)]
    pub entries: Vec<Entered>,
}

/// A purchase chosen instead of the least-cost one, with the person's reason.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ChosenPurchase {
    /// How many of each size.
    pub buy: Vec<KitCount>,
    /// Why; printed with the purchase.
    #[serde(default)]
    pub reason: String,
}

/// So many kits of one size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct KitCount {
    /// An id in the job's kits.
    pub kit: u32,
    /// How many.
    pub count: u32,
}

/// The entry of a field, if there is one with text in it.
pub fn entry<'a>(entries: &'a [Entered], field: &str) -> Option<&'a Entered> {
    entries.iter().find(|one| one.field == field && !one.text.trim().is_empty())
}

#[cfg(test)]
impl Surface {
    /// One with these entries as typed, and nothing else.
    pub(crate) fn typed(id: u32, shape: Shape, entries: &[(&str, &str)]) -> Self {
        let entry = |(field, text): &(&str, &str)| Entered {
            field: (*field).into(),
            text: (*text).into(),
            unit: None,
            sense: None,
        };
        Self {
            id,
            name: String::new(),
            shape,
            entries: entries.iter().map(entry).collect(),
            deduct_framing: false,
            openings: Vec::new(),
            patches: Vec::new(),
            legs: Vec::new(),
            layers: Vec::new(),
            depth_way: DepthWay::default(),
            depth_kit: 0,
            foam: 0,
        }
    }
}

impl Job {
    /// When the job says that spraying begins: the day, in days since 1970-01-01, and minutes after its midnight. What is
    /// wrong with either is said where the job's dates are read.
    pub fn spraying(&self) -> (Option<f64>, Option<f64>) {
        let mut quiet = Reader::new(self.units);
        let mut take = |name| quiet.take(Part::Job, 0, &self.entries, name).map(|taken| taken.value.likely);
        (take("spray_date"), take("spray_time"))
    }

    /// That moment by the clock on the wall; none without a day.
    pub fn begins(&self) -> Option<WallMinutes> {
        let (day, minutes) = self.spraying();
        Some(WallMinutes(day? * 1_440.0 + minutes?))
    }

    /// The job's foam sheet with this id; 0 means the job's own choice.
    pub fn foam_sheet(&self, id: u32) -> Option<&FoamSheet> {
        let wanted = if id == 0 { self.foam } else { id };
        self.foams.iter().find(|foam| foam.id == wanted)
    }

    /// The job's kit sheet with this id.
    pub fn kit_sheet(&self, id: u32) -> Option<&KitSheet> {
        self.kits.iter().find(|kit| kit.id == id)
    }
}
