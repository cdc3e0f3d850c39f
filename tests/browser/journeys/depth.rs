//! How deep, and why: the aim dragged on the ruler, by keys and by typing, and the ways out where two rules cross.

use super::sheet;
use crate::Journey;
use driving::Step;
use driving::page::Page;
use driving::places;
use serde_json::{Value, json};
use std::sync::Arc;
use thirtyfour::{By, Key};

const GRIP: &str = ".grip[role=slider]";
const ANSWER: &str = "return document.querySelector('.answer').textContent";

/// The pixels to an inch, by two neighboring figures of the ruler.
async fn inch(page: &Page) -> Step<f64> {
    let k = page.run(
        "const at = figure => [...document.querySelectorAll('.ruled text.xl')].find(one => one.classList.contains('e') && one.textContent === figure).getBoundingClientRect().y; return at('1') - at('2')",
        vec![],
    );
    k.await?.as_f64().ok_or_else(|| "no ruler".into())
}

/// The middle of the grip and the depth that it tells.
async fn grip_at(page: &Page) -> Step<(f64, String)> {
    let seen = page
        .run(&format!("const grip = document.querySelector('{GRIP}'), box = grip.getBoundingClientRect(); return [(box.top + box.bottom) / 2, grip.getAttribute('aria-valuetext')]"), vec![])
        .await?;
    Ok((seen[0].as_f64().ok_or("no grip")?, seen[1].as_str().unwrap_or_default().replace('\u{a0}', " ")))
}

/// Takes hold of the grip, moves it by some pixels in several steps, and lets go: how far the grip has followed before
/// that, and what it tells.
async fn drag(page: &Page, by: f64) -> Step<(f64, String)> {
    page.run(&format!("document.querySelector('{GRIP}').scrollIntoView({{ block: 'center' }})"), vec![])
        .await?;
    let (before, _) = grip_at(page).await?;
    let driver = &page.browser().driver;
    let grip = driver.find(By::Css(GRIP)).await?;
    driver
        .action_chain()
        .move_to_element_center(&grip)
        .click_and_hold()
        .move_by_offset(0, (by / 3.0).round() as i64)
        .move_by_offset(0, by.round() as i64 - (by / 3.0).round() as i64)
        .perform()
        .await?;
    page.settled().await?;
    let (middle, told) = grip_at(page).await?;
    driver.action_chain().release().perform().await?;
    page.settled().await?;
    Ok((middle - before, told))
}

async fn until_aim(page: &Page, text: &str) -> Step {
    page.until(
        &format!("the aim is {text}"),
        &format!("return document.querySelector('{GRIP}')?.getAttribute('aria-valuetext').replace(/\\s/g, ' ') === '{text}'"),
    )
    .await?;
    page.until_says(".steps3 [role=status]", text).await
}

/// An inch on the drawing is an inch of foam; the marks, the board feet and the field answer; one press takes the
/// whole drag back.
pub async fn dragged(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    for (width, height) in [(390, 844), (1280, 900), (320, 700)] {
        journey.browser.viewport(Some((width, height))).await?;
        page.open_ready("#/depth/101").await?;
        until_aim(&page, "3 in").await?;
        let before = page.run(ANSWER, vec![]).await?;
        let k = inch(&page).await?;
        let (followed, told) = drag(&page, k).await?;
        assert_eq!(told, "2 in", "at {width} px an inch of the drawing is an inch of foam");
        assert!((followed - k).abs() < 1.5, "the grip follows the pointer: {followed} of {k}");
        until_aim(&page, "2 in").await?;
        assert_eq!(page.value("surface-101-depth").await?, "2\u{a0}in");
        page.until("the promise follows", "return document.querySelector('.ruled svg').getAttribute('aria-label').includes('least promised 1½')")
            .await?;
        assert_ne!(page.run(ANSWER, vec![]).await?, before, "the answer follows");
        // Between two lines of the ruler the aim goes to the nearer one, and the grip with it.
        let (followed, told) = drag(&page, -k * 0.65).await?;
        assert_eq!(told, "2⅝ in");
        assert!((followed + k * 0.625).abs() < 1.5, "{followed} of {k}");
        page.press("Undo").await?;
        until_aim(&page, "2 in").await?;
        page.press("Undo").await?;
        until_aim(&page, "3 in").await?;
        // What was dragged is another person's sample again.
        page.run("localStorage.clear()", vec![]).await?;
    }
    Ok(())
}

