//! Whether foam and what lies in front of it find room between the members.

use super::{Build, Position};
use crate::findings::{Code, Finding};
use crate::job::{Part, Reader};
use crate::measure::{Inches, Kind};

/// What binary fractions may lose in a sum of depths.
const NOISE_IN: f64 = 1e-9;

impl Build {
    /// Says where foam at its thickest aim and the layers in front of it are thicker together than the cavity; a layer
    /// whose thickness was not entered takes no room. Foam that is deeper by itself has its own finding.
    pub(crate) fn fits(&self, surface: u32, thickest: Inches, reader: &mut Reader) {
        let in_front = self.layers.iter().filter(|layer| layer.position == Position::Cavity);
        let fill: f64 = in_front.filter_map(|layer| layer.thickness_in).map(|inches| inches.0).sum();
        let Some(cavity) = self.member_in.filter(|_| !self.across) else { return };
        if fill > NOISE_IN && thickest.0 <= cavity.0 + NOISE_IN && thickest.0 + fill > cavity.0 + NOISE_IN {
            let finding = Finding::new(Code::FillSqueezed, Part::Surface, surface, "cavity")
                .with("given", reader.figure(Kind::Length, thickest.0 + fill))
                .with("most", reader.figure(Kind::Length, cavity.0));
            reader.say(finding);
        }
    }
}
