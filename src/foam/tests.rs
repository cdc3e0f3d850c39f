use super::*;
use crate::findings::Code;
use crate::measure::Units;
use proptest::prelude::*;
use serde_json::json;

/// A sheet with these entries and rows, read.
fn read(entries: &[(&str, &str)], rows: &[(&str, &str)]) -> (Foam, Vec<Finding>) {
    let fields = |all: &[(&str, &str)]| -> Vec<_> {
        all.iter().map(|(field, text)| json!({"field": field, "text": text})).collect()
    };
    let rows: Vec<_> = rows
        .iter()
        .zip(100..)
        .map(|((thickness, r), id)| json!({"id": id, "entries": fields(&[("thickness", thickness), ("r", r)])}))
        .collect();
    let sheet = json!({"id": 7, "entries": fields(entries), "r_at": rows});
    let sheet: FoamSheet = serde_json::from_value(sheet).expect("a sheet");
    let mut reader = Reader::new(Units::Us);
    let foam = super::sheet(&sheet, &mut reader).expect("every limit has a default");
    (foam, reader.findings)
}

fn codes(findings: &[Finding]) -> Vec<(Code, &str)> {
    findings.iter().map(|one| (one.code, one.at.field.as_str())).collect()
}

/// Sample closed-cell A: R-6.0 an inch, listed each half inch to 4 in.
fn sample() -> Foam {
    let rows: Vec<(String, String)> =
        (1..=8).map(|n| (format!("{} in", f64::from(n) / 2.0), format!("R-{}", 3 * n))).collect();
    let rows: Vec<(&str, &str)> = rows.iter().map(|(a, b)| (a.as_str(), b.as_str())).collect();
    read(&[], &rows).0
}

/// Every blank takes the trade's default or stays a blank.
#[test]
fn a_blank_sheet() {
    let (foam, findings) = read(&[], &[]);
    assert_eq!(findings, []);
    let window = |least, most| Window { least_f: Fahrenheit(least), most_f: Fahrenheit(most), default: true };
    assert_eq!(
        (foam.cylinder, foam.air, foam.surface),
        (window(70.0, 90.0), window(60.0, 90.0), window(60.0, 90.0))
    );
    assert_eq!((foam.least_lift_in, foam.largest_lift_in), (Inches(0.5), Inches(1.0)));
    assert_eq!((foam.density, foam.wait_min, foam.cure_min), (None, None, None));
    assert_eq!(foam.planning_r(Inches(2.0)), None);
    assert_eq!(foam.promised_r(Inches(2.0)), None);
    assert_eq!(foam.depth_for(RValue(12.0)), None);
}

#[test]
fn what_is_typed_counts_and_a_bad_text_falls_back() {
    let entries = [
        ("cylinder_least", "21 C"),
        ("cylinder_most", "32 C"),
        ("air_least", "fifty"),
        ("largest_lift", "2 in"),
        ("wait", "1 h"),
        ("cure", "1 d"),
        ("density", "1.85"),
    ];
    let (foam, findings) = read(&entries, &[]);
    assert!((foam.cylinder.least_f.0 - 69.8).abs() < 1e-9 && (foam.cylinder.most_f.0 - 89.6).abs() < 1e-9);
    assert!(!foam.cylinder.default && foam.air.default);
    assert_eq!(foam.air.least_f, Fahrenheit(60.0));
    assert_eq!((foam.wait_min, foam.cure_min), (Some(Minutes(60.0)), Some(Minutes(1_440.0))));
    assert_eq!(foam.density, Some(PoundsPerCubicFoot(1.85)));
    assert_eq!(codes(&findings), [(Code::NotANumber, "air_least")]);
}

/// Of a range the stricter end counts.
#[test]
fn a_range_narrows_the_window() {
    let (foam, _) =
        read(&[("air_least", "50 to 60 F"), ("air_most", "80 to 90 F"), ("wait", "15 to 30 min")], &[]);
    assert_eq!((foam.air.least_f, foam.air.most_f), (Fahrenheit(60.0), Fahrenheit(80.0)));
    assert_eq!(foam.wait_min, Some(Minutes(30.0)));
}

/// A crossed window is kept as typed, so that nothing lies inside it.
#[test]
fn windows_that_cross() {
    let (foam, findings) = read(
        &[
            ("surface_least", "95 F"),
            ("cylinder_least", "80"),
            ("cylinder_most", "75"),
            ("least_lift", "2 in"),
        ],
        &[],
    );
    assert!(foam.surface.least_f > foam.surface.most_f && foam.cylinder.least_f > foam.cylinder.most_f);
    assert_eq!(
        codes(&findings),
        [
            (Code::WindowCrossed, "cylinder_least"),
            (Code::WindowCrossed, "surface_least"),
            (Code::WindowCrossed, "least_lift"),
        ]
    );
    assert!(findings.iter().all(|one| one.at.id == 7 && one.at.part == Part::Foam));
}

