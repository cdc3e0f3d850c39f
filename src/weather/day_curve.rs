//! A day's course of the air from its lowest and highest temperature: half a sine by day, falling off towards the
//! next low by night (Parton and Logan 1981), in the form that reaches that low.
//!
//! On five hourly years with the day's low and high known it is within 2 to 3 °F; the edges of a window are off by
//! an hour and a half to two at times, the forecast's own error included.

use crate::measure::angle::sine;
use core::f64::consts::PI;

/// How a day bends.
#[derive(Debug, Clone, Copy)]
pub(super) struct Shape {
    /// The highest comes this many hours after noon.
    pub(super) after_noon_h: f64,
    /// The lowest comes this many hours after sunrise.
    pub(super) after_rise_h: f64,
    /// How fast the night falls off.
    pub(super) falls: f64,
    /// What would be left of the fall as the next low is due: taken off, so that it is reached. 0: the form as it was
    /// published.
    pub(super) left: f64,
}

/// A compromise of five fits to hourly years.
const SHAPE: Shape =
    Shape { after_noon_h: 2.0, after_rise_h: 0.3, falls: 2.0, left: 0.135_335_283_236_612_7 };

/// What a day's course follows from.
#[derive(Debug, Clone, Copy)]
pub(super) struct Course {
    pub(super) low_f: f64,
    pub(super) high_f: f64,
    /// The next day's lowest.
    pub(super) next_low_f: f64,
    /// The lowest and highest of the day before.
    pub(super) before_f: (f64, f64),
    /// Sunrise and length of the day, in hours.
    pub(super) rise_h: f64,
    pub(super) day_h: f64,
}

impl Course {
    /// The air at an hour after midnight.
    pub(super) fn air_f(&self, hour: f64) -> f64 {
        self.by(SHAPE, hour)
    }

    /// When the air is warmest.
    pub(super) fn warmest_h(&self) -> f64 {
        self.rise_h + self.day_h / 2.0 + SHAPE.after_noon_h
    }

    pub(super) fn by(&self, shape: Shape, hour: f64) -> f64 {
        let set_h = self.rise_h + self.day_h;
        let low_at = self.rise_h + shape.after_rise_h;
        let by_day = |low: f64, high: f64, hour: f64| {
            let span = self.day_h + 2.0 * (shape.after_noon_h - shape.after_rise_h);
            low + (high - low) * sine(PI * (hour - low_at) / span)
        };
        if hour >= low_at && hour <= set_h {
            return by_day(self.low_f, self.high_f, hour);
        }
        let (low, high, to, dark_h) = if hour > set_h {
            (self.low_f, self.high_f, self.next_low_f, hour - set_h)
        } else {
            (self.before_f.0, self.before_f.1, self.low_f, hour + 24.0 - set_h)
        };
        if dark_h < 0.0 {
            // The sun of the day before sets after midnight by the clock.
            return by_day(low, high, hour + 24.0);
        }
        let at_sunset = by_day(low, high, set_h);
        let night_h = 24.0 - self.day_h + shape.after_rise_h;
        let dark_h = if dark_h > night_h { night_h } else { dark_h };
        let left = libm::exp(-shape.falls * dark_h / night_h);
        to + (at_sunset - to) * (left - shape.left) / (1.0 - shape.left)
    }
}
