//! The climate zones of the United States.

use serde::{Serialize, Serializer};

/// A climate zone with the letter of its moisture region: an index into [`Zone::NAMES`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[cfg_attr(target_arch = "wasm32", tsify(type = "string"))]
pub struct Zone(u8);

impl Zone {
    /// Every zone, warmest first, as written in the table of fields.
    pub const NAMES: [&'static str; 16] =
        ["1a", "2a", "2b", "3a", "3b", "3c", "4a", "4b", "4c", "5a", "5b", "5c", "6a", "6b", "7", "8"];

    /// Every zone, warmest first.
    pub fn all() -> impl Iterator<Item = Zone> {
        (0..16).map(Zone)
    }

    /// The zone at an index of [`Zone::NAMES`].
    pub fn at(index: u8) -> Option<Self> {
        (index < 16).then_some(Zone(index))
    }

    /// The zone of a word of the table of fields.
    pub fn named(word: &str) -> Option<Self> {
        let at = Self::NAMES.iter().position(|one| *one == word)?;
        u8::try_from(at).ok().map(Zone)
    }

    /// As written in the table of fields.
    pub fn name(self) -> &'static str {
        Self::NAMES.get(usize::from(self.0)).copied().unwrap_or_default()
    }

    /// Its number, 1 to 8.
    pub fn number(self) -> u8 {
        self.name().bytes().next().unwrap_or(b'0') - b'0'
    }

    /// The letter of its moisture region: `a` moist, `b` dry, `c` marine; zones 7 and 8 have none.
    pub fn letter(self) -> Option<char> {
        self.name().chars().nth(1)
    }

    /// Whether it is marine zone 4, which the tables put with zone 5.
    pub fn is_marine_4(self) -> bool {
        self.name() == "4c"
    }
}

impl Serialize for Zone {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}
