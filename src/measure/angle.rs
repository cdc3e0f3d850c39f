//! Sine, cosine and tangent of an angle in radians, by their series within an eighth of a turn.
//!
//! The library's own hold for angles of any size, which takes tables and code that no roof, walk or sun needs: together
//! they would be a hundredth of the core. Good to 6e-16 for angles of up to some thousand turns.

/// A quarter turn to its first 33 bits, so that a million of them are still exact, and the rest of it.
const QUARTER: f64 = 1.570_796_326_734_125_6;
const QUARTER_REST: f64 = 6.077_100_506_506_192e-11;

/// Terms of a series; at an eighth of a turn the first that is left out is below 1e-17.
const TERMS: u32 = 9;

/// A first term and those that follow it, each the one before × −square ÷ (n (n + 1)), n in steps of two.
fn series(first: f64, begins: f64, square: f64) -> f64 {
    let (mut sum, mut term, mut n) = (0.0, first, begins);
    for _ in 0..TERMS {
        sum += term;
        term *= -square / (n * (n + 1.0));
        n += 2.0;
    }
    sum
}

/// The sine, so many quarter turns further on.
fn turned(angle: f64, further: f64) -> f64 {
    let quarters = libm::round(angle / QUARTER);
    let left = angle - quarters * QUARTER - quarters * QUARTER_REST;
    let quarters = quarters + further;
    let of_four = quarters - 4.0 * libm::floor(quarters / 4.0);
    let square = left * left;
    let odd = of_four == 1.0 || of_four == 3.0;
    let value = if odd { series(1.0, 1.0, square) } else { series(left, 2.0, square) };
    if of_four >= 2.0 { -value } else { value }
}

/// The sine of an angle in radians.
pub(crate) fn sine(angle: f64) -> f64 {
    turned(angle, 0.0)
}

/// The cosine of an angle in radians.
pub(crate) fn cosine(angle: f64) -> f64 {
    turned(angle, 1.0)
}

/// The tangent of an angle in radians.
pub(crate) fn tangent(angle: f64) -> f64 {
    sine(angle) / cosine(angle)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the library `libm`, over sixteen turns either way: nine sums of at most 1 may lose half a bit each.
    #[test]
    fn they_are_those_of_libm() {
        for step in -100_000..=100_000 {
            let angle = f64::from(step) * 1.000_3e-3;
            assert!((sine(angle) - libm::sin(angle)).abs() < 6e-16, "sine of {angle}");
            assert!((cosine(angle) - libm::cos(angle)).abs() < 6e-16, "cosine of {angle}");
            let steep = libm::tan(angle);
            assert!((tangent(angle) - steep).abs() < 1e-15 * (1.0 + steep * steep), "tangent of {angle}");
        }
    }
}
