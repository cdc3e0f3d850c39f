//! The energy code's tables: least R and largest U-factor by edition, zone and component.

use super::{Component, Edition, Zone};
use crate::findings::Trust;

/// One of the ways to satisfy a row: so much in the cavity and so much unbroken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ROption {
    /// R of what lies between members.
    pub cavity: f64,
    /// R of what runs unbroken across them.
    pub continuous: f64,
}

/// What the R-value table asks of a component.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RRow {
    /// Any one of these.
    pub options: &'static [ROption],
    /// As the table prints it.
    pub printed: &'static str,
    /// Its section.
    pub section: &'static str,
    /// Its edition, as printed beside a mark.
    pub edition: &'static str,
    /// How far it is to be trusted.
    pub trust: Trust,
}

/// What the U-factor table asks of a component.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct URow {
    /// The largest U-factor of the whole assembly, Btu/h·ft²·°F.
    pub most: f64,
    /// Its section.
    pub section: &'static str,
    /// Its edition.
    pub edition: &'static str,
    /// How far it is to be trusted.
    pub trust: Trust,
}

/// The row of the R-value table; `None` where the table has none for it.
pub fn r_row(_edition: Edition, _zone: Zone, _component: Component) -> Option<RRow> {
    None
}

/// The row of the U-factor table; `None` where the table has none for it.
pub fn u_row(_edition: Edition, _zone: Zone, _component: Component) -> Option<URow> {
    None
}
