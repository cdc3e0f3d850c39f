//! What a tape, a thermometer, a scale or a label says: reading it as people write it, and writing it back.
//!
//! A reading is exact: a ratio of integers with checked arithmetic, never a binary fraction, so that
//! `12' 6 1/2"` is 150.5 in and `1/3 ft` is 4 in to the last digit. A reading may be a range
//! (`7-8 in`, `about 30 ft`): it then carries a low, a likely and a high value.
//!
//! [`read`] never guesses where a text has two meanings: it returns both, and the person presses one.

pub(crate) mod angle;
mod clock;
mod date;
mod echo;
mod lumber;
mod number;
mod parse;
mod pitch;
mod probes;
mod product;
mod quantities;
mod ratio;
mod read;
mod several;
mod symbols;
mod term;
mod tokens;
mod units;
mod words;
mod write;

pub use echo::{Echo, EchoMeaning, EchoPart, EchoState, echo};
pub(crate) use quantities::held_between;
pub use quantities::{
    Band, BoardFeet, Cents, CubicFeetPerMinute, Fahrenheit, Inches, Minutes, Pounds, PoundsPerCubicFoot,
    RValue, SquareFeet, WallMinutes,
};
pub use ratio::Ratio;
pub use read::read;
pub use units::in_unit;
pub use write::{decimal, feet_inches, write};

use serde::{Deserialize, Serialize};

/// What is measured: it decides which units a text may carry and in which unit its reading is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// A length, held in inches.
    Length,
    /// The width and depth of a member, as nominal lumber (`2x6`) or as a plain width.
    Member,
    /// The slope of a roof, held as rise per run.
    Pitch,
    /// An area, held in square feet.
    Area,
    /// A temperature, held in degrees Fahrenheit.
    Temperature,
    /// A difference of temperatures, held in degrees Fahrenheit.
    TemperatureStep,
    /// A weight, held in pounds.
    Weight,
    /// A density, held in pounds per cubic foot.
    Density,
    /// A whole number of things.
    Count,
    /// A share of something, held in percent.
    Percent,
    /// A speed of wind, held in miles per hour.
    Speed,
    /// Thermal resistance, held in °F·ft²·h/Btu.
    Resistance,
    /// Water vapor permeance, held in perms.
    Permeance,
    /// Foam volume, held in board feet.
    FoamVolume,
    /// A span of time, held in minutes.
    Duration,
    /// An amount of money, held in cents.
    Money,
    /// A calendar date, held as days since 1970-01-01.
    Date,
    /// A bare number (a flame-spread index, a quality).
    Number,
    /// One of a few words, pressed and never typed; its field lists them.
    Choice,
    /// A postal or county code of five digits, leading zeros and all.
    Zip,
    /// A time of day, held as minutes after midnight.
    Clock,
    /// A latitude or longitude, held in degrees north or east.
    Coordinate,
    /// A flow of air, held in cubic feet per minute.
    Airflow,
    /// The power of a heater, held in Btu per hour.
    Power,
    /// Depths read with a probe, one or a list of them, held in inches: the thinnest, the mean, the thickest.
    Probes,
}

/// The unit that a bare number in a box is taken to have, and the unit in which a text may be written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// Feet.
    Ft,
    /// Inches.
    In,
    /// Meters.
    M,
    /// Centimeters.
    Cm,
    /// Millimeters.
    Mm,
    /// Inches of rise in 12 inches of run.
    In12,
    /// Degrees from level.
    Deg,
    /// Square feet.
    Ft2,
    /// Square inches.
    In2,
    /// Square meters.
    M2,
    /// Degrees Fahrenheit.
    F,
    /// Degrees Celsius.
    C,
    /// Pounds.
    Lb,
    /// Ounces.
    Oz,
    /// Kilograms.
    Kg,
    /// Grams.
    G,
    /// Pounds per cubic foot.
    LbFt3,
    /// Kilograms per cubic meter.
    KgM3,
    /// A number of pieces.
    Each,
    /// Percent.
    Pct,
    /// R: °F·ft²·h/Btu.
    R,
    /// RSI: m²·K/W.
    Rsi,
    /// US perms.
    Perm,
    /// Nanograms per second, square meter and pascal.
    Metricperm,
    /// Board feet.
    BdFt,
    /// Cubic feet.
    Ft3,
    /// Liters.
    L,
    /// Cubic meters.
    M3,
    /// Seconds.
    Sec,
    /// Minutes.
    Min,
    /// Hours.
    Hr,
    /// Days.
    Day,
    /// Miles per hour.
    Mph,
    /// Kilometers per hour.
    Kmh,
    /// Meters per second.
    Mps,
    /// Dollars.
    Usd,
    /// A date.
    Date,
    /// A time of day.
    Clock,
    /// Degrees of latitude or longitude.
    Arc,
    /// Cubic feet per minute.
    Cfm,
    /// Liters per second.
    Lps,
    /// Cubic meters per hour.
    M3h,
    /// Btu per hour.
    Btuh,
    /// Kilowatts.
    Kw,
    /// Watts.
    W,
    /// A bare number.
    One,
}

