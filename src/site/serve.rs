//! A small file server for this machine: GET and HEAD, one folder, one answer a connection.
//!
//! Own code rather than a server crate: it needs no more than this, and compiles in no time.

use anyhow::{Context, Result, bail};
use std::fs;
use std::io::{ErrorKind, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;
use std::time::Duration;

const FIRST_PORT: u16 = 8080;
const PORTS_TRIED: u16 = 50;
const MOST_HEAD: usize = 16 * 1024;
const PATIENCE: Duration = Duration::from_secs(10);

/// What is served, and where.
#[derive(Debug)]
pub struct Server {
    /// The built folder.
    pub dir: PathBuf,
    /// The path below which it lies: `/` or `/some/path/`.
    pub under: String,
    /// Whether each request is printed.
    pub log: bool,
}

/// The path below which a site lies, with a slash at both ends.
pub fn under(text: &str) -> Result<String> {
    let inner = text.trim_matches('/');
    if inner.is_empty() {
        return Ok("/".to_owned());
    }
    let plain = |part: &str| {
        !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"-_~".contains(&byte))
    };
    if !inner.split('/').all(plain) {
        bail!("--under takes a path of letters, digits, - and _, such as /sub/path/");
    }
    Ok(format!("/{inner}/"))
}

#[derive(Debug, PartialEq)]
struct Answer {
    status: &'static str,
    mime: &'static str,
    cache: &'static str,
    location: Option<String>,
    body: Vec<u8>,
}

impl Server {
    /// Serves until the program is ended.
    pub fn serve(self, port: Option<u16>) -> Result<()> {
        if !self.dir.join("index.html").is_file() {
            bail!("{} holds no index.html: it is not a built site", self.dir.display());
        }
        let listener = listen(port)?;
        println!("Foamwright is at http://{}{}   (Ctrl+C ends it)", listener.local_addr()?, self.under);
        std::io::stdout().flush()?;
        let server = Arc::new(self);
        for stream in listener.incoming() {
            let Ok(stream) = stream else { continue };
            let server = Arc::clone(&server);
            thread::spawn(move || server.attend(stream));
        }
        Ok(())
    }

    fn attend(&self, mut stream: TcpStream) {
        let _ = stream.set_read_timeout(Some(PATIENCE));
        let _ = stream.set_write_timeout(Some(PATIENCE));
        let Some(head) = head(&mut stream) else { return };
        let mut words = head.lines().next().unwrap_or_default().split(' ');
        let (method, target) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
        let answer = self.answer(method, target);
        if self.log {
            let referer = header(&head, "referer").unwrap_or("-");
            println!("{} {method} {target} {referer}", answer.status);
        }
        let _ = send(&mut stream, &answer, method != "HEAD");
    }

    fn answer(&self, method: &str, target: &str) -> Answer {
        if method != "GET" && method != "HEAD" {
            return plain("405 Method Not Allowed");
        }
        let path = target.split(['?', '#']).next().unwrap_or_default();
        if format!("{path}/") == self.under {
            return Answer { location: Some(self.under.clone()), ..plain("308 Permanent Redirect") };
        }
        let Some(inner) = path.strip_prefix(&self.under) else { return plain("404 Not Found") };
        let Some(name) = safe(inner) else { return plain("404 Not Found") };
        let file = if name.is_empty() { self.dir.join("index.html") } else { self.dir.join(&name) };
        let Ok(body) = fs::read(&file) else { return plain("404 Not Found") };
        let hashed = name.contains('/');
        Answer {
            status: "200 OK",
            mime: mime(&file),
            cache: if hashed { "public, max-age=31536000, immutable" } else { "no-cache" },
            location: None,
            body,
        }
    }
}

/// The relative path that a request names, if it stays inside the folder and touches nothing hidden.
fn safe(path: &str) -> Option<String> {
    let name = decoded(path)?;
    let inside = name.is_empty()
        || name
            .split('/')
            .all(|part| !part.is_empty() && !part.starts_with('.') && !part.contains(['\\', ':', '\0']));
    inside.then_some(name)
}

fn decoded(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let digit = |byte: u8| char::from(byte).to_digit(16);
            let (high, low) = (digit(rest.next()?)?, digit(rest.next()?)?);
            bytes.push(u8::try_from(high * 16 + low).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}

fn mime(file: &Path) -> &'static str {
    match file.extension().and_then(|extension| extension.to_str()).unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

fn plain(status: &'static str) -> Answer {
    let body = format!("{status}\n").into_bytes();
    Answer { status, mime: "text/plain; charset=utf-8", cache: "no-store", location: None, body }
}

/// The head of a request; `None` where it is too long, too slow or not text.
fn head(stream: &mut TcpStream) -> Option<String> {
    let mut bytes = Vec::new();
    let mut chunk = [0u8; 2048];
    while !bytes.windows(4).any(|four| four == b"\r\n\r\n") {
        let count = stream.read(&mut chunk).ok().filter(|count| *count > 0)?;
        bytes.extend_from_slice(chunk.get(..count)?);
        if bytes.len() > MOST_HEAD {
            return None;
        }
    }
    String::from_utf8(bytes).ok()
}

fn header<'a>(head: &'a str, name: &str) -> Option<&'a str> {
    head.lines()
        .filter_map(|line| line.split_once(':'))
        .find(|(one, _)| one.eq_ignore_ascii_case(name))
        .map(|(_, value)| value.trim())
}

