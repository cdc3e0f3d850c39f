//! The air that a group stands in, with a night set-back, and marching through it.

use super::shells::{NODES, Shells, State};
use crate::measure::Band;

/// The longest that anything is followed, in minutes: 14 days.
pub const LONGEST_MIN: f64 = 14.0 * 1_440.0;

/// The air of a warm room by the clock on the wall, in °F.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// By day.
    pub day: f64,
    /// At night, if it is another.
    pub night: Option<f64>,
    /// When the night begins and ends, in minutes after midnight.
    pub from: f64,
    /// Its end.
    pub to: f64,
}

impl Room {
    /// Air that never changes.
    pub fn steady(day: f64) -> Self {
        Self { day, night: None, from: 0.0, to: 0.0 }
    }

    /// The air at a time by the clock on the wall.
    pub fn at(&self, wall_min: f64) -> f64 {
        let minute = wall_min - libm::floor(wall_min / 1_440.0) * 1_440.0;
        let after = minute >= self.from;
        // Over midnight: after it begins or before it ends. Otherwise both.
        let night = if self.from > self.to { after || minute < self.to } else { after && minute < self.to };
        self.night.filter(|_| night).unwrap_or(self.day)
    }

    /// The warmer of day and night.
    pub fn warmest(&self) -> f64 {
        self.night.map_or(self.day, |night| night.max(self.day))
    }

    /// The colder of day and night.
    pub fn coldest(&self) -> f64 {
        self.night.map_or(self.day, |night| night.min(self.day))
    }
}

/// A room of which each figure may be a range; one end of it.
#[derive(Debug, Clone, Copy)]
pub(super) struct RoomBand {
    pub day: Band<f64>,
    pub night: Option<Band<f64>>,
    pub from: f64,
    pub to: f64,
}

impl RoomBand {
    pub fn end(&self, end: fn(Band<f64>) -> f64) -> Room {
        Room { day: end(self.day), night: self.night.map(end), from: self.from, to: self.to }
    }
}

/// Marches on from one temperature throughout, step by step, until `each` says that it is enough or `most_min` is over.
/// It is given the minutes at the end of the step and what stood before and after it.
#[inline(never)]
pub fn march(
    shells: &Shells,
    start: f64,
    room: &Room,
    from_wall: f64,
    most_min: f64,
    each: &mut dyn FnMut(f64, &State, &State) -> bool,
) {
    let mut state = [start; NODES];
    let mut minutes = 0.0;
    while minutes < most_min {
        minutes += shells.step_min;
        let before = state;
        shells.step(&mut state, room.at(from_wall + minutes));
        if each(minutes, &before, &state) {
            return;
        }
    }
}

/// When a line from `before` to `after`, ending at `minutes` and one step long, meets `limit`.
#[inline(never)]
pub fn meets(minutes: f64, step_min: f64, before: f64, after: f64, limit: f64) -> f64 {
    let share = (after - limit) / (after - before);
    minutes - step_min * crate::measure::held_between(share, 0.0, 1.0)
}
