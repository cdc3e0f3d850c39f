//! The dates of jobs, counted by hand.

use super::*;
use crate::conditioning::{Circulation, Decides, WarmUp};
use crate::findings::Code;
use crate::measure::{Band, Fahrenheit, Minutes};
use serde_json::{Value, json};

/// 2026-10-14, 4:10 pm at five hours west of UTC; that day is day 20 740 since 1970.
const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };
const TODAY: f64 = 20_740.0;

fn fields(entries: &[(&str, &str)]) -> Value {
    entries.iter().map(|(field, text)| json!({"field": field, "text": text})).collect()
}

fn job(entries: &[(&str, &str)], stock: Value) -> Job {
    serde_json::from_value(json!({
        "format": "foamwright-job", "version": 4, "id": "test", "next_id": 1000, "foam": 3,
        "entries": fields(entries),
        "surfaces": [{"id": 1, "shape": "typed_area", "entries": fields(&[("area", "50"), ("depth", "1")])}],
        "foams": [{"id": 3, "entries": fields(&[
            ("largest_lift", "1"), ("wait", "15 min"), ("reentry", "24 h"), ("cure", "30 h"),
        ])}],
        "kits": [], "stock": stock, "events": [],
    }))
    .expect("a job")
}

fn kit(id: u32, name: &str, entries: &[(&str, &str)]) -> Value {
    json!({"id": id, "name": name, "entries": fields(entries)})
}

/// What, whose, when as (day from today, hour), and whether it is past.
type Line = (DateOf, u32, (f64, f64), bool);

fn lines(dates: &[Dated]) -> Vec<Line> {
    let at = |at: f64| (libm::floor(at / 1_440.0) - TODAY, at % 1_440.0 / 60.0);
    dates.iter().map(|one| (one.of, one.id, at(one.at.0), one.past)).collect()
}

fn of(job: &Job) -> Vec<Dated> {
    crate::estimate(job, NOW).calendar
}

#[test]
fn an_empty_job_has_no_dates() {
    assert_eq!(of(&job(&[], json!([]))), []);
}

#[test]
fn the_day_of_spraying_and_the_certificate() {
    let dates = of(&job(&[("spray_date", "2026-10-16"), ("spray_time", "1:30 pm")], json!([])));
    // A whole day is that of its midnight, and stands after the hours on it.
    assert_eq!(
        lines(&dates),
        [(DateOf::Spray, 0, (2.0, 13.5), false), (DateOf::Certificate, 0, (2.0, 0.0), false)]
    );
    assert_eq!(dates.iter().map(|one| one.all_day).collect::<Vec<_>>(), [false, true]);
    // 8 in the morning unless it is said; the certificate on a day of its own.
    let dates = of(&job(&[("spray_date", "2026-10-14"), ("certificate_due", "2026-11-02")], json!([])));
    assert_eq!(
        lines(&dates),
        [(DateOf::Spray, 0, (0.0, 8.0), true), (DateOf::Certificate, 0, (19.0, 0.0), false)]
    );
    // Only the certificate.
    assert_eq!(
        lines(&of(&job(&[("certificate_due", "2026-10-13")], json!([])))),
        [(DateOf::Certificate, 0, (-1.0, 0.0), true)]
    );
}

#[test]
fn a_time_with_two_meanings_leaves_the_whole_day_and_is_asked_once() {
    let job = job(&[("spray_date", "2026-10-16"), ("spray_time", "8:00")], json!([]));
    let estimate = crate::estimate(&job, NOW);
    let spray = estimate.calendar.iter().find(|one| one.of == DateOf::Spray).expect("the day");
    assert!(spray.all_day && spray.at.0 == (TODAY + 2.0) * 1_440.0);
    let asked = estimate.findings.iter().filter(|one| one.code == Code::TwoMeanings);
    assert_eq!(asked.map(|one| one.at.field.as_ref()).collect::<Vec<&str>>(), ["spray_time"]);
}

