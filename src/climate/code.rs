//! The energy code's tables: least R and largest U-factor by edition, zone and component.
//!
//! Sources, of the model code only; a state adopts and amends it as it likes. R of 2021 and of 2012 to 2018: read
//! in a public guide of a national laboratory that prints the tables of 2009 to 2021 side by side, those up to 2018
//! also in a city's code text that agrees. Of 2009 the ceilings and the walls of zones 1 to 4 and 7 to 8 were read,
//! the rest is from memory. Of 2024 only what public notes on a state code built on it retell stands here, and it
//! counts as memory. U of 2021: ceiling, wall and floor as a public source file quotes them; all else from memory.
//! The residential code prints the same tables under N1102.1 with the same last figure.

use super::{Component, Edition, Zone};
use crate::findings::Trust;

/// One of the ways to satisfy a row: so much in the cavity and so much unbroken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ROption {
    /// R of what lies between members.
    pub cavity: f64,
    /// R of what runs unbroken across them.
    pub continuous: f64,
}

/// What the R-value table asks of a component.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RRow {
    /// Any one of these. A row of one plain figure may lie in the cavity or run unbroken.
    pub options: &'static [ROption],
    /// As the table prints it: `ci` is continuous insulation, `13+5ci` is both, `15/19` is continuous or cavity in
    /// a basement or crawlspace, and outside or inside on a mass wall.
    pub printed: &'static str,
    /// Its section.
    pub section: &'static str,
    /// Its edition, as printed beside a mark.
    pub edition: &'static str,
    /// How far it is to be trusted.
    pub trust: Trust,
}

/// What the U-factor table asks of a component.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct URow {
    /// The largest U-factor of the whole assembly, Btu/h·ft²·°F.
    pub most: f64,
    /// Its section.
    pub section: &'static str,
    /// Its edition.
    pub edition: &'static str,
    /// How far it is to be trusted.
    pub trust: Trust,
}

/// What is printed in a cell, and the ways to satisfy it.
struct Cell(&'static str, &'static [ROption]);

const fn of(cavity: f64, continuous: f64) -> ROption {
    ROption { cavity, continuous }
}

/// The columns of zones: 1, 2, 3, 4 except marine, 5 with marine 4, 6, 7 with 8.
type Zones<T> = [T; 7];

/// Cells of one figure, which may lie in the cavity or run unbroken.
macro_rules! plain {
    ($($name:ident $printed:literal $r:literal;)*) => {
        $(static $name: Cell = Cell($printed, &[of($r, 0.0), of(0.0, $r)]);)*
    };
}

plain! {
    R13 "13" 13.0; R19 "19" 19.0; R21 "21" 21.0; R30 "30" 30.0; R38 "38" 38.0; R49 "49" 49.0; R60 "60" 60.0;
    M3 "3/4" 3.0; M4 "4/6" 4.0; M5 "5/8" 5.0; M5A "5/10" 5.0; M8 "8/13" 8.0;
    M13 "13/17" 13.0; M15 "15/20" 15.0; M15A "15/19" 15.0; M19 "19/21" 19.0;
    I3 "3/4" 4.0; I4 "4/6" 6.0; I5 "5/8" 8.0; I5A "5/10" 10.0; I8 "8/13" 13.0;
    I13 "13/17" 17.0; I15 "15/20" 20.0; I15A "15/19" 19.0; I19 "19/21" 21.0;
}

static NONE: Cell = Cell("0", &[of(0.0, 0.0)]);
static W13: Cell = Cell("13 or 0+10ci", &[of(13.0, 0.0), of(0.0, 10.0)]);
static W20: Cell = Cell("20 or 13+5ci or 0+15ci", &[of(20.0, 0.0), of(13.0, 5.0), of(0.0, 15.0)]);
static W30: Cell =
    Cell("30 or 20+5ci or 13+10ci or 0+20ci", &[of(30.0, 0.0), of(20.0, 5.0), of(13.0, 10.0), of(0.0, 20.0)]);
static W20_13: Cell = Cell("20 or 13+5", &[of(20.0, 0.0), of(13.0, 5.0), of(0.0, 20.0)]);
static W20_5: Cell = Cell("20+5 or 13+10", &[of(20.0, 5.0), of(13.0, 10.0)]);
static F30: Cell = Cell("30 or 19+7.5ci or 20ci", &[of(30.0, 0.0), of(19.0, 7.5), of(0.0, 20.0)]);
static B5: Cell = Cell("5ci or 13", &[of(0.0, 5.0), of(13.0, 0.0)]);
static B10: Cell = Cell("10ci or 13", &[of(0.0, 10.0), of(13.0, 0.0)]);
static B15: Cell = Cell("15ci or 19 or 13+5ci", &[of(0.0, 15.0), of(19.0, 0.0), of(13.0, 5.0)]);
static B5_13: Cell = Cell("5/13", &[of(0.0, 5.0), of(13.0, 0.0)]);
static B10_13: Cell = Cell("10/13", &[of(0.0, 10.0), of(13.0, 0.0)]);
static B15_19: Cell = Cell("15/19", &[of(0.0, 15.0), of(19.0, 0.0)]);

