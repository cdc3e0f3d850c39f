//! Times of day, places on the globe, flows of air and power.

use super::*;

const fn at(hour: u32, minute: u32) -> f64 {
    (hour * 60 + minute) as f64
}

/// On the clock of twelve hours 12 am is midnight and 12 pm noon, as clocks and phones have it; hours of 13 and more, 0
/// and those led by a zero are of the clock of 24 hours (ISO 8601).
#[test]
fn times_of_day() {
    all(
        Kind::Clock,
        Clock,
        &[
            ("8 am", Is(at(8, 0))),
            ("8am", Is(at(8, 0))),
            ("8 a.m.", Is(at(8, 0))),
            ("8:30pm", Is(at(20, 30))),
            ("8:30 P.M.", Is(at(20, 30))),
            ("12 am", Is(at(0, 0))),
            ("12:30 pm", Is(at(12, 30))),
            ("18:05", Is(at(18, 5))),
            ("1805", Is(at(18, 5))),
            ("18.05", Is(at(18, 5))),
            ("18 h 05", Is(at(18, 5))),
            ("18 h", Is(at(18, 0))),
            ("18", Is(at(18, 0))),
            ("08:00", Is(at(8, 0))),
            ("0800", Is(at(8, 0))),
            ("0:30", Is(at(0, 30))),
            ("0", Is(0.0)),
            ("23:59", Is(at(23, 59))),
            ("noon", Is(at(12, 0))),
            ("12 noon", Is(at(12, 0))),
            ("midnight", Is(0.0)),
            ("12 midnight", Is(0.0)),
            ("mediodía", Is(at(12, 0))),
            ("12 del mediodía", Is(at(12, 0))),
            ("8 de la mañana", Is(at(8, 0))),
            ("8 de la man\u{303}ana", Is(at(8, 0))),
            ("8 p. m.", Is(at(20, 0))),
            ("8:15 a. m.", Is(at(8, 15))),
            ("4 de la tarde", Is(at(16, 0))),
            ("9 de la noche", Is(at(21, 0))),
            ("8", Ask(&[(S::Morning, 480.0), (S::Afternoon, 1200.0)])),
            ("8:00", Ask(&[(S::Morning, 480.0), (S::Afternoon, 1200.0)])),
            ("830", Ask(&[(S::Morning, 510.0), (S::Afternoon, 1230.0)])),
            ("12:30", Ask(&[(S::Morning, 30.0), (S::Afternoon, 750.0)])),
            // Said differently from place to place, or of one day's midnight or the other's.
            ("12 de la noche", No(Fault::NotTaken)),
            ("12 de la mañana", No(Fault::NotTaken)),
            ("2 de la noche", No(Fault::NotTaken)),
            ("24:00", No(Fault::NotTaken)),
            ("13 pm", No(Fault::NotTaken)),
            ("0 am", No(Fault::NotTaken)),
            ("8 noon", No(Fault::NotTaken)),
            ("12:05 noon", No(Fault::NotTaken)),
            ("8:75", No(Fault::NotTaken)),
            ("8:5", No(Fault::NotTaken)),
            ("8 de la", No(Fault::NotTaken)),
            ("8 pm 5", No(Fault::NotTaken)),
            ("8-10 am", No(Fault::NotTaken)),
            ("18005", No(Fault::NotTaken)),
            ("am", No(Fault::NotANumber)),
            ("-8", No(Fault::NotANumber)),
            ("8 ft", No(Fault::WrongUnit)),
        ],
    );
    for minutes in 0..1_440_u32 {
        let value = f64::from(minutes);
        assert_eq!(got(&write(Kind::Clock, value, Style::Us), Kind::Clock, Clock), Is(value));
        let metric = write(Kind::Clock, value, Style::MetricUsual);
        let shown = echo(&metric, Kind::Clock, Clock, Some(Sense::Afternoon), Units::Metric);
        assert!(!shown.text.contains('≈'), "{metric}");
    }
    for (value, us, metric) in [
        (at(18, 5), "6:05\u{a0}pm", "18:05"),
        (0.0, "12:00\u{a0}am", "0:00"),
        (at(12, 0), "12:00\u{a0}pm", "12:00"),
        (1_440.0, "–", "–"),
    ] {
        assert_eq!(write(Kind::Clock, value, Style::Us), us);
        assert_eq!(write(Kind::Clock, value, Style::MetricUsual), metric);
    }
    let asked = echo("8:30", Kind::Clock, Clock, None, Units::Us);
    let texts: Vec<_> = asked.meanings.iter().map(|one| one.text.as_str()).collect();
    assert_eq!(texts, ["8:30\u{a0}am", "8:30\u{a0}pm"]);
    assert_eq!(echo("18:05", Kind::Clock, Clock, None, Units::Us).text, "6:05\u{a0}pm");
}

