//! Journeys through the page in real browsers. Each journey runs in each engine.
//!
//! `cargo test` runs them all; words after `--` choose journeys whose name holds one of them;
//! `BROWSERS=firefox` chooses engines. What is left out is printed as NOT RUN, what an engine cannot show as
//! CANNOT. A journey that fails leaves pictures, source and console under `target/browser/`.

mod journeys;

use driving::engines::{self, Browser, Engine, Setting, lock};
use driving::page::Page;
use driving::site::{Built, Site};
use driving::{Fault, Step, places, processes};
use futures_util::FutureExt;
use std::panic::AssertUnwindSafe;
use std::pin::Pin;
use std::process::ExitCode;
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

/// A journey under way: its browser, the site that it visits, what it has to say.
pub struct Journey {
    /// The engine.
    pub engine: Engine,
    /// The browser.
    pub browser: Arc<Browser>,
    /// The built site.
    pub built: Built,
    notes: Mutex<Vec<String>>,
    allowed: Mutex<Vec<&'static str>>,
    scripts: Mutex<Vec<String>>,
}

impl Journey {
    /// The site on an origin of its own, with nothing stored.
    pub async fn site(&self) -> Step<Site> {
        self.built.serve().await
    }

    /// The page of a site.
    pub fn page(&self, site: &Site) -> Page {
        Page::new(self.browser.clone(), site.address())
    }

    /// Says what this engine cannot show, and why. It is printed.
    pub fn cannot(&self, reason: &str) {
        self.say(format!("CANNOT: {reason}"));
    }

    /// Prints a line beside the journey.
    pub fn say(&self, line: impl Into<String>) {
        if let Ok(mut notes) = self.notes.lock() {
            notes.push(line.into());
        }
    }

    /// Lets the console say something that this journey provokes. Anything else that it says fails the journey.
    pub fn provokes(&self, part: &'static str) {
        if let Ok(mut allowed) = self.allowed.lock() {
            allowed.push(part);
        }
    }

    /// Runs a function before the scripts of every page of this journey.
    pub async fn beforehand(&self, function: &str) -> Step {
        let script = self.browser.beforehand(function).await?;
        if let Ok(mut scripts) = self.scripts.lock() {
            scripts.push(script);
        }
        Ok(())
    }
}

type Steps = Pin<Box<dyn Future<Output = Step> + Send>>;

/// A journey as listed: its name, the browser's setting, its steps.
pub struct Listed {
    name: &'static str,
    setting: Setting,
    steps: fn(Arc<Journey>) -> Steps,
}

struct Outcome {
    name: String,
    fault: Option<String>,
}

#[tokio::main(flavor = "multi_thread", worker_threads = 4)]
async fn main() -> ExitCode {
    // A journey's panic is its fault and told at the end; here only where.
    std::panic::set_hook(Box::new(|panic| {
        if let Some(place) = panic.location() {
            println!("         broken off at {place}");
        }
    }));
    let _ = rustls::crypto::ring::default_provider().install_default();
    let code = tokio::select! {
        code = run() => code,
        () = broken_off() => {
            processes::end_all();
            ExitCode::from(130)
        }
    };
    places::sweep();
    code
}

async fn broken_off() {
    use tokio::signal::unix::{SignalKind, signal};
    let (Ok(mut interrupt), Ok(mut terminate)) =
        (signal(SignalKind::interrupt()), signal(SignalKind::terminate()))
    else {
        return std::future::pending().await;
    };
    tokio::select! {
        _ = interrupt.recv() => {}
        _ = terminate.recv() => {}
    }
}

async fn run() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).filter(|word| !word.starts_with('-')).collect();
    let started = Instant::now();
    match all(&words).await {
        Ok(outcomes) => {
            let failed: Vec<&Outcome> = outcomes.iter().filter(|one| one.fault.is_some()).collect();
            for one in &failed {
                println!("\nFAILED {}\n{}", one.name, one.fault.as_deref().unwrap_or_default());
            }
            println!(
                "\n{} journeys ran, {} failed, {:.1} s",
                outcomes.len(),
                failed.len(),
                started.elapsed().as_secs_f64()
            );
            if failed.is_empty() && !outcomes.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
        }
        Err(fault) => {
            println!("The journeys cannot start: {fault}");
            ExitCode::FAILURE
        }
    }
}

async fn all(words: &[String]) -> Result<Vec<Outcome>, Fault> {
    let engines = engines::chosen()?;
    for engine in Engine::ALL.iter().filter(|engine| !engines.contains(engine)) {
        println!("NOT RUN: {} (left out by BROWSERS)", engine.name());
    }
    let built = Built::find()?;
    let tasks: Vec<_> = engines
        .into_iter()
        .map(|engine| {
            let (built, words) = (built.clone(), words.to_vec());
            tokio::spawn(async move { in_engine(engine, &built, &words).await })
        })
        .collect();
    let mut outcomes = Vec::new();
    for task in tasks {
        outcomes.extend(task.await?);
    }
    Ok(outcomes)
}

