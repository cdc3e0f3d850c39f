//! The day sheet: the checklist in the order of work, what is next, and every wait by the clock.
//!
//! It follows from the lifts, from what was marked as done, and from the present instant. A wait runs from the
//! instant of the event that began it, so that it survives a locked phone, midnight and another time zone.
//! Nothing here is a clearance: a time is given only where the label gives the hours.

mod checklist;
mod kit_runs;
mod log;
#[cfg(test)]
mod tests;

use crate::SurfaceEstimate;
use crate::foam::Foam;
use crate::job::{EventOf, Job, Now, Part, Reader, Shape};
use crate::kits::Purchase;
use crate::measure::Minutes;
use checklist::{AGAIN, EDGES, LIFT, LOCK, ROWS, STOP, TEST_SHOT, VALVES};
use log::{Done, Log, MINUTE_MS};
use serde::Serialize;

pub use checklist::BLEED_MIN;
pub use kit_runs::KitRun;

/// Foam in a nozzle that stands idle begins to set after 30 seconds. Common practice, no source.
pub const IDLE_MS: f64 = 30_000.0;

/// Marks older than this are taken for those of another day, and the page asks: 10 hours. This tool's own
/// mark, without a source.
pub const STALE_MS: f64 = 600.0 * MINUTE_MS;

/// Most lifts of one surface, and of all, that are listed one by one.
const MOST_OF_SURFACE: u32 = 60;
const MOST_LIFTS: usize = 600;

/// A part of the day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Phase {
    /// Before the trigger is pulled on a surface.
    Before,
    /// Edges and lifts.
    Spraying,
    /// After the last lift of the day.
    After,
}

/// How a line of the checklist stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum StepState {
    /// Marked as done.
    Done,
    /// Marked as not applying, or passed over by what came after it.
    Skipped,
    /// The one thing to do next. Its `ready_ms` may still be to come: then everything waits.
    Next,
    /// The foam below it is still cooling, or a timer runs.
    Waiting,
    /// Further down the list.
    Later,
}

/// Why no time to go back in is given although the label's hours are known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum ReentryHeld {
    /// The exhaust is off.
    ExhaustOff,
    /// There is still a smell.
    Smell,
}

/// A line of the checklist.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct DayStep {
    /// The key of its words, and of the event that marks it.
    pub key: &'static str,
    /// Which part of the day it belongs to.
    pub phase: Phase,
    /// The surface; 0 for none.
    pub surface: u32,
    /// The number of the lift, from 1; 0 for none.
    pub lift: u32,
    /// How many lifts the surface gets; 0 for none.
    pub of: u32,
    /// How it stands.
    pub state: StepState,
    /// Whether it may be marked as not applying.
    pub optional: bool,
    /// The event that marked it; 0 for none. Taking that away undoes it.
    pub event: u32,
    /// When it was marked, in ms since 1970 UTC.
    pub done_ms: Option<f64>,
    /// From when it may be done: the last lift on the same spot and its wait, or the end of a timer.
    pub ready_ms: Option<f64>,
    /// The foam below it cools and nothing gives the time: the label governs, no countdown is shown.
    pub label_wait: bool,
}

