//! What a seed gives never changes: whoever printed one gets the same exercise for ever.
//!
//! `v1.txt` holds a line for each of a few hundred seeds: seed, units, scene, a hash of the exercise, a hash of its right
//! answers, a hash of its slips with what each gives and how it is marked. The first hash may never change. It is taken of the exercise without what is empty, nought or switched off, and
//! without the job's version, so that a later version of the document which only adds fields leaves it alone. The
//! second hash is of the right answers to nine digits: it changes where what the core says changes, and then on purpose, as
//! does the third: a key that somebody has printed says other things from then on.
//!
//! The file is written anew by `FOAMWRIGHT_WRITE_GOLDEN=yes cargo test --test practice golden`: for a generator version
//! that is not released yet, or where the core's published values change. For a released one a changed first hash is a
//! fault of the code, never of the file.

use super::*;
use foamwright::practice::{book, mark, slips_of};
use serde_json::Map;
use sha2::{Digest, Sha256};
use std::path::PathBuf;

/// Seeds of each level.
const SEEDS: usize = 48;

fn file() -> PathBuf {
    [env!("CARGO_MANIFEST_DIR"), "tests", "practice", "v1.txt"].iter().collect()
}

/// The seeds on the list: spread over the numbers of each level, and the whole book.
fn listed() -> Vec<(Seed, Units)> {
    let drawn = LEVELS
        .flat_map(|level| spread().take(SEEDS).map(move |number| Seed { version: 1, level, number }))
        .chain(book());
    drawn.flat_map(|seed| BOTH.map(|units| (seed, units))).collect()
}

/// What is left of a value without what a document may leave out; keys in order.
fn bare(value: Value) -> Option<Value> {
    match value {
        Value::Null | Value::Bool(false) => None,
        Value::Number(number) if number.as_f64() == Some(0.0) => None,
        Value::String(text) if text.is_empty() => None,
        Value::Array(list) if list.is_empty() => None,
        // A list keeps its places.
        Value::Array(list) => Some(list.into_iter().map(|one| bare(one).unwrap_or(Value::Null)).collect()),
        Value::Object(fields) => {
            let mut kept: Vec<(String, Value)> =
                fields.into_iter().filter_map(|(key, one)| Some((key, bare(one)?))).collect();
            kept.sort_by(|one, other| one.0.cmp(&other.0));
            (!kept.is_empty()).then(|| Value::Object(kept.into_iter().collect::<Map<_, _>>()))
        }
        other => Some(other),
    }
}

fn hash(text: &str) -> String {
    Sha256::digest(text.as_bytes()).iter().take(16).map(|byte| format!("{byte:02x}")).collect()
}

/// The exercise, as it may never change.
fn of_exercise(made: &Made) -> String {
    let mut tree = serde_json::to_value(&made.exercise).expect("an exercise");
    if let Some(job) = tree.get_mut("job").and_then(Value::as_object_mut) {
        job.remove("version");
    }
    hash(&bare(tree).expect("something").to_string())
}

fn of_answers(made: &Made) -> String {
    let right = right(made, &mut Kept::default());
    hash(&right.iter().map(|value| nine_digits(*value)).collect::<Vec<_>>().join(" "))
}

/// What can go wrong, what it gives, and how that and a hint are marked.
fn of_slips(made: &Made) -> String {
    let core = &mut Kept::default();
    let right = right(made, core);
    let told = slips_of(made, core).into_iter().map(|(at, name, value)| {
        let mut given: Vec<Answer> =
            right.iter().map(|value| Answer { value: Some(*value), hints: 1, shown: false }).collect();
        given[at].value = Some(value);
        let marked = mark(made, &given, core);
        let step = &marked.steps[at];
        format!("{at} {name} {} {:?} {} {}", nine_digits(value), step.verdict, step.slip, marked.points)
    });
    hash(&told.collect::<Vec<_>>().join("\n"))
}

