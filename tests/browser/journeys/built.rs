//! What a surface is built of, the cover over its foam, and the answers in every climate zone.

use super::axe::Seen;
use super::sheet;
use crate::Journey;
use driving::Step;
use driving::page::Page;
use serde_json::json;
use std::sync::Arc;

/// The sample's north wall.
const WALL: &str = "#/depth/102";

/// Opens a fold and waits for what is fetched with it.
async fn open(page: &Page, fold: &str) -> Step {
    page.press_at(&format!("#surface-102-fold-{fold} > summary")).await?;
    page.until(
        "the fold is filled",
        &format!("return !!document.querySelector('#surface-102-fold-{fold} > .folded > .built')"),
    )
    .await?;
    Ok(())
}

/// Answers a question that is answered by a press.
async fn answer(page: &Page, field: &str, word: &str) -> Step {
    page.press_at(&format!("label.key-choice:has([name='{field}'][value='{word}'])")).await
}

/// The DOM ids of the layers, from the outside in.
async fn layers(page: &Page) -> Step<Vec<String>> {
    let ids = page.run("return [...document.querySelectorAll('.layer')].map(one => one.id)", vec![]).await?;
    Ok(ids.as_array().into_iter().flatten().filter_map(|one| one.as_str().map(str::to_owned)).collect())
}

/// By hand, with the resistances of ASHRAE's Handbook of Fundamentals: film 0.17, bevel siding 0.80, OSB 0.62,
/// foam 12.0 at 2 in (the sample's sheet lists 6.0 an inch), board 0.45, film 0.68: 14.72. Fiberboard 1.32 in place of the OSB: 15.42.
pub async fn layers_and_whole(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready(WALL).await?;
    assert_eq!(page.count("[data-key^=start-]").await?, 0, "nothing is fetched before it is opened");
    open(&page, "built").await?;
    answer(&page, "surface-102-component", "wall").await?;
    page.until_says("#surface-102-fold-built > summary", "Framed outer wall").await?;
    assert_eq!(layers(&page).await?, Vec::<String>::new(), "no layer stands before somebody says so");

    page.press_at("[data-key=start-wood_wall]").await?;
    page.until("three layers", "return document.querySelectorAll('.layer').length === 3").await?;
    page.until_says("#surface-102-fold-built", "R-14.7").await?;
    page.until_says("#surface-102-fold-built", "U-0.0").await?;
    page.until(
        "the first layer has the focus",
        "return document.activeElement === document.querySelector('.layer select')",
    )
    .await?;

    let drawn = layers(&page).await?;
    let sheathing = drawn[1].clone();
    sheet::choose(&page, &format!("{sheathing}-made_of"), "fiberboard_1_2").await?;
    page.until_says("#surface-102-fold-built", "R-15.4").await?;

    // A material that is cut to any thickness asks for it, and only such a one.
    assert_eq!(page.count(&format!("#{sheathing}-thickness")).await?, 0);
    sheet::choose(&page, &format!("{sheathing}-made_of"), "softwood").await?;
    page.write(&format!("{sheathing}-thickness"), "1").await?;
    page.until_says(&format!("#{sheathing}"), "R-1.3").await?;

    // Moving and taking away.
    page.press_at(&format!("#{sheathing} [data-key$='--1']")).await?;
    page.until(
        "the sheathing lies outermost",
        &format!("return document.querySelector('.layer').id === '{sheathing}'"),
    )
    .await?;
    page.press_at(&format!("[data-key=remove-{sheathing}]")).await?;
    page.until("two layers", "return document.querySelectorAll('.layer').length === 2").await?;

    // Steel is refused with its reason.
    answer(&page, "surface-102-framing", "steel").await?;
    page.until_says("#surface-102-fold-built", "Steel framing").await?;
    page.until(
        "no U stands",
        "return !document.querySelector('#surface-102-fold-built').textContent.includes('U-0.')",
    )
    .await?;
    Ok(())
}

/// The whole outline less the openings, 180 − 30 = 150 ft², at $0.80: $120.
pub async fn cover_and_cost(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready(WALL).await?;
    open(&page, "cover").await?;
    answer(&page, "surface-102-room", "living").await?;
    answer(&page, "surface-102-cover", "gypsum").await?;
    page.write("surface-102-cover_price", "0.80").await?;
    page.until_says("#surface-102-fold-cover", "150 ft²").await?;
    page.until_says("#surface-102-fold-cover", "$120").await?;
    page.until_says("#surface-102-fold-cover > summary", "½ in gypsum board").await?;
    Ok(())
}

/// Whoever does not know the zone compares, and a press on a zone uses it.
pub async fn a_zone_pressed(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready(WALL).await?;
    open(&page, "built").await?;
    answer(&page, "surface-102-component", "wall").await?;
    open(&page, "zones").await?;
    answer(&page, "job-0-work", "new").await?;
    answer(&page, "job-0-edition", "2021").await?;
    page.until(
        "a row for every zone",
        "return document.querySelectorAll('#surface-102-fold-zones tbody tr').length === 16",
    )
    .await?;
    // 2021, framed wall, zone 5 and marine 4: unbroken is one of the options (read).
    let printed = page
        .run("return tidy(document.querySelector('[data-key=zone-5a]').closest('tr').textContent)", vec![])
        .await?;
    assert!(printed.as_str().unwrap_or_default().contains("20"), "{printed}");
    page.run("document.querySelector('[data-key=zone-5a]').focus()", vec![]).await?;
    page.keys(" ").await?;
    page.until(
        "the zone is marked as in use",
        "return document.querySelector('[data-key=zone-5a]').getAttribute('aria-pressed') === 'true'",
    )
    .await?;
    page.until_says("#surface-102-fold-zones > summary", "5A").await?;
    let kept = sheet::until_kept(&page, |job| job.to_string().contains("\"5a\"")).await?;
    let entries = kept["job"]["entries"].as_array().cloned().unwrap_or_default();
    assert!(entries.contains(&json!({ "field": "zone", "text": "5a" })), "{entries:?}");
    assert_eq!(page.focused().await?.1, "5A: use this zone", "the press keeps the focus");
    Ok(())
}

/// All three open and filled in, at 360 px and in Spanish too.
pub async fn fits_and_is_named(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    let mut faults = Vec::new();
    journey.browser.viewport(Some((360, 800))).await?;
    for language in ["en", "es"] {
        page.open_ready("").await?;
        page.run(
            "localStorage.clear(); localStorage.setItem('foamwright.prefs', JSON.stringify({ language: arguments[0] }))",
            vec![language.into()],
        )
        .await?;
        page.open_ready(WALL).await?;
        open(&page, "built").await?;
        answer(&page, "surface-102-component", "roof_deck").await?;
        page.press_at("[data-key=start-roof_batts]").await?;
        page.until("four layers", "return document.querySelectorAll('.layer').length === 4").await?;
        open(&page, "cover").await?;
        answer(&page, "surface-102-cover", "fiber_cement").await?;
        page.write("surface-102-cover_price", "0.80").await?;
        open(&page, "zones").await?;
        answer(&page, "job-0-work", "new").await?;
        answer(&page, "job-0-edition", "2021").await?;
        page.open_all().await?;
        faults.extend(page.misfits().await?.into_iter().map(|one| format!("{language}: {one}")));
        seen.look(&page, language).await?;
    }
    assert!(faults.is_empty(), "{} misfits:\n{}", faults.len(), faults.join("\n"));
    seen.told(&journey);
    Ok(())
}
