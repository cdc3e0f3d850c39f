//! Shapes: from the measures of a surface to its gross area, openings, framing and net area, and its outline.
//!
//! | file | holds |
//! |---|---|
//! | `typed_area`, `rectangle`, `footprint`, `room`, `framed` | a family of shapes: what it asks for and its outline |
//! | `rim_run`, `bays`, `pitched_plane`, `gable`, `part_height`, `strip`, `gap`, `penetrations` | one shape each |
//! | `hip_roof`, `triangle`, `trapezoid`, `polygon` | one shape each |
//! | `walk` | the edges of a polygon: closing, crossing, corners |
//! | `arch`, `cylinder`, `dome`, `box_duct`, `round_duct` | one round or boxed shape each |
//! | `circle` | circles and their arcs |
//! | `takeoff` | what was entered of a surface, read once |
//! | `form` | what a shape asks for |
//! | `family` | a shape as a row of one table |
//! | `openings` | windows, doors and other holes |
//! | `members` | which pieces of framing stand where |
//! | `cover` | what rectangles cover under a level or sloping top, nothing counted twice |
//! | `net` | gross − openings − framing = net |
//! | `drawing` | what a drawing is made of |
//! | `outline` | the drawing, from the same list of members |
//!
//! To add a shape: a variant of [`Shape`], a file with its `FAMILY` (what it asks for and its formulas), a line in
//! `FAMILIES` below, its fields in the [table of fields](crate::job::fields) where they are new, and its words in
//! `www/words/*/surface.json`. The page draws its form from [`forms`].
//!
//! # Ranges
//!
//! A measure may be a range. Everything is then worked out in three columns, each by itself: the low one from
//! the shortest lengths, the largest and most openings, the closest spacing, the most plates and the highest
//! framing share; the likely one from the likely values; the high one from the reverse of the low. An
//! opening's place is always its likely one. So bands of openings and framing run with the net area that they
//! lead to, not with their own size.

mod arch;
mod bays;
mod box_duct;
mod circle;
mod cover;
mod cylinder;
mod dome;
mod drawing;
mod family;
mod footprint;
mod form;
mod framed;
mod gable;
mod gap;
mod hip_roof;
mod members;
mod net;
mod openings;
mod outline;
mod part_height;
mod penetrations;
mod pitched_plane;
mod polygon;
mod rectangle;
mod rim_run;
mod room;
mod round_duct;
mod strip;
mod takeoff;
mod trapezoid;
mod triangle;
mod typed_area;
mod walk;

use crate::job::{Reader, Shape, Surface};
use crate::measure::{Band, Inches, SquareFeet};
use family::Family;
use serde::Serialize;
use takeoff::Takeoff;

pub use drawing::{Dimension, EdgeLine, Face, MemberRect, OpeningRect, Outline, Piece, Rect, Side, View};
pub use form::{Asked, ShapeForm};

/// A measure as it was read: for the working.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Measure {
    /// The field.
    pub field: &'static str,
    /// Its value in the unit that its kind is held in.
    pub value: Band<f64>,
    /// Whether it is a default.
    pub default: bool,
}

/// How framing was taken out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum FramingBy {
    /// Not at all: the shape has none, or it was switched off.
    Nothing,
    /// Piece by piece, as drawn.
    Pieces,
    /// By a share of the area left after openings, typed as such.
    Share,
    /// By a share of the area left after openings: a member's width in each spacing.
    Spacing,
    /// By a share of the area left after openings: the one that the pieces have around the openings with a
    /// place, since others have none.
    Estimated,
}

