//! Kits of two sizes for an attic, and the bill: as many of the large one as fit, small ones for the rest.

use super::super::Topic;
use super::super::formula::{Formula, at, number, share, step};
use super::super::made::{Ask, Making, plain};
use super::trade::usable;
use crate::measure::Kind;

/// What the small kit may be labelled, in tens of board feet.
const SMALL: (i32, i32) = (8, 9);

/// A shelf on which the large kits leave a rest of one or two small ones: for about so many board feet, at a factor in
/// percent and a loss of each kit.
///
/// A board foot of a small kit costs about half as much again as one of a large kit, so that the least cost is the large
/// kits that fit and small ones for the rest; a test holds it for every seed that it draws.
pub fn shelf(m: &mut Making, feet: f64, factor: f64, loss: f64) {
    let small = 10 * m.draw.whole(SMALL.0, SMALL.1);
    let smalls = f64::from(m.draw.whole(1, 2));
    let (each_large, each_small) = (f64::from(m.draw.whole(135, 155)), f64::from(m.draw.whole(190, 225)));
    let of_small = f64::from(small) * factor / 100.0 - loss;
    let larges = match feet {
        feet if feet < 640.0 => 1.0,
        feet if feet < 1_150.0 => 2.0,
        _ => 3.0,
    };
    // The rest lies in the middle of the last small kit.
    let of_large = (feet - (smalls - 0.5) * of_small) / larges;
    let label = 10.0 * libm::round((of_large + loss) / factor * 10.0);
    let dollars = |label: f64, each: f64| 5.0 * libm::round(label * each / 500.0);
    #[allow(clippy::cast_possible_truncation, reason = "hundreds of board feet and of dollars")]
    for (label, each) in [(label, each_large), (f64::from(small), each_small)] {
        m.kit(label as i32, dollars(label, each) as i32);
    }
    let tax = f64::from(m.draw.whole(16, 35)) / 4.0;
    let delivery = f64::from(5 * m.draw.whole(7, 24));
    m.of_job("sales_tax", plain(tax, 2));
    m.of_job("delivery", plain(delivery, 0));
    m.gives("sales_tax", tax, Kind::Percent);
    m.gives("delivery", delivery * 100.0, Kind::Money);
}

/// Usable yield of both sizes, how many of each, and what is to be paid.
pub fn ask(m: &mut Making) {
    m.ask(usable(0, "large"));
    m.ask(usable(1, "small"));
    let rest = |large: Formula| step("to_spray") - large * step("usable/large");
    m.ask(
        Ask::new("kits_large", Topic::Kits, Kind::Count)
            .at("purchase.lines.0.count")
            .by((step("to_spray") / step("usable/large")).down())
            .slip("large_only", (step("to_spray") / step("usable/large")).up()),
    );
    m.ask(
        Ask::new("kits_small", Topic::Kits, Kind::Count)
            .at("purchase.lines.1.count")
            .by((rest(step("kits_large")) / step("usable/small")).up())
            .slip("small_only", (step("to_spray") / step("usable/small")).up()),
    );
    let price = |size: usize| at(&format!("purchase.sizes.{size}.price"), Kind::Money);
    let kits = || step("kits_large") * price(0) + step("kits_small") * price(1);
    let tax = || share(at("purchase.price.tax_pct", Kind::Percent));
    let delivery = || at("purchase.price.delivery", Kind::Money);
    m.ask(
        Ask::new("total", Topic::Price, Kind::Money)
            .at("purchase.price.total")
            .within(60.0, 0.0)
            .by(kits() * (number(1.0) + tax()) + delivery())
            .slip("tax_forgotten", kits() + delivery())
            .slip("delivery_forgotten", kits() * (number(1.0) + tax()))
            .slip("tax_on_delivery", (kits() + delivery()) * (number(1.0) + tax()))
            .slip("one_of_each_size", (price(0) + price(1)) * (number(1.0) + tax()) + delivery()),
    );
}
