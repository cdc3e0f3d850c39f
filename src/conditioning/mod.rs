//! Bringing kits to temperature: how long a cold cylinder takes in a warm room, when it has to be there, and how
//! long a warm one stays usable outside.
//!
//! The liquid in a cylinder is worked out in shells from its axis to the steel, with the steel, the gap, the carton
//! and the air around it (`cylinder`, `film`, `shells`). How much the liquid stirs itself is the one thing that no
//! table gives: M, the circulation multiplier, 1 for none, 4 likely, 8 for a lot. It makes the band, and a person's
//! own readings narrow it (`learn`).
//!
//! A time given here is for planning. It is never shorter than the label's rule, and a thermometer on the cylinder
//! decides on the day.

use crate::foam::Foam;
use crate::job::{Job, Now, Reader};
use crate::measure::{Band, Fahrenheit, Inches, Minutes, Pounds, WallMinutes};
use serde::Serialize;

/// One cylinder, as it was worked with.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Cylinder {
    /// The word of the generic size; `None` where all three measures were typed.
    pub size: Option<&'static str>,
    /// Whether the size follows from the kits' own weight, nobody having said.
    pub assumed: bool,
    /// Outside diameter.
    pub diameter_in: Inches,
    /// Height.
    pub height_in: Inches,
    /// What is in it.
    pub liquid_lb: Pounds,
}

/// How much the liquid stirs itself: a multiplier on its conductivity.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Circulation {
    /// The range that is counted with: low is slow.
    pub m: Band<f64>,
    /// How many readings taught it; 0: nobody's, the range is that of the model.
    pub readings: u32,
}

/// What decides when a kit is ready.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Decides {
    /// The slow edge of the curve.
    Curve,
    /// The label's hours, counted from entering the warm room.
    Label,
}

/// Warming up.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct WarmUp {
    /// What the liquid has to reach: the least of the labels.
    pub target_f: Fahrenheit,
    /// Until the core is there, likely; none where this room never brings it there (within 14 days).
    pub likely_min: Option<Minutes>,
    /// The same at the slow edge; never less than likely.
    pub slow_min: Option<Minutes>,
    /// What the label asks for, from entering the warm room.
    pub label_min: Minutes,
    /// What to plan on: the longer of the slow edge and the label.
    pub plan_min: Option<Minutes>,
    /// Which of the two that is.
    pub decides: Decides,
    /// When the steel first reads the target, likely, and the core then: a reading of the skin is not the core.
    pub skin_min: Option<Minutes>,
    /// The core at that time.
    pub core_then_f: Option<Fahrenheit>,
    /// When they have to be in the warm room, so that spraying may begin at the time that the job says: the earlier of
    /// what curve and label ask for. None without a day of spraying, or where the room never does it.
    pub in_by: Option<WallMinutes>,
    /// When they are ready, counted from when they came in. None before they did.
    pub ready_at: Option<WallMinutes>,
    /// Whether `ready_at`, or else `in_by`, comes too late for the time of spraying that the job says.
    pub late: bool,
    /// The core now, by the slow edge, likely and the fast edge; none before they came in or after they left.
    pub core_now_f: Option<Band<Fahrenheit>>,
    /// The steel now, likely.
    pub skin_now_f: Option<Fahrenheit>,
}

/// Cooling down (or heating up) outside the warm room.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct CoolDown {
    /// Where it starts: the room that they warmed in, or the last temperature logged there.
    pub from_f: Fahrenheit,
    /// The limit that it runs into: the label's least, or its most on the hot side.
    pub limit_f: Fahrenheit,
    /// Whether it is the hot side.
    pub hot: bool,
    /// Until the liquid next to the steel passes the limit: starts to cool. The earlier edge.
    pub starts_min: Option<Minutes>,
    /// Until the mean of the liquid passes it: use by. The earlier edge.
    pub use_by_min: Option<Minutes>,
    /// By the clock, where they have left the room.
    pub starts_at: Option<WallMinutes>,
    /// By the clock, where they have left the room.
    pub use_by: Option<WallMinutes>,
    /// What stands still in the hose passes the limit after this.
    pub hose_min: Option<Minutes>,
}

/// One group of kits that warms.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Conditioning {
    /// Its id in the job.
    pub id: u32,
    /// The cylinder counted with.
    pub cylinder: Option<Cylinder>,
    /// How much its liquid stirs itself.
    pub circulation: Circulation,
    /// Warming up, where start and room are known.
    pub warm_up: Option<WarmUp>,
    /// Cooling down, where the air outside is known.
    pub cool_down: Option<CoolDown>,
}

/// Curves of one group, to be drawn: made while they are shown, and by nothing else. Minutes from the start of each.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct WarmCurves {
    /// Minutes from entering the warm room.
    pub warm_min: Vec<f64>,
    /// The core at the slow edge, in °F.
    pub warm_slow_f: Vec<f64>,
    /// The core, likely.
    pub warm_likely_f: Vec<f64>,
    /// The steel, likely.
    pub warm_skin_f: Vec<f64>,
    /// The air around.
    pub warm_air_f: Vec<f64>,
    /// Minutes from leaving it.
    pub cool_min: Vec<f64>,
    /// The mean of the liquid, likely.
    pub cool_mean_f: Vec<f64>,
    /// The liquid next to the steel, likely.
    pub cool_skin_f: Vec<f64>,
}

/// Every group of kits that warms, in the job's order.
pub fn groups(_job: &Job, _foams: &[&Foam], _now: Now, _reader: &mut Reader) -> Vec<Conditioning> {
    Vec::new()
}

/// The curves of one group; none where no group has this id, or too little of it is known.
pub fn curves(_job: &Job, _id: u32, _now: Now) -> Option<WarmCurves> {
    None
}
