//! What is to be paid, worked by hand: kits × rate, to the cent with half a cent counting as a cent, and delivery.

use super::buying::{buy, chosen, codes, fields, job, with_kit};
use crate::findings::Code;
use crate::job::Job;
use crate::kits::Price;
use crate::kits::price::tax;
use crate::measure::Cents;
use proptest::prelude::*;

/// A job for which three large kits at $780 are the least: 3 × 407.8 = 1,223.4 board feet.
fn three(entries: &[(&str, &str)]) -> Job {
    taxed(with_kit(2, "price", "780"), entries)
}

fn taxed(mut job: Job, entries: &[(&str, &str)]) -> Job {
    job.entries.extend(fields(entries).into_iter().map(|one| serde_json::from_value(one).expect("an entry")));
    job
}

fn price(job: &Job) -> Option<Price> {
    buy(job, 1_200.0).0.price
}

/// Kits, tax, delivery and total in cents.
fn sums(price: Option<Price>) -> Option<[i64; 4]> {
    price.map(|one| [one.kits, one.tax, one.delivery, one.total].map(|sum| sum.0))
}

/// $2,340.00 × 7.25 % = $169.65; with $45 that is $2,554.65.
#[test]
fn tax_is_on_the_kits_and_delivery_comes_after() {
    let both = price(&three(&[("sales_tax", "7.25 %"), ("delivery", "$45")]));
    assert_eq!(sums(both), Some([234_000, 16_965, 4_500, 255_465]));
    assert_eq!(both.map(|price| price.tax_pct), Some(7.25));
    assert_eq!(sums(price(&three(&[("sales_tax", "7.25")]))), Some([234_000, 16_965, 0, 250_965]));
    assert_eq!(sums(price(&three(&[("delivery", "45.50")]))), Some([234_000, 0, 4_550, 238_550]));
    assert_eq!(sums(price(&three(&[]))), Some([234_000, 0, 0, 234_000]));
}

/// Of a range its likely value: 7.5 % of $2,340 are $175.50.
#[test]
fn a_range_counts_with_its_likely_value() {
    let ranged = price(&three(&[("sales_tax", "7-8"), ("delivery", "40 to 50")]));
    assert_eq!(sums(ranged), Some([234_000, 17_550, 4_500, 256_050]));
}

/// The third decimal place of the tax decides: 4 down, 5 up (Streamlined Sales and Use Tax Agreement, section 324).
#[test]
fn half_a_cent_counts_as_a_cent() {
    for (cents, rate, wanted) in [
        (28_400, 8_875_000, 2_521), // $284.00 × 8.875 % = $25.205
        (28_400, 8_874_900, 2_520), // $25.204 716
        (28_400, 8_873_239, 2_520), // $25.199 998 76
        (10, 5_000_000, 1),         // $0.005
        (9, 5_000_000, 0),          // $0.004 5
        (100, 4_499_999, 4),        // $0.044 999 99
        (234_000, 7_250_000, 16_965),
        (234_000, 0, 0),
        (0, 30_000_000, 0),
        (100_000_000, 30_000_000, 30_000_000),
        (199_999_999, 6_625_000, 13_250_000), // $132,499.999 337 5
    ] {
        assert_eq!(tax(Cents(cents), rate), Cents(wanted), "{cents} at {rate}");
    }
}

/// 2 medium kits, chosen: $568.00 × 8.875 % = $50.41, exactly.
#[test]
fn it_is_the_price_of_what_counts_not_of_the_least() {
    let own = chosen(job(&[("sales_tax", "8.875"), ("delivery", "20")]), &[(31, 2)]);
    let (bought, _) = buy(&own, 120.0);
    assert_eq!(bought.least_cost, Some(Cents(28_400)));
    assert_eq!(sums(bought.price), Some([56_800, 5_041, 2_000, 63_841]));
    assert_eq!(bought.dearer_by, Some(Cents(28_400)), "mixes are compared without tax");
}

/// The same purchase with and without: tax and delivery choose no other kits.
#[test]
fn no_other_kits_are_bought_for_tax_and_delivery() {
    let (with, _) = buy(&three(&[("sales_tax", "30"), ("delivery", "100000")]), 1_200.0);
    let (without, _) = buy(&three(&[]), 1_200.0);
    assert_eq!(
        (&with.buy, &with.others, with.least_cost),
        (&without.buy, &without.others, without.least_cost)
    );
}

#[test]
fn nothing_to_buy_is_not_delivered() {
    let none = chosen(job(&[("sales_tax", "7.25"), ("delivery", "45")]), &[]);
    assert_eq!(sums(buy(&none, 1_200.0).0.price), Some([0, 0, 0, 0]));
}

