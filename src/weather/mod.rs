//! The weather ahead: a day's course from its lowest and highest temperature, the sun, what surfaces make of it, and
//! the hours in which the work can be done.
//!
//! Everything here is an estimate. It may turn an hour into "measure first", never one that is outside into one that
//! is inside: the sun on a wall is never counted for a cold surface.

mod day_curve;
mod forecast;
mod heat_plan;
mod sun;
mod surfaces;
#[cfg(test)]
mod tests;
mod window;

#[cfg(test)]
pub(crate) use sun::height as sun_height;

use crate::findings::{Code, Finding};
use crate::foam::{Foam, Window};
use crate::job::{End, Job, Now, Part, Reader};
use crate::measure::{Fahrenheit, Kind, Minutes, SquareFeet, WallMinutes};
use crate::readiness::{moist_air, narrowest};
use day_curve::Course;
use forecast::{Day, Forecast};
use serde::Serialize;
use window::{EDGE_MIN, STEP_MIN, Spans, holds, longest, spans, stretches};

/// What a stretch of the day is good for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Says {
    /// The air is inside the labels' window, and so is the estimate of each surface.
    Inside,
    /// The air is inside; a surface may not be, or the edge of the window is within the error: measure first.
    MeasureFirst,
    /// The air is outside.
    Outside,
}

/// A stretch of a day.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Stretch {
    /// From, in minutes after that day's midnight.
    pub from_min: Minutes,
    /// To.
    pub to_min: Minutes,
    /// What it is good for.
    pub says: Says,
}

/// What kind of surface an estimate is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Facing {
    /// Sheathing, boards, thin steel in the shade: follows the air within half an hour.
    Thin,
    /// The inner face of sheathing in front of a heated room.
    Heated,
    /// Thick masonry or concrete in the shade: swings less, and later.
    Masonry,
}

/// What a kind of surface does on a day.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SurfaceDay {
    /// Which kind.
    pub facing: Facing,
    /// Its coldest, and when, in minutes after midnight.
    pub low_f: Fahrenheit,
    /// When that is.
    pub low_at_min: Minutes,
    /// Its warmest.
    pub high_f: Fahrenheit,
    /// When that is.
    pub high_at_min: Minutes,
    /// From when the estimate is inside the labels' window for surfaces; none where it never is.
    pub from_min: Option<Minutes>,
    /// Until when.
    pub to_min: Option<Minutes>,
}

/// Whether the sun rises on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Sun {
    /// It rises and sets.
    Rises,
    /// It stays up.
    NeverSets,
    /// It stays down.
    NeverRises,
    /// The place is not known; 6 and 18 o'clock stand in.
    NoPlace,
}

/// A day of the forecast.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Ahead {
    /// Its id in the job.
    pub id: u32,
    /// Its date, in days since 1970-01-01.
    pub day: f64,
    /// Its lowest temperature, towards sunrise.
    pub low_f: Fahrenheit,
    /// Its highest.
    pub high_f: Fahrenheit,
    /// The sun.
    pub sun: Sun,
    /// Sunrise in minutes after midnight by the clock on the wall.
    pub sunrise_min: Minutes,
    /// Sunset.
    pub sunset_min: Minutes,
    /// The place that the sun is worked out for, in degrees north,
    pub latitude: Option<f64>,
    /// and east.
    pub longitude: Option<f64>,
    /// What clocks show on that day, in minutes east of UTC.
    pub offset_min: f64,
    /// The lowest of the day before, or what stands in for it.
    pub before_low_f: Fahrenheit,
    /// The highest of the day before.
    pub before_high_f: Fahrenheit,
    /// The lowest of the day after.
    pub next_low_f: Fahrenheit,
    /// Whether the day before and the day after are in the forecast too; where not, this day's own stand in.
    pub neighbors: bool,
    /// The whole day, cut where what it is good for changes. Empty where the air never is inside.
    pub stretches: Vec<Stretch>,
    /// The labels' window for the air: the least,
    pub air_least_f: Fahrenheit,
    /// and the most.
    pub air_most_f: Fahrenheit,
    /// From when the air is inside the labels' window, likely; none where it never is.
    pub air_from_min: Option<Minutes>,
    /// Until when.
    pub air_to_min: Option<Minutes>,
    /// How far both edges may be off, either way.
    pub edge_min: Minutes,
    /// What surfaces do.
    pub surfaces: Vec<SurfaceDay>,
    /// The dew point of the forecast, if it was typed.
    pub dew_f: Option<Fahrenheit>,
    /// Whether the estimate of the coldest kind of surface comes too near to it (below freezing, to the frost point)
    /// while the air is inside.
    pub dew_close: bool,
}

