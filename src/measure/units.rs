//! Units: what each measures, and its exact size in the unit in which its kind is held.

use super::parse::Parse;
use super::{Fault, Kind, Ratio, Unit};

/// What a unit measures. A temperature's degrees also serve a [`Kind::TemperatureStep`], a length's units
/// also a [`Kind::Member`].
pub(super) fn kind_of(unit: Unit) -> Kind {
    match unit {
        Unit::Ft | Unit::In | Unit::M | Unit::Cm | Unit::Mm => Kind::Length,
        Unit::In12 | Unit::Deg => Kind::Pitch,
        Unit::Ft2 | Unit::In2 | Unit::M2 => Kind::Area,
        Unit::F | Unit::C => Kind::Temperature,
        Unit::Lb | Unit::Oz | Unit::Kg | Unit::G => Kind::Weight,
        Unit::LbFt3 | Unit::KgM3 => Kind::Density,
        Unit::Each => Kind::Count,
        Unit::Pct => Kind::Percent,
        Unit::R | Unit::Rsi => Kind::Resistance,
        Unit::Perm | Unit::Metricperm => Kind::Permeance,
        Unit::BdFt | Unit::Ft3 | Unit::L | Unit::M3 => Kind::FoamVolume,
        Unit::Sec | Unit::Min | Unit::Hr | Unit::Day => Kind::Duration,
        Unit::Mph | Unit::Kmh | Unit::Mps => Kind::Speed,
        Unit::Usd => Kind::Money,
        Unit::Date => Kind::Date,
        Unit::Clock => Kind::Clock,
        Unit::Arc => Kind::Coordinate,
        Unit::Cfm | Unit::Lps | Unit::M3h => Kind::Airflow,
        Unit::Btuh | Unit::Kw | Unit::W => Kind::Power,
        Unit::One => Kind::Number,
    }
}

/// Whether a value of this kind may be written in this unit.
pub(super) fn fits(kind: Kind, unit: Unit) -> bool {
    let own = kind_of(unit);
    own == kind
        || (matches!(kind, Kind::Member | Kind::Probes) && own == Kind::Length)
        || (kind == Kind::Member && own == Kind::Length)
        || (kind == Kind::Pitch && unit == Unit::Pct)
        || (kind == Kind::TemperatureStep && own == Kind::Temperature)
}

/// The size of one unit in the unit in which its kind is held, above over below the line.
///
/// All follow from exact definitions: the inch (25.4 mm), the pound (0.453 592 37 kg), the Btu(IT)
/// (1 055.055 852 62 J), the grain (64.798 91 mg) and the conventional inch of mercury
/// (25.4 mm × 13 595.1 kg/m³ × 9.806 65 m/s²). NIST SP 811, appendix B, prints the same factors rounded; the
/// tests beside this file compare.
fn size(unit: Unit) -> (i128, i128) {
    match unit {
        Unit::Ft => (12, 1),
        Unit::In12 => (1, 12),
        Unit::M => (5_000, 127),
        Unit::Cm => (50, 127),
        Unit::Mm => (5, 127),
        Unit::In2 => (1, 144),
        Unit::M2 => (100_000_000, 9_290_304),
        Unit::C => (9, 5),
        Unit::Oz => (1, 16),
        Unit::Kg => (100_000_000, 45_359_237),
        Unit::G => (100_000, 45_359_237),
        Unit::KgM3 => (28_316_846_592, 453_592_370_000),
        // 1 m²·K/W = 1055.05585262 J/Btu ÷ (5/9 K/°F × 0.09290304 m²/ft² × 3600 s/h).
        Unit::Rsi => (105_505_585_262, 18_580_608_000),
        // 3600 s/h × 0.09290304 m²/ft² × 0.0254 m × 13595.1 kg/m³ × 9.80665 m/s² ÷ 64 798 910 ng/grain.
        Unit::Metricperm => {
            (3_600 * 9_290_304 * 254 * 135_951 * 980_665, 100_000_000 * 10_000 * 10 * 100_000 * 64_798_910)
        }
        Unit::Ft3 => (12, 1),
        Unit::L => (1_000_000_000, 2_359_737_216),
        Unit::M3 => (1_000_000_000_000, 2_359_737_216),
        Unit::Sec => (1, 60),
        Unit::Hr => (60, 1),
        Unit::Day => (1_440, 1),
        // The mile is 1 609.344 m.
        Unit::Kmh => (1_000_000, 1_609_344),
        Unit::Mps => (3_600_000, 1_609_344),
        // A foot is 0.3048 m; its cube 28.316 846 592 L.
        Unit::Lps => (60 * 1_000_000_000, 28_316_846_592),
        Unit::M3h => (1_000_000_000_000, 60 * 28_316_846_592),
        // 3 600 000 J in a kilowatt hour.
        Unit::Kw => (360_000_000_000_000, 105_505_585_262),
        Unit::W => (360_000_000_000, 105_505_585_262),
        Unit::Usd => (100, 1),
        _ => (1, 1),
    }
}

/// So many of a unit, in the unit in which the kind is held; a temperature with its zero moved.
pub(super) fn held(kind: Kind, value: Ratio, unit: Unit) -> Parse<Ratio> {
    match (kind, unit) {
        (Kind::Pitch, Unit::Pct) => return times(value, Ratio::one_of(100)),
        (Kind::Pitch, Unit::Deg) => return tangent(value),
        _ => {}
    }
    let value = step(value, unit)?;
    if kind == Kind::Temperature && unit == Unit::C { plus(value, Ratio::whole(32)) } else { Ok(value) }
}

