mod buying;
mod price;
mod shelf;

use super::mix::{Wanted, kits_needed, lines, mix};
use super::stock::Shelf;
use super::*;
use proptest::prelude::*;

fn size(kit: u32, usable: f64, cents: i64, limit: Option<u32>) -> KitSize {
    KitSize {
        kit,
        label: BoardFeet((usable + 5.0) / 0.86),
        factor_pct: 86.0,
        after_factor: BoardFeet(usable + 5.0),
        fixed_loss: BoardFeet(5.0),
        usable: BoardFeet(usable),
        price: Some(Cents(cents)),
        limit,
        net_weight_lb: None,
        density_lb_ft3: None,
        needs_lb: None,
        nozzles: None,
    }
}

/// Small 40, Medium 160, Large 480 at 86 % less 5 board feet.
fn sample() -> [KitSize; 3] {
    [size(1, 29.4, 9_200, None), size(2, 132.6, 28_400, None), size(3, 407.8, 75_000, None)]
}

fn of(sizes: &[KitSize], buy: &[KitCount], need: f64) -> Mix {
    mix(sizes, &lines(sizes, buy), Wanted { need: BoardFeet(need), shelf: Shelf::default() })
}

fn best(sizes: &[KitSize], need: f64) -> Option<Mix> {
    least_cost(sizes, BoardFeet(need)).map(|buy| of(sizes, &buy, need))
}

fn counts(mix: &Mix) -> Vec<(u32, u32)> {
    mix.buy.iter().map(|one| (one.kit, one.count)).collect()
}

/// Every mix there is, up to as many of each size as can be of use, by counting.
fn by_counting(sizes: &[KitSize], need: f64) -> Option<(i64, f64, u32)> {
    let mut best: Option<(i64, f64, u32)> = None;
    let mut counts = vec![0u32; sizes.len()];
    let most: Vec<u32> = sizes
        .iter()
        .map(|size| ((need / size.usable.0).ceil() as u32 + 1).min(size.limit.unwrap_or(u32::MAX)))
        .collect();
    loop {
        let sum = |of: fn(&KitSize) -> f64| -> f64 {
            sizes.iter().zip(&counts).map(|(size, count)| of(size) * f64::from(*count)).sum()
        };
        let left = sum(|size| size.usable.0) - need;
        if left > -1e-7 {
            let mix = (sum(|size| size.price.unwrap().0 as f64) as i64, left, counts.iter().sum());
            let better = best.is_none_or(|best| {
                (mix.0, (mix.1 * 1e4).round() as i64, mix.2) < (best.0, (best.1 * 1e4).round() as i64, best.2)
            });
            if better {
                best = Some(mix);
            }
        }
        let Some(next) = counts.iter().zip(&most).position(|(count, most)| count < most) else { break };
        counts[next] += 1;
        counts[..next].fill(0);
    }
    best
}

/// Worked by hand: one Large 407.8, two 815.6.
#[test]
fn the_sample_sizes() {
    let sizes = sample();
    assert_eq!(counts(&best(&sizes, 812.0).unwrap()), [(3, 2)]);
    assert_eq!(counts(&best(&sizes, 815.6).unwrap()), [(3, 2)]);
    assert_eq!(counts(&best(&sizes, 815.61).unwrap()), [(1, 1), (3, 2)]);
    assert_eq!(counts(&best(&sizes, 29.4).unwrap()), [(1, 1)]);
    assert_eq!(best(&sizes, 0.0), None);
    assert_eq!(best(&sizes, f64::NAN), None);
    assert_eq!(best(&[], 10.0), None);
}

#[test]
fn limits_are_kept() {
    let sizes =
        [size(1, 29.4, 9_200, Some(2)), size(2, 132.6, 28_400, Some(0)), size(3, 407.8, 75_000, Some(1))];
    assert_eq!(counts(&best(&sizes, 466.6).unwrap()), [(1, 2), (3, 1)]);
    assert_eq!(best(&sizes, 466.7), None);
}

