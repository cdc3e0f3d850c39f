//! Kits at hand. Now is 2026-10-14, 12:46 on the clock of the site.

use super::*;

const YEAR: (&str, &str) = ("expires", "2027-06-01");

fn opened(entries: &[(&str, &str)]) -> Site {
    let all = [YEAR, ("state", "opened"), ("a_left", "60"), ("b_left", "55")];
    good().kit(&[entries, &all].concat())
}

#[test]
fn today_is_the_day_on_the_clock_of_the_site() {
    // 1 792 000 000 s: 2026-10-14 17:46:40 UTC; nine hours east it is the 15th already.
    assert_eq!(good().kit(&[("expires", "2026-10-14")]).blamed(), GO);
    assert_eq!(good().kit(&[("expires", "2026-10-13")]).blamed(), hold(Code::KitPastDay));
    let mut east = good().kit(&[("expires", "2026-10-14")]);
    east.now.offset_min = 540;
    assert_eq!(east.blamed(), hold(Code::KitPastDay));
}

#[test]
fn a_kit_ends_a_go_with_its_last_day() {
    let mut site =
        good().kit(&[("expires", "2026-10-14")]).limit("site_age", "20 h").limit("cylinder_age", "20 h");
    let readiness = site.said().0;
    let until = readiness.until_ms.unwrap();
    // Midnight five hours west of UTC: 2026-10-15 05:00 UTC, less a thousandth of a second.
    assert_eq!(until, 1_792_040_400_000.0 - 1.0);
    assert_eq!((readiness.next[0].part, readiness.next[0].id), (Part::Owned, 300));
    site.now.ms = until;
    assert_eq!(site.blamed(), GO);
    site.now.ms = until + 1.0;
    assert_eq!(site.blamed(), hold(Code::KitPastDay));
}

#[test]
fn an_opened_kit_counts_thirty_days() {
    let since = |day| opened(&[("opened", day), ("last_purge", "2026-10-13")]);
    assert_eq!(since("2026-09-14").blamed(), GO); // 30 days
    assert_eq!(since("2026-09-13").blamed(), hold(Code::KitPastDay));
    assert_eq!(figure(&since("2026-09-13").finding(Code::KitPastDay).unwrap(), "date"), "2026-10-13");
    assert_eq!(since("2026-09-13").label(&[("open_days", "45 days")]).blamed(), GO);
    assert_eq!(since("2026-10-01").label(&[("open_days", "10")]).blamed(), hold(Code::KitPastDay));
    // A purge that is overdue warns.
    let late = opened(&[("opened", "2026-10-01"), ("last_purge", "2026-10-06")]);
    assert_eq!(late.blamed(), GO);
    assert!(late.finding(Code::StockPurgeDue).is_some());
}

#[test]
fn a_kit_of_which_too_little_is_known_is_no_pass() {
    assert_eq!(good().kit(&[]).blamed(), not_read(Code::KitDateNotRead));
    assert_eq!(good().kit(&[YEAR, ("state", "")]).blamed(), not_read(Code::KitNotKnown));
    assert_eq!(good().kit(&[("expires", "2026-02-30")]).blamed(), not_read(Code::KitNotKnown));
    for day in ["2026-10-15", "", "lately"] {
        assert_eq!(opened(&[("opened", day)]).blamed(), not_read(Code::KitNotKnown), "{day}");
    }
    // One kit in order clears no other.
    assert_eq!(good().kit(&[YEAR]).kit(&[("expires", "2026-01-01")]).blamed(), hold(Code::KitPastDay));
    // One that is not used here says nothing.
    assert_eq!(good().kit(&[("expires", "2026-01-01"), ("use", "no")]).blamed(), GO);
}

#[test]
fn a_kit_kept_too_hot_is_not_opened() {
    assert_eq!(good().kit(&[YEAR, ("storage", "55")]).blamed(), GO);
    assert!(good().kit(&[YEAR, ("storage", "55")]).finding(Code::StockStorage).is_some());
    assert_eq!(good().kit(&[YEAR, ("storage", "121")]).blamed(), hold(Code::StorageTooHot));
}
