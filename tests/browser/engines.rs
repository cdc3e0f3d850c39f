//! The browser engines: how each is started, what each can be told, and what it cannot do.

use crate::processes::{Group, free_port, listening};
use crate::{Fault, Step, places};
use futures_util::StreamExt;
use serde_json::{Value, json};
use std::path::PathBuf;
use std::process::Command;
use std::sync::{Arc, Mutex};
use std::time::Duration;
use thirtyfour::WebDriver;
use thirtyfour::bidi::events::LogEntryAdded;
use thirtyfour::bidi::modules::log::LogLevel;
use thirtyfour::bidi::modules::script::AddPreloadScript;
use thirtyfour::common::capabilities::desiredcapabilities::Capabilities;
use thirtyfour::error::WebDriverErrorInner;

/// An engine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engine {
    /// Chromium, by chromedriver.
    Chromium,
    /// Firefox, by geckodriver.
    Firefox,
}

impl Engine {
    /// Every engine that the journeys are written for.
    pub const ALL: [Engine; 2] = [Engine::Chromium, Engine::Firefox];

    /// Its name, as in `BROWSERS=`.
    pub fn name(self) -> &'static str {
        match self {
            Engine::Chromium => "chromium",
            Engine::Firefox => "firefox",
        }
    }
}

/// How long a page may take to load.
pub const PAGE_LOAD: Duration = Duration::from_secs(20);

/// How a browser is set before it starts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Setting {
    /// The person has forbidden sites to keep anything.
    pub storage_refused: bool,
    /// The person's system is dark.
    pub dark: bool,
    /// The person's browser asks for Spanish.
    pub spanish: bool,
}

/// What the console and the page's own listeners said.
pub type Heard = Arc<Mutex<Vec<String>>>;

/// A running browser and its driver.
pub struct Browser {
    /// Its engine.
    pub engine: Engine,
    /// The session.
    pub driver: WebDriver,
    /// Warnings and errors of the console, uncaught errors, refusals of the content security policy.
    pub heard: Heard,
    /// Where downloads land.
    pub downloads: PathBuf,
    /// What the driver said.
    pub said: PathBuf,
    folder: PathBuf,
    listener: tokio::task::JoinHandle<()>,
    group: Group,
}

/// What Firefox says of its own calling of [`LISTEN`] in the first page of a window, from no line of any script.
const OWN: [&str; 2] = ["__bidi_args", "Permission denied to access property \"length\""];

/// Runs before any script of a page: whatever the policy refuses is said on the console, and an error that is
/// said there is said with its text.
const LISTEN: &str = r"() => {
  const said = console.error;
  console.error = (...all) => said(...all.map(one => one instanceof Error ? `${one}\n${one.stack}` : one));
  addEventListener('securitypolicyviolation', event => said(
    `refused by policy: ${event.effectiveDirective} ${event.blockedURI} ${event.sourceFile}:${event.lineNumber}`));
}";

impl Browser {
    /// Starts a browser with a profile of its own.
    pub async fn start(engine: Engine, setting: Setting) -> Step<Self> {
        let port = free_port()?;
        let folder = places::scratch(&format!("{}-{port}", engine.name()))?;
        let (downloads, said) = (folder.join("downloads"), folder.join("driver.log"));
        std::fs::create_dir_all(&downloads)?;
        std::fs::create_dir_all(folder.join("profile"))?;
        let (mut command, capabilities) = match engine {
            Engine::Chromium => chromium(port, &folder, setting)?,
            Engine::Firefox => firefox(port, &folder, setting)?,
        };
        let mut group = Group::start(command.env("HOME", &folder).env("TZ", "America/Chicago"), &said)?;
        listening(port, &mut group, &format!("the driver of {}", engine.name())).await?;
        let driver = WebDriver::builder(format!("http://127.0.0.1:{port}"), capabilities)
            .request_timeout(Duration::from_secs(100))
            .connect()
            .await?;
        driver.set_script_timeout(Duration::from_secs(90)).await?;
        driver.set_page_load_timeout(PAGE_LOAD).await?;
        let bidi = driver.bidi().await?;
        // In Firefox a script before the page's own, called in the page's world, makes an error of the engine's own in
        // the first page of a session; in a world beside it hears the same.
        let sandbox = (engine == Engine::Firefox).then(|| "listening".to_owned());
        let listen = LISTEN.to_owned();
        bidi.send(AddPreloadScript {
            function_declaration: listen,
            arguments: vec![],
            sandbox,
            contexts: vec![],
        })
        .await?;
        let heard = Heard::default();
        let mut entries = bidi.subscribe::<LogEntryAdded>().await?;
        let ear = heard.clone();
        let listener = tokio::spawn(async move {
            while let Some(entry) = entries.next().await {
                let text = entry.text.unwrap_or_default();
                let frame =
                    entry.stack_trace.pointer("/callFrames/0").map(ToString::to_string).unwrap_or_default();
                let own = engine == Engine::Firefox
                    && frame.is_empty()
                    && OWN.iter().any(|part| text.contains(part));
                if !own && matches!(entry.level, LogLevel::Warn | LogLevel::Error) {
                    lock(&ear).push(format!("{:?}: {text} {frame}", entry.level));
                }
            }
        });
        Ok(Self { engine, driver, heard, downloads, said, folder, listener, group })
    }

