//! Groups of kits as a person enters them: what to plan on, which of curve and label decides, what readings teach, how
//! long they last outside, and what an estimate may never do.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod edges;
mod never;

use foamwright::Estimate;
use foamwright::conditioning::{Conditioning, CoolDown, Decides, WarmUp, curves};
use foamwright::findings::Code;
use foamwright::job::{Job, Now};
use serde_json::{Value, json};
use std::path::Path;

/// Friday, 2026-10-16, noon by the clock on the wall, five hours behind UTC.
const NOW: Now = Now { ms: 1_792_170_000_000.0, offset_min: -300 };
const HOUR_MS: f64 = 3_600_000.0;

fn ago(hours: f64) -> Value {
    json!({ "ms": NOW.ms - hours * HOUR_MS, "offset_min": NOW.offset_min })
}

fn entries(all: &[(&str, &str)]) -> Value {
    all.iter().map(|(field, text)| json!({ "field": field, "text": text })).collect()
}

/// A job with one group; Monday, 2026-10-19, 10 am unless `of_job` says otherwise.
fn job(group: &[(&str, &str)], of_job: &[(&str, &str)], label: &str) -> Value {
    let mut own = vec![("spray_date", "2026-10-19"), ("spray_time", "10:00 am")];
    own.retain(|one| !of_job.iter().any(|other| other.0 == one.0));
    own.extend_from_slice(of_job);
    json!({
        "format": "foamwright-job", "version": 4, "id": "x", "next_id": 50, "foam": 10,
        "entries": entries(&own),
        "foams": [{ "id": 10, "entries": entries(&[("conditioning", label)]) }],
        "warming": [{ "id": 20, "name": "First set", "entries": entries(group) }],
    })
}

fn estimate(job: &Value) -> Estimate {
    let job: Job = serde_json::from_value(job.clone()).expect("a job");
    foamwright::estimate(&job, NOW)
}

fn group(job: &Value) -> Conditioning {
    estimate(job).conditioning[0].clone()
}

fn warm(job: &Value) -> WarmUp {
    group(job).warm_up.expect("warm-up")
}

fn hours(minutes: Option<foamwright::measure::Minutes>) -> f64 {
    minutes.expect("a time").0 / 60.0
}

const COLD: &[(&str, &str)] = &[("cylinder", "medium"), ("start", "40"), ("room", "75")];

fn with(more: &[(&'static str, &'static str)]) -> Vec<(&'static str, &'static str)> {
    let mut all: Vec<_> = COLD.iter().copied().filter(|one| !more.iter().any(|new| new.0 == one.0)).collect();
    all.extend_from_slice(more);
    all
}

#[test]
fn likely_and_slow_hours_are_those_of_the_published_cylinder() {
    let all: Value = serde_json::from_str(
        &std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/published/warm_up.json"))
            .unwrap(),
    )
    .unwrap();
    for row in all["warm"].as_array().unwrap() {
        let text = |name: &str| row[name].to_string();
        let (start, room) = (text("start_f"), text("air_f"));
        let warm = warm(&job(
            &[("cylinder", row["kit"].as_str().unwrap()), ("start", &start), ("room", &room)],
            &[],
            "0 h",
        ));
        let (likely, slow) = (row["m4_h"].as_f64().unwrap(), row["m1_h"].as_f64().unwrap());
        assert!((hours(warm.likely_min) / likely - 1.0).abs() < 0.01, "{row}: {warm:?}");
        assert!((hours(warm.slow_min) / slow - 1.0).abs() < 0.01, "{row}: {warm:?}");
        assert_eq!((warm.plan_min, warm.decides), (warm.slow_min, Decides::Curve));
    }
}

