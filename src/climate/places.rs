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
    let text = text.trim();
    let mut packed = Packed(zones);
    let map = Map::read(&mut packed);
    let names = Names::read(counties, map.codes.len());
    if let Some(code) = text.strip_prefix('#') {
        let at = whole(code).and_then(|code| map.codes.iter().position(|one| *one == code));
        return map.found(&names, &at.map_or_else(Vec::new, |at| vec![at]), 0);
    }
    match zip(text) {
        Some(zip) => {
            let set = zones_of(&mut packed, zip);
            let of = if set.count_ones() > 1 { names.of_zip(zip) } else { Vec::new() };
            map.found(&names, &of, set)
        }
        None => map.found(&names, &names.search(&map.codes, text), 0),
    }
}

/// Five digits, and perhaps the four that name a street, or those of them that are there yet.
fn zip(text: &str) -> Option<u32> {
    let (five, rest) = text.split_at_checked(5)?;
    let four = rest.trim_start_matches(['-', ' ', '–']);
    let fits = if four.len() == rest.len() { matches!(four.len(), 0 | 4) } else { four.len() <= 4 };
    if fits && four.bytes().all(|byte| byte.is_ascii_digit()) { whole(five) } else { None }
}

/// A code of five digits.
fn whole(text: &str) -> Option<u32> {
    let mut code = 0;
    for byte in text.bytes() {
        if !byte.is_ascii_digit() {
            return None;
        }
        code = code * 10 + u32::from(byte - b'0');
    }
    (text.len() == 5).then_some(code)
}

/// The counties and their zones, in the order of their codes.
struct Map {
    codes: Vec<u32>,
    zones: Vec<u8>,
}

impl Map {
    fn read(packed: &mut Packed) -> Self {
        let count = packed.count();
        let codes = packed.running(count);
        Map { codes, zones: packed.take(count).to_vec() }
    }

    fn zone(&self, at: usize) -> Option<Zone> {
        self.zones.get(at).copied().and_then(Zone::at)
    }

    /// What is handed out: these counties, and their zones with those of a set.
    fn found(&self, names: &Names, counties: &[usize], set: u16) -> Found {
        let mut set = set;
        let mut found = Found::default();
        for &at in counties {
            let Some(&county) = self.codes.get(at) else { continue };
            set |= self.zones.get(at).map_or(0, |zone| 1_u16.checked_shl(u32::from(*zone)).unwrap_or(0));
            if found.counties.len() < MOST {
                found.counties.push(FoundCounty {
                    county,
                    name: names.shown(at, county),
                    zone: self.zone(at),
                });
            }
        }
        found.zones =
            Zone::all().enumerate().filter(|(bit, _)| set >> bit & 1 == 1).map(|(_, zone)| zone).collect();
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
        let index = packed.number().unwrap_or(u32::MAX);
        let first = next.saturating_add(*gap);
        if zip < first {
            break;
        }
        if zip - first <= *length {
            let at = usize::try_from(index).unwrap_or(usize::MAX).saturating_mul(2);
            return match sets.get(at..).unwrap_or_default() {
                [low, high, ..] => u16::from_le_bytes([*low, *high]),
                _ => 0,
            };
        }
        next = first.saturating_add(*length).saturating_add(1);
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
        for text in ["81230", "81230-1234", "81230 1234", "81230-", "812301234", "81230–1234"] {
            assert_eq!(zip(text), Some(81_230), "{text}");
        }
        for text in ["", "8123", "81230-12345", "812300", "8123O", "Gunnison", "é123", "12é45", "81230 x"] {
            assert_eq!(zip(text), None, "{text}");
        }
        assert_eq!((whole("00501"), whole("501"), whole("00501 ")), (Some(501), None, None));
    }
}