/// Which of several possible meanings a text was said to have. It is kept beside the text; when the text
/// changes it is forgotten.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Sense {
    /// `5 6` or `5.11` or `12-6`: feet, then inches.
    FeetInches,
    /// `5.11`: feet and hundredths of a foot.
    DecimalFeet,
    /// `5 6`: two numbers added, in the unit of the box; `12-6` is no such sum.
    Sum,
    /// `12-6` or `5 6`: from the smaller to the larger.
    Range,
    /// `12-6`: the first less the second.
    Difference,
    /// `1,200` or `1'000`: the mark groups thousands.
    Thousands,
    /// `1,200`: the mark is a decimal comma.
    DecimalComma,
    /// `5 foot 2 in m`: five foot two, to be shown in meters.
    Converted,
    /// The text word for word: `5 foot 2 in m` as five feet and two meters, `2" x 6"` as measured,
    /// `$1.500` as a dollar and a half, `1.200` mm as a little over one.
    Literal,
    /// `2" x 6"`: lumber by its name, which is larger than the piece.
    Nominal,
    /// `3/4/2026`: month first.
    MonthFirst,
    /// `3/4/2026`: day first.
    DayFirst,
    /// `8:30`: before noon.
    Morning,
    /// `8:30`: after noon.
    Afternoon,
    /// A reading in the unit of the box.
    BoxUnit,
    /// A reading in the other unit of the same kind.
    OtherUnit,
    /// `steel 6 x 1 5/8`: the depth of the section first, then its flange.
    DepthFirst,
}

/// A value as read: low, likely and high, exact, in the unit that its [`Kind`] is held in.
///
/// A single value has the three equal. `low <= likely <= high` always.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reading {
    /// The least it may be.
    pub low: Ratio,
    /// The value to work with.
    pub likely: Ratio,
    /// The most it may be.
    pub high: Ratio,
}

/// A structural member, actual size.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Member {
    /// Width of the edge that foam meets (1½ in for a 2x6).
    pub width_in: Ratio,
    /// Depth of the cavity that it makes (5½ in for a 2x6), unless only a width was typed.
    pub depth_in: Option<Ratio>,
}

/// What a text turned out to be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Value {
    /// A number or a range of numbers.
    Band(Reading),
    /// A member's size.
    Member(Member),
}

/// One of several meanings that a text may have.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Meaning {
    /// How it is stored once chosen.
    pub sense: Sense,
    /// What it would then be.
    pub value: Value,
}

/// Why a text was not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Fault {
    /// No number could be found in it, or something beside the number is not understood.
    NotANumber,
    /// A minus sign where nothing can be less than zero.
    Negative,
    /// Zero below the line of a fraction.
    ZeroBelowTheLine,
    /// A unit that does not measure this.
    WrongUnit,
    /// Larger than any number that the tool holds.
    TooLarge,
    /// More characters than any reading needs (over 200).
    TooLong,
    /// A fraction where only whole things are counted.
    NotWhole,
    /// A day that no calendar has.
    NoSuchDay,
    /// A range that runs backward or an exponent, a formula or another form that is not taken here.
    NotTaken,
    /// A list in which a comma may end a reading or may be a decimal comma.
    RunTogether,
    /// Several measures where one is taken: `10' x 14' x 8'`, `6 @ 2' x 4'`.
    Several,
    /// Three lengths multiplied where an area is wanted.
    ThreeLengths,
}

/// What became of a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Outcome {
    /// Nothing was typed.
    Blank,
    /// One meaning.
    Read(Value),
    /// Two or more meanings; the person has to press one.
    Ask(Vec<Meaning>),
    /// Not understood; the text stays where it is.
    Refused(Fault),
}

/// Which way of writing lengths, temperatures and the rest the person works in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Units {
    /// Feet, inches and fractions; °F; pounds; R.
    #[default]
    Us,
    /// Meters and millimeters; °C; kilograms; RSI.
    Metric,
}

/// How a value is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Style {
    /// `12′-6½″`: feet, inches and sixteenths, as on a drawing.
    FeetInches,
    /// `12.54 ft`.
    DecimalFeet,
    /// `150½ in` within a sentence.
    Inches,
    /// `3.823 m`, below one meter `382 mm`.
    Metric,
    /// `3 823 mm`, however long.
    Millimeters,
    /// The kind's usual form in US units, with its unit (`63 °F`, `124.3 ft²`).
    Us,
    /// The kind's usual form in metric units, with its unit (`17.2 °C`, `11.55 m²`).
    MetricUsual,
}

#[cfg(test)]
mod tests;
