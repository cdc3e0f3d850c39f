//! Every number-entry fault that public trackers of general-purpose software report (project and number of
//! the report in the test's name), as our reading has it.

use super::*;

/// Each row: the public tracker, what was typed, what it is.
macro_rules! tracker {
    ($($name:ident: $kind:ident, $unit:ident, [$($text:literal => $want:expr),+ $(,)?];)+) => {
        $(#[test] fn $name() { all(Kind::$kind, $unit, &[$(($text, $want)),+]); })+
    };
}

tracker! {
    p1_pint_34: Length, In, ["2 1/2 in" => Is(2.5), "2 1/2" => Is(2.5)];
    p2_ruby_units_83: FoamVolume, BdFt, ["6 1/2 bd ft" => Is(6.5)];
    p3_ruby_units_276: Length, Ft, ["5' 3/4\"" => Is(60.75)];
    p4_numi_179: Length, In, ["4 1/2 + 9" => Is(13.5)];
    p5_a_recipe_parser_192: Length, In, [
        "2½" => Is(2.5), "2¼" => Is(2.25), "2¾" => Is(2.75), "2⅛" => Is(2.125), "2⅜" => Is(2.375),
        "2⅝" => Is(2.625), "2⅞" => Is(2.875), "⅓" => Is(1.0 / 3.0), "⅔" => Is(2.0 / 3.0), "2 1\u{2044}2" => Is(2.5),
        "5½\"" => Is(5.5),
    ];
    p6_libqalculate_89: Length, Ft, ["5'20" => Is(80.0), "5'20\"" => Is(80.0), "5′20″" => Is(80.0)];
    p7_unitful_522: Length, In, [
        "5'" => Is(60.0), "5’" => Is(60.0), "5‘" => Is(60.0), "5′" => Is(60.0), "5´" => Is(60.0), "5`" => Is(60.0),
        "5\"" => Is(5.0), "5”" => Is(5.0), "5“" => Is(5.0), "5″" => Is(5.0), "5''" => Is(5.0), "5’’" => Is(5.0),
        "5′′" => Is(5.0),
    ];
    p8_units_net_673: Length, Ft, ["-1' 3\"" => No(Fault::Negative), "-0' 1\"" => No(Fault::Negative)];
    p9_units_net_72: Length, Ft, ["60 ft 1 in" => Is(721.0)];
    p10_units_net_817: Length, Ft, [
        "1'000' 6\"" => Ask(&[(S::Thousands, 12_006.0), (S::FeetInches, 18.0)]),
    ];
    p13_numara_190: Length, Ft, [
        "5 foot 2 in m" => Ask(&[(S::Converted, 62.0), (S::Literal, 60.0 + 2000.0 / 25.4)]),
    ];
    p14_duckling_old_23: Length, In, ["5 foot 10" => Is(70.0), "5'9" => Is(69.0)];
    p15_lion_1731_decimal_comma: Length, M, [
        "1,23" => Is(123.0 / 2.54), "0,5" => Is(50.0 / 2.54), "4,5" => Is(450.0 / 2.54), "1,2345" => Is(123.45 / 2.54),
        "1,200" => Ask(&[(S::Thousands, 120_000.0 / 2.54), (S::DecimalComma, 120.0 / 2.54)]),
        "0,125" => Is(12.5 / 2.54),
    ];
    p16_processwire_1341: Money, Usd, ["1,23" => Is(123.0)];
    p17_ofbiz_845_thousands_by_space: Area, Ft2, [
        "29 000" => Is(29_000.0), "29\u{a0}000" => Is(29_000.0), "29\u{202f}000" => Is(29_000.0),
        "1 029 000,5" => Is(1_029_000.5),
    ];
    p18_finput_85: Number, One, [
        "12.34.56" => No(Fault::NotANumber), "1a2b3c4d" => No(Fault::NotANumber), "text " => No(Fault::NotANumber),
    ];
    p19_kuma_7518: Number, One, ["10x2" => No(Fault::NotTaken), "10e2" => No(Fault::NotTaken)];
    p20_jquery_number_97: Number, One, [
        "1.23232E+308" => No(Fault::NotTaken),
        "1232320000000000000000000000000000000000000000000000000" => No(Fault::TooLarge),
        "1000000000001" => No(Fault::TooLarge), "1000000000000" => Is(1e12),
    ];
    p21_solvespace_134: Length, In, ["3/4" => Is(0.75)];
    p22_freecad_8091: Length, In, ["3 in + 6 mm" => Is(3.0 + 30.0 / 127.0)];
    p23_alfred_converter_18: Length, Ft, ["4'2-1/4\"" => Is(50.25)];
    p24_ifcopenshell_3037: Length, M, ["6'5 1/4\"" => Is(77.25)];
    p25_archipack_337: Length, In, ["236" => Is(236.0)];
    p26_traiter_8: Length, Mm, ["10 3/8 IN." => Is(10.375)];
    p27_prairielearn_135: Temperature, F, [
        "\u{2212}5" => Is(-5.0), "\u{2013}5" => Is(-5.0), "\u{2011}5" => Is(-5.0), "-5 °C" => Is(23.0),
    ];
    p28_guiguts_913: Length, In, ["1/2,000" => No(Fault::NotTaken)];
    p30_several_calculators: Length, In, [
        "1/0" => No(Fault::ZeroBelowTheLine), "0/0" => No(Fault::ZeroBelowTheLine), "5 1/0" => No(Fault::ZeroBelowTheLine),
    ];
}

#[test]
fn p11_units_net_1656_rounds_once_and_then_splits() {
    assert_eq!(write(Kind::Length, 3.9999 * 12.0, Style::FeetInches), "4′-0″");
    assert_eq!(write(Kind::Length, 35.9999, Style::FeetInches), "3′-0″");
    assert_eq!(write(Kind::Length, 11.99, Style::FeetInches), "1′-0″");
}

#[test]
fn p12_a_tracker_app_97_keeps_the_text_and_rounds() {
    // 5′7″ is 170.18 cm; 170 cm is 5′-6 15/16″, not 5′-6″.
    assert_eq!(got("5'7\"", Kind::Length, Ft), Is(67.0));
    assert_eq!(write(Kind::Length, 170.0 / 2.54, Style::FeetInches), "5′-6\u{a0}15/16″");
}

#[test]
fn p25_archipack_337_says_the_unit_that_it_took() {
    assert_eq!(echo("236", Kind::Length, Ft, None, Units::Us).text, "236′-0″");
    assert_eq!(echo("236", Kind::Length, In, None, Units::Us).text, "19′-8″");
}

#[test]
fn p29_mathjs_1208_24_in_are_2_ft() {
    let Outcome::Read(Value::Band(inches)) = read("24 in", Kind::Length, Ft, None) else { panic!() };
    assert_eq!(inches.likely.over(Ratio::whole(12)), Some(Ratio::whole(2)));
    assert_eq!(write(Kind::Length, inches.likely.to_f64(), Style::DecimalFeet), "2\u{a0}ft");
}

#[test]
fn p18_finput_85_a_space_at_the_end_is_no_fault() {
    assert_eq!(got("12 ", Kind::Number, One), Is(12.0));
}
