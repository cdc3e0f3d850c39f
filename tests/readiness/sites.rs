//! Sites that people wrote about.

use super::*;

/// Sprayed onto a cold wall in warm air: a vent-free heater lifts the air to 42.4 °F, the wall is 29.2 °F,
/// the dew point 27 °F. (A trade supplier's article on foam that fell off; worked out by hand: the spread is
/// 2.2 °F, the implied humidity 54 %, the surface 30.8 °F under its window.)
#[test]
fn warm_air_and_a_cold_wall() {
    let site = good().text(Air, "42.4").text(Surface, "29.2").without(Humidity).and(reading(DewPoint, "27"));
    assert_eq!(site.blamed(), hold(Code::SurfaceCold));
    let dew = site.finding(Code::DewTooClose).unwrap();
    let by = dew.figures.iter().find(|one| one.name == "by").unwrap();
    assert!(by.text.starts_with("2.2"), "{by:?}");
    let surface = site.said().0.checks.into_iter().find(|one| one.of == Surface).unwrap();
    assert!((surface.inside_by_f.unwrap() + 30.8).abs() < 1e-9);
    let humidity = foamwright::readiness::moist_air::humidity_of(42.4, 27.0).unwrap();
    assert!((humidity - 54.0).abs() < 0.5, "{humidity}");
    assert!(site.finding(Code::Frost).is_some());
}

/// A cantilever at +4 °C with a label that wants +16 °C: 21.6 °F short. (A forum question.)
#[test]
fn four_degrees_celsius_is_far_too_cold() {
    let site = good().label(&[("surface_least", "16 °C"), ("air_least", "16 °C")]).text(Humidity, "20").unit(
        Surface,
        "4",
        Unit::C,
    );
    assert_eq!(site.blamed(), hold(Code::SurfaceCold));
    let surface = site.said().0.checks.into_iter().find(|one| one.of == Surface).unwrap();
    assert!((surface.inside_by_f.unwrap() + 21.6).abs() < 1e-9);
}

/// A steel hull with 5 °C outside: cylinders warm, cabin hot, and the plate is 41 °F. (A boat builder's log.)
#[test]
fn a_hot_cabin_and_a_cold_hull() {
    let site = good()
        .label(&[("cylinder_least", "75")])
        .unit(Air, "25", Unit::C)
        .and(SiteReading { name: "Hull plate".to_owned(), ..reading(Surface, "41") });
    let (readiness, findings) = site.said();
    let blamed = &findings[readiness.blame.unwrap() as usize];
    assert_eq!((readiness.verdict, blamed.code, blamed.at.id), (Verdict::Hold, Code::BelowDewPoint, 6));
    assert!(site.finding(Code::SurfaceCold).is_some()); // and 19 °F under the usual window
}

/// A basement in late winter, labels in °C: 16 °C "in most places" holds the other places. (An owner's log.)
#[test]
fn sixteen_degrees_in_most_places() {
    let label = [("cylinder_least", "21 °C"), ("air_least", "16 °C"), ("surface_least", "16 °C")];
    let mut site = good().label(&label).text(Humidity, "40");
    for (of, text) in [(CylinderA, "21"), (CylinderB, "21"), (Air, "17"), (Surface, "16")] {
        site = site.unit(of, text, Unit::C);
    }
    assert_eq!(site.verdict(), Verdict::Go);
    let corner = SiteReading {
        name: "Corner".to_owned(),
        entries: vec![entered("temperature", "15", Some(Unit::C))],
        ..reading(Surface, "")
    };
    let site = site.and(corner);
    assert_eq!(site.blamed(), hold(Code::SurfaceCold));
    assert_eq!(site.finding(Code::SurfaceCold).unwrap().at.id, 6);
}
