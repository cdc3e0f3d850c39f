//! An exercise as plain text: the question, what is given, the steps, and for whoever has the key how each is answered.

use super::Words;
use super::lines::Lines;
use super::rules::SI_U;
use foamwright::measure::{Kind, Style, Unit, Units, decimal, write};
use foamwright::practice::{Answer, Made, OnHost, Piece, StepForm, mark, slips_of, solve};
use serde_json::Value;

/// The text of an exercise, with the answers where the key is wanted.
pub fn exercise(made: &Made, key: bool, words: &Words) -> String {
    let mut text = Text { made, words, lines: Lines::default() };
    text.question();
    text.given();
    text.steps();
    if key {
        text.key();
    }
    text.lines.text()
}

/// An exercise while it is written out.
pub(super) struct Text<'a> {
    pub(super) made: &'a Made,
    pub(super) words: &'a Words,
    pub(super) lines: Lines,
}

impl Text<'_> {
    pub(super) fn say(&self, key: &str, figures: &[(&str, &str)]) -> String {
        self.words.say(key, figures)
    }

    pub(super) fn heading(&mut self, key: &str) {
        let text = self.say(&format!("text.{key}"), &[]);
        self.lines.heading(&text);
    }

    pub(super) fn units(&self) -> Units {
        self.made.exercise.job.units
    }

    fn question(&mut self) {
        let exercise = &self.made.exercise;
        let title = self.say(&format!("exercises.scene.{}.title", exercise.scene), &[]);
        self.lines.line(&title);
        let level = self.say(&format!("practice.level.{}", exercise.level), &[]);
        self.lines.line(&format!("{} · {level}", exercise.seed));
        self.lines.line("");
        let figures: Vec<(&str, String)> = exercise
            .given
            .iter()
            .map(|one| {
                let text =
                    if one.text.is_empty() { self.write(one.kind, one.value) } else { as_read(&one.text) };
                (one.key, text)
            })
            .collect();
        let figures: Vec<(&str, &str)> = figures.iter().map(|(key, text)| (*key, text.as_str())).collect();
        let ask = self.say(&format!("exercises.scene.{}.ask", exercise.scene), &figures);
        self.lines.wrapped(&ask, 0);
        if !exercise.source.is_empty() {
            let source = self.say(&format!("sources.{}", exercise.source), &[]);
            self.lines.wrapped(&source, 0);
        }
    }

    fn steps(&mut self) {
        self.heading("ex_steps");
        for (n, step) in self.made.exercise.steps.iter().enumerate() {
            let name = self.step(step);
            let mut parts: Vec<String> = Vec::new();
            if step.choices.is_empty() {
                parts.push(self.say(&format!("fields.unit.{}", word(&step.unit)), &[]));
                parts.push(self.within(step));
            } else {
                parts.extend(
                    step.choices.iter().map(|choice| self.say(&format!("exercises.choice.{choice}"), &[])),
                );
            }
            parts.retain(|part| !part.is_empty());
            self.lines.wrapped(&format!("  {}. {name}: {}", n + 1, parts.join(", ")), 5);
        }
    }

    fn step(&self, step: &StepForm) -> String {
        let name = self.say(&format!("exercises.step.{}", step.key), &[]);
        if step.of.is_empty() {
            return name;
        }
        let of = self.say(&format!("exercises.thing.{}", step.of), &[]);
        self.say("practice.step_of", &[("step", &name), ("of", &of)])
    }

    fn within(&self, step: &StepForm) -> String {
        let value = if step.within > 0.0 { self.limit(step) } else { String::new() };
        let pct = if step.within_pct > 0.0 {
            format!("{}\u{a0}%", decimal(step.within_pct, 6))
        } else {
            String::new()
        };
        match (value.is_empty(), pct.is_empty()) {
            (true, true) => self.say("practice.ex_exactly", &[]),
            (false, false) => self.say("practice.ex_within_both", &[("value", &value), ("pct", &pct)]),
            _ => self.say("practice.ex_within", &[("value", &format!("{value}{pct}"))]),
        }
    }

    /// The figure within which an answer is right, of a small one as many places as it takes.
    fn limit(&self, step: &StepForm) -> String {
        let metric = self.units() == Units::Metric;
        match step.kind {
            Kind::Resistance if metric => format!("RSI\u{a0}{}", small(step.within / SI_U)),
            Kind::Resistance => format!("R-{}", small(step.within)),
            Kind::Number => small(step.within),
            Kind::FoamVolume => format!("{}\u{a0}bd\u{a0}ft", small(step.within)),
            // Of a share so many points, not a share of it.
            Kind::Percent => {
                let points = decimal(step.within, 6);
                self.say("practice.ex_points", &[("points", &points)])
            }
            Kind::Temperature => self.write(Kind::TemperatureStep, step.within),
            // A time of day within minutes.
            Kind::Clock => self.write(Kind::Duration, step.within),
            Kind::Length if !metric => {
                thirty_second(step.within).unwrap_or_else(|| write(step.kind, step.within, Style::Inches))
            }
            kind => self.write(kind, step.within),
        }
    }

    fn key(&mut self) {
        self.heading("ex_key");
        let steps = &self.made.exercise.steps;
        let solved = solve(self.made, &mut OnHost);
        for (n, (step, solved)) in steps.iter().zip(&solved).enumerate() {
            let Some(solved) = solved else { continue };
            let (name, answer) = (self.step(step), self.answer(step, solved.value));
            let how = self.how(&solved.how, step);
            // No arithmetic gives a word.
            let sign = if step.choices.is_empty() { " =" } else { ":" };
            let how = if how.is_empty() { how } else { format!("{sign} {how}") };
            self.lines.wrapped(&format!("  {}. {name}: {answer}{how}", n + 1), 5);
        }
        self.heading("ex_slips");
        let right: Vec<Answer> = solved
            .iter()
            .map(|one| Answer { value: one.as_ref().map(|one| one.value), ..Answer::default() })
            .collect();
        for (at, name, value) in slips_of(self.made, &mut OnHost) {
            let Some(step) = steps.get(at) else { continue };
            let mut given = right.clone();
            if let Some(answer) = given.get_mut(at) {
                answer.value = Some(value);
            }
            let marked = mark(self.made, &given, &mut OnHost);
            let how = marked.steps.get(at).map(|mark| self.how(&mark.how, step)).unwrap_or_default();
            let answer = self.answer(step, value);
            let text = self.say(&format!("slips.{name}"), &[("answer", &answer), ("how", &how)]);
            self.lines.wrapped(&format!("  {}. {answer}: {text}", at + 1), 5);
        }
    }

    /// How an answer comes about. Where an R below 1 is among the figures every R has two places, as among the layers; in the
    /// line of a step in inches or millimeters every length stands in its unit.
    fn how(&self, pieces: &[Piece], step: &StepForm) -> String {
        let short = short(step);
        let resistance = |piece: &Piece| piece.is == "figure" && piece.kind == Kind::Resistance;
        let fine = pieces.iter().any(|piece| resistance(piece) && piece.value < 1.0);
        // A pitch is a fraction itself: beside what binds as strongly it stands in brackets.
        let tight = |at: Option<usize>| {
            at.and_then(|at| pieces.get(at))
                .is_some_and(|beside| matches!(beside.is, "times" | "over" | "root"))
        };
        let piece = |(at, piece): (usize, &Piece)| match piece.is {
            "figure" if piece.kind == Kind::Pitch && (tight(at.checked_sub(1)) || tight(Some(at + 1))) => {
                format!("({})", self.write(piece.kind, piece.value))
            }
            "figure" if fine && resistance(piece) => self.two(piece.value),
            "figure" => match short.filter(|_| piece.kind == Kind::Length) {
                Some(style) => write(piece.kind, piece.value, style),
                None => self.write(piece.kind, piece.value),
            },
            "open" => "(".to_owned(),
            "close" => ")".to_owned(),
            "plus" => " + ".to_owned(),
            "minus" => " − ".to_owned(),
            "times" => " × ".to_owned(),
            "over" => " ÷ ".to_owned(),
            "root" => "√".to_owned(),
            word => self.say(&format!("practice.how.{word}"), &[]),
        };
        pieces.iter().enumerate().map(piece).collect::<String>().trim().to_owned()
    }

    fn answer(&self, step: &StepForm, value: f64) -> String {
        if step.choices.is_empty() {
            let style = match (step.kind, step.unit) {
                (Kind::Length, Unit::Ft) => Style::FeetInches,
                (Kind::Length, _) => short(step).unwrap_or(Style::Metric),
                // A part of a whole thing is a mistake, and is to be seen.
                (Kind::Count, _) => return decimal(value, 2),
                (Kind::Resistance, _) => return self.resistance(step, value),
                _ => return self.write(step.kind, value),
            };
            return write(step.kind, value, style);
        }
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the place of a word")]
        let word = step.choices.get(value as usize).copied().unwrap_or_default();
        self.say(&format!("exercises.choice.{word}"), &[])
    }

    pub(super) fn write(&self, kind: Kind, value: f64) -> String {
        if kind == Kind::Pitch {
            return format!("{}/12", decimal(12.0 * value, 2));
        }
        let metric = self.units() == Units::Metric;
        let board_feet = kind == Kind::FoamVolume;
        let text = write(kind, value, if metric && !board_feet { Style::MetricUsual } else { Style::Us });
        // Board feet stand beside metric figures: their thousands are parted alike.
        if metric && board_feet { text.replace(',', "\u{202f}") } else { text }
    }

    /// An R to as many places as an answer has to have.
    fn resistance(&self, step: &StepForm, r: f64) -> String {
        let (value, usual, scale) = match self.units() {
            Units::Us => (r, 1, 1.0),
            Units::Metric => (r / SI_U, 2, SI_U),
        };
        let room = step.within.max(step.within_pct / 100.0 * r.abs()) / scale;
        let off =
            |places: usize| decimal(value, places).parse().map_or(0.0, |read: f64| (read - value).abs());
        let places = (usual..4).find(|places| off(*places) <= room).unwrap_or(4);
        match self.units() {
            _ if places == usual => self.write(step.kind, r),
            Units::Us => format!("R-{}", decimal(value, places)),
            Units::Metric => format!("RSI\u{a0}{}", decimal(value, places)),
        }
    }

    /// An R to two places, zeros and all. Half of a hundredth goes up, on whichever side of it a sum came to lie.
    pub(super) fn two(&self, r: f64) -> String {
        let r = r + 1e-9;
        match self.units() {
            Units::Us => format!("R-{r:.2}"),
            Units::Metric => format!("RSI\u{a0}{:.2}", r / SI_U),
        }
    }
}

