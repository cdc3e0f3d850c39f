//! From a carton's label to what reaches the wall.

use super::KitSize;
use crate::findings::{Code, Finding};
use crate::foam::Foam;
use crate::job::{Job, KitSheet, Part, Reader, entry};
use crate::measure::{BoardFeet, Cents, Kind, Pounds};

/// Labels round: the chemical may fall this share short of what the label's board feet need.
///
/// Source: worked from the definition of a board foot; the allowance is common practice, no source.
const LABELS_ROUND: f64 = 0.05;

/// The sizes on offer, read from the job's kit sheets (`foam` gives the density for the mass check).
///
/// In words: usable = label × yield factor − fixed loss, never below zero; the chemical that the label's board
/// feet need = board feet × density ÷ 12. A sheet without a yield is left out, one without a price stays but
/// cannot be bought; both leave a finding. Where yield factor or fixed loss cannot be read there are no sizes.
pub fn sizes(job: &Job, foam: Option<&Foam>, reader: &mut Reader) -> Vec<KitSize> {
    let mut of_job = |name| reader.take(Part::Job, 0, &job.entries, name).map(|taken| taken.value.likely);
    let (factor, loss) = (of_job("yield_factor"), of_job("fixed_loss"));
    let mut sizes = Vec::with_capacity(job.kits.len());
    for sheet in &job.kits {
        if let Some(size) = size(sheet, factor, loss, foam, reader) {
            sizes.push(size);
        }
    }
    sizes
}

/// The size that gives the most; of two alike the first.
pub fn largest(sizes: &[KitSize]) -> Option<&KitSize> {
    sizes.iter().reduce(|known, one| if one.usable > known.usable { one } else { known })
}

fn size(
    sheet: &KitSheet,
    factor: Option<f64>,
    loss: Option<f64>,
    foam: Option<&Foam>,
    reader: &mut Reader,
) -> Option<KitSize> {
    let mut read =
        |name| reader.take(Part::Kit, sheet.id, &sheet.entries, name).map(|taken| taken.value.likely);
    let label = read("label_yield");
    let price = read("price").map(|cents| Cents(libm::round(cents) as i64));
    let net_weight_lb = read("net_weight").map(Pounds);
    let nozzles = read("nozzles").map(|count| count as u32);
    let limit = read("limit").map(|count| count as u32);
    let unusable =
        |field| Finding::new(Code::KitUnusable, Part::Kit, sheet.id, field).with("name", sheet.name.as_str());
    for field in ["label_yield", "price"] {
        if entry(&sheet.entries, field).is_none() {
            reader.say(unusable(field));
        }
    }
    let (label, factor, loss) = (label?, factor?, loss?);
    let after_factor = label * factor / 100.0;
    let usable = (after_factor - loss).max(0.0);
    if usable <= 0.0 {
        reader.say(unusable("label_yield"));
    }
    let density_lb_ft3 = foam.and_then(|foam| foam.density);
    let needs_lb = density_lb_ft3.map(|density| Pounds(label * density.0 / 12.0));
    if let (Some(needs), Some(has)) = (needs_lb, net_weight_lb)
        && needs.0 > has.0 * (1.0 + LABELS_ROUND)
    {
        let finding = Finding::new(Code::MassShort, Part::Kit, sheet.id, "net_weight")
            .with("name", sheet.name.as_str())
            .with("label", crate::measure::decimal(label, 0))
            .with("need", reader.figure(Kind::Weight, needs.0))
            .with("given", reader.figure(Kind::Weight, has.0));
        reader.say(finding);
    }
    Some(KitSize {
        kit: sheet.id,
        label: BoardFeet(label),
        factor_pct: factor,
        after_factor: BoardFeet(after_factor),
        fixed_loss: BoardFeet(loss),
        usable: BoardFeet(usable),
        price,
        limit,
        net_weight_lb,
        density_lb_ft3,
        needs_lb,
        nozzles,
    })
}
