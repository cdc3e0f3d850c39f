//! The morning at a crawlspace: readings, dew point, verdict, and the one thing that is wrong.

use super::super::Topic;
use super::super::formula::at;
use super::super::made::{Ask, Making, NOW, change};
use super::trade::spread;
use crate::job::{Now, ReadingOf};
use crate::measure::Kind;
use crate::readiness::moist_air::dew_point;

/// What is wrong, drawn. A student finds it in what is shown.
#[derive(Debug, Clone, Copy)]
pub struct Trouble {
    what: Wrong,
    /// Whether it is the second cylinder, or the second surface.
    second: bool,
}

impl Trouble {
    /// Whether a wall stands twice on the helper's sheet.
    pub fn wall_twice(self) -> bool {
        self.what == Wrong::WallTwice
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Wrong {
    /// A surface nearer to the dew point than it may be.
    NearDew,
    /// A cylinder below its label's window.
    ColdCylinder,
    /// The cylinders were read too long ago.
    Old,
    /// The long wall stands twice on the helper's sheet.
    WallTwice,
}

const TROUBLES: [Wrong; 4] = [Wrong::NearDew, Wrong::ColdCylinder, Wrong::Old, Wrong::WallTwice];
/// The words of the same, in the same order.
const WORDS: &[&str] = &["surface_near_dew", "cylinder_cold", "readings_old", "wall_twice"];
/// Where the two surfaces begin among the checks, behind both cylinders, air and humidity.
const SURFACES: usize = 4;

/// The label's windows, as entries of the foam.
pub fn windows(m: &Making) -> [(&'static str, String); 6] {
    [
        ("cylinder_least", m.degrees(70)),
        ("cylinder_most", m.degrees(90)),
        ("air_least", m.degrees(50)),
        ("air_most", m.degrees(90)),
        ("surface_least", m.degrees(50)),
        ("surface_most", m.degrees(90)),
    ]
}

/// The readings, and what is wrong with them or with the takeoff.
pub fn readings(m: &mut Making) -> Trouble {
    let what = m.draw.one_of(&TROUBLES).unwrap_or(Wrong::NearDew);
    let second = m.draw.heads();
    let air = m.draw.whole(69, 76);
    let humidity = m.draw.whole(55, 66);
    let a = m.draw.whole(74, 80);
    let b = a + m.draw.whole(-3, 3);
    let cold = m.draw.whole(61, 66);
    let (near, warmer) = (m.draw.whole(3, 4), m.draw.whole(0, 2));
    let old = m.draw.whole(75, 170);
    let (fresh, site) = (m.draw.whole(5, 25), m.draw.whole(20, 70));

    let dew = dew_point(f64::from(air), f64::from(humidity)).unwrap_or_default();
    #[allow(clippy::cast_possible_truncation, reason = "a temperature indoors")]
    let least = libm::round(dew + 5.0) as i32;
    // Three degrees over the least or more, unless a surface is what is wrong.
    let good = [least + 3, least + 3 + warmer];
    let surfaces = match (what, second) {
        (Wrong::NearDew, false) => [least - near, least + 3 + warmer],
        (Wrong::NearDew, true) => [least + 3, least - near],
        _ => good,
    };
    let cylinders = match (what, second) {
        (Wrong::ColdCylinder, false) => [cold, b],
        (Wrong::ColdCylinder, true) => [a, cold],
        _ => [a, b],
    };
    let minutes = if what == Wrong::Old { old } else { fresh };
    for (of, degrees) in [ReadingOf::CylinderA, ReadingOf::CylinderB].into_iter().zip(cylinders) {
        let entries = [("temperature", m.degrees(degrees))];
        m.reading(of, minutes, &entries);
    }
    let entries = [("temperature", m.degrees(air))];
    m.reading(ReadingOf::Air, site, &entries);
    m.reading(ReadingOf::Humidity, site, &[("humidity", humidity.to_string())]);
    for degrees in surfaces {
        let entries = [("temperature", m.degrees(degrees))];
        m.reading(ReadingOf::Surface, site, &entries);
    }
    m.of_job("flames_out", "yes");
    m.gives("cylinder_age", 60.0, Kind::Duration);
    m.gives("site_age", 120.0, Kind::Duration);
    spread(m);
    Trouble { what, second }
}

/// The table of dew points that stands beside the question.
pub fn table(m: &mut Making) {
    let airs: Vec<f64> = match m.metric() {
        true => (9..=14).map(|step| f64::from(2 * step) * 1.8 + 32.0).collect(),
        false => (13..=16).map(|step| f64::from(5 * step)).collect(),
    };
    let humidities: Vec<f64> = (4..=8).map(|step| f64::from(10 * step)).collect();
    #[allow(clippy::cast_precision_loss, reason = "a handful of rows")]
    let mut figures = vec![airs.len() as f64, humidities.len() as f64];
    figures.extend(airs.iter().chain(&humidities));
    for air in &airs {
        figures.extend(humidities.iter().map(|humidity| dew_point(*air, *humidity).unwrap_or_default()));
    }
    m.shows("dew_table", 0, &figures);
}

/// Dew point, verdict, and what is wrong.
pub fn ask(m: &mut Making, trouble: Trouble) {
    let dew = Ask::new("dew_point", Topic::Temperatures, Kind::Temperature)
        .within(1.0, 0.0)
        .at("readiness.dew.point_f")
        .slip("spread_in_dew_point", at("readiness.dew.least_surface_f", Kind::Temperature));
    m.ask(dew);

    // What a reader says who does not see what is wrong: the same morning without it.
    let verdict =
        Ask::choice("verdict", Topic::Temperatures, &["go", "hold", "not_read"]).word("readiness.verdict");
    let verdict = match trouble.what {
        Wrong::NearDew => verdict.slip_job("air_for_surface", m, "readiness.verdict", |job| {
            let air = job.readings.iter().find(|one| one.of == ReadingOf::Air).map(|one| one.entries.clone());
            for one in job.readings.iter_mut().filter(|one| one.of == ReadingOf::Surface) {
                one.entries = air.clone().unwrap_or_default();
            }
        }),
        Wrong::ColdCylinder => {
            let warm = m.degrees(78);
            verdict.slip_job("one_in_window_is_enough", m, "readiness.verdict", |job| {
                let cylinders = |of| matches!(of, ReadingOf::CylinderA | ReadingOf::CylinderB);
                for one in job.readings.iter_mut().filter(|one| cylinders(one.of)) {
                    change(&mut one.entries, "temperature", warm.as_str());
                }
            })
        }
        Wrong::Old => verdict.slip_job("age_forgotten", m, "readiness.verdict", |job| {
            for one in &mut job.readings {
                one.taken = Some(Now { ms: NOW.ms - 600_000.0, ..NOW });
            }
        }),
        Wrong::WallTwice => verdict,
    };
    m.ask(verdict);
    // With every reading in order, what is wrong stands on the sheet.
    let paths = [
        format!("readiness.checks.{}.state=outside", SURFACES + usize::from(trouble.second)),
        format!("readiness.checks.{}.state=outside", usize::from(trouble.second)),
        "readiness.checks.0.state=old".to_owned(),
        "readiness.verdict=go".to_owned(),
    ];
    m.ask(Ask::choice("trouble", Topic::Temperatures, WORDS).words(&paths.each_ref().map(String::as_str)));
}
