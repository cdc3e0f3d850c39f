//! Kits that are already there: what each still gives on the day, and why one does not count.
//!
//! A kit is a set: the lesser of its own A and B decides, and nothing is ever paired across kits.

use crate::findings::{Code, Finding};
use crate::foam::Foam;
use crate::job::{Job, KitSheet, Now, Part, Reader, entry};
use crate::measure::{BoardFeet, Kind, Pounds};
use serde::Serialize;

/// The share of what the weight says that a part-used kit counts with, in percent. Common practice, no source.
const PART_USED_PCT: f64 = 70.0;

/// Labels round: contents may weigh this share more than the label before the scale is doubted.
///
/// Common practice, no source.
const LABELS_ROUND: f64 = 0.05;

const MINUTES_A_DAY: f64 = 1_440.0;
const DAY_MS: f64 = 86_400_000.0;

/// Whether a kit's valves were ever opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum StockState {
    /// Nobody said.
    NotSaid,
    /// Never opened.
    Sealed,
    /// Opened: it hardens from within.
    Opened,
}

/// Whether a kit counts, and if not, why.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Counts {
    /// It counts.
    Yes,
    /// It is not to be used on this job.
    NotHere,
    /// Something that decides is blank or cannot be read.
    NotKnown,
    /// Its date passes before the foam is sprayed.
    PastDate,
    /// It was opened too long ago.
    OpenTooLong,
    /// Nothing usable is left in it.
    Empty,
}

/// How a cylinder's share was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum ShareBy {
    /// It was typed, or is not known.
    #[default]
    Said,
    /// By the weight of the contents.
    Weight,
}

/// One kit that is already there.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Stock {
    /// Its id in the job's stock.
    pub kit: u32,
    /// Sealed or opened.
    pub state: StockState,
    /// Whether it counts.
    pub counts: Counts,
    /// Board feet on its label.
    pub label: Option<BoardFeet>,
    /// The yield factor, in percent of label.
    pub factor_pct: Option<f64>,
    /// Label × factor.
    pub after_factor: Option<BoardFeet>,
    /// What stays in hoses and test shot: of a sealed kit only. In an opened kit the hoses are full, and that
    /// foam and each purge since have left the cylinders by weight.
    pub fixed_loss: Option<BoardFeet>,
    /// How A's share was found.
    pub a_by: ShareBy,
    /// Contents of A as weighed.
    pub a_weight_lb: Option<Pounds>,
    /// Net weight on A's own label.
    pub a_label_lb: Option<Pounds>,
    /// What is left in A, in percent of A's own label weight.
    pub a_share_pct: Option<f64>,
    /// How B's share was found.
    pub b_by: ShareBy,
    /// Contents of B as weighed.
    pub b_weight_lb: Option<Pounds>,
    /// Net weight on B's own label.
    pub b_label_lb: Option<Pounds>,
    /// What is left in B, in percent of B's own label weight.
    pub b_share_pct: Option<f64>,
    /// The lesser of the two shares.
    pub least_share_pct: Option<f64>,
    /// The share of that which a part-used kit counts with.
    pub kept_pct: f64,
    /// What it gives if it is used: sealed label × factor − fixed loss, opened label × factor × least share ×
    /// 70 %; never below zero. `None` where that is not known.
    pub usable: Option<BoardFeet>,
    /// What counts for this job: `usable`, or nothing where the kit does not count.
    pub counted: BoardFeet,
    /// The last day on which it may be sprayed: its label's date, and once opened its days after opening, the
    /// earlier of the two. Days since 1970-01-01.
    pub last_day: Option<f64>,
    /// Days from today to that day; negative once it is past.
    pub days_left: Option<f64>,
    /// The day of the next purge, of an opened kit.
    pub purge_day: Option<f64>,
    /// Days from today to that day; negative where it is overdue.
    pub purge_in_days: Option<f64>,
    /// Nozzles that are there with it, if somebody counted.
    pub nozzles: Option<u32>,
}

