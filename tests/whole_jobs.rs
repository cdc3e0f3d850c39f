//! Every job of `tests/jobs/` against its own checks: figures worked by hand or taken from the published
//! source that its README names.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::job::{Job, Now};
use serde_json::Value;
use std::path::{Path, PathBuf};

fn jobs() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/jobs");
    let entries = |folder: &Path| std::fs::read_dir(folder).expect("tests/jobs");
    let mut found: Vec<PathBuf> = entries(&folder)
        .chain(entries(&folder.join("old")))
        .map(|entry| entry.expect("entry").path())
        .filter(|path| path.join("job.json").is_file())
        .collect();
    found.sort();
    assert!(!found.is_empty());
    found
}

fn json(path: &Path) -> Value {
    let text = std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn at<'a>(tree: &'a Value, path: &str) -> Option<&'a Value> {
    path.split('.').try_fold(tree, |node, step| match step.parse::<usize>() {
        Ok(index) => node.get(index),
        Err(_) => node.get(step),
    })
}

#[test]
fn every_job_meets_its_checks() {
    let mut faults = Vec::new();
    for folder in jobs() {
        let name = folder.file_name().expect("name").to_string_lossy().into_owned();
        let job: Job = serde_json::from_value(json(&folder.join("job.json"))).expect("a job");
        let now: Now = serde_json::from_value(json(&folder.join("now.json"))).expect("an instant");
        let estimate = serde_json::to_value(foamwright::estimate(&job, now)).expect("serializes");
        let checks = json(&folder.join("checks.json"));
        for check in checks.as_array().expect("a list") {
            let path = check["path"].as_str().expect("path");
            let why = check["why"].as_str().expect("why");
            let given = at(&estimate, path);
            let met = match (&check["value"], given) {
                (Value::Number(wanted), Some(Value::Number(given))) => {
                    let tolerance = check["tolerance"].as_f64().expect("tolerance");
                    (wanted.as_f64().unwrap() - given.as_f64().unwrap()).abs() <= tolerance
                }
                (wanted, Some(given)) => wanted == given,
                (_, None) => false,
            };
            if !met {
                faults.push(format!("{name}: {path} is {given:?}, wanted {} ({why})", check["value"]));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn a_job_written_and_read_again_is_the_same_job() {
    for folder in jobs() {
        let job: Job = serde_json::from_value(json(&folder.join("job.json"))).expect("a job");
        let text = serde_json::to_string(&job).expect("serializes");
        assert_eq!(job, serde_json::from_str::<Job>(&text).expect("reads"), "{}", folder.display());
    }
}
