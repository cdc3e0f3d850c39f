//! The words of `www/words/`, built in: the same texts as on the page.

use anyhow::{Result, bail};
use serde_json::Value;

/// The words of one language, page by page.
#[derive(Debug)]
pub struct Words {
    pages: Vec<(&'static str, Value)>,
}

macro_rules! pages {
    ($language:literal: $($page:literal)*) => {
        &[$(($page, include_str!(concat!("../../www/words/", $language, "/", $page, ".json"))),)*]
    };
}

const ENGLISH: &[(&str, &str)] = pages!("en": "calendar" "depth" "exercises" "fields" "findings" "practice" "ready" "slips" "sources" "takeoff" "text");
const SPANISH: &[(&str, &str)] = pages!("es": "calendar" "depth" "exercises" "fields" "findings" "practice" "ready" "slips" "sources" "takeoff" "text");

impl Words {
    /// The words of a language: `en` or `es`.
    pub fn of(language: &str) -> Result<Self> {
        let texts = match language {
            "en" => ENGLISH,
            "es" => SPANISH,
            _ => bail!("there are no words in `{language}`; --lang takes en or es"),
        };
        let mut pages = Vec::new();
        for (page, text) in texts {
            pages.push((*page, serde_json::from_str(text)?));
        }
        Ok(Self { pages })
    }

    /// The phrase of a key `page.name` with its figures; the key itself where there are no words, so that a
    /// gap is seen.
    pub fn say(&self, key: &str, figures: &[(&str, &str)]) -> String {
        match self.phrase(key) {
            Some(phrase) => fill(phrase, figures),
            None => key.to_owned(),
        }
    }

    /// Whether a key has words.
    pub fn has(&self, key: &str) -> bool {
        self.phrase(key).is_some()
    }

    /// A row of the code's table as its edition prints it, with the language's word between its ways.
    pub fn code_row(&self, printed: &str) -> String {
        printed.replace(" or ", &format!(" {} ", self.say("fields.row_or", &[])))
    }

    fn phrase(&self, key: &str) -> Option<&Value> {
        let (page, rest) = key.split_once('.')?;
        let (_, words) = self.pages.iter().find(|(name, _)| *name == page)?;
        // A finding's words lie one step deeper: `findings.code.what`.
        words.get(rest).or_else(|| rest.split_once('.').and_then(|(name, part)| words.get(name)?.get(part)))
    }
}

/// Puts figures into their places. Where the wording follows a number, the object names the figure it goes by.
fn fill(phrase: &Value, figures: &[(&str, &str)]) -> String {
    let figure = |name: &str| figures.iter().find(|(one, _)| *one == name).map(|(_, text)| *text);
    let by = phrase.get("by").and_then(Value::as_str).and_then(figure);
    let form = match by {
        // English and Spanish alike: one, and everything else that is written with figures here.
        Some("1") => phrase.get("one").or_else(|| phrase.get("other")),
        Some(_) => phrase.get("other"),
        None => Some(phrase),
    };
    let mut rest = form.and_then(Value::as_str).unwrap_or_default();
    let mut text = String::new();
    while let Some((before, after)) = rest.split_once('{') {
        let Some((name, after)) = after.split_once('}') else { break };
        text.push_str(before);
        match figure(name) {
            Some(figure) => text.push_str(figure),
            None => text.extend(["{", name, "}"]),
        }
        rest = after;
    }
    text.push_str(rest);
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn phrases_take_their_figures_and_their_number() {
        let words = Words::of("en").expect("words");
        assert_eq!(words.say("text.passes_each", &[("n", "1"), ("each", "1 in")]), "1 pass of 1 in");
        assert_eq!(words.say("text.passes_each", &[("n", "3"), ("each", "1 in")]), "3 passes of 1 in");
        assert!(words.say("findings.air_not_read.what", &[]).contains("air"));
        assert_eq!(words.say("text.unheard_of", &[]), "text.unheard_of");
        assert!(Words::of("xx").is_err());
    }

    #[test]
    fn every_finding_and_source_can_be_said() {
        for language in ["en", "es"] {
            let words = Words::of(language).expect("words");
            for code in foamwright::findings::Code::ALL {
                let key = serde_json::to_value(code).expect("a name");
                let key = key.as_str().expect("a name");
                assert!(words.has(&format!("findings.{key}.what")), "{language}: {key} has no words");
                assert!(
                    words.has(&format!("findings.{key}.do")),
                    "{language}: {key} does not say what to do"
                );
                let source = code.source();
                assert!(source.is_empty() || words.has(&format!("sources.{source}")), "{language}: {source}");
            }
        }
    }
}
