//! Binding: from the compiled module to the module, its JavaScript glue and its types.

use super::{House, sources};
use anyhow::{Context, Result};
use std::fs;
use std::path::Path;
use wasm_bindgen_cli_support::Bindgen;

/// A bound module.
#[derive(Debug)]
pub struct Bound {
    /// Its name: the files are `NAME.js` and `NAME_bg.wasm`.
    pub name: &'static str,
    /// The module.
    pub wasm: Vec<u8>,
    /// Its JavaScript.
    pub glue: Vec<u8>,
}

/// Binds a module, unless that was done before for the same bytes. The types stay in `target/bound/NAME.d.ts`.
pub fn bind(house: &House, name: &'static str, module: &Path) -> Result<Bound> {
    let bytes = fs::read(module).with_context(|| format!("{} cannot be read", module.display()))?;
    let dir = house.bound();
    let mark = dir.join(format!("{name}.from"));
    let (wasm_at, glue_at) = (dir.join(format!("{name}_bg.wasm")), dir.join(format!("{name}.js")));
    let hash = sources::hash(&bytes);
    if fs::read_to_string(&mark).is_ok_and(|known| known == hash)
        && let (Ok(wasm), Ok(glue)) = (fs::read(&wasm_at), fs::read(&glue_at))
    {
        return Ok(Bound { name, wasm, glue });
    }
    let _ = fs::remove_file(&mark);
    fs::create_dir_all(&dir)?;
    Bindgen::new()
        .input_bytes(name, bytes)
        .out_name(name)
        .web(true)?
        .typescript(true)
        .omit_default_module_path(true)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate(&dir)
        .with_context(|| format!("the module `{name}` could not be bound"))?;
    let bound = Bound { name, wasm: fs::read(wasm_at)?, glue: fs::read(glue_at)? };
    fs::write(mark, hash)?;
    Ok(bound)
}
