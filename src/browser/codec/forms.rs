//! The types that are read from JavaScript, field by field. Which fields must be there is what their `serde`
//! attributes say to the host; that both read the same is held by every job of `tests/jobs/`.

use super::decode::{Decode, Object, unknown, word};
use crate::job::document::Head;
use crate::job::{
    ChosenPurchase, DepthWay, Entered, Event, EventOf, FoamSheet, ForecastDay, Job, KitCount, KitSheet,
    Layer, Leg, Now, Opening, Patch, RAtThickness, ReadingOf, Shape, SiteReading, Surface, WarmReading,
    Warming,
};
use crate::measure::{Kind, Sense, Style, Unit, Units};
use wasm_bindgen::JsValue;

/// A struct: the fields that must be there; the fields that may be left out.
macro_rules! structs {
    ($($name:ident { $($needed:ident)*; $($may:ident)* })*) => {$(
        impl Decode for $name {
            fn decode(value: &JsValue) -> Self {
                let object = Object::new(value);
                Self {
                    $($needed: object.needed(stringify!($needed)),)*
                    $($may: object.may(stringify!($may)),)*
                }
            }
        }
    )*};
}

structs! {
    Head { format version; }
    Now { ms offset_min; }
    Entered { field text; unit sense }
    Opening { id; name entries }
    Patch { id; name entries }
    Leg { id; entries }
    Layer { id; name entries }
    RAtThickness { id; entries }
    FoamSheet { id; sheet version name entries r_at }
    KitSheet { id; sheet version name entries }
    KitCount { kit count; }
    ChosenPurchase { buy; reason }
    SiteReading { id of; name entries taken }
    Warming { id; name entries moved_in moved_out log }
    WarmReading { id; entries taken }
    ForecastDay { id; entries offset_min }
    Event { id what at; key surface lift name entries }
    Surface {
        id shape;
        name entries deduct_framing openings patches legs layers depth_way depth_kit foam
    }
    Job {
        format version id next_id;
        units name place note entries foam surfaces foams kits stock purchase readings rounds warming forecast
        events
    }
}

/// An enumeration, and the word that stands in while the fault of an unknown one is carried out.
macro_rules! words {
    ($($name:ident $fallback:ident)*) => {$(
        impl Decode for $name {
            fn decode(value: &JsValue) -> Self {
                word(value).unwrap_or_else(|| {
                    unknown();
                    Self::$fallback
                })
            }
        }
    )*};
}

words! {
    DepthWay Typed
    EventOf Step
    Kind Length
    ReadingOf Air
    Sense Sum
    Shape TypedArea
    Style FeetInches
    Unit In
    Units Us
}
