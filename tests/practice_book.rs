//! The book: each step's answer is what was published. Typed from the publication, with where it was read and how sure
//! that is: H high, M middling, R read, R2 read as retold by somebody else, M memory. The tolerance is the last digit
//! of what was printed.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::measure::Units;
use foamwright::practice::{Answer, Made, OnHost, Verdict, book, exercise, mark, slips_of, solve};

/// What was published for a step: its key, its name where the key comes twice, the figure, its last digit.
type Published = (&'static str, &'static str, f64, f64);

fn made(number: u16, units: Units) -> Made {
    let seed = book().into_iter().find(|seed| seed.number == number).expect("a number of the book");
    exercise(seed, units).expect("an example")
}

/// Every step of an example holds what was published, in US and in metric units; no step is left out.
fn holds(number: u16, published: &[Published]) {
    for units in [Units::Us, Units::Metric] {
        holds_in(number, units, published);
    }
}

fn holds_in(number: u16, units: Units, published: &[Published]) {
    let made = made(number, units);
    let solved = solve(&made, &mut OnHost);
    let asked: Vec<(&str, &str)> = made.exercise.steps.iter().map(|step| (step.key, step.of)).collect();
    let printed: Vec<(&str, &str)> = published.iter().map(|(key, of, ..)| (*key, *of)).collect();
    assert_eq!(asked, printed, "number {number}");
    for ((key, of, wanted, last), solved) in published.iter().zip(solved) {
        let value = solved.unwrap_or_else(|| panic!("number {number}: no answer for {key} {of}")).value;
        assert!(
            (value - wanted).abs() <= last + 1e-9,
            "number {number}, {units:?}, {key} {of}: {value}, printed {wanted}"
        );
    }
}

/// Test questions of a textbook on a homework site, undated (read): 123 ft of 8 ft wall, studs 16 in on center. The
/// areas and board feet follow from those by hand: 984 ft²; 1.5 ÷ 16 of it 92.25; 1,968 board feet at 2 in with the
/// studs left in, 1,783.5 without.
#[test]
fn the_textbook_wall() {
    let published = [
        ("gross_area", "", 984.0, 0.0),
        ("members_area", "", 92.25, 0.0),
        ("net_area", "", 891.75, 0.0),
        ("board_feet", "members_in", 1_968.0, 0.0),
        ("board_feet", "members_out", 1_783.5, 0.0),
    ];
    holds_in(1, Units::Us, &published);
    // In metric the readings hold to a ten-thousandth of a millimeter.
    holds_in(1, Units::Metric, &published.map(|(key, of, value, _)| (key, of, value, 0.001)));
    let made = made(1, Units::Us);
    let slips = slips_of(&made, &mut OnHost);
    assert!(slips.iter().any(|(_, name, value)| *name == "gross_for_net" && *value == 1_968.0), "{slips:?}");
}

/// A question in a forum of building scientists, undated (read): 83½ ft inside, 18 ft up each of two slopes, 42 to 44
/// trusses 1½ in wide, 7 in of foam. By hand: 3,006 ft², 43 trusses, 193.5 ft² of them, 2,812.5 left, 21,042 and
/// 19,687.5 board feet.
#[test]
fn the_attic_trusses() {
    let published = [
        ("gross_area", "", 3_006.0, 0.0),
        ("truss_count", "", 43.0, 0.0),
        ("members_area", "", 193.5, 0.0),
        ("net_area", "", 2_812.5, 0.0),
        ("board_feet", "members_in", 21_042.0, 0.0),
        ("board_feet", "members_out", 19_687.5, 0.0),
    ];
    holds_in(2, Units::Us, &published);
    holds_in(2, Units::Metric, &published.map(|(key, of, value, _)| (key, of, value, 0.01)));
}

/// ASHRAE Handbook—Fundamentals, frame wall of 2x4 at 16 in (M, middling): films 0.17 and 0.68, siding 0.81, sheathing
/// R-4, batt 13 or stud 4.38, gypsum 0.45: 19.11 and 10.49; 75 and 25 % give U 0.063.
#[test]
fn the_handbooks_frame_wall() {
    let paths = [("foam_path_r", "", 19.11, 0.005), ("stud_path_r", "", 10.49, 0.005)];
    holds_in(3, Units::Us, &[paths[0], paths[1], ("u_value", "", 0.063, 0.0005)]);
    // U in W/m²·K: times 5.678263 (NIST SP 811).
    let metric = ("u_value", "", 0.063 * 5.678_263, 0.0005 * 5.678_263);
    holds_in(
        3,
        Units::Metric,
        &[paths[0], paths[1], metric].map(|(key, of, value, last)| (key, of, value, last + 1e-4)),
    );
}

/// An energy office's table wall, 15 % of it studs (R2: a copied page; its sheathing is 0.63 of plywood, and its stud
/// path of 7.11 is printed as 7.12): siding 0.80, batt 11 or stud 4.38, drywall 0.45, films 0.17 and 0.68: 13.73 and
/// 7.11, R-12.05 of the whole.
#[test]
fn the_energy_offices_wall() {
    let published =
        [("foam_path_r", "", 13.73, 0.005), ("stud_path_r", "", 7.11, 0.005), ("whole_r", "", 12.05, 0.005)];
    holds(4, &published);
}

