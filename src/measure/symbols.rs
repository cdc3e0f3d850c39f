//! Units as written: `sq. ft.`, `ft²`, `pies cuadrados`, `lb/ft3`, `°F`, `"`.

use super::parse::{Parse, Parser};
use super::tokens::Piece;
use super::units::{fits, kind_of};
use super::words::Word;
use super::{Fault, Kind, Unit};

impl Parser<'_> {
    /// The unit that stands here, if one does, and whether it is a mark (`'`, `"`). One that measures
    /// something else is a fault.
    pub(super) fn unit(&mut self) -> Parse<Option<(Unit, bool)>> {
        // `a 6-inch duct`: the dash joins number and unit.
        if let (Some(Piece::Mark('-')), Some(Piece::Word(Word::Unit(_)))) = (self.piece(0), self.piece(1))
            && !self.spaced(0)
            && !self.spaced(1)
        {
            self.at += 1;
        }
        match self.any_unit()? {
            Some((unit, _)) if !fits(self.kind, unit) => Err(Fault::WrongUnit),
            found => Ok(found),
        }
    }

    /// The unit that stands here, whatever it measures.
    pub(super) fn any_unit(&mut self) -> Parse<Option<(Unit, bool)>> {
        let Some(piece) = self.piece(0) else {
            return Ok(None);
        };
        let unit = match piece {
            Piece::Mark('\'') => return self.one(Unit::Ft),
            Piece::Mark('"') => return self.one(Unit::In),
            Piece::Mark('%') => return self.one(Unit::Pct),
            Piece::Mark('$') => return self.one(Unit::Usd),
            Piece::Mark('#') => return self.one(Unit::Lb),
            Piece::Mark('°') | Piece::Word(Word::Degrees) => {
                self.at += 1;
                match self.piece(0) {
                    Some(Piece::Word(Word::Unit(unit @ (Unit::F | Unit::C)))) => {
                        self.at += 1;
                        unit
                    }
                    _ if kind_of(self.unit) == Kind::Temperature => self.unit,
                    _ if self.kind == Kind::Pitch => Unit::Deg,
                    _ => return Err(Fault::WrongUnit),
                }
            }
            Piece::Word(word) => match self.worded(word)? {
                Some(unit) => unit,
                None => return Ok(None),
            },
            _ => return Ok(None),
        };
        Ok(Some((unit, false)))
    }

    fn one(&mut self, unit: Unit) -> Parse<Option<(Unit, bool)>> {
        self.at += 1;
        Ok(Some((unit, true)))
    }

    fn worded(&mut self, word: Word) -> Parse<Option<Unit>> {
        let next = match self.piece(1) {
            Some(Piece::Word(next)) => Some(next),
            _ => None,
        };
        let (unit, taken) = match (word, next) {
            (Word::Square, Some(Word::Unit(length))) => (squared(length), 2),
            (Word::Cubic, Some(Word::Unit(length))) => (cubed(length), 2),
            (Word::Board, Some(Word::Unit(Unit::Ft))) => (Some(Unit::BdFt), 2),
            (Word::Us, Some(Word::Unit(Unit::Perm))) => (Some(Unit::Perm), 2),
            (Word::Metric, Some(Word::Unit(Unit::Perm))) => (Some(Unit::Metricperm), 2),
            (Word::Times, Some(Word::Ciento)) => (Some(Unit::Pct), 2),
            (Word::Unit(Unit::Ft), Some(Word::Tablar)) => (Some(Unit::BdFt), 2),
            (Word::Unit(unit), Some(Word::Squared)) => (squared(unit), 2),
            (Word::Unit(unit), Some(Word::Cubed)) => (cubed(unit), 2),
            (Word::Unit(unit), _) => match self.piece(1) {
                Some(Piece::Mark('²')) => (squared(unit), 2),
                Some(Piece::Mark('³')) => (cubed(unit), 2),
                // `30 m` where minutes are meant.
                _ if unit == Unit::M && self.kind == Kind::Duration => (Some(Unit::Min), 1),
                _ => (Some(unit), 1),
            },
            (Word::Nanograms, _) => {
                self.at += 1;
                return self.metric_perm().map(Some);
            }
            (Word::Kilometers | Word::Miles, _) => {
                self.at += 1;
                return self.per_hour(word).map(Some);
            }
            (Word::Watts, _) => (Some(Unit::W), 1),
            (Word::OtherUnit, _) => (None, 1),
            _ => return Ok(None),
        };
        self.at += taken;
        let unit = unit.ok_or(Fault::WrongUnit)?;
        match unit {
            Unit::Lb | Unit::Kg => self.density(unit).map(Some),
            Unit::M2 if self.kind == Kind::Resistance => self.rsi().map(Some),
            Unit::M if self.kind == Kind::Speed && self.per() => self.timed(Unit::Sec, Unit::Mps).map(Some),
            Unit::Ft3 if self.flows() => self.timed(Unit::Min, Unit::Cfm).map(Some),
            Unit::L if self.flows() => self.timed(Unit::Sec, Unit::Lps).map(Some),
            Unit::M3 if self.flows() => self.timed(Unit::Hr, Unit::M3h).map(Some),
            Unit::Btuh if self.per() => self.timed(Unit::Hr, Unit::Btuh).map(Some),
            _ => Ok(Some(unit)),
        }
    }

    /// A volume goes on as a flow of air.
    fn flows(&mut self) -> bool {
        self.kind == Kind::Airflow && self.per()
    }

    /// After kilometers or miles: `/h`, `per hour`, `por hora`.
    fn per_hour(&mut self, distance: Word) -> Parse<Unit> {
        let speed = if distance == Word::Miles { Unit::Mph } else { Unit::Kmh };
        if self.per() { self.timed(Unit::Hr, speed) } else { Err(Fault::WrongUnit) }
    }

    fn per(&mut self) -> bool {
        self.mark('/') || self.word(Word::Per) || self.word(Word::Times)
    }

    fn timed(&mut self, time: Unit, speed: Unit) -> Parse<Unit> {
        match self.any_unit()? {
            Some((unit, _)) if unit == time => Ok(speed),
            _ => Err(Fault::WrongUnit),
        }
    }

    /// `lb/ft³`, `kg per cubic meter`: a weight may go on as a density.
    fn density(&mut self, weight: Unit) -> Parse<Unit> {
        if !self.per() {
            return Ok(weight);
        }
        match (weight, self.any_unit()?) {
            (Unit::Lb, Some((Unit::Ft3, _))) => Ok(Unit::LbFt3),
            (Unit::Kg, Some((Unit::M3, _))) => Ok(Unit::KgM3),
            _ => Err(Fault::WrongUnit),
        }
    }

    /// After `m²`: `·K/W`.
    fn rsi(&mut self) -> Parse<Unit> {
        let _ = self.mark('·');
        let all = self.word(Word::Kelvins) && self.mark('/') && self.word(Word::Watts);
        if all { Ok(Unit::Rsi) } else { Err(Fault::WrongUnit) }
    }

    /// After `ng`: `/(s·m²·Pa)`, in any order and with any marks between.
    fn metric_perm(&mut self) -> Parse<Unit> {
        let (mut seconds, mut area, mut pascals) = (0, 0, 0);
        loop {
            match self.piece(0) {
                Some(Piece::Word(Word::Unit(Unit::Sec))) => seconds += 1,
                Some(Piece::Word(Word::Unit(Unit::M))) if self.piece(1) == Some(Piece::Mark('²')) => {
                    area += 1;
                    self.at += 1;
                }
                Some(Piece::Word(Word::Pascals)) => pascals += 1,
                Some(Piece::Mark('/' | '(' | ')' | '·') | Piece::Word(Word::Times)) => {}
                _ => break,
            }
            self.at += 1;
        }
        if (seconds, area, pascals) == (1, 1, 1) { Ok(Unit::Metricperm) } else { Err(Fault::WrongUnit) }
    }
}

fn squared(length: Unit) -> Option<Unit> {
    match length {
        Unit::Ft => Some(Unit::Ft2),
        Unit::In => Some(Unit::In2),
        Unit::M => Some(Unit::M2),
        _ => None,
    }
}

fn cubed(length: Unit) -> Option<Unit> {
    match length {
        Unit::Ft => Some(Unit::Ft3),
        Unit::M => Some(Unit::M3),
        _ => None,
    }
}
