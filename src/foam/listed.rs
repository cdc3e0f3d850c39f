//! R by tested thickness: what may be planned with, and what may be promised.

use super::{Foam, ListedR};
use crate::findings::{Code, Finding};
use crate::job::{FoamSheet, Part, RAtThickness, Reader, entry};
use crate::measure::{Inches, Kind, RValue};
use serde::Serialize;

/// Thicknesses closer than this are one: a millionth of an inch, far above what binary fractions lose on the
/// way from a tape or from millimeters (2.5 in is 63.5 mm), far below what anyone can measure.
const SAME_IN: f64 = 1e-6;

/// The two listed thicknesses between which a depth for planning was found; the thinner is 0 in at R-0 where
/// the depth lies under the thinnest listed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Between {
    /// The thinner.
    pub thinner_in: Inches,
    /// Its R.
    pub thinner_r: RValue,
    /// The thicker.
    pub thicker_in: Inches,
    /// Its R.
    pub thicker_r: RValue,
}

/// The rows of a sheet, thinnest first. A row with one of its two boxes blank or not readable is left out
/// with a finding, a row with both blank without one. Where a thickness stands twice the lower R counts.
pub(super) fn rows(sheet: &FoamSheet, reader: &mut Reader) -> Vec<ListedR> {
    let mut listed: Vec<ListedR> = Vec::new();
    for row in &sheet.r_at {
        let Some(new) = read_row(row, reader) else { continue };
        let at = listed.partition_point(|one| one.thickness_in.0 < new.thickness_in.0 - SAME_IN);
        let there = listed.get_mut(at).filter(|one| one.thickness_in.0 <= new.thickness_in.0 + SAME_IN);
        match there {
            Some(known) => {
                known.r = if new.r < known.r { new.r } else { known.r };
                let r = known.r.0;
                let finding = Finding::new(Code::ThicknessTwice, Part::RRow, row.id, "thickness")
                    .with("given", reader.figure(Kind::Length, new.thickness_in.0))
                    .with("r", reader.figure(Kind::Resistance, r));
                reader.say(finding);
            }
            None => listed.insert(at, new),
        }
    }
    for (thin, thick) in listed.iter().zip(listed.iter().skip(1)) {
        if thick.r < thin.r {
            let finding = Finding::new(Code::RFalls, Part::Foam, sheet.id, "r_at")
                .with("thin", reader.figure(Kind::Length, thin.thickness_in.0))
                .with("thick", reader.figure(Kind::Length, thick.thickness_in.0));
            reader.say(finding);
        }
    }
    listed
}

fn read_row(row: &RAtThickness, reader: &mut Reader) -> Option<ListedR> {
    let filled = |name| entry(&row.entries, name).is_some();
    if !filled("thickness") && !filled("r") {
        return None;
    }
    let mut need = |name| reader.need(Part::RRow, row.id, &row.entries, name);
    let (thickness, r) = (need("thickness"), need("r"));
    // Of a range the careful end counts: this R is reached at the thicker end, and is the lower one.
    Some(ListedR { thickness_in: Inches(thickness?.value.high), r: RValue(r?.value.low) })
}

impl Foam {
    /// R at a depth for **planning**: straight between listed thicknesses, in proportion below the first
    /// and beyond the last. Never for a receipt. `None` where the sheet lists nothing, or the depth is not
    /// a number of at least zero.
    ///
    /// In words: R = thinner R + (thicker R − thinner R) × (depth − thinner) ÷ (thicker − thinner).
    /// Source: common practice; 16 CFR 460.17 keeps it off contracts and receipts.
    pub fn planning_r(&self, depth: Inches) -> Option<RValue> {
        let between = self.between_at(depth)?;
        let part = (depth.0 - between.thinner_in.0) / (between.thicker_in.0 - between.thinner_in.0);
        Some(RValue(between.thinner_r.0 + (between.thicker_r.0 - between.thinner_r.0) * part))
    }

    /// The R that may be promised at a depth: the listed thickness itself, or the next listed below. `None`
    /// below the thinnest listed, or where the sheet lists nothing.
    ///
    /// Source: 16 CFR 460.17: R of what was installed comes from the maker's figure for its thickness, never
    /// from inches × R per inch. Only a difference that binary fractions make (a millionth of an inch) is
    /// forgiven; 2.48 in is not 2½ in.
    pub fn promised_r(&self, depth: Inches) -> Option<ListedR> {
        self.listed.iter().rev().find(|one| one.thickness_in.0 <= depth.0 + SAME_IN).copied()
    }

    /// The least depth at which the [planning R](Self::planning_r) reaches a target; `None` beyond the
    /// thickest listed, where the sheet lists nothing, or for a target that is not above zero.
    pub fn depth_for(&self, target: RValue) -> Option<Inches> {
        let between = self.between_for(target)?;
        let part = (target.0 - between.thinner_r.0) / (between.thicker_r.0 - between.thinner_r.0);
        Some(Inches(between.thinner_in.0 + (between.thicker_in.0 - between.thinner_in.0) * part))
    }

    /// The listed thicknesses between which the [depth for a target](Self::depth_for) lies.
    pub fn between_for(&self, target: RValue) -> Option<Between> {
        if target.0.is_nan() || target.0 <= 0.0 {
            return None;
        }
        self.between(self.listed.iter().position(|one| one.r >= target)?)
    }

    /// The thickest listed.
    pub fn thickest(&self) -> Option<ListedR> {
        self.listed.last().copied()
    }

    /// The listed thicknesses between which a depth lies; beyond the last, nothing and the last.
    pub fn between_at(&self, depth: Inches) -> Option<Between> {
        if !(depth.0 >= 0.0 && depth.0.is_finite()) {
            return None;
        }
        match self.listed.iter().position(|one| one.thickness_in >= depth) {
            Some(thicker) => self.between(thicker),
            None => self.listed.last().map(|last| Between {
                thinner_in: Inches(0.0),
                thinner_r: RValue(0.0),
                thicker_in: last.thickness_in,
                thicker_r: last.r,
            }),
        }
    }

    /// The listed thickness that promises at least a target.
    pub fn listed_for(&self, target: RValue) -> Option<ListedR> {
        self.listed.iter().find(|one| one.r >= target).copied()
    }

    fn between(&self, thicker: usize) -> Option<Between> {
        let over = self.listed.get(thicker)?;
        let under = thicker.checked_sub(1).and_then(|thinner| self.listed.get(thinner));
        Some(Between {
            thinner_in: under.map_or(Inches(0.0), |one| one.thickness_in),
            thinner_r: under.map_or(RValue(0.0), |one| one.r),
            thicker_in: over.thickness_in,
            thicker_r: over.r,
        })
    }
}
