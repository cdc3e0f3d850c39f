//! Judging answers, and the worked solution.

use super::formula::Figures;
use super::general::general;
use super::{By, Core, Formula, Made, Piece, Right, StepForm, StepWay};
use crate::job::{Job, Now};
use crate::measure::{Kind, Units};
use serde::Serialize;

/// What a hint costs, of the point that a step gives.
const HINT: f64 = 0.25;

/// What a student gave for one step.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Answer {
    /// The answer, in the unit that the step's kind is held in; for a choice, the place of the word in its list.
    pub value: Option<f64>,
    /// How many hints were taken.
    pub hints: u8,
    /// Whether the step was shown: then it gives nothing.
    pub shown: bool,
}

/// How a step was judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Nothing was answered.
    Blank,
    /// The step was shown.
    Shown,
    /// Right.
    Right,
    /// Not the right figure, but the right method, carried on from an earlier answer that was wrong.
    Carried,
    /// A mistake that has a name.
    Slip,
    /// Wrong, and none of the mistakes that have a name.
    Wrong,
}

/// A step, judged.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct StepMark {
    /// How.
    pub verdict: Verdict,
    /// The name of the slip, of [`SLIPS`](super::SLIPS); else empty.
    pub slip: &'static str,
    /// How the answer comes about: of a right or carried one its formula, of a slip what was done instead.
    pub how: Vec<Piece>,
    /// What `how` comes to, of a right or carried answer; the answer itself may be rounded.
    pub gives: Option<f64>,
    /// Whether earlier answers that were wrong are in it.
    pub carried: bool,
    /// The points: 1 for a right or carried answer, less the hints.
    pub points: f64,
}

/// All steps, judged.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Marked {
    /// In the order of the steps.
    pub steps: Vec<StepMark>,
    /// The points.
    pub points: f64,
    /// Of so many.
    pub of: u32,
}

/// A step of the worked solution.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Solved {
    /// The right answer; for a choice, the place of the word in its list.
    pub value: f64,
    /// How it comes about; empty where it is read off.
    pub how: Vec<Piece>,
}

/// What is known of an exercise: figures of its estimate, and an answer for each step.
struct Known<'a> {
    made: &'a Made,
    paths: Vec<String>,
    figures: Vec<Option<f64>>,
    /// In the order of the steps, as far as they are known.
    answers: Vec<Option<f64>>,
}

impl Figures for Known<'_> {
    fn at(&self, path: &str) -> Option<f64> {
        let at = self.paths.iter().position(|known| known == path)?;
        *self.figures.get(at)?
    }

    fn step(&self, key: &str) -> Option<(f64, Kind)> {
        let at = self.made.exercise.steps.iter().position(|step| step.is(key))?;
        Some(((*self.answers.get(at)?)?, self.made.exercise.steps.get(at)?.kind))
    }

    fn metric(&self) -> bool {
        self.made.exercise.job.units == Units::Metric
    }
}

impl<'a> Known<'a> {
    /// The same with other answers. Where there is none, what the step's formula gives from those before it, else
    /// the right one.
    fn with(&self, given: &[Option<f64>]) -> Known<'a> {
        let (paths, figures) = (self.paths.clone(), self.figures.clone());
        let mut own = Known { made: self.made, paths, figures, answers: Vec::new() };
        for (at, way) in self.made.ways.iter().enumerate() {
            let follows = || way.formula.as_ref().and_then(|formula| formula.value(&own));
            let answer = given.get(at).copied().flatten().or_else(follows);
            own.answers.push(answer.or(self.answers.get(at).copied().flatten()));
        }
        own
    }
}

impl StepForm {
    /// Whether a formula means this step: `key`, or `key/of` where the key comes twice.
    pub(super) fn is(&self, name: &str) -> bool {
        match name.split_once('/') {
            Some((key, of)) => self.key == key && self.of == of,
            None => self.key == name && self.of.is_empty(),
        }
    }