/// The head of an answer. Whoever shows the site in a frame may read its files: they are the same for everybody. A
/// frame without an origin of its own gets its modules only with that header, and another site's page `embed.js`.
fn head_of(answer: &Answer) -> String {
    let location = answer.location.as_ref().map(|to| format!("Location: {to}\r\n")).unwrap_or_default();
    format!(
        "HTTP/1.1 {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nCache-Control: {}\r\n{location}\
         Access-Control-Allow-Origin: *\r\nX-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n",
        answer.status,
        answer.mime,
        answer.body.len(),
        answer.cache
    )
}

fn send(stream: &mut TcpStream, answer: &Answer, with_body: bool) -> std::io::Result<()> {
    stream.write_all(head_of(answer).as_bytes())?;
    if with_body {
        stream.write_all(&answer.body)?;
    }
    stream.flush()
}

fn listen(port: Option<u16>) -> Result<TcpListener> {
    let here = Ipv4Addr::LOCALHOST;
    if let Some(port) = port {
        return TcpListener::bind((here, port)).with_context(|| format!("port {port} cannot be used"));
    }
    for port in FIRST_PORT..FIRST_PORT + PORTS_TRIED {
        match TcpListener::bind((here, port)) {
            Ok(listener) => return Ok(listener),
            Err(error) if error.kind() == ErrorKind::AddrInUse => {}
            Err(error) => return Err(error).context("this machine lets no server be started"),
        }
    }
    bail!("ports {FIRST_PORT} to {} are all taken; choose one with --port", FIRST_PORT + PORTS_TRIED - 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn server(name: &str) -> Server {
        let dir = std::env::temp_dir().join(format!("foamwright-{}-{name}", std::process::id()));
        fs::create_dir_all(dir.join("0123456789abcdef")).expect("made");
        fs::write(dir.join("index.html"), "<p>").expect("written");
        fs::write(dir.join(".foamwright"), "{}").expect("written");
        fs::write(dir.join("0123456789abcdef/core_bg.wasm"), "\0asm").expect("written");
        Server { dir, under: "/sub/path/".to_owned(), log: false }
    }

    #[test]
    fn serves_what_is_there_with_its_type() {
        let server = server("serves");
        let page = server.answer("GET", "/sub/path/?a=../b#c");
        assert_eq!((page.status, page.mime, page.cache), ("200 OK", "text/html; charset=utf-8", "no-cache"));
        let core = server.answer("GET", "/sub/path/0123456789abcdef/core_bg.wasm");
        assert_eq!((core.status, core.mime), ("200 OK", "application/wasm"));
        assert!(core.cache.contains("immutable"));
        assert_eq!(server.answer("GET", "/sub/path").location.as_deref(), Some("/sub/path/"));
        assert_eq!(server.answer("POST", "/sub/path/").status, "405 Method Not Allowed");
    }

    #[test]
    fn any_page_may_read_what_is_served() {
        let server = server("any-page");
        for path in ["/sub/path/", "/sub/path/0123456789abcdef/core_bg.wasm"] {
            let head = head_of(&server.answer("GET", path));
            assert!(head.starts_with("HTTP/1.1 200 OK\r\n"), "{head}");
            assert_eq!(header(&head, "access-control-allow-origin"), Some("*"), "{path}");
            // With credentials a reader would see what is only for one person. There is no such thing here.
            assert_eq!(header(&head, "access-control-allow-credentials"), None, "{path}");
        }
    }

    #[test]
    fn nothing_outside_and_nothing_hidden() {
        let server = server("outside");
        for path in [
            "/sub/path/../index.html",
            "/sub/path/%2e%2e/index.html",
            "/sub/path/..%2findex.html",
            "/sub/path//etc/passwd",
            "/sub/path/%2fetc%2fpasswd",
            "/sub/path/.foamwright",
            "/sub/path/0123456789abcdef/../index.html",
            "/sub/path/..%5cindex.html",
            "/sub/path/%zz",
            "/sub/path/%00",
            "/sub/path/0123456789abcdef",
            "/index.html",
            "",
            "*",
        ] {
            assert_eq!(server.answer("GET", path).status, "404 Not Found", "{path}");
        }
    }

    #[test]
    fn a_path_gets_its_slashes() {
        assert_eq!(under("").expect("root"), "/");
        assert_eq!(under("sub/path").expect("path"), "/sub/path/");
        assert!(under("/a b/").is_err());
        assert!(under("/a/../b/").is_err());
    }
}