/// 60 minutes to the degree, 60 seconds to the minute (ISO 6709): 44° 58′ 48″ is 44.98° exactly.
#[test]
fn degrees_of_latitude_and_longitude() {
    all(
        Kind::Coordinate,
        Arc,
        &[
            ("44.98", Is(44.98)),
            ("44,98", Is(44.98)),
            ("44,980", Is(44.98)),
            ("-93.27", Is(-93.27)),
            ("−93.27°", Is(-93.27)),
            ("+44.98", Is(44.98)),
            ("44.98 N", Is(44.98)),
            ("44.98° norte", Is(44.98)),
            ("44.98 degrees north", Is(44.98)),
            ("N 44.98", Is(44.98)),
            ("93.27 W", Is(-93.27)),
            ("93.27W", Is(-93.27)),
            ("93,27 O", Is(-93.27)),
            ("93.27 oeste", Is(-93.27)),
            ("33.9 S", Is(-33.9)),
            ("33.9 sur", Is(-33.9)),
            ("151.2 E", Is(151.2)),
            ("44° 58′ 48″ N", Is(44.98)),
            ("44°58'48\"N", Is(44.98)),
            ("44 58 48", Is(44.98)),
            ("N44° 58.8′", Is(44.98)),
            ("93°16'W", Is(-(93.0 + 16.0 / 60.0))),
            ("-93° 16′", Is(-(93.0 + 16.0 / 60.0))),
            ("0", Is(0.0)),
            ("-93.27 W", No(Fault::NotTaken)),
            ("N 44.98 S", No(Fault::NotTaken)),
            ("44° 60′", No(Fault::NotTaken)),
            ("44.5° 30′", No(Fault::NotTaken)),
            ("44.98, -93.27", No(Fault::NotANumber)),
            ("44.98 -93.27", No(Fault::NotTaken)),
            ("44.98 ft", No(Fault::WrongUnit)),
            ("N", No(Fault::NotANumber)),
        ],
    );
    assert_eq!(write(Kind::Coordinate, -93.27, Style::Us), "−93.27°");
    assert_eq!(echo("44° 58′ 48″ N", Kind::Coordinate, Arc, None, Units::Us).text, "44.98°");
    assert_eq!(echo("44.97784", Kind::Coordinate, Arc, None, Units::Us).text, "≈\u{a0}44.9778°");
}

/// 1 ft³/min is 0.471 947 4 L/s (NIST SP 811, appendix B.8); the foot is 0.3048 m exactly.
#[test]
fn flows_of_air() {
    const LITER: f64 = 60.0 / 28.316_846_592;
    const CUBIC_METER: f64 = 1_000.0 / 60.0 / 28.316_846_592;
    all(
        Kind::Airflow,
        Cfm,
        &[
            ("200", Is(200.0)),
            ("200 cfm", Is(200.0)),
            ("1,200 cfm", Is(1_200.0)),
            ("1,200", Is(1_200.0)),
            ("1.200 cfm", Ask(&[(S::Thousands, 1_200.0), (S::Literal, 1.2)])),
            ("200 ft³/min", Is(200.0)),
            ("200 ft3/min", Is(200.0)),
            ("200 cu ft per minute", Is(200.0)),
            ("200 pies cúbicos por minuto", Is(200.0)),
            ("200 pcm", Is(200.0)),
            ("94 L/s", Is(94.0 * LITER)),
            ("94 l/s", Is(94.0 * LITER)),
            ("1,200 L/s", Ask(&[(S::Thousands, 1_200.0 * LITER), (S::DecimalComma, 1.2 * LITER)])),
            ("200 + 150", Is(350.0)),
            ("150-200 cfm", Range(150.0, 200.0)),
            ("200 ft³", No(Fault::WrongUnit)),
            ("200 ft³/h", No(Fault::WrongUnit)),
            ("94 L", No(Fault::WrongUnit)),
            ("94 L/min", No(Fault::WrongUnit)),
            ("-200", No(Fault::Negative)),
        ],
    );
    for text in ["340 m³/h", "340 m3/h", "340 m3 por hora"] {
        let Is(cfm) = got(text, Kind::Airflow, Lps) else { panic!("{text}") };
        assert!((cfm / (340.0 * CUBIC_METER) - 1.0).abs() < 1e-15, "{text}: {cfm}");
        assert!((cfm / (340.0 / 3_600.0 / 4.719_474e-4) - 1.0).abs() < 2e-7, "{text}: {cfm}");
    }
    all(Kind::Airflow, Lps, &[("94", Is(94.0 * LITER))]);
    assert_eq!(write(Kind::Airflow, 200.0, Style::MetricUsual), "94\u{a0}L/s");
    let fan = echo("200", Kind::Airflow, Cfm, None, Units::Us);
    assert_eq!((fan.text.as_str(), fan.other), ("200\u{a0}cfm", vec!["94\u{a0}L/s".to_owned()]));
}

