//! Sheet metal by the shape of its profile: how long a sheet is that is pressed into one rib or one wave.

use libm::{atan, hypot};

/// Flats and two sloping webs, in inches: top flat + bottom flat + 2 × √(depth² + web run²), where the run of a
/// web is half of what the flats leave of the pitch. Plane geometry.
pub(super) fn ribbed_in(pitch: f64, depth: f64, top: f64, bottom: f64) -> f64 {
    let run = (pitch - top - bottom).max(0.0) / 2.0;
    top + bottom + 2.0 * hypot(depth, run)
}

/// Circular arcs that turn over at mid-depth, each over half a pitch with half the depth for its rise, in inches:
/// pitch × (1 + t²) × arctan t ÷ t with t = 2 × depth ÷ pitch. An arc over a chord c with the rise h has the half
/// angle 2 × arctan(2h ÷ c), and arc ÷ chord is that angle ÷ its sine. Plane geometry.
pub(super) fn wave_in(pitch: f64, depth: f64) -> f64 {
    let t = 2.0 * depth / pitch;
    if t > 0.0 { pitch * (1.0 + t * t) * atan(t) / t } else { pitch }
}