/// To nine digits; nought has no sign.
fn nine_digits(value: f64) -> String {
    format!("{:.8e}", if value == 0.0 { 0.0 } else { value })
}

fn lines() -> Vec<[String; 6]> {
    let made = side_by_side(&listed(), |(seed, units)| {
        let made = exercise(*seed, *units)?;
        let units = if *units == Units::Us { "us" } else { "metric" };
        let scene = made.exercise.scene.to_owned();
        let hashes = [of_exercise(&made), of_answers(&made), of_slips(&made)];
        let [drawn, answers, slips] = hashes;
        Some([seed.to_string(), units.to_owned(), scene, drawn, answers, slips])
    });
    made.into_iter().flatten().collect()
}

#[test]
fn golden_exercises_never_change() {
    let lines = lines();
    if std::env::var_os("FOAMWRIGHT_WRITE_GOLDEN").is_some_and(|value| value == "yes") {
        let text: Vec<String> = lines.iter().map(|line| line.join(" ") + "\n").collect();
        std::fs::write(file(), text.concat()).expect("the file can be written");
        return;
    }
    let text = std::fs::read_to_string(file()).expect("tests/practice/v1.txt");
    let known: Vec<Vec<&str>> = text.lines().map(|line| line.split(' ').collect()).collect();
    let (mut exercises, mut answers) = (Vec::new(), Vec::new());
    for line in &known {
        let [seed, units, scene, drawn, right, slips] = line[..] else {
            panic!("not a line of the file: {line:?}")
        };
        match lines.iter().find(|one| one[0] == seed && one[1] == units) {
            None => exercises.push(format!("{seed} {units} {scene}: gone")),
            Some(one) if one[2] != scene => {
                exercises.push(format!("{seed} {units} {scene}: is now {}", one[2]))
            }
            Some(one) if one[3] != drawn => {
                exercises.push(format!("{seed} {units} {scene}: another exercise"))
            }
            Some(one) if one[4] != right => {
                answers.push(format!("{seed} {units} {scene}: other right answers"))
            }
            Some(one) if one[5] != slips => {
                answers.push(format!("{seed} {units} {scene}: other slips, or marked otherwise"))
            }
            Some(_) => {}
        }
    }
    assert!(exercises.is_empty(), "printed seeds give something else:\n{}", exercises.join("\n"));
    assert!(answers.is_empty(), "the core's answers changed:\n{}", answers.join("\n"));
    // Nor is a seed of the list missing from the file.
    assert_eq!(lines.len(), known.len());
}

#[test]
fn a_document_that_gains_fields_keeps_its_hash_and_one_that_changes_does_not() {
    let made = LEVELS.clone().find_map(|level| made(level, 0, Units::Us)).expect("an exercise");
    let mut tree = serde_json::to_value(&made.exercise).expect("an exercise");
    let before = bare(tree.clone());
    let job = tree["job"].as_object_mut().expect("a job");
    job.insert("added_list".to_owned(), Value::Array(Vec::new()));
    job.insert("added_text".to_owned(), Value::String(String::new()));
    job.insert("added_number".to_owned(), 0.into());
    job.insert("added_switch".to_owned(), false.into());
    job.insert("added_nothing".to_owned(), Value::Null);
    job.insert("added_part".to_owned(), serde_json::json!({"empty": [], "nought": 0.0}));
    assert_eq!(bare(tree.clone()), before);
    tree["job"]["surfaces"][0]["id"] = 77.into();
    assert_ne!(bare(tree), before);
    // The keys' order in the text does not count.
    let (one, other) = (r#"{"a":1,"b":[{"c":2,"d":0}]}"#, r#"{"b":[{"d":0,"c":2}],"a":1}"#);
    let text = |text: &str| bare(serde_json::from_str(text).expect("JSON")).expect("something").to_string();
    assert_eq!(text(one), text(other));
    assert_eq!((nine_digits(-0.0), nine_digits(1.0 / 3.0)), ("0.00000000e0".into(), "3.33333333e-1".into()));
}
