//! Earlier rounds of readings beside the present one: what each spot did over time, and which of two things brought a
//! surface nearer to the dew point.
//!
//! Rounds are drawn and never count: the verdict rests on `job.readings` alone.

use super::moist_air::dew_point;
use super::readings::field;
use super::spots::same_name;
use crate::job::{Job, Part, Reader, ReadingOf, SiteReading};
use serde::Serialize;

/// Readings of one round lie at most this far apart: 15 minutes. This tool's own mark, without a source.
const SAME_ROUND_MS: f64 = 900_000.0;
/// What a dew point may be off for each percent of a meter's error in humidity, in °F: 0.3 to 0.5 at 60 to 90 °F. With
/// one degree for each degree of error in the air, a meter of ±5 % and ±1 °F is good to ±3 °F.
const DEW_FOR_PCT: f64 = 0.4;

/// One reading of a series.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Point {
    /// When, in ms since 1970 UTC.
    pub ms: f64,
    /// Degrees Fahrenheit, percent of humidity or wood moisture, miles per hour of wind; of a range its middle.
    pub value: f64,
}

/// What one spot did.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Series {
    /// What was read; dew points that follow from air and humidity are among them.
    pub of: ReadingOf,
    /// The spot's name.
    pub name: String,
    /// Its readings, oldest first.
    pub points: Vec<Point>,
}

/// Which of two things moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Moved {
    /// The air took up moisture.
    AirWetter,
    /// The surface got colder.
    SurfaceColder,
    /// The surface got warmer or the air drier: it is better than it was.
    Better,
    /// Neither moved by more than the meters' error.
    Neither,
}

/// Which reading is to blame for a surface's nearness to the dew point.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Blame {
    /// The spot.
    pub name: String,
    /// What moved most since the first round.
    pub moved: Moved,
    /// How far the dew point rose since, in °F.
    pub dew_rose_f: f64,
    /// How far the surface fell since, in °F.
    pub surface_fell_f: f64,
    /// How far it is above the dew point now.
    pub above_f: f64,
}

/// Earlier rounds and the present one.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Rounds {
    /// A series for each spot that was read more than once.
    pub series: Vec<Series>,
    /// For each surface that was read in an earlier round and in this one.
    pub blame: Vec<Blame>,
    /// The surfaces of this round from the coldest up, by their names.
    pub coldest: Vec<String>,
}

/// The rounds of a job: what was read in earlier ones and in the present one. Nothing of it counts for the verdict.
///
/// A reading without a time, or one that cannot be understood, is in no series. Air and humidity read within a quarter
/// of an hour of each other give a dew point; of several readings of the air the warmest counts, as for the verdict.
pub fn rounds(job: &Job) -> Rounds {
    // What cannot be read of the present round is said by the verdict; earlier rounds count for nothing.
    let mut quiet = Reader::new(job.units);
    let mut read = |one: &SiteReading| {
        let taken = quiet.take(Part::Reading, one.id, &one.entries, field(one.of))?;
        Some(taken.value.likely)
    };
    let mut all: Vec<Series> = Vec::new();
    let mut coldest: Vec<(f64, String)> = Vec::new();
    for (at, one) in job.rounds.iter().chain(&job.readings).enumerate() {
        let Some(value) = read(one) else { continue };
        let name = one.name.trim();
        if at >= job.rounds.len() && one.of == ReadingOf::Surface {
            let place = coldest.partition_point(|known| known.0 <= value);
            coldest.insert(place, (value, name.to_owned()));
        }
        if let Some(ms) = one.taken.map(|taken| taken.ms).filter(|ms| ms.is_finite()) {
            keep(&mut all, one.of, name, Point { ms, value });
        }
    }
    dew_points(&mut all);
    let blame = blames(job, &all);
    all.retain(|series| series.points.len() > 1);
    Rounds { series: all, blame, coldest: coldest.into_iter().map(|(_, name)| name).collect() }
}

/// Puts a point into its series, by its time; the same reading kept twice is one.
fn keep(all: &mut Vec<Series>, of: ReadingOf, name: &str, point: Point) {
    let known = all.iter().position(|series| series.of == of && same_name(&series.name, name));
    let at = known.unwrap_or(all.len());
    if known.is_none() {
        all.push(Series { of, name: name.to_owned(), points: Vec::new() });
    }
    let Some(series) = all.get_mut(at).filter(|series| !series.points.contains(&point)) else { return };
    let place = series.points.partition_point(|before| before.ms <= point.ms);
    series.points.insert(place, point);
}

