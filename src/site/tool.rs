//! Tools from npm that the shipped site is made with, each at one version: another one may give other bytes.

use super::House;
use anyhow::{Result, bail};
use std::path::PathBuf;
use std::process::Command;

/// Finds a program of a package in `target/tools`, at the version that is wanted by what it says of itself.
pub fn find(
    house: &House,
    program: &str,
    package: &str,
    version: &str,
    wanted: impl Fn(&str) -> bool,
) -> Result<PathBuf> {
    let path = house.tools().join("node_modules/.bin").join(program);
    let advice = format!(
        "Install it with\n\n    npm install --prefix target/tools {package}@{version}\n\n\
         (or by `bash tests/run tools`), or build without shrinking: foamwright build DIR --unshrunk"
    );
    let Ok(said) = Command::new(&path).arg("--version").output() else {
        bail!("{program} is not installed in target/tools. {advice}");
    };
    let said = String::from_utf8_lossy(&said.stdout).trim().to_owned();
    if !wanted(&said) {
        bail!("{program} in target/tools calls itself `{said}`, wanted is {package} {version}. {advice}");
    }
    Ok(path)
}
