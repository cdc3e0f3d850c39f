//! The purchase: the least-cost mix, the person's own, the other ways, and the line past which kits are the
//! wrong tool.

use super::least::{SLACK, on_offer, search};
use super::mix::{Wanted, kits_needed, lines, mix};
use super::price::price;
use super::stock::Shelf;
use super::{KitSize, Mix, Purchase, Stock, Supply, TooBig};
use crate::findings::{Code, Finding};
use crate::job::{Job, KitCount, Part, Reader};
use crate::measure::{Band, BoardFeet, Cents, Kind, decimal};
use crate::quantity::Quantity;

/// Steps of a search for the least-cost mix: one or two milliseconds, hundreds of times what three sizes take.
pub(super) const MOST_STEPS: u32 = 200_000;

/// Steps of a search for another way to reach it.
const OTHER_STEPS: u32 = 5_000;

/// Sizes of which one more than in the least-cost mix is tried.
const MOST_SIZES: usize = 12;

/// With more sizes than any supplier has, no other ways are looked for.
const TOO_MANY_SIZES: usize = 100;

/// Ways besides the least-cost one that are listed.
const MOST_OTHERS: usize = 5;

/// What to buy for a quantity.
///
/// The need is the likely board feet to spray, not rounded. What counts of the kits that are already there goes
/// first, the search covers the rest; where they alone are enough, nothing is bought. The person's choice
/// counts over the least-cost mix; where it is not enough that is a stop, where it is dearer that is noted.
/// Too big: more board feet than the limit, or so many kits of the largest size (common practice, editable).
pub fn purchase(
    job: &Job,
    sizes: Vec<KitSize>,
    stock: Vec<Stock>,
    quantity: &Quantity,
    reader: &mut Reader,
) -> Purchase {
    let said = |code| Finding::new(code, Part::Purchase, 0, "");
    let need = quantity.to_spray.likely;
    let shelf = Shelf::of(&stock);
    let to_cover = |need| Wanted { need, shelf };
    let wanted = to_cover(need);
    let rest = wanted.rest();
    let of = |buy: &[KitCount]| mix(&sizes, &lines(&sizes, buy), wanted);

    let found = if need.0 > 0.0 { search(&sizes, rest, MOST_STEPS) } else { None };
    // The shelf alone may be enough: then nothing is bought.
    let covered = |wanted: Wanted| shelf.kits > 0 && wanted.need.0 > 0.0 && wanted.rest().0 <= 0.0;
    let least = found.as_ref().map(|found| of(&found.buy)).or_else(|| covered(wanted).then(|| of(&[])));
    if let (Some(found), Some(least)) = (&found, &least)
        && !found.ties_proved
    {
        let code = if found.least_proved { Code::TieNotProved } else { Code::LeastNotProved };
        let cost = reader.figure(Kind::Money, least.cost.map_or(0.0, |cost| cost.0 as f64));
        reader.say(said(code).with("cost", cost));
    }
    if need.0 > 0.0 && least.is_none() {
        let any = sizes.iter().any(on_offer);
        let code = if any { Code::NotEnoughKits } else { Code::NoKits };
        reader.say(said(code).with("given", decimal(libm::ceil(rest.0 - SLACK), 0)));
    }

    let at = |need: BoardFeet| {
        let wanted = to_cover(need);
        if covered(wanted) {
            return Some(mix(&sizes, &[], wanted));
        }
        let found = search(&sizes, wanted.rest(), MOST_STEPS)?;
        Some(mix(&sizes, &lines(&sizes, &found.buy), wanted))
    };
    let ranged = !quantity.to_spray.is_single();
    let least_at_low = if ranged { at(quantity.to_spray.low) } else { None };
    let least_at_high = if ranged { at(quantity.to_spray.high) } else { None };

    let alone: Vec<Mix> = if rest.0 > 0.0 { alone(&sizes, wanted) } else { Vec::new() };
    let others = match &least {
        Some(least) if sizes.len() <= TOO_MANY_SIZES && rest.0 > 0.0 => others(&sizes, wanted, least, &alone),
        _ => Vec::new(),
    };
    let own = job.purchase.as_ref().map(|chosen| own(job, &chosen.buy, &sizes, wanted, reader));
    let chosen = own.is_some();
    let least_cost = least.as_ref().and_then(|least| least.cost);
    let mut dearer_by = None;
    if let Some(own) = &own {
        if !own.enough {
            // Up to the tenth: what falls short is never shown as nothing.
            let short = libm::ceil(-own.left.0 * 10.0 - SLACK) / 10.0;
            reader.say(said(Code::ChosenTooLittle).with("short", decimal(short.max(0.1), 1)));
        } else if let (Some(cost), Some(least)) = (own.cost, least_cost)
            && cost > least
        {
            let more = Cents(cost.0 - least.0);
            reader.say(said(Code::ChosenDearer).with("more", reader.figure(Kind::Money, more.0 as f64)));
            dearer_by = Some(more);
        }
    }
    let too_big = too_big(job, &sizes, quantity, reader);
    let buy = own.or_else(|| least.clone());
    let price = price(job, buy.as_ref(), reader);
    Purchase {
        yield_factor_pct: factor_pct(job, &sizes, reader),
        supply: if stock.is_empty() { Supply::Bought } else { Supply::ShelfFirst },
        stock,
        from_stock: shelf.usable,
        stock_label: shelf.label,
        stock_loss: shelf.fixed_loss,
        stock_kits: shelf.kits,
        stock_nozzles: shelf.nozzles,
        to_buy: Band {
            low: to_cover(quantity.to_spray.low).rest(),
            likely: rest,
            high: to_cover(quantity.to_spray.high).rest(),
        },
        lines: buy.as_ref().map_or_else(Vec::new, |buy| lines(&sizes, &buy.buy)),
        price,
        least,
        least_cost,
        least_at_low,
        least_at_high,
        alone,
        others,
        buy,
        chosen,
        dearer_by,
        too_big,
        sizes,
    }
}