/// The keyboard moves the same grip, line by line, and whoever hears the page is told the depth; typing stays.
pub async fn by_keys_and_typing(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/depth/101").await?;
    until_aim(&page, "3 in").await?;
    page.run(&format!("document.querySelector('{GRIP}').focus()"), vec![]).await?;
    assert_eq!(page.focused().await?.1, "Depth to aim at");
    for (key, then) in [
        (Key::Up, "3⅛ in"),
        (Key::Right, "3¼ in"),
        (Key::Down, "3⅛ in"),
        (Key::Left, "3 in"),
        (Key::PageUp, "3½ in"),
        (Key::PageDown, "3 in"),
        (Key::Home, "⅛ in"),
    ] {
        page.keys(key + "").await?;
        until_aim(&page, then).await?;
    }
    page.keys(Key::End + "").await?;
    page.until("at the end of the ruler", &format!("const grip = document.querySelector('{GRIP}'); return grip === document.activeElement && Number(grip.getAttribute('aria-valuenow')) > 4"))
        .await?;
    page.write("surface-101-depth", "2 3/16").await?;
    until_aim(&page, "2 3/16 in").await?;
    // From between two lines a step leads to the next one.
    page.press_at("[data-key=more]").await?;
    until_aim(&page, "2¼ in").await?;
    let ends = page
        .run(&format!("const grip = document.querySelector('{GRIP}'); return ['min', 'now'].map(name => grip.getAttribute('aria-value' + name))"), vec![])
        .await?;
    assert_eq!(ends, json!(["0.125", "2.25"]));
    // In millimeters the lines are five apart.
    page.go("#/settings").await?;
    page.press_at("#view label.key-choice:has([value=metric])").await?;
    page.go("#/depth/101").await?;
    until_aim(&page, "57.2 mm").await?;
    page.run(&format!("document.querySelector('{GRIP}').focus()"), vec![]).await?;
    page.keys(Key::Up + "").await?;
    until_aim(&page, "60 mm").await?;
    Ok(())
}

/// How many stretches are hatched because rules cross there.
async fn hatched(page: &Page) -> Step<Value> {
    page.run("return document.querySelectorAll('.ruled svg .hatch').length", vec![]).await
}

/// A target that no exposed foam at a rim reaches: the collision is hatched and said, and a way out that is pressed is
/// chosen until it is pressed again.
pub async fn ways_out(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/depth/101").await?;
    page.press_at("label:has([name=surface-101-exposure][value=exposed])").await?;
    page.write("surface-101-target_r", "R-20").await?;
    page.until_says(".ruled svg", "cross by").await?;
    page.until_says("#view main", "No depth meets both").await?;
    assert_eq!(hatched(&page).await?, json!(1));
    page.press_at("[data-key=out-cover]").await?;
    page.until(
        "the way is chosen",
        "return document.querySelector('[data-key=out-cover]')?.getAttribute('aria-pressed') === 'true'",
    )
    .await?;
    assert_eq!(hatched(&page).await?, json!(0), "nothing crosses any more");
    sheet::until_kept(&page, |record| record.to_string().contains("covered")).await?;
    page.press_at("[data-key=out-cover]").await?;
    page.until(
        "it is taken back",
        "return document.querySelector('[data-key=out-cover]')?.getAttribute('aria-pressed') !== 'true'",
    )
    .await?;
    Ok(())
}

/// Where the code's row is more than may stay exposed, each way through the code is chosen by a press and taken back by
/// the same; the U that foam and what is built reach is worked out, and the choice is kept with the job.
pub async fn ways_through_the_code(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((360, 740))).await?;
    page.open_ready("").await?;
    sheet::take_in(&page, &places::package().join("tests/jobs/rim-by-rules/job.json")).await?;
    page.until_says("#view h1", "A rim of 70").await?;
    page.go("#/depth/101").await?;
    page.until_says(".ruled svg", "cross by").await?;
    let chosen = |key: &str, is: bool| {
        format!(
            "return (document.querySelector('[data-key=out-{key}]')?.getAttribute('aria-pressed') === 'true') === {is}"
        )
    };
    for (key, kept) in [("ufactor", "u_factor"), ("accepted", "accepted"), ("none", "none")] {
        page.press_at(&format!("[data-key=out-{key}]")).await?;
        page.until("the way is chosen", &chosen(key, true)).await?;
        sheet::until_kept(&page, |record| {
            record["job"]["surfaces"][0]["entries"].as_array().is_some_and(|entries| {
                entries.iter().any(|one| one["field"] == "code_path" && one["text"] == kept)
            })
        })
        .await?;
        // The rules then ask for no depth, or for another.
        page.until(
            "nothing crosses any more",
            "const drawn = document.querySelector('.ruled'); return !visible(drawn) || !drawn.querySelector('.hatch')",
        )
        .await?;
        page.press_at(&format!("[data-key=out-{key}]")).await?;
        page.until("it is taken back", &chosen(key, false)).await?;
    }
    page.until_says(".ruled svg", "cross by").await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");
    let (faults, _) = page.axe().await?;
    assert!(faults.is_empty(), "{faults:?}");
    Ok(())
}
