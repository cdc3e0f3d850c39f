//! A next version of a built site, as `build` would make it after one visible word was changed: a new hashed
//! folder beside the old one, the entry files pointing into it, the worker's list with new hashes.

use crate::Step;
use crate::site::Built;
use base64::Engine as _;
use ring::digest::{SHA256, digest};
use serde_json::Value;
use std::path::Path;

impl Built {
    /// The name of the hashed folder.
    pub fn here(&self) -> Step<String> {
        let worker = std::fs::read_to_string(self.folder.join("sw.js"))?;
        let (list, _) = listed(&worker)?;
        list.iter()
            .filter_map(|file| file["url"].as_str()?.strip_suffix("/app.js").map(str::to_owned))
            .next()
            .ok_or_else(|| "the worker's list names no app.js".into())
    }

    /// The next version: in every words file of English, `from` has become `to`.
    pub fn next(&self, name: &str, from: &str, to: &str) -> Step<Self> {
        let next = self.copy(name)?;
        let here = self.here()?;
        let fresh: String = here.chars().rev().collect();
        crate::site::copy_folder(&next.folder.join(&here), &next.folder.join(&fresh))?;

        let mut changed = 0;
        for words in std::fs::read_dir(next.folder.join(&fresh).join("words/en"))? {
            let path = words?.path();
            let text = std::fs::read_to_string(&path)?;
            if text.contains(from) {
                std::fs::write(&path, text.replace(from, to))?;
                changed += 1;
            }
        }
        if changed == 0 {
            return Err(format!("no words file says “{from}”").into());
        }

        for entry in std::fs::read_dir(&next.folder)? {
            let path = entry?.path();
            let text = path.is_file().then(|| std::fs::read_to_string(&path).ok()).flatten();
            if let Some(text) = text.filter(|text| text.contains(&here)) {
                std::fs::write(&path, text.replace(&here, &fresh))?;
            }
        }
        rewrite_worker(&next.folder)?;
        Ok(next)
    }

    /// The same site without one of the files of its hashed folder, as after an upload that broke off. The
    /// worker goes too: it would rightly refuse to keep such a site.
    pub fn without(&self, name: &str, file: &str) -> Step<Self> {
        let torn = self.copy(name)?;
        std::fs::remove_file(torn.folder.join(self.here()?).join(file))?;
        std::fs::remove_file(torn.folder.join("sw.js"))?;
        Ok(torn)
    }
}

/// The worker's list of files, and its text.
fn listed(worker: &str) -> Step<(Vec<Value>, &str)> {
    let from = worker.find("[{\"").ok_or("the worker holds no list of files")?;
    let length = worker[from..].find("}]").ok_or("the worker's list has no end")? + 2;
    let text = &worker[from..from + length];
    Ok((serde_json::from_str(text)?, text))
}

fn rewrite_worker(folder: &Path) -> Step {
    let path = folder.join("sw.js");
    let worker = std::fs::read_to_string(&path)?;
    let (mut list, text) = listed(&worker)?;
    for file in &mut list {
        let bytes = std::fs::read(folder.join(file["url"].as_str().unwrap_or_default()))?;
        let hash = base64::engine::general_purpose::STANDARD.encode(digest(&SHA256, &bytes));
        file["integrity"] = format!("sha256-{hash}").into();
    }
    let version = worker
        .split_once("VERSION = '")
        .and_then(|(_, rest)| rest.split_once('\''))
        .map(|(version, _)| version.to_owned())
        .ok_or("the worker names no version")?;
    let fresh: String = version.chars().rev().collect();
    let worker = worker.replace(text, &serde_json::to_string(&list)?).replace(&version, &fresh);
    std::fs::write(path, worker)?;
    Ok(())
}
