//! The search for the least-cost mix.
//!
//! Sizes stand in the order of their price per usable board foot, cheapest first. The search goes down
//! that list depth first, from the most of a size that can be of use to none, and leaves a branch as soon
//! as what it can lead to at best is no better than the best mix found. At best, the rest costs the larger of
//!
//! * what is still needed at the cheapest price per board foot within the limits (as if a part of a kit
//!   could be bought), rounded up to the next sum that whole kits of the sizes left can cost (a multiple of
//!   the greatest common divisor of their prices), and
//! * the price of the cheapest kit left;
//!
//! and where that comes to exactly the cost of the best mix, what is left over is at least what the same
//! money buys at the dearest price per board foot left, and the kits at least so many of the largest size
//! left. None of these is ever more than the truth, so nothing better is left out. What decides is in whole
//! numbers: money in cents, foam in billionths of a board foot, left-overs compared to the ten-thousandth of
//! a board foot.
//!
//! The work is bounded: after a given number of steps the search stops and says so. The first descent
//! already ends in a mix that is enough, so there is an answer even then, only without the proof.

use super::KitSize;
use crate::job::KitCount;
use crate::measure::BoardFeet;

/// The most kits of one size that are considered where the sheet sets no limit.
const MOST_KITS: i64 = 999_999;

/// Billionths of a board foot to the board foot.
const PARTS: f64 = 1e9;

/// Left-overs that differ by less than this many parts count as equal: a ten-thousandth of a board foot, far
/// above what rounding to parts can add up to and far below anything that can be sprayed.
const EQUAL_PARTS: i64 = 100_000;

/// Steps after which the search keeps a table of where it has been.
const VISITED_FROM: u32 = 2_000;

/// The table has two to this power of places.
const VISITED_BITS: u32 = 13;

/// The part of a kit by which a purchase may fall short and still count as enough: it swallows what binary
/// fractions lose, far below anything that can be measured.
pub(super) const SLACK: f64 = 1e-9;

/// The mix that a search ended with.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// How many of each size, in the order of the sizes; sizes with none are left out.
    pub buy: Vec<KitCount>,
    /// Whether it is proved that nothing that is enough costs less.
    pub least_proved: bool,
    /// Whether it is also proved that nothing at that cost leaves less over, or as much with fewer kits.
    pub ties_proved: bool,
    /// Steps taken.
    pub steps: u32,
}

/// A size that can be bought, in whole numbers.
#[derive(Clone, Copy)]
struct Offer {
    index: usize,
    usable: i64,
    price: i64,
    most: i64,
    /// Cents per part of a board foot, rounded down a little so that equal prices are equal.
    ratio: f64,
    /// Cents per part of the dearest board foot from here on, rounded up a little.
    dearest: f64,
    /// Greatest common divisor of the prices from here on.
    step: i64,
    /// The cheapest price from here on.
    cheapest: i64,
    /// The largest size from here on.
    largest: i64,
}

/// Where the search stands at one size: what is still needed, spent and bought before it, and how many of it
/// are tried.
#[derive(Clone, Copy, Default)]
struct Level {
    needed: i64,
    spent: i64,
    kits: i64,
    count: i64,
}

/// Cost, what is left over, kits, what is left over exactly: the order of preference.
type Worth = (i64, i64, i64, i64);

