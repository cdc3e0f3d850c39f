//! Readings as people write them, and writings as people read them.

use super::Unit::*;
use super::*;
use Sense as S;
use Want::{Ask, Blank, Is, No, Range};

mod ahead;
mod chance;
mod kinds;
mod phrasings;
mod readings;
mod several;
mod trackers;
mod writings;

/// What a text is expected to be: low, likely, high; or the senses asked for; or a fault.
#[derive(Debug, Clone, PartialEq)]
enum Want {
    Is(f64),
    Range(f64, f64),
    Ask(&'static [(Sense, f64)]),
    No(Fault),
    Blank,
}

fn ratio(num: i128, den: i128) -> Ratio {
    Ratio::new(num, den).unwrap()
}

fn likely(value: &Value) -> f64 {
    match value {
        Value::Band(reading) => reading.likely.to_f64(),
        Value::Member(member) => member.width_in.to_f64(),
    }
}

fn got(text: &str, kind: Kind, unit: Unit) -> Want {
    match read(text, kind, unit, None) {
        Outcome::Blank => Want::Blank,
        Outcome::Refused(fault) => No(fault),
        Outcome::Read(Value::Band(one)) if one.low == one.high => Is(one.likely.to_f64()),
        Outcome::Read(Value::Band(one)) => {
            assert!(one.low <= one.likely && one.likely <= one.high);
            Range(one.low.to_f64(), one.high.to_f64())
        }
        Outcome::Read(member) => Is(likely(&member)),
        Outcome::Ask(meanings) => {
            for meaning in &meanings {
                // Pressing a meaning reads that meaning.
                assert_eq!(read(text, kind, unit, Some(meaning.sense)), Outcome::Read(meaning.value.clone()));
            }
            Ask(Vec::leak(meanings.iter().map(|one| (one.sense, likely(&one.value))).collect()))
        }
    }
}

/// Equal, where a wanted figure of a metric text is itself a rounded double: to its last bit or two.
fn same(got: &Want, want: &Want) -> bool {
    let near = |one: f64, two: f64| (one - two).abs() <= 4e-16 * two.abs();
    match (got, want) {
        (Is(got), Is(want)) => near(*got, *want),
        (Range(low, high), Range(least, most)) => near(*low, *least) && near(*high, *most),
        (Ask(got), Ask(want)) => {
            got.len() == want.len()
                && got.iter().zip(*want).all(|(got, want)| got.0 == want.0 && near(got.1, want.1))
        }
        _ => got == want,
    }
}

#[track_caller]
fn all(kind: Kind, unit: Unit, rows: &[(&str, Want)]) {
    let wrong: Vec<_> = rows
        .iter()
        .filter_map(|(text, want)| {
            let got = got(text, kind, unit);
            (!same(&got, want)).then(|| format!("{text:?} in {kind:?}/{unit:?}: {got:?}, wanted {want:?}"))
        })
        .collect();
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}
