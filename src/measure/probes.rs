//! A list of probe readings pasted as it stands.

use super::ratio::Ratio;
use super::{Fault, Kind, Meaning, Outcome, Reading, Sense, Unit, Value, read};

/// The longest list, in characters: some three hundred readings.
const LONGEST: usize = 4_000;

/// Reads a list of depths: low is the thinnest, high the thickest, likely the mean of all.
///
/// A line break, a semicolon, or a comma with a space after it ends a reading; each is read by the grammar of
/// a length. Where commas alone separate, one between two digits (`3,8`) may be a decimal comma or may end a
/// reading, so such a list is refused.
pub(super) fn probes(text: &str, unit: Unit, sense: Option<Sense>) -> Outcome {
    if text.chars().count() > LONGEST {
        return Outcome::Refused(Fault::TooLong);
    }
    let lines = text.contains(['\n', '\r', ';']);
    let mut sum = Reading { low: Ratio::ZERO, likely: Ratio::ZERO, high: Ratio::ZERO };
    let mut count = 0_i64;
    let ends = |mark: char, next: Option<char>| match mark {
        '\n' | '\r' | ';' => true,
        ',' => next.is_none_or(char::is_whitespace),
        _ => false,
    };
    let mut rest = text;
    while !rest.is_empty() {
        let end = rest.char_indices().find(|&(at, mark)| {
            ends(mark, rest.get(at + mark.len_utf8()..).and_then(|after| after.chars().next()))
        });
        let (item, after) = match end {
            Some((at, mark)) => (rest.get(..at), rest.get(at + mark.len_utf8()..)),
            None => (Some(rest), None),
        };
        rest = after.unwrap_or("");
        let item = item.unwrap_or("").trim();
        if item.is_empty() {
            continue;
        }
        if !lines && item.contains(',') {
            return Outcome::Refused(Fault::RunTogether);
        }
        let one = match read(item, Kind::Length, unit, sense) {
            Outcome::Read(Value::Band(one)) => one,
            Outcome::Read(Value::Member(_)) => return Outcome::Refused(Fault::NotTaken),
            Outcome::Blank => continue,
            Outcome::Ask(meanings) if sense.is_none() => return asked(text, unit, &meanings),
            Outcome::Ask(_) => return Outcome::Refused(Fault::NotTaken),
            Outcome::Refused(fault) => return Outcome::Refused(fault),
        };
        let first = count == 0;
        let Some(likely) = sum.likely.plus(one.likely) else { return Outcome::Refused(Fault::TooLarge) };
        sum = Reading {
            low: if first || one.low < sum.low { one.low } else { sum.low },
            likely,
            high: if first || one.high > sum.high { one.high } else { sum.high },
        };
        count += 1;
    }
    if count == 0 {
        return Outcome::Blank;
    }
    match sum.likely.over(Ratio::whole(count)) {
        Some(likely) => Outcome::Read(Value::Band(Reading { likely, ..sum })),
        None => Outcome::Refused(Fault::TooLarge),
    }
}

/// The whole list under each meaning of the reading that had several.
fn asked(text: &str, unit: Unit, meanings: &[Meaning]) -> Outcome {
    let mut whole = Vec::new();
    for &Meaning { sense, .. } in meanings {
        if let Outcome::Read(value) = probes(text, unit, Some(sense)) {
            whole.push(Meaning { sense, value });
        }
    }
    if whole.is_empty() { Outcome::Refused(Fault::NotTaken) } else { Outcome::Ask(whole) }
}