/// The columns of an R-value table.
struct RTable {
    ceiling: Zones<&'static Cell>,
    wall: Zones<&'static Cell>,
    mass_outside: Zones<&'static Cell>,
    mass_inside: Zones<&'static Cell>,
    floor: Zones<&'static Cell>,
    basement: Zones<&'static Cell>,
    crawl: Zones<&'static Cell>,
}

static R_2021: RTable = RTable {
    ceiling: [&R30, &R49, &R49, &R60, &R60, &R60, &R60],
    wall: [&W13, &W13, &W20, &W30, &W30, &W30, &W30],
    mass_outside: [&M3, &M4, &M8, &M8, &M13, &M15, &M19],
    mass_inside: [&I3, &I4, &I8, &I8, &I13, &I15, &I19],
    floor: [&R13, &R13, &R19, &R19, &R30, &R30, &R38],
    basement: [&NONE, &NONE, &B5, &B10, &B15, &B15, &B15],
    crawl: [&NONE, &NONE, &B5, &B10, &B15, &B15, &B15],
};

static R_2018: RTable = RTable {
    ceiling: [&R30, &R38, &R38, &R49, &R49, &R49, &R49],
    wall: [&R13, &R13, &W20_13, &W20_13, &W20_13, &W20_5, &W20_5],
    mass_outside: [&M3, &M4, &M8, &M8, &M13, &M15, &M19],
    mass_inside: [&I3, &I4, &I8, &I8, &I13, &I15, &I19],
    floor: [&R13, &R13, &R19, &R19, &R30, &R30, &R38],
    basement: [&NONE, &NONE, &B5_13, &B10_13, &B15_19, &B15_19, &B15_19],
    crawl: [&NONE, &NONE, &B5_13, &B10_13, &B15_19, &B15_19, &B15_19],
};

static R_2009: RTable = RTable {
    ceiling: [&R30, &R30, &R30, &R38, &R38, &R49, &R49],
    wall: [&R13, &R13, &R13, &R13, &W20_13, &W20_13, &R21],
    mass_outside: [&M3, &M4, &M5, &M5A, &M13, &M15A, &M19],
    mass_inside: [&I3, &I4, &I5, &I5A, &I13, &I15A, &I19],
    floor: [&R13, &R13, &R19, &R19, &R30, &R30, &R38],
    basement: [&NONE, &NONE, &B5_13, &B10_13, &B10_13, &B15_19, &B15_19],
    crawl: [&NONE, &NONE, &B5_13, &B10_13, &B10_13, &B10_13, &B10_13],
};

/// The largest U-factors in thousandths of Btu/h·ft²·°F.
struct UTable {
    ceiling: Zones<u16>,
    wall: Zones<u16>,
}

static U_2021: UTable = UTable { ceiling: [35, 26, 26, 24, 24, 24, 24], wall: [84, 84, 60, 45, 45, 45, 45] };
/// Of 2015 and 2018; the walls of 2012 were a little stricter in warm zones. All from memory.
static U_2018: UTable = UTable { ceiling: [35, 30, 30, 26, 26, 26, 26], wall: [84, 84, 60, 60, 60, 45, 45] };
/// What both editions have alike.
const U_FLOOR: Zones<u16> = [64, 64, 47, 47, 33, 33, 28];
const U_MASS_OUTSIDE: Zones<u16> = [197, 165, 98, 98, 82, 60, 57];
/// Where more than half of the insulation is inside: the tables' note, from memory.
const U_MASS_INSIDE: Zones<u16> = [170, 140, 120, 87, 65, 57, 57];
const U_BASEMENT: Zones<u16> = [360, 360, 91, 59, 50, 50, 50];
const U_CRAWL: Zones<u16> = [477, 477, 136, 65, 55, 55, 55];

/// The column of a zone: marine 4 stands with 5, and 8 with 7.
fn column(zone: Zone) -> usize {
    match zone.number() {
        4 if zone.is_marine_4() => 4,
        number => usize::from(number.clamp(1, 7)) - 1,
    }
}

