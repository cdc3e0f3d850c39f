//! From characters to tokens: the many marks that people and phones put for the same thing become one.

use super::words::{Word, word};
use super::{Fault, Unit};

/// The longest text that is looked at.
const LONGEST: usize = 200;

/// A run of digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Digits {
    /// Their value.
    pub value: u64,
    /// How many there are.
    pub len: u32,
    /// Whether a zero leads them.
    pub zero_led: bool,
}

/// A piece of a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Piece {
    /// A run of digits, or a number in words.
    Digits(Digits),
    /// A fraction written as one character.
    Fraction(u8, u8),
    /// A word.
    Word(Word),
    /// A mark: `'` feet, `"` inches, `-` any dash, `x` times, `²`, `³`, `±` and so on.
    Mark(char),
}

/// A piece, and whether a space stands before it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Token {
    pub piece: Piece,
    pub spaced: bool,
    /// Where it begins among the plain characters.
    pub from: usize,
    /// Digits that were written as a word.
    pub spelled: bool,
}

/// The tokens of a text; none for a blank one.
pub(super) fn tokens(text: &str) -> Result<Vec<Token>, Fault> {
    scanned(text).map(|(_, tokens)| tokens)
}

/// The plain characters of a text and its tokens.
pub(super) fn scanned(text: &str) -> Result<(Vec<char>, Vec<Token>), Fault> {
    let mut chars = Vec::with_capacity(text.len().min(LONGEST));
    for (at, char) in text.chars().enumerate() {
        if at == LONGEST {
            return Err(Fault::TooLong);
        }
        chars.extend(plain(char));
    }
    while chars.last() == Some(&' ') {
        chars.pop();
    }
    let mut scan = Scan { chars: &chars, at: 0, from: 0, tokens: Vec::with_capacity(chars.len()) };
    while let Some(char) = scan.peek(0) {
        scan.from = scan.at;
        scan.piece(char)?;
    }
    let tokens = scan.tokens;
    Ok((chars, tokens))
}

struct Scan<'a> {
    chars: &'a [char],
    at: usize,
    /// Where the piece at hand begins.
    from: usize,
    tokens: Vec<Token>,
}

