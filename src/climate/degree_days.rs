//! Degree-days → climate zone, by the thresholds of either edition.

use super::Zone;
use crate::job::{Job, Part, Reader};
use serde::Serialize;

/// What typed degree-days say of the zone, by the thresholds of either map.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ByDegreeDays {
    /// By the thresholds up to 2018; `None` where they name a zone that the United States do not have.
    pub up_to_2018: Option<Zone>,
    /// By those of 2021.
    pub from_2021: Option<Zone>,
}

/// Classifies a job's typed degree-days; `None` while one of them or the moisture region is missing. Zones 7 and 8
/// need no moisture region.
///
/// In words, zones 1 and 2 by cooling degree-days alone: above 9000 and above 6300 (base 50 °F). Then up to 2018
/// (2018 Table R301.3(2), read): heating degree-days (base 65 °F) above 12 600, 9000, 7200 and 5400 are zones 8, 7,
/// 6 and 5; what is left is 3 where cooling is above 4500, else 4; marine, 4 where heating is above 3600, else 3.
/// From 2021 (as public sources retell it): by heating alone, 3 up to 3600 and 4 up to 5400; cooling above 10 800
/// is zone 0, which the United States do not have. The list of counties governs: this only says what a climate is.
pub fn by_degree_days(job: &Job, reader: &mut Reader) -> Option<ByDegreeDays> {
    let mut days = |field| reader.take(Part::Job, 0, &job.entries, field).map(|taken| taken.value.likely);
    let (heating, cooling) = (days("hdd65"), days("cdd50"));
    let region = reader.choice(Part::Job, 0, &job.entries, "moist_region");
    classify(heating?, cooling?, region)
}

fn classify(heating: f64, cooling: f64, region: Option<&str>) -> Option<ByDegreeDays> {
    let by_heating = [12_600.0, 9_000.0, 7_200.0, 5_400.0, 3_600.0];
    let by_heating = 8 - by_heating.iter().filter(|least| heating <= **least).count();
    let (older, newer) = match (cooling, region) {
        _ if cooling > 10_800.0 => (1, 0),
        _ if cooling > 9_000.0 => (1, 1),
        _ if cooling > 6_300.0 => (2, 2),
        (_, Some("c")) => (by_heating, by_heating),
        _ if by_heating > 4 => (by_heating, by_heating),
        _ if cooling > 4_500.0 => (3, by_heating),
        _ => (4, by_heating),
    };
    let zone = |number: usize| {
        let at = Zone::all().find(|zone| {
            usize::from(zone.number()) == number
                && zone.letter().is_none_or(|letter| region.is_some_and(|said| said.starts_with(letter)))
        });
        (number > 6 || region.is_some()).then_some(at)
    };
    Some(ByDegreeDays { up_to_2018: zone(older)?, from_2021: zone(newer)? })
}

#[cfg(test)]
pub(super) fn classified(heating: f64, cooling: f64, region: &str) -> Option<[Option<&'static str>; 2]> {
    let found = classify(heating, cooling, (!region.is_empty()).then_some(region))?;
    Some([found.up_to_2018, found.from_2021].map(|zone| zone.map(Zone::name)))
}
