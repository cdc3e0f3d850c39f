//! The shelf and job files: kept, refused, blocked, full, two tabs.

use super::sheet;
use crate::Journey;
use driving::Step;
use driving::beforehand::DEAF;
use serde_json::{Value, json};
use std::sync::Arc;

/// The file is the record: saved here, taken in by a browser that knows nothing, it gives the same figures.
pub async fn file_out_and_in(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "about 150 ft").await?;
    page.go("#/").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("about 150 ft")).await?;
    let figures = sheet::answer(&page).await?;
    page.go("#/jobs").await?;
    page.press_in("#view", "Save the job file").await?;
    let file = page.downloaded(".foamwright.json").await?;
    let job: Value = serde_json::from_str(&std::fs::read_to_string(&file)?)?;
    assert_eq!((&job["format"], &job["version"]), (&json!("foamwright-job"), &json!(4)));

    let elsewhere = journey.site().await?;
    let fresh = journey.page(&elsewhere);
    fresh.open_ready("").await?;
    assert!(sheet::kept_jobs(&fresh).await?.is_empty());
    sheet::take_in(&fresh, &file).await?;
    let there = sheet::until_kept(&fresh, |record| record["job"]["id"] == job["id"]).await?;
    assert_eq!(there["job"], job, "what is kept is what was in the file");
    fresh.go("#/").await?;
    sheet::until_answer(&fresh, |answer| *answer == figures).await
}

/// A corrupt, foreign, oversized, deep or newer file is refused with the reason; nothing on the shelf changes.
pub async fn files_refused(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "149 ft").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("149 ft")).await?;
    page.go("#/jobs").await?;
    let before = sheet::kept_jobs(&page).await?;
    let engine = journey.engine.name();
    let sample = sheet::sample()?;
    let newer = sample.replace("\"version\": 4,\n \"id\"", "\"version\": 999,\n \"id\"");
    assert_ne!(newer, sample);
    let deep = format!(
        "{{\"format\":\"foamwright-job\",\"version\":1,\"x\":{}{}}}",
        "[".repeat(40_000),
        "]".repeat(40_000)
    );
    let large = sample.replace("\"note\": \"\"", &format!("\"note\": \"{}\"", "x".repeat(2_100_000)));
    let cases: [(&str, Vec<u8>); 7] = [
        ("torn", sample.as_bytes()[..sample.len() / 2].to_vec()),
        ("foreign", br#"{"format":"another-tool","version":1,"rows":[1,2,3]}"#.to_vec()),
        ("picture", vec![0x89, b'P', b'N', b'G', 0, 1, 2, 255]),
        ("newer", newer.into_bytes()),
        ("deep", deep.into_bytes()),
        ("large", large.into_bytes()),
        (
            "markup",
            br#"{"format":"foamwright-job","version":1,"id":"<img src=x onerror=alert(1)>","next_id":"1"}"#
                .to_vec(),
        ),
    ];
    let mut reasons = Vec::new();
    for (name, bytes) in cases {
        let file = sheet::written(&format!("{engine}-{name}.json"), &bytes)?;
        page.run("document.querySelector('[data-notice=refused]')?.remove()", vec![]).await?;
        sheet::take_in(&page, &file).await?;
        page.until(
            &format!("{name} is refused"),
            "return [...document.querySelectorAll('[data-notice=refused]')].some(visible)",
        )
        .await?;
        let said = page.text("[data-notice=refused]").await?;
        assert!(said.contains(&format!("{engine}-{name}.json")), "{name}: the file is named: {said}");
        assert!(!said.contains("jobs.refused") && !said.contains('{'), "{name}: words are missing: {said}");
        reasons.push((name, said.replace(&format!("{engine}-{name}.json"), "")));
        assert_eq!(sheet::kept_jobs(&page).await?, before, "{name}: the shelf has changed");
    }
    let reason = |name: &str| {
        reasons.iter().find(|(one, _)| *one == name).map(|(_, said)| said.clone()).unwrap_or_default()
    };
    assert!(reason("newer").contains("999"), "the version is named: {}", reason("newer"));
    for (one, other) in [("torn", "foreign"), ("foreign", "newer"), ("newer", "large"), ("large", "deep")] {
        assert_ne!(reason(one), reason(other), "{one} and {other} have the same reason");
    }
    // A name out of a file is text and never markup.
    let marked = sample
        .replace("Larkspur Lane bungalow", "<img src=x onerror=alert(1)><b>Bold</b>")
        .replace("sample-larkspur-lane", "planned-markup");
    sheet::take_in(&page, &sheet::written(&format!("{engine}-marked.json"), marked.as_bytes())?).await?;
    page.until_says("#view h1", "<b>Bold</b>").await?;
    assert_eq!(page.run("return document.querySelectorAll('img, b b').length", vec![]).await?, json!(0));
    Ok(())
}