/// The areas of a surface. `net = gross − openings − framing` holds exactly in each of low, likely and high,
/// where the low net goes with the smallest surface, the largest openings and the most framing.
///
/// No area is ever less than zero: openings are cut to the surface, nothing is taken out twice, and openings
/// that would take more than there is take what there is (each with a finding that stops).
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SurfaceArea {
    /// The shape it was worked out for.
    pub shape: Shape,
    /// The measures used.
    pub measures: Vec<Measure>,
    /// Which of the ways to one measure was taken: `typed`, `sides` or `landing` for a run, `count` or `run` for
    /// bays, `rise` or `pitch` for a gable, `base_height` or `three_sides` for a triangle, `rise` or `radius` for an
    /// arch, `diameter` or `circumference` for what is round; empty where there is only one.
    pub way: &'static str,
    /// The sides of a rim on which joists land: `length`, `width`, or a typed `run`; empty where not said.
    pub landing: &'static str,
    /// `inside` or `outside` for a cylinder; empty for other shapes.
    pub side: &'static str,
    /// What lies between the measures and the area of one: lengths in inches (`…_length`), areas in square feet
    /// (`…_ft2`), counts.
    pub parts: Vec<Measure>,
    /// The edges of a plane that was walked along them.
    pub walk: Vec<Walked>,
    /// The areas that the outline of one is added up from, where it has several.
    pub strips_ft2: Vec<Band<f64>>,
    /// The whole outline of one of them.
    pub one_ft2: Band<SquareFeet>,
    /// `times` where there are several of it, empty for one. All other areas are those of all of them.
    pub many: &'static str,
    /// Whether an R may be claimed for the foam on it.
    pub claims_r: bool,
    /// The whole outline.
    pub gross_ft2: Band<SquareFeet>,
    /// Windows, doors and other holes.
    pub openings_ft2: Band<SquareFeet>,
    /// Studs, joists, rafters, plates.
    pub framing_ft2: Band<SquareFeet>,
    /// The area to foam.
    pub net_ft2: Band<SquareFeet>,
    /// What its mean area to foam grows by with each inch of depth, in square feet: foam around a pipe or a duct
    /// covers more the thicker it is, inside a tank less. In words: board feet = (net area + this × depth) × depth.
    /// Zero for a plane; below zero inside a tank; openings take the same share of it as of the area. Each column
    /// goes with that of the net area.
    pub wrap_ft2_in: Band<f64>,
    /// Each opening, in the job's order.
    pub openings: Vec<OpeningArea>,
    /// The area that the openings with a place leave.
    pub clear_ft2: Band<SquareFeet>,
    /// How framing was taken out.
    pub framing_by: FramingBy,
    /// The share that was used: typed, or that of the counted pieces in the clear area. Zero without framing.
    pub framing_share_pct: Band<f64>,
    /// The counted pieces by kind; a spot where two kinds meet belongs to the one listed first.
    pub pieces: Vec<PieceSum>,
    /// Members counted piece by piece.
    pub members: u32,
    /// Depth of the cavity that the members make, if known.
    pub cavity_in: Option<Inches>,
}

/// One edge of a plane that was walked along its edges.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Walked {
    /// The leg's id in the job.
    pub id: u32,
    /// As long as it was entered; of a blank last one, what closes the walk.
    pub length_in: Band<f64>,
    /// How far one turns at its end: degrees to the left, less than zero to the right.
    pub turn_deg: Band<f64>,
    /// Where it starts, in inches along the first edge; a gap is spread already.
    pub x_in: Band<f64>,
    /// Where it starts, in inches to the left of the first edge.
    pub y_in: Band<f64>,
}

/// What an opening takes out of its surface.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct OpeningArea {
    /// The opening's id in the job.
    pub id: u32,
    /// Whether it is drawn in its place.
    pub placed: bool,
    /// Its width.
    pub width_in: Band<Inches>,
    /// Its height.
    pub height_in: Band<Inches>,
    /// How many of it.
    pub count: Band<f64>,
    /// Width × height × count.
    pub whole_ft2: Band<SquareFeet>,
    /// What it takes out: the whole, but for what lies outside the surface or is taken out already.
    pub taken_ft2: Band<SquareFeet>,
}

/// The counted pieces of one kind.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct PieceSum {
    /// The kind.
    pub piece: Piece,
    /// How many are drawn.
    pub count: u32,
    /// What they cover.
    pub area_ft2: Band<SquareFeet>,
}

/// Which of the three columns is worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Column {
    Low,
    Likely,
    High,
}

impl Column {
    /// The value of a measure that makes the net area larger.
    fn of(self, band: Band<f64>) -> f64 {
        match self {
            Self::Low => band.low,
            Self::Likely => band.likely,
            Self::High => band.high,
        }
    }

    /// The value of a measure that makes the net area smaller.
    fn against(self, band: Band<f64>) -> f64 {
        match self {
            Self::Low => band.high,
            Self::Likely => band.likely,
            Self::High => band.low,
        }
    }
}

