//! The core traps, or does not arrive at all.

use super::{offline, sheet};
use crate::Journey;
use driving::Step;
use driving::beforehand::TRAPS;
use serde_json::json;
use std::sync::Arc;

/// A true trap of the wasm in the middle of typing: the draft is kept, it is said once, a fresh core is loaded and
/// the figures are right again.
pub async fn in_a_call(journey: Arc<Journey>) -> Step {
    journey.beforehand(TRAPS).await?;
    journey.provokes("unreachable");
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    assert_eq!(page.run("return coresMade", vec![]).await?, json!(1));
    page.run("window.plannedTraps = 1", vec![]).await?;
    page.write("surface-101-length", "120 ft").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("120 ft")).await?;
    page.until("a fresh core", "return coresMade === 2 && plannedTraps === 0").await?;
    page.until_says("#view", "231.3 ft²").await?;
    assert_eq!(page.value("surface-101-length").await?, "120 ft");
    assert_eq!(page.count("[data-notice=trap]").await?, 1, "said once");
    page.write("surface-101-band", "10 in").await?;
    page.until_says("#view", "250 ft²").await?;

    // A second one later says nothing new; the page still goes on.
    page.press_in("[data-notice=trap]", "Put away").await?;
    page.run("window.plannedTraps = 1", vec![]).await?;
    page.write("surface-101-band", "9 in").await?;
    page.until_says("#view", "225 ft²").await?;
    assert_eq!(page.run("return coresMade", vec![]).await?, json!(3));
    assert_eq!(page.count("[data-notice=trap]").await?, 0);
    Ok(())
}

/// A job on which every call traps is asked twice, then left alone and said so; changing it goes on.
pub async fn in_every_call(journey: Arc<Journey>) -> Step {
    journey.beforehand(TRAPS).await?;
    journey.provokes("unreachable");
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    page.run("window.plannedTraps = 1e9", vec![]).await?;
    page.write("surface-101-band", "9").await?;
    page.until(
        "said that it is stuck",
        "return [...document.querySelectorAll('[data-notice=stuck]')].some(visible)",
    )
    .await?;
    let asked = page.run("return estimatesMade", vec![]).await?;
    sheet::until_kept(&page, |record| record["job"]["surfaces"][0]["entries"].to_string().contains("\"9\""))
        .await?;
    page.settled().await?;
    assert_eq!(page.run("return estimatesMade", vec![]).await?, asked, "not asked again and again");
    page.run("window.plannedTraps = 0", vec![]).await?;
    page.write("surface-101-band", "12 in").await?;
    // 148 ft × 1 ft.
    page.until_says("#view", "148 ft²").await?;
    Ok(())
}

/// The core's file is missing, as after an upload that broke off: the jobs on the shelf are listed and handed
/// over as files, and are still there when the site is whole again.
pub async fn core_missing(journey: Arc<Journey>) -> Step {
    for part in [
        "core_bg.wasm",
        "Failed to load",
        "404",
        "WebAssembly",
        "MIME",
        "wasm",
        "service worker",
        "ServiceWorker",
        "sw.js",
    ] {
        journey.provokes(part);
    }
    // The next version, so that nothing of it lies in the browser's own cache.
    let next = journey.built.next(
        &format!("core-{}", journey.engine.name()),
        "nothing is sent anywhere",
        "nothing at all is sent",
    )?;
    let torn = next.without(&format!("no-core-{}", journey.engine.name()), "core_bg.wasm")?;
    let mut site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "133 ft").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("133 ft")).await?;
    offline::kept_on_device(&page).await?;
    let script = "navigator.serviceWorker.ready.then(one => one.unregister()).then(() => caches.keys()).then(all => Promise.all(all.map(one => caches.delete(one)))).then(() => done(true))";
    page.run_async(script, vec![]).await?;

    site.replace(&torn).await?;
    page.open("?torn").await?;
    page.until_says("#view", "could not be laid out").await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");
    let (violations, _) = page.axe().await?;
    assert!(violations.is_empty(), "{violations:?}");
    page.press_in("#view", "Save “Larkspur Lane").await?;
    let file = page.downloaded(".foamwright.json").await?;
    let job: serde_json::Value = serde_json::from_str(&std::fs::read_to_string(file)?)?;
    assert_eq!(job["format"], "foamwright-job");
    assert!(job.to_string().contains("133 ft"));

    site.replace(&journey.built.clone()).await?;
    page.press_in("#view", "Load the page again").await?;
    page.until("the page stands again", "return globalThis.foamwrightReady === true").await?;
    page.go("#/surface/101").await?;
    assert_eq!(page.value("surface-101-length").await?, "133 ft");
    Ok(())
}
