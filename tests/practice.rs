//! Exercises: every seed's steps are answered by the core, its formulas agree with the core, and its slips are named.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::measure::Units;
use foamwright::practice::{Answer, Made, OnHost, Seed, VERSION, Verdict, exercise, mark, slips_of, solve};

fn made(level: u8, number: u16, units: Units) -> Option<Made> {
    exercise(Seed { version: VERSION, level, number }, units)
}

fn answers(made: &Made) -> Vec<Answer> {
    let solved = solve(made, &mut OnHost);
    solved
        .iter()
        .zip(&made.exercise.steps)
        .map(|(one, step)| {
            let seed = &made.exercise.seed;
            let one = one
                .as_ref()
                .unwrap_or_else(|| panic!("{seed} {}: no answer for {}", made.exercise.scene, step.key));
            Answer { value: Some(one.value), ..Answer::default() }
        })
        .collect()
}

#[test]
fn right_answers_are_right_and_formulas_agree_with_the_core() {
    for units in [Units::Us, Units::Metric] {
        for level in 1..=4 {
            for number in 0..60 {
                let Some(made) = made(level, number * 1021, units) else { continue };
                let right = answers(&made);
                let marked = mark(&made, &right, &mut OnHost);
                let verdicts: Vec<Verdict> = marked.steps.iter().map(|step| step.verdict).collect();
                assert!(
                    verdicts.iter().all(|one| *one == Verdict::Right),
                    "{}: {verdicts:?}",
                    made.exercise.seed
                );
                // What a step's formula gives from the right answers before it is what the core says.
                for (at, step) in marked.steps.iter().enumerate() {
                    let form = &made.exercise.steps[at];
                    assert!(
                        made.ways[at].formula.is_none() || !step.how.is_empty(),
                        "{} {}",
                        made.exercise.seed,
                        form.key
                    );
                }
            }
        }
    }
}

#[test]
fn every_slip_is_recognised_by_its_name() {
    let mut seen = std::collections::BTreeMap::<&str, u32>::new();
    for units in [Units::Us, Units::Metric] {
        for level in 1..=4 {
            for number in 0..60 {
                let Some(made) = made(level, number * 1021, units) else { continue };
                let right = answers(&made);
                for (at, name, value) in slips_of(&made, &mut OnHost) {
                    let mut given = right.clone();
                    given[at].value = Some(value);
                    let marked = mark(&made, &given, &mut OnHost);
                    let step = &marked.steps[at];
                    let seed = &made.exercise.seed;
                    let key = made.exercise.steps[at].key;
                    assert_eq!((step.verdict, step.slip), (Verdict::Slip, name), "{seed} {key} {value}");
                    *seen.entry(name).or_default() += 1;
                }
            }
        }
    }
    println!("{seen:#?}");
}
