//! What holds for every scene, over hundreds of seeds of each level and in both units.

use super::*;
use foamwright::findings::Code;
use foamwright::measure::{Outcome, Value, read, write};
use foamwright::practice::{Right, SLIPS, Verdict, by_formulas, find, mark, scenes};
use std::sync::{Mutex, OnceLock, PoisonError};

/// Seeds of a level, in both units.
const SEEDS: usize = 240;

/// The exercises that all tests look at, and what the core said of each so far.
fn all() -> &'static [Mutex<(Made, Kept)>] {
    static ALL: OnceLock<Vec<Mutex<(Made, Kept)>>> = OnceLock::new();
    ALL.get_or_init(|| {
        let each = |number| LEVELS.flat_map(move |level| BOTH.map(|units| made(level, number, units)));
        spread()
            .take(SEEDS)
            .flat_map(each)
            .flatten()
            .map(|made| Mutex::new((made, Kept::default())))
            .collect()
    })
}

fn faults(judge: impl Fn(&Made, &mut Kept) -> Vec<String> + Sync) -> Vec<String> {
    assert!(!all().is_empty(), "nothing is drawn at all");
    let found = side_by_side(all(), |one| {
        let mut one = one.lock().unwrap_or_else(PoisonError::into_inner);
        let (made, core) = &mut *one;
        let faults = judge(made, core);
        let scene = made.exercise.scene;
        faults.into_iter().map(|fault| format!("{scene}: {fault} [{}]", told(made))).collect::<Vec<_>>()
    });
    found.into_iter().flatten().collect()
}

/// The core answers each step; the formula beside it comes to the same within half of what is let pass; marked, the right
/// answers are right; who rounds them as the tool itself writes them is right as well.
#[test]
fn the_core_answers_and_the_formulas_agree() {
    none_of(faults(|made, core| {
        let right = right(made, core);
        let mut faults = Vec::new();
        let marked = mark(made, &answers(&right), core);
        let formulas = by_formulas(made, &[], core);
        for (at, step) in made.exercise.steps.iter().enumerate() {
            let (name, right, mark) = (name(step), right[at], &marked.steps[at]);
            if mark.verdict != Verdict::Right || mark.points != 1.0 {
                faults.push(format!("{name}: the right answer is not right| {right}: {:?}", mark.verdict));
            }
            if !right.is_finite() || right.abs() > 1e7 {
                faults.push(format!("{name}: no figure for people| {right}"));
            }
            let way = &made.ways[at];
            if way.formula.is_some() != formulas[at].is_some() {
                faults.push(format!("{name}: the formula comes to nothing|"));
            }
            // No sum comes to a word.
            if (way.formula.is_some() && step.kind != Kind::Choice) == mark.how.is_empty() {
                faults.push(format!("{name}: the formula is not written as it should be|"));
            }
            if let Some(formula) = formulas[at].filter(|_| way.right != Right::Formula) {
                let half = within(step, right) / 2.0 + 1e-9 * right.abs().max(1.0);
                if (formula - right).abs() > half {
                    let off = (formula / right - 1.0) * 100.0;
                    faults.push(format!("{name}: formula and core differ| {formula} / {right}: {off:.3} %"));
                }
            }
        }
        faults
    }));
}