/// Bringing a slab, a wall or sheathing to temperature under a tent: an order of magnitude.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct HeatPlan {
    /// What it has to reach: the labels' least for surfaces.
    pub to_f: Fahrenheit,
    /// What it has now.
    pub from_f: Fahrenheit,
    /// What the air under the tent is held at.
    pub air_f: Fahrenheit,
    /// The air outside.
    pub outside_f: Fahrenheit,
    /// The tent's sheet.
    pub tent_ft2: SquareFeet,
    /// What it takes to make the ground warmer by a degree, in Btu.
    pub takes_btu: f64,
    /// What goes into the ground for each degree that the air is warmer, in Btu per hour.
    pub passes_btu_hr: f64,
    /// What the ground itself takes up, in Btu.
    pub stored_btu: f64,
    /// What goes through the tent, in Btu per hour.
    pub lost_btu_hr: f64,
    /// How long it takes with the air held at the tent's temperature; none where that never does it.
    pub hours: Option<f64>,
    /// The power that it takes, in Btu per hour.
    pub power_btu_hr: Option<f64>,
}

/// The weather ahead.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Weather {
    /// The days of the forecast by date.
    pub days: Vec<Ahead>,
    /// Position in `days` of the day of spraying.
    pub spray_day: Option<u32>,
    /// Whether the time of spraying that the job says lies in a stretch that is inside; none where it is not known.
    pub at_start: Option<Says>,
    /// Tent and heat, where it was asked for.
    pub heat: Option<HeatPlan>,
}

/// The course of one day, to be drawn: made while it is shown. One figure every 15 minutes, from midnight on.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct DayCurve {
    /// Midnight.
    pub from: WallMinutes,
    /// The air, in °F.
    pub air_f: Vec<f64>,
    /// Thin surfaces in front of a heated room; empty where that is not known.
    pub heated_f: Vec<f64>,
    /// Masonry; empty where nobody said that there is any.
    pub masonry_f: Vec<f64>,
}

/// Every kind of surface; what is said of the thin ones is said of the air too.
const FACINGS: [Facing; 3] = [Facing::Thin, Facing::Heated, Facing::Masonry];
/// What is likely, and then both ends of what was typed as a range: the cold and the hot.
const ENDS: [End; 3] = [|band| band.likely, |band| band.low, |band| band.high];
/// How much of the sun a dark wall takes up; from memory.
const DARK: f64 = 0.7;
/// What a sunlit face gives off to air and sky, in W/m²·K; ASHRAE's for summer, from memory.
const SUNLIT_FILM: f64 = 17.0;

/// The forecast, a day each, and the heat plan.
pub fn ahead(job: &Job, foams: &[&Foam], now: Now, reader: &mut Reader) -> Weather {
    let air = narrowest(foams, reader, |foam| foam.air, "air_least", "air_most");
    let surface = narrowest(foams, reader, |foam| foam.surface, "surface_least", "surface_most");
    // These belong to other rooms, which say what is wrong with them; so do the ends of what is a range.
    let mut aside = Reader::new(job.units);
    let read = |end, reader: &mut Reader| Forecast::read(job, now, end, reader);
    let [likely, cold, hot] = ENDS;
    let ends = [read(likely, reader), read(cold, &mut aside), read(hot, &mut aside)];
    let [forecast, ..] = &ends;
    let heat = heat_plan::plan(job, forecast.known.brick, surface.least_f, reader);
    let (spray_day, spray_min) = job.spraying();
    let spread = aside.take(Part::Job, 0, &job.entries, "dew_spread");
    let spread_f = spread.map_or(f64::INFINITY, |spread| spread.value.high);

    let mut days = Vec::with_capacity(forecast.days.len());
    for day in &forecast.days {
        let (faces, neighbors) = forecast.faces(day);
        let mut inside = Vec::new();
        let mut surfaces = Vec::new();
        // Nearer to the dew point than the spread it is as if the label's window ended there.
        let wet_f = day.dew_f.map(|dew| moist_air::frost_point_of(dew).unwrap_or(dew) + spread_f);
        let dry = match wet_f {
            Some(wet_f) if wet_f > surface.least_f.0 => Window { least_f: Fahrenheit(wet_f), ..surface },
            _ => surface,
        };
        let mut dew_close = false;
        for (at, end) in ends.iter().enumerate() {
            // A range whose end crosses the other one is never inside.
            let Some(same) = end.days.iter().find(|same| same.date == day.date) else {
                inside.push(Spans::new());
                continue;
            };
            let (faces, _) = end.faces(same);
            inside.push(spans(&|hour| faces.course.air_f(hour), air));
            for facing in FACINGS {
                if faces.at_f(facing, 0.0).is_none() {
                    continue;
                }
                let of = |hour| faces.at_f(facing, hour).unwrap_or(f64::NAN);
                if at == 0 {
                    surfaces.push(surface_day(facing, &of, &spans(&of, surface)));
                }
                dew_close |= minutes().any(|minute| {
                    wet_f.is_some_and(|wet_f| of(minute / 60.0) < wet_f)
                        && inside.first().is_some_and(|air| holds(air, minute, 0.0))
                });
                inside.push(spans(&of, dry));
            }
            // The last end is the hot one.
            if at == 2 && Some(day.date) == spray_day {
                sunlit(same, &faces.course, forecast, surface.most_f.0, reader);
            }
        }
        let stretches = stretches(&inside);
        let (air_from_min, air_to_min) = inside.first().map_or((None, None), longest);
        days.push(Ahead {
            id: day.id,
            day: day.date,
            low_f: Fahrenheit(day.low_f),
            high_f: Fahrenheit(day.high_f),
            sun: day.light.sun,
            sunrise_min: Minutes(day.light.rise_min),
            sunset_min: Minutes(day.light.set_min),
            latitude: forecast.place.map(|place| place.0),
            longitude: forecast.place.map(|place| place.1),
            offset_min: day.offset_min,
            before_low_f: Fahrenheit(faces.course.before_f.0),
            before_high_f: Fahrenheit(faces.course.before_f.1),
            next_low_f: Fahrenheit(faces.course.next_low_f),
            neighbors,
            stretches,
            air_least_f: air.least_f,
            air_most_f: air.most_f,
            air_from_min,
            air_to_min,
            edge_min: Minutes(EDGE_MIN),
            surfaces,
            dew_f: day.dew_f.map(Fahrenheit),
            dew_close,
        });
    }
    let on_day = spray_day.and_then(|date| days.iter().position(|day| day.day == date));
    let spray = on_day.and_then(|at| days.get(at));
    let at_start = spray.zip(spray_min).map(|(day, minute)| says_at(&day.stretches, minute));
    Weather { spray_day: on_day.and_then(|at| u32::try_from(at).ok()), at_start, days, heat }
}

