//! People and air: who stays out until when, the exhaust, what goes into the van, and the sheet for an emergency.

use super::axe::Seen;
use super::sheet;
use crate::Journey;
use driving::page::Page;
use driving::{Step, places};
use serde_json::{Value, json};
use std::sync::Arc;
use std::time::{SystemTime, UNIX_EPOCH};

const PHONE: (u32, u32) = (390, 844);
const MINUTE: u64 = 60_000;

/// A job with a foam of 24 h on its label and two framed surfaces, sprayed three hours ago; the exhaust was off for 100
/// minutes of them.
fn sprayed() -> Step<(Value, u64)> {
    let file = places::package().join("tests/jobs/day-half-done/job.json");
    let mut job: Value = serde_json::from_str(&std::fs::read_to_string(file)?)?;
    let now = SystemTime::now().duration_since(UNIX_EPOCH)?.as_millis() as u64 / MINUTE * MINUTE;
    let last = now - 180 * MINUTE;
    let marks = [
        ("lift", "", 101, 1, last),
        ("step", "stop", 0, 0, last + MINUTE),
        ("exhaust_off", "", 0, 0, now - 120 * MINUTE),
        ("exhaust_on", "", 0, 0, now - 20 * MINUTE),
    ];
    let events: Vec<Value> = marks
        .iter()
        .zip(150..)
        .map(|((what, key, surface, lift, ms), id)| {
            json!({ "id": id, "what": what, "at": { "ms": ms, "offset_min": 0 }, "key": key, "surface": surface,
                "lift": lift, "name": "", "entries": [] })
        })
        .collect();
    job["events"] = json!(events);
    if let Some(entries) = job["entries"].as_array_mut() {
        entries.push(json!({ "field": "water", "text": "yes" }));
    }
    job["name"] = json!("A day with a gap in it");
    job["id"] = json!("a-day-with-a-gap");
    job["place"] = json!("14 Larkspur Lane, back door");
    Ok((job, last))
}

/// Opens the job.
async fn opened(journey: &Journey, page: &Page, job: &Value) -> Step {
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("#/").await?;
    let file = format!("people-{}.foamwright.json", journey.engine.name());
    sheet::take_in(page, &sheet::written(&file, job.to_string().as_bytes())?).await?;
    let name = job["name"].clone();
    sheet::until_kept(page, |record| record["job"]["name"] == name).await?;
    Ok(())
}

/// The instant as the browser's own clock writes it, with its weekday.
async fn written(page: &Page, ms: u64) -> Step<String> {
    let script = "const at = new Date(arguments[0]); const time = at.toLocaleTimeString('en-US', { hour: 'numeric', minute: '2-digit' });
        return `${at.toLocaleDateString('en-US', { weekday: 'short' })} ${time}`";
    Ok(page.run(script, vec![json!(ms)]).await?.as_str().unwrap_or_default().to_owned())
}

/// Case A26. The label's 24 h from the last spray and the 100 min for which the exhaust was off; the same for workers
/// once their hours are known. While the exhaust is off, while it smells, and where the sheet is silent: no time.
pub async fn back_in(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let (job, last) = sprayed()?;
    let mut seen = Seen::default();
    opened(&journey, &page, &job).await?;
    page.go("#/day").await?;
    page.press_in("#view", "People and air").await?;
    page.until_says("#view h1", "People and air").await?;
    let time = written(&page, last + (24 * 60 + 100) * MINUTE).await?;
    page.until_says("#answer-title", &format!("Nobody back in before {time}")).await?;
    page.until_says(".next-step", "Label: 24 h after the last spray").await?;
    page.until_says(".next-step", "plus 1 h 40 while the exhaust was off").await?;
    page.until_says(".next-step", "this is no clearance").await?;
    page.until_says(".next-step", "Workers: no time given").await?;
    seen.look(&page, "people, a time").await?;

    page.go("#/foam/10").await?;
    page.write("foam-10-reentry_workers", "12 h").await?;
    page.go("#/people").await?;
    let workers = written(&page, last + (12 * 60 + 100) * MINUTE).await?;
    page.until_says(".next-step", &format!("Workers: not before {workers}")).await?;

    page.press_in("#view", "Exhaust went off now").await?;
    page.until_says("#answer-title", "No time yet").await?;
    page.until_says(".next-step", "after the last spray. No time is given while the exhaust is off").await?;
    no_clock(&page, &time).await?;
    seen.look(&page, "people, the exhaust off").await?;
    page.go("#/day").await?;
    page.until_says("#view", "Exhaust off since").await?;
    page.press_in("#view", "Exhaust runs again").await?;
    page.go("#/people").await?;
    page.until_says("#answer-title", "Nobody back in before").await?;

    page.press_at("[data-field=job-0-smell] .key-choice:has(input[value=yes])").await?;
    page.until_says("#answer-title", "No time yet").await?;
    page.until_says(".next-step", "while it smells").await?;
    no_clock(&page, &time).await?;
    page.press_at("[data-field=job-0-smell] .key-choice:has(input[value=no])").await?;
    page.until_says("#answer-title", "Nobody back in before").await?;

    page.go("#/foam/10").await?;
    page.write("foam-10-reentry", "").await?;
    page.go("#/people").await?;
    page.until_says("#answer-title", "No time given: the foam sheet gives no hours").await?;
    assert_eq!(
        page.count(".next-step h2 + .why a[href='#/foam/10']").await?,
        1,
        "the way to the sheet that is silent"
    );
    seen.look(&page, "people, no hours on the sheet").await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");
    seen.told(&journey);
    Ok(())
}

