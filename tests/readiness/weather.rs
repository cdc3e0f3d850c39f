//! Wind, the night, and the room in which the kits are kept.

use super::*;
use foamwright::findings::Severity;

#[test]
fn wind_is_held_against_the_label() {
    let outdoors =
        |text: &str| good().label(&[("wind_most", "10")]).answer("outdoors", "yes").and(reading(Wind, text));
    assert_eq!(outdoors("10").blamed(), GO);
    assert_eq!(outdoors("10.1").blamed(), hold(Code::WindOver));
    assert_eq!(outdoors("8-12").blamed(), hold(Code::WindOver));
    assert_eq!(outdoors("").blamed(), not_read(Code::SpotNotRead));
    // 16 km/h is 9.94 mph, 4.5 m/s is 10.07 (1 mph = 1.609344 km/h).
    assert_eq!(outdoors("16 km/h").blamed(), GO);
    assert_eq!(outdoors("4.5 m/s").blamed(), hold(Code::WindOver));
    let check = outdoors("7 mph").check(Wind);
    assert_eq!((check.value, check.most, check.inside_by), (Some(7.0), Some(10.0), Some(3.0)));
    // The strictest of several labels counts.
    assert_eq!(outdoors("9").label(&[("wind_most", "8")]).blamed(), hold(Code::WindOver));
    assert_eq!(outdoors("9").label(&[("wind_most", "much")]).verdict(), Verdict::NotRead);
}

#[test]
fn a_label_that_limits_the_wind_wants_to_know() {
    let label = || good().label(&[("wind_most", "10")]);
    assert_eq!(label().blamed(), not_read(Code::Unanswered));
    assert_eq!(label().answer("outdoors", "no").blamed(), GO);
    assert_eq!(label().answer("outdoors", "yes").blamed(), not_read(Code::WindNotRead));
    // A wind that is listed counts, whatever was answered.
    assert_eq!(label().answer("outdoors", "no").and(reading(Wind, "30")).blamed(), hold(Code::WindOver));
}

#[test]
fn a_label_silent_about_wind_neither_stops_nor_clears() {
    let silent = good().answer("outdoors", "yes").and(reading(Wind, "60"));
    assert_eq!(silent.blamed(), GO);
    assert_eq!(silent.finding(Code::WindNotOnSheet).unwrap().severity, Severity::Note);
    assert_eq!(silent.check(Wind).most, None);
    assert!(good().finding(Code::WindNotOnSheet).is_none());
}

#[test]
fn a_forecast_can_only_take_a_go_away() {
    let night = |text: &str| good().label(&[("cure", "24 h")]).and(reading(NightLow, text));
    assert_eq!(night("60").blamed(), GO);
    assert_eq!(night("59.9").blamed(), hold(Code::NightCold));
    assert_eq!(figure(&night("41").finding(Code::NightCold).unwrap(), "cure"), "24\u{a0}h");
    assert_eq!(night("41").answer("heat_kept", "no").blamed(), hold(Code::NightCold));
    let heated = night("41").answer("heat_kept", "yes");
    assert_eq!(heated.blamed(), GO);
    assert!(heated.finding(Code::NightColdHeated).is_some());
    // The higher of the two leasts counts.
    assert_eq!(night("62").label(&[("air_least", "65")]).blamed(), hold(Code::NightCold));
    // A warm night lifts nothing.
    assert_eq!(night("75").text(Surface, "50").blamed(), hold(Code::SurfaceCold));
    assert_eq!(
        night("75").answer("heat_kept", "yes").text(Surface, "").blamed(),
        not_read(Code::SpotNotRead)
    );
    assert_eq!(night("75").without(Air).blamed(), not_read(Code::AirNotRead));
}

#[test]
fn without_cure_hours_nobody_says_how_long() {
    let night = good().and(reading(NightLow, "41"));
    assert_eq!(night.blamed(), hold(Code::NightCold));
    assert_eq!(figure(&night.finding(Code::NightCold).unwrap(), "cure"), "@cure_unknown");
    assert!(night.finding(Code::CureNotOnSheet).is_some());
    let known = night.clone().label(&[("cure", "8 h")]);
    assert!(known.finding(Code::CureNotOnSheet).is_none());
    // One foam of two without hours: no hours.
    assert!(known.label(&[]).finding(Code::CureNotOnSheet).is_some());
    let two = night.label(&[("cure", "8 h")]).label(&[("cure", "24 h")]);
    assert_eq!(figure(&two.finding(Code::NightCold).unwrap(), "cure"), "24\u{a0}h");
}

#[test]
fn a_forecast_counts_for_half_a_day() {
    let night = |minutes| good().and(SiteReading { taken: ago(minutes), ..reading(NightLow, "70") });
    assert_eq!(night(720.0).blamed(), GO);
    assert_eq!(night(721.0).blamed(), not_read(Code::ReadingOld));
    assert_eq!(night(721.0).limit("forecast_age", "24").blamed(), GO);
}

#[test]
fn kits_are_kept_between_60_and_120() {
    let room = |text: &str| good().and(reading(Storage, text));
    for (text, warns) in [("60", false), ("59.9", true), ("95", false), ("120", false)] {
        assert_eq!(room(text).blamed(), GO, "{text}");
        assert_eq!(room(text).finding(Code::StockStorage).is_some(), warns, "{text}");
    }
    assert_eq!(room("120.1").blamed(), hold(Code::StorageTooHot));
    let narrow = room("85").label(&[("storage_most", "80")]);
    assert_eq!(narrow.blamed(), GO);
    assert!(narrow.finding(Code::StockStorage).is_some());
    // No sheet lifts the 120 °F.
    assert_eq!(room("125").label(&[("storage_most", "140")]).blamed(), hold(Code::StorageTooHot));
}
