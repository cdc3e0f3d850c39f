//! Every code raised, who is to blame, and what GO rests on.

use super::*;
use std::collections::BTreeSet;

#[test]
fn all_there_and_inside_is_go_until_the_first_reading_grows_old() {
    let site = good().taken(CylinderB, 12.0).taken(Surface, 100.0);
    let (readiness, findings) = site.said();
    assert_eq!(readiness.verdict, Verdict::Go, "{findings:?}");
    assert_eq!(readiness.until_ms, Some(NOW.ms + 20.0 * 60_000.0)); // the surface: 120 − 100 minutes
    assert_eq!((readiness.blame, findings), (None, Vec::new()));
    let order: Vec<_> = readiness.checks.iter().map(|check| check.of).collect();
    assert_eq!(order, [CylinderA, CylinderB, Air, Humidity, Surface]);
    assert_eq!(readiness.closest, Some(0)); // cylinder A, 5 °F over 70
    let dew = readiness.dew.expect("a dew point");
    assert!((dew.point_f.likely.0 - 50.528).abs() < 0.001);
    assert!((dew.least_surface_f.0 - 55.528).abs() < 0.001);
    assert_eq!((dew.spread_f, dew.frost_f), (5.0, None));
}

/// Every code of this room, its verdict, and whether it is to blame. Then: its words get their figures.
#[test]
fn every_code_has_a_case_and_the_figures_of_its_words() {
    let unstamped = |of| good().with(of, |one| one.taken = None);
    let mut cases: Vec<(Site, Code, (Verdict, Option<Code>))> = vec![
        (good().without(CylinderA), Code::CylinderNotRead, not_read(Code::CylinderNotRead)),
        (good().text(CylinderB, " "), Code::CylinderNotRead, not_read(Code::CylinderNotRead)),
        (good().without(Air), Code::AirNotRead, not_read(Code::AirNotRead)),
        (good().without(Humidity), Code::HumidityNotRead, not_read(Code::HumidityNotRead)),
        (good().without(Surface), Code::SurfaceNotRead, not_read(Code::SurfaceNotRead)),
        (good().and(reading(Surface, "")), Code::SpotNotRead, not_read(Code::SpotNotRead)),
        (good().taken(CylinderA, 60.1), Code::ReadingOld, not_read(Code::ReadingOld)),
        (good().taken(Humidity, 121.0), Code::ReadingOld, not_read(Code::ReadingOld)),
        (unstamped(Air), Code::ReadingUntimed, not_read(Code::ReadingUntimed)),
        (good().taken(Surface, -3.0), Code::ReadingUntimed, not_read(Code::ReadingUntimed)),
        (good().text(CylinderB, "63"), Code::CylinderCold, hold(Code::CylinderCold)),
        (good().text(CylinderA, "91"), Code::CylinderHot, hold(Code::CylinderHot)),
        (good().text(Air, "58"), Code::AirCold, hold(Code::AirCold)),
        (good().text(Air, "95").text(Humidity, "20"), Code::AirHot, hold(Code::AirHot)),
        (good().text(Surface, "58"), Code::SurfaceCold, hold(Code::SurfaceCold)),
        (good().text(Surface, "93.5"), Code::SurfaceHot, hold(Code::SurfaceHot)),
        (good().text(Humidity, "85"), Code::DewTooClose, hold(Code::DewTooClose)),
        (good().text(Humidity, "95").text(Surface, "65"), Code::BelowDewPoint, hold(Code::BelowDewPoint)),
        (good().text(Humidity, "63").text(Surface, "63"), Code::DewWithinMeterError, GO),
        (good().text(Surface, "61"), Code::Close, GO),
        (good().text(CylinderB, "80.5"), Code::CylindersApart, GO),
        (good().text(Humidity, "20"), Code::Frost, GO),
        (
            good().without(Humidity).and(reading(DewPoint, "71")),
            Code::DewAboveAir,
            not_read(Code::DewAboveAir),
        ),
    ];
    let kit = |entries: &[(&str, &str)]| good().kit(entries);
    let after = "2026-12-01";
    cases.extend([
        (good().text(CylinderA, "121"), Code::CylinderDanger, hold(Code::CylinderDanger)),
        (good().answer("flames_out", ""), Code::Unanswered, not_read(Code::Unanswered)),
        (
            good().surface(&[("material", "metal"), ("how", "infrared")]),
            Code::InfraredOnMetal,
            not_read(Code::InfraredOnMetal),
        ),
        (good().surface(&[("material", "metal"), ("how", "contact")]), Code::MetalSkin, GO),
        (
            good().surface(&[("material", "masonry"), ("masonry_dry", "no")]),
            Code::MasonryDamp,
            hold(Code::MasonryDamp),
        ),
        (good().surface(&[("material", "wood")]), Code::MoistureNotRead, not_read(Code::MoistureNotRead)),
        (good().and(reading(WoodMoisture, "22")), Code::WoodWet, hold(Code::WoodWet)),
        (
            good().label(&[("wind_most", "10")]).answer("outdoors", "yes"),
            Code::WindNotRead,
            not_read(Code::WindNotRead),
        ),
        (
            good().label(&[("wind_most", "10")]).answer("outdoors", "yes").and(reading(Wind, "12")),
            Code::WindOver,
            hold(Code::WindOver),
        ),
        (good().answer("outdoors", "yes"), Code::WindNotOnSheet, GO),
        (good().and(reading(NightLow, "41")), Code::NightCold, hold(Code::NightCold)),
        (good().and(reading(NightLow, "41")).answer("heat_kept", "yes"), Code::NightColdHeated, GO),
        (good().and(reading(NightLow, "65")), Code::CureNotOnSheet, GO),
        (good().answer("flames_out", "no"), Code::FlamesLit, hold(Code::FlamesLit)),
        (good().answer("heater_lit", "electric"), Code::HeaterLit, hold(Code::HeaterLit)),
        (good().answer("heater_lit", "unvented"), Code::HeaterMoist, hold(Code::HeaterLit)),
        (kit(&[]), Code::KitDateNotRead, not_read(Code::KitDateNotRead)),
        (kit(&[("expires", after), ("state", "")]), Code::KitNotKnown, not_read(Code::KitNotKnown)),
        (kit(&[("expires", "2026-10-01")]), Code::KitPastDay, hold(Code::KitPastDay)),
        (good().and(reading(Storage, "50")), Code::StockStorage, GO),
        (good().and(reading(Storage, "130")), Code::StorageTooHot, hold(Code::StorageTooHot)),
    ]);
    let words = words("en", "findings");
    let mut raised = BTreeSet::new();
    for (site, code, verdict) in cases {
        assert_eq!(site.blamed(), verdict, "{code:?}");
        let finding = site.finding(code).unwrap_or_else(|| panic!("{code:?} not raised"));
        let key = serde_json::to_value(code).unwrap();
        for part in ["what", "do"] {
            let text = words[key.as_str().unwrap()][part].as_str().unwrap();
            for name in text.split('{').skip(1).filter_map(|rest| rest.split('}').next()) {
                let figure = finding.figures.iter().find(|one| one.name == name);
                assert!(figure.is_some_and(|one| !one.text.is_empty()), "{code:?}: {{{name}}} is missing");
            }
        }
        raised.insert(format!("{code:?}"));
    }
    assert_eq!(raised.len(), 41);
}

