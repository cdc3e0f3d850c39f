//! Putting an exercise together: a job with readings as a tape, a label or a thermometer would give them, and its
//! steps.
//!
//! Scenes of generator version 1 rest on what is written here (and on `NOW`): it is as frozen as they are. What a newer
//! version wants otherwise it writes itself; the golden file tells.

use super::{By, Draw, Exercise, Formula, Given, Right, Seed, Shown, Slip, StepForm, StepWay, Topic};
use crate::job::{
    DepthWay, Entered, FoamSheet, JOB_VERSION, Job, KitSheet, Layer, Now, Opening, Patch, RAtThickness,
    ReadingOf, Shape, SiteReading, Surface, Warming,
};
use crate::measure::{Kind, Unit, Units};

/// An exercise with its answers.
#[derive(Debug, Clone, PartialEq)]
pub struct Made {
    /// What a student is given.
    pub exercise: Exercise,
    /// How each step is answered, in the order of the steps.
    pub ways: Vec<StepWay>,
}

/// Tuesday, May 12, 2026, 8:00 in the morning at five hours west of Greenwich: when every exercise takes place.
pub const NOW: Now = Now { ms: 1_778_590_800_000.0, offset_min: -300 };

/// R-5.678 is RSI 1, and U 1 in Btu/(h·ft²·°F) is 5.678 in W/(m²·K) (NIST SP 811).
pub const R_OF_RSI: f64 = 5.678_263_341;

/// An exercise while it is put together.
#[derive(Debug)]
pub struct Making {
    /// The stream of numbers of its seed.
    pub draw: Draw,
    /// The job so far.
    pub job: Job,
    exercise: Exercise,
    ways: Vec<StepWay>,
}

