//! Moist air: saturation pressure, dew point and frost point.
//!
//! The saturation pressures are the Hyland–Wexler equations in the form of the *ASHRAE
//! Handbook—Fundamentals* (2017), chapter 1, equations 5 (over ice, −148 to 32 °F) and 6 (over liquid
//! water, 32 to 392 °F). A dew point does not depend on the barometer.
//!
//! A humidity meter shows relative humidity, and a dew point, over liquid water, above and below freezing
//! alike. So the dew point here is over water throughout, equation 6 being carried on below 32 °F for
//! supercooled water, and the frost point over ice is given beside it. Below freezing the frost point is
//! the warmer of the two: at 20 °F by about 1 °F.

use crate::measure::held_between;

/// Coldest air that the equations are used for: the lower end of equation 5.
pub const COLDEST_F: f64 = -148.0;
/// Hottest air that the equations are used for: the upper end of equation 6.
pub const HOTTEST_F: f64 = 392.0;
/// Water freezes.
pub const FREEZING_F: f64 = 32.0;

/// Newton needs five or six steps anywhere in the range; this many only bound the loop.
const STEPS: u32 = 40;
/// A step shorter than this, in kelvin, ends the search.
const SETTLED_K: f64 = 1e-10;

/// What the vapor would settle on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Over {
    Water,
    Ice,
}

fn kelvin(f: f64) -> f64 {
    (f + 459.67) / 1.8
}

fn fahrenheit(k: f64) -> f64 {
    k * 1.8 - 459.67
}

/// The natural logarithm of saturation pressure in pascals, and its slope, at a temperature in kelvin.
fn ln_saturation(k: f64, over: Over) -> (f64, f64) {
    match over {
        // ASHRAE Handbook—Fundamentals 2017, chapter 1, equation 6 (SI).
        Over::Water => (
            -5.800_220_6e3 / k + 1.391_499_3 - 4.864_023_9e-2 * k + 4.176_476_8e-5 * k * k
                - 1.445_209_3e-8 * k * k * k
                + 6.545_967_3 * libm::log(k),
            5.800_220_6e3 / (k * k) - 4.864_023_9e-2 + 2.0 * 4.176_476_8e-5 * k
                - 3.0 * 1.445_209_3e-8 * k * k
                + 6.545_967_3 / k,
        ),
        // The same, equation 5 (SI).
        Over::Ice => (
            -5.674_535_9e3 / k + 6.392_524_7 - 9.677_843e-3 * k
                + 6.221_570_1e-7 * k * k
                + 2.074_782_5e-9 * k * k * k
                - 9.484_024e-13 * k * k * k * k
                + 4.163_501_9 * libm::log(k),
            5.674_535_9e3 / (k * k) - 9.677_843e-3 + 2.0 * 6.221_570_1e-7 * k + 3.0 * 2.074_782_5e-9 * k * k
                - 4.0 * 9.484_024e-13 * k * k * k
                + 4.163_501_9 / k,
        ),
    }
}

fn within(temperature_f: f64) -> bool {
    (COLDEST_F..=HOTTEST_F).contains(&temperature_f)
}

fn saturation(temperature_f: f64, over: Over) -> Option<f64> {
    within(temperature_f).then(|| libm::exp(ln_saturation(kelvin(temperature_f), over).0))
}

/// Saturation pressure over liquid water, in pascals, at a temperature in °F.
///
/// ln p = C8/T + C9 + C10·T + C11·T² + C12·T³ + C13·ln T, T in kelvin. Published for 32 to 392 °F; carried
/// on for supercooled water down to [`COLDEST_F`]. `None` outside. Source: ASHRAE Handbook—Fundamentals
/// 2017, chapter 1, equation 6.
///
/// ```
/// let p = foamwright::readiness::moist_air::saturation_over_water(77.0).unwrap();
/// assert!((p / 3169.7 - 1.0).abs() < 0.0003); // the Handbook's table 3 at 25 °C
/// ```
pub fn saturation_over_water(temperature_f: f64) -> Option<f64> {
    saturation(temperature_f, Over::Water)
}

/// Saturation pressure over ice, in pascals, at a temperature in °F.
///
/// ln p = C1/T + C2 + C3·T + C4·T² + C5·T³ + C6·T⁴ + C7·ln T, T in kelvin. Published for −148 to 32 °F;
/// `None` outside [`COLDEST_F`] to [`HOTTEST_F`]; above freezing there is no ice and the figure means
/// nothing. Source: ASHRAE Handbook—Fundamentals 2017, chapter 1, equation 5.
pub fn saturation_over_ice(temperature_f: f64) -> Option<f64> {
    saturation(temperature_f, Over::Ice)
}

