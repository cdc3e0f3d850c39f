//! What several journeys do on the sheet.

use driving::page::Page;
use driving::{Step, places};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

/// The four cells of the answer, always the same four in this order.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Answer {
    pub board_feet: String,
    pub kits: String,
    pub passes: String,
    pub verdict: String,
}

/// The answer as it stands at the foot of the screen.
pub async fn answer(page: &Page) -> Step<Answer> {
    let script = "return [...document.querySelectorAll('.answer a, .block a')].filter(visible).slice(0, 4).map(one => tidy(one.querySelector('b')?.textContent))";
    let cells = page.run(script, vec![]).await?;
    let cell = |at: usize| cells[at].as_str().unwrap_or_default().to_owned();
    Ok(Answer { board_feet: cell(0), kits: cell(1), passes: cell(2), verdict: cell(3) })
}

/// Waits until the answer is as wanted.
pub async fn until_answer(page: &Page, wanted: impl Fn(&Answer) -> bool) -> Step {
    let started = Instant::now();
    loop {
        let last = answer(page).await?;
        if wanted(&last) {
            return Ok(());
        }
        if started.elapsed() > Duration::from_secs(8) {
            return Err(format!("the answer is not as wanted: {last:?}").into());
        }
        tokio::time::sleep(Duration::from_millis(25)).await;
    }
}

/// The jobs kept in this browser, as records `{id, revision, tab, saved_at, job}`.
pub async fn kept_jobs(page: &Page) -> Step<Vec<Value>> {
    let mut jobs = Vec::new();
    for (key, text) in page.kept().await? {
        if key.starts_with("foamwright.job.") {
            jobs.push(serde_json::from_str(&text).map_err(|error| format!("{key} is no JSON: {error}"))?);
        }
    }
    Ok(jobs)
}

/// Waits until a kept job is as wanted, and gives its record.
pub async fn until_kept(page: &Page, wanted: impl Fn(&Value) -> bool) -> Step<Value> {
    let started = Instant::now();
    loop {
        let jobs = kept_jobs(page).await?;
        if let Some(found) = jobs.iter().find(|record| wanted(record)) {
            return Ok(found.clone());
        }
        if started.elapsed() > Duration::from_secs(8) {
            return Err(format!("no kept job is as wanted: {}", json!(jobs)).into());
        }
        tokio::time::sleep(Duration::from_millis(25)).await;
    }
}

/// Begins a job and its first surface of a shape, and is on the surface's screen then. Gives the surface's id.
pub async fn new_job_with_surface(page: &Page, shape: &str) -> Step<u64> {
    page.go("#/jobs").await?;
    page.press("New job").await?;
    page.until_says("#view h1", "without a name").await?;
    page.press_in("#view", "Add a surface").await?;
    let id = page
        .until("a surface's screen", "return Number(location.hash.match(/^#\\/surface\\/(\\d+)$/)?.[1])")
        .await?
        .as_u64()
        .unwrap_or(0);
    choose(page, &format!("surface-{id}-shape"), shape).await?;
    Ok(id)
}

/// Chooses a value of a list, as a person does: the event that follows is the browser's own kind.
pub async fn choose(page: &Page, id: &str, value: &str) -> Step {
    let field = page.field(id).await?;
    // Where the bar at the foot does not lie over it.
    page.run("document.getElementById(arguments[0]).scrollIntoView({ block: 'center' })", vec![id.into()])
        .await?;
    let list = thirtyfour::components::SelectElement::new(&field).await?;
    list.select_by_value(value).await?;
    page.settled().await
}

/// Chooses a file where the jobs screen takes one in.
pub async fn take_in(page: &Page, file: &Path) -> Step {
    page.go("#/jobs").await?;
    page.until("the place for a file", "return !!document.querySelector('#view input[type=file]')").await?;
    let input = page.browser().driver.find(thirtyfour::By::Css("#view input[type=file]")).await?;
    input.send_keys(file.to_string_lossy()).await?;
    Ok(())
}

/// A file with these bytes.
pub fn written(name: &str, text: &[u8]) -> Step<PathBuf> {
    let path = places::scratch(&format!("files-{name}"))?.join(name);
    std::fs::write(&path, text)?;
    Ok(path)
}

/// The sample job as a file's text.
pub fn sample() -> Step<String> {
    Ok(std::fs::read_to_string(places::package().join("tests/jobs/larkspur-lane/job.json"))?)
}

/// The fragments of every screen, on the sample job.
pub const SCREENS: [&str; 32] = [
    "#/",
    "#/before",
    "#/seal",
    "#/surface/101",
    "#/surface/102",
    "#/surface/105",
    "#/depth/101",
    "#/depth/105",
    "#/place",
    "#/kits",
    "#/ready",
    "#/hours",
    "#/moist",
    "#/ahead",
    "#/warm",
    "#/people",
    "#/calendar",
    "#/spray",
    "#/day",
    "#/working",
    "#/drawings",
    "#/paper/sheet/drawings/materials/loadout/day/emergency/working",
    "#/photos",
    "#/jobs",
    "#/foam/10",
    "#/kit/31",
    "#/settings",
    "#/move",
    "#/backup",
    "#/practice",
    "#/class",
    "#/marks",
];
