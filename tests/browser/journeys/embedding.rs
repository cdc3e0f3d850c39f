//! What several journeys do with the estimator on somebody else's page.

use crate::Journey;
use driving::Step;
use driving::engines::lock;
use driving::host::Host;
use driving::page::Page;
use driving::site::{Built, Site};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// Runs before the scripts of every page: keeps what is said to it, by messages and by events of the element.
pub const EAR: &str = r"() => {
  globalThis.saidHere = [];
  addEventListener('message', ({ data, origin }) => saidHere.push({ kind: 'message', data, origin, at: performance.now() }));
  for (const name of ['ready', 'height', 'estimate']) {
    addEventListener(`foamwright-${name}`, event => saidHere.push({ kind: name, of: event.target.id, data: event.detail, bubbles: event.bubbles, at: performance.now() }));
  }
}";

/// A page of somebody else's with the estimator in it: the site that it comes from, the server of the page.
pub struct Company {
    pub site: Site,
    pub host: Host,
    pub page: Page,
}

impl Company {
    /// Serves the site and, from another origin, whatever is laid there.
    pub async fn new(journey: &Journey, built: &Built) -> Step<Self> {
        let site = built.serve_noted().await?;
        let host = Host::start()?;
        let page = Page::new(journey.browser.clone(), host.address());
        Ok(Self { site, host, page })
    }

    /// The strictest policy under which the element works.
    pub fn policy(&self) -> String {
        let ours = self.site.origin();
        format!(
            "default-src 'none'; script-src {ours}; frame-src {ours}; connect-src 'self'; img-src 'self'; \
             base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'"
        )
    }

    /// Lays a page with this body at the root of the host, and opens it.
    pub async fn open(&self, policy: &str, body: &str) -> Step {
        self.host.lay_under("", policy, &self.html(body));
        self.page.open("").await
    }

    /// A whole page with this body, and the script that makes the element.
    pub fn html(&self, body: &str) -> String {
        format!(
            "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>A company</title>\
             <meta name=\"viewport\" content=\"width=device-width\">\
             <script type=\"module\" src=\"{}embed.js\"></script></head><body><h1>A company</h1>{body}</body></html>",
            self.site.address()
        )
    }

    /// Goes into the frame of the element with this id.
    pub async fn enter(&self, id: &str) -> Step {
        self.page.browser().driver.enter_default_frame().await?;
        self.page
            .until(
                &format!("the element {id} has a frame"),
                &format!("return !!document.getElementById('{id}')?.shadowRoot?.querySelector('iframe')"),
            )
            .await?;
        let script = "return document.getElementById(arguments[0]).shadowRoot.querySelector('iframe')";
        let frame = self.page.browser().driver.execute(script, vec![json!(id)]).await?.element()?;
        frame.enter_frame().await?;
        Ok(())
    }

    /// Goes into a frame that the page itself holds.
    pub async fn enter_plain(&self, selector: &str) -> Step {
        self.leave().await?;
        let script = "return document.querySelector(arguments[0])";
        let frame = self.page.browser().driver.execute(script, vec![json!(selector)]).await?.element()?;
        frame.enter_frame().await?;
        Ok(())
    }

    /// Goes back to the page around.
    pub async fn leave(&self) -> Step {
        self.page.browser().driver.enter_default_frame().await?;
        Ok(())
    }

    /// Goes into the frame of an element and waits until its estimate stands; stays there.
    pub async fn stands(&self, id: &str) -> Step {
        self.enter(id).await?;
        stands(&self.page).await
    }

    /// How high the frame of an element is, as the page around has it.
    pub async fn height(&self, id: &str) -> Step<f64> {
        let script = "return document.getElementById(arguments[0]).shadowRoot.querySelector('iframe').getBoundingClientRect().height";
        Ok(self.page.run(script, vec![json!(id)]).await?.as_f64().unwrap_or(0.0))
    }

    /// Waits from now until no element has said a height for so long, and gives how many were said in all. In the page
    /// around.
    pub async fn at_rest(&self, long: Duration) -> Step<u64> {
        let from = self.page.run("return performance.now()", vec![]).await?;
        let script = format!(
            "const all = saidHere.filter(one => one.kind === 'height');
             return all.length > 0 && performance.now() - Math.max(all.at(-1).at, {from}) > {} ? all.length : 0",
            long.as_millis()
        );
        let count = self.page.until("the heights have come to rest", &script).await?;
        Ok(count.as_u64().unwrap_or(0))
    }

    /// What was said to the page around of one kind: `message`, `ready`, `height` or `estimate`.
    pub async fn said(&self, kind: &str) -> Step<Vec<Value>> {
        let script = "return saidHere.filter(one => one.kind === arguments[0])";
        let said = self.page.run(script, vec![json!(kind)]).await?;
        Ok(said.as_array().cloned().unwrap_or_default())
    }
}

/// Waits, in the frame, until the estimate stands.
pub async fn stands(page: &Page) -> Step {
    page.until("the estimate stands", "return globalThis.foamwrightReady === true").await?;
    Ok(())
}

/// In the frame: it is exactly as high as what is in it, so that nothing scrolls.
pub async fn fits(page: &Page) -> Step {
    let script = "const { scrollHeight, clientHeight, scrollWidth, clientWidth } = document.documentElement;
        const rest = [scrollHeight - innerHeight, scrollWidth - innerWidth, innerWidth - clientWidth, innerHeight - clientHeight];
        const own = document.documentElement.getBoundingClientRect().height;
        return rest.every(one => one <= 0) && Math.abs(own - innerHeight) <= 1 && getComputedStyle(document.documentElement).overflowY === 'hidden'";
    page.until("the frame is as high as what is in it and has no scroll bar", script).await?;
    Ok(())
}

/// Waits until the console has said something, and gives it.
pub async fn until_heard(journey: &Journey, part: &str) -> Step<String> {
    let started = Instant::now();
    loop {
        if let Some(line) = lock(&journey.browser.heard).iter().find(|line| line.contains(part)) {
            return Ok(line.clone());
        }
        if started.elapsed() > Duration::from_secs(10) {
            return Err(
                format!("the console does not say “{part}”: {:?}", lock(&journey.browser.heard)).into()
            );
        }
        tokio::time::sleep(Duration::from_millis(25)).await;
    }
}
