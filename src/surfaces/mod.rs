//! Shapes: from the measures of a surface to its gross area, openings, framing and net area, and its outline.
//!
//! Each shape is one file with its entries, its geometry and its outline; [`forms`] lists them, and the page
//! draws its forms from that list.

use crate::job::{Reader, Shape, Surface};
use crate::measure::{Band, Inches, SquareFeet};
use serde::Serialize;

/// What a shape asks for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ShapeForm {
    /// The shape.
    pub shape: Shape,
    /// Its entries in the order in which they are asked, all of [`Part::Surface`](crate::job::Part).
    pub entries: &'static [Asked],
    /// Whether openings can be taken out of it.
    pub openings: bool,
    /// Whether it has framing that can be taken out of it.
    pub framing: bool,
    /// Whether an opening has a place on its drawing.
    pub places: bool,
}

/// One entry that a shape asks for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Asked {
    /// The field.
    pub field: &'static str,
    /// Whether the area is incomplete without it.
    pub needed: bool,
}

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
    /// By a share of the area left after openings.
    Share,
}

/// The areas of a surface. `net = gross − openings − framing` in each of low, likely and high, where the low
/// net goes with the smallest surface and the largest openings.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SurfaceArea {
    /// The measures used.
    pub measures: Vec<Measure>,
    /// The whole outline.
    pub gross_ft2: Band<SquareFeet>,
    /// Windows, doors and other holes.
    pub openings_ft2: Band<SquareFeet>,
    /// Studs, joists, rafters, plates.
    pub framing_ft2: Band<SquareFeet>,
    /// The area to foam.
    pub net_ft2: Band<SquareFeet>,
    /// How framing was taken out.
    pub framing_by: FramingBy,
    /// Members counted piece by piece.
    pub members: u32,
    /// Depth of the cavity that the members make, if known.
    pub cavity_in: Option<Inches>,
}

/// A rectangle in inches from the lower left corner of the surface.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Rect {
    /// From the left end.
    pub x_in: f64,
    /// From the lower edge.
    pub y_in: f64,
    /// Width.
    pub w_in: f64,
    /// Height.
    pub h_in: f64,
}

/// What a piece of framing is called.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Piece {
    /// A full stud, joist or rafter.
    Stud,
    /// A plate or rim along an edge.
    Plate,
    /// A full stud beside an opening.
    King,
    /// A stud under a header.
    Jack,
    /// Over an opening.
    Header,
    /// Under an opening.
    Sill,
    /// A short stud over or under an opening.
    Cripple,
}

/// A piece of framing, drawn and counted.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct MemberRect {
    /// What it is.
    pub piece: Piece,
    /// Where it is.
    pub rect: Rect,
}

/// An opening as drawn.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct OpeningRect {
    /// The opening's id in the job.
    pub id: u32,
    /// Its name.
    pub name: String,
    /// Where it is.
    pub rect: Rect,
}

/// On which side of the drawing a dimension line runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// Above.
    Top,
    /// Below.
    Bottom,
    /// At the left.
    Left,
}

/// A dimension line: it measures something that was entered, or the rest between two entered places.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Dimension {
    /// `surface` or `opening` and its id and field; the field is empty where the length follows from others.
    pub at: crate::findings::At,
    /// The side.
    pub side: Side,
    /// 0 = nearest to the drawing.
    pub row: u32,
    /// Where it starts, in inches from the left end or from the lower edge.
    pub from_in: f64,
    /// Where it ends.
    pub to_in: f64,
    /// The length, written in the job's units.
    pub text: String,
}

/// A surface's drawing, in inches, from the same list of members that makes its area.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Outline {
    /// Whole width.
    pub width_in: f64,
    /// Whole height.
    pub height_in: f64,
    /// Framing, in the order in which it is drawn.
    pub members: Vec<MemberRect>,
    /// Openings with a place.
    pub openings: Vec<OpeningRect>,
    /// Openings taken out but not drawn, since no place was entered for them.
    pub not_placed: u32,
    /// Dimension lines.
    pub dimensions: Vec<Dimension>,
    /// Whether the drawing is the true shape; a typed area is drawn as a square of its size.
    pub true_shape: bool,
    /// Whether the tinted part of the drawing is exactly the net area (not so for a framing share).
    pub net_drawn: bool,
}

/// What every shape asks for.
pub fn forms() -> &'static [ShapeForm] {
    &[]
}

/// The areas of a surface; `None` while something it needs is missing, with the findings that say so.
pub fn measure(_surface: &Surface, _reader: &mut Reader) -> Option<SurfaceArea> {
    None
}

/// The drawing of a surface; `None` while its area is not known.
pub fn outline(_surface: &Surface, _reader: &mut Reader) -> Option<Outline> {
    None
}
