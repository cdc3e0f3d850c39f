//! The parts of the sheet, one function each.

use super::{Lines, Words};
use foamwright::findings::{Finding, Severity};
use foamwright::job::{Job, Now, Part, ReadingOf};
use foamwright::kits::{Mix, Price};
use foamwright::measure::{Band, Cents, Kind, Style, Units, decimal, write};
use foamwright::readiness::{Check, ReadState, Verdict};
use foamwright::spraying::WaitBy;
use foamwright::{Estimate, SurfaceEstimate};

/// A sheet being written.
pub struct Sheet<'a> {
    pub job: &'a Job,
    pub estimate: &'a Estimate,
    pub words: &'a Words,
    pub now: Now,
    pub lines: Lines,
}

type Figures<'a> = &'a [(&'a str, &'a str)];

impl Sheet<'_> {
    pub(super) fn say(&self, key: &str, figures: Figures<'_>) -> String {
        self.words.say(&format!("text.{key}"), figures)
    }

    pub(super) fn write(&self, kind: Kind, value: f64) -> String {
        let style = match self.job.units {
            // Kits are sold by the board foot wherever they are sprayed: the sheet on the page says the same.
            Units::Metric if kind != Kind::FoamVolume => Style::MetricUsual,
            _ => Style::Us,
        };
        write(kind, value, style)
    }

    /// A value with its range, where it has one.
    fn band(&self, kind: Kind, band: Band<f64>) -> String {
        let likely = self.write(kind, band.likely);
        if band.is_single() {
            return likely;
        }
        format!("{likely} ({} – {})", self.write(kind, band.low), self.write(kind, band.high))
    }

    pub(super) fn row(&mut self, key: &str, value: &str) {
        let name = self.say(key, &[]);
        self.lines.row(&name, value);
    }

    pub(super) fn heading(&mut self, key: &str) {
        let name = self.say(key, &[]);
        self.lines.heading(&name);
    }

    pub fn head(&mut self) {
        let name = self.job.name.trim();
        let name = if name.is_empty() { self.say("no_name", &[]) } else { name.to_owned() };
        self.lines.line(&name);
        if !self.job.place.trim().is_empty() {
            self.lines.line(self.job.place.trim());
        }
        let as_of = self.say("as_of", &[("time", &clock(self.now.ms, self.now.offset_min))]);
        self.lines.line(&as_of);
    }

    pub fn surfaces(&mut self) {
        self.heading("surfaces");
        let estimate = self.estimate;
        for surface in &estimate.surfaces {
            self.lines.line("");
            let name = self.name(Part::Surface, surface.id);
            self.lines.line(&format!("  {name}"));
            self.surface(surface);
        }
    }

    fn surface(&mut self, surface: &SurfaceEstimate) {
        if let Some(area) = &surface.area {
            let of = |band: Band<_>| {
                self.band(Kind::Area, band.map(|value: foamwright::measure::SquareFeet| value.0))
            };
            let (net, gross) = (of(area.net_ft2), of(area.gross_ft2));
            let (openings, framing) = (of(area.openings_ft2), of(area.framing_ft2));
            let figures = [("gross", gross.as_str()), ("openings", &openings), ("framing", &framing)];
            let whole = area.net_ft2 == area.gross_ft2;
            let text = if whole { net } else { format!("{net} = {}", self.say("area_of", &figures)) };
            self.row("area", &text);
        }
        if let Some(depth) = &surface.depth {
            let aim = self.band(Kind::Length, depth.aim_in.map(|value| value.0));
            let promised = self.write(Kind::Length, depth.promised_in.0);
            let most = self.write(Kind::Length, depth.most_in.0);
            let range = self.say("depth_range", &[("promised", &promised), ("most", &most)]);
            self.row("aim", &format!("{aim} ({range})"));
            let promise = match depth.promised_r.zip(depth.promised_r_at_in) {
                Some((r, at)) => {
                    let r = self.write(Kind::Resistance, r.0);
                    let at = self.write(Kind::Length, at.0);
                    self.say("only_at", &[("r", &r), ("thickness", &at)])
                }
                None => self.say("promised_none", &[]),
            };
            self.row("promised", &promise);
            self.rules(depth);
        }
        match surface.in_place {
            Some(in_place) => {
                let text = self.band(Kind::FoamVolume, in_place.map(|value| value.0));
                self.row("in_place", &text);
            }
            None => {
                let text = self.say("not_complete", &[]);
                self.row("in_place", &text);
            }
        }
        if let Some(lifts) = &surface.lifts {
            let count = lifts.count.to_string();
            let each = self.write(Kind::Length, lifts.each_in.0);
            let mut text = self.say("passes_each", &[("n", &count), ("each", &each)]);
            if lifts.wait_by == WaitBy::LabelOnly {
                text = format!("{text}; {}", self.say("passes_wait_label", &[]));
            } else if let Some(wait) = lifts.wait_min.filter(|_| lifts.count > 1) {
                let wait = self.write(Kind::Duration, wait.0);
                text = format!("{text}, {}", self.say("passes_wait", &[("wait", &wait)]));
            }
            self.row("passes", &text);
        }
    }

    pub fn quantity(&mut self) {
        self.heading("quantity");
        let quantity = self.estimate.quantity;
        for (key, band) in [
            ("in_place", quantity.in_place),
            ("over_depth", quantity.over_depth),
            ("other_waste", quantity.other_waste),
            ("to_spray", quantity.to_spray_up),
        ] {
            if key == "other_waste" && band.high.0 == 0.0 {
                continue;
            }
            let text = self.band(Kind::FoamVolume, band.map(|value| value.0));
            self.row(key, &text);
        }
        if quantity.surfaces < quantity.of {
            let (n, of) = (quantity.surfaces.to_string(), quantity.of.to_string());
            let text = self.say("so_far", &[("n", &n), ("of", &of)]);
            self.lines.line(&format!("  {text}"));
        }
    }

    pub fn kits(&mut self) {
        self.heading("kits");
        let purchase = &self.estimate.purchase;
        if let Some(too_big) = purchase.too_big {
            let given = self.write(Kind::FoamVolume, too_big.to_spray.0);
            let limit = self.write(Kind::FoamVolume, too_big.limit.0);
            let text = self.say("too_big", &[("given", &given), ("limit", &limit)]);
            self.lines.wrapped(&format!("  {text}"), 2);
        }
        if purchase.stock_kits > 0 {
            let feet = self.write(Kind::FoamVolume, purchase.from_stock.0);
            let text = self.say("shelf_kits", &[("n", &purchase.stock_kits.to_string()), ("feet", &feet)]);
            self.row("shelf", &text);
        }
        let Some(buy) = &purchase.buy else { return };
        let kind = self.say(if purchase.chosen { "chosen" } else { "least" }, &[]);
        let mut what = format!("{} ({kind})", self.mix(buy));
        if let Some(more) = purchase.dearer_by.filter(|_| purchase.chosen) {
            let more = self.write(Kind::Money, more.0 as f64);
            what = format!("{what}; {}", self.say("dearer", &[("more", &more)]));
        }
        self.row("buy", &what);
        if purchase.chosen {
            if let Some(least) = &purchase.least {
                let text = self.mix(least);
                self.row("least", &text);
            }
            if let Some(choice) = self.job.purchase.as_ref().filter(|choice| !choice.reason.trim().is_empty())
            {
                let reason = choice.reason.trim().to_owned();
                self.row("reason", &reason);
            }
        }
        let usable = self.write(Kind::FoamVolume, buy.usable.0);
        let over = self.write(Kind::FoamVolume, buy.left.0.abs());
        let left = if buy.enough {
            self.say("left", &[("usable", &usable), ("left", &over)])
        } else {
            self.say("short", &[("usable", &usable), ("short", &over)])
        };
        let down_to = self.write(Kind::Percent, buy.break_factor_pct);
        let down_to = self.say("enough_down_to", &[("factor", &down_to)]);
        self.lines.row("", &format!("{left}; {down_to}"));
        let factor = self.write(Kind::Percent, purchase.yield_factor_pct);
        let loss = purchase.sizes.first().map(|size| self.write(Kind::FoamVolume, size.fixed_loss.0));
        if let Some(loss) = loss {
            let terms = self.say("kits_terms", &[("factor", &factor), ("loss", &loss)]);
            self.lines.row("", &terms);
        }
        self.paid(purchase.price, buy);
    }

    /// What is to be paid, where that is not the cost of the kits alone.
    fn paid(&mut self, price: Option<Price>, buy: &Mix) {
        let Some(cost) = buy.cost.filter(|cost| price.is_none_or(|price| price.total != *cost)) else {
            return;
        };
        let money = |cents: Cents| self.write(Kind::Money, cents.0 as f64);
        let text = match price {
            None => self.say("pay_open", &[]),
            Some(price) => self.say(
                "pay_with",
                &[
                    ("total", &money(price.total)),
                    ("kits", &money(cost)),
                    ("tax", &money(price.tax)),
                    ("rate", &[&decimal(price.tax_pct, 6), "\u{a0}%"].concat()),
                    ("delivery", &money(price.delivery)),
                ],
            ),
        };
        self.row("pay", &text);
    }

    fn mix(&self, mix: &Mix) -> String {
        let mut parts: Vec<String> =
            mix.buy.iter().map(|one| format!("{} × {}", one.count, self.name(Part::Kit, one.kit))).collect();
        if let Some(cost) = mix.cost {
            parts.push(self.write(Kind::Money, cost.0 as f64));
        }
        parts.join(", ")
    }

    pub fn passes(&mut self) {
        self.heading("passes");
        let spraying = self.estimate.spraying;
        self.row("passes", &spraying.lifts.to_string());
        let mut nozzles = spraying.nozzles.to_string();
        if let Some(count) = spraying.nozzles_in_cartons {
            let text = self.say("nozzles_in_cartons", &[("n", &count.to_string())]);
            nozzles = format!("{nozzles} ({text})");
        }
        self.row("nozzles", &nozzles);
    }

    pub fn readiness(&mut self) {
        let readiness = &self.estimate.readiness;
        let verdict = match readiness.verdict {
            Verdict::Go => "go",
            Verdict::Hold => "hold",
            Verdict::NotRead => "not_read",
        };
        let verdict = self.words.say(&format!("ready.verdict_{verdict}"), &[]);
        let heading = format!("{}: {verdict}", self.say("readiness", &[]));
        self.lines.heading(&heading);
        if let Some(ms) = readiness.until_ms {
            let text = self.say("until", &[("time", &clock(ms, self.now.offset_min))]);
            self.lines.line(&format!("  {text}"));
        }
        let blame = readiness.blame.and_then(|at| self.estimate.findings.get(at as usize));
        if let Some(blame) = blame {
            self.finding(blame);
        }
        for check in &readiness.checks {
            self.check(check);
        }
        if let Some(dew) = &readiness.dew {
            let point = self.band(Kind::Temperature, dew.point_f.map(|value| value.0));
            let least = self.write(Kind::Temperature, dew.least_surface_f.0);
            let least = self.say("dew_least", &[("least", &least)]);
            self.row("dew", &format!("{point}; {least}"));
        }
    }

    fn check(&mut self, check: &Check) {
        let ready = |key: &str, figures: Figures<'_>| self.words.say(&format!("ready.{key}"), figures);
        let kind = ready(reading_key(check.of), &[]);
        let name = if check.name.trim().is_empty() { kind } else { check.name.trim().to_owned() };
        let age = check.age_min.map(|age| self.write(Kind::Duration, age.0)).unwrap_or_default();
        let by = check.inside_by_f.map(|by| self.write(Kind::TemperatureStep, by.abs())).unwrap_or_default();
        let mut parts = Vec::new();
        parts.extend(check.value_f.map(|value| self.write(Kind::Temperature, value.0)));
        let kind_of_value = if check.of == ReadingOf::Wind { Kind::Speed } else { Kind::Percent };
        parts.extend(check.value.map(|value| self.write(kind_of_value, value)));
        match check.state {
            ReadState::NotRead => parts.push(ready("not_read", &[])),
            ReadState::Old if age.is_empty() => parts.push(ready("untimed", &[])),
            ReadState::Old => parts.push(ready("old", &[("age", &age)])),
            ReadState::Inside | ReadState::Close | ReadState::Outside => {
                if !age.is_empty() {
                    parts.push(ready("age", &[("age", &age)]));
                }
                if !by.is_empty() {
                    let key = if check.state == ReadState::Outside { "outside_by" } else { "inside_by" };
                    parts.push(ready(key, &[("by", &by)]));
                }
                if check.state == ReadState::Close {
                    parts.push(ready("close", &[]));
                }
            }
        }
        if let Some((least, most)) = check.least_f.zip(check.most_f) {
            let (least, most) =
                (self.write(Kind::Temperature, least.0), self.write(Kind::Temperature, most.0));
            parts.push(format!("[{}]", ready("window", &[("least", &least), ("most", &most)])));
        }
        self.lines.row(&name, &parts.join(", "));
    }

    pub fn findings(&mut self) {
        self.heading("findings");
        let estimate = self.estimate;
        if estimate.findings.is_empty() {
            let text = self.say("no_findings", &[]);
            self.lines.line(&format!("  {text}"));
        }
        for finding in &estimate.findings {
            self.finding(finding);
        }
        self.lines.line("");
        let cautions = self.say("cautions", &[]);
        self.lines.wrapped(&cautions, 0);
    }

    fn finding(&mut self, finding: &Finding) {
        let grave = self.say(
            match finding.severity {
                Severity::Stop => "stop",
                Severity::Warn => "warn",
                Severity::Note => "note",
            },
            &[],
        );
        let field = self.field(finding.at.part, &finding.at.field);
        let place = self.name(finding.at.part, finding.at.id);
        let place = [place.as_str(), field.as_str()].into_iter().filter(|one| !one.is_empty());
        let place = place.collect::<Vec<_>>().join(", ");
        // A figure `@key` is a word of the readings' page.
        let mut figures: Vec<(&str, String)> = Vec::new();
        for figure in &finding.figures {
            let text = match figure.text.strip_prefix('@') {
                Some(key) => self.words.say(&format!("ready.{key}"), &[]),
                None => figure.text.clone(),
            };
            figures.push((figure.name, text));
        }
        figures.push(("field", field));
        let figures: Vec<(&str, &str)> = figures.iter().map(|(name, text)| (*name, text.as_str())).collect();
        let code = serde_json::to_value(finding.code).unwrap_or_default();
        let code = code.as_str().unwrap_or_default();
        let what = self.words.say(&format!("findings.{code}.what"), &figures);
        let to_do = self.words.say(&format!("findings.{code}.do"), &figures);
        let place = if place.is_empty() { place } else { format!("{place}: ") };
        self.lines.wrapped(&format!("  {grave}  {place}{what} {to_do}"), 8);
        if !finding.source.is_empty() {
            let source = self.words.say(&format!("sources.{}", finding.source), &[]);
            self.lines.wrapped(&format!("        § {source}"), 10);
        }
    }

    /// What a part of the job is called; empty for the job itself.
    pub(super) fn name(&self, part: Part, id: u32) -> String {
        let job = self.job;
        let surface = || job.surfaces.iter().find(|one| one.id == id).map(|one| one.name.as_str());
        let openings = || job.surfaces.iter().flat_map(|one| &one.openings);
        let name = match part {
            Part::Surface => surface(),
            Part::Opening => openings().find(|one| one.id == id).map(|one| one.name.as_str()),
            Part::Foam => job.foam_sheet(id).map(|one| one.name.as_str()),
            Part::Kit => job.kit_sheet(id).map(|one| one.name.as_str()),
            Part::Reading => {
                let reading = job.readings.iter().find(|one| one.id == id);
                let kind =
                    || reading.map(|one| self.words.say(&format!("ready.{}", reading_key(one.of)), &[]));
                let own = reading.map(|one| one.name.trim()).filter(|name| !name.is_empty());
                return own.map(str::to_owned).or_else(kind).unwrap_or_default();
            }
            Part::Owned => job.stock.iter().find(|one| one.id == id).map(|one| one.name.as_str()),
            Part::Patch => {
                let mut patches = job.surfaces.iter().flat_map(|one| &one.patches);
                patches.find(|one| one.id == id).map(|one| one.name.as_str())
            }
            Part::Leg => {
                let mut walked = job.surfaces.iter();
                walked.find(|one| one.legs.iter().any(|leg| leg.id == id)).map(|one| one.name.as_str())
            }
            Part::Layer => {
                let mut layers = job.surfaces.iter().flat_map(|one| &one.layers);
                layers.find(|one| one.id == id).map(|one| one.name.as_str())
            }
            Part::Warming => job.warming.iter().find(|one| one.id == id).map(|one| one.name.as_str()),
            Part::WarmReading => {
                let mut groups = job.warming.iter();
                groups.find(|one| one.log.iter().any(|read| read.id == id)).map(|one| one.name.as_str())
            }
            Part::RRow | Part::Job | Part::Purchase | Part::Event | Part::Forecast => None,
        };
        match name.map(str::trim) {
            Some("") => format!("#{id}"),
            Some(name) => name.to_owned(),
            None => String::new(),
        }
    }

    /// What a field is called; empty where the whole part is meant.
    fn field(&self, part: Part, field: &str) -> String {
        let part = serde_json::to_value(part).unwrap_or_default();
        let own = format!("fields.{}.{field}", part.as_str().unwrap_or_default());
        let any = format!("fields.{field}");
        [own, any]
            .iter()
            .find(|key| self.words.has(key))
            .map(|key| self.words.say(key, &[]))
            .unwrap_or_default()
    }
}

