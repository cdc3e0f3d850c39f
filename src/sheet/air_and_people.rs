//! Moist air, earlier rounds of readings, and the people: only where something of it was entered.

use super::parts::{Sheet, clock_after};
use foamwright::job::Part;
use foamwright::measure::{Kind, Minutes, decimal};
use foamwright::moisture::Gives;
use foamwright::people::{Exhaust, Load};
use foamwright::readiness::Moved;
use foamwright::spraying::ReentryHeld;

impl Sheet<'_> {
    /// What earlier rounds say beside the present one.
    pub fn rounds(&mut self) {
        let rounds = &self.estimate.rounds;
        if rounds.series.is_empty() && rounds.blame.is_empty() {
            return;
        }
        self.heading("rounds");
        let named = |name: &str| if name.is_empty() { self.say("no_spot", &[]) } else { name.to_owned() };
        let coldest = rounds.coldest.iter().map(|name| named(name)).collect::<Vec<_>>().join(", ");
        if !coldest.is_empty() {
            self.row("coldest_first", &coldest);
        }
        for blame in &rounds.blame {
            let moved = match blame.moved {
                Moved::AirWetter => "moved_air_wetter",
                Moved::SurfaceColder => "moved_surface_colder",
                Moved::Better => "moved_better",
                Moved::Neither => "moved_neither",
            };
            let step = |value: f64| self.write(Kind::TemperatureStep, value);
            let (dew, surface, above) =
                (step(blame.dew_rose_f), step(-blame.surface_fell_f), step(blame.above_f));
            let figures = [("dew", dew.as_str()), ("surface", &surface), ("above", &above)];
            let text = format!("{}; {}", self.say(moved, &[]), self.say("moved_by", &figures));
            let name = if blame.name.is_empty() { self.say("no_spot", &[]) } else { blame.name.clone() };
            self.lines.row(&name, &text);
        }
    }

    /// What gives off water, and the dew points that come of it.
    pub fn moisture(&mut self) {
        let moisture = &self.estimate.moisture;
        if moisture.sources.is_empty() {
            return;
        }
        self.heading("moisture");
        for source in &moisture.sources {
            let key = match source.gives {
                Gives::Heater => "gives_heater",
                Gives::Mud => "gives_mud",
                Gives::Concrete => "gives_concrete",
                Gives::People => "gives_people",
            };
            let water = self.write(Kind::Weight, source.water_lb_hr.0);
            let text = self.say("an_hour", &[("water", &water)]);
            self.row(key, &text);
        }
        for at in &moisture.at {
            let name = self.say("changes_an_hour", &[("n", &decimal(at.changes, 2))]);
            let mut text = self.write(Kind::Temperature, at.dew_f.0);
            if let Some(above) = at.above_f {
                let by = self.write(Kind::TemperatureStep, above.abs());
                let spread = self.write(Kind::TemperatureStep, moisture.spread_f);
                let key = if above <= 0.0 {
                    "coldest_below"
                } else if above < moisture.spread_f {
                    "coldest_near"
                } else {
                    "coldest_above"
                };
                text = format!("{text}; {}", self.say(key, &[("by", &by), ("spread", &spread)]));
            }
            self.lines.row(&name, &text);
        }
        if let Some(dew) = moisture.sealed_hour_dew_f {
            let text = self.write(Kind::Temperature, dew.0);
            self.row("sealed_hour", &text);
        }
        if let Some(coldest) = moisture.coldest_f.filter(|_| !moisture.at.is_empty()) {
            let (coldest, spread) = (
                self.write(Kind::Temperature, coldest.0),
                self.write(Kind::TemperatureStep, moisture.spread_f),
            );
            let figures = [("coldest", coldest.as_str()), ("spread", &spread)];
            let text = match moisture.least_changes {
                Some(least) => {
                    // Up: a tenth less would not do.
                    let least = decimal((least * 10.0 - 1e-9).ceil() / 10.0, 1);
                    self.say("least_changes", &[("n", &least), figures[0], figures[1]])
                }
                None => self.say("least_changes_none", &figures),
            };
            self.lines.row("", &text);
        }
        let text = self.say("moisture_note", &[]);
        self.lines.wrapped(&format!("  {text}"), 2);
    }

    /// Air through the zone, the van, and when the label's hours are over.
    pub fn people(&mut self) {
        let people = &self.estimate.people;
        let fan = people.exhaust.as_ref();
        let sprayed = self.estimate.day.last_spray_ms.is_some();
        let moved = fan.is_some_and(|fan| fan.flow.is_some());
        if !moved && !sprayed && people.load.gross_lb.is_none() && people.load.suits.is_none() {
            return;
        }
        self.heading("people");
        if let Some(fan) = fan {
            self.exhaust(fan);
        }
        self.load(&people.load);
        if sprayed {
            let day = &self.estimate.day;
            self.back_in("back_in", day.reentry_min, day.reentry_ms);
            self.back_in("back_in_workers", day.reentry_workers_min, day.reentry_workers_ms);
        }
    }

    fn exhaust(&mut self, fan: &Exhaust) {
        let flow = |value: f64| self.write(Kind::Airflow, value);
        let wanted = flow(fan.wanted.0);
        let text = self.say("exhaust_for", &[("flow", &wanted), ("n", &decimal(fan.changes, 1))]);
        self.row("exhaust", &text);
        if let Some((flow, changes)) = fan.flow.zip(fan.flow_changes) {
            let flow = self.write(Kind::Airflow, flow.0);
            let text = self.say("fan_gives", &[("flow", &flow), ("n", &decimal(changes, 1))]);
            self.lines.row("", &text);
        }
        if let Some(minutes) = fan.purge_min {
            let time = self.write(Kind::Duration, libm::ceil(minutes.0));
            let left = self.write(Kind::Percent, fan.left_pct);
            let figures = [("time", time.as_str()), ("left", &left), ("k", &decimal(fan.mixing, 1))];
            let text = self.say("purge_time", &figures);
            self.row("purge", &text);
        }
        if let Some(holds) = fan.holds_5_pa {
            let flow = self.write(Kind::Airflow, holds.0);
            let text = self.say("holds_5_pa", &[("flow", &flow)]);
            self.lines.row("", &text);
        }
    }

    fn load(&mut self, load: &Load) {
        if let Some(gross) = load.gross_lb {
            let (gross, most) = (self.write(Kind::Weight, gross.0), self.write(Kind::Weight, load.most_lb.0));
            let kits = load.kits.iter().map(|kit| {
                let part = if kit.owned { Part::Owned } else { Part::Kit };
                format!("{} × {}", kit.count, self.name(part, kit.kit))
            });
            let kits = kits.collect::<Vec<_>>().join(", ");
            let text = self.say("van_kits", &[("kits", &kits), ("gross", &gross), ("most", &most)]);
            self.row("van", &text);
        }
        if let Some(((suits, gloves), cartridges)) = load.suits.zip(load.gloves).zip(load.cartridges) {
            let (suits, gloves, cartridges) = (suits.to_string(), gloves.to_string(), cartridges.to_string());
            let figures = [("suits", suits.as_str()), ("gloves", &gloves), ("cartridges", &cartridges)];
            let text = self.say("protection_for_a_day", &figures);
            self.row("protection", &text);
        }
    }

    /// A time only where the label gives its hours and nothing holds them.
    fn back_in(&mut self, key: &str, hours: Option<Minutes>, at_ms: Option<f64>) {
        let text = match (hours, at_ms, self.estimate.day.reentry_held) {
            (None, _, _) => self.say("label_hours_unknown", &[]),
            (Some(_), Some(ms), _) => {
                self.say("not_before", &[("time", &clock_after(ms, self.now.offset_min))])
            }
            (Some(_), None, Some(ReentryHeld::ExhaustOff)) => self.say("no_time_exhaust", &[]),
            (Some(_), None, Some(ReentryHeld::Smell)) => self.say("no_time_smell", &[]),
            (Some(_), None, None) => self.say("no_time_yet", &[]),
        };
        self.row(key, &text);
    }
}

