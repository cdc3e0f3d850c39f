//! One reading at a time: what was read, whether it still counts, and what has to be said where it does not.

use super::ages::{Age, age};
use super::limits::Limits;
use super::verdict::Tally;
use super::{Check, ReadState};
use crate::findings::{Code, Finding};
use crate::job::{Entered, Job, Now, Part, Reader, ReadingOf, SiteReading, entry};
use crate::measure::{Band, Fahrenheit, Kind, Minutes};

/// Whether a reading can be used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Standing {
    /// It counts until an instant.
    Fresh {
        /// That instant.
        until_ms: f64,
    },
    /// Taken too long ago.
    Old,
    /// Without a time, or from the future.
    Untimed,
    /// Listed, but nothing is written there.
    Blank,
    /// Not understood; the finding that says so stands at this position.
    Refused(usize),
}

/// A reading as entered, or the lack of one (`id` 0).
#[derive(Debug, Clone, Copy)]
pub(super) struct Row<'a> {
    pub(super) of: ReadingOf,
    pub(super) id: u32,
    pub(super) name: &'a str,
    pub(super) entries: &'a [Entered],
    pub(super) value: Option<Band<f64>>,
    pub(super) age_min: Option<f64>,
    pub(super) standing: Standing,
}

/// What readings are taken with and said to.
pub(super) struct Desk<'a> {
    pub(super) job: &'a Job,
    pub(super) now: Now,
    pub(super) limits: Limits,
    pub(super) reader: &'a mut Reader,
    pub(super) tally: &'a mut Tally,
    pub(super) checks: Vec<Check>,
}

/// The key of a kind of reading: the field that a finding about a lacking one names, and after an `@` the
/// word that stands for a reading to which nobody gave a name.
pub(super) fn key(of: ReadingOf) -> &'static str {
    match of {
        ReadingOf::CylinderA => "cylinder_a",
        ReadingOf::CylinderB => "cylinder_b",
        ReadingOf::Air => "air",
        ReadingOf::Humidity => "humidity",
        ReadingOf::DewPoint => "dew_point",
        ReadingOf::Surface => "surface",
        ReadingOf::WoodMoisture => "wood_moisture",
        ReadingOf::Wind => "wind",
        ReadingOf::NightLow => "night_low",
        ReadingOf::Storage => "storage",
    }
}

/// The field of a reading's entry.
pub(super) fn field(of: ReadingOf) -> &'static str {
    match of {
        ReadingOf::Humidity => "humidity",
        ReadingOf::WoodMoisture => "moisture",
        ReadingOf::Wind => "wind",
        _ => "temperature",
    }
}

impl<'a> Row<'a> {
    fn lacking(of: ReadingOf) -> Self {
        Self { of, id: 0, name: "", entries: &[], value: None, age_min: None, standing: Standing::Blank }
    }

    /// A finding at this reading, with its name.
    pub(super) fn finding(&self, code: Code) -> Finding {
        let field = if self.id == 0 { key(self.of) } else { field(self.of) };
        Finding::new(code, Part::Reading, self.id, field).with("name", self.called())
    }

    /// Its own name, or the key of the word for its kind.
    pub(super) fn called(&self) -> String {
        if self.name.is_empty() { format!("@{}", key(self.of)) } else { self.name.to_owned() }
    }

    /// Low, likely and high, where the reading counts.
    pub(super) fn fresh(&self) -> Option<Band<f64>> {
        self.value.filter(|_| matches!(self.standing, Standing::Fresh { .. }))
    }

