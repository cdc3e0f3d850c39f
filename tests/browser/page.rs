//! The words of the page: what a person does there and what they see. Journeys speak only these.

use crate::engines::{Browser, shown};
use crate::{Step, places};
use serde_json::{Value, json};
use std::fmt::Write as _;
use std::sync::Arc;
use std::time::{Duration, Instant};
use thirtyfour::error::{WebDriverError, WebDriverErrorInner};
use thirtyfour::{By, Key, TypingData, WebElement};

/// How long anything may take before a journey gives up on it.
pub const PATIENCE: Duration = Duration::from_secs(10);

/// Found in every script: what is visible, what it is called, what can be pressed.
const WORDS: &str = r#"
const visible = one => one.checkVisibility({ visibilityProperty: true }) && one.getClientRects().length > 0;
const tidy = text => (text ?? '').replace(/\s+/g, ' ').trim();
const called = one => {
  const by = (one.getAttribute('aria-labelledby') ?? '').split(' ').filter(Boolean).map(id => document.getElementById(id)?.textContent ?? '').join(' ');
  return tidy(by || one.getAttribute('aria-label') || (one.labels?.length ? one.labels[0].textContent : '') || one.textContent || one.getAttribute('title'));
};
const PRESSES = 'button, a[href], summary, select, input:not([type=hidden]), textarea, [role=button], [role=tab], [role=switch]';
const presses = root => [...root.querySelectorAll(PRESSES)].filter(visible);
"#;

/// A page open in a browser.
#[derive(Clone)]
pub struct Page {
    browser: Arc<Browser>,
    address: String,
    patience: Duration,
}

/// A fault that axe names: its rule and where.
pub type AxeFault = String;

impl Page {
    /// The page at an address, once something calls it.
    pub fn new(browser: Arc<Browser>, address: String) -> Self {
        Self { browser, address, patience: PATIENCE }
    }

    /// The same page, on which nothing is waited for longer than this.
    #[must_use]
    pub fn hurried(&self, patience: Duration) -> Self {
        Self { patience, ..self.clone() }
    }

    /// The browser.
    pub fn browser(&self) -> &Browser {
        &self.browser
    }

    /// Opens the site with what follows its address (`?query#fragment`), from a blank page, so that nothing of
    /// the page before is still there.
    pub async fn open(&self, rest: &str) -> Step {
        self.browser.visit("about:blank").await?;
        self.browser.visit(&format!("{}{rest}", self.address)).await
    }

    /// Opens the site and waits until the sheet is worked out.
    pub async fn open_ready(&self, rest: &str) -> Step {
        self.open(rest).await?;
        self.ready().await
    }

    /// Waits until the page has worked out the job that it shows.
    pub async fn ready(&self) -> Step {
        self.until(
            "the page is ready",
            "return globalThis.foamwrightReady === true && !document.querySelector('#wait')",
        )
        .await?;
        Ok(())
    }

    /// Goes to a fragment, as a link of the page does.
    pub async fn go(&self, fragment: &str) -> Step {
        self.run("location.hash = arguments[0]", vec![json!(fragment)]).await?;
        self.until(
            &format!("the page is at {fragment}"),
            &format!("return location.hash === {}", json!(fragment)),
        )
        .await?;
        // The screen may be fetched first; whether one that cannot be had is said is for the journey to see.
        let stands = "return document.querySelector('#view')?.dataset.shows === location.hash";
        let _ = self.hurried(Duration::from_secs(5)).until("its screen stands", stands).await;
        self.settled().await
    }

    /// Waits until two frames have been drawn: what follows from an event is then there.
    pub async fn settled(&self) -> Step {
        self.run_async("requestAnimationFrame(() => requestAnimationFrame(() => done(true)))", vec![])
            .await?;
        Ok(())
    }

