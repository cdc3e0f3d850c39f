//! Writing values: rounded once, then split.

use super::{Kind, Style};

/// A value of a kind, written in a style.
pub fn write(_kind: Kind, value: f64, _style: Style) -> String {
    decimal(value, 2)
}

/// A length in inches as feet, inches and sixteenths.
pub fn feet_inches(inches: f64) -> String {
    decimal(inches, 2)
}

/// A plain decimal with at most so many places.
pub fn decimal(value: f64, places: usize) -> String {
    format!("{value:.places$}")
}
