//! Kit sheets and the purchase, from entries to findings.

use crate::findings::{Code, Finding};
use crate::foam::sheet;
use crate::job::{Job, Reader};
use crate::kits::{KitSize, Purchase, purchase, sizes};
use crate::measure::{Band, BoardFeet, Cents, Pounds, Units};
use crate::quantity::{Allowances, Quantity, board_feet};
use serde_json::{Value, json};

pub(super) fn fields(all: &[(&str, &str)]) -> Vec<Value> {
    all.iter().map(|(field, text)| json!({"field": field, "text": text})).collect()
}

/// The sample kits: Small 40 at $92, Medium 160 at $284, Large 480 at $750.
pub(super) fn job(entries: &[(&str, &str)]) -> Job {
    let kit = |id: u32, name: &str, label: &str, price: &str, weight: &str, nozzles: &str| {
        let entries =
            [("label_yield", label), ("price", price), ("net_weight", weight), ("nozzles", nozzles)];
        json!({"id": id, "name": name, "entries": fields(&entries)})
    };
    serde_json::from_value(json!({
        "format": "foamwright-job", "version": 2, "id": "test", "next_id": 100,
        "entries": fields(entries),
        "foam": 10,
        "foams": [{"id": 10, "entries": fields(&[("density", "1.85")])}],
        "kits": [
            kit(30, "Small 40", "40", "92", "6.3 lb", "3"),
            kit(31, "Medium 160", "160", "284", "25 lb", "8"),
            kit(32, "Large 480", "480", "750", "75 lb", "16"),
        ],
    }))
    .expect("a job")
}

/// The same with one entry of one kit changed.
pub(super) fn with_kit(kit: usize, field: &str, text: &str) -> Job {
    let mut job = job(&[]);
    let entries = &mut job.kits[kit].entries;
    entries.retain(|one| one.field != field);
    entries.push(serde_json::from_value(json!({"field": field, "text": text})).expect("an entry"));
    job
}

pub(super) fn read(job: &Job) -> (Vec<KitSize>, Reader) {
    let mut reader = Reader::new(Units::Us);
    let foam = sheet(&job.foams[0], &mut reader);
    (sizes(job, foam.as_ref(), &mut reader), reader)
}

pub(super) fn need(low: f64, likely: f64, high: f64) -> Quantity {
    let place = Band { low: BoardFeet(low), likely: BoardFeet(likely), high: BoardFeet(high) };
    let none = Band::exactly(0.0);
    board_feet(&[Some(place)], Allowances { over_depth_pct: none, other_waste_pct: none })
}

pub(super) fn buy(job: &Job, feet: f64) -> (Purchase, Vec<Finding>) {
    let (sizes, mut reader) = read(job);
    let bought = purchase(job, sizes, Vec::new(), &need(feet, feet, feet), &mut reader);
    (bought, reader.findings)
}

pub(super) fn chosen(mut job: Job, counts: &[(u32, u32)]) -> Job {
    let counts: Vec<Value> = counts.iter().map(|(kit, count)| json!({"kit": kit, "count": count})).collect();
    job.purchase = serde_json::from_value(json!({"buy": counts})).expect("a choice");
    job
}

pub(super) fn codes(findings: &[Finding]) -> Vec<(Code, u32, &str)> {
    findings.iter().map(|one| (one.code, one.at.id, one.at.field.as_str())).collect()
}

fn figure<'a>(findings: &'a [Finding], code: Code, name: &str) -> &'a str {
    let finding = findings.iter().find(|one| one.code == code).expect("a finding");
    &finding.figures.iter().find(|one| one.name == name).expect("a figure").text
}