/// What stands in an exercise fits together, whatever the core says.
#[test]
fn an_exercise_is_whole() {
    none_of(faults(|made, _| {
        let mut faults = Vec::new();
        let steps = &made.exercise.steps;
        let known: Vec<String> = steps.iter().map(name).collect();
        if steps.len() < 2 || steps.len() > 16 {
            faults.push(format!("{} steps|", steps.len()));
        }
        for (at, (step, way)) in steps.iter().zip(&made.ways).enumerate() {
            let own = &known[at];
            if known[..at].contains(own) {
                faults.push(format!("{own} is asked twice|"));
            }
            let formula = way.formula.iter();
            for key in formula.flat_map(|formula| formula.steps()) {
                if !known[..at].iter().any(|one| one == key) {
                    faults.push(format!("{own} follows from {key}, which is not asked before it|"));
                }
            }
            for slip in &way.slips {
                if !SLIPS.contains(&slip.name) {
                    faults.push(format!("{own}: the slip {} is not on the list|", slip.name));
                }
                if let foamwright::practice::By::Formula(formula) = &slip.by {
                    for key in formula.steps().iter().filter(|key| !known.iter().any(|one| one == *key)) {
                        faults
                            .push(format!("{own}: the slip {} takes {key}, which is not asked|", slip.name));
                    }
                }
            }
            if step.choices.is_empty() == (step.kind == Kind::Choice) {
                faults.push(format!("{own}: choices and kind do not fit|"));
            }
        }
        for scene in scenes().filter(|scene| scene.key == made.exercise.scene) {
            let mut said = scene.topics.to_vec();
            said.sort_unstable();
            if said != made.exercise.topics {
                let (level, topics) = (made.exercise.level, &made.exercise.topics);
                faults.push(format!("level {level} trains {topics:?}, the scene says {said:?}|"));
            }
        }
        let drawn = &made.exercise.job;
        if drawn.next_id <= largest_id(&serde_json::to_value(drawn).expect("a job")) {
            faults.push("an id is given twice|".to_owned());
        }
        let numbers = [made.exercise.now.ms, f64::from(made.exercise.now.offset_min)];
        if numbers.iter().any(|one| !one.is_finite()) {
            faults.push("no instant|".to_owned());
        }
        faults
    }));
}

fn largest_id(tree: &serde_json::Value) -> u32 {
    match tree {
        serde_json::Value::Array(list) => list.iter().map(largest_id).max().unwrap_or(0),
        serde_json::Value::Object(fields) => {
            let own = fields.get("id").and_then(serde_json::Value::as_u64).unwrap_or(0);
            fields.values().map(largest_id).max().unwrap_or(0).max(u32::try_from(own).unwrap_or(u32::MAX))
        }
        _ => 0,
    }
}

/// Every text that was put into the job is read as one thing: no meaning has to be pressed, nothing is refused.
#[test]
fn the_tool_reads_every_text_of_the_question() {
    none_of(faults(|made, _| {
        let estimate = foamwright::estimate(&made.exercise.job, made.exercise.now);
        let unread = [
            Code::TwoMeanings,
            Code::NotANumber,
            Code::Negative,
            Code::ZeroBelowTheLine,
            Code::WrongUnit,
            Code::TooLarge,
            Code::TooLong,
            Code::NotWhole,
            Code::NoSuchDay,
            Code::NotTaken,
            Code::RunTogether,
            Code::Several,
            Code::ThreeLengths,
            Code::BelowLimit,
            Code::AboveLimit,
            Code::Unlikely,
            Code::OpeningsExceed,
            Code::OpeningOutside,
            Code::OpeningsOverlap,
        ];
        let found = estimate.findings.iter().filter(|finding| unread.contains(&finding.code));
        found.map(|finding| format!("{:?} {}|", finding.code, finding.at.field)).collect()
    }));
}

/// How an answer is written, and what is read there.
fn read_again(step: &StepForm, value: f64, units: Units) -> (String, Option<f64>) {
    let text = write(step.kind, value, style(units, step));
    let again = match read(&text, step.kind, step.unit, None) {
        _ if step.kind == Kind::Choice => Some(value),
        Outcome::Read(Value::Band(band)) => Some(band.likely.to_f64()),
        // The half of the day is pressed, or that a comma groups thousands.
        Outcome::Ask(meanings) => meanings
            .iter()
            .filter_map(|meaning| match &meaning.value {
                Value::Band(band) => Some(band.likely.to_f64()),
                Value::Member(_) => None,
            })
            .min_by(|one, other| (one - value).abs().total_cmp(&(other - value).abs())),
        _ => None,
    };
    (text, again)
}

/// What is let pass is never less than what the key's own figure is rounded by: on many more seeds than the others, since
/// few small figures lie just between two tenths, and with nothing carried on.
#[test]
fn the_figures_of_the_key_are_within_what_is_let_pass() {
    let numbers: Vec<u16> = spread().skip(SEEDS).take(1_500).collect();
    let found = side_by_side(&numbers, |number| {
        let mut faults = Vec::new();
        for (level, units) in LEVELS.flat_map(|level| BOTH.map(|units| (level, units))) {
            let Some(made) = made(level, *number, units) else { continue };
            for (step, right) in made.exercise.steps.iter().zip(right(&made, &mut Kept::default())) {
                let (text, again) = read_again(step, right, units);
                let off = again.map_or(f64::INFINITY, |again| (again - right).abs());
                if off > within(step, right) + 1e-9 * right.abs().max(1.0) {
                    let (scene, name) = (made.exercise.scene, name(step));
                    faults
                        .push(format!("{scene}: {name} as written| `{text}` for {right} [{}]", told(&made)));
                }
            }
        }
        faults
    });
    none_of(found.into_iter().flatten().collect());
}

