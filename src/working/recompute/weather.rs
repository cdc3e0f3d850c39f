//! The hours of a day and the heat plan, by other ways than the room's own: what the room solves is searched here.

use super::Given;
use serde_json::Value;
use std::f64::consts::PI;

pub(super) fn formula(code: &str) -> Option<fn(&Given) -> Value> {
    Some(match code {
        "sunrise" => |given| horizon(given, -720.0).into(),
        "sunset" => |given| horizon(given, 720.0).into(),
        "air_from" => |given| longest(given).0.into(),
        "air_to" => |given| longest(given).1.into(),
        "heat_stored" => |given| (given.one(0) * (given.one(2) - given.one(1)).max(0.0)).into(),
        "heat_hours" => |given| {
            let (takes, passes, air, from, to) =
                (given.one(0), given.one(1), given.one(2), given.one(3), given.one(4));
            if from >= to {
                0.0.into()
            } else {
                (takes / passes * libm::log((air - from) / (air - to))).into()
            }
        },
        "heat_lost" => |given| (1.2 * given.one(0) * (given.one(1) - given.one(2)).max(0.0)).into(),
        "heat_power" => |given| {
            let (lost, stored, hours) = (given.one(0), given.one(1), given.one(2));
            (if hours > 0.0 { lost + stored / hours } else { lost }).into()
        },
        _ => return None,
    })
}

/// Halves a stretch of minutes down to where a condition turns.
fn turns(mut from: f64, mut to: f64, holds: impl Fn(f64) -> bool) -> f64 {
    let start = holds(from);
    for _ in 0..60 {
        let middle = f64::midpoint(from, to);
        if holds(middle) == start { from = middle } else { to = middle }
    }
    to
}

/// The minute at which the sun stands 0.833° under the horizon, so far to one side of noon: from its height, where
/// the room works the hour angle out.
fn horizon(given: &Given, side: f64) -> f64 {
    let (day, north, east, offset) = (given.one(0), given.one(1), given.one(2), given.one(3));
    let noon = 720.0 - 4.0 * east + offset;
    let up = |minute: f64| {
        crate::weather::sun_height(day, (north, east), offset, minute) > libm::sin((-0.833_f64).to_radians())
    };
    turns(noon, noon + side, up)
}

/// The air at an hour, by the three formulas as Parton and Logan's form is written down, and the longest time inside.
fn longest(given: &Given) -> (f64, f64) {
    let inputs: Vec<f64> = (0..9).map(|at| given.one(at)).collect();
    let [low, high, rise, set, before_low, before_high, next_low, least, most] = inputs[..] else {
        panic!("nine inputs")
    };
    let day = ((set - rise) / 60.0).clamp(4.0, 22.0);
    let rise = f64::midpoint(rise, set) / 60.0 - day / 2.0;
    let set = rise + day;
    let sine = |low: f64, high: f64, hour: f64| {
        low + (high - low) * libm::sin(PI * (hour - rise - 0.3) / (day + 2.0 * (2.0 - 0.3)))
    };
    let night = |sunset: f64, to: f64, dark: f64| {
        let (end, here) = (libm::exp(-2.0), libm::exp(-2.0 * (dark / (24.0 - day + 0.3)).min(1.0)));
        (to - sunset * end + (sunset - to) * here) / (1.0 - end)
    };
    let inside = |minute: f64| {
        let hour = minute / 60.0;
        let air = if hour > set {
            night(sine(low, high, set), next_low, hour - set)
        } else if hour >= rise + 0.3 {
            sine(low, high, hour)
        } else if hour + 24.0 < set {
            sine(before_low, before_high, hour + 24.0)
        } else {
            night(sine(before_low, before_high, set), low, hour + 24.0 - set)
        };
        air >= least && air <= most
    };
    let (mut best, mut from) = ((0.0, 0.0), 0.0);
    for minute in (1..=1_440).map(f64::from) {
        let (before, here) = (inside(minute - 1.0), inside(minute));
        let edge = || turns(minute - 1.0, minute, inside);
        if !before && here {
            from = edge();
        }
        let end = if before && !here {
            edge()
        } else if here && minute == 1_440.0 {
            minute
        } else {
            continue;
        };
        if end - from > best.1 - best.0 {
            best = (from, end);
        }
    }
    best
}
