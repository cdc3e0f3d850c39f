//! Place and code: what is found is offered and never set, the county is asked for where a ZIP code lies in several
//! zones, a newer map is said, and the depth begins with the kind of work.
//!
//! Zones are those of the county map up to 2018: Duluth, Minnesota, 55802 is zone 7; 81230 lies in Gunnison County,
//! zone 7, and in Saguache County, zone 6B, Colorado.

use super::axe::Seen;
use super::sheet;
use crate::Journey;
use driving::Step;
use driving::page::Page;
use serde_json::Value;
use std::sync::Arc;
use thirtyfour::Key;

const PHONE: (u32, u32) = (360, 780);

/// Presses an answer of a question of the job.
async fn answer(page: &Page, question: &str, word: &str) -> Step {
    page.press_at(&format!("[data-field=job-0-{question}] .key-choice:has(input[value='{word}'])")).await
}

/// What the kept job holds in a field; empty where nothing stands.
fn kept(record: &Value, field: &str) -> String {
    let entries = record["job"]["entries"].as_array().cloned().unwrap_or_default();
    let entry = entries.iter().find(|one| one["field"] == field);
    entry.and_then(|one| one["text"].as_str()).unwrap_or_default().to_owned()
}

/// Waits until the kept job holds these answers.
async fn until_kept(page: &Page, wanted: &[(&str, &str)]) -> Step {
    sheet::until_kept(page, |record| wanted.iter().all(|(field, text)| kept(record, field) == *text)).await?;
    Ok(())
}

async fn fits(page: &Page) -> Step {
    page.open_all().await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");
    Ok(())
}

/// A ZIP code of one zone, one of two, the newer map, the surfaces, and the way to the depth and back.
pub async fn zip_to_zone(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    let id = sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/sheet/depth").await?;
    page.until_says("a[href='#/place']", "Kind of work, edition and climate zone").await?;
    page.press_at("a[href='#/place']").await?;
    page.until_says("#view h1", "Place and code").await?;
    page.until_says("#view .key", "– climate zone not said yet edition not said yet").await?;
    page.until_says("#view main", "It decides whether a code table applies at all.").await?;

    // Work on what stands has no table; a new house has one.
    answer(&page, "work", "insulation_only").await?;
    page.until_says("#view", "No least R where the bay is already open").await?;
    answer(&page, "work", "new").await?;
    page.until_says(
        "#view",
        "The code’s table for new houses applies. Energy code: edition not said yet, zone not said yet.",
    )
    .await?;
    answer(&page, "edition", "2012_2018").await?;

    // Found, and not set before the press.
    page.write("job-0-zip", "55802").await?;
    page.until_says("#view .meanings", "Use zone 7").await?;
    page.until_says("#view .key b", "–").await?;
    until_kept(&page, &[("zip", "55802"), ("edition", "2012_2018"), ("zone", "")]).await?;
    page.press_in("#view", "Use zone 7").await?;
    page.until_says("#view .key b", "7").await?;
    page.until_says("#view .meanings", "Chosen: zone 7").await?;
    page.until_says("#view", "Energy code: 2012–2018 edition, zone 7.").await?;
    assert_eq!(page.focused().await?.1, "Chosen: zone 7");
    until_kept(&page, &[("zone", "7"), ("county", "")]).await?;

    // Another place leaves the zone alone until the person says which county.
    page.write("job-0-zip", "81230").await?;
    page.until_says("#view .say", "81230 lies in 2 zones. Which county?").await?;
    page.until_says("#view .meanings", "Saguache, CO: zone 6B").await?;
    page.until_says("#view .key b", "7").await?;
    seen.look(&page, "two counties").await?;
    fits(&page).await?;
    page.press_in("#view", "Saguache, CO: zone 6B").await?;
    page.until_says("#view .key", "6B climate zone, Saguache, CO").await?;
    until_kept(&page, &[("zone", "6b"), ("county", "08109")]).await?;
    page.press_in("#view", "Gunnison, CO: zone 7").await?;
    page.until_says("#view .key", "7 climate zone, Gunnison, CO").await?;
    until_kept(&page, &[("zone", "7"), ("county", "08051")]).await?;

    // The newer map: said, and one zone warmer offered; undone in one step.
    assert!(!page.text("#view").await?.contains("one county in ten"));
    answer(&page, "edition", "2021").await?;
    page.until_says(
        "#view main",
        "The 2021 map moved about one county in ten, nearly all of them one zone warmer. Confirm zone 7",
    )
    .await?;
    page.press_in("#view", "Use zone 6B").await?;
    page.until_says("#view .key b", "6B").await?;
    until_kept(&page, &[("zone", "6b"), ("county", "08051")]).await?;
    page.press("Undo").await?;
    page.until_says("#view .key b", "7").await?;
    answer(&page, "edition", "2024").await?;
    page.until_says("#view main", "2024 is only partly known here.").await?;

    // What a surface is, and the first line of its depth.
    let component = format!("surface-{id}-component");
    // Clear of the answer at the foot, as a person scrolls.
    page.run(
        "document.getElementById(arguments[0]).scrollIntoView({ block: 'center' })",
        vec![component.as_str().into()],
    )
    .await?;
    sheet::choose(&page, &component, "floor").await?;
    answer(&page, "work", "alteration").await?;
    page.press_at(&format!("[data-field=surface-{id}-cavity_opened] .key-choice:has(input[value=yes])"))
        .await?;
    page.until_says("#view .group", "The work opens this cavity: it is filled").await?;
    seen.look(&page, "everything said").await?;
    page.press_in("#view .group", "How deep").await?;
    page.until("the depth's screen", &format!("return location.hash === '#/depth/{id}'")).await?;
    page.until_says(".work-line", "Alteration The work opens this cavity: it is filled, whatever R that gives. Energy code R503.1.1, from memory: ask the inspector. change").await?;
    page.press_at(".work-line a").await?;
    page.until("the place of this surface", &format!("return location.hash === '#/place/{id}'")).await?;
    page.until(
        &format!("the way back to surface {id}"),
        &format!("return document.querySelector('#view .back')?.getAttribute('href') === '#/depth/{id}'"),
    )
    .await?;

    // Kept over a reload, and in Spanish.
    page.reload().await?;
    page.ready().await?;
    page.until_says("#view .key", "7 climate zone, Gunnison, CO").await?;
    page.go("#/settings").await?;
    page.press_in("#view", "Español").await?;
    page.until_says("#view h1", "Ajustes").await?;
    page.go("#/place").await?;
    page.until_says("#view h1", "Lugar y código").await?;
    page.until_says("#view main", "81230 está en 2 zonas.").await?;
    page.until_says("#view .meanings", "Elegido: Gunnison, CO, zona 7").await?;
    seen.look(&page, "in Spanish").await?;
    fits(&page).await?;
    seen.told(&journey);
    Ok(())
}

