//! Exact fractions with checked arithmetic.

use core::cmp::Ordering;

/// A ratio of two integers in lowest terms, the lower one above zero.
///
/// Every operation answers `None` instead of overflowing: a tape or a label never needs more than the
/// 38 digits that fit, so such a text is refused as too large.
///
/// ```
/// use foamwright::measure::Ratio;
/// let third_of_a_foot = Ratio::new(1, 3).and_then(|third| third.times(Ratio::whole(12)));
/// assert_eq!(third_of_a_foot, Some(Ratio::whole(4)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ratio {
    num: i128,
    den: i128,
}

impl Ratio {
    /// Nothing.
    pub const ZERO: Self = Self { num: 0, den: 1 };

    /// A whole number.
    pub const fn whole(value: i64) -> Self {
        Self { num: value as i128, den: 1 }
    }

    /// One part of so many (of none: one).
    pub const fn one_of(parts: u32) -> Self {
        Self { num: 1, den: if parts == 0 { 1 } else { parts as i128 } }
    }

    /// One number over another; `None` over zero, or where the sign of the least integer cannot be turned.
    #[inline(never)]
    pub fn new(num: i128, den: i128) -> Option<Self> {
        if den == 0 || num == i128::MIN || den == i128::MIN {
            return None;
        }
        let shared = gcd(num.unsigned_abs(), den.unsigned_abs()) as i128;
        let sign = if den < 0 { -1 } else { 1 };
        Some(Self { num: num / shared * sign, den: den / shared * sign })
    }

    /// A whole number and so many decimal places, as written: `(12, 5, 2)` is 12.05.
    pub fn decimal(whole: u64, digits: u64, places: u32) -> Option<Self> {
        let scale = 10_i128.checked_pow(places)?;
        Self::new(i128::from(whole).checked_mul(scale)?.checked_add(digits.into())?, scale)
    }

    /// The sum.
    #[inline(never)]
    pub fn plus(self, other: Self) -> Option<Self> {
        let shared = gcd(self.den.unsigned_abs(), other.den.unsigned_abs()) as i128;
        let (up, across) = (other.den / shared, self.den / shared);
        let num = self.num.checked_mul(up)?.checked_add(other.num.checked_mul(across)?)?;
        Self::new(num, self.den.checked_mul(up)?)
    }

    /// The difference.
    pub fn minus(self, other: Self) -> Option<Self> {
        self.plus(other.negated())
    }

    /// The product.
    #[inline(never)]
    pub fn times(self, other: Self) -> Option<Self> {
        let one = gcd(self.num.unsigned_abs(), other.den.unsigned_abs()) as i128;
        let two = gcd(other.num.unsigned_abs(), self.den.unsigned_abs()) as i128;
        let num = (self.num / one).checked_mul(other.num / two)?;
        Self::new(num, (self.den / two).checked_mul(other.den / one)?)
    }

    /// The quotient; `None` also when dividing by zero.
    pub fn over(self, other: Self) -> Option<Self> {
        self.times(Self::new(other.den, other.num)?)
    }

    /// The same below zero, or above it.
    #[must_use]
    pub fn negated(self) -> Self {
        Self { num: -self.num, den: self.den }
    }

    /// Whether it is less than zero.
    pub fn is_negative(self) -> bool {
        self.num < 0
    }

    /// Whether it is less than a whole number.
    #[inline(never)]
    pub fn under(self, most: i64) -> bool {
        self < Self::whole(most)
    }

    /// Whether nothing is left below the line.
    pub fn is_whole(self) -> bool {
        self.den == 1
    }

    /// The largest whole number not above it.
    #[must_use]
    #[inline(never)]
    pub fn floor(self) -> Self {
        Self { num: self.num.div_euclid(self.den), den: 1 }
    }

    /// The smallest whole number not below it.
    #[must_use]
    pub fn ceil(self) -> Self {
        self.negated().floor().negated()
    }

    /// The nearest multiple of one part in so many (16 = sixteenths); halfway goes up.
    pub fn to_grid(self, parts: i64) -> Option<Self> {
        let half = Self::new(1, 2)?;
        Self::new(self.times(Self::whole(parts))?.plus(half)?.floor().num, parts.into())
    }

    /// The nearest double; halfway between two, the one with the even last bit.
    #[inline(never)]
    pub fn to_f64(self) -> f64 {
        const EXACT: u128 = 1 << 53;
        let (num, den) = (self.num.unsigned_abs(), self.den.unsigned_abs());
        let size =
            if num <= EXACT && den <= EXACT { num as f64 / den as f64 } else { long_division(num, den) };
        if self.num < 0 { -size } else { size }
    }
}

/// Quotient bit by bit until 55 significant bits stand, the last one set when anything is left over: then
/// the conversion's own rounding is that of the exact quotient.
fn long_division(num: u128, den: u128) -> f64 {
    let (mut quotient, mut rest) = (num / den, num % den);
    let mut scale = 1.0;
    while quotient >> 55 == 0 && rest != 0 {
        rest <<= 1;
        quotient <<= 1;
        scale *= 0.5;
        if rest >= den {
            rest -= den;
            quotient |= 1;
        }
    }
    (quotient | u128::from(rest != 0)) as f64 * scale
}

