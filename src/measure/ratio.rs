//! Exact fractions with checked arithmetic.

/// A ratio of two integers in lowest terms, the lower one above zero.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ratio {
    num: i128,
    den: i128,
}

impl Ratio {
    /// A whole number.
    pub fn whole(value: i64) -> Self {
        Self { num: value.into(), den: 1 }
    }

    /// The nearest double.
    pub fn to_f64(self) -> f64 {
        self.num as f64 / self.den as f64
    }
}
