//! Where things lie: the package under test, the tools, the evidence of a failed journey.

use crate::Step;
use std::env;
use std::path::{Path, PathBuf};

/// The package under test.
pub fn package() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).unwrap_or(here).to_path_buf()
}

/// What a failed journey leaves behind, and the scratch folders of this run.
pub fn evidence() -> PathBuf {
    package().join("target/browser")
}

fn run() -> PathBuf {
    env::temp_dir().join(format!("foamwright-journeys-{}", std::process::id()))
}

/// Takes away every scratch folder of this run.
pub fn sweep() {
    let _ = std::fs::remove_dir_all(run());
}

/// A new empty folder for this run.
pub fn scratch(name: &str) -> Step<PathBuf> {
    let folder = run().join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder)?;
    Ok(folder)
}

/// A program: named by an environment variable, or put into `target/tools/bin` by the test run, or on PATH.
pub fn program(variable: &str, name: &str) -> Step<PathBuf> {
    if let Some(given) = env::var_os(variable) {
        return Ok(given.into());
    }
    let path = env::var_os("PATH").unwrap_or_default();
    std::iter::once(package().join("target/tools/bin"))
        .chain(env::split_paths(&path))
        .map(|folder| folder.join(name))
        .find(|file| file.is_file())
        .ok_or_else(|| {
            format!("{name} is not there. `bash tests/run` installs it; or set {variable}.").into()
        })
}

/// A file of an npm package that only the tests use.
pub fn from_npm(file: &str) -> Step<PathBuf> {
    ["tests/node_modules", "target/tools/node_modules", "node_modules"]
        .iter()
        .map(|folder| package().join(folder).join(file))
        .chain(env::var_os("FOAMWRIGHT_NODE_MODULES").map(|folder| Path::new(&folder).join(file)))
        .find(|file| file.is_file())
        .ok_or_else(|| {
            format!("{file} is not there. `bash tests/run` installs it (npm ci in tests/).").into()
        })
}
