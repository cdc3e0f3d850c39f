//! Kits that are already there. Every rule here is common practice without a published source; the figures are
//! worked by hand from label × 86 % − 5 and label × 86 % × the lesser share × 70 %.

use super::buying::{fields, job, need, read};
use crate::findings::{Code, Finding};
use crate::foam::sheet;
use crate::job::{Job, Now};
use crate::kits::{Counts, Purchase, Stock, purchase, stock};
use crate::measure::{BoardFeet, Pounds};
use proptest::prelude::*;
use serde_json::{Value, json};

/// 2026-10-14, 4:10 pm at five hours west of UTC.
const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

/// Days since 1970 of 2026-10-14: 1 792 012 200 s less five hours, in whole days of 86 400 s.
const TODAY: f64 = 20_740.0;

const SEALED: &[(&str, &str)] = &[("label_yield", "480"), ("state", "sealed"), ("expires", "2027-03-01")];
const OPENED: &[(&str, &str)] = &[
    ("label_yield", "480"),
    ("state", "opened"),
    ("expires", "2027-03-01"),
    ("opened", "2026-10-01"),
    ("last_purge", "2026-10-10"),
    ("a_left", "60"),
    ("b_left", "50"),
];

fn owned(id: u32, entries: &[(&str, &str)]) -> Value {
    json!({"id": id, "name": "Kit", "entries": fields(entries)})
}

fn with_stock(kits: &[Value]) -> Job {
    let mut job = job(&[]);
    job.stock = kits.iter().map(|kit| serde_json::from_value(kit.clone()).expect("a kit")).collect();
    job
}

/// A kit with some entries changed; a blank takes one away.
fn but(entries: &[(&str, &str)], changed: &[(&str, &str)]) -> Value {
    let kept = entries.iter().filter(|(field, _)| !changed.iter().any(|(other, _)| other == field));
    let all: Vec<(&str, &str)> =
        kept.chain(changed.iter().filter(|(_, text)| !text.is_empty())).copied().collect();
    owned(50, &all)
}

fn on(job: &Job, spray_day: Option<f64>, now: Now) -> (Vec<Stock>, Vec<Finding>) {
    let (_, mut reader) = read(job);
    reader.findings.clear();
    let foam = sheet(&job.foams[0], &mut reader);
    let all = stock(job, foam.as_ref(), spray_day, now, &mut reader);
    (all, reader.findings)
}

fn one(kit: Value) -> (Stock, Vec<Code>) {
    let (all, findings) = on(&with_stock(&[kit]), None, NOW);
    (all[0], findings.into_iter().map(|finding| finding.code).collect())
}

fn buy(job: &Job, feet: f64) -> Purchase {
    let (sizes, mut reader) = read(job);
    let (all, _) = on(job, None, NOW);
    purchase(job, sizes, all, &need(feet, feet, feet), &mut reader)
}

fn near(given: f64, wanted: f64) {
    assert!((given - wanted).abs() < 1e-9, "{given}, wanted {wanted}");
}

#[test]
fn a_sealed_kit_gives_what_a_bought_one_gives() {
    let (kit, said) = one(owned(50, SEALED));
    near(kit.counted.0, 480.0 * 0.86 - 5.0);
    assert_eq!((kit.counts, kit.last_day), (Counts::Yes, Some(20_878.0)));
    assert_eq!(kit.days_left, Some(138.0));
    assert_eq!((kit.purge_day, kit.fixed_loss), (None, Some(BoardFeet(5.0))));
    assert!(said.is_empty(), "{said:?}");
}

#[test]
fn an_opened_kit_gives_seven_tenths_of_its_lesser_cylinder() {
    let (kit, said) = one(owned(50, OPENED));
    near(kit.counted.0, 480.0 * 0.86 * 0.50 * 0.70);
    assert_eq!(kit.days_left, Some(17.0));
    assert_eq!(kit.purge_in_days, Some(3.0));
    assert_eq!(kit.fixed_loss, None);
    assert!(said.is_empty(), "{said:?}");
}