/// A file of a job that is already on the shelf, but differs: both are kept if the person wants so.
pub async fn the_same_job_twice(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "147 ft").await?;
    let first = sheet::until_kept(&page, |record| record.to_string().contains("147 ft")).await?;
    let mut other = first["job"].clone();
    other["name"] = json!("The other state");
    let file = sheet::written(&format!("{}-both.json", journey.engine.name()), other.to_string().as_bytes())?;
    sheet::take_in(&page, &file).await?;
    page.until(
        "asked what to do",
        "return [...document.querySelectorAll('[data-notice=both]')].some(visible)",
    )
    .await?;
    assert_eq!(sheet::kept_jobs(&page).await?.len(), 1);
    page.press_in("[data-notice=both]", "Keep both").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("The other state")).await?;
    let jobs = sheet::kept_jobs(&page).await?;
    assert_eq!(jobs.len(), 2, "{}", json!(jobs));
    assert!(jobs.contains(&first), "the first is untouched");
    Ok(())
}

/// Two tabs on one job: whatever either has typed is kept.
pub async fn two_tabs(journey: Arc<Journey>) -> Step {
    journey.beforehand(DEAF).await?;
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "141 ft").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("141 ft")).await?;
    let driver = &journey.browser.driver;
    let first = driver.window().await?;
    let second = driver.new_tab().await?;
    driver.switch_to_window(second.clone()).await?;
    page.open_ready("#/surface/101").await?;
    assert_eq!(page.value("surface-101-length").await?, "141 ft");
    // This tab hears nothing of the other one, as when it is frozen in the background.
    page.run("sessionStorage.setItem('planned deaf', '1')", vec![]).await?;

    driver.switch_to_window(first.clone()).await?;
    page.write("surface-101-length", "142 ft").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("142 ft")).await?;
    driver.switch_to_window(second).await?;
    assert_eq!(page.value("surface-101-length").await?, "141 ft", "it has heard: the test proves nothing");
    page.write("surface-101-band", "8 in").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("8 in")).await?;
    let all = json!(sheet::kept_jobs(&page).await?).to_string();
    assert!(all.contains("142 ft"), "what the first tab typed is lost: {all}");
    Ok(())
}

/// Storage full: said, and the page goes on from memory; once there is room, it is kept again.
pub async fn full(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    page.run(
        "for (let size = 1 << 22; size >= 1; size >>= 1) { try { for (let at = 0; ; at++) localStorage.setItem(`filler ${size} ${at}`, 'x'.repeat(size)); } catch { /* the next smaller */ } }",
        vec![],
    )
    .await?;
    page.write("surface-101-length", "120 ft").await?;
    page.until(
        "said that it is not kept",
        "return [...document.querySelectorAll('[data-notice=storage]')].filter(visible).length === 1",
    )
    .await?;
    // 2 × (120 + 30) ft × 9¼ in: 231.25 ft² before joist ends; with a band of 10 in 250.
    page.until_says("#view", "231.3 ft²").await?;
    page.press_in("[data-notice=storage]", "Put away").await?;
    page.write("surface-101-band", "10 in").await?;
    page.until_says("#view", "250 ft²").await?;
    assert_eq!(page.count("[data-notice=storage]").await?, 0, "said once");
    page.run("for (const key of Object.keys(localStorage)) if (key.startsWith('filler')) localStorage.removeItem(key)", vec![]).await?;
    page.write("surface-101-band", "11 in").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("120 ft")).await?;
    Ok(())
}

/// Storage refused by the person's settings: the page works from memory and says so once; a job file still saves.
pub async fn refused(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    let blocked = page.run("try { return !localStorage } catch { return true }", vec![]).await?;
    assert_eq!(blocked, json!(true), "the setting has no effect: the test proves nothing");
    page.write("surface-101-length", "120 ft").await?;
    page.until(
        "said that it is not kept",
        "return [...document.querySelectorAll('[data-notice=storage]')].filter(visible).length === 1",
    )
    .await?;
    page.until_says("#view", "231.3 ft²").await?;
    page.press_in("[data-notice=storage]", "Put away").await?;
    page.write("surface-101-band", "10 in").await?;
    page.until_says("#view", "250 ft²").await?;
    assert_eq!(page.count("[data-notice=storage]").await?, 0, "said once");
    page.go("#/jobs").await?;
    page.press_in("#view", "Save the job file").await?;
    let file = page.downloaded(".foamwright.json").await?;
    assert!(std::fs::read_to_string(file)?.contains("120 ft"));
    Ok(())
}