/// How a length is written where the step's unit is inches or millimeters, however long it is.
fn short(step: &StepForm) -> Option<Style> {
    match step.unit {
        Unit::In => Some(Style::Inches),
        Unit::Mm => Some(Style::Millimeters),
        _ => None,
    }
}

/// A text as it is typed, set for reading: a temperature with its sign, `45 F` as `45 °F`, an RSI with two places, as
/// answers and formulas have it; any other text as it is.
pub(super) fn as_read(text: &str) -> String {
    if let Some(rsi) = text.strip_prefix("RSI ").and_then(|number| number.parse().ok()) {
        return format!("RSI {}", decimal(rsi, 2));
    }
    match text.rsplit_once(' ') {
        Some((number, unit @ ("C" | "F"))) => format!("{number}\u{a0}°{unit}"),
        _ => text.to_owned(),
    }
}

/// A small figure to two places that count: `0.01`, `0.0005`, `0.0028`.
fn small(value: f64) -> String {
    let (mut places, mut scaled) = (0, value);
    while scaled < 10.0 && places < 9 {
        scaled *= 10.0;
        places += 1;
    }
    decimal(value, places)
}

/// One thirty-second of an inch; coarser parts are written by the core.
fn thirty_second(inches: f64) -> Option<String> {
    ((inches * 32.0 - 1.0).abs() < 1e-9).then(|| "1/32\u{a0}in".to_owned())
}

