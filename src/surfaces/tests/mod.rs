//! Areas and drawings from plain numbers; what is read from entries is tested in `tests/jobs/`.

mod planes;
mod properties;
mod round;
mod shapes;
mod walls;

use super::family::Ways;
use super::openings::Hole;
use super::takeoff::Framing;
use super::*;
use crate::findings::{Code, Finding};
use crate::job::Part;
use crate::measure::Units;
use proptest::prelude::*;

const FT: f64 = 12.0;

fn takeoff(shape: Shape, measures: &[(&'static str, f64)]) -> Takeoff {
    let measures = measures
        .iter()
        .map(|(field, value)| Measure { field, value: Band::exactly(*value), default: false })
        .collect();
    Takeoff {
        family: family(shape).expect("a shape of the table"),
        ways: Ways::default(),
        measures,
        times: Band::exactly(1.0),
        framing: Framing::Nothing,
        holes: Vec::new(),
        legs: Vec::new(),
        cavity_in: None,
    }
}

fn framed(shape: Shape, length: f64, up: f64, spacing: f64, member_in: f64, plates: f64) -> Takeoff {
    let field = if shape == Shape::FramedFloor { "width" } else { "height" };
    let framing =
        Framing::Pieces { spacing: Band::exactly(spacing), member_in, plates: Band::exactly(plates) };
    Takeoff { framing, ..takeoff(shape, &[("length", length), (field, up)]) }
}

fn hole(id: u32, width: f64, height: f64, place: Option<(f64, f64)>) -> Hole {
    Hole {
        id,
        name: id.to_string(),
        width: Band::exactly(width),
        height: Band::exactly(height),
        count: Band::exactly(1.0),
        place,
    }
}

fn with(mut takeoff: Takeoff, holes: Vec<Hole>) -> Takeoff {
    takeoff.holes = holes;
    takeoff
}

fn north_wall() -> Takeoff {
    let wall = framed(Shape::FramedWall, 24.0 * FT, 7.5 * FT, 16.0, 1.5, 0.0);
    let (a, b) = (hole(1, 36.0, 48.0, Some((40.0, 32.0))), hole(2, 54.0, 48.0, Some((150.5, 32.0))));
    with(wall, vec![a, b])
}

fn net_of(takeoff: &Takeoff) -> f64 {
    net::area(takeoff).net_ft2.likely.0
}

fn outline_of(takeoff: &Takeoff) -> Outline {
    outline::outline(takeoff, 7, Units::Us)
}

fn close(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs().max(1.0)
}

/// The tinted area of a drawing in square feet, found cell by cell on the grid of all its edges.
fn tinted(outline: &Outline) -> f64 {
    let solid: Vec<Rect> = outline
        .members
        .iter()
        .map(|one| one.rect)
        .chain(outline.openings.iter().map(|one| one.rect))
        .collect();
    // Under slopes by narrow slices, each cut at its own height: exact where no edge of a piece lies within a slice
    // and the slope crosses none, so the ridge and every crossing are cuts too.
    if let [_, _, (width, eave), (middle, ridge), _] = outline.polygon[..] {
        return under_slopes(&solid, width, eave, middle, ridge);
    }
    let cuts = |edges: Vec<f64>, end: f64| {
        let mut cuts: Vec<f64> = edges.into_iter().map(|at| at.clamp(0.0, end)).chain([0.0, end]).collect();
        cuts.sort_by(f64::total_cmp);
        cuts
    };
    let across = cuts(solid.iter().flat_map(|one| [one.x_in, one.right_in()]).collect(), outline.width_in);
    let up = cuts(solid.iter().flat_map(|one| [one.y_in, one.top_in()]).collect(), outline.height_in);
    let mut area = 0.0;
    for x in across.windows(2) {
        for y in up.windows(2) {
            let (mid_x, mid_y) = ((x[0] + x[1]) / 2.0, (y[0] + y[1]) / 2.0);
            let covered = solid.iter().any(|one| {
                mid_x > one.x_in && mid_x < one.right_in() && mid_y > one.y_in && mid_y < one.top_in()
            });
            if !covered {
                area += (x[1] - x[0]) * (y[1] - y[0]);
            }
        }
    }
    area / 144.0
}

/// The same under two slopes: between two cuts every edge is straight, so the trapezoid of its ends is exact.
fn under_slopes(solid: &[Rect], width: f64, eave: f64, middle: f64, ridge: f64) -> f64 {
    let top = |x: f64| eave + (ridge - eave) * (1.0 - (x - middle).abs() / middle.max(1e-300));
    let mut cuts = vec![0.0, middle, width];
    for one in solid {
        cuts.extend([one.x_in, one.right_in()]);
        for level in [one.y_in, one.top_in()] {
            let in_from = (level - eave) / (ridge - eave) * middle;
            cuts.extend([in_from, width - in_from].into_iter().filter(|at| at.is_finite()));
        }
    }
    cuts.retain(|at| (0.0..=width).contains(at));
    cuts.sort_by(f64::total_cmp);
    let mut area = 0.0;
    for pair in cuts.windows(2) {
        let mid = (pair[0] + pair[1]) / 2.0;
        let mut spans: Vec<(f64, f64)> = solid
            .iter()
            .filter(|one| one.x_in < mid && mid < one.right_in())
            .map(|one| (one.y_in, one.top_in().min(top(mid))))
            .filter(|(low, high)| high > low)
            .collect();
        spans.sort_by(|one, other| one.0.total_cmp(&other.0));
        let (mut open, mut from) = (top(mid), 0.0_f64);
        for (low, high) in spans {
            open -= (high - low.max(from)).max(0.0);
            from = from.max(high);
        }
        area += (pair[1] - pair[0]) * open;
    }
    area / 144.0
}

fn said(takeoff: &Takeoff) -> Vec<Finding> {
    let extent = takeoff.extent(Column::Likely);
    let plane = Rect::between(0.0, 0.0, extent.width_in, extent.height_in);
    let mut reader = Reader::new(Units::Us);
    openings::check(7, &takeoff.holes, plane, takeoff.top(Column::Likely), extent.gross_ft2, &mut reader);
    reader.findings
}
