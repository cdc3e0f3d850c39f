//! Binding: from the compiled module to the module, its JavaScript glue and its types.

use super::{House, sources};
use anyhow::{Context, Result};
use std::fs;
use std::path::Path;
use wasm_bindgen_cli_support::Bindgen;

/// A bound core.
#[derive(Debug)]
pub struct Bound {
    /// `core_bg.wasm`.
    pub wasm: Vec<u8>,
    /// `core.js`.
    pub glue: Vec<u8>,
}

/// Binds the module, unless that was done before for the same bytes. The types stay in `target/bound/core.d.ts`.
pub fn bind(house: &House, module: &Path) -> Result<Bound> {
    let bytes = fs::read(module).with_context(|| format!("{} cannot be read", module.display()))?;
    let dir = house.bound();
    let mark = dir.join("core.from");
    let hash = sources::hash(&bytes);
    if fs::read_to_string(&mark).is_ok_and(|known| known == hash)
        && let (Ok(wasm), Ok(glue)) = (fs::read(dir.join("core_bg.wasm")), fs::read(dir.join("core.js")))
    {
        return Ok(Bound { wasm, glue });
    }
    let _ = fs::remove_file(&mark);
    fs::create_dir_all(&dir)?;
    Bindgen::new()
        .input_bytes("core", bytes)
        .out_name("core")
        .web(true)?
        .typescript(true)
        .omit_default_module_path(true)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate(&dir)
        .context("the core could not be bound")?;
    let bound = Bound { wasm: fs::read(dir.join("core_bg.wasm"))?, glue: fs::read(dir.join("core.js"))? };
    fs::write(mark, hash)?;
    Ok(bound)
}
