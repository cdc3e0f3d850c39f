//! The words of a first visit, taken out of the pages: one file a language for the sheet, `words/<language>/first.json`,
//! and one for the frame on a company's page, `embed-first.json`.
//!
//! Who looks at the sample sheet fetches this file and none of the pages; those come, whole, with the first screen
//! or the first job of one's own. Such a file holds `{page: {key: words}}`.

use super::sources::Files;
use anyhow::{Context, Result, bail};
use serde_json::{Map, Value};

/// Of each page these keys, `*` for whatever follows.
type Said = &'static [(&'static str, &'static str)];

/// The files, and what is in each.
const FILES: [(&str, Said); 2] = [("first", SHEET), ("embed-first", FRAME)];

/// What the sheet of the sample says. The size check sees to it that a first visit needs no more, and the build that
/// there is nothing here without words.
const SHEET: Said = &[
    ("page", "*"),
    ("sheet", "*"),
    ("takeoff", "*"),
    (
        "ready",
        "age air close cylinder_a cylinder_b dew_and_spread dew_short drawing_label name.* not_read old_axis open \
         surface take verdict_* why_* ask.*",
    ),
    (
        "kits",
        "after and_shelf big_below big_why chosen_why cost dearer_why drawing_label emptied from_shelf least_why left \
         none_fit numbered on_label open range sealed short_why so_many unnamed usable used",
    ),
    (
        "spraying",
        "aim_of bar bar_wait bars_label day many nozzles nozzles_enough nozzles_short nozzles_why open protect \
         protect_do so_many",
    ),
    ("jobs", "move new other_tab"),
    ("fields", "blank_counts flames_out other_waste over_depth read_as temperature unit.pct which"),
    ("findings", "close cylinder_cold cylinders_apart unanswered"),
    ("sources", "close_reading cylinders_apart label_windows over_depth waste_off"),
];

/// What the frame on a company's page says until something is found amiss, with the shapes that a homeowner meets
/// (`USUAL` in `embed/first.js`).
const FRAME: Said = &[
    ("embed", "*"),
    ("embed_ways", "back no_print no_take no_working* print send* sent* take"),
    ("page", "undo too_big amount kits"),
    ("sheet", "board_feet kits_n passes_n or_range span square_*"),
    ("kits", "left short unnamed"),
    (
        "takeoff",
        "shape.rim_run shape.footprint shape.framed_wall shape.framed_floor shape.framed_slope shape.rectangle \
         shape.typed_area",
    ),
    (
        "surface",
        "about.rim_run about.footprint about.framed_wall about.framed_floor about.framed_slope about.rectangle \
         about.typed_area rim_run.* footprint.* framed_wall.* framed_floor.* framed_slope.* rectangle.* typed_area.* \
         add_opening deduct* depth drawing_* edges_label face.* faces_label lacking name net opening* part_drawn press \
         remove_opening shape times tinted* to_foam view.* not_foamed cores_apart legs add_leg",
    ),
    (
        "fields",
        "read_as* blank_counts which fill courses choice.yes choice.no choice.joists_land.* choice.first_parallel.* \
         sense.feet_inches sense.nominal sense.literal unit.ft unit.in unit.m unit.cm unit.mm \
         unit.ft2 unit.m2 unit.pct unit.each times depth area length width height member band \
         landing_run",
    ),
    ("findings", "needed joists_not_said"),
    ("sources", "rim"),
];

/// Lays the file of each language beside its pages.
pub fn lay(here: &mut Files) -> Result<()> {
    let mut languages: Vec<String> = here.keys().filter_map(|name| language(name)).collect();
    languages.dedup();
    for language in languages {
        let page = |page: &str| -> Result<Value> {
            let name = format!("words/{language}/{page}.json");
            let bytes = here.get(&name).with_context(|| format!("{name} is missing"))?;
            serde_json::from_slice(bytes).with_context(|| format!("{name} is no JSON"))
        };
        let mut made = Vec::new();
        for (file, said) in FILES {
            let mut first = Map::new();
            for (name, keys) in said {
                first.insert((*name).to_owned(), some(&page(name)?, keys)?.into());
            }
            made.push((format!("words/{language}/{file}.json"), serde_json::to_vec(&first)?));
        }
        for (name, bytes) in made {
            if here.insert(name.clone(), bytes).is_some() {
                bail!("{name} is made by the build, but a file of this name lies in www/");
            }
        }
    }
    Ok(())
}

/// The language whose page a file is.
fn language(name: &str) -> Option<String> {
    let (language, _) = name.strip_prefix("words/")?.split_once('/')?;
    Some(language.to_owned())
}

/// The words of a page whose keys are among these.
fn some(page: &Value, keys: &str) -> Result<Map<String, Value>> {
    let mut some = Map::new();
    for wanted in keys.split_whitespace() {
        let fits = |key: &str| wanted.strip_suffix('*').map_or(key == wanted, |lead| key.starts_with(lead));
        let before = some.len();
        let all = page.as_object().into_iter().flatten();
        some.extend(all.filter(|(key, _)| fits(key)).map(|(key, words)| (key.clone(), words.clone())));
        if some.len() == before {
            bail!("a first visit says {wanted}, but there are no words for it");
        }
    }
    Ok(some)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeMap;

    fn page() -> Value {
        serde_json::json!({ "name.air": "Air", "name.wind": "Wind", "namely": "", "open": { "by": "n", "other": "{n}" } })
    }

    #[test]
    fn what_is_asked_for_is_taken_and_nothing_else() {
        let taken = some(&page(), "name.* open").expect("taken");
        assert_eq!(taken.keys().collect::<Vec<_>>(), ["name.air", "name.wind", "open"]);
        assert_eq!(taken["open"]["other"], "{n}");
    }

    #[test]
    fn what_has_no_words_is_refused() {
        for keys in ["open gone", "gone.*", "name"] {
            assert!(some(&page(), keys).is_err(), "{keys}");
        }
    }

    #[test]
    fn every_language_gets_a_file() {
        let mut here = Files::new();
        for language in ["en", "es"] {
            let mut pages: BTreeMap<&str, Map<String, Value>> = BTreeMap::new();
            for (name, keys) in FILES.iter().flat_map(|(_, said)| *said) {
                let words = keys.split_whitespace().map(|key| (key.replace('*', "x"), language.into()));
                pages.entry(name).or_default().extend(words);
            }
            for (name, words) in pages {
                let bytes = serde_json::to_vec(&words).expect("JSON");
                here.insert(format!("words/{language}/{name}.json"), bytes);
            }
        }
        lay(&mut here).expect("laid");
        for language in ["en", "es"] {
            for (file, said) in FILES {
                let name = format!("words/{language}/{file}.json");
                let first: Value = serde_json::from_slice(&here[&name]).expect("JSON");
                assert_eq!(first["page"]["undo"], language, "{file}");
                assert_eq!(first["page"]["x"], Value::from((file == "first").then_some(language)), "{file}");
                assert_eq!(first.as_object().map(Map::len), Some(said.len()), "{file}");
            }
        }
        assert!(lay(&mut here).is_err(), "a second file of this name");
    }
}
