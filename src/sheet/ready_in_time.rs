//! Kits brought to temperature: what to plan on, since when or until when, and how long they last outside.

use super::parts::{Sheet, clock, clock_after};
use foamwright::conditioning::{Conditioning, Decides};
use foamwright::job::Part;
use foamwright::measure::{Kind, Minutes, WallMinutes};

impl Sheet<'_> {
    /// A section for the groups that warm; nothing where there are none.
    pub(super) fn conditioning(&mut self) {
        let groups = &self.estimate.conditioning;
        if groups.is_empty() {
            return;
        }
        self.heading("warm");
        for group in groups {
            let name = self.name(Part::Warming, group.id);
            self.lines.line(&format!("  {name}"));
            self.warm_group(group);
        }
    }

    fn warm_group(&mut self, group: &Conditioning) {
        let time = |at: WallMinutes| clock(at.0 * 60_000.0, 0);
        if let Some(warm) = &group.warm_up {
            let hours = |this: &Self, minutes: Option<Minutes>| match minutes {
                Some(minutes) => this.write(Kind::Duration, minutes.0),
                None => this.say("warm_never", &[]),
            };
            let (likely, slow) = (hours(self, warm.likely_min), hours(self, warm.slow_min));
            let label = hours(self, Some(warm.label_min));
            let target = self.write(Kind::Temperature, warm.target_f.0);
            let figures =
                [("target", target.as_str()), ("likely", &likely), ("slow", &slow), ("label", &label)];
            let curve = self.say("warm_hours", &figures);
            let decides = match (warm.plan_min, warm.decides) {
                (None, _) if warm.slow_min.is_some() => self.say("warm_night_never", &figures),
                (None, _) => self.say("warm_room_never", &figures),
                (_, Decides::Curve) => self.say("warm_by_curve", &figures),
                (_, Decides::Label) => self.say("warm_by_label", &figures),
            };
            let plan = hours(self, warm.plan_min);
            self.row("warm_plan", &format!("{plan}: {decides}"));
            let head = self.say("warm_curve", &figures);
            self.lines.row(&head, &curve);
            if let Some(by) = warm.in_by {
                self.row("warm_in_by", &time(by));
            }
            if let Some(at) = warm.ready_at {
                self.row("warm_ready_at", &clock_after(at.0 * 60_000.0, 0));
            }
            let left = self.job.warming.iter().any(|one| one.id == group.id && one.moved_out.is_some());
            if let Some((core, skin)) = warm.core_now_f.zip(warm.skin_now_f).filter(|_| !left) {
                let (core, skin) = (core.likely.0, skin.0);
                let (core, skin) = (self.write(Kind::Temperature, core), self.write(Kind::Temperature, skin));
                let text = self.say("warm_now", &[("core", &core), ("skin", &skin)]);
                self.row("warm_core", &text);
            }
        }
        if let Some(cool) = &group.cool_down
            && let Some((starts, use_by)) = cool.starts_min.zip(cool.use_by_min)
        {
            let (starts, within) =
                (self.write(Kind::Duration, starts.0), self.write(Kind::Duration, use_by.0));
            let mut text = self.say("warm_outside_is", &[("starts", &starts), ("within", &within)]);
            if let Some(at) = cool.use_by {
                text.push_str(&format!(" ({})", time(at)));
            }
            self.row("warm_outside", &text);
        }
    }
}
