//! Exercises for those who practise takeoffs: a job drawn by a seed, the steps to its answer, and marking that names
//! the slip.
//!
//! An exercise is an ordinary [`Job`] and a list of steps. The right answer of a step stands in the
//! [`Estimate`](crate::Estimate) of that job, or follows from figures that stand there: the tool that marks is the tool
//! that estimates. What goes wrong has a name: a [slip](Slip) is the same job with one thing changed (openings
//! forgotten, lumber by its name), worked out by the same core, or the step's arithmetic with one thing changed (÷ 144
//! for ÷ 12).
//!
//! # Rooms
//!
//! * [`seed`](Seed): generator version, level and number as one text, `1-4-7f3a`
//! * [`Draw`]: the stream of numbers of a seed
//! * [`Formula`]: how a step follows from others, as data
//! * `made`: putting an exercise together, as a tape and a data sheet would give it
//! * `v1`: the scenes of generator version 1. **Never edited once released**: whoever printed a seed gets the same
//!   exercise for ever. New scenes, and mended old ones, are a new version beside it. The answers are the core's: where a
//!   published value is mended there, a key that was printed before says something else than the tool.
//! * `book`: fixed exercises, worked examples that somebody has published
//! * [`mark`], [`solve`]: judging answers, and the worked solution
//!
//! This room knows no `Estimate` type: it asks a [`Core`] for figures by path. On the host that is
//! [`estimate`](crate::estimate()) itself; in the browser it is the estimator's own module, so that the module of
//! this room holds no second copy of it.

mod book;
mod draw;
mod formula;
mod general;
mod made;
mod marking;
#[cfg(not(target_arch = "wasm32"))]
mod on_host;
mod seed;
mod slips;
#[cfg(test)]
#[allow(clippy::float_cmp)]
mod tests;
mod v1;

pub use draw::Draw;
pub use formula::{Formula, Piece};
pub use made::Made;
pub use marking::{Answer, Marked, Solved, StepMark, Verdict, by_formulas, mark, slips_of, solve};
#[cfg(not(target_arch = "wasm32"))]
pub use on_host::{OnHost, figure_in, tree};
pub use seed::{BadSeed, Seed, VERSION};
pub use slips::SLIPS;

use crate::job::{Job, Now};
use crate::measure::{Kind, Unit, Units};
use serde::Serialize;

/// What an exercise trains.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Topic {
    /// Reading a tape.
    Tape,
    /// Areas and what is taken out of them.
    Areas,
    /// Studs, joists, rafters.
    Framing,
    /// Slopes and gables.
    Pitch,
    /// Depth for an R.
    Depth,
    /// What the code asks, and condensation.
    Code,
    /// Board feet.
    BoardFeet,
    /// Over-depth and waste.
    Allowances,
    /// Usable yield and what to buy.
    Kits,
    /// Lifts and waits.
    Lifts,
    /// Three temperatures and the dew point.
    Temperatures,
    /// Warming kits in time.
    WarmUp,
    /// The true R of uneven foam, and across framing.
    TrueR,
    /// What is to be paid.
    Price,
}

/// Every topic, in the order in which the work is done.
pub const TOPICS: [Topic; 14] = [
    Topic::Tape,
    Topic::Areas,
    Topic::Framing,
    Topic::Pitch,
    Topic::Depth,
    Topic::Code,
    Topic::BoardFeet,
    Topic::Allowances,
    Topic::Kits,
    Topic::Lifts,
    Topic::Temperatures,
    Topic::WarmUp,
    Topic::TrueR,
    Topic::Price,
];

/// A figure that the question names: the placeholder of its words, and what stands there.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Given {
    /// The placeholder.
    pub key: &'static str,
    /// As a tape, a label or a thermometer gives it; empty where `value` is to be written.
    pub text: String,
    /// The figure, in the unit that its kind is held in.
    pub value: f64,
    /// What it measures.
    pub kind: Kind,
}

/// What stands beside the question.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Shown {
    /// `outline` (drawing of a surface to scale), `tape` (a piece of tape with a mark), `foam` (data sheet), `kits` (shelf),
    /// `readings`, `probes` (depths side by side), `warming` (curve), `forecast`, `day` (a day's curve), `layers`, `place`,
    /// `code_table`, `dew_table`, `foam_units` (how many liters a board foot is),
    /// `r_units` (how R is made RSI).
    pub what: &'static str,
    /// The surface, foam or group of kits in the job; 0 where there is only one such thing.
    pub id: u32,
    /// Of a tape: where the mark lies, in inches from the hook, and where it was held. Of probes: the depths. Of a table: what
    /// stands in it.
    pub at: Vec<f64>,
}