    /// Goes to an address.
    ///
    /// Firefox holds a document at its first element until the scripts before the page's own have run, and for ever
    /// where running them fails (its remote agent's `_configuration` module; it happens when the page before is left
    /// at a bad moment). Such a document is opened once more, and that is printed. One of which more has arrived
    /// than its first element is a fault of the page, as any other.
    pub async fn visit(&self, address: &str) -> Step {
        let Err(fault) = self.driver.goto(address).await else { return Ok(()) };
        let late = matches!(fault.as_inner(), WebDriverErrorInner::WebDriverTimeout(_));
        if !(late && self.engine == Engine::Firefox && self.holds().await?) {
            return Err(fault.into());
        }
        println!("         Firefox held {address} at its first element: opened again");
        self.driver.goto(address).await?;
        Ok(())
    }

    /// Whether the page, or a page in a frame of it, has still nothing but its first element.
    async fn holds(&self) -> Step<bool> {
        let bidi = self.driver.bidi().await?;
        let tree = bidi.send_raw("browsingContext.getTree", json!({})).await?;
        let mut pages: Vec<&Value> = tree["contexts"].as_array().into_iter().flatten().collect();
        while let Some(page) = pages.pop() {
            pages.extend(page["children"].as_array().into_iter().flatten());
            let ask = json!({
                "expression": "document.readyState === 'loading' && document.documentElement.childElementCount === 0",
                "target": {"context": page["context"]},
                "awaitPromise": false,
            });
            let asked = bidi.send_raw("script.evaluate", ask);
            let answer = tokio::time::timeout(Duration::from_secs(5), asked).await;
            if answer.is_ok_and(|said| said.is_ok_and(|said| said["result"]["value"] == json!(true))) {
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// Gives the window exactly this inner size, or its own again.
    pub async fn viewport(&self, size: Option<(u32, u32)>) -> Step {
        match self.engine {
            Engine::Chromium => {
                let cdp = self.driver.cdp();
                match size {
                    Some((width, height)) => {
                        let metrics = json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": false});
                        cdp.send_raw("Emulation.setScrollbarsHidden", json!({"hidden": true})).await?;
                        cdp.send_raw("Emulation.setDeviceMetricsOverride", metrics).await?
                    }
                    None => cdp.send_raw("Emulation.clearDeviceMetricsOverride", json!({})).await?,
                };
            }
            Engine::Firefox => {
                let bidi = self.driver.bidi().await?;
                let window = self.driver.window().await?;
                let size = size.map(|(width, height)| json!({"width": width, "height": height}));
                bidi.send_raw(
                    "browsingContext.setViewport",
                    json!({"context": window.to_string(), "viewport": size}),
                )
                .await?;
            }
        }
        Ok(())
    }

    /// Runs a function before any script of every page opened from now on. Gives its id, for [`Browser::forget`].
    pub async fn beforehand(&self, function: &str) -> Step<String> {
        let bidi = self.driver.bidi().await?;
        let added =
            bidi.send_raw("script.addPreloadScript", json!({"functionDeclaration": function})).await?;
        Ok(added["script"].as_str().ok_or("no id for the script")?.to_owned())
    }

    /// Takes back what [`Browser::beforehand`] added.
    pub async fn forget(&self, script: &str) -> Step {
        let bidi = self.driver.bidi().await?;
        bidi.send_raw("script.removePreloadScript", json!({"script": script})).await?;
        Ok(())
    }

    /// Says goodbye, at most ten seconds long, and ends driver and browser.
    pub async fn quit(self) {
        self.listener.abort();
        let _ = tokio::time::timeout(Duration::from_secs(10), self.driver.quit()).await;
        drop(self.group);
        let _ = std::fs::remove_dir_all(self.folder);
    }
}

/// Whatever was heard so far.
pub fn lock(heard: &Heard) -> std::sync::MutexGuard<'_, Vec<String>> {
    heard.lock().unwrap_or_else(std::sync::PoisonError::into_inner)
}

fn chromium(port: u16, folder: &std::path::Path, setting: Setting) -> Step<(Command, Capabilities)> {
    let mut command = Command::new(places::program("CHROMEDRIVER", "chromedriver")?);
    command.arg(format!("--port={port}"));
    let language = if setting.spanish { "es-US" } else { "en-US" };
    let mut arguments = vec![
        "--headless=new".to_owned(),
        "--disable-dev-shm-usage".to_owned(),
        "--disable-quic".to_owned(),
        "--no-first-run".to_owned(),
        "--disable-background-networking".to_owned(),
        "--disable-component-update".to_owned(),
        "--disable-sync".to_owned(),
        format!("--lang={language}"),
        format!("--user-data-dir={}", folder.join("profile").display()),
        "--window-size=1280,1000".to_owned(),
    ];
    if is_root() {
        arguments.push("--no-sandbox".to_owned());
    }
    if setting.dark {
        arguments.push("--blink-settings=preferredColorScheme=0".to_owned());
    }
    let mut preferences = json!({
        "download.default_directory": folder.join("downloads"),
        "intl.accept_languages": language,
    });
    if setting.storage_refused {
        preferences["profile.default_content_setting_values.cookies"] = json!(2);
    }
    let options = json!({
        "binary": places::program("CHROMIUM", "chromium")?,
        "args": arguments,
        "prefs": preferences,
    });
    let mut capabilities = Capabilities::new();
    capabilities.set("browserName", "chrome")?;
    capabilities.set("webSocketUrl", true)?;
    capabilities.set("unhandledPromptBehavior", "ignore")?;
    capabilities.set("goog:chromeOptions", options)?;
    Ok((command, capabilities))
}

fn firefox(port: u16, folder: &std::path::Path, setting: Setting) -> Step<(Command, Capabilities)> {
    let mut command = Command::new(places::program("GECKODRIVER", "geckodriver")?);
    command.args(["--port", &port.to_string(), "--websocket-port", &free_port()?.to_string()]);
    let mut preferences = json!({
        "browser.download.folderList": 2,
        "browser.download.dir": folder.join("downloads"),
        "dom.storageManager.prompt.testing": true,
        "dom.storageManager.prompt.testing.allow": true,
        "intl.accept_languages": if setting.spanish { "es-US, es" } else { "en-US, en" },
        "app.update.enabled": false,
        "app.update.disabledForTesting": true,
        "datareporting.policy.dataSubmissionEnabled": false,
        "datareporting.healthreport.uploadEnabled": false,
        "network.captive-portal-service.enabled": false,
        "network.connectivity-service.enabled": false,
        "browser.safebrowsing.malware.enabled": false,
        "browser.safebrowsing.phishing.enabled": false,
        "browser.safebrowsing.downloads.remote.enabled": false,
        "extensions.update.enabled": false,
    });
    if setting.storage_refused {
        preferences["dom.storage.enabled"] = json!(false);
    }
    if setting.dark {
        preferences["layout.css.prefers-color-scheme.content-override"] = json!(0);
    }
    let options = json!({
        "binary": places::program("FIREFOX", "firefox-esr").or_else(|_| places::program("FIREFOX", "firefox"))?,
        "args": ["-headless", "-profile", folder.join("profile"), "--width", "1280", "--height", "1000"],
        "prefs": preferences,
    });
    let mut capabilities = Capabilities::new();
    capabilities.set("browserName", "firefox")?;
    capabilities.set("webSocketUrl", true)?;
    capabilities.set("unhandledPromptBehavior", "ignore")?;
    capabilities.set("moz:firefoxOptions", options)?;
    Ok((command, capabilities))
}

fn is_root() -> bool {
    Command::new("id").arg("-u").output().is_ok_and(|said| said.stdout.trim_ascii() == b"0")
}

/// Reads which engines a run is to use: `BROWSERS=chromium,firefox`, all of them without it.
pub fn chosen() -> Result<Vec<Engine>, Fault> {
    let Some(text) = std::env::var("BROWSERS").ok().filter(|text| !text.trim().is_empty()) else {
        return Ok(Engine::ALL.to_vec());
    };
    text.split([',', ' '])
        .filter(|name| !name.is_empty())
        .map(|name| {
            Engine::ALL
                .into_iter()
                .find(|engine| engine.name() == name)
                .ok_or_else(|| format!("BROWSERS names an engine without journeys: {name}").into())
        })
        .collect()
}

/// A value that a driver gave, as text for a message.
pub fn shown(value: &Value) -> String {
    let text = value.to_string();
    if text.chars().count() > 2_000 { text.chars().take(2_000).chain("…".chars()).collect() } else { text }
}
