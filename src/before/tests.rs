//! Each answer leads to what it should, nothing passes, and no stop stands on memory.

#![allow(clippy::expect_used, clippy::indexing_slicing)]

use super::table::{NOT_KNOWN, QUESTIONS, RULES};
use super::*;
use crate::findings::Severity;
use crate::job::{Now, field};
use crate::readiness::Verdict;
use Consequence::{NotThisKit, NotYet, Preparation, Sentence};

const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

fn job(answers: &[(&str, &str)]) -> Job {
    let entries: Vec<_> =
        answers.iter().map(|(field, text)| serde_json::json!({ "field": field, "text": text })).collect();
    serde_json::from_value(serde_json::json!({
        "format": "foamwright-job", "version": 2, "id": "x", "next_id": 1, "entries": entries
    }))
    .expect("a job")
}

fn read(answers: &[(&str, &str)]) -> (Before, Vec<Finding>) {
    let job = job(answers);
    let mut reader = Reader::new(job.units);
    (walkthrough(&job, &mut reader), reader.findings)
}

fn led_to(question: &str, answer: &str) -> Vec<(Consequence, &'static str)> {
    let (before, _) = read(&[(question, answer)]);
    assert!(before.follows.iter().all(|one| one.question == question));
    assert_eq!(before.unanswered.len(), QUESTIONS.len() - 1, "{question}");
    before.follows.iter().map(|one| (one.consequence, one.key)).collect()
}

#[test]
fn each_answer_leads_where_it_should() {
    for (question, answer, expected) in [
        ("closed_cavity", "yes", vec![(NotThisKit, "closed_cavity")]),
        ("frame_gaps", "yes", vec![(NotThisKit, "frame_gaps")]),
        ("flues", "yes", vec![(NotThisKit, "flues"), (Preparation, "flues"), (Sentence, "draft")]),
        ("water", "yes", vec![(NotYet, "water")]),
        ("rot", "yes", vec![(NotYet, "rot"), (Preparation, "rot")]),
        ("old_fill", "yes", vec![(Preparation, "old_fill")]),
        ("retarder", "inside", vec![(Preparation, "retarder_inside")]),
        ("retarder", "outside", vec![(Sentence, "retarder_outside")]),
        ("retarder", "both", vec![(Preparation, "retarder_inside"), (Sentence, "retarder_outside")]),
        ("retarder", "none", vec![]),
        ("retarder", "not_known", vec![(Preparation, "retarder_look")]),
        ("knob_tube", "yes", vec![(NotYet, "knob_tube"), (Sentence, "wiring")]),
        ("knob_tube", "not_known", vec![(NotYet, "knob_tube"), (Sentence, "wiring")]),
        ("open_boxes", "yes", vec![(Preparation, "open_boxes")]),
        ("lights", "yes", vec![(Preparation, "lights")]),
        ("lights", "not_known", vec![(Preparation, "lights")]),
        ("pipes", "yes", vec![(Preparation, "pipes"), (Sentence, "pipes")]),
        ("fire_blocking", "yes", vec![(Preparation, "fire_blocking")]),
        ("fire_blocking", "not_known", vec![(Preparation, "fire_blocking")]),
        ("termites", "yes", vec![(Preparation, "termites"), (Sentence, "termites")]),
        ("termites", "not_known", vec![(Preparation, "termites"), (Sentence, "termites")]),
        ("asbestos", "yes", vec![(NotYet, "asbestos"), (Sentence, "asbestos")]),
        ("asbestos", "not_known", vec![(NotYet, "asbestos"), (Sentence, "asbestos")]),
        ("old_paint", "yes", vec![(Preparation, "old_paint")]),
        ("old_paint", "not_known", vec![(Preparation, "old_paint")]),
        ("room_use", "weather", vec![(Preparation, "weather")]),
        ("room_use", "living", vec![(Sentence, "cover")]),
        ("room_use", "storage", vec![(Sentence, "cover")]),
        ("room_use", "service", vec![(Sentence, "service")]),
    ] {
        assert_eq!(led_to(question, answer), expected, "{question}: {answer}");
    }
    for question in QUESTIONS.iter().filter(|one| !["retarder", "room_use"].contains(one)) {
        assert_eq!(led_to(question, "no"), vec![], "{question}: no");
    }
}

