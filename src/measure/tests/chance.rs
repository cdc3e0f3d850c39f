//! What holds for any text and any value.

use super::*;
use proptest::prelude::*;

const KINDS: &[Kind] = &[
    Kind::Length,
    Kind::Member,
    Kind::Area,
    Kind::Temperature,
    Kind::TemperatureStep,
    Kind::Weight,
    Kind::Density,
    Kind::Count,
    Kind::Percent,
    Kind::Resistance,
    Kind::Permeance,
    Kind::FoamVolume,
    Kind::Duration,
    Kind::Money,
    Kind::Date,
    Kind::Number,
    Kind::Pitch,
    Kind::Clock,
    Kind::Coordinate,
    Kind::Airflow,
    Kind::Power,
];
const UNITS: &[Unit] = &[
    Ft, In, In12, Deg, M, Cm, Mm, Ft2, In2, M2, F, C, Lb, Oz, Kg, G, LbFt3, KgM3, Each, Pct, R, Rsi, Perm,
    Metricperm, BdFt, Ft3, L, M3, Sec, Min, Hr, Day, Usd, Date, One, Clock, Arc, Cfm, Lps, M3h, Btuh, Kw, W,
];
const SENSES: &[Option<Sense>] = &[
    None,
    Some(S::FeetInches),
    Some(S::DecimalFeet),
    Some(S::Sum),
    Some(S::Range),
    Some(S::Difference),
    Some(S::Thousands),
    Some(S::DecimalComma),
    Some(S::Converted),
    Some(S::Literal),
    Some(S::Nominal),
    Some(S::MonthFirst),
    Some(S::DayFirst),
    Some(S::BoxUnit),
    Some(S::OtherUnit),
    Some(S::DepthFirst),
    Some(S::Morning),
    Some(S::Afternoon),
];
const STYLES: &[Style] =
    &[Style::FeetInches, Style::DecimalFeet, Style::Inches, Style::Metric, Style::Us, Style::MetricUsual];

/// Reads a text in every box and checks what has to hold of any outcome.
fn everywhere(text: &str) {
    for &kind in KINDS {
        for &unit in UNITS {
            let plain = read(text, kind, unit, None);
            if !units::fits(kind, unit) {
                assert!(matches!(plain, Outcome::Refused(_) | Outcome::Blank));
                continue;
            }
            for &sense in SENSES {
                let outcome = read(text, kind, unit, sense);
                match &outcome {
                    Outcome::Read(Value::Band(one)) => {
                        assert!(one.low <= one.likely && one.likely <= one.high, "{text:?} {one:?}");
                        assert!(one.low.to_f64().is_finite() && one.high.to_f64().is_finite());
                    }
                    Outcome::Ask(meanings) => {
                        assert!(meanings.len() >= 2);
                        for (at, meaning) in meanings.iter().enumerate() {
                            assert!(meanings.iter().skip(at + 1).all(|other| {
                                other.sense != meaning.sense && other.value != meaning.value
                            }));
                        }
                    }
                    _ => {}
                }
                // A sense settles a question and changes nothing else.
                if !matches!(plain, Outcome::Ask(_)) {
                    assert_eq!(outcome, plain, "{text:?} {kind:?} {unit:?} {sense:?}");
                }
            }
            let echo = echo(text, kind, unit, None, Units::Metric);
            assert_eq!(echo.fault == Some(Fault::Several), !echo.several.is_empty(), "{text:?} {kind:?}");
            // Each measure of a list is taken by a box of its own, or asked about there.
            for part in echo.several.iter().flatten() {
                let kind = if part.unit == Each { Kind::Count } else { Kind::Length };
                let own = read(&part.text, kind, part.unit, part.sense);
                assert!(matches!(own, Outcome::Read(_) | Outcome::Ask(_)), "{text:?}: {part:?}");
            }
        }
    }
}

#[test]
fn hostile_texts() {
    for text in [
        "1e308",
        "-1e308",
        "NaN",
        "inf",
        "0/0",
        "\u{0}",
        "1/1/1",
        "''''''",
        "+++",
        "5'5'5'5'",
        "½½½",
        "..",
        ",,,",
        "1,",
        "~~~",
        "to to",
        "a a",
        "x",
        "°",
        "5 to",
        "± ±",
        "99999999999999999999999999999999999999999",
        "170141183460469231731687303715884105727",
        "1/170141183460469231731687303715884105727",
        "170141183460469231731687303715884105727/170141183460469231731687303715884105726 m",
        "0.00000000000000000000000000000000000001 m",
        "9999-99-99",
        "R-R-R-R-",
        "1:1:1",
        "$$$",
        "@",
        "6 @",
        "6 @ x",
        "() 2 x 4",
        "x x x",
        "four four x four",
        "6 @ 2'x4' @ 3",
        "99999999999999999999 @ 2 x 4",
        "18446744073709551615 @ 2 x 4",
        "courses",
        "12 courses of",
        "170141183460469231731687303715884105727 courses",
        "steel - - x",
        "i-joist 11 7/8 x",
        "8:",
        ":30",
        "am",
        "de la",
        "99999999999999999999 am",
        "N N",
        "° ′ ″",
        "1° 99′",
        "cfm",
        "/min",
    ] {
        everywhere(text);
    }
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308, -1e308, f64::MIN_POSITIVE, -0.0] {
        for &kind in KINDS {
            for &style in STYLES {
                let text = write(kind, value, style);
                assert!(!text.is_empty() && !text.contains("NaN") && !text.contains("inf"), "{text}");
                let none = value.is_nan() || value.abs() >= 1.0;
                assert_eq!(text.contains('–'), none, "{kind:?} {value} {text}");
            }
        }
    }
}

