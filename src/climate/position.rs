//! ZIP code → about where it lies, for the sun.
//!
//! The packed table is made by `tests/oracles/zones.py`, which says how it is laid out.

use super::packed::Packed;
use super::places::zip;

/// Latitude and longitude, in degrees north and east; none where no ZIP code of the table begins with the same three
/// digits. Within 1.1° of the ZIP area, for nine of ten within 0.7°: three minutes of sunrise.
pub fn position(places: &[u8], text: &str) -> Option<(f64, f64)> {
    let wanted = zip(text.trim().as_bytes())?;
    let mut packed = Packed(places);
    let count = packed.count();
    let [starts, norths, easts] = [(); 3].map(|()| packed.numbers(count));
    let (mut start, mut fifths) = (0_u32, [0_i32; 2]);
    for ((gap, north), east) in starts.iter().zip(&norths).zip(&easts) {
        let next = start.saturating_add(*gap);
        if next > wanted {
            break;
        }
        start = next;
        for (place, step) in fifths.iter_mut().zip([*north, *east]) {
            *place = place.wrapping_add((step >> 1).cast_signed() ^ -(step & 1).cast_signed());
        }
    }
    let [north, east] = fifths.map(|fifths| f64::from(fifths) / 5.0);
    let known = start > 0 && start / 100 == wanted / 100;
    (known && north.abs() <= 90.0 && east.abs() <= 180.0).then_some((north, east))
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
