//! Shrinking the bound modules with wasm-opt.

use super::bind::Bound;
use super::{House, sources, tool};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The version of Binaryen that the shipped core is shrunk with: another one gives other bytes.
pub const BINARYEN: &str = "132.0.0";

/// Every feature that Rust's wasm target uses, by name. "All features" would write types that browsers refuse.
/// A function with one caller stays a function unless it is tiny: laid into its caller it packs worse, by a
/// tenth of what a browser fetches. The data stays in one piece: cut at its zeros it is 5 kB shorter and packs 1 kB
/// worse. No value lies in the first kilobyte of memory, the far end of the stack, so that an offset may go into the
/// load itself.
const FLAGS: [&str; 13] = [
    "-Oz",
    "--converge",
    "--one-caller-inline-max-function-size=30",
    "--skip-pass=memory-packing",
    "--low-memory-unused",
    "--enable-bulk-memory",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-reference-types",
    "--enable-multivalue",
    "--strip-debug",
    "--strip-producers",
];

/// Whether the modules are shrunk.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shrink {
    /// As shipped.
    Yes,
    /// Quicker to make, and a third larger.
    No,
}

/// Finds the pinned wasm-opt, which says the first part of the package's version.
pub fn find(house: &House) -> Result<PathBuf> {
    let major = BINARYEN.split('.').next().unwrap_or(BINARYEN);
    tool::find(house, "wasm-opt", "binaryen", BINARYEN, |said| {
        said.split_whitespace().any(|word| word == major)
    })
}

/// Shrinks a module, unless that was done before for the same bytes.
pub fn shrink(house: &House, wasm_opt: &Path, bound: &Bound) -> Result<Vec<u8>> {
    let file = |end: &str| house.bound().join(format!("{}_{end}", bound.name));
    let (from, to, mark) = (file("bg.wasm"), file("shrunk.wasm"), file("shrunk.from"));
    let hash = sources::hash(&[bound.wasm.as_slice(), FLAGS.join(" ").as_bytes()].concat());
    if fs::read_to_string(&mark).is_ok_and(|known| known == hash)
        && let Ok(bytes) = fs::read(&to)
    {
        return Ok(bytes);
    }
    let _ = fs::remove_file(&mark);
    let status = Command::new(wasm_opt)
        .args(FLAGS)
        .arg(from)
        .arg("-o")
        .arg(&to)
        .status()
        .context("wasm-opt could not be started")?;
    if !status.success() {
        bail!("wasm-opt failed");
    }
    let bytes = fs::read(to)?;
    fs::write(mark, hash)?;
    Ok(bytes)
}
