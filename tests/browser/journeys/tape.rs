//! The tape pad: a walkthrough in few presses, its keys, and the device's own keyboard beside it.

use super::sheet;
use crate::Journey;
use driving::Step;
use driving::page::Page;
use driving::places;
use serde_json::{Value, json};
use std::sync::Arc;
use thirtyfour::Key;

/// Presses that are no digits, a surface, that a walkthrough may take.
const BESIDE_DIGITS: usize = 6;

/// Switches the pad on, as somebody does in the settings.
async fn pad_on(page: &Page) -> Step {
    page.go("#/settings").await?;
    page.press_at("#settings-device label.key-choice:has([value=on])").await?;
    page.settled().await
}

/// Presses a key of the pad.
async fn key(page: &Page, key: &str) -> Step {
    page.until("the pad stands", "return !!document.querySelector('.tape:not([hidden]) .keys button')")
        .await?;
    page.press_at(&format!(".tape [data-press='{key}']")).await
}

/// Waits until the field of this id is the one that is entered.
async fn until_at(page: &Page, id: &str) -> Step {
    page.until(
        &format!("the pad is at {id}"),
        &format!(
            "return document.activeElement?.id === '{id}' && !!document.querySelector('.tape:not([hidden])')"
        ),
    )
    .await?;
    Ok(())
}

/// Twelve surfaces of an invented house take no more presses than their digits and six a surface: every press of
/// a finger counts, on the pad and beside it, and the page counts them too. The areas are those worked out by hand.
pub async fn twelve_surfaces(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    pad_on(&page).await?;
    page.go("#/jobs").await?;
    page.press("New job").await?;
    page.until_says("#view h1", "without a name").await?;
    page.run(
        "const root = document.documentElement; root.dataset.presses = 0; document.addEventListener('pointerdown', event => { if (event.isTrusted) root.dataset.presses = Number(root.dataset.presses) + 1 }, true)",
        vec![],
    )
    .await?;

    let script: Value = serde_json::from_str(&std::fs::read_to_string(
        places::package().join("tests/browser/walkthrough.json"),
    )?)?;
    let surfaces = script["surfaces"].as_array().ok_or("no surfaces")?;
    assert_eq!(surfaces.len(), 12, "the walkthrough has twelve surfaces");
    let (mut digits, mut beside, mut ids) = (0, 0, Vec::new());
    let mut shape_before = "framed_wall";
    for surface in surfaces {
        let (digits_before, beside_before) = (digits, beside);
        let name = surface["name"].as_str().unwrap_or_default();
        // On to the surface.
        if ids.is_empty() {
            page.press_in("#view", "Add a surface").await?;
        } else {
            page.until_says(".tape .next", "Next surface").await?;
            key(&page, "next").await?;
        }
        beside += 1;
        let before = ids.last().copied().unwrap_or(0);
        let id = page
            .until(
                "the next surface's screen",
                &format!("const id = Number(location.hash.match(/^#\\/surface\\/(\\d+)$/)?.[1]); return id === {before} ? 0 : id"),
            )
            .await?
            .as_u64()
            .ok_or("no id")?;
        ids.push(id);
        page.until(
            "its first measure has the focus",
            "return document.activeElement?.matches('input[data-mode]')",
        )
        .await?;
        let shape = surface["shape"].as_str().unwrap_or_default();
        if shape != shape_before {
            page.press_at(&format!("label.key-choice:has([name=shape-{id}][value={shape}])")).await?;
            beside += 1;
            shape_before = shape;
        }
        for step in surface["steps"].as_array().ok_or("no steps")? {
            if let Some(switch) = step["switch"].as_str() {
                page.press_at(&format!("label:has(#surface-{id}-{switch})")).await?;
                beside += 1;
            }
            if let (Some(field), Some(word)) = (step["choose"][0].as_str(), step["choose"][1].as_str()) {
                page.press_at(&format!("label:has([name=surface-{id}-{field}][value={word}])")).await?;
                beside += 1;
            }
            if let Some(field) = step["tap"].as_str() {
                page.press_at(&format!("#surface-{id}-{field}")).await?;
                beside += 1;
                until_at(&page, &format!("surface-{id}-{field}")).await?;
            }
            if let Some(field) = step["at"].as_str() {
                let wanted = format!("surface-{id}-{field}");
                let first = step == &surface["steps"][0];
                if !first {
                    key(&page, "next").await?;
                    beside += 1;
                }
                until_at(&page, &wanted).await.map_err(|fault| format!("{name}: {fault}"))?;
            }
            for one in step["keys"].as_str().unwrap_or_default().split_whitespace() {
                key(&page, one).await?;
                if one.len() == 1 && one.chars().all(|sign| sign.is_ascii_digit()) {
                    digits += 1;
                } else {
                    beside += 1;
                }
            }
        }
        println!("    {name}: {} digits, {} presses beside", digits - digits_before, beside - beside_before);
    }
    let counted = page
        .run("return Number(document.documentElement.dataset.presses)", vec![])
        .await?
        .as_u64()
        .unwrap_or(0) as usize;
    println!(
        "    walkthrough of 12 surfaces: {counted} presses, {digits} of them digits, {beside} others ({:.2} a surface)",
        beside as f64 / 12.0
    );
    assert_eq!(counted, digits + beside, "the page saw every press, and no other");
    assert!(counted <= digits + BESIDE_DIGITS * surfaces.len(), "{counted} presses, {digits} of them digits");

    for (id, surface) in ids.iter().zip(surfaces) {
        page.go(&format!("#/surface/{id}")).await?;
        let area = surface["area_ft2"].as_f64().ok_or("no area")?;
        page.until_says("#view li.sum .v", "ft²").await?;
        let shown = page.text("#view li.sum .v").await?;
        let figure: f64 =
            shown.trim_end_matches("ft²").trim().parse().map_err(|_| format!("no figure: {shown}"))?;
        // Shown to the tenth of a square foot.
        assert!((figure - area).abs() <= 0.0501, "{}: {figure} instead of {area}", surface["name"]);
    }
    // The depth went along from surface to surface until another was typed.
    for (at, depth) in [(1, "3"), (4, "3"), (5, "2"), (6, "2"), (11, "2")] {
        page.go(&format!("#/surface/{}", ids[at])).await?;
        assert_eq!(page.value(&format!("surface-{}-depth", ids[at])).await?, depth);
    }
    Ok(())
}