/// By hand: 480 × 0.86 − 5 = 407.8; 160 → 132.6; 40 → 29.4. Mass: 480 × 1.85 ÷ 12 = 74 lb.
#[test]
fn from_label_to_usable() {
    let (sizes, reader) = read(&job(&[]));
    let usable: Vec<f64> = sizes.iter().map(|size| (size.usable.0 * 10.0).round() / 10.0).collect();
    assert_eq!(usable, [29.4, 132.6, 407.8]);
    assert_eq!(sizes[2].needs_lb, Some(Pounds(74.0)));
    assert_eq!(sizes[2].price, Some(Cents(75_000)));
    assert_eq!(reader.findings, []);
    // 93 %: the kits screen's Large 441, Medium 144, Small 32.
    let (sizes, _) = read(&job(&[("yield_factor", "93")]));
    assert_eq!(sizes.iter().map(|size| size.usable.0.round()).collect::<Vec<_>>(), [32.0, 144.0, 441.0]);
}

/// More than 5 % short of what the label's board feet need: 480 × 1.85 ÷ 12 = 74; 74 ÷ 1.05 = 70.48.
#[test]
fn the_mass_check() {
    for (weight, short) in
        [("70.4 lb", true), ("70.5 lb", false), ("75 lb", false), ("", false), ("31 kg", true)]
    {
        let (_, reader) = read(&with_kit(2, "net_weight", weight));
        assert_eq!(codes(&reader.findings).contains(&(Code::MassShort, 32, "net_weight")), short, "{weight}");
    }
    // Physics: 2 × 25 lb at 1.75 lb/ft³ make at most 343 board feet, 2 × 5 lb 69.
    let most = |pounds: f64| 12.0 * pounds / 1.75;
    assert_eq!((most(50.0).round(), most(10.0).round()), (343.0, 69.0));
    // Without a density nothing is checked, and nothing counts as passed.
    let mut job = with_kit(2, "net_weight", "1 lb");
    job.foams[0].entries.clear();
    let (sizes, reader) = read(&job);
    assert_eq!((sizes[2].needs_lb, reader.findings), (None, vec![]));
}

#[test]
fn what_cannot_be_bought() {
    let (sizes, reader) = read(&with_kit(1, "label_yield", ""));
    assert_eq!(sizes.iter().map(|size| size.kit).collect::<Vec<_>>(), [30, 32]);
    assert_eq!(codes(&reader.findings), [(Code::KitUnusable, 31, "label_yield")]);
    let (sizes, reader) = read(&with_kit(1, "price", ""));
    assert_eq!((sizes.len(), sizes[1].price), (3, None));
    assert_eq!(codes(&reader.findings), [(Code::KitUnusable, 31, "price")]);
    // 5 of 5.8 board feet stay in the hoses at 86 %: nothing at all at 85.
    let (sizes, reader) = read(&with_kit(0, "label_yield", "5.8"));
    assert_eq!(sizes[0].usable, BoardFeet(0.0));
    assert_eq!(codes(&reader.findings), [(Code::KitUnusable, 30, "label_yield")]);
    // A text that cannot be read has its own finding, not a second one.
    let (_, reader) = read(&with_kit(1, "price", "cheap"));
    assert_eq!(codes(&reader.findings), [(Code::NotANumber, 31, "price")]);
    // Without the job's own factor there is no yield at all.
    let (sizes, reader) = read(&job(&[("yield_factor", "most")]));
    assert_eq!((sizes.len(), codes(&reader.findings)), (0, vec![(Code::NotANumber, 0, "yield_factor")]));
}

/// Nothing to spray buys nothing and says nothing.
#[test]
fn nothing_for_nothing() {
    let (bought, findings) = buy(&job(&[]), 0.0);
    assert_eq!((bought.least, bought.buy, bought.alone.len(), bought.others.len()), (None, None, 0, 0));
    assert_eq!(findings, []);
}

#[test]
fn no_kits_and_not_enough() {
    let mut none = job(&[]);
    none.kits.clear();
    let (bought, findings) = buy(&none, 100.0);
    assert_eq!((bought.least, codes(&findings)), (None, vec![(Code::NoKits, 0, "")]));
    let mut few = job(&[]);
    for kit in &mut few.kits {
        kit.entries.push(serde_json::from_value(json!({"field": "limit", "text": "1"})).expect("an entry"));
    }
    // 29.4 + 132.6 + 407.8 = 569.8.
    assert!(buy(&few, 569.8).0.least.is_some());
    let (bought, findings) = buy(&few, 569.9);
    assert_eq!((bought.least, codes(&findings)), (None, vec![(Code::NotEnoughKits, 0, "")]));
    assert_eq!(figure(&findings, Code::NotEnoughKits, "given"), "570");
}

