//! What stands beside the question of an exercise, as text: data sheets, kits, readings, tables.

use super::exercise::{Text, as_read, word};
use foamwright::job::{Entered, Field, Job, Layer, Part, field};
use foamwright::measure::{EchoState, Kind, Units, decimal, echo};
use foamwright::practice::Shown;
use serde_json::Value;

/// What only a drawing shows.
const DRAWN: [&str; 3] = ["day", "tape", "warming"];

/// Parts of a job as the words name them.
const PARTS: [(&str, Part); 7] = [
    ("foam", Part::Foam),
    ("forecast", Part::Forecast),
    ("job", Part::Job),
    ("kit", Part::Kit),
    ("reading", Part::Reading),
    ("surface", Part::Surface),
    ("warming", Part::Warming),
];

/// Whether a row is of a kind.
type Stands = fn(&str) -> bool;

/// How a row of an edition that has no `ci` is to be read, and which rows are of that kind.
const OLDER_ROWS: [(&str, Stands); 2] = [
    ("practice.ex_code_slash", |row| row.contains('/')),
    ("practice.ex_code_plus", |row| row.contains('+') && !row.contains("ci")),
];

/// What counts for every kit, and whether it is said where it was left at what the tool takes.
const OF_JOB: [(&str, bool); 6] = [
    ("yield_factor", true),
    ("fixed_loss", true),
    ("over_depth", false),
    ("other_waste", false),
    ("sales_tax", false),
    ("delivery", false),
];

/// What the job says of a field, or where it is usual what the tool takes.
fn of_job(job: &Job, name: &str, usual: bool) -> Option<Entered> {
    let said = job.entries.iter().find(|one| one.field == name && !one.text.trim().is_empty());
    said.cloned().or_else(|| {
        let default = field(Part::Job, name).filter(|_| usual)?.default;
        Some(Entered { field: name.to_owned(), text: default.to_owned(), unit: None, sense: None })
    })
}

