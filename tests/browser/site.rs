//! The site under test: the program that people run, as a process of its own, serving a built folder.

use crate::processes::{Group, free_port, listening};
use crate::{Step, places};
use std::env;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The part of the address that stands for any folder of any host.
pub const UNDER: &str = "/sub/path/";

/// A built folder and the program that serves it.
#[derive(Debug, Clone)]
pub struct Built {
    /// The program.
    pub program: PathBuf,
    /// The folder.
    pub folder: PathBuf,
}

impl Built {
    /// What `FOAMWRIGHT_BIN` and `FOAMWRIGHT_SITE` name; without them, both are built here.
    pub fn find() -> Step<Self> {
        if let (Some(program), Some(folder)) = (env::var_os("FOAMWRIGHT_BIN"), env::var_os("FOAMWRIGHT_SITE"))
        {
            return Ok(Self { program: program.into(), folder: folder.into() });
        }
        let folder = places::evidence().join("site");
        let cargo = env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
        let target =
            env::var_os("CARGO_TARGET_DIR").map_or_else(|| places::package().join("target"), PathBuf::from);
        let built = Command::new(cargo)
            .current_dir(places::package())
            .args(["run", "--quiet", "--", "build", "--unshrunk"])
            .arg(&folder)
            .status()?;
        if !built.success() {
            return Err("the site does not build".into());
        }
        Ok(Self { program: target.join("debug/foamwright"), folder })
    }

    /// A copy of the built folder, to be changed.
    pub fn copy(&self, name: &str) -> Step<Self> {
        let folder = places::scratch(name)?;
        copy_folder(&self.folder, &folder)?;
        Ok(Self { program: self.program.clone(), folder })
    }

    /// Serves the folder on a new port: a new origin, with nothing stored.
    pub async fn serve(&self) -> Step<Site> {
        Site::start(self.clone(), free_port()?, None).await
    }

    /// The same, by a server that notes each request, for [`Site::asked`].
    pub async fn serve_noted(&self) -> Step<Site> {
        let port = free_port()?;
        let notes = places::scratch(&format!("server-{port}"))?.join("notes.log");
        Site::start(self.clone(), port, Some(notes)).await
    }
}

/// Copies a folder and everything in it.
pub fn copy_folder(from: &Path, to: &Path) -> Step {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy_folder(&entry.path(), &target)?;
        } else {
            std::fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}

/// A site being served, or stopped.
#[derive(Debug)]
pub struct Site {
    built: Built,
    /// Its port: it stays the same when it is served again.
    pub port: u16,
    notes: Option<PathBuf>,
    group: Option<Group>,
}

impl Site {
    async fn start(built: Built, port: u16, notes: Option<PathBuf>) -> Step<Self> {
        let mut site = Self { built, port, notes, group: None };
        site.again().await?;
        Ok(site)
    }

    /// The address of the site's folder.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}{UNDER}", self.port)
    }

    /// The origin of the site, as a policy names it.
    pub fn origin(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// What was asked of a server that notes it: status, method, path, referring page.
    pub fn asked(&self) -> Step<Vec<String>> {
        let notes = self.notes.as_ref().ok_or("this server notes nothing")?;
        Ok(std::fs::read_to_string(notes)?.lines().skip(1).map(str::to_owned).collect())
    }

    /// Kills the server, not gently: no socket of it stays open.
    pub fn kill(&mut self) {
        self.group = None;
    }

    /// Serves again, on the same port.
    pub async fn again(&mut self) -> Step {
        self.kill();
        std::fs::create_dir_all(places::evidence())?;
        let said = self.notes.clone().unwrap_or_else(|| places::evidence().join("server.log"));
        let mut command = Command::new(&self.built.program);
        command
            .args(["serve", "--port", &self.port.to_string(), "--under", UNDER, "--dir"])
            .arg(&self.built.folder);
        if self.notes.is_some() {
            command.arg("--log");
        }
        let mut group = Group::start(&mut command, &said)?;
        listening(self.port, &mut group, "the site's server").await?;
        self.group = Some(group);
        Ok(())
    }

    /// Serves another build on the same port, as a host does after an upload.
    pub async fn replace(&mut self, built: &Built) -> Step {
        self.built = built.clone();
        self.again().await
    }
}
