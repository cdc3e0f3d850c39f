//! What a drawing of a surface is made of, all in inches.

use serde::Serialize;

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

impl Rect {
    pub(super) fn between(left: f64, low: f64, right: f64, top: f64) -> Self {
        Self { x_in: left, y_in: low, w_in: right - left, h_in: top - low }
    }

    pub(super) fn right_in(self) -> f64 {
        self.x_in + self.w_in
    }

    pub(super) fn top_in(self) -> f64 {
        self.y_in + self.h_in
    }

    /// Its corners, counterclockwise from the lower left one.
    pub(super) fn corners(self) -> Vec<(f64, f64)> {
        let (right, top) = (self.right_in(), self.top_in());
        vec![(self.x_in, self.y_in), (right, self.y_in), (right, top), (self.x_in, top)]
    }

    /// The part of it that lies within another; `None` if there is none.
    pub(super) fn within(self, other: Self) -> Option<Self> {
        let (left, low) = (self.x_in.max(other.x_in), self.y_in.max(other.y_in));
        let (right, top) = (self.right_in().min(other.right_in()), self.top_in().min(other.top_in()));
        (left < right && low < top).then(|| Self::between(left, low, right, top))
    }
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
    /// A full stud beside an opening in a wall; a trimmer in a floor or slope.
    King,
    /// A stud under a header.
    Jack,
    /// Over an opening in a wall; at both ends of one in a floor or slope.
    Header,
    /// Under an opening in a wall.
    Sill,
    /// A short stud over or under an opening in a wall; a tail joist in a floor or slope.
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
    /// 0 = nearest to the drawing. At the left, row 0 is the whole height and each opening has a row of its
    /// own after it; above stand the distances of the openings from the left end and the spacing. A page that
    /// shows only what is being entered draws the bottom rows and row 0 at the left, and any other dimension
    /// while its measure is active.
    pub row: u32,
    /// Where it starts, in inches from the left end or from the lower edge.
    pub from_in: f64,
    /// Where it ends.
    pub to_in: f64,
    /// The length, written in the job's units.
    pub text: String,
}

/// A dimension line along an edge of a figure.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct EdgeLine {
    /// As of a [`Dimension`].
    pub at: crate::findings::At,
    /// The corner where it starts, in inches from the left end and from the lower edge.
    pub from: (f64, f64),
    /// The corner where it ends. The figure lies on the left hand of who walks from one to the other.
    pub to: (f64, f64),
    /// The length, written in the job's units.
    pub text: String,
}

/// One face of a figure that has several, or that is no rectangle.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Face {
    /// What it is: a key of the words under `surface.face`.
    pub name: &'static str,
    /// Its corners, counterclockwise, in inches from the left end and from the lower edge. A round face is drawn
    /// with so many corners that it looks round, and just so much larger that its area is that of the circle.
    pub corners: Vec<(f64, f64)>,
    /// Whether it is foamed; one that is switched off is drawn without tint.
    pub foamed: bool,
}

/// How a drawing is to be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum View {
    /// Looked at straight on: what is tinted is the true area.
    #[default]
    Elevation,
    /// Rolled out flat: true area.
    Unrolled,
    /// Its faces laid flat side by side: true area.
    Unfolded,
    /// From the side, or cut: for the look of it, not its area.
    Section,
    /// A square of its size: nothing is known of its shape.
    Size,
}

/// A surface's drawing, in inches, from the same list of members that makes its area.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Outline {
    /// Whole width.
    pub width_in: f64,
    /// Whole height.
    pub height_in: f64,
    /// How it is to be read.
    pub view: View,
    /// The faces, where there are several or where they are no rectangle: together they are the gross area, and
    /// nothing else of the outline is tinted.
    pub faces: Vec<Face>,
    /// The corners of the outline where it is no rectangle, from the lower left one on; everything is cut to it.
    pub polygon: Vec<(f64, f64)>,
    /// Heights at which one strip ends and the next begins.
    pub strips: Vec<f64>,
    /// Distances from the left end at which one bay ends and the next begins.
    pub bays: Vec<f64>,
    /// Framing, in the order in which it is drawn.
    pub members: Vec<MemberRect>,
    /// Openings with a place.
    pub openings: Vec<OpeningRect>,
    /// Openings taken out but not drawn, since no place was entered for them.
    pub not_placed: u32,
    /// Dimension lines.
    pub dimensions: Vec<Dimension>,
    /// Dimension lines along edges that run at any angle.
    pub edges: Vec<EdgeLine>,
    /// Whether the drawing is the true shape; a typed area is drawn as a square of its size.
    pub true_shape: bool,
    /// Whether the tinted part of the drawing is exactly the net area (not so for a framing share).
    pub net_drawn: bool,
}