/// The blade reads back what stands in the field, whichever way it came there; the device's keyboard is one press
/// away, and so is the pad again.
pub async fn keys_and_keyboard(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    // With a mouse no pad comes by itself.
    page.go("#/surface/102").await?;
    page.press_at("#surface-102-length").await?;
    page.settled().await?;
    assert_eq!(page.run("return !!document.querySelector('.tape')", vec![]).await?, json!(false));
    pad_on(&page).await?;
    page.go("#/surface/102").await?;
    let field = "opening-104-from_left";
    page.press_at(&format!("#{field}")).await?;
    until_at(&page, field).await?;
    assert_eq!(
        page.run(&format!("return document.getElementById('{field}').inputMode"), vec![]).await?,
        json!("none")
    );
    page.until_says(".tape output", "12′-6½″").await?;
    page.until_says(".tape .reading p", "150½ in, or 3 823 mm").await?;
    // What is marked is replaced; fractions add up, and one press takes one back.
    page.run("document.activeElement.select()", vec![]).await?;
    for one in ["7", "ft", "6", "1/8", "1/8", "1/8"] {
        key(&page, one).await?;
    }
    assert_eq!(page.value(field).await?, "7' 6 3/8\"");
    page.until_says(".tape output", "7′-6⅜″").await?;
    key(&page, "back").await?;
    assert_eq!(page.value(field).await?, "7' 6 1/4\"");
    // A hardware keyboard types into the same field, and the blade follows.
    page.run("document.activeElement.select()", vec![]).await?;
    page.keys("3 6 1/2").await?;
    page.until_says(".tape output", "3′-6½″").await?;
    page.until(
        "the blade says so",
        "return document.querySelector('.tape .blade svg').getAttribute('aria-label').includes('42½')",
    )
    .await?;
    // Where nothing is lacking, the wide key goes on to a new surface, and a field follows by the small one.
    page.press_at("#surface-102-length").await?;
    page.until_says(".tape .next", "Next surface").await?;
    page.press_in(".tape", "Next: height").await?;
    until_at(&page, "surface-102-height").await?;
    // The device's own keyboard, kept over a reload; then the pad again.
    page.press_in(".tape", "Keyboard of this device").await?;
    page.until("the pad is away", "return document.querySelector('.tape').hidden && document.activeElement.id === 'surface-102-height' && document.activeElement.inputMode === 'text'").await?;
    page.press_in("[data-field=surface-102-height]", "Tape pad").await?;
    until_at(&page, "surface-102-height").await?;
    // The pad leaves with the field.
    page.press_at("#surface-102-name").await?;
    page.until("the pad is away", "return document.querySelector('.tape').hidden").await?;
    page.reload().await?;
    page.ready().await?;
    page.press_at("#surface-102-height").await?;
    until_at(&page, "surface-102-height").await?;
    page.keys(Key::Escape + "").await?;
    page.until("the pad is away", "return document.querySelector('.tape').hidden").await?;
    Ok(())
}

