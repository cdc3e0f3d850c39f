//! Numbers as written: thousands marks, decimal marks, fractions.

use super::parse::{Parse, Parser};
use super::tokens::{Digits, Piece};
use super::units::plus;
use super::words::Word;
use super::{Fault, Kind, Ratio, Sense, Unit};

/// A number without its unit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Number {
    /// Its value.
    pub value: Ratio,
    /// How it was written.
    pub form: Form,
}

/// How a number was written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Form {
    /// Digits alone.
    Whole,
    /// With decimals or a fraction.
    Part,
    /// `12-1/2`: a fraction joined by a dash.
    Dashed,
    /// `5.10`, `5.11`: decimals that may be ten or eleven inches.
    Spoken,
    /// Of several numbers and units.
    Joined,
}

impl Parser<'_> {
    /// Whether a number begins here.
    pub(super) fn number_next(&self) -> bool {
        match self.piece(0) {
            Some(Piece::Digits(_) | Piece::Fraction(..)) => true,
            Some(Piece::Mark('.' | ',')) => self.tight_digits(1).is_some(),
            _ => false,
        }
    }

    /// A number, a fraction, or a number and a fraction.
    pub(super) fn mixed(&mut self) -> Parse<Number> {
        if let Some(value) = self.fraction()? {
            return Ok(Number { value, form: Form::Part });
        }
        let number = self.plain_number()?;
        if number.form != Form::Whole {
            return Ok(number);
        }
        let before = self.at;
        // At the start of a text `0-1/2` is a range from nothing; later, as in `5' 0-1/2"`, half an inch.
        let dash = self.piece(0) == Some(Piece::Mark('-'))
            && !self.spaced(0)
            && !self.spaced(1)
            && (before > self.start + 1 || number.value != Ratio::ZERO);
        if dash || (!self.between && self.piece(0) == Some(Piece::Word(Word::And))) {
            self.at += 1;
        }
        match self.fraction()? {
            Some(part) if part.under(1) => {
                let form = if dash { Form::Dashed } else { Form::Part };
                Ok(Number { value: plus(number.value, part)?, form })
            }
            Some(_) if !dash => Err(Fault::NotTaken),
            _ => {
                self.at = before;
                Ok(number)
            }
        }
    }

    /// A fraction by itself: `½` or `1/2`.
    fn fraction(&mut self) -> Parse<Option<Ratio>> {
        let (above, below) = match (self.piece(0), self.piece(1), self.piece(2)) {
            (Some(Piece::Fraction(above, below)), ..) => {
                self.at += 1;
                return Ok(Ratio::new(above.into(), below.into()));
            }
            (Some(Piece::Digits(above)), Some(Piece::Mark('/')), Some(Piece::Digits(below))) => {
                (above.value, below.value)
            }
            _ => return Ok(None),
        };
        self.at += 3;
        let runs_on = matches!(self.piece(0), Some(Piece::Mark('.' | ','))) && self.tight_digits(1).is_some();
        if runs_on || self.piece(0) == Some(Piece::Mark('/')) {
            return Err(Fault::NotTaken);
        }
        if below == 0 {
            return Err(Fault::ZeroBelowTheLine);
        }
        Ratio::new(above.into(), below.into()).ok_or(Fault::TooLarge).map(Some)
    }

    /// Digits with their thousands and decimal marks.
    fn plain_number(&mut self) -> Parse<Number> {
        let first = match self.piece(0) {
            Some(Piece::Digits(first)) => {
                self.at += 1;
                first
            }
            // `.5`
            Some(Piece::Mark('.' | ',')) => Digits { value: 0, len: 1, zero_led: true },
            _ => return Err(Fault::NotANumber),
        };
        let opens = !first.zero_led && first.len <= 3;
        let mut groups: Vec<(char, Digits)> = Vec::new();
        while let Some(group) = self.group(opens, &groups) {
            groups.push(group);
        }
        let Some((&(mark, last), before)) = groups.split_last() else {
            return Self::number(first, &[], None);
        };
        let grouping = before.first().map_or(mark, |&(one, _)| one);
        let grouped = opens && before.iter().all(|&(one, digits)| one == grouping && digits.len == 3);
        let alike = mark == grouping;
        let triples = grouped && alike && last.len == 3;
        let thousands = match (before.is_empty(), mark) {
            // Two marks and more: `1,234,567`, or `1,234.5` with the last as the decimal mark.
            (false, _) if triples => true,
            (false, '.' | ',') if grouped && !alike => false,
            (false, _) => return Err(Fault::NotANumber),
            (true, ' ' | '\'') => true,
            // No degree is grouped.
            (true, _) if !triples || self.kind == Kind::Coordinate => false,
            // No fan or heater is given to the thousandth of these.
            (true, ',') if matches!(self.kind, Kind::Money | Kind::Count) || self.coarse_next() => true,
            (true, ',') => self.choose(&[Sense::Thousands, Sense::DecimalComma]) == Sense::Thousands,
            // `$1.500`; `$1.505` is neither thousands as written here nor an amount.
            (true, _) => {
                let two = match self.kind {
                    Kind::Money => last.value % 10 == 0,
                    // `1.200` in millimeters: nobody reads a tape to a thousandth of one.
                    Kind::Length => self.unit == Unit::Mm && self.unit_next() == Some(Unit::Mm),
                    _ => self.coarse_next(),
                };
                two && self.choose(&[Sense::Thousands, Sense::Literal]) == Sense::Thousands
            }
        };
        if thousands { Self::number(first, &groups, None) } else { Self::number(first, before, Some(last)) }
    }

    /// The unit that stands next, or that of the box where none does.
    fn unit_next(&self) -> Option<Unit> {
        match self.piece(0) {
            None | Some(Piece::Mark('-' | '+')) => Some(self.unit),
            Some(Piece::Word(Word::Unit(unit))) => Some(unit),
            _ => None,
        }
    }

    fn coarse_next(&self) -> bool {
        matches!(self.unit_next(), Some(Unit::Btuh | Unit::Cfm))
    }

    /// One more group of digits of the same number, with the mark before it.
    fn group(&mut self, opens: bool, before: &[(char, Digits)]) -> Option<(char, Digits)> {
        let so_far = |mark| opens && before.iter().all(|&(one, _)| one == mark);
        let (mark, digits, length) = match (self.piece(0)?, self.tight_digits(1)) {
            (Piece::Mark(mark @ ('.' | ',')), Some(digits)) if !self.spaced(0) => (mark, digits, 2),
            (Piece::Mark('\''), Some(digits)) if !self.spaced(0) && digits.len == 3 && so_far('\'') => {
                if self.measures_length()
                    && self.choose(&[Sense::Thousands, Sense::FeetInches]) != Sense::Thousands
                {
                    self.apostrophe = true;
                    return None;
                }
                ('\'', digits, 2)
            }
            (Piece::Digits(digits), _)
                if digits.len == 3
                    && self.spaced(0)
                    && so_far(' ')
                    && self.piece(1) != Some(Piece::Mark('/')) =>
            {
                (' ', digits, 1)
            }
            _ => return None,
        };
        self.at += length;
        Some((mark, digits))
    }

    fn number(first: Digits, groups: &[(char, Digits)], decimals: Option<Digits>) -> Parse<Number> {
        let whole = groups
            .iter()
            .try_fold(first.value, |whole, (_, digits)| whole.checked_mul(1_000)?.checked_add(digits.value));
        let whole = whole.ok_or(Fault::TooLarge)?;
        let (digits, places, form) = match decimals {
            None => (0, 0, Form::Whole),
            Some(digits) if digits.len == 2 && matches!(digits.value, 10 | 11) => {
                (digits.value, 2, Form::Spoken)
            }
            Some(digits) => (digits.value, digits.len, Form::Part),
        };
        let value = Ratio::decimal(whole, digits, places).ok_or(Fault::TooLarge)?;
        Ok(Number { value, form })
    }
}