    /// Whether an answer counts as this value of a mistake: of whole things a mistake may leave a part over, and
    /// nobody writes a part to its end (2.4 for 2.387).
    fn slips_to(&self, answer: f64, value: f64) -> bool {
        if !self.can_be(value) {
            return false;
        }
        let part = |value: f64| (value - libm::round(value)).abs() > 1e-6;
        let rounded = self.kind == Kind::Count && part(answer) && part(value);
        self.meets(answer, value) || rounded && (answer - value).abs() <= 0.05 + 1e-9
    }

    /// Whether somebody could write this as an answer: a time of day lies within a day, and only temperatures and
    /// plain numbers go below nought.
    fn can_be(&self, value: f64) -> bool {
        match self.kind {
            Kind::Clock => (0.0..1_440.0).contains(&value),
            Kind::Temperature | Kind::TemperatureStep | Kind::Number => true,
            _ => value >= 0.0,
        }
    }

    /// How a formula is written beside a mark of this step; nothing beside a word, which no sum comes to.
    fn how(&self, formula: &Formula, from: &Known) -> Vec<Piece> {
        if self.choices.is_empty() { formula.written(from) } else { Vec::new() }
    }

    /// Whether an answer counts as this value.
    fn meets(&self, answer: f64, value: f64) -> bool {
        let within = self.within.max(self.within_pct / 100.0 * value.abs());
        (answer - value).abs() <= within + 1e-9 * value.abs().max(1.0)
    }
}

fn word_paths(path: &str, step: &StepForm) -> Vec<String> {
    step.choices.iter().map(|word| format!("{path}={word}")).collect()
}

/// Which of these paths gives 1, the first of them.
fn first_of(paths: &[String], from: &Known) -> Option<f64> {
    place(paths.iter().map(|path| from.at(path)))
}

/// The place of the first that is 1: of the word that stands.
fn place(mut found: impl Iterator<Item = Option<f64>>) -> Option<f64> {
    #[allow(clippy::cast_precision_loss, reason = "a handful of words")]
    found.position(|one| one == Some(1.0)).map(|at| at as f64)
}

fn known<'a>(made: &'a Made, core: &mut dyn Core) -> Known<'a> {
    let mut paths = Vec::new();
    for (step, way) in made.exercise.steps.iter().zip(&made.ways) {
        match &way.right {
            Right::At(path) => paths.push(path.clone()),
            Right::Word(path) => paths.extend(word_paths(path, step)),
            Right::Words(each) => paths.extend(each.iter().cloned()),
            Right::Formula => {}
        }
        let slips = way.slips.iter().filter_map(|slip| match &slip.by {
            By::Formula(formula) => Some(formula),
            By::Job(..) => None,
        });
        for formula in way.formula.iter().chain(slips) {
            formula.paths(&mut paths);
        }
    }
    let figures = core.figures(&made.exercise.job, made.exercise.now, &paths);
    let mut known = Known { made, paths, figures, answers: Vec::new() };
    for (step, way) in made.exercise.steps.iter().zip(&made.ways) {
        let right = match &way.right {
            Right::At(path) => known.at(path),
            Right::Word(path) => first_of(&word_paths(path, step), &known),
            Right::Words(each) => first_of(each, &known),
            Right::Formula => way.formula.as_ref().and_then(|formula| formula.value(&known)),
        };
        known.answers.push(right);
    }
    known
}

/// The answer of a slip that works another job out.
fn of_job(core: &mut dyn Core, job: &Job, now: Now, path: &str, step: &StepForm) -> Option<f64> {
    if step.choices.is_empty() {
        return *core.figures(job, now, &[path.to_owned()]).first()?;
    }
    place(core.figures(job, now, &word_paths(path, step)).into_iter())
}

/// The worked solution: each step's right answer and how it comes about. `None` for a step whose answer the core
/// does not know: such an exercise is a fault of its scene, and the tests find it.
pub fn solve(made: &Made, core: &mut dyn Core) -> Vec<Option<Solved>> {
    let known = known(made, core);
    let how = |step: &StepForm, way: &StepWay| {
        way.formula.as_ref().map(|formula| step.how(formula, &known)).unwrap_or_default()
    };
    let steps = made.exercise.steps.iter().zip(&made.ways);
    steps
        .zip(&known.answers)
        .map(|((step, way), right)| right.map(|value| Solved { value, how: how(step, way) }))
        .collect()
}

