//! A job on the move: as a link, as tables, and all of them in a backup.

use super::{offline, sheet};
use crate::Journey;
use driving::Step;
use driving::page::Page;
use serde_json::{Value, json};
use std::path::Path;
use std::sync::Arc;

/// The link that the screen shows, once it is made.
async fn link(page: &Page) -> Step<String> {
    page.go("#/move").await?;
    page.until("the link is made", "return document.querySelector('#link')?.value.includes('#/open/')")
        .await?;
    Ok(page
        .run("return document.querySelector('#link').value", vec![])
        .await?
        .as_str()
        .unwrap_or_default()
        .into())
}

/// Follows a link as a message does: from another page, or within the one that is open.
async fn follow(page: &Page, link: &str) -> Step {
    page.run("location.href = arguments[0]", vec![json!(link)]).await?;
    page.until("the link has left the address bar", "return !location.hash.includes('open')").await?;
    Ok(())
}

/// A job goes by link into a browser that knows nothing, with no network, and again into one that has it.
pub async fn by_link(journey: Arc<Journey>) -> Step {
    let mut site = journey.site().await?;
    let page = journey.page(&site);
    for part in ["Failed to load", "ERR_", "NetworkError", "never-kept", "Load failed", "fetch"] {
        journey.provokes(part);
    }
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "151 ft").await?;
    let first = sheet::until_kept(&page, |record| record.to_string().contains("151 ft")).await?;
    let link = link(&page).await?;
    let said = page.text("#view main").await?;
    let length = link.len().to_string();
    let grouped = format!("{},{}", &length[..length.len() - 3], &length[length.len() - 3..]);
    assert!(said.contains(&grouped), "its length, {grouped}, is said: {said}");
    assert!(said.contains("address") && said.contains("prices"), "what it holds is said: {said}");

    // The same job: it is opened, nothing is written.
    follow(&page, &link).await?;
    page.until_says("#view h1", "Larkspur").await?;
    assert_eq!(sheet::kept_jobs(&page).await?, std::slice::from_ref(&first));

    // The same job with other contents: both, if the person wants so.
    page.go("#/surface/101").await?;
    page.write("surface-101-length", "152 ft").await?;
    let second = sheet::until_kept(&page, |record| record.to_string().contains("152 ft")).await?;
    follow(&page, &link).await?;
    page.until(
        "asked what to do",
        "return [...document.querySelectorAll('[data-notice=both]')].some(visible)",
    )
    .await?;
    assert_eq!(sheet::kept_jobs(&page).await?, std::slice::from_ref(&second));
    page.press_in("[data-notice=both]", "Keep both").await?;
    sheet::until_kept(&page, |record| record["job"]["name"].to_string().contains("from the link")).await?;
    assert!(sheet::kept_jobs(&page).await?.contains(&second), "the first is untouched");

    // Nothing is known of it here, and there is no network.
    offline::kept_on_device(&page).await?;
    page.run("for (const key of Object.keys(localStorage)) localStorage.removeItem(key)", vec![]).await?;
    site.kill();
    page.open_ready(&format!("?from=a-message{}", &link[link.find('#').unwrap_or_default()..])).await?;
    let there = sheet::until_kept(&page, |record| record["id"] == first["id"]).await?;
    assert_eq!(there["job"], first["job"], "what came out is what went in");
    assert!(!offline::reaches_server(&page).await?, "the network is not away");
    Ok(())
}

