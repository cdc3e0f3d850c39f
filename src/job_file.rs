//! Job files on this machine: read whole, checked for size and nesting, opened as the page opens them.

use anyhow::{Context, Result, bail};
use foamwright::job::document::{self, Head, MOST_BYTES, MOST_DEPTH, Refusal, Refused, Source};
use foamwright::job::{JOB_VERSION, Job};
use std::fs::File;
use std::io::Read;

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

/// Opens the job in a file, or in standard input for `-`.
pub fn open(name: &str) -> Result<Job> {
    let mut bytes = Vec::new();
    // One byte more than is taken, so that a longer file is seen to be longer and not read to its end.
    let most = MOST_BYTES as u64 + 1;
    if name == "-" {
        std::io::stdin().take(most).read_to_end(&mut bytes).context("standard input cannot be read")?;
    } else {
        let file = File::open(name).with_context(|| format!("{name} cannot be opened"))?;
        file.take(most).read_to_end(&mut bytes).with_context(|| format!("{name} cannot be read"))?;
    }
    let what = if name == "-" { "standard input" } else { name };
    match decode(&bytes) {
        Ok(job) => Ok(job),
        Err(refusal) => bail!("{what} {}", said(&refusal)),
    }
}

fn decode(bytes: &[u8]) -> Result<Job, Refusal> {
    if bytes.len() > MOST_BYTES {
        return Err(Refusal::new(Refused::TooLong, ""));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| Refusal::new(Refused::NotJson, error))?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    document::fits(text)?;
    serde_json::from_str::<serde::de::IgnoredAny>(text)
        .map_err(|error| Refusal::new(Refused::NotJson, error))?;
    document::open(&Text(text))
}

fn said(refusal: &Refusal) -> String {
    let Refusal { why, version, detail } = refusal;
    match why {
        Refused::TooLong => format!("is longer than {} MB: not a job file", MOST_BYTES / 1_000_000),
        Refused::TooDeep => format!("is nested deeper than {MOST_DEPTH}: not a job file"),
        Refused::NotJson => format!("is not JSON: {detail}"),
        Refused::NotAJob => format!("is not a job file of this tool ({detail})"),
        Refused::Newer => format!(
            "is a job of version {version}; this program knows versions up to {JOB_VERSION}. \
             Nothing was read or changed: open it with a newer program"
        ),
        Refused::Damaged => format!("is a damaged job file: {detail}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn why(bytes: &[u8]) -> Refused {
        decode(bytes).expect_err("opened").why
    }

    #[test]
    fn bad_files_are_refused_each_for_its_reason() {
        assert_eq!(why(b""), Refused::NotJson);
        assert_eq!(why(b"\xff\xfe"), Refused::NotJson);
        assert_eq!(why(b"{\"format\":"), Refused::NotJson);
        assert_eq!(why(b"null"), Refused::NotAJob);
        assert_eq!(why("[".repeat(40).as_bytes()), Refused::TooDeep);
        assert_eq!(why(&vec![b' '; MOST_BYTES + 1]), Refused::TooLong);
        assert_eq!(why(br#"{"format":"foamwright-job","version":9}"#), Refused::Newer);
        assert_eq!(why(br#"{"format":"foamwright-job","version":1}"#), Refused::Damaged);
    }

    #[test]
    fn a_mark_at_the_start_does_no_harm() {
        let text = "\u{feff}{\"format\":\"foamwright-job\",\"version\":1,\"id\":\"x\",\"next_id\":1}";
        assert!(decode(text.as_bytes()).is_ok());
    }
}
