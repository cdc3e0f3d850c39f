//! The sun by the low-precision equations of the National Oceanic and Atmospheric Administration (their calculation
//! sheet, after Meeus, *Astronomical Algorithms*), worked out again at the event itself: against a full solar position
//! algorithm rise and set are within a quarter of a minute, which air and horizon do not let anybody see.

use super::Sun;
use crate::measure::angle::{cosine, sine, tangent};
use crate::measure::held_between;

/// The center of the sun stands this far from the zenith as its upper edge comes up: half its width and 34′ of air.
const ZENITH_DEG: f64 = 90.833;
/// An event is worked out again so many times, with what the sky is then.
const PASSES: u32 = 4;
/// Noon of 2000-01-01, in days since 1970-01-01.
const J2000: f64 = 10_957.5;
/// By a clock that fits the place the sun stands highest between these, in minutes after midnight: an hour of summer
/// time and wide zones included. A longitude with the wrong sign is hours off.
const NOON_MIN: core::ops::RangeInclusive<f64> = 540.0..=960.0;
/// Without a place, and where it does not fit the clock.
const STANDS_IN: Sunlight = Sunlight { sun: Sun::NoPlace, rise_min: 360.0, set_min: 1_080.0 };
/// What the curve of the air takes a day without sunset, and one without sunrise, to be long, in minutes.
const LONGEST_MIN: f64 = 1_320.0;
const SHORTEST_MIN: f64 = 240.0;

/// Latitude and longitude in degrees, north and east.
pub(crate) type Place = (f64, f64);

/// A day's sun.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sunlight {
    pub(super) sun: Sun,
    /// In minutes after midnight by the clock on the wall.
    pub(super) rise_min: f64,
    pub(super) set_min: f64,
}

impl Sunlight {
    /// When the sun stands highest.
    pub(super) fn noon_min(self) -> f64 {
        (self.rise_min + self.set_min) / 2.0
    }

    /// How long the day is for the course of the air, in hours: one that never ends, or never begins, is held.
    pub(super) fn hours(self) -> f64 {
        held_between(self.set_min - self.rise_min, SHORTEST_MIN, LONGEST_MIN) / 60.0
    }
}

/// By the tangent, which the core has already.
fn asin(sine: f64) -> f64 {
    libm::atan(sine / (1.0 - sine * sine).sqrt())
}

fn acos(cosine: f64) -> f64 {
    2.0 * libm::atan(((1.0 - cosine) / (1.0 + cosine)).sqrt())
}

/// Declination in radians and equation of time in minutes, at an instant in days since 1970-01-01T00:00Z.
pub(super) fn sky(at: f64) -> (f64, f64) {
    let t = (at - J2000) / 36_525.0;
    let l = (280.466_46 + t * (36_000.769_83 + t * 0.000_303_2)).to_radians();
    let m = (357.529_11 + t * (35_999.050_29 - 0.000_153_7 * t)).to_radians();
    let e = 0.016_708_634 - t * (0.000_042_037 + 0.000_000_126_7 * t);
    let center = sine(m) * (1.914_602 - t * (0.004_817 + 0.000_014 * t))
        + sine(2.0 * m) * (0.019_993 - 0.000_101 * t)
        + sine(3.0 * m) * 0.000_289;
    let node = (125.04 - 1_934.136 * t).to_radians();
    let longitude = l + (center - 0.005_69 - 0.004_78 * sine(node)).to_radians();
    let tilt = 23.439_291_1 - t * 0.013_004_2 + 0.002_56 * cosine(node);
    let tilt = tilt.to_radians();
    let declination = asin(sine(tilt) * sine(longitude));
    let y = tangent(tilt / 2.0);
    let y = y * y;
    let equation = y * sine(2.0 * l) - 2.0 * e * sine(m) + 4.0 * e * y * sine(m) * cosine(2.0 * l)
        - 0.5 * y * y * sine(4.0 * l)
        - 1.25 * e * e * sine(2.0 * m);
    (declination, 4.0 * equation.to_degrees())
}

