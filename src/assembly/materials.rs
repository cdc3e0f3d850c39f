//! Published resistances of what buildings are made of.

/// A material with a published resistance. All R in °F·ft²·h/Btu.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Material {
    /// Its word in the table of fields.
    pub name: &'static str,
    /// R of the piece as it is sold, where it has a thickness of its own.
    pub r: Option<f64>,
    /// The thickness that this R belongs to, in inches.
    pub thickness_in: Option<f64>,
    /// R of an inch, where it is cut to any thickness.
    pub r_per_in: Option<f64>,
}

/// R of an inch of softwood across the grain, as of framing: 1.22 to 1.35 in public tables (read), of which 1.25
/// gives 4.38 for a 2x4 and 6.875 for a 2x6, the figures of published example walls.
pub const SOFTWOOD_R_IN: f64 = 1.25;

/// A board or a leaf whose R goes with its thickness: that of the piece as it is sold, in proportion for another.
const fn board(name: &'static str, r: f64, thickness_in: f64) -> Material {
    Material { name, r: Some(r), thickness_in: Some(thickness_in), r_per_in: Some(r / thickness_in) }
}

/// A piece whose R is that of the whole: tapered, hollow or lapped, or too thin to measure.
const fn piece(name: &'static str, r: f64) -> Material {
    Material { name, r: Some(r), thickness_in: None, r_per_in: None }
}

/// What is cut or laid to any thickness.
const fn by_inch(name: &'static str, r_per_in: f64) -> Material {
    Material { name, r: None, thickness_in: None, r_per_in: Some(r_per_in) }
}

/// Every material whose R is published, in the order of the table of fields. Of a published range the careful end
/// counts. "Read" was read in a public copy; "from memory" is of the ASHRAE Handbook—Fundamentals.
///
/// | material | R | from |
/// |---|---|---|
/// | gypsum board ½ in | 0.45 | read: ASHRAE Handbook—Fundamentals 1997, chapter 24 |
/// | gypsum board ⅜ and ⅝ in | 0.32, 0.56 | from memory, high confidence |
/// | plywood ½ in | 0.62 | read: the same chapter (1.24 to 1.25 an inch) |
/// | OSB 7/16 in | 0.62 | read: an industry association's example wall |
/// | fiberboard ½ in, regular density | 1.32 | read: the same chapter |
/// | softwood, an inch | 1.25 | read: [`SOFTWOOD_R_IN`] |
/// | hardwood, an inch | 0.89 | read: 0.89 to 1.00 |
/// | wood bevel siding ½ by 8 in, lapped | 0.80 | read: 0.80 to 0.81 |
/// | hollow-backed metal or vinyl siding | 0.62 | read: 0.61 to 0.62; 0.62 in the example walls that meet the code's U |
/// | stucco, an inch | 0.20 | read |
/// | face brick 4 in | 0.44 | from memory, middling confidence |
/// | common brick, an inch | 0.11 | read: 0.20 at 90, 0.11 at 120 lb/ft³, under labels that contradict each other |
/// | concrete 140 to 150 lb/ft³, an inch | 0.07 | read: 0.07 to 0.09 |
/// | block of normal weight 8 in, empty | 0.97 | read: 0.97 to 1.11 |
/// | asphalt shingles, building paper | 0.44, 0.06 | read |
const PUBLISHED: &[Material] = &[
    board("gypsum_3_8", 0.32, 0.375),
    board("gypsum_1_2", 0.45, 0.5),
    board("gypsum_5_8", 0.56, 0.625),
    board("plywood_1_2", 0.62, 0.5),
    board("osb_7_16", 0.62, 0.4375),
    board("fiberboard_1_2", 1.32, 0.5),
    by_inch("softwood", SOFTWOOD_R_IN),
    by_inch("hardwood", 0.89),
    piece("bevel_siding", 0.80),
    piece("hollow_siding", 0.62),
    by_inch("stucco", 0.20),
    board("face_brick", 0.44, 4.0),
    by_inch("common_brick", 0.11),
    by_inch("concrete", 0.07),
    piece("block_8", 0.97),
    piece("shingles", 0.44),
    piece("building_paper", 0.06),
];

/// The material of a word of the table of fields; `None` for one whose R is typed from its label.
pub fn material(name: &str) -> Option<&'static Material> {
    PUBLISHED.iter().find(|one| one.name == name)
}

/// Whether what a word names counts as insulation to the code's R-value table, and whether air passes through it.
/// A layer typed as nothing but its R counts as neither: no row is met by what nobody has named.
pub(super) fn nature(name: &str) -> (bool, bool) {
    match name {
        "batt" | "loose_fill" => (true, true),
        "rigid_board" | "second_foam" => (true, false),
        _ => (false, false),
    }
}
