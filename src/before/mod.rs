//! What has to be settled before foam: short questions about the place, each answered by a press, and what
//! follows from the answer.
//!
//! | file | what it holds |
//! |---|---|
//! | `table.rs` | every question's consequences, one row each |
//! | `mod.rs` | the answers of a job against that table |
//!
//! An answer can stop, ask for a preparation or add a sentence to the proposal. None of them can pass anything:
//! a question without an answer is listed as not looked at, and blocks no measuring.

mod table;
#[cfg(test)]
mod tests;

use crate::findings::{Code, Finding};
use crate::job::{Job, Part, Reader};
use serde::Serialize;

/// What an answer leads to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Consequence {
    /// This foam is not for that place: it is left out, or done with something else. The rest goes on.
    NotThisKit,
    /// Nothing is sprayed until it has been put right: it holds the verdict.
    NotYet,
    /// Something to be done first. The key is where a price can be put to it.
    Preparation,
    /// A sentence for the proposal.
    Sentence,
}

/// One thing that follows from an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Follows {
    /// The question: a field of [`Part::Job`].
    pub question: &'static str,
    /// What kind of thing it is.
    pub consequence: Consequence,
    /// The key of its words within its kind, and of its price.
    pub key: &'static str,
    /// Whether its ground is from memory: it is said beside it, and never stops.
    pub memory: bool,
    /// Whether the answer was "not known": taken as the graver answer until somebody has looked.
    pub assumed: bool,
}

/// The walkthrough before foam.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Before {
    /// Every question, in the order in which one walks through.
    pub questions: Vec<&'static str>,
    /// Those without an answer: not looked at, and never a pass.
    pub unanswered: Vec<&'static str>,
    /// What follows from the answers, in the order of the questions.
    pub follows: Vec<Follows>,
}

/// What follows from a job's answers, with a finding for each stop.
///
/// "Not known" counts as the graver answer where there is one, and as one that nobody has looked at.
pub fn walkthrough(job: &Job, reader: &mut Reader) -> Before {
    let mut before = Before { questions: Vec::new(), unanswered: Vec::new(), follows: Vec::new() };
    for &question in table::QUESTIONS {
        before.questions.push(question);
        let Some(answer) = reader.choice(Part::Job, 0, &job.entries, question) else {
            before.unanswered.push(question);
            continue;
        };
        for rule in table::RULES.iter().filter(|rule| rule.question == question) {
            if !rule.answers.contains(&answer) {
                continue;
            }
            let code = match rule.consequence {
                Consequence::NotThisKit => Some(Code::NotThisKit),
                Consequence::NotYet => Some(Code::NotYet),
                Consequence::Preparation | Consequence::Sentence => None,
            };
            if let Some(code) = code {
                reader.say(Finding::new(code, Part::Job, 0, question));
            }
            before.follows.push(Follows {
                question,
                consequence: rule.consequence,
                key: rule.key,
                memory: rule.memory,
                assumed: answer == table::NOT_KNOWN,
            });
        }
    }
    before
}