/// An event of a day, in minutes after midnight by a clock that is so many minutes east of UTC; −1 rise, 0 noon,
/// 1 set. Where the sun does not pass the horizon, which side of it it stays on.
fn event(day: f64, (latitude, longitude): Place, offset_min: f64, side: f64) -> Result<f64, Sun> {
    let latitude = latitude.to_radians();
    let mean_noon = 720.0 - 4.0 * longitude + offset_min;
    let mut at = mean_noon;
    let mut up = 0.0;
    for _ in 0..PASSES {
        let (declination, equation) = sky(day + (at - offset_min) / 1_440.0);
        up = cosine(ZENITH_DEG.to_radians()) / (cosine(latitude) * cosine(declination))
            - tangent(latitude) * tangent(declination);
        at = mean_noon - equation + side * 4.0 * acos(held_between(up, -1.0, 1.0)).to_degrees();
    }
    // By noon's declination alone, the days on which the midnight sun goes would have none of either.
    if side != 0.0 && up.abs() > 1.0 {
        return Err(if up > 0.0 { Sun::NeverRises } else { Sun::NeverSets });
    }
    Ok(at)
}

/// The sun of a day, and whether the clock does not fit the place: then what stands in is handed out.
pub(super) fn light(day: f64, place: Option<Place>, offset_min: f64) -> (Sunlight, Option<f64>) {
    let Some(place) = place else { return (STANDS_IN, None) };
    let of = |side| event(day, place, offset_min, side);
    let noon = of(0.0).unwrap_or(720.0);
    if !NOON_MIN.contains(&noon) {
        return (STANDS_IN, Some(noon));
    }
    let sunlight = match (of(-1.0), of(1.0)) {
        (Ok(rise_min), Ok(set_min)) => Sunlight { sun: Sun::Rises, rise_min, set_min },
        (Err(sun), _) | (_, Err(sun)) => {
            let half = if sun == Sun::NeverSets { LONGEST_MIN } else { SHORTEST_MIN } / 2.0;
            Sunlight { sun, rise_min: noon - half, set_min: noon + half }
        }
    };
    (sunlight, None)
}

/// The sine of the sun's height above the horizon, by the clock on the wall.
pub(crate) fn height(day: f64, (latitude, longitude): Place, offset_min: f64, minute: f64) -> f64 {
    let (declination, equation) = sky(day + (minute - offset_min) / 1_440.0);
    let turn = ((minute + equation + 4.0 * longitude - offset_min) / 4.0 - 180.0).to_radians();
    let latitude = latitude.to_radians();
    sine(latitude) * sine(declination) + cosine(latitude) * cosine(declination) * cosine(turn)
}

/// A clear sky on a wall, in W/m²: the beam by the air mass (Kasten and Young's) as 1353 × 0.7^(AM^0.678), a tenth of
/// it from the whole sky, a fifth of what falls on the ground from below (Meinel's form, retold). `turned`: the
/// cosine of the angle between the sun's direction and the one that the wall looks in, 1 where it faces the sun.
pub(super) fn on_wall(height: f64, turned: f64) -> f64 {
    if height <= 0.0 {
        return 0.0;
    }
    let degrees = asin(height).to_degrees();
    // Powers by way of logarithms: what raises to a power would be a kilobyte of core.
    let mass = 1.0 / (height + 0.505_72 * libm::exp(-1.636_4 * libm::log(degrees + 6.079_95)));
    let beam = 1_353.0 * libm::exp(-0.356_674_943_938_732_4 * libm::exp(0.678 * libm::log(mass)));
    let facing = turned * (1.0 - height * height).sqrt();
    let facing = if facing > 0.0 { facing } else { 0.0 };
    beam * (facing + 0.05 + 0.1 * (height + 0.1))
}
