//! A foam's data sheet as the scenes draw it.

use super::super::made::{Making, R_OF_RSI};

/// Draws a sheet with R at these thicknesses, in inches; says its id. R goes up a little faster than the thickness, as on
/// sheets of closed-cell foam: an inch of a thick layer counts more than the first one. Invented, nobody's.
pub fn drawn(m: &mut Making, listed: &[f64]) -> u32 {
    let rows = rows(m, listed);
    m.foam("F1", &rows, &[]);
    m.job.foams.last().map_or(0, |one| one.id)
}

/// The rows of such a sheet.
pub fn rows(m: &mut Making, listed: &[f64]) -> Vec<(f64, f64)> {
    let first = f64::from(m.draw.whole(56, 64)) / 10.0;
    let more = f64::from(m.draw.whole(25, 40)) / 100.0;
    let at = |inches: &f64| {
        let real = taped(m, *inches);
        (*inches, real * (first + more * (real - 1.0)))
    };
    listed.iter().map(at).collect()
}

/// R of the same foam at so many inches, to the last digit: on such a sheet R an inch goes up evenly with the thickness.
pub fn r_at(m: &Making, rows: &[(f64, f64)], inches: f64) -> f64 {
    let each = |row: Option<&(f64, f64)>| {
        row.map_or((1.0, 0.0), |(listed, r)| (taped(m, *listed), r / taped(m, *listed)))
    };
    let ((thin, first), (thick, last)) = (each(rows.first()), each(rows.last()));
    inches * (first + (last - first) / (thick - thin) * (inches - thin))
}

/// What a tape's text of so many inches comes to: the same in inches, whole five millimeters in metric.
pub fn taped(m: &Making, inches: f64) -> f64 {
    if m.metric() { 5.0 * libm::round(inches * 25.4 / 5.0) / 25.4 } else { inches }
}

/// What a sheet's text of an R comes to.
pub fn listed(m: &Making, r: f64) -> f64 {
    match m.metric() {
        true => libm::round(r / R_OF_RSI * 100.0) / 100.0 * R_OF_RSI,
        false => libm::round(r * 10.0) / 10.0,
    }
}