#[test]
fn the_persons_choice() {
    let job = || job(&[]);
    // 812: two Large, $1,500. Seven Medium are 928.2 at $1,988: $488 more.
    let (bought, findings) = buy(&chosen(job(), &[(31, 7)]), 812.0);
    assert_eq!((bought.chosen, bought.dearer_by), (true, Some(Cents(48_800))));
    assert_eq!(codes(&findings), [(Code::ChosenDearer, 0, "")]);
    assert_eq!(figure(&findings, Code::ChosenDearer, "more"), "$488");
    assert_eq!(bought.lines.len(), 1);
    // 6 × 132.6 = 795.6: 16.4 short. What is short is never rounded to nothing.
    let (bought, findings) = buy(&chosen(job(), &[(31, 6)]), 812.0);
    assert!(!bought.buy.expect("a mix").enough && bought.dearer_by.is_none());
    assert_eq!(codes(&findings), [(Code::ChosenTooLittle, 0, "")]);
    assert_eq!(figure(&findings, Code::ChosenTooLittle, "short"), "16.4");
    let (_, findings) = buy(&chosen(job(), &[(31, 6)]), 795.61);
    assert_eq!(figure(&findings, Code::ChosenTooLittle, "short"), "0.1");
    // The same as the least is neither.
    let (bought, findings) = buy(&chosen(job(), &[(32, 1), (32, 1), (30, 0)]), 812.0);
    assert_eq!((bought.buy == bought.least, findings.len()), (true, 0));
    // None at all is a choice that is not enough.
    let (bought, findings) = buy(&chosen(job(), &[]), 812.0);
    assert_eq!((bought.chosen, codes(&findings)), (true, vec![(Code::ChosenTooLittle, 0, "")]));
    // Kits that are not there, and more than can be had.
    let (_, findings) = buy(&chosen(job(), &[(32, 2), (77, 1)]), 812.0);
    assert_eq!(codes(&findings), [(Code::NoSheet, 77, "count")]);
    let (_, findings) = buy(&chosen(with_kit(2, "limit", "1"), &[(32, 2)]), 812.0);
    assert_eq!(codes(&findings), [(Code::ChosenOverLimit, 32, "count")]);
}

/// 1,800 board feet, or four of the largest kit (4 × 407.8: from 1,223.4 on), and both can be edited.
#[test]
fn too_big_for_kits() {
    for (entries, feet, big) in [
        (&[][..], 1_223.4, false),
        (&[], 1_223.5, true),
        (&[("too_big_kits", "6")], 1_800.0, false),
        (&[("too_big_kits", "6")], 1_800.1, true),
        (&[("too_big_kits", "20"), ("too_big", "5000")], 3_132.0, false),
    ] {
        let (bought, findings) = buy(&job(entries), feet);
        assert_eq!(bought.too_big.is_some(), big, "{feet}");
        assert_eq!(codes(&findings).contains(&(Code::TooBig, 0, "")), big);
        assert!(bought.least.is_some());
    }
    let (bought, findings) = buy(&job(&[]), 3_132.0);
    assert_eq!(bought.too_big.expect("too big").largest_kits, 8);
    assert_eq!(
        ["given", "limit", "kits"].map(|name| figure(&findings, Code::TooBig, name)),
        ["3132", "1800", "8"]
    );
}

