//! The cylinder that is counted with: a generic size, or what was measured.

use super::Cylinder;
use crate::job::{Job, Part, Reader, Warming};
use crate::measure::{Band, Inches, Pounds};
use core::f64::consts::PI;

/// Word, diameter and height in inches, liquid in pounds. Generic disposable gas cylinders, nobody's: own judgement.
const SIZES: [(&str, f64, f64, f64); 4] = [
    ("small", 7.0, 10.0, 6.0),
    ("medium", 9.5, 13.0, 16.0),
    ("large", 12.0, 17.0, 25.0),
    ("xl", 12.0, 18.0, 45.0),
];

/// Pounds of foam in a cubic foot, where a kit's yield has to stand in for its weight: 1.75 lb/ft³ ÷ 12 a board foot,
/// half of it in each of the two cylinders.
const LB_PER_BDFT: f64 = 1.75 / 12.0 / 2.0;

const METER: f64 = 0.0254;
const KILOGRAM: f64 = 0.453_592_37;

/// The steel wall: 1.2 mm at 7 850 kg/m³. Disposable gas cylinders, own judgement.
const STEEL_KG_M2: f64 = 0.0012 * 7_850.0;

/// Density of the liquid in kg/m³: between generic polymeric MDI (1 230, a public data sheet) and polyol blends (1 110,
/// from memory).
pub(super) const LIQUID_KG_M3: f64 = 1_170.0;

/// A cylinder in SI units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Body {
    /// Radius in m.
    pub radius: f64,
    /// Height in m.
    pub height: f64,
    /// Liquid in kg.
    pub liquid: f64,
    /// Steel in kg.
    pub steel: f64,
    /// Cross-section in m².
    pub section: f64,
}

impl Body {
    /// From what a tape and a label say, in inches and pounds.
    pub fn new(diameter_in: f64, height_in: f64, liquid_lb: f64) -> Self {
        let (radius, height) = (diameter_in * METER / 2.0, height_in * METER);
        let section = PI * radius * radius;
        let steel = STEEL_KG_M2 * 2.0 * (PI * radius * height + section);
        Self { radius, height, liquid: liquid_lb * KILOGRAM, steel, section }
    }

    /// How high the liquid stands, in m.
    pub fn level(&self) -> f64 {
        self.liquid / (LIQUID_KG_M3 * self.section)
    }
}

/// The cylinder of a group: the size that was pressed, or else the one that the largest kit's weight asks for, next size
/// up; each measure that was typed stands in for the size's own.
pub(super) fn cylinder(job: &Job, group: &Warming, reader: &mut Reader) -> Cylinder {
    let mut typed =
        |name| reader.take(Part::Warming, group.id, &group.entries, name).map(|taken| taken.value.likely);
    let (diameter, height, liquid) = (typed("diameter"), typed("height"), typed("liquid"));
    let pressed = reader.choice(Part::Warming, group.id, &group.entries, "cylinder");
    let heaviest = liquid.unwrap_or_else(|| largest(job, reader.units));
    let size =
        SIZES.iter().find(|one| pressed.map_or(one.3 >= heaviest, |word| word == one.0)).or(SIZES.last());
    let (word, d, h, lb) = size.copied().unwrap_or_default();
    let measured = diameter.is_some() && height.is_some() && liquid.is_some();
    Cylinder {
        size: Some(word).filter(|_| !measured),
        assumed: pressed.is_none() && !measured,
        diameter_in: Inches(diameter.unwrap_or(d)),
        height_in: Inches(height.unwrap_or(h)),
        liquid_lb: Pounds(liquid.unwrap_or(lb)),
    }
}

/// Pounds of liquid in one cylinder of the largest kit of the job: half of what a carton says, what a cylinder's own
/// label says, or, where no weight is known, what the largest label yield needs at a usual density. A large one where
/// the job holds no kit.
fn largest(job: &Job, units: crate::measure::Units) -> f64 {
    // The sheets' own findings are said where they are read.
    let mut quiet = Reader::new(units);
    let (mut weight, mut by_yield) = (0.0_f64, 0.0_f64);
    for (part, sheets) in [(Part::Kit, &job.kits), (Part::Owned, &job.stock)] {
        for sheet in sheets {
            for (name, to_lb) in
                [("net_weight", 0.5), ("a_label", 1.0), ("b_label", 1.0), ("label_yield", LB_PER_BDFT)]
            {
                let one: Option<Band<f64>> =
                    quiet.take(part, sheet.id, &sheet.entries, name).map(|taken| taken.value);
                let most = if name == "label_yield" { &mut by_yield } else { &mut weight };
                *most = most.max(one.map_or(0.0, |band| band.likely * to_lb));
            }
        }
    }
    match (weight > 0.0, by_yield > 0.0) {
        (true, _) => weight,
        (_, true) => by_yield,
        _ => 25.0,
    }
}