/// The temperature, in °F, at which a vapor pressure given as ln(Pa) saturates. Newton on ln p, which is
/// nearly straight in temperature; held within the range of the equations, to whose end a drier air goes.
fn saturated_at(ln_pa: f64, start_f: f64, over: Over) -> f64 {
    let (coldest, hottest) = (kelvin(COLDEST_F), kelvin(HOTTEST_F));
    let mut k = kelvin(start_f);
    for _ in 0..STEPS {
        let (ln_p, slope) = ln_saturation(k, over);
        let next = held_between(k - (ln_p - ln_pa) / slope, coldest, hottest);
        let moved = (next - k).abs();
        k = next;
        if moved < SETTLED_K {
            break;
        }
    }
    fahrenheit(k)
}

fn ln_vapor(air_f: f64, humidity_pct: f64) -> Option<f64> {
    (within(air_f) && humidity_pct > 0.0 && humidity_pct <= 100.0)
        .then(|| ln_saturation(kelvin(air_f), Over::Water).0 + libm::log(humidity_pct / 100.0))
}

/// Dew point over liquid water, in °F: the temperature to which air has to be cooled for water to settle.
///
/// The vapor pressure is the share `humidity_pct` of [saturation over water](saturation_over_water) at the
/// air's temperature. Air −148 to 392 °F, humidity above 0 and up to 100 %; `None` outside (air without any
/// vapor has no dew point). Air so dry that its dew point would lie under −148 °F gives −148 °F. At 100 %
/// the dew point is the air's own temperature.
///
/// ```
/// use foamwright::readiness::moist_air::dew_point;
/// assert!((dew_point(70.0, 50.0).unwrap() - 50.528).abs() < 0.001);
/// assert_eq!(dew_point(70.0, 0.0), None);
/// ```
pub fn dew_point(air_f: f64, humidity_pct: f64) -> Option<f64> {
    Some(saturated_at(ln_vapor(air_f, humidity_pct)?, air_f, Over::Water))
}

/// Frost point in °F: as [`dew_point`], with ice settling instead of water. Humidity is over water, as
/// meters show it. `None` as there, and where the frost point would not be below freezing.
pub fn frost_point(air_f: f64, humidity_pct: f64) -> Option<f64> {
    frost(ln_vapor(air_f, humidity_pct)?)
}

/// The frost point, in °F, that belongs to a dew point over water: the same vapor pressure, over ice.
/// `None` from 32 °F up, and outside the range of the equations.
pub fn frost_point_of(dew_f: f64) -> Option<f64> {
    frost(within(dew_f).then(|| ln_saturation(kelvin(dew_f), Over::Water).0)?)
}

fn frost(ln_pa: f64) -> Option<f64> {
    let frost_f = saturated_at(ln_pa, FREEZING_F, Over::Ice);
    (frost_f < FREEZING_F).then_some(frost_f)
}

/// Relative humidity over water, in percent, of air that has a dew point: the ratio of the two saturation
/// pressures. Over 100 where the dew point is above the air. `None` outside the range of the equations.
pub fn humidity_of(air_f: f64, dew_f: f64) -> Option<f64> {
    (within(air_f) && within(dew_f)).then(|| {
        let ln_ratio =
            ln_saturation(kelvin(dew_f), Over::Water).0 - ln_saturation(kelvin(air_f), Over::Water).0;
        100.0 * libm::exp(ln_ratio)
    })
}

/// Ratio of the molar masses of water and dry air: ASHRAE Handbook—Fundamentals 2017, chapter 1, equation 20.
const MASS_RATIO: f64 = 0.621_945;
/// One standard atmosphere, in pascals: sea level.
const ATMOSPHERE_PA: f64 = 101_325.0;

/// Pounds of water to a pound of dry air at sea level, of air that has a dew point over water.
///
/// In words: 0.621945 × vapor pressure ÷ (101,325 Pa − vapor pressure). `None` outside the range of the equations and
/// from the boiling point up. Source: ASHRAE Handbook—Fundamentals 2017, chapter 1, equation 20.
pub fn ratio_at(dew_f: f64) -> Option<f64> {
    let vapor = saturation_over_water(dew_f)?;
    (vapor < ATMOSPHERE_PA).then(|| MASS_RATIO * vapor / (ATMOSPHERE_PA - vapor))
}

/// The dew point over water, in °F, of air with so many pounds of water to a pound of dry air: [`ratio_at`] backwards.
/// `None` for no water and for what is no number.
pub fn dew_of_ratio(ratio: f64) -> Option<f64> {
    let vapor = ATMOSPHERE_PA * ratio / (MASS_RATIO + ratio);
    (ratio > 0.0 && vapor.is_finite()).then(|| saturated_at(libm::log(vapor), FREEZING_F, Over::Water))
}