/// Entries as they are typed: field, text.
pub type Entries<'a> = &'a [(&'a str, String)];

impl Making {
    /// Begins an exercise.
    pub fn new(seed: Seed, units: Units, scene: &'static str) -> Self {
        let name = seed.to_string();
        let job = Job {
            format: "foamwright-job".to_owned(),
            version: JOB_VERSION,
            id: format!("practice-{name}"),
            next_id: 1,
            units,
            name: String::new(),
            place: String::new(),
            note: String::new(),
            entries: Vec::new(),
            foam: 0,
            surfaces: Vec::new(),
            foams: Vec::new(),
            kits: Vec::new(),
            stock: Vec::new(),
            purchase: None,
            readings: Vec::new(),
            rounds: Vec::new(),
            warming: Vec::new(),
            forecast: Vec::new(),
            events: Vec::new(),
        };
        let exercise = Exercise {
            seed: name,
            level: seed.level,
            scene,
            topics: Vec::new(),
            source: "",
            job: job.clone(),
            now: NOW,
            given: Vec::new(),
            shown: Vec::new(),
            steps: Vec::new(),
        };
        Self { draw: Self::draws(seed), job, exercise, ways: Vec::new() }
    }

    /// The stream of a seed, from its beginning.
    pub fn draws(seed: Seed) -> Draw {
        Draw::new(u64::from(seed.number), u64::from(seed.version) << 8 | u64::from(seed.level))
    }

    /// The exercise, finished.
    pub fn done(mut self) -> Made {
        let mut topics: Vec<Topic> = self.exercise.steps.iter().map(|step| step.topic).collect();
        topics.sort_unstable();
        topics.dedup();
        self.exercise.topics = topics;
        // Square meters times millimeters are liters: what a board foot is of them has to stand somewhere.
        if self.metric() && self.exercise.steps.iter().any(|step| step.key == "board_feet") {
            self.shows("foam_units", 0, &[]);
        }
        self.exercise.job = self.job;
        Made { exercise: self.exercise, ways: self.ways }
    }

    /// Whether the person works in metric units.
    pub fn metric(&self) -> bool {
        self.job.units == Units::Metric
    }

    /// The next id of the job.
    pub fn id(&mut self) -> u32 {
        let id = self.job.next_id;
        self.job.next_id += 1;
        id
    }

    /// A length as a tape gives it: feet, inches and eighths, or meters to the half centimeter; up to 4 ft inches
    /// alone where `short`, or millimeters.
    pub fn tape(&self, inches: f64, short: bool) -> String {
        if self.metric() {
            let mm = 5.0 * libm::round(inches * 25.4 / 5.0);
            return if short {
                format!("{} mm", plain(mm, 0))
            } else {
                format!("{} m", plain(mm / 1000.0, 3))
            };
        }
        let eighths = libm::round(inches * 8.0);
        let (mut rest, feet) =
            if short { (eighths, 0.0) } else { (eighths % 96.0, libm::floor(eighths / 96.0)) };
        let whole = libm::floor(rest / 8.0);
        rest %= 8.0;
        const EIGHTHS: [&str; 8] = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "from 0 to 7")]
        let fraction = EIGHTHS.get(libm::round(rest) as usize).copied().unwrap_or_default();
        let inches = match (whole, fraction) {
            (whole, "") => plain(whole, 0),
            (whole, fraction) if whole == 0.0 && short => fraction.to_owned(),
            (whole, fraction) => format!("{} {fraction}", plain(whole, 0)),
        };
        if short { format!("{inches} in") } else { format!("{}' {inches}\"", plain(feet, 0)) }
    }

    /// An area as a takeoff gives it: whole square feet, or tenths of a square meter.
    pub fn area(&self, ft2: f64) -> String {
        match self.metric() {
            true => format!("{} m²", plain(ft2 * 0.092_903_04, 1)),
            false => format!("{} ft²", plain(ft2, 0)),
        }
    }

    /// Sides added up and taken for an area: so many square feet as they are feet, square meters as they are meters.
    pub fn sides_added(&self, sides: Formula) -> Formula {
        let of_inch = if self.metric() { 0.0254 / 0.092_903_04 } else { 1.0 / 12.0 };
        sides.scaled(of_inch)
    }

    /// A temperature as a thermometer gives it: whole degrees.
    pub fn degrees(&self, fahrenheit: i32) -> String {
        match self.metric() {
            true => format!("{} C", plain(f64::from(fahrenheit - 32) / 1.8, 0)),
            false => format!("{fahrenheit} F"),
        }
    }

    /// An R as a data sheet gives it.
    pub fn r(&self, r: f64) -> String {
        match self.metric() {
            true => format!("RSI {}", plain(r / R_OF_RSI, 2)),
            false => format!("R-{}", plain(r, 1)),
        }
    }

    /// An entry of the job itself.
    pub fn of_job(&mut self, field: &str, text: impl Into<String>) {
        let entry = entered(field, text);
        self.job.entries.push(entry);
    }

    /// A surface; says at which place of the list it stands.
    pub fn surface(&mut self, shape: Shape, entries: Entries) -> usize {
        let id = self.id();
        self.job.surfaces.push(Surface {
            id,
            name: String::new(),
            shape,
            entries: all(entries),
            deduct_framing: false,
            openings: Vec::new(),
            patches: Vec::new(),
            legs: Vec::new(),
            layers: Vec::new(),
            depth_way: DepthWay::Typed,
            depth_kit: 0,
            foam: 0,
        });
        self.job.surfaces.len() - 1
    }

    /// An opening in the surface that was begun last.
    pub fn opening(&mut self, entries: Entries) {
        let id = self.id();
        if let Some(surface) = self.job.surfaces.last_mut() {
            surface.openings.push(Opening { id, name: String::new(), entries: all(entries) });
        }
    }

    /// A foam's data sheet with R at so many inches each, and its other entries. The job's foam, where it is the first.
    pub fn foam(&mut self, name: &str, r_at: &[(f64, f64)], entries: Entries) {
        let id = self.id();
        let mut rows = Vec::new();
        for (inches, r) in r_at {
            let thickness = self.tape(*inches, true);
            let r = self.r(*r);
            let entries = vec![entered("thickness", thickness), entered("r", r)];
            rows.push(RAtThickness { id: self.id(), entries });
        }
        let entries = all(entries);
        if self.job.foam == 0 {
            self.job.foam = id;
        }
        self.job.foams.push(FoamSheet {
            id,
            sheet: String::new(),
            version: 0,
            name: name.to_owned(),
            entries,
            r_at: rows,
        });
    }

    /// A kit on the shelf, named by its label yield.
    pub fn kit(&mut self, label: i32, dollars: i32) {
        let id = self.id();
        let entries = all(&[("label_yield", label.to_string()), ("price", dollars.to_string())]);
        let name = label.to_string();
        self.job.kits.push(KitSheet { id, sheet: String::new(), version: 0, name, entries });
    }

    /// A group of kits that are to be warmed; says its id.
    pub fn warming(&mut self, entries: Entries) -> u32 {
        let id = self.id();
        let (name, entries) = (String::new(), all(entries));
        self.job.warming.push(Warming {
            id,
            name,
            entries,
            moved_in: None,
            moved_out: None,
            log: Vec::new(),
        });
        id
    }

    /// A layer of the surface that was begun last.
    pub fn layer(&mut self, entries: Entries) {
        let id = self.id();
        if let Some(surface) = self.job.surfaces.last_mut() {
            surface.layers.push(Layer { id, name: String::new(), entries: all(entries) });
        }
    }

    /// A patch of the surface that was begun last.
    pub fn patch(&mut self, entries: Entries) {
        let id = self.id();
        if let Some(surface) = self.job.surfaces.last_mut() {
            surface.patches.push(Patch { id, name: String::new(), entries: all(entries) });
        }
    }

    /// A reading, taken so many minutes ago.
    pub fn reading(&mut self, of: ReadingOf, minutes_ago: i32, entries: Entries) {
        let id = self.id();
        let taken = Some(Now { ms: NOW.ms - f64::from(minutes_ago) * 60_000.0, ..NOW });
        self.job.readings.push(SiteReading { id, of, name: String::new(), entries: all(entries), taken });
    }

    /// A figure of the question as a tape, label or thermometer gives it.
    pub fn says(&mut self, key: &'static str, text: impl Into<String>) {
        self.exercise.given.push(Given { key, text: text.into(), value: 0.0, kind: Kind::Number });
    }

    /// A figure of the question that is written by its kind.
    pub fn gives(&mut self, key: &'static str, value: f64, kind: Kind) {
        self.exercise.given.push(Given { key, text: String::new(), value, kind });
    }

    /// Something that stands beside the question.
    pub fn shows(&mut self, what: &'static str, id: u32, at: &[f64]) {
        self.exercise.shown.push(Shown { what, id, at: at.to_vec() });
    }

    /// Where a published example was read.
    pub fn source(&mut self, key: &'static str) {
        self.exercise.source = key;
    }

    /// Asks a step.
    pub fn ask(&mut self, ask: Ask) {
        let unit = match self.job.units {
            Units::Us => ask.us,
            Units::Metric => ask.metric,
        };
        self.exercise.steps.push(StepForm { unit, ..ask.form });
        self.ways.push(ask.way);
    }
}

