//! Somebody else's server: an origin that is not the site's, with pages that have the estimator in them, or with
//! the site itself as a host serves it that sends no headers of ours.

use crate::Step;
use std::collections::BTreeMap;
use std::io::{Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

/// A server in a thread of this process.
#[derive(Debug)]
pub struct Host {
    port: u16,
    held: Arc<Held>,
}

#[derive(Debug, Default)]
struct Held {
    /// By path without the leading slash: the policy of the page, and the file.
    files: Mutex<BTreeMap<String, (String, Vec<u8>)>>,
    /// By path: how long the file is on its way.
    slow: Mutex<BTreeMap<String, Duration>>,
    /// By path: how much of the file arrives in how long, the next time that it is asked for.
    torn: Mutex<BTreeMap<String, (usize, Duration)>>,
    folder: Option<PathBuf>,
    asked: Mutex<Vec<String>>,
    over: AtomicBool,
}

impl Host {
    /// A server without any page yet.
    pub fn start() -> Step<Self> {
        Self::with(Held::default())
    }

    /// A server of everything in a folder, with no header but type and length.
    pub fn of(folder: &Path) -> Step<Self> {
        Self::with(Held { folder: Some(folder.to_path_buf()), ..Held::default() })
    }

    fn with(held: Held) -> Step<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let (port, held) = (listener.local_addr()?.port(), Arc::new(held));
        let ours = held.clone();
        thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                if ours.over.load(Ordering::Relaxed) {
                    return;
                }
                let ours = ours.clone();
                thread::spawn(move || ours.attend(stream));
            }
        });
        Ok(Self { port, held })
    }

    /// Its address. The name makes it another site for a browser than the one at 127.0.0.1.
    pub fn address(&self) -> String {
        format!("http://localhost:{}/", self.port)
    }

    /// Lays a file there.
    pub fn lay(&self, path: &str, body: &str) {
        self.lay_under(path, "", body);
    }

    /// Lays a page there, under a policy that its header names.
    pub fn lay_under(&self, path: &str, policy: &str, body: &str) {
        locked(&self.held.files).insert(path.to_owned(), (policy.to_owned(), body.as_bytes().to_vec()));
    }

    /// Lays a file there that is so long on its way.
    pub fn lay_slow(&self, path: &str, long: Duration, body: &str) {
        self.lay(path, body);
        locked(&self.held.slow).insert(path.to_owned(), long);
    }

    /// Lays a file there of which no more than this beginning arrives in so long, the first time that it is asked for.
    pub fn lay_torn(&self, path: &str, beginning: &str, rest: &str, long: Duration) {
        self.lay(path, &format!("{beginning}{rest}"));
        locked(&self.held.torn).insert(path.to_owned(), (beginning.len(), long));
    }

    /// Every path that was asked for, with its query.
    pub fn asked(&self) -> Vec<String> {
        locked(&self.held.asked).clone()
    }
}

impl Drop for Host {
    fn drop(&mut self) {
        self.held.over.store(true, Ordering::Relaxed);
        let _ = TcpStream::connect((Ipv4Addr::LOCALHOST, self.port));
    }
}

impl Held {
    fn attend(&self, mut stream: TcpStream) {
        let _ = stream.set_read_timeout(Some(Duration::from_secs(10)));
        let mut head = Vec::new();
        let mut chunk = [0u8; 2048];
        while !head.windows(4).any(|four| four == b"\r\n\r\n") {
            match stream.read(&mut chunk) {
                Ok(count) if count > 0 && head.len() < 16_384 => head.extend_from_slice(&chunk[..count]),
                _ => return,
            }
        }
        let head = String::from_utf8_lossy(&head).into_owned();
        let target = head.split(' ').nth(1).unwrap_or_default().trim_start_matches('/').to_owned();
        locked(&self.asked).push(target.clone());
        let path = target.split('?').next().unwrap_or_default();
        let slow = locked(&self.slow).get(path).copied();
        thread::sleep(slow.unwrap_or_default());
        let (status, policy, body) = match self.file(path) {
            Some((policy, body)) => ("200 OK", policy, body),
            None if path == "favicon.ico" => ("204 No Content", String::new(), Vec::new()),
            None => ("404 Not Found", String::new(), Vec::new()),
        };
        let policy =
            if policy.is_empty() { policy } else { format!("Content-Security-Policy: {policy}\r\n") };
        let head = format!(
            "HTTP/1.1 {status}\r\nContent-Type: {}\r\nContent-Length: {}\r\n{policy}Connection: close\r\n\r\n",
            mime(path),
            body.len()
        );
        let torn = locked(&self.torn).remove(path);
        let (beginning, long) = torn.unwrap_or((body.len(), Duration::ZERO));
        let (beginning, rest) = body.split_at(beginning);
        let begun = stream.write_all(head.as_bytes()).and_then(|()| stream.write_all(beginning));
        thread::sleep(long);
        let _ = begun.and_then(|()| stream.write_all(rest));
    }

    fn file(&self, path: &str) -> Option<(String, Vec<u8>)> {
        if let Some(laid) = locked(&self.files).get(path) {
            return Some(laid.clone());
        }
        let folder = self.folder.as_ref().filter(|_| !path.split('/').any(|part| part == ".."))?;
        Some((String::new(), std::fs::read(folder.join(path)).ok()?))
    }
}

fn locked<T>(held: &Mutex<T>) -> MutexGuard<'_, T> {
    held.lock().unwrap_or_else(PoisonError::into_inner)
}

fn mime(path: &str) -> &'static str {
    match path.rsplit_once('.').map(|(_, ending)| ending) {
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("json") => "application/json",
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        _ => "text/html; charset=utf-8",
    }
}
