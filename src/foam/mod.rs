//! A foam's data sheet: R by tested thickness, density, temperature windows, lifts and waits.
//!
//! Every product rule is a default of the sheet and can be edited on the page: the label on the carton
//! governs. A blank is a blank and never counts as a pass.

mod listed;
#[cfg(test)]
mod tests;

use crate::findings::{Code, Finding};
use crate::job::{FoamSheet, Part, Reader, Taken};
use crate::measure::{Band, Fahrenheit, Inches, Kind, Minutes, PoundsPerCubicFoot, RValue};
use serde::Serialize;

pub use listed::Between;

/// A window of temperature, both ends belonging to it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Window {
    /// The least.
    pub least_f: Fahrenheit,
    /// The most.
    pub most_f: Fahrenheit,
    /// Whether either end is the tool's default, the sheet being silent.
    pub default: bool,
}

/// R at a thickness that was tested.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ListedR {
    /// The thickness.
    pub thickness_in: Inches,
    /// The R that the sheet lists for it.
    pub r: RValue,
}

/// A foam sheet as read.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Foam {
    /// The sheet's id in the job.
    pub id: u32,
    /// R by thickness, thinnest first, each thickness once.
    pub listed: Vec<ListedR>,
    /// Density in place, if the sheet says.
    pub density: Option<PoundsPerCubicFoot>,
    /// The same with both ends, for rules that limit it.
    pub density_range: Option<Band<PoundsPerCubicFoot>>,
    /// Flame spread index, if the sheet says; of a range the upper end.
    pub flame: Option<f64>,
    /// Smoke developed index, if the sheet says; of a range the upper end.
    pub smoke: Option<f64>,
    /// The thickness at which both were tested, if the sheet says; of a range the lower end.
    pub tested_in: Option<Inches>,
    /// Its permeance at 1 in, in perms, if the sheet says; of a range the upper end. At d inches it is this ÷ d.
    pub permeance_1_in: Option<f64>,
    /// Chemical temperature window, both cylinders.
    pub cylinder: Window,
    /// Air temperature window.
    pub air: Window,
    /// Surface temperature window.
    pub surface: Window,
    /// The thickest lift.
    pub largest_lift_in: Inches,
    /// The thinnest lift.
    pub least_lift_in: Inches,
    /// Waiting time between lifts that the label asks for, if it does.
    pub wait_min: Option<Minutes>,
    /// Cure time that the label asks for, if it does.
    pub cure_min: Option<Minutes>,
    /// Hours in the warm room that the label asks for, counted from when the kit entered it.
    pub conditioning_min: Minutes,
    /// Hours before anybody goes back in that the label asks for, if it does. Never a clearance.
    pub reentry_min: Option<Minutes>,
    /// The same before workers without protection go back in.
    pub reentry_workers_min: Option<Minutes>,
}

/// Reads a foam sheet. What cannot be read leaves a finding and falls back to the default, or to a blank.
///
/// Where a range was typed the stricter end counts: the higher of a least, the lower of a most, the longer
/// wait. A window whose least is above its most leaves a finding and is kept as typed: nothing lies inside.
/// `None` only if the table of fields had no default for a lift or a window, which a test rules out.
pub fn sheet(sheet: &FoamSheet, reader: &mut Reader) -> Option<Foam> {
    let mut window = |least: &str, most: &str| -> Option<Window> {
        let (low, high) = limits(sheet, least, most, Kind::Temperature, reader)?;
        Some(Window {
            least_f: Fahrenheit(low.value.high),
            most_f: Fahrenheit(high.value.low),
            default: low.default || high.default,
        })
    };
    let cylinder = window("cylinder_least", "cylinder_most")?;
    let air = window("air_least", "air_most")?;
    let surface = window("surface_least", "surface_most")?;
    let (least_lift, largest_lift) = limits(sheet, "least_lift", "largest_lift", Kind::Length, reader)?;
    let held = or_default(sheet, "conditioning", reader)?;
    let mut blank = |name| reader.take(Part::Foam, sheet.id, &sheet.entries, name).map(|taken| taken.value);
    let density_range = blank("density").map(|value| value.map(PoundsPerCubicFoot));
    let density = density_range.map(|value| value.likely);
    let (flame, smoke) = (blank("flame").map(|value| value.high), blank("smoke").map(|value| value.high));
    let tested_in = blank("tested_thickness").map(|value| Inches(value.low));
    let permeance_1_in = blank("permeance").map(|value| value.high);
    let wait_min = blank("wait").map(|value| Minutes(value.high));
    let cure_min = blank("cure").map(|value| Minutes(value.high));
    let reentry_min = blank("reentry").map(|value| Minutes(value.high));
    let reentry_workers_min = blank("reentry_workers").map(|value| Minutes(value.high));
    Some(Foam {
        id: sheet.id,
        listed: listed::rows(sheet, reader),
        density,
        density_range,
        flame,
        smoke,
        tested_in,
        permeance_1_in,
        cylinder,
        air,
        surface,
        largest_lift_in: Inches(largest_lift.value.low),
        least_lift_in: Inches(least_lift.value.high),
        wait_min,
        cure_min,
        conditioning_min: Minutes(held.value.high),
        reentry_min,
        reentry_workers_min,
    })
}

/// A least and a most that belong together, with a finding where they cross.
fn limits(
    sheet: &FoamSheet,
    least: &str,
    most: &str,
    kind: Kind,
    reader: &mut Reader,
) -> Option<(Taken, Taken)> {
    let (low, high) = (or_default(sheet, least, reader)?, or_default(sheet, most, reader)?);
    if low.value.high > high.value.low {
        let finding = Finding::new(Code::WindowCrossed, Part::Foam, sheet.id, least)
            .with("least", reader.figure(kind, low.value.high))
            .with("most", reader.figure(kind, high.value.low));
        reader.say(finding);
    }
    Some((low, high))
}

/// What a field says. A text that cannot be taken has its finding by then: the default holds, as for a blank.
fn or_default(sheet: &FoamSheet, name: &str, reader: &mut Reader) -> Option<Taken> {
    let typed = reader.take(Part::Foam, sheet.id, &sheet.entries, name);
    typed.or_else(|| reader.take(Part::Foam, sheet.id, &[], name))
}
