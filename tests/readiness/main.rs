//! The verdict: every code raised, every limit met at both ends, ages by instants, and what may never
//! become a GO.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod again;
mod any_site;
mod limits;
mod moisture;
mod own_kits;
mod sites;
mod spots;
mod understood;
mod verdict;
mod weather;

use foamwright::findings::{Code, Finding};
use foamwright::foam::{self, Foam};
use foamwright::job::{Entered, FoamSheet, Job, KitSheet, Now, Part, Reader, ReadingOf, SiteReading};
use foamwright::kits;
use foamwright::measure::Unit;
use foamwright::readiness::{Check, ReadState, Readiness, Verdict, check};
use serde_json::{Value, json};
use std::path::Path;

use ReadingOf::{
    Air, CylinderA, CylinderB, DewPoint, Humidity, NightLow, Storage, Surface, Wind, WoodMoisture,
};

/// Some afternoon.
const NOW: Now = Now { ms: 1_792_000_000_000.0, offset_min: -300 };

fn ago(minutes: f64) -> Option<Now> {
    Some(Now { ms: NOW.ms - minutes * 60_000.0, ..NOW })
}

fn entered(field: &str, text: &str, unit: Option<Unit>) -> Entered {
    Entered { field: field.to_owned(), text: text.to_owned(), unit, sense: None }
}

fn reading(of: ReadingOf, text: &str) -> SiteReading {
    let field = match of {
        Humidity => "humidity",
        WoodMoisture => "moisture",
        Wind => "wind",
        _ => "temperature",
    };
    SiteReading { id: 0, of, name: String::new(), entries: vec![entered(field, text, None)], taken: ago(5.0) }
}

/// A site: the readings of a job, numbered from 1.
#[derive(Debug, Clone)]
struct Site {
    job: Job,
    sheets: Vec<FoamSheet>,
    now: Now,
}

/// All there, all inside with room to spare: dew point 50.5 °F.
fn good() -> Site {
    site(&[
        reading(CylinderA, "75"),
        reading(CylinderB, "76"),
        reading(Air, "70"),
        reading(Humidity, "50"),
        SiteReading { name: "Rim, north".to_owned(), ..reading(Surface, "66") },
    ])
}

fn site(readings: &[SiteReading]) -> Site {
    let mut job: Job =
        serde_json::from_value(json!({"format": "foamwright-job", "version": 2, "id": "x", "next_id": 1}))
            .expect("a job");
    job.readings = readings.to_vec();
    Site { job, sheets: Vec::new(), now: NOW }.numbered().answer("flames_out", "yes")
}

impl Site {
    fn numbered(mut self) -> Self {
        for (position, reading) in self.job.readings.iter_mut().enumerate() {
            reading.id = position as u32 + 1;
        }
        self
    }

    /// The first reading of a kind, changed.
    fn with(mut self, of: ReadingOf, change: impl FnOnce(&mut SiteReading)) -> Self {
        change(self.job.readings.iter_mut().find(|one| one.of == of).expect("there"));
        self
    }

    fn text(self, of: ReadingOf, text: &str) -> Self {
        self.with(of, |one| one.entries[0].text = text.to_owned())
    }

    fn unit(self, of: ReadingOf, text: &str, unit: Unit) -> Self {
        self.with(of, |one| one.entries[0] = entered(&one.entries[0].field.clone(), text, Some(unit)))
    }

    fn taken(self, of: ReadingOf, minutes_ago: f64) -> Self {
        self.with(of, |one| one.taken = ago(minutes_ago))
    }

    fn without(mut self, of: ReadingOf) -> Self {
        self.job.readings.retain(|one| one.of != of);
        self
    }

    fn and(mut self, reading: SiteReading) -> Self {
        self.job.readings.push(reading);
        self.numbered()
    }

    fn limit(mut self, field: &str, text: &str) -> Self {
        self.job.entries.push(entered(field, text, None));
        self
    }

    /// The answer to a question about the whole job, in place of one that was given.
    fn answer(mut self, question: &str, word: &str) -> Self {
        self.job.entries.retain(|one| one.field != question);
        if !word.is_empty() {
            self.job.entries.push(entered(question, word, None));
        }
        self
    }

    /// The answers about the first surface.
    fn surface(self, answers: &[(&str, &str)]) -> Self {
        self.with(Surface, |one| {
            one.entries.extend(answers.iter().map(|(field, word)| entered(field, word, None)));
        })
    }

    /// A sealed kit at hand.
    fn kit(mut self, entries: &[(&str, &str)]) -> Self {
        let id = 300 + self.job.stock.len() as u32;
        let mut entries: Vec<Entered> =
            entries.iter().map(|(field, text)| entered(field, text, None)).collect();
        for (field, text) in [("label_yield", "40"), ("state", "sealed")] {
            if !entries.iter().any(|one| one.field == field) {
                entries.push(entered(field, text, None));
            }
        }
        let (sheet, name) = (String::new(), format!("Kit {id}"));
        self.job.stock.push(KitSheet { id, sheet, version: 1, name, entries });
        self
    }

    fn label(mut self, entries: &[(&str, &str)]) -> Self {
        let entries = entries.iter().map(|(field, text)| entered(field, text, None)).collect();
        let id = 100 + self.sheets.len() as u32;
        let (sheet, name) = (String::new(), String::new());
        self.sheets.push(FoamSheet { id, sheet, version: 1, name, entries, r_at: Vec::new() });
        self.job.foams = self.sheets.clone();
        self
    }

    fn said(&self) -> (Readiness, Vec<Finding>) {
        let mut reader = Reader::new(self.job.units);
        let foams: Vec<Foam> =
            self.sheets.iter().map(|sheet| foam::sheet(sheet, &mut reader).expect("a sheet")).collect();
        let stock = kits::stock(&self.job, foams.first(), None, self.now, &mut reader);
        let foams: Vec<_> = foams.iter().collect();
        let readiness = check(&self.job, &foams, &stock, &[], self.now, &mut reader);
        (readiness, reader.findings)
    }

    fn verdict(&self) -> Verdict {
        self.said().0.verdict
    }

    /// The verdict and the code to blame.
    fn blamed(&self) -> (Verdict, Option<Code>) {
        let (readiness, findings) = self.said();
        (readiness.verdict, readiness.blame.map(|position| findings[position as usize].code))
    }

    fn finding(&self, code: Code) -> Option<Finding> {
        self.said().1.into_iter().find(|one| one.code == code)
    }

    fn check(&self, of: ReadingOf) -> Check {
        self.said().0.checks.into_iter().find(|one| one.of == of).expect("a check")
    }

    fn state(&self, of: ReadingOf) -> ReadState {
        self.check(of).state
    }
}

const GO: (Verdict, Option<Code>) = (Verdict::Go, None);

fn hold(code: Code) -> (Verdict, Option<Code>) {
    (Verdict::Hold, Some(code))
}

fn not_read(code: Code) -> (Verdict, Option<Code>) {
    (Verdict::NotRead, Some(code))
}

/// The text of a figure of a finding.
fn figure(finding: &Finding, name: &str) -> String {
    finding.figures.iter().find(|one| one.name == name).expect("a figure").text.clone()
}

/// The words of a file of `www/words/`.
fn words(language: &str, file: &str) -> Value {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("www/words/{language}/{file}.json"));
    serde_json::from_str(&std::fs::read_to_string(file).expect("words")).expect("json")
}
