//! Ages by instants, ranges, and what cannot be understood.

use super::*;
use foamwright::findings::Severity;

#[test]
fn a_range_counts_by_its_worse_end() {
    assert_eq!(good().text(Surface, "59-63").blamed(), hold(Code::SurfaceCold));
    assert_eq!(good().text(Surface, "88-92").text(Humidity, "20").blamed(), hold(Code::SurfaceHot));
    assert_eq!(good().text(CylinderA, "69-78").blamed(), hold(Code::CylinderCold));
    let site = good().text(Surface, "64-67");
    let (readiness, _) = site.said();
    let check = readiness.checks.iter().find(|one| one.of == Surface).unwrap();
    assert_eq!(
        (readiness.verdict, check.value_f.unwrap().0, check.inside_by_f),
        (Verdict::Go, 64.0, Some(4.0))
    );
    // Moisture by its moister end: 50 to 85 % holds what 85 % holds.
    assert_eq!(good().text(Humidity, "50-85").blamed(), hold(Code::DewTooClose));
    // The cylinders by the ends furthest apart.
    assert!(good().text(CylinderB, "76-81").finding(Code::CylindersApart).is_some());
    assert!(good().text(CylinderA, "76-82").finding(Code::CylindersApart).is_some());
    assert!(good().text(CylinderA, "76-81").finding(Code::CylindersApart).is_none());
    // A limit of one's own by its stricter end.
    let wet = |spread: &str| {
        let site = good().without(Humidity).and(reading(DewPoint, "60")).text(Surface, "66");
        site.limit("dew_spread", spread).verdict()
    };
    assert_eq!((wet("5-6"), wet("5-7")), (Verdict::Go, Verdict::Hold));
    assert_eq!(good().taken(Air, 70.0).limit("site_age", "60-90").verdict(), Verdict::NotRead);
}

#[test]
fn ages_count_to_the_minute_and_by_instants() {
    assert_eq!(good().taken(CylinderA, 60.0).verdict(), Verdict::Go);
    assert_eq!(good().taken(CylinderA, 60.0 + 1.0 / 60_000.0).blamed(), not_read(Code::ReadingOld));
    for of in [Air, Humidity, Surface] {
        assert_eq!(good().taken(of, 120.0).verdict(), Verdict::Go, "{of:?}");
        assert_eq!(good().taken(of, 120.1).blamed(), not_read(Code::ReadingOld), "{of:?}");
    }
    // One's own limits.
    assert_eq!(good().taken(CylinderA, 20.0).limit("cylinder_age", "15").verdict(), Verdict::NotRead);
    assert_eq!(good().taken(Air, 200.0).limit("site_age", "4 h").verdict(), Verdict::Go);
    // Across midnight, and from a phone on another time zone: instants.
    let mut site = good();
    for one in &mut site.job.readings {
        one.taken = Some(Now { offset_min: 330, ..one.taken.unwrap() });
    }
    for day in 0..3 {
        site.now = Now { ms: NOW.ms + f64::from(day) * 600_000.0, offset_min: -600 };
        assert_eq!(site.verdict(), Verdict::Go);
    }
    // A clock slightly ahead is no future; two minutes are.
    assert_eq!(good().taken(Air, -2.0).verdict(), Verdict::Go);
    assert_eq!(good().taken(Air, -2.01).blamed(), not_read(Code::ReadingUntimed));
}

#[test]
fn a_go_holds_until_its_end_and_no_longer() {
    let mut site = good();
    let until = site.said().0.until_ms.unwrap();
    site.now.ms = until;
    assert_eq!(site.verdict(), Verdict::Go);
    site.now.ms = until + 1.0;
    assert_eq!(site.verdict(), Verdict::NotRead);
}

#[test]
fn what_cannot_be_understood_is_not_read() {
    for text in ["warm", "7O", "12'", "-", "1e400", "∞", "NaN", "400", "-200"] {
        for of in [CylinderA, CylinderB, Air, Humidity, Surface] {
            let site = good().text(of, text);
            let (readiness, findings) = site.said();
            assert_eq!(readiness.verdict, Verdict::NotRead, "{of:?} {text}");
            let blamed = &findings[readiness.blame.unwrap() as usize];
            assert_eq!(blamed.severity, Severity::Stop);
            assert!(matches!(site.state(of), ReadState::NotRead), "{of:?} {text}");
        }
    }
    // A meter that shows 0 % is dead.
    assert_eq!(good().text(Humidity, "0").verdict(), Verdict::NotRead);
}

#[test]
fn a_limit_that_cannot_be_understood_gives_no_go() {
    for field in
        ["dew_spread", "cylinders_apart", "site_age", "cylinder_age", "meter_rh_error", "meter_temp_error"]
    {
        let (readiness, findings) = good().limit(field, "plenty").said();
        assert_eq!(readiness.verdict, Verdict::NotRead, "{field}");
        assert_eq!(findings[readiness.blame.unwrap() as usize].at.field, field);
        // It does not hide a reading that is outside.
        assert_eq!(good().limit(field, "plenty").text(Surface, "41").blamed(), hold(Code::SurfaceCold));
    }
    for field in ["cylinder_least", "cylinder_most", "air_least", "air_most", "surface_least", "surface_most"]
    {
        let (readiness, findings) = good().label(&[(field, "warm")]).said();
        assert_eq!(readiness.verdict, Verdict::NotRead, "{field}");
        assert_eq!(findings[readiness.blame.unwrap() as usize].at.field, field);
    }
}

#[test]
fn an_unnamed_thing_is_named_by_a_key() {
    let finding = good().text(CylinderB, "63").finding(Code::CylinderCold).unwrap();
    assert_eq!(finding.figures[0].text, "@cylinder_b");
    let finding = good().text(Surface, "41").finding(Code::SurfaceCold).unwrap();
    assert_eq!(finding.figures[0].text, "Rim, north");
    for language in ["en", "es"] {
        let words = words(language, "ready");
        for of in
            [CylinderA, CylinderB, Air, Humidity, DewPoint, Surface, WoodMoisture, Wind, NightLow, Storage]
        {
            let key = serde_json::to_value(of).unwrap();
            assert!(words[key.as_str().unwrap()].is_string(), "{language} {key}");
        }
        for key in [
            "kit",
            "cure_unknown",
            "ask.before",
            "ask.flames_out",
            "ask.outdoors",
            "ask.how",
            "ask.masonry_dry",
        ] {
            assert!(words[key].is_string(), "{language} {key}");
        }
    }
}
