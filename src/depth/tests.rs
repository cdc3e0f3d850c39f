use super::*;
use crate::findings::{Code, Finding};
use crate::foam::sheet;
use crate::job::Reader;
use crate::measure::{SquareFeet, Units};
use crate::surfaces;
use serde_json::{Value, json};

fn fields(all: &[(&str, &str)]) -> Vec<Value> {
    all.iter().map(|(field, text)| json!({"field": field, "text": text})).collect()
}

/// A job of one surface of 70 ft² with these entries; foam A lists R-6.0 an inch, each half inch from 1 to 4.
fn job(way: &str, surface: &[(&str, &str)], job: &[(&str, &str)], rows: bool) -> Job {
    let mut entries = fields(surface);
    entries.push(json!({"field": "area", "text": "70"}));
    let rows: Vec<Value> = (2..=8)
        .filter(|_| rows)
        .map(|n| {
            let (thickness, r) = ((f64::from(n) / 2.0).to_string(), (3 * n).to_string());
            json!({"id": 20 + n, "entries": fields(&[("thickness", &thickness), ("r", &r)])})
        })
        .collect();
    serde_json::from_value(json!({
        "format": "foamwright-job", "version": 2, "id": "test", "next_id": 100,
        "entries": fields(job),
        "foam": 10,
        "surfaces": [{"id": 1, "shape": "typed_area", "entries": entries, "depth_way": way, "depth_kit": 30}],
        "foams": [{"id": 10, "r_at": rows}],
        "kits": [{"id": 30, "name": "Medium 160"}],
    }))
    .expect("a job")
}

fn chosen(job: &Job, one_kit: Option<(f64, f64)>) -> (Option<Depth>, Vec<Finding>) {
    let mut reader = Reader::new(Units::Us);
    let foam = sheet(&job.foams[0], &mut reader).expect("a foam");
    let surface = &job.surfaces[0];
    let area = surfaces::measure(surface, &mut reader).expect("an area");
    assert_eq!(area.net_ft2.likely, SquareFeet(70.0));
    let one_kit = one_kit.map(|(usable, factor)| (BoardFeet(usable), factor));
    let existing = existing(surface, &mut reader);
    let place = crate::climate::place(job, &mut reader);
    let around = Around {
        job,
        place: &place,
        surface,
        component: None,
        build: None,
        largest: None,
        area: Some(&area),
        foam: Some(&foam),
        existing,
        spread_ft2: Some(area.net_ft2.likely),
        growth: 0.0,
        one_kit,
        left: None,
    };
    let depth = choose(around, &mut reader);
    (depth, reader.findings)
}

fn codes(findings: &[Finding]) -> Vec<(Code, &str)> {
    findings.iter().map(|one| (one.code, one.at.field.as_str())).collect()
}

fn three(depth: &Depth) -> (f64, f64, f64) {
    (depth.promised_in.0, depth.aim_in.likely.0, depth.most_in.0)
}

/// The wall of the sample job: aim 2, promise 1½ at R-9, most 2¼.
#[test]
fn typed() {
    let (depth, findings) = chosen(&job("typed", &[("depth", "2")], &[], true), None);
    let depth = depth.expect("depths");
    assert_eq!(three(&depth), (1.5, 2.0, 2.25));
    assert_eq!((depth.promised_r, depth.promised_r_at_in), (Some(RValue(9.0)), Some(Inches(1.5))));
    assert_eq!(depth.planning_r, Some(RValue(12.0)));
    assert_eq!(findings, []);
}

/// The promise follows the thinnest of a range, the most its thickest, and nothing is rounded.
#[test]
fn a_range_is_carried_through() {
    let (depth, _) =
        chosen(&job("typed", &[("depth", "2 to 3")], &[("under_aim", "1/3"), ("over_aim", "0")], true), None);
    let depth = depth.expect("depths");
    assert_eq!(depth.aim_in, Band { low: Inches(2.0), likely: Inches(2.5), high: Inches(3.0) });
    assert_eq!((depth.promised_in, depth.most_in), (Inches(2.0 - 1.0 / 3.0), Inches(3.0)));
}

/// The garage ceiling of the sample job: R-18 is listed at 3 in; aim 3½, most 3¾.
#[test]
fn a_target_is_promised_and_aimed_over() {
    let (depth, findings) = chosen(&job("target_r", &[("target_r", "R-18")], &[], true), None);
    let depth = depth.expect("depths");
    assert_eq!(three(&depth), (3.0, 3.5, 3.75));
    assert_eq!(
        (depth.needed_in, depth.target_r, depth.promised_r),
        (Some(Inches(3.0)), Some(RValue(18.0)), Some(RValue(18.0)))
    );
    assert_eq!(findings, []);
}

