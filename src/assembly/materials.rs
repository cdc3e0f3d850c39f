//! Published resistances of what buildings are made of.

/// A material with a published resistance.
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
    /// Whether it counts as insulation to the code's R-value table.
    pub insulation: bool,
    /// Whether air passes through it.
    pub airy: bool,
}

/// The material of a word of the table of fields; `None` for one whose R is typed from its label.
pub fn material(_name: &str) -> Option<&'static Material> {
    None
}