/// No hour for those who live there stands in the answer.
async fn no_clock(page: &Page, time: &str) -> Step {
    let answer = page.text(".next-step").await?;
    let title = page.text("#answer-title").await?;
    assert!(
        !answer.contains(time) && !title.chars().any(|one| one.is_ascii_digit()),
        "a time stands there: {answer}"
    );
    Ok(())
}

/// 20 × 15 × 8 ft are 2,400 ft³: 400 cfm for 10 air changes an hour; 350 cfm with K = 3 down to 5 % takes 61.63 min, and
/// 20 in² of leaks hold 5 Pa at 51.2 cfm (worked by hand from V K ÷ Q × ln(C₀ ÷ C) and 0.65 A √(2 Δp ÷ ρ)). Three people
/// who go in twice: 6 coveralls, 9 pairs of gloves, 3 pairs of cartridges.
pub async fn air_and_van(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let (mut job, _) = sprayed()?;
    if let Some(kits) = job["kits"].as_array_mut() {
        for (kit, gross) in kits.iter_mut().zip(["12 lb", "41 lb", "118 lb"]) {
            if let Some(entries) = kit["entries"].as_array_mut() {
                entries.push(json!({ "field": "gross_weight", "text": gross }));
            }
        }
    }
    let mut seen = Seen::default();
    opened(&journey, &page, &job).await?;
    page.go("#/people").await?;
    page.until_says("#view", "They need the length, width and height of the zone.").await?;
    for (field, text) in [
        ("room_length", "20"),
        ("room_width", "15"),
        ("room_height", "8"),
        ("exhaust_flow", "350"),
        ("purge_left", "5"),
        ("leak_area", "20"),
    ] {
        page.write(&format!("job-0-{field}"), text).await?;
    }
    for text in [
        "2,400 ft³",
        "400 cfm",
        "350 cfm: less than wanted",
        "51 cfm",
        "1 h 2",
        "Air exchange estimate, never a clearance",
    ] {
        page.until_says("#view", text).await?;
    }
    page.open_all().await?;
    page.write("job-0-crew", "3").await?;
    page.write("job-0-vehicle_most", "20").await?;
    let counts = page
        .until(
            "counts for three people",
            "const rows = [...document.querySelectorAll('.van .rows li')].map(one => tidy(one.textContent)); return rows.some(one => /^Coveralls.*6$/.test(one)) && rows",
        )
        .await?;
    let counts = counts.to_string();
    for ending in ["9\"", "3\""] {
        assert!(counts.contains(ending), "{counts}");
    }
    page.until_says("[data-field=job-0-vehicle_most]", "20 lb").await?;
    assert_eq!(page.count(".van .say.hold").await?, 0, "the weight stops nothing");
    seen.look(&page, "people, everything filled in").await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");

    page.press_at("a[href='#/working/job/0/people.exhaust.purge_min']").await?;
    page.until_says(".calc .lit", "1 h 2").await?;
    page.go("#/people").await?;
    page.press_in("#view", "Print the load-out list").await?;
    page.until_says(".leaf[data-paper=loadout]", "Coveralls").await?;
    page.go("#/people").await?;
    page.press_in("#view", "Print the emergency sheet").await?;
    page.until_says(".leaf[data-paper=emergency]", "14 Larkspur Lane, back door").await?;
    page.until_says(".leaf[data-paper=emergency]", "Sample closed-cell A").await?;
    page.until_says(".leaf[data-paper=emergency]", "at least 15 minutes").await?;
    seen.told(&journey);
    Ok(())
}
