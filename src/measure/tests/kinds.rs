//! Areas, temperatures and every kind that is no length.

use super::*;

#[test]
fn areas() {
    all(
        Kind::Area,
        Ft2,
        &[
            ("62", Is(62.0)),
            ("62 ft²", Is(62.0)),
            ("62 ft2", Is(62.0)),
            ("62ft^2", Is(62.0)),
            ("62 sq ft", Is(62.0)),
            ("62 sq. ft.", Is(62.0)),
            ("62 sf", Is(62.0)),
            ("62 square feet", Is(62.0)),
            ("62 pies cuadrados", Is(62.0)),
            ("5.8 m2", Is(5.8 / 0.092_903_04)),
            ("5,8 m²", Is(5.8 / 0.092_903_04)),
            ("288 sq in", Is(2.0)),
            ("12' x 8'", Is(96.0)),
            ("12x8 ft", Is(96.0)),
            ("12 x 8", Is(96.0)),
            ("12 x 8 ft²", Is(96.0)),
            ("12'6 x 8'", Is(100.0)),
            ("3-0 x 6-8", Is(20.0)),
            ("3-0 x 6-14", No(Fault::NotTaken)),
            ("62 sqm", Is(62.0 / 0.092_903_04)),
            ("10m x 4m", Is(40.0 / 0.092_903_04)),
            ("10mx4m", Is(40.0 / 0.092_903_04)),
            ("10 por 4 metros", Is(40.0 / 0.092_903_04)),
            ("12x8 + 10x4", Is(136.0)),
            ("62 + 14 ft²", Is(76.0)),
            ("60-70 sq ft", Range(60.0, 70.0)),
            ("about 30 ft x 7.5 ft", Range(213.75, 236.25)),
            ("16\" x 9", Ask(&[(S::BoxUnit, 12.0), (S::OtherUnit, 1.0)])),
            ("62 ft", No(Fault::WrongUnit)),
            ("12' x 8' x 9'", No(Fault::ThreeLengths)),
            ("12 x", No(Fault::NotANumber)),
            ("-62", No(Fault::Negative)),
            ("5 6", No(Fault::NotTaken)),
        ],
    );
    all(Kind::Area, M2, &[("10 x 4", Is(40.0 / 0.092_903_04)), ("1'000", Is(1_000.0 / 0.092_903_04))]);
}

#[test]
fn temperatures() {
    all(
        Kind::Temperature,
        F,
        &[
            ("63", Is(63.0)),
            ("63 F", Is(63.0)),
            ("63°", Is(63.0)),
            ("63 degrees", Is(63.0)),
            ("17.2°C", Is(62.96)),
            ("17,2 ºC", Is(62.96)),
            ("17 grados centígrados", Is(62.6)),
            ("-5", Is(-5.0)),
            ("+4 °C", Is(39.2)),
            ("-5 to 3", Range(-5.0, 3.0)),
            ("70-90 °F", Range(70.0, 90.0)),
            ("10 to 20 C", Range(50.0, 68.0)),
            ("63 ± 2", Range(61.0, 65.0)),
            ("20 ± 1 °C", Range(66.2, 69.8)),
            ("about 63", Range(60.0, 66.0)),
            ("63 + 2", No(Fault::NotTaken)),
            ("63 ft", No(Fault::WrongUnit)),
        ],
    );
    all(Kind::Temperature, C, &[("16", Is(60.8)), ("63 F", Is(63.0)), ("-10", Is(14.0))]);
    all(Kind::TemperatureStep, F, &[("5", Is(5.0)), ("3 °C", Is(5.4)), ("-5", No(Fault::Negative))]);
}