#[test]
fn the_one_furthest_outside_is_to_blame() {
    let site = good().text(CylinderA, "68").text(Surface, "50").and(reading(Surface, "41"));
    let (readiness, findings) = site.said();
    let blamed = &findings[readiness.blame.unwrap() as usize];
    assert_eq!((blamed.code, blamed.at.id), (Code::SurfaceCold, 6));
    // A surface over its most counts as much as one under its least.
    let site = good().text(Surface, "56").and(reading(Surface, "99"));
    assert_eq!(site.blamed(), hold(Code::SurfaceHot));
    // The dew point's limit is to blame where it is the higher one.
    let site = good().text(Humidity, "90").text(Surface, "58");
    let (_, findings) = site.said();
    assert!(findings.iter().any(|one| one.code == Code::SurfaceCold));
    assert_eq!(site.blamed(), hold(Code::BelowDewPoint));
    // Of two equally far, the first in the order of work.
    assert_eq!(good().text(CylinderA, "65").text(Air, "55").blamed(), hold(Code::CylinderCold));
}

#[test]
fn a_fresh_reading_outside_holds_even_while_others_are_missing() {
    assert_eq!(site(&[reading(Surface, "41")]).blamed(), hold(Code::SurfaceCold));
    assert_eq!(good().text(CylinderB, "63").without(Air).blamed(), hold(Code::CylinderCold));
    // An old one holds nothing: it is not read.
    let site = good().text(CylinderB, "63").taken(CylinderB, 61.0);
    assert_eq!(site.blamed(), not_read(Code::ReadingOld));
}

