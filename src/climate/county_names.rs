//! The names of the counties, and finding one by what a person types.
//!
//! Texts are bytes of Latin-1 here, one a letter: what searches and cuts `str` would be a tenth of a kilobyte of
//! table, and ten of core.

use super::packed::Packed;

/// The packed table of names.
pub(super) struct Names<'a> {
    /// The states, packed.
    states: &'a [u8],
    /// Every name once, one after the other, and where each ends.
    letters: Vec<u8>,
    ends: Vec<usize>,
    /// The name of each county, as an index.
    of: Vec<u32>,
    /// What is left: the ZIP codes in more than one zone.
    several: &'a [u8],
}

/// A state's number, letters and name.
fn state<'a>(packed: &mut Packed<'a>) -> Option<(u8, &'a [u8], &'a [u8])> {
    let number = packed.byte()?;
    let letters = packed.take(2);
    let length = packed.byte()?;
    Some((number, letters, packed.take(usize::from(length))))
}

impl<'a> Names<'a> {
    /// Reads the names of so many counties.
    pub(super) fn read(bytes: &'a [u8], counties: usize) -> Self {
        let mut packed = Packed(bytes);
        for _ in 0..packed.count() {
            if state(&mut packed).is_none() {
                break;
            }
        }
        let (mut letters, mut ends) = (Vec::new(), Vec::new());
        let count = packed.number().unwrap_or(0);
        let (mut start, mut left) = (0, count);
        // A byte under 32 ends a name and says how much of it the next one begins with.
        let mut shared = packed.byte().unwrap_or(0);
        while left > 0 {
            let before = start;
            start = letters.len();
            for at in before..before + usize::from(shared.saturating_sub(1)) {
                letters.extend(if at < start { letters.get(at).copied() } else { None });
            }
            shared = 0;
            while let Some(byte) = packed.byte() {
                if byte < 32 {
                    shared = byte;
                    break;
                }
                letters.push(byte);
            }
            ends.push(letters.len());
            if packed.0.is_empty() {
                break;
            }
            left -= 1;
        }
        let mut of = packed.numbers(counties);
        let mut at = 0_u32;
        for step in &mut of {
            at = at.saturating_add(*step);
            if at >= count {
                at -= count;
            }
            *step = at;
        }
        Names { states: bytes, letters, ends, of, several: packed.0 }
    }

    fn name(&self, index: usize) -> &[u8] {
        let start = match index {
            0 => 0,
            _ => self.ends.get(index - 1).copied().unwrap_or(usize::MAX),
        };
        let end = self.ends.get(index).copied().unwrap_or(0);
        self.letters.get(start..end).unwrap_or_default()
    }

    /// A county's name with its state's letters.
    pub(super) fn shown(&self, at: usize, code: u32) -> String {
        let mut shown = String::new();
        let Some(index) = self.of.get(at) else { return shown };
        let mut put = |letters: &[u8]| {
            for letter in letters {
                shown.push(char::from(*letter));
            }
        };
        put(self.name(*index as usize));
        let mut packed = Packed(self.states);
        for _ in 0..packed.count() {
            let Some((number, letters, _)) = state(&mut packed) else { break };
            if u32::from(number) == code / 1000 {
                put(b", ");
                put(letters);
            }
        }
        shown
    }

    /// The counties of a ZIP code that lies in more than one zone.
    pub(super) fn of_zip(&self, zip: u32) -> Vec<usize> {
        let mut packed = Packed(self.several);
        let (mut code, mut first) = (0_u32, 0_u32);
        for _ in 0..packed.count() {
            code = code.saturating_add(packed.number().unwrap_or(u32::MAX));
            let mut counties = Vec::new();
            let mut at = first;
            for _ in 0..packed.count() {
                let Some(step) = packed.number() else { break };
                at = at.wrapping_add(step >> 1 ^ (step & 1).wrapping_neg());
                if counties.is_empty() {
                    first = at;
                }
                counties.push(at as usize);
            }
            if code >= zip {
                return if code == zip { counties } else { Vec::new() };
            }
        }
        Vec::new()
    }

