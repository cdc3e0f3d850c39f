//! Saturation pressures, dew points and frost points against published values.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::readiness::moist_air::{
    COLDEST_F, FREEZING_F, HOTTEST_F, dew_point, frost_point, frost_point_of, humidity_of,
    saturation_over_ice, saturation_over_water,
};
use proptest::prelude::*;
use serde_json::Value;
use std::path::Path;

/// One pound-force per square inch in pascals, and one atmosphere: NIST SP 811, appendix B.
const PSI_PA: f64 = 6_894.757;
/// Ratio of the molar masses of water and dry air: ASHRAE Handbook—Fundamentals 2017, chapter 1.
const MASS_RATIO: f64 = 0.621_945;

fn f(celsius: f64) -> f64 {
    celsius * 1.8 + 32.0
}

fn saturation(temperature_f: f64) -> f64 {
    let over = if temperature_f < FREEZING_F { saturation_over_ice } else { saturation_over_water };
    over(temperature_f).expect("in range")
}

fn off(given: f64, wanted: f64) -> f64 {
    (given / wanted - 1.0).abs()
}

/// ASHRAE Handbook—Fundamentals 2017, chapter 1, table 3, in both systems. The table is from the newer
/// formulation behind the Handbook's tables; its equations stay within 300 ppm of it over this range.
#[test]
fn handbook_table_3() {
    for (celsius, pa) in
        [(-20.0, 103.24), (-5.0, 401.74), (5.0, 872.6), (25.0, 3169.7), (50.0, 12_351.3), (100.0, 101_418.0)]
    {
        assert!(off(saturation(f(celsius)), pa) < 300e-6, "{celsius} °C");
    }
    for (fahrenheit, psi) in [
        (-4.0, 0.014_974),
        (23.0, 0.058_268),
        (41.0, 0.126_56),
        (77.0, 0.459_73),
        (122.0, 1.791_40),
        (212.0, 14.7094),
    ] {
        assert!(off(saturation(fahrenheit), psi * PSI_PA) < 300e-6, "{fahrenheit} °F");
    }
}

/// The equations themselves, worked out apart from this code with the Handbook's constants and printed to
/// a tenth of a pascal.
#[test]
fn handbook_equations() {
    for (celsius, pa) in [(0.0, 611.2), (10.0, 1228.0), (15.0, 1705.5), (20.0, 2338.8), (30.0, 4246.0)] {
        assert!((saturation_over_water(f(celsius)).unwrap() - pa).abs() < 0.06, "{celsius} °C");
    }
    assert!((saturation_over_ice(f(0.0)).unwrap() - 611.15).abs() < 0.006);
    // Below freezing there is less vapor over ice than over water, and the two meet near freezing.
    for celsius in [-40.0, -20.0, -10.0, -1.0] {
        assert!(saturation_over_ice(f(celsius)).unwrap() < saturation_over_water(f(celsius)).unwrap());
    }
}

/// ISO 13788's own formula, 610.5·exp(17.269 θ ÷ (237.3 + θ)): its constants are rounded, so that 0.1 %
/// holds from 5 to 20 °C. At 0 °C it says 610.5 and at 25 °C 3165.9 Pa, 0.11 % under.
#[test]
fn iso_13788() {
    for (celsius, pa) in [(5.0, 871.9), (10.0, 1227.3), (15.0, 1704.4), (20.0, 2337.0)] {
        assert!(off(saturation(f(celsius)), pa) < 0.001, "{celsius} °C");
    }
}

/// ASHRAE Handbook—Fundamentals 2017, chapter 1, example 1, read off a chart there: 100 °F dry bulb, 65 °F
/// wet bulb, 14.696 psia → humidity ratio 0.00523, dew point 40 °F, relative humidity 13 %; in SI 40 °C,
/// 20 °C, 101 325 Pa → 0.0065, 7 °C, 14 %. A chart's dew point is good to a degree.
#[test]
fn handbook_example_1() {
    let vapor = |ratio: f64, pressure: f64| pressure * ratio / (MASS_RATIO + ratio);
    for (air_f, ratio, pressure, dew_f, chart, humidity) in
        [(100.0, 0.005_23, 14.696 * PSI_PA, 40.0, 1.0, 13.0), (f(40.0), 0.0065, 101_325.0, f(7.0), 1.8, 14.0)]
    {
        let given = 100.0 * vapor(ratio, pressure) / saturation_over_water(air_f).unwrap();
        assert_eq!(given.round(), humidity);
        assert!((dew_point(air_f, given).unwrap() - dew_f).abs() < chart);
    }
}

/// Dew points by the Handbook's equations, as published to a tenth of a degree.
#[test]
fn dew_points() {
    for (air, humidity, dew) in [
        (70.0, 50.0, 50.5),
        (70.0, 40.0, 44.6),
        (70.0, 35.0, 41.1),
        (68.0, 40.0, 42.8),
        (75.0, 60.0, 60.2),
        (80.0, 70.0, 69.3),
        (60.0, 80.0, 53.8),
        (50.0, 85.0, 45.7),
    ] {
        let given = dew_point(air, humidity).unwrap();
        assert!((given - dew).abs() < 0.06, "{air} °F, {humidity} %: {given}");
    }
    for (air, humidity, dew) in [(20.0, 50.0, 9.27), (25.0, 60.0, 16.7), (10.0, 80.0, 6.7), (5.0, 85.0, 2.7)]
    {
        let given = (dew_point(f(air), humidity).unwrap() - 32.0) / 1.8;
        assert!((given - dew).abs() < 0.06, "{air} °C, {humidity} %: {given}");
    }
}