/// The day.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Day {
    /// The checklist in the order of work; empty while nothing is to be sprayed.
    pub steps: Vec<DayStep>,
    /// Position of the next one in `steps`; none when all is done.
    pub next: Option<u32>,
    /// Lines that are done.
    pub done: u32,
    /// Lines that do not apply.
    pub skipped: u32,
    /// Lifts beyond those that are listed.
    pub unlisted: u32,
    /// Whether work was stopped with lifts left.
    pub stopped: bool,
    /// Whether the last mark is so old that it may be another day's.
    pub stale: bool,
    /// The trigger was let go: the instant at which the foam in the nozzle begins to set.
    pub nozzle_until_ms: Option<f64>,
    /// The last foam sprayed, of which something was marked.
    pub last_spray_ms: Option<f64>,
    /// The label's hours before anybody goes back in: the longest of the foams sprayed; none where one of
    /// them is silent.
    pub reentry_min: Option<Minutes>,
    /// The last spraying and those hours, longer by the time for which the exhaust was off meanwhile. Never a
    /// clearance, and none before the spraying is over, while the exhaust is off or while there is a smell.
    pub reentry_ms: Option<f64>,
    /// What keeps a time from being given, where the label's hours are known.
    pub reentry_held: Option<ReentryHeld>,
    /// The label's hours before workers go back in without protection, in the same way.
    pub reentry_workers_min: Option<Minutes>,
    /// The last spraying and those hours, as for everybody.
    pub reentry_workers_ms: Option<f64>,
    /// The label's cure time, in the same way.
    pub cure_min: Option<Minutes>,
    /// The last spraying and the cure time: air and surfaces stay inside their windows until then.
    pub cure_ms: Option<f64>,
    /// Every kit that was opened, and what it gave.
    pub runs: Vec<KitRun>,
}

/// The day of a job at an instant.
///
/// In words: a lift may follow from (the last lift on the same spot + its wait) on; next is the first line, in
/// the order of surfaces, that may be done now and, where everything waits, the one that waits the shortest.
pub fn day(
    job: &Job,
    surfaces: &[SurfaceEstimate],
    foams: &[&Foam],
    purchase: &Purchase,
    now: Now,
    reader: &mut Reader,
) -> Day {
    let log = Log::of(job, now, reader);
    let runs = kit_runs::runs(job, foams, purchase, &log, reader);
    let mut list = List { log: &log, steps: Vec::new(), candidates: Vec::new(), unlisted: 0 };
    if surfaces.iter().any(|one| one.lifts.is_some()) {
        list.rows(Phase::Before);
        for one in surfaces {
            if let Some(surface) = job.surfaces.iter().find(|surface| surface.id == one.id) {
                list.surface(one, edged(surface.shape));
            }
        }
        list.rows(Phase::After);
    }
    for lifts in surfaces.iter().filter_map(|one| Some((one.id, one.lifts?.wait_min?))) {
        log.early(lifts.0, lifts.1, reader);
    }
    let last_spray = log.last_of(sprays);
    let place = |holds: fn(EventOf, &str) -> bool| log.place_of(|one| holds(one.what, &one.key));
    let closed = place(closes) > place(|what, key| sprays(what, key) || begins(what, key));
    let left = list.has(Phase::Spraying) || list.unlisted > 0;
    let next = list.next(closed);
    if let Some(step) = next.and_then(|at| list.steps.get_mut(at)) {
        step.state = StepState::Next;
    }
    // After a mark that the clock cannot have shown, no hours are counted from it.
    let over = last_spray.filter(|spray| (closed || !left) && !spray.ahead);
    let label = |hours: fn(&Foam) -> Option<Minutes>| longest(foams, hours);
    let (reentry_min, cure_min) = (label(|foam| foam.reentry_min), label(|foam| foam.cure_min));
    let reentry_workers_min = label(|foam| foam.reentry_workers_min);
    let smell = reader.choice(Part::Job, 0, &job.entries, "smell") == Some("yes");
    let back = |minutes: Option<Minutes>| {
        let (over, minutes) = over.zip(minutes).filter(|_| !smell)?;
        log.aired(over.ms, minutes)
    };
    let (reentry_ms, reentry_workers_ms) = (back(reentry_min), back(reentry_workers_min));
    let held = if smell { ReentryHeld::Smell } else { ReentryHeld::ExhaustOff };
    let kept = |label: Option<Minutes>, time: Option<f64>| label.is_some() && time.is_none();
    let kept = kept(reentry_min, reentry_ms) || kept(reentry_workers_min, reentry_workers_ms);
    let count = |state| list.steps.iter().filter(|step| step.state == state).count() as u32;
    Day {
        next: next.map(|at| at as u32),
        done: count(StepState::Done),
        skipped: count(StepState::Skipped),
        unlisted: list.unlisted,
        stopped: closed && left,
        stale: log.newest_ms().is_some_and(|ms| log.now_ms - ms > STALE_MS) && log.turn_has_marks(),
        nozzle_until_ms: log.idle().map(|idle| if idle.ahead { log.now_ms } else { idle.ms + IDLE_MS }),
        last_spray_ms: last_spray.map(|spray| spray.ms),
        reentry_min,
        reentry_ms,
        reentry_held: (over.is_some() && kept).then_some(held),
        reentry_workers_min,
        reentry_workers_ms,
        cure_min,
        cure_ms: over.zip(cure_min).map(|(over, cure)| over.ms + cure.0 * MINUTE_MS),
        runs,
        steps: list.steps,
    }
}

