//! Writing values: rounded once, then split.

use super::date::day_of;
use super::units::in_unit;
use super::{Kind, Style, Unit};

/// What stands where there is no number.
const NONE: &str = "–";
/// Keeps a value and its unit on one line.
const NBSP: char = '\u{a0}';

/// A value of a kind, in the unit in which that kind is held, written in a style with its unit.
///
/// Rounded once on the grid of its style, half away from zero, and only then split, so that 3.9999 ft is
/// 4′-0″ and never 3′-12″. A value and its unit are joined by a no-break space. Where there is no number
/// (not finite, or past 10¹⁵) stands a dash. The length styles hold for lengths and members; any other kind
/// under [`Style::Metric`] or [`Style::Millimeters`] takes its metric form, under the other length styles its US form.
///
/// | kind | US | metric |
/// |---|---|---|
/// | length | `3¼ in` below 3 ft, then `12′-6½″` | `76.2 mm`, `382 mm`, from 1 m on `3.823 m` |
/// | area | `124.3 ft²` | `11.55 m²` |
/// | temperature | `63 °F` | `17.2 °C` |
/// | weight, density | `0.74 lb`, `1.85 lb/ft³` | `0.34 kg`, `29.6 kg/m³` |
/// | resistance | `R-15` | `RSI 2.64` |
/// | permeance | `0.8 perm` | `45.8 ng/(s·m²·Pa)` |
/// | foam | `812 bd ft` | `1 916 L` |
/// | speed | `12 mph` | `19.3 km/h` |
/// | time | `15 min`, `24 h`, `5 h 50 min`, `30 d` | the same |
/// | pitch | `4 in 12` | the same |
/// | money | `$1,784`, `$284.50` | `$1 784` |
/// | date | `2026-10-16` | the same |
/// | time of day | `6:05 pm` | `18:05` |
/// | flow of air | `200 cfm` | `94 L/s` |
/// | power | `100,000 Btu/h` | `29.3 kW` |
/// | latitude, longitude | `44.98°`, `−93.27°` | the same |
///
/// ```
/// use foamwright::measure::{Kind, Style, write};
/// assert_eq!(write(Kind::Length, 150.5, Style::FeetInches), "12′-6½″");
/// assert_eq!(write(Kind::Length, 3.9999 * 12.0, Style::FeetInches), "4′-0″");
/// assert_eq!(write(Kind::Length, 3.25, Style::Inches), "3¼\u{a0}in");
/// assert_eq!(write(Kind::Length, 150.0, Style::Millimeters), "3\u{202f}810\u{a0}mm");
/// assert_eq!(write(Kind::Money, 178_400.0, Style::Us), "$1,784");
/// ```
pub fn write(kind: Kind, value: f64, style: Style) -> String {
    let metric = matches!(style, Style::Metric | Style::Millimeters | Style::MetricUsual);
    let group = if metric { '\u{202f}' } else { ',' };
    match kind {
        Kind::Length | Kind::Member | Kind::Probes => return length(value, style),
        Kind::Duration => return duration(value, group),
        Kind::Money => return money(value, group),
        Kind::Date => return date(value),
        Kind::Zip => return zip(value),
        Kind::Clock => return clock(value, metric),
        // 32 °F more is 0 °C more than none.
        Kind::TemperatureStep if metric => return write(Kind::Temperature, value + 32.0, style),
        _ => {}
    }
    let form = FORMS.iter().find(|form| form.0 == kind);
    let Some(&(unit, places, sign)) = form.map(|form| if metric { &form.2 } else { &form.1 }) else {
        return NONE.to_owned();
    };
    let value = in_unit(value, unit);
    let places = match unit {
        Unit::L if value.abs() >= 99.95 => 0,
        // A block core or a vent is a fraction of a square foot.
        Unit::Ft2 | Unit::M2 if value.abs() < 0.95 => 3,
        _ => places,
    };
    match number(value, places, Some(group)) {
        None => NONE.to_owned(),
        Some(text) if kind == Kind::Resistance => [sign, &text].concat(),
        Some(text) if kind == Kind::Coordinate => text + sign,
        Some(text) => joined(text, sign),
    }
}