/// Who writes each answer as the tool writes it is right.
#[test]
fn answers_as_the_tool_writes_them_are_right() {
    none_of(faults(|made, core| {
        let units = made.exercise.job.units;
        let values = right(made, core);
        let mut faults = Vec::new();
        let mut given = Vec::new();
        for (step, value) in made.exercise.steps.iter().zip(&values) {
            let (text, again) = read_again(step, *value, units);
            match again {
                Some(again) => given.push(again),
                None => {
                    faults.push(format!("{}: what is written is not read| `{text}`", name(step)));
                    given.push(*value);
                }
            }
        }
        for (at, step) in mark(made, &answers(&given), core).steps.iter().enumerate() {
            if step.verdict != Verdict::Right {
                let (form, value) = (&made.exercise.steps[at], given[at]);
                faults.push(format!(
                    "{}: as written it is {:?}| {value} for {}",
                    name(form),
                    step.verdict,
                    values[at]
                ));
            }
        }
        faults
    }));
}

/// Who writes each figure with one place behind the point, or with as many as half of what is let pass asks for, and goes
/// on with what he wrote, is right at every step.
#[test]
fn rounding_at_each_step_stays_right() {
    none_of(faults(|made, core| {
        let values = right(made, core);
        let mut given: Vec<Option<f64>> = Vec::new();
        for (at, step) in made.exercise.steps.iter().enumerate() {
            let exact = by_formulas(made, &given, core)[at].unwrap_or(values[at]);
            let rounded = match step.kind {
                Kind::Count | Kind::Choice | Kind::Clock => exact,
                // Nobody pays in tenths of a dollar.
                Kind::Money => exact.round(),
                _ => from_unit(step, rounded(in_unit(step, exact), pass(step, exact))),
            };
            given.push(Some(rounded));
        }
        let given: Vec<f64> = given.into_iter().flatten().collect();
        let marked = mark(made, &answers(&given), core);
        let wrong = marked.steps.iter().enumerate().filter(|(_, step)| step.verdict != Verdict::Right);
        wrong
            .map(|(at, step)| {
                let form = &made.exercise.steps[at];
                let (name, verdict) = (name(form), step.verdict);
                format!("{name}: rounded on the way it is {verdict:?}| {} for {}", given[at], values[at])
            })
            .collect()
    }));
}

/// What is let pass, in the unit of the step.
fn pass(step: &StepForm, value: f64) -> f64 {
    (in_unit(step, value + within(step, value)) - in_unit(step, value)).abs()
}

fn rounded(value: f64, pass: f64) -> f64 {
    let mut tens = 10.0;
    while 0.5 / tens > pass / 2.0 && tens < 1e9 {
        tens *= 10.0;
    }
    (value * tens).round() / tens
}

/// A wrong answer costs its own step, and no step that is computed from it by its formula.
#[test]
fn follow_on_credit_reaches_to_the_end() {
    none_of(faults(|made, core| {
        let values = right(made, core);
        let steps = &made.exercise.steps;
        let mut faults = Vec::new();
        for wrong in 0..steps.len() {
            if steps[wrong].kind == Kind::Choice {
                continue;
            }
            // 17 % off and a bit is no slip that anybody named; of whole things five more.
            let off = if steps[wrong].kind == Kind::Count {
                values[wrong] + 5.0
            } else {
                values[wrong] * 1.1734 + 0.37
            };
            let mut given = values.clone();
            given[wrong] = off;
            // Each round goes a step further down the chain, until nothing changes.
            for _ in 0..steps.len() {
                let before = given.clone();
                let follows =
                    by_formulas(made, &given.iter().map(|one| Some(*one)).collect::<Vec<_>>(), core);
                for (at, follows) in follows.into_iter().enumerate().filter(|(at, _)| *at != wrong) {
                    given[at] = follows.unwrap_or(values[at]);
                }
                if given == before {
                    break;
                }
            }
            let marked = mark(made, &answers(&given), core);
            for (at, step) in marked.steps.iter().enumerate().filter(|(at, _)| *at != wrong) {
                if !matches!(step.verdict, Verdict::Right | Verdict::Carried) {
                    let (form, from) = (name(&steps[at]), name(&steps[wrong]));
                    faults.push(format!("{form} after a wrong {from} is {:?}| {}", step.verdict, given[at]));
                }
            }
        }
        faults
    }));
}

