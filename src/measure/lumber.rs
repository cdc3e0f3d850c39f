//! Nominal lumber: what a 2x6 really measures.

use super::Ratio;

/// The dry dressed size, in inches, of a nominal pair (`2`, `6` → 1½, 5½), in the order given.
///
/// American Softwood Lumber Standard PS 20, minimum dressed dry sizes, from memory; it feeds a drawing and
/// an area that the person can overtype, never a stop. Pieces of nominal 5 in and more on the narrow side are
/// timbers, dressed half an inch off. `None` for a pair that is not sold under such a name.
pub(super) fn dressed(first: Ratio, second: Ratio) -> Option<(Ratio, Ratio)> {
    let timber = first >= Ratio::whole(5) && second >= Ratio::whole(5);
    Some((side(first, timber)?, side(second, timber)?))
}

fn side(nominal: Ratio, timber: bool) -> Option<Ratio> {
    let quarters_off = [(1, 1), (2, 2), (3, 2), (4, 2), (5, 2), (6, 2), (8, 3), (10, 3), (12, 3)]
        .iter()
        .find_map(|&(size, off)| (nominal == Ratio::whole(size)).then_some(off))?;
    nominal.minus(Ratio::new(if timber { 2 } else { quarters_off }, 4)?)
}