/// A word of the document's own, as it is written in one.
pub(super) fn word(of: &impl serde::Serialize) -> String {
    serde_json::to_value(of).ok().as_ref().and_then(Value::as_str).unwrap_or_default().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use foamwright::practice::{Seed, VERSION, book, exercise as drawn, scenes};

    /// A text of a question, a layer and a row of the code's table stand as answers and formulas have them.
    #[test]
    fn what_is_given_has_the_places_of_what_is_answered() {
        for (typed, read) in [
            ("RSI 1.05666", "RSI 1.06"),
            ("RSI 6.69219", "RSI 6.69"),
            ("R-5.7", "R-5.7"),
            ("45 F", "45\u{a0}°F"),
        ] {
            assert_eq!(as_read(typed), read);
        }
        let stud = |language: &str| {
            let words = Words::of(language).expect("words");
            let made = drawn(Seed { version: VERSION, level: 0, number: 3 }, Units::Us).expect("an example");
            exercise(&made, true, &words)
        };
        let text = stud("en");
        assert!(text.contains("R-4.38") && !text.contains("R-4.37"), "{text}");
        let row = "20 or 13+5ci or 0+15ci";
        assert_eq!(Words::of("es").expect("words").code_row(row), "20 o 13+5ci o 0+15ci");
        assert_eq!(Words::of("en").expect("words").code_row(row), row);
    }

    /// In the line of a step in inches or millimeters no length stands in feet or meters, however long it is.
    #[test]
    fn lengths_of_a_line_stand_in_the_unit_of_its_box() {
        let words = Words::of("en").expect("words");
        let mut seen = 0;
        for (number, units) in (0..400).flat_map(|number| [(number, Units::Us), (number, Units::Metric)]) {
            let seed = Seed { version: VERSION, level: 1, number };
            let Some(made) = drawn(seed, units).filter(|made| made.exercise.scene == "tape") else {
                continue;
            };
            let (sign, other) = match made.exercise.steps.first().map(|step| step.unit) {
                Some(Unit::In) => ("\u{a0}in", ["′", "″"]),
                Some(Unit::Mm) => ("\u{a0}mm", ["\u{a0}m ", "\u{a0}cm"]),
                _ => continue,
            };
            seen += 1;
            let text = Text { made: &made, words: &words, lines: Lines::default() };
            for (step, solved) in made.exercise.steps.iter().zip(solve(&made, &mut OnHost)).take(3) {
                let solved = solved.expect("an answer");
                let line = format!("{} = {} ", text.answer(step, solved.value), text.how(&solved.how, step));
                assert!(line.contains(sign) && !other.iter().any(|one| line.contains(one)), "{seed}: {line}");
            }
        }
        assert!(seen > 20, "{seen} tapes in inches or millimeters");
    }

    /// Every text of an exercise is there in words, and every place in the words is filled.
    #[test]
    fn exercises_are_said_in_words() {
        let numbers = (0..120u16).map(|n| n.wrapping_mul(40_503));
        let mut seeds: Vec<Seed> = numbers
            .flat_map(|number| (1..=4).map(move |level| Seed { version: VERSION, level, number }))
            .collect();
        seeds.extend(book());
        let mut seen: Vec<(&str, u8, usize)> = Vec::new();
        for seed in seeds {
            for (language, units) in [("en", Units::Us), ("es", Units::Metric)] {
                let Some(made) = drawn(seed, units) else { continue };
                let one = (made.exercise.scene, seed.level, made.exercise.steps.len());
                if language == "en" && seen.contains(&one) {
                    break;
                }
                seen.push(one);
                let words = Words::of(language).expect("words");
                let text = exercise(&made, true, &words);
                let keys =
                    ["exercises", "slips", "practice", "text", "fields", "takeoff", "sources", "ready"];
                let is_key = |word: &str| {
                    word.split_once('.').is_some_and(|(page, rest)| {
                        keys.contains(&page) && rest.starts_with(|one: char| one.is_ascii_lowercase())
                    })
                };
                let gap = |line: &&str| line.contains(['{', '}']) || line.split_whitespace().any(is_key);
                let line = text.lines().find(gap);
                let scene = made.exercise.scene;
                assert!(line.is_none(), "{seed} {scene} {language}: {}", line.unwrap_or_default());
            }
        }
        for scene in scenes() {
            assert!(seen.iter().any(|one| one.0 == scene.key), "{} was not seen", scene.key);
        }
    }
}
