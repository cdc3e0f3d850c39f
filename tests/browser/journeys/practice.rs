//! Practice: an exercise drawn, worked, marked and looked up; its number, its link, the progress kept on the device.

use super::{axe, offline};
use crate::Journey;
use driving::page::Page;
use driving::{Step, places};
use serde_json::{Value, json};
use std::process::Command;
use std::sync::Arc;

const PHONE: (u32, u32) = (360, 780);

/// Exercises as the program prints them, with their answers: what the page has to agree with.
pub fn keys(journey: &Journey, seeds: &[String], units: &str) -> Step<Vec<Value>> {
    let mut command = Command::new(&journey.built.program);
    let asked = command.arg("exercise").args(seeds).args(["--json", "--key", "--units", units]).output()?;
    if !asked.status.success() {
        return Err(String::from_utf8_lossy(&asked.stderr).into_owned().into());
    }
    let lines = String::from_utf8(asked.stdout)?;
    lines.lines().map(|line| Ok(serde_json::from_str(line)?)).collect()
}

pub fn key(journey: &Journey, seed: &str, units: &str) -> Step<Value> {
    Ok(keys(journey, &[seed.to_owned()], units)?.remove(0))
}

/// The first exercise of a scene on a level.
pub fn seed_of(journey: &Journey, scene: &str, level: u8) -> Step<String> {
    for from in (0..4096).step_by(64) {
        let seeds: Vec<String> = (from..from + 64).map(|number| format!("1-{level}-{number:04x}")).collect();
        let mut command = Command::new(&journey.built.program);
        let asked = command.arg("exercise").args(&seeds).arg("--json").output()?;
        for line in String::from_utf8(asked.stdout)?.lines() {
            let exercise: Value = serde_json::from_str(line)?;
            if exercise["scene"] == scene {
                return Ok(exercise["seed"].as_str().unwrap_or_default().to_owned());
            }
        }
    }
    Err(format!("no exercise of {scene} on level {level}").into())
}

/// A phrase of the page's words.
pub fn phrase(language: &str, page: &str, name: &str) -> Step<String> {
    let file = places::package().join(format!("www/words/{language}/{page}.json"));
    let words: Value = serde_json::from_str(&std::fs::read_to_string(file)?)?;
    Ok(words[name].as_str().ok_or_else(|| format!("no words {page}.{name}"))?.to_owned())
}

/// A value as a person types it into the box of its step: a plain number in the step's unit.
pub fn typed(step: &Value, value: f64) -> Step<String> {
    let number = match step["unit"].as_str().unwrap_or_default() {
        "ft" => value / 12.0,
        "m" => value * 0.0254,
        "mm" => value * 25.4,
        "m2" => value * 0.092_903_04,
        "usd" => value / 100.0,
        "hr" => value / 60.0,
        "c" => (value - 32.0) / 1.8,
        "rsi" => value / 5.678_263_341,
        "in" | "ft2" | "bd_ft" | "each" | "min" | "f" | "r" | "pct" | "one" => value,
        other => return Err(format!("no plain number of {other}").into()),
    };
    Ok(format!("{number:.4}").trim_end_matches('0').trim_end_matches('.').to_owned())
}

fn right(exercise: &Value, at: usize) -> f64 {
    exercise["solved"][at]["value"].as_f64().unwrap_or(f64::NAN)
}

/// What a slip gives at a step.
fn slip(exercise: &Value, at: usize, name: &str) -> Step<f64> {
    let mut all = exercise["slips"].as_array().into_iter().flatten();
    let one = all.find(|one| one["step"] == at && one["slip"] == name);
    one.and_then(|one| one["value"].as_f64()).ok_or_else(|| format!("no {name} at step {at}").into())
}

/// The words of a slip from its last figure on.
fn tail(phrase: &str) -> String {
    phrase.rsplit('}').next().unwrap_or_default().trim_start_matches(['.', ',', ':', ' ']).to_owned()
}

async fn fill(page: &Page, exercise: &Value, at: usize, value: f64) -> Step {
    page.write(&format!("ex-{}", at + 1), &typed(&exercise["steps"][at], value)?).await
}

