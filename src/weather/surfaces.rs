//! What surfaces make of a day. Estimates: a surface is measured before it is sprayed.
//!
//! Thin ones (7/16 in board in 8 minutes, 1½ in lumber in 20) follow the air. The sun on them is never counted.

use super::day_curve::Course;
use crate::job::{Job, Part, Reader};
use crate::measure::angle::cosine;
use core::f64::consts::PI;

/// The film of still air on a face, outdoors in the shade, in W/m²·K; ASHRAE's, from memory.
const FILM: f64 = 8.0;
/// What lies between the outer air and the inner face, in m²·K/W: film 0.03, boards 0.08, siding 0.10, a hollow
/// block 0.20. From memory.
const OUTSIDE: [(&str, f64); 3] = [("sheathing", 0.11), ("sheathing_siding", 0.21), ("block", 0.23)];
/// The inner film.
const INSIDE: f64 = 0.12;
/// Conductivity, density and specific heat in SI; from memory.
pub(super) const CONCRETE: [f64; 3] = [1.7, 2_300.0, 900.0];
pub(super) const BRICK: [f64; 3] = [0.8, 1_900.0, 840.0];

/// What the job says of the surfaces that will be sprayed.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Known {
    /// The air of the heated room behind, and the share of the way to it at the inner face.
    pub(super) heated: Option<(f64, f64)>,
    /// How much of the air's swing thick masonry makes, and how many hours later.
    pub(super) masonry: Option<(f64, f64)>,
    /// Whether it is brick.
    pub(super) brick: bool,
}

impl Known {
    pub(super) fn read(job: &Job, reader: &mut Reader) -> Self {
        let air = reader.take(Part::Job, 0, &job.entries, "heated_air").map(|taken| taken.value.low);
        let wall = reader.choice(Part::Job, 0, &job.entries, "outer_wall");
        let outside = OUTSIDE.iter().find(|(name, _)| Some(*name) == wall).map(|(_, r)| *r);
        let masonry = reader.choice(Part::Job, 0, &job.entries, "masonry_kind");
        Known {
            heated: air.zip(outside.map(share)),
            masonry: masonry.map(|kind| swing(if kind == "brick" { BRICK } else { CONCRETE }, FILM)),
            brick: masonry == Some("brick"),
        }
    }
}

/// The share of the way from the outer to the inner air at the inner face, by resistances in a row.
pub(super) fn share(outside: f64) -> f64 {
    outside / (outside + INSIDE)
}

/// The amplitude and the lag in hours of a thick body's face under a film, for a swing of 24 hours in the air: the
/// closed form for a body that goes on (Carslaw and Jaeger). Not for less than 8 in.
pub(super) fn swing([k, density, heat]: [f64; 3], film: f64) -> (f64, f64) {
    let b = k / film * (PI * density * heat / (86_400.0 * k)).sqrt();
    (1.0 / (1.0 + 2.0 * b + 2.0 * b * b).sqrt(), libm::atan(b / (1.0 + b)) * 12.0 / PI)
}

/// Masonry at an hour after midnight, about the mean of the last days.
pub(super) fn masonry_f(course: &Course, mean_f: f64, (size, lag_h): (f64, f64), hour: f64) -> f64 {
    let turn = (hour - course.warmest_h() - lag_h) * PI / 12.0;
    mean_f + size * (course.high_f - course.low_f) / 2.0 * cosine(turn)
}