/// Searches for the least-cost mix of `sizes` that gives `need`; ties go to less left over, then to fewer
/// kits. `None` where the limits do not allow enough, or nothing is needed.
pub fn search(sizes: &[KitSize], need: BoardFeet, most_steps: u32) -> Option<Found> {
    if !(need.0 > 0.0 && need.0.is_finite()) {
        return None;
    }
    let scale = if need.0 < PARTS { PARTS } else { PARTS * PARTS / need.0 };
    let largest =
        sizes.iter().filter(|size| on_offer(size)).fold(0.0, |most: f64, size| most.max(size.usable.0));
    let wanted = libm::ceil((need.0 - SLACK * largest) * scale) as i64;
    if wanted <= 0 {
        return None;
    }
    let offers = offers(sizes, wanted, scale);
    let mut steps = 0;
    let (_, lowest) = bound(&offers, wanted, &mut steps)?;
    let (counts, cost, ties_proved) = descend(&offers, wanted, most_steps, &mut steps)?;
    let mut buy: Vec<KitCount> = sizes.iter().map(|size| KitCount { kit: size.kit, count: 0 }).collect();
    for (offer, count) in offers.iter().zip(counts) {
        if let Some(line) = buy.get_mut(offer.index) {
            line.count = count as u32;
        }
    }
    buy.retain(|line| line.count > 0);
    Some(Found { buy, least_proved: ties_proved || cost <= lowest, ties_proved, steps })
}

/// Whether a size has a price and something usable, and may be bought at all.
pub(super) fn on_offer(size: &KitSize) -> bool {
    size.price.is_some_and(|price| price.0 >= 0) && size.usable.0 > 0.0 && size.limit != Some(0)
}

/// The sizes that can be bought, cheapest board foot first.
fn offers(sizes: &[KitSize], wanted: i64, scale: f64) -> Vec<Offer> {
    let mut offers: Vec<Offer> = Vec::new();
    for (index, size) in sizes.iter().enumerate().filter(|(_, size)| on_offer(size)) {
        let usable = (size.usable.0 * scale + 0.5) as i64;
        let Some(price) = size.price.map(|price| price.0) else { continue };
        if usable < 1 {
            continue;
        }
        let of_use = 1 + (wanted - 1) / usable;
        let most = size.limit.map_or(MOST_KITS, i64::from).min(of_use);
        let near = f64::from((price as f64 / usable as f64) as f32);
        let ratio = near * (1.0 - 1e-6);
        let dearest = near * (1.0 + 1e-6);
        let offer = Offer { index, usable, price, most, ratio, dearest, step: 0, cheapest: 0, largest: 0 };
        // Put in place one by one, which takes less code than a sort: there are a handful.
        let place = offers.partition_point(|one| {
            let order = one.ratio.total_cmp(&ratio);
            order.then(usable.cmp(&one.usable)).is_le()
        });
        offers.insert(place, offer);
    }
    let mut after = Offer {
        index: 0,
        usable: 0,
        price: 0,
        most: 0,
        ratio: 0.0,
        dearest: 0.0,
        step: 0,
        cheapest: i64::MAX,
        largest: 0,
    };
    for offer in offers.iter_mut().rev() {
        offer.dearest = after.dearest.max(offer.dearest);
        offer.step = divisor(after.step, offer.price);
        offer.cheapest = after.cheapest.min(offer.price);
        offer.largest = after.largest.max(offer.usable);
        after = *offer;
    }
    offers
}

fn divisor(mut a: i64, mut b: i64) -> i64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

/// The least that `needed` parts can cost with the sizes from here on if kits could be parted, and if they
/// cannot; `None` if all of them are not enough.
fn bound(rest: &[Offer], needed: i64, steps: &mut u32) -> Option<(i64, i64)> {
    let first = rest.first()?;
    let (mut cost, mut left) = (0.0, needed);
    for offer in rest {
        *steps += 1;
        let has = offer.usable.saturating_mul(offer.most);
        if has >= left {
            cost += left as f64 * offer.ratio;
            left = 0;
            break;
        }
        cost += has as f64 * offer.ratio;
        left -= has;
    }
    if left > 0 {
        return None;
    }
    let parted = libm::ceil(cost) as i64;
    let whole = if first.step > 1 { (parted + first.step - 1) / first.step * first.step } else { parted };
    Some((parted, whole.max(first.cheapest)))
}