#[test]
fn rows_are_sorted_and_incomplete_ones_left_out() {
    let (foam, findings) =
        read(&[], &[("3 in", "R-18"), ("1 in", "6"), ("", ""), ("2 in", ""), ("", "9"), ("50 mm", "x")]);
    let listed: Vec<(f64, f64)> = foam.listed.iter().map(|one| (one.thickness_in.0, one.r.0)).collect();
    assert_eq!(listed, [(1.0, 6.0), (3.0, 18.0)]);
    assert_eq!(codes(&findings), [(Code::Needed, "r"), (Code::Needed, "thickness"), (Code::NotANumber, "r")]);
    assert_eq!(findings.iter().map(|one| one.at.id).collect::<Vec<_>>(), [103, 104, 105]);
}

/// Of two rows for one thickness the lower R counts, whichever comes first; 63.5 mm is 2½ in.
#[test]
fn one_thickness_twice() {
    for rows in [[("2 1/2 in", "R-15"), ("63.5 mm", "R-16")], [("63.5 mm", "R-16"), ("2 1/2 in", "R-15")]] {
        let (foam, findings) = read(&[], &rows);
        assert_eq!(foam.listed.iter().map(|one| one.r.0).collect::<Vec<_>>(), [15.0]);
        assert_eq!(codes(&findings), [(Code::ThicknessTwice, "thickness")]);
    }
    let (_, findings) = read(&[], &[("1 in", "R-7"), ("2 in", "R-6")]);
    assert_eq!(codes(&findings), [(Code::RFalls, "r_at")]);
}

/// 16 CFR 460.17: the listed thickness or the next listed below, never inches × R per inch.
#[test]
fn only_a_listed_r_is_promised() {
    let foam = sample();
    for (depth, promised) in [
        (2.5, Some((2.5, 15.0))),
        (2.5 - 1e-12, Some((2.5, 15.0))),
        (63.5 / 25.4, Some((2.5, 15.0))),
        (2.49, Some((2.0, 12.0))),
        (2.75, Some((2.5, 15.0))),
        (9.0, Some((4.0, 24.0))),
        (0.5, Some((0.5, 3.0))),
        (0.49, None),
        (0.0, None),
    ] {
        let listed = foam.promised_r(Inches(depth)).map(|one| (one.thickness_in.0, one.r.0));
        assert_eq!(listed, promised, "{depth}");
    }
}

/// R-20 at R-6.0 an inch is 3⅓ in (case A01).
#[test]
fn planning_lies_straight_between_the_rows() {
    let foam = sample();
    assert_eq!(foam.depth_for(RValue(20.0)), Some(Inches(3.0 + 2.0 / 3.0 * 0.5)));
    assert_eq!(foam.depth_for(RValue(18.0)), Some(Inches(3.0)));
    assert_eq!(foam.depth_for(RValue(1.5)), Some(Inches(0.25)));
    assert_eq!(foam.depth_for(RValue(24.0)), Some(Inches(4.0)));
    assert_eq!(foam.depth_for(RValue(24.1)), None);
    assert_eq!(foam.depth_for(RValue(0.0)), None);
    assert_eq!(foam.depth_for(RValue(f64::NAN)), None);
    assert_eq!(foam.planning_r(Inches(0.25)), Some(RValue(1.5)));
    assert_eq!(foam.planning_r(Inches(5.0)), Some(RValue(30.0)));
    assert_eq!(foam.planning_r(Inches(-1.0)), None);
    // A sheet on which R an inch falls: 3.5 at 1 in, 12 at 3½ in; between them 8.5 over 2½ in.
    let (foam, _) = read(&[], &[("1 in", "3.5"), ("3.5 in", "12")]);
    assert_eq!(foam.planning_r(Inches(2.0)), Some(RValue(6.9)));
    assert_eq!(foam.depth_for(RValue(6.9)), Some(Inches(2.0)));
}

proptest! {
    #[test]
    fn depth_and_r_are_inverses(target in 0.1..24.0f64) {
        let foam = sample();
        let depth = foam.depth_for(RValue(target)).unwrap();
        prop_assert!((foam.planning_r(depth).unwrap().0 - target).abs() < 1e-9);
    }

    /// What may be promised is never more than what may be planned with.
    #[test]
    fn a_promise_is_never_more_than_the_plan(depth in 0.5..6.0f64) {
        let foam = sample();
        let promised = foam.promised_r(Inches(depth)).unwrap();
        prop_assert!(promised.r.0 <= foam.planning_r(Inches(depth)).unwrap().0 + 1e-5);
        prop_assert!(promised.thickness_in.0 <= depth + 1e-6);
    }

    /// Any text in any box leaves a finding or a value, never a hole.
    #[test]
    fn any_text_is_survived(text in ".{0,40}", at in 0usize..15) {
        let fields = ["density", "cylinder_least", "cylinder_most", "air_least", "air_most", "surface_least",
            "surface_most", "largest_lift", "least_lift", "wait", "cure", "reentry", "flame", "smoke", "tested_thickness"];
        let (foam, _) = read(&[(fields[at], &text)], &[(&text, "6"), ("1", &text)]);
        prop_assert!(foam.largest_lift_in.0 >= 0.1 && foam.largest_lift_in.0 <= 12.0);
        prop_assert!(foam.listed.iter().all(|one| one.thickness_in.0 > 0.0 && one.r.0 > 0.0));
    }
}
