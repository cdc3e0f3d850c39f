//! Cold kits in a warm room: how long the core takes by the curve, what the label asks, and when they have to be in.

use super::super::Topic;
use super::super::formula::{at, figure, step};
use super::super::made::{Ask, Making, NOW, plain};
use super::Scene;
use crate::measure::{Kind, Unit};

pub const SCENE: Scene = Scene { key: "warm_up", levels: &[3], topics: &[Topic::WarmUp], make };

const LABEL: &str = "conditioning.0.warm_up.label_min";
const CORE: &str = "conditioning.0.warm_up.slow_min";
const LIKELY: &str = "conditioning.0.warm_up.likely_min";
const SKIN: &str = "conditioning.0.warm_up.skin_min";
const CORE_THEN: &str = "conditioning.0.warm_up.core_then_f";
const SLOW_THEN: &str = "conditioning.0.warm_up.core_then_slow_f";
const TARGET: &str = "conditioning.0.warm_up.target_f";
/// How far hours read off a curve may be off, in minutes and in percent.
const READ: (f64, f64) = (40.0, 4.0);
const DAY: f64 = 1_440.0;

fn make(m: &mut Making, _level: u8) {
    let cylinder = m.draw.one_of(&["medium", "large", "xl"]).unwrap_or("large");
    let least = m.draw.one_of(&[65, 68, 70]).unwrap_or(70);
    // So cold that core and steel, and the slow core and the likely one, stay far apart.
    let start = m.draw.whole(34, least - 24);
    // Above the least by whole degrees of either scale, or nearly: the hours hang on it.
    let room = least + m.draw.one_of(&[9, 11, 13]).unwrap_or(9);
    let label = 60.0 * f64::from(m.draw.one_of(&[12, 16, 24, 36, 48]).unwrap_or(24));
    let days = m.draw.whole(5, 9);
    // 6:30 to 9:30 in the morning, to the half hour.
    let spray = f64::from(30 * m.draw.whole(13, 19));
    let entries = [
        ("cylinder_least", m.degrees(least)),
        ("cylinder_most", m.degrees(90)),
        ("conditioning", format!("{} h", plain(label / 60.0, 0))),
    ];
    m.foam("F1", &[], &entries);
    let date = libm::floor(NOW.wall().0 / DAY) + f64::from(days);
    m.of_job("spray_date", format!("2026-05-{:02}", 12 + days));
    m.of_job("spray_time", clock(spray));
    let entries = [("cylinder", cylinder.to_owned()), ("start", m.degrees(start)), ("room", m.degrees(room))];
    let group = m.warming(&entries);
    m.says("start", m.degrees(start));
    m.says("room", m.degrees(room));
    m.gives("date", date, Kind::Date);
    m.gives("time", spray, Kind::Clock);
    let foam = m.job.foam;
    m.shows("warming", group, &[]);
    m.shows("foam", foam, &[]);

    let hours = |key| Ask::new(key, Topic::WarmUp, Kind::Duration).units(Unit::Hr, Unit::Hr);
    let minutes = |path| at(path, Kind::Duration);
    let to_hours = 1.0 / 60.0;
    let longer = || step("hours_label").larger(step("hours_core"));
    m.ask(hours("hours_label").within(0.0, 0.0).at(LABEL));
    m.ask(
        Ask::new("core_then", Topic::WarmUp, Kind::Temperature)
            .within(1.5, 0.0)
            .at(CORE_THEN)
            .slip("slow_for_likely", at(SLOW_THEN, Kind::Temperature))
            .slip("skin_for_core", at(TARGET, Kind::Temperature)),
    );
    m.ask(
        hours("hours_core")
            .within(READ.0, READ.1)
            .at(CORE)
            .slip("skin_for_core", minutes(SKIN))
            .slip("likely_for_slow", minutes(LIKELY)),
    );
    m.ask(
        Ask::new("hours_plan", Topic::WarmUp, Kind::Count)
            .by(longer().scaled(to_hours).up())
            .slip("time_rounded_down", longer().scaled(to_hours).down())
            .slip("shorter_of_two", step("hours_label").smaller(step("hours_core")).scaled(to_hours).up())
            .slip("both_added", (step("hours_label") + step("hours_core")).scaled(to_hours).up()),
    );
    let hour = || figure(60.0, Kind::Duration);
    let day = || figure(DAY, Kind::Duration);
    let begins = || figure(spray, Kind::Clock);
    let before = || step("hours_plan") * hour() - figure(spray, Kind::Duration);
    m.ask(
        Ask::new("days_before", Topic::WarmUp, Kind::Count)
            .by((before() / day()).up())
            .slip("time_rounded_down", (before() / day()).down()),
    );
    let in_by = || begins() + step("days_before") * day() - step("hours_plan") * hour();
    m.ask(
        Ask::new("in_room_by", Topic::WarmUp, Kind::Clock)
            .by(in_by())
            .slip("wrong_day_half", in_by() + figure(DAY / 2.0, Kind::Duration))
            .slip("wrong_day_half", in_by() - figure(DAY / 2.0, Kind::Duration)),
    );
}

/// A time of day as a clock gives it: `07:30`.
fn clock(minutes: f64) -> String {
    format!(
        "{hours:0>2}:{minutes:0>2}",
        hours = plain(libm::floor(minutes / 60.0), 0),
        minutes = plain(minutes % 60.0, 0)
    )
}