/// The factor that the sizes were read with; without any, the job's own, its findings said before.
fn factor_pct(job: &Job, sizes: &[KitSize], reader: &Reader) -> f64 {
    let again = || Reader::new(reader.units).take(Part::Job, 0, &job.entries, "yield_factor");
    sizes.first().map(|size| size.factor_pct).or_else(|| Some(again()?.value.likely)).unwrap_or_default()
}

/// Each size by itself, without its limit.
fn alone(sizes: &[KitSize], wanted: Wanted) -> Vec<Mix> {
    let rest = wanted.rest();
    let each = sizes.iter().filter_map(|size| {
        let buy = [KitCount { kit: size.kit, count: kits_needed(rest, size.usable)? }];
        let one = core::slice::from_ref(size);
        Some(mix(one, &lines(one, &buy), wanted))
    });
    each.collect()
}

/// Other ways: the sizes alone; one kit more of a size than the least-cost mix has and fewer of the largest, each
/// filled up at the least cost; and so many of the largest with one other size. A way that is enough without
/// one of its kits is none.
fn others(sizes: &[KitSize], wanted: Wanted, least: &Mix, alone: &[Mix]) -> Vec<Mix> {
    let need = wanted.rest();
    let limit_of = |kit| sizes.iter().find(|size| size.kit == kit).and_then(|size| size.limit);
    let within = |one: &KitCount| limit_of(one.kit).is_none_or(|limit| one.count <= limit);
    let mut ways: Vec<Mix> = alone.iter().filter(|mix| mix.buy.iter().all(within)).cloned().collect();
    let offered: Vec<KitSize> = sizes.iter().filter(|size| on_offer(size)).copied().collect();
    let in_least =
        |size: &KitSize| least.buy.iter().find(|one| one.kit == size.kit).map_or(0, |one| one.count);
    let add = |taken: &KitSize, count: u32, more: bool, ways: &mut Vec<Mix>| {
        let mut buy = vec![KitCount { kit: taken.kit, count }];
        let still = BoardFeet(need.0 - f64::from(count) * taken.usable.0);
        if !within(&KitCount { kit: taken.kit, count }) {
            return;
        }
        if still.0 > SLACK * taken.usable.0 {
            // With fewer of a size it is not bought again, with more it may be.
            let rest: Vec<KitSize> = offered
                .iter()
                .filter(|size| more || size.kit != taken.kit)
                .map(|size| KitSize {
                    limit: size.limit.map(|limit| if size.kit == taken.kit { limit - count } else { limit }),
                    ..*size
                })
                .collect();
            let Some(found) = search(&rest, still, OTHER_STEPS) else { return };
            buy.extend(found.buy);
        }
        ways.push(mix(sizes, &lines(sizes, &buy), wanted));
    };
    for size in offered.iter().take(MOST_SIZES) {
        add(size, in_least(size).saturating_add(1), true, &mut ways);
    }
    if let Some(largest) = offered.iter().max_by(|a, b| a.usable.0.total_cmp(&b.usable.0)) {
        for count in (0..in_least(largest)).rev().take(MOST_OTHERS) {
            add(largest, count, false, &mut ways);
        }
        // What a person would try: so many of the largest, and one other size for the rest.
        let of_use = kits_needed(need, largest.usable).unwrap_or(u32::MAX);
        for count in (0..=of_use).rev().take(MOST_OTHERS) {
            let still = BoardFeet(need.0 - f64::from(count) * largest.usable.0);
            for other in offered.iter().filter(|size| size.kit != largest.kit).take(MOST_SIZES) {
                let Some(rest) = kits_needed(still, other.usable) else { continue };
                let buy =
                    [(largest, count), (other, rest)].map(|(size, count)| KitCount { kit: size.kit, count });
                if buy.iter().all(within) {
                    ways.push(mix(sizes, &lines(sizes, &buy), wanted));
                }
            }
        }
    }
    let mut others: Vec<Mix> = Vec::new();
    for way in ways {
        let known = way.buy == least.buy || others.iter().any(|one| one.buy == way.buy);
        let usable = |kit| sizes.iter().find(|size| size.kit == kit).map_or(0.0, |size| size.usable.0);
        let spare = way.buy.iter().any(|one| usable(one.kit) <= way.left.0);
        if known || spare || !way.enough || way.cost.is_none() {
            continue;
        }
        let dearer = |one: &Mix| (one.cost, one.left) > (way.cost, way.left);
        let at = others.iter().position(dearer).unwrap_or(others.len());
        others.insert(at, way);
    }
    others.truncate(MOST_OTHERS);
    others
}