/// Opened on the 1st, purged on the 10th, every 7 days, done with after 30: purges from the 17th to the 31st, the last
/// day. The sealed one to its label's date.
#[test]
fn kits_on_the_shelf() {
    let opened = [
        ("label_yield", "480"),
        ("state", "opened"),
        ("expires", "2027-03-01"),
        ("opened", "2026-10-01"),
        ("last_purge", "2026-10-10"),
        ("a_left", "60"),
        ("b_left", "50"),
    ];
    let sealed = [("label_yield", "480"), ("state", "sealed"), ("expires", "2026-12-24")];
    let dates = of(&job(&[], json!([kit(50, " Open one ", &opened), kit(51, "", &sealed)])));
    assert_eq!(
        lines(&dates),
        [
            (DateOf::Purge, 50, (3.0, 0.0), false),
            (DateOf::OpenedEnds, 50, (17.0, 0.0), false),
            (DateOf::ShelfLife, 51, (71.0, 0.0), false),
        ]
    );
    let purge = &dates[0];
    assert_eq!((purge.name.as_str(), purge.part), ("Open one", Part::Owned));
    assert_eq!((purge.every_days, purge.until), (Some(7.0), Some(WallMinutes((TODAY + 17.0) * 1_440.0))));
    assert!(dates.iter().all(|one| one.all_day));

    // Overdue, but not past while the kit is not.
    let late = [("state", "opened"), ("opened", "2026-10-01"), ("a_left", "60"), ("b_left", "50")];
    let dates = of(&job(&[], json!([kit(50, "", &late)])));
    assert_eq!(lines(&dates)[0], (DateOf::Purge, 50, (-6.0, 0.0), false));
    // The last purge falls into the kit's last week: none is left.
    let ends = [("state", "opened"), ("opened", "2026-09-16"), ("last_purge", "2026-10-13")];
    let dates = of(&job(&[], json!([kit(50, "", &ends)])));
    assert_eq!(lines(&dates), [(DateOf::OpenedEnds, 50, (2.0, 0.0), false)]);
    // Long past.
    let old = [("state", "opened"), ("opened", "2026-08-01")];
    let dates = of(&job(&[], json!([kit(50, "", &old)])));
    assert!(dates.len() == 2 && dates.iter().all(|one| one.past), "{dates:?}");
    // Empty: there is nothing to keep from hardening.
    let empty = [&opened[..5], &[("a_left", "0"), ("b_left", "50")]].concat();
    assert_eq!(of(&job(&[], json!([kit(50, "", &empty)]))), []);
}

/// From the last spraying at 4:10 pm of this day: 24 h and 30 h.
#[test]
fn the_labels_hours_after_spraying() {
    let mut job = job(&[], json!([]));
    let event = |what: &str, key: &str, id: u32| json!({"id": id, "what": what, "key": key, "surface": 1, "lift": 1, "at": NOW});
    job.events =
        serde_json::from_value(json!([event("lift", "", 100), event("step", "stop", 101)])).expect("events");
    assert_eq!(
        lines(&of(&job)),
        [
            (DateOf::Reentry, 0, (1.0, 16.0 + 10.0 / 60.0), false),
            (DateOf::Cured, 0, (1.0, 22.0 + 10.0 / 60.0), false)
        ]
    );
    // Not while spraying goes on, and none that the label does not give.
    job.events.pop();
    job.surfaces[0].entries[1].text = "2".into();
    assert_eq!(of(&job), []);
}

#[test]
fn kits_that_warm() {
    let mut job = job(&[("spray_date", "2026-10-16")], json!([]));
    job.warming =
        serde_json::from_value(json!([{"id": 7, "name": "Far from the heater"}, {"id": 8}])).expect("groups");
    let group = |id, in_by: Option<f64>, ready_at: Option<f64>| Conditioning {
        id,
        cylinder: None,
        circulation: Circulation { m: Band::exactly(4.0), readings: 0 },
        warm_up: Some(WarmUp {
            target_f: Fahrenheit(70.0),
            likely_min: None,
            slow_min: None,
            label_min: Minutes(1_440.0),
            plan_min: None,
            decides: Decides::Label,
            skin_min: None,
            core_then_f: None,
            core_then_slow_f: None,
            spray_at: None,
            in_by: in_by.map(WallMinutes),
            ready_at: ready_at.map(WallMinutes),
            late: false,
            core_now_f: None,
            skin_now_f: None,
        }),
        cool_down: None,
    };
    let at = |day: f64, hour: f64| Some((TODAY + day) * 1_440.0 + hour * 60.0);
    let day = crate::estimate(&job, NOW).day;
    let groups = [group(7, at(0.0, 18.0), None), group(8, at(1.0, 8.0), at(1.5, 0.0))];
    let all = |job: &Job| calendar(job, &groups, &[], &day, NOW, &mut Reader::new(job.units));
    let dates = all(&job);
    assert_eq!(
        lines(&dates)[..3],
        [
            (DateOf::WarmUp, 7, (0.0, 18.0), false),
            (DateOf::WarmUp, 8, (1.0, 8.0), false),
            (DateOf::Ready, 8, (1.0, 12.0), false)
        ]
    );
    assert_eq!(dates[0].name, "Far from the heater");
    // Once they are in, only when they are ready is of any use.
    job.warming[1].moved_in = Some(NOW);
    assert!(!all(&job).iter().any(|one| one.of == DateOf::WarmUp && one.id == 8));
}
