//! From one version to the next with a job open.

use super::{offline, sheet};
use crate::Journey;
use driving::Step;
use driving::beforehand::LOADS;
use driving::page::Page;
use serde_json::json;
use std::sync::Arc;
use std::time::Duration;

/// A sentence that stands on every screen, and what the next version makes of it.
const NOW: &str = "nothing is sent anywhere";
const NEXT: &str = "nothing is ever sent anywhere";

async fn loads(page: &Page) -> Step<u64> {
    Ok(page.run("return pageLoads()", vec![]).await?.as_u64().unwrap_or(0))
}

async fn caches(page: &Page) -> Step<Vec<String>> {
    let names = page.run_async("caches.keys().then(done)", vec![]).await?;
    Ok(names.as_array().into_iter().flatten().filter_map(|one| one.as_str().map(str::to_owned)).collect())
}

/// What the page does when it comes back to the front: it looks for a newer version.
async fn comes_to_front(page: &Page) -> Step {
    page.run("moveClock?.(1); dispatchEvent(new Event('focus'))", vec![]).await?;
    Ok(())
}

/// The first visit never reloads; an upload that broke off is never taken; a whole one is offered and waits;
/// put away, it is offered again at the next visit; accepted, it comes with the job kept and one cache left.
pub async fn by_consent(journey: Arc<Journey>) -> Step {
    journey.beforehand(LOADS).await?;
    journey.beforehand(driving::beforehand::CLOCK).await?;
    for part in
        ["Failed to load", "Failed to fetch", "NetworkError", "sw.js", "ServiceWorker", "service worker"]
    {
        journey.provokes(part);
    }
    let name = |version: &str| format!("{version}-{}", journey.engine.name());
    let next = journey.built.next(&name("next"), NOW, NEXT)?;
    let torn = journey.built.next(&name("torn"), NOW, "Torn")?;
    std::fs::remove_file(torn.folder.join(torn.here()?).join("words/en/findings.json"))?;

    let mut site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    offline::kept_on_device(&page).await?;
    page.write("surface-101-length", "151 ft").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("151 ft")).await?;
    assert_eq!(loads(&page).await?, 1, "the first visit loads once");
    let before = caches(&page).await?;
    assert_eq!(before.len(), 1, "{before:?}");

    site.replace(&torn).await?;
    let script = "navigator.serviceWorker.getRegistration().then(async worker => {
        await worker.update().catch(() => 0);
        const over = () => worker.installing ? setTimeout(over, 20) : done(!!worker.waiting);
        over();
    })";
    assert_eq!(page.run_async(script, vec![]).await?, json!(false), "a torn upload is taken");
    assert_eq!(page.count("[data-notice=update]").await?, 0, "a torn upload is offered");
    assert_eq!(caches(&page).await?, before, "a torn upload leaves a cache behind");

    site.replace(&next).await?;
    comes_to_front(&page).await?;
    page.until("the offer", "return [...document.querySelectorAll('[data-notice=update]')].some(visible)")
        .await?;
    tokio::time::sleep(Duration::from_millis(500)).await;
    assert_eq!(loads(&page).await?, 1, "nothing reloads by itself");
    assert_eq!(page.value("surface-101-length").await?, "151 ft");
    page.until_says("#foot", NOW).await?;

    page.press_in("[data-notice=update]", "Put away").await?;
    page.reload().await?;
    page.ready().await?;
    page.until_says("#foot", NOW).await?;
    page.until(
        "the offer again",
        "return [...document.querySelectorAll('[data-notice=update]')].some(visible)",
    )
    .await?;
    // What was typed a moment ago comes along.
    page.write("surface-101-band", "11 in").await?;
    page.press_in("[data-notice=update]", "Use it now").await?;
    page.until(
        "the new version",
        &format!(
            "return globalThis.foamwrightReady && document.getElementById('foot').textContent.includes({})",
            json!(NEXT)
        ),
    )
    .await?;
    assert_eq!(page.value("surface-101-length").await?, "151 ft");
    assert_eq!(page.value("surface-101-band").await?, "11 in");
    assert_eq!(loads(&page).await?, 3, "accepting loads once");
    page.until("one cache is left", "return true").await?;
    let after = caches(&page).await?;
    assert_eq!(after.len(), 1, "{after:?}");
    assert_ne!(after, before);

    site.kill();
    page.open_ready("?offline#/surface/101").await?;
    page.until_says("#foot", NEXT).await?;
    Ok(())
}
