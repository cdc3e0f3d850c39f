//! How much the liquid stirs itself, from a person's own readings.
//!
//! Before any reading M is about 4, between 1 and 8 in nine cases of ten; it is never below 1, which is liquid at rest.
//! Each reading of the steel or of the liquid, right to about 2 °F, makes some M likelier than others.

use super::Circulation;
use super::group::Setup;
use super::room::march;
use super::shells::skin;
use crate::measure::Band;
use core::f64::consts::LN_2;

/// The band without a reading.
const MODEL: Band<f64> = Band { low: 1.0, likely: 4.0, high: 8.0 };
/// Below and above its middle the band ends at 1.645 standard deviations of ln M: 5 and 95 in 100.
const SPREAD_DOWN: f64 = 2.0 * LN_2 / 1.645;
const SPREAD_UP: f64 = LN_2 / 1.645;
/// A contact thermometer on a cylinder, and the place where it is held: ±2 °F. Common practice, no source.
const READS_F: f64 = 2.0;
/// ln M from 0 (at rest) on.
const POINTS: usize = 21;
const STEP: f64 = 0.14;

/// M from what was read in all groups together.
pub(super) fn circulation(groups: &[Setup]) -> Circulation {
    let readings: usize = groups.iter().map(|one| one.lessons().count()).sum();
    if readings == 0 {
        return Circulation { m: MODEL, readings: 0 };
    }
    let mut misfits = [0.0; POINTS];
    for (at, one) in misfits.iter_mut().enumerate() {
        *one = groups.iter().map(|group| misfit(group, libm::exp(at as f64 * STEP))).sum();
    }
    // Readings that lie beside every curve by more than the meter's error (another room than was typed, a bad contact)
    // say less about M, by as much.
    let least = misfits.iter().copied().fold(f64::INFINITY, f64::min);
    let trust = (readings as f64 / least).min(1.0);
    let mut chance = misfits;
    for (at, one) in chance.iter_mut().enumerate() {
        let off = at as f64 * STEP - libm::log(MODEL.likely);
        let spread = if off < 0.0 { SPREAD_DOWN } else { SPREAD_UP };
        *one = *one * trust + off / spread * (off / spread);
    }
    let best = chance.iter().copied().fold(f64::INFINITY, f64::min);
    let mut whole = 0.0;
    for one in &mut chance {
        *one = libm::exp(-(*one - best) / 2.0);
        whole += *one;
    }
    // The likeliest, and where 5 and 95 in 100 of the whole lie below; each point stands for the step around it.
    let mut m = Band { low: f64::NAN, likely: 0.0, high: f64::NAN };
    let (mut below, mut most) = (0.0, 0.0);
    for (at, one) in chance.iter().enumerate() {
        let share = one / whole;
        let end = |part: f64| {
            let ln_m = (at as f64 - 0.5 + (part - below) / share) * STEP;
            libm::exp(ln_m.max(0.0))
        };
        if m.low.is_nan() && below + share >= 0.05 {
            m.low = end(0.05);
        }
        if m.high.is_nan() && below + share >= 0.95 {
            m.high = end(0.95);
        }
        if *one > most {
            (most, m.likely) = (*one, libm::exp(at as f64 * STEP));
        }
        below += share;
    }
    m.low = m.low.min(m.likely);
    m.high = m.high.max(m.likely);
    Circulation { m, readings: u32::try_from(readings).unwrap_or(u32::MAX) }
}

/// How far one group's readings lie beside what M gives, squared, in the meter's own error.
fn misfit(group: &Setup, m: f64) -> f64 {
    let (Some((start, room)), Some(last)) =
        (group.likely(), group.lessons().map(|one| one.minutes).reduce(f64::max))
    else {
        return 0.0;
    };
    let (shells, _) = group.shells(m, start, room.day, 30.0);
    let mut off = 0.0;
    march(&shells, start, &room, group.from(), last + shells.step_min, &mut |minutes, before, after| {
        let began = minutes - shells.step_min;
        for one in group.lessons().filter(|one| one.minutes > began && one.minutes <= minutes) {
            let of = |state| if one.liquid { shells.mean(state) } else { skin(state) };
            let share = (one.minutes - began) / shells.step_min;
            let by = (of(before) + share * (of(after) - of(before)) - one.f) / READS_F;
            off += by * by;
        }
        false
    });
    off
}
