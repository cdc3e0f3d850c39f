//! The rim's exception, which rule decides, and what a surface is made up of.

use super::*;
use crate::findings::Code;
use crate::job::Now;
use crate::measure::{Kind, Outcome, SquareFeet, Unit, Value as Read, read};
use crate::quantity::rest;
use proptest::prelude::*;
use serde_json::{Value, json};

const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

/// A rim joist left exposed at this depth, with a foam sheet of these figures.
fn rim(depth: &str, sheet: &[(&str, &str)], surface: &[(&str, &str)]) -> (Depth, Vec<Code>) {
    let entries = |all: &[(&str, &str)]| -> Vec<Value> {
        all.iter().map(|(field, text)| json!({"field": field, "text": text})).collect()
    };
    let mut own = vec![("area", "70"), ("depth", depth), ("exposure", "exposed"), ("spot", "rim")];
    own.retain(|(field, _)| !surface.iter().any(|(other, _)| other == field));
    own.extend(surface);
    let job: Job = serde_json::from_value(json!({
        "format": "foamwright-job", "version": 2, "id": "test", "next_id": 100, "foam": 10,
        "entries": entries(&[("under_aim", "0"), ("over_aim", "0")]),
        "surfaces": [{"id": 1, "shape": "typed_area", "entries": entries(&own)}],
        "foams": [{"id": 10, "entries": entries(sheet), "r_at": [
            {"id": 11, "entries": entries(&[("thickness", "1"), ("r", "6")])},
            {"id": 12, "entries": entries(&[("thickness", "4"), ("r", "24")])},
        ]}],
    }))
    .expect("a job");
    let estimate = crate::estimate(&job, NOW);
    let codes = estimate.findings.iter().map(|one| one.code).filter(|code| {
        matches!(
            code,
            Code::ExposedTooThick
                | Code::ExposedOverTested
                | Code::ExposedNotAvailable
                | Code::ExposedBlank
                | Code::ExposedOutside
                | Code::NoToleranceLeft
                | Code::CoverAsked
                | Code::BurnsTooFast
                | Code::RulesCross
        )
    });
    let codes = codes.collect();
    (estimate.surfaces[0].depth.clone().expect("depths"), codes)
}

/// Density, flame, smoke, tested thickness.
fn sheet<'a>(density: &'a str, flame: &'a str, smoke: &'a str, tested: &'a str) -> Vec<(&'a str, &'a str)> {
    let all = [("density", density), ("flame", flame), ("smoke", smoke), ("tested_thickness", tested)];
    all.into_iter().filter(|(_, text)| !text.is_empty()).collect()
}

fn stands(depth: &Depth, rule: Rule) -> Stands {
    depth.marks.iter().find(|mark| mark.rule == rule).expect("the mark").stands
}

/// IRC 2018 R316.5.11: 3¼ in, 0.5 to 2.0 lb/ft³, flame spread 25 and smoke 450, all limits belonging to what is
/// allowed. A blank is never a pass.
#[test]
fn a_rim_left_exposed() {
    let good = || sheet("1.85", "20", "400", "4");
    let unavailable = |one| vec![one, Code::ExposedNotAvailable];
    for (depth, sheet, wanted) in [
        ("3.25", good(), vec![]),
        ("3.26", good(), vec![Code::ExposedTooThick]),
        ("3.25", sheet("2.0", "25", "450", "3.25"), vec![]),
        ("3.25", sheet("0.5", "25", "450", "3.25"), vec![]),
        ("3", sheet("2.1", "20", "400", "4"), unavailable(Code::ExposedOutside)),
        ("3", sheet("0.49", "20", "400", "4"), unavailable(Code::ExposedOutside)),
        ("3", sheet("1.9 to 2.1", "20", "400", "4"), unavailable(Code::ExposedOutside)),
        ("3", sheet("1.85", "26", "400", "4"), unavailable(Code::ExposedOutside)),
        ("3", sheet("", "20", "400", "4"), unavailable(Code::ExposedBlank)),
        ("3", sheet("1.85", "", "400", "4"), unavailable(Code::ExposedBlank)),
        ("3", sheet("1.85", "20", "", "4"), unavailable(Code::ExposedBlank)),
        ("3", sheet("1.85", "20", "400", ""), unavailable(Code::ExposedBlank)),
        ("3", sheet("1.85", "20", "400", "3"), vec![]),
        ("3", sheet("1.85", "20", "400", "2 7/8"), vec![Code::ExposedOverTested]),
    ] {
        let (depths, codes) = rim(depth, &sheet, &[]);
        assert_eq!(codes, wanted, "{depth} {sheet:?}");
        let free = wanted.is_empty();
        let barrier = stands(&depths, Rule::Barrier);
        assert_eq!(barrier, if free { Stands::Excepted } else { Stands::Applies }, "{depth} {sheet:?}");
    }
    let (depths, codes) = rim("3", &sheet("1.85", "20", "451", "4"), &[]);
    assert_eq!(codes, [Code::BurnsTooFast, Code::ExposedOutside, Code::ExposedNotAvailable]);
    assert_eq!(stands(&depths, Rule::RimExposed), Stands::Outside);
}