/// What the shelf gives to a job, all kits together.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Shelf {
    /// Board feet that count.
    pub usable: BoardFeet,
    /// Board feet of label that they stand for: for an opened kit, label × least share × 70 %.
    pub label: BoardFeet,
    /// Fixed losses of the sealed ones.
    pub fixed_loss: BoardFeet,
    /// Kits that count.
    pub kits: u32,
    /// Their nozzles; `None` where one of them was not counted.
    pub nozzles: Option<u32>,
}

impl Shelf {
    pub(super) fn of(stock: &[Stock]) -> Self {
        let mut shelf = Self { nozzles: Some(0), ..Self::default() };
        for one in stock.iter().filter(|one| one.counts == Counts::Yes) {
            let (label, loss) = (one.label.map_or(0.0, |label| label.0), one.fixed_loss);
            let share = match one.state {
                StockState::Opened => one.least_share_pct.unwrap_or_default() * one.kept_pct / 10_000.0,
                StockState::Sealed | StockState::NotSaid => 1.0,
            };
            shelf.usable.0 += one.counted.0;
            shelf.label.0 += label * share;
            shelf.fixed_loss.0 += loss.map_or(0.0, |loss| loss.0);
            shelf.kits = shelf.kits.saturating_add(1);
            shelf.nozzles = shelf.nozzles.zip(one.nozzles).map(|(sum, nozzles)| sum.saturating_add(nozzles));
        }
        shelf
    }
}

/// The days that bear on a kit, in days since 1970-01-01.
#[derive(Debug, Clone, Copy)]
struct Days {
    /// The day on the person's clock.
    today: f64,
    /// The day on which it would be sprayed: the job's, or today where that is later or not said.
    spray: f64,
    /// Days after opening in which a kit is to be finished.
    open: f64,
    /// Days from one purge to the next.
    purge: f64,
}

/// The kits that are already there, as of the local day of `now` or the day of spraying, whichever is later.
///
/// In words: sealed: label × factor − fixed loss, as for a bought one; opened: label × factor × the lesser of
/// the two cylinders' shares × 70 %. A cylinder's share = its contents ÷ its own label weight (A is about a tenth
/// denser than B: pounds are never compared across). A kit past its date, opened too long ago, or of which
/// something that decides is not known counts for nothing, with a finding. Common practice, no source.
pub fn stock(
    job: &Job,
    foam: Option<&Foam>,
    spray_day: Option<f64>,
    now: Now,
    reader: &mut Reader,
) -> Vec<Stock> {
    if job.stock.is_empty() {
        return Vec::new();
    }
    // Read again without a word: their findings were said where they are at home.
    let mut quiet = Reader::new(reader.units);
    let mut of_job = |name| quiet.take(Part::Job, 0, &job.entries, name).map(|taken| taken.value.likely);
    let terms = (of_job("yield_factor"), of_job("fixed_loss"));
    let sheet = foam.and_then(|foam| job.foam_sheet(foam.id));
    let (id, entries) = sheet.map_or((0, [].as_slice()), |sheet| (sheet.id, sheet.entries.as_slice()));
    let mut of_foam = |name, stricter: fn(crate::measure::Band<f64>) -> f64| {
        let typed = reader.take(Part::Foam, id, entries, name);
        let taken = typed.or_else(|| reader.take(Part::Foam, id, &[], name));
        taken.map_or(f64::NAN, |taken| stricter(taken.value))
    };
    let open = of_foam("open_days", |band| band.low) / MINUTES_A_DAY;
    let purge = of_foam("purge_days", |band| band.low) / MINUTES_A_DAY;
    let storage = (of_foam("storage_least", |band| band.high), of_foam("storage_most", |band| band.low));
    let today = libm::floor((now.ms + f64::from(now.offset_min) * 60_000.0) / DAY_MS);
    let spray = spray_day.filter(|day| *day > today).unwrap_or(today);
    let days = Days { today, spray, open, purge };
    job.stock.iter().map(|sheet| one(sheet, terms, days, storage, reader)).collect()
}