/// Whether foam comes out with this event, or just came out.
fn sprays(what: EventOf, key: &str) -> bool {
    match what {
        EventOf::Lift | EventOf::Idle | EventOf::Trigger => true,
        EventOf::Step => key == EDGES || key == TEST_SHOT,
        EventOf::Skip
        | EventOf::KitOn
        | EventOf::KitOff
        | EventOf::Fault
        | EventOf::ExhaustOff
        | EventOf::ExhaustOn => false,
    }
}

/// Whether spraying ends with this event.
fn closes(what: EventOf, key: &str) -> bool {
    what == EventOf::Step && (key == LOCK || key == STOP)
}

/// Whether another day begins with this event.
fn begins(what: EventOf, key: &str) -> bool {
    what == EventOf::Step && key == AGAIN
}

/// Whether a surface has cavities whose edges are gone round first. Where only a strip is sprayed, that is
/// the whole work. Common practice, no source.
fn edged(shape: Shape) -> bool {
    matches!(shape, Shape::FramedWall | Shape::FramedFloor | Shape::FramedSlope | Shape::RimRun | Shape::Bays)
}

/// The longest of the labels' times; none where there is no foam or one of them is silent.
fn longest(foams: &[&Foam], time: fn(&Foam) -> Option<Minutes>) -> Option<Minutes> {
    let (first, rest) = foams.split_first()?;
    rest.iter().try_fold(time(first)?, |most, foam| {
        let one = time(foam)?;
        Some(if one > most { one } else { most })
    })
}

/// The checklist while it is put together.
struct List<'a> {
    log: &'a Log<'a>,
    steps: Vec<DayStep>,
    /// Positions of the lines that nothing but time keeps from being done.
    candidates: Vec<usize>,
    unlisted: u32,
}