#[test]
fn the_label_is_never_undercut_and_the_longer_of_the_two_decides() {
    // Medium, 40 to 70 °F in 75: 25.7 h at the slow edge, by the published cylinder.
    let by_label = warm(&job(COLD, &[], "48 h"));
    assert_eq!((by_label.decides, hours(by_label.plan_min)), (Decides::Label, 48.0));
    let by_curve = warm(&job(COLD, &[], "24 h"));
    assert_eq!(by_curve.decides, Decides::Curve);
    assert!((hours(by_curve.plan_min) - 25.7).abs() < 0.2);
    // Monday 10 am less 48 h is Saturday 10 am: minutes of the wall.
    let spray = by_label.spray_at.unwrap().0;
    assert_eq!(spray, 20_745.0 * 1_440.0 + 600.0);
    assert_eq!(by_label.in_by.unwrap().0, spray - 48.0 * 60.0);
    assert!(!by_label.late);
    // From noon on Friday to noon on Sunday there are 48 h less than a minute, or more.
    for (time, late) in [("11:59 am", true), ("12:00 pm", false)] {
        let job = job(COLD, &[("spray_date", "2026-10-18"), ("spray_time", time)], "48 h");
        assert_eq!(warm(&job).late, late, "{time}");
    }
    // A kit that is warm already still has its hours to stand.
    let warm_already = warm(&job(&with(&[("start", "74")]), &[], "24 h"));
    assert_eq!((warm_already.slow_min.unwrap().0, hours(warm_already.plan_min)), (0.0, 24.0));
}

#[test]
fn a_room_that_never_does_it() {
    for room in ["69", "70"] {
        let warm = warm(&job(&with(&[("room", room)]), &[], "24 h"));
        assert_eq!(
            (warm.likely_min, warm.slow_min, warm.plan_min, warm.in_by),
            (None, None, None, None),
            "{room}"
        );
    }
    // Nor does one where warm kits would cool.
    assert_eq!(warm(&job(&with(&[("start", "75"), ("room", "60")]), &[], "24 h")).plan_min, None);
}

#[test]
fn nothing_is_said_without_start_and_room_and_both_are_asked_for() {
    let needed = |job: &Value| {
        let found = estimate(job).findings;
        found
            .into_iter()
            .filter(|one| one.code == Code::Needed && one.at.id == 20)
            .map(|one| one.at.field)
            .collect::<Vec<_>>()
    };
    assert_eq!(needed(&job(&[], &[], "24 h")), Vec::<String>::new());
    assert_eq!(needed(&job(&[("pack", "bare")], &[], "24 h")), ["start", "room"]);
    assert_eq!(needed(&job(COLD, &[], "24 h")), Vec::<String>::new());
    assert_eq!(group(&job(&[("start", "40")], &[], "24 h")).warm_up, None);
    // What cannot be read is said beside its field.
    let found = estimate(&job(&with(&[("night", "warm")]), &[], "24 h")).findings;
    assert!(found.iter().any(|one| one.code == Code::NotANumber && one.at.field == "night"));
}

#[test]
fn sizes_follow_the_heaviest_kit_and_what_was_measured() {
    let size = |kits: Value, group_entries: &[(&str, &str)]| {
        let mut job = job(group_entries, &[], "24 h");
        job["kits"] = kits;
        let cylinder = group(&job).cylinder.unwrap();
        (cylinder.size, cylinder.assumed, cylinder.liquid_lb.0)
    };
    let kit = |weight: &str| json!({ "id": 30, "entries": entries(&[("net_weight", weight)]) });
    // Half of what a carton says, the next size up; small holds 6 lb, medium 16, large 25.
    assert_eq!(size(json!([kit("12 lb")]), COLD_ANY), (Some("small"), true, 6.0));
    assert_eq!(size(json!([kit("12.1 lb")]), COLD_ANY), (Some("medium"), true, 16.0));
    assert_eq!(size(json!([kit("10 lb"), kit("50 lb")]), COLD_ANY), (Some("large"), true, 25.0));
    assert_eq!(size(json!([kit("88 lb")]), COLD_ANY), (Some("xl"), true, 45.0));
    // 600 bd ft at 1.75 lb/ft³ are 87.5 lb of foam, 43.75 in each cylinder.
    let by_yield = json!([{ "id": 30, "entries": entries(&[("label_yield", "600")]) }]);
    assert_eq!(size(by_yield, COLD_ANY), (Some("xl"), true, 45.0));
    assert_eq!(size(json!([]), COLD), (Some("medium"), false, 16.0));
    let measured =
        [("diameter", "10"), ("height", "14"), ("liquid", "20 lb"), ("start", "40"), ("room", "75")];
    assert_eq!(size(json!([kit("88 lb")]), &measured), (None, false, 20.0));
}

