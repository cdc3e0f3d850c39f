//! One spot of a surface: its temperature, what it is made of and how it was read, and the moisture of wood.

use super::dew::Dew;
use super::readings::{Desk, Row, Standing};
use super::{Check, ReadState};
use crate::findings::Code;
use crate::job::Part;
use crate::measure::Kind;

impl Desk<'_> {
    /// A surface against its window and the dew point, and what its material asks for. What nobody said about
    /// the material asks for nothing.
    pub(super) fn spot(&mut self, row: &Row<'_>, wood: &[Row<'_>], dew: Option<&Dew>) {
        let limits = self.limits;
        let material = self.answer(Part::Reading, row.id, row.entries, "material");
        let how = self.answer(Part::Reading, row.id, row.entries, "how");
        let reflection = material == Some("metal") && how == Some("infrared");
        if reflection && row.fresh().is_some() {
            // Bare metal shows the room in its reflection: what was read says nothing about the surface.
            let position = self.say(row.finding(Code::InfraredOnMetal));
            self.tally.unread(position);
            let unread = Row { value: None, standing: Standing::Blank, ..*row };
            self.hold_against(&unread, limits.surface, dew);
        } else {
            self.count(row, limits.site_age_min);
            self.hold_against(row, limits.surface, dew);
        }
        if row.standing == Standing::Blank {
            return;
        }
        match material {
            Some("wood") => self.wood_of(row, wood),
            Some("masonry") => self.masonry(row),
            Some("metal") => {
                if how.is_none() {
                    self.unanswered(Some(row), "how");
                }
                self.say(row.finding(Code::MetalSkin));
            }
            _ => {}
        }
    }

    /// Masonry has to be clean and dry, without efflorescence and damp.
    fn masonry(&mut self, row: &Row<'_>) {
        match self.answer(Part::Reading, row.id, row.entries, "masonry_dry") {
            Some("yes") => {}
            Some(_) => {
                let position = self.say(row.finding(Code::MasonryDamp));
                self.tally.outside(0.0, position);
            }
            None => self.unanswered(Some(row), "masonry_dry"),
        }
    }

    /// A spot of wood needs a reading of its moisture under the same name. One that is listed and does not
    /// count has its own finding.
    fn wood_of(&mut self, row: &Row<'_>, wood: &[Row<'_>]) {
        if !wood.iter().any(|one| same_name(one.name, row.name)) {
            let position = self.say(row.finding(Code::MoistureNotRead));
            self.tally.unread(position);
        }
    }

    /// Wood has to be below its limit, in percent of its dry weight: at the limit it is too wet. A range
    /// counts by its wetter end. Published weatherization specifications say 18 to 20 % by version.
    pub(super) fn wood(&mut self, rows: &[Row<'_>]) {
        let limits = self.limits;
        for row in rows {
            self.count(row, limits.wood_age_min);
            let mut check: Check = row.check();
            check.most = Some(limits.wood_most_pct);
            if let Some(band) = row.fresh() {
                check.inside_by = Some(limits.wood_most_pct - band.high);
                if band.high >= limits.wood_most_pct - 1e-9 {
                    check.state = ReadState::Outside;
                    let finding = row
                        .finding(Code::WoodWet)
                        .with("given", self.told_apart(Kind::Percent, band.high, limits.wood_most_pct))
                        .with("limit", self.reader.figure(Kind::Percent, limits.wood_most_pct));
                    let position = self.say(finding);
                    self.tally.outside(0.0, position);
                }
            }
            self.checks.push(check);
        }
    }
}

/// Whether two names are the same but for capitals, in English and Spanish.
pub(super) fn same_name(one: &str, two: &str) -> bool {
    one.chars().map(small).eq(two.chars().map(small))
}

/// The small letter of a capital of Latin-1. The table of all alphabets that `char::to_lowercase` reads takes 5 kB
/// of what a browser fetches.
fn small(letter: char) -> char {
    match letter {
        'A'..='Z' | 'À'..='Ö' | 'Ø'..='Þ' => char::from_u32(u32::from(letter) | 0x20).unwrap_or(letter),
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::{same_name, small};

    #[test]
    fn names_differ_in_more_than_capitals() {
        for (one, two) in [("Rim A", "rim a"), ("ÁTICO Ñ", "ático ñ"), ("", ""), ("Über 3", "über 3")] {
            assert!(same_name(one, two), "{one} {two}");
        }
        for (one, two) in [("Rim A", "Rim"), ("[", "{"), ("×", "÷"), ("n", "ñ"), ("Rim 1", "Rim Q")] {
            assert!(!same_name(one, two), "{one} {two}");
        }
    }

    /// The Unicode table of the standard library is the reference, wherever its small letter is one letter of Latin-1.
    #[test]
    fn small_letters_are_those_of_unicode() {
        for letter in '\0'..='\u{ff}' {
            assert_eq!(vec![small(letter)], letter.to_lowercase().collect::<Vec<_>>(), "{letter:?}");
        }
    }
}