#[test]
fn covered_elsewhere_or_not_said() {
    let good = sheet("1.85", "20", "400", "4");
    for (surface, rule, codes) in [
        (vec![("exposure", "covered")], Stands::Covered, vec![]),
        (vec![("exposure", "not_known")], Stands::NotSaid, vec![]),
        (vec![("spot", "elsewhere")], Stands::Elsewhere, vec![Code::CoverAsked]),
        (vec![("spot", "")], Stands::Elsewhere, vec![Code::CoverAsked]),
    ] {
        let (depths, found) = rim("4", &good, &surface);
        assert_eq!((stands(&depths, Rule::RimExposed), found), (rule, codes), "{surface:?}");
        assert_eq!((depths.window.most_in, depths.exposed_most_in), (None, None), "{surface:?}");
    }
}

/// R-20 at R-6 an inch needs 3⅓ in: 1/12 in over what may stay exposed. R-18 fits, R-19.5 just.
#[test]
fn least_and_most_cross() {
    let good = sheet("1.85", "20", "400", "4");
    for (target, gap) in [("R-18", None), ("R-19.5", None), ("R-20", Some(1.0 / 12.0)), ("R-24", Some(0.75))]
    {
        let (depths, codes) = rim("3", &good, &[("target_r", target)]);
        match (gap, depths.window.gap_in) {
            (None, None) => assert_eq!(codes, [], "{target}"),
            (Some(wanted), Some(gap)) => {
                assert!((gap.0 - wanted).abs() < 1e-9, "{target}: {gap:?}");
                assert_eq!(codes, [Code::RulesCross], "{target}");
            }
            other => panic!("{target}: {other:?}"),
        }
    }
}

/// Which rule decides, from marks to depths.
#[test]
fn which_rule_decides() {
    let mark = |rule, bound, at: f64, trust, stands| Mark {
        rule,
        bound,
        at_in: Some(Inches(at)),
        asks: None,
        printed: "",
        section: "",
        edition: "",
        trust,
        stands,
        lacks: Vec::new(),
    };
    use crate::findings::Trust;
    use {Bound::*, Rule::*, Stands::*, Trust::*};
    let target = |at| mark(Target, Least, at, YourTarget, Applies);
    let exposed = |stands| mark(RimExposed, Most, 3.25, Read, stands);
    let cavity = |at| mark(Rule::Cavity, Most, at, YourTape, Applies);
    // The marks, whose least and whose most decide, and how far they cross.
    type Decided = (Vec<Mark>, Option<Rule>, Option<Rule>, Option<f64>);
    let table: Vec<Decided> = vec![
        (vec![], None, None, None),
        (vec![target(3.0)], Some(Target), None, None),
        (vec![target(3.25), exposed(Applies)], Some(Target), Some(RimExposed), None),
        (vec![target(3.5), exposed(Applies)], Some(Target), Some(RimExposed), Some(0.25)),
        (vec![target(3.5), exposed(Covered)], Some(Target), None, None),
        (vec![target(3.5), exposed(Blank), cavity(3.5)], Some(Target), Some(Rule::Cavity), None),
        (vec![exposed(Applies), cavity(2.5), target(3.0)], Some(Target), Some(Rule::Cavity), Some(0.5)),
        (vec![exposed(Applies), cavity(5.5)], None, Some(RimExposed), None),
        (vec![mark(Target, Least, 3.0, Memory, Applies), cavity(2.0)], None, Some(Rule::Cavity), None),
        (vec![mark(LargestLift, Lift, 1.0, YourSheet, Applies), target(3.0)], Some(Target), None, None),
    ];
    for (marks, least, most, gap) in table {
        let open = window(&marks);
        assert_eq!(
            (open.least_by, open.most_by, open.gap_in.map(|gap| gap.0)),
            (least, most, gap),
            "{marks:?}"
        );
    }
}

