//! What the larger scenes have in common: lumber, a foam's data sheet, and the steps from a kit's label to what it gives.

use super::super::Topic;
use super::super::formula::{Formula, at, number, share};
use super::super::made::{Ask, Making, plain};
use crate::measure::Kind;

/// A short measure that a tape would round too far: to the millimeter in metric, as lumber is sold.
pub fn short(m: &Making, inches: f64) -> String {
    match m.metric() {
        true => format!("{} mm", plain(inches * 25.4, 0)),
        false => m.tape(inches, true),
    }
}

/// A length that a tape gives: feet and inches, or meters.
pub fn long(m: &Making, inches: f64) -> String {
    m.tape(inches, false)
}

/// What the crew aims over the least depth: written as an entry of the job, said in the question. Half an inch, as is
/// common practice without a source.
pub fn aims_over(m: &mut Making) {
    let under = short(m, 0.5);
    m.of_job("under_aim", under.clone());
    m.says("under", under);
}

/// The factor and the loss of each kit, drawn, written as entries of the job and said in the question.
pub fn yields(m: &mut Making) -> (f64, f64) {
    let (factor, loss) = (f64::from(m.draw.whole(82, 90)), f64::from(m.draw.whole(4, 6)));
    m.of_job("yield_factor", plain(factor, 0));
    m.of_job("fixed_loss", plain(loss, 0));
    m.gives("yield_factor", factor, Kind::Percent);
    m.gives("fixed_loss", loss, Kind::FoamVolume);
    (factor, loss)
}

/// A label of about so many board feet, of which whole kits leave the last one used by a third: so that rounding a reading
/// changes no count, and the label taken for what a kit gives mostly does.
pub fn label(feet: f64, about: f64, factor: f64, loss: f64) -> i32 {
    let share = factor / 100.0;
    let kits = libm::ceil(feet / (about * share - loss)).max(2.0);
    let usable = feet / (kits - 0.7);
    #[allow(clippy::cast_possible_truncation, reason = "hundreds of board feet")]
    let tens = libm::round((usable + loss) / share / 10.0) as i32;
    10 * tens
}

/// What a surface has to be above the dew point, written as an entry of the job and said in the question: 5 °F or 2.8 °C,
/// so that it adds up in either scale as it is written.
pub fn spread(m: &mut Making) -> f64 {
    let (text, spread) = if m.metric() { ("2.8 C", 2.8 * 1.8) } else { ("5 F", 5.0) };
    m.of_job("dew_spread", text);
    m.says("spread", text);
    spread
}

/// What is sprayed over the aim, drawn, written and said.
pub fn oversprays(m: &mut Making) -> f64 {
    let over = f64::from(m.draw.whole(5, 10));
    m.of_job("over_depth", plain(over, 0));
    m.gives("over_depth", over, Kind::Percent);
    over
}

/// A foam whose R grows a little faster than its depth, at one to four inches: the first inch, and what each of the
/// others adds, two or three tenths more than the one before. With less, hundredths of RSI might have it fall.
pub fn rows(m: &mut Making) -> [(f64, f64); 4] {
    let tenths = |m: &mut Making, least, most| f64::from(m.draw.whole(least, most)) / 10.0;
    let (first, second, more) = (tenths(m, 58, 60), tenths(m, 66, 67), tenths(m, 2, 3));
    let two = first + second;
    let three = two + second + more;
    [(1.0, first), (2.0, two), (3.0, three), (4.0, three + second + 2.0 * more)]
}

/// The least depth for an R, straight between two rows of the data sheet.
pub fn between(rows: &[(f64, f64)], r: f64) -> Option<f64> {
    let (thin, thick) = rows.iter().zip(rows.iter().skip(1)).find(|(_, thick)| thick.1 >= r)?;
    Some(thin.0 + (r - thin.1) / (thick.1 - thin.1) * (thick.0 - thin.0))
}

/// The step to the aim of a surface: the depth for its target, straight between two rows, and what is aimed over it.
pub fn aim(surface: usize, of: &'static str) -> Ask {
    let path = |name: &str| format!("surfaces.{surface}.depth.{name}");
    let row = |name: &str, kind| at(&path(&format!("needed_between.{name}")), kind);
    let length = |name: &str| row(name, Kind::Length);
    let r = |name: &str| row(name, Kind::Resistance);
    let target = || at(&path("target_r"), Kind::Resistance);
    let under = || at(&path("under_in"), Kind::Length);
    let part = (target() - r("thinner_r")) / (r("thicker_r") - r("thinner_r"));
    let least = length("thinner_in") + part * (length("thicker_in") - length("thinner_in"));
    let first = at("foams.0.listed.0.thickness_in", Kind::Length);
    let of_first = target() / at("foams.0.listed.0.r", Kind::Resistance) * first + under();
    Ask::new("aim", Topic::Depth, Kind::Length)
        .of(of)
        .short()
        // As near as a tape and a probe are read: to the sixteenth.
        .within(1.0 / 32.0, 0.0)
        .at(path("aim_in"))
        .by(least.clone() + under())
        .slip("promise_for_aim", least)
        .slip("r_of_first_inch", of_first)
}

/// The step from the label of a size to what one kit of it gives.
pub fn usable(size: usize, of: &'static str) -> Ask {
    let of_size = |name: &str, kind| at(&format!("purchase.sizes.{size}.{name}"), kind);
    let label = || of_size("label", Kind::FoamVolume);
    let factor = || share(of_size("factor_pct", Kind::Percent));
    let loss = || of_size("fixed_loss", Kind::FoamVolume);
    Ask::new("usable", Topic::Kits, Kind::FoamVolume)
        .of(of)
        .within(0.2, 0.0)
        .at(format!("purchase.sizes.{size}.usable"))
        .by(label() * factor() - loss())
        .slip("label_for_usable", label())
        .slip("loss_forgotten", label() * factor())
        .slip("factor_forgotten", label() - loss())
        .slip("loss_before_factor", (label() - loss()) * factor())
}

/// The step from what is in place to what is sprayed.
pub fn to_spray(in_place: &dyn Fn() -> Formula) -> Ask {
    let over = || share(at("quantity.allowances.over_depth_pct", Kind::Percent));
    Ask::new("to_spray", Topic::Allowances, Kind::FoamVolume)
        .at("quantity.to_spray")
        .within(0.5, 0.2)
        .by(in_place() * (number(1.0) + over()))
        .slip("allowance_forgotten", in_place())
        .slip("allowance_alone", in_place() * over())
        .slip("allowance_divided", in_place() / (number(1.0) - over()))
}

/// The step from the aim of a surface to its lifts.
pub fn lifts(surface: usize, aim: Formula) -> Ask {
    let largest = at(&format!("surfaces.{surface}.lifts.largest_in"), Kind::Length);
    let count = (aim / largest).up();
    Ask::new("lifts", Topic::Lifts, Kind::Count)
        .at(format!("surfaces.{surface}.lifts.count"))
        .by(count.clone())
        .slip("one_lift_more", count + number(1.0))
}
