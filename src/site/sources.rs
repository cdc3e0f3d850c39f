//! What the site is put together from.
//!
//! | source | in the site |
//! |---|---|
//! | `www/*` | entry files: the root, under their own names |
//! | `www/app/**` | `HERE/**` |
//! | `www/words/**`, `www/sample/**` | `HERE/words/**`, `HERE/sample/**` |
//! | the bound modules | `HERE/core.js`, `HERE/core_bg.wasm`, `HERE/exercises.js`, `HERE/exercises_bg.wasm` |
//! | the demo job | `HERE/sample/demo.json` |
//! | the table of steps of the working | `HERE/steps.json` |
//! | what the sample sheet says, out of the words | `HERE/words/*/first.json` |
//! | what the frame on a company's page says | `HERE/words/*/embed-first.json` |
//!
//! `HERE` is one folder named by the hash of everything in it.

use super::bind::Bound;
use super::{House, early, first};
use anyhow::{Context, Result, bail};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// Files by their path with `/`, in the order of their names.
pub type Files = BTreeMap<String, Vec<u8>>;

/// Everything that goes into the site, before the hashes are in.
#[derive(Debug, Default)]
pub struct Sources {
    /// Files of the root.
    pub entries: Files,
    /// Files of the hashed folder.
    pub here: Files,
    /// For each page among the entries, the modules of the hashed folder that it needs at once.
    pub early: BTreeMap<String, Vec<String>>,
}

/// Reads everything that goes into the site.
pub fn gather(house: &House, modules: Vec<Bound>) -> Result<Sources> {
    let www = house.www();
    let mut sources = Sources::default();
    for (path, bytes) in folder(&www)? {
        let (top, rest) = path.split_once('/').unwrap_or(("", path.as_str()));
        match top {
            "" => sources.entries.insert(path.clone(), bytes),
            "app" => sources.here.insert(rest.to_owned(), bytes),
            "words" | "sample" => sources.here.insert(path.clone(), bytes),
            _ => bail!("www/{path}: only app/, words/ and sample/ are folders of the site"),
        };
    }
    let demo = house.demo_job();
    let demo = fs::read(&demo).with_context(|| format!("{} cannot be read", demo.display()))?;
    let steps: Vec<_> = foamwright::working::steps().collect();
    let steps = serde_json::to_vec(&steps)?;
    let mut made = vec![("sample/demo.json".to_owned(), demo), ("steps.json".to_owned(), steps)];
    for Bound { name, wasm, glue } in modules {
        made.extend([(format!("{name}.js"), glue), (format!("{name}_bg.wasm"), wasm)]);
    }
    for (name, bytes) in made {
        if sources.here.insert(name.clone(), bytes).is_some() {
            bail!("{name} is made by the build, but a file of this name lies in www/");
        }
    }
    first::lay(&mut sources.here)?;
    sources.early = early::early(&sources.entries, &sources.here);
    Ok(sources)
}

/// Every file below a folder but hidden ones.
fn folder(top: &Path) -> Result<Files> {
    let mut files = Files::new();
    let mut open = vec![(top.to_path_buf(), String::new())];
    while let Some((dir, name)) = open.pop() {
        let entries = fs::read_dir(&dir).with_context(|| format!("{} cannot be read", dir.display()))?;
        for entry in entries {
            let path = entry?.path();
            let own = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
            if own.starts_with('.') {
                continue;
            }
            let full = if name.is_empty() { own } else { format!("{name}/{own}") };
            if path.is_dir() {
                open.push((path, full));
            } else {
                let bytes = fs::read(&path).with_context(|| format!("{} cannot be read", path.display()))?;
                files.insert(full, bytes);
            }
        }
    }
    Ok(files)
}

/// SHA-256 in hexadecimal.
pub fn hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}
