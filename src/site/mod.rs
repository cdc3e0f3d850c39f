//! Making the site and serving it: compile the core for the browser, bind it, put the files together, serve.
//!
//! ```text
//! src/ ──compile──▶ foamwright.wasm ──bind──▶ core.js, core_bg.wasm ──shrink──▶ ┐
//! www/, tests/jobs/ ──────────────────────────────────────────────────assemble──┴▶ DIR ──serve──▶ browser
//! ```

mod assemble;
mod bind;
mod compile;
mod house;
mod serve;
mod shrink;
mod sources;

pub use assemble::Site;
pub use house::House;
pub use serve::{Server, under};
pub use shrink::Shrink;

use anyhow::Result;
use std::path::{Path, PathBuf};

/// Builds the site for serving on this machine, unshrunk, and says where it is.
pub fn prepare(house: &House) -> Result<PathBuf> {
    let dir = house.site();
    build(house, &dir, Shrink::No)?;
    Ok(dir)
}

/// Builds the site into a folder.
pub fn build(house: &House, dir: &Path, shrink: Shrink) -> Result<Site> {
    // Before the minutes of compiling, whatever would refuse the result at the end.
    assemble::check(dir)?;
    let wasm_opt = match shrink {
        Shrink::Yes => Some(shrink::find(house)?),
        Shrink::No => None,
    };
    let wasm = compile::compile(house)?;
    let bound = bind::bind(house, &wasm)?;
    let wasm = match wasm_opt {
        Some(wasm_opt) => shrink::shrink(house, &wasm_opt, &bound)?,
        None => bound.wasm,
    };
    let sources = sources::gather(house, bound.glue, wasm)?;
    assemble::assemble(sources, dir)
}
