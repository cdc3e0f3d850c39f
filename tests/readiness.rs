//! The verdict: every code raised, every limit met at both ends, ages by instants, and what may never
//! become a GO.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::findings::{Code, Finding, Severity};
use foamwright::foam::{self, Foam};
use foamwright::job::{Entered, FoamSheet, Job, Now, Reader, ReadingOf, SiteReading};
use foamwright::measure::{Unit, Units};
use foamwright::readiness::{ReadState, Readiness, Verdict, check};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::path::Path;

use ReadingOf::{Air, CylinderA, CylinderB, DewPoint, Humidity, Surface};

/// Some afternoon.
const NOW: Now = Now { ms: 1_792_000_000_000.0, offset_min: -300 };

fn ago(minutes: f64) -> Option<Now> {
    Some(Now { ms: NOW.ms - minutes * 60_000.0, ..NOW })
}

fn entered(field: &str, text: &str, unit: Option<Unit>) -> Entered {
    Entered { field: field.to_owned(), text: text.to_owned(), unit, sense: None }
}

fn reading(of: ReadingOf, text: &str) -> SiteReading {
    let field = if of == Humidity { "humidity" } else { "temperature" };
    SiteReading { id: 0, of, name: String::new(), entries: vec![entered(field, text, None)], taken: ago(5.0) }
}

/// A site: the readings of a job, numbered from 1.
#[derive(Debug, Clone)]
struct Site {
    job: Job,
    sheets: Vec<FoamSheet>,
    now: Now,
}

/// All there, all inside with room to spare: dew point 50.5 °F.
fn good() -> Site {
    site(&[
        reading(CylinderA, "75"),
        reading(CylinderB, "76"),
        reading(Air, "70"),
        reading(Humidity, "50"),
        SiteReading { name: "Rim, north".to_owned(), ..reading(Surface, "66") },
    ])
}

fn site(readings: &[SiteReading]) -> Site {
    let mut job: Job =
        serde_json::from_value(json!({"format": "foamwright-job", "version": 2, "id": "x", "next_id": 1}))
            .expect("a job");
    job.readings = readings.to_vec();
    Site { job, sheets: Vec::new(), now: NOW }.numbered()
}

impl Site {
    fn numbered(mut self) -> Self {
        for (position, reading) in self.job.readings.iter_mut().enumerate() {
            reading.id = position as u32 + 1;
        }
        self
    }

    /// The first reading of a kind, changed.
    fn with(mut self, of: ReadingOf, change: impl FnOnce(&mut SiteReading)) -> Self {
        change(self.job.readings.iter_mut().find(|one| one.of == of).expect("there"));
        self
    }

    fn text(self, of: ReadingOf, text: &str) -> Self {
        self.with(of, |one| one.entries[0].text = text.to_owned())
    }

    fn unit(self, of: ReadingOf, text: &str, unit: Unit) -> Self {
        self.with(of, |one| one.entries[0] = entered(&one.entries[0].field.clone(), text, Some(unit)))
    }

    fn taken(self, of: ReadingOf, minutes_ago: f64) -> Self {
        self.with(of, |one| one.taken = ago(minutes_ago))
    }

    fn without(mut self, of: ReadingOf) -> Self {
        self.job.readings.retain(|one| one.of != of);
        self
    }

    fn and(mut self, reading: SiteReading) -> Self {
        self.job.readings.push(reading);
        self.numbered()
    }

    fn limit(mut self, field: &str, text: &str) -> Self {
        self.job.entries.push(entered(field, text, None));
        self
    }

    fn label(mut self, entries: &[(&str, &str)]) -> Self {
        let entries = entries.iter().map(|(field, text)| entered(field, text, None)).collect();
        let id = 100 + self.sheets.len() as u32;
        let (sheet, name) = (String::new(), String::new());
        self.sheets.push(FoamSheet { id, sheet, version: 1, name, entries, r_at: Vec::new() });
        self
    }

