//! Putting the site together: the hashed folder, the names in the entry files, the worker's list.
//!
//! Placeholders in entry files:
//!
//! - `@HERE@` becomes the name of the hashed folder, which also serves as the name of the version;
//! - `<!--@PRELOAD@-->` becomes links that fetch the core and the modules that the page's own one imports early;
//! - in `sw.js`, `/*@FILES@*/[]` becomes the list of every file as `{url, integrity}`, sorted, `sw.js` itself
//!   and what is for other sites' pages left out, and `@VERSION@` the hash of all.

use super::sources::{Files, Sources, hash};
use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::fs;
use std::path::Path;

/// The file in which a built folder remembers what it holds; hidden, never served.
const MARK: &str = ".foamwright";
const HASH_LENGTH: usize = 16;

/// A site as written.
#[derive(Debug)]
pub struct Site {
    /// The name of the current hashed folder.
    pub here: String,
    /// How many files there are.
    pub files: usize,
}

#[derive(Debug, Default, Serialize, Deserialize)]
struct Mark {
    here: String,
    before: String,
    entries: Vec<String>,
}

#[derive(Serialize)]
struct Listed<'a> {
    url: &'a str,
    integrity: String,
}

/// Refuses a folder that holds anything which no build has put there.
pub fn check(dir: &Path) -> Result<()> {
    let Ok(entries) = fs::read_dir(dir) else { return Ok(()) };
    let visible = entries.flatten().any(|entry| !entry.file_name().to_string_lossy().starts_with('.'));
    if visible && !dir.join(MARK).is_file() {
        bail!("{} holds other files; name an empty folder or one that `build` has made", dir.display());
    }
    Ok(())
}

/// Writes the site. The hashed folder of the build before stays, for pages that are still open.
pub fn assemble(sources: Sources, dir: &Path) -> Result<Site> {
    check(dir)?;
    let Sources { mut entries, here: folder, early } = sources;
    let here = name_of(&folder);
    for (name, bytes) in &mut entries {
        replace(bytes, "@HERE@", &here);
        if let Some(modules) = early.get(name) {
            replace(bytes, "<!--@PRELOAD@-->", &preload(&here, modules));
        }
    }
    let mut worker = entries.remove("sw.js");
    let mut all: Files = folder.into_iter().map(|(name, bytes)| (format!("{here}/{name}"), bytes)).collect();
    all.append(&mut entries.clone());
    if let Some(worker) = &mut worker {
        let listed: Vec<Listed> = all
            .iter()
            .filter(|(name, _)| !elsewhere(name))
            .map(|(url, bytes)| Listed { url, integrity: integrity(bytes) })
            .collect();
        let list = serde_json::to_string(&listed)?;
        let version = short(&hash(&[list.as_bytes(), worker.as_slice()].concat()));
        replace(worker, "/*@FILES@*/[]", &list);
        replace(worker, "@VERSION@", &version);
    }

    let old = mark(dir);
    let before = if old.here == here { old.before } else { old.here };
    fs::create_dir_all(dir).with_context(|| format!("{} cannot be made", dir.display()))?;
    let mut names: Vec<String> = entries.into_keys().collect();
    for (name, bytes) in &all {
        put(dir, name, bytes)?;
    }
    put(dir, ".nojekyll", b"")?;
    if let Some(worker) = &worker {
        put(dir, "sw.js", worker)?;
        names.push("sw.js".to_owned());
    }
    for stale in old.entries.iter().filter(|name| !names.contains(name)) {
        let _ = fs::remove_file(dir.join(stale));
    }
    for entry in fs::read_dir(dir)?.flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        if is_hash(&name) && name != here && name != before {
            fs::remove_dir_all(entry.path())?;
        }
    }
    let files = all.len() + usize::from(worker.is_some());
    put(dir, MARK, serde_json::to_string(&Mark { here: here.clone(), before, entries: names })?.as_bytes())?;
    Ok(Site { here, files })
}

/// Whether a file is for other sites' pages alone: the estimator's frame and its script, and the invented company.
/// A device that keeps the tool has no use for them, and who edits settings beside them must not spoil the list.
fn elsewhere(name: &str) -> bool {
    let mut parts = name.rsplit('/');
    let file = parts.next().unwrap_or_default();
    file.starts_with("embed") || file.starts_with("company") || parts.next() == Some("embed")
}

fn mark(dir: &Path) -> Mark {
    let text = fs::read_to_string(dir.join(MARK)).unwrap_or_default();
    serde_json::from_str(&text).unwrap_or_default()
}

/// The name of a folder with these files: a hash of their names, lengths and contents.
fn name_of(files: &Files) -> String {
    let mut all = Sha256::new();
    for (name, bytes) in files {
        all.update(format!("{name}\n{}\n", bytes.len()));
        all.update(bytes);
    }
    let full: String = all.finalize().iter().map(|byte| format!("{byte:02x}")).collect();
    short(&full)
}

fn short(hash: &str) -> String {
    hash.chars().take(HASH_LENGTH).collect()
}

fn is_hash(name: &str) -> bool {
    name.len() == HASH_LENGTH
        && name.bytes().all(|byte| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte))
}

fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", BASE64.encode(Sha256::digest(bytes)))
}

