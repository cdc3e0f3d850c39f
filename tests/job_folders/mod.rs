//! Where the whole jobs lie, for every test that goes through them all.

#![allow(clippy::expect_used, clippy::panic)]

use serde::de::DeserializeOwned;
use std::path::{Path, PathBuf};

/// The folder of every job, those of older versions too.
pub fn all() -> Vec<PathBuf> {
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

/// A file of JSON as one of our types.
pub fn opened<T: DeserializeOwned>(path: &Path) -> T {
    let text = std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}