    fn said(&self) -> (Readiness, Vec<Finding>) {
        let mut reader = Reader::new(self.job.units);
        let foams: Vec<Foam> =
            self.sheets.iter().map(|sheet| foam::sheet(sheet, &mut reader).expect("a sheet")).collect();
        let readiness = check(&self.job, &foams.iter().collect::<Vec<_>>(), self.now, &mut reader);
        (readiness, reader.findings)
    }

    fn verdict(&self) -> Verdict {
        self.said().0.verdict
    }

    /// The verdict and the code to blame.
    fn blamed(&self) -> (Verdict, Option<Code>) {
        let (readiness, findings) = self.said();
        (readiness.verdict, readiness.blame.map(|position| findings[position as usize].code))
    }

    fn finding(&self, code: Code) -> Option<Finding> {
        self.said().1.into_iter().find(|one| one.code == code)
    }

    fn state(&self, of: ReadingOf) -> ReadState {
        self.said().0.checks.iter().find(|one| one.of == of).expect("a check").state
    }
}

const GO: (Verdict, Option<Code>) = (Verdict::Go, None);

fn hold(code: Code) -> (Verdict, Option<Code>) {
    (Verdict::Hold, Some(code))
}

fn not_read(code: Code) -> (Verdict, Option<Code>) {
    (Verdict::NotRead, Some(code))
}

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
    let cases: Vec<(Site, Code, (Verdict, Option<Code>))> = vec![
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
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("www/words/en/findings.json");
    let words: Value = serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap();
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
    assert_eq!(raised.len(), 20);
}

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
fn a_second_reading_of_the_same_thing_counts_too() {
    assert_eq!(good().and(reading(CylinderB, "63")).blamed(), hold(Code::CylinderCold));
    assert_eq!(good().and(reading(Air, "")).blamed(), not_read(Code::AirNotRead));
    // Humidity goes with the warmest air read: the moister answer.
    let site = good().and(reading(Air, "80"));
    assert_eq!(site.said().0.dew.unwrap().air_f.unwrap().0, 80.0);
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

#[test]
fn an_unnamed_thing_is_named_by_a_key() {
    let finding = good().text(CylinderB, "63").finding(Code::CylinderCold).unwrap();
    assert_eq!(finding.figures[0].text, "@cylinder_b");
    let finding = good().text(Surface, "41").finding(Code::SurfaceCold).unwrap();
    assert_eq!(finding.figures[0].text, "Rim, north");
    for language in ["en", "es"] {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("www/words/{language}/ready.json"));
        let words: Value = serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap();
        for of in [CylinderA, CylinderB, Air, Humidity, DewPoint, Surface] {
            let key = serde_json::to_value(of).unwrap();
            assert!(words[key.as_str().unwrap()].is_string(), "{language} {key}");
        }
    }
}

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

// --- what holds of any site -------------------------------------------------------------------------

prop_compose! {
    fn any_reading()(
        of in prop_oneof![
            Just(CylinderA), Just(CylinderB), Just(Air), Just(Humidity), Just(DewPoint), Just(Surface), Just(Surface)
        ],
        tenths in prop_oneof![4 => 600..850_i32, 1 => -100..1200_i32],
        text in prop_oneof![9 => Just(None), 1 => "\\PC{0,12}".prop_map(Some)],
        minutes in prop_oneof![8 => -1..58_i32, 1 => -10..300_i32],
        stamped in prop::bool::weighted(0.97),
    ) -> SiteReading {
        let tenths = if of == Humidity { (tenths - 450).clamp(10, 1000) } else if of == DewPoint { tenths - 200 } else { tenths };
        let text = text.unwrap_or_else(|| format!("{}", f64::from(tenths) / 10.0));
        SiteReading { taken: ago(f64::from(minutes)).filter(|_| stamped), ..reading(of, &text) }
    }
}