/// The person's choice.
fn own(job: &Job, buy: &[KitCount], sizes: &[KitSize], wanted: Wanted, reader: &mut Reader) -> Mix {
    for one in buy.iter().filter(|one| one.count > 0) {
        if job.kit_sheet(one.kit).is_none() {
            reader.say(Finding::new(Code::NoSheet, Part::Purchase, one.kit, "count"));
        }
    }
    let lines = lines(sizes, buy);
    for line in &lines {
        let limit = sizes.iter().find(|size| size.kit == line.kit).and_then(|size| size.limit);
        if let Some(limit) = limit.filter(|limit| line.count > *limit) {
            let finding = Finding::new(Code::ChosenOverLimit, Part::Purchase, line.kit, "count")
                .with("given", line.count.to_string())
                .with("limit", limit.to_string());
            reader.say(finding);
        }
    }
    mix(sizes, &lines, wanted)
}

fn too_big(job: &Job, sizes: &[KitSize], quantity: &Quantity, reader: &mut Reader) -> Option<TooBig> {
    let need = quantity.to_spray.likely;
    let mut limit = |name| reader.take(Part::Job, 0, &job.entries, name).map(|taken| taken.value.likely);
    let (feet, kits_limit) = (limit("too_big"), limit("too_big_kits"));
    let largest_usable = BoardFeet(sizes.iter().fold(0.0, |most: f64, size| most.max(size.usable.0)));
    let largest_kits = if need.0 > 0.0 { kits_needed(need, largest_usable).unwrap_or(0) } else { 0 };
    let too_big = TooBig {
        to_spray: need,
        limit: BoardFeet(feet?),
        largest_usable,
        largest_kits,
        kits_limit: kits_limit? as u32,
    };
    if need <= too_big.limit && largest_kits < too_big.kits_limit {
        return None;
    }
    let finding = Finding::new(Code::TooBig, Part::Purchase, 0, "")
        .with("given", decimal(quantity.to_spray_up.likely.0, 0))
        .with("limit", decimal(too_big.limit.0, 0))
        .with("kits", largest_kits.to_string());
    reader.say(finding);
    Some(too_big)
}