fn one(
    sheet: &KitSheet,
    (factor, loss): (Option<f64>, Option<f64>),
    days: Days,
    storage: (f64, f64),
    reader: &mut Reader,
) -> Stock {
    let said =
        |code, field| Finding::new(code, Part::Owned, sheet.id, field).with("name", sheet.name.as_str());
    let take = |name, reader: &mut Reader| {
        reader.take(Part::Owned, sheet.id, &sheet.entries, name).map(|taken| taken.value)
    };
    let typed = |name| entry(&sheet.entries, name).is_some();
    let state = match reader.choice(Part::Owned, sheet.id, &sheet.entries, "state") {
        Some("sealed") => StockState::Sealed,
        Some("opened") => StockState::Opened,
        _ => StockState::NotSaid,
    };
    let opened = state == StockState::Opened;
    let here = reader.choice(Part::Owned, sheet.id, &sheet.entries, "use") != Some("no");
    let label = take("label_yield", reader).map(|feet| feet.low);
    let nozzles = take("nozzles", reader).map(|count| count.low as u32);
    if let Some(room) = take("storage", reader)
        && (room.low < storage.0 || room.high > storage.1)
    {
        let given = if room.low < storage.0 { room.low } else { room.high };
        let finding = said(Code::StockStorage, "storage")
            .with("given", reader.figure(Kind::Temperature, given))
            .with("least", reader.figure(Kind::Temperature, storage.0))
            .with("most", reader.figure(Kind::Temperature, storage.1));
        reader.say(finding);
    }
    // Of a range the end that gives less, or passes sooner.
    let expires = take("expires", reader).map(|day| day.low);
    let opened_on = if opened { take("opened", reader).map(|day| day.low) } else { None };
    let ahead = opened_on.is_some_and(|day| day > days.today);
    let closes = opened_on.map(|day| day + days.open);
    let last_day = match (expires, closes) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (one, other) => one.or(other),
    };
    let mut purge_day = None;
    if let Some(opened_on) = opened_on.filter(|_| !ahead) {
        let last = take("last_purge", reader).map(|day| day.low);
        if last.is_some_and(|day| day > days.today) {
            reader.say(said(Code::StockDayAhead, "last_purge"));
        }
        let last = last.filter(|day| *day > opened_on && *day <= days.today).unwrap_or(opened_on);
        purge_day = Some(last + days.purge);
        if days.today > last + days.purge {
            let finding = said(Code::StockPurgeDue, "last_purge")
                .with("day", reader.figure(Kind::Date, last + days.purge))
                .with("days", crate::measure::decimal(days.purge, 0));
            reader.say(finding);
        }
    }
    let (a, b) =
        if opened { (side("a", sheet, reader), side("b", sheet, reader)) } else { Default::default() };
    let least_share_pct = a.share_pct.zip(b.share_pct).map(|(a, b)| a.min(b));
    let after_factor = label.zip(factor).map(|(label, factor)| label * factor / 100.0);
    let usable = match state {
        StockState::Sealed => after_factor.zip(loss).map(|(feet, loss)| (feet - loss).max(0.0)),
        StockState::Opened => {
            let left = after_factor.zip(least_share_pct);
            left.map(|(feet, share)| feet * share / 100.0 * PART_USED_PCT / 100.0)
        }
        StockState::NotSaid => None,
    };

    // What is not known: the first that has to be filled in, in the order of the form.
    let unread_date = typed("expires") && expires.is_none();
    let unknown = [
        (label.is_none(), "label_yield"),
        (state == StockState::NotSaid, "state"),
        (unread_date, "expires"),
        (opened && opened_on.is_none(), "opened"),
        (opened && a.share_pct.is_none(), a.lacks),
        (opened && b.share_pct.is_none(), b.lacks),
    ];
    let unknown = unknown.iter().find(|(lacks, _)| *lacks).map(|(_, field)| *field);
    let past = |day: Option<f64>| day.is_some_and(|day| days.spray > day || days.spray.is_nan());
    let counts = if !here {
        Counts::NotHere
    } else if let Some(field) = unknown {
        reader.say(said(Code::StockUnknown, field));
        Counts::NotKnown
    } else if ahead {
        reader.say(said(Code::StockDayAhead, "opened"));
        Counts::NotKnown
    } else if past(expires) {
        let day = reader.figure(Kind::Date, expires.unwrap_or_default());
        reader.say(said(Code::StockPastDate, "expires").with("day", day));
        Counts::PastDate
    } else if past(closes) {
        let finding = said(Code::StockOpenTooLong, "opened")
            .with("day", reader.figure(Kind::Date, closes.unwrap_or_default()))
            .with("days", crate::measure::decimal(days.open, 0));
        reader.say(finding);
        Counts::OpenTooLong
    } else if usable.is_none() {
        Counts::NotKnown
    } else if usable.is_some_and(|feet| feet <= 0.0) {
        Counts::Empty
    } else {
        if expires.is_none() {
            reader.say(said(Code::StockNoDate, "expires"));
        }
        Counts::Yes
    };
    Stock {
        kit: sheet.id,
        state,
        counts,
        label: label.map(BoardFeet),
        factor_pct: factor,
        after_factor: after_factor.map(BoardFeet),
        fixed_loss: loss.filter(|_| state == StockState::Sealed).map(BoardFeet),
        a_by: a.by,
        a_weight_lb: a.weight.map(Pounds),
        a_label_lb: a.label.map(Pounds),
        a_share_pct: a.share_pct,
        b_by: b.by,
        b_weight_lb: b.weight.map(Pounds),
        b_label_lb: b.label.map(Pounds),
        b_share_pct: b.share_pct,
        least_share_pct,
        kept_pct: PART_USED_PCT,
        usable: usable.map(BoardFeet),
        counted: BoardFeet(if counts == Counts::Yes { usable.unwrap_or_default() } else { 0.0 }),
        last_day,
        days_left: last_day.map(|day| day - days.today),
        purge_day,
        purge_in_days: purge_day.map(|day| day - days.today),
        nozzles,
    }
}

