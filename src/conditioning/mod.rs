//! Bringing kits to temperature: how long a cold cylinder takes in a warm room, when it has to be there, and how
//! long a warm one stays usable outside.
//!
//! The liquid in a cylinder is worked out in shells from its axis to the steel, with the steel, the gap, the carton
//! and the air around it (`cylinder`, `film`, `shells`). How much the liquid stirs itself is the one thing that no
//! table gives: M, the circulation multiplier, 1 for none, 4 likely, 8 for a lot. It makes the band, and a person's
//! own readings narrow it (`learn`).
//!
//! The slow edge is the low end of M with the colder end of each range that was typed; the fast edge is the high end of
//! M with the warmer ends.
//!
//! A time given here is for planning. It is never shorter than the label's rule, and a thermometer on the cylinder
//! decides on the day.

mod cool_down;
mod curves;
pub mod cylinder;
pub mod film;
mod group;
mod hose;
mod learn;
pub mod room;
pub mod shells;
pub mod warm_up;

pub use cool_down::cool;
pub use curves::curves;

use crate::foam::Foam;
use crate::job::{Job, Now, Part, Reader};
use crate::measure::{Band, Fahrenheit, Inches, Minutes, Pounds, WallMinutes};
use group::Setup;
use serde::Serialize;
use warm_up::{Warmed, forward, latest, ready};

/// One cylinder, as it was worked with.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Cylinder {
    /// The word of the generic size; `None` where all three measures were typed.
    pub size: Option<&'static str>,
    /// Whether the size follows from the kits' own weight, nobody having said.
    pub assumed: bool,
    /// Outside diameter.
    pub diameter_in: Inches,
    /// Height.
    pub height_in: Inches,
    /// What is in it.
    pub liquid_lb: Pounds,
}

/// How much the liquid stirs itself: a multiplier on its conductivity.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Circulation {
    /// The range that is counted with: low is slow.
    pub m: Band<f64>,
    /// How many readings taught it; 0: nobody's, the range is that of the model.
    pub readings: u32,
}

/// What decides when a kit is ready.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Decides {
    /// The slow edge of the curve.
    Curve,
    /// The label's hours, counted from entering the warm room.
    Label,
}

/// Warming up.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct WarmUp {
    /// What the liquid has to reach: the least of the labels.
    pub target_f: Fahrenheit,
    /// Until the core first is there, likely; none where this room never brings it there (within 14 days).
    pub likely_min: Option<Minutes>,
    /// The same at the slow edge; never less than likely.
    pub slow_min: Option<Minutes>,
    /// What the label asks for, from entering the warm room.
    pub label_min: Minutes,
    /// What to plan on: the longer of the slow edge and the label. None where no length of time does it; with both hours
    /// known it is the hour of spraying that a night set-back leaves too cold, not the room.
    pub plan_min: Option<Minutes>,
    /// Which of the two that is.
    pub decides: Decides,
    /// When the steel first reads the target, likely, and the core then: a reading of the skin is not the core.
    pub skin_min: Option<Minutes>,
    /// The core at that time.
    pub core_then_f: Option<Fahrenheit>,
    /// The core at that time by the slow edge; never more than likely.
    pub core_then_slow_f: Option<Fahrenheit>,
    /// When spraying begins, by the job.
    pub spray_at: Option<WallMinutes>,
    /// When they have to be in the warm room, so that spraying may begin then: the earlier of what curve and label ask
    /// for. None without a day of spraying, where the room never does it, or once they are in.
    pub in_by: Option<WallMinutes>,
    /// When they are ready, counted from when they came in: with the label's hours over, core and steel are there by the
    /// slow edge, and stay so until spraying begins, or else until now. None before they came in, where they are never
    /// ready, and where they left before.
    pub ready_at: Option<WallMinutes>,
    /// Whether `ready_at`, or else `in_by`, comes too late for the time of spraying that the job says.
    pub late: bool,
    /// The core now, by the slow edge, likely and the fast edge; what was read in the liquid within the last hour stands
    /// for all three. After they left as it was then. None before they came in.
    pub core_now_f: Option<Band<Fahrenheit>>,
    /// The steel at that moment, likely.
    pub skin_now_f: Option<Fahrenheit>,
}

