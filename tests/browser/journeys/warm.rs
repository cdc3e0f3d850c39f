//! Warm-up: by when kits have to be indoors, when they are ready, how long they are used outside.
//!
//! The kits of these journeys are all but warm, so that the label's 24 h (common practice, the default of the foam
//! sheet) decide and the times follow by counting hours back, whatever the curve says.

use super::axe::Seen;
use super::sheet;
use crate::Journey;
use driving::Step;
use driving::beforehand::CLOCK;
use driving::page::Page;
use serde_json::Value;
use std::sync::Arc;

/// Begins the first group and gives its id: the field for the cylinders' temperature has the focus then.
async fn begin(page: &Page) -> Step<u64> {
    page.press_in("#view", "Begin with the first kits").await?;
    let script = "return Number(document.activeElement?.id.match(/^warming-(\\d+)-start$/)?.[1] ?? 0)";
    Ok(page.until("the first entry has the focus", script).await?.as_u64().unwrap_or(0))
}

/// The kept job's first group.
fn group(record: &Value) -> &Value {
    &record["job"]["warming"][0]
}

/// A day so many days ahead by the browser's clock: as it is typed, and its weekday in English.
async fn ahead(page: &Page, days: i64) -> Step<(String, String)> {
    let script = "const day = new Date(); day.setDate(day.getDate() + arguments[0]);
        const two = n => String(n).padStart(2, '0');
        return [`${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`, day.toLocaleDateString('en-US', { weekday: 'short' })]";
    let said = page.run(script, vec![days.into()]).await?;
    let text = |at: usize| said[at].as_str().unwrap_or_default().to_owned();
    Ok((text(0), text(1)))
}

/// Kits at 69 °F in a room of 75 °F, to be sprayed in three days: the label's hours decide. In, read, ready, out, used
/// up, and each step taken back.
pub async fn in_ready_out(journey: Arc<Journey>) -> Step {
    journey.beforehand(CLOCK).await?;
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/warm").await?;
    page.until_says("#view h1", "Warm-up").await?;
    page.until_says("#view .say", "A cold cylinder takes many hours").await?;
    assert_eq!(page.count(".warm-group").await?, 0);

    // One press begins, and nothing is filled in.
    let id = begin(&page).await?;
    page.until_says(".warm-big", "Not known yet").await?;
    let record = sheet::until_kept(&page, |record| group(record)["id"].as_u64() == Some(id)).await?;
    assert_eq!(group(&record)["entries"].as_array().map_or(0, Vec::len), 0, "{record}");

    page.write(&format!("warming-{id}-start"), "69").await?;
    page.write(&format!("warming-{id}-room"), "75").await?;
    page.until_says(".warm-big", "Plan on 24 h").await?;
    let (date, _) = ahead(&page, 3).await?;
    page.write("job-0-spray_date", &date).await?;
    page.until_says(".warm-big", &format!("Indoors by {} 8:00 AM", ahead(&page, 2).await?.1)).await?;
    page.until_says(".warm-group .rows", "The label’s 24 h decide").await?;
    page.write("job-0-spray_time", "14:00").await?;
    page.until_says(".warm-big", &format!("Indoors by {} 2:00 PM", ahead(&page, 2).await?.1)).await?;
    // The drawing says the same as its list.
    page.until("the curve is drawn", "return /^Warm-up to 70.*label 24 h/.test(document.querySelector('.warm-group svg[role=img]')?.getAttribute('aria-label') ?? '')").await?;

    // A reading teaches nothing before they came in.
    assert_eq!(page.count(&format!("[data-key=log-{id}]")).await?, 0);
    page.press_in("#view", "They are in the warm room now").await?;
    page.until_says(".warm-big", "Ready").await?;
    sheet::until_kept(&page, |record| group(record)["moved_in"]["ms"].is_number()).await?;
    page.run("moveClock(180); document.dispatchEvent(new Event('visibilitychange'))", vec![]).await?;
    page.press_in("#view", "Log a reading").await?;
    page.until(
        "the steel's field has the focus",
        "return /^warm_reading-\\d+-skin$/.test(document.activeElement?.id)",
    )
    .await?;
    page.keys("71").await?;
    sheet::until_kept(&page, |record| {
        let log = &group(record)["log"][0];
        log["entries"][0]["text"] == "71"
            && log["taken"]["ms"].as_i64() > group(record)["moved_in"]["ms"].as_i64()
    })
    .await?;
    page.until_says("#view", "3 h after coming in").await?;
    // What was read is said as read, the rest as an estimate.
    page.until_says(".warm-group", "you read 71").await?;

    // Hours that are over are no clearance.
    page.run("moveClock(1262); document.dispatchEvent(new Event('visibilitychange'))", vec![]).await?;
    page.until_says(".warm-big", "Measure now").await?;

    // Outside at 20 °F the clock runs, every second, and is over in a day at the latest.
    page.write(&format!("warming-{id}-out_air"), "20").await?;
    page.press_in("#view", "They left it now").await?;
    page.until_says(".warm-big", "Use by").await?;
    let left = page.text(".warm-clock:last-child .timer").await?;
    page.until(
        "the countdown goes on",
        &format!(
            "return document.querySelector('.warm-clock:last-child .timer')?.textContent !== {}",
            Value::from(left)
        ),
    )
    .await?;
    page.run("moveClock(1440); document.dispatchEvent(new Event('visibilitychange'))", vec![]).await?;
    page.until_says(".warm-big", "Measure first").await?;
    page.until_says(".warm-clocks", "Measure A and B before anything is sprayed.").await?;

    // Each taken back, and kept so.
    page.press_in("#view", "Take back: they left").await?;
    page.until_says(".warm-big", "Measure now").await?;
    page.press_in("#view", "Take back: they came in").await?;
    sheet::until_kept(&page, |record| {
        group(record).get("moved_in").is_none() && group(record).get("moved_out").is_none()
    })
    .await?;
    Ok(())
}

