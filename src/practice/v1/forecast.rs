//! A day of the forecast: from when to when the air is inside the label's window, read off the day's curve, and what the
//! dew point asks of the surfaces.

use super::super::Topic;
use super::super::formula::{at, figure, step};
use super::super::made::{Ask, Making, NOW, all, plain};
use super::Scene;
use super::trade::spread;
use crate::job::ForecastDay;
use crate::measure::{Kind, Unit};

pub const SCENE: Scene = Scene { key: "forecast", levels: &[3], topics: &[Topic::Temperatures], make };

const FROM: &str = "weather.days.1.air_from_min";
const TO: &str = "weather.days.1.air_to_min";
const DEW: &str = "weather.days.1.dew_f";
/// How far an hour read off the curve may be off: a third of what the forecast itself leaves open.
const READ: f64 = 35.0;
const HALF_DAY: f64 = 720.0;

fn make(m: &mut Making, _level: u8) {
    // Anywhere from 36 to 46° north, near the meridian of the clock that is put forward an hour.
    let north = f64::from(m.draw.whole(360, 460)) / 10.0;
    let west = f64::from(m.draw.whole(720, 880)) / 10.0;
    m.of_job("latitude", plain(north, 1));
    m.of_job("longitude", plain(-west, 1));
    m.of_job("spray_date", "2026-05-14");
    // Nights below the window, afternoons inside it, for three days in a row.
    let low = m.draw.whole(36, 50);
    let high = m.draw.whole(67, 78);
    let dew = low - m.draw.whole(1, 6);
    for day in 0..3 {
        let warmer = day - 1 + m.draw.whole(-1, 1);
        let mut entries = vec![
            ("date", format!("2026-05-{}", 13 + day)),
            ("low", m.degrees(low + warmer)),
            ("high", m.degrees(high + warmer)),
        ];
        if day == 1 {
            entries.push(("dew", m.degrees(dew)));
        }
        let id = m.id();
        m.job.forecast.push(ForecastDay { id, entries: all(&entries), offset_min: Some(-240) });
    }
    // Two fifths of the way up from the next night's low or more: the air leaves the window well before midnight.
    let least = m.draw.whole(58, 62).max(low + 3 + 2 * (high - low) / 5);
    let entries = [("air_least", m.degrees(least)), ("air_most", m.degrees(90))];
    m.foam("F1", &[], &entries);
    m.gives("date", libm::floor(NOW.wall().0 / 1_440.0) + 2.0, Kind::Date);
    let edge = 105.0;
    m.gives("edge", edge, Kind::Duration);
    let over_dew = spread(m);
    let over_dew = || figure(over_dew, Kind::TemperatureStep);
    let day = m.job.forecast.get(1).map_or(0, |day| day.id);
    m.shows("forecast", 0, &[]);
    m.shows("day", day, &[]);
    m.shows("foam", m.job.foam, &[]);

    let clock = |key, topic| Ask::new(key, topic, Kind::Clock).within(READ, 0.0);
    let minutes = |value| figure(value, Kind::Duration);
    m.ask(
        clock("air_from", Topic::Temperatures)
            .at(FROM)
            // Where the window is about half a day long, twelve hours off is its other end.
            .slip("end_for_beginning", at(TO, Kind::Clock))
            .slip("wrong_day_half", at(FROM, Kind::Clock) + minutes(HALF_DAY)),
    );
    m.ask(
        clock("air_to", Topic::Temperatures)
            .at(TO)
            .slip("beginning_for_end", at(FROM, Kind::Clock))
            .slip("wrong_day_half", at(TO, Kind::Clock) - minutes(HALF_DAY)),
    );
    m.ask(
        Ask::new("inside_for", Topic::Temperatures, Kind::Duration)
            .units(Unit::Hr, Unit::Hr)
            .within(2.0 * READ, 0.0)
            .by(step("air_to") - step("air_from")),
    );
    m.ask(
        clock("sure_from", Topic::Temperatures)
            .by(step("air_from") + minutes(edge))
            .slip("edge_forgotten", step("air_from"))
            .slip("edge_backward", step("air_from") - minutes(edge)),
    );
    m.ask(
        clock("sure_to", Topic::Temperatures)
            .by(step("air_to") - minutes(edge))
            .slip("edge_forgotten", step("air_to"))
            .slip("edge_backward", step("air_to") + minutes(edge)),
    );
    m.ask(
        Ask::new("least_surface", Topic::Temperatures, Kind::Temperature)
            .within(0.5, 0.0)
            .by(at(DEW, Kind::Temperature) + over_dew())
            .slip("spread_forgotten", at(DEW, Kind::Temperature))
            .slip("spread_taken_off", at(DEW, Kind::Temperature) - over_dew()),
    );
}