/// Whether the rest can still end in something better than `best`, given that it costs at least `whole`.
fn hopeful(first: &Offer, needed: i64, whole: i64, before: (i64, i64), best: Worth) -> bool {
    let (spent, kits) = before;
    if spent + whole != best.0 {
        return spent + whole < best.0;
    }
    // The rest of the money, all spent on the dearest board feet left.
    let money = (best.0 - spent) as f64;
    let buys = if first.dearest > 0.0 { ((money / first.dearest) as i64).max(needed) } else { needed };
    let least_left = (buys - needed) / EQUAL_PARTS;
    let least_kits = kits + (buys + first.largest - 1) / first.largest;
    (least_left, least_kits) <= (best.1, best.2)
}

/// What was spent, and on how many kits, when the search last stood at a size with so much still needed: a
/// table of fixed size in which a newer visit takes the place of an older one.
struct Visited(Vec<(usize, Level)>);

impl Visited {
    /// Whether the same was reached before at no higher cost and with no more kits, so that nothing new can
    /// come of it; if not, it is written down.
    fn before(&mut self, at: usize, here: Level) -> bool {
        if self.0.is_empty() {
            self.0 = vec![(0, Level::default()); 1 << VISITED_BITS];
        }
        let mixed = (here.needed as u64 ^ (at as u64) << 48).wrapping_mul(0x9E37_79B9_7F4A_7C15);
        let Some(slot) = self.0.get_mut((mixed >> (64 - VISITED_BITS)) as usize) else { return false };
        let known = slot.1;
        let same = slot.0 == at && known.needed == here.needed;
        if same && (known.spent, known.kits) <= (here.spent, here.kits) {
            return true;
        }
        *slot = (at, here);
        false
    }
}

/// The best counts and their cost, and whether every branch was looked into.
fn descend(offers: &[Offer], wanted: i64, most_steps: u32, steps: &mut u32) -> Option<(Vec<i64>, i64, bool)> {
    let mut best: Worth = (i64::MAX, 0, 0, 0);
    let mut best_counts = vec![0; offers.len()];
    let mut levels = vec![Level::default(); offers.len()];
    let mut visited = Visited(Vec::new());
    let mut at = 0;
    if let (Some(level), Some(offer)) = (levels.first_mut(), offers.first()) {
        *level = Level { needed: wanted, spent: 0, kits: 0, count: offer.most + 1 };
    }
    // Each turn tries one fewer of the size at hand, goes a size further, or back.
    while let (Some(level), Some(offer)) = (levels.get_mut(at), offers.get(at)) {
        level.count -= 1;
        let here = *level;
        let needed = here.needed - here.count * offer.usable;
        let spent = here.spent + here.count * offer.price;
        let kits = here.kits + here.count;
        let none_yet = best.0 == i64::MAX;
        if *steps >= most_steps && !none_yet {
            return Some((best_counts, best.0, false));
        }
        *steps += 1;
        let rest = offers.get(at + 1..).unwrap_or_default();
        let mut back = here.count < 0;
        if back {
        } else if needed <= 0 {
            let worth = (spent, -needed / EQUAL_PARTS, kits, -needed);
            if worth < best {
                best = worth;
                *steps += at as u32;
                for (index, kept) in best_counts.iter_mut().enumerate() {
                    *kept = if index <= at { levels.get(index).map_or(0, |one| one.count) } else { 0 };
                }
            }
        } else if let Some(first) = rest.first() {
            // The first descent needs no bound: it takes as much as it can of every size.
            let least = if none_yet { Some((0, 0)) } else { bound(rest, needed, steps) };
            match least {
                Some((_, whole)) if none_yet || hopeful(first, needed, whole, (spent, kits), best) => {
                    let count = first.most.min(1 + (needed - 1) / first.usable) + 1;
                    let below = Level { needed, spent, kits, count };
                    if *steps < VISITED_FROM || !visited.before(at + 1, below) {
                        at += 1;
                        if let Some(next) = levels.get_mut(at) {
                            *next = below;
                        }
                    }
                }
                // With fewer of the size at hand, the cost as if kits could be parted only grows.
                Some((parted, _)) => back = spent + parted > best.0,
                None => back = true,
            }
        } else {
            back = true;
        }
        if back {
            if at == 0 {
                return Some((best_counts, best.0, true));
            }
            at -= 1;
        }
    }
    None
}
