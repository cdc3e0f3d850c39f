//! Bringing a slab, a wall or sheathing to temperature with warm air under a tent: an order of magnitude.
//!
//! One face in air that is held warm, the other side giving nothing off: mean temperature of a plate behind a film,
//! τ = ρ c L (1/h + L/3k), the lumped form with a third of the plate's own resistance (within a few percent of the
//! exact series). What soaks away into ground or to the far side makes it longer.

use super::HeatPlan;
use super::surfaces::{BRICK, CONCRETE};
use crate::job::{End, Job, Part, Reader};
use crate::measure::{Fahrenheit, SquareFeet};

/// Film between warm air and a face, in W/m²·K.
const FILM: f64 = 8.0;
/// Heat through one sheet of tent and its two films, in Btu/h·ft²·°F; from memory.
const SHEET_U: f64 = 1.2;
/// Board and steel in SI, and how thick they are where nobody says, in inches; from memory.
const BOARD: [f64; 3] = [0.13, 650.0, 1_600.0];
const STEEL: [f64; 3] = [50.0, 7_850.0, 490.0];
const BOARD_IN: f64 = 0.4375;
const STEEL_IN: f64 = 0.0625;
/// Meters in an inch; square meters in a square foot; joules in a Btu; exact or by the international table.
const INCH_M: f64 = 0.0254;
const FOOT2_M2: f64 = 0.092_903_04;
const BTU_J: f64 = 1_055.055_852_62;

/// The plan, where it was asked for and everything that it needs is there.
pub(super) fn plan(job: &Job, brick: bool, to_f: Fahrenheit, reader: &mut Reader) -> Option<HeatPlan> {
    let what = reader.choice(Part::Job, 0, &job.entries, "heat_what")?;
    let (body, usual_in) = match what {
        "sheathing" => (BOARD, Some(BOARD_IN)),
        "steel" => (STEEL, Some(STEEL_IN)),
        "masonry" if brick => (BRICK, None),
        _ => (CONCRETE, None),
    };
    // Of a range the end with which it takes longer.
    let mut need = |field, end: End, blank: Option<f64>| {
        let taken = match blank {
            Some(_) => reader.take(Part::Job, 0, &job.entries, field),
            None => reader.need(Part::Job, 0, &job.entries, field),
        };
        taken.map(|taken| end(taken.value)).or(blank)
    };
    let (cold, much): (End, End) = (|band| band.low, |band| band.high);
    let (area, thick) = (need("heat_area", much, None), need("heat_thickness", much, usual_in));
    let (from_f, air_f) = (need("heat_from", cold, None), need("heat_air", cold, None));
    let (outside_f, tent) = (need("heat_outside", cold, None), need("tent_area", much, None));
    let (area, thick, from_f, air_f, outside_f, tent) = (area?, thick?, from_f?, air_f?, outside_f?, tent?);
    if area <= 0.0 {
        return None;
    }
    let area_m2 = area * FOOT2_M2;
    let [takes, passes] = plate(body, thick * INCH_M).map(|si| si * area_m2 / 1.8 / BTU_J);
    let passes_btu_hr = passes * 3_600.0;
    let rise = to_f.0 - from_f;
    let stored_btu = takes * if rise > 0.0 { rise } else { 0.0 };
    let over = air_f - outside_f;
    let lost_btu_hr = SHEET_U * tent * if over > 0.0 { over } else { 0.0 };
    let hours = turns(from_f, to_f.0, air_f).map(|turns| turns * takes / passes_btu_hr);
    let power_btu_hr = hours.map(|hours| lost_btu_hr + if hours > 0.0 { stored_btu / hours } else { 0.0 });
    Some(HeatPlan {
        to_f,
        from_f: Fahrenheit(from_f),
        air_f: Fahrenheit(air_f),
        outside_f: Fahrenheit(outside_f),
        tent_ft2: SquareFeet(tent),
        takes_btu: takes,
        passes_btu_hr,
        stored_btu,
        lost_btu_hr,
        hours,
        power_btu_hr,
    })
}

/// What a square meter of plate takes to be warmer by a kelvin, in J, and what goes into it for each kelvin, in W.
pub(super) fn plate([k, density, heat]: [f64; 3], thick_m: f64) -> [f64; 2] {
    [density * heat * thick_m, 1.0 / (1.0 / FILM + thick_m / (3.0 * k))]
}

/// How many time constants it takes in air that is held at a temperature; none where that is too cool.
pub(super) fn turns(from_f: f64, to_f: f64, air_f: f64) -> Option<f64> {
    if from_f >= to_f {
        return Some(0.0);
    }
    (air_f > to_f).then(|| libm::log((air_f - from_f) / (air_f - to_f)))
}
