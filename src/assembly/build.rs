//! From what was entered to what a surface is built of.

use super::materials::{material, nature};
use super::{Build, LayerR, Position};
use crate::climate::Component;
use crate::findings::{Code, Finding};
use crate::job::{Layer, Part, Reader, Surface, entry};
use crate::measure::{Inches, RValue};
use crate::surfaces::{FramingBy, SurfaceArea};

/// Reads what a surface is built of; `None` where it has no layers, or where one of them is not complete: half of
/// what stands there would be taken for the whole.
///
/// The framing share is the one that was typed, else the counted one; of a range the larger. A wall of masonry
/// or a basement's has none unless one was said. The cavity is as deep as was typed, else as its members; of a
/// range the shallowest.
pub fn build(
    surface: &Surface,
    component: Option<Component>,
    area: Option<&SurfaceArea>,
    reader: &mut Reader,
) -> Option<Build> {
    if surface.layers.is_empty() {
        return None;
    }
    let mut read = Vec::with_capacity(surface.layers.len());
    for one in &surface.layers {
        let Some(new) = layer(one, reader) else { continue };
        // Outside, cavity, inside: the order within each is the one in which they were entered.
        let at = read.partition_point(|known: &LayerR| known.position as u8 <= new.position as u8);
        read.insert(at, new);
    }
    let mut word = |field| reader.choice(Part::Surface, surface.id, &surface.entries, field);
    let (runs, over_edges) = (word("runs"), word("over_edges") == Some("yes"));
    let steel = word("framing") == Some("steel");
    let across = runs == Some("across");
    if steel {
        reader.say(Finding::new(Code::SteelFraming, Part::Surface, surface.id, "framing"));
    }
    let filled = read.iter().any(|one| one.position == Position::Cavity);
    let bare = across && !filled;
    let mut framing_share = if bare { Some(0.0) } else { share(surface, area, reader) };
    if framing_share.is_none() && runs.is_none() && !filled && plain(component) {
        framing_share = Some(0.0);
    }
    if framing_share.is_none() && !steel {
        reader.say(Finding::new(Code::ShareNotSaid, Part::Surface, surface.id, "framing_share"));
    }
    // What cannot be read here is said where the depth is chosen.
    let cavity = Reader::new(reader.units).take(Part::Surface, surface.id, &surface.entries, "cavity");
    let member_in = cavity.map(|taken| Inches(taken.value.low)).or(area.and_then(|area| area.cavity_in));
    let whole_r = reader.take(Part::Surface, surface.id, &surface.entries, "whole_r");
    let (outside_film, inside_film) = films(component);
    let remembered = |one: &Layer| {
        let made_of = entry(&one.entries, "made_of").map_or("", |word| word.text.trim());
        entry(&one.entries, "layer_r").is_none() && FROM_MEMORY.contains(&made_of)
    };
    let from_memory = (outside_film, inside_film) != READ_FILMS || surface.layers.iter().any(remembered);
    (read.len() == surface.layers.len()).then_some(Build {
        layers: read,
        outside_film: RValue(outside_film),
        inside_film: RValue(inside_film),
        framing_share,
        from_memory,
        member_in,
        steel,
        across,
        over_edges,
        whole_r: whole_r.map(|taken| RValue(taken.value.high)),
        from_outside: matches!(component, Some(Component::AtticFloor | Component::Floor)),
    })
}

/// The films of a wall: those that were read.
const READ_FILMS: (f64, f64) = (0.17, 0.68);
/// The materials whose published R is from memory.
const FROM_MEMORY: &[&str] = &["gypsum_3_8", "gypsum_5_8", "face_brick"];

/// R of the films of air outside and inside, by where the heat of the cold season goes: level 0.68, up 0.61,
/// down 0.92, outside in wind 0.17; an attic above a ceiling and a crawlspace below a floor hold still air. Soil
/// against a wall counts for nothing. Where nobody has said what it is, the least of each.
///
/// Source: ASHRAE Handbook—Fundamentals; 0.68 and 0.17 read in a public copy, the others from memory.
fn films(component: Option<Component>) -> (f64, f64) {
    use Component as C;
    match component {
        Some(C::AtticFloor) => (0.61, 0.61),
        Some(C::RoofDeck) => (0.17, 0.61),
        Some(C::Floor) => (0.92, 0.92),
        Some(C::Wall | C::Rim | C::MassWallInside | C::MassWallOutside | C::BasementWall | C::CrawlWall) => {
            READ_FILMS
        }
        Some(C::ColdRoom | C::Other) | None => (0.17, 0.61),
    }
}

/// Whether a surface is a wall without members unless something else is said.
fn plain(component: Option<Component>) -> bool {
    use Component as C;
    matches!(component, Some(C::MassWallInside | C::MassWallOutside | C::BasementWall | C::CrawlWall))
}

/// The share that members take, 0 to 1.
fn share(surface: &Surface, area: Option<&SurfaceArea>, reader: &mut Reader) -> Option<f64> {
    if let Some(area) = area.filter(|area| area.framing_by != FramingBy::Nothing) {
        return Some(area.framing_share_pct.high / 100.0);
    }
    let name = "framing_share";
    // Where framing is to be taken out of the area, that has said by now what cannot be read.
    let silent = surface.deduct_framing && area.is_none();
    let mut quiet = Reader::new(reader.units);
    let reader = if silent { &mut quiet } else { reader };
    Some(reader.take(Part::Surface, surface.id, &surface.entries, name)?.value.high / 100.0)
}

/// Reads one layer. R from its label wins over what is published for its material; of a range the lower counts.
fn layer(layer: &Layer, reader: &mut Reader) -> Option<LayerR> {
    let entries = &layer.entries;
    let mut word = |field| {
        if entry(entries, field).is_none() {
            reader.say(Finding::new(Code::Needed, Part::Layer, layer.id, field));
        }
        reader.choice(Part::Layer, layer.id, entries, field)
    };
    let (name, position) = (word("made_of"), word("position"));
    let mut typed = |field| reader.take(Part::Layer, layer.id, entries, field).map(|taken| taken.value.low);
    let (label, thickness) = (typed("layer_r"), typed("thickness"));
    let name = name?;
    let published = material(name);
    let per_in = published.and_then(|one| one.r_per_in);
    let whole = published.and_then(|one| one.r);
    let by_thickness = per_in.zip(thickness).map(|(per_in, inches)| per_in * inches);
    let r = if entry(entries, "layer_r").is_some() { label } else { by_thickness.or(whole) };
    // Without either, its R stands on its label or goes with its thickness.
    let lacks = if per_in.is_some() { "thickness" } else { "layer_r" };
    if r.is_none() && entry(entries, "layer_r").is_none() && entry(entries, lacks).is_none() {
        reader.say(Finding::new(Code::Needed, Part::Layer, layer.id, lacks));
    }
    let position = match position? {
        "outside" => Position::Outside,
        "cavity" => Position::Cavity,
        _ => Position::Inside,
    };
    let (insulation, airy) = nature(name);
    Some(LayerR {
        id: layer.id,
        material: name,
        position,
        thickness_in: thickness.or(published.and_then(|one| one.thickness_in)).map(Inches),
        r: RValue(r?),
        insulation,
        airy,
    })
}