/// A size without a price, or all of which stays in the hoses, is not bought.
#[test]
fn what_is_not_on_offer_is_not_bought() {
    let mut sizes = sample();
    sizes[2].price = None;
    assert_eq!(counts(&best(&sizes, 400.0).unwrap()), [(1, 1), (2, 3)]);
    sizes[1].usable = BoardFeet(0.0);
    assert_eq!(counts(&best(&sizes, 30.0).unwrap()), [(1, 2)]);
}

#[test]
fn ties_go_to_less_left_over_then_to_fewer_kits() {
    let sizes = [size(1, 10.0, 1_000, None), size(2, 25.0, 2_000, None), size(3, 30.0, 3_000, Some(1))];
    // 3,000 cents buy 30 as one kit or as three, or 35 as 25 + 10.
    assert_eq!(counts(&best(&sizes, 28.0).unwrap()), [(3, 1)]);
    let free = [size(1, 7.0, 0, None), size(2, 11.0, 0, None)];
    assert_eq!(best(&free, 25.0).unwrap().usable, BoardFeet(25.0));
}

/// The rule in words: need ÷ usable, rounded up, a billionth of a kit not counting.
#[test]
fn whole_kits_survive_binary_fractions() {
    for kits in 1..2_000u32 {
        let need = BoardFeet((0..kits).map(|_| 29.4).sum());
        assert_eq!(kits_needed(need, BoardFeet(29.4)), Some(kits));
        assert_eq!(best(&sample()[..1], need.0).unwrap().kits, kits);
    }
    assert_eq!(kits_needed(BoardFeet(29.4 * (3.0 + 2e-9)), BoardFeet(29.4)), Some(4));
    assert_eq!(kits_needed(BoardFeet(1.0), BoardFeet(0.0)), None);
}

/// Case A22: 3,132 board feet are 6 kits at 550 usable each, 7 at 510, 6 at 600.
#[test]
fn one_assumption_flips_the_count() {
    for (usable, kits) in [(550.0, 6), (510.0, 7), (600.0, 6)] {
        assert_eq!(kits_needed(BoardFeet(3_132.0), BoardFeet(usable)), Some(kits), "{usable}");
    }
}

#[test]
fn the_break_point_is_where_it_stops_being_enough() {
    // Two Large: 960 × f − 10 = 812 → f = 0.85625.
    let two = [KitCount { kit: 3, count: 2 }];
    assert!((of(&sample(), &two, 812.0).break_factor_pct - 85.625).abs() < 1e-9);
    // With twenty Small against 10 board feet the Small give nothing at the break: 5 ÷ 40 is 12.5 %, and
    // 480 × f − 5 = 10 → f = 0.03125.
    let with_small = [KitCount { kit: 1, count: 20 }, KitCount { kit: 3, count: 1 }];
    assert!((of(&sample(), &with_small, 10.0).break_factor_pct - 3.125).abs() < 1e-9);
    assert_eq!(of(&sample(), &[], 10.0).break_factor_pct, 0.0);
}

/// Forty tiny kits within limits of each other, and all at one price a board foot: whatever the search cannot
/// finish in its steps it says, and what it found is enough all the same.
#[test]
fn hostile_sizes_end_in_bounded_work() {
    for spread in [0, 7] {
        let sizes: Vec<KitSize> = (0..40u32)
            .map(|n| {
                let usable = 1.0 + f64::from(n * n % 41) * 0.173_205_080_756_887_7;
                size(n + 1, usable, (usable * 180.0) as i64 + i64::from(n % (spread + 1)), Some(999))
            })
            .collect();
        let found = search(&sizes, BoardFeet(9_876.543_21), 200_000).unwrap();
        assert!(found.steps <= 200_100, "{}", found.steps);
        assert!(of(&sizes, &found.buy, 9_876.543_21).enough);
    }
    // As many sheets as a job file can hold.
    let many: Vec<KitSize> =
        (0..15_000u32).map(|n| size(n, 1.0 + f64::from(n) * 1e-3, 100 + i64::from(n), Some(1))).collect();
    let found = search(&many, BoardFeet(100_000.0), 200_000).unwrap();
    assert!(of(&many, &found.buy, 100_000.0).enough);
}