/// Several groups with names of their own; too late said with what to do; small phone, Spanish, metric, and readable.
pub async fn groups_and_late(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    journey.browser.viewport(Some((360, 780))).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/warm").await?;
    let id = begin(&page).await?;
    page.write(&format!("warming-{id}-start"), "40").await?;
    page.write(&format!("warming-{id}-room"), "75").await?;
    page.write(&format!("warming-{id}-out_air"), "35").await?;
    page.write(&format!("warming-{id}-name"), "Far from the heater").await?;
    page.until_says(".warm-group h2", "Far from the heater").await?;
    // Spraying began yesterday: they can be in time for nothing.
    page.write("job-0-spray_date", &ahead(&page, -1).await?.0).await?;
    page.until_says(".warm-big", "Too late for").await?;
    page.until_says(".warm-group .say", "Bring them in now and spray later").await?;
    page.until_says(".warm-group .say", "no heat belt, hot water, torch").await?;
    // The drawing shows no time by the clock that cannot be kept.
    let drawn = page.until("hours are drawn", "const said = tidy(document.querySelector('.warm-group svg[role=img]')?.textContent ?? ''); return said.includes('Plan on') && said").await?;
    assert!(!drawn.as_str().unwrap_or_default().contains("ready by"), "{drawn}");

    page.press_in("#view", "Add another group of kits").await?;
    page.until("there are two groups", "return document.querySelectorAll('.warm-group').length === 2")
        .await?;
    page.until_says(".warm-group:last-child h2", "Kits, group 2").await?;
    // A room below what the label wants never brings the core there.
    let second = page
        .run("return Number(document.querySelector('.warm-group:last-child h2').id.slice(5))", vec![])
        .await?
        .as_u64()
        .unwrap_or(0);
    page.write(&format!("warming-{second}-start"), "40").await?;
    page.write(&format!("warming-{second}-room"), "66").await?;
    page.until_says(".warm-group:last-child .warm-big", "Not in this room").await?;
    page.open_all().await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");
    seen.look(&page, "two groups").await?;

    page.go("#/settings").await?;
    page.press_in("#view", "Español").await?;
    page.until_says("#view h1", "Ajustes").await?;
    page.go("#/warm").await?;
    page.until_says("#view h1", "Calentamiento").await?;
    page.until_says(".warm-big", "Tarde para").await?;
    page.open_all().await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");
    seen.look(&page, "in Spanish").await?;

    page.press_at(&format!("[data-key=remove-{second}]")).await?;
    page.until("one group is left", "return document.querySelectorAll('.warm-group').length === 1").await?;
    seen.told(&journey);
    Ok(())
}
