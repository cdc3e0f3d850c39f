//! Two lengths with `x` between them: an area, or a member.

use super::parse::{Parse, Parser};
use super::several::counted;
use super::term::Term;
use super::tokens::Piece;
use super::units::{kind_of, step, times};
use super::words::Word;
use super::{Fault, Kind, Member, Ratio, Sense, Unit, lumber};

impl Parser<'_> {
    /// An area: a number with its unit, or two lengths multiplied.
    pub(super) fn area(&mut self) -> Parse<Term> {
        if self.mark('-') {
            return Err(if self.number_next() { Fault::Negative } else { Fault::NotANumber });
        }
        let ahead = self.tokens.iter().skip(self.at);
        let mut this_term = ahead.take_while(|token| token.piece != Piece::Mark('+'));
        if this_term.any(|token| token.piece == Piece::Word(Word::Times)) {
            // `6 @ 2' x 4'`
            let many = counted(self.tokens.get(self.at..).unwrap_or_default()).filter(|many| many.sure);
            self.at += many.map_or(0, |many| many.tokens);
            let unit = self.unit;
            self.kind = Kind::Length;
            self.unit = match unit {
                Unit::M2 => Unit::M,
                Unit::In2 => Unit::In,
                _ => Unit::Ft,
            };
            self.factor = true;
            let product = self.product();
            (self.kind, self.unit, self.factor) = (Kind::Area, unit, false);
            let mut product = product?;
            if let Some(many) = many {
                product.value = times(product.value, many.value)?;
            }
            return Ok(product);
        }
        let number = self.mixed()?;
        let unit = self.unit()?.map(|(unit, _)| unit);
        let value = match unit {
            Some(unit) => step(number.value, unit)?,
            None => number.value,
        };
        Ok(Term { value, unit, last: unit, form: number.form, marked: false })
    }

    fn product(&mut self) -> Parse<Term> {
        let first = self.term()?;
        if !self.word(Word::Times) {
            return Err(Fault::NotTaken);
        }
        let (at, doubt) = (self.at, self.doubt);
        if first.unit.is_none() && self.number_next() {
            // `12 x 8 ft²`: so many times an area, or the area of 12 by 8; either way the same.
            let number = self.mixed()?;
            if let Some((unit, _)) = self.any_unit()?
                && kind_of(unit) == Kind::Area
            {
                let value = step(times(first.value, number.value)?, unit)?;
                return Ok(Term::joined(value, Unit::Ft2, Unit::Ft2));
            }
            (self.at, self.doubt) = (at, doubt);
        }
        let second = self.term()?;
        // `16" x 8`: 8 of what? `10 x 4 m` says it of both.
        let (named, marked) = match (first.unit, second.unit) {
            (Some(unit), None) => (Some(unit), true),
            (None, Some(unit)) => (Some(unit), second.marked),
            _ => (None, false),
        };
        let carry = match named {
            Some(unit) if marked && unit != self.unit => {
                (self.choose(&[Sense::BoxUnit, Sense::OtherUnit]) == Sense::OtherUnit).then_some(unit)
            }
            named => named,
        };
        if self.piece(0) == Some(Piece::Word(Word::Times)) {
            return Err(Fault::ThreeLengths);
        }
        let square_inches = times(self.resolve(first, carry)?, self.resolve(second, carry)?)?;
        Ok(Term::joined(times(square_inches, Ratio::one_of(144))?, Unit::Ft2, Unit::Ft2))
    }

    /// A member: nominal lumber, its own two sizes, or only a width. Of a steel stud or an engineered joist
    /// (`steel 1 5/8 x 6`, `i-joist 2 5/16 x 11 7/8`) the two are the flange, which is what covers, and the
    /// depth; no size of it is lumber. Where the first is the larger, the depth may stand first.
    pub(super) fn member(&mut self) -> Parse<Member> {
        let mut section = false;
        while self.word(Word::Section) || (section && self.mark('-')) {
            section = true;
        }
        let (width, width_unit) = self.side()?;
        let (depth, depth_unit) = if self.word(Word::Times) {
            let (depth, unit) = self.side()?;
            (Some(depth), unit)
        } else {
            (None, None)
        };
        self.end()?;
        if let Some(depth) = depth.filter(|_| !section) {
            let inches = |unit: Option<Unit>| unit.is_none_or(|unit| unit == Unit::In);
            if let Some((thin, deep)) = lumber::dressed(width, depth)
                && inches(width_unit)
                && inches(depth_unit)
            {
                // `2x6` is a name; `2" x 6"` may be a name or a measure.
                let named = width_unit.or(depth_unit).is_none();
                if named || self.choose(&[Sense::Nominal, Sense::Literal]) == Sense::Nominal {
                    return Ok(Member { width_in: thin, depth_in: Some(deep) });
                }
            }
        }
        let carry = |own: Option<Unit>, other: Option<Unit>| own.or(other).unwrap_or(self.unit);
        let width_in = step(width, carry(width_unit, depth_unit))?;
        let depth_in = depth.map(|depth| step(depth, carry(depth_unit, width_unit))).transpose()?;
        let (width_in, depth_in) = match depth_in {
            Some(depth)
                if section
                    && depth < width_in
                    && self.choose(&[Sense::DepthFirst, Sense::Literal]) == Sense::DepthFirst =>
            {
                (depth, Some(width_in))
            }
            _ => (width_in, depth_in),
        };
        let most = Ratio::whole(1_000_000_000_000);
        if width_in > most || depth_in.is_some_and(|depth| depth > most) {
            return Err(Fault::TooLarge);
        }
        Ok(Member { width_in, depth_in })
    }

    fn side(&mut self) -> Parse<(Ratio, Option<Unit>)> {
        if self.mark('-') {
            return Err(if self.number_next() { Fault::Negative } else { Fault::NotANumber });
        }
        let number = self.mixed()?;
        let unit = self.unit()?.map(|(unit, _)| unit);
        Ok((number.value, unit))
    }
}
