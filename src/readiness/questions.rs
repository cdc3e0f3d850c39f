//! What is answered by a press: flames and heaters, before the valves open.

use super::readings::{Desk, Row};
use crate::findings::{Code, Finding};
use crate::job::{Entered, Part};

impl Desk<'_> {
    /// The word pressed. One that the field does not list (from a damaged file) gives no GO.
    pub(super) fn answer(
        &mut self,
        part: Part,
        id: u32,
        entries: &[Entered],
        field: &str,
    ) -> Option<&'static str> {
        let said = self.reader.findings.len();
        let answer = self.reader.choice(part, id, entries, field);
        if self.reader.findings.len() > said {
            self.tally.unread(said);
        }
        answer
    }

    /// The word pressed on the job itself.
    pub(super) fn job_answer(&mut self, field: &str) -> Option<&'static str> {
        let job = self.job;
        self.answer(Part::Job, 0, &job.entries, field)
    }

    /// A question that has to be answered and is not: about a spot, or about the whole job.
    pub(super) fn unanswered(&mut self, spot: Option<&Row<'_>>, field: &str) {
        let (part, id) = spot.map_or((Part::Job, 0), |row| (Part::Reading, row.id));
        let name = spot.map_or_else(|| "@ask.before".to_owned(), Row::called);
        let finding = Finding::new(Code::Unanswered, part, id, field)
            .with("name", name)
            .with("question", format!("@ask.{field}"));
        let position = self.say(finding);
        self.tally.unread(position);
    }

    /// Flames and glowing elements have to be out, and no heater may be lit, whatever kind it is. Common
    /// practice and public safety guidance.
    pub(super) fn flames(&mut self) {
        match self.job_answer("flames_out") {
            Some("yes") => {}
            Some(_) => self.danger(Code::FlamesLit, "flames_out"),
            None => self.unanswered(None, "flames_out"),
        }
        let lit = self.job_answer("heater_lit").unwrap_or("none");
        if lit != "none" {
            self.danger(Code::HeaterLit, "heater_lit");
        }
        if lit == "unvented" {
            self.say(Finding::new(Code::HeaterMoist, Part::Job, 0, "heater_lit"));
        }
    }

    /// What the walkthrough before foam found to be put right first holds the work, whatever the readings say.
    pub(super) fn not_yet(&mut self) {
        for (position, finding) in self.reader.findings.iter().enumerate() {
            if finding.code == Code::NotYet {
                self.tally.outside(f64::INFINITY, position);
            }
        }
    }

    fn danger(&mut self, code: Code, field: &str) {
        let position = self.say(Finding::new(code, Part::Job, 0, field));
        self.tally.outside(f64::INFINITY, position);
    }
}
