//! Circles and their arcs, exactly, and as corners to draw.
//!
//! In words: an arc over a span has radius = (span² ÷ 4 + rise²) ÷ (2 × rise) and subtends 4 × atan(2 × rise ÷
//! span); with no span left it is the whole circle.

use crate::measure::angle::tangent;
use core::f64::consts::PI;

/// Corners of a drawn circle that stands by itself.
pub(super) const CORNERS: u32 = 64;

/// An arc over a span, any length unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Arc {
    /// Its radius; infinite for a flat one.
    pub(super) radius: f64,
    /// The angle from its crown to one end, in radians: up to π for the whole circle.
    pub(super) half: f64,
    /// Its length.
    pub(super) length: f64,
}

impl Arc {
    /// By what it spans and how high it rises; a rise over half the span makes it more than half a circle.
    pub(super) fn risen(span: f64, rise: f64) -> Self {
        if rise <= 0.0 {
            return Self { radius: f64::INFINITY, half: 0.0, length: span };
        }
        let radius = (span * span / 4.0 + rise * rise) / (2.0 * rise);
        let half = 2.0 * libm::atan(2.0 * rise / span);
        Self { radius, half, length: 2.0 * half * radius }
    }

    /// So many corners along it and one more, from its right end to its left, over the middle of its span.
    pub(super) fn corners(self, span: f64, rise: f64) -> Vec<(f64, f64)> {
        let corner = |at: u32| {
            let (cos, sin) = turned(self.half * (1.0 - 2.0 * f64::from(at) / f64::from(CORNERS)));
            (span / 2.0 + self.radius * sin, rise - self.radius * (1.0 - cos))
        };
        if self.half > 0.0 { (0..=CORNERS).map(corner).collect() } else { Vec::new() }
    }
}

/// How high the flatter of the two arcs of a circle over a span rises: radius − √(radius² − span² ÷ 4).
pub(super) fn rise_of(span: f64, radius: f64) -> f64 {
    let quarter = span * span / 4.0;
    // Written so that a nearly flat arc loses no digits.
    if quarter > 0.0 { quarter / (radius + (radius * radius - quarter).max(0.0).sqrt()) } else { 0.0 }
}

/// The circle inside a circumference: circumference² ÷ 4π.
pub(super) fn area_around(circumference: f64) -> f64 {
    circumference * circumference / (4.0 * PI)
}

/// A circle drawn with so many corners, of the same area.
pub(super) fn drawn(middle: (f64, f64), radius: f64, corners: u32) -> Vec<(f64, f64)> {
    let step = 2.0 * PI / f64::from(corners);
    let out = radius * (step / turned(step).1).sqrt();
    let corner = |at| {
        let (cos, sin) = turned(f64::from(at) * step);
        (middle.0 + out * cos, middle.1 + out * sin)
    };
    (0..corners).map(corner).collect()
}

/// Cosine and sine, by the tangent of half the angle.
fn turned(angle: f64) -> (f64, f64) {
    let half = tangent(angle / 2.0);
    let square = half * half;
    ((1.0 - square) / (1.0 + square), 2.0 * half / (1.0 + square))
}
