//! How old a reading is, by instants: time zones, midnight and the clock on the wall play no part.

use crate::job::Now;
use core::ops::RangeInclusive;

/// A phone's clock may run ahead of the one that stamped the reading by this much: 2 minutes. A stamp
/// further in the future is wrong. This tool's own allowance.
pub(super) const AHEAD_MS: f64 = 2.0 * MINUTE_MS;
const MINUTE_MS: f64 = 60_000.0;
/// The stamps that a clock can show: the years 1970 to 2099. Anything else is no time.
const CLOCK_MS: RangeInclusive<f64> = 0.0..=4_102_444_800_000.0;

/// Whether a reading still counts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Age {
    /// It counts, up to and including an instant.
    Fresh {
        /// Minutes since it was taken.
        minutes: f64,
        /// The last instant at which it counts.
        until_ms: f64,
    },
    /// It was taken too long ago.
    Old {
        /// Minutes since it was taken.
        minutes: f64,
    },
    /// It has no time, or one that is still to come.
    Untimed,
}

/// The age of a reading against the limit for its kind. Exactly at the limit it still counts.
pub(super) fn age(taken: Option<Now>, now: Now, limit_min: f64) -> Age {
    let Some(taken) = taken.filter(|taken| CLOCK_MS.contains(&taken.ms)) else { return Age::Untimed };
    if !CLOCK_MS.contains(&now.ms) || taken.ms > now.ms + AHEAD_MS {
        return Age::Untimed;
    }
    let minutes = (now.ms - taken.ms).max(0.0) / MINUTE_MS;
    let until_ms = taken.ms + limit_min * MINUTE_MS;
    if now.ms <= until_ms { Age::Fresh { minutes, until_ms } } else { Age::Old { minutes } }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOON: f64 = 1_792_000_000_000.0;

    fn at(ms: f64) -> Now {
        Now { ms, offset_min: 0 }
    }

    #[test]
    fn counts_up_to_and_including_its_limit() {
        let taken = Some(at(NOON));
        assert_eq!(age(taken, at(NOON), 60.0), Age::Fresh { minutes: 0.0, until_ms: NOON + 3_600_000.0 });
        assert!(matches!(age(taken, at(NOON + 3_600_000.0), 60.0), Age::Fresh { minutes: 60.0, .. }));
        assert!(matches!(age(taken, at(NOON + 3_600_001.0), 60.0), Age::Old { .. }));
    }

    #[test]
    fn a_clock_may_be_two_minutes_ahead() {
        assert!(matches!(age(Some(at(NOON + 120_000.0)), at(NOON), 60.0), Age::Fresh { minutes: 0.0, .. }));
        assert_eq!(age(Some(at(NOON + 120_001.0)), at(NOON), 60.0), Age::Untimed);
    }

    #[test]
    fn neither_midnight_nor_a_time_zone_counts() {
        // Stamped at 23:50 in one zone, read at 00:10 in another: the instants are 20 minutes apart.
        let taken = Now { ms: NOON, offset_min: -300 };
        let now = Now { ms: NOON + 1_200_000.0, offset_min: 330 };
        assert!(matches!(age(Some(taken), now, 60.0), Age::Fresh { minutes: 20.0, .. }));
    }

    #[test]
    fn no_time_and_no_clock() {
        assert_eq!(age(None, at(NOON), 60.0), Age::Untimed);
        for ms in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308, -1e308, -1.0] {
            assert_eq!(age(Some(at(ms)), at(NOON), 60.0), Age::Untimed, "stamp {ms}");
            assert_eq!(age(Some(at(NOON)), at(ms), 60.0), Age::Untimed, "clock {ms}");
        }
    }
}
