//! The least-cost mix against integer programming: `tests/oracles/kit_mix.py` says which solvers, which version
//! and how the cases were drawn.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::kits::{KitSize, search};
use foamwright::measure::{BoardFeet, Cents};
use serde_json::Value;
use std::path::Path;

const PARTS: f64 = 10_000.0;

/// One case: the sizes, the need, and cost, usable parts and kits of the best mix, if there is one.
type Case = (Vec<KitSize>, f64, Option<(i64, Option<i64>, Option<u32>)>);

fn cases() -> Vec<Case> {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/published/kit_mix.json");
    let kept: Value = serde_json::from_str(&std::fs::read_to_string(file).expect("the file")).expect("JSON");
    let rows = kept["rows"].as_array().expect("rows");
    rows.iter().map(case).collect()
}

fn case(row: &Value) -> Case {
    let sizes = row[0].as_array().expect("sizes").iter().zip(1..);
    let sizes = sizes.map(|(size, kit)| {
        let usable = BoardFeet(size[0].as_f64().expect("usable") / PARTS);
        KitSize {
            kit,
            label: usable,
            factor_pct: 100.0,
            after_factor: usable,
            fixed_loss: BoardFeet(0.0),
            usable,
            price: Some(Cents(size[1].as_i64().expect("cents"))),
            limit: size[2].as_u64().map(|limit| limit as u32),
            net_weight_lb: None,
            density_lb_ft3: None,
            needs_lb: None,
            nozzles: None,
        }
    });
    let best = row[2].as_array().map(|best| {
        (best[0].as_i64().expect("cost"), best[1].as_i64(), best[2].as_u64().map(|kits| kits as u32))
    });
    (sizes.collect(), row[1].as_f64().expect("need") / PARTS, best)
}

/// Every case within the steps that the page allows: cost to the cent, usable to the ten-thousandth of a board
/// foot, kits to the piece, no limit passed, and proved to be the best, not only found.
#[test]
fn every_mix_is_the_solvers() {
    let cases = cases();
    assert!(cases.len() >= 1_000, "{} cases", cases.len());
    let (mut with_ties, mut most_steps, mut unproved) = (0, 0, 0);
    for (index, (sizes, need, best)) in cases.iter().enumerate() {
        let found = search(sizes, BoardFeet(*need), 200_000);
        let (Some(found), Some((cost, usable, kits))) = (&found, best) else {
            assert!(found.is_none() && best.is_none(), "case {index}: {found:?}, solver {best:?}");
            continue;
        };
        let of = |kit: u32| sizes.iter().find(|size| size.kit == kit).expect("a size");
        let counts = || found.buy.iter().map(|one| (of(one.kit), one.count));
        assert!(counts().all(|(size, count)| size.limit.is_none_or(|limit| count <= limit)), "case {index}");
        let spent: i64 =
            counts().map(|(size, count)| size.price.expect("a price").0 * i64::from(count)).sum();
        let parts: i64 =
            counts().map(|(size, count)| (size.usable.0 * PARTS).round() as i64 * i64::from(count)).sum();
        assert!(parts >= (need * PARTS).round() as i64, "case {index}: not enough");
        assert_eq!(spent, *cost, "case {index}: {:?}", found.buy);
        assert!(found.least_proved, "case {index}: not proved in {} steps", found.steps);
        most_steps = most_steps.max(found.steps);
        unproved += usize::from(!found.ties_proved);
        if let (Some(usable), Some(kits), true) = (usable, kits, found.ties_proved) {
            with_ties += 1;
            assert_eq!(parts, *usable, "case {index}: {:?}", found.buy);
            assert_eq!(
                found.buy.iter().map(|one| one.count).sum::<u32>(),
                *kits,
                "case {index}: {:?}",
                found.buy
            );
        }
    }
    println!(
        "{} cases, {with_ties} with ties, {unproved} ties cut off, at most {most_steps} steps",
        cases.len()
    );
    assert!(with_ties >= 1_000, "{with_ties} cases with ties");
    assert_eq!(unproved, 0, "searches cut off");
}