/// What the day is good for at a minute of it. Where two stretches meet, the worse one counts: a day begins and ends
/// where it is cut.
fn says_at(stretches: &[Stretch], minute: f64) -> Says {
    let meets = |one: &&Stretch| minute >= one.from_min.0 && minute <= one.to_min.0;
    let mut says = None;
    for one in stretches.iter().filter(meets) {
        says = match (says, one.says) {
            (Some(Says::Outside), _) | (_, Says::Outside) => Some(Says::Outside),
            (Some(Says::MeasureFirst), _) | (_, Says::MeasureFirst) => Some(Says::MeasureFirst),
            _ => Some(Says::Inside),
        };
    }
    says.unwrap_or(Says::Outside)
}

/// The minutes of a day that are looked at.
fn minutes() -> impl Iterator<Item = f64> {
    (0..=96).map(|at| f64::from(at) * STEP_MIN)
}

/// The coldest and the warmest of a day, and its longest time inside.
fn surface_day(facing: Facing, of: &dyn Fn(f64) -> f64, inside: &Spans) -> SurfaceDay {
    let (mut low, mut high) = ((f64::INFINITY, 0.0), (f64::NEG_INFINITY, 0.0));
    for minute in minutes() {
        let here = of(minute / 60.0);
        if here < low.0 {
            low = (here, minute);
        }
        if here > high.0 {
            high = (here, minute);
        }
    }
    let (from_min, to_min) = longest(inside);
    SurfaceDay {
        facing,
        low_f: Fahrenheit(low.0),
        low_at_min: Minutes(low.1),
        high_f: Fahrenheit(high.0),
        high_at_min: Minutes(high.1),
        from_min,
        to_min,
    }
}

/// Says how hot a dark wall that faces the sun may get under a clear sky, where that is too hot for a label. The sun
/// is never counted against cold.
fn sunlit(day: &Day, course: &Course, forecast: &Forecast, most_f: f64, reader: &mut Reader) {
    let Some(place) = forecast.place.filter(|_| day.light.sun != Sun::NoPlace) else { return };
    let mut hottest = f64::NEG_INFINITY;
    for minute in minutes() {
        let height = sun::height(day.date, place, day.offset_min, minute);
        let warmer = DARK * sun::on_wall(height, 1.0) / SUNLIT_FILM * 1.8;
        let here = course.air_f(minute / 60.0) + warmer;
        if warmer > 0.0 && here > hottest {
            hottest = here;
        }
    }
    if hottest > most_f {
        let finding = Finding::new(Code::HotInSun, Part::Forecast, day.id, "high")
            .with("given", reader.figure(Kind::Temperature, libm::round(hottest)))
            .with("most", reader.figure(Kind::Temperature, most_f));
        reader.say(finding);
    }
}

/// The course of one day of the forecast.
pub fn curve(job: &Job, id: u32, now: Now) -> Option<DayCurve> {
    let forecast = Forecast::read(job, now, |band| band.likely, &mut Reader::new(job.units));
    let day = forecast.days.iter().find(|day| day.id == id)?;
    let (faces, _) = forecast.faces(day);
    let drawn = |facing| {
        let mut course_f = Vec::new();
        for minute in minutes() {
            course_f.extend(faces.at_f(facing, minute / 60.0));
        }
        course_f
    };
    Some(DayCurve {
        from: WallMinutes(day.date * 1_440.0),
        air_f: drawn(Facing::Thin),
        heated_f: drawn(Facing::Heated),
        masonry_f: drawn(Facing::Masonry),
    })
}
