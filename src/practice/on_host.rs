//! The core, asked on the host: the estimate as it is written out, walked by path.

use super::Core;
use crate::job::{Job, Now};
use serde_json::Value;

/// [`estimate`](crate::estimate()) itself.
#[derive(Debug, Clone, Copy, Default)]
pub struct OnHost;

impl Core for OnHost {
    fn figures(&mut self, job: &Job, now: Now, paths: &[String]) -> Vec<Option<f64>> {
        let tree = tree(job, now);
        paths.iter().map(|path| figure_in(&tree, path)).collect()
    }
}

/// A job's estimate as it is written out.
pub fn tree(job: &Job, now: Now) -> Value {
    serde_json::to_value(crate::estimate(job, now)).unwrap_or(Value::Null)
}

/// The figure at a path of an estimate that is written out.
pub fn figure_in(tree: &Value, path: &str) -> Option<f64> {
    if let Some((path, word)) = path.split_once('=') {
        return Some(f64::from(u8::from(walk(tree, path)?.as_str()? == word)));
    }
    let value = walk(tree, path)?;
    value.as_f64().or_else(|| value.get("likely")?.as_f64())
}

fn walk<'a>(tree: &'a Value, path: &str) -> Option<&'a Value> {
    path.split('.').try_fold(tree, |node, name| match (node, name.parse::<usize>()) {
        (Value::Array(list), Ok(index)) => list.get(index),
        (Value::Array(list), Err(_)) => list
            .iter()
            .find(|one| one.get("field").and_then(Value::as_str) == Some(name))
            .and_then(|one| one.get("value")),
        (node, _) => node.get(name),
    })
}