/// A surface 5 °F above the dew point meets air of 82 to 86 % (published spread table, 40 to 90 °F).
#[test]
fn five_degrees_above_the_dew_point() {
    for surface in [40.0, 50.0, 60.0, 70.0, 80.0, 90.0] {
        let humidity = humidity_of(surface, surface - 5.0).unwrap();
        assert!((82.0..=86.0).contains(&humidity), "{surface} °F: {humidity}");
    }
}

/// Rows worked out by another program over the same equations, kept outside this package.
#[test]
fn shared_rows() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/physics-checks.json");
    let Ok(text) = std::fs::read_to_string(&file) else {
        println!("skipped: ../shared/physics-checks.json is not here");
        return;
    };
    let rows: Value = serde_json::from_str(&text).unwrap();
    let number = |row: &Value, name: &str| row[name].as_f64().unwrap();
    for row in rows["C_dew"].as_array().unwrap() {
        let (air, humidity) = (number(row, "TF"), 100.0 * number(row, "RH"));
        let over_water = dew_point(air, humidity).unwrap();
        assert!((over_water - number(row, "dew_over_water_F")).abs() < 1e-5, "{row}");
        // There, humidity is over ice where the air is below freezing, and so is the dew point.
        let ice = air < FREEZING_F;
        let share = if ice { saturation(air) / saturation_over_water(air).unwrap() } else { 1.0 };
        let dew = frost_point(air, humidity * share).filter(|_| ice).unwrap_or(over_water);
        assert!((dew - number(row, "dew_F")).abs() < 1e-5, "{row}");
    }
    for row in rows["C_pws"].as_array().unwrap() {
        let air = f(number(row, "tC"));
        let tolerance = number(row, "tol_rel");
        assert!(off(saturation_over_water(air).unwrap(), number(row, "water")) < tolerance, "{row}");
        let colder = if air <= FREEZING_F { saturation_over_ice } else { saturation_over_water };
        assert!(off(colder(air).unwrap(), number(row, "ice_or_water")) < tolerance, "{row}");
    }
}

#[test]
fn ends_of_the_range() {
    assert_eq!(dew_point(70.0, 0.0), None);
    assert_eq!(dew_point(70.0, -5.0), None);
    assert_eq!(dew_point(70.0, 100.000_1), None);
    assert!((dew_point(70.0, 100.0).unwrap() - 70.0).abs() < 1e-9);
    assert!((dew_point(COLDEST_F, 100.0).unwrap() - COLDEST_F).abs() < 1e-9);
    assert_eq!(dew_point(COLDEST_F, 1.0), Some(COLDEST_F));
    assert!((dew_point(HOTTEST_F, 100.0).unwrap() - HOTTEST_F).abs() < 1e-9);
    assert!(dew_point(70.0, f64::MIN_POSITIVE).unwrap() <= COLDEST_F + 1e-9);
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308, -1e308] {
        assert_eq!(dew_point(bad, 50.0), None);
        assert_eq!(dew_point(70.0, bad), None);
        assert_eq!(frost_point(bad, 50.0), None);
        assert_eq!(frost_point_of(bad), None);
        assert_eq!(humidity_of(bad, 50.0), None);
        assert_eq!(humidity_of(50.0, bad), None);
        assert_eq!(saturation_over_water(bad), None);
        assert_eq!(saturation_over_ice(bad), None);
    }
    assert_eq!(frost_point_of(32.1), None);
    assert_eq!(frost_point(70.0, 80.0), None);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// A dew point's saturation pressure is the vapor pressure that it came from.
    #[test]
    fn a_dew_point_is_where_its_vapor_saturates(air in -60.0..250.0_f64, humidity in 1.0..=100.0_f64) {
        let vapor = saturation_over_water(air).unwrap() * humidity / 100.0;
        let dew = dew_point(air, humidity).unwrap();
        prop_assert!(dew <= air + 1e-9);
        if dew > COLDEST_F + 1.0 {
            prop_assert!(off(saturation_over_water(dew).unwrap(), vapor) < 1e-10);
            prop_assert!((humidity_of(air, dew).unwrap() - humidity).abs() < 1e-8);
        }
        if let Some(frost) = frost_point(air, humidity) {
            prop_assert!((frost_point_of(dew).unwrap() - frost).abs() < 1e-7 || dew < COLDEST_F + 1.0);
            prop_assert!(frost < FREEZING_F && frost >= dew - 1e-9);
            if frost > COLDEST_F + 1.0 {
                prop_assert!(off(saturation_over_ice(frost).unwrap(), vapor) < 1e-10);
            }
        }
    }

    /// Moister or warmer air never has a lower dew point.
    #[test]
    fn moister_and_warmer_is_higher(air in -60.0..250.0_f64, humidity in 1.0..99.0_f64, more in 0.0..1.0_f64) {
        let dew = dew_point(air, humidity).unwrap();
        prop_assert!(dew_point(air, humidity + more).unwrap() >= dew - 1e-9);
        prop_assert!(dew_point(air + more, humidity).unwrap() >= dew - 1e-9);
    }

    /// No number makes it panic or gives something that is no number.
    #[test]
    fn any_numbers(air in any::<f64>(), humidity in any::<f64>()) {
        for given in [dew_point(air, humidity), frost_point(air, humidity), humidity_of(air, humidity)] {
            prop_assert!(given.is_none_or(f64::is_finite));
        }
    }
}