/// What one cylinder still holds.
#[derive(Debug, Clone, Copy, Default)]
struct Side {
    by: ShareBy,
    weight: Option<f64>,
    label: Option<f64>,
    share_pct: Option<f64>,
    /// The field that has to be filled in where the share is not known.
    lacks: &'static str,
}

/// A cylinder's share: its contents by weight where they were weighed, else what was estimated.
fn side(letter: &str, sheet: &KitSheet, reader: &mut Reader) -> Side {
    let [label_field, weight_field, left_field] = match letter {
        "a" => ["a_label", "a_weight", "a_left"],
        _ => ["b_label", "b_weight", "b_left"],
    };
    let mut take =
        |name| reader.take(Part::Owned, sheet.id, &sheet.entries, name).map(|taken| taken.value.low);
    let label = take(label_field);
    let weight = take(weight_field);
    let left = take(left_field);
    if entry(&sheet.entries, weight_field).is_none() {
        return Side { by: ShareBy::Said, weight: None, label, share_pct: left, lacks: left_field };
    }
    // What was weighed counts, and nothing stands in for it where it cannot be used.
    let Some((weight, label)) = weight.zip(label) else {
        let lacks = if weight.is_some() { label_field } else { weight_field };
        return Side { by: ShareBy::Weight, weight, label, share_pct: None, lacks };
    };
    let by = ShareBy::Weight;
    if weight > label * (1.0 + LABELS_ROUND) {
        let finding = Finding::new(Code::StockOverWeight, Part::Owned, sheet.id, weight_field)
            .with("given", reader.figure(Kind::Weight, weight))
            .with("most", reader.figure(Kind::Weight, label));
        reader.say(finding);
        return Side { by, weight: Some(weight), label: Some(label), share_pct: None, lacks: weight_field };
    }
    let share_pct = Some((weight / label * 100.0).min(100.0));
    Side { by, weight: Some(weight), label: Some(label), share_pct, lacks: "" }
}