#[test]
fn with_nothing_read_the_first_in_the_order_of_work_is_to_blame() {
    let site = site(&[]);
    let (readiness, findings) = site.said();
    assert_eq!(readiness.verdict, Verdict::NotRead);
    let codes: Vec<_> = findings.iter().map(|one| (one.code, one.at.field.as_str())).collect();
    assert_eq!(
        codes,
        [
            (Code::CylinderNotRead, "cylinder_a"),
            (Code::CylinderNotRead, "cylinder_b"),
            (Code::AirNotRead, "air"),
            (Code::HumidityNotRead, "humidity"),
            (Code::SurfaceNotRead, "surface"),
        ]
    );
    assert_eq!(readiness.blame, Some(0));
    assert_eq!(readiness.checks.len(), 5);
    assert!(readiness.checks.iter().all(|one| one.id == 0 && one.state == ReadState::NotRead));
    assert_eq!((readiness.dew, readiness.until_ms, readiness.closest), (None, None, None));
}

#[test]
fn a_second_reading_of_the_same_thing_counts_too() {
    assert_eq!(good().and(reading(CylinderB, "63")).blamed(), hold(Code::CylinderCold));
    assert_eq!(good().and(reading(Air, "")).blamed(), not_read(Code::AirNotRead));
    // Humidity goes with the warmest air read: the moister answer.
    let site = good().and(reading(Air, "80"));
    assert_eq!(site.said().0.dew.unwrap().air_f.unwrap().0, 80.0);
}

#[test]
fn a_danger_is_to_blame_before_any_temperature() {
    let cold = || good().text(Surface, "20").text(CylinderB, "10");
    assert_eq!(cold().answer("flames_out", "no").blamed(), hold(Code::FlamesLit));
    assert_eq!(cold().answer("heater_lit", "vented").blamed(), hold(Code::HeaterLit));
    assert_eq!(cold().text(CylinderA, "125").blamed(), hold(Code::CylinderDanger));
    // What is no temperature holds as well, and is to blame where no temperature is outside.
    assert_eq!(cold().and(reading(WoodMoisture, "30")).blamed(), hold(Code::CylinderCold));
    assert_eq!(good().text(CylinderB, "").and(reading(WoodMoisture, "30")).blamed(), hold(Code::WoodWet));
}

#[test]
fn the_last_thing_asked_is_whether_flames_are_out() {
    let asked = good().answer("flames_out", "");
    assert_eq!(asked.blamed(), not_read(Code::Unanswered));
    let finding = asked.finding(Code::Unanswered).unwrap();
    assert_eq!(
        (finding.at.field.as_str(), figure(&finding, "question").as_str()),
        ("flames_out", "@ask.flames_out")
    );
    assert_eq!(asked.text(CylinderA, "").blamed(), not_read(Code::CylinderNotRead));
    assert_eq!(site(&[]).answer("flames_out", "").blamed(), not_read(Code::CylinderNotRead));
    // No heater is asked about: that flames are out says it. But one that is lit holds, whatever was said.
    assert_eq!(good().answer("heater_lit", "none").blamed(), GO);
    for heater in ["vented", "unvented", "electric"] {
        assert_eq!(good().answer("heater_lit", heater).blamed(), hold(Code::HeaterLit), "{heater}");
    }
    assert!(good().answer("heater_lit", "vented").finding(Code::HeaterMoist).is_none());
}

/// A word that no button writes, from a damaged file, is no answer and no pass.
#[test]
fn an_answer_that_is_no_answer_is_not_read() {
    for question in ["flames_out", "heater_lit", "outdoors", "heat_kept"] {
        let site = good().answer(question, "maybe").and(reading(NightLow, "70"));
        assert_eq!(site.verdict(), Verdict::NotRead, "{question}");
    }
    for question in ["material", "how"] {
        assert_eq!(good().surface(&[(question, "maybe")]).blamed(), not_read(Code::NotTaken), "{question}");
    }
}