const COLD_ANY: &[(&str, &str)] = &[("start", "40"), ("room", "75")];

/// Set back to 60 °F from 10 pm to 6 am.
const NIGHTS: &[(&str, &str)] = &[("room", "75"), ("night", "60")];

#[test]
fn a_night_set_back_counts_by_the_clock() {
    let plan = warm(&job(&with(NIGHTS), &[("spray_time", "18:00")], "0 h"));
    let through = warm(&job(COLD, &[("spray_time", "18:00")], "0 h"));
    assert!(plan.slow_min.unwrap() > through.slow_min.unwrap(), "{plan:?}");
    // In then, and with the slow liquid, the core is there as spraying begins: followed forward, apart from the sweep
    // backward that found the time.
    let in_by = plan.in_by.unwrap().0;
    let mut moved = job(&with(NIGHTS), &[("spray_time", "18:00")], "0 h");
    moved["warming"][0]["moved_in"] = json!({ "ms": (in_by + 300.0) * 60_000.0, "offset_min": -300 });
    let now = Now { ms: (plan.spray_at.unwrap().0 + 300.0) * 60_000.0, offset_min: -300 };
    let moved: Job = serde_json::from_value(moved).unwrap();
    let then = foamwright::estimate(&moved, now).conditioning[0].warm_up.unwrap();
    let core = then.core_now_f.unwrap().low.0;
    assert!((core - 70.0).abs() < 0.05, "{core}");
    // By day alone they would be warm enough for a start at 6 in the morning; after a night at 60 °F the steel is not.
    assert_eq!(warm(&job(&with(NIGHTS), &[("spray_time", "6:00 am")], "0 h")).in_by, None);
}

#[test]
fn kits_in_the_room_have_a_time_and_a_core() {
    let mut moved = job(COLD, &[], "24 h");
    moved["warming"][0]["moved_in"] = ago(8.0);
    let warm_up = warm(&moved);
    assert_eq!(warm_up.ready_at.unwrap().0, NOW.wall().0 - 480.0 + warm_up.plan_min.unwrap().0);
    assert_eq!(warm_up.in_by, None);
    // Published: at 7.99 h the steel of this one first reads 70 °F, and its core is 65.15 °F.
    assert!((warm_up.skin_now_f.unwrap().0 - 70.0).abs() < 0.1);
    assert!((warm_up.core_now_f.unwrap().likely.0 - 65.15).abs() < 0.15);
    assert!(
        (warm_up.core_then_f.unwrap().0 - 65.15).abs() < 0.15
            && (hours(warm_up.skin_min) - 7.99).abs() < 0.05
    );
    let core = warm_up.core_now_f.unwrap();
    assert!(core.low < core.likely && core.likely < core.high);
    // A liquid that was read stands for the core.
    moved["warming"][0]["log"] =
        json!([{ "id": 30, "entries": entries(&[("liquid", "68 F")]), "taken": ago(0.5) }]);
    assert_eq!(warm(&moved).core_now_f.unwrap().likely.0, 68.0);
    // Three weeks on, every edge is at the room's temperature.
    moved["warming"][0]["moved_in"] = ago(500.0);
    moved["warming"][0]["log"] = json!([]);
    let core = warm(&moved).core_now_f.unwrap();
    assert!((core.low.0 - 75.0).abs() < 0.05 && (core.high.0 - 75.0).abs() < 0.05, "{core:?}");
}

/// What the cylinder of `COLD` shows after so many hours if its liquid stirs itself `m` times: steel and mean, by the
/// shells that the published values hold.
fn shows(m: f64, at_hours: f64) -> (f64, f64) {
    use foamwright::conditioning::{cylinder, film, room, shells};
    let body = cylinder::Body::new(9.5, 13.0, 16.0);
    let ways = film::conductances(&body, film::Packed { pack: "carton", blocked: 0.0 }, 40.0, 75.0);
    let system = shells::Shells::new(&body, ways, m, 1.0);
    let mut shown = (f64::NAN, f64::NAN);
    room::march(&system, 40.0, &room::Room::steady(75.0), 0.0, at_hours * 60.0, &mut |_, _, after| {
        shown = (shells::skin(after), system.mean(after));
        false
    });
    shown
}

