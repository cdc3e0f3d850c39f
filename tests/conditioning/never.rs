//! What an estimate may never do, and what always holds.

use super::*;
use foamwright::readiness::Verdict;
use proptest::prelude::*;

fn sample() -> Vec<(String, Value, Now)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/jobs");
    let read =
        |path: &Path| -> Value { serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap() };
    let mut all = Vec::new();
    for one in std::fs::read_dir(folder).unwrap() {
        let path = one.unwrap().path();
        if path.join("job.json").is_file() {
            let now = serde_json::from_value(read(&path.join("now.json"))).unwrap();
            all.push((
                path.file_name().unwrap().to_string_lossy().into_owned(),
                read(&path.join("job.json")),
                now,
            ));
        }
    }
    all
}

fn verdict(job: &Value, now: Now) -> Verdict {
    let job: Job = serde_json::from_value(job.clone()).expect("a job");
    foamwright::estimate(&job, now).readiness.verdict
}

/// GO before NOT READ before HOLD.
fn rank(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::Go => 0,
        Verdict::NotRead => 1,
        Verdict::Hold => 2,
    }
}

#[test]
fn a_group_only_ever_takes_a_go_away() {
    let jobs = sample();
    assert!(jobs.len() > 60, "{}", jobs.len());
    for (name, mut job, now) in jobs {
        job["warming"] = json!([]);
        let before = verdict(&job, now);
        let mut worst = 0;
        for hours in [1.0, 23.9, 24.1, 60.0] {
            for (start, room) in
                [("40 F", "75 F"), ("40 F", "70.2 F"), ("80 F", "80 F"), ("cold", "75 F"), ("40 F", "60 F")]
            {
                for out in [None, Some(0.5)] {
                    let at =
                        |hours: f64| json!({ "ms": now.ms - hours * HOUR_MS, "offset_min": now.offset_min });
                    let mut group = json!({ "id": 9_001, "moved_in": at(hours), "entries": entries(&[
                        ("start", start), ("room", room), ("out_air", "72 F")
                    ]) });
                    if let Some(out) = out {
                        group["moved_out"] = at(out);
                    }
                    job["warming"] = json!([group]);
                    let after = verdict(&job, now);
                    assert!(rank(after) >= rank(before), "{name}: {before:?} to {after:?}");
                    worst = worst.max(rank(after));
                }
            }
        }
        assert_eq!(worst, 2, "{name}: one hour in the warm room holds");
    }
}