/// The row of the R-value table; `None` where the table has none for it, and of 2024 where it is not known.
///
/// A roof deck and an attic floor are ceilings to the code, a rim is a wall. R counts insulation alone, no films
/// and no boards.
pub fn r_row(edition: Edition, zone: Zone, component: Component) -> Option<RRow> {
    let at = column(zone);
    let (table, section, edition_name) = match edition {
        Edition::Y2009 => (&R_2009, "402.1.1", "IECC 2009"),
        Edition::Y2012To2018 => (&R_2018, "R402.1.2", "IECC 2018"),
        Edition::Y2021 => (&R_2021, "R402.1.3", "IECC 2021"),
        Edition::Y2024 => (&R_2021, "R402.1.3", "IECC 2024"),
    };
    let row = match component {
        Component::AtticFloor | Component::RoofDeck => &table.ceiling,
        Component::Wall | Component::Rim => &table.wall,
        Component::MassWallOutside => &table.mass_outside,
        Component::MassWallInside => &table.mass_inside,
        Component::Floor => &table.floor,
        Component::BasementWall => &table.basement,
        Component::CrawlWall => &table.crawl,
        Component::ColdRoom | Component::Other => return None,
    };
    let mut cell = *row.get(at)?;
    let trust = match (edition, component) {
        (Edition::Y2024, _) => {
            if !known_of_2024(component, at) {
                return None;
            }
            if component == Component::Floor {
                cell = &F30;
            }
            Trust::Memory
        }
        (Edition::Y2009, Component::AtticFloor | Component::RoofDeck) => Trust::Read,
        (Edition::Y2009, Component::Wall | Component::Rim) if !matches!(at, 4 | 5) => Trust::Read,
        (Edition::Y2009, _) => Trust::Memory,
        _ => Trust::Read,
    };
    Some(RRow { options: cell.1, printed: cell.0, section, edition: edition_name, trust })
}

/// What is known of 2024: walls of zones 4 to 6, floors, basements and crawlspaces of zones 5 and 6. Its ceilings
/// are told in two ways, so none stand here.
fn known_of_2024(component: Component, at: usize) -> bool {
    match component {
        Component::Wall | Component::Rim => (3..=5).contains(&at),
        Component::Floor | Component::BasementWall | Component::CrawlWall => (4..=5).contains(&at),
        _ => false,
    }
}

/// The row of the U-factor table; `None` where the table has none for it: of 2009 none was read, of 2024 little.
pub fn u_row(edition: Edition, zone: Zone, component: Component) -> Option<URow> {
    let at = column(zone);
    let (table, section, edition_name) = match edition {
        Edition::Y2009 => return None,
        Edition::Y2012To2018 => (&U_2018, "R402.1.4", "IECC 2018"),
        Edition::Y2021 => (&U_2021, "R402.1.2", "IECC 2021"),
        Edition::Y2024 if known_of_2024(component, at) => (&U_2021, "R402.1.2", "IECC 2024"),
        Edition::Y2024 => return None,
    };
    let (row, retold) = match component {
        Component::AtticFloor | Component::RoofDeck => (&table.ceiling, true),
        Component::Wall | Component::Rim => (&table.wall, true),
        Component::MassWallOutside => (&U_MASS_OUTSIDE, false),
        Component::MassWallInside => (&U_MASS_INSIDE, false),
        Component::Floor => (&U_FLOOR, true),
        Component::BasementWall => (&U_BASEMENT, false),
        Component::CrawlWall => (&U_CRAWL, false),
        Component::ColdRoom | Component::Other => return None,
    };
    let trust = if retold && edition == Edition::Y2021 { Trust::Retold } else { Trust::Memory };
    let most = f64::from(*row.get(at)?) / 1000.0;
    Some(URow { most, section, edition: edition_name, trust })
}

/// The least R of a floor that fills its framing cavity in place of its row, and how far that is to be trusted:
/// R-19, a note to; the note's words of 2021 and after are from memory.
pub fn floor_fill(edition: Edition) -> (f64, Trust) {
    (19.0, if edition.newer_map() { Trust::Memory } else { Trust::Read })
}

/// A small ceiling without an attic.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SmallCeiling {
    /// The least R that is then enough.
    pub least_r: f64,
    /// The largest area that it holds for, ft².
    pub most_ft2: f64,
    /// Its section.
    pub section: &'static str,
    /// How far R and area are to be trusted.
    pub trust: Trust,
}

/// R-30 for ceilings without an attic whose design leaves no room for more, up to 500 ft²: read in an article of
/// the code council on the residential code of 2018 (N1102.2.2, R402.2.2 here); other editions from memory.
/// That it holds for no more than a fifth of the insulated ceiling is from memory: the page says so, nothing is held to it.
pub fn small_ceiling(edition: Edition) -> SmallCeiling {
    let trust = if edition == Edition::Y2012To2018 { Trust::Read } else { Trust::Memory };
    SmallCeiling { least_r: 30.0, most_ft2: 500.0, section: "R402.2.2", trust }
}

/// Whether a warm-humid place owes no insulation on a wall below grade, and how far that is to be trusted: a note
/// to zone 3. Basement walls were read; on crawlspace walls the table of 2021 prints the same mark, but the note's
/// words speak of basements.
pub fn warm_humid_frees(edition: Edition, zone: Zone, component: Component) -> Option<Trust> {
    match (component, edition) {
        _ if zone.number() != 3 => None,
        (Component::BasementWall, Edition::Y2012To2018) => Some(Trust::Read),
        (Component::BasementWall, _) | (Component::CrawlWall, Edition::Y2021) => Some(Trust::Memory),
        _ => None,
    }
}