/// Every step answered rightly.
pub async fn fill_all(page: &Page, exercise: &Value) -> Step {
    for at in 0..exercise["steps"].as_array().map_or(0, Vec::len) {
        fill(page, exercise, at, right(exercise, at)).await?;
    }
    Ok(())
}

/// Goes to an exercise and waits until its steps stand there.
pub async fn at_exercise(page: &Page, seed: &str) -> Step {
    page.go(&format!("#/exercise/{seed}")).await?;
    page.until("the steps stand there", "return document.querySelectorAll('#view .ex-step').length > 1")
        .await?;
    Ok(())
}

async fn is_told(page: &Page, at: usize, text: &str) -> Step {
    page.until_says(&format!("#ex-{}-told", at + 1), text).await
}

/// Home, a topic and a level, an exercise; then a wall: a slip is named, what follows from it counts, a hint costs, and
/// the worked solution is the estimator's.
pub async fn worked(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    let before = page.kept().await?;
    page.press("Menu").await?;
    page.press("Practice").await?;
    page.until_says("#view h1", &phrase("en", "practice", "title")?).await?;
    page.press_in("#view", "Level 2").await?;
    page.press_at("#view details summary").await?;
    page.press_in("#view", &phrase("en", "practice", "topic.pitch")?).await?;
    page.press_in("#view", "Give me an exercise").await?;
    let seed = page
        .until("an exercise", "return location.hash.match(/^#\\/exercise\\/(1-2-[0-9a-f]{4})$/)?.[1]")
        .await?;
    let drawn = key(&journey, seed.as_str().unwrap_or_default(), "us")?;
    assert!(drawn["topics"].to_string().contains("pitch"), "{seed} trains {}", drawn["topics"]);
    let title =
        phrase("en", "exercises", &format!("scene.{}.title", drawn["scene"].as_str().unwrap_or_default()))?;
    page.until_says("#view h1", &title).await?;

    let seed = seed_of(&journey, "wall", 1)?;
    let wall = key(&journey, &seed, "us")?;
    at_exercise(&page, &seed).await?;
    assert!(page.count("#view .ex-drawings svg").await? > 0, "nothing is drawn");
    // The openings are left in, and the board feet follow from that.
    let forgotten = slip(&wall, 2, "openings_forgotten")?;
    fill(&page, &wall, 0, right(&wall, 0)).await?;
    fill(&page, &wall, 1, right(&wall, 1)).await?;
    fill(&page, &wall, 2, forgotten).await?;
    fill(&page, &wall, 3, right(&wall, 3) * forgotten / right(&wall, 2)).await?;
    page.press_in("#view", "Mark my steps").await?;
    is_told(&page, 0, "Right.").await?;
    is_told(&page, 2, &tail(&phrase("en", "slips", "openings_forgotten")?)).await?;
    is_told(&page, 3, &phrase("en", "practice", "ex_carried")?).await?;
    page.until_says("#view .ex-score", "3 of 4").await?;

    // A hint, then the step is right for three quarters of its point; what followed from the slip is wrong now.
    page.press_at("#view [data-key=ex-3-help]").await?;
    page.until_says("#ex-3-helps", &phrase("en", "exercises", "hint.net_area")?).await?;
    fill(&page, &wall, 2, right(&wall, 2)).await?;
    page.press_in("#view", "Mark my steps").await?;
    is_told(&page, 2, "¾").await?;
    page.until_says("#view .ex-score", "2¾ of 4").await?;
    let said = page.text("#ex-4-told").await?;
    assert!(said.contains(&tail(&phrase("en", "slips", "gross_for_net")?)), "{said}");
    fill(&page, &wall, 3, right(&wall, 3)).await?;
    page.press_in("#view", "Mark my steps").await?;
    page.until_says("#view .ex-score", "3¾ of 4").await?;

    // The same figures as the estimator has for this job.
    let job = places::scratch(&format!("exercise-{}", journey.engine.name()))?.join("job.json");
    std::fs::write(&job, wall["job"].to_string())?;
    let asked = Command::new(&journey.built.program).arg("estimate").arg(&job).output()?;
    let estimate: Value = serde_json::from_slice(&asked.stdout)?;
    let feet = estimate["quantity"]["in_place"]["likely"].as_f64().unwrap_or_default();
    page.press_in("#view", "Worked solution").await?;
    page.until_says("#view h1", "Worked solution").await?;
    let shown = page.text("#view").await?;
    let whole = shown.replace(',', "");
    for figure in [feet, estimate["surfaces"][0]["area"]["net_ft2"]["likely"].as_f64().unwrap_or_default()] {
        let written = format!("{:.1}", (figure * 10.0).round() / 10.0);
        let written = written.trim_end_matches(".0");
        assert!(whole.contains(written), "{written} is not on the worked solution: {shown}");
    }
    assert!(
        shown.contains("Length × height") || page.count("#view .calc li").await? > 5,
        "no computation sheet"
    );

    // The person's own jobs are as they were.
    let jobs = |all: &[(String, String)]| -> Vec<(String, String)> {
        all.iter().filter(|(key, _)| key.starts_with("foamwright.job.")).cloned().collect()
    };
    assert_eq!(jobs(&page.kept().await?), jobs(&before), "an exercise was put on the shelf");
    page.go("#/").await?;
    page.until_says("#view h1", "Larkspur Lane").await
}

