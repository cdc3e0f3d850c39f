//! One whole job on a phone, from the walkthrough to the day sheet; from the middle on without a network.

use super::{offline, readiness, sheet};
use crate::Journey;
use driving::Step;
use driving::beforehand::CLOCK;
use driving::page::Page;
use serde_json::json;
use std::sync::Arc;
use std::time::Duration;

/// A second press sooner than this is taken for the glove's double of the first.
const GLOVE: Duration = Duration::from_millis(750);

/// Under a plan of 40 × 25 ft: a rim joist run (130 ft around, band 2x10) and the lower 2 ft of the walls.
///
/// By hand. Rim: 1560 × 9.25 ÷ 144 = 100.208 ft²; joists every 16 in land on both 40 ft sides, 31 a side: 62 ends of
/// 1½ × 9¼ in are 5.974 ft²; left 94.234 ft², at 3 in 282.703 board feet. Walls: 130 × 2 = 260 ft², at 2 in 520.
/// Together 802.703, rounded up 803. Usable: Large 480 × 0.86 − 5 = 407.8; two are 815.6, $1,500, and no other mix
/// that is enough costs less (one Large, one Medium and nine Small: 805, $1,862; one Large and three Medium: 805.6,
/// $1,602). The sheet's largest pass is 2 in: the rim gets two passes, the walls one.
pub async fn walkthrough_to_day_sheet(journey: Arc<Journey>) -> Step {
    journey.beforehand(CLOCK).await?;
    for part in ["Failed to load", "ERR_", "NetworkError", "never-kept", "Load failed", "fetch"] {
        journey.provokes(part);
    }
    let mut site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;

    // The walkthrough.
    let rim = sheet::new_job_with_surface(&page, "rim_run").await?;
    let field = |id: u64, name: &str| format!("surface-{id}-{name}");
    for (name, text) in
        [("name", "Rim joist"), ("length", "40'"), ("width", "25 ft"), ("band", "2x10"), ("member", "2x10")]
    {
        page.write(&field(rim, name), text).await?;
    }
    page.until_told(&field(rim, "band"), "9¼").await?;
    page.press_in(&format!("[data-field='{}']", field(rim, "joists_land")), "The length sides").await?;
    page.until_says("#view", "94.2 ft²").await?;
    page.go("#/").await?;
    page.press_in("#view", "Add a surface").await?;
    let script = format!(
        "const id = Number(location.hash.match(/^#\\/surface\\/(\\d+)$/)?.[1]); return id === {rim} ? 0 : id"
    );
    let walls = page.until("the second surface's screen", &script).await?.as_u64().unwrap_or(0);
    sheet::choose(&page, &field(walls, "shape"), "band").await?;
    page.write(&field(walls, "perimeter"), "130'").await?;
    page.write(&field(walls, "to_height"), "24 in").await?;
    page.until_says("#view", "260 ft²").await?;

    // Depths, board feet, kits.
    for (id, depth) in [(rim, "3"), (walls, "2")] {
        page.go(&format!("#/depth/{id}")).await?;
        page.write(&field(id, "depth"), depth).await?;
    }
    page.go("#/kits").await?;
    page.until_says("#view", "$1,500").await?;
    sheet::until_answer(&page, |answer| {
        answer.board_feet == "803"
            && answer.kits == "2"
            && answer.passes == "3"
            && answer.verdict == "NOT READ"
    })
    .await?;

    // In the crawlspace: no network from here on.
    offline::kept_on_device(&page).await?;
    site.kill();
    page.reload().await?;
    page.ready().await?;
    assert!(!offline::reaches_server(&page).await?, "the network is away");

    readiness::enter(&page, "75", "68", "45", "66").await?;
    readiness::flames_out(&page).await?;
    sheet::until_answer(&page, |answer| answer.verdict == "GO").await?;

    // The day, step by step, until everything waits for the rim's first pass.
    page.go("#/day").await?;
    let before = follow(&page, "Rim joist, pass 1 of 2").await?;
    assert!(before.len() >= 8, "the steps before spraying: {before:?}");
    assert!(before.iter().any(|step| step.contains("valves")), "a kit is opened: {before:?}");
    tokio::time::sleep(GLOVE).await;
    page.press("Trigger let go").await?;
    page.until(
        "the nozzle's half minute runs",
        "return /^0:[0-3]\\d$/.test(document.querySelector('.nozzle .timer')?.textContent ?? '')",
    )
    .await?;
    tokio::time::sleep(GLOVE).await;
    page.press("Spraying again").await?;
    follow(&page, "Rim joist, pass 2 of 2").await?;
    // The walls were sprayed meanwhile; now the second pass waits, by the clock, also after the page was away.
    let waits = "return /^[12]?\\d:\\d\\d$/.test(document.querySelector('.next-step .timer.large')?.textContent ?? '')";
    page.until("the wait is counted down", waits).await?;
    page.reload().await?;
    page.ready().await?;
    page.until("the wait goes on after loading again", waits).await?;
    page.run("moveClock(60); document.dispatchEvent(new Event('visibilitychange'))", vec![]).await?;
    page.until("the wait is over", "return !document.querySelector('.next-step .timer')").await?;

    // An hour later the readings are old: the pass is not lost, the sheet says what has to be read.
    follow(&page, "Everything on the list is done").await?;
    let log = page.run("return document.querySelectorAll('.log > li').length", vec![]).await?;
    assert!(log.as_u64().unwrap_or(0) >= 20, "what was done is in the log: {log}");
    let kept = sheet::until_kept(&page, |record| {
        record["job"]["events"]
            .as_array()
            .is_some_and(|events| events.len() as u64 == log.as_u64().unwrap_or(0))
    })
    .await?;
    let lifts =
        kept["job"]["events"].as_array().into_iter().flatten().filter(|event| event["what"] == "lift");
    let lifts: Vec<_> = lifts.map(|event| (event["surface"].clone(), event["lift"].clone())).collect();
    assert_eq!(lifts, [(json!(rim), json!(1)), (json!(walls), json!(1)), (json!(rim), json!(2))]);
    sheet::until_answer(&page, |answer| answer.board_feet == "803").await
}

/// Presses what the day sheet says is next until its heading is the one wanted; gives the headings passed.
/// A glove's double press is taken for one, so each press waits its time.
async fn follow(page: &Page, wanted: &str) -> Step<Vec<String>> {
    let mut passed = Vec::new();
    page.until("a next step", "return !!document.querySelector('#next-title')?.textContent.trim()").await?;
    for _ in 0..40 {
        let heading = page.text("#next-title").await?;
        if heading == wanted {
            return Ok(passed);
        }
        passed.push(heading.clone());
        tokio::time::sleep(GLOVE).await;
        page.press_at(".next-step [data-key=next-main]").await?;
        let script =
            format!("return tidy(document.querySelector('#next-title')?.textContent) !== {}", json!(heading));
        page.until(&format!("{heading} is marked"), &script).await?;
    }
    Err(format!("{wanted} never comes: {passed:?}").into())
}
