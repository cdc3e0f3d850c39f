//! Kits that came into a warm room: the label's hours there, and a core that is still cold by the estimate.

use super::readings::Desk;
use super::windows::on_or_above;
use crate::conditioning::Conditioning;
use crate::findings::{Code, Finding};
use crate::job::Part;
use crate::measure::Kind;

impl Desk<'_> {
    /// Kits that were not as long in the warm room as their label asks hold the work, whatever their steel reads. Once
    /// the hours are over, a core that is colder than the label wants by the estimate, now or as they left, has to be
    /// measured first. An estimate never does more than that, and nothing here gives a GO.
    pub(super) fn warm_room(&mut self, conditioning: &[Conditioning]) {
        let job = self.job;
        let label = self.limits.warm_min;
        for group in &job.warming {
            let Some(came) = group.moved_in else { continue };
            let name = if group.name.trim().is_empty() { "@kit" } else { group.name.trim() };
            let found = |code| Finding::new(code, Part::Warming, group.id, "").with("name", name);
            let until_ms = group.moved_out.map_or(self.now.ms, |left| left.ms.min(self.now.ms));
            let held = ((until_ms - came.ms) / 60_000.0).max(0.0);
            if held < label {
                // Once they are out the hours count anew, and none is over before its last minute is.
                let left = if group.moved_out.is_some() { label } else { label - held };
                let over = libm::ceil(self.now.wall().0 + left - 1e-6);
                let day = libm::floor(over / 1_440.0);
                let finding = found(Code::WarmTooShort)
                    .with("held", self.reader.figure(Kind::Duration, libm::floor(held)))
                    .with("limit", self.reader.figure(Kind::Duration, label))
                    .with("time", self.reader.figure(Kind::Clock, over - day * 1_440.0))
                    .with("date", self.reader.figure(Kind::Date, day));
                let position = self.say(finding);
                self.tally.outside(0.0, position);
                continue;
            }
            let estimate = conditioning.iter().find(|one| one.id == group.id).and_then(|one| one.warm_up);
            let Some(warm) = estimate else { continue };
            let (least, core) = (warm.target_f.0, warm.core_now_f.map(|core| core.likely.0));
            if let Some((core, skin)) = core.zip(warm.skin_now_f)
                && !on_or_above(core, least)
            {
                let finding = found(Code::CoreCold)
                    .with("skin", self.reader.figure(Kind::Temperature, skin.0))
                    .with("core", self.beside(core, least))
                    .with("least", self.reader.figure(Kind::Temperature, least));
                let position = self.say(finding);
                self.tally.unread(position);
            }
        }
    }
}
