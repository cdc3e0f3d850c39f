//! Seeds as texts.

use super::super::{BadSeed, VERSION, exercise, find};
use super::*;
use proptest::prelude::*;

#[test]
fn the_ends_of_the_numbers_are_exercises() {
    for level in 1..=4 {
        for (number, text) in [(0, "0000"), (u16::MAX, "ffff")] {
            let seed = Seed { version: VERSION, level, number };
            assert_eq!(seed.to_string(), format!("{VERSION}-{level}-{text}"));
            assert_eq!(Seed::read(&seed.to_string()), Ok(seed));
            let drawn = exercise(seed, Units::Us).map(|made| made.exercise);
            // The levels that have scenes: the same seed is named in it, and drawn alike again.
            if let Some(drawn) = drawn {
                assert_eq!(drawn.seed, seed.to_string());
                assert_eq!(Some(drawn), exercise(seed, Units::Us).map(|made| made.exercise));
            }
        }
    }
}

#[test]
fn what_is_found_trains_what_was_asked_for() {
    for level in 1..=4 {
        for topic in super::super::TOPICS {
            for from in [0, 40_000, u16::MAX] {
                let Some(seed) = find(level, &[topic], from) else { continue };
                let made = exercise(seed, Units::Us).expect("an exercise");
                assert_eq!(seed.level, level);
                assert!(made.exercise.topics.contains(&topic), "{seed}: {:?}", made.exercise.topics);
            }
        }
        // Around the end of the numbers as well.
        let any = find(level, &[], u16::MAX);
        assert!(any.is_none_or(|seed| seed.level == level));
    }
    assert_eq!(find(9, &[], 5), None);
    assert_eq!(find(1, &super::super::TOPICS, 77).map(|seed| seed.number), Some(77));
}

#[test]
fn forms_that_are_none() {
    for text in [
        "",
        "-",
        "--",
        "1-1",
        "1-1-",
        "1--7f3a",
        "-1-1-7f3a",
        "1-1-7f3a-",
        "1-1-7f3a-0",
        "1-1-17f3a",
        "1-1-7g3a",
        "1-1-+f3a",
        "+1-1-7f3a",
        "0-1-7f3a",
        "1-a-7f3a",
        "1 -1-7f3a",
        "1-1-7f 3a",
        "1-1-０１２３",
        "1-1-7f3é",
        "1—1—",
        "10000-1-7f3a",
    ] {
        assert_eq!(Seed::read(text), Err(BadSeed::Form), "{text:?}");
    }
    for text in ["2-1-0000", "9999-4-ffff", "2-9-0"] {
        assert_eq!(Seed::read(text), Err(BadSeed::Newer), "{text:?}");
    }
}

#[test]
fn as_people_write_them() {
    let wanted = Seed { version: 1, level: 2, number: 0x0abc };
    for text in ["1-2-0abc", "1-2-ABC", "\t1–2—0aBc\n", "\u{a0}1−2‑0ABC ", "01-2-abc"] {
        assert_eq!(Seed::read(text), Ok(wanted), "{text:?}");
    }
}

proptest! {
    #[test]
    fn no_text_breaks_reading(text in "\\PC*") {
        let _ = Seed::read(&text);
    }

    #[test]
    fn no_text_that_looks_like_a_seed_breaks_reading(text in "[ \\-–—0-9a-fA-FgéÀ+.]{0,16}") {
        if let Ok(seed) = Seed::read(&text) {
            prop_assert_eq!(Seed::read(&seed.to_string()), Ok(seed));
        }
    }

    #[test]
    fn what_is_written_is_read_again(level in 0u8..=4, number in any::<u16>()) {
        let seed = Seed { version: VERSION, level, number };
        prop_assert_eq!(Seed::read(&seed.to_string()), Ok(seed));
        prop_assert_eq!(Seed::read(&seed.to_string().to_uppercase()), Ok(seed));
    }
}
