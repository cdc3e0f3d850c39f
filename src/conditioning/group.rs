//! One group as entered, in numbers.

use super::Cylinder;
use super::cylinder::{Body, cylinder};
use super::film::{Packed, conductances};
use super::room::{LONGEST_MIN, Room, RoomBand};
use super::shells::{Shells, lumped_min};
use crate::job::{Job, Now, Part, Reader, Warming};
use crate::measure::Band;

/// A temperature that somebody read on a cylinder.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lesson {
    /// Minutes since they came in.
    pub minutes: f64,
    /// Of the liquid; otherwise on the steel.
    pub liquid: bool,
    /// What was read.
    pub f: f64,
}

/// A group as entered.
#[derive(Debug)]
pub(super) struct Setup {
    pub cylinder: Cylinder,
    pub body: Body,
    pub start: Option<Band<f64>>,
    pub room: Option<RoomBand>,
    packed: Packed,
    pub out_air: Option<Band<f64>>,
    pub out_pack: &'static str,
    /// When they came in and left, by the clock on the wall.
    pub moved_in: Option<f64>,
    pub moved_out: Option<f64>,
    /// Minutes from coming in to leaving, or to now; none before.
    pub inside_min: Option<f64>,
    log: Vec<Lesson>,
}

impl Setup {
    /// Reads a group. Start and room have to be there once anything else is.
    pub fn read(job: &Job, group: &Warming, now: Now, reader: &mut Reader) -> Self {
        let cylinder = cylinder(job, group, reader);
        let begun = group.moved_in.is_some() || group.entries.iter().any(|one| !one.text.trim().is_empty());
        let entries = &group.entries;
        let mut number = |name, needed: bool| {
            let taken = match needed && begun {
                true => reader.need(Part::Warming, group.id, entries, name),
                false => reader.take(Part::Warming, group.id, entries, name),
            };
            taken.map(|taken| taken.value)
        };
        let (start, day) = (number("start", true), number("room", true));
        let (night, from, to) =
            (number("night", false), number("night_from", false), number("night_to", false));
        let out_air = number("out_air", false);
        let room = day.map(|day| {
            let likely = |time: Option<Band<f64>>| time.map_or(0.0, |time| time.likely);
            RoomBand { day, night, from: likely(from), to: likely(to) }
        });
        let mut word = |name| reader.choice(Part::Warming, group.id, entries, name).unwrap_or("carton");
        let (pack, crowded, out_pack) = (word("pack"), word("crowded"), word("out_pack"));
        word("out_place");
        let blocked = match crowded {
            "half" => 0.5,
            "three_quarters" => 0.75,
            _ => 0.0,
        };
        let until = group.moved_out.unwrap_or(now).ms.min(now.ms);
        let inside_min = group.moved_in.map(|came| ((until - came.ms) / 60_000.0).max(0.0));
        let mut log = Vec::new();
        for one in &group.log {
            let mut take = |name| reader.take(Part::WarmReading, one.id, &one.entries, name);
            let (skin, liquid) = (take("skin"), take("liquid"));
            let Some((taken, came)) = one.taken.zip(group.moved_in) else { continue };
            if !(taken.ms >= came.ms && taken.ms <= until) {
                continue;
            }
            let minutes = (taken.ms - came.ms) / 60_000.0;
            for (liquid, read) in [(false, skin), (true, liquid)] {
                log.extend(read.map(|read| Lesson { minutes, liquid, f: read.value.likely }));
            }
        }
        let Cylinder { diameter_in, height_in, liquid_lb, .. } = cylinder;
        let wall = |at: Option<Now>| at.map(|at| at.wall().0);
        Self {
            cylinder,
            body: Body::new(diameter_in.0, height_in.0, liquid_lb.0),
            start,
            room,
            packed: Packed { pack, blocked },
            out_air,
            out_pack,
            moved_in: wall(group.moved_in),
            moved_out: wall(group.moved_out),
            inside_min,
            log,
        }
    }

    /// Likely start and room.
    pub fn likely(&self) -> Option<(f64, Room)> {
        Some((self.start?.likely, self.room?.end(|band| band.likely)))
    }

    /// When they came in, by the clock on the wall; the wall's beginning where they did not.
    pub fn from(&self) -> f64 {
        self.moved_in.unwrap_or_default()
    }

    /// What was read inside, where start and room are known to compare it with: not what nothing is followed to.
    pub fn lessons(&self) -> impl Iterator<Item = &Lesson> {
        let known = self.start.is_some() && self.room.is_some();
        self.log.iter().filter(move |one| known && one.minutes <= LONGEST_MIN)
    }

    /// The last that was read inside; of liquid and steel read together the liquid.
    pub fn last(&self) -> Option<&Lesson> {
        self.log.iter().reduce(|known, one| if one.minutes >= known.minutes { one } else { known })
    }

    /// The shells in the warm room, and how long it is worth following them. A step is the lumped time ÷ `parts`, 320 ÷
    /// `parts` minutes at the most: hours come out too long by less than one in 2 × `parts`, late rather than early.
    #[inline(never)]
    pub fn shells(&self, m: f64, start: f64, air: f64, parts: f64) -> (Shells, f64) {
        let ways = conductances(&self.body, self.packed, start, air);
        let lumped = lumped_min(&self.body, ways);
        let step = (lumped / parts).min(320.0 / parts);
        (Shells::new(&self.body, ways, m, step), (lumped * 40.0).min(LONGEST_MIN))
    }
}
