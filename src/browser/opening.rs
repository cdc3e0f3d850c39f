//! Opening a job document in the browser, by the same code as on the host.

use super::codec::{Fault, decode, given};
use crate::job::Job;
use crate::job::document::{self, Head, Refusal, Refused, Source};
use js_sys::{JSON, JsString};
use serde::Serialize;
use tsify::{Ts, Tsify};
use wasm_bindgen::prelude::*;

/// A document after opening: one of the two is there.
#[derive(Serialize, Tsify)]
pub struct Opened {
    /// The job, brought forward to the present version.
    #[tsify(optional)]
    job: Option<Job>,
    /// Why there is none.
    #[tsify(optional)]
    refused: Option<Refusal>,
}

struct Parsed(JsValue);

impl Source for Parsed {
    type Error = Fault;
    fn head(&self) -> Result<Head, Fault> {
        decode(&self.0)
    }
    fn job(&self) -> Result<Job, Fault> {
        decode(&self.0)
    }
}

/// Opens the text of a job file. Nothing is decoded that is too long or nested too deep.
#[wasm_bindgen]
pub fn job_open(text: JsString) -> Ts<Opened> {
    let parsed = if text.length() as usize > document::MOST_BYTES {
        Err(Refusal::new(Refused::TooLong, ""))
    } else {
        let text = String::from(text);
        document::fits(&text).and_then(|()| {
            JSON::parse(&text).map_err(|error| {
                Refusal::new(Refused::NotJson, String::from(js_sys::Error::from(error).message()))
            })
        })
    };
    told(parsed.and_then(|value| document::open(&Parsed(value))))
}

/// Checks a job that is already a value (from the shelf, from a link) and brings it forward.
#[wasm_bindgen]
pub fn job_check(value: JsValue) -> Ts<Opened> {
    told(document::open(&Parsed(value)))
}

fn told(outcome: Result<Job, Refusal>) -> Ts<Opened> {
    given(&match outcome {
        Ok(job) => Opened { job: Some(job), refused: None },
        Err(refusal) => Opened { job: None, refused: Some(refusal) },
    })
}
