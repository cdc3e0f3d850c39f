//! The program `foamwright`: serves the site, builds it, or works out a job file.

#[cfg(not(target_arch = "wasm32"))]
mod command;
#[cfg(not(target_arch = "wasm32"))]
mod job_file;
#[cfg(not(target_arch = "wasm32"))]
mod sheet;
#[cfg(not(target_arch = "wasm32"))]
mod site;

#[cfg(not(target_arch = "wasm32"))]
fn main() -> std::process::ExitCode {
    let arguments: Vec<String> =
        std::env::args_os().skip(1).map(|argument| argument.to_string_lossy().into_owned()).collect();
    match command::read(&arguments).and_then(command::run) {
        Ok(()) => std::process::ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("foamwright: {error:#}");
            std::process::ExitCode::FAILURE
        }
    }
}

#[cfg(target_arch = "wasm32")]
fn main() {}
