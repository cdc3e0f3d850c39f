//! ZIP code → about where it lies, for the sun: the mean place of those that begin with the same three digits.
//!
//! The packed table is made by `tests/oracles/zones.py`, which says how it is laid out.

use super::packed::Packed;
use super::places::zip;

/// Latitude and longitude, in degrees north and east, to a tenth; none where no ZIP code of the table begins so. In
/// the West and in Alaska three digits may span some degrees.
pub fn position(places: &[u8], text: &str) -> Option<(f64, f64)> {
    let wanted = zip(text.trim().as_bytes())? / 100;
    let mut packed = Packed(places);
    let (mut digits, mut place) = (0_u32, [0_i32; 2]);
    for _ in 0..packed.count() {
        digits = digits.saturating_add(packed.number()?);
        for tenths in &mut place {
            let step = packed.number()?;
            let step = i32::try_from(step >> 1).ok()? ^ -i32::try_from(step & 1).ok()?;
            *tenths = tenths.wrapping_add(step);
        }
        if digits >= wanted {
            break;
        }
    }
    let [north, east] = place.map(|tenths| f64::from(tenths) / 10.0);
    (digits == wanted && north.abs() <= 90.0 && east.abs() <= 180.0).then_some((north, east))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Bytes from anywhere: nothing panics, and what is handed out is a place on the earth.
        #[test]
        fn a_damaged_table_is_read_to_its_end(
            bytes in prop::collection::vec(any::<u8>(), 0..60),
            text in "\\PC{0,12}|[0-9]{5}|00[0-9]{3}",
        ) {
            if let Some((north, east)) = position(&bytes, &text) {
                prop_assert!(north.abs() <= 90.0 && east.abs() <= 180.0);
            }
        }
    }
}
