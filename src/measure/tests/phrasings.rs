//! One length in every way in which a tape is called out.

use super::*;
use proptest::prelude::*;

/// A length said in feet, inches and sixteenths, in one of many ways, with no second meaning in a box in feet.
fn said(way: usize, feet: u32, inches: u32, sixteenths: u32) -> String {
    let part = |gap: &str| if sixteenths == 0 { String::new() } else { format!("{gap}{sixteenths}/16") };
    let decimals = f64::from(sixteenths) / 16.0 + f64::from(inches);
    let whole_inches = feet * 12 + inches;
    match way {
        0 => format!("{feet}' {inches}{}\"", part(" ")),
        1 => format!("{feet}'{inches}{}", part("-")),
        2 => format!("{feet}’-{inches}{}”", part(" ")),
        3 => format!("{feet}′ {inches}{}″", part("\u{a0}")),
        4 => format!("{feet} ft {inches}{} in", part(" ")),
        5 => format!("{feet}ft{inches}{}in.", part(" ")),
        6 => format!("{feet} FEET, {inches}{} INCHES", part(" ")),
        7 => format!("{feet} feet and {inches}{} inches", part(" and ")),
        8 => format!("{feet} pies y {inches}{} pulgadas", part(" ")),
        9 => format!("{feet}'{inches}{}''", part("-")),
        10 => format!("{whole_inches}{} in", part(" ")),
        11 => format!("{feet}' - {inches}{}\"", part(" ")),
        12 => format!("{feet}' {decimals}\""),
        13 => format!("{feet}′ + {inches}{}″", part("-")),
        14 => format!("  {feet}\t'{inches}{} \" ", part("\u{202f}")),
        _ => format!("{feet} foot {inches}{}", part(" ")),
    }
}

proptest! {
    #[test]
    fn however_a_tape_is_called_out_it_is_one_length(
        way in 0_usize..16, feet in 0_u32..400, inches in 0_u32..12, sixteenths in 0_u32..16
    ) {
        let text = said(way, feet, inches, sixteenths);
        let exact = f64::from(feet * 12 + inches) + f64::from(sixteenths) / 16.0;
        for unit in [Ft, In, M, Cm, Mm] {
            prop_assert_eq!(got(&text, Kind::Length, unit), Is(exact), "{} in {:?}", &text, unit);
        }
    }

    #[test]
    fn millimeters_meters_and_their_compounds_are_exact(millimeters in 1_u32..99_999) {
        let exact = Ratio::new(i128::from(millimeters) * 5, 127).unwrap().to_f64();
        let (meters, rest) = (millimeters / 1_000, millimeters % 1_000);
        for text in [
            format!("{millimeters} mm"),
            format!("{meters}.{rest:03} m"),
            format!("{meters} m {rest} mm"),
            format!("{}.{} cm", millimeters / 10, millimeters % 10),
            format!("{},{} cm", millimeters / 10, millimeters % 10),
        ] {
            prop_assert_eq!(got(&text, Kind::Length, Ft), Is(exact), "{}", &text);
        }
    }

    #[test]
    fn a_range_is_read_whichever_word_joins_it(low in 1_u32..99, more in 1_u32..99) {
        let high = low + more;
        for text in [
            format!("{low} to {high} in"),
            format!("{low}–{high} in"),
            format!("{low} in - {high} in"),
            format!("de {low} a {high} pulgadas"),
            format!("between {low} and {high} inches"),
            format!("entre {low} y {high} pulg."),
            format!("{low} hasta {high} in"),
        ] {
            prop_assert_eq!(
                got(&text, Kind::Length, Ft), Range(low.into(), high.into()), "{}", &text
            );
        }
    }
}
