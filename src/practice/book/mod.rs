//! Fixed exercises: worked examples that somebody has published, with their source. They are numbered, and no number
//! is ever given twice.
//!
//! A case stays as it was published: in metric the same measures are written in metric, to the last digit. What was
//! published, and how sure that is, stands beside each answer in `tests/practice_book.rs`.

mod air;
mod amounts;
mod heat;
mod roofs;
mod walls;

use super::made::{Entries, Making, R_OF_RSI, plain};
use super::seed::VERSION;
use super::{Made, Seed};
use crate::measure::Units;

/// An example: the key of its words, where it was read, and how it is put together.
struct Example {
    scene: &'static str,
    source: &'static str,
    make: fn(&mut Making),
}

const fn example(scene: &'static str, source: &'static str, make: fn(&mut Making)) -> Example {
    Example { scene, source, make }
}

/// Every example, the first of them number 1. New ones go to the end.
const EXAMPLES: &[Example] = &[
    example("book_wall", "book_wall", walls::textbook),
    example("book_trusses", "book_trusses", walls::trusses),
    example("book_frame_wall", "book_frame_wall", heat::frame_wall),
    example("book_office_wall", "book_office_wall", heat::office_wall),
    example("book_rafter", "book_rafter", roofs::seven_in_twelve),
    example("book_quarter_pitch", "book_quarter_pitch", roofs::quarter_pitch),
    example("book_saturation", "book_saturation", air::saturation),
    example("book_dry_heat", "book_dry_heat", air::dry_heat),
    example("book_cubic_meter", "book_cubic_meter", amounts::cubic_meter),
    example("book_deck", "book_deck", amounts::deck),
];

/// The example of a number, in any version: no number is ever given twice.
pub fn exercise(seed: Seed, units: Units) -> Option<Made> {
    let example = EXAMPLES.get(usize::from(seed.number).checked_sub(1)?)?;
    let mut making = Making::new(seed, units, example.scene);
    making.source(example.source);
    (example.make)(&mut making);
    Some(making.done())
}

/// The seeds of all examples.
pub fn seeds() -> Vec<Seed> {
    (1..).zip(EXAMPLES).map(|(number, _)| Seed { version: VERSION, level: 0, number }).collect()
}

/// A measure of a published case: as it was published, or the same to a ten-thousandth of a millimeter.
fn exact(m: &Making, us: &str, inches: f64) -> String {
    match m.metric() {
        true => format!("{} mm", plain(inches * 25.4, 4)),
        false => us.to_owned(),
    }
}

/// The same for long measures, in meters.
fn exact_long(m: &Making, us: &str, inches: f64) -> String {
    match m.metric() {
        true => format!("{} m", plain(inches * 0.0254, 7)),
        false => us.to_owned(),
    }
}

/// A measure of a published case in the words of its question: as it was published, or in metric with the places that
/// figures are written with everywhere, so that a formula has the same.
fn said(m: &Making, us: &str, inches: f64) -> String {
    let mm = inches * 25.4;
    match m.metric() {
        true => format!("{} mm", plain(mm, if mm < 100.0 { 1 } else { 0 })),
        false => us.to_owned(),
    }
}

/// The same for long measures, in meters.
fn said_long(m: &Making, us: &str, inches: f64) -> String {
    match m.metric() {
        true => format!("{} m", plain(inches * 0.0254, 3)),
        false => us.to_owned(),
    }
}

/// An R as it was published, or the same in metric to five digits behind the point.
fn exact_r(m: &Making, r: f64) -> String {
    match m.metric() {
        true => format!("RSI {}", plain(r / R_OF_RSI, 5)),
        false => format!("R-{}", plain(r, 2)),
    }
}

/// A data sheet with these rows, each to the last digit: thickness as published, in inches, R.
fn exact_foam(m: &mut Making, rows: &[(&str, f64, f64)], entries: Entries) {
    let about: Vec<(f64, f64)> = rows.iter().map(|(_, inches, r)| (*inches, *r)).collect();
    m.foam("F1", &about, entries);
    let texts: Vec<(String, String)> =
        rows.iter().map(|(us, inches, r)| (exact(m, us, *inches), exact_r(m, *r))).collect();
    let written = m.job.foams.iter_mut().flat_map(|foam| &mut foam.r_at);
    for (row, (thickness, r)) in written.zip(texts) {
        for entry in &mut row.entries {
            entry.text = if entry.field == "r" { r.clone() } else { thickness.clone() };
        }
    }
}