/// A range of the need has its own mix at either end; without one there is none.
#[test]
fn both_ends_of_a_range() {
    let job = job(&[]);
    let (sizes, mut reader) = read(&job);
    let bought = purchase(&job, sizes, Vec::new(), &need(399.0, 506.25, 630.0), &mut reader);
    let cost = |mix: Option<super::Mix>| mix.and_then(|mix| mix.cost);
    // 399 one Large; 506.25 one Large and one Medium (540.4); 630 a Large and two Medium (673).
    assert_eq!(cost(bought.least_at_low), Some(Cents(75_000)));
    assert_eq!(cost(bought.least), Some(Cents(103_400)));
    assert_eq!(cost(bought.least_at_high), Some(Cents(131_800)));
    assert_eq!(buy(&job, 500.0).0.least_at_high, None);
}

/// Other ways are enough, within the limits, each once, cheapest first, and none is the least.
#[test]
fn other_ways() {
    let (bought, _) = buy(&job(&[]), 812.0);
    let ways: Vec<(i64, u32)> =
        bought.others.iter().map(|mix| (mix.cost.expect("a cost").0, mix.kits)).collect();
    // By hand: 1 Large + 3 Medium + 1 Small $1,694 (835.0); 6 Medium + 1 Small $1,796 (825.0); 1 Large + 4 Medium
    // $1,886 (938.2); 7 Medium $1,988 (928.2); 1 Large + 14 Small $2,038 (819.4). Two Large are enough, so a
    // Small or a Medium beside them is none.
    assert_eq!(ways, [(169_400, 5), (179_600, 7), (188_600, 5), (198_800, 7), (203_800, 15)]);
    assert!(bought.others.iter().all(|mix| mix.enough && Some(mix) != bought.least.as_ref()));
    let (bought, _) = buy(&with_kit(1, "limit", "2"), 812.0);
    let medium = |mix: &super::Mix| mix.buy.iter().find(|one| one.kit == 31).map_or(0, |one| one.count);
    assert!(!bought.others.is_empty() && bought.others.iter().all(|mix| medium(mix) <= 2));
}

/// As many sheets as a job file can hold, one of each to be had: an answer all the same, in bounded work.
#[test]
fn a_file_full_of_kits() {
    let mut many = job(&[]);
    let kit = |n: u32| {
        let (label, price) = ((50 + n % 977).to_string(), (90 + n % 1_013).to_string());
        let entries = fields(&[("label_yield", &label), ("price", &price), ("limit", "1")]);
        serde_json::from_value(json!({"id": 1_000 + n, "entries": entries})).expect("a kit")
    };
    many.kits = (0..8_000).map(kit).collect();
    let (bought, findings) = buy(&many, 1_000_000.0);
    assert!(bought.least.expect("a mix").enough && bought.others.is_empty());
    assert_eq!(bought.alone.len(), 8_000);
    assert!(codes(&findings).iter().all(|(code, ..)| *code != Code::NotEnoughKits));
}

/// Many sizes at one price a board foot, so that nearly every mix ties: the search is cut off, says so, and still gives a
/// mix that is enough.
#[test]
fn a_search_that_is_cut_off_says_so() {
    let mut seen = Vec::new();
    for sizes in [10, 40] {
        let mut many = job(&[
            ("fixed_loss", "0"),
            ("yield_factor", "100"),
            ("too_big", "100000"),
            ("too_big_kits", "999"),
        ]);
        many.kits.clear();
        for n in 0..sizes {
            let label = 12 + n * n * 37 % 613;
            let price = f64::from(label) * 1.8;
            let entries = [("label_yield", format!("{label}")), ("price", format!("{price:.2}"))];
            let entries: Vec<Value> =
                entries.iter().map(|(field, text)| json!({"field": field, "text": text})).collect();
            let kit = json!({"id": 200 + n, "name": "Odd", "entries": entries});
            many.kits.push(serde_json::from_value(kit).expect("a kit"));
        }
        let (bought, findings) = buy(&many, 9_876.54);
        assert!(bought.least.expect("a mix").enough);
        seen.extend(findings.iter().map(|one| one.code));
    }
    assert!(seen.contains(&Code::TieNotProved) || seen.contains(&Code::LeastNotProved), "{seen:?}");
    assert!(seen.iter().all(|code| matches!(code, Code::TieNotProved | Code::LeastNotProved)), "{seen:?}");
}
