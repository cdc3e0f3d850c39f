//! Roof pitch: `4/12`, `4:12`, `4 in 12`, degrees or percent.

use super::number::Form;
use super::parse::{Parse, Parser};
use super::term::Term;
use super::tokens::Piece;
use super::units::{held, times};
use super::words::Word;
use super::{Fault, Kind, Ratio, Unit};

impl Parser<'_> {
    /// A pitch, as rise per run: two numbers with `/`, `:`, `in`, `on` or `en` between them, or one number with
    /// its unit. A bare one is so many inches in 12. `4/12` is the fraction that it looks like.
    pub(super) fn pitch(&mut self) -> Parse<Term> {
        if self.mark('-') {
            return Err(if self.number_next() { Fault::Negative } else { Fault::NotANumber });
        }
        let fraction = matches!(
            (self.piece(0), self.piece(1), self.piece(2)),
            (Some(Piece::Digits(_)), Some(Piece::Mark('/')), Some(Piece::Digits(_)))
        );
        let rise = self.mixed()?;
        if fraction && !self.pitch_unit_next() {
            return Ok(Term::joined(rise.value, Unit::In12, Unit::In12));
        }
        let _ = self.mark('"');
        let named = self.word(Word::Unit(Unit::In));
        let over = self.mark('/') || self.mark(':') || self.word(Word::On) || named;
        if over {
            let run = self.mixed()?.value;
            let _ = self.mark('"');
            if run == Ratio::ZERO {
                return Err(Fault::ZeroBelowTheLine);
            }
            let value = rise.value.over(run).ok_or(Fault::TooLarge)?;
            return Ok(Term::joined(value, Unit::In12, Unit::In12));
        }
        let unit = self.unit()?.map_or(Unit::In12, |(unit, _)| unit);
        let value = match unit {
            Unit::In12 => times(rise.value, Ratio::one_of(12))?,
            unit => held(Kind::Pitch, rise.value, unit)?,
        };
        Ok(Term { value, unit: Some(unit), last: Some(unit), form: Form::Joined, marked: false })
    }

    /// `1/2 %`, `1/2 in 12`: the fraction is only part of what is written.
    fn pitch_unit_next(&self) -> bool {
        matches!(
            self.piece(0),
            Some(Piece::Mark('%' | '°' | ':' | '"') | Piece::Word(Word::Unit(_) | Word::Degrees | Word::On))
        )
    }
}
