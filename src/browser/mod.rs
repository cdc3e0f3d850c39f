//! The boundary to the page: each export decodes, calls one room and encodes. No arithmetic here.
//!
//! A thrown error means that the page handed over a value of the wrong type: a fault of the page, never of
//! the person. What a person may get wrong comes back as data.

mod opening;
mod shelf;
mod trap;

use crate::Estimate;
use crate::job::{Field, Job, Now, Reader};
use crate::measure::{Echo, Kind, Sense, Style, Unit, Units};
use crate::surfaces::{Outline, ShapeForm};
use crate::working::Step;
use tsify::{Ts, Tsify};
use wasm_bindgen::prelude::*;

/// Works out a whole job as of an instant.
#[wasm_bindgen]
pub fn estimate(job: Ts<Job>, now: Ts<Now>) -> Result<Ts<Estimate>, JsError> {
    Ok(crate::estimate(&job.to_rust()?, now.to_rust()?).into_ts()?)
}

/// What a text in a box would be read as, for the line beside it: `unit` is the box's, `sense` the meaning
/// pressed, `units` the job's.
#[wasm_bindgen]
pub fn read(
    text: &str,
    kind: Ts<Kind>,
    unit: Ts<Unit>,
    sense: Option<Ts<Sense>>,
    units: Ts<Units>,
) -> Result<Ts<Echo>, JsError> {
    let sense = sense.map(|sense| sense.to_rust()).transpose()?;
    Ok(crate::measure::echo(text, kind.to_rust()?, unit.to_rust()?, sense, units.to_rust()?).into_ts()?)
}

/// Writes a value, held in the unit of its kind, in a style.
#[wasm_bindgen]
pub fn write(kind: Ts<Kind>, value: f64, style: Ts<Style>) -> Result<String, JsError> {
    Ok(crate::measure::write(kind.to_rust()?, value, style.to_rust()?))
}

/// The drawing of a surface, in inches; undefined while its area is not known or no surface has this id.
#[wasm_bindgen]
pub fn outline(job: Ts<Job>, surface_id: u32) -> Result<Option<Ts<Outline>>, JsError> {
    let job = job.to_rust()?;
    let mut reader = Reader::new(job.units);
    let surface = job.surfaces.iter().find(|surface| surface.id == surface_id);
    let outline = surface.and_then(|surface| crate::surfaces::outline(surface, &mut reader));
    Ok(outline.map(|outline| outline.into_ts()).transpose()?)
}

/// Every step of the working, in the order in which the work is done.
#[wasm_bindgen]
pub fn steps() -> Result<Vec<Ts<Step>>, JsError> {
    table(crate::working::steps())
}

/// What each shape asks for.
#[wasm_bindgen]
pub fn forms() -> Result<Vec<Ts<ShapeForm>>, JsError> {
    table(crate::surfaces::forms())
}

/// The table of fields: unit, limits and default of every box.
#[wasm_bindgen]
pub fn fields() -> Result<Vec<Ts<Field>>, JsError> {
    table(crate::job::fields())
}

fn table<T: Tsify + serde::Serialize>(rows: &[T]) -> Result<Vec<Ts<T>>, JsError> {
    rows.iter().map(|row| Ok(Ts::from_rust(row)?)).collect()
}