/// A cut, foreign, newer or exploding link says so, and changes nothing.
pub async fn bad_links(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "153 ft").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("153 ft")).await?;
    let before = sheet::kept_jobs(&page).await?;
    let link = link(&page).await?;
    let mut reasons = Vec::new();
    for (name, text) in [
        ("foreign", "'{}'"),
        ("newer", r#"'{"format":"foamwright-job","version":9,"id":"x","next_id":1}'"#),
        ("deep", "'['.repeat(5000)"),
        ("bomb", "' '.repeat(90e6)"),
        ("cut", ""),
    ] {
        let carried = if name == "cut" {
            link[link.find("open/").map_or(0, |at| at + 5)..link.len() - 40].to_owned()
        } else {
            let script = format!(
                "new Response(new Blob([{text}]).stream().pipeThrough(new CompressionStream('deflate-raw'))).arrayBuffer()
                .then((bytes) => done(btoa([...new Uint8Array(bytes)].map((one) => String.fromCharCode(one)).join(''))
                .replace(/\\+/g, '-').replace(/\\//g, '_').replace(/=+$/, '')))"
            );
            page.run_async(&script, vec![]).await?.as_str().unwrap_or_default().to_owned()
        };
        page.run("document.querySelector('[data-notice=refused]')?.remove()", vec![]).await?;
        follow(&page, &format!("#/open/{carried}")).await?;
        page.until(
            &format!("{name} is refused"),
            "return [...document.querySelectorAll('[data-notice=refused]')].some(visible)",
        )
        .await?;
        let said = page.text("[data-notice=refused]").await?;
        assert!(!said.contains("jobs.refused") && !said.contains('{'), "{name}: words are missing: {said}");
        assert!(!reasons.contains(&said), "{name}: the reason of another: {said}");
        reasons.push(said);
        assert_eq!(sheet::kept_jobs(&page).await?, before, "{name}: the shelf has changed");
    }
    Ok(())
}

/// Opens a backup and waits for its list.
async fn open_backup(page: &Page, file: &Path) -> Step<String> {
    page.go("#/backup").await?;
    page.until("the place for a file", "return !!document.querySelector('#backup-file')").await?;
    let input = page.browser().driver.find(thirtyfour::By::Css("#backup-file")).await?;
    input.send_keys(file.to_string_lossy()).await?;
    page.until("the list stands", "return visible(document.querySelector('#found'))").await?;
    page.text("#found").await
}

/// Everything into a file, and out of it elsewhere: first as a list; what is there is not written over unseen;
/// it can be put back.
pub async fn by_backup(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "154 ft").await?;
    let first = sheet::until_kept(&page, |record| record.to_string().contains("154 ft")).await?;
    page.go("#/backup").await?;
    page.press_in("#view", "Save a backup").await?;
    let file = page.downloaded(".json").await?;
    let mut all: Value = serde_json::from_str(&std::fs::read_to_string(&file)?)?;
    assert_eq!((&all["format"], &all["version"]), (&json!("foamwright-backup"), &json!(1)));
    assert_eq!(all["jobs"][0]["job"], first["job"]);

    // Elsewhere, with a job of its own, one part bad and one with other contents on each side.
    let elsewhere = journey.site().await?;
    let fresh = journey.page(&elsewhere);
    fresh.open_ready("#/surface/101").await?;
    fresh.write("surface-101-length", "155 ft").await?;
    let own = sheet::until_kept(&fresh, |record| record.to_string().contains("155 ft")).await?;
    let mut apart = own.clone();
    apart["job"]["name"] = json!("<b>The other state</b>");
    let mut bad = own.clone();
    bad["id"] = json!("bad");
    bad["job"]["id"] = json!("bad");
    bad["job"]["surfaces"] = json!(7);
    let jobs = all["jobs"].as_array_mut().ok_or("no jobs")?;
    jobs.extend([apart, bad]);
    let file = sheet::written(&format!("{}-backup.json", journey.engine.name()), all.to_string().as_bytes())?;
    let said = open_backup(&fresh, &file).await?;
    for part in ["new", "both are kept", "left out", "<b>The other state</b>", "Nothing has been changed yet"]
    {
        assert!(said.contains(part), "no {part} in: {said}");
    }
    assert_eq!(sheet::kept_jobs(&fresh).await?, std::slice::from_ref(&own), "the list changes nothing");
    fresh.press_in("#found", "Take in 2").await?;
    sheet::until_kept(&fresh, |record| record["job"] == first["job"]).await?;
    let after = sheet::kept_jobs(&fresh).await?;
    assert_eq!(after.len(), 3, "{}", json!(after));
    assert!(after.contains(&own), "what was here is untouched");
    fresh.press_in("[data-notice=restored]", "Put it back as it was").await?;
    fresh.until("all is as before", "return [...document.querySelectorAll('[data-notice=restored]')].some(one => /as it was before/.test(one.textContent))").await?;
    assert_eq!(sheet::kept_jobs(&fresh).await?, [own]);
    assert_eq!(fresh.misfits().await?, Vec::<String>::new());
    Ok(())
}

/// Tables are handed over as files, with a byte order mark and CRLF; the message stands on the page.
pub async fn tables_and_message(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/move").await?;
    page.until("the message stands", "return !!document.querySelector('#message')?.textContent").await?;
    page.press_in("#view", "Save the surfaces (CSV)").await?;
    let file = page.downloaded(".surfaces.csv").await?;
    let text = std::fs::read_to_string(&file)?;
    assert!(text.starts_with("\u{feff}\"Surface\",\"Shape\",\"Net area, ft²\""), "{text}");
    assert_eq!(text.matches("\r\n").count(), 4, "a head and three surfaces: {text}");
    page.press_in("#view", "Save the kits (CSV)").await?;
    let file = page.downloaded(".kits.csv").await?;
    assert!(std::fs::read_to_string(&file)?.contains("\"Large 480\",480,"));
    let message = page.text("#message").await?;
    page.go("#/").await?;
    sheet::until_answer(&page, |sheet| {
        !sheet.board_feet.is_empty()
            && message.contains(&format!("To spray: {} bd ft", sheet.board_feet))
            && message.contains(&format!("Passes: {}", sheet.passes))
    })
    .await?;
    assert!(message.contains("local code") && message.contains("HOLD"), "{message}");
    page.go("#/move").await?;
    assert_eq!(page.misfits().await?, Vec::<String>::new());
    Ok(())
}