#[test]
fn the_labels_hours_hold_and_a_cold_core_asks_to_be_measured() {
    let (_, mut job, now) = sample().into_iter().find(|one| one.0 == "winter-day-go").unwrap();
    assert_eq!(verdict(&job, now), Verdict::Go);
    let mut put = |hours: f64, room: &str, log: Value| {
        let at = |hours: f64| json!({ "ms": now.ms - hours * HOUR_MS, "offset_min": now.offset_min });
        job["warming"] = json!([{ "id": 9_001, "name": "Second set", "moved_in": at(hours), "log": log,
            "entries": entries(&[("cylinder", "xl"), ("start", "40 F"), ("room", room)]) }]);
        let job: Job = serde_json::from_value(job.clone()).unwrap();
        let estimate = foamwright::estimate(&job, now);
        let blame = estimate.readiness.blame.map(|at| estimate.findings[at as usize].clone());
        (estimate.readiness.verdict, blame)
    };
    let (verdict, blame) = put(23.0, "75 F", json!([]));
    let blame = blame.unwrap();
    assert_eq!((verdict, blame.code), (Verdict::Hold, Code::WarmTooShort));
    let figure = |name: &str| blame.figures.iter().find(|one| one.name == name).unwrap().text.clone();
    assert_eq!((figure("held").as_str(), figure("limit").as_str()), ("23\u{a0}h", "24\u{a0}h"));
    assert_eq!(put(24.0, "80 F", json!([])).0, Verdict::Go);
    // A room barely over the label's least: after 25 h the core of a large set is still under it.
    let (verdict, blame) = put(25.0, "70.5 F", json!([]));
    assert_eq!((verdict, blame.unwrap().code), (Verdict::NotRead, Code::CoreCold));
    // Measured: the liquid is there.
    let taken = json!({ "ms": now.ms - 600_000.0, "offset_min": now.offset_min });
    let log = json!([{ "id": 9_002, "entries": entries(&[("liquid", "71 F")]), "taken": taken }]);
    assert_eq!(put(25.0, "70.5 F", log).0, Verdict::Go);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// A warmer room is never later, by day or by night.
    #[test]
    fn a_warmer_room_is_never_later(start in 20..70_i32, room in 71..90_i32, night in 50..90_i32, by in 1..10_i32, size in 0..4_usize) {
        let plan = |room: i32, night: i32| {
            let (start, room, night) = (start.to_string(), room.to_string(), night.to_string());
            let one = [("cylinder", SIZES[size]), ("start", start.as_str()), ("room", &room), ("night", &night)];
            let mut job = job(&one, &[], "0 h");
            job["warming"][0]["moved_in"] = ago(0.0);
            warm(&job).slow_min.map_or(f64::INFINITY, |slow| slow.0)
        };
        let least = plan(room, night);
        prop_assert!(plan(room + by, night) <= least * 1.006 + 0.1);
        prop_assert!(plan(room, night + by) <= least * 1.006 + 0.1);
    }

    /// Liquid that stirs itself more is never later, and whoever comes in later is never ready earlier.
    #[test]
    fn more_stirring_and_an_earlier_start_are_never_later(start in 20..60_i32, room in 71..90_i32, night in 60..80_i32, m in 1.0..20.0_f64, more in 1.0..3.0_f64, wait in 0.0..30.0_f64) {
        use foamwright::conditioning::{cylinder, film, room as air, shells, warm_up};
        let (start, room, night) = (f64::from(start), f64::from(room), f64::from(night));
        let body = cylinder::Body::new(9.5, 13.0, 16.0);
        let ways = film::conductances(&body, film::Packed { pack: "carton", blocked: 0.0 }, start, room);
        let nights = air::Room { day: room, night: Some(night), from: 1_320.0, to: 360.0 };
        let ready = |m: f64, from: f64| {
            let shells = shells::Shells::new(&body, ways, m, 3.0);
            let run = warm_up::forward(&shells, start, &nights, from, 70.0, None, 20_000.0);
            run.core_min.map_or(f64::INFINITY, |minutes| from + minutes)
        };
        let one = ready(m, 600.0);
        prop_assert!(ready(m * more, 600.0) <= one + 3.0);
        prop_assert!(ready(m, 600.0 + wait * 60.0) >= one - 3.0);
    }

    /// A better box is never sooner cold, nor sooner hot; a longer label's hours are never planned shorter.
    #[test]
    fn a_better_box_is_never_sooner_cold(air in 0..69_i32, room in 71..88_i32, size in 0..4_usize, hot in proptest::bool::ANY) {
        let air = if hot { air + 92 } else { air };
        let use_by = |pack: &str| {
            let (air, room) = (air.to_string(), room.to_string());
            let one = [("cylinder", SIZES[size]), ("start", "40"), ("room", room.as_str()), ("out_air", &air), ("out_pack", pack)];
            let cool = group(&job(&one, &[], "24 h")).cool_down.unwrap();
            let minutes = |one: Option<foamwright::measure::Minutes>| one.map_or(f64::INFINITY, |one| one.0);
            (minutes(cool.starts_min), minutes(cool.use_by_min))
        };
        let mut before = (0.0, 0.0);
        for pack in ["bare", "carton", "box_r5", "box_r10"] {
            let after = use_by(pack);
            prop_assert!(after.0 >= before.0 && after.1 >= before.1 && after.0 <= after.1, "{pack}: {before:?} {after:?}");
            before = after;
        }
    }
}

const SIZES: [&str; 4] = ["small", "medium", "large", "xl"];
