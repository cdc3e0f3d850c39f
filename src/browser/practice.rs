//! The exports of the exercises. The figures come from the estimator's own module: the page lends its `estimate` as
//! a function from a job and paths to numbers.

use super::codec::{encode, given, taken};
use crate::job::{Job, Now};
use crate::measure::Units;
use crate::practice::{self, Answer, BadSeed, Core, Exercise, Made, Marked, SceneForm, Seed, Solved, Topic};
use js_sys::{Array, Float64Array, Function};
use serde::Serialize;
use tsify::{Ts, Tsify};
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const FIGURES: &str = "
/** Works a job out and gives the figures at these paths; NaN where nothing stands. */
export type Figures = (job: Job, now: Now, paths: string[]) => Float64Array;
";

#[wasm_bindgen]
extern "C" {
    /// A function of the page that has the estimator work a job out.
    #[wasm_bindgen(typescript_type = "Figures")]
    pub type Figures;
}

/// What a seed gives.
#[derive(Serialize, Tsify)]
pub struct Drawn {
    /// Why there is no exercise: `form`, `newer` or `none`; else empty.
    refused: &'static str,
    /// The exercise.
    #[tsify(optional)]
    exercise: Option<Exercise>,
}

/// A slip that may be told apart: the place of its step, its name, the answer that it gives.
#[derive(Serialize, Tsify)]
pub struct ToldSlip {
    step: usize,
    slip: &'static str,
    value: f64,
}

/// The estimator's core behind a function of the page, and what that function threw first.
struct Lent<'a> {
    figures: &'a Function,
    thrown: Option<JsValue>,
}

impl Core for Lent<'_> {
    fn figures(&mut self, job: &Job, now: Now, paths: &[String]) -> Vec<Option<f64>> {
        let mut values: Vec<Option<f64>> =
            self.asked(job, now, paths).into_iter().map(|value| value.is_finite().then_some(value)).collect();
        values.resize(paths.len(), None);
        values
    }
}

impl Lent<'_> {
    /// The numbers that the page gives; none once it has thrown, since nothing that follows counts.
    fn asked(&mut self, job: &Job, now: Now, paths: &[String]) -> Vec<f64> {
        if self.thrown.is_some() {
            return Vec::new();
        }
        let names: Array = paths.iter().map(|path| JsValue::from_str(path)).collect();
        let figures = self.figures.call3(&JsValue::NULL, &encode(job), &encode(&now), &names);
        match figures.and_then(JsCast::dyn_into::<Float64Array>) {
            Ok(figures) => figures.to_vec(),
            Err(thrown) => {
                self.thrown = Some(thrown);
                Vec::new()
            }
        }
    }
}

/// Works something out with the estimator; what the page threw meanwhile is thrown on, in place of an answer that
/// lacks its figures.
fn lent<T>(figures: &Figures, work: impl FnOnce(&mut Lent) -> T) -> Result<T, JsValue> {
    let mut core = Lent { figures: figures.unchecked_ref(), thrown: None };
    let answer = work(&mut core);
    core.thrown.map_or(Ok(answer), Err)
}

fn made(seed: &str, units: Units) -> Result<Made, &'static str> {
    let seed = Seed::read(seed).map_err(|bad| match bad {
        BadSeed::Form => "form",
        BadSeed::Newer => "newer",
    })?;
    practice::exercise(seed, units).ok_or("none")
}

/// The exercise of a seed, without its answers.
#[wasm_bindgen]
pub fn exercise(seed: &str, units: Ts<Units>) -> Result<Ts<Drawn>, JsError> {
    Ok(given(&match made(seed, taken(units)?) {
        Ok(made) => Drawn { refused: "", exercise: Some(made.exercise) },
        Err(refused) => Drawn { refused, exercise: None },
    }))
}

/// Judges answers: each in the unit that its step's kind is held in, NaN for a blank; hints taken, 255 where the
/// step was shown.
#[wasm_bindgen]
pub fn mark(
    seed: &str,
    units: Ts<Units>,
    values: &[f64],
    hints: &[u8],
    figures: &Figures,
) -> Result<Option<Ts<Marked>>, JsValue> {
    let Ok(made) = made(seed, taken(units).map_err(JsError::from)?) else { return Ok(None) };
    let answers: Vec<Answer> = values
        .iter()
        .enumerate()
        .map(|(at, value)| {
            let hints = hints.get(at).copied().unwrap_or_default();
            let shown = hints == u8::MAX;
            Answer { value: value.is_finite().then_some(*value), hints: if shown { 0 } else { hints }, shown }
        })
        .collect();
    let marked = lent(figures, |core| practice::mark(&made, &answers, core))?;
    Ok(Some(given(&marked)))
}

/// The worked solution, step by step.
#[wasm_bindgen]
pub fn solve(seed: &str, units: Ts<Units>, figures: &Figures) -> Result<Vec<Ts<Solved>>, JsValue> {
    let Ok(made) = made(seed, taken(units).map_err(JsError::from)?) else { return Ok(Vec::new()) };
    let solved = lent(figures, |core| practice::solve(&made, core))?;
    let blank = || Solved { value: f64::NAN, how: Vec::new() };
    Ok(solved.into_iter().map(|one| given(&one.unwrap_or_else(blank))).collect())
}

/// Every slip that may be told apart in an exercise.
#[wasm_bindgen]
pub fn slips(seed: &str, units: Ts<Units>, figures: &Figures) -> Result<Vec<Ts<ToldSlip>>, JsValue> {
    let Ok(made) = made(seed, taken(units).map_err(JsError::from)?) else { return Ok(Vec::new()) };
    let told = lent(figures, |core| practice::slips_of(&made, core))?;
    Ok(told.into_iter().map(|(step, slip, value)| given(&ToldSlip { step, slip, value })).collect())
}

/// A seed of this level from `from` on whose exercise trains these topics (bits in the order of `topics`), else an
/// empty text.
#[wasm_bindgen]
pub fn find(level: u8, topics: u32, from: u16) -> String {
    let wanted: Vec<Topic> = (0..)
        .zip(practice::TOPICS)
        .filter(|(bit, _)| topics & 1 << bit != 0)
        .map(|(_, topic)| topic)
        .collect();
    practice::find(level, &wanted, from).map(|seed| seed.to_string()).unwrap_or_default()
}

/// Every topic, in the order in which the work is done.
#[wasm_bindgen]
pub fn topics() -> Vec<Ts<Topic>> {
    practice::TOPICS.iter().map(given).collect()
}

/// Every kind of exercise that new seeds give.
#[wasm_bindgen]
pub fn scenes() -> Vec<Ts<SceneForm>> {
    practice::scenes().map(|scene| given(&scene)).collect()
}

/// The seeds of the worked examples that somebody has published.
#[wasm_bindgen]
pub fn book() -> Vec<String> {
    practice::book().iter().map(Seed::to_string).collect()
}
