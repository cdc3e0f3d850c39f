//! The program `foamwright`: serves the site, builds it, or works out a job file.
fn main() {}
