//! Exercises, all scenes alike: the core answers every step, formulas agree with the core, slips are told apart and named,
//! and what a seed gives never changes.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod golden;
mod scenes;
mod slips;

use foamwright::job::{Job, Now};
use foamwright::measure::{Kind, Style, Unit, Units};
use foamwright::practice::{Answer, Core, Made, Seed, StepForm, VERSION, exercise, figure_in, solve, tree};
use serde_json::Value;

/// The highest level.
const LEVELS: std::ops::RangeInclusive<u8> = 1..=4;
const BOTH: [Units; 2] = [Units::Us, Units::Metric];

/// The core on the host, which works a job out once for the same figures however often they are asked for.
#[derive(Default)]
struct Kept {
    known: Vec<(Job, Vec<String>, Vec<Option<f64>>)>,
}

impl Core for Kept {
    fn figures(&mut self, job: &Job, now: Now, paths: &[String]) -> Vec<Option<f64>> {
        let known = self.known.iter().find(|(known, asked, _)| asked == paths && known == job);
        if let Some((_, _, figures)) = known {
            return figures.clone();
        }
        let tree = tree(job, now);
        let figures: Vec<Option<f64>> = paths.iter().map(|path| figure_in(&tree, path)).collect();
        self.known.push((job.clone(), paths.to_vec(), figures.clone()));
        figures
    }
}

fn made(level: u8, number: u16, units: Units) -> Option<Made> {
    exercise(Seed { version: VERSION, level, number }, units)
}

/// Every number of a level once, far apart from one to the next: whatever many of them are taken, they are spread over
/// all, both ends among the first.
fn spread() -> impl Iterator<Item = u16> {
    // 40,503 is odd, so its multiples go through all 65,536, and about the golden ratio of them, so that they lie evenly.
    [u16::MAX].into_iter().chain((0..u16::MAX).map(|n| n.wrapping_mul(40_503)).filter(|n| *n != u16::MAX))
}

/// The right answers; an exercise whose core knows none is a fault of its scene.
fn right(made: &Made, core: &mut Kept) -> Vec<f64> {
    let solved = solve(made, core);
    let named = made.exercise.steps.iter().zip(solved);
    named
        .map(|(step, one)| match one {
            Some(one) => one.value,
            None => panic!("{}: the core does not answer {}", told(made), name(step)),
        })
        .collect()
}

fn answers(values: &[f64]) -> Vec<Answer> {
    values.iter().map(|value| Answer { value: Some(*value), ..Answer::default() }).collect()
}

/// Which exercise, for whoever has to find it.
fn told(made: &Made) -> String {
    let exercise = &made.exercise;
    format!("{} {} {:?}", exercise.seed, exercise.scene, exercise.job.units)
}

fn name(step: &StepForm) -> String {
    if step.of.is_empty() { step.key.to_owned() } else { format!("{}/{}", step.key, step.of) }
}

/// Within what an answer is right.
fn within(step: &StepForm, right: f64) -> f64 {
    step.within.max(step.within_pct / 100.0 * right.abs())
}

/// A value in the unit in which the step is answered, and back.
fn in_unit(step: &StepForm, value: f64) -> f64 {
    match (step.kind, step.unit) {
        (Kind::TemperatureStep, Unit::C) => value / 1.8,
        _ => foamwright::measure::in_unit(value, step.unit),
    }
}

fn from_unit(step: &StepForm, value: f64) -> f64 {
    let (zero, one) = (from_zero(step), foamwright::measure::in_unit(1.0 + from_zero(step), step.unit));
    match (step.kind, step.unit) {
        (Kind::TemperatureStep, Unit::C) => value * 1.8,
        _ => zero + value / one,
    }
}

/// Where the step's unit has its nought.
fn from_zero(step: &StepForm) -> f64 {
    if step.unit == Unit::C { 32.0 } else { 0.0 }
}

/// As the key writes an answer. Where that would not do for an R the key takes another place, which nobody else does.
fn style(units: Units, step: &StepForm) -> Style {
    match (step.kind, step.unit) {
        (Kind::Length, Unit::Ft) => Style::FeetInches,
        (Kind::Length, Unit::In) => Style::Inches,
        (Kind::FoamVolume, _) => Style::Us,
        _ if units == Units::Metric => Style::MetricUsual,
        _ => Style::Us,
    }
}

/// Works through a list on as many threads as there are processors; the results come in the list's order.
fn side_by_side<T: Sync, R: Send>(list: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let threads = std::thread::available_parallelism().map_or(2, usize::from);
    let each = list.len().div_ceil(threads).max(1);
    std::thread::scope(|scope| {
        let running: Vec<_> = list
            .chunks(each)
            .map(|part| scope.spawn(|| part.iter().map(&work).collect::<Vec<R>>()))
            .collect();
        running
            .into_iter()
            .flat_map(|one| one.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
            .collect()
    })
}

/// Fails with all faults at once, each kind of fault a few times.
fn none_of(faults: Vec<String>) {
    let mut kinds = std::collections::BTreeMap::<String, Vec<String>>::new();
    for fault in faults {
        let kind = fault.split('|').next().unwrap_or_default().to_owned();
        kinds.entry(kind).or_default().push(fault);
    }
    let lines: Vec<String> = kinds
        .values()
        .map(|alike| format!("{} × {}", alike.len(), alike[..alike.len().min(2)].join("\n      ")))
        .collect();
    assert!(lines.is_empty(), "\n{}", lines.join("\n"));
}
