//! What the code asks there: place and edition, the marks that apply, what a surface is built of, its cover.

use super::parts::Sheet;
use foamwright::assembly::Assembly;
use foamwright::depth::{Bound, Cover, Depth, Mark, Rule, Stands};
use foamwright::job::entry;
use foamwright::measure::{Kind, Units};
use serde::Serialize;

/// W/(m²·K) in 1 Btu/(h·ft²·°F): 1055.05585262 J ÷ (3600 s × 0.09290304 m² × 5/9 K). NIST SP 811, appendix B.
pub(super) const SI_U: f64 = 5.678_263_341;

impl Sheet<'_> {
    /// Kind of work, climate zone and edition, as far as they were said.
    pub fn place(&mut self) {
        let place = self.estimate.place;
        let work = place.work.map(|work| self.choice("work", &word(work)));
        let edition = place.edition.map(|edition| self.choice("edition", &word(edition)));
        let zone = place.zone.map(|zone| self.choice("zone", zone.name()));
        if work.is_none() && edition.is_none() && zone.is_none() {
            return;
        }
        self.lines.line("");
        let not_said = self.say("not_said", &[]);
        let zip = entry(&self.job.entries, "zip").map(|entry| entry.text.trim().to_owned());
        let mut zone = zone.unwrap_or_else(|| not_said.clone());
        if let Some(zip) = zip {
            zone = format!("{zone} ({})", self.say("zip", &[("zip", &zip)]));
        }
        for (key, text) in [("work", work), ("zone", Some(zone)), ("edition", edition)] {
            self.row(key, &text.unwrap_or_else(|| not_said.clone()));
        }
    }

    /// What a surface is in the building, the rules that apply to its depth, its U and its cover.
    pub fn rules(&mut self, depth: &Depth) {
        if let Some(component) = depth.component {
            let text = self.choice("component", &word(component));
            self.row("component", &text);
        }
        let mut first = true;
        let applies = |mark: &&Mark| mark.stands == Stands::Applies && mark.bound != Bound::Lift;
        for mark in depth.marks.iter().filter(applies) {
            let text = self.mark(mark, depth);
            if std::mem::take(&mut first) {
                self.row("rules", &text);
            } else {
                self.lines.row("", &text);
            }
        }
        if let Some(gap) = depth.window.gap_in {
            let gap = self.write(Kind::Length, gap.0);
            let text = self.say("rules_cross", &[("gap", &gap)]);
            self.lines.row("", &text);
        }
        if let Some(whole) = &depth.assembly {
            self.whole(whole);
        }
        self.cover(&depth.cover);
    }

    fn mark(&self, mark: &Mark, depth: &Depth) -> String {
        let of = |kind, value: Option<f64>| value.map(|value| self.write(kind, value)).unwrap_or_default();
        let at = of(Kind::Length, mark.at_in.map(|at| at.0));
        let target = depth.target_r.filter(|_| mark.rule == Rule::Target).map(|r| r.0);
        let r = of(Kind::Resistance, target.or(mark.asks));
        let u = mark.asks.map(|u| self.u(u)).unwrap_or_default();
        let share = of(Kind::Percent, mark.asks);
        let zone = self.estimate.place.zone.map(|zone| zone.name().to_uppercase()).unwrap_or_default();
        let printed = self.words.code_row(mark.printed);
        let figures = [
            ("depth", at.as_str()),
            ("r", &r),
            ("u", &u),
            ("pct", &share),
            ("printed", &printed),
            ("edition", mark.edition),
            ("zone", &zone),
        ];
        let rule = self.words.say(&format!("depth.rule.{}", word(mark.rule)), &figures);
        let trust = self.words.say(&format!("depth.trust.{}", word(mark.trust)), &[]);
        let source = [mark.section, mark.edition, &trust].into_iter().filter(|one| !one.is_empty());
        let source = source.collect::<Vec<_>>().join(", ");
        format!("{rule}: {source}")
    }

    fn whole(&mut self, whole: &Assembly) {
        let (u, upper) = (self.u(whole.u), self.u(whole.u_isothermal));
        let r = self.write(Kind::Resistance, whole.effective_r.0);
        let share = self.write(Kind::Percent, whole.framing_pct);
        let text = self.say("whole_is", &[("u", &u), ("upper", &upper), ("r", &r), ("share", &share)]);
        self.row("whole", &text);
    }

    fn cover(&mut self, cover: &Cover) {
        let mut text = self.say(&format!("cover_{}", word(cover.asked)), &[]);
        if !cover.chosen.is_empty() {
            let chosen = self.choice("cover", cover.chosen);
            text = format!("{text}; {}", self.say("cover_chosen", &[("cover", &chosen)]));
        }
        if let Some(((area, price), cost)) = cover.area_ft2.zip(cover.price_ft2).zip(cover.cost) {
            let area = self.write(Kind::Area, area.0);
            let (price, cost) =
                (self.write(Kind::Money, price.0 as f64), self.write(Kind::Money, cost.0 as f64));
            let figures = [("area", area.as_str()), ("price", &price), ("cost", &cost)];
            text = format!("{text}, {}", self.say("cover_cost", &figures));
        }
        self.row("cover", &text);
    }

    /// A U-factor as its tables write it, without its letter.
    fn u(&self, value: f64) -> String {
        match self.job.units {
            Units::Us => format!("{value:.3}"),
            Units::Metric => format!("{:.3} W/m²·K", value * SI_U),
        }
    }

    /// An answer of a field in words.
    fn choice(&self, field: &str, word: &str) -> String {
        let own = format!("fields.choice.{field}.{word}");
        let key = if self.words.has(&own) { own } else { format!("fields.choice.{word}") };
        self.words.say(&key, &[])
    }
}

/// The word by which a value is called in the words.
pub(super) fn word(value: impl Serialize) -> String {
    serde_json::to_value(value).ok().and_then(|value| value.as_str().map(str::to_owned)).unwrap_or_default()
}
