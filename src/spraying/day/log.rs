//! What was marked on the day, with instants that can be counted from.

use super::checklist::{AGAIN, AIR};
use crate::findings::{Code, Finding};
use crate::job::{Event, EventOf, Job, Now, Part, Reader};
use crate::measure::{Kind, Minutes};
use core::ops::RangeInclusive;

pub(super) const MINUTE_MS: f64 = 60_000.0;
/// A clock may run ahead of the one that stamped a mark by this much: 2 minutes. This tool's own allowance.
const AHEAD_MS: f64 = 2.0 * MINUTE_MS;
/// The stamps that a clock can show: the years 1970 to 2099.
const CLOCK_MS: RangeInclusive<f64> = 0.0..=4_102_444_800_000.0;

/// A mark, seen from now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Done {
    /// The event's id.
    pub(super) event: u32,
    /// When; never after now, so that no wait is over before its time.
    pub(super) ms: f64,
    /// Whether its stamp lies in the future or is no time at all.
    pub(super) ahead: bool,
}

/// The job's events.
pub(super) struct Log<'a> {
    events: &'a [Event],
    /// Where the present day begins: after the last mark that says so.
    turn: usize,
    pub(super) now_ms: f64,
}

impl<'a> Log<'a> {
    /// The events of a job. A stamp that no clock can have shown by now leaves a finding, the first of them.
    pub(super) fn of(job: &'a Job, now: Now, reader: &mut Reader) -> Self {
        let events = job.events.as_slice();
        let turn = events.iter().rposition(|one| one.what == EventOf::Step && one.key == AGAIN);
        let log = Self { events, turn: turn.map_or(0, |at| at + 1), now_ms: now.ms };
        if let Some(one) = events.iter().find(|one| log.done(one).ahead) {
            reader.say(Finding::new(Code::EventAhead, Part::Event, one.id, ""));
        }
        log
    }

    pub(super) fn done(&self, one: &Event) -> Done {
        let ahead = !CLOCK_MS.contains(&one.at.ms) || one.at.ms > self.now_ms + AHEAD_MS;
        let ms = if one.at.ms < self.now_ms && !ahead { one.at.ms } else { self.now_ms };
        Done { event: one.id, ms, ahead }
    }

    pub(super) fn events(&self) -> &'a [Event] {
        self.events
    }

    /// The last mark of the present day of which something holds.
    pub(super) fn turn_last(&self, holds: impl Fn(&Event) -> bool) -> Option<Done> {
        let today = self.events.get(self.turn..).unwrap_or_default();
        today.iter().rev().find(|one| holds(one)).map(|one| self.done(one))
    }

    /// A line of the checklist. That of a surface counts over all days.
    pub(super) fn step(&self, key: &str, surface: u32) -> Option<Done> {
        let holds = |one: &Event| one.what == EventOf::Step && one.key == key && one.surface == surface;
        if surface == 0 { self.turn_last(holds) } else { self.latest(holds) }
    }

    pub(super) fn skipped(&self, key: &str, surface: u32) -> bool {
        let holds = |one: &Event| one.what == EventOf::Skip && one.key == key && one.surface == surface;
        if surface == 0 { self.turn_last(holds).is_some() } else { self.events.iter().any(holds) }
    }

    pub(super) fn lift(&self, surface: u32, lift: u32) -> Option<Done> {
        self.latest(|one| one.what == EventOf::Lift && one.surface == surface && one.lift == lift)
    }

    /// Says where the last lift of a surface came before the wait after the one before it was over.
    pub(super) fn early(&self, surface: u32, wait: Minutes, reader: &mut Reader) {
        let lifts =
            self.events.iter().rev().filter(|one| one.what == EventOf::Lift && one.surface == surface);
        let mut marks = lifts.filter(|one| !self.done(one).ahead);
        let Some((last, before)) = marks.next().zip(marks.next()) else { return };
        let gap = (last.at.ms - before.at.ms) / MINUTE_MS;
        // A mark is pressed a little before or after the foam: half a minute is nothing. So is a lift marked twice.
        if last.lift != before.lift && gap < wait.0 - 0.5 {
            let finding = Finding::new(Code::LiftEarly, Part::Event, last.id, "")
                .with("given", reader.figure(Kind::Duration, libm::floor(gap.max(0.0))))
                .with("wait", reader.figure(Kind::Duration, wait.0));
            reader.say(finding);
        }
    }

    /// The mark with the latest instant, over all days; of equal ones the last.
    pub(super) fn latest(&self, holds: impl Fn(&Event) -> bool) -> Option<Done> {
        let mut latest: Option<Done> = None;
        for one in self.events.iter().filter(|one| holds(one)) {
            let done = self.done(one);
            if latest.is_none_or(|before| done.ms >= before.ms) {
                latest =
                    Some(Done { ahead: done.ahead || latest.is_some_and(|before| before.ahead), ..done });
            }
        }
        latest
    }

    /// The same, by what an event is.
    pub(super) fn last_of(&self, holds: fn(EventOf, &str) -> bool) -> Option<Done> {
        self.latest(|one| holds(one.what, &one.key))
    }

    /// How far down the list the last such mark stands; `None` sorts before any.
    pub(super) fn place_of(&self, holds: impl Fn(&Event) -> bool) -> Option<usize> {
        self.events.iter().rposition(holds)
    }

    /// The trigger let go, if nothing was sprayed and no nozzle changed since.
    pub(super) fn idle(&self) -> Option<Done> {
        let still = |one: &&Event| !matches!(one.what, EventOf::Fault | EventOf::KitOff | EventOf::Skip);
        let last = self.events.iter().rev().find(still)?;
        (last.what == EventOf::Idle).then(|| self.done(last))
    }

    /// The instant at which air has been moved for so long since another one: that one and the minutes, longer by each
    /// spell for which the exhaust was off before they were over. None while it is off and they are not over. Without
    /// a mark the exhaust is taken to run, as the checklist asks for it before the spraying; where its line was left
    /// out, it is off until a mark says that it runs.
    pub(super) fn aired(&self, from_ms: f64, minutes: Minutes) -> Option<f64> {
        let mut until = from_ms + minutes.0 * MINUTE_MS;
        let mut off: Option<f64> = None;
        for one in self.events {
            let mark = self.done(one);
            let ms = if mark.ms > from_ms { mark.ms } else { from_ms };
            let on = one.what == EventOf::ExhaustOn || (one.what == EventOf::Step && one.key == AIR);
            let not = one.what == EventOf::ExhaustOff || (one.what == EventOf::Skip && one.key == AIR);
            if not && ms < until {
                off.get_or_insert(ms);
            // A stamp that the clock cannot have shown does not say for how long it was off.
            } else if on && !mark.ahead {
                until += (ms - off.take().unwrap_or(ms)).max(0.0);
            }
        }
        off.is_none().then_some(until)
    }

    /// The newest stamp that can be right.
    pub(super) fn newest_ms(&self) -> Option<f64> {
        let marks = self.events.iter().map(|one| self.done(one)).filter(|done| !done.ahead);
        marks.map(|done| done.ms).reduce(f64::max)
    }

    /// Whether anything was marked since the day began.
    pub(super) fn turn_has_marks(&self) -> bool {
        self.turn < self.events.len()
    }
}
