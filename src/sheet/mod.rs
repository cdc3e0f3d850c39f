//! The job sheet as plain text: what the page shows, for a terminal, a message or a printer.
//!
//! No arithmetic: every figure comes from the [`Estimate`], every word from `www/words/`.

mod air_and_people;
mod dates;
mod exercise;
mod given;
mod lines;
mod parts;
mod ready_in_time;
mod rules;
mod words;

pub use exercise::exercise;
pub use words::Words;

use foamwright::Estimate;
use foamwright::job::{Job, Now};
use lines::Lines;
use parts::Sheet;

/// The sheet of a job.
pub fn sheet(job: &Job, estimate: &Estimate, now: Now, words: &Words) -> String {
    let mut sheet = Sheet { job, estimate, words, now, lines: Lines::default() };
    sheet.head();
    sheet.place();
    sheet.surfaces();
    sheet.quantity();
    sheet.kits();
    sheet.passes();
    sheet.conditioning();
    sheet.readiness();
    sheet.rounds();
    sheet.moisture();
    sheet.people();
    sheet.dates();
    sheet.findings();
    sheet.lines.text()
}