/// Both systems show the same exercise: as many steps, the same keys, about the same figures.
#[test]
fn units_change_only_how_a_reading_is_written() {
    // In the list a seed's two exercises lie side by side.
    let pairs: Vec<_> = all().chunks(2).collect();
    let found = side_by_side(&pairs, |pair| {
        let [one, other] = pair else { return Some(vec!["a seed is drawn in one system only|".to_owned()]) };
        let mut one = one.lock().unwrap_or_else(PoisonError::into_inner);
        let mut other = other.lock().unwrap_or_else(PoisonError::into_inner);
        let ((us, one), (metric, other)) = (&mut *one, &mut *other);
        if us.exercise.seed != metric.exercise.seed {
            return Some(vec![format!("{} is drawn in one system only|", us.exercise.seed)]);
        }
        let keys = |made: &Made| made.exercise.steps.iter().map(name).collect::<Vec<_>>();
        if keys(us) != keys(metric) {
            return Some(vec![format!("{}: other steps in metric| {}", us.exercise.scene, told(us))]);
        }
        let values = right(us, one).into_iter().zip(right(metric, other));
        let mut faults = Vec::new();
        for ((us_value, metric_value), step) in values.zip(&us.exercise.steps) {
            let far = match step.kind {
                // Rounded on the way to other tapes and labels, a count may fall beside.
                Kind::Count => (us_value - metric_value).abs() > 1.0 + 0.1 * us_value.abs(),
                // Nor what is paid for it.
                Kind::Money => (us_value - metric_value).abs() > 0.5 * us_value.max(metric_value),
                Kind::Choice => false,
                Kind::Temperature | Kind::TemperatureStep => (us_value - metric_value).abs() > 4.0,
                // Degrees are whole ones in either scale, and curves are flat.
                Kind::Clock | Kind::Duration => {
                    (us_value - metric_value).abs() > 120.0 + 0.1 * us_value.abs()
                }
                _ => (us_value - metric_value).abs() > 1.0 + 0.12 * us_value.abs(),
            };
            if far {
                let key = name(step);
                faults.push(format!(
                    "{}: {key} differs by units| {us_value} / {metric_value} {}",
                    us.exercise.scene,
                    told(us)
                ));
            }
        }
        Some(faults)
    });
    none_of(found.into_iter().flatten().flatten().collect());
}

/// Each scene of a level comes about as often as any other, and every level has some.
#[test]
fn scenes_come_alike_often() {
    for level in LEVELS {
        let on: Vec<&str> =
            scenes().filter(|scene| scene.levels.contains(&level)).map(|scene| scene.key).collect();
        if on.is_empty() {
            continue;
        }
        let mut counts = std::collections::BTreeMap::<&str, usize>::new();
        let drawn = 1200;
        for number in spread().take(drawn) {
            let made = made(level, number, Units::Us).expect("an exercise");
            *counts.entry(made.exercise.scene).or_default() += 1;
        }
        let each = drawn / on.len();
        for scene in on {
            let count = counts.get(scene).copied().unwrap_or(0);
            assert!(count.abs_diff(each) < each / 2, "level {level}: {scene} {count} times, of {counts:?}");
        }
    }
}

/// What is asked for is found, wherever the dice fall, and neighbours differ.
#[test]
fn a_search_finds_what_is_asked_for() {
    for scene in scenes() {
        for level in scene.levels {
            let seed = find(*level, scene.topics, 0xfff0).expect("a seed");
            let found = exercise(seed, Units::Us).expect("an exercise").exercise;
            assert!(
                found.topics.iter().all(|topic| scene.topics.contains(topic)),
                "{seed}: {:?}",
                found.topics
            );
        }
    }
    for level in LEVELS {
        let Some(first) = find(level, &[], 0) else { continue };
        let next = find(level, &[], first.number + 1).expect("another");
        let job = |seed| exercise(seed, Units::Us).map(|made| made.exercise.job.surfaces);
        assert!(first != next);
        let _ = (job(first), job(next));
    }
}