/// Cooling down (or heating up) outside the warm room.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct CoolDown {
    /// Where it starts: the last temperature logged in the warm room, or that room; on the cold side no more than the
    /// core at the slow edge, unless the liquid itself was read.
    pub from_f: Fahrenheit,
    /// The limit that it runs into: the label's least, or its most on the hot side.
    pub limit_f: Fahrenheit,
    /// Whether it is the hot side: air warmer than they are, or they are above the label's most already.
    pub hot: bool,
    /// Until the liquid next to the steel passes the limit: starts to cool. The earlier edge.
    pub starts_min: Option<Minutes>,
    /// Until the mean of the liquid passes it: use by. The earlier edge.
    pub use_by_min: Option<Minutes>,
    /// By the clock, where they have left the room.
    pub starts_at: Option<WallMinutes>,
    /// By the clock, where they have left the room.
    pub use_by: Option<WallMinutes>,
    /// What stands still in the hose passes the limit after this.
    pub hose_min: Option<Minutes>,
}

/// One group of kits that warms.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Conditioning {
    /// Its id in the job.
    pub id: u32,
    /// The cylinder counted with.
    pub cylinder: Option<Cylinder>,
    /// How much its liquid stirs itself.
    pub circulation: Circulation,
    /// Warming up, where start and room are known.
    pub warm_up: Option<WarmUp>,
    /// Cooling down, where the air outside is known, and once they came in what they are themselves.
    pub cool_down: Option<CoolDown>,
}

/// Curves of one group, to be drawn: made while they are shown, and by nothing else. Minutes from the start of each.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct WarmCurves {
    /// Minutes from entering the warm room.
    pub warm_min: Vec<f64>,
    /// The core at the slow edge, in °F.
    pub warm_slow_f: Vec<f64>,
    /// The core, likely.
    pub warm_likely_f: Vec<f64>,
    /// The steel, likely.
    pub warm_skin_f: Vec<f64>,
    /// The air around.
    pub warm_air_f: Vec<f64>,
    /// Minutes from leaving it.
    pub cool_min: Vec<f64>,
    /// The mean of the liquid, likely.
    pub cool_mean_f: Vec<f64>,
    /// The liquid next to the steel, likely.
    pub cool_skin_f: Vec<f64>,
}

/// What the labels of the foams ask for: the narrowest window of the cylinders, and the longest hours in the warm room.
#[derive(Debug, Clone, Copy)]
struct Label {
    least: f64,
    most: f64,
    hours_min: f64,
}

/// The labels of these foams; the table's defaults where the job has none.
fn label(foams: &[&Foam], reader: &mut Reader) -> Label {
    let mut default =
        |name| reader.take(Part::Foam, 0, &[], name).map_or(f64::NAN, |taken| taken.value.likely);
    let none = Label {
        least: default("cylinder_least"),
        most: default("cylinder_most"),
        hours_min: default("conditioning"),
    };
    let one = |foam: &&Foam| Label {
        least: foam.cylinder.least_f.0,
        most: foam.cylinder.most_f.0,
        hours_min: foam.conditioning_min.0,
    };
    let strictest = |known: Label, one: Label| Label {
        least: known.least.max(one.least),
        most: known.most.min(one.most),
        hours_min: known.hours_min.max(one.hours_min),
    };
    foams.iter().map(one).reduce(strictest).unwrap_or(none)
}

/// The hours in the warm room that these foams ask for, in minutes.
pub(crate) fn label_min(foams: &[&Foam], reader: &mut Reader) -> f64 {
    label(foams, reader).hours_min
}