/// 1 Btu(IT)/h is 0.293 071 1 W (NIST SP 811, appendix B.8).
#[test]
fn power_of_heaters() {
    const KILOWATT: f64 = 3_600_000.0 / 1_055.055_852_62;
    all(
        Kind::Power,
        Btuh,
        &[
            ("100,000 Btu/h", Is(100_000.0)),
            ("100,000", Is(100_000.0)),
            ("100 000 BTU/hr", Is(100_000.0)),
            ("100000 Btu per hour", Is(100_000.0)),
            ("100000 BTU por hora", Is(100_000.0)),
            ("100000 btuh", Is(100_000.0)),
            ("100,000 BTU", Is(100_000.0)),
            ("100.000 BTU", Ask(&[(S::Thousands, 100_000.0), (S::Literal, 100.0)])),
            ("29.3 kW", Is(29.3 * KILOWATT)),
            ("29,3 kW", Is(29.3 * KILOWATT)),
            ("1,500 kW", Ask(&[(S::Thousands, 1_500.0 * KILOWATT), (S::DecimalComma, 1.5 * KILOWATT)])),
            ("1500 W", Is(1.5 * KILOWATT)),
            ("1500 vatios", Is(1.5 * KILOWATT)),
            ("60000 + 40000", Is(100_000.0)),
            ("75,000-150,000 BTU/h", Range(75_000.0, 150_000.0)),
            // A thousand in one trade, a million in another.
            ("100 MBH", No(Fault::NotANumber)),
            ("100 MBtu/h", No(Fault::NotANumber)),
            ("100k", No(Fault::NotTaken)),
            ("100000 Btu/min", No(Fault::WrongUnit)),
            ("100000 Btu/", No(Fault::WrongUnit)),
            ("29.3 kWh", No(Fault::NotANumber)),
            ("29.3 kW h", No(Fault::WrongUnit)),
            ("5 cfm", No(Fault::WrongUnit)),
            ("-5", No(Fault::Negative)),
        ],
    );
    all(Kind::Power, Kw, &[("29.3", Is(29.3 * KILOWATT)), ("100,000 Btu/h", Is(100_000.0))]);
    assert_eq!(write(Kind::Power, 100_000.0, Style::MetricUsual), "29.3\u{a0}kW");
    let Is(watt) = got("1 W", Kind::Power, Kw) else { panic!("a watt") };
    assert!((watt * 0.293_071_1 - 1.0).abs() < 2e-7, "{watt}");
    let heater = echo("100,000", Kind::Power, Btuh, None, Units::Us);
    assert_eq!((heater.text.as_str(), heater.other), ("100,000\u{a0}Btu/h", vec!["29.3\u{a0}kW".to_owned()]));
}

/// A blank takes these without a question.
#[test]
fn the_defaults_of_the_table_have_one_meaning() {
    let mut clocks = 0;
    for row in crate::job::fields().iter().filter(|row| !row.default.is_empty() && row.kind != Kind::Choice) {
        let outcome = read(row.default, row.kind, row.us, None);
        assert!(matches!(outcome, Outcome::Read(_)), "{}: {outcome:?}", row.field);
        clocks += u32::from(row.kind == Kind::Clock);
    }
    assert!(clocks > 2);
}
