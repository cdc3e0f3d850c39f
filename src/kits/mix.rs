//! What a number of kits gives, costs and leaves over, and where it stops being enough.

use super::least::{SLACK, on_offer};
use super::stock::Shelf;
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

/// What has to be covered: the board feet to spray, and what counts from the shelf.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wanted {
    pub need: BoardFeet,
    pub shelf: Shelf,
}

impl Wanted {
    /// What is left to be bought for, never below zero; what binary fractions leave over is nothing.
    pub(super) fn rest(self) -> BoardFeet {
        let rest = self.need - self.shelf.usable;
        if self.shelf.kits > 0 && rest.0 <= SLACK * self.need.0 { BoardFeet(0.0) } else { rest }
    }
}

/// What so many kits come to, with what counts from the shelf, against a need.
pub(super) fn mix(sizes: &[KitSize], lines: &[Line], wanted: Wanted) -> Mix {
    let Wanted { need, shelf } = wanted;
    let usable: BoardFeet = lines.iter().map(|line| line.usable).sum();
    let largest =
        sizes.iter().filter(|size| on_offer(size)).fold(0.0, |most: f64, size| most.max(size.usable.0));
    let left = usable + shelf.usable - need;
    let covered = shelf.kits > 0 && wanted.rest().0 <= 0.0;
    let enough = covered || left.0 >= -SLACK * largest;
    Mix {
        buy: lines.iter().map(|line| KitCount { kit: line.kit, count: line.count }).collect(),
        kits: lines.iter().fold(0, |kits, line| kits.saturating_add(line.count)),
        cost: lines
            .iter()
            .map(|line| line.cost)
            .try_fold(Cents(0), |sum, cost| Some(Cents(sum.0.saturating_add(cost?.0)))),
        label: lines.iter().map(|line| line.label).sum(),
        fixed_loss: lines.iter().map(|line| line.fixed_loss).sum(),
        usable,
        left: if enough { BoardFeet(left.0.max(0.0)) } else { left },
        enough,
        break_factor_pct: break_factor_pct(lines, wanted),
    }
}

/// The yield factor, in percent of label, at which the kits, with those from the shelf, give exactly what is
/// needed: it solves Σ max(0, label × factor − fixed loss) = need. An opened kit from the shelf gives
/// label × factor × least share × 70 %, so it counts with so much of its label and without a fixed loss.
///
/// In words: (need + fixed losses) ÷ label board feet. A size whose fixed loss takes everything at that
/// factor gives nothing rather than less than nothing, and is left out of both sums. 0 for no kits.
fn break_factor_pct(lines: &[Line], wanted: Wanted) -> f64 {
    let all = lines.iter().map(|line| (line.label.0, line.fixed_loss.0));
    let all = all.chain([(wanted.shelf.label.0, wanted.shelf.fixed_loss.0)]);
    let mut counted: Vec<(f64, f64)> = all.filter(|(label, _)| *label > 0.0).collect();
    loop {
        let label: f64 = counted.iter().map(|(label, _)| label).sum();
        let loss: f64 = counted.iter().map(|(_, loss)| loss).sum();
        if label <= 0.0 {
            return 0.0;
        }
        let factor = (wanted.need.0.max(0.0) + loss) / label;
        let before = counted.len();
        counted.retain(|(label, loss)| label * factor > *loss);
        if counted.len() == before || counted.is_empty() {
            return factor * 100.0;
        }
    }
}
