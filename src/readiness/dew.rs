//! The moisture of the air at the work: from a humidity reading and the air, or from a dew point reading.

use super::limits::Limits;
use super::moist_air::{FREEZING_F, dew_point, frost_point_of, humidity_of};
use super::readings::{Desk, Row, Standing};
use super::windows::on_or_above;
use super::{Check, ReadState};
use crate::findings::Code;
use crate::job::ReadingOf;
use crate::measure::{Band, Fahrenheit, Kind, held_between};
use serde::Serialize;

/// Air on a site is never drier than this, in percent. The table of fields takes no drier reading (a meter
/// that shows 0 is dead, and would clear every surface), and a meter's error is not taken to reach below it.
const DRIEST_PCT: f64 = 1.0;

/// Moisture of the air.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Dew {
    /// The reading it comes from.
    pub id: u32,
    /// What that reading is of: humidity or dew point.
    pub of: ReadingOf,
    /// Dew point over water, as meters show it; low and high are the meter's error. Where a range was
    /// read, `likely` is its moister end: that one counts.
    pub point_f: Band<Fahrenheit>,
    /// Frost point, where the dew point is below freezing.
    pub frost_f: Option<Fahrenheit>,
    /// Relative humidity used, in percent.
    pub humidity_pct: Option<f64>,
    /// Air temperature used.
    pub air_f: Option<Fahrenheit>,
    /// The least a surface may have: dew point + spread.
    pub least_surface_f: Fahrenheit,
    /// The spread used.
    pub spread_f: f64,
    /// The meter's error in percent of humidity.
    pub meter_pct: f64,
    /// The meter's error in °F.
    pub meter_f: f64,
}

impl Desk<'_> {
    /// The moisture of the air from every humidity and dew point reading that counts.
    ///
    /// One of the two kinds is enough: the other may be blank or old, but not misread and not without a time
    /// (a stamp that is still to come would begin to count in the middle of a GO). Where both are there, the
    /// one that gives the higher dew point counts: it is the safer one. Humidity goes with the warmest air
    /// that was read, for the same reason. A dew point above the air is misread and is not used; no GO is
    /// given until it is put right.
    pub(super) fn moisture(&mut self, air: &[Row<'_>], limits: &Limits) -> Option<Dew> {
        let rows = self.rows(&[ReadingOf::Humidity, ReadingOf::DewPoint], limits.site_age_min);
        let any = rows.iter().any(|row| row.fresh().is_some());
        let written = rows.iter().any(|row| row.standing != Standing::Blank);
        let warmest =
            air.iter().filter_map(Row::fresh).reduce(|one, two| if two.high > one.high { two } else { one });
        let mut dew: Option<Dew> = None;
        let mut blank_said = false;
        for row in &rows {
            let mut check: Check = row.check();
            match row.standing {
                Standing::Blank if written || blank_said => {}
                Standing::Old if any => {}
                _ => self.count(row, limits.site_age_min),
            }
            blank_said |= row.standing == Standing::Blank;
            let found = row.fresh().and_then(|band| match row.of {
                ReadingOf::Humidity => from_humidity(row, band, warmest?, limits),
                _ => self.shown_by_meter(row, band, warmest, limits, &mut check),
            });
            self.checks.push(check);
            if let Some(found) = found {
                let higher = dew.as_ref().is_none_or(|known| found.point_f.likely > known.point_f.likely);
                dew = if higher { Some(found) } else { dew };
            }
        }
        let dew = dew?;
        if let (Some(frost), Some(row)) = (dew.frost_f, rows.iter().find(|row| row.id == dew.id)) {
            let finding = row
                .finding(Code::Frost)
                .with("dew", self.reader.figure(Kind::Temperature, dew.point_f.likely.0))
                .with("frost", self.reader.figure(Kind::Temperature, frost.0));
            self.say(finding);
        }
        Some(dew)
    }

    /// A dew point from a meter that shows one. Its error is that of the humidity which it implies, where
    /// the air was read too; otherwise that of a thermometer.
    fn shown_by_meter(
        &mut self,
        row: &Row<'_>,
        band: Band<f64>,
        air: Option<Band<f64>>,
        limits: &Limits,
        check: &mut Check,
    ) -> Option<Dew> {
        if let Some(air) = air.filter(|air| !on_or_above(air.high, band.low)) {
            check.state = ReadState::NotRead;
            let finding = row
                .finding(Code::DewAboveAir)
                .with("given", self.beside(band.low, air.high))
                .with("most", self.reader.figure(Kind::Temperature, air.high));
            let position = self.say(finding);
            self.tally.unread(position);
            return None;
        }
        let likely = band.high;
        let around = air
            .and_then(|air| meter_band(air.high, humidity_of(air.high, likely)?, limits))
            .unwrap_or(Band { low: likely - limits.meter_f, likely, high: likely + limits.meter_f });
        let point = Band { low: around.low.min(likely), likely, high: around.high.max(likely) };
        Some(dew(row, point, None, air.map(|air| air.high), limits))
    }
}

fn from_humidity(row: &Row<'_>, humidity: Band<f64>, air: Band<f64>, limits: &Limits) -> Option<Dew> {
    let point = meter_band(air.high, humidity.high, limits)?;
    Some(dew(row, point, Some(humidity.high), Some(air.high), limits))
}

/// The dew point of air at a humidity, and what it may be by the meter's error in both: low from the drier
/// and colder, high from the moister and warmer. Humidity stays between [`DRIEST_PCT`] and 100 %.
fn meter_band(air_f: f64, humidity_pct: f64, limits: &Limits) -> Option<Band<f64>> {
    let at = |air_f: f64, humidity_pct: f64| dew_point(air_f, held_between(humidity_pct, DRIEST_PCT, 100.0));
    Some(Band {
        low: at(air_f - limits.meter_f, humidity_pct - limits.meter_pct)?,
        likely: at(air_f, humidity_pct)?,
        high: at(air_f + limits.meter_f, humidity_pct + limits.meter_pct)?,
    })
}

fn dew(
    row: &Row<'_>,
    point: Band<f64>,
    humidity_pct: Option<f64>,
    air_f: Option<f64>,
    limits: &Limits,
) -> Dew {
    Dew {
        id: row.id,
        of: row.of,
        point_f: point.map(Fahrenheit),
        frost_f: (point.likely < FREEZING_F).then(|| frost_point_of(point.likely)).flatten().map(Fahrenheit),
        humidity_pct,
        air_f: air_f.map(Fahrenheit),
        least_surface_f: Fahrenheit(point.likely + limits.spread_f),
        spread_f: limits.spread_f,
        meter_pct: limits.meter_pct,
        meter_f: limits.meter_f,
    }
}
