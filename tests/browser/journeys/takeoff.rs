//! From nothing to kits, on a phone: what a remodeler does at a walkthrough.

use super::sheet::{self, Answer};
use crate::Journey;
use driving::Step;
use driving::beforehand::CLOCK;
use driving::page::Page;
use serde_json::json;
use std::sync::Arc;

/// The first visit opens the sample, whose figures are worked out by hand in `tests/jobs/larkspur-lane`.
pub async fn first_visit(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    page.until_says("#view h1", "Larkspur Lane").await?;
    sheet::until_answer(&page, |answer| {
        answer.board_feet == "812" && answer.kits == "2" && answer.verdict == "HOLD"
    })
    .await?;
    assert!(
        page.kept().await?.iter().all(|(key, _)| !key.starts_with("foamwright.job.")),
        "the sample is not kept"
    );

    // Editing the sample makes it the person's own job; the sample stays what it was.
    page.go("#/surface/101").await?;
    page.write("surface-101-length", "150 ft").await?;
    let kept = sheet::until_kept(&page, |job| job.to_string().contains("150 ft")).await?;
    assert_ne!(kept["job"]["id"], "sample-larkspur-lane");
    Ok(())
}

/// The files of words that the page itself has fetched.
async fn words(page: &Page) -> Step<Vec<String>> {
    let script =
        "return performance.getEntriesByType('resource').map(one => one.name.match(/words.en.(.*)$/)?.[1])
        .filter(Boolean)";
    let names = page.run(script, vec![]).await?;
    Ok(names.as_array().into_iter().flatten().filter_map(|one| one.as_str().map(str::to_owned)).collect())
}

/// The sample sheet is said with the words of a first visit. Once its readings are old there is more to say: the
/// pages come first, and no key is ever seen.
pub async fn words_when_needed(journey: Arc<Journey>) -> Step {
    journey.beforehand(CLOCK).await?;
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    page.until_says("#section-ready .why", "Cylinder B").await?;
    assert_eq!(words(&page).await?, ["first.json"]);

    // A test's script in Firefox has no globals that last; what it sees is kept on the page.
    let watch = "const look = () => { document.body.dataset.seen = (document.body.dataset.seen ?? '')
            + (document.body.textContent.match(/\\b(page|sheet|ready|fields|findings|sources)\\.[a-z_]+|words have not arrived/g) ?? ''); };
        new MutationObserver(look).observe(document.body, { subtree: true, childList: true, characterData: true });
        moveClock(180); document.dispatchEvent(new Event('visibilitychange'))";
    page.run(watch, vec![]).await?;
    page.until_says("#section-ready .why", "Cylinder A was read 3 h").await?;
    assert!(words(&page).await?.iter().any(|name| name == "findings.json"));
    let seen = page.run("return document.body.dataset.seen", vec![]).await?;
    assert_eq!(seen, json!(""), "keys in place of words; or nothing was looked at");
    Ok(())
}

/// A wall of 12 ft 6½ in × 8 ft, 2 in deep, by hand: 150.5 × 96 ÷ 144 = 100.333 ft²; × 2 = 200.667 board feet,
/// 201 rounded up. Usable: Large 480 × 0.86 − 5 = 407.8, Medium 132.6, Small 29.4. Enough at the least cost: one
/// Medium and three Small, 220.8 for 284 + 3 × 92 = $560 (one Large is $750, two Medium $568, seven Small $644);
/// 20.1 left. The sheet's largest pass is 2 in: one pass. Promised 1½ in: R-9.
pub async fn from_nothing(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    let id = sheet::new_job_with_surface(&page, "rectangle").await?;
    let field = |name: &str| format!("surface-{id}-{name}");

    page.write(&field("name"), "East wall").await?;
    page.write(&field("length"), "12' 6 1/2\"").await?;
    page.until_told(&field("length"), "12′-6½″").await?;
    page.until_told(&field("length"), "150½").await?;
    page.write(&field("height"), "8'").await?;
    page.until_told(&field("height"), "8′-0″").await?;
    page.until_says("#view", "100.3 ft²").await?;

    page.go(&format!("#/depth/{id}")).await?;
    page.write(&field("depth"), "2").await?;
    page.until_says("#view", "R-9").await?;

    page.go("#/").await?;
    sheet::until_answer(&page, |answer| {
        answer.board_feet == "201" && answer.kits == "4" && answer.passes == "1"
    })
    .await?;
    page.go("#/kits").await?;
    page.until_says("#view", "$560").await?;
    page.until_says("#view", "20.1").await?;
    page.until_says("#view", "1 Medium").await?;
    page.until_says("#view", "3 Small").await?;

    // It is still there when the page is loaded again, and the browser says nothing about it.
    page.reload().await?;
    page.ready().await?;
    page.go("#/").await?;
    sheet::until_answer(&page, |answer| answer.board_feet == "201").await
}

