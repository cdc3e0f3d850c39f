//! Making the site and serving it: compile the modules for the browser, bind them, put the files together, serve.
//!
//! ```text
//! src/ ──compile──▶ foamwright.wasm ──bind──▶ core.js, core_bg.wasm ──shrink──▶ ┐
//!   └─(practice)──▶ foamwright.wasm ──bind──▶ exercises.js, exercises_bg.wasm ─▶ ┤
//! www/, tests/jobs/ ─────────────────────────────────────────strip──────assemble─┴▶ DIR ──serve──▶ browser
//! ```

mod assemble;
mod bind;
mod compile;
mod early;
mod first;
mod house;
mod serve;
mod shrink;
mod sources;
mod strip;
mod tool;

pub use assemble::Site;
pub use house::House;
pub use serve::{Server, under};
pub use shrink::Shrink;

use anyhow::Result;
use compile::Module;
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
    let tools = match shrink {
        Shrink::Yes => Some((shrink::find(house)?, strip::find(house)?)),
        Shrink::No => None,
    };
    let mut modules = Vec::new();
    for module in Module::ALL {
        let wasm = compile::compile(house, module)?;
        modules.push(bind::bind(house, module.name(), &wasm)?);
    }
    let Some((wasm_opt, esbuild)) = tools else {
        return assemble::assemble(sources::gather(house, modules)?, dir);
    };
    for bound in &mut modules {
        bound.wasm = shrink::shrink(house, &wasm_opt, bound)?;
    }
    let mut sources = sources::gather(house, modules)?;
    strip::strip(house, &esbuild, &mut sources.here)?;
    // The script on other sites' pages is weighed with every visit there.
    let mut script: sources::Files = sources.entries.remove_entry("embed.js").into_iter().collect();
    strip::strip(house, &esbuild, &mut script)?;
    sources.entries.append(&mut script);
    assemble::assemble(sources, dir)
}
