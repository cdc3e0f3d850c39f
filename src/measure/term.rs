//! One term: a number, its unit and the smaller units that go on from it (`12' 6 1/2"`).

use super::number::{Form, Number};
use super::parse::{Parse, Parser};
use super::tokens::Piece;
use super::units::{held, kind_of, plus, step, times};
use super::words::Word;
use super::{Fault, Kind, Ratio, Sense, Unit, lumber};

/// A number with its unit, or without one.
#[derive(Clone, Copy)]
pub(super) struct Term {
    /// In the unit in which the kind is held; as written where no unit stands.
    pub value: Ratio,
    /// The first unit.
    pub unit: Option<Unit>,
    /// The last unit.
    pub last: Option<Unit>,
    /// How its number was written.
    pub form: Form,
    /// Whether the last unit is a mark (`"`), not a word.
    pub marked: bool,
}

impl Term {
    /// Of several numbers and units.
    pub(super) fn joined(value: Ratio, unit: Unit, last: Unit) -> Self {
        Self { value, unit: Some(unit), last: Some(last), form: Form::Joined, marked: false }
    }
}

impl Parser<'_> {
    /// A number and its unit, with the smaller units that follow.
    pub(super) fn term(&mut self) -> Parse<Term> {
        if self.kind == Kind::Area {
            return self.area();
        }
        if self.kind == Kind::Pitch {
            return self.pitch();
        }
        let begins = self.at;
        let signed = self.kind == Kind::Temperature;
        let negative = self.mark('-');
        if signed && !negative {
            let _ = self.mark('+');
        }
        let mut prefix = None;
        if self.kind == Kind::Money {
            let _ = self.word(Word::Us);
            prefix = (self.mark('$') || self.word(Word::Unit(Unit::Usd))).then_some(Unit::Usd);
        } else if self.kind == Kind::Resistance {
            prefix = [Unit::R, Unit::Rsi].into_iter().find(|&unit| self.word(Word::Unit(unit)));
            if prefix.is_some() {
                let _ = self.mark('-');
            }
        }
        if negative && (self.number_next() || prefix.is_some()) && !signed {
            return Err(Fault::Negative);
        }
        if self.piece(0) == Some(Piece::Mark('-')) && self.number_follows(1) {
            return Err(if signed { Fault::NotTaken } else { Fault::Negative });
        }
        let mut number = self.mixed()?;
        if negative {
            number.value = number.value.negated();
        }
        if self.kind == Kind::Length && self.piece(0) == Some(Piece::Word(Word::Course)) {
            return self.courses(begins, number.value);
        }
        if self.piece(0) == Some(Piece::Mark(':')) {
            return self.clock(number);
        }
        let (unit, marked) = match (prefix, self.unit()?) {
            (Some(_), Some(_)) if self.kind != Kind::Money => return Err(Fault::NotTaken),
            (Some(unit), _) => (unit, false),
            (None, Some(found)) => found,
            (None, None) => return self.bare(number),
        };
        let value = held(self.kind, number.value, unit)?;
        let term = Term { value, unit: Some(unit), last: Some(unit), form: number.form, marked };
        if prefix.is_some() { Ok(term) } else { self.compound(term, number) }
    }

    fn number_follows(&self, ahead: usize) -> bool {
        matches!(self.piece(ahead), Some(Piece::Digits(_) | Piece::Fraction(..)))
    }

    /// `12 courses of block`: 8 in each, joint included. Block is laid to an 8 in module, nominal: common
    /// practice, no source. A range of courses is not taken, since its first number would be bare.
    fn courses(&mut self, begins: usize, number: Ratio) -> Parse<Term> {
        self.at += 1;
        let of = self.at;
        let _ = self.word(Word::From);
        if !self.word(Word::Block) {
            self.at = of;
        }
        let before = begins.checked_sub(1).and_then(|at| self.tokens.get(at)).map(|token| token.piece);
        let opens = matches!(
            before,
            None | Some(
                Piece::Word(Word::Times | Word::About | Word::From) | Piece::Mark('+' | '~' | '@' | ')')
            )
        );
        let closes = matches!(self.piece(0), None | Some(Piece::Word(Word::Times) | Piece::Mark('+')));
        if !opens || !closes {
            return Err(Fault::NotTaken);
        }
        Ok(Term::joined(times(number, Ratio::whole(8))?, Unit::In, Unit::In))
    }

    /// `1:30` is an hour and a half.
    fn clock(&mut self, hours: Number) -> Parse<Term> {
        let minutes = self.tight_digits(1).filter(|minutes| minutes.len == 2 && minutes.value < 60);
        let Some(minutes) = minutes.filter(|_| self.kind == Kind::Duration && hours.form == Form::Whole)
        else {
            return Err(Fault::NotTaken);
        };
        self.at += 2;
        let value = plus(times(hours.value, Ratio::whole(60))?, Ratio::whole(minutes.value as i64))?;
        Ok(Term::joined(value, Unit::Hr, Unit::Min))
    }

    /// What follows a number that has no unit: in a length perhaps inches, or lumber.
    fn bare(&mut self, number: Number) -> Parse<Term> {
        let alone = Term { value: number.value, unit: None, last: None, form: number.form, marked: false };
        if self.kind != Kind::Length || number.form != Form::Whole {
            return Ok(alone);
        }
        if !self.factor && self.unit != Unit::Ft && self.unit != Unit::M && self.word(Word::Times) {
            // A cavity's depth by the lumber that makes it.
            let second = self.mixed()?;
            let (_, depth) = lumber::dressed(number.value, second.value).ok_or(Fault::NotTaken)?;
            return Ok(Term::joined(depth, Unit::In, Unit::In));
        }
        if self.factor && self.unit == Unit::Ft && self.number_follows(1) && self.mark('-') {
            // A door of `3-0 x 6-8`.
            let inches = self.mixed()?;
            let unit = self.unit()?.map_or(Unit::In, |(unit, _)| unit);
            return if unit == Unit::In && inches.value.under(12) {
                feet_inches(number.value, inches.value)
            } else {
                Err(Fault::NotTaken)
            };
        }
        if !(self.number_follows(0) && self.spaced(0)) {
            return Ok(alone);
        }
        let second = self.mixed()?;
        let inches = match self.unit()? {
            None => false,
            Some((Unit::In, _)) => true,
            Some(_) => return Err(Fault::NotTaken),
        };
        if !inches && !matches!(self.unit, Unit::Ft | Unit::In) {
            return Err(Fault::NotTaken);
        }
        let plain = second.form != Form::Whole || (inches && self.unit == Unit::Ft);
        if plain || self.choose(&[Sense::FeetInches, Sense::Sum]) == Sense::FeetInches {
            return feet_inches(number.value, second.value);
        }
        let last = if inches { Unit::In } else { self.unit };
        let value = plus(step(number.value, self.unit)?, step(second.value, last)?)?;
        Ok(Term::joined(value, self.unit, last))
    }

    /// Smaller units after a larger one: `12' 6 1/2"`, `3 m 82 cm`, `12 lb 6 oz`, `1 h 30`.
    fn compound(&mut self, mut term: Term, first: Number) -> Parse<Term> {
        let mut before = first;
        while let Some(last) = term.last {
            let (at, doubt) = (self.at, self.doubt);
            let dash = last == Unit::Ft && self.mark('-');
            let joined = dash
                || (!self.between && self.word(Word::And))
                || (self.spaced(1) && self.number_follows(1) && self.mark(','));
            if !self.number_next() {
                self.at = at;
                break;
            }
            let number = self.mixed()?;
            let found = self.unit()?;
            let next = found.map(|(unit, _)| unit).or_else(|| implied(last, number));
            let next = next.filter(|&unit| {
                smaller(last, unit) || (unit == last && (self.apostrophe || found.is_none()))
            });
            // `12' - 14` and `7 ft - 8`: inches, or the far end of a range?
            let doubtful = dash
                && found.is_none()
                && (!number.value.under(12) || (!term.marked && number.value > before.value));
            let range = doubtful && self.choose(&[Sense::FeetInches, Sense::Range]) == Sense::Range;
            let Some(unit) = next.filter(|_| !range) else {
                if !joined {
                    return Err(Fault::NotTaken);
                }
                self.at = at;
                self.doubt = if range { self.doubt } else { doubt };
                break;
            };
            if before.form != Form::Whole {
                return Err(Fault::NotTaken);
            }
            before = number;
            term.value = plus(term.value, step(number.value, unit)?)?;
            term.last = Some(unit);
            term.form = Form::Joined;
            term.marked = found.is_some_and(|(_, marked)| marked);
        }
        self.converted(term, before)
    }

    /// `5 foot 2 in m`: five foot two, to be shown in meters, or five feet and two meters.
    fn converted(&mut self, mut term: Term, inches: Number) -> Parse<Term> {
        let (Some(Unit::Ft), Some(Unit::In), false, Some(Piece::Word(Word::Unit(unit)))) =
            (term.unit, term.last, term.marked, self.piece(0))
        else {
            return Ok(term);
        };
        if kind_of(unit) != Kind::Length {
            return Ok(term);
        }
        self.at += 1;
        if self.choose(&[Sense::Converted, Sense::Literal]) == Sense::Literal {
            let feet = plus(term.value, inches.value.negated())?;
            term.value = plus(feet, step(inches.value, unit)?)?;
            term.last = Some(unit);
        }
        Ok(term)
    }
}

