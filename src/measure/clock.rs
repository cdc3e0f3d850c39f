//! Times of day, and degrees of latitude and longitude.

use super::date::small;
use super::number::Form;
use super::parse::{Parse, Parser};
use super::tokens::{Digits, Piece};
use super::units::{plus, times};
use super::words::Word;
use super::{Fault, Ratio, Sense, Unit};

impl Parser<'_> {
    /// A time of day: `8:30 pm`, `8 p. m.`, `18:05`, `1805`, `18 h 05`, `noon`, `8 de la mañana`.
    ///
    /// An hour from 1 to 12 that neither says its half of the day nor is led by a zero (`08:00`) has two meanings.
    pub(super) fn time_of_day(&mut self) -> Parse<Ratio> {
        if let Some(Piece::Word(Word::Hour(hour))) = self.piece(0) {
            self.at += 1;
            self.end()?;
            return Ok(Ratio::whole(i64::from(hour) * 60));
        }
        let Some(Piece::Digits(first)) = self.piece(0) else { return Err(Fault::NotANumber) };
        self.at += 1;
        let (mut hour, mut minute) = (small(first), 0);
        if first.len > 2 {
            (hour, minute) = (hour / 100, hour % 100);
        } else if self.mark(':') || self.mark('.') || self.word(Word::Unit(Unit::Hr)) {
            match self.piece(0) {
                Some(Piece::Digits(digits @ Digits { len: 2, .. })) => {
                    self.at += 1;
                    minute = small(digits);
                }
                // `18 h`
                Some(Piece::Digits(_)) => return Err(Fault::NotTaken),
                _ => {}
            }
        }
        // `de la`, `del`
        let spoken = self.word(Word::From) | self.word(Word::The);
        let half = match self.piece(0) {
            Some(Piece::Word(word @ (Word::A | Word::Am | Word::Pm | Word::Night | Word::Hour(_)))) => {
                Some(word)
            }
            _ => None,
        };
        self.at += usize::from(half.is_some());
        if matches!(half, Some(Word::A | Word::Pm)) {
            let _ = self.word(Word::Unit(Unit::M));
        }
        self.end()?;
        let of_twelve = (1..=12).contains(&hour);
        let later = match half {
            None if spoken => return Err(Fault::NotTaken),
            None if of_twelve && !first.zero_led => {
                self.choose(&[Sense::Morning, Sense::Afternoon]) == Sense::Afternoon
            }
            None => false,
            // `12 noon`
            Some(Word::Hour(noon)) if hour == 12 && minute == 0 => noon == 12,
            // Which twelve o'clock is that of the night, or of the morning, is not said alike everywhere; nor whether
            // what comes after it is night already.
            Some(_) if !of_twelve || (spoken && hour == 12) => return Err(Fault::NotTaken),
            Some(Word::A | Word::Am) => false,
            Some(Word::Night) if hour < 6 => return Err(Fault::NotTaken),
            Some(Word::Hour(_)) => return Err(Fault::NotTaken),
            Some(_) => true,
        };
        if of_twelve {
            hour = hour % 12 + if later { 12 } else { 0 };
        }
        if hour > 23 || minute > 59 || first.len > 4 {
            return Err(Fault::NotTaken);
        }
        Ok(Ratio::whole(hour * 60 + minute))
    }

    /// A latitude or longitude: `44.98`, `-93.27`, `93.27 W`, `44° 58′ 48″ N`. South and west are less than nothing.
    /// Whether the letter is one of this axis only its field could know.
    pub(super) fn coordinate(&mut self) -> Parse<Ratio> {
        let before = self.compass();
        let negative = self.mark('-');
        let _ = !negative && self.mark('+');
        let (mut value, mut size, mut whole) = (Ratio::ZERO, 1, true);
        for mark in ['°', '\'', '"'] {
            if size > 1 && !self.number_next() {
                break;
            }
            let number = self.mixed()?;
            if size > 1 && !(whole && number.value.under(60)) {
                return Err(Fault::NotTaken);
            }
            value = plus(value, times(number.value, Ratio::one_of(size))?)?;
            whole = number.form == Form::Whole;
            size *= 60;
            let _ = self.mark(mark) || (mark == '°' && self.word(Word::Degrees));
        }
        let after = self.compass();
        self.end()?;
        match (before.or(after), negative) {
            _ if before.is_some() && after.is_some() => Err(Fault::NotTaken),
            (Some(_), true) => Err(Fault::NotTaken),
            (Some(true), _) | (None, true) => Ok(value.negated()),
            _ => Ok(value),
        }
    }

    /// The letter or word of a side, and whether it is south or west.
    fn compass(&mut self) -> Option<bool> {
        let less = match self.piece(0)? {
            Piece::Word(Word::North) => false,
            Piece::Word(Word::South | Word::O | Word::Watts | Word::Unit(Unit::Sec)) => true,
            _ => return None,
        };
        self.at += 1;
        Some(less)
    }
}