/// By its number, in capitals; a wrong number says what is wrong; a link opens where nothing was ever kept.
pub async fn by_number_and_link(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let seed = seed_of(&journey, "gable", 2)?;
    let title = phrase("en", "exercises", "scene.gable.title")?;
    page.open_ready("#/practice").await?;
    for (text, why) in [
        ("1-9-0000", "form"),
        ("a wall", "form"),
        ("9-1-0000", "newer"),
        ("1-0-ffff", "none"),
        ("<b>1</b>", "form"),
    ] {
        page.write("seed", text).await?;
        page.press_in("#view", "Open this exercise").await?;
        page.until_told("seed", &phrase("en", "practice", &format!("refused.{why}"))?).await?;
    }
    page.write("seed", &seed.to_uppercase().replace('-', "–")).await?;
    page.press_in("#view", "Open this exercise").await?;
    page.until_says("#view h1", &title).await?;
    assert_eq!(page.run("return location.hash", vec![]).await?, json!(format!("#/exercise/{seed}")));

    let elsewhere = journey.site().await?;
    let fresh = journey.page(&elsewhere);
    fresh.open_ready(&format!("#/exercise/{seed}")).await?;
    fresh.until_says("#view h1", &title).await?;
    let given = |page: Page| async move { page.text("#view .ex-given").await };
    assert_eq!(given(fresh.clone()).await?, given(page.clone()).await?, "another exercise on another device");
    // A link to none says so, and leads back.
    fresh.go("#/exercise/9-1-0000").await?;
    fresh.until_says("#view", &phrase("en", "practice", "refused.newer")?).await?;
    fresh.go("#/exercise/%3Cimg%20src=x%3E").await?;
    fresh.until_says("#view", &phrase("en", "practice", "refused.form")?).await?;
    assert_eq!(fresh.run("return document.querySelectorAll('#view img').length", vec![]).await?, json!(0));
    Ok(())
}