impl List<'_> {
    fn push(&mut self, step: DayStep) {
        self.steps.push(step);
    }

    /// The lines before or after the spraying.
    fn rows(&mut self, phase: Phase) {
        for row in ROWS.iter().filter(|row| row.phase == phase) {
            let opened = || self.log.turn_last(|one| row.key == VALVES && one.what == EventOf::KitOn);
            let done = self.log.step(row.key, 0).filter(|_| self.stands(row)).or_else(opened);
            let lead = self.steps.iter().find(|step| step.key == row.lead);
            let skipped = lead.is_some_and(|lead| lead.state == StepState::Skipped)
                || (row.optional && self.log.skipped(row.key, 0) && self.stands(row));
            let ready_ms = lead
                .and_then(|lead| lead.done_ms)
                .filter(|_| row.wait_min > 0.0)
                .map(|ms| ms + row.wait_min * MINUTE_MS);
            let led = lead.is_none_or(|lead| lead.state == StepState::Done);
            let mut step = DayStep { optional: row.optional, ready_ms, ..blank(row.key, phase) };
            mark(&mut step, done, skipped);
            if step.state == StepState::Later && led {
                self.candidates.push(self.steps.len());
                step.state = self.waits(&step);
            }
            self.push(step);
        }
    }

    /// Whether a mark on a line still holds: what is done after spraying is done again after more of it, and
    /// what is done with a cylinder again for the next one.
    fn stands(&self, row: &checklist::Row) -> bool {
        let place = self.log.place_of(|one| one.key == row.key && one.surface == 0);
        match row.phase {
            Phase::Before | Phase::Spraying => true,
            Phase::After if row.optional || !row.lead.is_empty() => {
                place > self.log.place_of(|one| one.what == EventOf::KitOff)
            }
            Phase::After => place > self.log.place_of(|one| sprays(one.what, &one.key)),
        }
    }

    /// The edges and lifts of one surface.
    fn surface(&mut self, one: &SurfaceEstimate, edged: bool) {
        let Some(lifts) = one.lifts else { return };
        let last = self.log.latest(|event| event.what == EventOf::Lift && event.surface == one.id);
        let mut free = true;
        if edged {
            let mut step = DayStep { surface: one.id, optional: true, ..blank(EDGES, Phase::Spraying) };
            // A lift over edges that nobody marked: they are in it.
            let passed = last.is_some() || self.log.skipped(EDGES, one.id);
            mark(&mut step, self.log.step(EDGES, one.id), passed);
            if step.state == StepState::Later {
                self.candidates.push(self.steps.len());
                free = false;
            }
            self.push(step);
        }
        let lifted = self.steps.iter().filter(|step| step.key == LIFT).count();
        let room = MOST_LIFTS.saturating_sub(lifted) as u32;
        let listed = lifts.count.min(MOST_OF_SURFACE).min(room);
        self.unlisted = self.unlisted.saturating_add(lifts.count - listed);
        for lift in 1..=listed {
            let mut step = DayStep { surface: one.id, lift, of: lifts.count, ..blank(LIFT, Phase::Spraying) };
            mark(&mut step, self.log.lift(one.id, lift), false);
            if step.state == StepState::Later && free {
                free = false;
                step.ready_ms = last.zip(lifts.wait_min).map(|(last, wait)| last.ms + wait.0 * MINUTE_MS);
                step.label_wait = last.is_some() && lifts.wait_min.is_none();
                step.state = self.waits(&step);
                self.candidates.push(self.steps.len());
            }
            self.push(step);
        }
    }

    fn waits(&self, step: &DayStep) -> StepState {
        let cools = step.ready_ms.is_some_and(|ready| self.log.now_ms < ready);
        if cools || step.label_wait { StepState::Waiting } else { StepState::Later }
    }

    fn has(&self, phase: Phase) -> bool {
        self.of(phase).next().is_some()
    }

    fn of(&self, phase: Phase) -> impl Iterator<Item = (usize, &DayStep)> {
        let all = self.candidates.iter().filter_map(|&at| Some((at, self.steps.get(at)?)));
        all.filter(move |(_, step)| step.phase == phase)
    }

    /// The next line: the first that may be done now, else the one that waits the shortest, else the first
    /// whose wait only the label knows.
    fn next(&self, closed: bool) -> Option<usize> {
        let phase = if closed {
            Phase::After
        } else if self.has(Phase::Before) {
            Phase::Before
        } else if self.has(Phase::Spraying) {
            Phase::Spraying
        } else {
            Phase::After
        };
        let mut soonest: Option<(f64, usize)> = None;
        for (at, step) in self.of(phase) {
            let ready = match (step.state, step.ready_ms) {
                (StepState::Waiting, Some(ready)) => ready,
                (StepState::Waiting, None) => f64::INFINITY,
                _ => return Some(at),
            };
            if soonest.is_none_or(|(least, _)| ready < least) {
                soonest = Some((ready, at));
            }
        }
        soonest.map(|(_, at)| at)
    }
}

fn blank(key: &'static str, phase: Phase) -> DayStep {
    DayStep {
        key,
        phase,
        surface: 0,
        lift: 0,
        of: 0,
        state: StepState::Later,
        optional: false,
        event: 0,
        done_ms: None,
        ready_ms: None,
        label_wait: false,
    }
}

fn mark(step: &mut DayStep, done: Option<Done>, skipped: bool) {
    if let Some(done) = done {
        step.state = StepState::Done;
        step.event = done.event;
        step.done_ms = Some(done.ms);
        step.ready_ms = None;
    } else if skipped {
        step.state = StepState::Skipped;
        step.ready_ms = None;
    }
}
