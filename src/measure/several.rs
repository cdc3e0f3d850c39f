//! Several measures in one text: `10' x 14' x 8'`, `6 @ 2' x 4'`, `four 3-0 x 4-6`. A box takes one of them; the
//! list is offered to the boxes that it would fill.

use super::read::read;
use super::tokens::{Piece, Token, scanned};
use super::words::Word;
use super::{Kind, Outcome, Ratio, Sense, Unit};

/// No list counts more.
const MOST: u64 = 1_000_000;

/// One measure of a list.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Part {
    /// As it was written.
    pub text: String,
    /// The unit of a bare number in it; [`Unit::Each`] for the count.
    pub unit: Unit,
    /// Which meaning it has beside the others (`3-0` beside an `x` is three feet).
    pub sense: Option<Sense>,
}

/// How many of it there are, said before its sizes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Counted {
    pub value: Ratio,
    /// How many tokens say so.
    pub tokens: usize,
    /// Whether the number can be nothing else: in `six 6 x 8` it may be the feet of the first size.
    pub sure: bool,
}

/// The count at the head of a list: `6 @`, `(6)`, `6 ea`, or a number in words before a size in digits.
pub(super) fn counted(tokens: &[Token]) -> Option<Counted> {
    let piece = |at: usize| tokens.get(at).map(|token| token.piece);
    let whole = |at: usize| match piece(at) {
        Some(Piece::Digits(digits)) if digits.value < MOST => Ratio::decimal(digits.value, 0, 0),
        _ => None,
    };
    if piece(0) == Some(Piece::Mark('(')) && piece(2) == Some(Piece::Mark(')')) {
        return whole(1).map(|value| Counted { value, tokens: 3, sure: true });
    }
    let value = whole(0)?;
    if matches!(piece(1), Some(Piece::Mark('@') | Piece::Word(Word::Unit(Unit::Each)))) {
        return Some(Counted { value, tokens: 2, sure: true });
    }
    let next = tokens.get(1)?;
    let spelled = tokens.first()?.spelled && next.spaced;
    let number = matches!(next.piece, Piece::Digits(_)) && piece(2) != Some(Piece::Mark('/'));
    let sure = !next.spelled
        && matches!(piece(2), Some(Piece::Mark('-' | '\'') | Piece::Word(Word::Unit(Unit::Ft | Unit::M))));
    (spelled && number).then_some(Counted { value, tokens: 1, sure })
}

/// The measures of a text that holds several, once for each way to understand it; empty for any other text.
///
/// `unit` is that of a bare length. Where only some lengths have a unit and it is another one, a unit in words
/// at the end holds for all (`10 x 4 m`); else both readings stand (`16" x 8`).
pub(super) fn several(text: &str, unit: Unit) -> Vec<Vec<Part>> {
    let Ok((chars, tokens)) = scanned(text) else { return Vec::new() };
    let mut ways = Vec::new();
    let many = counted(&tokens);
    if let Some(many) = many {
        lengths(&chars, &tokens, many.tokens, unit, &mut ways);
    }
    if many.is_none_or(|many| !many.sure) {
        lengths(&chars, &tokens, 0, unit, &mut ways);
    }
    ways
}

/// The lengths after so many tokens of a count.
fn lengths(chars: &[char], tokens: &[Token], count: usize, unit: Unit, ways: &mut Vec<Vec<Part>>) {
    let rest = tokens.get(count..).unwrap_or_default();
    let sizes: Vec<&[Token]> = rest.split(|token| token.piece == Piece::Word(Word::Times)).collect();
    let named = |size: &&[Token]| named(size, unit);
    if sizes.len() > 3 || (count == 0 && sizes.len() < 2) {
        return;
    }
    let other = sizes.iter().filter_map(named).map(|(named, _)| named).find(|named| *named != unit);
    let bare = sizes.iter().any(|size| named(size).is_none());
    let said_of_all = sizes.split_last().is_some_and(|(last, before)| {
        named(last).is_some_and(|(_, worded)| worded) && before.iter().all(|size| named(size).is_none())
    });
    let units: &[Unit] = match other {
        Some(other) if bare && said_of_all => &[other],
        Some(other) if bare => &[unit, other],
        _ => &[unit],
    };
    // The digits of the count, without what stands around them.
    let number = tokens.get(usize::from(count == 3)..).and_then(|tokens| tokens.get(..1));
    for &carried in units {
        let many = number.filter(|_| count > 0);
        let mut parts: Vec<Part> = many
            .map(|number| Part { text: written(chars, tokens, number), unit: Unit::Each, sense: None })
            .into_iter()
            .collect();
        for size in &sizes {
            let unit = if named(size).is_some() { unit } else { carried };
            match length(written(chars, tokens, size), dashed(size), unit) {
                Some(part) => parts.push(part),
                None => return,
            }
        }
        ways.push(parts);
    }
}

/// The characters of some tokens.
fn written(chars: &[char], all: &[Token], some: &[Token]) -> String {
    let (Some(first), Some(last)) = (some.first(), some.last()) else { return String::new() };
    let end = all.iter().map(|token| token.from).find(|from| *from > last.from).unwrap_or(chars.len());
    let text: String = chars.get(first.from..end).unwrap_or_default().iter().collect();
    text.trim().into()
}

/// `3-0`: feet and inches, as a carpenter calls an opening.
fn dashed(size: &[Token]) -> bool {
    let piece = |at: usize| size.get(at).map(|token| token.piece);
    matches!((piece(0), piece(1)), (Some(Piece::Digits(_)), Some(Piece::Mark('-'))))
}

/// The first unit in a length and whether it is a word; courses and `3-0` say nothing of the other lengths.
fn named(size: &[Token], unit: Unit) -> Option<(Unit, bool)> {
    if unit == Unit::Ft && dashed(size) {
        return Some((unit, false));
    }
    size.iter().find_map(|token| match token.piece {
        Piece::Mark('\'') => Some((Unit::Ft, false)),
        Piece::Mark('"') => Some((Unit::In, false)),
        Piece::Word(Word::Unit(named)) => Some((named, true)),
        Piece::Word(Word::Course) => Some((unit, false)),
        _ => None,
    })
}

/// One length of a list; with two meanings it keeps both for its own box to ask about. `None`: no length.
fn length(text: String, dashed: bool, unit: Unit) -> Option<Part> {
    let sense = match read(&text, Kind::Length, unit, None) {
        Outcome::Read(_) => None,
        Outcome::Ask(_) => Some(Sense::FeetInches).filter(|_| dashed && unit == Unit::Ft),
        _ => return None,
    };
    Some(Part { text, unit, sense })
}