#[test]
fn the_largest_jobs_stay_exact() {
    let sizes = sample();
    let found = search(&sizes, BoardFeet(100_000.0), 200_000).unwrap();
    assert!(found.ties_proved && found.steps < 1_000, "{}", found.steps);
    // 245 Large are 99,911; 89 short: 246 Large 184,500 dollars, or 245 and one Medium 184,034, or 245 and
    // four Small 184,118.
    assert_eq!(found.buy, [KitCount { kit: 2, count: 1 }, KitCount { kit: 3, count: 245 }]);
    assert!(best(&sizes, 3e8).unwrap().enough);
    assert_eq!(best(&sizes, 1e300), None);
}

/// One to four sizes with yields of a tenth, hundredth or any fraction of a board foot.
fn offers() -> impl Strategy<Value = Vec<KitSize>> {
    let usable = prop_oneof![
        (30u32..6_000).prop_map(|tenths| f64::from(tenths) / 10.0),
        3.0..600.0f64,
        (1u32..20).prop_map(|tens| f64::from(tens) * 30.0),
    ];
    let price = prop_oneof![(1i64..900).prop_map(|dollars| dollars * 100), 1i64..90_000];
    let limit = prop_oneof![3 => Just(None), 1 => (0u32..6).prop_map(Some)];
    proptest::collection::vec((usable, price, limit), 1..5).prop_map(|all| {
        all.into_iter()
            .zip(1..)
            .map(|((usable, price, limit), kit)| size(kit, usable, price, limit))
            .collect()
    })
}

proptest! {
    /// Cost, left-over and kits against counting every mix there is.
    #[test]
    fn no_mix_is_better(sizes in offers(), kits in 0.1..6.0f64) {
        let largest = sizes.iter().map(|size| size.usable.0).fold(0.0, f64::max);
        let smallest = sizes.iter().map(|size| size.usable.0).fold(f64::MAX, f64::min);
        let need = kits * largest.min(smallest * 12.0);
        let mix = best(&sizes, need);
        match (by_counting(&sizes, need), mix) {
            (Some((cost, left, kits)), Some(mix)) => {
                prop_assert_eq!(mix.cost, Some(Cents(cost)));
                prop_assert!((mix.left.0 - left).abs() < 1.1e-4, "{} {}", mix.left.0, left);
                prop_assert_eq!(mix.kits, kits);
            }
            (None, None) => {}
            (counted, mix) => prop_assert!(false, "{counted:?} {mix:?}"),
        }
    }

    #[test]
    fn more_need_never_costs_less(sizes in offers(), need in 1.0..5_000.0f64, more in 0.0..500.0f64) {
        if let Some(dear) = best(&sizes, need + more) {
            let cheap = best(&sizes, need).unwrap();
            prop_assert!(cheap.cost <= dear.cost);
            prop_assert!(cheap.left.0 >= 0.0 && cheap.enough);
        }
    }

    #[test]
    fn one_more_size_never_costs_more(sizes in offers(), need in 1.0..5_000.0f64) {
        if let Some(fewer) = best(&sizes[1..], need) {
            prop_assert!(best(&sizes, need).unwrap().cost <= fewer.cost);
        }
    }

    #[test]
    fn a_limit_never_makes_it_cheaper(sizes in offers(), need in 1.0..5_000.0f64, limit in 0u32..20) {
        let mut limited = sizes.clone();
        limited[0].limit = Some(limited[0].limit.map_or(limit, |before| before.min(limit)));
        if let Some(mix) = best(&limited, need) {
            prop_assert!(best(&sizes, need).unwrap().cost <= mix.cost);
        }
    }

    /// The break point solves its own equation, with the sizes that give nothing left out.
    #[test]
    fn the_break_point_gives_exactly_the_need(sizes in offers(), buy in proptest::collection::vec(0u32..9, 4), need in 1.0..5_000.0f64) {
        let buy: Vec<KitCount> =
            sizes.iter().zip(buy).map(|(size, count)| KitCount { kit: size.kit, count }).collect();
        let mix = of(&sizes, &buy, need);
        if mix.kits > 0 {
            let gives: f64 = lines(&sizes, &buy)
                .iter()
                .map(|line| (line.label.0 * mix.break_factor_pct / 100.0 - line.fixed_loss.0).max(0.0))
                .sum();
            prop_assert!((gives - need).abs() < 1e-6 * need, "{gives} {need}");
        }
    }
}
