//! What stands beside a question gives none of its answers away.

use foamwright::measure::{Kind, Units};
use foamwright::practice::{OnHost, Seed, VERSION, exercise, figure_in, solve, tree};
use std::collections::BTreeMap;

/// A measure that was entered is written on the drawing and in the list beside it, unless a step asks for it: the page
/// knows such a step by its key, which is the field's name. So none may be asked under another one.
#[test]
fn no_answer_stands_among_the_measures_beside_the_drawing() {
    let mut all: BTreeMap<String, (u32, u32)> = BTreeMap::new();
    for (level, number) in (1..=4).flat_map(|level| (0..100).map(move |n| (level, n * 653))) {
        let seed = Seed { version: VERSION, level, number };
        let Some(made) = exercise(seed, Units::Us) else { continue };
        let asked = &made.exercise;
        let tree = tree(&asked.job, asked.now);
        let solved = solve(&made, &mut OnHost);
        for (place, surface) in asked.job.surfaces.iter().enumerate() {
            if !asked.shown.iter().any(|one| one.what == "outline" && one.id == surface.id) {
                continue;
            }
            for entry in surface.entries.iter().filter(|one| !one.text.trim().is_empty()) {
                let path = format!("surfaces.{place}.area.measures.{}", entry.field);
                let Some(measure) = figure_in(&tree, &path) else { continue };
                for (step, one) in asked.steps.iter().zip(&solved) {
                    if step.kind != Kind::Length || step.key == entry.field {
                        continue;
                    }
                    let name = format!("{}: {} {} is {}", asked.scene, step.key, step.of, entry.field);
                    let (same, times) = all.entry(name).or_default();
                    *times += 1;
                    let answer = one.as_ref().map_or(f64::NAN, |one| one.value);
                    *same += u32::from((answer - measure).abs() < 1e-6);
                }
            }
        }
    }
    assert!(all.len() > 10, "lengths were held against measures: {}", all.len());
    let given: Vec<_> = all.iter().filter(|(_, (same, times))| 2 * same > *times).collect();
    assert!(given.is_empty(), "{given:?}");
}