#[test]
fn what_is_not_known_has_no_price() {
    // Nothing to spray, and a chosen kit without a price.
    assert_eq!(buy(&three(&[("delivery", "45")]), 0.0).0.price, None);
    let unpriced = chosen(with_kit(2, "price", ""), &[(32, 3)]);
    assert_eq!(price(&unpriced), None);
}

/// A sum without the tax that somebody entered would be too low.
#[test]
fn what_cannot_be_read_gives_no_price_and_is_said() {
    for (field, text, code) in [
        ("sales_tax", "cheap", Code::NotANumber),
        ("sales_tax", "31", Code::AboveLimit),
        ("delivery", "-5", Code::Negative),
        ("delivery", "100001", Code::AboveLimit),
    ] {
        let (bought, findings) = buy(&three(&[(field, text)]), 1_200.0);
        assert_eq!((bought.price, bought.least_cost), (None, Some(Cents(234_000))), "{field} {text}");
        assert_eq!(codes(&findings), [(code, 0, field)], "{field} {text}");
    }
    // It is said with nothing to buy as well, and 12.5 % is taken but asked about.
    let (_, findings) = buy(&three(&[("sales_tax", "31")]), 0.0);
    assert!(codes(&findings).contains(&(Code::AboveLimit, 0, "sales_tax")));
    let (bought, findings) = buy(&three(&[("sales_tax", "12.5")]), 1_200.0);
    assert_eq!(codes(&findings), [(Code::Unlikely, 0, "sales_tax")]);
    assert_eq!(sums(bought.price), Some([234_000, 29_250, 0, 263_250]));
    let (_, findings) = buy(&three(&[("sales_tax", "12")]), 1_200.0);
    assert!(findings.is_empty());
}

/// Far past any purchase the sums are still exact: the dearest kit, so many of it as can be counted, the most tax and
/// delivery; and the tax on the largest sum there is.
#[test]
fn the_dearest_purchase_has_its_exact_price() {
    let entries = [("sales_tax", "30"), ("delivery", "100000")];
    let dear = taxed(with_kit(2, "price", "100000"), &entries);
    let (bought, _) = buy(&chosen(dear, &[(32, u32::MAX)]), 1_200.0);
    let kits = i64::from(u32::MAX) * 10_000_000;
    assert_eq!(sums(bought.price), Some([kits, kits / 10 * 3, 10_000_000, kits / 10 * 13 + 10_000_000]));
    assert_eq!(tax(Cents(i64::MAX), 30_000_000).0, 2_767_011_611_056_432_742);
}

proptest! {
    /// Against integers twice as wide.
    #[test]
    fn the_tax_is_exact(cents in 0..i64::MAX, rate in 0..=30_000_000_i64) {
        let wide = (i128::from(cents) * i128::from(rate) * 2 + 100_000_000) / 200_000_000;
        prop_assert_eq!(i128::from(tax(Cents(cents), rate).0), wide);
    }

    /// A dearer purchase and a higher rate are never taxed less, and what is rounded is less than a cent.
    #[test]
    fn the_tax_grows_with_both(cents in 0..1_000_000_000_i64, more in 0..1_000_i64, rate in 0..30_000_000_i64, up in 0..1_000_i64) {
        let here = tax(Cents(cents), rate);
        prop_assert!(tax(Cents(cents + more), rate) >= here);
        prop_assert!(tax(Cents(cents), rate + up) >= here);
        let exact = cents as f64 * rate as f64 / 1e8;
        prop_assert!((here.0 as f64 - exact).abs() <= 0.5 + 1e-6);
    }

    /// The total is its parts, and the kits alone where nothing is added.
    #[test]
    fn the_total_is_its_parts(feet in 1.0..3_000_f64, thousandths in 0..30_000_u32, cents in 0..100_000_u32) {
        let (rate, delivery) = (format!("{}.{:03}", thousandths / 1_000, thousandths % 1_000), format!("{}.{:02}", cents / 100, cents % 100));
        let (plain, _) = buy(&three(&[]), feet);
        let (bought, _) = buy(&three(&[("sales_tax", &rate), ("delivery", &delivery)]), feet);
        let (plain, price) = (plain.price.expect("a price"), bought.price.expect("a price"));
        prop_assert_eq!((plain.kits, plain.tax, plain.delivery), (plain.total, Cents(0), Cents(0)));
        prop_assert_eq!((price.kits, price.delivery), (plain.kits, Cents(i64::from(cents))));
        prop_assert_eq!(price.tax, tax(price.kits, i64::from(thousandths) * 1_000));
        prop_assert_eq!(price.total.0, price.kits.0 + price.tax.0 + price.delivery.0);
    }
}
