//! A temperature against its window, and the two cylinders against each other.

use super::dew::Dew;
use super::readings::{Desk, Row};
use super::{Check, ReadState};
use crate::findings::Code;
use crate::foam::Window;
use crate::job::ReadingOf;
use crate::measure::{Band, Fahrenheit, Kind, Unit, Units, decimal, in_unit};

/// A reading this near to a limit, in °F, is called close. This tool's own mark, without a source.
pub(super) const CLOSE_F: f64 = 2.0;
/// A cylinder above this, in °F, is not opened: the supplier is called. Common practice; no label widens it.
pub(super) const DO_NOT_OPEN_F: f64 = 120.0;
/// Both ends of a window belong to it. A typed tenth of a degree is no binary fraction: a billionth of a
/// degree beyond a limit still lies on it.
const ON_THE_LINE_F: f64 = 1e-9;

/// The codes of a kind of reading that lies below or above its window, and the source of a default window.
fn codes(of: ReadingOf) -> (Code, Code, &'static str) {
    match of {
        ReadingOf::CylinderA | ReadingOf::CylinderB => {
            (Code::CylinderCold, Code::CylinderHot, "chemical_window")
        }
        ReadingOf::Surface => (Code::SurfaceCold, Code::SurfaceHot, "site_window"),
        _ => (Code::AirCold, Code::AirHot, "site_window"),
    }
}

