//! Wind at the work, the forecast through the cure, and the room in which the kits are kept.

use super::readings::{Desk, Row};
use super::{Check, ReadState};
use crate::findings::{Code, Finding};
use crate::job::{Part, ReadingOf};
use crate::measure::{Fahrenheit, Kind};

use super::windows::{DO_NOT_OPEN_F, on_or_above};

impl Desk<'_> {
    /// Wind against the label. Where the label limits it, it has to be known whether the work is outdoors,
    /// and outdoors the wind has to be read. A label that says nothing gives no limit and no pass either:
    /// only a note.
    pub(super) fn wind(&mut self) {
        let limits = self.limits;
        let outdoors = self.job_answer("outdoors");
        let rows: Vec<Row<'_>> = match (limits.wind_most_mph, outdoors) {
            (Some(_), Some("yes")) => self.rows(&[ReadingOf::Wind], limits.site_age_min),
            _ => self.listed(ReadingOf::Wind, limits.site_age_min),
        };
        if limits.wind_most_mph.is_some() && outdoors.is_none() && rows.is_empty() {
            self.unanswered(None, "outdoors");
        }
        if limits.wind_most_mph.is_none() && (outdoors == Some("yes") || !rows.is_empty()) {
            self.say(Finding::new(Code::WindNotOnSheet, Part::Job, 0, "outdoors"));
        }
        for row in &rows {
            self.count(row, limits.site_age_min);
            let mut check: Check = row.check();
            check.most = limits.wind_most_mph;
            if let (Some(band), Some(most)) = (row.fresh(), limits.wind_most_mph) {
                check.inside_by = Some(most - band.high);
                if !on_or_above(most, band.high) {
                    check.state = ReadState::Outside;
                    let finding = row
                        .finding(Code::WindOver)
                        .with("given", self.told_apart(Kind::Speed, band.high, most))
                        .with("limit", self.reader.figure(Kind::Speed, most));
                    let position = self.say(finding);
                    self.tally.outside(0.0, position);
                }
            }
            self.checks.push(check);
        }
    }

    /// The lowest temperature that is forecast until the foam has cured, against the higher of the air's and
    /// the surface's least. A forecast can only take a GO away. Below the window it holds the work, unless
    /// heat is kept on until the foam has cured. Common practice.
    pub(super) fn night_low(&mut self) {
        let limits = self.limits;
        let (air, surface) = (limits.air.least_f.0, limits.surface.least_f.0);
        let least = if surface > air { surface } else { air };
        let rows = self.listed(ReadingOf::NightLow, limits.forecast_age_min);
        let heated = self.job_answer("heat_kept") == Some("yes");
        if !rows.is_empty() && limits.cure_min.is_none() {
            self.say(Finding::new(Code::CureNotOnSheet, Part::Job, 0, "heat_kept"));
        }
        let cure = limits
            .cure_min
            .map_or_else(|| "@cure_unknown".to_owned(), |cure| self.reader.figure(Kind::Duration, cure));
        for row in &rows {
            self.count(row, limits.forecast_age_min);
            let mut check: Check = row.check();
            check.least_f = Some(Fahrenheit(least));
            if let Some(band) = row.fresh().filter(|band| !on_or_above(band.low, least)) {
                check.value_f = Some(Fahrenheit(band.low));
                let code = if heated { Code::NightColdHeated } else { Code::NightCold };
                let finding = row
                    .finding(code)
                    .with("given", self.beside(band.low, least))
                    .with("least", self.reader.figure(Kind::Temperature, least))
                    .with("cure", cure.as_str());
                let position = self.say(finding);
                if !heated {
                    check.state = ReadState::Outside;
                    self.tally.outside(least - band.low, position);
                }
            }
            self.checks.push(check);
        }
    }

    /// The room in which the kits are kept, against the sheet's storage window.
    pub(super) fn storage(&mut self) {
        let limits = self.limits;
        for row in &self.listed(ReadingOf::Storage, limits.site_age_min) {
            self.count(row, limits.site_age_min);
            let mut check: Check = row.check();
            if let Some(band) = row.fresh()
                && self.stored(row, band.low, band.high)
            {
                check.state = ReadState::Outside;
            }
            self.checks.push(check);
        }
    }

    /// Says where a storage temperature is outside its window: too cold or too warm warns, so hot that a
    /// cylinder must not be opened holds. Whether it holds.
    fn stored(&mut self, row: &Row<'_>, low: f64, high: f64) -> bool {
        let (least, most) = (self.limits.storage_least_f, self.limits.storage_most_f);
        let hot = !on_or_above(DO_NOT_OPEN_F, high);
        let warm = !on_or_above(most, high);
        if !hot && !warm && on_or_above(low, least) {
            return false;
        }
        let code = if hot { Code::StorageTooHot } else { Code::StockStorage };
        let given = match (hot, warm) {
            (true, _) => self.beside(high, DO_NOT_OPEN_F),
            (_, true) => self.beside(high, most),
            _ => self.beside(low, least),
        };
        let finding = row
            .finding(code)
            .with("given", given)
            .with("least", self.reader.figure(Kind::Temperature, least))
            .with("most", self.reader.figure(Kind::Temperature, most))
            .with("limit", self.reader.figure(Kind::Temperature, DO_NOT_OPEN_F));
        let position = self.say(finding);
        if hot {
            self.tally.outside(f64::INFINITY, position);
        }
        hot
    }
}
