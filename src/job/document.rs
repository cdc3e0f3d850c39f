//! Opening a job document: one way for the page and for the program.
//!
//! The head (`format`, `version`) is read first, on its own. A document of a newer version is refused unread,
//! so that nothing in it is lost; one of an older version is read as what it is and brought forward by `From`.

use crate::job::{JOB_VERSION, Job};
use core::fmt::Display;
use serde::{Deserialize, Serialize};

/// What every job document says of itself in `format`.
pub const JOB_FORMAT: &str = "foamwright-job";

/// The longest text that is opened, in bytes (2 MB).
pub const MOST_BYTES: usize = 2_000_000;

/// The deepest nesting of brackets that is opened; a job needs 7.
pub const MOST_DEPTH: usize = 32;

/// What every version of a job document starts with.
#[derive(Debug, Clone, Deserialize)]
pub struct Head {
    /// Must be [`JOB_FORMAT`].
    pub format: String,
    /// Which version's types read the rest.
    pub version: u32,
}

/// Why a document was not opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Refused {
    /// Longer than [`MOST_BYTES`].
    TooLong,
    /// Nested deeper than [`MOST_DEPTH`].
    TooDeep,
    /// Not JSON at all.
    NotJson,
    /// JSON, but not a job.
    NotAJob,
    /// A job of a version that this build does not know; it is left as it is.
    Newer,
    /// A job of a known version with a part missing or of the wrong kind.
    Damaged,
}

/// A document that was not opened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Refusal {
    /// Why.
    pub why: Refused,
    /// The version that the document says it has; 0 where it says none.
    pub version: u32,
    /// What the decoder met, in English, for whoever looks after the file; may be empty.
    pub detail: String,
}

impl Refusal {
    /// A refusal of a document that gives no version.
    pub fn new(why: Refused, detail: impl Display) -> Self {
        Self { why, version: 0, detail: detail.to_string() }
    }
}

/// Where a document is decoded from: JSON text on the host, a JavaScript value in the browser.
pub trait Source {
    /// What the decoder says when it fails.
    type Error: Display;

    /// What the document says of itself.
    fn head(&self) -> Result<Head, Self::Error>;

    /// The whole document by the present types.
    fn job(&self) -> Result<Job, Self::Error>;
}

/// Opens a document: format, then version, then the rest by the types of that version.
pub fn open(source: &impl Source) -> Result<Job, Refusal> {
    let head = source.head().map_err(|error| Refusal::new(Refused::NotAJob, error))?;
    let refuse = |why, detail: String| Refusal { why, version: head.version, detail };
    if head.format != JOB_FORMAT {
        return Err(refuse(Refused::NotAJob, head.format.chars().take(60).collect()));
    }
    match head.version {
        0 => Err(refuse(Refused::Damaged, String::new())),
        // Versions 2 to 4 only add to the one before: what is not there takes its default. A version that changes or
        // drops something keeps its own types here: decode them, then `Job::from`.
        1..=JOB_VERSION => {
            let job = source.job().map_err(|error| refuse(Refused::Damaged, error.to_string()))?;
            Ok(Job { version: JOB_VERSION, ..job })
        }
        _ => Err(refuse(Refused::Newer, String::new())),
    }
}

/// Refuses a text that is too long or nested too deep, before anything decodes it.
///
/// ```
/// use foamwright::job::document::{Refused, fits};
/// assert!(fits(r#"{"name": "[[[["}"#).is_ok());
/// assert_eq!(fits(&"[".repeat(33)).unwrap_err().why, Refused::TooDeep);
/// assert_eq!(fits(&" ".repeat(2_000_001)).unwrap_err().why, Refused::TooLong);
/// ```
pub fn fits(text: &str) -> Result<(), Refusal> {
    if text.len() > MOST_BYTES {
        return Err(Refusal::new(Refused::TooLong, ""));
    }
    let (mut depth, mut quoted, mut escaped) = (0usize, false, false);
    for byte in text.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if quoted => escaped = true,
            b'"' => quoted = !quoted,
            b'[' | b'{' if !quoted => depth += 1,
            b']' | b'}' if !quoted => depth = depth.saturating_sub(1),
            _ => {}
        }
        if depth > MOST_DEPTH {
            return Err(Refusal::new(Refused::TooDeep, ""));
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    struct Text<'a>(&'a str);

    impl Source for Text<'_> {
        type Error = serde_json::Error;
        fn head(&self) -> Result<Head, Self::Error> {
            serde_json::from_str(self.0)
        }
        fn job(&self) -> Result<Job, Self::Error> {
            serde_json::from_str(self.0)
        }
    }

    fn why(text: &str) -> Refused {
        open(&Text(text)).expect_err("opened").why
    }

    #[test]
    fn a_bare_job_opens() {
        let job =
            open(&Text(r#"{"format":"foamwright-job","version":1,"id":"x","next_id":1}"#)).expect("refused");
        assert_eq!((job.id.as_str(), job.next_id, job.surfaces.len()), ("x", 1, 0));
    }

    #[test]
    fn foreign_documents_are_refused() {
        assert_eq!(why("[]"), Refused::NotAJob);
        assert_eq!(why("{}"), Refused::NotAJob);
        assert_eq!(why(r#"{"format":"drawing","version":1}"#), Refused::NotAJob);
        assert_eq!(why("7"), Refused::NotAJob);
    }

    #[test]
    fn a_newer_version_is_refused_unread_and_named() {
        let refusal = open(&Text(r#"{"format":"foamwright-job","version":999,"surfaces":"anything"}"#));
        let refusal = refusal.expect_err("opened");
        assert_eq!((refusal.why, refusal.version), (Refused::Newer, 999));
    }

    #[test]
    fn a_damaged_job_says_what_is_missing() {
        let refusal =
            open(&Text(r#"{"format":"foamwright-job","version":1,"next_id":1}"#)).expect_err("opened");
        assert_eq!(refusal.why, Refused::Damaged);
        assert!(refusal.detail.contains("id"), "{}", refusal.detail);
        assert_eq!(why(r#"{"format":"foamwright-job","version":0,"id":"x","next_id":1}"#), Refused::Damaged);
    }

    #[test]
    fn brackets_in_quotes_do_not_nest() {
        assert!(fits(&format!(r#"{{"note":"\"{}"}}"#, "[".repeat(100))).is_ok());
        assert!(fits(&format!("{}{}", "[".repeat(32), "]".repeat(32))).is_ok());
        assert!(fits(&"[{".repeat(17)).is_err());
    }
}