    /// Loads the page again as a person does; a driver's own refresh goes past the worker in one engine.
    pub async fn reload(&self) -> Step {
        self.run("window.before_reload = true; location.reload()", vec![]).await?;
        let started = Instant::now();
        loop {
            match self
                .run("return window.before_reload !== true && document.readyState === 'complete'", vec![])
                .await
            {
                Ok(Value::Bool(true)) => return Ok(()),
                // Between two documents there is none to ask.
                outcome if started.elapsed() > self.patience => {
                    return Err(format!("the page does not load again: {outcome:?}").into());
                }
                _ => tokio::time::sleep(Duration::from_millis(20)).await,
            }
        }
    }

    /// Runs a script with the words above.
    pub async fn run(&self, script: &str, arguments: Vec<Value>) -> Step<Value> {
        Ok(self.browser.driver.execute(format!("{WORDS}{script}"), arguments).await?.json().clone())
    }

    /// Runs a script that calls `done(value)` in the end.
    pub async fn run_async(&self, script: &str, arguments: Vec<Value>) -> Step<Value> {
        let script = format!("{WORDS}const done = arguments[arguments.length - 1];\n{script}");
        Ok(self.browser.driver.execute_async(script, arguments).await?.json().clone())
    }

    /// Waits until a script gives something true, and gives it; otherwise says what it last gave.
    pub async fn until(&self, what: &str, script: &str) -> Step<Value> {
        let started = Instant::now();
        loop {
            let last = match self.run(script, vec![]).await {
                Ok(value) if truthy(&value) => return Ok(value),
                Ok(value) => shown(&value),
                Err(error) => error.to_string(),
            };
            if started.elapsed() > self.patience {
                return Err(
                    format!("not after {} s: {what}. Last seen: {last}", self.patience.as_secs()).into()
                );
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
    }

    /// Waits until the visible text of the first match of a selector holds a text.
    pub async fn until_says(&self, selector: &str, text: &str) -> Step {
        let started = Instant::now();
        loop {
            let last = self.text(selector).await.unwrap_or_else(|error| error.to_string());
            if last.contains(text) {
                return Ok(());
            }
            if started.elapsed() > self.patience {
                return Err(format!("{selector} does not say “{text}” but “{last}”").into());
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
    }

    /// The visible text of the first visible match of a selector, its spaces made single.
    pub async fn text(&self, selector: &str) -> Step<String> {
        let script = "const one = [...document.querySelectorAll(arguments[0])].find(visible); return one ? tidy(one.innerText ?? one.textContent) : null";
        let text = self.run(script, vec![json!(selector)]).await?;
        Ok(text.as_str().ok_or_else(|| format!("nothing visible at {selector}"))?.to_owned())
    }

    /// How many visible matches a selector has.
    pub async fn count(&self, selector: &str) -> Step<u64> {
        let script = "return [...document.querySelectorAll(arguments[0])].filter(visible).length";
        Ok(self.run(script, vec![json!(selector)]).await?.as_u64().unwrap_or(0))
    }

    /// The field with this DOM id: `part-id-field`.
    pub async fn field(&self, id: &str) -> Step<WebElement> {
        self.until(
            &format!("the field {id} is there"),
            &format!("return !!document.getElementById({})", json!(id)),
        )
        .await?;
        Ok(self.browser.driver.find(By::Id(id)).await?)
    }

    /// What stands in a field.
    pub async fn value(&self, id: &str) -> Step<String> {
        self.field(id).await?;
        let value =
            self.run("return document.getElementById(arguments[0])?.value ?? null", vec![json!(id)]).await?;
        Ok(value.as_str().ok_or_else(|| format!("no field {id}"))?.to_owned())
    }

    /// Replaces what stands in a field, as people do: all of it marked, then typed over.
    pub async fn write(&self, id: &str, text: &str) -> Step {
        let started = Instant::now();
        loop {
            let written = self.type_over(id, text).await;
            if !self.look_again(&written, started).await {
                written?;
                break;
            }
        }
        let stands = self.value(id).await?;
        if stands != text {
            return Err(format!("“{text}” was typed into {id}, “{stands}” stands there").into());
        }
        Ok(())
    }

    async fn type_over(&self, id: &str, text: &str) -> Step {
        let field = self.field(id).await?;
        field.scroll_into_view().await?;
        field.focus().await?;
        field.send_keys(Key::Control + "a").await?;
        match text {
            "" => field.send_keys(Key::Delete + "").await?,
            text => field.send_keys(text).await?,
        }
        Ok(())
    }

    /// Whether the page drew a thing anew between finding and using it, so that a person would look again.
    /// Nothing has been pressed then, and what was typed is typed over.
    async fn look_again(&self, outcome: &Step, started: Instant) -> bool {
        let fault = outcome.as_ref().err().and_then(|fault| fault.downcast_ref::<WebDriverError>());
        let anew = matches!(
            fault.map(WebDriverError::as_inner),
            Some(WebDriverErrorInner::StaleElementReference(_))
        );
        if anew {
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
        anew && started.elapsed() < self.patience
    }

    /// The line that tells what is understood or wrong about a field: everything that describes it.
    pub async fn told_about(&self, id: &str) -> Step<String> {
        let script = "const one = document.getElementById(arguments[0]);
            return tidy((one?.getAttribute('aria-describedby') ?? '').split(' ').filter(Boolean).map(id => document.getElementById(id))
                .filter(one => one && visible(one)).map(one => one.innerText).join(' '))";
        Ok(self.run(script, vec![json!(id)]).await?.as_str().unwrap_or_default().to_owned())
    }

    /// Waits until what is told about a field holds a text.
    pub async fn until_told(&self, id: &str, text: &str) -> Step {
        let started = Instant::now();
        loop {
            let last = self.told_about(id).await?;
            if last.contains(text) {
                return Ok(());
            }
            if started.elapsed() > self.patience {
                return Err(format!("{id} is not told “{text}” but “{last}”").into());
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
    }

    /// Presses the one visible thing in a place that is called so, or starts so if none is called exactly so.
    pub async fn press_in(&self, place: &str, name: &str) -> Step {
        let started = Instant::now();
        loop {
            let pressed = press_on(self.pressable(place, name).await?).await;
            if !self.look_again(&pressed, started).await {
                return pressed;
            }
        }
    }

    /// Presses what is called so in the group under a heading.
    pub async fn press_under(&self, heading: &str, name: &str) -> Step {
        let script = "const at = [...document.querySelectorAll('h2, h3, legend')].find(one => visible(one) && tidy(one.textContent) === arguments[0]);
            for (let place = at; place; place = place.parentElement) {
              const one = presses(place).find(one => called(one).startsWith(arguments[1]));
              if (one) return one;
            }
            return null";
        let missing = format!("nothing under “{heading}” is called “{name}”");
        self.press_found(script, vec![json!(heading), json!(name)], &missing).await
    }

    /// Presses what a script finds, as soon as it finds something.
    async fn press_found(&self, script: &str, arguments: Vec<Value>, missing: &str) -> Step {
        let started = Instant::now();
        loop {
            let given = self.browser.driver.execute(format!("{WORDS}{script}"), arguments.clone()).await?;
            if given.json().is_null() {
                if started.elapsed() > self.patience {
                    return Err(missing.into());
                }
                tokio::time::sleep(Duration::from_millis(25)).await;
                continue;
            }
            let pressed = press_on(given.element()?).await;
            if !self.look_again(&pressed, started).await {
                return pressed;
            }
        }
    }

    /// Presses what is called so, anywhere on the page.
    pub async fn press(&self, name: &str) -> Step {
        self.press_in("body", name).await
    }

    /// The visible thing to press that is called so.
    pub async fn pressable(&self, place: &str, name: &str) -> Step<WebElement> {
        let script = "const root = [...document.querySelectorAll(arguments[0])].filter(visible);
            const all = root.flatMap(presses);
            const one = all.find(one => called(one) === arguments[1]) ?? all.find(one => called(one).startsWith(arguments[1]));
            if (one) return one.matches('[type=radio], [type=checkbox]') ? one.labels[0] ?? one : one;
            return `there is only: ${[...new Set(all.map(called))].join(' | ')}`";
        let started = Instant::now();
        loop {
            let given = self
                .browser
                .driver
                .execute(format!("{WORDS}{script}"), vec![json!(place), json!(name)])
                .await?;
            match given.json().as_str() {
                None => return Ok(given.element()?),
                Some(others) if started.elapsed() > self.patience => {
                    return Err(format!("nothing in {place} is called “{name}”; {others}").into());
                }
                Some(_) => tokio::time::sleep(Duration::from_millis(25)).await,
            }
        }
    }

    /// Presses the first visible match of a selector.
    pub async fn press_at(&self, selector: &str) -> Step {
        let script = "return [...document.querySelectorAll(arguments[0])].find(visible) ?? null";
        self.press_found(script, vec![json!(selector)], &format!("{selector} cannot be seen")).await
    }

    /// Sends keys to whatever has the focus.
    pub async fn keys(&self, keys: impl Into<TypingData>) -> Step {
        self.browser.driver.action_chain().send_keys(keys).perform().await?;
        Ok(())
    }

    /// What has the focus: its DOM id and its name.
    pub async fn focused(&self) -> Step<(String, String)> {
        let script = "const one = document.activeElement; return [one?.id ?? '', one && one !== document.body ? called(one).slice(0, 60) : '']";
        let at = self.run(script, vec![]).await?;
        Ok((at[0].as_str().unwrap_or_default().to_owned(), at[1].as_str().unwrap_or_default().to_owned()))
    }

    /// Goes on with Tab until something of this id or name has the focus; at most so many times.
    pub async fn tab_to(&self, wanted: &str, most: usize) -> Step {
        let mut seen = Vec::new();
        for _ in 0..most {
            self.keys(Key::Tab + "").await?;
            let (id, name) = self.focused().await?;
            if id == wanted || name.starts_with(wanted) {
                return Ok(());
            }
            seen.push(if id.is_empty() { name } else { id });
        }
        Err(format!("{wanted} is not reached by Tab in {most} steps; reached: {}", seen.join(" | ")).into())
    }

    /// Lets axe look at what is shown: every violation, each with its rule and place. What axe could not
    /// decide is printed and is not counted as passed.
    pub async fn axe(&self) -> Step<(Vec<AxeFault>, Vec<String>)> {
        if self.run("return !globalThis.axe", vec![]).await? == json!(true) {
            let source = std::fs::read_to_string(places::from_npm("axe-core/axe.min.js")?)?;
            self.browser.driver.execute(source, vec![]).await?;
        }
        let script = "axe.run(document, { resultTypes: ['violations', 'incomplete'], preload: false, iframes: false }).then(found => done({
            violations: found.violations.flatMap(rule => rule.nodes.map(node => `${rule.id}: ${node.target.join(' ')} (${rule.help}) ${node.html.slice(0, 160)}`)),
            undecided: found.incomplete.map(rule => rule.id) }),
            error => done({ violations: [String(error)], undecided: [] }))";
        let found = self.run_async(script, vec![]).await?;
        Ok((texts(&found["violations"]), texts(&found["undecided"])))
    }

    /// What does not fit a phone or a glove: sideways scrolling, and presses less than 48 px high.
    pub async fn misfits(&self) -> Step<Vec<String>> {
        let script = r#"
            const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
            // To blame is the innermost element without which the page would fit.
            const blame = () => [...document.querySelectorAll('body *')].filter(one => {
              if (!visible(one) || !(one instanceof HTMLElement || one instanceof SVGElement)) return false;
              const before = one.style.display;
              one.style.display = 'none';
              const fits = document.documentElement.scrollWidth <= document.documentElement.clientWidth;
              one.style.display = before;
              return fits;
            }).pop();
            const found = [];
            if (wide > 0) {
              const one = blame();
              found.push(`scrolls sideways by ${wide} px: ${one?.tagName.toLowerCase()}.${one?.getAttribute('class') ?? ''}#${one?.id} “${one ? called(one).slice(0, 60) : ''}”`);
            }
            for (const one of presses(document)) {
                const style = getComputedStyle(one);
                if (one.tagName === 'A' && style.display === 'inline' && one.closest('p, li, dd')) continue;
                const aside = style.position === 'absolute' && (style.opacity === '0' || style.clipPath !== 'none' || one.getBoundingClientRect().bottom <= 0);
                const target = one.matches('[type=checkbox], [type=radio], [type=file]') ? (one.closest('label') ?? one.labels?.[0] ?? one) : one;
                if (aside && target === one) continue;
                const box = target.getBoundingClientRect();
                if (box.height < 47.5) found.push(`${Math.round(box.height * 10) / 10} px high: ${one.tagName.toLowerCase()}.${one.getAttribute('class') ?? ''}#${one.id} “${called(one).slice(0, 40)}”`);
            }
            return found"#;
        Ok(texts(&self.run(script, vec![]).await?))
    }

    /// Opens everything on a screen that opens in place.
    pub async fn open_all(&self) -> Step {
        self.until(
            "the screen has a heading",
            "return !!document.querySelector('#view h1')?.textContent.trim()",
        )
        .await?;
        let script = "for (const one of document.querySelectorAll('#view button[aria-expanded=false], #view details:not([open]) > summary')) one.click()";
        self.run(script, vec![]).await?;
        self.settled().await?;
        // What is fetched when it is opened, and what opens within it.
        self.until(
            "all that was opened is there",
            "return !document.querySelector('#view details[open] > .folded:empty')",
        )
        .await?;
        self.run(script, vec![]).await?;
        self.settled().await
    }

    /// The list of things that can be pressed, for messages and for reading a new page.
    pub async fn seen(&self) -> Step<String> {
        let script = "return [location.href, tidy(document.body.innerText), ...presses(document).map(one => `[${one.tagName.toLowerCase()}#${one.id} ${called(one)}]`)].join('\\n')";
        Ok(self.run(script, vec![]).await?.as_str().unwrap_or_default().to_owned())
    }

    /// Everything kept in the local storage of this origin.
    pub async fn kept(&self) -> Step<Vec<(String, String)>> {
        let all = self.run("return Object.entries(localStorage)", vec![]).await?;
        Ok(all
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(|pair| Some((pair[0].as_str()?.to_owned(), pair[1].as_str()?.to_owned())))
            .collect())
    }

    /// Waits for a file whose name ends so among the downloads, whole and no longer growing, and takes it away.
    pub async fn downloaded(&self, ending: &str) -> Step<std::path::PathBuf> {
        let started = Instant::now();
        loop {
            let mut names = String::new();
            for entry in std::fs::read_dir(&self.browser.downloads)? {
                let path = entry?.path();
                let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
                if name.ends_with(ending) && std::fs::metadata(&path)?.len() > 0 {
                    // Within the folder of this browser: the other engine downloads files of the same names.
                    let taken = self.browser.downloads.join("taken");
                    std::fs::create_dir_all(&taken)?;
                    let taken = taken.join(name);
                    std::fs::rename(&path, &taken)?;
                    return Ok(taken);
                }
                let _ = write!(names, "{name} ");
            }
            if started.elapsed() > self.patience {
                return Err(format!("no download ends with {ending}; there are: {names}").into());
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
    }
}

/// Presses a thing, in sight.
async fn press_on(element: WebElement) -> Step {
    element.scroll_into_view().await?;
    element.click().await?;
    Ok(())
}

fn truthy(value: &Value) -> bool {
    match value {
        Value::Null => false,
        Value::Bool(given) => *given,
        Value::Number(given) => given.as_f64() != Some(0.0),
        Value::String(given) => !given.is_empty(),
        Value::Array(_) | Value::Object(_) => true,
    }
}

fn texts(value: &Value) -> Vec<String> {
    value.as_array().into_iter().flatten().filter_map(|one| one.as_str().map(str::to_owned)).collect()
}
