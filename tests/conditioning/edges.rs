//! What a night takes back, what kits are once they have left, and limits that are met from either side.

use super::*;
use foamwright::findings::Finding;
use foamwright::job::Warming;

fn at_wall(minutes: f64) -> Value {
    json!({ "ms": (minutes - f64::from(NOW.offset_min)) * 60_000.0, "offset_min": NOW.offset_min })
}

fn then(job: &Value, wall: f64) -> WarmUp {
    let job: Job = serde_json::from_value(job.clone()).unwrap();
    let now: Now = serde_json::from_value(at_wall(wall)).unwrap();
    foamwright::estimate(&job, now).conditioning[0].warm_up.unwrap()
}

fn found(job: &Value, code: Code) -> Option<Finding> {
    estimate(job).findings.into_iter().find(|one| one.code == code)
}

fn figure(finding: &Finding, name: &str) -> String {
    finding.figures.iter().find(|one| one.name == name).unwrap().text.clone()
}

#[test]
fn ready_is_when_they_are_warm_and_stay_so_and_not_when_they_once_were() {
    // Warm at 6:40 am or nearly so, and a night between that and the label's 24 h: at 6:40 the next morning they are
    // colder than they came. Followed forward to the minute that is said, at the slow edge.
    let came = 20_743.0 * 1_440.0 + 400.0;
    for (start, night) in [("68", "55"), ("72", "60")] {
        for spray in ["", "2026-10-18"] {
            let of_group = with(&[("start", start), ("night", night)]);
            let mut moved = job(&of_group, &[("spray_date", spray), ("spray_time", "4:00 pm")], "24 h");
            moved["warming"][0]["moved_in"] = at_wall(came);
            let morning = then(&moved, came + 1_440.0);
            assert!(morning.core_now_f.unwrap().low.0 < 69.0, "{start}: {morning:?}");
            let ready = morning.ready_at.unwrap().0;
            assert!(ready > came + 1_441.0 && ready < came + 2.0 * 1_440.0 + 600.0, "{start}: {morning:?}");
            assert_eq!(morning.late, morning.spray_at.is_some_and(|spray| spray.0 < ready));
            let on_time = then(&moved, ready);
            let (core, skin) = (on_time.core_now_f.unwrap().low.0, on_time.skin_now_f.unwrap().0);
            assert!(core >= 69.9 && skin >= 69.9, "{start}: {core} {skin}");
            // A minute before they were not.
            assert!((on_time.ready_at.unwrap().0 - ready).abs() < 1.0);
        }
    }
}

#[test]
fn a_night_that_takes_more_than_the_day_gives_is_never_ready() {
    // They come at 80 °F and the day is at 75, but a third of it is at 40: 63 °F on average.
    let mut moved = job(&with(&[("start", "80"), ("night", "40")]), &[("spray_date", "")], "24 h");
    let came = 20_743.0 * 1_440.0 + 400.0;
    moved["warming"][0]["moved_in"] = at_wall(came);
    let morning = then(&moved, came + 1_440.0);
    assert!(morning.core_now_f.unwrap().high.0 < 70.0, "{morning:?}");
    assert_eq!((morning.ready_at, morning.plan_min), (None, None));
    assert!(morning.slow_min.is_some());
}

#[test]
fn ready_holds_to_the_start_of_spraying_or_comes_after_it() {
    // Warm in the afternoon, and cold again at the hour that the job says.
    let mut moved = job(&with(&[("start", "68"), ("night", "55")]), &[("spray_time", "7:00 am")], "0 h");
    moved["warming"][0]["moved_in"] = ago(2.0);
    let warm_up = warm(&moved);
    let (ready, spray) = (warm_up.ready_at.unwrap().0, warm_up.spray_at.unwrap().0);
    assert!(ready > spray && ready < spray + 1_440.0 && warm_up.late, "{warm_up:?}");
    // Three weeks later by the calendar the day is the same, and so is the hour.
    moved["entries"][0]["text"] = json!("2026-11-09");
    assert!(moved["entries"][0]["field"] == "spray_date");
    let later = warm(&moved);
    let (ready, spray) = (later.ready_at.unwrap().0, later.spray_at.unwrap().0);
    assert!(ready > spray && ready < spray + 1_440.0 && later.late, "{later:?}");
    let core = |wall| then(&moved, wall).core_now_f.unwrap().low.0;
    assert!(
        (core(ready) - 70.0).abs() < 0.2 && core(ready - 60.0) < 70.0,
        "{} {}",
        core(ready),
        core(ready - 60.0)
    );
}