#[cfg(test)]
mod tests {
    use crate::sheet::{Words, sheet};
    use foamwright::job::{Job, Now};
    use std::path::Path;

    /// The sheet of a whole job, from the heading of the readings on.
    fn text(job: &str, language: &str) -> String {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/jobs").join(job);
        let read = |file: &str| std::fs::read_to_string(folder.join(file)).expect(file);
        let job: Job = serde_json::from_str(&read("job.json")).expect("a job");
        let now: Now = serde_json::from_str(&read("now.json")).expect("an instant");
        let text = sheet(&job, &foamwright::estimate(&job, now), now, &Words::of(language).expect("words"));
        assert!(!text.contains("text.") && !text.contains('{'), "words are lacking: {text}");
        text
    }

    #[test]
    fn a_time_only_where_the_label_gives_its_hours() {
        let known = text("family-comes-back", "en");
        assert!(known.contains("not before 2026-10-15 22:10; never a clearance"), "{known}");
        assert!(known.contains("not before 2026-10-15 10:10; never a clearance"), "{known}");
        let unknown = text("family-label-unknown", "en");
        assert!(!unknown.contains("not before"), "{unknown}");
        assert_eq!(unknown.matches("no time is given").count(), 2, "{unknown}");
    }

    #[test]
    fn moist_air_and_rounds_in_both_languages() {
        for language in ["en", "es"] {
            let heater = text("vent-free-heater-shop", language).replace('\u{a0}', " ");
            assert!(heater.contains("7.55 lb") && heater.contains("60.3 °F"), "{heater}");
            assert!(text("warm-air-cold-wall", language).contains("North wall"));
        }
        let rounds = text("warm-air-cold-wall", "en");
        assert!(rounds.contains("the air took up moisture"), "{rounds}");
        assert!(!text("winter-day-go", "en").contains("Earlier rounds"));
    }

    /// What is above the dew point by less than the spread is not just "above", and a tenth of an air change less than
    /// the least would not do.
    #[test]
    fn too_close_is_said_and_the_least_goes_up() {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/jobs/vent-free-heater-shop");
        let read = |file: &str| std::fs::read_to_string(folder.join(file)).expect(file);
        let job: Job = serde_json::from_str(&read("job.json")).expect("a job");
        let now: Now = serde_json::from_str(&read("now.json")).expect("an instant");
        let mut estimate = foamwright::estimate(&job, now);
        let moisture = &mut estimate.moisture;
        moisture.spread_f = 5.0;
        moisture.coldest_f = Some(foamwright::measure::Fahrenheit(60.0));
        moisture.at.truncate(3);
        for (at, above) in moisture.at.iter_mut().zip([-2.0, 4.9, 5.0]) {
            at.above_f = Some(above);
        }
        for (least, said) in [(2.41, "from 2.5 air"), (2.44, "from 2.5 air"), (2.5, "from 2.5 air")] {
            estimate.moisture.least_changes = Some(least);
            let text = sheet(&job, &estimate, now, &Words::of("en").expect("words"));
            let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(text.contains(said), "{least}: {text}");
            let close = "coldest surface only 4.9 °F above; it has to be 5 °F";
            assert!(text.replace('\u{a0}', " ").contains(close), "{text}");
            assert_eq!(text.matches("coldest surface only").count(), 1, "{text}");
        }
    }
}
