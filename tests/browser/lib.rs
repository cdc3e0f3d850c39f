//! Driving real browsers: the engines, the site under test, and the words in which a journey speaks of the
//! page. The journeys themselves are in `run.rs` and `journeys/`.

pub mod beforehand;
pub mod engines;
pub mod host;
pub mod page;
pub mod places;
pub mod processes;
pub mod site;
pub mod versions;

/// What may go wrong on a journey, with its reason in words.
pub type Fault = Box<dyn std::error::Error + Send + Sync>;

/// The outcome of a step.
pub type Step<T = ()> = Result<T, Fault>;
