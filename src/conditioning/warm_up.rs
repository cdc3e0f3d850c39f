//! How long a group takes in its warm room, forward from when it came in, and backward from when it is wanted.

use super::room::{LONGEST_MIN, Room, march, meets};
use super::shells::{NODES, Shells, State, core, skin};

/// What came of a run.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Warmed {
    /// Minutes until the core is at the target.
    pub core_min: Option<f64>,
    /// Minutes until the steel is.
    pub skin_min: Option<f64>,
    /// The core at that moment.
    pub core_then: Option<f64>,
    /// Core and steel after the minutes that were asked for.
    pub now: Option<(f64, f64)>,
}

/// Nearer than this to the room a core is as warm as the room, in °F.
const SETTLED_F: f64 = 0.02;

/// Whether this room can ever bring them to the target and hold it.
fn reaches(room: &Room, start: f64, target: f64) -> bool {
    room.warmest() > target || room.warmest() >= target && start >= target
}

/// Follows a group from `from_wall` on until core and steel are at `target`, and at least for `elapsed` minutes.
pub fn forward(
    shells: &Shells,
    start: f64,
    room: &Room,
    from_wall: f64,
    target: f64,
    elapsed: Option<f64>,
    most_min: f64,
) -> Warmed {
    let mut warmed = Warmed::default();
    let can = reaches(room, start, target);
    if can && start >= target {
        warmed = Warmed { core_min: Some(0.0), skin_min: Some(0.0), core_then: Some(start), now: None };
    }
    // Whole days that nothing remembers are left out: the clock shows the same.
    let asked = elapsed.map(|minutes| {
        let over = libm::ceil((minutes - most_min).max(0.0) / 1_440.0) * 1_440.0;
        (minutes - over).max(0.0)
    });
    if asked.is_some_and(|minutes| minutes <= 0.0) {
        warmed.now = Some((start, start));
    }
    let enough = |warmed: &Warmed| {
        (!can || warmed.core_min.is_some() && warmed.skin_min.is_some())
            && (asked.is_none() || warmed.now.is_some())
    };
    if enough(&warmed) {
        return warmed;
    }
    let step = shells.step_min;
    march(shells, start, room, from_wall, most_min, &mut |minutes, before, after| {
        let met = |of: fn(&[f64; NODES]) -> f64| {
            (can && of(after) >= target).then(|| meets(minutes, step, of(before), of(after), target))
        };
        if warmed.skin_min.is_none()
            && let Some(at) = met(skin)
        {
            let share = (at - minutes) / step + 1.0;
            warmed.skin_min = Some(at);
            warmed.core_then = Some(core(before) + share * (core(after) - core(before)));
        }
        warmed.core_min = warmed.core_min.or_else(|| met(core));
        if let Some(at) = asked.filter(|at| warmed.now.is_none() && *at <= minutes) {
            let share = (at - minutes) / step + 1.0;
            let between = |of: fn(&[f64; NODES]) -> f64| of(before) + share * (of(after) - of(before));
            warmed.now = Some((between(core), between(skin)));
        }
        // As warm as a room that stays as it is: nothing changes any more.
        if room.night.is_none() && (core(after) - room.day).abs() < SETTLED_F && asked.is_some() {
            warmed.now = warmed.now.or(Some((core(after), skin(after))));
        }
        enough(&warmed)
    });
    warmed
}

/// After how many minutes, `least_min` or more, core and steel are at `target` and stay there until `until_min`; where that
/// hour finds them colder, when they are there again.
pub fn ready(
    shells: &Shells,
    start: f64,
    room: &Room,
    from_wall: f64,
    target: f64,
    least_min: f64,
    until_min: f64,
) -> Option<f64> {
    let step = shells.step_min;
    // Whole days that nothing remembers are left out, as above.
    let longest = LONGEST_MIN.max(least_min + 1_440.0);
    let over = libm::ceil((until_min - longest).max(0.0) / 1_440.0) * 1_440.0;
    let until = until_min - over;
    let mut ready = None;
    march(shells, start, room, from_wall, longest + 1_440.0, &mut |minutes, before, after| {
        let above = |state: &State| core(state).min(skin(state)) - target;
        let (was, is) = (above(before), above(after));
        if is < 0.0 {
            ready = None;
        } else if ready.is_none() && minutes >= least_min {
            let at = if was < 0.0 { meets(minutes, step, was, is, 0.0) } else { minutes - step };
            ready = Some(at.max(least_min));
        }
        ready.is_some() && minutes >= until
    });
    // What began on the last of the days begins on each.
    ready.map(|at| if at > until - 1_440.0 { at + over } else { at })
}

/// How many minutes before `at_wall` they have to be in at the latest, so that core and steel are at `target` then; none
/// where no length of time does it. No less is given than what still holds after `least_min`.
///
/// One sweep backward tells the temperature at `at_wall` for every time of coming in: it is a sum over the air of the
/// hours between and over the start, and the sweep makes the weights of both.
pub fn latest(
    shells: &Shells,
    start: f64,
    room: &Room,
    at_wall: f64,
    target: f64,
    least_min: f64,
    most_min: f64,
) -> Option<f64> {
    if !reaches(room, start, target) {
        return None;
    }
    let (mut axis, mut steel) = ([0.0; NODES], [0.0; NODES]);
    *axis.first_mut()? = 1.0;
    *steel.last_mut()? = 1.0;
    // What the air between has brought, and the weight that the start still has, in core and steel.
    let (mut of_core, mut of_steel) = ((0.0, 1.0), (0.0, 1.0));
    let warmest = room.warmest().max(start);
    // The air is never colder than the start: whoever comes in earlier is never colder.
    let settled = room.coldest() >= start;
    let (mut minutes, mut above, mut first) = (0.0, start - target, None);
    loop {
        let least = |with: f64| {
            let (one, two) = (of_core.0 + of_core.1 * with, of_steel.0 + of_steel.1 * with);
            one.min(two) - target
        };
        let before = above;
        above = least(start);
        if above >= 0.0 {
            let at = match minutes > 0.0 && before < 0.0 {
                true => meets(minutes, shells.step_min, before, above, 0.0),
                false => minutes,
            };
            let known = *first.get_or_insert(at);
            if settled || minutes >= least_min {
                return Some(if known >= least_min || before >= 0.0 || settled { known } else { at });
            }
        }
        if minutes >= most_min || least(warmest) < 0.0 {
            return None;
        }
        let air = room.at(at_wall - minutes);
        for (weights, of) in [(&mut axis, &mut of_core), (&mut steel, &mut of_steel)] {
            of.0 += shells.back(weights) * air;
            of.1 = weights.iter().sum();
        }
        minutes += shells.step_min;
    }
}
