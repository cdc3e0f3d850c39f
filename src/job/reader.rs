//! Turning entries into numbers: the one place where text, default, limits and findings meet.

use crate::findings::{Code, Finding};
use crate::job::{Entered, Field, Part, entry, field};
use crate::measure::{Band, Fault, Kind, Member, Outcome, Reading, Style, Unit, Units, Value, read, write};

/// A number taken from an entry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Taken {
    /// Low, likely and high, in the unit that the field's kind is held in.
    pub value: Band<f64>,
    /// Whether it is the table's default, the box being blank.
    pub default: bool,
}

/// Which end of a range counts.
pub(crate) type End = fn(Band<f64>) -> f64;

/// Reads entries and keeps what has to be said about them.
#[derive(Debug)]
pub struct Reader {
    /// What bare numbers mean, and how figures in findings are written.
    pub units: Units,
    /// What was found so far.
    pub findings: Vec<Finding>,
}

impl Reader {
    /// A reader for a job in these units.
    pub fn new(units: Units) -> Self {
        Self { units, findings: Vec::new() }
    }

    /// The number in a field. A blank takes the table's default; without one, or when the text cannot be
    /// taken, there is no number. Everything but a plain blank leaves a finding.
    pub fn take(&mut self, part: Part, id: u32, entries: &[Entered], name: &str) -> Option<Taken> {
        let row = field(part, name)?;
        match self.value(row, id, entries)? {
            (Value::Band(reading), default) => Some(Taken { value: band(reading)?, default }),
            (Value::Member(_), _) => None,
        }
    }

    /// Several numbers of the job itself, each by the end of its range that its use asks for.
    pub(crate) fn of_job(&mut self, entries: &[Entered], wanted: &[(&str, End)], found: &mut [Option<f64>]) {
        for ((name, end), found) in wanted.iter().zip(found) {
            *found = self.take(Part::Job, 0, entries, name).map(|taken| end(taken.value));
        }
    }

    /// Like [`take`](Self::take), for a field that has to be filled in: a blank leaves a finding.
    pub fn need(&mut self, part: Part, id: u32, entries: &[Entered], name: &str) -> Option<Taken> {
        if entry(entries, name).is_none() && field(part, name).is_some_and(|row| row.default.is_empty()) {
            self.say(Finding::new(Code::Needed, part, id, name));
            return None;
        }
        self.take(part, id, entries, name)
    }

    /// The member in a field of kind [`Kind::Member`].
    pub fn member(&mut self, part: Part, id: u32, entries: &[Entered], name: &str) -> Option<Member> {
        match self.value(field(part, name)?, id, entries)? {
            (Value::Member(member), _) => Some(member),
            (Value::Band(reading), _) => Some(Member { width_in: reading.likely, depth_in: None }),
        }
    }

    /// The word pressed in a field of kind [`Kind::Choice`]; the default, or `None`, where none was. A word that
    /// the field does not list (from a damaged file) counts as none, with a finding.
    pub fn choice(&mut self, part: Part, id: u32, entries: &[Entered], name: &str) -> Option<&'static str> {
        let row = field(part, name)?;
        let text = entry(entries, name).map_or(row.default, |entered| entered.text.trim());
        let known = row.choices.iter().copied().find(|choice| *choice == text);
        if known.is_none() && !text.is_empty() {
            self.say(Finding::new(Code::NotTaken, part, id, name).with("text", text));
        }
        known
    }

    /// Keeps a finding.
    pub fn say(&mut self, finding: Finding) {
        self.findings.push(finding);
    }

    /// A value written in the job's units, with its unit: for the figures of a finding.
    pub fn figure(&self, kind: Kind, value: f64) -> String {
        let style = match self.units {
            Units::Metric if kind != Kind::FoamVolume => Style::MetricUsual,
            _ => Style::Us,
        };
        write(kind, value, style)
    }

    fn value(&mut self, row: &Field, id: u32, entries: &[Entered]) -> Option<(Value, bool)> {
        let Some(entered) = entry(entries, row.field) else {
            if row.default.is_empty() {
                return None;
            }
            return match read(row.default, row.kind, row.us, None) {
                Outcome::Read(value) => Some((value, true)),
                _ => None,
            };
        };
        let unit = entered.unit.unwrap_or_else(|| row.unit(self.units));
        let code = match read(&entered.text, row.kind, unit, entered.sense) {
            Outcome::Blank => return None,
            Outcome::Read(value) => return self.within(row, id, unit, value).map(|value| (value, false)),
            Outcome::Ask(_) => Code::TwoMeanings,
            Outcome::Refused(fault) => code_of(fault),
        };
        self.say(Finding::new(code, row.part, id, row.field).with("text", entered.text.trim()));
        None
    }

    fn within(&mut self, row: &Field, id: u32, unit: Unit, value: Value) -> Option<Value> {
        let (low, high) = match value {
            Value::Band(reading) => (reading.low.to_f64(), reading.high.to_f64()),
            Value::Member(member) => (member.width_in.to_f64(), member.width_in.to_f64()),
        };
        let kind = if row.kind == Kind::Member { Kind::Length } else { row.kind };
        let found = |code| Finding::new(code, row.part, id, row.field);
        if !(low.is_finite() && high.is_finite()) {
            self.say(found(Code::TooLarge));
            return None;
        }
        if low < row.least {
            let finding = found(Code::BelowLimit)
                .with("given", self.figure(kind, low))
                .with("least", self.figure(kind, row.least));
            self.say(finding);
            return None;
        }
        if high > row.most {
            let finding = found(Code::AboveLimit)
                .with("given", self.figure(kind, high))
                .with("most", self.figure(kind, row.most));
            self.say(finding);
            return None;
        }
        if high > row.unlikely {
            let mut finding = found(Code::Unlikely).with("given", self.figure(kind, high));
            if row.kind == Kind::Length && unit == Unit::Ft {
                finding = finding.with("other", write(Kind::Length, high / 12.0, Style::FeetInches));
            }
            self.say(finding);
        }
        Some(value)
    }
}

fn band(reading: Reading) -> Option<Band<f64>> {
    let band =
        Band { low: reading.low.to_f64(), likely: reading.likely.to_f64(), high: reading.high.to_f64() };
    (band.low.is_finite() && band.likely.is_finite() && band.high.is_finite()).then_some(band)
}

fn code_of(fault: Fault) -> Code {
    match fault {
        Fault::NotANumber => Code::NotANumber,
        Fault::Negative => Code::Negative,
        Fault::ZeroBelowTheLine => Code::ZeroBelowTheLine,
        Fault::WrongUnit => Code::WrongUnit,
        Fault::TooLarge => Code::TooLarge,
        Fault::TooLong => Code::TooLong,
        Fault::NotWhole => Code::NotWhole,
        Fault::NoSuchDay => Code::NoSuchDay,
        Fault::NotTaken => Code::NotTaken,
        Fault::RunTogether => Code::RunTogether,
        Fault::Several => Code::Several,
        Fault::ThreeLengths => Code::ThreeLengths,
    }
}
