//! Several measures in one text, and what they are taken for in a box for one.

use super::*;
use proptest::prelude::*;

/// What a list is understood as: the reading of each measure, once for each way.
fn ways(text: &str, kind: Kind, unit: Unit) -> Vec<String> {
    let units = if matches!(unit, M | Mm) { Units::Metric } else { Units::Us };
    let echo = echo(text, kind, unit, None, units);
    assert_eq!(echo.fault == Some(Fault::Several), !echo.several.is_empty(), "{text}");
    let list = |parts: &Vec<EchoPart>| {
        let all: Vec<&str> = parts.iter().map(|part| part.reading.as_str()).collect();
        all.join(" | ")
    };
    echo.several.iter().map(list).collect()
}

/// As people write a room, a window and a wall of block; by hand.
#[test]
fn lists_are_read_measure_by_measure() {
    for (text, unit, wanted) in [
        ("10'x14'x8'", Ft, &["10′-0″ | 14′-0″ | 8′-0″"] as &[&str]),
        ("10' x 14' x 8'", Ft, &["10′-0″ | 14′-0″ | 8′-0″"]),
        ("10 × 14 × 8", Ft, &["10′-0″ | 14′-0″ | 8′-0″"]),
        ("10 by 14 by 8", Ft, &["10′-0″ | 14′-0″ | 8′-0″"]),
        ("10 por 14 por 8 pies", Ft, &["10′-0″ | 14′-0″ | 8′-0″"]),
        ("12' 6 1/2\" x 8'", Ft, &["12′-6½″ | 8′-0″"]),
        ("10 m x 4 m", M, &["10\u{a0}m | 4\u{a0}m"]),
        ("10 m x 4 m", Ft, &["≈\u{a0}32′-9\u{a0}11/16″ | ≈\u{a0}13′-1½″"]),
        // A unit in words at the end holds for both; a mark says only its own.
        ("10 x 4 m", M, &["10\u{a0}m | 4\u{a0}m"]),
        ("40 x 30 in", Ft, &["3′-4″ | 2′-6″"]),
        ("16\" x 8", Ft, &["1′-4″ | 8′-0″", "1′-4″ | 8\u{a0}in"]),
        ("6 @ 2'x4'", Ft, &["6 | 2′-0″ | 4′-0″"]),
        ("(6) 2' x 4'", Ft, &["6 | 2′-0″ | 4′-0″"]),
        ("6 ea 2' x 4'", Ft, &["6 | 2′-0″ | 4′-0″"]),
        ("four 3-0 x 4-6", Ft, &["4 | 3′-0″ | 4′-6″"]),
        ("cuatro 3-0 x 4-6", Ft, &["4 | 3′-0″ | 4′-6″"]),
        ("dos 3' x 4'6", Ft, &["2 | 3′-0″ | 4′-6″"]),
        ("3-0 x 6-8", Ft, &["3′-0″ | 6′-8″"]),
        // Six of them, or six feet and six inches? Nobody guesses.
        ("six 6 x 8", Ft, &["6 | 6′-0″ | 8′-0″", "six 6 | 8′-0″"]),
        ("twelve six by eight", Ft, &["12 | 6′-0″ | 8′-0″", "twelve six | 8′-0″"]),
        ("40' x 12 courses", Ft, &["40′-0″ | 8′-0″"]),
        ("40 x 12 hiladas de bloque", Ft, &["40′-0″ | 8′-0″"]),
        ("10-11' x 8'", Ft, &["10′-0″\u{a0}– 11′-0″ | 8′-0″"]),
        // Not lists: too many, nothing of one, a minus.
        ("1 x 2 x 3 x 4", Ft, &[]),
        ("10' x", Ft, &[]),
        ("x 10'", Ft, &[]),
        ("-5 x 8", Ft, &[]),
        ("10' x 8 lb", Ft, &[]),
        ("12' 6\"", Ft, &[]),
    ] {
        assert_eq!(ways(text, Kind::Length, unit), wanted, "{text}");
    }
    assert_eq!(ways("6 @ 2'x4'", Kind::Count, Each), ["6 | 2′-0″ | 4′-0″"]);
    // Depth boxes keep their lumber.
    assert_eq!(got("2x6", Kind::Length, In), Is(5.5));
}

/// What is put into the boxes is read there as it was shown.
#[test]
fn a_list_keeps_the_words_of_the_person() {
    let list = echo("four 3-0 x 4-6", Kind::Length, Ft, None, Units::Us).several;
    let parts: Vec<_> = list[0].iter().map(|part| (part.text.as_str(), part.unit, part.sense)).collect();
    assert_eq!(parts, [("four", Each, None), ("3-0", Ft, None), ("4-6", Ft, Some(S::FeetInches))]);
    let list = echo("10 x 4 m", Kind::Length, Ft, None, Units::Us).several;
    let parts: Vec<_> = list[0].iter().map(|part| (part.text.as_str(), part.unit)).collect();
    assert_eq!(parts, [("10", M), ("4 m", Ft)]);
}

