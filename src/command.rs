//! The command line: what may be asked of the program, and which part answers.

use crate::job_file;
use crate::sheet::{self, Words as Language, sheet};
use crate::site::{self, House, Server, Shrink};
use anyhow::{Context, Result, bail};
use foamwright::job::{Job, Now};
use foamwright::measure::Units;
use foamwright::practice::{self, BadSeed, Made, OnHost, Seed};
use std::io::Write;
use std::path::PathBuf;
use std::time::{SystemTime, UNIX_EPOCH};

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
      --unshrunk      without wasm-opt and esbuild: as written, quicker to make, a third larger

  foamwright estimate FILE [--text] [--lang en|es] [--now MS]
      Prints everything that follows from a job file (- reads it from standard input) as JSON.
      --text          as a sheet for people
      --lang es       in Spanish
      --now MS        as of this instant, in milliseconds since 1970 UTC
      --offset MIN    on a clock so many minutes east of UTC

  foamwright exercise SEED... [--key] [--lang en|es] [--units us|metric] [--json]
      Prints the exercises of these numbers (1-4-7f3a), as the page draws them.
      --key           with the answers, and what the known mistakes give
      --units metric  in meters, degrees Celsius and RSI
      --json          as JSON, an exercise a line

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
        /// Whether wasm-opt and esbuild are left out.
        unshrunk: bool,
    },
    /// Work out a job file.
    Estimate {
        /// The file, or `-`.
        file: String,
        /// The language, if a sheet for people is wanted.
        text: Option<String>,
        /// The instant, in milliseconds since 1970 UTC; without one, now.
        now: Option<f64>,
        /// Minutes east of UTC; without them, those of the newest reading.
        offset_min: Option<i32>,
    },
    /// Print exercises.
    Exercise {
        /// Their numbers.
        seeds: Vec<Seed>,
        /// Whether with the answers.
        key: bool,
        /// In which units.
        units: Units,
        /// The language; without one, JSON.
        text: Option<String>,
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
        "estimate" => {
            let file = words.free().context("estimate needs a job file: foamwright estimate FILE")?;
            let language = words.value("--lang");
            let text = match (words.switch("--text"), language) {
                (true, language) => Some(language.unwrap_or_else(|| "en".to_owned())),
                (false, None) => None,
                (false, Some(_)) => bail!("--lang goes with --text: JSON holds no words"),
            };
            let now = words.number("--now")?;
            if now.is_some_and(|ms: f64| ms.is_nan() || ms.abs() > 8.64e15) {
                bail!("--now takes milliseconds since 1970 UTC");
            }
            Command::Estimate { file, text, now, offset_min: words.number("--offset")? }
        }
        "exercise" => {
            let mut seeds = Vec::new();
            while let Some(text) = words.free() {
                seeds.push(seed(&text)?);
            }
            if seeds.is_empty() {
                bail!("exercise needs the number of one: foamwright exercise 1-4-7f3a");
            }
            let units = match words.value("--units").as_deref() {
                None | Some("us") => Units::Us,
                Some("metric") => Units::Metric,
                Some(other) => bail!("--units takes us or metric, not `{other}`"),
            };
            let text = match (words.switch("--json"), words.value("--lang")) {
                (false, language) => Some(language.unwrap_or_else(|| "en".to_owned())),
                (true, None) => None,
                (true, Some(_)) => bail!("--lang does not go with --json: JSON holds no words"),
            };
            Command::Exercise { seeds, key: words.switch("--key"), units, text }
        }
        "help" => Command::Help,
        _ => bail!("there is no command `{name}`; see foamwright --help"),
    };
    words.done()?;
    Ok(command)
}

/// The number of an exercise.
fn seed(text: &str) -> Result<Seed> {
    match Seed::read(text) {
        Ok(seed) => Ok(seed),
        Err(BadSeed::Form) => bail!("`{text}` is no number of an exercise; one looks like 1-4-7f3a"),
        Err(BadSeed::Newer) => bail!("a newer version of this program made the exercise `{text}`"),
    }
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
        Command::Estimate { file, text, now, offset_min } => {
            let language = text.map(|language| Language::of(&language)).transpose()?;
            let job = job_file::open(&file)?;
            let now = instant(&job, now, offset_min)?;
            let estimate = foamwright::estimate(&job, now);
            let mut text = match language {
                Some(language) => sheet(&job, &estimate, now, &language),
                None => serde_json::to_string_pretty(&estimate)?,
            };
            if !text.ends_with('\n') {
                text.push('\n');
            }
            std::io::stdout().write_all(text.as_bytes()).context("the result cannot be written")?;
        }
        Command::Exercise { seeds, key, units, text } => {
            let language = text.map(|language| Language::of(&language)).transpose()?;
            let mut out = std::io::stdout().lock();
            for (n, seed) in seeds.into_iter().enumerate() {
                let made = practice::exercise(seed, units);
                let made = made.with_context(|| format!("there is no exercise {seed}"))?;
                let text = match &language {
                    Some(language) => sheet::exercise(&made, key, language),
                    None => json(&made, key)? + "\n",
                };
                let between = if n > 0 && language.is_some() { "\n\n" } else { "" };
                out.write_all([between, &text].concat().as_bytes())
                    .context("the result cannot be written")?;
            }
        }
    }
    Ok(())
}

