//! The engine by itself, on an exercise of its own: no scene, and a core that is a list of figures.

mod chain;
mod formulas;
mod judging;
mod never;
mod seeds;

use super::formula::{area, at, figure, number, share, step};
use super::made::{Ask, Making};
use super::{Answer, Core, Formula, Made, Marked, Seed, StepMark, Topic, Verdict, mark};
use crate::job::{Job, Now};
use crate::measure::{Kind, Units};

/// A core that knows these figures of the exercise's own job, and others of a job that has a name.
#[derive(Clone, Copy)]
struct Listed;

const FIGURES: [(&str, f64); 5] =
    [("length", 240.0), ("height", 96.0), ("openings", 29.5), ("net", 130.5), ("word=hold", 1.0)];

impl Core for Listed {
    fn figures(&mut self, job: &Job, _now: Now, paths: &[String]) -> Vec<Option<f64>> {
        let figure = |path: &String| {
            if path == "openings" && job.name == "one window less" {
                return Some(17.5);
            }
            if path.starts_with("word=") && job.name == "other air" {
                return Some(f64::from(u8::from(path == "word=go")));
            }
            FIGURES.iter().find(|(name, _)| name == path).map(|(_, value)| *value)
        };
        paths.iter().map(figure).collect()
    }
}

fn making(units: Units) -> Making {
    Making::new(Seed { version: 1, level: 3, number: 0 }, units, "of_the_tests")
}

/// A wall of 20 ft by 8 ft with 29.5 ft² of openings, at 2 in: gross, openings, net, board feet, to spray with a tenth more,
/// kits of 120, a verdict.
fn wall(units: Units) -> Made {
    let mut m = making(units);
    m.ask(
        Ask::new("gross", Topic::Areas, Kind::Area)
            .by(area(at("length", Kind::Length), at("height", Kind::Length)))
            .slip(
                "one_pair_of_sides",
                (at("length", Kind::Length) + at("height", Kind::Length)).scaled(1.0 / 12.0),
            ),
    );
    let openings = Ask::new("openings", Topic::Areas, Kind::Area).at("openings").slip_job(
        "one_of_several",
        &m,
        "openings",
        |job| job.name = "one window less".to_owned(),
    );
    m.ask(openings);
    m.ask(
        Ask::new("net", Topic::Areas, Kind::Area)
            .at("net")
            .by(step("gross") - step("openings"))
            .slip("openings_forgotten", step("gross"))
            .slip("openings_twice", step("gross") - step("openings") - step("openings")),
    );
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .by(step("net") * figure(2.0, Kind::Length))
            .slip("gross_for_net", step("gross") * figure(2.0, Kind::Length)),
    );
    m.ask(
        Ask::new("to_spray", Topic::Allowances, Kind::FoamVolume)
            .by(step("board_feet") + step("board_feet") * share(figure(10.0, Kind::Percent)))
            .slip("allowance_forgotten", step("board_feet")),
    );
    m.ask(
        Ask::new("kits", Topic::Kits, Kind::Count)
            .by((step("to_spray") / figure(120.0, Kind::FoamVolume)).up())
            .slip("allowance_forgotten", (step("board_feet") / figure(120.0, Kind::FoamVolume)).up()),
    );
    let verdict = Ask::choice("verdict", Topic::Temperatures, &["go", "hold"]).word("word").slip_job(
        "air_for_surface",
        &m,
        "word",
        |job| job.name = "other air".to_owned(),
    );
    m.ask(verdict);
    m.done()
}

/// The right answers of [`wall`]: 160 − 29.5 = 130.5 ft², 261 bd ft, 287.1 to spray, 3 kits, hold.
const RIGHT: [f64; 7] = [160.0, 29.5, 130.5, 261.0, 287.1, 3.0, 1.0];

fn given(values: &[Option<f64>]) -> Vec<Answer> {
    values.iter().map(|value| Answer { value: *value, ..Answer::default() }).collect()
}

fn right() -> Vec<Answer> {
    given(&RIGHT.map(Some))
}

/// The right answers, with others at these places.
fn but(others: &[(usize, f64)]) -> Vec<Answer> {
    let mut answers = right();
    for (at, value) in others {
        answers[*at].value = Some(*value);
    }
    answers
}

fn marked(answers: &[Answer]) -> Marked {
    mark(&wall(Units::Us), answers, &mut Listed)
}

fn verdicts(marked: &Marked) -> Vec<Verdict> {
    marked.steps.iter().map(|step| step.verdict).collect()
}

/// An exercise of one step.
fn alone(units: Units, ask: Ask) -> Made {
    let mut m = making(units);
    m.ask(ask);
    m.done()
}

/// How the one step of an exercise is judged.
fn judged(made: &Made, value: f64) -> StepMark {
    mark(made, &given(&[Some(value)]), &mut Listed).steps.remove(0)
}

fn named(made: &Made, value: f64) -> &'static str {
    let step = judged(made, value);
    assert_eq!(step.verdict == Verdict::Slip, !step.slip.is_empty(), "{step:?}");
    step.slip
}

/// A step whose right answer is this figure.
fn is(value: f64, kind: Kind) -> Ask {
    Ask::new("one", Topic::Areas, kind).by(figure(value, kind))
}

fn up(of: Formula) -> Ask {
    Ask::new("one", Topic::Kits, Kind::Count).by(of.up())
}

fn ratio(one: f64, other: f64) -> Formula {
    number(one) / number(other)
}