/// Pieces of which readings are made, so that chance finds texts that nearly are readings.
const PIECES: &[&str] = &[
    "1", "2", "6", "12", "000", "0", "5.11", ",", ".", "'", "\"", "-", "–", "/", "1/2", "½", " ", " ", " ",
    "ft", "in", "m", "mm", "to", "a", "de", "y", "and", "about", "x", "+", "±", "%", "$", "R", "°", "C", "h",
    ":", "lb", "²", "Oct", "between", "sq", "2026", "kg", "(", ")", "e5", "@", "x", "x", "four", "dos",
    "courses", "of", "block", "steel", "i-joist", "ea", "am", "p", "noon", "la", "noche", "8", "N", "W", "O",
    "Btu", "kW", "cfm", "per",
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn any_text_has_an_outcome(text in any::<String>()) {
        everywhere(&text);
    }

    #[test]
    fn any_bytes_have_an_outcome(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        everywhere(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn anything_like_a_reading_has_an_outcome(pieces in prop::collection::vec(prop::sample::select(PIECES), 0..9)) {
        everywhere(&pieces.concat());
    }
}

proptest! {
    #[test]
    fn a_length_in_sixteenths_is_written_and_read_back(sixteenths in 0_u32..16 * 12 * 900) {
        let inches = f64::from(sixteenths) / 16.0;
        for style in [Style::FeetInches, Style::Inches, Style::Us] {
            let text = write(Kind::Length, inches, style);
            for unit in [Ft, In, M, Mm] {
                prop_assert_eq!(got(&text, Kind::Length, unit), Is(inches), "{}", &text);
            }
        }
    }

    #[test]
    fn what_is_written_is_read_back_within_its_rounding(value in 0.0..900_f64) {
        for (kind, unit, style, within) in [
            (Kind::Length, In, Style::DecimalFeet, 0.0601),
            (Kind::Length, In, Style::Metric, 0.0201),
            (Kind::Area, M2, Style::Us, 0.0501),
            (Kind::Area, Ft2, Style::MetricUsual, 0.0539),
            (Kind::Temperature, C, Style::Us, 0.0501),
            (Kind::Temperature, F, Style::MetricUsual, 0.0901),
            (Kind::TemperatureStep, F, Style::MetricUsual, 0.0901),
            (Kind::Weight, Kg, Style::Us, 0.00501),
            (Kind::Weight, Lb, Style::MetricUsual, 0.0111),
            (Kind::Density, LbFt3, Style::MetricUsual, 0.00313),
            (Kind::Percent, Pct, Style::Us, 0.0501),
            (Kind::Resistance, Rsi, Style::Us, 0.0501),
            (Kind::Resistance, R, Style::MetricUsual, 0.0285),
            (Kind::Permeance, Perm, Style::MetricUsual, 0.000_88),
            (Kind::FoamVolume, L, Style::Us, 0.0501),
            (Kind::FoamVolume, BdFt, Style::MetricUsual, 0.213),
            (Kind::Duration, Hr, Style::Us, 0.501),
            (Kind::Number, One, Style::Us, 0.000_501),
            (Kind::Airflow, Lps, Style::Us, 0.501),
            (Kind::Airflow, Cfm, Style::MetricUsual, 1.06),
            (Kind::Power, Kw, Style::Us, 0.501),
            (Kind::Power, Btuh, Style::MetricUsual, 171.0),
            (Kind::Coordinate, Arc, Style::Us, 0.000_051),
        ] {
            let text = write(kind, value, style);
            match got(&text, kind, unit) {
                Is(back) => prop_assert!((back - value).abs() <= within, "{} {} {}", value, text, back),
                other => prop_assert!(false, "{} {:?} {:?}", text, kind, other),
            }
        }
    }

    #[test]
    fn cents_counts_and_days_are_read_back_exactly(whole in 0_u32..2_000_000) {
        let value = f64::from(whole);
        for style in [Style::Us, Style::MetricUsual] {
            prop_assert_eq!(got(&write(Kind::Money, value, style), Kind::Money, Usd), Is(value));
            prop_assert_eq!(got(&write(Kind::Count, value, style), Kind::Count, Each), Is(value));
            prop_assert_eq!(got(&write(Kind::Date, value, style), Kind::Date, Date), Is(value));
        }
    }
}