fn replace(bytes: &mut Vec<u8>, mark: &str, with: &str) {
    if let Ok(text) = std::str::from_utf8(bytes)
        && text.contains(mark)
    {
        *bytes = text.replace(mark, with).into_bytes();
    }
}

fn put(dir: &Path, name: &str, bytes: &[u8]) -> Result<()> {
    let path = dir.join(name);
    if fs::read(&path).is_ok_and(|known| known == bytes) {
        return Ok(());
    }
    if let Some(parent) = path.parent() {
        fs::create_dir_all(parent)?;
    }
    fs::write(&path, bytes).with_context(|| format!("{} cannot be written", path.display()))
}

/// Links for the core and the modules that the page needs at once.
fn preload(here: &str, modules: &[String]) -> String {
    let mut links =
        vec![format!(r#"<link rel="preload" as="fetch" href="{here}/core_bg.wasm" crossorigin>"#)];
    links.extend(modules.iter().map(|name| format!(r#"<link rel="modulepreload" href="{here}/{name}">"#)));
    links.join("\n")
}

#[cfg(test)]
mod tests {
    use super::super::early;
    use super::*;

    fn sources(app: &str) -> Sources {
        let bytes = |text: &str| text.as_bytes().to_vec();
        let mut sources = Sources::default();
        sources.entries.insert(
            "index.html".into(),
            bytes("<head><!--@PRELOAD@--></head><script type=\"module\" src=\"@HERE@/app.js\">"),
        );
        sources.entries.insert(
            "embed.html".into(),
            bytes("<head><!--@PRELOAD@--></head><script type=\"module\" src=\"@HERE@/parts/row.js\">"),
        );
        sources.entries.insert("sw.js".into(), bytes("const v = '@VERSION@', files = /*@FILES@*/[];"));
        sources.here.insert("app.js".into(), bytes(app));
        sources.here.insert("parts/row.js".into(), bytes("import { a } from \"../core.js\";"));
        sources.here.insert("core.js".into(), bytes("export const a = 1;"));
        for name in ["embed.js", "company-settings.json"] {
            sources.entries.insert(name.into(), bytes(""));
        }
        for name in ["embed/frame.js", "words/en/embed-first.json"] {
            sources.here.insert(name.into(), bytes(""));
        }
        sources.early = early::early(&sources.entries, &sources.here);
        sources
    }

    fn folder(name: &str) -> std::path::PathBuf {
        let dir = std::env::temp_dir().join(format!("foamwright-{}-{name}", std::process::id()));
        let _ = fs::remove_dir_all(&dir);
        dir
    }

    fn text(dir: &Path, name: &str) -> String {
        fs::read_to_string(dir.join(name)).expect(name)
    }

    #[test]
    fn names_go_into_pages_and_worker() {
        let dir = folder("names");
        let site =
            assemble(sources("import {\n  row,\n} from './parts/row.js';\nimport(\"./later.js\")"), &dir)
                .expect("built");
        let page = text(&dir, "index.html");
        assert!(page.contains(&format!("src=\"{}/app.js\"", site.here)));
        for module in ["app.js", "parts/row.js", "core.js"] {
            assert!(
                page.contains(&format!("<link rel=\"modulepreload\" href=\"{}/{module}\">", site.here)),
                "{page}"
            );
        }
        assert!(!page.contains("later.js"), "a module fetched when opened is not fetched early");
        let other = text(&dir, "embed.html");
        assert!(other.contains("core_bg.wasm\" crossorigin>") && !other.contains('@'), "{other}");
        assert!(other.contains("/parts/row.js\">") && other.contains("/core.js\">"), "{other}");
        assert!(!other.contains("app.js"), "what another page starts with is not fetched: {other}");
        let worker = text(&dir, "sw.js");
        assert!(!worker.contains('@'), "{worker}");
        let list = worker.split_once("files = ").expect("list").1.trim_end_matches(';');
        let list: Vec<serde_json::Value> = serde_json::from_str(list).expect("JSON");
        let urls: Vec<&str> = list.iter().map(|file| file["url"].as_str().expect("url")).collect();
        assert_eq!(urls.len(), 4);
        assert!(!urls.iter().any(|url| url.contains("embed") || url.contains("company")), "{urls:?}");
        assert!(urls.is_sorted() && urls.contains(&"index.html") && !urls.contains(&"sw.js"));
        fs::remove_dir_all(dir).expect("removed");
    }

    #[test]
    fn the_build_before_stays_and_older_ones_go() {
        let dir = folder("before");
        let names: Vec<String> = ["1", "2", "2", "3"]
            .iter()
            .map(|app| assemble(sources(app), &dir).expect("built").here)
            .collect();
        assert_eq!(names[1], names[2]);
        let there: Vec<bool> = names.iter().map(|name| dir.join(name).is_dir()).collect();
        assert_eq!(there, [false, true, true, true]);
        fs::remove_dir_all(dir).expect("removed");
    }

    #[test]
    fn a_folder_with_other_files_is_refused_and_untouched() {
        let dir = folder("foreign");
        fs::create_dir_all(&dir).expect("made");
        fs::write(dir.join("thesis.txt"), "years of work").expect("written");
        assert!(assemble(sources("1"), &dir).is_err());
        assert_eq!(fs::read_dir(&dir).expect("there").count(), 1);
        fs::remove_dir_all(dir).expect("removed");
    }
}