/// A step as it is asked.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct StepForm {
    /// The key of its words: `step.<key>` (what is asked), `hint.<key>` (the formula in words).
    pub key: &'static str,
    /// Told apart where a key comes twice: the name of the surface or window, in the words `thing.<of>`; else empty.
    pub of: &'static str,
    /// What it trains.
    pub topic: Topic,
    /// What the answer measures.
    pub kind: Kind,
    /// The unit of a bare number.
    pub unit: Unit,
    /// The words that may be pressed, where the answer is one of them.
    pub choices: &'static [&'static str],
    /// An answer is right within this, in the unit that the kind is held in; 0: exactly.
    pub within: f64,
    /// Or within this share of the right one, in percent, where that is more.
    pub within_pct: f64,
}

/// An exercise as it is given to a student: everything but the answers.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Exercise {
    /// Its seed, as text.
    pub seed: String,
    /// 1 to 4; 0 for one out of the book.
    pub level: u8,
    /// The key of its words: `scene.<scene>.title`, `scene.<scene>.ask`.
    pub scene: &'static str,
    /// What it trains, in the order in which the work is done.
    pub topics: Vec<Topic>,
    /// Where a published example was read; a key of the sources, else empty.
    pub source: &'static str,
    /// The job that it is about.
    pub job: Job,
    /// The instant at which it stands.
    pub now: Now,
    /// The figures in the question.
    pub given: Vec<Given>,
    /// What stands beside it.
    pub shown: Vec<Shown>,
    /// What is asked.
    pub steps: Vec<StepForm>,
}

/// The right answer of a step.
#[derive(Debug, Clone, PartialEq)]
pub enum Right {
    /// A figure of the estimate.
    At(String),
    /// The word of the estimate at this path, one of the step's choices.
    Word(String),
    /// The first choice whose path gives 1, a path for each choice in their order.
    Words(Vec<String>),
    /// What the step's formula comes to.
    Formula,
}

/// What a mistake that has a name leads to.
#[derive(Debug, Clone, PartialEq)]
pub struct Slip {
    /// Its name: one of [`SLIPS`], words `slips.<name>`, and `practice.slip.<name>` in short.
    pub name: &'static str,
    /// The answer that it gives.
    pub by: By,
}

/// How the answer of a slip is found.
#[derive(Debug, Clone, PartialEq)]
pub enum By {
    /// By other arithmetic.
    Formula(Formula),
    /// By the same core, on the job with something changed: the figure at a path.
    Job(Box<Job>, String),
}

/// How a step is answered, rightly and wrongly; never handed to the page.
#[derive(Debug, Clone, PartialEq)]
pub struct StepWay {
    /// Where the right answer stands.
    pub right: Right,
    /// How it follows from what is given and from other steps. Follow-on credit is given by it.
    pub formula: Option<Formula>,
    /// What goes wrong, the most telling first.
    pub slips: Vec<Slip>,
}

/// Works out figures of a job by their paths.
///
/// A path goes down by names joined with dots; a whole number picks from a list, any other name picks the thing
/// with that `field` from a list and takes its value. A band gives what is likely. `path=word` gives 1 where that word
/// stands there, else 0.
pub trait Core {
    /// The figures, in the order of the paths; `None` where nothing stands.
    fn figures(&mut self, job: &Job, now: Now, paths: &[String]) -> Vec<Option<f64>>;
}

/// A kind of exercise, as the page offers it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SceneForm {
    /// The key of its words.
    pub key: &'static str,
    /// The levels on which it comes.
    pub levels: &'static [u8],
    /// What it trains.
    pub topics: &'static [Topic],
}

/// Every kind of exercise that new seeds give.
pub fn scenes() -> impl Iterator<Item = SceneForm> {
    v1::SCENES.iter().map(|scene| SceneForm { key: scene.key, levels: scene.levels, topics: scene.topics })
}

/// The worked examples that somebody has published.
pub fn book() -> Vec<Seed> {
    book::seeds()
}

/// The exercise of a seed.
pub fn exercise(seed: Seed, units: Units) -> Option<Made> {
    match (seed.version, seed.level) {
        (1, 0) => book::exercise(seed, units),
        (1, _) => v1::exercise(seed, units),
        _ => None,
    }
}

/// The first seed of a level, from `from` on and around, whose exercise trains nothing but these topics; without
/// one, the first that trains any of them; `None` where no scene of the level does.
///
/// `from` is where the page's own dice fell: which exercises come is chance, what they are is not.
pub fn find(level: u8, topics: &[Topic], from: u16) -> Option<Seed> {
    let seed = |number| Seed { version: VERSION, level, number };
    let mut numbers = (0..=u16::MAX).map(|step| from.wrapping_add(step));
    if topics.is_empty() {
        return numbers.map(seed).find(|seed| !v1::topics(*seed).is_empty());
    }
    let scenes = v1::scenes(level);
    let only = scenes.iter().any(|scene| scene.topics.iter().all(|topic| topics.contains(topic)));
    let fits = |seed: &Seed| {
        let trained = v1::topics(*seed);
        let wanted = |topic: &Topic| topics.contains(topic);
        if only { !trained.is_empty() && trained.iter().all(wanted) } else { trained.iter().any(wanted) }
    };
    numbers.find_map(|number| Some(seed(number)).filter(fits))
}
