//! The guards guard: a page with planned faults, on which each of them has to speak.

use crate::Journey;
use driving::engines::{Engine, PAGE_LOAD, lock};
use driving::host::Host;
use driving::page::Page;
use driving::site::Built;
use driving::{Step, places};
use std::sync::Arc;
use std::time::{Duration, Instant};

const FAULTY: &str = r#"<!doctype html><html><head><meta charset="utf-8"><title>Planned faults</title>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; connect-src 'self'">
</head><body><p style="color: red">styled in place</p><img src="planned.png"><button>low</button>
<div class="wide"><pre>wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww</pre></div>
<label>Field <input id="surface-1-length"></label><script src="planned.js"></script></body></html>"#;

const PLANNED: &str =
    "console.error('planned error'); setTimeout(() => { throw new Error('planned throw') });
globalThis.foamwrightReady = true;";

fn faulty(journey: &Journey) -> Step<Built> {
    let folder = places::scratch(&format!("faulty-{}", journey.engine.name()))?;
    std::fs::write(folder.join("index.html"), FAULTY)?;
    std::fs::write(folder.join("planned.js"), PLANNED)?;
    Ok(Built { program: journey.built.program.clone(), folder })
}

pub async fn faults_are_seen(journey: Arc<Journey>) -> Step {
    let built = faulty(&journey)?;
    let site = built.serve().await?;
    let page: Page = journey.page(&site);
    for part in ["planned", "refused by policy", "Content-Security-Policy", "Content Security Policy"] {
        journey.provokes(part);
    }
    page.open_ready("").await?;

    for wanted in
        ["planned error", "planned throw", "refused by policy: style-src-attr", "refused by policy: img-src"]
    {
        let started = Instant::now();
        while !lock(&journey.browser.heard).iter().any(|line| line.contains(wanted)) {
            assert!(
                started.elapsed().as_secs() < 5,
                "not heard: {wanted}; heard: {:?}",
                lock(&journey.browser.heard)
            );
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
    }

    let (violations, _) = page.axe().await?;
    for rule in ["image-alt", "html-has-lang"] {
        assert!(
            violations.iter().any(|one| one.starts_with(rule)),
            "axe does not see {rule}: {violations:?}"
        );
    }

    for size in [(360, 800), (390, 844), (1280, 900)] {
        journey.browser.viewport(Some(size)).await?;
        page.settled().await?;
        let inner = page.run("return [innerWidth, innerHeight]", vec![]).await?;
        assert_eq!(inner, serde_json::json!([size.0, size.1]), "the window has not the size asked for");
    }
    journey.browser.viewport(Some((390, 844))).await?;
    page.settled().await?;
    let misfits = page.misfits().await?;
    assert!(misfits.iter().any(|one| one.starts_with("scrolls sideways")), "{misfits:?}");
    assert!(misfits.iter().any(|one| one.contains("“low”")), "{misfits:?}");

    page.write("surface-1-length", "12' 6 1/2\"").await?;
    page.write("surface-1-length", "8'").await?;
    assert_eq!(page.value("surface-1-length").await?, "8'");
    let missing = page
        .hurried(Duration::from_millis(200))
        .press("Not there")
        .await
        .expect_err("nothing is called so")
        .to_string();
    assert!(missing.contains("low"), "the message names what there is: {missing}");
    Ok(())
}

pub async fn a_killed_server_is_gone(journey: Arc<Journey>) -> Step {
    let mut site = faulty(&journey)?.serve().await?;
    let page = journey.page(&site);
    for part in ["planned", "refused by policy", "Content-Security-Policy", "Content Security Policy", "ERR_"]
    {
        journey.provokes(part);
    }
    page.open_ready("").await?;
    assert!(super::offline::reaches_server(&page).await?, "a served site answers");
    site.kill();
    assert!(!super::offline::reaches_server(&page).await?, "a killed server still answers");
    site.again().await?;
    assert!(super::offline::reaches_server(&page).await?, "a site served again answers");
    Ok(())
}

/// A document that a browser holds at its first element is opened again; one that stands still further on is a fault.
pub async fn a_held_page_is_opened_again(journey: Arc<Journey>) -> Step {
    let (driver, host) = (&journey.browser.driver, Host::start()?);
    let page = Page::new(journey.browser.clone(), host.address());
    let long = Duration::from_secs(8);
    let first = "<!doctype html><html lang=\"en\">";
    let rest = "<head><title>Slow</title></head><body><p>It stands</p></body></html>";
    let further = format!("{first}<head><title>Slow</title></head><body><p>A start</p>");
    let frame =
        "<!doctype html><html lang=\"en\"><title>Around</title><body><iframe src=\"inner\" title=\"inner\">";
    driver.set_page_load_timeout(Duration::from_secs(3)).await?;

    host.lay_torn("held", first, rest, long);
    let held = page.open("held").await;
    let asked = |path: &str| host.asked().iter().filter(|one| *one == path).count();
    if journey.engine == Engine::Chromium {
        driver.set_page_load_timeout(PAGE_LOAD).await?;
        assert!(held.is_err(), "this engine holds no page: a slow one is a fault");
        assert_eq!(asked("held"), 1);
        return Ok(());
    }
    host.lay("around", frame);
    host.lay_torn("inner", first, rest, long);
    let inner = page.open("around").await;
    host.lay_torn("further", &further, "<p>It stands</p></body></html>", long);
    let still = page.open("further").await;
    driver.set_page_load_timeout(PAGE_LOAD).await?;
    held?;
    inner?;
    assert!(still.is_err(), "a page that stands still is a fault");
    assert_eq!((asked("held"), asked("inner"), asked("further")), (2, 2, 1));
    Ok(())
}