/// An exercise as JSON, with the answers where the key is wanted.
fn json(made: &Made, key: bool) -> Result<String> {
    let mut tree = serde_json::to_value(&made.exercise)?;
    if let Some(fields) = tree.as_object_mut().filter(|_| key) {
        let slips: Vec<_> = practice::slips_of(made, &mut OnHost)
            .into_iter()
            .map(|(step, slip, value)| serde_json::json!({"step": step, "slip": slip, "value": value}))
            .collect();
        fields.insert("solved".to_owned(), serde_json::to_value(practice::solve(made, &mut OnHost))?);
        fields.insert("slips".to_owned(), slips.into());
    }
    Ok(tree.to_string())
}

/// The instant that was asked for, else this one, on the clock that was asked for, else on that of the newest
/// reading.
fn instant(job: &Job, ms: Option<f64>, offset_min: Option<i32>) -> Result<Now> {
    let ms = match ms {
        Some(ms) => ms,
        None => {
            let since = SystemTime::now()
                .duration_since(UNIX_EPOCH)
                .context("this machine's clock is before 1970")?;
            since.as_millis() as f64
        }
    };
    let newest = job.readings.iter().filter_map(|reading| reading.taken).max_by(|a, b| a.ms.total_cmp(&b.ms));
    Ok(Now { ms, offset_min: offset_min.or(newest.map(|taken| taken.offset_min)).unwrap_or(0) })
}

/// The arguments, taken away one by one.
struct Words {
    free: Vec<String>,
    switches: Vec<String>,
    values: Vec<(String, String)>,
}

const WITH_VALUE: [&str; 7] = ["--port", "--under", "--dir", "--lang", "--now", "--offset", "--units"];

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

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(line: &str) -> Result<Command> {
        read(&line.split_whitespace().map(str::to_owned).collect::<Vec<_>>())
    }

    #[test]
    fn nothing_asked_means_serve() {
        let serve = Command::Serve { port: None, under: "/".to_owned(), dir: None, log: false };
        assert_eq!(asked("").expect("understood"), serve);
        let serve =
            Command::Serve { port: Some(81), under: "/a/".to_owned(), dir: Some("d".into()), log: true };
        assert_eq!(asked("serve --port=81 --under a --dir d --log").expect("understood"), serve);
    }

    #[test]
    fn an_estimate_takes_its_switches() {
        let wanted = Command::Estimate {
            file: "-".to_owned(),
            text: Some("es".to_owned()),
            now: Some(5.0),
            offset_min: Some(-300),
        };
        assert_eq!(asked("estimate - --text --lang es --now 5 --offset -300").expect("understood"), wanted);
    }

    #[test]
    fn exercises_are_asked_for_by_their_numbers() {
        let seed = |level, number| Seed { version: 1, level, number };
        let wanted = Command::Exercise {
            seeds: vec![seed(1, 0xff), seed(4, 0x7f3a)],
            key: true,
            units: Units::Metric,
            text: Some("es".to_owned()),
        };
        let line = "exercise 1-1-00FF 1-4-7f3a --key --units=metric --lang es";
        assert_eq!(asked(line).expect("understood"), wanted);
        let wanted = Command::Exercise { seeds: vec![seed(2, 0)], key: false, units: Units::Us, text: None };
        assert_eq!(asked("exercise 1-2-0000 --json").expect("understood"), wanted);
    }

    #[test]
    fn what_is_not_understood_is_said() {
        for line in [
            "paint",
            "build",
            "build a b",
            "estimate",
            "estimate f --lang es",
            "estimate f --now NaN",
            "serve --port",
            "serve --port many",
            "serve --now 5",
            "--verbose",
            "exercise",
            "exercise 1-1",
            "exercise 9-1-0000",
            "exercise 1-1-0000 --units feet",
            "exercise 1-1-0000 --json --lang es",
            "exercise 1-1-0000 --text",
            "estimate f --units metric",
        ] {
            assert!(asked(line).is_err(), "{line}");
        }
    }
}
