//! The exports of the estimator: each decodes, calls one room and encodes. No arithmetic here.

use super::codec::{given, taken};
use crate::Estimate;
use crate::climate::Found;
use crate::conditioning::WarmCurves;
use crate::depth::ZoneDepth;
use crate::job::{Field, Job, Now, Reader};
use crate::measure::{Echo, Kind, Sense, Style, Unit, Units};
use crate::quantity::GroundForm;
use crate::surfaces::{Outline, ShapeForm};
use crate::weather::DayCurve;
use tsify::Ts;
use wasm_bindgen::prelude::*;

/// Works out a whole job as of an instant.
#[wasm_bindgen]
pub fn estimate(job: Ts<Job>, now: Ts<Now>) -> Result<Ts<Estimate>, JsError> {
    Ok(given(&crate::estimate(&taken(job)?, taken(now)?)))
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
    let sense = sense.map(taken).transpose()?;
    Ok(given(&crate::measure::echo(text, taken(kind)?, taken(unit)?, sense, taken(units)?)))
}

/// Writes a value, held in the unit of its kind, in a style.
#[wasm_bindgen]
pub fn write(kind: Ts<Kind>, value: f64, style: Ts<Style>) -> Result<String, JsError> {
    Ok(crate::measure::write(taken(kind)?, value, taken(style)?))
}

/// The drawing of a surface, in inches; undefined while its area is not known or no surface has this id.
#[wasm_bindgen]
pub fn outline(job: Ts<Job>, surface_id: u32) -> Result<Option<Ts<Outline>>, JsError> {
    let job: Job = taken(job)?;
    let mut reader = Reader::new(job.units);
    let surface = job.surfaces.iter().find(|surface| surface.id == surface_id);
    Ok(surface
        .and_then(|surface| crate::surfaces::outline(surface, &mut reader))
        .map(|outline| given(&outline)))
}

/// What the rules ask of a surface in every climate zone, warmest first.
#[wasm_bindgen]
pub fn depths_by_zone(job: Ts<Job>, surface_id: u32) -> Result<Vec<Ts<ZoneDepth>>, JsError> {
    let job: Job = taken(job)?;
    Ok(crate::depth::by_zone(&job, surface_id).iter().map(given).collect())
}

/// Looks a ZIP code or a county's name up in the packed tables; `counties` may be empty.
#[wasm_bindgen]
pub fn find_place(zones: &[u8], counties: &[u8], text: &str) -> Ts<Found> {
    given(&crate::climate::find(zones, counties, text))
}

/// About where a ZIP code lies: latitude and longitude in degrees north and east; nothing where it is not known.
#[wasm_bindgen]
pub fn find_position(places: &[u8], zip: &str) -> Vec<f64> {
    crate::climate::position(places, zip).map_or_else(Vec::new, |(north, east)| vec![north, east])
}

/// The warm-up and cool-down curves of one group of kits, to be drawn.
#[wasm_bindgen]
pub fn warm_curves(job: Ts<Job>, now: Ts<Now>, id: u32) -> Result<Option<Ts<WarmCurves>>, JsError> {
    Ok(crate::conditioning::curves(&taken(job)?, id, taken(now)?).map(|curves| given(&curves)))
}

/// The course of one day of the forecast, to be drawn.
#[wasm_bindgen]
pub fn day_curve(job: Ts<Job>, now: Ts<Now>, id: u32) -> Result<Option<Ts<DayCurve>>, JsError> {
    Ok(crate::weather::curve(&taken(job)?, id, taken(now)?).map(|curve| given(&curve)))
}

/// What each shape asks for.
#[wasm_bindgen]
pub fn forms() -> Vec<Ts<ShapeForm>> {
    crate::surfaces::forms().map(given).collect()
}

/// What each ground asks for.
#[wasm_bindgen]
pub fn grounds() -> Vec<Ts<GroundForm>> {
    crate::quantity::grounds().map(given).collect()
}

/// The table of fields: unit, limits and default of every box.
#[wasm_bindgen]
pub fn fields() -> Vec<Ts<Field>> {
    crate::job::fields().iter().map(given).collect()
}
