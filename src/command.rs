//! The command line: what may be asked of the program, and which part answers.

use crate::site::{self, House, Server, Shrink};
use anyhow::{Context, Result, bail};
use std::path::PathBuf;

const HELP: &str = "\
Foamwright: from tape measure to areas, depth, board feet, kits, lifts and go/hold.

  foamwright [serve] [--port N] [--under /PATH/]
      Builds the site and serves it on this machine: on port 8080, or on the next free one.
      --port N        on exactly this port (0: any free one)
      --under /PATH/  below a path, as on a host that gives a project a folder
      --dir DIR       serves a folder that `build` made, as it is
      --log           prints each request

  foamwright build DIR [--unshrunk]
      Writes the site into a folder, for any static host.
      --unshrunk      without wasm-opt

  foamwright estimate FILE [--text] [--lang en|es] [--now MS]
      Prints everything that follows from a job file (- reads it from standard input) as JSON.
      --text          as a sheet for people
      --lang es       in Spanish
      --now MS        as of this instant, in milliseconds since 1970 UTC
      --offset MIN    with a clock so many minutes east of UTC

  foamwright --help | --version
";

/// What was asked.
#[derive(Debug, PartialEq)]
pub enum Command {
    /// Print the help.
    Help,
    /// Print the version.
    Version,
    /// Build and serve, or serve a built folder.
    Serve {
        /// The port, if it must be this one.
        port: Option<u16>,
        /// The path below which the site lies.
        under: String,
        /// The built folder.
        dir: Option<PathBuf>,
        /// Whether each request is printed.
        log: bool,
    },
    /// Write the site into a folder.
    Build {
        /// The folder.
        dir: PathBuf,
        /// Whether wasm-opt is left out.
        unshrunk: bool,
    },
}

/// Understands the arguments.
pub fn read(arguments: &[String]) -> Result<Command> {
    let mut words = Words::of(arguments)?;
    if words.switch("--help") || words.switch("-h") {
        return Ok(Command::Help);
    }
    if words.switch("--version") || words.switch("-V") {
        return Ok(Command::Version);
    }
    let name = words.free().unwrap_or_else(|| "serve".to_owned());
    let command = match name.as_str() {
        "serve" => Command::Serve {
            port: words.number("--port")?,
            under: site::under(&words.value("--under").unwrap_or_default())?,
            dir: words.value("--dir").map(PathBuf::from),
            log: words.switch("--log"),
        },
        "build" => Command::Build {
            dir: words.free().context("build needs a folder: foamwright build DIR")?.into(),
            unshrunk: words.switch("--unshrunk"),
        },
        "help" => Command::Help,
        _ => bail!("there is no command `{name}`; see foamwright --help"),
    };
    words.done()?;
    Ok(command)
}

/// Does what was asked.
pub fn run(command: Command) -> Result<()> {
    match command {
        Command::Help => print!("{HELP}"),
        Command::Version => println!("foamwright {}", env!("CARGO_PKG_VERSION")),
        Command::Serve { port, under, dir, log } => {
            let dir = match dir {
                Some(dir) => dir,
                None => site::prepare(&House::find()?)?,
            };
            Server { dir, under, log }.serve(port)?;
        }
        Command::Build { dir, unshrunk } => {
            let shrink = if unshrunk { Shrink::No } else { Shrink::Yes };
            let site = site::build(&House::find()?, &dir, shrink)?;
            println!("{}: {} files in all, the current ones in {}/", dir.display(), site.files, site.here);
        }
    }
    Ok(())
}

/// The arguments, taken away one by one.
struct Words {
    free: Vec<String>,
    switches: Vec<String>,
    values: Vec<(String, String)>,
}

const WITH_VALUE: [&str; 6] = ["--port", "--under", "--dir", "--lang", "--now", "--offset"];

impl Words {
    fn of(arguments: &[String]) -> Result<Self> {
        let mut words = Self { free: Vec::new(), switches: Vec::new(), values: Vec::new() };
        let mut rest = arguments.iter();
        while let Some(word) = rest.next() {
            let (name, inline) = match word.split_once('=') {
                Some((name, value)) if name.starts_with("--") => (name, Some(value.to_owned())),
                _ => (word.as_str(), None),
            };
            if WITH_VALUE.contains(&name) {
                let value = inline.or_else(|| rest.next().cloned());
                let value = value.with_context(|| format!("{name} needs a value"))?;
                words.values.push((name.to_owned(), value));
            } else if name.starts_with('-') && name != "-" {
                words.switches.push(word.clone());
            } else {
                words.free.push(word.clone());
            }
        }
        words.free.reverse();
        Ok(words)
    }

    fn free(&mut self) -> Option<String> {
        self.free.pop()
    }

    fn switch(&mut self, name: &str) -> bool {
        let before = self.switches.len();
        self.switches.retain(|one| one != name);
        self.switches.len() < before
    }

    fn value(&mut self, name: &str) -> Option<String> {
        let at = self.values.iter().position(|(one, _)| one == name)?;
        Some(self.values.remove(at).1)
    }

    fn number<T: std::str::FromStr>(&mut self, name: &str) -> Result<Option<T>> {
        let Some(text) = self.value(name) else { return Ok(None) };
        let number = text.parse().ok().with_context(|| format!("{name} takes a number, not `{text}`"))?;
        Ok(Some(number))
    }

    fn done(self) -> Result<()> {
        let left =
            self.free.iter().chain(&self.switches).chain(self.values.iter().map(|(name, _)| name)).next();
        match left {
            Some(word) => bail!("`{word}` is not understood here; see foamwright --help"),
            None => Ok(()),
        }
    }
}
