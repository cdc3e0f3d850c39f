//! Temperatures against their windows, and the two cylinders against each other.

use super::*;
use foamwright::findings::Severity;
use foamwright::measure::Units;

#[test]
fn both_ends_of_a_window_belong_to_it() {
    for (of, text, inside) in [
        (CylinderA, "70", true),
        (CylinderA, "69.9", false),
        (CylinderB, "80", true),
        (CylinderA, "90", true),
        (CylinderA, "90.1", false),
        (Air, "60", true),
        (Air, "59.9", false),
        (Air, "90", true),
        (Air, "90.1", false),
        (Surface, "60", true),
        (Surface, "59.9", false),
        (Surface, "90", true),
        (Surface, "90.1", false),
    ] {
        let site = good().text(Humidity, "20").text(of, text);
        assert_eq!(site.verdict() == Verdict::Go, inside, "{of:?} {text}");
        assert_eq!(site.state(of) == ReadState::Outside, !inside, "{of:?} {text}");
    }
}

/// Temperatures typed in °C against limits in °C: the same tenth lies on the line.
#[test]
fn the_ends_hold_in_celsius() {
    for tenths in (150..=250).step_by(1) {
        let text = format!("{}.{}", tenths / 10, tenths % 10);
        let label = [("surface_least", format!("{text} °C"))];
        let label: Vec<_> = label.iter().map(|(field, text)| (*field, text.as_str())).collect();
        let site = good().text(Humidity, "20").label(&label).unit(Surface, &text, Unit::C);
        assert_eq!(site.state(Surface), ReadState::Close, "{text} °C");
    }
}

/// A sheet whose least is above its most was copied wrongly: nothing is inside it.
#[test]
fn a_crossed_window_gives_no_go() {
    for (least, most) in
        [("cylinder_least", "cylinder_most"), ("air_least", "air_most"), ("surface_least", "surface_most")]
    {
        for temperature in ["62", "70", "75", "80", "88"] {
            let site = good().label(&[(least, "85"), (most, "65")]).text(Humidity, "20");
            let site = [CylinderA, CylinderB, Air, Surface]
                .into_iter()
                .fold(site, |site, of| site.text(of, temperature));
            assert_ne!(site.verdict(), Verdict::Go, "{least}, all at {temperature}");
            assert!(site.finding(Code::WindowCrossed).is_some());
        }
    }
}

#[test]
fn the_narrowest_of_the_foams_windows_counts() {
    let one = [("surface_least", "50"), ("surface_most", "80")];
    let other = [("surface_least", "55"), ("surface_most", "95")];
    let two = || good().text(Humidity, "20").label(&one).label(&other);
    assert_eq!(two().text(Surface, "55").verdict(), Verdict::Go);
    assert_eq!(two().text(Surface, "54").blamed(), hold(Code::SurfaceCold));
    assert_eq!(two().text(Surface, "80").verdict(), Verdict::Go);
    assert_eq!(two().text(Surface, "81").blamed(), hold(Code::SurfaceHot));
    // Windows that do not meet leave nothing inside.
    let apart = || good().label(&[("surface_most", "65")]).label(&[("surface_least", "68")]);
    for text in ["60", "64", "65", "66", "67", "68", "70"] {
        assert_eq!(apart().text(Surface, text).verdict(), Verdict::Hold, "{text}");
    }
    // A default window is not called the label's.
    assert_eq!(good().text(Surface, "41").finding(Code::SurfaceCold).unwrap().source, "site_window");
    assert_eq!(two().text(Surface, "41").finding(Code::SurfaceCold).unwrap().source, "label_windows");
    assert_eq!(good().text(CylinderA, "41").finding(Code::CylinderCold).unwrap().source, "chemical_window");
}

#[test]
fn close_is_within_two_degrees_and_still_go() {
    for (text, close) in [("62", true), ("62.1", false), ("60", true), ("88", true), ("87.9", false)] {
        let site = good().text(Humidity, "20").text(Surface, text);
        assert_eq!(site.verdict(), Verdict::Go);
        assert_eq!(site.state(Surface) == ReadState::Close, close, "{text}");
        assert_eq!(site.finding(Code::Close).is_some(), close, "{text}");
    }
    let site = good().text(Surface, "62");
    assert_eq!(site.said().0.closest, Some(4));
}

#[test]
fn more_than_five_degrees_between_the_cylinders_warns() {
    assert!(good().text(CylinderB, "80").finding(Code::CylindersApart).is_none());
    let finding = good().text(CylinderB, "80.1").finding(Code::CylindersApart).unwrap();
    assert_eq!((finding.severity, finding.at.id), (Severity::Warn, 1)); // at the colder one
    assert!(
        good().text(CylinderB, "80.1").limit("cylinders_apart", "6").finding(Code::CylindersApart).is_none()
    );
    // An old one says nothing about now.
    assert!(good().text(CylinderB, "85").taken(CylinderB, 61.0).finding(Code::CylindersApart).is_none());
}

#[test]
fn a_reading_outside_never_looks_like_its_limit() {
    let finding = good().text(Surface, "59.999").finding(Code::SurfaceCold).unwrap();
    let text = |name| finding.figures.iter().find(|one| one.name == name).unwrap().text.clone();
    assert_ne!(text("given"), text("least"), "{finding:?}");
    let mut site = good().text(Surface, "59.999");
    site.job.units = Units::Metric;
    let site = site.unit(Surface, "59.999", Unit::F);
    // Every other bare number of the site is °F too.
    let site = [CylinderA, CylinderB, Air].into_iter().fold(site, |site, of| {
        let text = site.job.readings.iter().find(|one| one.of == of).unwrap().entries[0].text.clone();
        site.unit(of, &text, Unit::F)
    });
    let finding = site.finding(Code::SurfaceCold).unwrap();
    let text = |name| finding.figures.iter().find(|one| one.name == name).unwrap().text.clone();
    assert_ne!(text("given"), text("least"), "{finding:?}");
    assert!(text("given").ends_with("°C"), "{finding:?}");
}

/// Above 90 °F a cylinder is left to cool; above 120 °F it is not opened at all, whatever the label's window.
#[test]
fn a_cylinder_above_120_is_not_opened() {
    for (text, code) in
        [("90.1", Code::CylinderHot), ("120", Code::CylinderHot), ("120.1", Code::CylinderDanger)]
    {
        assert_eq!(good().text(CylinderA, text).blamed(), hold(code), "{text}");
    }
    let wide = [("cylinder_most", "130"), ("storage_most", "140")];
    assert_eq!(good().label(&wide).text(CylinderB, "121").blamed(), hold(Code::CylinderDanger));
    // A narrow storage window forbids nothing about a cylinder that is inside its own.
    assert!(
        good().label(&[("storage_most", "80")]).text(CylinderA, "85").finding(Code::CylinderDanger).is_none()
    );
    let close = good().unit(CylinderA, "48.89", Unit::C).finding(Code::CylinderDanger).unwrap();
    assert_ne!(figure(&close, "given"), figure(&close, "limit"));
}