/// Every group of kits that warms, in the job's order.
pub fn groups(job: &Job, foams: &[&Foam], now: Now, reader: &mut Reader) -> Vec<Conditioning> {
    let setups: Vec<Setup> = job.warming.iter().map(|one| Setup::read(job, one, now, reader)).collect();
    let circulation = learn::circulation(&setups);
    let label = label(foams, reader);
    let spray = job.begins().map(|at| at.0);
    let group = |(one, setup): (&crate::job::Warming, &Setup)| {
        let warm_up = warm_up(setup, &circulation, label, now.wall().0, spray);
        Conditioning {
            id: one.id,
            cylinder: Some(setup.cylinder),
            circulation,
            warm_up,
            cool_down: cool_down(setup, &circulation, label, warm_up),
        }
    };
    job.warming.iter().zip(&setups).map(group).collect()
}

/// Warming up.
fn warm_up(
    setup: &Setup,
    circulation: &Circulation,
    label: Label,
    now: f64,
    spray: Option<f64>,
) -> Option<WarmUp> {
    let (starts, rooms) = (setup.start?, setup.room?);
    let target = label.least;
    let inside = setup.inside_min;
    let edge = |end: fn(Band<f64>) -> f64| {
        let (start, room) = (end(starts), rooms.end(end));
        let (shells, most) = setup.shells(end(circulation.m), start, room.day, PARTS);
        (shells, start, room, most)
    };
    let run = |end: fn(Band<f64>) -> f64, from: f64, elapsed: Option<f64>| -> Warmed {
        let (shells, start, room, most) = edge(end);
        forward(&shells, start, &room, from, target, elapsed, most)
    };
    let low: fn(Band<f64>) -> f64 = |band| band.low;
    // With a night set-back it matters at which hour they come in: as late as may be, if a time is wanted.
    let asked = spray.filter(|_| setup.moved_in.is_none());
    let by_hour = asked.filter(|_| rooms.night.is_some());
    let in_time = by_hour.and_then(|spray| {
        let (shells, start, room, most) = edge(low);
        latest(&shells, start, &room, spray, target, label.hours_min, most)
    });
    let slow = match in_time {
        Some(_) => Warmed { core_min: in_time, ..Warmed::default() },
        None => run(low, setup.moved_in.unwrap_or(now), inside),
    };
    // Nothing is in time where the night leaves them too cold at that hour, though by day they get there.
    let fits = by_hour.is_none() || in_time.is_some();
    let before = |minutes: f64| asked.filter(|_| fits).map(|at| at - minutes);
    let in_by = slow.core_min.and_then(|minutes| before(minutes.max(label.hours_min)));
    let from = setup.moved_in.or(in_by).unwrap_or(now);
    let likely = run(|band| band.likely, from, inside);
    // The slow core when the likely steel is there: the run may end there, so it has no target of its own.
    let slow_then = likely.skin_min.zip(likely.core_then).and_then(|(minutes, likely)| {
        let (shells, start, room, most) = edge(low);
        let then = forward(&shells, start, &room, from, f64::INFINITY, Some(minutes), most);
        then.now.map(|(core, _)| core.min(likely))
    });
    let slow_min = slow.core_min.map(|slow| likely.core_min.map_or(slow, |likely| slow.max(likely)));
    let plan = slow_min.filter(|_| fits).map(|slow| slow.max(label.hours_min));
    let in_by = plan.and_then(before);
    // What counts is that they are warm as they leave or as spraying begins, not that they were once on a day before.
    let until = setup.moved_out.unwrap_or(spray.map_or(now, |spray| spray.max(now)));
    let ready = setup.moved_in.zip(plan).and_then(|(came, plan)| {
        let by = |end: fn(Band<f64>) -> f64| {
            let (shells, start, room, _) = edge(end);
            ready(&shells, start, &room, came, target, plan, until - came)
        };
        let minutes = match rooms.night {
            Some(_) => by(low)?.max(by(|band| band.likely)?),
            None => plan,
        };
        Some(came + minutes)
    });
    let ready_at = ready.filter(|ready| setup.moved_out.is_none_or(|left| *ready <= left));
    let plan = plan.filter(|_| ready.is_some() || setup.moved_in.is_none() || setup.moved_out.is_some());
    let late = match (ready_at, in_by) {
        (Some(ready), _) => spray.is_some_and(|spray| ready > spray),
        (None, in_by) => in_by.is_some_and(|by| by < now),
    };
    let fast = || run(|band| band.high, setup.moved_in.unwrap_or(now), inside).now;
    let read =
        setup.last().zip(inside).filter(|(one, now)| one.liquid && now - one.minutes <= READ_COUNTS_MIN);
    let core_now = match (read, slow.now, likely.now) {
        (Some((read, _)), ..) => Some(Band::exactly(read.f)),
        (_, Some((slow, _)), Some((likely, _))) => fast().map(|(fast, _)| Band {
            low: slow.min(fast).min(likely),
            likely,
            high: slow.max(fast).max(likely),
        }),
        _ => None,
    };
    Some(WarmUp {
        target_f: Fahrenheit(target),
        likely_min: likely.core_min.map(Minutes),
        slow_min: slow_min.map(Minutes),
        label_min: Minutes(label.hours_min),
        plan_min: plan.map(Minutes),
        decides: match plan.is_some_and(|plan| plan <= label.hours_min) {
            true => Decides::Label,
            false => Decides::Curve,
        },
        skin_min: likely.skin_min.map(Minutes),
        core_then_f: likely.core_then.map(Fahrenheit),
        core_then_slow_f: slow_then.map(Fahrenheit),
        spray_at: spray.map(WallMinutes),
        in_by: in_by.map(WallMinutes),
        ready_at: ready_at.map(WallMinutes),
        late,
        core_now_f: core_now.map(|core| core.map(Fahrenheit)),
        skin_now_f: likely.now.map(|(_, skin)| Fahrenheit(skin)),
    })
}