fn logged(readings: &[(&str, f64, f64)]) -> Value {
    let mut job = job(COLD, &[], "24 h");
    job["warming"][0]["moved_in"] = ago(12.0);
    let read = |(at, (what, after, f)): (usize, &(&str, f64, f64))| json!({ "id": 30 + at, "entries": entries(&[(*what, &format!("{f:.1} F"))]), "taken": ago(12.0 - after) });
    job["warming"][0]["log"] = readings.iter().enumerate().map(read).collect();
    job
}

#[test]
fn readings_teach_how_much_the_liquid_stirs_itself() {
    let none = group(&logged(&[])).circulation;
    assert_eq!((none.m.low, none.m.likely, none.m.high, none.readings), (1.0, 4.0, 8.0, 0));
    for truth in [1.5, 3.0, 10.0] {
        let all: Vec<_> = [3.0, 5.0, 7.0, 9.0, 11.0]
            .into_iter()
            .flat_map(|at| {
                let (skin, mean) = shows(truth, at);
                [("skin", at, skin), ("liquid", at, mean)]
            })
            .collect();
        let learned = group(&logged(&all)).circulation;
        assert_eq!(learned.readings, 10);
        assert!(learned.m.low <= truth && truth <= learned.m.high, "{truth}: {learned:?}");
        assert!(learned.m.high / learned.m.low < none.m.high / none.m.low, "{truth}: {learned:?}");
        assert!((truth - 4.0).abs() > (truth - learned.m.likely).abs(), "{truth}: {learned:?}");
        // One reading of the same teaches less than ten.
        let once = group(&logged(&all[..1])).circulation.m;
        assert!(once.high / once.low > learned.m.high / learned.m.low, "{truth}: {once:?}");
    }
    // A slow liquid makes the plan longer than one that was read to be quick.
    let at_edge = |truth| {
        let all: Vec<_> = [4.0, 8.0, 11.0].into_iter().map(|at| ("skin", at, shows(truth, at).0)).collect();
        warm(&logged(&all)).slow_min.unwrap()
    };
    assert!(at_edge(1.2) > at_edge(8.0));
}

#[test]
fn readings_without_a_time_or_from_before_they_came_in_teach_nothing() {
    let mut job = logged(&[("skin", 6.0, 60.0)]);
    assert_eq!(group(&job).circulation.readings, 1);
    job["warming"][0]["log"][0]["taken"] = Value::Null;
    assert_eq!(group(&job).circulation.readings, 0);
    job["warming"][0]["log"][0]["taken"] = ago(13.0);
    assert_eq!(group(&job).circulation.readings, 0);
    job["warming"][0]["log"][0]["taken"] = ago(-1.0);
    assert_eq!(group(&job).circulation.readings, 0);
    job["warming"][0]["log"][0]["taken"] = ago(6.0);
    job["warming"][0].as_object_mut().unwrap().remove("moved_in");
    assert_eq!(group(&job).circulation.readings, 0);
}

fn cool(more: &[(&'static str, &'static str)]) -> CoolDown {
    group(&job(&with(more), &[], "24 h")).cool_down.expect("cool-down")
}

#[test]
fn the_clock_outside_is_the_earlier_edge() {
    // Medium in its carton, 75 to 70 °F in 40: the mean takes 0.79 h with M 4, by the published cylinder, and the steel
    // 0.19 h by the same. The edges are sooner.
    let cold = cool(&[("out_air", "40")]);
    assert_eq!((cold.from_f.0, cold.limit_f.0, cold.hot), (75.0, 70.0, false));
    let (starts, use_by) = (cold.starts_min.unwrap().0, cold.use_by_min.unwrap().0);
    assert!(use_by < 0.795 * 60.0 && use_by > 0.6 * 60.0, "{use_by}");
    assert!(starts < 0.19 * 60.0 && starts > 0.1 * 60.0, "{starts}");
    assert!((cold.hose_min.unwrap().0 - 8.3 * libm::log(35.0 / 30.0)).abs() < 1e-6);
    assert_eq!((cold.starts_at, cold.use_by), (None, None));
    // On the hot side the limit is the label's most, 90 °F; 2.8 h with M 4.
    let hot = cool(&[("out_air", "110")]);
    assert_eq!((hot.limit_f.0, hot.hot), (90.0, true));
    let use_by = hot.use_by_min.unwrap().0;
    assert!(use_by < 2.85 * 60.0 && use_by > 2.3 * 60.0, "{use_by}");
    // Air inside the window brings nothing out of it, and what is out of it has no time left.
    assert_eq!(cool(&[("out_air", "72")]).use_by_min, None);
    assert_eq!(cool(&[("out_air", "85")]).use_by_min, None);
    assert_eq!(cool(&[("room", "65"), ("out_air", "40")]).use_by_min.unwrap().0, 0.0);
}