#[test]
fn never_and_not_at_that_hour_are_told_apart() {
    // 6 am comes after a night at 60 °F: not at that hour, though by day they get there.
    let hour = warm(&job(&with(NIGHTS), &[("spray_time", "6:00 am")], "0 h"));
    assert_eq!((hour.plan_min, hour.in_by, hour.late), (None, None, false));
    assert!(hour.likely_min.is_some() && hour.slow_min.unwrap() >= hour.likely_min.unwrap(), "{hour:?}");
    let never = warm(&job(&with(&[("room", "68"), ("night", "60")]), &[("spray_time", "6:00 am")], "0 h"));
    assert_eq!((never.plan_min, never.in_by, never.slow_min, never.likely_min), (None, None, None, None));
}

#[test]
fn who_left_before_the_time_is_not_ready_then() {
    let mut moved = job(COLD, &[], "24 h");
    moved["warming"][0]["moved_in"] = ago(4.5);
    assert!(warm(&moved).ready_at.is_some());
    moved["warming"][0]["moved_out"] = ago(0.5);
    assert_eq!(warm(&moved).ready_at, None);
    assert!(!estimate(&moved).calendar.iter().any(|one| one.id == 20));
    // Who left after it was.
    moved["warming"][0]["moved_in"] = ago(60.0);
    assert!(warm(&moved).ready_at.is_some());
}

#[test]
fn a_core_that_left_cold_is_still_cold_outside() {
    // XL, 30 h in 71 °F: the label's 24 h are over, the core is not there.
    let mut moved = job(&with(&[("cylinder", "xl"), ("room", "71")]), &[], "24 h");
    moved["warming"][0]["moved_in"] = ago(30.05);
    let inside = found(&moved, Code::CoreCold).expect("cold inside");
    moved["warming"][0]["moved_out"] = ago(0.05);
    let outside = found(&moved, Code::CoreCold).expect("cold outside");
    assert_eq!(figure(&inside, "core"), figure(&outside, "core"));
    // Hours after they left nothing has warmed them.
    moved["warming"][0]["moved_in"] = ago(36.0);
    moved["warming"][0]["moved_out"] = ago(6.0);
    assert!(found(&moved, Code::CoreCold).is_some());
    // The liquid was read just before: that stands.
    moved["warming"][0]["log"] =
        json!([{ "id": 30, "entries": entries(&[("liquid", "71 F")]), "taken": ago(6.5) }]);
    assert!(found(&moved, Code::CoreCold).is_none());
}

#[test]
fn the_hours_of_who_left_begin_anew_and_none_is_over_before_its_last_minute() {
    let mut moved = job(COLD, &[], "24 h");
    moved["warming"][0]["moved_in"] = ago(4.0);
    // It is noon: 20 h are left in the room …
    let inside = found(&moved, Code::WarmTooShort).unwrap();
    assert_eq!(
        (figure(&inside, "time"), figure(&inside, "date")),
        ("8:00\u{a0}am".into(), "2026-10-17".into())
    );
    // … and all 24 for who is out of it.
    moved["warming"][0]["moved_out"] = ago(0.5);
    let outside = found(&moved, Code::WarmTooShort).unwrap();
    assert_eq!(
        (figure(&outside, "time"), figure(&outside, "date")),
        ("12:00\u{a0}pm".into(), "2026-10-17".into())
    );
    // In since 7:59:30 am: at 8:00 sharp half a minute would be left.
    moved["warming"][0]["moved_in"] = ago(4.0 - 30.0 / 3_600.0);
    moved["warming"][0].as_object_mut().unwrap().remove("moved_out");
    assert_eq!(figure(&found(&moved, Code::WarmTooShort).unwrap(), "time"), "8:01\u{a0}am");
}

