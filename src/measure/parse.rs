//! The grammar above terms: sums, ranges, tolerances, and what two meanings need.

use super::number::Form;
use super::term::{Term, feet_inches};
use super::tokens::{Digits, Piece, Token};
use super::units::{held, plus, step, times};
use super::words::Word;
use super::{Fault, Kind, Ratio, Reading, Sense, Unit};

pub(super) type Parse<T> = Result<T, Fault>;

/// One pass over the tokens. Where a text has two meanings, the pass takes the one that was pressed; without
/// one it takes the first and keeps what it stood before.
pub(super) struct Parser<'a> {
    pub tokens: &'a [Token],
    pub at: usize,
    /// Where the first term begins.
    pub start: usize,
    pub kind: Kind,
    pub unit: Unit,
    pub sense: Option<Sense>,
    pub doubt: Option<&'static [Sense]>,
    /// Within `between … and …`, where `and` joins nothing.
    pub between: bool,
    /// Within `12' x 8'`, where `x` makes no lumber.
    pub factor: bool,
    /// `1'000` was taken for feet.
    pub apostrophe: bool,
}

impl Parser<'_> {
    pub(super) fn piece(&self, ahead: usize) -> Option<Piece> {
        self.tokens.get(self.at + ahead).map(|token| token.piece)
    }

    /// Whether a space stands before the token; the end counts as one.
    pub(super) fn spaced(&self, ahead: usize) -> bool {
        self.tokens.get(self.at + ahead).is_none_or(|token| token.spaced)
    }

    /// Digits right after the token before them.
    pub(super) fn tight_digits(&self, ahead: usize) -> Option<Digits> {
        match self.piece(ahead)? {
            Piece::Digits(digits) if !self.spaced(ahead) => Some(digits),
            _ => None,
        }
    }

    #[inline(never)]
    pub(super) fn mark(&mut self, mark: char) -> bool {
        let found = self.piece(0) == Some(Piece::Mark(mark));
        self.at += usize::from(found);
        found
    }

    #[inline(never)]
    pub(super) fn word(&mut self, word: Word) -> bool {
        let found = self.piece(0) == Some(Piece::Word(word));
        self.at += usize::from(found);
        found
    }

    /// The meaning to follow among several.
    pub(super) fn choose(&mut self, among: &'static [Sense]) -> Sense {
        match self.sense {
            Some(sense) if among.contains(&sense) => sense,
            _ => {
                self.doubt.get_or_insert(among);
                among.first().copied().unwrap_or(Sense::Literal)
            }
        }
    }

    pub(super) fn measures_length(&self) -> bool {
        matches!(self.kind, Kind::Length | Kind::Member | Kind::Area)
    }

    /// What is left over is a fault, never dropped.
    pub(super) fn end(&mut self) -> Parse<()> {
        // `16" o.c.`: what a box for a spacing measures anyway.
        if self.kind == Kind::Length
            && !self.word(Word::OnCenter)
            && (self.word(Word::On) || self.word(Word::O))
        {
            let all = self.word(Word::Center) || self.word(Word::Unit(Unit::C));
            return if all && self.piece(0).is_none() { Ok(()) } else { Err(Fault::NotANumber) };
        }
        match self.piece(0) {
            None => Ok(()),
            Some(Piece::Word(Word::Unit(_) | Word::OtherUnit)) => Err(Fault::WrongUnit),
            Some(Piece::Word(_) | Piece::Digits(_) | Piece::Fraction(..)) => Err(Fault::NotTaken),
            Some(Piece::Mark('+' | '-' | '±' | ':' | '/')) => Err(Fault::NotTaken),
            Some(Piece::Mark(_)) => Err(Fault::NotANumber),
        }
    }

    /// A whole text of an ordinary kind.
    pub(super) fn reading(&mut self) -> Parse<Reading> {
        let mut about = self.mark('~');
        while self.word(Word::About) {
            about = true;
            // `alrededor de`, `cerca de`
            let _ = self.word(Word::From);
        }
        self.between = self.word(Word::Between);
        let opened = self.between || self.word(Word::From);
        self.start = self.at;
        let first = self.sum()?;
        let mut reading = if self.mark('±') {
            self.tolerance(first)?
        } else if self.to() {
            let second = self.sum()?;
            self.range(first, second)?
        } else if opened {
            return Err(Fault::NotTaken);
        } else if self.mark('-') {
            let second = self.sum()?;
            self.dash(first, second)?
        } else {
            let value = self.resolve(first, None)?;
            Reading { low: value, likely: value, high: value }
        };
        self.end()?;
        if about && reading.low == reading.high {
            reading = self.around(reading.likely)?;
        }
        self.within(reading)
    }

    fn to(&mut self) -> bool {
        let spanish = self.spaced(0) && self.spaced(1) && self.word(Word::A);
        spanish || self.word(Word::To) || (self.between && self.word(Word::And))
    }

    /// `about x`: 5 % either way, common practice for a guess by eye; of a temperature 3 °F. Counts go out to
    /// whole things, money to whole cents.
    fn around(&self, likely: Ratio) -> Parse<Reading> {
        let by = match self.kind {
            Kind::Temperature => Ratio::whole(3),
            _ => times(likely, Ratio::one_of(20))?,
        };
        let (low, high) = (plus(likely, by.negated())?, plus(likely, by)?);
        Ok(match self.kind {
            Kind::Count | Kind::Money => Reading { low: low.floor(), likely, high: high.ceil() },
            _ => Reading { low, likely, high },
        })
    }

    /// The checks that hold for every value.
    fn within(&self, reading: Reading) -> Parse<Reading> {
        let most = Ratio::whole(1_000_000_000_000);
        if reading.high > most || reading.low.negated() > most {
            return Err(Fault::TooLarge);
        }
        if reading.low.is_negative() && self.kind != Kind::Temperature {
            return Err(Fault::Negative);
        }
        let whole = reading.low.is_whole() && reading.likely.is_whole() && reading.high.is_whole();
        match self.kind {
            Kind::Count if !whole => Err(Fault::NotWhole),
            Kind::Money if !whole => Err(Fault::NotTaken),
            _ => Ok(reading),
        }
    }

    /// `30 ft ± 6 in`, `30 ± 10 %`; a unit at the end holds for both.
    fn tolerance(&mut self, first: Term) -> Parse<Reading> {
        let number = self.mixed()?;
        let share = self.kind != Kind::Percent && self.mark('%');
        let named = if share { None } else { self.unit()?.map(|(unit, _)| unit) };
        let likely = self.resolve(first, named)?;
        let by = if share {
            times(times(likely, number.value)?, Ratio::one_of(100))?
        } else {
            step(number.value, named.or(first.last).unwrap_or(self.unit))?
        };
        Ok(Reading { low: plus(likely, by.negated())?, likely, high: plus(likely, by)? })
    }

    /// From one to the other; what carries no unit takes that of the other.
    fn range(&mut self, first: Term, second: Term) -> Parse<Reading> {
        // `7'6-8`: to 8 in or to 8 ft?
        if second.unit.is_none() && first.unit != first.last {
            return Err(Fault::NotTaken);
        }
        let (low, high) = (self.resolve(first, second.unit)?, self.resolve(second, first.unit)?);
        if low > high {
            return Err(Fault::NotTaken);
        }
        let middle = times(plus(low, high)?, Ratio::one_of(2))?;
        let likely = if matches!(self.kind, Kind::Count | Kind::Money) { middle.ceil() } else { middle };
        Ok(Reading { low, likely, high })
    }

    /// Two terms with a dash between them: a range, or in a length feet and inches, or a difference.
    fn dash(&mut self, first: Term, second: Term) -> Parse<Reading> {
        let bare = first.unit.is_none() && matches!(second.unit, None | Some(Unit::In));
        let joined = first.form == Form::Joined || second.form == Form::Joined;
        // Both are as written: inches are held in inches.
        let (feet, inches) = (first.value, second.value);
        let rising = feet < inches;
        let tape = self.unit == Unit::Ft || (self.unit == Unit::In && !rising);
        if self.kind != Kind::Length || !bare || joined || !tape {
            return self.range(first, second);
        }
        let said_so = second.unit.is_some() && !second.marked;
        let spoken = first.form == Form::Whole && inches.under(12) && !(rising && said_so);
        let sense = match (spoken, rising) {
            (true, true) => self.choose(&[Sense::FeetInches, Sense::Range]),
            // Nobody takes nothing away: `8-0` is eight feet.
            (true, false) if inches != Ratio::ZERO && (second.form == Form::Whole || inches.under(1)) => {
                self.choose(&[Sense::FeetInches, Sense::Difference])
            }
            (true, false) => Sense::FeetInches,
            (false, _) => Sense::Range,
        };
        let value = match sense {
            Sense::FeetInches => feet_inches(feet, inches)?.value,
            Sense::Difference => {
                let (more, less) = (self.resolve(first, second.unit)?, self.resolve(second, first.unit)?);
                plus(more, less.negated())?
            }
            _ => return self.range(first, second),
        };
        Ok(Reading { low: value, likely: value, high: value })
    }

    /// One term or several added up.
    fn sum(&mut self) -> Parse<Term> {
        let first = self.term()?;
        if self.piece(0) != Some(Piece::Mark('+')) {
            return Ok(first);
        }
        let adds = matches!(
            self.kind,
            Kind::Length
                | Kind::Area
                | Kind::Weight
                | Kind::FoamVolume
                | Kind::Duration
                | Kind::Money
                | Kind::Count
                | Kind::Airflow
                | Kind::Power
        );
        if !adds {
            return Err(Fault::NotTaken);
        }
        let mut terms = vec![first];
        while self.mark('+') {
            terms.push(self.term()?);
        }
        let bare = terms.iter().any(|term| term.unit.is_none());
        // `3 + 4 in` in a box in feet: 3 of what? `12'6 + 8`: 8 of what?
        let other =
            terms.iter().flat_map(|term| [term.unit, term.last]).flatten().find(|&unit| unit != self.unit);
        let other =
            other.filter(|_| bare && self.choose(&[Sense::BoxUnit, Sense::OtherUnit]) == Sense::OtherUnit);
        let mut total = Ratio::ZERO;
        for term in terms {
            total = plus(self.resolve(term, other)?, total)?;
        }
        Ok(Term::joined(total, self.unit, self.unit))
    }

    /// A term's value, a bare one having the unit given, or that of the box.
    pub(super) fn resolve(&mut self, term: Term, carry: Option<Unit>) -> Parse<Ratio> {
        if term.unit.is_some() {
            return Ok(term.value);
        }
        if carry.is_none() && self.kind == Kind::Length && self.unit == Unit::Ft {
            let feet = term.value.floor();
            let part = plus(term.value, feet.negated())?;
            let (inches, senses): (_, &'static [Sense]) = match term.form {
                Form::Spoken => (times(part, Ratio::whole(100))?, &[Sense::FeetInches, Sense::DecimalFeet]),
                Form::Dashed => (part, &[Sense::Sum, Sense::FeetInches]),
                _ => (part, &[]),
            };
            if !senses.is_empty() && self.choose(senses) == Sense::FeetInches {
                return Ok(feet_inches(feet, inches)?.value);
            }
        }
        held(self.kind, term.value, carry.unwrap_or(self.unit))
    }
}