fn reading_key(of: ReadingOf) -> &'static str {
    match of {
        ReadingOf::CylinderA => "cylinder_a",
        ReadingOf::CylinderB => "cylinder_b",
        ReadingOf::Air => "air",
        ReadingOf::Humidity => "humidity",
        ReadingOf::DewPoint => "dew_point",
        ReadingOf::Surface => "surface",
        ReadingOf::WoodMoisture => "wood_moisture",
        ReadingOf::Wind => "wind",
        ReadingOf::NightLow => "night_low",
        ReadingOf::Storage => "storage",
    }
}

/// An instant on a clock so many minutes east of UTC: `2026-10-16 14:10`.
pub(super) fn clock(ms: f64, offset_min: i32) -> String {
    let minutes = (ms / 60_000.0).floor() as i64 + i64::from(offset_min);
    let (days, minute) = (minutes.div_euclid(1_440), minutes.rem_euclid(1_440));
    let (year, month, day) = date(days);
    format!("{year:04}-{month:02}-{day:02} {:02}:{:02}", minute / 60, minute % 60)
}

/// The same for what is not to be done before: to the minute after.
pub(super) fn clock_after(ms: f64, offset_min: i32) -> String {
    clock((ms / 60_000.0 - 1e-6).ceil() * 60_000.0, offset_min)
}