impl Scan<'_> {
    fn peek(&self, ahead: usize) -> Option<char> {
        self.chars.get(self.at + ahead).copied()
    }

    fn spaced(&self) -> bool {
        self.at.checked_sub(1).and_then(|before| self.chars.get(before)) == Some(&' ')
    }

    fn push(&mut self, piece: Piece, spaced: bool) {
        let spelled = matches!(piece, Piece::Digits(_))
            && self.chars.get(self.from).is_some_and(|char| char.is_ascii_lowercase());
        self.tokens.push(Token { piece, spaced, from: self.from, spelled });
    }

    fn piece(&mut self, char: char) -> Result<(), Fault> {
        let spaced = self.spaced();
        if char == ' ' {
            self.at += 1;
        } else if char.is_ascii_digit() {
            let digits = self.digits()?;
            self.push(Piece::Digits(digits), spaced);
        } else if char.is_ascii_lowercase() {
            self.word(spaced)?;
        } else if let Some((above, below)) = vulgar(char) {
            self.at += 1;
            self.push(Piece::Fraction(above, below), spaced);
        } else {
            let next = self.peek(1);
            let (mark, length) = match (char, next) {
                ('\'', Some('\'')) => ('"', 2),
                ('+', Some('-')) => ('±', 2),
                ('+', Some('/')) if self.peek(2) == Some('-') => ('±', 3),
                ('^', Some('2')) => ('²', 2),
                ('^', Some('3')) => ('³', 2),
                _ if MARKS.chars().any(|mark| mark == char) => (char, 1),
                _ => return Err(Fault::NotANumber),
            };
            self.at += length;
            if mark == '×' {
                self.push(Piece::Word(Word::Times), spaced);
            } else if !(mark == '.' && next.is_none() && !spaced) {
                self.push(Piece::Mark(mark), spaced);
            }
        }
        Ok(())
    }

    fn digits(&mut self) -> Result<Digits, Fault> {
        let mut digits = Digits { value: 0, len: 0, zero_led: self.peek(0) == Some('0') };
        while let Some(digit) = self.peek(0).and_then(|char| char.to_digit(10)) {
            let longer = digits.value.checked_mul(10).and_then(|value| value.checked_add(digit.into()));
            digits.value = longer.ok_or(Fault::TooLarge)?;
            digits.len += 1;
            self.at += 1;
        }
        // An exponent is not how a tape or a label is read.
        let sign = usize::from(matches!(self.peek(1), Some('+' | '-')));
        if self.peek(0) == Some('e') && self.peek(1 + sign).is_some_and(|char| char.is_ascii_digit()) {
            return Err(Fault::NotTaken);
        }
        Ok(digits)
    }

    fn word(&mut self, spaced: bool) -> Result<(), Fault> {
        let mut spelled = String::new();
        while let Some(letter) = self.peek(0).filter(char::is_ascii_lowercase) {
            spelled.push(letter);
            self.at += 1;
        }
        let digit_next = self.peek(0).is_some_and(|char| char.is_ascii_digit());
        let mut times = false;
        let mut found = word(&spelled);
        if found.is_none() && digit_next && spelled.pop() == Some('x') {
            // `10mx4m`: the last letter is the times sign.
            found = word(&spelled);
            times = true;
        }
        let found = found.ok_or(Fault::NotANumber)?;
        if let Word::Number(value) = found {
            let digits = Digits { value: value.into(), len: if value < 10 { 1 } else { 2 }, zero_led: false };
            self.push(Piece::Digits(digits), spaced);
        } else {
            self.push(Piece::Word(found), spaced);
        }
        if times {
            self.from = self.at - 1;
            self.push(Piece::Word(Word::Times), false);
        }
        // `in.` and `approx.`: the dot belongs to the word.
        if self.peek(0) == Some('.') && !self.peek(1).is_some_and(|char| char.is_ascii_digit()) {
            self.at += 1;
        }
        // `ft2`, `m3` and `m3/h`: the digit belongs to the unit, unless more of a number follows (`5ft2in`).
        let power = self.peek(0).filter(|_| matches!(found, Word::Unit(Unit::Ft | Unit::In | Unit::M)));
        let number =
            |char: Option<char>| char.is_some_and(|char| char.is_ascii_digit() || vulgar(char).is_some());
        let more = matches!(self.peek(1), Some('a'..='z' | '.' | ',' | '\'' | '"'))
            || (self.peek(1) == Some('/') && !self.peek(2).is_some_and(|char| char.is_ascii_lowercase()))
            || number(self.peek(1))
            || (self.peek(1) == Some(' ') && number(self.peek(2)));
        if let Some(mark) = power.and_then(|digit| match digit {
            '2' => Some('²'),
            '3' => Some('³'),
            _ => None,
        }) && !more
        {
            self.at += 1;
            self.push(Piece::Mark(mark), false);
        }
        Ok(())
    }
}

/// The marks of the grammar.
const MARKS: &str = "'\"+-/.,:()~±°²³·×%$#@";

/// Characters that people and phones put for one mark, the mark first.
const ALIKE: &[&str] = &[
    "' `´‘’‚‛′‵ʹʼʻ\u{ff07}",
    "\" “”„‟″‶ʺ〃\u{ff02}",
    "- \u{2010}\u{2011}\u{2012}\u{2013}\u{2014}\u{2015}\u{2212}\u{fe63}\u{ff0d}",
    "/ \u{2044}\u{2215}\u{ff0f}",
    "× *✕✖⨯",
    "· ⋅•",
    "° º˚",
    "~ ≈∼～",
    "a Áá",
    "e Éé",
    "i Íí",
    "o Óó",
    "u ÚúÜü",
    "n Ññ",
];

/// A character as the grammar knows it; `None` for one that shows nothing.
fn plain(char: char) -> Option<char> {
    if char.is_ascii_alphanumeric() {
        return Some(char.to_ascii_lowercase());
    }
    match char {
        '\t' | '\n' | '\r' | '\u{a0}' | '\u{2000}'..='\u{200a}' | '\u{202f}' | '\u{205f}' | '\u{3000}' => {
            Some(' ')
        }
        '\u{ad}' | '\u{301}' | '\u{303}' | '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}' => None,
        ' ' => Some(' '),
        '\u{ff5f}'.. => Some(char),
        _ => {
            let alike = ALIKE.iter().find(|alike| alike.chars().any(|one| one == char));
            alike.map_or(Some(char), |alike| alike.chars().next())
        }
    }
}

/// Fractions that are one character.
const VULGAR: &[(char, u8, u8)] = &[
    ('½', 1, 2),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅐', 1, 7),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅑', 1, 9),
    ('⅒', 1, 10),
];

/// What a fraction character stands for.
fn vulgar(char: char) -> Option<(u8, u8)> {
    VULGAR.iter().find_map(|&(known, above, below)| (known == char).then_some((above, below)))
}
