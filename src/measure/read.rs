//! Reading what people write.

use super::parse::{Parse, Parser};
use super::probes::probes;
use super::several::several;
use super::tokens::{Token, tokens};
use super::units::fits;
use super::{Fault, Kind, Meaning, Outcome, Ratio, Reading, Sense, Unit, Value};

/// Reads a text as a value of a kind, a bare number having the unit of the box.
///
/// One grammar serves every box. A text with two meanings answers with both, unless `sense` says which was
/// pressed; a `sense` that this text does not raise is ignored. Nothing of a text is ever dropped: what is
/// not understood to the end is refused, and the text stays with the person.
///
/// Conventions, where people differ:
///
/// * a dash, `and` or a comma between feet, inches and a fraction joins them; a leading one is a minus, and
///   only a temperature may have one;
/// * in a box in feet, `5.10` and `5.11` have two meanings, since "five ten" and "five eleven" are said of
///   feet and inches; `5.6` is read as decimal feet, since nobody who says "five six" writes the point for
///   it without meaning tenths, and it is shown back in feet and inches;
/// * a comma before exactly three digits may group thousands or mark decimals, except in money and counts,
///   which have no thousandths; a space, a narrow space or a no-break space always groups thousands;
/// * `about` and `~` stand for 5 % either way (common practice), of a temperature for 3 °F; said of a range
///   they leave it as it is;
/// * a range's likely value is its middle;
/// * `12 courses` (of block) is a length of 8 in each, nominal;
/// * several measures in a box for one (`10' x 14' x 8'`, `6 @ 2' x 4'`) are refused as such: [`echo`](super::echo()) lists them
///   for the boxes that they would fill;
/// * an hour from 1 to 12 that does not say which half of the day it is in has two meanings; `08:00`, `18:05` and
///   `0:30` are of a clock of 24 hours; 24 is no hour, since it may be either midnight of its day;
/// * `BTU` of a heater is Btu per hour, as it is sold; `k`, `MBH` and `MBtu` are refused, since they are not read alike
///   everywhere;
/// * a whole pair of nominal sizes (`2x6`) is lumber: in a box for a member both dressed sizes, in a box for
///   a length in inches or millimeters the dressed depth.
///
/// Refused as too large is whatever lies beyond 10¹² of the unit in which the kind is held.
///
/// ```
/// use foamwright::measure::{Kind, Outcome, Unit, Value, read};
/// let Outcome::Read(Value::Band(reading)) = read("12' 6 1/2\"", Kind::Length, Unit::Ft, None) else {
///     panic!("one meaning");
/// };
/// assert_eq!(reading.likely.to_f64(), 150.5);
/// assert!(matches!(read("12-6", Kind::Length, Unit::Ft, None), Outcome::Ask(meanings) if meanings.len() == 2));
/// ```
pub fn read(text: &str, kind: Kind, unit: Unit, sense: Option<Sense>) -> Outcome {
    if kind == Kind::Probes {
        return probes(text, unit, sense);
    }
    let tokens = match tokens(text) {
        Ok(tokens) if tokens.is_empty() => return Outcome::Blank,
        Ok(tokens) => tokens,
        Err(fault) => return Outcome::Refused(fault),
    };
    if !fits(kind, unit) {
        return Outcome::Refused(Fault::WrongUnit);
    }
    if sense.is_some()
        && let (Ok(value), None) = pass(&tokens, kind, unit, sense)
    {
        return Outcome::Read(value);
    }
    let (first, doubt) = pass(&tokens, kind, unit, None);
    let refused = |fault| {
        let list = match kind {
            Kind::Length => several(text, unit),
            Kind::Count => several(text, Unit::Ft),
            _ => Vec::new(),
        };
        Outcome::Refused(if list.is_empty() { fault } else { Fault::Several })
    };
    let Some(among) = doubt else {
        return first.map_or_else(refused, Outcome::Read);
    };
    let mut meanings: Vec<Meaning> = Vec::new();
    for &sense in among {
        if let (Ok(value), None) = pass(&tokens, kind, unit, Some(sense))
            && !meanings.iter().any(|known| known.value == value)
        {
            meanings.push(Meaning { sense, value });
        }
    }
    match meanings.pop() {
        None => refused(first.err().unwrap_or(Fault::NotTaken)),
        Some(only) if meanings.is_empty() => Outcome::Read(only.value),
        Some(last) => {
            meanings.push(last);
            Outcome::Ask(meanings)
        }
    }
}

/// One pass under one meaning; with it, the meanings of the first place where none was given.
fn pass(
    tokens: &[Token],
    kind: Kind,
    unit: Unit,
    sense: Option<Sense>,
) -> (Parse<Value>, Option<&'static [Sense]>) {
    let mut parser = Parser {
        tokens,
        at: 0,
        start: 0,
        kind,
        unit,
        sense,
        doubt: None,
        between: false,
        factor: false,
        apostrophe: false,
    };
    let value = match kind {
        Kind::Clock => parser.time_of_day().map(single),
        Kind::Coordinate => parser.coordinate().map(single),
        Kind::Date => parser.date().map(single),
        Kind::Zip => parser.zip().map(single),
        Kind::Member => parser.member().map(Value::Member),
        _ => parser.reading().map(Value::Band),
    };
    (value, parser.doubt)
}

fn single(value: Ratio) -> Value {
    Value::Band(Reading { low: value, likely: value, high: value })
}
