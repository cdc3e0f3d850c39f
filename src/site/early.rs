//! Which modules each page needs at once, so that a browser fetches them side by side.

use super::sources::Files;
use std::collections::BTreeMap;

/// For each entry file that starts a module of the folder, the modules that it needs at once, sorted.
pub fn early(entries: &Files, folder: &Files) -> BTreeMap<String, Vec<String>> {
    let started = entries.iter().filter_map(|(name, bytes)| {
        let page = String::from_utf8_lossy(bytes);
        Some((name.clone(), modules(start(&page)?, folder)))
    });
    started.collect()
}

/// The module of the folder with which a page starts.
fn start(page: &str) -> Option<&str> {
    let (_, rest) = page.split_once(r#"<script type="module" src="@HERE@/"#)?;
    rest.split_once('"').map(|(name, _)| name)
}

/// Every module that this one imports, directly or through another one. A module that is imported by a call is
/// fetched when it is called. Reads the modules as written: stripped ones have no lines to go by.
fn modules(start: &str, folder: &Files) -> Vec<String> {
    let mut modules = Vec::new();
    // The glue is loaded by a function, so that it can be loaded again; it is needed first all the same.
    let mut open = vec![start.to_owned(), "core.js".to_owned()];
    while let Some(name) = open.pop() {
        let Some(bytes) = folder.get(&name) else { continue };
        if modules.contains(&name) {
            continue;
        }
        open.extend(imports(&String::from_utf8_lossy(bytes)).map(|to| resolve(&name, to)));
        modules.push(name);
    }
    modules.sort();
    modules
}

/// What a module imports statically, from lines that start with `import` or `export` or end such a statement.
fn imports(text: &str) -> impl Iterator<Item = &str> {
    text.lines().filter_map(|line| {
        let line = line.trim();
        let from =
            if let Some(bare) = line.strip_prefix("import \"").or_else(|| line.strip_prefix("import '")) {
                bare
            } else if line.starts_with("import ") || line.starts_with("export ") || line.starts_with('}') {
                let (_, rest) = line.split_once(" from ")?;
                rest.trim_start().get(1..)?
            } else {
                return None;
            };
        let end = from.find(['"', '\''])?;
        from.get(..end).filter(|to| to.starts_with('.'))
    })
}

fn resolve(from: &str, to: &str) -> String {
    let mut parts: Vec<&str> = from.split('/').collect();
    parts.pop();
    for part in to.split('/') {
        match part {
            "." | "" => {}
            ".." => {
                parts.pop();
            }
            name => parts.push(name),
        }
    }
    parts.join("/")
}
