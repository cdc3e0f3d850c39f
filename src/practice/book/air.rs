//! Moist air out of the handbook of the heating trade.

use super::super::Topic;
use super::super::formula::{at, figure, share, step};
use super::super::made::{Ask, Making};
use crate::job::ReadingOf;
use crate::measure::{Kind, Units};
use crate::readiness::moist_air::dew_point;

fn reads(m: &mut Making, air: &str, humidity: &str) {
    m.reading(ReadingOf::Air, 10, &[("temperature", air.to_owned())]);
    m.reading(ReadingOf::Humidity, 10, &[("humidity", humidity.to_owned())]);
    m.says("air", air);
    m.says("humidity", format!("{humidity} %"));
}

/// Air of 77 °F at 27.53 %: the vapor in it saturates at 41 °F, by the printed table of saturation pressures.
pub fn saturation(m: &mut Making) {
    // psi at 77 and 41 °F, or Pa at 25 and 5 °C: rows of the table.
    let (air, over_air, degrees, pressures) = match m.job.units {
        Units::Us => {
            ("77 F", 0.459_73, "23 · 41 · 77 · 122 °F", "0.058268 · 0.12656 · 0.45973 · 1.79140 psi")
        }
        Units::Metric => ("25 C", 3_169.7, "−5 · 5 · 25 · 50 °C", "401.74 · 872.6 · 3169.7 · 12351.3 Pa"),
    };
    reads(m, air, "27.53");
    m.says("degrees", degrees);
    m.says("pressures", pressures);
    let full = || figure(over_air, Kind::Number);
    m.ask(
        Ask::new("vapor_pressure", Topic::Temperatures, Kind::Number)
            .of(if m.metric() { "pascal" } else { "psi" })
            .by(full() * share(at("readiness.dew.humidity_pct", Kind::Percent))),
    );
    m.ask(
        Ask::new("dew_point", Topic::Temperatures, Kind::Temperature)
            .within(0.5, 0.0)
            .at("readiness.dew.point_f"),
    );
}

/// Air of 100 °F at 13 %, or of 40 °C at 14 %: two examples, one in each system.
pub fn dry_heat(m: &mut Making) {
    let (air, humidity) = if m.metric() { ("40 C", "14") } else { ("100 F", "13") };
    reads(m, air, humidity);
    let airs: Vec<f64> = match m.metric() {
        true => [36.0, 38.0, 40.0, 42.0].map(|c| c * 1.8 + 32.0).to_vec(),
        false => vec![90.0, 95.0, 100.0, 105.0],
    };
    let humidities = [10.0, 12.0, 15.0, 20.0];
    let mut figures = vec![4.0, 4.0];
    figures.extend(airs.iter().chain(&humidities));
    for air in &airs {
        figures.extend(humidities.iter().map(|humidity| dew_point(*air, *humidity).unwrap_or_default()));
    }
    m.shows("dew_table", 0, &figures);
    m.ask(
        Ask::new("dew_point", Topic::Temperatures, Kind::Temperature)
            .within(1.0, 0.0)
            .at("readiness.dew.point_f"),
    );
    let spread = figure(5.0, Kind::TemperatureStep);
    m.gives("spread", 5.0, Kind::TemperatureStep);
    m.ask(
        Ask::new("least_surface", Topic::Temperatures, Kind::Temperature)
            .within(1.0, 0.0)
            .at("readiness.dew.least_surface_f")
            .by(step("dew_point") + spread.clone())
            .slip("spread_forgotten", step("dew_point"))
            .slip("spread_taken_off", step("dew_point") - spread),
    );
}