/// A figure as it is written in a text: rounded to so many places, the last zeros left out. By whole numbers alone, so
/// that no text ever ends in a long tail of nines.
pub fn plain(value: f64, places: u32) -> String {
    let tens = 10_u64.pow(places.min(9));
    #[allow(clippy::cast_precision_loss, reason = "a billion at most")]
    let all = libm::round(value * tens as f64);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "measures of a job, without their sign"
    )]
    let digits = all.abs() as u64;
    let (whole, part) = (digits / tens, digits % tens);
    let sign = if all < 0.0 { "-" } else { "" };
    if part == 0 {
        return format!("{sign}{whole}");
    }
    let part = format!("{part:0width$}", width = places.min(9) as usize);
    format!("{sign}{whole}.{}", part.trim_end_matches('0'))
}

/// An entry as typed.
pub fn entered(field: &str, text: impl Into<String>) -> Entered {
    Entered { field: field.to_owned(), text: text.into(), unit: None, sense: None }
}

/// Entries as typed.
pub fn all(entries: Entries) -> Vec<Entered> {
    entries.iter().map(|(field, text)| entered(field, text.clone())).collect()
}

/// Puts another text into an entry, for a slip; adds the entry where there is none.
pub fn change(entries: &mut Vec<Entered>, field: &str, text: impl Into<String>) {
    let text = text.into();
    match entries.iter_mut().find(|one| one.field == field) {
        Some(one) => one.text = text,
        None => entries.push(entered(field, text)),
    }
}

/// A step while it is put together.
#[derive(Debug)]
pub struct Ask {
    form: StepForm,
    us: Unit,
    metric: Unit,
    way: StepWay,
}

