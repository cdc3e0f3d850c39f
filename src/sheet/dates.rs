//! Every date that is still ahead, and what is overdue.

use super::parts::Sheet;
use super::rules::word;
use foamwright::calendar::{DateOf, Dated};
use foamwright::measure::Kind;

const DAY: f64 = 1_440.0;

impl Sheet<'_> {
    /// The dates that are not behind us. Kits that should be in the warm room are still to be moved while nothing was
    /// to be sprayed yet.
    pub fn dates(&mut self) {
        let all = &self.estimate.calendar;
        let sprayed = all.iter().any(|one| one.of == DateOf::Spray && one.past);
        let ahead: Vec<&Dated> =
            all.iter().filter(|one| !one.past || (one.of == DateOf::WarmUp && !sprayed)).collect();
        if ahead.is_empty() {
            return;
        }
        self.heading("dates");
        for one in ahead {
            let when = self.when(one);
            let mut what = self.words.say(&format!("calendar.{}", word(one.of)), &[]);
            if !one.name.is_empty() {
                what = self.words.say("calendar.of", &[("what", &what), ("name", &one.name)]);
            }
            self.lines.row(&when, &what);
        }
    }

    /// Day and time, to the minute: what has to be done by then never later, what is over by then never sooner.
    fn when(&self, one: &Dated) -> String {
        let at = if one.of == DateOf::WarmUp { one.at.0.floor() } else { one.at.0.ceil() };
        let mut when = self.write(Kind::Date, at / DAY);
        if !one.all_day {
            when = format!("{when} {}", self.write(Kind::Clock, at.rem_euclid(DAY)));
        }
        let gone = one.of == DateOf::Purge && one.at.0 + DAY <= self.now.wall().0;
        if one.past || gone { self.say("dates_overdue", &[("when", &when)]) } else { when }
    }
}

#[cfg(test)]
mod tests {
    use crate::sheet::{Words, sheet};
    use foamwright::job::{Job, Now};

    /// 2026-10-14, 4:10 pm at five hours west of UTC: as in the whole job `two-kits-on-the-shelf`.
    const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

    fn told(now: Now, language: &str) -> String {
        let text = include_str!("../../tests/jobs/two-kits-on-the-shelf/job.json");
        let text = text.replacen(
            "\"entries\": [",
            r#""entries": [
            {"field": "spray_date", "text": "2026-10-16"}, {"field": "spray_time", "text": "1:30 pm"},"#,
            1,
        );
        let job: Job = serde_json::from_str(&text).expect("a job");
        let words = Words::of(language).expect("words");
        sheet(&job, &foamwright::estimate(&job, now), now, &words)
    }

    #[test]
    fn what_is_ahead_stands_in_order_and_what_is_past_does_not() {
        let text = told(NOW, "en");
        let dates: Vec<&str> = text.lines().skip_while(|line| *line != "Dates").skip(2).take(6).collect();
        let wanted = [
            "  2026-10-16 1:30\u{a0}pm      Spraying",
            "  2026-10-16              Certificate and receipt due",
            "  2026-10-17              Purge the opened kit: Large 480, opened",
            "  2026-10-28              Last day of the opened kit: Large 480, opened",
            "  2027-03-01              Last day of the sealed kit: Large 480, sealed",
            "  2027-06-30              Last day of the sealed kit: Medium 160, for the next job",
        ];
        assert_eq!(dates, wanted);
        assert!(told(NOW, "es").contains("\nFechas\n"));
        // Two days after the purge was due.
        let late = told(Now { ms: NOW.ms + 5.0 * 86_400_000.0, ..NOW }, "en");
        assert!(late.contains("2026-10-17, overdue") && !late.contains("1:30"), "{late}");
    }
}
