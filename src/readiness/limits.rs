//! What the readings are held against: the narrowest window of the foams used, and the job's own limits.

use super::verdict::Tally;
use crate::findings::Severity;
use crate::foam::{Foam, Window};
use crate::job::{Job, Part, Reader};
use crate::measure::{Band, Fahrenheit};

/// The limits of one job. Where a range was typed, the stricter end counts.
#[derive(Debug, Clone, Copy)]
pub(super) struct Limits {
    /// Both cylinders.
    pub(super) cylinder: Window,
    /// The air.
    pub(super) air: Window,
    /// Surfaces.
    pub(super) surface: Window,
    /// How far a surface has to be above the dew point, in °F.
    pub(super) spread_f: f64,
    /// How far apart A and B may be, in °F.
    pub(super) apart_f: f64,
    /// How long air, humidity and surface readings count, in minutes.
    pub(super) site_age_min: f64,
    /// Wood has to be below this, in percent of its dry weight.
    pub(super) wood_most_pct: f64,
    /// How long readings of wood count, in minutes.
    pub(super) wood_age_min: f64,
    /// How long a forecast counts, in minutes.
    pub(super) forecast_age_min: f64,
    /// The most wind that the labels allow, in miles per hour, if one says.
    pub(super) wind_most_mph: Option<f64>,
    /// Kits are kept at least at this, in °F.
    pub(super) storage_least_f: f64,
    /// Kits are kept at most at this, in °F.
    pub(super) storage_most_f: f64,
    /// The longest cure time of the labels, in minutes; none where one of them does not say.
    pub(super) cure_min: Option<f64>,
    /// How long cylinder readings count, in minutes.
    pub(super) cylinder_age_min: f64,
    /// How long kits have to be in the warm room, in minutes: the longest that a label asks for.
    pub(super) warm_min: f64,
    /// The meter's error in percent of humidity.
    pub(super) meter_pct: f64,
    /// The meter's error in °F.
    pub(super) meter_f: f64,
}

/// The fields of a foam sheet without which nothing can be told to be inside.
const WINDOW_FIELDS: &[&str] = &[
    "cylinder_least",
    "cylinder_most",
    "air_least",
    "air_most",
    "surface_least",
    "surface_most",
    "conditioning",
];

impl Limits {
    /// The limits for the foams that the job uses. A limit that was typed but cannot be understood falls
    /// back to its default, and no GO is given until it is put right.
    pub(super) fn of(job: &Job, foams: &[&Foam], reader: &mut Reader, tally: &mut Tally) -> Self {
        let unread_label = reader.findings.iter().position(|finding| {
            finding.severity == Severity::Stop
                && finding.at.part == Part::Foam
                && WINDOW_FIELDS.contains(&finding.at.field.as_str())
                && foams.iter().any(|foam| foam.id == finding.at.id)
        });
        if let Some(finding) = unread_label {
            tally.unread(finding);
        }
        Self {
            cylinder: narrowest(foams, reader, |foam| foam.cylinder, "cylinder_least", "cylinder_most"),
            air: narrowest(foams, reader, |foam| foam.air, "air_least", "air_most"),
            surface: narrowest(foams, reader, |foam| foam.surface, "surface_least", "surface_most"),
            spread_f: own(job, reader, tally, "dew_spread", |band| band.high),
            apart_f: own(job, reader, tally, "cylinders_apart", |band| band.low),
            site_age_min: own(job, reader, tally, "site_age", |band| band.low),
            cylinder_age_min: own(job, reader, tally, "cylinder_age", |band| band.low),
            wood_most_pct: own(job, reader, tally, "wood_most", |band| band.low),
            wood_age_min: own(job, reader, tally, "wood_age", |band| band.low),
            forecast_age_min: own(job, reader, tally, "forecast_age", |band| band.low),
            wind_most_mph: on_labels(job, foams, reader, tally, "wind_most", lower),
            storage_least_f: on_labels(job, foams, reader, tally, "storage_least", higher)
                .unwrap_or(f64::NAN),
            storage_most_f: on_labels(job, foams, reader, tally, "storage_most", lower).unwrap_or(f64::NAN),
            cure_min: foams
                .iter()
                .map(|foam| foam.cure_min.map(|cure| cure.0))
                .reduce(|one, two| Some(one?.max(two?)))
                .flatten(),
            warm_min: crate::conditioning::label_min(foams, reader),
            meter_pct: own(job, reader, tally, "meter_rh_error", |band| band.high),
            meter_f: own(job, reader, tally, "meter_temp_error", |band| band.high),
        }
    }
}

/// The window that lies within those of all foams used; the table's defaults where none is used. Foams
/// whose windows do not meet leave one whose least is above its most: every reading is then outside.
pub(crate) fn narrowest(
    foams: &[&Foam],
    reader: &mut Reader,
    of: fn(&Foam) -> Window,
    least: &str,
    most: &str,
) -> Window {
    let narrower = |one: Window, other: Window| Window {
        least_f: if other.least_f > one.least_f { other.least_f } else { one.least_f },
        most_f: if other.most_f < one.most_f { other.most_f } else { one.most_f },
        default: one.default || other.default,
    };
    foams.iter().map(|foam| of(foam)).reduce(narrower).unwrap_or_else(|| {
        let mut default = |field| {
            reader
                .take(Part::Foam, 0, &[], field)
                .map_or(Fahrenheit(f64::NAN), |taken| Fahrenheit(taken.value.likely))
        };
        Window { least_f: default(least), most_f: default(most), default: true }
    })
}

/// The stricter of a known limit and the end of another that is stricter.
fn lower(known: Option<f64>, band: Band<f64>) -> f64 {
    known.map_or(band.low, |known| known.min(band.low))
}

fn higher(known: Option<f64>, band: Band<f64>) -> f64 {
    known.map_or(band.high, |known| known.max(band.high))
}

/// The strictest limit of this name on the sheets of the foams used; the table's default, or none, where no
/// sheet says. One that cannot be understood gives no GO.
fn on_labels(
    job: &Job,
    foams: &[&Foam],
    reader: &mut Reader,
    tally: &mut Tally,
    field: &str,
    stricter: fn(Option<f64>, Band<f64>) -> f64,
) -> Option<f64> {
    let mut limit = None;
    for sheet in job.foams.iter().filter(|sheet| foams.iter().any(|foam| foam.id == sheet.id)) {
        let said = reader.findings.len();
        if let Some(taken) = reader.take(Part::Foam, sheet.id, &sheet.entries, field) {
            limit = Some(stricter(limit, taken.value));
        } else if reader.findings.len() > said {
            tally.unread(said);
        }
    }
    limit.or_else(|| reader.take(Part::Foam, 0, &[], field).map(|taken| stricter(None, taken.value)))
}

fn own(job: &Job, reader: &mut Reader, tally: &mut Tally, field: &str, end: fn(Band<f64>) -> f64) -> f64 {
    let said = reader.findings.len();
    if let Some(taken) = reader.take(Part::Job, 0, &job.entries, field) {
        return end(taken.value);
    }
    if reader.findings.len() > said {
        tally.unread(said);
    }
    reader.take(Part::Job, 0, &[], field).map_or(f64::NAN, |taken| end(taken.value))
}