/// Steps in the lumped time of a warm-up.
const PARTS: f64 = 64.0;

/// How long a reading of the liquid stands for the core, in minutes: as long as one of a cylinder. Common practice.
const READ_COUNTS_MIN: f64 = 60.0;

/// Cooling down or heating up outside.
fn cool_down(
    setup: &Setup,
    circulation: &Circulation,
    label: Label,
    warm_up: Option<WarmUp>,
) -> Option<CoolDown> {
    let air = setup.out_air?;
    let last = setup.last();
    let surely = last.map(|one| one.f).or_else(|| setup.room.map(|room| room.day.likely))?;
    // Steel or room at a temperature does not mean that the core is. Kits that came in are at their core; where nobody
    // knows it, nothing is said.
    let coldest = match warm_up.and_then(|known| known.core_now_f) {
        _ if last.is_some_and(|one| one.liquid) => surely,
        Some(core) => core.low.0.min(surely),
        None if setup.moved_in.is_some() => return None,
        None => surely,
    };
    // What is above the label's most is outside its window wherever it goes.
    let hot = coldest >= label.least && (air.likely > surely || surely > label.most);
    let (from, limit, air) = match hot {
        true => (surely, label.most, air.high),
        false => (coldest, label.least, air.low),
    };
    let (starts, use_by) = match from < label.least {
        true => (Some(0.0), Some(0.0)),
        false => cool(&setup.body, setup.out_pack, circulation, from, air, (limit, hot)),
    };
    let at = |minutes: Option<f64>| {
        setup.moved_out.zip(minutes).map(|(left, minutes)| WallMinutes(left + minutes))
    };
    let hose_min = if use_by == Some(0.0) { use_by } else { hose::hose(from, air, (limit, hot)) };
    Some(CoolDown {
        from_f: Fahrenheit(from),
        limit_f: Fahrenheit(limit),
        hot,
        starts_min: starts.map(Minutes),
        use_by_min: use_by.map(Minutes),
        starts_at: at(starts),
        use_by: at(use_by),
        hose_min: hose_min.map(Minutes),
    })
}