    /// Its line in the list of checks, not yet held against a limit.
    pub(super) fn check(&self) -> Check {
        let (temperature, other) = match self.of {
            ReadingOf::Humidity | ReadingOf::DewPoint => (None, None),
            ReadingOf::WoodMoisture | ReadingOf::Wind => (None, self.value),
            _ => (self.value, None),
        };
        Check {
            id: self.id,
            of: self.of,
            name: self.name.to_owned(),
            value_f: temperature.map(|band| Fahrenheit(band.likely)),
            value: other.map(|band| band.high),
            most: None,
            inside_by: None,
            age_min: self.age_min.map(Minutes),
            state: match self.standing {
                Standing::Fresh { .. } => ReadState::Inside,
                Standing::Old | Standing::Untimed => ReadState::Old,
                Standing::Blank | Standing::Refused(_) => ReadState::NotRead,
            },
            least_f: None,
            most_f: None,
            inside_by_f: None,
            least_is_dew: false,
        }
    }
}

impl<'a> Desk<'a> {
    /// Keeps a finding and gives its position.
    pub(super) fn say(&mut self, finding: Finding) -> usize {
        self.reader.say(finding);
        self.reader.findings.len() - 1
    }

    /// The readings of some kinds in the job's order; where there is none, a lacking one of the first kind.
    pub(super) fn rows(&mut self, kinds: &[ReadingOf], limit_min: f64) -> Vec<Row<'a>> {
        let mut rows: Vec<Row<'a>> = Vec::new();
        for &of in kinds {
            rows.extend(self.listed(of, limit_min));
        }
        if rows.is_empty() {
            rows.extend(kinds.first().map(|&of| Row::lacking(of)));
        }
        rows
    }

    /// The readings of a kind that is not asked for, in the job's order.
    pub(super) fn listed(&mut self, of: ReadingOf, limit_min: f64) -> Vec<Row<'a>> {
        let job: &'a Job = self.job;
        job.readings.iter().filter(|one| one.of == of).map(|one| self.row(one, limit_min)).collect()
    }

    fn row(&mut self, reading: &'a SiteReading, limit_min: f64) -> Row<'a> {
        let mut row = Row {
            id: reading.id,
            name: reading.name.trim(),
            entries: &reading.entries,
            ..Row::lacking(reading.of)
        };
        if entry(&reading.entries, field(reading.of)).is_none() {
            return row;
        }
        let said = self.reader.findings.len();
        let taken = self.reader.take(Part::Reading, reading.id, &reading.entries, field(reading.of));
        let Some(taken) = taken else {
            if self.reader.findings.len() > said {
                row.standing = Standing::Refused(said);
            }
            return row;
        };
        row.value = Some(taken.value);
        (row.standing, row.age_min) = match age(reading.taken, self.now, limit_min) {
            Age::Fresh { minutes, until_ms } => (Standing::Fresh { until_ms }, Some(minutes)),
            Age::Old { minutes } => (Standing::Old, Some(minutes)),
            Age::Untimed => (Standing::Untimed, None),
        };
        row
    }

    /// Says why a reading does not count, and takes note until when it does.
    pub(super) fn count(&mut self, row: &Row<'_>, limit_min: f64) {
        let finding = match row.standing {
            Standing::Fresh { until_ms } => {
                return self.tally.counts_until(Part::Reading, row.id, until_ms);
            }
            Standing::Refused(position) => return self.tally.unread(position),
            Standing::Untimed => row.finding(Code::ReadingUntimed),
            Standing::Old => {
                // Whole minutes, rounded up: an old reading never shows the age at which it still counts.
                let minutes = libm::ceil(row.age_min.unwrap_or_default());
                row.finding(Code::ReadingOld)
                    .with("age", self.reader.figure(Kind::Duration, minutes))
                    .with("limit", self.reader.figure(Kind::Duration, limit_min))
            }
            Standing::Blank => row.finding(match row.of {
                ReadingOf::CylinderA | ReadingOf::CylinderB => Code::CylinderNotRead,
                ReadingOf::Air => Code::AirNotRead,
                ReadingOf::Humidity | ReadingOf::DewPoint => Code::HumidityNotRead,
                ReadingOf::Surface if row.id == 0 => Code::SurfaceNotRead,
                ReadingOf::Wind if row.id == 0 => Code::WindNotRead,
                _ => Code::SpotNotRead,
            }),
        };
        let position = self.say(finding);
        self.tally.unread(position);
    }
}