/// A strip only seals: no R is claimed for it, and an inch counts where no depth was typed.
#[test]
fn a_strip_claims_no_r() {
    let good = sheet("1.85", "20", "400", "4");
    let job: Job = serde_json::from_value(json!({
        "format": "foamwright-job", "version": 2, "id": "test", "next_id": 9, "foam": 2,
        "surfaces": [{"id": 1, "shape": "strip", "entries": [
            {"field": "length", "text": "12 ft"}, {"field": "height", "text": "1 in"}]}],
        "foams": [{"id": 2, "entries": good.iter().map(|(field, text)| json!({"field": field, "text": text}))
            .collect::<Vec<_>>(), "r_at": [
            {"id": 3, "entries": [{"field": "thickness", "text": "1/2"}, {"field": "r", "text": "3"}]}]}],
    }))
    .expect("a job");
    let estimate = crate::estimate(&job, NOW);
    let depth = estimate.surfaces[0].depth.as_ref().expect("depths");
    assert_eq!(depth.aim_in, Band::exactly(Inches(1.0)));
    assert_eq!((depth.promised_r, depth.planning_r), (None, None));
    let r = [Code::NoListedR, Code::BelowListed, Code::Needed];
    assert!(!estimate.findings.iter().any(|one| r.contains(&one.code) && one.at.field != "width"));
}

fn probes(text: &str) -> Outcome {
    read(text, Kind::Probes, Unit::In, None)
}

#[test]
fn a_pasted_list_of_probe_readings() {
    for (text, low, mean, high) in [
        ("3/8, 1, 7/8", 0.375, 0.75, 1.0),
        ("3/8\n1\n7/8\n", 0.375, 0.75, 1.0),
        ("3/8; 1; 7/8 in", 0.375, 0.75, 1.0),
        ("3/8 to 1", 0.375, 0.6875, 1.0),
        ("2 1/4", 2.25, 2.25, 2.25),
        ("1 1/2, 25.4 mm", 1.0, 1.25, 1.5),
        ("2,5; 3,5", 2.5, 3.0, 3.5),
        ("0, 1,", 0.0, 0.5, 1.0),
    ] {
        let Outcome::Read(Read::Band(one)) = probes(text) else { panic!("{text}: {:?}", probes(text)) };
        assert_eq!((one.low.to_f64(), one.likely.to_f64(), one.high.to_f64()), (low, mean, high), "{text}");
    }
    assert_eq!(probes(" , \n;"), Outcome::Blank);
    for text in ["3/8,1,7/8", "1,2", "1, 2,5"] {
        assert_eq!(probes(text), Outcome::Refused(crate::measure::Fault::RunTogether), "{text}");
    }
    assert!(matches!(probes("1, wet, 2"), Outcome::Refused(_)));
}

proptest! {
    #[test]
    fn old_foam_is_never_taken_out(aim in 0.0..12.0_f64, low in 0.0..6.0_f64, more in 0.0..6.0_f64) {
        let depth_in = Band { low, likely: low + more / 2.0, high: low + more }.map(Inches);
        let there = Existing { depth_in, same: false, add_in: depth_in };
        let add = to_add(Band::exactly(Inches(aim)), Some(&there));
        prop_assert!(add.low.0 >= 0.0 && add.low <= add.likely && add.likely <= add.high);
        prop_assert!(add.high.0 <= aim);
    }

    #[test]
    fn patches_leave_the_rest(net in 0.0..1e4_f64, shares in proptest::collection::vec(0.0..0.5_f64, 0..4)) {
        let patches: Vec<_> = shares.iter().map(|share| Patched {
            id: 1,
            area_ft2: Band::exactly(SquareFeet(net * share)),
            depth_in: Band::exactly(Inches(1.0)),
        }).collect();
        let left = rest(Band::exactly(SquareFeet(net)), &patches).likely.0;
        let taken: f64 = shares.iter().sum();
        prop_assert!((left - (net * (1.0 - taken)).max(0.0)).abs() <= 1e-9 * net.max(1.0));
        prop_assert!(!patches.is_empty() || left == net);
    }

    /// Patches at the surface's own depth change nothing.
    #[test]
    fn a_patch_at_the_same_depth_changes_nothing(share in 1_u32..100, depth in 1_u32..40) {
        let job = |patches: Value| -> Job {
            serde_json::from_value(json!({
                "format": "foamwright-job", "version": 2, "id": "test", "next_id": 9,
                "surfaces": [{"id": 1, "shape": "typed_area", "patches": patches, "entries": [
                    {"field": "area", "text": "70"}, {"field": "depth", "text": format!("{depth}/8")}]}],
            })).expect("a job")
        };
        let feet = |job: &Job| crate::estimate(job, NOW).surfaces[0].in_place.expect("in place").likely.0;
        let patched = job(json!([{"id": 2, "entries": [
            {"field": "share", "text": share.to_string()}, {"field": "depth", "text": format!("{depth}/8")}]}]));
        prop_assert!((feet(&job(json!([]))) - feet(&patched)).abs() < 1e-9);
    }
}
