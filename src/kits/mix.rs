//! What a number of kits gives, costs and leaves over, and where it stops being enough.

use super::least::{SLACK, on_offer};
use super::{KitSize, Line, Mix};
use crate::job::KitCount;
use crate::measure::{BoardFeet, Cents};

/// Kits of one size that are enough: need ÷ usable, rounded up, a billionth of a kit not counting. `None`
/// where nothing is usable, or past every number of kits.
pub(super) fn kits_needed(need: BoardFeet, usable: BoardFeet) -> Option<u32> {
    let kits = libm::ceil(need.0 / usable.0 - SLACK).max(0.0);
    (usable.0 > 0.0 && kits <= f64::from(u32::MAX)).then_some(kits as u32)
}

/// The lines of a purchase, in the order of the sizes; counts of sizes that are not there are left out.
pub(super) fn lines(sizes: &[KitSize], buy: &[KitCount]) -> Vec<Line> {
    let mut lines = Vec::new();
    for size in sizes {
        let count: u32 = buy
            .iter()
            .filter(|one| one.kit == size.kit)
            .fold(0, |count, one| count.saturating_add(one.count));
        if count > 0 {
            let times = |feet: BoardFeet| BoardFeet(feet.0 * f64::from(count));
            lines.push(Line {
                kit: size.kit,
                count,
                label: times(size.label),
                fixed_loss: times(size.fixed_loss),
                usable: times(size.usable),
                cost: size.price.map(|price| Cents(price.0.saturating_mul(count.into()))),
                nozzles: size.nozzles.map(|nozzles| nozzles.saturating_mul(count)),
            });
        }
    }
    lines
}

/// What so many kits come to against a need.
pub(super) fn mix(sizes: &[KitSize], lines: &[Line], need: BoardFeet) -> Mix {
    let usable: BoardFeet = lines.iter().map(|line| line.usable).sum();
    let largest =
        sizes.iter().filter(|size| on_offer(size)).fold(0.0, |most: f64, size| most.max(size.usable.0));
    let left = usable - need;
    let enough = left.0 >= -SLACK * largest;
    Mix {
        buy: lines.iter().map(|line| KitCount { kit: line.kit, count: line.count }).collect(),
        kits: lines.iter().fold(0, |kits, line| kits.saturating_add(line.count)),
        cost: lines
            .iter()
            .map(|line| line.cost)
            .try_fold(Cents(0), |sum, cost| Some(Cents(sum.0.saturating_add(cost?.0)))),
        label: lines.iter().map(|line| line.label).sum(),
        usable,
        left: if enough { BoardFeet(left.0.max(0.0)) } else { left },
        enough,
        break_factor_pct: break_factor_pct(lines, need),
    }
}

/// The yield factor, in percent of label, at which the kits give exactly what is needed: it solves
/// Σ max(0, label × factor − fixed loss) = need.
///
/// In words: (need + fixed losses) ÷ label board feet. A size whose fixed loss takes everything at that
/// factor gives nothing rather than less than nothing, and is left out of both sums. 0 for no kits.
fn break_factor_pct(lines: &[Line], need: BoardFeet) -> f64 {
    let mut counted: Vec<&Line> = lines.iter().filter(|line| line.label.0 > 0.0).collect();
    loop {
        let label: f64 = counted.iter().map(|line| line.label.0).sum();
        let loss: f64 = counted.iter().map(|line| line.fixed_loss.0).sum();
        if label <= 0.0 {
            return 0.0;
        }
        let factor = (need.0.max(0.0) + loss) / label;
        let before = counted.len();
        counted.retain(|line| line.label.0 * factor > line.fixed_loss.0);
        if counted.len() == before || counted.is_empty() {
            return factor * 100.0;
        }
    }
}
