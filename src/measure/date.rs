//! Calendar dates, as days since 1970-01-01.

use super::parse::{Parse, Parser};
use super::tokens::{Digits, Piece};
use super::words::Word;
use super::{Fault, Ratio, Sense};

impl Parser<'_> {
    /// A date: `2026-10-16`, `Oct 16, 2026`, `16 de octubre de 2026`, `10/16/2026`, `16.10.2026`.
    ///
    /// Dots put the day first, everywhere that they are used; slashes and dashes do not say, so
    /// `3/4/2026` has two meanings. A year of two digits is one of this century.
    pub(super) fn date(&mut self) -> Parse<Ratio> {
        let (mut numbers, mut month) = (Vec::new(), None);
        let mut mark = None;
        while let Some(piece) = self.piece(0) {
            self.at += 1;
            match piece {
                Piece::Digits(digits) => numbers.push(digits),
                Piece::Word(Word::Month(named)) if month.is_none() => month = Some((named, numbers.len())),
                Piece::Word(Word::Ordinal) if !self.spaced_before() => {}
                Piece::Word(Word::From) if !numbers.is_empty() => {}
                Piece::Mark(',') if month.is_some() && numbers.len() == 1 => {}
                Piece::Mark(between @ ('-' | '/' | '.')) if numbers.len() < 3 && self.piece(0).is_some() => {
                    if mark.is_some_and(|known| known != between) {
                        return Err(Fault::NotTaken);
                    }
                    mark = Some(between);
                }
                _ => return Err(Fault::NotTaken),
            }
        }
        match (month, numbers.as_slice()) {
            (Some((month, 0 | 1)), &[day, year]) => days(year, month.into(), day),
            (None, &[year, month, day]) if year.len == 4 && mark != Some('.') => {
                days(year, small(month), day)
            }
            (None, &[day, month, year]) if mark == Some('.') => days(year, small(month), day),
            (None, &[first, second, year]) if mark.is_some() => {
                let month_first = days(year, small(first), second);
                let day_first = days(year, small(second), first);
                match (month_first, day_first) {
                    (Ok(one), Ok(two)) if one != two => {
                        let sense = self.choose(&[Sense::MonthFirst, Sense::DayFirst]);
                        Ok(if sense == Sense::DayFirst { two } else { one })
                    }
                    (Ok(day), _) | (_, Ok(day)) => Ok(day),
                    (Err(fault), _) => Err(fault),
                }
            }
            _ => Err(Fault::NotTaken),
        }
    }

    /// A postal or county code: five digits, or nine with a dash, of which the last four are of no account.
    pub(super) fn zip(&mut self) -> Parse<Ratio> {
        let mut numbers = Vec::new();
        while let Some(piece) = self.piece(0) {
            self.at += 1;
            match piece {
                Piece::Digits(digits) if numbers.len() < 2 => numbers.push(digits),
                Piece::Mark('-') if numbers.len() == 1 => {}
                _ => return Err(Fault::NotTaken),
            }
        }
        match numbers.as_slice() {
            &[code] | &[code, Digits { len: 4, .. }] if code.len == 5 => Ok(Ratio::whole(small(code))),
            _ => Err(Fault::NotTaken),
        }
    }

    /// Whether a space stands before the token just taken.
    fn spaced_before(&self) -> bool {
        self.at.checked_sub(1).and_then(|at| self.tokens.get(at)).is_none_or(|token| token.spaced)
    }
}

pub(super) fn small(digits: Digits) -> i64 {
    i64::try_from(digits.value).unwrap_or(i64::MAX)
}

fn days(year: Digits, month: i64, day: Digits) -> Parse<Ratio> {
    let year = match year.len {
        2 => 2_000 + small(year),
        4 => small(year),
        _ => return Err(Fault::NotTaken),
    };
    let day = small(day);
    let leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    let length = match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => return Err(Fault::NoSuchDay),
    };
    if !(1..=length).contains(&day) {
        return Err(Fault::NoSuchDay);
    }
    Ok(Ratio::whole(days_since_1970(year, month, day)))
}

/// Days from 1970-01-01 to a day of the Gregorian calendar, counting years from March so that the leap day
/// comes last.
fn days_since_1970(year: i64, month: i64, day: i64) -> i64 {
    let year = if month <= 2 { year - 1 } else { year };
    let (cycle, of_cycle) = (year.div_euclid(400), year.rem_euclid(400));
    let of_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
    cycle * 146_097 + of_cycle * 365 + of_cycle / 4 - of_cycle / 100 + of_year - 719_468
}

/// The day of the Gregorian calendar so many days after 1970-01-01: year, month, day.
pub(super) fn day_of(days: i64) -> (i64, i64, i64) {
    let (cycle, of_cycle) = ((days + 719_468).div_euclid(146_097), (days + 719_468).rem_euclid(146_097));
    let year = (of_cycle - of_cycle / 1_460 + of_cycle / 36_524 - of_cycle / 146_096) / 365;
    let of_year = of_cycle - (365 * year + year / 4 - year / 100);
    let from_march = (5 * of_year + 2) / 153;
    let month = (from_march + 2) % 12 + 1;
    let day = of_year - (153 * from_march + 2) / 5 + 1;
    (cycle * 400 + year + i64::from(month <= 2), month, day)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_day_of_four_centuries_follows_the_one_before() {
        let mut known = days_since_1970(1970, 1, 1);
        assert_eq!(known, 0);
        for year in 1970..2371_i64 {
            for month in 1..=12_i64 {
                let length = match month {
                    2 if (year % 4 == 0 && year % 100 != 0) || year % 400 == 0 => 29,
                    2 => 28,
                    4 | 6 | 9 | 11 => 30,
                    _ => 31,
                };
                for day in 1..=length {
                    assert_eq!(days_since_1970(year, month, day), known);
                    assert_eq!(day_of(known), (year, month, day));
                    known += 1;
                }
            }
        }
        // POSIX: 2026-10-16T00:00Z is 1 792 108 800 s after the epoch.
        assert_eq!(days_since_1970(2026, 10, 16) * 86_400, 1_792_108_800);
    }
}
