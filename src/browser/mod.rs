//! The boundary to the page. The library is compiled for the browser twice: as the estimator's core, and, with the
//! feature `practice`, as the module of the exercises. Each takes along only what its own exports reach.
//!
//! A thrown error means that the page handed over a value of the wrong type: a fault of the page, never of
//! the person. What a person may get wrong comes back as data.

mod codec;
#[cfg(not(feature = "practice"))]
mod estimator;
#[cfg(not(feature = "practice"))]
mod opening;
#[cfg(feature = "practice")]
mod practice;
#[cfg(not(feature = "practice"))]
mod shelf;
mod trap;

/// The heap. It takes and gives back in constant time, and is a fifth of the code of the standard library's own.
#[global_allocator]
static HEAP: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();