/// R-20 needs 3⅓ in, but the sheet lists no 3⅓ in: R-18 goes on the receipt, R-20 from 3½ in.
#[test]
fn between_two_rows_the_target_is_planned_not_promised() {
    let (depth, findings) = chosen(&job("target_r", &[("target_r", "20")], &[], true), None);
    let depth = depth.expect("depths");
    assert!(
        (depth.promised_in.0 - 10.0 / 3.0).abs() < 1e-12
            && (depth.aim_in.likely.0 - 23.0 / 6.0).abs() < 1e-12
    );
    assert_eq!(depth.promised_r, Some(RValue(18.0)));
    assert_eq!(codes(&findings), [(Code::TargetNotPromised, "target_r")]);
    let listed = findings[0].figures.iter().find(|one| one.name == "listed").expect("a figure");
    assert_eq!(listed.text, "3½\u{a0}in");
    let (depth, findings) = chosen(&job("target_r", &[("target_r", "25")], &[], true), None);
    assert_eq!(depth, None);
    assert_eq!(codes(&findings), [(Code::TargetBeyondSheet, "target_r")]);
}

/// Case A01, rescaled: a Medium 160 at 85 % is 136 board feet: 136 ÷ 70 = 1.943 in; 3 % over-depth takes it down.
#[test]
fn whatever_one_kit_gives() {
    let (depth, _) = chosen(&job("one_kit", &[], &[], true), Some((136.0, 1.0)));
    assert!((depth.expect("depths").aim_in.likely.0 - 1.942_857_142_857).abs() < 1e-9);
    let (depth, _) = chosen(&job("one_kit", &[], &[], true), Some((136.0, 1.03)));
    assert!((depth.expect("depths").aim_in.likely.0 * 70.0 * 1.03 - 136.0).abs() < 1e-9);
    let (depth, findings) = chosen(&job("one_kit", &[], &[], true), Some((20_000.0, 1.0)));
    assert_eq!(depth, None);
    assert_eq!(codes(&findings), [(Code::AboveLimit, "depth_kit")]);
    assert_eq!(chosen(&job("one_kit", &[], &[], true), Some((0.0, 1.0))).0, None);
    for (kit, code) in [(0, Code::Needed), (99, Code::NoSheet)] {
        let mut job = job("one_kit", &[], &[], true);
        job.surfaces[0].depth_kit = kit;
        assert_eq!(codes(&chosen(&job, None).1), [(code, "depth_kit")]);
    }
}

#[test]
fn what_is_missing_is_asked_for() {
    for (way, field) in [("typed", "depth"), ("target_r", "target_r")] {
        let (depth, findings) = chosen(&job(way, &[], &[], true), None);
        assert_eq!((depth, codes(&findings)), (None, vec![(Code::Needed, field)]));
    }
    // A tolerance that cannot be read leaves no depths rather than some other ones.
    let (depth, findings) = chosen(&job("typed", &[("depth", "2")], &[("under_aim", "x")], true), None);
    assert_eq!((depth, codes(&findings)), (None, vec![(Code::NotANumber, "under_aim")]));
}

#[test]
fn typed_promise_and_most_count_and_may_cross() {
    let (depth, findings) =
        chosen(&job("typed", &[("depth", "3"), ("promise", "3"), ("most", "3")], &[], true), None);
    assert_eq!(three(&depth.expect("depths")), (3.0, 3.0, 3.0));
    assert_eq!(findings, []);
    for (promise, most, at) in [("3 1/8", "4", "promise"), ("2", "2 7/8", "most"), ("4", "2", "promise")] {
        let entries = [("depth", "3"), ("promise", promise), ("most", most)];
        let (depth, findings) = chosen(&job("typed", &entries, &[], true), None);
        assert!(depth.is_some());
        assert_eq!(codes(&findings), [(Code::DepthsCross, at)], "{promise} {most}");
    }
}

#[test]
fn against_the_cavity() {
    for (cavity, deeper) in [("3 1/2", true), ("2x4", true), ("2x6", false), ("4", false), ("3 to 5", true)] {
        let (depth, findings) = chosen(&job("typed", &[("depth", "4"), ("cavity", cavity)], &[], true), None);
        let found = codes(&findings).contains(&(Code::DeeperThanCavity, "depth"));
        assert_eq!(found, deeper, "{cavity}: {:?}", depth.expect("depths").cavity_in);
    }
}

/// Too thin for a lift, and the promise under the thinnest listed.
#[test]
fn too_thin() {
    let (depth, findings) = chosen(&job("typed", &[("depth", "3/8")], &[], true), None);
    let depth = depth.expect("depths");
    assert_eq!((depth.promised_in, depth.promised_r), (Inches(0.0), None));
    assert_eq!(codes(&findings), [(Code::ThinnerThanLift, "depth"), (Code::BelowListed, "depth")]);
    let (_, findings) = chosen(&job("typed", &[("depth", "1/2"), ("promise", "1/2")], &[], true), None);
    assert_eq!(codes(&findings), [(Code::BelowListed, "promise")]);
}

#[test]
fn a_sheet_without_r() {
    for (way, entry, some) in [("typed", ("depth", "2"), true), ("target_r", ("target_r", "12"), false)] {
        let (depth, findings) = chosen(&job(way, &[entry], &[], false), None);
        assert_eq!(depth.is_some(), some);
        assert_eq!(codes(&findings), [(Code::NoListedR, "r_at")], "{way}");
    }
}
