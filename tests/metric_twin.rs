//! Every job of `tests/jobs/` typed once more in metric: the same net areas, board feet and findings.
//!
//! The factors are those of NIST Special Publication 811 (2008), appendix B.8: one inch is 25.4 mm, one square
//! foot 0.092 903 04 m², one pound 0.453 592 37 kg and one mile 1.609 344 km exactly, a temperature in °C is
//! (°F − 32) / 1.8. They are multiplied here in whole numbers, not by the tool.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod job_folders;

use foamwright::job::{Entered, Field, Job, Now, Part, field};
use foamwright::measure::{Kind, Outcome, Ratio, Reading, Unit, Units, Value, read};
use job_folders::opened;
use std::collections::BTreeMap;
use std::path::Path;

/// The metric unit of a kind, what one of the unit that it is held in is of it (a whole number of so many parts),
/// and what has to be taken off before. Kinds that are read alike in either system have none.
fn metric(kind: Kind) -> Option<(Unit, (i128, i128), i128)> {
    Some(match kind {
        Kind::Length | Kind::Member | Kind::Probes => (Unit::Mm, (254, 10), 0),
        Kind::Area => (Unit::M2, (9_290_304, 100_000_000), 0),
        Kind::Weight => (Unit::Kg, (45_359_237, 100_000_000), 0),
        Kind::Speed => (Unit::Kmh, (1_609_344, 1_000_000), 0),
        Kind::Temperature => (Unit::C, (5, 9), 32),
        Kind::TemperatureStep => (Unit::C, (5, 9), 0),
        _ => return None,
    })
}

/// A value in the metric unit as a decimal number with every digit that it has; none where it never ends.
fn decimal(value: Ratio, (above, below): (i128, i128), less: i128) -> Option<String> {
    let value = value.minus(Ratio::new(less, 1)?)?.times(Ratio::new(above, below)?)?;
    let digits = (0..=12).find(|digits| {
        Ratio::new(10_i128.pow(*digits), 1).and_then(|tens| value.times(tens)).is_some_and(Ratio::is_whole)
    })?;
    Some(format!("{:.*}", digits as usize, value.to_f64()))
}

/// A range's likely value is its middle; what has another cannot be typed as one.
fn typed(reading: Reading, by: (i128, i128), less: i128) -> Option<String> {
    let [low, likely, high] = [reading.low, reading.likely, reading.high].map(|one| decimal(one, by, less));
    let (low, likely, high) = (low?, likely?, high?);
    Some(if low == high { likely } else { format!("{low} to {high}") })
}

/// What became of the entries.
#[derive(Debug, Default)]
struct Told {
    converted: usize,
    /// By field: why it stands as it was typed.
    kept: BTreeMap<String, usize>,
}

/// Types an entry once more in metric, or keeps it with the unit of its box said; says why it is kept.
fn twin(entry: &mut Entered, row: &Field, units: Units) -> Result<(), &'static str> {
    let unit = entry.unit.unwrap_or(row.unit(units));
    entry.unit = Some(unit);
    let Some((into, by, less)) = metric(row.kind) else { return Err("read alike in either system") };
    let before = read(&entry.text, row.kind, unit, entry.sense);
    let text = match &before {
        Outcome::Read(Value::Band(reading)) => {
            typed(*reading, by, less).ok_or("no decimal number of it ends")?
        }
        Outcome::Read(Value::Member(member)) => match member.depth_in {
            None => decimal(member.width_in, by, less).ok_or("no decimal number of it ends")?,
            Some(_) => return Err("lumber is named in inches everywhere"),
        },
        Outcome::Blank => return Err("blank"),
        Outcome::Ask(_) => return Err("has two meanings and is to be asked about"),
        Outcome::Refused(_) => return Err("is refused and is to stay so"),
    };
    if read(&text, row.kind, into, None) != before {
        return Err("a range whose likely value is not its middle");
    }
    *entry = Entered { field: entry.field.clone(), text, unit: Some(into), sense: None };
    Ok(())
}

