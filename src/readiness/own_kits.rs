//! Kits that are already there: one past its last day, without a date, or of which too little is known.

use super::readings::Desk;
use super::windows::{DO_NOT_OPEN_F, on_or_above};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader, entry};
use crate::kits::{Counts, Stock};
use crate::measure::Kind;

const DAY_MS: f64 = 86_400_000.0;

impl Desk<'_> {
    /// Every kit at hand that is to be used on this job. One past its last day, by its date or by the days
    /// since it was opened, holds the work until it is taken off the job. One without a date, or of which
    /// something that decides is not known, has not been read.
    pub(super) fn own_kits(&mut self, stock: &[Stock]) {
        let job = self.job;
        for kit in stock.iter().filter(|one| one.counts != Counts::NotHere) {
            let Some(sheet) = job.stock.iter().find(|one| one.id == kit.kit) else { continue };
            let name = if sheet.name.trim().is_empty() { "@kit" } else { sheet.name.trim() };
            let found = |code, field| Finding::new(code, Part::Owned, kit.kit, field).with("name", name);
            let past = kit.last_day.zip(kit.days_left).filter(|(_, left)| *left < 0.0);
            if let Some((day, _)) = past {
                let date = self.reader.figure(Kind::Date, day);
                let position = self.say(found(Code::KitPastDay, "expires").with("date", date));
                self.tally.outside(0.0, position);
            } else if let Some(day) = kit.last_day {
                // The last instant of that day, by the clock on the wall.
                let offset_ms = f64::from(self.now.offset_min) * 60_000.0;
                self.tally.counts_until(Part::Owned, kit.kit, (day + 1.0) * DAY_MS - offset_ms - 1.0);
            }
            if kit.counts == Counts::NotKnown {
                let position = self.say(found(Code::KitNotKnown, ""));
                self.tally.unread(position);
            } else if entry(&sheet.entries, "expires").is_none() {
                let position = self.say(found(Code::KitDateNotRead, "expires"));
                self.tally.unread(position);
            }
            // Its warning was said with the shelf; only so hot that it must not be opened is said here.
            let mut quiet = Reader::new(self.reader.units);
            if let Some(room) = quiet.take(Part::Owned, kit.kit, &sheet.entries, "storage")
                && !on_or_above(DO_NOT_OPEN_F, room.value.high)
            {
                let finding = found(Code::StorageTooHot, "storage")
                    .with("given", self.beside(room.value.high, DO_NOT_OPEN_F))
                    .with("limit", self.reader.figure(Kind::Temperature, DO_NOT_OPEN_F));
                let position = self.say(finding);
                self.tally.outside(f64::INFINITY, position);
            }
        }
    }
}