#[test]
fn the_other_kinds() {
    all(
        Kind::Weight,
        Lb,
        &[
            ("40", Is(40.0)),
            ("12 lb 8 oz", Is(12.5)),
            ("8 oz", Is(0.5)),
            ("40#", Is(40.0)),
            ("1 kg", Is(1.0 / 0.453_592_37)),
            ("12 lb 8", No(Fault::NotTaken)),
        ],
    );
    all(
        Kind::Density,
        LbFt3,
        &[("1.85", Is(1.85)), ("1.85 lb/ft³", Is(1.85)), ("1.85 pcf", Is(1.85)), ("2 lb per cu ft", Is(2.0))],
    );
    all(
        Kind::Percent,
        Pct,
        &[
            ("86", Is(86.0)),
            ("86%", Is(86.0)),
            ("86 por ciento", Is(86.0)),
            ("7 1/2 %", Is(7.5)),
            ("60 ± 5 %", Range(55.0, 65.0)),
        ],
    );
    all(
        Kind::Count,
        Each,
        &[
            ("12", Is(12.0)),
            ("twelve", Is(12.0)),
            ("tres", Is(3.0)),
            ("2 + 3", Is(5.0)),
            ("1,200", Is(1_200.0)),
            ("42 to 44", Range(42.0, 44.0)),
            ("2.5", No(Fault::NotWhole)),
            ("1/2", No(Fault::NotWhole)),
        ],
    );
    all(
        Kind::Resistance,
        R,
        &[
            ("R-20", Is(20.0)),
            ("R20", Is(20.0)),
            ("r 6.5", Is(6.5)),
            ("20", Is(20.0)),
            ("R-13 to R-15", Range(13.0, 15.0)),
            ("R13-15", Range(13.0, 15.0)),
            ("20+5", No(Fault::NotTaken)),
            ("R--20", No(Fault::Negative)),
        ],
    );
    let rsi = 5.678_263_341_113_488;
    all(
        Kind::Resistance,
        Rsi,
        &[
            ("RSI 3.5", Is(3.5 * rsi)),
            ("3.5", Is(3.5 * rsi)),
            ("3.5 m²·K/W", Is(3.5 * rsi)),
            ("R-20", Is(20.0)),
        ],
    );
    all(Kind::Permeance, Perm, &[("0.8", Is(0.8)), ("0.8 perms", Is(0.8)), ("0.8 US perm", Is(0.8))]);
    all(
        Kind::FoamVolume,
        BdFt,
        &[
            ("812", Is(812.0)),
            ("812 bd ft", Is(812.0)),
            ("812 board feet", Is(812.0)),
            ("812 bf", Is(812.0)),
            ("812 pies tablares", Is(812.0)),
            ("10 ft3", Is(120.0)),
            ("10 cu ft", Is(120.0)),
            ("1 m³", Is(1000.0 / 2.359_737_216)),
            ("100 L", Is(100.0 / 2.359_737_216)),
        ],
    );
    all(
        Kind::Duration,
        Min,
        &[
            ("15", Is(15.0)),
            ("15 min", Is(15.0)),
            ("1 h 30", Is(90.0)),
            ("1h30", Is(90.0)),
            ("1 h 30 m", Is(90.0)),
            ("24 h", Is(1_440.0)),
            ("2 days", Is(2_880.0)),
            ("1:30", Is(90.0)),
            ("90 s", Is(1.5)),
            ("8-24 h", Range(480.0, 1_440.0)),
            ("1:75", No(Fault::NotTaken)),
        ],
    );
    all(
        Kind::Money,
        Usd,
        &[
            ("$284", Is(28_400.0)),
            ("284.50", Is(28_450.0)),
            ("284,50", Is(28_450.0)),
            ("1 500", Is(150_000.0)),
            ("1,500", Is(150_000.0)),
            ("$1,500.00", Is(150_000.0)),
            ("US$ 1'500", Is(150_000.0)),
            ("284 dólares", Is(28_400.0)),
            ("USD 284", Is(28_400.0)),
            ("$280-$300", Range(28_000.0, 30_000.0)),
            ("1.500", Ask(&[(S::Thousands, 150_000.0), (S::Literal, 150.0)])),
            ("$284.505", No(Fault::NotTaken)),
            ("-$5", No(Fault::Negative)),
        ],
    );
}

#[test]
fn dates() {
    let day = Is(20_742.0);
    all(
        Kind::Date,
        Date,
        &[
            ("2026-10-16", day.clone()),
            ("Oct 16 2026", day.clone()),
            ("October 16th, 2026", day.clone()),
            ("16 Oct. 2026", day.clone()),
            ("16 de octubre de 2026", day.clone()),
            ("10/16/2026", day.clone()),
            ("16/10/2026", day.clone()),
            ("16.10.2026", day.clone()),
            ("10/16/26", day),
            ("3/4/2026", Ask(&[(S::MonthFirst, 20_516.0), (S::DayFirst, 20_546.0)])),
            ("3/3/2026", Is(20_515.0)),
            ("2026-02-29", No(Fault::NoSuchDay)),
            ("2028-02-29", Is(21_243.0)),
            ("13/13/2026", No(Fault::NoSuchDay)),
            ("Oct 16", No(Fault::NotTaken)),
            ("2026", No(Fault::NotTaken)),
            ("10/16-2026", No(Fault::NotTaken)),
        ],
    );
}

