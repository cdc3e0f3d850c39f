//! Child processes in groups of their own, so that a driver and the browsers that it started end together,
//! by their own id, whatever becomes of the journey.

use crate::Step;
use std::fs::File;
use std::net::{TcpListener, TcpStream};
use std::os::unix::process::CommandExt;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

static RUNNING: Mutex<Vec<u32>> = Mutex::new(Vec::new());

/// A child process and everything that it starts.
#[derive(Debug)]
pub struct Group {
    child: Child,
}

impl Group {
    /// Starts a command in a group of its own; what it says goes to a file.
    pub fn start(command: &mut Command, said: &Path) -> Step<Self> {
        let log = File::options().create(true).append(true).open(said)?;
        let child = command
            .process_group(0)
            .stdin(Stdio::null())
            .stdout(log.try_clone()?)
            .stderr(log)
            .spawn()
            .map_err(|error| format!("{:?} does not start: {error}", command.get_program()))?;
        running().push(child.id());
        Ok(Self { child })
    }

    /// Whether the process itself has ended.
    pub fn has_ended(&mut self) -> bool {
        !matches!(self.child.try_wait(), Ok(None))
    }
}

impl Drop for Group {
    fn drop(&mut self) {
        kill(self.child.id());
        let _ = self.child.wait();
        running().retain(|id| *id != self.child.id());
    }
}

fn running() -> std::sync::MutexGuard<'static, Vec<u32>> {
    RUNNING.lock().unwrap_or_else(std::sync::PoisonError::into_inner)
}

fn kill(id: u32) {
    let _ = Command::new("kill")
        .args(["-KILL", "--", &format!("-{id}")])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
}

/// Ends every group that is still running: for a run that is broken off.
pub fn end_all() {
    for id in running().iter() {
        kill(*id);
    }
}

/// A port that nothing listens on and that was not given before: what a browser has stored for an earlier site on
/// the same port would be there for the next.
pub fn free_port() -> Step<u16> {
    static GIVEN: Mutex<Vec<u16>> = Mutex::new(Vec::new());
    let mut given = GIVEN.lock().unwrap_or_else(PoisonError::into_inner);
    loop {
        let port = TcpListener::bind("127.0.0.1:0")?.local_addr()?.port();
        if !given.contains(&port) {
            given.push(port);
            return Ok(port);
        }
    }
}

/// Waits until something listens on a port, or its process has ended, or ten seconds are over.
pub async fn listening(port: u16, group: &mut Group, what: &str) -> Step {
    let started = Instant::now();
    while TcpStream::connect(("127.0.0.1", port)).is_err() {
        if group.has_ended() {
            return Err(format!("{what} ended before it listened").into());
        }
        if started.elapsed() > Duration::from_secs(10) {
            return Err(format!("{what} does not listen on port {port} after 10 s").into());
        }
        tokio::time::sleep(Duration::from_millis(10)).await;
    }
    Ok(())
}
