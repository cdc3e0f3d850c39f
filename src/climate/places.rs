//! ZIP code or county → climate zone, by the map that held up to 2018.
//!
//! The two packed tables are made by `tests/oracles/zones.py`, which says how they are laid out. They come from
//! a network: whatever their bytes are, reading ends where they end, and what is wrong in them is not found.

use super::Zone;
use super::county_names::Names;
use super::packed::Packed;
use serde::Serialize;

/// A county that a ZIP code lies in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct FoundCounty {
    /// Its federal code of five digits.
    pub county: u32,
    /// Its name and its state's two letters; empty while the names have not been fetched.
    pub name: String,
    /// Its zone; `None` where the table has none for it.
    pub zone: Option<Zone>,
}

/// What a ZIP code or a part of a county's name leads to.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Found {
    /// The zones that it may lie in: one is the answer, several ask for the county, none is not known.
    pub zones: Vec<Zone>,
    /// The counties to choose from.
    pub counties: Vec<FoundCounty>,
}

/// Most counties handed out; the state with the commonest name of all, and then some.
const MOST: usize = 60;

/// Looks a place up in the packed tables: a ZIP code (`81230`, `81230-1234`), a county's code (`#08051`), or a
/// county's name or a part of it, with or without its state (`Gunnison`, `st louis mn`, `Doña Ana, New Mexico`).
///
/// A ZIP code in more than one zone has its counties beside its zones. `counties` may be empty: then no county
/// is named, and none is found by its name.
pub fn find(zones: &[u8], counties: &[u8], text: &str) -> Found {
    let mut letters = Vec::new();
    for letter in text.chars() {
        // What has no place in the table's alphabet (an accent as a letter of its own, a long dash) is passed over.
        letters.extend(u8::try_from(u32::from(letter)).ok());
    }
    let typed = letters.trim_ascii();
    let mut packed = Packed(zones);
    let map = Map::read(&mut packed);
    let names = Names::read(counties, map.codes.len());
    let mut set = 0;
    let mut of = Vec::new();
    match typed.split_first() {
        Some((b'#', code)) => {
            let code = whole(code);
            of.extend(map.codes.iter().position(|one| Some(*one) == code));
        }
        Some((b'0'..=b'9', _)) => {
            if let Some(zip) = zip(typed) {
                set = zones_of(&mut packed, zip);
                if set.count_ones() > 1 {
                    of = names.of_zip(zip);
                }
            }
        }
        _ => of = names.search(&map.codes, typed),
    }
    map.found(&names, &of, set)
}

/// Five digits, and perhaps the four that name a street, or those of them that are there yet.
pub(super) fn zip(text: &[u8]) -> Option<u32> {
    let (five, rest) = text.split_at_checked(5)?;
    let (dash, four) = match rest {
        [b'-' | b' ', four @ ..] => (true, four),
        four => (false, four),
    };
    let fits = four.len() <= 4 && (dash || matches!(four.len(), 0 | 4));
    if fits && four.iter().all(u8::is_ascii_digit) { whole(five) } else { None }
}

/// A code of five digits.
fn whole(text: &[u8]) -> Option<u32> {
    let mut code = 0;
    for byte in text {
        if !byte.is_ascii_digit() || code > 9_999 {
            return None;
        }
        code = code * 10 + u32::from(byte - b'0');
    }
    (text.len() == 5).then_some(code)
}

/// The counties and their zones, in the order of their codes.
struct Map<'a> {
    codes: Vec<u32>,
    zones: &'a [u8],
}

impl<'a> Map<'a> {
    fn read(packed: &mut Packed<'a>) -> Self {
        let count = packed.count();
        let mut codes = packed.numbers(count);
        let mut before = 0_u32;
        for code in &mut codes {
            before = before.saturating_add(*code);
            *code = before;
        }
        Map { codes, zones: packed.take(count) }
    }

    /// What is handed out: these counties, and their zones with those of a set.
    fn found(&self, names: &Names, counties: &[usize], set: u16) -> Found {
        let mut set = set;
        let mut found = Found::default();
        for &at in counties {
            let (Some(&county), Some(&zone)) = (self.codes.get(at), self.zones.get(at)) else { continue };
            set |= 1_u16.checked_shl(u32::from(zone)).unwrap_or(0);
            if found.counties.len() < MOST {
                let name = names.shown(at, county);
                found.counties.push(FoundCounty { county, name, zone: Zone::at(zone) });
            }
        }
        for zone in Zone::all() {
            if set & 1 == 1 {
                found.zones.push(zone);
            }
            set >>= 1;
        }
        found
    }
}

/// The set of zones of a ZIP code, a bit each; the counties have been read.
fn zones_of(packed: &mut Packed, zip: u32) -> u16 {
    let sets = packed.count();
    let sets = packed.take(sets.saturating_mul(2));
    let count = packed.count();
    let (gaps, lengths) = (packed.numbers(count), packed.numbers(count));
    let mut next = 0_u32;
    for (gap, length) in gaps.iter().zip(&lengths) {
        let at = packed.count().saturating_mul(2);
        let first = next.saturating_add(*gap);
        next = first.saturating_add(*length).saturating_add(1);
        if zip < next {
            return match sets.get(at..) {
                Some([low, high, ..]) if zip >= first => u16::from_le_bytes([*low, *high]),
                _ => 0,
            };
        }
    }
    0
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Bytes from anywhere: nothing panics, and what is handed out stays bounded.
        #[test]
        fn damaged_tables_are_read_to_their_end(
            zones in prop::collection::vec(any::<u8>(), 0..400),
            counties in prop::collection::vec(any::<u8>(), 0..400),
            text in "\\PC{0,12}|[0-9]{5}|#[0-9]{5}|[a-z]{1,4}(, ?| )[a-z]{0,3}",
        ) {
            let found = find(&zones, &counties, &text);
            prop_assert!(found.counties.len() <= MOST && found.zones.len() <= 16);
        }
    }

    #[test]
    fn a_zip_code_is_five_digits_and_may_have_four_more() {
        for text in ["81230", "81230-1234", "81230 1234", "81230-", "81230-12", "812301234"] {
            assert_eq!(zip(text.as_bytes()), Some(81_230), "{text}");
        }
        for text in ["", "8123", "81230-12345", "812300", "8123O", "Gunnison", "é123", "12é45", "81230 x"] {
            assert_eq!(zip(text.as_bytes()), None, "{text}");
        }
        assert_eq!((whole(b"00501"), whole(b"501"), whole(b"00501 ")), (Some(501), None, None));
    }
}
