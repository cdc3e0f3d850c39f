//! The days of the forecast as they were typed, by date, and the course of each.

use super::Facing;
use super::day_curve::Course;
use super::sun::{Place, Sunlight, light};
use super::surfaces::{Known, masonry_f};
use crate::findings::{Code, Finding};
use crate::job::{End, Job, Now, Part, Reader};
use crate::measure::Kind;

/// Thick masonry stands about the mean of so many days, the last of them its own.
const DAYS_BACK: f64 = 3.0;

/// A day that is known: its date, lowest and highest.
#[derive(Debug, Clone, Copy)]
pub(super) struct Day {
    pub(super) id: u32,
    pub(super) date: f64,
    pub(super) low_f: f64,
    pub(super) high_f: f64,
    pub(super) dew_f: Option<f64>,
    /// What clocks show on it, in minutes east of UTC.
    pub(super) offset_min: f64,
    pub(super) light: Sunlight,
}

/// What was typed of the weather ahead.
#[derive(Debug)]
pub(super) struct Forecast {
    /// By date, each once.
    pub(super) days: Vec<Day>,
    pub(super) place: Option<Place>,
    pub(super) known: Known,
}

impl Forecast {
    /// `end`: which end of each low and high that was typed as a range.
    pub(super) fn read(job: &Job, now: Now, end: End, reader: &mut Reader) -> Self {
        let mut own = |field| Some(reader.take(Part::Job, 0, &job.entries, field)?.value.likely);
        let (latitude, longitude) = (own("latitude"), own("longitude"));
        let place = latitude.zip(longitude);
        let known = Known::read(job, reader);
        let mut days: Vec<Day> = Vec::new();
        let mut odd_noon = None;
        for typed in &job.forecast {
            let mut need = |field| reader.need(Part::Forecast, typed.id, &typed.entries, field);
            let (date, low, high) = (need("date"), need("low"), need("high"));
            let dew = reader.take(Part::Forecast, typed.id, &typed.entries, "dew");
            let (Some(date), Some(low), Some(high)) = (date, low, high) else { continue };
            let (date, low_f, high_f) = (date.value.likely, end(low.value), end(high.value));
            let found = |code, field| Finding::new(code, Part::Forecast, typed.id, field);
            if low_f > high_f {
                let finding = found(Code::ForecastCrossed, "low")
                    .with("low", reader.figure(Kind::Temperature, low_f))
                    .with("high", reader.figure(Kind::Temperature, high_f));
                reader.say(finding);
                continue;
            }
            let at = days.partition_point(|day| day.date < date);
            if days.get(at).is_some_and(|day| day.date == date) {
                reader.say(found(Code::ForecastTwice, "date"));
                continue;
            }
            let offset_min = f64::from(typed.offset_min.unwrap_or(now.offset_min));
            let (light, odd) = light(date, place, offset_min);
            odd_noon = odd_noon.or(odd);
            let dew_f = dew.map(|dew| dew.value.high);
            days.insert(at, Day { id: typed.id, date, low_f, high_f, dew_f, offset_min, light });
        }
        if let Some(noon) = odd_noon {
            let noon = libm::round(noon - libm::floor(noon / 1_440.0) * 1_440.0);
            let finding = Finding::new(Code::PlaceOffClock, Part::Job, 0, "longitude")
                .with("noon", reader.figure(Kind::Clock, noon));
            reader.say(finding);
        }
        Self { days, place, known }
    }

    /// What a day's temperatures follow from, and whether both its neighbors are there; where not, this day's own
    /// figures stand in for them.
    pub(super) fn faces(&self, day: &Day) -> (Faces, bool) {
        let on = |date: f64| self.days.iter().find(|other| other.date == date);
        let (before, next) = (on(day.date - 1.0), on(day.date + 1.0));
        let day_h = day.light.hours();
        let course = Course {
            low_f: day.low_f,
            high_f: day.high_f,
            next_low_f: next.unwrap_or(day).low_f,
            before_f: before.map_or((day.low_f, day.high_f), |before| (before.low_f, before.high_f)),
            rise_h: day.light.noon_min() / 60.0 - day_h / 2.0,
            day_h,
        };
        let (mut sum, mut count) = (0.0, 0.0);
        for other in &self.days {
            if other.date <= day.date && other.date > day.date - DAYS_BACK {
                sum += (other.low_f + other.high_f) / 2.0;
                count += 1.0;
            }
        }
        let faces = Faces { course, mean_f: sum / count, known: self.known };
        (faces, before.is_some() && next.is_some())
    }
}

/// What the temperatures of a day follow from.
#[derive(Debug, Clone, Copy)]
pub(super) struct Faces {
    pub(super) course: Course,
    mean_f: f64,
    known: Known,
}

impl Faces {
    /// A kind of surface at an hour after midnight, thin ones being as warm as the air; none where the job says nothing
    /// of that kind.
    pub(super) fn at_f(&self, facing: Facing, hour: f64) -> Option<f64> {
        let air_f = self.course.air_f(hour);
        match facing {
            Facing::Thin => Some(air_f),
            Facing::Heated => self.known.heated.map(|(room_f, share)| air_f + (room_f - air_f) * share),
            Facing::Masonry => {
                self.known.masonry.map(|swing| masonry_f(&self.course, self.mean_f, swing, hour))
            }
        }
    }
}