/// Meters have their own keys, with the last readings among them; the left thumb has the columns the other way.
pub async fn metric_and_left(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    pad_on(&page).await?;
    page.press_at("label.key-choice:has([value=left])").await?;
    page.press_at("#view label.key-choice:has([value=metric])").await?;
    let id = {
        page.go("#/jobs").await?;
        page.press("New job").await?;
        page.until_says("#view h1", "without a name").await?;
        page.press_in("#view", "Add a surface").await?;
        page.until("a surface's screen", "return Number(location.hash.match(/^#\\/surface\\/(\\d+)$/)?.[1])")
            .await?
    };
    page.press_at(&format!("label.key-choice:has([name=shape-{id}][value=rectangle])")).await?;
    until_at(&page, &format!("surface-{id}-length")).await?;
    for one in ["4", ".", "2", "5", "m", "next"] {
        key(&page, one).await?;
    }
    until_at(&page, &format!("surface-{id}-height")).await?;
    let left = page.run("const x = one => document.querySelector(`.tape [data-press='${one}']`).getBoundingClientRect().x; return [x('.') < x('m'), x('m') < x('7'), x('7') < x('9'), x('next') < x('back')]", vec![]).await?;
    assert_eq!(left, json!([true, true, true, true]), "fractions, units, digits from the left");
    // The last reading, pressed again: 4.25 × 4.25 m.
    key(&page, "4.25 m").await?;
    page.until_says("#view", "18.06 m²").await?;
    page.until_says(".tape output", "4.25 m").await?;
    sheet::until_kept(&page, |record| record.to_string().matches("4.25 m").count() == 2).await?;
    Ok(())
}

/// The pad fits a small phone in both looks and both languages, and every key has a name.
pub async fn fits_and_is_named(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((360, 740))).await?;
    page.open_ready("").await?;
    pad_on(&page).await?;
    for (language, look) in [("en", "paper"), ("es", "crawl")] {
        page.go("#/settings").await?;
        page.press_at(&format!("#settings-device label.key-choice:has([value={language}])")).await?;
        page.until("the page speaks it", &format!("return document.documentElement.lang === '{language}' && !!document.querySelector('#settings-device')")).await?;
        page.press_at(&format!("#settings-device label.key-choice:has([value={look}])")).await?;
        page.go("#/surface/102").await?;
        for field in ["surface-102-length", "surface-102-member", "surface-102-plates"] {
            page.press_at(&format!("#{field}")).await?;
            until_at(&page, field).await?;
            let nameless = page
                .run("return presses(document.querySelector('.tape')).filter(one => !called(one)).map(one => one.outerHTML)", vec![])
                .await?;
            assert_eq!(nameless, json!([]), "every key has a name");
            let misfits = page.misfits().await?;
            assert!(misfits.is_empty(), "{language}, {field}: {misfits:?}");
            let (faults, _) = page.axe().await?;
            assert!(faults.is_empty(), "{language}, {field}: {faults:?}");
            let shown = page
                .run("const box = document.activeElement.getBoundingClientRect(), pad = document.querySelector('.tape').getBoundingClientRect(); return box.top >= 0 && box.bottom <= pad.top", vec![])
                .await?;
            assert_eq!(shown, json!(true), "{field} stands above the pad");
        }
    }
    Ok(())
}
