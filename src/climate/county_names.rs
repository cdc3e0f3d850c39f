//! The names of the counties, and finding one by what a person types.

use super::packed::Packed;

/// The packed table of names.
#[derive(Default)]
pub(super) struct Names<'a> {
    states: Vec<State<'a>>,
    /// Every name once.
    names: Vec<String>,
    /// The name of each county, as an index.
    of: Vec<usize>,
    /// What is left: the ZIP codes in more than one zone.
    several: &'a [u8],
}

struct State<'a> {
    number: u32,
    letters: &'a str,
    name: &'a str,
}

impl<'a> Names<'a> {
    /// Reads the names of so many counties.
    pub(super) fn read(bytes: &'a [u8], counties: usize) -> Self {
        let mut packed = Packed(bytes);
        let mut names = Names::default();
        for _ in 0..packed.count() {
            let Some(number) = packed.byte() else { break };
            let letters = text(packed.take(2));
            let length = usize::from(packed.byte().unwrap_or(0));
            names.states.push(State { number: u32::from(number), letters, name: text(packed.take(length)) });
        }
        let count = packed.count();
        let mut name: Vec<u8> = Vec::new();
        let mut shared = packed.byte().unwrap_or(0);
        while names.names.len() < count {
            name.truncate(usize::from(shared.saturating_sub(1)));
            let end = packed.0.iter().position(|byte| *byte < 32);
            let Some(end) = end else { break };
            name.extend_from_slice(packed.take(end));
            names.names.push(text(&name).to_owned());
            shared = packed.byte().unwrap_or(0);
        }
        let mut at = 0;
        for step in packed.numbers(counties) {
            at += usize::try_from(step).unwrap_or(0);
            if at >= count {
                at -= count.min(at);
            }
            names.of.push(at);
        }
        names.several = packed.0;
        names
    }

    /// A county's name with its state's letters.
    pub(super) fn shown(&self, at: usize, code: u32) -> String {
        let mut shown = self.name(at).to_owned();
        if let Some(state) = self.states.iter().find(|state| state.number == code / 1000)
            && !shown.is_empty()
        {
            shown.push_str(", ");
            shown.push_str(state.letters);
        }
        shown
    }

    fn name(&self, at: usize) -> &str {
        self.of.get(at).and_then(|name| self.names.get(*name)).map_or("", String::as_str)
    }

    /// The counties of a ZIP code that lies in more than one zone.
    pub(super) fn of_zip(&self, zip: u32) -> Vec<usize> {
        let mut packed = Packed(self.several);
        let (mut code, mut first) = (0_u32, 0_i64);
        for _ in 0..packed.count() {
            let Some(step) = packed.number() else { break };
            code = code.saturating_add(step);
            let mut at = first;
            let mut counties = Vec::new();
            for (nth, step) in packed.counted().into_iter().enumerate() {
                at += i64::from(step >> 1) ^ -i64::from(step & 1);
                if nth == 0 {
                    first = at;
                }
                counties.extend(usize::try_from(at).ok());
            }
            if code == zip {
                return counties;
            }
        }
        Vec::new()
    }

    /// The counties that a text means: those of just this name; else those that begin with it; else those that
    /// hold it. A state, in two letters or whole, may follow; after a comma its beginning is enough.
    pub(super) fn search(&self, codes: &[u32], typed: &str) -> Vec<usize> {
        if let Some((name, state)) = typed.rsplit_once(',') {
            return self.those(codes, name, &folded(state), Reach::Held, true);
        }
        let found = self.those(codes, typed, "", Reach::Whole, true);
        if !found.is_empty() {
            return found;
        }
        for (at, _) in typed.rmatch_indices(' ').take(3) {
            let (name, state) = typed.split_at(at);
            let state = folded(state);
            let found = if state.len() < 2 {
                Vec::new()
            } else {
                self.those(codes, name, &state, Reach::Held, false)
            };
            if !found.is_empty() {
                return found;
            }
        }
        self.those(codes, typed, "", Reach::Held, true)
    }

    /// The counties of a name in the states that a folded text names; `begun`: its beginning is enough.
    fn those(&self, codes: &[u32], name: &str, state: &str, reach: Reach, begun: bool) -> Vec<usize> {
        let name = folded(name);
        let mut typed = name.as_str();
        for kind in ["county", "parish", "borough", "censusarea", "municipality", "municipio"] {
            typed = typed.strip_suffix(kind).unwrap_or(typed);
        }
        let fits = |one: &str| one == state || (begun && one.starts_with(state));
        let mut best = reach;
        let mut found = Vec::new();
        if typed.is_empty() {
            return found;
        }
        let meant: Vec<u32> = self
            .states
            .iter()
            .filter(|one| fits(&folded(one.letters)) || fits(&folded(one.name)))
            .map(|one| one.number)
            .collect();
        let reached: Vec<Option<Reach>> =
            self.names.iter().map(|name| reached(&folded(name), typed)).collect();
        for (at, code) in codes.iter().enumerate() {
            let Some(name) = self.of.get(at) else { break };
            let Some(reach) = reached.get(*name).copied().flatten() else { continue };
            if reach > best || !meant.contains(&(code / 1000)) {
                continue;
            }
            if reach < best {
                best = reach;
                found.clear();
            }
            found.push(at);
        }
        found
    }
}

/// How near a name comes to what was typed, nearest first.
#[derive(Clone, Copy, PartialEq, PartialOrd)]
enum Reach {
    /// It is the same; an independent city is the same without the word.
    Whole,
    /// It begins so.
    Begun,
    /// It holds it somewhere.
    Held,
}

/// How near a folded name comes to a folded text; a short text is in too many names to say anything.
fn reached(name: &str, typed: &str) -> Option<Reach> {
    if name == typed || name.strip_suffix("city") == Some(typed) {
        return Some(Reach::Whole);
    }
    if typed.len() >= 2 && name.starts_with(typed) {
        return Some(Reach::Begun);
    }
    (typed.len() >= 3 && name.contains(typed)).then_some(Reach::Held)
}

/// Letters alone, small and without accents; "Saint" as the tables write it.
fn folded(text: &str) -> String {
    let mut letters = String::new();
    for letter in text.chars() {
        letters.push(match letter {
            'a'..='z' => letter,
            'A'..='Z' => letter.to_ascii_lowercase(),
            'á' | 'à' | 'â' | 'ä' | 'Á' => 'a',
            'é' | 'è' | 'ê' | 'É' => 'e',
            'í' | 'Í' => 'i',
            'ñ' | 'Ñ' => 'n',
            'ó' | 'ô' | 'ö' | 'Ó' => 'o',
            'ú' | 'ü' | 'Ú' | 'Ü' => 'u',
            _ => continue,
        });
    }
    if letters.starts_with("saint") {
        letters.replace_range(1..4, "");
    }
    letters
}

fn text(bytes: &[u8]) -> &str {
    std::str::from_utf8(bytes).unwrap_or_default()
}
