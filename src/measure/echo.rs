//! What stands beside a field: the reading as understood.

use super::several::several;
use super::tokens::{Piece, tokens};
use super::words::Word;
use super::write::{measure, millimeters, pitch_forms};
use super::{
    Fault, Kind, Outcome, Ratio, Reading, Sense, Style, Unit, Units, Value, feet_inches, read, write,
};
use serde::Serialize;

/// What became of a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum EchoState {
    /// Nothing was typed.
    Blank,
    /// One meaning.
    Read,
    /// Two or more; the person has to press one.
    Ask,
    /// Not understood.
    Refused,
}

/// One of several meanings, to be pressed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct EchoMeaning {
    /// What is stored with the text once pressed.
    pub sense: Sense,
    /// What it would then be: `5′-11″`.
    pub text: String,
}

/// One of several measures in one text, to be put into a box of its own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct EchoPart {
    /// What is put into the box.
    pub text: String,
    /// With which unit; `each` for the count, a length otherwise.
    pub unit: Unit,
    /// With which meaning.
    pub sense: Option<Sense>,
    /// The reading; the text itself where its own box will ask.
    pub reading: String,
}

/// A text as it was understood, for the line below its field.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Echo {
    /// What became of it.
    pub state: EchoState,
    /// Why it was refused.
    pub fault: Option<Fault>,
    /// The least it may be, in the unit in which the kind is held; of a member its width.
    pub low: Option<f64>,
    /// The value to work with.
    pub likely: Option<f64>,
    /// The most it may be.
    pub high: Option<f64>,
    /// The reading in the job's units; `≈` before a figure that had to be rounded.
    pub text: String,
    /// The same in the other common forms: `150½ in` and `3 823 mm`.
    pub other: Vec<String>,
    /// What there is to press.
    pub meanings: Vec<EchoMeaning>,
    /// Several measures in a box for one: each way to understand them, in the order written.
    pub several: Vec<Vec<EchoPart>>,
    /// Whether it counts courses of block, 8 in each, nominal.
    pub courses: bool,
}

/// Reads a text and says how it was understood.
///
/// ```
/// use foamwright::measure::{EchoState, Kind, Unit, Units, echo};
/// let read = echo("12 6 1/2", Kind::Length, Unit::Ft, None, Units::Us);
/// assert_eq!(read.text, "12′-6½″");
/// assert_eq!(read.other, ["150½\u{a0}in", "3\u{202f}823\u{a0}mm"]);
/// let asked = echo("5.11", Kind::Length, Unit::Ft, None, Units::Us);
/// assert_eq!(asked.state, EchoState::Ask);
/// assert_eq!(asked.meanings.len(), 2);
/// ```
pub fn echo(text: &str, kind: Kind, unit: Unit, sense: Option<Sense>, units: Units) -> Echo {
    let mut echo = Echo {
        state: EchoState::Blank,
        fault: None,
        low: None,
        likely: None,
        high: None,
        text: String::new(),
        other: Vec::new(),
        meanings: Vec::new(),
        several: Vec::new(),
        courses: false,
    };
    let form = Form { kind, unit, units };
    match read(text, kind, unit, sense) {
        Outcome::Blank => {}
        Outcome::Refused(fault) => {
            echo.state = EchoState::Refused;
            echo.fault = Some(fault);
            if fault == Fault::Several {
                echo.several = lists(text, kind, unit, units);
                echo.courses = courses(text);
            }
        }
        Outcome::Ask(meanings) => {
            echo.state = EchoState::Ask;
            echo.meanings = meanings
                .iter()
                .map(|one| EchoMeaning { sense: one.sense, text: form.text(&one.value, Some(one.sense)) })
                .collect();
        }
        Outcome::Read(value) => {
            let reading = match value {
                Value::Band(reading) => reading,
                Value::Member(member) => {
                    Reading { low: member.width_in, likely: member.width_in, high: member.width_in }
                }
            };
            echo.state = EchoState::Read;
            echo.low = Some(reading.low.to_f64());
            echo.likely = Some(reading.likely.to_f64());
            echo.high = Some(reading.high.to_f64());
            echo.text = form.text(&value, sense);
            echo.other = form.other(&value, &echo.text);
            echo.courses = courses(text);
        }
    }
    echo
}

fn courses(text: &str) -> bool {
    tokens(text).is_ok_and(|tokens| tokens.iter().any(|token| token.piece == Piece::Word(Word::Course)))
}