fn metric_twin(job: &Job, told: &mut Told) -> Job {
    let mut twin_job = job.clone();
    let units = job.units;
    twin_job.units = Units::Metric;
    let mut all = |part: Part, entries: &mut Vec<Entered>| {
        for entry in entries {
            let Some(row) = field(part, &entry.field) else { continue };
            match twin(entry, row, units) {
                Ok(()) => told.converted += 1,
                Err(why) => *told.kept.entry(format!("{why}: {}", entry.field)).or_default() += 1,
            }
        }
    };
    all(Part::Job, &mut twin_job.entries);
    for surface in &mut twin_job.surfaces {
        all(Part::Surface, &mut surface.entries);
        for opening in &mut surface.openings {
            all(Part::Opening, &mut opening.entries);
        }
        for patch in &mut surface.patches {
            all(Part::Patch, &mut patch.entries);
        }
        for layer in &mut surface.layers {
            all(Part::Layer, &mut layer.entries);
        }
    }
    for foam in &mut twin_job.foams {
        all(Part::Foam, &mut foam.entries);
        for row in &mut foam.r_at {
            all(Part::RRow, &mut row.entries);
        }
    }
    for kit in &mut twin_job.kits {
        all(Part::Kit, &mut kit.entries);
    }
    for kit in &mut twin_job.stock {
        all(Part::Owned, &mut kit.entries);
    }
    for reading in &mut twin_job.readings {
        all(Part::Reading, &mut reading.entries);
    }
    for day in &mut twin_job.forecast {
        all(Part::Forecast, &mut day.entries);
    }
    for event in &mut twin_job.events {
        all(Part::Event, &mut event.entries);
    }
    twin_job
}

/// What differs between a job and its twin.
fn differences(job: &Job, twin: &Job, now: Now) -> Vec<String> {
    let (one, other) = (foamwright::estimate(job, now), foamwright::estimate(twin, now));
    let mut faults = Vec::new();
    let mut same = |what: String, one: Option<f64>, other: Option<f64>| match (one, other) {
        (None, None) => {}
        (Some(one), Some(other)) if (one - other).abs() <= 1e-9 * one.abs().max(1e-9) => {}
        _ => faults.push(format!("{what}: {one:?} and {other:?}")),
    };
    assert_eq!(one.surfaces.len(), other.surfaces.len());
    for (a, b) in one.surfaces.iter().zip(&other.surfaces) {
        let areas = |one: &foamwright::SurfaceEstimate| {
            one.area.as_ref().map(|area| [area.net_ft2.low.0, area.net_ft2.likely.0, area.net_ft2.high.0])
        };
        let (a_net, b_net) = (areas(a), areas(b));
        for (at, column) in ["low", "likely", "high"].into_iter().enumerate() {
            same(
                format!("surface {}, net area, {column}", a.id),
                a_net.map(|net| net[at]),
                b_net.map(|net| net[at]),
            );
        }
    }
    same("to spray".into(), Some(one.quantity.to_spray.likely.0), Some(other.quantity.to_spray.likely.0));
    let said = |found: &[foamwright::findings::Finding]| -> Vec<_> {
        found.iter().map(|one| format!("{:?} at {:?}", one.code, one.at)).collect()
    };
    let (said, again) = (said(&one.findings), said(&other.findings));
    if said != again {
        let lacks: Vec<_> = said.iter().filter(|one| !again.contains(one)).collect();
        let more: Vec<_> = again.iter().filter(|one| !said.contains(one)).collect();
        faults.push(format!("findings: in US units only {lacks:?}, in metric only {more:?}"));
    }
    faults
}

#[test]
fn every_job_typed_in_metric_is_the_same_job() {
    let mut told = Told::default();
    let mut faults = Vec::new();
    for folder in job_folders::all() {
        let name = folder.file_name().expect("name").to_string_lossy().into_owned();
        let job: Job = opened(&folder.join("job.json"));
        let twin = metric_twin(&job, &mut told);
        let now: Now = opened(&folder.join("now.json"));
        faults.extend(differences(&job, &twin, now).into_iter().map(|fault| format!("{name}: {fault}")));
    }
    println!("{} entries typed in metric", told.converted);
    for (why, count) in &told.kept {
        println!("  kept, {why} ({count})");
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(told.converted > 700, "{} entries are too few to show anything", told.converted);
}

/// A twin that is a millimeter longer is seen.
#[test]
fn a_millimeter_is_seen() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/jobs/larkspur-lane");
    let job: Job = opened(&folder.join("job.json"));
    let now: Now = opened(&folder.join("now.json"));
    let mut twin = metric_twin(&job, &mut Told::default());
    assert_eq!(differences(&job, &twin, now), Vec::<String>::new());
    let entries = twin.surfaces.iter_mut().flat_map(|surface| &mut surface.entries);
    let length = entries.into_iter().find(|entry| entry.field == "length").expect("a length");
    let millimeters: f64 = length.text.parse().expect("a number");
    length.text = format!("{}", millimeters + 1.0);
    assert!(!differences(&job, &twin, now).is_empty());
}
