//! A depth in equal lifts: how many the label allows, how thick each is, how long the waits take.

use super::super::Topic;
use super::super::formula::{at, figure, number, step};
use super::super::made::{Ask, Making};
use super::Scene;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "lifts", levels: &[1], topics: &[Topic::Lifts], make };

const DEPTH: &str = "surfaces.0.lifts.of_in";
const LARGEST: &str = "surfaces.0.lifts.largest_in";
const COUNT: &str = "surfaces.0.lifts.count";
const EACH: &str = "surfaces.0.lifts.each_in";
const WAIT: &str = "surfaces.0.lifts.label_min";
const WAITS: &str = "surfaces.0.lifts.waits_min";

/// A label's largest lift, and three waits. None is shorter than what the core asks for by itself for a lift of that
/// thickness, a quarter of an hour or the time that it takes to cool: the label governs, and stands on the card.
const LABELS: [(f64, [i32; 3]); 4] =
    [(0.75, [15, 20, 25]), (1.0, [15, 20, 30]), (1.5, [40, 45, 60]), (2.0, [60, 75, 90])];

/// A thirty-second of an inch: what a probe can tell.
const PROBE_IN: f64 = 1.0 / 32.0;

fn make(m: &mut Making, _level: u8) {
    let (largest, waits) = m.draw.one_of(&LABELS).unwrap_or_default();
    let wait = m.draw.one_of(&waits).unwrap_or_default();
    // 2 to 5 in, of thick lifts 2½ to 5½ in: two lifts at least.
    let halves = m.draw.whole(4, 10) + i32::from(largest > 1.0);
    let spraying = f64::from(m.draw.whole(6, 18));
    let ft2 = f64::from(m.draw.whole(60, 180));
    let depth = m.tape(f64::from(halves) / 2.0, true);

    let entries = [("largest_lift", m.tape(largest, true)), ("wait", format!("{wait} min"))];
    m.foam("F1", &[], &entries);
    let entries = [("area", m.area(ft2)), ("depth", depth.clone())];
    m.surface(Shape::TypedArea, &entries);
    m.says("depth", depth);
    m.gives("spraying", spraying, Kind::Duration);
    let foam = m.job.foam;
    m.shows("foam", foam, &[]);

    let deep = || at(DEPTH, Kind::Length);
    let wait = || at(WAIT, Kind::Duration);
    let each = || figure(spraying, Kind::Duration);
    let needed = || (deep() / at(LARGEST, Kind::Length)).up();
    m.ask(
        Ask::new("lifts", Topic::Lifts, Kind::Count)
            .at(COUNT)
            .by(needed())
            .slip("one_lift_more", needed() + number(1.0)),
    );
    m.ask(
        Ask::new("lift_each", Topic::Lifts, Kind::Length)
            .short()
            .within(PROBE_IN, 0.5)
            .at(EACH)
            .by(deep() / step("lifts"))
            .slip("full_lifts", at(LARGEST, Kind::Length)),
    );
    m.ask(
        Ask::new("wait_total", Topic::Lifts, Kind::Duration)
            .at(WAITS)
            .by(wait() * (step("lifts") - number(1.0)))
            .slip("wait_after_last", wait() * step("lifts")),
    );
    m.ask(
        Ask::new("first_to_last", Topic::Lifts, Kind::Duration)
            .by(each() * step("lifts") + step("wait_total"))
            .slip("waits_forgotten", each() * step("lifts"))
            .slip("wait_after_last", each() * step("lifts") + wait() * step("lifts")),
    );
}