#[inline(never)]
fn gcd(a: u128, b: u128) -> u128 {
    let (mut a, mut b) = (a, b);
    while b > u128::from(u64::MAX) || a > u128::from(u64::MAX) {
        if b == 0 {
            return a.max(1);
        }
        (a, b) = (b, a % b);
    }
    let (mut a, mut b) = (a as u64, b as u64);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    u128::from(a.max(1))
}

impl PartialOrd for Ratio {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Ratio {
    #[inline(never)]
    fn cmp(&self, other: &Self) -> Ordering {
        if let (Some(one), Some(two)) = (self.num.checked_mul(other.den), other.num.checked_mul(self.den)) {
            return one.cmp(&two);
        }
        // Whole parts first, then what is left, upside down.
        let (mut a, mut b, mut c, mut d) = (self.num, self.den, other.num, other.den);
        loop {
            let order = a.div_euclid(b).cmp(&c.div_euclid(d));
            let (left, right) = (a.rem_euclid(b), c.rem_euclid(d));
            if order != Ordering::Equal || left == 0 || right == 0 {
                return order.then(left.cmp(&0).cmp(&right.cmp(&0)));
            }
            (a, b, c, d) = (d, right, b, left);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn ratio(num: i128, den: i128) -> Ratio {
        Ratio::new(num, den).unwrap()
    }

    #[test]
    fn stays_in_lowest_terms_with_the_sign_above() {
        assert_eq!(ratio(6, -8), ratio(-3, 4));
        assert_eq!(Ratio::new(1, 0), None);
        assert_eq!(Ratio::decimal(12, 5, 2), Some(ratio(241, 20)));
        assert_eq!(ratio(7, 2).floor(), Ratio::whole(3));
        assert_eq!(ratio(-7, 2).floor(), Ratio::whole(-4));
        assert_eq!(ratio(-7, 2).ceil(), Ratio::whole(-3));
        assert_eq!(ratio(1, 3).to_grid(16), Some(ratio(5, 16)));
        assert_eq!(ratio(1, 32).to_grid(16), Some(ratio(1, 16)));
    }

    #[test]
    fn overflow_is_none() {
        let huge = ratio(i128::MAX, 1);
        assert_eq!(huge.plus(Ratio::whole(1)), None);
        assert_eq!(huge.times(Ratio::whole(2)), None);
        assert_eq!(Ratio::new(i128::MIN, 1), None);
        assert_eq!(Ratio::whole(1).over(Ratio::ZERO), None);
        assert_eq!(ratio(1, i128::MAX).plus(ratio(1, i128::MAX - 1)), None);
    }

    #[test]
    fn doubles_are_the_nearest() {
        // Halfway between 2^53 and 2^53 + 2: to even. A hair above: up.
        let big = 1_i128 << 53;
        assert_eq!(ratio(big + 1, 1).to_f64(), big as f64);
        assert_eq!(ratio((big + 1) * big + 1, big).to_f64(), (big + 2) as f64);
        assert_eq!(ratio(1, 3).to_f64(), 1.0 / 3.0);
        assert_eq!(ratio(-i128::MAX, 1).to_f64(), -(2.0_f64 * (1_u128 << 126) as f64));
        assert_eq!(ratio(1, i128::MAX).to_f64(), 0.5 / (1_u128 << 126) as f64);
    }

    proptest! {
        #[test]
        fn decimals_become_the_double_that_the_standard_library_reads(
            whole in 0_u64..1_000_000_000, digits in 0_u64..1_000_000_000_000_000_000
        ) {
            let text = format!("{whole}.{digits:018}");
            let exact = Ratio::decimal(whole, digits, 18).unwrap();
            prop_assert_eq!(exact.to_f64(), text.parse::<f64>().unwrap());
        }

        #[test]
        fn arithmetic_and_order_agree_with_whole_numbers(
            a in -1000_i64..1000, b in 1_i64..1000, c in -1000_i64..1000, d in 1_i64..1000
        ) {
            let (one, two) = (ratio(a.into(), b.into()), ratio(c.into(), d.into()));
            prop_assert_eq!(one.plus(two), Ratio::new((a * d + c * b).into(), (b * d).into()));
            prop_assert_eq!(one.minus(two), Ratio::new((a * d - c * b).into(), (b * d).into()));
            prop_assert_eq!(one.times(two), Ratio::new((a * c).into(), (b * d).into()));
            prop_assert_eq!(one.over(two), Ratio::new((a * d).into(), (b * c).into()));
            prop_assert_eq!(one.cmp(&two), (a * d).cmp(&(c * b)));
            // The same order where cross-multiplying would overflow.
            let (far_one, far_two) = (one.plus(ratio(1, 1 << 100)), two.plus(ratio(1, 1 << 100)));
            prop_assert_eq!(far_one.cmp(&far_two), one.cmp(&two));
        }

        #[test]
        fn nothing_panics(a: i128, b: i128, c: i128, d: i128) {
            if let (Some(one), Some(two)) = (Ratio::new(a, b), Ratio::new(c, d)) {
                let _ = (one.plus(two), one.minus(two), one.times(two), one.over(two), one.cmp(&two), one.to_grid(16));
                prop_assert!(one.to_f64().is_finite());
                prop_assert_eq!(one.cmp(&two), two.cmp(&one).reverse());
            }
        }
    }
}