/// The whole outline of a surface.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Extent {
    width_in: f64,
    height_in: f64,
    gross_ft2: f64,
}

impl Extent {
    fn plane(width_in: f64, height_in: f64) -> Self {
        Self { width_in, height_in, gross_ft2: width_in * height_in / 144.0 }
    }
}

/// Every shape, in the order in which a page offers them.
const FAMILIES: &[Family] = &[
    typed_area::FAMILY,
    rectangle::FAMILY,
    triangle::FAMILY,
    trapezoid::FAMILY,
    polygon::FAMILY,
    framed::WALL,
    footprint::FAMILY,
    room::FAMILY,
    part_height::FAMILY,
    gable::FAMILY,
    rim_run::FAMILY,
    bays::FAMILY,
    framed::FLOOR,
    framed::SLOPE,
    pitched_plane::FAMILY,
    hip_roof::FAMILY,
    arch::FAMILY,
    cylinder::FAMILY,
    dome::FAMILY,
    box_duct::FAMILY,
    round_duct::FAMILY,
    strip::FAMILY,
    gap::FAMILY,
    penetrations::FAMILY,
];

fn family(shape: Shape) -> Option<&'static Family> {
    FAMILIES.iter().find(|family| family.form.shape == shape)
}

/// What every shape asks for, in the order in which a page offers them.
///
/// ```
/// use foamwright::job::Shape;
/// let rectangle = foamwright::surfaces::forms().find(|form| form.shape == Shape::Rectangle).ok_or("gone")?;
/// let needed: Vec<_> = rectangle.entries.iter().filter(|one| one.needed).map(|one| one.field).collect();
/// assert_eq!(needed, ["length", "height"]);
/// # Ok::<(), &str>(())
/// ```
pub fn forms() -> impl Iterator<Item = &'static ShapeForm> {
    FAMILIES.iter().map(|family| &family.form)
}

/// The areas of a surface; `None` while something it needs is missing, with the findings that say so.
///
/// In words: gross = length × height (by the shape); openings = width × height × count of each; framing =
/// what the [pieces](MemberRect) cover, or a share of gross − openings; net = gross − openings − framing.
///
/// ```
/// use foamwright::job::{Entered, Reader, Shape, Surface};
/// use foamwright::measure::{SquareFeet, Units};
///
/// let entry = |field: &str, text: &str| Entered { field: field.into(), text: text.into(), unit: None, sense: None };
/// let mut wall = Surface {
///     id: 1,
///     name: "Back wall".into(),
///     shape: Shape::FramedWall,
///     entries: vec![entry("length", "24'"), entry("height", "7' 6\"")],
///     deduct_framing: true,
///     openings: Vec::new(),
///     patches: Vec::new(),
///     legs: Vec::new(),
///     layers: Vec::new(),
///     depth_way: Default::default(),
///     depth_kit: 0,
///     foam: 0,
/// };
/// let mut reader = Reader::new(Units::Us);
/// assert!(foamwright::surfaces::measure(&wall, &mut reader).is_none()); // the studs' size is needed
/// assert_eq!(reader.findings[0].at.field, "member");
///
/// wall.entries.push(entry("member", "2x6"));
/// let area = foamwright::surfaces::measure(&wall, &mut Reader::new(Units::Us)).ok_or("incomplete")?;
/// assert_eq!(area.gross_ft2.likely, SquareFeet(180.0));
/// assert_eq!(area.framing_ft2.likely, SquareFeet(19.0 * 1.5 * 90.0 / 144.0)); // 19 studs at 16 in
/// # Ok::<(), &str>(())
/// ```
pub fn measure(surface: &Surface, reader: &mut Reader) -> Option<SurfaceArea> {
    Takeoff::take(surface, reader).map(|takeoff| net::area(&takeoff))
}

/// The drawing of a surface; `None` while its area is not known.
///
/// It leaves the same findings as [`measure`], so give it a reader of its own.
pub fn outline(surface: &Surface, reader: &mut Reader) -> Option<Outline> {
    Takeoff::take(surface, reader).map(|takeoff| outline::outline(&takeoff, surface.id, reader.units))
}

#[cfg(test)]
mod tests;