#[test]
fn what_was_weighed_wins_over_what_was_guessed() {
    let weighed = [("a_label", "40 lb"), ("a_weight", "24 lb"), ("b_label", "35 lb"), ("b_weight", "14 lb")];
    let (kit, _) = one(but(OPENED, &weighed));
    near(kit.a_share_pct.unwrap(), 60.0);
    near(kit.least_share_pct.unwrap(), 40.0);
    near(kit.counted.0, 480.0 * 0.86 * 0.40 * 0.70);
    // Like pounds are unlike shares: 20 lb is half of A's 40, but 57 % of B's 35.
    let alike = [("a_label", "40 lb"), ("a_weight", "20 lb"), ("b_label", "35 lb"), ("b_weight", "20 lb")];
    let (kit, _) = one(but(OPENED, &alike));
    near(kit.least_share_pct.unwrap(), 50.0);
    // A weight that cannot be used is not replaced by the guess.
    let (kit, said) = one(but(OPENED, &[("a_weight", "24 lb")]));
    assert_eq!((kit.counts, said), (Counts::NotKnown, vec![Code::StockUnknown]));
    let (kit, said) = one(but(OPENED, &[("a_label", "40 lb"), ("a_weight", "43 lb")]));
    assert_eq!((kit.counts, said), (Counts::NotKnown, vec![Code::StockOverWeight, Code::StockUnknown]));
    // Labels round: 5 % over is full.
    let (kit, _) = one(but(OPENED, &[("a_label", "40 lb"), ("a_weight", "42 lb")]));
    assert_eq!((kit.a_share_pct, kit.a_weight_lb), (Some(100.0), Some(Pounds(42.0))));
}

#[test]
fn a_blank_that_decides_never_counts() {
    for (entries, field) in [
        (SEALED, "label_yield"),
        (SEALED, "state"),
        (OPENED, "opened"),
        (OPENED, "a_left"),
        (OPENED, "b_left"),
    ] {
        let (all, findings) = on(&with_stock(&[but(entries, &[(field, "")])]), None, NOW);
        assert_eq!((all[0].counts, all[0].counted), (Counts::NotKnown, BoardFeet(0.0)), "{field}");
        assert_eq!(findings.len(), 1, "{findings:?}");
        assert_eq!((findings[0].code, findings[0].at.field.as_str()), (Code::StockUnknown, field));
    }
    // No date: it counts, and that is said. A date that cannot be read is not none.
    assert_eq!(one(but(SEALED, &[("expires", "")])).1, [Code::StockNoDate]);
    let (kit, said) = one(but(SEALED, &[("expires", "soon")]));
    assert_eq!((kit.counts, said), (Counts::NotKnown, vec![Code::NotANumber, Code::StockUnknown]));
}

#[test]
fn dates_hold_to_the_day() {
    let counts = |kit: Value| one(kit).0.counts;
    assert_eq!(counts(but(SEALED, &[("expires", "2026-10-14")])), Counts::Yes);
    assert_eq!(counts(but(SEALED, &[("expires", "2026-10-13")])), Counts::PastDate);
    assert_eq!(counts(but(OPENED, &[("opened", "2026-09-14")])), Counts::Yes);
    assert_eq!(counts(but(OPENED, &[("opened", "2026-09-13")])), Counts::OpenTooLong);
    let (kit, said) = one(but(OPENED, &[("opened", "2026-10-15")]));
    assert_eq!((kit.counts, said), (Counts::NotKnown, vec![Code::StockDayAhead]));
    // The day of spraying decides, where it is later; one that has passed is not asked.
    let job = with_stock(&[but(SEALED, &[("expires", "2026-10-20")])]);
    assert_eq!(on(&job, Some(TODAY + 6.0), NOW).0[0].counts, Counts::Yes);
    assert_eq!(on(&job, Some(TODAY + 7.0), NOW).0[0].counts, Counts::PastDate);
    assert_eq!(on(&job, Some(TODAY - 400.0), NOW).0[0].counts, Counts::Yes);
    // The day is the person's: 11 pm there is the next day in UTC.
    let late = Now { ms: (TODAY + 1.0) * 86_400_000.0 + 4.0 * 3_600_000.0, offset_min: -300 };
    let job = with_stock(&[but(SEALED, &[("expires", "2026-10-14")])]);
    assert_eq!(on(&job, None, late).0[0].days_left, Some(0.0));
    // A clock that shows nothing makes nothing count.
    let none = Now { ms: f64::NAN, offset_min: 0 };
    assert_eq!(on(&job, None, none).0[0].counts, Counts::PastDate);
}

#[test]
fn a_purge_is_due_a_week_after_the_last_or_after_opening() {
    let due = |changed: &[(&str, &str)]| {
        let (kit, said) = one(but(OPENED, changed));
        (kit.purge_in_days, said.contains(&Code::StockPurgeDue))
    };
    assert_eq!(due(&[("last_purge", "2026-10-07")]), (Some(0.0), false));
    assert_eq!(due(&[("last_purge", "2026-10-06")]), (Some(-1.0), true));
    assert_eq!(due(&[("last_purge", ""), ("opened", "2026-10-10")]), (Some(3.0), false));
    // A purge before the kit was opened is none; nor is one still to come.
    assert_eq!(due(&[("last_purge", "2026-09-01")]), (Some(-6.0), true));
    let (kit, said) = one(but(OPENED, &[("last_purge", "2026-10-15")]));
    assert_eq!((kit.counts, said), (Counts::Yes, vec![Code::StockDayAhead, Code::StockPurgeDue]));
}

