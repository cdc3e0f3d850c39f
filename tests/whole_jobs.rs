//! Every job of `tests/jobs/` against its own checks: figures worked by hand or taken from the published
//! source that its README names.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod job_folders;

use foamwright::job::{Job, Now};
use job_folders::opened;
use serde_json::Value;

fn at<'a>(tree: &'a Value, path: &str) -> Option<&'a Value> {
    path.split('.').try_fold(tree, |node, step| match step.parse::<usize>() {
        Ok(index) => node.get(index),
        Err(_) => node.get(step),
    })
}

#[test]
fn every_job_meets_its_checks() {
    let mut faults = Vec::new();
    for folder in job_folders::all() {
        let name = folder.file_name().expect("name").to_string_lossy().into_owned();
        let job: Job = opened(&folder.join("job.json"));
        let now: Now = opened(&folder.join("now.json"));
        let estimate = serde_json::to_value(foamwright::estimate(&job, now)).expect("serializes");
        let checks: Value = opened(&folder.join("checks.json"));
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
    for folder in job_folders::all() {
        let job: Job = opened(&folder.join("job.json"));
        let text = serde_json::to_string(&job).expect("serializes");
        assert_eq!(job, serde_json::from_str::<Job>(&text).expect("reads"), "{}", folder.display());
    }
}