/// Each way to understand a list of measures. A count's own box says nothing of lengths: they are then in feet
/// or meters.
fn lists(text: &str, kind: Kind, unit: Unit, units: Units) -> Vec<Vec<EchoPart>> {
    let unit = match (kind, units) {
        (Kind::Length, _) => unit,
        (_, Units::Us) => Unit::Ft,
        (_, Units::Metric) => Unit::M,
    };
    let mut ways = Vec::new();
    for parts in several(text, unit) {
        let mut list = Vec::new();
        for part in parts {
            let kind = if part.unit == Unit::Each { Kind::Count } else { Kind::Length };
            let form = Form { kind, unit: part.unit, units };
            let reading = match read(&part.text, kind, part.unit, part.sense) {
                Outcome::Read(value) => form.text(&value, part.sense),
                _ => part.text.clone(),
            };
            list.push(EchoPart { text: part.text, unit: part.unit, sense: part.sense, reading });
        }
        ways.push(list);
    }
    ways
}

struct Form {
    kind: Kind,
    unit: Unit,
    units: Units,
}

/// How the figures of one line are written.
#[derive(Clone, Copy)]
enum Way {
    Style(Style),
    /// A length as this box is worked in.
    UsLength,
    Millimeters,
}

impl Form {
    /// A value written as the person works.
    fn text(&self, value: &Value, sense: Option<Sense>) -> String {
        let way = match (self.units, sense) {
            (_, Some(Sense::Converted)) => Way::Style(Style::Metric),
            (Units::Us, Some(Sense::DecimalFeet)) => Way::Style(Style::DecimalFeet),
            (Units::Us, _) if matches!(self.kind, Kind::Length | Kind::Probes) => Way::UsLength,
            (Units::Us, _) => Way::Style(Style::Us),
            (Units::Metric, _) => Way::Style(Style::MetricUsual),
        };
        self.line(value, way, true)
    }

    /// The same in the other common forms, without what stands there already.
    fn other(&self, value: &Value, text: &str) -> Vec<String> {
        if let (Kind::Pitch, Value::Band(one)) = (self.kind, value) {
            return if one.low == one.high { pitch_forms(one.likely.to_f64()) } else { Vec::new() };
        }
        let us = self.units == Units::Us;
        let ways: &[Way] = match self.kind {
            Kind::Length | Kind::Member if us => &[Way::Style(Style::Inches), Way::Millimeters],
            Kind::Length | Kind::Member => &[Way::UsLength, Way::Millimeters],
            Kind::Count
            | Kind::Percent
            | Kind::Duration
            | Kind::Money
            | Kind::Date
            | Kind::Zip
            | Kind::Clock
            | Kind::Coordinate
            | Kind::Number
            | Kind::Probes => &[],
            _ if us => &[Way::Style(Style::MetricUsual)],
            _ => &[Way::Style(Style::Us)],
        };
        let mut forms: Vec<String> = ways.iter().map(|&way| self.line(value, way, false)).collect();
        forms.retain(|form| form != text);
        forms
    }

    /// A range from low to high, a member's width and depth; where asked, with `≈` before each figure that
    /// would not be read back as what was read.
    fn line(&self, value: &Value, way: Way, exact: bool) -> String {
        let (first, second, between) = match value {
            Value::Band(one) if one.low == one.high => (one.likely, None, ""),
            Value::Band(one) => (one.low, Some(one.high), "\u{a0}– "),
            Value::Member(member) => (member.width_in, member.depth_in, "\u{a0}× "),
        };
        let mut line = String::new();
        for (figure, before) in [(Some(first), ""), (second, between)] {
            let Some(figure) = figure else { continue };
            line.push_str(before);
            let written = self.figure(figure.to_f64(), way);
            // A time of day is written to the minute, as it was read; without its half of the day it would ask again.
            if exact && self.kind != Kind::Clock && !self.reads_back(&written, figure) {
                line.push_str("≈\u{a0}");
            }
            line.push_str(&written);
        }
        line
    }

    fn reads_back(&self, written: &str, figure: Ratio) -> bool {
        // Our own commas group thousands.
        match read(written, self.kind, self.unit, Some(Sense::Thousands)) {
            Outcome::Read(Value::Band(one)) => one.low == figure,
            Outcome::Read(Value::Member(one)) => one.width_in == figure,
            _ => false,
        }
    }

    /// A length for a person who works in feet and inches is drawn (`12′-6½″`) in a box in feet and from 3 ft
    /// on, and written as in a sentence otherwise. A rate of tax has more places than a sentence gives a share.
    fn figure(&self, value: f64, way: Way) -> String {
        match way {
            Way::Millimeters => millimeters(value),
            Way::UsLength if self.unit == Unit::Ft || value.abs() >= 36.0 => feet_inches(value),
            Way::UsLength => write(Kind::Length, value, Style::Inches),
            Way::Style(_) if self.kind == Kind::Percent => measure(value, 4, "%"),
            Way::Style(style) => write(self.kind, value, style),
        }
    }
}
