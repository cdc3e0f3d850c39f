//! What happens around the spraying: kits that warm, the forecast, readings, the log of the day.

use super::{Entered, Now};
use serde::{Deserialize, Serialize};

/// Kits that are warmed together: one kind of cylinder, in one room, packed alike.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Warming {
    /// From the job's counter.
    pub id: u32,
    /// What the crew calls them (`second set, far from the heater`).
    #[serde(default)]
    pub name: String,
    /// Cylinder, temperatures, packing ([`Part::Warming`](super::Part::Warming)).
    #[serde(default)]
    pub entries: Vec<Entered>,
    /// When they came into the warm room.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(target_arch = "wasm32", tsify(optional))]
    pub moved_in: Option<Now>,
    /// When they left it for the van or the site.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(target_arch = "wasm32", tsify(optional))]
    pub moved_out: Option<Now>,
    /// What was read on them while they warmed.
    #[serde(default)]
    pub log: Vec<WarmReading>,
}

/// A temperature of a cylinder, read while it warmed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct WarmReading {
    /// From the job's counter.
    pub id: u32,
    /// On the steel or of the liquid ([`Part::WarmReading`](super::Part::WarmReading)).
    #[serde(default)]
    pub entries: Vec<Entered>,
    /// When it was read; one without a time teaches nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(target_arch = "wasm32", tsify(optional))]
    pub taken: Option<Now>,
}

/// A day of the forecast.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ForecastDay {
    /// From the job's counter.
    pub id: u32,
    /// Its date, lowest and highest temperature, dew point ([`Part::Forecast`](super::Part::Forecast)).
    #[serde(default)]
    pub entries: Vec<Entered>,
    /// What clocks on the site show on that day, in minutes east of UTC; without it, what they show now.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(target_arch = "wasm32", tsify(optional))]
    pub offset_min: Option<i32>,
}

/// What a site reading was taken of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum ReadingOf {
    /// The A cylinder, at mid-height.
    CylinderA,
    /// The B cylinder, at mid-height.
    CylinderB,
    /// The air where the foam is sprayed.
    Air,
    /// Relative humidity of that air.
    Humidity,
    /// Its dew point, from a meter that shows one.
    DewPoint,
    /// A surface to be sprayed.
    Surface,
    /// Moisture of the wood to be sprayed, by a pin meter.
    WoodMoisture,
    /// Wind at the work, outdoors.
    Wind,
    /// The lowest temperature that is forecast until the foam has cured.
    NightLow,
    /// The room in which the kits are kept.
    Storage,
}

/// A reading taken on site, with the time at which it was taken.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SiteReading {
    /// From the job's counter.
    pub id: u32,
    /// What was read.
    pub of: ReadingOf,
    /// The spot's name (`Rim, north`), for surfaces.
    #[serde(default)]
    pub name: String,
    /// The reading ([`Part::Reading`](super::Part::Reading)): `humidity` for humidity, `temperature` for all else.
    #[serde(default)]
    pub entries: Vec<Entered>,
    /// When it was taken; a reading without a time counts as not read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(target_arch = "wasm32", tsify(optional))]
    pub taken: Option<Now>,
}

/// What an event of the day is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum EventOf {
    /// A line of the checklist was done; `key` names it.
    Step,
    /// A lift of a surface was sprayed.
    Lift,
    /// A line of the checklist does not apply today; `key` names it.
    Skip,
    /// The trigger was let go with the nozzle on.
    Idle,
    /// The trigger was pulled again, or a new nozzle put on.
    Trigger,
    /// A kit's valves were opened.
    KitOn,
    /// A kit was emptied or put away.
    KitOff,
    /// A fault was seen in the foam; `key` names it.
    Fault,
    /// The exhaust went off.
    ExhaustOff,
    /// The exhaust runs again.
    ExhaustOn,
}

/// Something that was done, and when.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Event {
    /// From the job's counter.
    pub id: u32,
    /// What it is.
    pub what: EventOf,
    /// When.
    pub at: Now,
    /// Which line of the checklist or which fault; of a kit that was opened, the id of its sheet in the job's
    /// kits or stock; empty for all else.
    #[serde(default)]
    pub key: String,
    /// The surface that it belongs to; 0 for none.
    #[serde(default)]
    pub surface: u32,
    /// The number of the lift, from 1; 0 for none.
    #[serde(default)]
    pub lift: u32,
    /// A remark, or the kit's name.
    #[serde(default)]
    pub name: String,
    /// What was read at the time ([`Part::Event`](super::Part::Event)).
    #[serde(default)]
    pub entries: Vec<Entered>,
}