prop_compose! {
    /// Mostly complete sites, some of them good.
    fn any_site()(
        extra in prop::collection::vec(any_reading(), 0..4),
        base in prop::collection::vec(any_reading(), 5),
        keep in prop::collection::vec(prop::bool::weighted(0.9), 5),
    ) -> Site {
        let mut readings = Vec::new();
        for ((of, one), keep) in [CylinderA, CylinderB, Air, Humidity, Surface].into_iter().zip(base).zip(keep) {
            if keep {
                let good_ones = good();
                let good_one = good_ones.job.readings.iter().find(|other| other.of == of).unwrap().clone();
                readings.push(if one.of == of { one } else { good_one });
            }
        }
        readings.extend(extra);
        site(&readings)
    }
}

/// The sites made up below are worth something: each verdict is common among them.
#[test]
fn made_up_sites_reach_every_verdict() {
    let mut runner = TestRunner::deterministic();
    let verdicts: Vec<Verdict> =
        (0..500).map(|_| any_site().new_tree(&mut runner).expect("a site").current().verdict()).collect();
    for wanted in [Verdict::Go, Verdict::Hold, Verdict::NotRead] {
        let count = verdicts.iter().filter(|one| **one == wanted).count();
        println!("{wanted:?}: {count} of 500");
        assert!(count >= 50, "{wanted:?}: {count} of 500");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    /// The verdict is the worst of what was found, a GO rests on everything, and blame names a stop.
    #[test]
    fn the_verdict_is_the_worst(site in any_site()) {
        let (readiness, findings) = site.said();
        let outside = readiness.checks.iter().any(|one| one.state == ReadState::Outside);
        let stop = findings.iter().any(|one| one.severity == Severity::Stop);
        let wanted = if outside { Verdict::Hold } else if stop { Verdict::NotRead } else { Verdict::Go };
        prop_assert_eq!(readiness.verdict, wanted);
        prop_assert_eq!(readiness.blame.is_some(), readiness.verdict != Verdict::Go);
        if let Some(blame) = readiness.blame {
            prop_assert_eq!(findings[blame as usize].severity, Severity::Stop);
        }
        prop_assert_eq!(readiness.until_ms.is_some(), readiness.verdict == Verdict::Go);
        if readiness.verdict == Verdict::Go {
            for of in [CylinderA, CylinderB, Air, Surface] {
                let inside = |state| matches!(state, ReadState::Inside | ReadState::Close);
                prop_assert!(readiness.checks.iter().any(|one| one.of == of && inside(one.state)));
            }
            let dew = readiness.dew.as_ref().expect("a dew point");
            for one in readiness.checks.iter().filter(|one| one.of == Surface) {
                prop_assert!(one.value_f.unwrap().0 >= dew.point_f.likely.0 + 5.0 - 1e-6);
            }
            prop_assert!(readiness.until_ms.unwrap() >= NOW.ms);
        }
        // Every listed reading has its line.
        for reading in &site.job.readings {
            prop_assert_eq!(readiness.checks.iter().filter(|one| one.id == reading.id).count(), 1);
        }
    }

    /// Making a surface that is under its window colder never turns a HOLD into a GO.
    #[test]
    fn colder_is_never_better(site in any_site(), surface in 40.0..66.0_f64, colder in 0.0..60.0_f64) {
        let spot = |value: f64| site.clone().and(reading(Surface, &format!("{value:.1}")));
        if spot(surface).verdict() != Verdict::Go {
            prop_assert_ne!(spot(surface - colder).verdict(), Verdict::Go);
        }
    }

    /// What has to be there cannot be taken away, and no reading gets better by being blank or older.
    #[test]
    fn less_is_never_a_go(site in any_site(), which in 0..9_usize, older in 0.0..500.0_f64) {
        for of in [CylinderA, CylinderB, Air, Surface] {
            prop_assert_ne!(site.clone().without(of).verdict(), Verdict::Go);
        }
        prop_assert_ne!(site.clone().without(Humidity).without(DewPoint).verdict(), Verdict::Go);
        let count = site.job.readings.len();
        if count > 0 && site.verdict() != Verdict::Go {
            let position = which % count;
            let mut aged = site.clone();
            if let Some(taken) = &mut aged.job.readings[position].taken {
                taken.ms -= older * 60_000.0;
            }
            let moisture = matches!(aged.job.readings[position].of, Humidity | DewPoint);
            let future = aged.job.readings[position].taken.is_none_or(|taken| taken.ms > NOW.ms - older * 60_000.0);
            if !moisture && !future {
                prop_assert_ne!(aged.verdict(), Verdict::Go);
            }
            let mut blank = site.clone();
            blank.job.readings[position].entries.clear();
            if !moisture {
                prop_assert_ne!(blank.verdict(), Verdict::Go);
            }
        }
    }

    /// The order in which readings are listed plays no part.
    #[test]
    fn order_plays_no_part(site in any_site()) {
        let mut turned = site.clone();
        turned.job.readings.reverse();
        prop_assert_eq!(turned.verdict(), site.verdict());
        prop_assert_eq!(turned.said().0.until_ms, site.said().0.until_ms);
    }

    /// A GO is a GO through its last instant, and none a moment later. (A second source of moisture may be
    /// fresh still when the first grows old; the end is then the earlier one.)
    #[test]
    fn a_go_ends_when_it_says(site in any_site()) {
        let sources = site.job.readings.iter().filter(|one| matches!(one.of, Humidity | DewPoint)).count();
        if let Some(until) = site.said().0.until_ms {
            let at = |ms: f64| Site { now: Now { ms, ..NOW }, ..site.clone() }.verdict();
            prop_assert_eq!(at(until), Verdict::Go);
            prop_assert!(sources > 1 || at(until + 1.0) != Verdict::Go);
        }
    }

    /// Nothing that can be typed or stamped makes it panic or says a thing that is no number.
    #[test]
    fn hostile_numbers(
        texts in prop::collection::vec("\\PC{0,24}|-?[0-9]{1,40}|[0-9]{1,3}e[0-9]{1,4}|NaN|inf", 6),
        stamps in prop::collection::vec(any::<f64>(), 6),
        now in any::<f64>(),
        limits in prop::collection::vec("\\PC{0,12}|[0-9]{1,9}", 6),
        metric in any::<bool>(),
    ) {
        let kinds = [CylinderA, CylinderB, Air, Humidity, DewPoint, Surface];
        let mut readings: Vec<SiteReading> = Vec::new();
        for ((of, text), ms) in kinds.into_iter().zip(&texts).zip(&stamps) {
            readings.push(SiteReading { taken: Some(Now { ms: *ms, offset_min: i32::MIN }), ..reading(of, text) });
        }
        let mut site = site(&readings);
        site.now = Now { ms: now, offset_min: i32::MAX };
        site.job.units = if metric { Units::Metric } else { Units::Us };
        for (field, text) in
            ["dew_spread", "cylinders_apart", "site_age", "cylinder_age", "meter_rh_error", "meter_temp_error"]
                .into_iter().zip(&limits)
        {
            site = site.limit(field, text);
        }
        let (readiness, findings) = site.said();
        let text = serde_json::to_string(&readiness).unwrap();
        prop_assert!(!text.contains("NaN"));
        for one in &readiness.checks {
            for number in [one.value_f.map(|f| f.0), one.inside_by_f, one.age_min.map(|m| m.0), one.least_f.map(|f| f.0)]
                .into_iter().flatten()
            {
                prop_assert!(number.is_finite());
            }
        }
        let own = findings.iter().flat_map(|one| &one.figures).filter(|one| one.name != "text");
        prop_assert!(own.into_iter().all(|figure| !figure.text.contains("NaN")));
    }
}
