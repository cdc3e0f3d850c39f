//! Compiling the modules for the browser: the estimator's core, and that of the exercises.

use super::House;
use anyhow::{Context, Result, bail};
use std::env;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

const TARGET: &str = "wasm32-unknown-unknown";

/// One of the modules that the library is compiled to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Module {
    /// The estimator.
    Core,
    /// The exercises.
    Practice,
}

impl Module {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Core, Self::Practice];

    /// Its name on the site: `core.js`, `core_bg.wasm`.
    pub fn name(self) -> &'static str {
        match self {
            Self::Core => "core",
            Self::Practice => "exercises",
        }
    }
}

/// Compiles the library for the browser and says where the module is. Quick where nothing has changed.
///
/// Each module has a target folder of its own: the file name of a wasm library carries no hash, so that in one folder
/// each would take the other's place.
pub fn compile(house: &House, module: Module) -> Result<PathBuf> {
    want_target(house)?;
    let folder = house.web_target(module.name());
    let mut cargo = cargo(house);
    cargo.args(["build", "--lib", "--target", TARGET, "--profile", "web", "--target-dir"]);
    cargo.arg(&folder);
    if module == Module::Practice {
        cargo.args(["--features", "practice"]);
    }
    cargo.env("CARGO_ENCODED_RUSTFLAGS", flags(house));
    let status = cargo.status().context("cargo could not be started")?;
    if !status.success() {
        bail!("the module `{}` did not compile for the browser", module.name());
    }
    Ok(folder.join(TARGET).join("web/foamwright.wasm"))
}

/// Cargo, without what the surrounding cargo or shell has set for the host build.
fn cargo(house: &House) -> Command {
    let mut cargo = Command::new(env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo")));
    cargo.current_dir(house.root()).stdin(Stdio::null());
    for (name, _) in env::vars_os() {
        let text = name.to_string_lossy();
        let disturbs = ["RUSTFLAGS", "CARGO_ENCODED_RUSTFLAGS", "RUSTC_WORKSPACE_WRAPPER", "CARGO_MAKEFLAGS"]
            .contains(&text.as_ref())
            || ["CARGO_BUILD_", "CARGO_PROFILE_", "CARGO_TARGET_", "CARGO_PKG_", "CARGO_BIN_", "CARGO_CFG_"]
                .iter()
                .any(|prefix| text.starts_with(prefix) && text != "CARGO_BUILD_JOBS");
        if disturbs {
            cargo.env_remove(&name);
        }
    }
    cargo
}

/// Flags that keep every path of this machine out of the module. Where several fit, the last one counts.
fn flags(house: &House) -> OsString {
    let mut maps: Vec<(PathBuf, &str)> = Vec::new();
    if let Some(home) = home("RUSTUP_HOME", ".rustup") {
        maps.push((home, "/rustup"));
    }
    if let Some(home) = home("CARGO_HOME", ".cargo") {
        let registries = home.join("registry/src");
        maps.push((home, "/cargo"));
        let mut folders: Vec<PathBuf> =
            fs::read_dir(registries).into_iter().flatten().flatten().map(|entry| entry.path()).collect();
        folders.sort();
        maps.extend(folders.into_iter().map(|folder| (folder, "/dep")));
    }
    maps.push((house.root().to_path_buf(), "/foamwright"));
    let mut flags = OsString::new();
    for (from, to) in maps {
        if !flags.is_empty() {
            flags.push("\u{1f}");
        }
        flags.push("--remap-path-prefix=");
        flags.push(from);
        flags.push("=");
        flags.push(to);
    }
    flags
}

fn home(variable: &str, folder: &str) -> Option<PathBuf> {
    env::var_os(variable).map(PathBuf::from).or_else(|| Some(env::home_dir()?.join(folder)))
}

/// Sees to it that Rust's library for the browser is installed.
fn want_target(house: &House) -> Result<()> {
    if has_target(house)? {
        return Ok(());
    }
    eprintln!("Rust's library for the browser is missing: rustup target add {TARGET}");
    let added = Command::new("rustup").args(["target", "add", TARGET]).current_dir(house.root()).status();
    if added.is_ok_and(|status| status.success()) && has_target(house)? {
        return Ok(());
    }
    bail!(
        "Rust's library for the browser is missing and could not be added. With a network run\n\n    \
         rustup target add {TARGET}\n\n\
         or, where Rust does not come from rustup, install your distribution's package for {TARGET}"
    )
}

fn has_target(house: &House) -> Result<bool> {
    let rustc = env::var_os("RUSTC").unwrap_or_else(|| OsString::from("rustc"));
    let said = Command::new(rustc)
        .args(["--print", "target-libdir", "--target", TARGET])
        .current_dir(house.root())
        .output()
        .context("rustc could not be started")?;
    let folder = String::from_utf8_lossy(&said.stdout).trim().to_owned();
    Ok(said.status.success() && holds_std(Path::new(&folder)))
}

fn holds_std(folder: &Path) -> bool {
    let mut files = fs::read_dir(folder).into_iter().flatten().flatten();
    files.any(|file| file.file_name().to_string_lossy().starts_with("libstd-"))
}