/// The calendar date so many days after 1970-01-01 (Gregorian, counted in eras of 400 years from March 1).
fn date(days: i64) -> (i64, i64, i64) {
    let from_march = days + 719_468;
    let (era, of_era) = (from_march.div_euclid(146_097), from_march.rem_euclid(146_097));
    let year = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let shifted = (5 * of_year + 2) / 153;
    let day = of_year - (153 * shifted + 2) / 5 + 1;
    let month = if shifted < 10 { shifted + 3 } else { shifted - 9 };
    (era * 400 + year + i64::from(month <= 2), month, day)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn instants_are_written_on_the_persons_clock() {
        // 1 000 000 000 s after the epoch was 2001-09-09T01:46:40Z (POSIX time, widely published).
        assert_eq!(clock(1e12, 0), "2001-09-09 01:46");
        assert_eq!(clock(1e12, -120), "2001-09-08 23:46");
        assert_eq!(clock(0.0, 0), "1970-01-01 00:00");
        assert_eq!(clock_after(0.0, 0), "1970-01-01 00:00");
        assert_eq!(clock_after(1.0, 0), "1970-01-01 00:01");
        assert_eq!(clock_after(1e12, 0), "2001-09-09 01:47");
        assert_eq!(clock(-60_000.0, 0), "1969-12-31 23:59");
        // 2000-02-29, a leap day of a century year: 11 016 days.
        assert_eq!(date(11_016), (2000, 2, 29));
        assert_eq!(date(11_017), (2000, 3, 1));
    }
}