/// So many feet and so many inches.
pub(super) fn feet_inches(feet: Ratio, inches: Ratio) -> Parse<Term> {
    Ok(Term::joined(plus(times(feet, Ratio::whole(12))?, inches)?, Unit::Ft, Unit::In))
}

/// The unit of a bare number after this one: `5 foot 10`, `1 h 30`, `1 m 52`, `6" 1/2`.
fn implied(larger: Unit, number: Number) -> Option<Unit> {
    let whole = number.form == Form::Whole;
    match larger {
        Unit::Ft => Some(Unit::In),
        Unit::Hr => Some(Unit::Min),
        // Two digits are centimeters; of one nobody knows.
        Unit::M if whole && !number.value.under(10) && number.value.under(100) => Some(Unit::Cm),
        Unit::In if !whole && number.value.under(1) => Some(Unit::In),
        _ => None,
    }
}

/// Whether the second unit may follow the first within one measure.
fn smaller(first: Unit, second: Unit) -> bool {
    matches!(
        (first, second),
        (Unit::Ft, Unit::In)
            | (Unit::M, Unit::Cm | Unit::Mm)
            | (Unit::Cm, Unit::Mm)
            | (Unit::Lb, Unit::Oz)
            | (Unit::Kg, Unit::G)
            | (Unit::Day, Unit::Hr)
            | (Unit::Hr, Unit::Min)
            | (Unit::Min, Unit::Sec)
    )
}
