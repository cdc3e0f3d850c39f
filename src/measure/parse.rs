//! The grammar above numbers: units, compounds (`12' 6 1/2"`), sums, ranges and tolerances.

use super::number::Number;
use super::tokens::{Digits, Piece, Token};
use super::units::{held, kind_of, step};
use super::words::Word;
use super::{Fault, Kind, Ratio, Reading, Sense, Unit, lumber};

pub(super) type Parse<T> = Result<T, Fault>;

/// One pass over the tokens. Where a text has two meanings, the pass takes the one that was pressed; without
/// one it takes the first and keeps what it stood before.
pub(super) struct Parser<'a> {
    pub tokens: &'a [Token],
    pub at: usize,
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

/// A number with its unit, or without one.
#[derive(Clone, Copy)]
pub(super) struct Term {
    /// In the unit in which the kind is held; as written where no unit stands.
    pub value: Ratio,
    /// The first unit.
    pub unit: Option<Unit>,
    /// The last unit.
    pub last: Option<Unit>,
    /// The number as written, of a single one.
    pub number: Option<Number>,
    /// Whether the last unit is a mark (`"`), not a word.
    pub marked: bool,
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

    pub(super) fn mark(&mut self, mark: char) -> bool {
        self.take(Piece::Mark(mark))
    }

    pub(super) fn word(&mut self, word: Word) -> bool {
        self.take(Piece::Word(word))
    }

