//! Where the job stands, and what the codes ask there: a place's climate zone, and the published tables with
//! their editions.
//!
//! | file | what it holds |
//! |---|---|
//! | `zone.rs` | the zones and how they are written |
//! | `places.rs` | ZIP code or county → zone, from a table that is fetched when it is first needed |
//! | `county_names.rs` | the names of that table's counties, and finding one by what is typed |
//! | `packed.rs` | how the numbers of that table are read |
//! | `degree_days.rs` | degree-days → zone, by the thresholds of either edition |
//! | `code.rs` | the energy code's R-values and U-factors by edition, zone and component |
//! | `retarder.rs` | vapor retarders on the room side, and the least R outside them |
//! | `unvented.rs` | unvented roofs: air-impermeable insulation under the deck |
//!
//! Model codes are adopted and amended state by state: nothing here says what is in force anywhere. Each value
//! carries its section, its edition and how far it is to be trusted; one from memory decides nothing.

mod code;
mod county_names;
mod degree_days;
mod packed;
mod places;
mod position;
mod retarder;
#[cfg(test)]
mod tests;
mod unvented;
mod zone;

use crate::job::{Job, Part, Reader};
use serde::Serialize;

pub use code::{
    ROption, RRow, SmallCeiling, URow, floor_fill, r_row, small_ceiling, u_row, warm_humid_frees,
};
pub use degree_days::{ByDegreeDays, by_degree_days};
pub use places::{Found, FoundCounty, find};
pub use position::position;
pub use retarder::{ClassThree, class_three, inner_class};
pub use unvented::{Unvented, unvented};
pub use zone::Zone;

/// Which printing of the model codes a table belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub enum Edition {
    /// The energy and residential codes of 2009.
    #[serde(rename = "2009")]
    Y2009,
    /// Those of 2012, 2015 and 2018, which agree in what is used here.
    #[serde(rename = "2012_2018")]
    Y2012To2018,
    /// Those of 2021.
    #[serde(rename = "2021")]
    Y2021,
    /// Those of 2024, as far as they are known.
    #[serde(rename = "2024")]
    Y2024,
}

impl Edition {
    /// The edition of a word of the table of fields.
    pub fn named(word: &str) -> Option<Self> {
        Some(match word {
            "2009" => Edition::Y2009,
            "2012_2018" => Edition::Y2012To2018,
            "2021" => Edition::Y2021,
            "2024" => Edition::Y2024,
            _ => return None,
        })
    }

    /// Whether the map of 2021 holds: about one county in ten moved with it, nearly all of them one zone warmer.
    pub fn newer_map(self) -> bool {
        matches!(self, Edition::Y2021 | Edition::Y2024)
    }
}

/// What is being done to the building.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Work {
    /// A new building.
    New,
    /// A new part of an old one.
    Addition,
    /// Work on a part that stands.
    Alteration,
    /// Insulation and nothing else.
    InsulationOnly,
}

/// What a surface is in the building.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Component {
    /// The floor of a vented attic: a ceiling to the code.
    AtticFloor,
    /// The underside of a roof deck without ventilation: a ceiling to the code.
    RoofDeck,
    /// A framed outer wall.
    Wall,
    /// The rim: a wall to the energy code.
    Rim,
    /// A masonry or concrete wall above grade, insulated on the room side.
    MassWallInside,
    /// The same, insulated outside.
    MassWallOutside,
    /// A floor over what is not heated.
    Floor,
    /// A basement wall.
    BasementWall,
    /// The wall of a crawlspace without vents.
    CrawlWall,
    /// A room that is kept colder than what is around it: its vapor moves inward, and no house table is for it.
    ColdRoom,
    /// Something that no table is for.
    Other,
}

impl Component {
    /// The component of a word of the table of fields.
    pub fn named(word: &str) -> Option<Self> {
        Some(match word {
            "attic_floor" => Component::AtticFloor,
            "roof_deck" => Component::RoofDeck,
            "wall" => Component::Wall,
            "rim" => Component::Rim,
            "mass_wall_inside" => Component::MassWallInside,
            "mass_wall_outside" => Component::MassWallOutside,
            "floor" => Component::Floor,
            "basement_wall" => Component::BasementWall,
            "crawl_wall" => Component::CrawlWall,
            "cold_room" => Component::ColdRoom,
            "other" => Component::Other,
            _ => return None,
        })
    }
}

/// Where the job stands, and by which book.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Place {
    /// What is being done; `None` while nobody has said.
    pub work: Option<Work>,
    /// The climate zone; `None` while nobody has said.
    pub zone: Option<Zone>,
    /// The edition; `None` while nobody has said.
    pub edition: Option<Edition>,
    /// Whether the place is among the code's warm-humid counties; `None` while nobody has said.
    pub warm_humid: Option<bool>,
    /// What typed degree-days say of the zone.
    pub by_degree_days: Option<ByDegreeDays>,
}

/// Reads where the job stands.
pub fn place(job: &Job, reader: &mut Reader) -> Place {
    let mut word = |field| reader.choice(Part::Job, 0, &job.entries, field);
    let work = word("work").map(|word| match word {
        "new" => Work::New,
        "addition" => Work::Addition,
        "alteration" => Work::Alteration,
        _ => Work::InsulationOnly,
    });
    let zone = word("zone").and_then(Zone::named);
    let edition = word("edition").and_then(Edition::named);
    let warm_humid = word("warm_humid").map(|word| word == "yes");
    Place { work, zone, edition, warm_humid, by_degree_days: by_degree_days(job, reader) }
}
