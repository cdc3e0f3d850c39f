//! Taking comments and needless white space out of the hashed folder and of `embed.js`: modules and style sheets with
//! esbuild, file by file; words and samples here.
//!
//! Nothing is bundled, renamed or rewritten, so that a trace names the functions of `www/app/`. The other entry files
//! stay as they are written, the worker among them: its address is for ever, and it is no part of a first visit.

use super::House;
use super::sources::Files;
use super::tool;
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The version of esbuild that the shipped pages are stripped with: another one may give other bytes.
pub const ESBUILD: &str = "0.28.2";

/// Neither an older language nor escapes for the letters of Spanish, and no comment left at all.
const FLAGS: [&str; 5] = [
    "--minify-whitespace",
    "--target=esnext",
    "--charset=utf8",
    "--legal-comments=none",
    "--log-level=warning",
];

/// Finds the pinned esbuild.
pub fn find(house: &House) -> Result<PathBuf> {
    tool::find(house, "esbuild", "esbuild", ESBUILD, |said| said == ESBUILD)
}

/// Strips every module, style sheet, page of words and sample.
pub fn strip(house: &House, esbuild: &Path, here: &mut Files) -> Result<()> {
    let (from, to) = (house.bound().join("as_written"), house.bound().join("stripped"));
    for dir in [&from, &to] {
        let _ = fs::remove_dir_all(dir);
    }
    let mut names = Vec::new();
    for (name, bytes) in here.iter_mut() {
        if name.ends_with(".json") {
            *bytes = packed(bytes);
        } else if name.ends_with(".js") || name.ends_with(".css") {
            let path = from.join(name);
            fs::create_dir_all(path.parent().unwrap_or(&from))?;
            fs::write(path, bytes)?;
            names.push(name.clone());
        }
    }
    let status = Command::new(esbuild)
        .current_dir(&from)
        .args(FLAGS)
        .arg("--outbase=.")
        .arg(format!("--outdir={}", to.display()))
        .args(names.iter().map(|name| format!("./{name}")))
        .status()
        .context("esbuild could not be started")?;
    if !status.success() {
        bail!("esbuild failed");
    }
    for name in names {
        let bytes = fs::read(to.join(&name)).with_context(|| format!("esbuild wrote no {name}"))?;
        here.insert(name, bytes);
    }
    Ok(())
}

/// JSON without the white space between its parts; texts stay byte for byte, and so does the order of names.
fn packed(json: &[u8]) -> Vec<u8> {
    let (mut inside, mut escaped) = (false, false);
    let mut kept = json.to_vec();
    kept.retain(|&byte| {
        if !inside {
            inside = byte == b'"';
            return !byte.is_ascii_whitespace();
        }
        inside = escaped || byte != b'"';
        escaped = !escaped && byte == b'\\';
        true
    });
    kept
}

#[cfg(test)]
mod tests {
    use super::packed;

    #[test]
    fn json_is_packed_and_says_the_same() {
        let written = r#"{
 "b": [1, 2.50,
  true],	"a key": "two  spaces, a \" mark, and \\",
 "a": "Ñ { \\\" : ,  }"
}
"#;
        let packed = packed(written.as_bytes());
        assert_eq!(
            String::from_utf8_lossy(&packed),
            r#"{"b":[1,2.50,true],"a key":"two  spaces, a \" mark, and \\","a":"Ñ { \\\" : ,  }"}"#
        );
        let read = |bytes: &[u8]| serde_json::from_slice::<serde_json::Value>(bytes).expect("JSON");
        assert_eq!(read(&packed), read(written.as_bytes()));
    }
}
