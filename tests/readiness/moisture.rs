//! The moisture of the air.

use super::*;

#[test]
fn a_surface_at_dew_point_plus_spread_is_clear() {
    let metered = |dew: &str, surface: &str| {
        good().without(Humidity).and(reading(DewPoint, dew)).text(Surface, surface)
    };
    assert_eq!(metered("60", "65").verdict(), Verdict::Go);
    assert_eq!(metered("60", "64.9").blamed(), hold(Code::DewTooClose));
    assert_eq!(metered("60.1", "65.1").verdict(), Verdict::Go);
    assert_eq!(metered("60.1", "60.1").blamed(), hold(Code::BelowDewPoint));
    // 3 °C of spread, dew point and surface typed in °C.
    let celsius = metered("16.1", "19.1").limit("dew_spread", "3 °C").unit(DewPoint, "16.1", Unit::C).unit(
        Surface,
        "19.1",
        Unit::C,
    );
    assert_eq!(celsius.verdict(), Verdict::Go);
    assert_eq!(celsius.unit(Surface, "19", Unit::C).blamed(), hold(Code::DewTooClose));
    // A wider spread of one's own.
    assert_eq!(metered("60", "66").limit("dew_spread", "7").blamed(), hold(Code::DewTooClose));
    let limits = metered("60", "66").said().0;
    let surface = limits.checks.iter().find(|one| one.of == Surface).unwrap();
    assert_eq!((surface.least_f.unwrap().0, surface.least_is_dew), (65.0, true));
    let limits = metered("50", "66").said().0;
    let surface = limits.checks.iter().find(|one| one.of == Surface).unwrap();
    assert_eq!((surface.least_f.unwrap().0, surface.least_is_dew), (60.0, false));
}

#[test]
fn the_meters_error_warns_but_does_not_hold() {
    // 50 % at 70 °F is 50.5 °F; 55 % at 71 °F is 54.0 °F.
    let (readiness, _) = good().said();
    let dew = readiness.dew.unwrap();
    assert!((dew.point_f.high.0 - 54.0).abs() < 0.1 && (dew.point_f.low.0 - 46.8).abs() < 0.1, "{dew:?}");
    // A dew point from the meter carries the same band: it is worked out from the same two sensors.
    let (readiness, _) = good().without(Humidity).and(reading(DewPoint, "50.528")).said();
    let metered = readiness.dew.unwrap();
    assert!((metered.point_f.high.0 - dew.point_f.high.0).abs() < 0.001);
    assert!((metered.point_f.low.0 - dew.point_f.low.0).abs() < 0.001);
    // Without an error nothing is in doubt.
    let exact = good().limit("meter_rh_error", "0").limit("meter_temp_error", "0");
    let dew = exact.said().0.dew.unwrap();
    assert_eq!((dew.point_f.low, dew.point_f.high), (dew.point_f.likely, dew.point_f.likely));
    let near = |site: Site| site.text(Humidity, "63").text(Surface, "63").finding(Code::DewWithinMeterError);
    assert!(near(good()).is_some() && near(exact).is_none());
    // At the ends of the scale the band stays on it.
    for (humidity, air) in [("1", "70"), ("100", "61")] {
        let dew = good().text(Humidity, humidity).text(Air, air).said().0.dew.unwrap();
        assert!(dew.point_f.low <= dew.point_f.likely && dew.point_f.likely <= dew.point_f.high, "{dew:?}");
    }
}

#[test]
fn of_two_sources_the_moister_counts_and_one_is_enough() {
    let both = good().and(reading(DewPoint, "58"));
    let dew = both.said().0.dew.unwrap();
    assert_eq!((dew.of, dew.point_f.likely.0), (DewPoint, 58.0));
    assert_eq!(good().and(reading(DewPoint, "40")).said().0.dew.unwrap().of, Humidity);
    // The other may be blank or old.
    assert_eq!(good().and(reading(DewPoint, "")).verdict(), Verdict::Go);
    let old = SiteReading { taken: ago(500.0), ..reading(DewPoint, "58") };
    assert_eq!(good().and(old).blamed(), GO);
    // But not from the future: it would come to count while the GO lasts.
    let ahead = SiteReading { taken: ago(-4.0), ..reading(DewPoint, "64") };
    assert_eq!(good().and(ahead).blamed(), not_read(Code::ReadingUntimed));
    // And not misread.
    assert_eq!(good().and(reading(DewPoint, "5o")).verdict(), Verdict::NotRead);
    // Two old ones are none.
    let old = SiteReading { taken: ago(500.0), ..reading(DewPoint, "58") };
    assert_eq!(good().taken(Humidity, 500.0).and(old).blamed(), not_read(Code::ReadingOld));
}
