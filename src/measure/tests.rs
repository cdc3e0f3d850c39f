//! Readings as people write them, among them every number-entry fault that public trackers of
//! general-purpose software report (project and issue number beside each).

use super::Unit::*;
use super::*;
use proptest::prelude::*;

/// What a text is expected to be: low, likely, high; or the senses asked for; or a fault.
#[derive(Debug, Clone, PartialEq)]
enum Want {
    Is(f64),
    Range(f64, f64),
    Ask(&'static [(Sense, f64)]),
    No(Fault),
    Blank,
}
use Want::{Ask, Is, No, Range};

fn ratio(num: i128, den: i128) -> Ratio {
    Ratio::new(num, den).unwrap()
}

fn likely(value: &Value) -> f64 {
    match value {
        Value::Band(reading) => reading.likely.to_f64(),
        Value::Member(member) => member.width_in.to_f64(),
    }
}

fn got(text: &str, kind: Kind, unit: Unit) -> Want {
    match read(text, kind, unit, None) {
        Outcome::Blank => Want::Blank,
        Outcome::Refused(fault) => No(fault),
        Outcome::Read(Value::Band(one)) if one.low == one.high => Is(one.likely.to_f64()),
        Outcome::Read(Value::Band(one)) => {
            assert!(one.low <= one.likely && one.likely <= one.high);
            Range(one.low.to_f64(), one.high.to_f64())
        }
        Outcome::Read(member) => Is(likely(&member)),
        Outcome::Ask(meanings) => {
            for meaning in &meanings {
                // Pressing a meaning reads that meaning.
                assert_eq!(read(text, kind, unit, Some(meaning.sense)), Outcome::Read(meaning.value.clone()));
            }
            Ask(Vec::leak(meanings.iter().map(|one| (one.sense, likely(&one.value))).collect()))
        }
    }
}

/// Equal, where a wanted figure of a metric text is itself a rounded double: to its last bit or two.
fn same(got: &Want, want: &Want) -> bool {
    let near = |one: f64, two: f64| (one - two).abs() <= 4e-16 * two.abs();
    match (got, want) {
        (Is(got), Is(want)) => near(*got, *want),
        (Range(low, high), Range(least, most)) => near(*low, *least) && near(*high, *most),
        (Ask(got), Ask(want)) => {
            got.len() == want.len()
                && got.iter().zip(*want).all(|(got, want)| got.0 == want.0 && near(got.1, want.1))
        }
        _ => got == want,
    }
}

#[track_caller]
fn all(kind: Kind, unit: Unit, rows: &[(&str, Want)]) {
    let wrong: Vec<_> = rows
        .iter()
        .filter_map(|(text, want)| {
            let got = got(text, kind, unit);
            (!same(&got, want)).then(|| format!("{text:?} in {kind:?}/{unit:?}: {got:?}, wanted {want:?}"))
        })
        .collect();
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// Each row: the public tracker, what was typed, what it is.
macro_rules! tracker {
    ($($name:ident: $kind:ident, $unit:ident, [$($text:literal => $want:expr),+ $(,)?];)+) => {
        mod tracker {
            use super::*;
            $(#[test] fn $name() { all(Kind::$kind, $unit, &[$(($text, $want)),+]); })+
        }
    };
}

use Sense as S;

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

mod tracker_written {
    use super::*;

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
}

#[test]
fn lengths_in_a_box_in_feet() {
    all(
        Kind::Length,
        Ft,
        &[
            ("12' 6 1/2\"", Is(150.5)),
            ("12-6 1/2", Is(150.5)),
            ("12-6 1/2\"", Is(150.5)),
            ("12'6", Is(150.0)),
            ("12 6 1/2", Is(150.5)),
            ("12 6½", Is(150.5)),
            ("12 6.5", Is(150.5)),
            ("12 6\"", Is(150.0)),
            ("150.5\"", Is(150.5)),
            ("12.5 ft", Is(150.0)),
            ("12.5", Is(150.0)),
            ("12,5", Is(150.0)),
            ("12 1/2", Is(150.0)),
            ("3.82 m", Is(382.0 / 2.54)),
            ("382 cm", Is(382.0 / 2.54)),
            ("3 m 82 cm", Is(382.0 / 2.54)),
            ("3 m 820 mm", Is(382.0 / 2.54)),
            ("12'-6½″", Is(150.5)),
            ("12′-6½″", Is(150.5)),
            ("12' - 6 1/2\"", Is(150.5)),
            ("12 ft. 6 in.", Is(150.0)),
            ("12ft6in", Is(150.0)),
            ("5ft2 1/4in", Is(62.25)),
            ("5ft2in", Is(62.0)),
            ("12 feet and 6 inches", Is(150.0)),
            ("12 feet, 6 inches", Is(150.0)),
            ("12 pies 6 pulgadas", Is(150.0)),
            ("12 pies y 6 pulg.", Is(150.0)),
            ("3 metros", Is(300.0 / 2.54)),
            ("3 CENTÍMETROS", Is(3.0 / 2.54)),
            ("twelve feet", Is(144.0)),
            ("12'6 + 8'", Is(246.0)),
            ("12 + 8", Is(240.0)),
            ("12' + 8", Is(240.0)),
            ("3 + 4 in", Ask(&[(S::BoxUnit, 40.0), (S::OtherUnit, 7.0)])),
            ("42 to 44", Range(504.0, 528.0)),
            ("42-44", Range(504.0, 528.0)),
            ("7–8 in", Range(7.0, 8.0)),
            ("7-8 ft", Range(84.0, 96.0)),
            ("7'-8'", Range(84.0, 96.0)),
            ("7' to 8'6\"", Range(84.0, 102.0)),
            ("5'6\"-5'8\"", Range(66.0, 68.0)),
            ("10 to 12 ft", Range(120.0, 144.0)),
            ("6 to 8 ft 6 in", Range(72.0, 102.0)),
            ("de 7 a 8", Range(84.0, 96.0)),
            ("de 7 a 8 pulgadas", Range(7.0, 8.0)),
            ("entre 7 y 8 pies", Range(84.0, 96.0)),
            ("between 7 and 8 feet", Range(84.0, 96.0)),
            ("from 7 to 8 1/2 in", Range(7.0, 8.5)),
            ("about 30 ft", Range(342.0, 378.0)),
            ("~30'", Range(342.0, 378.0)),
            ("approx. 30", Range(342.0, 378.0)),
            ("unos 30 pies", Range(342.0, 378.0)),
            ("alrededor de 30 pies", Range(342.0, 378.0)),
            ("about 7 to 8 ft", Range(84.0, 96.0)),
            ("30 ft +/- 6 in", Range(354.0, 366.0)),
            ("30 ft ± 6 in", Range(354.0, 366.0)),
            ("30 ft ± 10 %", Range(324.0, 396.0)),
            ("12' 6\" ± 1/2", Range(149.5, 150.5)),
            // A thousands space.
            ("1 000", Is(12_000.0)),
            // Two meanings.
            ("5 6", Ask(&[(S::FeetInches, 66.0), (S::Sum, 132.0)])),
            ("5.11", Ask(&[(S::FeetInches, 71.0), (S::DecimalFeet, 61.32)])),
            ("5.10", Ask(&[(S::FeetInches, 70.0), (S::DecimalFeet, 61.2)])),
            ("5.1", Is(61.2)),
            ("5.6", Is(67.2)),
            ("5.11 ft", Is(61.32)),
            ("12-6", Ask(&[(S::FeetInches, 150.0), (S::Difference, 72.0)])),
            ("8-10", Ask(&[(S::FeetInches, 106.0), (S::Range, 108.0)])),
            ("7-8\"", Ask(&[(S::FeetInches, 92.0), (S::Range, 7.5)])),
            ("12-1/2", Ask(&[(S::Sum, 150.0), (S::FeetInches, 144.5)])),
            ("12' - 14", Ask(&[(S::FeetInches, 158.0), (S::Range, 156.0)])),
            ("7 ft - 8", Ask(&[(S::FeetInches, 92.0), (S::Range, 90.0)])),
            ("1,200", Ask(&[(S::Thousands, 14_400.0), (S::DecimalComma, 14.4)])),
            ("1,200'", Ask(&[(S::Thousands, 14_400.0), (S::DecimalComma, 14.4)])),
            ("1,234,567", Is(14_814_804.0)),
            ("1,234.5", Is(14_814.0)),
            ("1.234,5", Is(14_814.0)),
            // Refused.
            ("", Want::Blank),
            ("  \u{a0}\u{200b}", Want::Blank),
            ("abc", No(Fault::NotANumber)),
            ("-", No(Fault::NotANumber)),
            ("'", No(Fault::NotANumber)),
            ("5 kg", No(Fault::WrongUnit)),
            ("5 ft2", No(Fault::WrongUnit)),
            ("62 sq ft", No(Fault::WrongUnit)),
            ("3 km", No(Fault::WrongUnit)),
            ("10x14x8", No(Fault::NotTaken)),
            ("2x6", No(Fault::NotTaken)),
            ("5 6 7", No(Fault::NotTaken)),
            ("5' 6\" 7", No(Fault::NotTaken)),
            ("5.5' 6\"", No(Fault::NotTaken)),
            ("44 to 42", No(Fault::NotTaken)),
            ("8' - 7'", No(Fault::NotTaken)),
            ("5 + -3", No(Fault::Negative)),
            ("5--3", No(Fault::Negative)),
            ("5 +", No(Fault::NotANumber)),
            ("5 ft in m", No(Fault::WrongUnit)),
            ("1,2,3", No(Fault::NotANumber)),
            ("1/2/3", No(Fault::NotTaken)),
            ("6 ft ± 7 ft", No(Fault::Negative)),
            ("5 ft?", No(Fault::NotANumber)),
        ],
    );
}

#[test]
fn lengths_in_a_box_in_inches() {
    all(
        Kind::Length,
        In,
        &[
            ("12 6 1/2", Is(150.5)),
            ("12-6 1/2", Is(150.5)),
            ("12-6", Ask(&[(S::FeetInches, 150.0), (S::Difference, 6.0)])),
            ("5 6", Ask(&[(S::FeetInches, 66.0), (S::Sum, 11.0)])),
            ("5.11", Is(5.11)),
            ("2-1/4", Is(2.25)),
            ("2 - 1/4", Ask(&[(S::FeetInches, 24.25), (S::Difference, 1.75)])),
            ("1/4-1/2", Range(0.25, 0.5)),
            ("0-1/2", Range(0.0, 0.5)),
            ("7-8", Range(7.0, 8.0)),
            ("7–8\"", Range(7.0, 8.0)),
            ("7 a 8", Range(7.0, 8.0)),
            ("3/8 to 1 inch", Range(0.375, 1.0)),
            ("4/12", Is(1.0 / 3.0)),
            ("2x6", Is(5.5)),
            ("2×6", Is(5.5)),
            ("2 by 6", Is(5.5)),
            ("2 por 6", Is(5.5)),
            ("2x12", Is(11.25)),
            ("2x7", No(Fault::NotTaken)),
            (".5", Is(0.5)),
            (",5", Is(0.5)),
            ("5.", Is(5.0)),
            ("0.3333333333333333333333", Is(0.333_333_333_333_333_3)),
            ("90 mm", Is(90.0 / 25.4)),
            ("9 cm", Is(9.0 / 2.54)),
        ],
    );
    all(
        Kind::Length,
        Mm,
        &[
            ("8-10", Range(8.0 / 25.4, 10.0 / 25.4)),
            ("12-6", No(Fault::NotTaken)),
            ("5 6", No(Fault::NotTaken)),
            ("3 823", Is(3_823.0 / 25.4)),
            ("2x6", Is(5.5)),
            ("76", Is(76.0 / 25.4)),
        ],
    );
}

#[test]
fn members() {
    let member = |text, unit| match read(text, Kind::Member, unit, None) {
        Outcome::Read(Value::Member(member)) => (member.width_in, member.depth_in),
        other => panic!("{text}: {other:?}"),
    };
    let halves = |width, depth: i128| (ratio(width, 4), Some(ratio(depth, 4)));
    for (text, width, depth) in [
        ("2x4", 6, 14),
        ("2x6", 6, 22),
        ("2×8", 6, 29),
        ("2 by 10", 6, 37),
        ("2 X 12", 6, 45),
        ("1x4", 3, 14),
        ("4x6", 14, 22),
        ("6x8", 22, 30),
        ("1 1/2 x 5 1/2", 6, 22),
        ("1.5 x 5.5 in", 6, 22),
    ] {
        assert_eq!(member(text, In), halves(width, depth), "{text}");
        assert_eq!(
            member(text, In),
            member(text, if text.ends_with("in") || !text.contains("1 1/2") { Mm } else { In })
        );
    }
    assert_eq!(member("1 1/2", In), (ratio(3, 2), None));
    assert_eq!(member("38 x 140", Mm), (ratio(190, 127), Some(ratio(700, 127))));
    assert_eq!(member("38x140 mm", In), (ratio(190, 127), Some(ratio(700, 127))));
    all(
        Kind::Member,
        In,
        &[
            ("2\" x 6\"", Ask(&[(S::Nominal, 1.5), (S::Literal, 2.0)])),
            ("-2x6", No(Fault::Negative)),
            ("2x6x8", No(Fault::NotTaken)),
            ("2x", No(Fault::NotANumber)),
        ],
    );
}

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
            ("10m x 4m", Is(40.0 / 0.092_903_04)),
            ("10mx4m", Is(40.0 / 0.092_903_04)),
            ("10 por 4 metros", Is(40.0 / 0.092_903_04)),
            ("12x8 + 10x4", Is(136.0)),
            ("62 + 14 ft²", Is(76.0)),
            ("60-70 sq ft", Range(60.0, 70.0)),
            ("about 30 ft x 7.5 ft", Range(213.75, 236.25)),
            ("16\" x 9", Ask(&[(S::BoxUnit, 12.0), (S::OtherUnit, 1.0)])),
            ("62 ft", No(Fault::WrongUnit)),
            ("12' x 8' x 9'", No(Fault::NotTaken)),
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

#[test]
fn written_forms() {
    for (kind, value, style, text) in [
        (Kind::Length, 150.5, Style::FeetInches, "12′-6½″"),
        (Kind::Length, 36.0, Style::FeetInches, "3′-0″"),
        (Kind::Length, 7.25, Style::FeetInches, "7¼″"),
        (Kind::Length, 0.5, Style::FeetInches, "½″"),
        (Kind::Length, 0.0, Style::FeetInches, "0″"),
        (Kind::Length, 144.5, Style::FeetInches, "12′-0½″"),
        (Kind::Length, 144.1875, Style::FeetInches, "12′-0\u{a0}3/16″"),
        (Kind::Length, -60.0, Style::FeetInches, "−5′-0″"),
        (Kind::Length, -0.001, Style::FeetInches, "0″"),
        (Kind::Length, 150.5, Style::DecimalFeet, "12.54\u{a0}ft"),
        (Kind::Length, 150.5, Style::Inches, "150½\u{a0}in"),
        (Kind::Length, 3.25, Style::Us, "3¼\u{a0}in"),
        (Kind::Length, 3.83, Style::Us, "3.83\u{a0}in"),
        (Kind::Length, 5.1875, Style::Us, "5\u{a0}3/16\u{a0}in"),
        (Kind::Length, 150.5, Style::Metric, "3.823\u{a0}m"),
        (Kind::Length, 15.04, Style::Metric, "382\u{a0}mm"),
        (Kind::Length, 39.36, Style::Metric, "1\u{a0}m"),
        (Kind::Length, 3.0, Style::MetricUsual, "76.2\u{a0}mm"),
        (Kind::Area, 124.3, Style::Us, "124.3\u{a0}ft²"),
        (Kind::Area, 1_044.0, Style::Us, "1,044\u{a0}ft²"),
        (Kind::Area, 124.3, Style::MetricUsual, "11.55\u{a0}m²"),
        (Kind::Temperature, 63.0, Style::Us, "63\u{a0}°F"),
        (Kind::Temperature, 63.0, Style::MetricUsual, "17.2\u{a0}°C"),
        (Kind::Temperature, -4.0, Style::MetricUsual, "−20\u{a0}°C"),
        (Kind::TemperatureStep, 5.0, Style::MetricUsual, "2.8\u{a0}°C"),
        (Kind::Weight, 0.74, Style::Us, "0.74\u{a0}lb"),
        (Kind::Density, 1.85, Style::MetricUsual, "29.6\u{a0}kg/m³"),
        (Kind::Count, 1_200.0, Style::Us, "1,200"),
        (Kind::Percent, 86.0, Style::Us, "86\u{a0}%"),
        (Kind::Resistance, 15.0, Style::Us, "R-15"),
        (Kind::Resistance, 15.0, Style::MetricUsual, "RSI\u{a0}2.64"),
        (Kind::Permeance, 0.8, Style::MetricUsual, "45.8\u{a0}ng/(s·m²·Pa)"),
        (Kind::FoamVolume, 812.0, Style::Us, "812\u{a0}bd\u{a0}ft"),
        (Kind::FoamVolume, 812.0, Style::MetricUsual, "1\u{202f}916\u{a0}L"),
        (Kind::Duration, 15.0, Style::Us, "15\u{a0}min"),
        (Kind::Duration, 1_440.0, Style::Us, "24\u{a0}h"),
        (Kind::Duration, 350.0, Style::Us, "5\u{a0}h\u{a0}50\u{a0}min"),
        (Kind::Duration, 0.75, Style::Us, "45\u{a0}s"),
        (Kind::Duration, 59.96, Style::Us, "1\u{a0}h"),
        (Kind::Money, 178_400.0, Style::Us, "$1,784"),
        (Kind::Money, 28_450.0, Style::Us, "$284.50"),
        (Kind::Money, 28_405.0, Style::Us, "$284.05"),
        (Kind::Money, 178_400.0, Style::MetricUsual, "$1\u{202f}784"),
        (Kind::Date, 20_742.0, Style::Us, "2026-10-16"),
        (Kind::Number, 25.0, Style::Us, "25"),
    ] {
        assert_eq!(write(kind, value, style), text, "{kind:?} {value} {style:?}");
    }
    assert_eq!(decimal(2.5, 0), "3");
    assert_eq!(decimal(2.004, 2), "2");
    assert_eq!(decimal(-0.001, 2), "0");
    assert_eq!(decimal(0.05, 2), "0.05");
    assert_eq!(decimal(1_234.5, 1), "1234.5");
    assert_eq!(decimal(1.0, 400), "–");
}

#[test]
fn what_stands_beside_a_field() {
    let us = echo("3.82 m", Kind::Length, Ft, None, Units::Us);
    assert_eq!((us.text.as_str(), us.state), ("≈\u{a0}12′-6⅜″", EchoState::Read));
    assert_eq!(us.other, ["150.39\u{a0}in", "3\u{202f}820\u{a0}mm"]);
    let metric = echo("12' 6 1/2\"", Kind::Length, M, None, Units::Metric);
    assert_eq!(metric.text, "3.823\u{a0}m");
    assert_eq!(metric.other, ["12′-6½″", "3\u{202f}823\u{a0}mm"]);
    let depth = echo("7–8 in", Kind::Length, In, None, Units::Us);
    assert_eq!(depth.text, "7\u{a0}in\u{a0}– 8\u{a0}in");
    assert_eq!((depth.low, depth.likely, depth.high), (Some(7.0), Some(7.5), Some(8.0)));
    let asked = echo("5.11", Kind::Length, Ft, None, Units::Us);
    let texts: Vec<_> = asked.meanings.iter().map(|one| one.text.as_str()).collect();
    assert_eq!(texts, ["5′-11″", "5.11\u{a0}ft"]);
    assert_eq!(echo("5.11", Kind::Length, Ft, Some(Sense::DecimalFeet), Units::Us).text, "5.11\u{a0}ft");
    let lumber = echo("2x6", Kind::Member, In, None, Units::Us);
    assert_eq!(lumber.text, "1½\u{a0}in\u{a0}× 5½\u{a0}in");
    let cold = echo("63", Kind::Temperature, F, None, Units::Us);
    assert_eq!((cold.text.as_str(), cold.other), ("63\u{a0}°F", vec!["17.2\u{a0}°C".to_owned()]));
    let refused = echo("-5'", Kind::Length, Ft, None, Units::Us);
    assert_eq!((refused.state, refused.fault), (EchoState::Refused, Some(Fault::Negative)));
    assert_eq!(echo(" ", Kind::Length, Ft, None, Units::Us).state, EchoState::Blank);
}

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
];
const UNITS: &[Unit] = &[
    Ft, In, M, Cm, Mm, Ft2, In2, M2, F, C, Lb, Oz, Kg, G, LbFt3, KgM3, Each, Pct, R, Rsi, Perm, Metricperm,
    BdFt, Ft3, L, M3, Sec, Min, Hr, Day, Usd, Date, One,
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
];
const STYLES: &[Style] =
    &[Style::FeetInches, Style::DecimalFeet, Style::Inches, Style::Metric, Style::Us, Style::MetricUsual];

/// Reads a text in every box and checks what has to hold of any outcome.
fn everywhere(text: &str) {
    for &kind in KINDS {
        for &unit in UNITS {
            let plain = read(text, kind, unit, None);
            if !super::units::fits(kind, unit) {
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
            let _ = echo(text, kind, unit, None, Units::Metric);
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
    ] {
        everywhere(text);
    }
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308, -1e308, f64::MIN_POSITIVE, -0.0] {
        for &kind in KINDS {
            for &style in STYLES {
                let text = write(kind, value, style);
                assert!(!text.is_empty() && !text.contains("NaN") && !text.contains("inf"), "{text}");
                assert_eq!(text.contains('–'), !(value.abs() < 1.0), "{kind:?} {value} {text}");
            }
        }
    }
}

/// Pieces of which readings are made, so that chance finds texts that nearly are readings.
const PIECES: &[&str] = &[
    "1", "2", "6", "12", "000", "0", "5.11", ",", ".", "'", "\"", "-", "–", "/", "1/2", "½", " ", " ", " ",
    "ft", "in", "m", "mm", "to", "a", "de", "y", "and", "about", "x", "+", "±", "%", "$", "R", "°", "C", "h",
    ":", "lb", "²", "Oct", "between", "sq", "2026", "kg", "(", "e5",
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

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