#[test]
fn long_texts_are_not_looked_at() {
    assert_eq!(got(&"1".repeat(201), Kind::Number, One), No(Fault::TooLong));
    assert_eq!(got(&"1+".repeat(101), Kind::Number, One), No(Fault::TooLong));
}

#[test]
fn a_sense_that_does_not_apply_is_ignored() {
    assert_eq!(
        read("12-6", Kind::Length, Ft, Some(Sense::DecimalComma)),
        read("12-6", Kind::Length, Ft, None)
    );
    assert_eq!(read("12", Kind::Length, Ft, Some(Sense::Range)), read("12", Kind::Length, Ft, None));
    // Two places that raise different questions cannot be settled by one press.
    assert_eq!(got("5.11 + 1,200", Kind::Length, Ft), No(Fault::NotTaken));
}

/// 1 mph = 1.609344 km/h = 0.44704 m/s (NIST SP 811, appendix B.8).
#[test]
fn speeds_of_wind() {
    all(
        Kind::Speed,
        Mph,
        &[
            ("12", Is(12.0)),
            ("12 mph", Is(12.0)),
            ("12 mi/h", Is(12.0)),
            ("12 miles per hour", Is(12.0)),
            ("8-12 mph", Range(8.0, 12.0)),
            ("20 km/h", Is(20.0 / 1.609_344)),
            ("20 kmh", Is(20.0 / 1.609_344)),
            ("20 kilómetros por hora", Is(20.0 / 1.609_344)),
            ("5 m/s", Is(5.0 / 0.447_04)),
            ("5 m", No(Fault::WrongUnit)),
            ("5 km", No(Fault::WrongUnit)),
            ("5 m/h", No(Fault::WrongUnit)),
            ("5 F", No(Fault::WrongUnit)),
            ("-3", No(Fault::Negative)),
        ],
    );
    all(Kind::Speed, Kmh, &[("20", Is(20.0 / 1.609_344)), ("12 mph", Is(12.0))]);
}

/// Rise per run; degrees by their tangent (45° is one to one, 30° is 1/√3), percent by their hundredth.
#[test]
fn a_pitch_in_its_four_ways() {
    let third = Is(4.0 / 12.0);
    for text in [
        "4/12",
        "4:12",
        "4 in 12",
        "4in12",
        "4 on 12",
        "4 en 12",
        "4",
        "4.0",
        "4\" in 12\"",
        "4 in / 12",
        "33 1/3 %",
    ] {
        assert_eq!(got(text, Kind::Pitch, In12), third, "{text}");
    }
    assert_eq!(got("4 1/2 in 12", Kind::Pitch, In12), Is(0.375));
    assert_eq!(got("4.5:12", Kind::Pitch, In12), Is(0.375));
    assert_eq!(got("45°", Kind::Pitch, In12), Is(1.0));
    assert_eq!(got("0 deg", Kind::Pitch, In12), Is(0.0));
    assert_eq!(got("30 degrees", Kind::Pitch, In12), Is(0.577_350_269));
    assert_eq!(got("4/12 to 6/12", Kind::Pitch, In12), Range(4.0 / 12.0, 0.5));
    assert_eq!(got("4/0", Kind::Pitch, In12), No(Fault::ZeroBelowTheLine));
    assert_eq!(got("4:0", Kind::Pitch, In12), No(Fault::ZeroBelowTheLine));
    assert_eq!(got("-4/12", Kind::Pitch, In12), No(Fault::Negative));
    assert_eq!(got("90°", Kind::Pitch, In12), No(Fault::TooLarge));
    assert_eq!(got("4 ft", Kind::Pitch, In12), No(Fault::WrongUnit));
    for sixteenths in 0..800 {
        let pitch = f64::from(sixteenths) / 16.0 / 12.0;
        let Is(back) = got(&write(Kind::Pitch, pitch, Style::Us), Kind::Pitch, In12) else {
            panic!("{pitch}")
        };
        assert!((back - pitch).abs() <= 0.005 / 12.0 + 1e-12, "{pitch} {back}");
    }
    let shown = echo("4/12", Kind::Pitch, In12, None, Units::Us);
    assert_eq!(
        (&*shown.text, shown.other),
        ("4\u{a0}in\u{a0}12", vec!["18.43°".to_owned(), "33.33\u{a0}%".into()])
    );
}
