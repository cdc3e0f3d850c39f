//! Quantities with their unit in the type, so that inches never meet feet by accident.

use serde::{Deserialize, Serialize};

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default, Serialize, Deserialize)]
        #[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
        #[serde(transparent)]
        pub struct $name(pub f64);

        impl core::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl core::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl core::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
                all.fold(Self(0.0), |sum, one| sum + one)
            }
        }
    };
}

quantity!(
    /// A length or depth in inches.
    Inches
);
quantity!(
    /// An area in square feet.
    SquareFeet
);
quantity!(
    /// Foam in place: 1 board foot = 1 ft² × 1 in = 144 in³.
    BoardFeet
);
quantity!(
    /// A temperature in degrees Fahrenheit.
    Fahrenheit
);
quantity!(
    /// A weight in pounds.
    Pounds
);
quantity!(
    /// A density in pounds per cubic foot.
    PoundsPerCubicFoot
);
quantity!(
    /// A span of time in minutes.
    Minutes
);
quantity!(
    /// A moment by the clock on the wall at the site: minutes since 1970-01-01 00:00 as that clock shows it. A day is
    /// 1 440 of them; in the night in which the clock is put forward or back an hour is missing or counted twice.
    WallMinutes
);
quantity!(
    /// A flow of air in cubic feet per minute.
    CubicFeetPerMinute
);
quantity!(
    /// Thermal resistance in °F·ft²·h/Btu.
    RValue
);

/// Money in whole cents.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(transparent)]
pub struct Cents(pub i64);

/// A value that may be a range: the least, the value to work with, the most. Equal where one figure was given.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Band<T> {
    /// The least it may be.
    pub low: T,
    /// The value to work with.
    pub likely: T,
    /// The most it may be.
    pub high: T,
}

impl<T: Copy + PartialEq> Band<T> {
    /// One value without a range.
    pub fn exactly(value: T) -> Self {
        Self { low: value, likely: value, high: value }
    }

    /// The same change made to all three values (it must keep their order).
    pub fn map<U>(self, change: impl Fn(T) -> U) -> Band<U> {
        Band { low: change(self.low), likely: change(self.likely), high: change(self.high) }
    }

    /// Whether one figure was given, not a range.
    pub fn is_single(self) -> bool {
        self.low == self.likely && self.likely == self.high
    }
}

/// Board feet of foam on an area at a depth: area × depth.
///
/// ```
/// use foamwright::measure::{BoardFeet, Inches, SquareFeet};
/// assert_eq!(SquareFeet(124.3) * Inches(2.0), BoardFeet(248.6));
/// ```
impl core::ops::Mul<Inches> for SquareFeet {
    type Output = BoardFeet;
    fn mul(self, depth: Inches) -> BoardFeet {
        BoardFeet(self.0 * depth.0)
    }
}

/// The value, or the bound that it lies beyond. The standard library's `clamp` can fail, and its message brings
/// the whole writing of floating-point numbers along, twenty kilobytes of code before packing.
pub(crate) fn held_between(value: f64, least: f64, most: f64) -> f64 {
    if value < least {
        least
    } else if value > most {
        most
    } else {
        value
    }
}
