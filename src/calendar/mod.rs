//! The dates of a job in one list: when the kits go into the warm room, the day of spraying, purges, last days, the
//! label's hours, papers due. The page shows it and writes it as a calendar file.

use crate::conditioning::Conditioning;
use crate::job::{Job, Now, Part, Reader};
use crate::kits::{Counts, Stock, StockState};
use crate::measure::WallMinutes;
use crate::spraying::Day;
use serde::Serialize;

#[cfg(test)]
mod tests;

/// What a date is for: the key of its words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum DateOf {
    /// Kits go into the warm room, at the latest.
    WarmUp,
    /// Kits are ready, by the later of curve and label.
    Ready,
    /// Spraying begins.
    Spray,
    /// The label's hours before workers go back in are over. Never a clearance.
    ReentryWorkers,
    /// The label's hours before anybody goes back in are over. Never a clearance.
    Reentry,
    /// The label's cure time is over: heat is kept on until then.
    Cured,
    /// An opened kit is purged.
    Purge,
    /// An opened kit's last day.
    OpenedEnds,
    /// A sealed kit's date.
    ShelfLife,
    /// The certificate and the receipt are due.
    Certificate,
}

/// One date.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Dated {
    /// What it is for.
    pub of: DateOf,
    /// The part that it belongs to.
    pub part: Part,
    /// Its id there; 0 for the job.
    pub id: u32,
    /// The kit's or group's name, if it has one.
    pub name: String,
    /// When; for a whole day its midnight.
    pub at: WallMinutes,
    /// Whether the whole day is meant.
    pub all_day: bool,
    /// For what comes again: every so many days …
    pub every_days: Option<f64>,
    /// … up to and with this day.
    pub until: Option<WallMinutes>,
    /// Whether it lies behind us.
    pub past: bool,
}

const DAY: f64 = 1_440.0;

/// The dates while they are collected.
struct Dates {
    list: Vec<Dated>,
    now: Now,
}

impl Dates {
    /// Puts a date in its place: a whole day after what has an hour on that day. It is past when its moment or its whole
    /// day is.
    #[inline(never)]
    fn add(&mut self, of: DateOf, (part, id, name): (Part, u32, &str), at: f64, all_day: bool) -> usize {
        let mut one = Dated {
            of,
            part,
            id,
            name: name.to_owned(),
            at: WallMinutes(at),
            all_day,
            every_days: None,
            until: None,
            past: false,
        };
        let end = ends(&one);
        one.past = end <= self.now.wall().0;
        let place = self.list.partition_point(|known| ends(known) <= end);
        self.list.insert(place, one);
        place
    }

    /// An instant that the day counted to, by the clock that is on the wall now.
    fn instant(&mut self, of: DateOf, ms: Option<f64>) {
        if let Some(ms) = ms {
            let at = Now { ms, ..self.now }.wall().0;
            self.add(of, (Part::Job, 0, ""), at, false);
        }
    }
}

/// When a date is over.
fn ends(one: &Dated) -> f64 {
    one.at.0 + if one.all_day { DAY } else { 0.0 }
}

/// Every date of a job, in order.
///
/// An opened kit is purged every so many days, from the day that its last purge asks for up to its last day; where
/// that first day has gone by, it is overdue and not past. The certificate is due on the day of spraying unless another
/// day was said: common practice, no source.
pub fn calendar(
    job: &Job,
    conditioning: &[Conditioning],
    stock: &[Stock],
    day: &Day,
    now: Now,
    reader: &mut Reader,
) -> Vec<Dated> {
    let mut dates = Dates { list: Vec::new(), now };
    let of_job = (Part::Job, 0, "");
    let due = reader.take(Part::Job, 0, &job.entries, "certificate_due").map(|taken| taken.value.low);
    // What others have read, and said what is to be said of it: read again without a word.
    let mut quiet = Reader::new(reader.units);
    let spray_day = quiet.take(Part::Job, 0, &job.entries, "spray_date").map(|taken| taken.value.likely);
    let said = reader.findings.iter().any(|one| one.at.part == Part::Job && one.at.field == "spray_time");
    let time_reader = if said { &mut quiet } else { reader };
    let spray_time =
        time_reader.take(Part::Job, 0, &job.entries, "spray_time").map(|taken| taken.value.likely);
    if let Some(day) = spray_day {
        dates.add(DateOf::Spray, of_job, day * DAY + spray_time.unwrap_or_default(), spray_time.is_none());
    }
    if let Some(day) = due.or(spray_day) {
        dates.add(DateOf::Certificate, of_job, day * DAY, true);
    }
    for warming in &job.warming {
        let found = conditioning.iter().find(|one| one.id == warming.id).and_then(|one| one.warm_up);
        let Some(warm_up) = found else { continue };
        let of = (Part::Warming, warming.id, warming.name.trim());
        // Once they are in, the latest moment for it is of no account.
        if let Some(at) = warm_up.in_by.filter(|_| warming.moved_in.is_none()) {
            dates.add(DateOf::WarmUp, of, at.0, false);
        }
        if let Some(at) = warm_up.ready_at {
            dates.add(DateOf::Ready, of, at.0, false);
        }
    }
    dates.instant(DateOf::ReentryWorkers, day.reentry_workers_ms);
    dates.instant(DateOf::Reentry, day.reentry_ms);
    dates.instant(DateOf::Cured, day.cure_ms);
    let entries = job.foam_sheet(0).map_or([].as_slice(), |sheet| sheet.entries.as_slice());
    let every = quiet.take(Part::Foam, 0, entries, "purge_days").map(|taken| taken.value.low / DAY);
    for one in stock {
        let Some(sheet) = job.stock.iter().find(|sheet| sheet.id == one.kit) else { continue };
        let of = (Part::Owned, one.kit, sheet.name.trim());
        let opened = one.state == StockState::Opened;
        let Some(last) = one.last_day.filter(|_| one.counts != Counts::Empty) else { continue };
        dates.add(if opened { DateOf::OpenedEnds } else { DateOf::ShelfLife }, of, last * DAY, true);
        if let (Some(first), Some(_)) = (one.purge_day.filter(|first| *first <= last), every) {
            let place = dates.add(DateOf::Purge, of, first * DAY, true);
            if let Some(purge) = dates.list.get_mut(place) {
                purge.every_days = every;
                purge.until = Some(WallMinutes(last * DAY));
                purge.past = (last + 1.0) * DAY <= now.wall().0;
            }
        }
    }
    dates.list
}