/// In which unit, to how many places and under which sign a value is written.
type Form = (Unit, u32, &'static str);

/// How each kind is written: US, then metric.
const FORMS: &[(Kind, Form, Form)] = &[
    (Kind::Area, (Unit::Ft2, 1, "ft²"), (Unit::M2, 2, "m²")),
    (Kind::Temperature, (Unit::F, 1, "°F"), (Unit::C, 1, "°C")),
    (Kind::TemperatureStep, (Unit::F, 1, "°F"), (Unit::F, 1, "°F")),
    (Kind::Weight, (Unit::Lb, 2, "lb"), (Unit::Kg, 2, "kg")),
    (Kind::Density, (Unit::LbFt3, 2, "lb/ft³"), (Unit::KgM3, 1, "kg/m³")),
    (Kind::Resistance, (Unit::R, 1, "R-"), (Unit::Rsi, 2, "RSI\u{a0}")),
    (Kind::Permeance, (Unit::Perm, 2, "perm"), (Unit::Metricperm, 1, "ng/(s·m²·Pa)")),
    (Kind::FoamVolume, (Unit::BdFt, 1, "bd\u{a0}ft"), (Unit::L, 1, "L")),
    (Kind::Speed, (Unit::Mph, 1, "mph"), (Unit::Kmh, 1, "km/h")),
    (Kind::Pitch, (Unit::In12, 2, "in\u{a0}12"), (Unit::In12, 2, "in\u{a0}12")),
    (Kind::Percent, (Unit::Pct, 2, "%"), (Unit::Pct, 2, "%")),
    (Kind::Count, (Unit::Each, 0, ""), (Unit::Each, 0, "")),
    (Kind::Airflow, (Unit::Cfm, 0, "cfm"), (Unit::Lps, 0, "L/s")),
    (Kind::Power, (Unit::Btuh, 0, "Btu/h"), (Unit::Kw, 1, "kW")),
    (Kind::Coordinate, (Unit::Arc, 4, "°"), (Unit::Arc, 4, "°")),
    (Kind::Number, (Unit::One, 3, ""), (Unit::One, 3, "")),
];

/// A time of day, in minutes after midnight, to the minute.
fn clock(minutes: f64, metric: bool) -> String {
    let Some(minutes) = whole(minutes).filter(|minutes| *minutes < 1_440) else {
        return NONE.to_owned();
    };
    let hours = minutes / 60;
    let mut text = String::new();
    let shown = if metric || (1..=12).contains(&hours) { hours } else { hours.abs_diff(12) };
    push(&mut text, shown, None);
    text.push(':');
    padded(&mut text, minutes % 60, 2);
    if !metric {
        text.push_str(if hours < 12 { "\u{a0}am" } else { "\u{a0}pm" });
    }
    text
}

/// A length in inches as feet, inches and sixteenths: `12′-6½″`, `7¼″`, `3′-0″`, `12′-6 3/16″`.
pub fn feet_inches(inches: f64) -> String {
    let Some(sixteenths) = whole(inches.abs() * 16.0) else {
        return NONE.to_owned();
    };
    let mut text = String::new();
    if inches < 0.0 && sixteenths > 0 {
        text.push('−');
    }
    let feet = sixteenths / 192;
    if feet > 0 {
        push(&mut text, feet, None);
        text.push_str("′-");
    }
    sixteenth(&mut text, sixteenths % 192, feet > 0);
    text.push('″');
    text
}

/// A plain decimal with at most so many places: no zeros at its end, no grouping, `−` before what is less
/// than nothing.
pub fn decimal(value: f64, places: usize) -> String {
    number(value, u32::try_from(places).unwrap_or(u32::MAX), None).unwrap_or_else(|| NONE.to_owned())
}

fn length(value: f64, style: Style) -> String {
    match style {
        Style::FeetInches => feet_inches(value),
        Style::DecimalFeet => measure(value / 12.0, 2, "ft"),
        Style::Us if value.abs() >= 36.0 => feet_inches(value),
        Style::Us | Style::Inches => inches(value),
        Style::Millimeters => millimeters(value),
        Style::Metric | Style::MetricUsual => {
            let meters = in_unit(value, Unit::M);
            if meters.abs() >= 0.9995 { measure(meters, 3, "m") } else { millimeters(value) }
        }
    }
}

/// `3¼ in`; `3.83 in` where the value is no sixteenth.
fn inches(value: f64) -> String {
    let parts = value.abs() * 16.0;
    match whole(parts) {
        Some(sixteenths) if (parts - sixteenths as f64).abs() <= 1.6e-5 => {
            let mut text = String::new();
            if value < 0.0 && sixteenths > 0 {
                text.push('−');
            }
            sixteenth(&mut text, sixteenths, false);
            joined(text, "in")
        }
        _ => measure(value, 2, "in"),
    }
}

/// Millimeters, as they stand beside a reading: `3 823 mm`, `82.6 mm`.
pub(super) fn millimeters(value: f64) -> String {
    let millimeters = in_unit(value, Unit::Mm);
    let places = if millimeters.abs() < 99.95 { 1 } else { 0 };
    number(millimeters, places, Some('\u{202f}')).map_or_else(|| NONE.to_owned(), |text| joined(text, "mm"))
}

/// The same pitch as an angle and as a grade: `18.43°`, `33.33 %`.
pub(super) fn pitch_forms(value: f64) -> Vec<String> {
    let mut forms = Vec::new();
    if let Some(mut degrees) = number(in_unit(value, Unit::Deg), 2, None) {
        degrees.push('°');
        forms.push(degrees);
    }
    forms.push(measure(value * 100.0, 2, "%"));
    forms
}

pub(super) fn measure(value: f64, places: u32, unit: &str) -> String {
    number(value, places, None).map_or_else(|| NONE.to_owned(), |text| joined(text, unit))
}

fn joined(mut text: String, unit: &str) -> String {
    if !unit.is_empty() {
        text.push(NBSP);
        text.push_str(unit);
    }
    text
}

fn duration(minutes: f64, group: char) -> String {
    let size = minutes.abs();
    if size < 1.0 && size > 0.0 {
        return measure(minutes * 60.0, 0, "s");
    }
    if size < 59.95 {
        return measure(minutes, 1, "min");
    }
    let Some(all) = whole(size) else {
        return NONE.to_owned();
    };
    let mut text = String::new();
    if minutes < 0.0 {
        text.push('−');
    }
    // A week or more in whole days is said in days.
    if all >= 10_080 && all % 1_440 == 0 {
        push(&mut text, all / 1_440, Some(group));
        return joined(text, "d");
    }
    push(&mut text, all / 60, Some(group));
    text = joined(text, "h");
    if all % 60 > 0 {
        text.push(NBSP);
        push(&mut text, all % 60, None);
        text = joined(text, "min");
    }
    text
}

fn money(cents: f64, group: char) -> String {
    let Some(all) = whole(cents.abs()) else {
        return NONE.to_owned();
    };
    let mut text = String::new();
    if cents < 0.0 && all > 0 {
        text.push('−');
    }
    text.push('$');
    push(&mut text, all / 100, Some(group));
    if all % 100 > 0 {
        text.push('.');
        padded(&mut text, all % 100, 2);
    }
    text
}

/// Five digits, leading zeros and all.
fn zip(code: f64) -> String {
    let mut text = String::new();
    padded(&mut text, super::held_between(code, 0.0, 99_999.0) as u64, 5);
    text
}

fn date(days: f64) -> String {
    if !(-3e6..=3e6).contains(&days) {
        return NONE.to_owned();
    }
    let (year, month, day) = day_of(libm::floor(days) as i64);
    let (Ok(year @ 0..=9_999), Ok(month), Ok(day)) =
        (u64::try_from(year), u64::try_from(month), u64::try_from(day))
    else {
        return NONE.to_owned();
    };
    let mut text = String::new();
    padded(&mut text, year, 4);
    text.push('-');
    padded(&mut text, month, 2);
    text.push('-');
    padded(&mut text, day, 2);
    text
}

/// The nearest whole number, of what is at least nothing and can be told to the unit.
fn whole(size: f64) -> Option<u64> {
    let near = libm::round(size);
    (0.0..=1e15).contains(&near).then_some(near as u64)
}

/// A decimal, rounded once, without zeros at its end.
fn number(value: f64, places: u32, group: Option<char>) -> Option<String> {
    let scale = 10_u64.checked_pow(places)?;
    let all = whole(value.abs() * scale as f64)?;
    let mut text = String::new();
    if value < 0.0 && all > 0 {
        text.push('−');
    }
    push(&mut text, all / scale, group);
    let (mut part, mut left) = (all % scale, places);
    if part > 0 {
        while part % 10 == 0 {
            part /= 10;
            left -= 1;
        }
        text.push('.');
        padded(&mut text, part, left);
    }
    Some(text)
}

/// Digits, grouped by threes with a mark.
fn push(text: &mut String, value: u64, group: Option<char>) {
    if value >= 1_000 {
        push(text, value / 1_000, group);
        text.extend(group);
        padded(text, value % 1_000, 3);
    } else {
        padded(text, value, 1);
    }
}

/// Digits, at least so many.
fn padded(text: &mut String, value: u64, least: u32) {
    if value >= 10 || least > 1 {
        padded(text, value / 10, least.saturating_sub(1));
    }
    text.push(char::from(b'0' + (value % 10) as u8));
}

/// Sixteenths as whole inches and a fraction; a nothing before the fraction only after feet.
fn sixteenth(text: &mut String, sixteenths: u64, after_feet: bool) {
    let (inches, part) = (sixteenths / 16, sixteenths % 16);
    if inches > 0 || part == 0 || after_feet {
        push(text, inches, None);
    }
    let character = match part {
        2 => '⅛',
        4 => '¼',
        6 => '⅜',
        8 => '½',
        10 => '⅝',
        12 => '¾',
        14 => '⅞',
        0 => return,
        _ => {
            if inches > 0 || after_feet {
                text.push(NBSP);
            }
            push(text, part, None);
            text.push_str("/16");
            return;
        }
    };
    text.push(character);
}
