//! A hip roof from its plan and its pitch, the same on all four sides: plan × √(1 + pitch²).
//!
//! An overhang is part of the plan as it is entered. Under one pitch all hips run at 45° in the plan, so the ridge is
//! as long as the plan is longer than wide, and a plan as long as wide has none: four triangles meet in a point.
//! A hip, a run of one along each of two sides and a rise of the pitch, is √(2 + pitch²) long for each unit of
//! common run: the line "length hip or valley per foot run" of a framing square.

use super::family::{Family, Figure, Sizes};
use super::outline::Of;
use super::pitched_plane::slope_factor;
use super::{Asked, Extent, Face, ShapeForm, View};
use crate::job::Shape;

pub(super) const FAMILY: Family = Family {
    parts: |sizes| {
        let roof = roof(sizes);
        vec![
            ("rise_length", roof.run * roof.pitch),
            ("slope_length", roof.slope),
            ("hip_length", roof.run * (2.0 + roof.pitch * roof.pitch).sqrt()),
            ("ridge_length", roof.ridge),
        ]
    },
    figure: |sizes| Figure { view: View::Unfolded, faces: roof(sizes).faces(), ..Figure::default() },
    lines: |sizes, lines| {
        let roof = roof(sizes);
        let (long, end) = match sizes.of("width") > sizes.of("length") {
            true => ("width", "length"),
            false => ("length", "width"),
        };
        let (out, mid) = (roof.out(), roof.slope);
        let (left, right) = (out + roof.run, out + roof.run + roof.ridge);
        lines.edge(Of::Surface(long), (out, 0.0), (out + roof.long(), 0.0));
        let far = right + roof.slope;
        lines.edge(Of::Surface(end), (far, mid - roof.run), (far, mid + roof.run));
        lines.edge(Of::Rest, (left, mid), (right, mid));
        lines.edge(Of::Rest, (left, mid), (out, 0.0));
    },
    ..Family::new(FORM, extent)
};

const FORM: ShapeForm = ShapeForm::new(
    Shape::HipRoof,
    "roofs",
    &[
        Asked::needed("length"),
        Asked::needed("width"),
        Asked::needed("pitch"),
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::framing("framing_share", false),
        Asked::may("times"),
    ],
)
.openings()
.framed();

/// What follows from plan and pitch, in inches.
struct Roof {
    pitch: f64,
    /// Half the shorter side: from an eave to the ridge in the plan.
    run: f64,
    /// From an eave to the ridge along the slope.
    slope: f64,
    ridge: f64,
}

fn roof(sizes: &Sizes) -> Roof {
    let (length, width, pitch) = (sizes.of("length"), sizes.of("width"), sizes.of("pitch"));
    let run = length.min(width) / 2.0;
    Roof { pitch, run, slope: run * slope_factor(pitch), ridge: (length - width).abs() }
}

impl Roof {
    fn long(&self) -> f64 {
        self.ridge + 2.0 * self.run
    }

    /// How far an end reaches out beside a long side: the roof is cut along its hips and laid flat around the
    /// ridge, each end with its top at the ridge's end.
    fn out(&self) -> f64 {
        self.slope - self.run
    }

    /// Two long sides that share the ridge and two ends; where there is no ridge the sides are triangles too.
    fn faces(&self) -> Vec<Face> {
        let (out, mid, high) = (self.out(), self.slope, 2.0 * self.slope);
        let (left, right) = (out + self.run, out + self.run + self.ridge);
        let (near, far, wide) = (out, out + self.long(), self.ridge + 2.0 * self.slope);
        let face = |name, corners: &[(f64, f64)]| {
            let mut corners = corners.to_vec();
            corners.dedup();
            Face { name, corners, foamed: true }
        };
        let (low, up) = (mid - self.run, mid + self.run);
        vec![
            face("hip_side", &[(near, 0.0), (far, 0.0), (right, mid), (left, mid)]),
            face("hip_side", &[(far, high), (near, high), (left, mid), (right, mid)]),
            face("hip_end", &[(wide, low), (wide, up), (right, mid)]),
            face("hip_end", &[(0.0, up), (0.0, low), (left, mid)]),
        ]
    }
}

/// Plan × √(1 + pitch²).
fn extent(sizes: &Sizes) -> Extent {
    let roof = roof(sizes);
    Extent {
        width_in: roof.ridge + 2.0 * roof.slope,
        height_in: 2.0 * roof.slope,
        gross_ft2: sizes.of("length") * sizes.of("width") * slope_factor(roof.pitch) / 144.0,
    }
}