#[test]
fn the_clock_runs_from_when_they_left() {
    let mut job = job(&with(&[("out_air", "40")]), &[], "24 h");
    job["warming"][0]["moved_in"] = ago(60.0);
    job["warming"][0]["moved_out"] = ago(0.25);
    let cool = group(&job).cool_down.unwrap();
    assert_eq!(cool.use_by.unwrap().0, NOW.wall().0 - 15.0 + cool.use_by_min.unwrap().0);
    // What stood as they left is what they are judged by.
    let core = warm(&job).core_now_f.unwrap();
    assert!(core.low.0 > 74.0 && core.high.0 < 75.01, "{core:?}");
    // Eight hours are too few: the steel was at 70 °F, the core at 65 and at the slow edge below. Nothing is left to use.
    job["warming"][0]["moved_in"] = ago(8.25);
    let early = group(&job).cool_down.unwrap();
    let core = warm(&job).core_now_f.unwrap();
    assert!((core.likely.0 - 65.15).abs() < 0.2 && core.low.0 < core.likely.0, "{core:?}");
    assert_eq!((early.from_f, early.use_by_min.unwrap().0), (core.low, 0.0));
    // Unless the liquid itself was read.
    job["warming"][0]["log"] =
        json!([{ "id": 30, "entries": entries(&[("liquid", "74 F")]), "taken": ago(1.0) }]);
    assert_eq!(group(&job).cool_down.unwrap().from_f.0, 74.0);
}

#[test]
fn curves_are_short_and_end_where_the_estimate_says() {
    let drawn: Job = serde_json::from_value(job(&with(&[("out_air", "40")]), &[], "24 h")).unwrap();
    let lines = curves(&drawn, 20, NOW).unwrap();
    let warm_up = foamwright::estimate(&drawn, NOW).conditioning[0].warm_up.unwrap();
    assert!(curves(&drawn, 21, NOW).is_none());
    assert_eq!(lines.warm_min.len(), 97);
    for line in [&lines.warm_slow_f, &lines.warm_likely_f, &lines.warm_skin_f, &lines.warm_air_f] {
        assert_eq!(line.len(), lines.warm_min.len());
    }
    assert_eq!((lines.cool_min.len(), lines.cool_skin_f.len(), lines.cool_mean_f.len()), (97, 97, 97));
    let at = |line: &[f64], minutes: f64| {
        let place = lines.warm_min.partition_point(|one| *one < minutes);
        (line[place - 1], line[place])
    };
    for (line, minutes) in [
        (&lines.warm_slow_f, warm_up.slow_min),
        (&lines.warm_likely_f, warm_up.likely_min),
        (&lines.warm_skin_f, warm_up.skin_min),
    ] {
        let (before, after) = at(line, minutes.unwrap().0);
        assert!(before < 70.0 && after >= 69.99, "{before} {after}");
    }
    // When the likely steel is there, both cores stand where their curves do.
    for (line, then) in
        [(&lines.warm_slow_f, warm_up.core_then_slow_f), (&lines.warm_likely_f, warm_up.core_then_f)]
    {
        let ((before, after), then) = (at(line, warm_up.skin_min.unwrap().0), then.unwrap().0);
        assert!(before - 0.05 < then && then < after + 0.05, "{before} {then} {after}");
    }
    assert!(warm_up.core_then_slow_f.unwrap().0 < warm_up.core_then_f.unwrap().0 - 5.0);
}