/// Without a ZIP code: a county's name, typed degree-days, a zone of the sixteen; and what no table knows.
pub async fn other_ways(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/place").await?;
    page.open_all().await?;
    page.write("job-0-zip", "00000").await?;
    page.until_says("#view .say", "00000 is not in the table.").await?;
    page.write("job-0-zip", "").await?;

    page.write("place-county", "Gu").await?;
    assert_eq!(page.count("#view .meanings button").await?, 0, "two letters are no name");
    page.write("place-county", "gunnison").await?;
    page.press_in("#view", "Gunnison, CO: zone 7").await?;
    page.until_says("#view .key", "7 climate zone, Gunnison, CO").await?;
    until_kept(&page, &[("zone", "7"), ("county", "08051")]).await?;
    page.write("place-county", "no such county").await?;
    page.until_says("#view", "No county is called so.").await?;

    // Table R301.3(2): 5,400 < HDD65 ≤ 7,200 is zone 5 by either map.
    page.write("job-0-hdd65", "6000").await?;
    page.write("job-0-cdd50", "2500").await?;
    assert!(!page.text("#view").await?.contains("By the thresholds up to 2018"));
    answer(&page, "moist_region", "b").await?;
    page.until_says("#view .days", "By the thresholds up to 2018: Use zone 5B By those of 2021: Use zone 5B The code’s own county list governs").await?;
    page.press_in("#view .days", "Use zone 5B").await?;
    page.until_says("#view .key b", "5B").await?;
    until_kept(&page, &[("zone", "5b"), ("county", "")]).await?;

    answer(&page, "zone", "3a").await?;
    page.until_says("#view .key b", "3A").await?;
    page.until(
        "a warm-humid county is asked for in zone 3A",
        "return visible(document.querySelector('[data-field=job-0-warm_humid]'))",
    )
    .await?;
    answer(&page, "zone", "6a").await?;
    page.until(
        "and not in zone 6A",
        "return !visible(document.querySelector('[data-field=job-0-warm_humid]'))",
    )
    .await?;
    page.until_says("#view", "No zone is guessed for other countries.").await?;
    Ok(())
}

/// The table cannot be had: said, the zone can be picked all the same, and the look-up can be tried again.
pub async fn no_table(journey: Arc<Journey>) -> Step {
    journey
        .beforehand("() => { const real = window.fetch; window.fetch = (what, ...more) => document.documentElement.dataset.tables !== 'there' && /(zones|counties)\\.bin$/.test(String(what)) ? Promise.reject(new TypeError('cut off')) : real(what, ...more); }")
        .await?;
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/place").await?;
    page.write("job-0-zip", "55802").await?;
    page.until_says(
        "#view .say",
        "The table of places could not be fetched. Without a connection pick the zone below.",
    )
    .await?;
    answer(&page, "zone", "7").await?;
    page.until_says("#view .key b", "7").await?;
    page.run("document.documentElement.dataset.tables = 'there'", vec![]).await?;
    page.press_in("#view", "Try again").await?;
    page.until_says("#view .meanings", "Chosen: zone 7").await?;
    Ok(())
}

/// The same by keyboard alone.
pub async fn by_keyboard(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/place").await?;
    page.until("the heading has the focus", "return document.activeElement?.tagName === 'H1'").await?;
    page.tab_to("job-0-work", 3).await?;
    page.keys(" ").await?;
    page.until_says("#view", "The code’s table for new houses applies.").await?;
    page.tab_to("job-0-edition", 3).await?;
    page.keys(Key::Down + "").await?;
    page.until_says("#view .key", "2012–2018 edition").await?;
    page.tab_to("job-0-zip", 3).await?;
    page.keys("81230").await?;
    page.until_says("#view .meanings", "Saguache, CO: zone 6B").await?;
    page.tab_to("Saguache, CO: zone 6B", 4).await?;
    page.keys(Key::Enter + "").await?;
    page.until_says("#view .key b", "6B").await?;
    assert_eq!(page.focused().await?.1, "Chosen: Saguache, CO, zone 6B");
    until_kept(
        &page,
        &[("work", "new"), ("edition", "2012_2018"), ("zip", "81230"), ("zone", "6b"), ("county", "08109")],
    )
    .await?;
    assert_eq!(page.focused().await?.1, "Chosen: Saguache, CO, zone 6B");
    Ok(())
}
