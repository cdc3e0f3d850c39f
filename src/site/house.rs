//! Where things lie on this machine.

use anyhow::{Result, bail};
use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};

/// The checkout that the site is made from.
#[derive(Debug, Clone)]
pub struct House {
    root: PathBuf,
}

impl House {
    /// The checkout: the one that cargo runs, else the one that this program was built from.
    pub fn find() -> Result<Self> {
        let root =
            env::var_os("CARGO_MANIFEST_DIR").unwrap_or_else(|| OsString::from(env!("CARGO_MANIFEST_DIR")));
        let root = PathBuf::from(root);
        if !root.join("www").is_dir() || !root.join("src/lib.rs").is_file() {
            bail!(
                "the sources are not at {}: run this in a checkout with `cargo run`, \
                 or serve a built folder with `foamwright serve --dir DIR`",
                root.display()
            );
        }
        Ok(Self { root })
    }

    /// The top of the checkout.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The hand-written part of the site.
    pub fn www(&self) -> PathBuf {
        self.root.join("www")
    }

    /// The job that the page opens with.
    pub fn demo_job(&self) -> PathBuf {
        self.root.join("tests/jobs/larkspur-lane/job.json")
    }

    /// Where a module is compiled for the browser. Always inside this checkout, even where one target folder
    /// serves several: the file name of a wasm library carries no hash, so that two checkouts sharing a folder
    /// would take each other's.
    pub fn web_target(&self, module: &str) -> PathBuf {
        self.root.join(if module == "core" {
            "target/web".to_owned()
        } else {
            format!("target/web-{module}")
        })
    }

    /// Where the bound glue, its types and the shrunk core are kept.
    pub fn bound(&self) -> PathBuf {
        self.root.join("target/bound")
    }

    /// Where the site that `serve` builds is.
    pub fn site(&self) -> PathBuf {
        self.root.join("target/site")
    }

    /// Where tools are installed.
    pub fn tools(&self) -> PathBuf {
        self.root.join("target/tools")
    }
}