/// What each step's formula gives from these answers of the steps before it; where one is missing, from the right one.
/// `None` where a step has no formula. The right answers themselves may come by another way, out of the core: both
/// are held together by the tests.
pub fn by_formulas(made: &Made, answers: &[Option<f64>], core: &mut dyn Core) -> Vec<Option<f64>> {
    let known = known(made, core);
    let mut own = Known { answers: known.answers.clone(), ..known };
    for (at, answer) in answers.iter().enumerate() {
        if let (Some(into), Some(answer)) = (own.answers.get_mut(at), answer) {
            *into = Some(*answer);
        }
    }
    made.ways.iter().map(|way| way.formula.as_ref().and_then(|formula| formula.value(&own))).collect()
}

/// A slip that may be told apart in an exercise: its step, its name, the answer that it gives.
pub type Told = (usize, &'static str, f64);

/// Every slip of an exercise whose answer is neither the right one nor that of a slip before it, with all other
/// steps right.
pub fn slips_of(made: &Made, core: &mut dyn Core) -> Vec<Told> {
    let known = known(made, core);
    let mut told: Vec<Told> = Vec::new();
    for (at, (step, way)) in made.exercise.steps.iter().zip(&made.ways).enumerate() {
        let Some(right) = known.answers.get(at).copied().flatten() else { continue };
        let mut candidates: Vec<(&'static str, f64)> = Vec::new();
        for slip in &way.slips {
            let value = match &slip.by {
                By::Formula(formula) => formula.value(&known),
                By::Job(job, path) => of_job(core, job, made.exercise.now, path, step),
            };
            candidates.extend(value.map(|value| (slip.name, value)));
        }
        candidates.extend(general(step, way.formula.as_ref(), right, &known, made.exercise.job.units));
        // What follows from the other steps is right too, by a hair beside the right one.
        let follows = way.formula.as_ref().and_then(|formula| formula.value(&known));
        let is_right = |value: f64| {
            step.meets(value, right) || follows.is_some_and(|follows| step.meets(value, follows))
        };
        let mut seen: Vec<f64> = Vec::new();
        for (name, value) in candidates {
            if is_right(value) || !step.can_be(value) {
                continue;
            }
            if !seen.iter().any(|other| step.slips_to(value, *other)) {
                told.push((at, name, value));
            }
            if !step.meets(value, right) {
                seen.push(value);
            }
        }
    }
    told
}

/// Judges the answers of an exercise, each step on its own.
///
/// An answer is right within the step's tolerance. Else it counts as carried where the step's formula gives it from the
/// student's own earlier answers; where those are right too (rounded on the way), it is right. Else each slip is
/// tried, first with right earlier answers, then with the student's own.
pub fn mark(made: &Made, answers: &[Answer], core: &mut dyn Core) -> Marked {
    let known = known(made, core);
    let answer = |at: usize| {
        let mut answer = answers.get(at).copied().unwrap_or_default();
        // What is no number is no answer.
        answer.value = answer.value.filter(|value| value.is_finite());
        answer
    };
    let given: Vec<Option<f64>> = (0..known.answers.len())
        .map(|at| {
            let answer = answer(at);
            // Whoever was shown a step goes on from what was shown.
            if answer.shown { known.answers.get(at).copied().flatten() } else { answer.value }
        })
        .collect();
    let own = known.with(&given);
    let mut steps: Vec<StepMark> = Vec::new();
    // Whether each step's answer carries a wrong one on.
    let mut tainted: Vec<bool> = Vec::new();
    for (at, (step, way)) in made.exercise.steps.iter().zip(&made.ways).enumerate() {
        let given = answer(at);
        let right = known.answers.get(at).copied().flatten();
        let (verdict, slip, how, carried) = match (given.value, right) {
            _ if given.shown => (Verdict::Shown, "", Vec::new(), false),
            (Some(value), Some(right)) => judge(made, step, way, value, right, &known, &own, &tainted, core),
            _ => (Verdict::Blank, "", Vec::new(), false),
        };
        let earned = matches!(verdict, Verdict::Right | Verdict::Carried);
        let points = if earned { (1.0 - HINT * f64::from(given.hints)).max(0.0) } else { 0.0 };
        tainted.push(match verdict {
            Verdict::Right | Verdict::Shown => false,
            // Left out, and gone on with in the head.
            Verdict::Blank => way.formula.as_ref().is_some_and(|formula| takes_over(made, formula, &tainted)),
            Verdict::Carried | Verdict::Slip | Verdict::Wrong => true,
        });
        // The line of a right answer is of the right figures, that of one that was gone on with of its own.
        let gives = match given.value.zip(right) {
            Some((value, right)) if earned && step.meets(value, right) => Some(right),
            _ if earned => way.formula.as_ref().and_then(|formula| formula.value(&own)),
            _ => None,
        };
        steps.push(StepMark { verdict, slip, how, gives, carried, points });
    }
    let points = steps.iter().map(|step| step.points).sum();
    #[allow(clippy::cast_possible_truncation, reason = "a dozen steps")]
    let of = steps.len() as u32;
    Marked { steps, points, of }
}

/// Whether a formula takes over an earlier answer that is wrong.
fn takes_over(made: &Made, formula: &Formula, tainted: &[bool]) -> bool {
    formula.steps().iter().any(|key| {
        let from = made.exercise.steps.iter().position(|step| step.is(key));
        from.and_then(|from| tainted.get(from)).copied().unwrap_or(false)
    })
}

type Judged = (Verdict, &'static str, Vec<Piece>, bool);

#[allow(clippy::too_many_arguments, reason = "one step seen with right and with own answers")]
fn judge(
    made: &Made,
    step: &StepForm,
    way: &StepWay,
    value: f64,
    right: f64,
    known: &Known,
    own: &Known,
    tainted: &[bool],
    core: &mut dyn Core,
) -> Judged {
    let written = |from: &Known| way.formula.as_ref().map(|one| step.how(one, from)).unwrap_or_default();
    if step.meets(value, right) {
        return (Verdict::Right, "", written(known), false);
    }
    let wrong = |formula: &Formula| takes_over(made, formula, tainted);
    if let Some(formula) = &way.formula
        && let Some(carried) = formula.value(own)
        && step.meets(value, carried)
    {
        return match wrong(formula) {
            true => (Verdict::Carried, "", written(own), true),
            false => (Verdict::Right, "", written(own), false),
        };
    }
    for slip in &way.slips {
        let (gives, how) = match &slip.by {
            By::Formula(formula) => (formula.value(known), step.how(formula, known)),
            By::Job(job, path) => (of_job(core, job, made.exercise.now, path, step), Vec::new()),
        };
        if gives.is_some_and(|gives| step.slips_to(value, gives) && !step.meets(gives, right)) {
            return (Verdict::Slip, slip.name, how, false);
        }
    }
    let units = made.exercise.job.units;
    let named = |slips: Vec<(&'static str, f64)>| {
        slips.into_iter().find(|(_, gives)| step.slips_to(value, *gives) && !step.meets(*gives, right))
    };
    if let Some((name, _)) = named(general(step, way.formula.as_ref(), right, known, units)) {
        return (Verdict::Slip, name, Vec::new(), false);
    }
    for slip in &way.slips {
        if let By::Formula(formula) = &slip.by
            && wrong(formula)
            && formula.value(own).is_some_and(|gives| step.slips_to(value, gives))
        {
            return (Verdict::Slip, slip.name, step.how(formula, own), true);
        }
    }
    if let Some(formula) = way.formula.as_ref().filter(|formula| wrong(formula))
        && let Some(carried) = formula.value(own)
        && let Some((name, _)) = named(general(step, Some(formula), carried, own, units))
    {
        return (Verdict::Slip, name, Vec::new(), true);
    }
    (Verdict::Wrong, "", Vec::new(), false)
}