/// Block is laid to a module of 8 in, joint included: common practice, no source.
#[test]
fn courses_of_block_are_a_height() {
    for (text, inches) in [
        ("12 courses", 96.0),
        ("12 courses of block", 96.0),
        ("twelve courses", 96.0),
        ("13 hiladas de bloque", 104.0),
        ("1 course", 8.0),
        ("12 courses + 4 in", 100.0),
        ("12 1/2 courses", 100.0),
    ] {
        for unit in [Ft, In, M, Mm] {
            assert_eq!(got(text, Kind::Length, unit), Is(inches), "{text}");
        }
        assert!(echo(text, Kind::Length, Ft, None, Units::Us).courses, "{text}");
    }
    assert!(!echo("12 ft", Kind::Length, Ft, None, Units::Us).courses);
    // A range of courses would leave its first number bare.
    for text in
        ["12-13 courses", "12 to 13 courses", "5' 12 courses", "12 courses 4", "12 courses - 14 courses"]
    {
        assert!(matches!(got(text, Kind::Length, Ft), No(_)), "{text}");
    }
    assert_eq!(got("12 courses", Kind::Count, Each), No(Fault::NotTaken));
    assert_eq!(got("40' x 12 courses", Kind::Area, Ft2), Is(320.0));
}

/// Areas by hand: 6 × 2 × 4 = 48, 4 × 3 × 4½ = 54.
#[test]
fn so_many_of_an_area_are_an_area_and_three_lengths_are_none() {
    for (text, wanted) in [
        ("6 @ 2'x4'", Is(48.0)),
        ("(6) 2' x 4'", Is(48.0)),
        ("four 3-0 x 4-6", Is(54.0)),
        ("6 @ 2'x4' + 10'x8'", Is(128.0)),
        ("10'x14'x8'", No(Fault::ThreeLengths)),
        ("6 @ 2' x 4' x 3'", No(Fault::ThreeLengths)),
        ("6 @ 20", No(Fault::NotANumber)),
    ] {
        assert_eq!(got(text, Kind::Area, Ft2), wanted, "{text}");
    }
}

/// Flange × depth, as written; where the depth may stand first, both are asked.
#[test]
fn steel_and_engineered_joists_by_name() {
    let size = |text: &str| match read(text, Kind::Member, In, None) {
        Outcome::Read(Value::Member(one)) => (one.width_in.to_f64(), one.depth_in.map(Ratio::to_f64)),
        other => panic!("{text}: {other:?}"),
    };
    for (text, wanted) in [
        ("steel 1 5/8 x 6", (1.625, Some(6.0))),
        ("metal stud 1 5/8\" x 3 5/8\"", (1.625, Some(3.625))),
        ("acero 1 5/8 x 6", (1.625, Some(6.0))),
        ("i-joist 2 5/16 x 11 7/8", (2.3125, Some(11.875))),
        ("I joist 2 5/16 x 11 7/8", (2.3125, Some(11.875))),
        ("vigueta i 2 5/16 x 11 7/8", (2.3125, Some(11.875))),
        // No lumber: a 2 in flange is 2 in.
        ("steel 2 x 6", (2.0, Some(6.0))),
        ("steel 1 5/8", (1.625, None)),
        ("2x6", (1.5, Some(5.5))),
    ] {
        assert_eq!(size(text), wanted, "{text}");
    }
    assert_eq!(got("steel 6 x 1 5/8", Kind::Member, In), Ask(&[(S::DepthFirst, 1.625), (S::Literal, 6.0)]));
    for text in ["steel", "i-joist", "steel x 6", "joist - 2 x 6 -"] {
        assert!(matches!(got(text, Kind::Member, In), No(_)), "{text}");
    }
}

proptest! {
    /// However a room is written, each box gets its own measure back.
    #[test]
    fn a_room_is_split_into_what_was_said(
        feet in prop::collection::vec((1_u32..400, 0_u32..12), 2..4), by in 0_usize..5, count in 0_u32..60
    ) {
        let join = [" x ", "x", " × ", " by ", " por "][by];
        let sizes: Vec<String> = feet.iter().map(|(feet, inches)| format!("{feet}'{inches}\"")).collect();
        let text = if count > 0 { format!("{count} @ {}", sizes.join(join)) } else { sizes.join(join) };
        for unit in [Ft, M] {
            let list = echo(&text, Kind::Length, unit, None, Units::Us).several;
            prop_assert_eq!(list.len(), 1, "{}", &text);
            let lengths: Vec<_> = list[0].iter().filter(|part| part.unit != Each).collect();
            prop_assert_eq!(lengths.len(), feet.len());
            for (part, (feet, inches)) in lengths.iter().zip(&feet) {
                prop_assert_eq!(got(&part.text, Kind::Length, part.unit), Is(f64::from(feet * 12 + inches)));
            }
        }
    }
}