/// In Spanish and in meters: the same exercise, its own units, and a mistake named in Spanish.
pub async fn spanish_and_metric(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    page.run(
        "localStorage.setItem('foamwright.prefs', JSON.stringify({ language: 'es', units: 'metric' }))",
        vec![],
    )
    .await?;
    page.open_ready("#/practice").await?;
    page.until_says("#view h1", &phrase("es", "practice", "title")?).await?;
    let seed = seed_of(&journey, "wall", 1)?;
    let wall = key(&journey, &seed, "metric")?;
    at_exercise(&page, &seed).await?;
    page.until_says("#view h1", &phrase("es", "exercises", "scene.wall.title")?).await?;
    let steps = page.text("#view .try").await?;
    assert!(steps.contains("m²") && !steps.contains("ft²"), "{steps}");
    fill_all(&page, &wall).await?;
    fill(&page, &wall, 2, slip(&wall, 2, "openings_twice")?).await?;
    page.press_in("#view", &phrase("es", "practice", "ex_mark")?).await?;
    is_told(&page, 2, &tail(&phrase("es", "slips", "openings_twice")?)).await?;
    let score = phrase("es", "practice", "ex_score")?.replace("{points}", "3").replace("{of}", "4");
    page.until_says("#view .ex-score", &score).await?;
    // In US units it has answers of its own; back again, those of before stand there.
    let before = page.value("ex-1").await?;
    page.press_in("#view .ex-units", &phrase("es", "page", "units_us")?).await?;
    page.until_says("#view .try", "ft²").await?;
    assert_eq!(page.value("ex-1").await?, "", "a metric answer stands among US steps");
    page.press_in("#view .ex-units", &phrase("es", "page", "units_metric")?).await?;
    page.until_says("#view .try", "m²").await?;
    assert_eq!(page.value("ex-1").await?, before);
    Ok(())
}

/// What was marked is there after a reload and after the page was closed; reset forgets it, and can be taken back.
pub async fn progress(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let seed = seed_of(&journey, "board_feet", 1)?;
    let one = key(&journey, &seed, "us")?;
    page.open_ready("#/practice").await?;
    page.until_says("#view", &phrase("en", "practice", "nothing_yet")?).await?;
    at_exercise(&page, &seed).await?;
    fill_all(&page, &one).await?;
    page.press_in("#view", "Mark my steps").await?;
    page.until_says("#view .ex-score", "3 of 3").await?;
    page.reload().await?;
    page.ready().await?;
    page.until("the steps stand there", "return document.querySelectorAll('#view .ex-step').length > 1")
        .await?;
    assert_eq!(page.value("ex-1").await?, typed(&one["steps"][0], right(&one, 0))?, "answers are kept");
    page.open_ready("#/practice").await?;
    let topic = phrase("en", "practice", "topic.board_feet")?;
    page.until_says("#view table", &topic).await?;
    assert!(page.text("#view").await?.contains(&seed), "the exercise is not on the list of those done last");
    // No name, nothing but numbers, answers and points.
    let kept = page.kept().await?;
    let (_, doc) = kept.iter().find(|(key, _)| key.contains("practice")).ok_or("nothing is kept")?;
    let doc: Value = serde_json::from_str(doc)?;
    let mut fields: Vec<&String> = doc["exercises"][0].as_object().ok_or("no exercise")?.keys().collect();
    fields.sort();
    assert_eq!(fields, ["at", "score", "seed", "seen", "sheets", "units"]);

    let reset = phrase("en", "practice", "reset")?;
    page.press_in("#view", &reset).await?;
    page.until_says("#view", &phrase("en", "practice", "nothing_yet")?).await?;
    page.press("Undo").await?;
    page.until_says("#view table", &topic).await?;
    page.press_in("#view", &reset).await?;
    page.until_says("#view", &phrase("en", "practice", "nothing_yet")?).await?;
    page.reload().await?;
    page.ready().await?;
    page.until_says("#view", &phrase("en", "practice", "nothing_yet")?).await?;
    assert!(!page.kept().await?.iter().any(|(_, text)| text.contains(&seed)), "forgotten and still kept");
    Ok(())
}

/// Where the browser keeps nothing an exercise is worked all the same, and the page says so.
pub async fn refused(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let seed = seed_of(&journey, "board_feet", 1)?;
    let one = key(&journey, &seed, "us")?;
    page.open_ready(&format!("#/exercise/{seed}")).await?;
    at_exercise(&page, &seed).await?;
    fill_all(&page, &one).await?;
    page.press_in("#view", "Mark my steps").await?;
    page.until_says("#view .ex-score", "3 of 3").await?;
    page.go("#/practice").await?;
    page.until_says("#view", &phrase("en", "practice", "kept_not")?).await
}

