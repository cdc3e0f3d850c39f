//! Numbers as written: thousands marks, decimal marks, fractions.

use super::parse::{Parse, Parser};
use super::tokens::{Digits, Piece};
use super::words::Word;
use super::{Fault, Kind, Ratio, Sense};

/// A number without its unit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Number {
    /// Its value.
    pub value: Ratio,
    /// Neither decimals nor a fraction.
    pub whole: bool,
    /// `12-1/2`: the whole part and the fraction that a dash joins to it.
    pub dashed: Option<(Ratio, Ratio)>,
    /// `5.10`, `5.11`: the whole part and the ten or eleven inches that the decimals may be.
    pub spoken: Option<(Ratio, Ratio)>,
}

impl Number {
    fn part(value: Ratio) -> Self {
        Self { value, whole: false, dashed: None, spoken: None }
    }
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
            return Ok(Number::part(value));
        }
        let number = self.plain_number()?;
        if !number.whole {
            return Ok(number);
        }
        let before = self.at;
        // `0-1/2` is a range from nothing; nobody writes a half so.
        let dash = self.piece(0) == Some(Piece::Mark('-'))
            && !self.spaced(0)
            && !self.spaced(1)
            && number.value != Ratio::ZERO;
        if dash || (!self.between && self.piece(0) == Some(Piece::Word(Word::And))) {
            self.at += 1;
        }
        match self.fraction()? {
            Some(part) if part < Ratio::whole(1) => {
                let value = number.value.plus(part).ok_or(Fault::TooLarge)?;
                let dashed = dash.then_some((number.value, part));
                Ok(Number { dashed, ..Number::part(value) })
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
        let (Ok(above), Ok(below)) = (i128::try_from(above), i128::try_from(below)) else {
            return Err(Fault::TooLarge);
        };
        Ratio::new(above, below).ok_or(Fault::TooLarge).map(Some)
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
            return self.finish(first, &[], None);
        };
        let triples = |some: &[(char, Digits)], mark| {
            opens && some.iter().all(|&(one, digits)| one == mark && digits.len == 3)
        };
        if let Some(&(grouping, _)) = before.first() {
            // Two marks and more: `1,234,567`, or `1,234.5` with the last as the decimal mark.
            return match mark {
                _ if triples(&groups, mark) => self.finish(first, &groups, None),
                '.' | ',' if grouping != mark && triples(before, grouping) => {
                    self.finish(first, before, Some(last))
                }
                _ => Err(Fault::NotANumber),
            };
        }
        let thousands = match mark {
            ' ' | '\'' => true,
            _ if !triples(&groups, mark) => false,
            ',' if matches!(self.kind, Kind::Money | Kind::Count) => true,
            ',' => self.choose(&[Sense::Thousands, Sense::DecimalComma]) == Sense::Thousands,
            // `$1.500`; `$1.505` is neither thousands as written here nor an amount.
            _ => {
                self.kind == Kind::Money
                    && last.value % 10 == 0
                    && self.choose(&[Sense::Thousands, Sense::Literal]) == Sense::Thousands
            }
        };
        if thousands { self.finish(first, &groups, None) } else { self.finish(first, &[], Some(last)) }
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

    fn finish(&self, first: Digits, groups: &[(char, Digits)], decimals: Option<Digits>) -> Parse<Number> {
        let whole = groups
            .iter()
            .try_fold(first.value, |whole, (_, digits)| whole.checked_mul(1_000)?.checked_add(digits.value));
        let whole = whole.ok_or(Fault::TooLarge)?;
        let value = match decimals {
            Some(digits) => Ratio::decimal(whole, digits.value, digits.len),
            None => Ratio::decimal(whole, 0, 0),
        };
        let value = value.ok_or(Fault::TooLarge)?;
        let Some(digits) = decimals else {
            return Ok(Number { whole: true, ..Number::part(value) });
        };
        let spoken = (digits.len == 2 && matches!(digits.value, 10 | 11))
            .then(|| (value.floor(), Ratio::whole(if digits.value == 10 { 10 } else { 11 })));
        Ok(Number { spoken, ..Number::part(value) })
    }
}