impl Text<'_> {
    /// What stands beside the question, card by card. Sizes of what is drawn stand in the question; what only a
    /// drawing shows is said to be on the page.
    pub(super) fn given(&mut self) {
        let shown = &self.made.exercise.shown;
        if shown.iter().any(|shown| shown.what != "outline") {
            self.heading("ex_given");
        }
        let mut before = "";
        for shown in shown {
            match shown.what {
                "foam" => self.foam(shown.id),
                "kits" => self.kits(),
                "readings" => self.readings(),
                "forecast" => self.forecast(),
                "layers" => self.layers(shown.id),
                "place" => self.place(),
                "foam_units" => {
                    self.line("practice.ex_foam_units_line");
                }
                "r_units" => self.line("practice.ex_rsi"),
                "code_table" => self.code_table(shown),
                "dew_table" => self.dew_table(&shown.at),
                "probes" => {
                    let depths: Vec<String> =
                        shown.at.iter().map(|inches| self.write(Kind::Length, *inches)).collect();
                    self.row("ex_probes", &depths.join(", "));
                }
                what if DRAWN.contains(&what) && what != before => {
                    if what == "warming" {
                        self.warming(shown.id);
                    }
                    let what = self.say(&format!("text.ex_shown.{what}"), &[]);
                    let text = self.say("text.ex_on_page", &[("what", &what)]);
                    self.lines.line(&format!("  {text}"));
                }
                _ => {}
            }
            before = shown.what;
        }
    }

    fn line(&mut self, key: &str) {
        let line = self.say(key, &[]);
        self.lines.wrapped(&format!("  {line}"), 2);
    }

    fn row(&mut self, key: &str, value: &str) {
        let name = self.say(&format!("text.{key}"), &[]);
        self.lines.row(&name, value);
    }

    fn foam(&mut self, id: u32) {
        let job = &self.made.exercise.job;
        let Some(foam) = job.foam_sheet(if id == 0 { job.foam } else { id }) else { return };
        self.entries("foam", "ex_foam", &foam.name, &foam.entries);
        for row in &foam.r_at {
            let texts: Vec<String> = row.entries.iter().map(|one| as_read(&one.text)).collect();
            self.lines.row("", &texts.join(": "));
        }
    }

    fn kits(&mut self) {
        for kit in &self.made.exercise.job.kits {
            self.entries("kit", "ex_kit", &kit.name, &kit.entries);
        }
        let job = &self.made.exercise.job;
        let given: Vec<Entered> =
            OF_JOB.iter().filter_map(|(name, usual)| of_job(job, name, *usual)).collect();
        let shelf = self.say("practice.ex_kits", &[]);
        self.lines.line(&format!("  {shelf}"));
        self.entries("job", "", "", &given);
    }

    fn readings(&mut self) {
        for reading in &self.made.exercise.job.readings {
            let name = if reading.name.is_empty() {
                self.say(&format!("ready.name.{}", word(&reading.of)), &[])
            } else {
                reading.name.clone()
            };
            let minutes = reading.taken.map(|taken| (self.made.exercise.now.ms - taken.ms) / 60_000.0);
            let age = minutes.map(|minutes| self.write(Kind::Duration, minutes));
            let age = age.map(|age| self.say("text.ex_age", &[("minutes", &age)])).unwrap_or_default();
            let name = if age.is_empty() { name } else { format!("{name}, {age}") };
            self.entries("reading", "ex_reading", &name, &reading.entries);
        }
    }

    fn warming(&mut self, id: u32) {
        for group in self.made.exercise.job.warming.iter().filter(|group| group.id == id) {
            self.entries("warming", "ex_warming", &group.name, &group.entries);
        }
    }

    fn forecast(&mut self) {
        for day in &self.made.exercise.job.forecast {
            let date = day.entries.iter().find(|one| one.field == "date").map(|one| one.text.clone());
            let entries: Vec<Entered> =
                day.entries.iter().filter(|one| one.field != "date").cloned().collect();
            self.entries("forecast", "ex_forecast", &date.unwrap_or_default(), &entries);
        }
    }

    fn place(&mut self) {
        let job = &self.made.exercise.job;
        let of = |entries: &[Entered], fields: &[&str]| -> Vec<Entered> {
            entries.iter().filter(|one| fields.contains(&one.field.as_str())).cloned().collect()
        };
        self.entries("job", "ex_place", "", &of(&job.entries, &["zone", "edition", "work"]));
        if let Some(surface) = job.surfaces.first() {
            self.entries("surface", "", "", &of(&surface.entries, &["component", "runs"]));
        }
    }

    /// What the code prints by zone; a zone whose moist and dry parts are alike stands once.
    fn code_table(&mut self, shown: &Shown) {
        let zones = foamwright::depth::by_zone(&self.made.exercise.job, shown.id);
        for zone in &shown.at {
            let name = if *zone >= 7.0 { decimal(*zone, 0) } else { format!("{}a", decimal(*zone, 0)) };
            let printed = zones.iter().find(|one| word(&one.zone) == name).map_or("", |one| one.printed);
            let zone = self.say("text.ex_zone", &[("zone", &decimal(*zone, 0))]);
            let printed = self.words.code_row(printed);
            self.lines.row(&zone, &printed);
        }
        for (key, stands) in OLDER_ROWS {
            if zones.iter().any(|one| stands(one.printed)) {
                self.line(key);
            }
        }
        if self.units() == Units::Metric {
            self.line("practice.ex_rsi");
        }
    }

    /// Dew points: how many airs, how many humidities, then both, then the dew points row by row.
    fn dew_table(&mut self, at: &[f64]) {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small whole numbers")]
        let count = |place: usize| at.get(place).copied().unwrap_or(0.0) as usize;
        let (airs, humidities) = (count(0), count(1));
        let part = |from: usize, many: usize| at.get(from..from + many).unwrap_or_default();
        let across: Vec<String> =
            part(2 + airs, humidities).iter().map(|one| self.write(Kind::Percent, *one)).collect();
        self.row("ex_dew", &across.join("  "));
        for (n, air) in part(2, airs).iter().enumerate() {
            let row = part(2 + airs + humidities + n * humidities, humidities);
            let row: Vec<String> = row.iter().map(|one| self.write(Kind::Temperature, *one)).collect();
            self.lines.row(&self.write(Kind::Temperature, *air), &row.join("  "));
        }
    }

    /// What a wall is built of, outside first, with the R of each.
    fn layers(&mut self, id: u32) {
        let estimate = foamwright::estimate(&self.made.exercise.job, self.made.exercise.now);
        let surface = estimate.surfaces.iter().find(|one| one.id == id);
        let Some(built) = surface.and_then(|one| one.depth.as_ref()?.assembly.clone()) else { return };
        let tree = serde_json::to_value(&built).unwrap_or(Value::Null);
        let number = |tree: &Value, key: &str| tree.get(key).and_then(Value::as_f64);
        let two = |r: f64| self.two(r);
        let mut rows: Vec<(String, String)> = Vec::new();
        let film = |side: &str| self.say(&format!("text.ex_film_{side}"), &[]);
        rows.extend(number(&tree, "outside_film_r").filter(|r| *r > 0.0).map(|r| (film("outside"), two(r))));
        let named: Vec<&Layer> =
            self.made.exercise.job.surfaces.iter().flat_map(|surface| &surface.layers).collect();
        let layers = tree.get("layers").and_then(Value::as_array).cloned().unwrap_or_default();
        let mut of = |position: &str| {
            for layer in
                layers.iter().filter(|one| one.get("position").and_then(Value::as_str) == Some(position))
            {
                let made_of = layer.get("material").and_then(Value::as_str).unwrap_or_default();
                // What the exercise calls it; else its material.
                let own = named
                    .iter()
                    .find(|one| layer.get("id").and_then(Value::as_u64) == Some(u64::from(one.id)))
                    .map(|one| one.name.as_str())
                    .filter(|name| !name.is_empty());
                let name = match (own, made_of) {
                    (Some(own), _) => own.to_owned(),
                    (None, "typed") => self.say("practice.ex_layer", &[]),
                    (None, made_of) => self.say(&format!("fields.choice.made_of.{made_of}"), &[]),
                };
                rows.extend(number(layer, "r").map(|r| (name, two(r))));
            }
        };
        of("outside");
        of("cavity");
        of("inside");
        rows.extend(number(&tree, "inside_film_r").filter(|r| *r > 0.0).map(|r| (film("inside"), two(r))));
        let foam = self.say("text.ex_foam_here", &[]);
        rows.extend(number(&tree, "foam_r").map(|r| (foam, two(r))));
        let stud =
            number(&tree, "member_path_r").zip(number(&tree, "both_r")).map(|(path, both)| path - both);
        let (name, share) = (self.say("practice.ex_stud", &[]), self.say("fields.framing_share", &[]));
        rows.extend(stud.map(|r| (name, two(r))));
        rows.extend(number(&tree, "framing_pct").map(|pct| (share, self.write(Kind::Percent, pct))));
        for (name, text) in rows {
            self.lines.row(&name, &text);
        }
    }

    fn entries(&mut self, part: &str, heading: &str, name: &str, entries: &[Entered]) {
        if !heading.is_empty() {
            let heading = self.say(&format!("text.{heading}"), &[("name", name)]);
            self.lines.line(&format!("  {}", heading.trim()));
        }
        let of = PARTS.iter().find(|(name, _)| *name == part).map(|(_, part)| *part);
        for entry in entries.iter().filter(|one| !one.text.trim().is_empty()) {
            let own = format!("fields.{part}.{}", entry.field);
            let name = if self.words.has(&own) { own } else { format!("fields.{}", entry.field) };
            let choice = [
                format!("fields.choice.{}.{}", entry.field, entry.text),
                format!("fields.choice.{}", entry.text),
            ];
            let choice = choice.iter().find(|key| self.words.has(key)).map(|key| self.say(key, &[]));
            let text = choice.unwrap_or_else(|| match of.and_then(|part| field(part, &entry.field)) {
                Some(row) => self.entry(row, entry),
                None => entry.text.clone(),
            });
            let name = self.say(&name, &[]);
            self.lines.row(&format!("  {name}"), &text);
        }
    }

    /// A bare number with the unit of its box, a temperature with its sign; anything else as typed.
    fn entry(&self, row: &Field, entry: &Entered) -> String {
        let text = entry.text.trim();
        let bare = text.chars().all(|one| one.is_ascii_digit() || one == '.' || one == ',');
        if !bare && row.kind != Kind::Temperature {
            return text.to_owned();
        }
        if row.kind == Kind::FoamVolume {
            let unit = self.say("fields.unit.bd_ft", &[]);
            return format!("{text}\u{a0}{unit}");
        }
        let units = self.units();
        let unit = entry.unit.unwrap_or_else(|| row.unit(units));
        let read = echo(text, row.kind, unit, entry.sense, units);
        match read.state {
            EchoState::Read => read.text.trim_start_matches('≈').trim_start().to_owned(),
            _ => text.to_owned(),
        }
    }
}
