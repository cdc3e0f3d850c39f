//! Rough stone, by pockets probed from a straightedge over its high points.

use super::Ground;
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, Surface, entry};
use crate::measure::Inches;

/// Reads pockets and what is done with them; `None` while something is missing, with a finding that says so.
///
/// Filled to a plane over the high points, the mean pocket is added to the depth all over. Where the foam follows the
/// stone at its least depth over the high points, the share typed for an uneven ground stands for the pockets: a
/// quarter is common practice and never assumed. Either way a pocket may close over as the foam rises, so the deepest
/// one rules the lifts.
pub(super) fn stone(surface: &Surface, mut ground: Ground, reader: &mut Reader) -> Option<Ground> {
    let (id, entries) = (surface.id, &surface.entries);
    let needed = |field| Finding::new(Code::Needed, Part::Surface, id, field);
    let way = reader.choice(Part::Surface, id, entries, "stone_way");
    let probed = entry(entries, "pockets").is_some();
    let pockets = if probed { Some(reader.take(Part::Surface, id, entries, "pockets")?.value) } else { None };
    if let Some(pockets) = pockets {
        ground.deepest_in = Inches(pockets.high);
    }
    match way {
        Some("fill") => match pockets {
            Some(pockets) => ground.pocket_in = Inches(pockets.likely),
            None => {
                reader.say(needed("pockets"));
                return None;
            }
        },
        Some(_) if ground.typed_pct.high <= 0.0 => {
            reader.say(Finding::new(Code::ContourNotCounted, Part::Surface, id, "uneven"));
        }
        Some(_) => {}
        None => {
            reader.say(needed("stone_way"));
            return None;
        }
    }
    ground.way = way.unwrap_or_default();
    Some(ground)
}