/// The points of every series of a kind that lie within a round of an instant.
fn near(all: &[Series], of: ReadingOf, ms: f64) -> Vec<Point> {
    let mut found = Vec::new();
    for series in all.iter().filter(|series| series.of == of) {
        for point in &series.points {
            if (point.ms - ms).abs() <= SAME_ROUND_MS {
                found.push(*point);
            }
        }
    }
    found
}

/// The dew points that follow from humidity and the warmest air of the same round.
fn dew_points(all: &mut Vec<Series>) {
    let mut found = Vec::new();
    for series in all.iter().filter(|series| series.of == ReadingOf::Humidity) {
        for point in &series.points {
            let mut warmest: Option<f64> = None;
            for air in near(all, ReadingOf::Air, point.ms) {
                warmest = Some(warmest.map_or(air.value, |known| known.max(air.value)));
            }
            if let Some(value) = warmest.and_then(|air| dew_point(air, point.value)) {
                found.push(Point { ms: point.ms, value });
            }
        }
    }
    for point in found {
        keep(all, ReadingOf::DewPoint, "", point);
    }
}

/// The dew point of the round to which an instant belongs: the nearest in time, and of equally near ones the higher.
fn dew_near(all: &[Series], ms: f64) -> Option<f64> {
    let mut nearest: Option<(f64, f64)> = None;
    for point in near(all, ReadingOf::DewPoint, ms) {
        let off = (point.ms - ms).abs();
        if nearest.is_none_or(|known| off < known.0 || (off <= known.0 && point.value > known.1)) {
            nearest = Some((off, point.value));
        }
    }
    nearest.map(|known| known.1)
}

/// For each surface that was read in an earlier round and in this one.
fn blames(job: &Job, all: &[Series]) -> Vec<Blame> {
    let mut quiet = Reader::new(job.units);
    let mut error = |name: &str| {
        let own = quiet.take(Part::Job, 0, &job.entries, name);
        own.or_else(|| quiet.take(Part::Job, 0, &[], name)).map_or(0.0, |taken| taken.value.high)
    };
    let surface_error = error("meter_temp_error");
    let dew_error = surface_error + DEW_FOR_PCT * error("meter_rh_error");
    let one = |series: &Series| {
        let (first, now) = (series.points.first()?, series.points.last()?);
        let dew = dew_near(all, now.ms)?;
        let dew_rose = dew - dew_near(all, first.ms)?;
        let surface_fell = first.value - now.value;
        Some(Blame {
            name: series.name.clone(),
            moved: moved(dew_rose, surface_fell, dew_error, surface_error),
            dew_rose_f: dew_rose,
            surface_fell_f: surface_fell,
            above_f: now.value - dew,
        })
    };
    let listed = |list: &[SiteReading], series: &Series, point: Option<&Point>| {
        let is = |one: &SiteReading| {
            one.of == ReadingOf::Surface
                && same_name(one.name.trim(), &series.name)
                && one.taken.map(|taken| taken.ms) == point.map(|point| point.ms)
        };
        list.iter().any(is)
    };
    let mut found = Vec::new();
    for series in all.iter().filter(|series| series.of == ReadingOf::Surface && series.points.len() > 1) {
        if listed(&job.rounds, series, series.points.first())
            && listed(&job.readings, series, series.points.last())
        {
            found.extend(one(series));
        }
    }
    found
}

/// What moved most of what moved by more than the meters' error.
fn moved(dew_rose: f64, surface_fell: f64, dew_error: f64, surface_error: f64) -> Moved {
    let nearer = dew_rose + surface_fell > 0.0;
    let wetter = nearer && dew_rose > dew_error;
    let colder = nearer && surface_fell > surface_error;
    if wetter && (dew_rose >= surface_fell || !colder) {
        Moved::AirWetter
    } else if colder {
        Moved::SurfaceColder
    } else if !nearer && (-dew_rose > dew_error || -surface_fell > surface_error) {
        Moved::Better
    } else {
        Moved::Neither
    }
}

#[cfg(test)]
mod tests;