/// `5.11` may be 5 ft 11 in or 5.11 ft: both are offered, nothing is guessed, and pressing one completes the wall.
/// 71 in × 96 in ÷ 144 = 47.33 ft²; 61.32 in × 96 in ÷ 144 = 40.88 ft².
pub async fn two_meanings(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((360, 800))).await?;
    page.open_ready("").await?;
    let id = sheet::new_job_with_surface(&page, "rectangle").await?;
    let (length, height) = (format!("surface-{id}-length"), format!("surface-{id}-height"));
    page.write(&height, "8'").await?;
    page.write(&length, "5.11").await?;
    page.until_told(&length, "two meanings").await?;
    assert_eq!(page.value(&length).await?, "5.11", "the text stays");
    page.write(&format!("surface-{id}-depth"), "1").await.unwrap_or(());
    let group = format!("[data-field='{length}'] .meanings");
    page.press_in(&group, "5′-11″").await?;
    page.until_says("#view", "47.3 ft²").await?;
    assert_eq!(page.value(&length).await?, "5.11", "the text stays after the press");

    page.press_in(&group, "5.11 ft").await?;
    page.until_says("#view", "40.9 ft²").await?;

    // A new text forgets the meaning that was pressed for the old one.
    page.write(&length, "6.11").await?;
    page.until_told(&length, "two meanings").await?;
    Ok(())
}

/// A room typed into one box: nothing moves before the press, which fills three boxes in one step of undo.
/// 2 × (10 + 14) × 8 = 384 ft².
pub async fn several_at_once(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((360, 800))).await?;
    page.open_ready("").await?;
    let id = sheet::new_job_with_surface(&page, "footprint").await?;
    let field = |name: &str| format!("surface-{id}-{name}");
    page.write(&field("length"), "10'x14'x8'").await?;
    page.until_told(&field("length"), "holds several measures").await?;
    assert_eq!(page.value(&field("width")).await?, "", "nothing is filled unasked");
    page.press_in(&format!("[data-field='{}'] .meanings", field("length")), "Fill ").await?;
    page.until_says("#view", "384 ft²").await?;
    for (name, text) in [("length", "10'"), ("width", "14'"), ("height", "8'")] {
        assert_eq!(page.value(&field(name)).await?, text);
    }
    page.press("Undo").await?;
    page.until_told(&field("length"), "holds several measures").await?;
    assert_eq!(page.value(&field("width")).await?, "", "one step takes all three back");
    Ok(())
}

/// A text that cannot be read stays where it is, says so, and stops nothing else.
pub async fn a_bad_text(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "about a mile?").await?;
    page.until_told("surface-101-length", "can’t be read").await?;
    assert_eq!(page.value("surface-101-length").await?, "about a mile?");
    let invalid = page
        .run("return document.getElementById('surface-101-length').getAttribute('aria-invalid')", vec![])
        .await?;
    assert_eq!(invalid, "true");

    // The other two surfaces go on: 248.6 + 217.0 = 465.6, with 3 % over-depth 479.57, rounded up 480.
    page.go("#/").await?;
    sheet::until_answer(&page, |answer| answer.board_feet == "480").await?;
    page.until_says(".answer", "2 of 3").await?;

    page.go("#/surface/101").await?;
    assert_eq!(
        page.value("surface-101-length").await?,
        "about a mile?",
        "still there after going away and back"
    );
    for (text, says) in
        [("-5 ft", "less than zero"), ("3/0", "zero below the line"), ("12 lb", "unit"), ("1e999", "form")]
    {
        page.write("surface-101-length", text).await?;
        page.until_told("surface-101-length", says).await?;
    }
    Ok(())
}

/// Undo takes back a whole typed text, redo brings it again, and removing a surface can be undone.
pub async fn undo_and_redo(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    page.write("surface-101-length", "100 ft").await?;
    page.write("surface-101-band", "10 in").await?;
    // 2 × (100 + 30) ft × 10 in: 216.67 ft² before joist ends.
    page.until_says("#view", "216.7 ft²").await?;
    page.press("Undo").await?;
    page.until("the band is back", "return document.getElementById('surface-101-band').value === '9 1/4 in'")
        .await?;
    assert_eq!(page.value("surface-101-length").await?, "100 ft");
    page.press("Undo").await?;
    page.until(
        "the length is back",
        "return document.getElementById('surface-101-length').value === '44 ft'",
    )
    .await?;
    page.press("Menu").await?;
    page.press("Redo").await?;
    page.until(
        "the length is done again",
        "return document.getElementById('surface-101-length').value === '100 ft'",
    )
    .await?;
    Ok(())
}

/// Ranges go through to board feet and kits: a length of `42 to 44 ft`.
pub async fn a_range(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    let id = sheet::new_job_with_surface(&page, "rectangle").await?;
    page.write(&format!("surface-{id}-length"), "42 to 44").await?;
    page.write(&format!("surface-{id}-height"), "1 ft").await?;
    page.go(&format!("#/depth/{id}")).await?;
    page.write(&format!("surface-{id}-depth"), "2").await?;
    page.go("#/").await?;
    // 84 to 88 board feet, likely 86.
    let answer: Answer =
        sheet::until_answer(&page, |answer| answer.board_feet == "86").await.map(|()| Answer::default())?;
    drop(answer);
    page.until_says(".answer", "84").await?;
    page.until_says(".answer", "88").await
}
