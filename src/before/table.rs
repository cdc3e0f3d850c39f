//! The questions and what each answer leads to, as constant tables. The words and the source of a row stand under
//! `<consequence>.<key>` in the page of words `before`.

use super::Consequence;

/// The answer of somebody who has not looked yet.
pub(super) const NOT_KNOWN: &str = "not_known";

/// One consequence of one question.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rule {
    /// The question: a field of the job.
    pub(super) question: &'static str,
    /// The answers that lead to it.
    pub(super) answers: &'static [&'static str],
    /// What kind of thing follows.
    pub(super) consequence: Consequence,
    /// The key of its words.
    pub(super) key: &'static str,
    /// Whether its ground is from memory; such a row never stops.
    pub(super) memory: bool,
}

const YES: &[&str] = &["yes"];
/// Taken as yes until somebody has looked.
const YES_OR_UNSEEN: &[&str] = &["yes", NOT_KNOWN];

const fn rule(
    question: &'static str,
    answers: &'static [&'static str],
    consequence: Consequence,
    key: &'static str,
) -> Rule {
    Rule { question, answers, consequence, key, memory: false }
}

impl Rule {
    const fn memory(mut self) -> Self {
        self.memory = true;
        self
    }
}

use Consequence::{NotThisKit, NotYet, Preparation, Sentence};

/// The order in which one walks through: what rules the kit out first, then the building, its wiring and pipes,
/// what is dangerous to touch, and what the room is for.
pub(super) const QUESTIONS: &[&str] = &[
    "closed_cavity",
    "frame_gaps",
    "flues",
    "water",
    "rot",
    "old_fill",
    "retarder",
    "knob_tube",
    "open_boxes",
    "lights",
    "pipes",
    "fire_blocking",
    "termites",
    "asbestos",
    "old_paint",
    "room_use",
];

/// Every consequence. Stops stand on published guidance (asbestos, live wiring) or on plain physical hazards that
/// are common practice; what is from memory prepares or says, and stops nothing.
pub(super) const RULES: &[Rule] = &[
    // Common practice, no source: the mix needs open air to foam against and a face that can be seen.
    rule("closed_cavity", YES, NotThisKit, "closed_cavity"),
    // Common practice, no source: two-part foam pushes frames out of true.
    rule("frame_gaps", YES, NotThisKit, "frame_gaps"),
    // Common practice, no source: metal and high-temperature sealant, never foam, at anything that gets hot.
    rule("flues", YES, NotThisKit, "flues"),
    rule("flues", YES, Preparation, "flues"),
    // Tightening changes how appliances draw: public weatherization specifications test them before and after.
    rule("flues", YES, Sentence, "draft"),
    // Public weatherization specifications: leaks are put right before foam covers them.
    rule("water", YES, NotYet, "water"),
    // Common practice, no source: foam hides rot and keeps it wet.
    rule("rot", YES, NotYet, "rot"),
    rule("rot", YES, Preparation, "rot"),
    // Common practice, no source: foam holds to the sheathing, not to batts or sheeting.
    rule("old_fill", YES, Preparation, "old_fill"),
    // Common practice, no source: one retarder, and one way left to dry.
    rule("retarder", &["inside", "both"], Preparation, "retarder_inside"),
    rule("retarder", &["outside", "both"], Sentence, "retarder_outside"),
    rule("retarder", &[NOT_KNOWN], Preparation, "retarder_look"),
    // Public weatherization specifications: energized knob-and-tube is looked for before insulating. NEC 394.12
    // keeps concealed knob-and-tube out of insulation that envelops it (from memory).
    rule("knob_tube", YES_OR_UNSEEN, NotYet, "knob_tube"),
    rule("knob_tube", YES_OR_UNSEEN, Sentence, "wiring"),
    // NEC 314.25 and 314.29 (from memory): boxes have covers and stay within reach.
    rule("open_boxes", YES, Preparation, "open_boxes").memory(),
    // Public weatherization specifications look for lights that may not touch insulation; NEC 410.116 (from
    // memory).
    rule("lights", YES_OR_UNSEEN, Preparation, "lights"),
    // Common practice, no source: foam between a pipe and the warm room lets the pipe freeze.
    rule("pipes", YES, Preparation, "pipes"),
    rule("pipes", YES, Sentence, "pipes"),
    // IRC R302.11 (from memory).
    rule("fire_blocking", YES_OR_UNSEEN, Preparation, "fire_blocking").memory(),
    // IRC R318 (from memory) and common practice of pest inspection.
    rule("termites", YES_OR_UNSEEN, Preparation, "termites").memory(),
    rule("termites", YES_OR_UNSEEN, Sentence, "termites").memory(),
    // EPA, public guidance on vermiculite insulation and on asbestos in the home: assume it, leave it undisturbed.
    rule("asbestos", YES_OR_UNSEEN, NotYet, "asbestos"),
    rule("asbestos", YES_OR_UNSEEN, Sentence, "asbestos"),
    // 40 CFR 745 subpart E: paint in homes from before 1978 is taken to hold lead until it has been tested.
    rule("old_paint", YES_OR_UNSEEN, Preparation, "old_paint"),
    // Common practice, no source: sunlight and rain eat bare foam.
    rule("room_use", &["weather"], Preparation, "weather"),
    // Residential code R316.4, IRC 2018: thermal barrier; R316.5.3 and R316.5.4 for what is entered only for service
    // (as an inspector's article quotes them of 2006).
    rule("room_use", &["living", "storage"], Sentence, "cover"),
    rule("room_use", &["service"], Sentence, "service"),
];