/// After a first visit that never came near practice: with the server gone it opens, draws, marks and finds another.
pub async fn without_server(journey: Arc<Journey>) -> Step {
    let mut site = journey.site().await?;
    let page = journey.page(&site);
    for part in ["Failed to load", "ERR_", "NetworkError", "never-kept", "Load failed", "fetch"] {
        journey.provokes(part);
    }
    let seed = seed_of(&journey, "crawl", 4)?;
    let exercise = key(&journey, &seed, "us")?;
    page.open_ready("").await?;
    offline::kept_on_device(&page).await?;
    site.kill();
    page.open_ready(&format!("?from=a-worksheet#/exercise/{seed}")).await?;
    assert!(!offline::reaches_server(&page).await?, "the network is not away");
    at_exercise(&page, &seed).await?;
    let wanted = exercise["steps"].as_array().map_or(0, Vec::len) as u64;
    assert_eq!(page.count("#view .ex-step").await?, wanted);
    fill(&page, &exercise, 0, right(&exercise, 0)).await?;
    page.press_in("#view", "Mark my steps").await?;
    page.until_says("#view .ex-score", &format!("1 of {wanted}")).await?;
    page.press_in("#view", "Another like this").await?;
    page.until(
        "another exercise",
        &format!("return location.hash.startsWith('#/exercise/1-4-') && !location.hash.endsWith('{seed}')"),
    )
    .await?;
    for screen in ["#/practice", "#/class", "#/marks"] {
        page.go(screen).await?;
        page.until("a heading", "return !!document.querySelector('#view h1')?.textContent.trim()").await?;
    }
    Ok(())
}

/// Every screen of practice on a small phone, in both themes and languages: axe, nothing sideways, nothing too small.
pub async fn light(journey: Arc<Journey>) -> Step {
    looked_at(journey, "paper", "en").await
}

/// The same in the dark, in Spanish.
pub async fn dark(journey: Arc<Journey>) -> Step {
    looked_at(journey, "crawl", "es").await
}

async fn looked_at(journey: Arc<Journey>, theme: &str, language: &str) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let scenes = [
        ("wall", 1),
        ("tape", 1),
        ("readings", 2),
        ("uneven", 2),
        ("warm_up", 3),
        ("code", 3),
        ("across_framing", 3),
        ("forecast", 3),
        ("crawl", 4),
    ];
    let mut seeds = Vec::new();
    for (scene, level) in scenes {
        seeds.push(seed_of(&journey, scene, level)?);
    }
    let wall = key(&journey, &seeds[0], "us")?;
    let mut seen = axe::Seen::default();
    let mut faults = Vec::new();
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    let prefs = "localStorage.setItem('foamwright.prefs', JSON.stringify({ theme: arguments[0], language: arguments[1], units: 'us' })); localStorage.removeItem('foamwright-practice')";
    page.run(prefs, vec![theme.into(), language.into()]).await?;
    page.open_ready("#/practice").await?;
    let sheet = seeds[..3].join(",");
    let mut screens: Vec<String> = seeds.iter().map(|seed| format!("#/exercise/{seed}")).collect();
    screens.extend(["#/practice", "#/class", "#/marks", "#/exercise/9-1-0000"].map(str::to_owned));
    screens.extend(["", "/print", "/key"].map(|part| format!("#/class/{sheet}{part}")));
    screens.push(format!("#/exercise/{}/working", seeds[0]));
    for screen in screens {
        page.go(&screen).await?;
        if screen.ends_with(&seeds[0]) && screen.starts_with("#/exercise") {
            fill(&page, &wall, 0, slip(&wall, 0, "twelve_for_144")?).await?;
            fill(&page, &wall, 1, right(&wall, 1)).await?;
            page.write("ex-3", "5,123").await?;
            page.press_at("#view [data-key=ex-mark]").await?;
            page.press_at("#view [data-key=ex-4-help]").await?;
        }
        page.open_all().await?;
        let at = format!("{screen} {theme} {language}");
        seen.look(&page, &at).await?;
        faults.extend(page.misfits().await?.into_iter().map(|misfit| format!("{at}: {misfit}")));
    }
    seen.told(&journey);
    assert!(faults.is_empty(), "{} misfits:\n{}", faults.len(), faults.join("\n"));
    Ok(())
}