#[test]
fn nothing_cools_from_a_temperature_that_nobody_knows() {
    // How cold they came in is not said: after an hour they are not as warm as the room.
    let mut moved = job(&[("cylinder", "medium"), ("room", "75"), ("out_air", "40")], &[], "24 h");
    assert_eq!(group(&moved).cool_down.unwrap().from_f.0, 75.0);
    moved["warming"][0]["moved_in"] = ago(1.0);
    assert_eq!(group(&moved).cool_down, None);
    let read = |what, f| json!([{ "id": 30, "entries": entries(&[(what, f)]), "taken": ago(0.5) }]);
    moved["warming"][0]["log"] = read("skin", "74 F");
    assert_eq!(group(&moved).cool_down, None);
    moved["warming"][0]["log"] = read("liquid", "74 F");
    assert_eq!(group(&moved).cool_down.unwrap().from_f.0, 74.0);
}

#[test]
fn air_as_warm_as_the_kits_or_warmer_brings_them_nowhere() {
    for air in ["75", "75.2", "89"] {
        let out = cool(&[("out_air", air)]);
        assert_eq!((out.starts_min, out.use_by_min, out.hose_min), (None, None, None), "{air}: {out:?}");
    }
    // Between a core at 74.7 and steel that reads 85 °F.
    let mut moved = job(&with(&[("out_air", "80")]), &[], "24 h");
    moved["warming"][0]["moved_in"] = ago(47.0);
    moved["warming"][0]["log"] =
        json!([{ "id": 30, "entries": entries(&[("skin", "85 F")]), "taken": ago(0.5) }]);
    let out = group(&moved).cool_down.unwrap();
    assert!(out.from_f.0 > 74.0 && out.from_f.0 < 75.0, "{out:?}");
    assert_eq!((out.starts_min, out.use_by_min, out.hose_min), (None, None, None), "{out:?}");
}

#[test]
fn kits_above_the_labels_most_are_outside_it_before_they_cool() {
    // Common practice and the table's label: no more than 90 °F.
    let out = cool(&[("room", "95"), ("out_air", "40")]);
    assert_eq!((out.from_f.0, out.limit_f.0, out.hot), (95.0, 90.0, true));
    assert_eq!((out.starts_min.unwrap().0, out.use_by_min.unwrap().0), (0.0, 0.0));
    assert!(!cool(&[("room", "90"), ("out_air", "40")]).hot);
}

#[test]
fn the_clock_outside_starts_from_the_slow_core() {
    let mut moved = job(&with(&[("out_air", "40")]), &[], "24 h");
    moved["warming"][0]["moved_in"] = ago(30.25);
    moved["warming"][0]["moved_out"] = ago(0.25);
    let (core, out) = (warm(&moved).core_now_f.unwrap(), group(&moved).cool_down.unwrap());
    assert!(core.low.0 > 70.0 && core.low.0 < core.likely.0 - 1.0, "{core:?}");
    assert_eq!(out.from_f, core.low);
    assert!(out.use_by_min.unwrap() < cool(&[("out_air", "40")]).use_by_min.unwrap());
}

#[test]
fn readings_of_twenty_years_later_teach_nothing_and_take_no_time() {
    let mut moved = logged(&[("skin", 6.0, 60.0)]);
    moved["warming"][0]["moved_in"] = ago(20.0 * 8_766.0);
    let begun = std::time::Instant::now();
    assert_eq!(group(&moved).circulation.readings, 0);
    // Not followed for twenty years, which takes a minute; a busy machine takes no second for this.
    assert!(begun.elapsed().as_secs() < 10);
    // Two weeks are followed.
    moved["warming"][0]["moved_in"] = ago(13.0 * 24.0);
    assert_eq!(group(&moved).circulation.readings, 1);
    let kept: Warming = serde_json::from_value(moved["warming"][0].clone()).unwrap();
    assert_eq!(kept.log.len(), 1);
}
