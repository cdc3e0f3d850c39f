//! Each kit from opened to emptied: how warm it was, and what it gave.

use super::log::Log;
use crate::findings::{Code, Finding};
use crate::foam::{Foam, Window};
use crate::job::{Event, EventOf, Job, Part, Reader};
use crate::kits::{Purchase, StockState};
use crate::measure::{BoardFeet, Fahrenheit, Inches, Kind, SquareFeet};
use serde::Serialize;

/// A kit that gave less than this share of what was planned is spoken of: a tenth less. This tool's own mark,
/// without a source.
const GAVE_LESS: f64 = 0.9;
/// A typed tenth of a degree is no binary fraction.
const ON_THE_LINE_F: f64 = 1e-9;

/// One kit on the day.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct KitRun {
    /// The event that opened it.
    pub id: u32,
    /// The event that ended it; 0 while it is open.
    pub off: u32,
    /// Its sheet, an id in the job's kits or in its stock; 0 where none was named.
    pub kit: u32,
    /// Whether a cylinder was outside its label's window as the kit was opened or ended.
    pub outside: bool,
    /// Net area sprayed from it.
    pub area_ft2: Option<SquareFeet>,
    /// Mean depth over that area, as probed.
    pub depth_in: Option<Inches>,
    /// Area × mean depth.
    pub in_place: Option<BoardFeet>,
    /// Board feet on its label. None of a kit that had been opened before: what was in it is not known well
    /// enough for a factor.
    pub label: Option<BoardFeet>,
    /// What stays in hoses, purge and test shot.
    pub fixed_loss: Option<BoardFeet>,
    /// The yield factor that it reached, in percent of label. Once it is ended: a kit that still holds foam
    /// says nothing.
    pub achieved_pct: Option<f64>,
    /// The yield factor of the plan.
    pub planned_pct: Option<f64>,
}

/// Every kit that was opened, in the order of opening.
///
/// In words: achieved factor = (area × mean depth + fixed loss) ÷ label board feet. Source: the definition of
/// the yield factor; common practice, no source.
pub(super) fn runs(
    job: &Job,
    foams: &[&Foam],
    purchase: &Purchase,
    log: &Log<'_>,
    reader: &mut Reader,
) -> Vec<KitRun> {
    let window = narrowest(foams);
    let mut runs: Vec<KitRun> = Vec::new();
    for event in log.events() {
        let run = match event.what {
            EventOf::KitOn => {
                runs.push(opened(event, job, purchase));
                runs.last_mut()
            }
            // A kit ends the last one that is open.
            EventOf::KitOff => runs.iter_mut().rev().find(|run| run.off == 0),
            _ => continue,
        };
        let opening = run.as_ref().and_then(|run| job.events.iter().find(|one| one.id == run.id));
        let name = opening.unwrap_or(event).name.as_str();
        let outside = cylinders(event, window, name, reader);
        let Some(run) = run else { continue };
        run.outside |= outside;
        if event.what == EventOf::KitOff {
            run.off = event.id;
            ended(run, event, name, reader);
        }
    }
    runs
}

fn opened(event: &Event, job: &Job, purchase: &Purchase) -> KitRun {
    let known = |id: &u32| job.kits.iter().chain(&job.stock).any(|sheet| sheet.id == *id);
    let kit = event.key.parse::<u32>().ok().filter(known);
    let size = purchase.sizes.iter().find(|size| Some(size.kit) == kit);
    // A kit of the stock that was opened before does not hold its label's board feet.
    let sealed = |stock: &&crate::kits::Stock| Some(stock.kit) == kit && stock.state == StockState::Sealed;
    let stock = purchase.stock.iter().find(sealed);
    KitRun {
        id: event.id,
        off: 0,
        kit: kit.unwrap_or_default(),
        outside: false,
        area_ft2: None,
        depth_in: None,
        in_place: None,
        label: size.map(|size| size.label).or_else(|| stock?.label),
        fixed_loss: size.map(|size| size.fixed_loss).or_else(|| stock?.fixed_loss),
        achieved_pct: None,
        planned_pct: size.map(|size| size.factor_pct).or_else(|| stock?.factor_pct),
    }
}

fn ended(run: &mut KitRun, event: &Event, name: &str, reader: &mut Reader) {
    let mut read =
        |name| reader.take(Part::Event, event.id, &event.entries, name).map(|taken| taken.value.likely);
    run.area_ft2 = read("sprayed_area").map(SquareFeet);
    run.depth_in = read("mean_depth").map(Inches);
    run.in_place = run.area_ft2.zip(run.depth_in).map(|(area, depth)| BoardFeet(area.0 * depth.0));
    let (Some(in_place), Some(label), Some(loss)) = (run.in_place, run.label, run.fixed_loss) else { return };
    if label.0 <= 0.0 {
        return;
    }
    let achieved = (in_place.0 + loss.0) / label.0 * 100.0;
    run.achieved_pct = Some(achieved);
    if let Some(planned) = run.planned_pct
        && achieved < planned * GAVE_LESS
    {
        let finding = named(Code::KitGaveLess, event.id, "", name)
            .with("achieved", reader.figure(Kind::Percent, achieved))
            .with("planned", reader.figure(Kind::Percent, planned));
        reader.say(finding);
    }
}

/// Holds both cylinders against the label's window; whether one is outside.
fn cylinders(event: &Event, window: Option<Window>, name: &str, reader: &mut Reader) -> bool {
    let mut outside = false;
    for field in ["cylinder_a", "cylinder_b"] {
        let Some(taken) = reader.take(Part::Event, event.id, &event.entries, field) else { continue };
        let Some(window) = window else { continue };
        let (least, most) = (window.least_f.0, window.most_f.0);
        let (code, given) = if taken.value.low < least - ON_THE_LINE_F {
            (Code::KitCold, taken.value.low)
        } else if taken.value.high > most + ON_THE_LINE_F {
            (Code::KitHot, taken.value.high)
        } else {
            continue;
        };
        outside = true;
        let finding = named(code, event.id, field, name)
            .with("given", reader.figure(Kind::Temperature, given))
            .with("least", reader.figure(Kind::Temperature, least))
            .with("most", reader.figure(Kind::Temperature, most));
        reader.say(finding);
    }
    outside
}

fn named(code: Code, id: u32, field: &str, name: &str) -> Finding {
    let name = name.trim();
    let finding = Finding::new(code, Part::Event, id, field);
    finding.with("name", if name.is_empty() { "@kit" } else { name })
}

/// The window that suits every foam of the day.
fn narrowest(foams: &[&Foam]) -> Option<Window> {
    foams.iter().map(|foam| foam.cylinder).reduce(|one, other| Window {
        least_f: Fahrenheit(one.least_f.0.max(other.least_f.0)),
        most_f: Fahrenheit(one.most_f.0.min(other.most_f.0)),
        default: one.default || other.default,
    })
}