impl Desk<'_> {
    /// Holds one reading against its window and, for a surface, against the dew point. A reading that is a
    /// range counts by its worse end.
    pub(super) fn hold_against(&mut self, row: &Row<'_>, window: Window, dew: Option<&Dew>) {
        let mut check = row.check();
        let (least, most) = (window.least_f.0, window.most_f.0);
        let dew_least = dew.map(|dew| dew.least_surface_f.0);
        let lower = dew_least.map_or(least, |dew_least| if dew_least > least { dew_least } else { least });
        check.least_is_dew = lower > least;
        (check.least_f, check.most_f) = (Some(Fahrenheit(lower)), Some(Fahrenheit(most)));
        if let Some(band) = row.fresh() {
            self.judge(row, band, window, dew, &mut check);
        }
        self.checks.push(check);
    }

    fn judge(
        &mut self,
        row: &Row<'_>,
        band: Band<f64>,
        window: Window,
        dew: Option<&Dew>,
        check: &mut Check,
    ) {
        let (least, most) = (window.least_f.0, window.most_f.0);
        let lower = check.least_f.map_or(least, |lower| lower.0);
        let (above, below) = (band.low - lower, most - band.high);
        let inside_by = if below < above { below } else { above };
        check.value_f = Some(Fahrenheit(if below < above { band.high } else { band.low }));
        check.inside_by_f = Some(inside_by);

        let (cold, hot, _) = codes(row.of);
        let is_cold = !on_or_above(band.low, least);
        let is_hot = !on_or_above(most, band.high);
        let too_cold = is_cold.then(|| self.bare(row, window, cold, band.low));
        let danger = matches!(row.of, ReadingOf::CylinderA | ReadingOf::CylinderB)
            && !on_or_above(DO_NOT_OPEN_F, band.high);
        let too_hot = if danger {
            let finding = row
                .finding(Code::CylinderDanger)
                .with("given", self.beside(band.high, DO_NOT_OPEN_F))
                .with("limit", self.reader.figure(Kind::Temperature, DO_NOT_OPEN_F));
            Some(self.say(finding))
        } else {
            is_hot.then(|| self.bare(row, window, hot, band.high))
        };
        let too_wet = dew.and_then(|dew| self.dew_rule(row, band.low, dew));

        for (by, finding) in [
            (least - band.low, too_cold),
            (dew.map_or(0.0, |dew| dew.least_surface_f.0 - band.low), too_wet),
            (if danger { f64::INFINITY } else { band.high - most }, too_hot),
        ] {
            if let Some(finding) = finding {
                self.tally.outside(by, finding);
            }
        }
        let outside = too_cold.or(too_hot).or(too_wet).is_some();
        let close = inside_by <= CLOSE_F + ON_THE_LINE_F;
        if !outside && close {
            let by = if inside_by > 0.0 { inside_by } else { 0.0 };
            self.say(row.finding(Code::Close).with("by", self.reader.figure(Kind::TemperatureStep, by)));
        }
        check.state = match (outside, close) {
            (true, _) => ReadState::Outside,
            (false, true) => ReadState::Close,
            (false, false) => ReadState::Inside,
        };
    }

    /// Says that a reading lies outside the label's window.
    fn bare(&mut self, row: &Row<'_>, window: Window, code: Code, given: f64) -> usize {
        let (least, most) = (window.least_f.0, window.most_f.0);
        let (cold, _, default_source) = codes(row.of);
        let mut finding = row
            .finding(code)
            .with("given", self.beside(given, if code == cold { least } else { most }))
            .with("least", self.reader.figure(Kind::Temperature, least))
            .with("most", self.reader.figure(Kind::Temperature, most));
        if window.default {
            finding.source = default_source;
        }
        self.say(finding)
    }

    /// A surface against the dew point; the finding's position where it is too close.
    fn dew_rule(&mut self, row: &Row<'_>, surface_f: f64, dew: &Dew) -> Option<usize> {
        let (point, least) = (dew.point_f.likely.0, dew.least_surface_f.0);
        let written = self.reader.figure(Kind::Temperature, point);
        let step = |desk: &Self, by| desk.reader.figure(Kind::TemperatureStep, by);
        if !on_or_above(surface_f, least) {
            let code = if surface_f > point { Code::DewTooClose } else { Code::BelowDewPoint };
            let finding = row
                .finding(code)
                .with("given", self.beside(surface_f, point))
                .with("by", self.step_beside((surface_f - point).abs(), dew.spread_f))
                .with("dew", written)
                .with("spread", step(self, dew.spread_f))
                .with("least", self.reader.figure(Kind::Temperature, least));
            return Some(self.say(finding));
        }
        if !on_or_above(surface_f, dew.point_f.high.0 + dew.spread_f) {
            let finding = row
                .finding(Code::DewWithinMeterError)
                .with("given", self.reader.figure(Kind::Temperature, surface_f))
                .with("dew", self.reader.figure(Kind::Temperature, dew.point_f.high.0))
                .with("spread", step(self, dew.spread_f));
            self.say(finding);
        }
        None
    }

    /// Warns where the two cylinders are further apart than they may be: by the ends of what was read that
    /// lie furthest apart, at the colder cylinder.
    pub(super) fn cylinders_apart(&mut self, rows: &[Row<'_>]) {
        let limits = self.limits;
        let mut furthest: Option<(f64, &Row<'_>)> = None;
        let fresh =
            |of| rows.iter().filter(move |row| row.of == of).filter_map(|row| Some((row, row.fresh()?)));
        for (a, a_band) in fresh(ReadingOf::CylinderA) {
            for (b, b_band) in fresh(ReadingOf::CylinderB) {
                let (a_over, b_over) = (a_band.high - b_band.low, b_band.high - a_band.low);
                let (apart, colder) = if a_over > b_over { (a_over, b) } else { (b_over, a) };
                if furthest.is_none_or(|(most, _)| apart > most) {
                    furthest = Some((apart, colder));
                }
            }
        }
        if let Some((apart, colder)) = furthest.filter(|(apart, _)| !on_or_above(limits.apart_f, *apart)) {
            let finding = colder
                .finding(Code::CylindersApart)
                .with("by", self.step_beside(apart, limits.apart_f))
                .with("limit", self.reader.figure(Kind::TemperatureStep, limits.apart_f));
            self.say(finding);
        }
    }

    /// A temperature written so that it can be told from the limit that it is held against.
    pub(super) fn beside(&self, value_f: f64, limit_f: f64) -> String {
        self.told_apart(Kind::Temperature, value_f, limit_f)
    }

    fn step_beside(&self, value_f: f64, limit_f: f64) -> String {
        self.told_apart(Kind::TemperatureStep, value_f, limit_f)
    }

    pub(super) fn told_apart(&self, kind: Kind, value_f: f64, limit_f: f64) -> String {
        let written = self.reader.figure(kind, value_f);
        if written != self.reader.figure(kind, limit_f) || on_the_line(value_f, limit_f) {
            return written;
        }
        let unit = written.trim_start_matches(|one: char| !one.is_whitespace());
        let value = match (self.reader.units, kind) {
            (Units::Us, _) => value_f,
            (Units::Metric, Kind::Temperature) => (value_f - 32.0) / 1.8,
            (Units::Metric, Kind::TemperatureStep) => value_f / 1.8,
            (Units::Metric, Kind::Speed) => in_unit(value_f, Unit::Kmh),
            (Units::Metric, _) => value_f,
        };
        format!("{}{unit}", decimal(value, 3))
    }
}

fn on_the_line(value_f: f64, limit_f: f64) -> bool {
    (value_f - limit_f).abs() <= ON_THE_LINE_F
}

/// Whether a temperature reaches a limit, on which it may lie. Never true of anything that is no number.
pub(super) fn on_or_above(value_f: f64, limit_f: f64) -> bool {
    value_f >= limit_f - ON_THE_LINE_F
}