/// Every chosen journey in one engine, with one browser for all that want the same setting.
async fn in_engine(engine: Engine, built: &Built, words: &[String]) -> Vec<Outcome> {
    let mut outcomes = Vec::new();
    let mut browser: Option<(Setting, Arc<Browser>)> = None;
    for listed in journeys::all() {
        let name = format!("{} ({})", listed.name, engine.name());
        if !words.is_empty() && !words.iter().any(|word| listed.name.contains(word.as_str())) {
            continue;
        }
        let started = Instant::now();
        if browser.as_ref().is_some_and(|(setting, _)| *setting != listed.setting) {
            quit(browser.take()).await;
        }
        let running = match &browser {
            Some((_, running)) => running.clone(),
            None => match Browser::start(engine, listed.setting).await {
                Ok(fresh) => browser.insert((listed.setting, Arc::new(fresh))).1.clone(),
                Err(fault) => {
                    outcomes
                        .push(Outcome { name, fault: Some(format!("the browser does not start: {fault}")) });
                    continue;
                }
            },
        };
        let (fault, notes) = one(&listed, engine, running, built).await;
        println!(
            "{} {name} {:.1} s",
            if fault.is_none() { "ok    " } else { "FAILED" },
            started.elapsed().as_secs_f64()
        );
        for note in notes {
            println!("         {note}");
        }
        if fault.is_some() {
            // The next journey gets a browser that nothing has happened to.
            quit(browser.take()).await;
        }
        outcomes.push(Outcome { name, fault });
    }
    quit(browser).await;
    outcomes
}

async fn quit(browser: Option<(Setting, Arc<Browser>)>) {
    if let Some(browser) = browser.and_then(|(_, browser)| Arc::into_inner(browser)) {
        browser.quit().await;
    }
}

async fn one(
    listed: &Listed,
    engine: Engine,
    browser: Arc<Browser>,
    built: &Built,
) -> (Option<String>, Vec<String>) {
    lock(&browser.heard).clear();
    let journey = Arc::new(Journey {
        engine,
        browser: browser.clone(),
        built: built.clone(),
        notes: Mutex::default(),
        allowed: Mutex::default(),
        scripts: Mutex::default(),
    });
    let steps = AssertUnwindSafe((listed.steps)(journey.clone())).catch_unwind();
    let mut fault = match tokio::time::timeout(Duration::from_secs(180), steps).await {
        Err(_) => Some("not over after 180 s".to_owned()),
        Ok(Err(panic)) => Some(said_in(&panic)),
        Ok(Ok(Err(fault))) => Some(fault.to_string()),
        Ok(Ok(Ok(()))) => None,
    };
    let allowed = journey.allowed.lock().map(|list| list.clone()).unwrap_or_default();
    let unexpected: Vec<String> = lock(&browser.heard)
        .iter()
        .filter(|line| !allowed.iter().any(|part| line.contains(part)))
        .cloned()
        .collect();
    if fault.is_none() && !unexpected.is_empty() {
        fault = Some("something went wrong unseen".to_owned());
    }
    if let (Some(fault), false) = (&mut fault, unexpected.is_empty()) {
        fault.push_str(&format!("\nthe console said:\n{}", unexpected.join("\n")));
    }
    if fault.is_some() {
        keep_evidence(listed.name, &browser).await;
    }
    let scripts = journey.scripts.lock().map(|list| list.clone()).unwrap_or_default();
    // A page that hangs must not hang the run: what cannot be tidied up in time gets a fresh browser.
    let tidied = tokio::time::timeout(Duration::from_secs(45), async {
        for script in scripts {
            browser.forget(&script).await?;
        }
        tidy_up(&browser).await
    });
    let untidy = match tidied.await {
        Ok(Ok(())) => None,
        Ok(Err(why)) => Some(why.to_string()),
        Err(_) => Some("not over after 45 s".to_owned()),
    };
    fault = fault.or(untidy.map(|why| format!("the browser could not be tidied up: {why}")));
    let notes = journey.notes.lock().map(|list| list.clone()).unwrap_or_default();
    (fault, notes)
}

/// Closes every tab but one and gives the window its own size again.
async fn tidy_up(browser: &Browser) -> Step {
    let windows = browser.driver.windows().await?;
    for window in windows.iter().skip(1) {
        browser.driver.switch_to_window(window.clone()).await?;
        browser.driver.close_window().await?;
    }
    if let Some(first) = windows.first() {
        browser.driver.switch_to_window(first.clone()).await?;
    }
    browser.viewport(None).await?;
    browser.visit("about:blank").await
}

fn said_in(panic: &Box<dyn std::any::Any + Send>) -> String {
    panic
        .downcast_ref::<String>()
        .cloned()
        .or_else(|| panic.downcast_ref::<&str>().map(|text| (*text).to_owned()))
        .unwrap_or_else(|| "panicked".to_owned())
}

/// Keeps what there is to see of a failed journey.
async fn keep_evidence(name: &str, browser: &Browser) {
    let folder = places::evidence().join(format!("{}-{}", name.replace("::", "-"), browser.engine.name()));
    let _ = std::fs::remove_dir_all(&folder);
    if std::fs::create_dir_all(&folder).is_err() {
        return;
    }
    let limit = Duration::from_secs(10);
    if let Ok(Ok(picture)) = tokio::time::timeout(limit, browser.driver.screenshot_as_png()).await {
        let _ = std::fs::write(folder.join("page.png"), picture);
    }
    if let Ok(Ok(source)) = tokio::time::timeout(limit, browser.driver.source()).await {
        let _ = std::fs::write(folder.join("page.html"), source);
    }
    let _ = std::fs::write(folder.join("console.txt"), lock(&browser.heard).join("\n"));
    let _ = std::fs::copy(&browser.said, folder.join("driver.log"));
}
