//! With the server killed.

use super::sheet;
use crate::Journey;
use driving::Step;
use driving::page::Page;
use serde_json::json;
use std::sync::Arc;
use std::time::Duration;

/// Whether a file that nobody can have kept comes from the server.
pub async fn reaches_server(page: &Page) -> Step<bool> {
    let script = "fetch('./never-kept.txt?' + Math.random(), { cache: 'no-store' }).then(() => done(true), () => done(false))";
    Ok(page.run_async(script, vec![]).await? == json!(true))
}

/// Waits until the worker has kept everything and answers for the page.
pub async fn kept_on_device(page: &Page) -> Step {
    page.until(
        "the worker answers for the page",
        "return navigator.serviceWorker.controller?.state === 'activated' || navigator.serviceWorker.controller?.scriptURL",
    )
    .await?;
    Ok(())
}

/// The page, its core and its words open with the server killed: under a sub-path, with a query that was never
/// asked for online and with a fragment; and do not once the worker and its cache are gone.
pub async fn opens_without_server(journey: Arc<Journey>) -> Step {
    let mut site = journey.site().await?;
    let page = journey.page(&site);
    for part in ["Failed to load", "ERR_", "NetworkError", "never-kept", "Load failed", "fetch"] {
        journey.provokes(part);
    }
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "150 ft").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("150 ft")).await?;
    kept_on_device(&page).await?;
    assert!(reaches_server(&page).await?, "the control reaches the server while it runs");

    site.kill();
    for rest in ["", "?from=a-message#/surface/101", "index.html?x=1#/kits", "#/ready"] {
        page.open_ready(rest).await?;
        assert!(!reaches_server(&page).await?, "the network is not away at {rest}");
        page.until("the screen has a heading", "return !!document.querySelector('#view h1')").await?;
    }
    // Every screen, also those that no one opened while there was a network; in the other language too.
    for screen in sheet::SCREENS {
        page.go(screen).await?;
        page.until(
            &format!("{screen} has a heading"),
            "return !!document.querySelector('#view h1')?.textContent.trim()",
        )
        .await?;
    }
    page.go("#/surface/101").await?;
    assert_eq!(page.value("surface-101-length").await?, "150 ft", "the job is kept");
    page.write("surface-101-band", "10 in").await?;
    // 2 × (150 + 30) ft × 10 in: 300 ft² before the joist ends.
    page.until_says("#view", "300 ft²").await?;
    page.reload().await?;
    page.ready().await?;
    page.until_says("#view", "300 ft²").await?;

    // The negative control: without worker and cache the same address must not open.
    let script = "Promise.all([navigator.serviceWorker.getRegistrations().then(all => Promise.all(all.map(one => one.unregister()))),
        caches.keys().then(all => Promise.all(all.map(one => caches.delete(one))))]).then(() => done(true))";
    page.run_async(script, vec![]).await?;
    let opened = page.hurried(Duration::from_millis(1_500)).open_ready("?again#/kits").await;
    assert!(opened.is_err(), "opens although nothing is kept: the test proves nothing");

    site.again().await?;
    page.open_ready("#/surface/101").await?;
    assert_eq!(page.value("surface-101-length").await?, "150 ft", "the job outlives the offline copy");
    Ok(())
}
