//! The hours of a day in which a temperature is inside a window, and what the stretches of the day are good for.

use super::{Says, Stretch};
use crate::foam::Window;
use crate::measure::{Minutes, held_between};

/// How far an edge may be off either way, in minutes: an hour and a half to two, the forecast's own error included.
pub(super) const EDGE_MIN: f64 = 105.0;
/// A sample every so many minutes; between two the course crosses an edge once or not at all.
pub(super) const STEP_MIN: f64 = 15.0;
const DAY_MIN: f64 = 1_440.0;

/// From when to when a course is inside, in minutes after midnight; on beyond what was looked at where it has no edge.
pub(super) type Spans = Vec<(f64, f64)>;

/// When a course is inside a window, from one edge's width before midnight to one after the next.
pub(super) fn spans(course: &dyn Fn(f64) -> f64, window: Window) -> Spans {
    let (least, most) = (window.least_f.0, window.most_f.0);
    let inside = |value: f64| value >= least && value <= most;
    let mut spans = Spans::new();
    let mut at = -EDGE_MIN;
    let mut value = course(at / 60.0);
    let mut from = inside(value).then_some(f64::NEG_INFINITY);
    while at < DAY_MIN + EDGE_MIN {
        let next = course((at + STEP_MIN) / 60.0);
        if inside(next) != inside(value) {
            // By halving: the last minute that is as the sample before.
            let (mut before, mut half) = (at, STEP_MIN / 2.0);
            while half > 1e-7 {
                if inside(course((before + half) / 60.0)) == inside(value) {
                    before += half;
                }
                half /= 2.0;
            }
            match from.take() {
                Some(from) => spans.push((from, before)),
                None => from = Some(before),
            }
        }
        (at, value) = (at + STEP_MIN, next);
    }
    if let Some(from) = from {
        spans.push((from, f64::INFINITY));
    }
    spans
}

/// The longest of them within the day.
pub(super) fn longest(spans: &Spans) -> (Option<Minutes>, Option<Minutes>) {
    let mut best = (0.0, 0.0);
    for (from, to) in spans {
        let (from, to) = (held_between(*from, 0.0, DAY_MIN), held_between(*to, 0.0, DAY_MIN));
        if to - from > best.1 - best.0 {
            best = (from, to);
        }
    }
    let known = best.1 > best.0;
    (known.then_some(Minutes(best.0)), known.then_some(Minutes(best.1)))
}

/// Whether a minute lies inside, so far from each edge.
pub(super) fn holds(spans: &Spans, minute: f64, margin: f64) -> bool {
    spans.iter().any(|(from, to)| minute >= from + margin && minute <= to - margin)
}

/// The day, cut where what it is good for changes, from the spans of the air and then of each surface; empty where the
/// air never is inside. What surfaces do can only
/// turn "inside" into "measure first".
pub(super) fn stretches(spans: &[Spans]) -> Vec<Stretch> {
    let Some(air) = spans.first() else { return Vec::new() };
    let mut cuts = vec![DAY_MIN];
    for one in spans {
        for (from, to) in one {
            for cut in [*from, from + EDGE_MIN, to - EDGE_MIN, *to] {
                if cut > 0.0 && cut < DAY_MIN {
                    cuts.insert(cuts.partition_point(|known| *known < cut), cut);
                }
            }
        }
    }
    let mut day: Vec<Stretch> = Vec::new();
    let mut from = 0.0;
    for to in cuts {
        let middle = (from + to) / 2.0;
        let says = if !holds(air, middle, 0.0) {
            Says::Outside
        } else if spans.iter().all(|spans| holds(spans, middle, EDGE_MIN)) {
            Says::Inside
        } else {
            Says::MeasureFirst
        };
        match day.last_mut() {
            Some(last) if last.says == says => last.to_min = Minutes(to),
            _ if to > from => day.push(Stretch { from_min: Minutes(from), to_min: Minutes(to), says }),
            _ => {}
        }
        from = to;
    }
    if day.iter().all(|one| one.says == Says::Outside) {
        day.clear();
    }
    day
}