    /// The counties that a text means: those of just this name; else those that begin with it; else those that
    /// hold it. A state, in two letters or whole, may follow; after a comma its beginning is enough.
    pub(super) fn search(&self, codes: &[u32], typed: &[u8]) -> Vec<usize> {
        if let Some(at) = typed.iter().rposition(|byte| *byte == b',') {
            let (name, state) = typed.split_at(at);
            return self.those(codes, name, &folded(state), HELD, true);
        }
        let mut found = self.those(codes, typed, b"", SAME, true);
        let mut at = typed.len();
        while found.is_empty() && at > 0 {
            at -= 1;
            let (name, state) = typed.split_at(at);
            if state.first() == Some(&b' ') {
                found = self.those(codes, name, &folded(state), HELD, false);
            }
        }
        if found.is_empty() { self.those(codes, typed, b"", HELD, true) } else { found }
    }

    /// The counties whose name is at least so near to a text, the nearest alone, in the states that a folded text
    /// names; `begun`: its beginning is enough.
    fn those(&self, codes: &[u32], name: &[u8], wanted: &[u8], reach: u8, begun: bool) -> Vec<usize> {
        let mut meant = [false; 128];
        let mut packed = Packed(self.states);
        for _ in 0..packed.count() {
            let Some((number, letters, name)) = state(&mut packed) else { break };
            for one in [folded(letters), folded(name)] {
                let named = one == wanted || (begun && one.starts_with(wanted));
                if let Some(meant) = meant.get_mut(usize::from(number)) {
                    *meant |= named;
                }
            }
        }
        let name = folded(name);
        let mut typed = name.as_slice();
        for kind in ["county", "parish", "borough", "censusarea", "municipality", "municipio"] {
            typed = typed.strip_suffix(kind.as_bytes()).unwrap_or(typed);
        }
        let mut found = Vec::new();
        if typed.is_empty() || !meant.contains(&true) {
            return found;
        }
        let mut reaches = Vec::new();
        for index in 0..self.ends.len() {
            reaches.push(reached(&folded(self.name(index)), typed));
        }
        let mut best = reach;
        for (at, code) in codes.iter().enumerate() {
            let Some(reach) = self.of.get(at).and_then(|index| reaches.get(*index as usize)) else { break };
            if *reach > best || meant.get((code / 1000) as usize) != Some(&true) {
                continue;
            }
            if *reach < best {
                best = *reach;
                found.clear();
            }
            found.push(at);
        }
        found
    }
}

/// How near a name comes to what was typed: it is the same (an independent city also without the word),
const SAME: u8 = 0;
/// it begins so,
const BEGUN: u8 = 1;
/// it holds it somewhere,
const HELD: u8 = 2;
/// or none of these.
const APART: u8 = 3;

/// How near a folded name comes to a folded text; a short text is in too many names to say anything.
fn reached(name: &[u8], typed: &[u8]) -> u8 {
    if name == typed || name.strip_suffix(b"city") == Some(typed) {
        SAME
    } else if typed.len() >= 2 && name.starts_with(typed) {
        BEGUN
    } else if typed.len() >= 3 && name.windows(typed.len()).any(|part| part == typed) {
        HELD
    } else {
        APART
    }
}

/// Letters alone, small and without accents; "Saint" as the table writes it.
fn folded(text: &[u8]) -> Vec<u8> {
    let mut letters = Vec::new();
    for letter in text {
        letters.push(match letter | 0x20 {
            plain @ b'a'..=b'z' => plain,
            0xe0..=0xe5 => b'a',
            0xe8..=0xeb => b'e',
            0xec..=0xef => b'i',
            0xf1 => b'n',
            0xf2..=0xf6 => b'o',
            0xf9..=0xfc => b'u',
            _ => continue,
        });
        if letters == b"saint" {
            letters.truncate(1);
            letters.push(b't');
        }
    }
    letters
}