impl Ask {
    /// A step whose answer is a figure of this kind. Its tolerance is half a percent unless it is said otherwise, and
    /// nothing for whole things.
    pub fn new(key: &'static str, topic: Topic, kind: Kind) -> Self {
        let (us, metric) = match kind {
            Kind::Length => (Unit::Ft, Unit::M),
            Kind::Area => (Unit::Ft2, Unit::M2),
            Kind::Temperature | Kind::TemperatureStep => (Unit::F, Unit::C),
            Kind::Percent => (Unit::Pct, Unit::Pct),
            Kind::Resistance => (Unit::R, Unit::Rsi),
            Kind::FoamVolume => (Unit::BdFt, Unit::BdFt),
            Kind::Duration => (Unit::Min, Unit::Min),
            Kind::Money => (Unit::Usd, Unit::Usd),
            Kind::Clock => (Unit::Clock, Unit::Clock),
            Kind::Count => (Unit::Each, Unit::Each),
            _ => (Unit::One, Unit::One),
        };
        let exact = matches!(kind, Kind::Count | Kind::Choice | Kind::Clock);
        let within_pct = if exact { 0.0 } else { 0.5 };
        // An area is written to a tenth of a square foot: a small one is met within half of that.
        let within = if kind == Kind::Area { 0.05 } else { 0.0 };
        let form = StepForm { key, of: "", topic, kind, unit: us, choices: &[], within, within_pct };
        Self { form, us, metric, way: StepWay { right: Right::Formula, formula: None, slips: Vec::new() } }
    }

    /// A step that is answered with one of a few words.
    pub fn choice(key: &'static str, topic: Topic, choices: &'static [&'static str]) -> Self {
        let mut ask = Self::new(key, topic, Kind::Choice);
        ask.form.choices = choices;
        ask
    }

    /// Of which thing, where a key comes twice: words `thing.<of>`; formulas name it `key/of`.
    pub fn of(mut self, of: &'static str) -> Self {
        self.form.of = of;
        self
    }
    /// In other units than those of its kind.
    pub fn units(mut self, us: Unit, metric: Unit) -> Self {
        (self.us, self.metric) = (us, metric);
        self
    }
    /// In inches or millimeters.
    pub fn short(self) -> Self {
        self.units(Unit::In, Unit::Mm)
    }
    /// Right within this, in the unit that the kind is held in, or within a share, whichever is more.
    pub fn within(mut self, within: f64, percent: f64) -> Self {
        (self.form.within, self.form.within_pct) = (within, percent);
        self
    }
    /// The right answer stands in the estimate.
    pub fn at(mut self, path: impl Into<String>) -> Self {
        self.way.right = Right::At(path.into());
        self
    }
    /// The right answer is a word of the estimate.
    pub fn word(mut self, path: impl Into<String>) -> Self {
        self.way.right = Right::Word(path.into());
        self
    }
    /// The right answer is the first choice whose path gives 1: a path for each choice, in their order.
    pub fn words(mut self, each: &[&str]) -> Self {
        self.way.right = Right::Words(each.iter().map(|&path| path.to_owned()).collect());
        self
    }
    /// How it follows. Without [`at`](Self::at) it is the right answer itself.
    pub fn by(mut self, formula: Formula) -> Self {
        self.way.formula = Some(formula);
        self
    }
    /// A slip by other arithmetic.
    pub fn slip(mut self, name: &'static str, formula: Formula) -> Self {
        self.way.slips.push(Slip { name, by: By::Formula(formula) });
        self
    }
    /// A slip that is the same job with something changed.
    pub fn slip_job(
        mut self,
        name: &'static str,
        making: &Making,
        path: impl Into<String>,
        change: impl FnOnce(&mut Job),
    ) -> Self {
        let mut job = making.job.clone();
        change(&mut job);
        self.way.slips.push(Slip { name, by: By::Job(Box::new(job), path.into()) });
        self
    }
}

#[cfg(test)]
mod tests {
    use super::plain;

    #[test]
    fn figures_are_written_without_a_tail() {
        for (value, places, text) in [
            (2.5 * 25.4, 2, "63.5"),
            (69.000_000_000_000_01, 4, "69"),
            (65.999_999_999_999_99, 4, "66"),
            (9.375, 4, "9.375"),
            (1.004, 2, "1"),
            (10.05, 1, "10.1"),
            (0.05, 2, "0.05"),
            (1_000.0, 0, "1000"),
            (-76.3, 1, "-76.3"),
            (-0.04, 1, "0"),
            (0.0, 3, "0"),
        ] {
            assert_eq!(plain(value, places), text, "{value}");
        }
    }
}