    fn take(&mut self, piece: Piece) -> bool {
        let found = self.piece(0) == Some(piece);
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
    pub(super) fn end(&self) -> Parse<()> {
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
        let mut about = self.mark('~') || self.mark('±');
        while self.word(Word::About) {
            about = true;
            // `alrededor de`, `cerca de`
            let _ = self.word(Word::From);
        }
        self.between = self.word(Word::Between);
        let opened = self.between || self.word(Word::From);
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
            Kind::Temperature => Some(Ratio::whole(3)),
            _ => Ratio::new(1, 20).and_then(|share| share.times(likely)),
        };
        let by = by.ok_or(Fault::TooLarge)?;
        let (low, high) = likely.minus(by).zip(likely.plus(by)).ok_or(Fault::TooLarge)?;
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
            likely.times(number.value).and_then(|value| value.over(Ratio::whole(100)))
        } else {
            step(number.value, named.or(first.last).unwrap_or(self.unit))
        };
        let by = by.ok_or(Fault::TooLarge)?;
        let (low, high) = likely.minus(by).zip(likely.plus(by)).ok_or(Fault::TooLarge)?;
        Ok(Reading { low, likely, high })
    }

    /// From one to the other; what carries no unit takes that of the other.
    fn range(&mut self, first: Term, second: Term) -> Parse<Reading> {
        let (low, high) = (self.resolve(first, second.unit)?, self.resolve(second, first.unit)?);
        if low > high {
            return Err(Fault::NotTaken);
        }
        let middle = low.plus(high).and_then(|sum| sum.over(Ratio::whole(2))).ok_or(Fault::TooLarge)?;
        let likely = if matches!(self.kind, Kind::Count | Kind::Money) { middle.ceil() } else { middle };
        Ok(Reading { low, likely, high })
    }

    /// Two terms with a dash between them: a range, or in a length feet and inches, or a difference.
    fn dash(&mut self, first: Term, second: Term) -> Parse<Reading> {
        let bare = first.unit.is_none() && matches!(second.unit, None | Some(Unit::In));
        let (Some(feet), Some(inches), true) =
            (first.number, second.number, bare && self.kind == Kind::Length)
        else {
            return self.range(first, second);
        };
        let rising = feet.value < inches.value;
        let box_in_feet = self.unit == Unit::Ft;
        if !matches!(self.unit, Unit::Ft | Unit::In) || (rising && !box_in_feet) {
            return self.range(first, second);
        }
        let said_so = second.unit.is_some() && !second.marked;
        let spoken = feet.whole && inches.value < Ratio::whole(12) && !(rising && said_so);
        let sense = match (spoken, rising) {
            (true, true) => self.choose(&[Sense::FeetInches, Sense::Range]),
            (true, false) if inches.whole || inches.value < Ratio::whole(1) => {
                self.choose(&[Sense::FeetInches, Sense::Difference])
            }
            (true, false) => Sense::FeetInches,
            (false, _) => Sense::Range,
        };
        let value = match sense {
            Sense::FeetInches => self.feet_inches(feet.value, inches.value)?.value,
            Sense::Difference => {
                let (more, less) = (self.resolve(first, second.unit)?, self.resolve(second, first.unit)?);
                more.minus(less).ok_or(Fault::TooLarge)?
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
        );
        if !adds {
            return Err(Fault::NotTaken);
        }
        let mut terms = vec![first];
        while self.mark('+') {
            terms.push(self.term()?);
        }
        let named = terms.iter().find_map(|term| term.unit);
        let bare = terms.iter().any(|term| term.unit.is_none());
        // `3 + 4 in` in a box in feet: 3 of what?
        let carry = match named {
            Some(unit) if bare && unit != self.unit => {
                (self.choose(&[Sense::BoxUnit, Sense::OtherUnit]) == Sense::OtherUnit).then_some(unit)
            }
            _ => None,
        };
        let mut total = Ratio::ZERO;
        for term in terms {
            total = self.resolve(term, carry)?.plus(total).ok_or(Fault::TooLarge)?;
        }
        let unit = named.or(Some(self.unit));
        Ok(Term { value: total, unit, last: unit, number: None, marked: false })
    }

    /// A term's value, a bare one having the unit given, or that of the box.
    pub(super) fn resolve(&mut self, term: Term, carry: Option<Unit>) -> Parse<Ratio> {
        if term.unit.is_some() {
            return Ok(term.value);
        }
        if let (Some(number), None, Kind::Length, Unit::Ft) = (term.number, carry, self.kind, self.unit) {
            let (apart, senses): (_, &'static [Sense]) = match (number.spoken, number.dashed) {
                (Some(apart), _) => (apart, &[Sense::FeetInches, Sense::DecimalFeet]),
                (_, Some(apart)) => (apart, &[Sense::Sum, Sense::FeetInches]),
                _ => ((Ratio::ZERO, Ratio::ZERO), &[]),
            };
            if !senses.is_empty() && self.choose(senses) == Sense::FeetInches {
                return Ok(self.feet_inches(apart.0, apart.1)?.value);
            }
        }
        held(self.kind, term.value, carry.unwrap_or(self.unit)).ok_or(Fault::TooLarge)
    }

    pub(super) fn feet_inches(&self, feet: Ratio, inches: Ratio) -> Parse<Term> {
        let value = feet.times(Ratio::whole(12)).and_then(|feet| feet.plus(inches)).ok_or(Fault::TooLarge)?;
        Ok(Term { value, unit: Some(Unit::Ft), last: Some(Unit::In), number: None, marked: false })
    }

    /// A number and its unit, with the smaller units that follow.
    pub(super) fn term(&mut self) -> Parse<Term> {
        if self.kind == Kind::Area {
            return self.area();
        }
        let negative = self.mark('-');
        let mut prefix = None;
        if self.kind == Kind::Money {
            let _ = self.word(Word::Us);
            prefix = self.mark('$').then_some(Unit::Usd);
        } else if self.kind == Kind::Resistance {
            prefix = [Unit::R, Unit::Rsi].into_iter().find(|&unit| self.word(Word::Unit(unit)));
            if prefix.is_some() {
                let _ = self.mark('-');
            }
        }
        if negative && (self.number_next() || prefix.is_some()) && self.kind != Kind::Temperature {
            return Err(Fault::Negative);
        }
        if self.piece(0) == Some(Piece::Mark('-')) && self.number_follows(1) {
            return Err(if self.kind == Kind::Temperature { Fault::NotTaken } else { Fault::Negative });
        }
        let mut number = self.mixed()?;
        if negative {
            number.value = number.value.negated();
        }
        if let Some(term) = self.clock(number)? {
            return Ok(term);
        }
        let found = self.unit()?;
        let unit = match (prefix, found) {
            (Some(_), Some(_)) if self.kind != Kind::Money => return Err(Fault::NotTaken),
            (Some(unit), _) => Some((unit, false)),
            (None, found) => found,
        };
        let Some((unit, marked)) = unit else {
            return self.bare(number);
        };
        let value = held(self.kind, number.value, unit).ok_or(Fault::TooLarge)?;
        let term = Term { value, unit: Some(unit), last: Some(unit), number: Some(number), marked };
        if prefix.is_some() { Ok(term) } else { self.compound(term, number) }
    }

    fn number_follows(&self, ahead: usize) -> bool {
        matches!(self.piece(ahead), Some(Piece::Digits(_) | Piece::Fraction(..)))
    }

    /// `1:30` is an hour and a half.
    fn clock(&mut self, hours: Number) -> Parse<Option<Term>> {
        let (Some(Piece::Mark(':')), Some(minutes)) = (self.piece(0), self.tight_digits(1)) else {
            return Ok(None);
        };
        if self.kind != Kind::Duration || !hours.whole || minutes.len != 2 || minutes.value > 59 {
            return Err(Fault::NotTaken);
        }
        self.at += 2;
        let minutes = Ratio::decimal(minutes.value, 0, 0);
        let value =
            hours.value.times(Ratio::whole(60)).zip(minutes).and_then(|(hours, rest)| hours.plus(rest));
        let value = value.ok_or(Fault::TooLarge)?;
        Ok(Some(Term { value, unit: Some(Unit::Hr), last: Some(Unit::Min), number: None, marked: false }))
    }

    /// What follows a number that has no unit: in a length perhaps inches, or lumber.
    fn bare(&mut self, number: Number) -> Parse<Term> {
        let alone = Term { value: number.value, unit: None, last: None, number: Some(number), marked: false };
        if self.kind != Kind::Length || !number.whole {
            return Ok(alone);
        }
        if !self.factor && self.unit != Unit::Ft && self.unit != Unit::M && self.word(Word::Times) {
            // A cavity's depth by the lumber that makes it.
            let second = self.mixed()?;
            let (_, depth) = lumber::dressed(number.value, second.value).ok_or(Fault::NotTaken)?;
            let unit = Some(Unit::In);
            return Ok(Term { value: depth, unit, last: unit, number: None, marked: false });
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
        let tape = matches!(self.unit, Unit::Ft | Unit::In);
        if !(tape || inches) {
            return Err(Fault::NotTaken);
        }
        let plain = !second.whole || (inches && self.unit == Unit::Ft);
        if plain || self.choose(&[Sense::FeetInches, Sense::Sum]) == Sense::FeetInches {
            return self.feet_inches(number.value, second.value);
        }
        let second_unit = if inches { Unit::In } else { self.unit };
        let both = step(number.value, self.unit).zip(step(second.value, second_unit));
        let value = both.and_then(|(one, two)| one.plus(two)).ok_or(Fault::TooLarge)?;
        Ok(Term { value, unit: Some(self.unit), last: Some(second_unit), number: None, marked: false })
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
            let next = found.map(|(unit, _)| unit).or(implied(last));
            let next = next.filter(|&unit| smaller(last, unit) || (unit == last && self.apostrophe));
            // `12' - 14` and `7 ft - 8`: inches, or the far end of a range?
            let doubtful = dash
                && found.is_none()
                && (number.value >= Ratio::whole(12) || (!term.marked && number.value > before.value));
            let range = doubtful && self.choose(&[Sense::FeetInches, Sense::Range]) == Sense::Range;
            let Some(unit) = next.filter(|_| !range) else {
                if !joined {
                    return Err(Fault::NotTaken);
                }
                self.at = at;
                self.doubt = if range { self.doubt } else { doubt };
                break;
            };
            if !before.whole {
                return Err(Fault::NotTaken);
            }
            before = number;
            let value =
                step(number.value, unit).and_then(|more| more.plus(term.value)).ok_or(Fault::TooLarge)?;
            let marked = found.is_some_and(|(_, marked)| marked);
            term = Term { value, last: Some(unit), number: None, marked, ..term };
        }
        self.converted(term, before)
    }

    /// `5 foot 2 in m`: five foot two, to be shown in meters, or five feet and two meters.
    fn converted(&mut self, term: Term, inches: Number) -> Parse<Term> {
        let (Some(Unit::Ft), Some(Unit::In), false, Some(Piece::Word(Word::Unit(unit)))) =
            (term.unit, term.last, term.marked, self.piece(0))
        else {
            return Ok(term);
        };
        if kind_of(unit) != Kind::Length {
            return Ok(term);
        }
        self.at += 1;
        if self.choose(&[Sense::Converted, Sense::Literal]) == Sense::Converted {
            return Ok(term);
        }
        let value = term.value.minus(inches.value).zip(step(inches.value, unit));
        let value = value.and_then(|(feet, other)| feet.plus(other)).ok_or(Fault::TooLarge)?;
        Ok(Term { value, last: Some(unit), ..term })
    }
}

/// The unit of a bare number after this one: `5 foot 10`, `1 h 30`.
fn implied(larger: Unit) -> Option<Unit> {
    match larger {
        Unit::Ft => Some(Unit::In),
        Unit::Hr => Some(Unit::Min),
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