#[test]
fn every_stop_is_a_finding_at_its_question() {
    for rule in RULES {
        let (_, findings) = read(&[(rule.question, rule.answers[0])]);
        let stops: Vec<_> =
            findings.iter().map(|one| (one.code, one.severity, one.at.field.as_str())).collect();
        let wanted = match rule.consequence {
            NotThisKit => (Code::NotThisKit, Severity::Stop, rule.question),
            NotYet => (Code::NotYet, Severity::Stop, rule.question),
            Preparation | Sentence => continue,
        };
        assert_eq!(stops, [wanted]);
    }
}

#[test]
fn a_rule_names_a_question_and_answers_that_can_be_pressed() {
    for rule in RULES {
        assert!(QUESTIONS.contains(&rule.question), "{}", rule.question);
        let row = field(Part::Job, rule.question).expect("a field");
        assert!(rule.answers.iter().all(|one| row.choices.contains(one)), "{}", rule.key);
        let same = RULES.iter().filter(|one| (one.consequence, one.key) == (rule.consequence, rule.key));
        assert_eq!(same.count(), 1, "{}: a key stands twice", rule.key);
    }
    for question in QUESTIONS {
        assert!(RULES.iter().any(|rule| rule.question == *question), "{question} leads nowhere");
        // Who may say that nobody has looked is never let off by it.
        if field(Part::Job, question).expect("a field").choices.contains(&NOT_KNOWN) {
            let (before, _) = read(&[(question, NOT_KNOWN)]);
            assert!(!before.follows.is_empty() && before.follows.iter().all(|one| one.assumed), "{question}");
        }
    }
}

#[test]
fn memory_stops_nothing() {
    let stops = |rule: &&super::table::Rule| matches!(rule.consequence, NotThisKit | NotYet);
    assert!(RULES.iter().filter(stops).count() >= 7);
    assert!(RULES.iter().filter(stops).all(|rule| !rule.memory));
    assert!(RULES.iter().any(|rule| rule.memory));
}

#[test]
fn a_blank_or_a_strange_word_is_not_looked_at() {
    let (before, findings) = read(&[]);
    assert_eq!(before.unanswered, QUESTIONS);
    assert_eq!(before.questions, QUESTIONS);
    assert!(before.follows.is_empty() && findings.is_empty());
    let (before, findings) = read(&[("water", "maybe"), ("rot", "no")]);
    assert!(before.unanswered.contains(&"water") && !before.unanswered.contains(&"rot"));
    assert_eq!(findings[0].code, Code::NotTaken);
}

/// A job in order, as far as readings go: the sample with its own readings taken just now.
fn sound(answers: &[(&str, &str)]) -> Verdict {
    let mut whole: serde_json::Value =
        serde_json::from_str(include_str!("../../tests/jobs/winter-day-go/job.json")).expect("json");
    let entries = whole["entries"].as_array_mut().expect("entries");
    for (field, text) in answers {
        entries.push(serde_json::json!({ "field": field, "text": text }));
    }
    let now: Now =
        serde_json::from_str(include_str!("../../tests/jobs/winter-day-go/now.json")).expect("now");
    let whole: Job = serde_json::from_value(whole).expect("a job");
    crate::estimate(&whole, now).readiness.verdict
}

#[test]
fn what_is_not_yet_holds_the_verdict_and_no_answer_gives_a_go() {
    assert_eq!(sound(&[]), Verdict::Go);
    let empty = crate::estimate(&job(&[]), NOW).readiness.verdict;
    assert_ne!(empty, Verdict::Go);
    for question in QUESTIONS {
        for answer in field(Part::Job, question).expect("a field").choices {
            let holds = RULES.iter().any(|rule| {
                rule.question == *question && rule.answers.contains(answer) && rule.consequence == NotYet
            });
            let verdict = sound(&[(question, answer)]);
            assert_eq!(verdict, if holds { Verdict::Hold } else { Verdict::Go }, "{question}: {answer}");
            let alone = crate::estimate(&job(&[(question, answer)]), NOW).readiness.verdict;
            assert_ne!(alone, Verdict::Go, "{question}: {answer}");
        }
    }
    // All of them answered as well as can be: still no GO of their own.
    let best: Vec<(&str, &str)> = QUESTIONS.iter().map(|one| (*one, "no")).collect();
    assert_eq!(crate::estimate(&job(&best), NOW).readiness.verdict, empty);
}
