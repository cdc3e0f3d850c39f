//! The day sheet, minute by minute.

mod kits;
mod order;
mod reentry;
mod timers;

use super::*;
use crate::findings::Code;
use proptest::prelude::*;
use serde_json::{Value, json};

/// 08:00 on a day of October 2026, somewhere.
const START: f64 = 1_792_012_200_000.0;
const MIN: f64 = 60_000.0;

const BEFORE: [&str; 10] =
    ["carton", "mask", "protection", "out", "air", "flames", "readings", "valves", "bare", "test_shot"];

/// Two surfaces, 2 in and 3 in in lifts of at most 1 in with a wait of 15 minutes, and what was marked.
struct Case {
    job: Value,
    next_id: u32,
}

impl Case {
    fn new() -> Self {
        let surface = |id: u32, depth: &str| {
            json!({"id": id, "shape": "typed_area", "entries": [
                {"field": "area", "text": "50"}, {"field": "depth", "text": depth},
            ]})
        };
        Self {
            job: json!({
                "format": "foamwright-job", "version": 2, "id": "test", "next_id": 1000, "foam": 3,
                "surfaces": [surface(1, "2"), surface(2, "3")],
                "foams": [{"id": 3, "entries": [
                    {"field": "largest_lift", "text": "1"}, {"field": "wait", "text": "15 min"},
                    {"field": "cylinder_least", "text": "70"}, {"field": "cylinder_most", "text": "90"},
                ]}],
                "kits": [{"id": 4, "name": "Medium 160", "entries": [
                    {"field": "label_yield", "text": "160"}, {"field": "price", "text": "284"},
                ]}],
                "events": [],
            }),
            next_id: 100,
        }
    }

    /// With everything before the spraying marked at the start.
    fn ready() -> Self {
        let mut case = Self::new();
        for key in BEFORE {
            case.step(key, 0.0);
        }
        case
    }

    fn event(&mut self, event: Value) -> u32 {
        let id = self.next_id;
        self.next_id += 1;
        let mut event = event;
        event["id"] = json!(id);
        self.job["events"].as_array_mut().expect("a list").push(event);
        id
    }

    fn mark(&mut self, what: &str, key: &str, minute: f64) -> u32 {
        self.event(json!({"what": what, "key": key, "at": {"ms": START + minute * MIN, "offset_min": -300}}))
    }

    fn step(&mut self, key: &str, minute: f64) -> u32 {
        self.mark("step", key, minute)
    }

    fn lift(&mut self, surface: u32, lift: u32, minute: f64) -> u32 {
        self.event(json!({
            "what": "lift", "surface": surface, "lift": lift,
            "at": {"ms": START + minute * MIN, "offset_min": -300},
        }))
    }

    fn undo(&mut self, id: u32) {
        self.job["events"].as_array_mut().expect("a list").retain(|one| one["id"] != id);
    }

    fn at(&self, minute: f64) -> (Day, Vec<Code>) {
        let job: Job = serde_json::from_value(self.job.clone()).expect("a job");
        let now = Now { ms: START + minute * MIN, offset_min: -300 };
        let estimate = crate::estimate(&job, now);
        (estimate.day, estimate.findings.iter().map(|one| one.code).collect())
    }

    /// What is next: key, surface, lift, and minutes until it may be done (0: now; none: the label's matter).
    fn next(&self, minute: f64) -> Option<(&'static str, u32, u32, Option<f64>)> {
        let (day, _) = self.at(minute);
        let step = day.steps[day.next? as usize];
        assert_eq!(step.state, StepState::Next);
        let wait = step.ready_ms.map_or(0.0, |ready| ((ready - START) / MIN - minute).max(0.0));
        Some((step.key, step.surface, step.lift, (!step.label_wait).then_some(wait)))
    }
}
