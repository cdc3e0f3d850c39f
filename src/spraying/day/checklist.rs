//! The checklist of a day: what is done before the trigger and after it, as one constant table.

use super::Phase;

/// One line of the checklist.
#[derive(Debug, Clone, Copy)]
pub(super) struct Row {
    /// The key of its words, and of the event that says it was done.
    pub(super) key: &'static str,
    /// Before or after spraying.
    pub(super) phase: Phase,
    /// Whether it may not apply: no kit is empty, no kit is part-used.
    pub(super) optional: bool,
    /// The line that has to be done first, and with which it is left out.
    pub(super) lead: &'static str,
    /// Minutes to wait after that line.
    pub(super) wait_min: f64,
}

const fn row(key: &'static str, phase: Phase) -> Row {
    Row { key, phase, optional: false, lead: "", wait_min: 0.0 }
}

/// How long an empty cylinder bleeds on its side with its valve open: 15 minutes. Common practice, no source.
pub const BLEED_MIN: f64 = 15.0;

/// The kit's valves: an opened kit stands for it as well.
pub(super) const VALVES: &str = "valves";
/// Ventilation runs.
pub(super) const AIR: &str = "air";
/// Picture-framing, a line of each surface that has cavities.
pub(super) const EDGES: &str = "edges";
/// A lift of a surface.
pub(super) const LIFT: &str = "lift";
/// The shot on scrap: foam is sprayed.
pub(super) const TEST_SHOT: &str = "test_shot";
/// Trigger locked, nozzle off, valves shut.
pub(super) const LOCK: &str = "lock";

/// Marks that are no lines of the list. Work stops for today, with surfaces left.
pub(super) const STOP: &str = "stop";
/// Another day: the lines before and after the spraying stand undone again.
pub(super) const AGAIN: &str = "again";

/// The lines in the order of work. Common practice, no source; the label and the safety data sheet govern.
pub(super) const ROWS: &[Row] = &[
    row("carton", Phase::Before),
    row("mask", Phase::Before),
    row("protection", Phase::Before),
    row("out", Phase::Before),
    row(AIR, Phase::Before),
    row("flames", Phase::Before),
    row("readings", Phase::Before),
    row(VALVES, Phase::Before),
    row("bare", Phase::Before),
    row(TEST_SHOT, Phase::Before),
    row(LOCK, Phase::After),
    row("probe", Phase::After),
    row("heat", Phase::After),
    row("posted", Phase::After),
    row("purge_container", Phase::After),
    Row { optional: true, ..row("part_used", Phase::After) },
    Row { optional: true, ..row("empty_bleed", Phase::After) },
    Row { lead: "empty_bleed", ..row("empty_open", Phase::After) },
    Row { lead: "empty_open", wait_min: BLEED_MIN, ..row("empty_left", Phase::After) },
];