#[test]
fn the_shelf_goes_first_and_the_rest_is_bought() {
    // 407.8 + 144.48 of 600: 47.72 are two Small 40 at $92.
    let kits = [owned(50, SEALED), owned(51, OPENED)];
    let bought = buy(&with_stock(&kits), 600.0);
    near(bought.from_stock.0, 552.28);
    near(bought.to_buy.likely.0, 47.72);
    let mix = bought.buy.unwrap();
    assert_eq!((mix.kits, mix.cost.unwrap().0), (2, 18_400));
    near(mix.left.0, 552.28 + 58.8 - 600.0);
    // (600 + 3 × 5) ÷ (80 + 480 + 480 × 0.5 × 0.7)
    near(mix.break_factor_pct, 61_500.0 / 728.0);
    // A kit kept for another job gives nothing to this one.
    let mut elsewhere = SEALED.to_vec();
    elsewhere.push(("use", "no"));
    let bought = buy(&with_stock(&[owned(50, &elsewhere)]), 600.0);
    assert_eq!(bought.from_stock, BoardFeet(0.0));
    near(bought.stock[0].usable.unwrap().0, 407.8);
}

#[test]
fn a_shelf_that_is_enough_buys_nothing() {
    let bought = buy(&with_stock(&[owned(50, SEALED)]), 407.8);
    let mix = bought.buy.unwrap();
    assert_eq!((mix.kits, mix.cost.unwrap().0, mix.enough), (0, 0, true));
    assert!(bought.alone.is_empty() && bought.others.is_empty());
    near(mix.break_factor_pct, 86.0);
    // Even where nothing is on offer.
    let mut job = with_stock(&[owned(50, SEALED)]);
    job.kits.clear();
    assert!(buy(&job, 407.8).buy.unwrap().enough);
    // Nothing to spray: nothing to buy, as without a shelf.
    assert_eq!(buy(&with_stock(&[owned(50, SEALED)]), 0.0).buy, None);
}

#[test]
fn too_big_goes_by_the_whole() {
    let kits: Vec<Value> = (50..55).map(|id| owned(id, SEALED)).collect();
    let bought = buy(&with_stock(&kits), 1_900.0);
    assert_eq!(bought.to_buy.likely, BoardFeet(0.0));
    assert!(bought.too_big.is_some());
}

proptest! {
    /// No entry makes a kit give more than its label × factor, an opened one more than its lesser cylinder.
    #[test]
    fn never_more_than_the_label(
        label in 1.0..2_000.0_f64, a in 0.0..120.0_f64, b in 0.0..120.0_f64,
        a_weight in 0.0..60.0_f64, weigh: bool, opened: bool, days in -40..40_i32,
    ) {
        let (label, a, b) = (label.to_string(), a.to_string(), b.to_string());
        let weight = format!("{a_weight} lb");
        let mut entries = vec![
            ("label_yield", label.as_str()), ("state", if opened { "opened" } else { "sealed" }),
            ("opened", "2026-10-01"), ("a_left", a.as_str()), ("b_left", b.as_str()), ("a_label", "40 lb"),
        ];
        if weigh {
            entries.push(("a_weight", weight.as_str()));
        }
        let now = Now { ms: NOW.ms + f64::from(days) * 86_400_000.0, ..NOW };
        let (all, _) = on(&with_stock(&[owned(50, &entries)]), None, now);
        let kit = all[0];
        let most = kit.after_factor.map_or(0.0, |feet| feet.0);
        prop_assert!(kit.counted.0 >= 0.0 && kit.counted.0 <= most);
        if opened && kit.counted.0 > 0.0 {
            let least = kit.a_share_pct.unwrap().min(kit.b_share_pct.unwrap());
            prop_assert!((kit.counted.0 - most * least / 100.0 * 0.7).abs() < 1e-9);
        }
    }

    /// One kit more on the shelf never makes the purchase dearer, and the rest is never below zero.
    #[test]
    fn a_kit_more_never_costs_more(feet in 1.0..1_700.0_f64, labels in prop::collection::vec(1.0..600.0_f64, 1..5)) {
        let mut kits: Vec<Value> = Vec::new();
        let mut before = i64::MAX;
        for (id, label) in (50..).zip([0.0].iter().chain(&labels)) {
            if *label > 0.0 {
                let label = label.to_string();
                kits.push(owned(id, &[("label_yield", label.as_str()), ("state", "sealed")]));
            }
            let bought = buy(&with_stock(&kits), feet);
            prop_assert!(bought.to_buy.likely.0 >= 0.0);
            let mix = bought.buy.unwrap();
            prop_assert!(mix.enough && mix.left.0 >= 0.0);
            let cost = mix.cost.unwrap().0;
            prop_assert!(cost <= before, "{cost} after {before}");
            before = cost;
        }
    }
}