/// More than enough for every figure of a double.
const TANGENT_ROUNDS: u32 = 6;

/// The rise per run of an angle in degrees, to the billionth; nobody roofs within a degree of upright.
fn tangent(degrees: Ratio) -> Parse<Ratio> {
    let degrees = degrees.to_f64();
    if degrees >= 89.0 {
        return Err(Fault::TooLarge);
    }
    let steep = degrees > 45.0;
    let angle = if steep { 90.0 - degrees } else { degrees }.to_radians();
    // Newton's rule on the arc tangent, which the other direction needs anyway: up to 45° each round doubles
    // the figures that are right. A tangent by itself is many times the code.
    let mut rise = angle;
    for _ in 0..TANGENT_ROUNDS {
        rise -= (libm::atan(rise) - angle) * (1.0 + rise * rise);
    }
    let billionths = libm::round(if steep { 1.0 / rise } else { rise } * 1e9);
    Ratio::new(billionths as i128, 1_000_000_000).ok_or(Fault::TooLarge)
}

/// So many of a unit as a difference.
#[inline(never)]
pub(super) fn step(value: Ratio, unit: Unit) -> Parse<Ratio> {
    match size(unit) {
        (1, 1) => Ok(value),
        (above, below) => Ratio::new(above, below).and_then(|size| value.times(size)).ok_or(Fault::TooLarge),
    }
}

/// The sum; what no longer fits is too large.
#[inline(never)]
pub(super) fn plus(one: Ratio, two: Ratio) -> Parse<Ratio> {
    one.plus(two).ok_or(Fault::TooLarge)
}

/// The product.
#[inline(never)]
pub(super) fn times(one: Ratio, two: Ratio) -> Parse<Ratio> {
    one.times(two).ok_or(Fault::TooLarge)
}

/// A value in the unit in which its kind is held, turned into another unit of that kind.
///
/// Degrees Celsius are those of a temperature, not of a difference. Exact to the last bits of a double.
///
/// ```
/// use foamwright::measure::{Unit, in_unit};
/// assert_eq!(in_unit(150.5, Unit::Mm), 3822.7);
/// assert_eq!(in_unit(50.0, Unit::C), 10.0);
/// ```
pub fn in_unit(value: f64, unit: Unit) -> f64 {
    if unit == Unit::Deg {
        return libm::atan(value).to_degrees();
    }
    let (above, below) = size(unit);
    let value = if unit == Unit::C { value - 32.0 } else { value };
    value * below as f64 / above as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the tangent of the library `libm`, at every hundredth of a degree.
    #[test]
    fn tangents_are_those_of_libm() {
        for hundredths in 0..8900 {
            let degrees = Ratio::new(hundredths, 100).unwrap();
            let ours = tangent(degrees).unwrap().to_f64();
            let theirs = libm::tan(degrees.to_f64().to_radians());
            assert!((ours - theirs).abs() <= 0.6e-9, "{hundredths}: {ours} against {theirs}");
        }
        assert!(tangent(Ratio::whole(89)).is_err());
    }

    /// NIST SP 811 (2008), appendix B.8, as printed to seven figures: how much of the SI unit one US unit is.
    #[test]
    fn factors_are_those_of_nist_sp_811() {
        for (what, unit, held_in_it, printed) in [
            ("inch to meter", Unit::M, 1.0, 2.54e-2),
            ("foot to meter", Unit::M, 12.0, 3.048e-1),
            ("square foot to square meter", Unit::M2, 1.0, 9.290_304e-2),
            ("board foot to cubic meter", Unit::M3, 1.0, 2.359_737e-3),
            ("cubic foot to cubic meter", Unit::M3, 12.0, 2.831_685e-2),
            ("pound to kilogram", Unit::Kg, 1.0, 4.535_924e-1),
            ("ounce to gram", Unit::G, 1.0 / 16.0, 2.834_952e1),
            ("pound per cubic foot to kilogram per cubic meter", Unit::KgM3, 1.0, 1.601_846e1),
            ("R to m2 K/W", Unit::Rsi, 1.0, 1.761_102e-1),
            ("perm (0 C) to ng/(s m2 Pa)", Unit::Metricperm, 1.0, 5.721_35e1),
            ("hour to second", Unit::Sec, 60.0, 3.6e3),
            ("mile per hour to kilometer per hour", Unit::Kmh, 1.0, 1.609_344),
            ("mile per hour to meter per second", Unit::Mps, 1.0, 4.4704e-1),
            ("cubic foot per minute to liter per second", Unit::Lps, 1.0, 4.719_474e-1),
            ("the same to cubic meter per hour", Unit::M3h, 1.0, 4.719_474e-4 * 3.6e3),
            ("Btu(IT) per hour to watt", Unit::W, 1.0, 2.930_711e-1),
            ("the same to kilowatt", Unit::Kw, 1e3, 2.930_711e-1),
        ] {
            let ours = in_unit(held_in_it, unit);
            assert!((ours / printed - 1.0).abs() < 9e-7, "{what}: {ours} against {printed}");
            let there = step(Ratio::whole(1), unit).unwrap().to_f64();
            assert!((there * in_unit(1.0, unit) - 1.0).abs() < 1e-15, "{what}: both ways");
        }
        assert_eq!(in_unit(212.0, Unit::C), 100.0);
        // The exact board foot: 144 × 16.387 064 cm³.
        assert!((in_unit(1.0, Unit::M3) / 2.359_737_216e-3 - 1.0).abs() < 1e-15);
        assert!((in_unit(1.0, Unit::Rsi) / 0.176_110_184 - 1.0).abs() < 2e-9);
    }
}
