//! A foam's data sheet as the scenes draw it.

use super::super::made::{Making, R_OF_RSI};

/// Draws a sheet with R at these thicknesses, in inches; says its id, and its rows as a sheet in inches has them: what is
/// decided by those is decided alike in either system of units. R goes up a little faster than the thickness, as on sheets
/// of closed-cell kit foam, and all the way, so that the mean of several R is not R of their mean depth. Invented, nobody's.
pub fn drawn(m: &mut Making, listed: &[f64]) -> (u32, Vec<(f64, f64)>) {
    let first = tenths(m, 57, 59);
    let second = first + tenths(m, 1, 2);
    let last = second + tenths(m, 12, 13);
    let an_inch = [first, second, last];
    let rows = stacked(m.metric(), listed, an_inch);
    m.foam("F1", &rows, &[]);
    (m.job.foams.last().map_or(0, |one| one.id), stacked(false, listed, an_inch))
}

/// The rows of a sheet whose first inch is the poorest by far: whoever takes it for every inch is told apart at two
/// inches already.
pub fn rows(m: &mut Making, listed: &[f64]) -> Vec<(f64, f64)> {
    let first = tenths(m, 57, 60);
    let (second, last) = (first + tenths(m, 5, 7), tenths(m, 70, 72));
    stacked(m.metric(), listed, [first, second, last])
}

fn tenths(m: &mut Making, least: i32, most: i32) -> f64 {
    f64::from(m.draw.whole(least, most)) / 10.0
}

/// Rows whose spans hold so much an inch: up to the first thickness, in the span after it, and in the last.
fn stacked(metric: bool, listed: &[f64], [first, second, last]: [f64; 3]) -> Vec<(f64, f64)> {
    #[allow(clippy::cast_precision_loss, reason = "a handful of rows")]
    let part = |span: usize| span.saturating_sub(1) as f64 / listed.len().saturating_sub(2).max(1) as f64;
    let an_inch = |span: usize| if span == 0 { first } else { second + part(span) * (last - second) };
    // What a sheet's text of an R is a whole number of: each span is rounded, not the sum, so that no span adds less an
    // inch than the one before it.
    let step = if metric { R_OF_RSI / 100.0 } else { 0.1 };
    let (mut below, mut steps, mut least) = (0.0, 0.0, 0.0);
    let mut row = |(span, inches): (usize, &f64)| {
        let real = in_steps(metric, *inches);
        let thick = real - below;
        let adds = libm::round(thick * an_inch(span) / step).max(libm::ceil(thick * least - 1e-6));
        (below, steps, least) = (real, steps + adds, adds / thick);
        (*inches, steps * step)
    };
    listed.iter().enumerate().map(&mut row).collect()
}

/// R of a foam at so many inches, straight between two rows of its sheet.
pub fn r_at(rows: &[(f64, f64)], inches: f64) -> Option<f64> {
    let (thin, thick) = rows.iter().zip(rows.iter().skip(1)).find(|(_, thick)| thick.0 >= inches)?;
    Some(thin.1 + (inches - thin.0) / (thick.0 - thin.0) * (thick.1 - thin.1))
}

/// What a tape's text of so many inches comes to: the same in inches, whole five millimeters in metric.
pub fn taped(m: &Making, inches: f64) -> f64 {
    in_steps(m.metric(), inches)
}

fn in_steps(metric: bool, inches: f64) -> f64 {
    if metric { 5.0 * libm::round(inches * 25.4 / 5.0) / 25.4 } else { inches }
}

/// What a sheet's text of an R comes to.
pub fn listed(m: &Making, r: f64) -> f64 {
    match m.metric() {
        true => libm::round(r / R_OF_RSI * 100.0) / 100.0 * R_OF_RSI,
        false => libm::round(r * 10.0) / 10.0,
    }
}