/// NAVEDTRA 14044, a manual for builders in the Navy, figure 2-17 and its text (R, high): 7 in of rise to the foot, a
/// span of 16 ft, a run of 8; 13.89 in for each foot of run; 111⅛ in, to the sixteenth.
#[test]
fn the_navys_rafter() {
    holds(5, &[("rafter_run", "", 96.0, 1e-4), ("slope_length", "", 111.125, 1.0 / 16.0)]);
}

/// I. S. Griffith, *Carpentry* (R: a public copy, high): a span of 25 ft, a quarter pitch, 13.42 in for each foot of a run
/// of 12½ ft: 13.98 ft.
#[test]
fn griffiths_rafter() {
    holds(6, &[("rafter_run", "", 150.0, 1e-4), ("slope_length", "", 13.98 * 12.0, 0.01 * 12.0)]);
}

/// ASHRAE Handbook—Fundamentals 2017, chapter 1, table 3, saturation pressures (R: as a public library's tests quote
/// them, high): 0.45973 psi at 77 °F, 0.12656 at 41 °F; 3169.7 Pa at 25 °C, 872.6 at 5 °C. Air of 77 °F at 27.53 % holds
/// what saturates at 41 °F.
#[test]
fn the_handbooks_saturation_table() {
    holds_in(7, Units::Us, &[("vapor_pressure", "psi", 0.12656, 0.00001), ("dew_point", "", 41.0, 0.05)]);
    holds_in(7, Units::Metric, &[("vapor_pressure", "pascal", 872.6, 0.1), ("dew_point", "", 41.0, 0.05)]);
}

/// ASHRAE Handbook—Fundamentals 2017, chapter 1, example 1 in both systems (R: the same tests, high; the dew point only
/// to the degree, and the humidity in percent is rounded too): 100 °F dry bulb, 13 %, dew point 40 °F; 40 °C, 14 %, 7 °C.
/// The distance is published coating practice (R, high): 5 °F, which is 2.8 °C.
#[test]
fn the_handbooks_first_example() {
    holds_in(8, Units::Us, &[("dew_point", "", 40.0, 1.0), ("least_surface", "", 45.0, 1.0)]);
    let fahrenheit = 7.0 * 1.8 + 32.0;
    let published =
        [("dew_point", "", fahrenheit, 1.8 / 2.0), ("least_surface", "", fahrenheit + 5.0, 1.8 / 2.0)];
    holds_in(8, Units::Metric, &published);
}

/// NIST SP 811, appendix B (high): 1 ft² is 9.290 304 E−02 m², 1 board foot 2.359 737 E−03 m³. A slab of 10 m × 4 m ×
/// 25 mm, the underside of a trailer in an owner's log, is 1 m³.
#[test]
fn a_cubic_meter() {
    let (ft2, board_foot) = (9.290_304e-2, 2.359_737e-3);
    let last = 1.0 / (board_foot - 0.5e-9) - 1.0 / board_foot;
    holds(9, &[("gross_area", "", 40.0 / ft2, 1e-6), ("board_feet", "", 1.0 / board_foot, last)]);
}

/// IRC table R806.5, zones 4A and 4B: R-15 (R: a public source with the whole table, high). A forum question in a
/// building scientists' column (read) had 1½ in there; by hand 15 ÷ 6.0 = 2.5 in, three passes of at most 1 in.
#[test]
fn foam_under_a_deck() {
    let published = [("unvented_r", "", 15.0, 0.0), ("depth_for_r", "", 2.5, 0.0), ("lifts", "", 3.0, 0.0)];
    holds_in(10, Units::Us, &published);
    holds_in(10, Units::Metric, &published.map(|(key, of, value, _)| (key, of, value, 1e-4)));
}

/// Who answers as was published is right, and who slips is told which slip it was.
#[test]
fn answers_are_marked() {
    for (seed, units) in
        book().into_iter().flat_map(|seed| [Units::Us, Units::Metric].map(|units| (seed, units)))
    {
        let made = exercise(seed, units).expect("an example");
        let right: Vec<Answer> = solve(&made, &mut OnHost)
            .iter()
            .map(|one| Answer { value: one.as_ref().map(|one| one.value), ..Answer::default() })
            .collect();
        let marked = mark(&made, &right, &mut OnHost);
        assert!(marked.steps.iter().all(|step| step.verdict == Verdict::Right), "{seed}: {marked:?}");
        let slips = slips_of(&made, &mut OnHost);
        assert!(!slips.is_empty(), "{seed}");
        for (at, name, value) in slips {
            let mut given = right.clone();
            given[at].value = Some(value);
            let step = &mark(&made, &given, &mut OnHost).steps[at];
            assert_eq!((step.verdict, step.slip), (Verdict::Slip, name), "{seed} {at} {value}");
        }
    }
}

/// Every example has its source, and words for it in every language.
#[test]
fn every_example_names_its_source() {
    for language in ["en", "es"] {
        let read = |page: &str| -> serde_json::Value {
            let path = format!("{}/www/words/{language}/{page}.json", env!("CARGO_MANIFEST_DIR"));
            serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
        };
        let (sources, words) = (read("sources"), read("exercises"));
        for seed in book() {
            let exercise = exercise(seed, Units::Us).expect("an example").exercise;
            assert_eq!(exercise.seed, seed.to_string());
            assert!(sources[exercise.source].is_string(), "{language}: no source {}", exercise.source);
            for word in ["title", "ask"] {
                let key = format!("scene.{}.{word}", exercise.scene);
                assert!(words[&key].is_string(), "{language}: no {key}");
            }
        }
    }
    assert!(book().len() >= 8);
}
