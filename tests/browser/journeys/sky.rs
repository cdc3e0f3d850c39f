//! Hours of the day and moist air: a forecast becomes hours and a drawing, the place comes by a press and nothing is
//! sent, rounds of readings lie one after the other.
//!
//! Minneapolis lies at 44.98° north, 93.27° west (USGS GNIS); its ZIP codes begin with 554. How exact the sun is, is
//! held where it is reckoned; here only that it rises in the 6 o'clock hour of a November morning and sets after noon.

use super::axe::Seen;
use super::{readiness, sheet};
use crate::Journey;
use driving::Step;
use driving::beforehand::CLOCK;
use driving::page::Page;
use serde_json::Value;
use std::sync::Arc;

const PHONE: (u32, u32) = (360, 780);
const DESK: (u32, u32) = (1280, 900);

/// What the kept job holds in a field of its own; empty where nothing stands.
fn kept(record: &Value, field: &str) -> String {
    let entries = record["job"]["entries"].as_array().cloned().unwrap_or_default();
    let entry = entries.iter().find(|one| one["field"] == field);
    entry.and_then(|one| one["text"].as_str()).unwrap_or_default().to_owned()
}

/// Presses for a new day and gives the id that its fields carry.
async fn add_day(page: &Page, press: &str) -> Step<String> {
    page.press_in("#view", press).await?;
    let id = page
        .until(
            "the low of a new day has the focus",
            "return /^forecast-\\d+-low$/.test(document.activeElement?.id ?? '') && !document.activeElement.value ? document.activeElement.id : ''",
        )
        .await?;
    Ok(id.as_str().unwrap_or_default().trim_end_matches("-low").to_owned())
}

async fn fits(page: &Page) -> Step {
    page.open_all().await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");
    Ok(())
}

/// From no forecast to hours: the day of spraying comes first, what is missing is said, the answer is drawn, a day of
/// frost is never inside, and no estimate touches the verdict.
pub async fn a_forecast(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/ready").await?;
    page.press_in("#view", "Hours of the day").await?;
    page.until_says("#view h1", "Hours of the day").await?;
    page.until_says("#view", "No day of the forecast yet.").await?;
    page.write("job-0-spray_date", "2026-11-03").await?;
    let day = add_day(&page, "Add a day of the forecast").await?;
    assert_eq!(page.value(&format!("{day}-date")).await?, "2026-11-03", "the day of spraying comes first");
    page.until_says("#view .answer-line", "needed are date, low and high").await?;
    page.write(&format!("{day}-low"), "50").await?;
    page.write(&format!("{day}-high"), "78").await?;
    page.until_says("#view .answer-line", "Tue, Nov 3: inside").await?;
    page.until_says("#view .answer-line", "by estimate; measure first").await?;
    page.until_says("#view .lead", "Spraying at 8:00 AM").await?;
    page.until("a drawing with its name", "return document.querySelector('.ahead svg[role=img]')?.getAttribute('aria-label').startsWith('Tue, Nov 3: inside')").await?;
    page.until_says("#view figcaption", "Place not said: the sun is taken to rise at 6 and set at 18.")
        .await?;

    // The next day follows by itself; its frost is never inside.
    let next = add_day(&page, "Add the next day").await?;
    assert_eq!(page.value(&format!("{next}-date")).await?, "2026-11-04");
    page.write(&format!("{next}-low"), "21").await?;
    page.write(&format!("{next}-high"), "30").await?;
    page.until_says("#view .ahead + .ahead .answer-line", "Wed, Nov 4: the air never is inside").await?;

    // Surfaces only where somebody said that there are any.
    page.open_all().await?;
    assert!(!page.text("#view .ahead").await?.contains("Thick masonry in the shade"));
    page.press_at("[data-field=job-0-masonry_kind] .key-choice:has(input[value=brick])").await?;
    page.until_says("#view .ahead", "Thick masonry in the shade").await?;
    page.until_says("#view", "An estimate never lifts a hold.").await?;
    sheet::until_answer(&page, |answer| answer.verdict == "NOT READ").await?;
    seen.look(&page, "two days").await?;
    fits(&page).await?;

    // A figure leads to its working, and back.
    page.press_at("#view .ahead a.fig").await?;
    page.until("the working", "return location.hash.startsWith('#/working/forecast/')").await?;
    page.until_says("#view .calc", "1").await?;
    page.go("#/hours").await?;
    page.press_in("#view .ahead + .ahead", "Remove this day").await?;
    page.until("one day is left", "return document.querySelectorAll('.ahead').length === 1").await?;
    page.press("Undo").await?;
    page.until("and comes back", "return document.querySelectorAll('.ahead').length === 2").await?;

    // In Spanish, at the desk, after a reload.
    sheet::until_kept(&page, |record| {
        record["job"]["forecast"].as_array().is_some_and(|days| days.len() == 2)
    })
    .await?;
    page.go("#/settings").await?;
    page.press_in("#view", "Español").await?;
    page.until_says("#view h1", "Ajustes").await?;
    page.go("#/hours").await?;
    page.reload().await?;
    page.ready().await?;
    page.until_says("#view .answer-line", "dentro").await?;
    journey.browser.viewport(Some(DESK)).await?;
    seen.look(&page, "in Spanish").await?;
    fits(&page).await?;
    seen.told(&journey);
    Ok(())
}

/// The place by ZIP area and by the device, rounded, each only by a press; a refusal is said and changes nothing.
pub async fn the_place(journey: Arc<Journey>) -> Step {
    journey
        .beforehand("() => { window.asked = 0; Object.defineProperty(navigator, 'geolocation', { configurable: true, value: { getCurrentPosition: (good, bad) => { window.asked += 1; if (document.documentElement.dataset.refuse) bad({ code: 1 }); else good({ coords: { latitude: 44.9778, longitude: -93.265 } }); } } }); const real = window.fetch; window.fetched = []; window.fetch = (what, ...more) => { window.fetched.push(String(what)); return real(what, ...more); }; }")
        .await?;
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/hours").await?;
    page.write("job-0-spray_date", "2026-11-03").await?;
    let day = add_day(&page, "Add a day of the forecast").await?;
    page.write(&format!("{day}-low"), "50").await?;
    page.write(&format!("{day}-high"), "78").await?;
    page.write("job-0-zip", "55401").await?;
    page.until_says("#view", "Use the middle of ZIP area 554…").await?;
    let before = page
        .run("return [window.asked, window.fetched.filter((one) => /places/.test(one)).length]", vec![])
        .await?;
    assert_eq!(before, serde_json::json!([0, 0]), "nothing is asked or fetched before a press");
    page.press_in("#view", "Use the middle of ZIP area 554…").await?;
    page.until_says("#view [role=status]", "Middle of the ZIP area, to 0.1°").await?;
    let record = sheet::until_kept(&page, |record| !kept(record, "latitude").is_empty()).await?;
    let figure = |field: &str| kept(&record, field).parse::<f64>().unwrap_or(f64::NAN);
    assert!((figure("latitude") - 45.0).abs() < 0.3, "{record}");
    assert!((figure("longitude") + 93.3).abs() < 0.3, "{record}");
    page.until("the sun stands in the drawing", "return /sunrise[\\s\\S]*6:\\d\\d[\\s\\S]*AM/.test(document.querySelector('.ahead svg').textContent) && /sunset[\\s\\S]*PM/.test(document.querySelector('.ahead svg').textContent)").await?;

    // One step of undo; then the device, refused and granted.
    page.press("Undo").await?;
    sheet::until_kept(&page, |record| {
        kept(record, "latitude").is_empty() && kept(record, "longitude").is_empty()
    })
    .await?;
    page.run("document.documentElement.dataset.refuse = 'yes'", vec![]).await?;
    page.press_in("#view", "Use this device’s place").await?;
    page.until_says("#view", "This device may not say where it is. Type latitude and longitude.").await?;
    assert_eq!(page.value("job-0-latitude").await?, "");
    page.run("delete document.documentElement.dataset.refuse", vec![]).await?;
    page.press_in("#view", "Use this device’s place").await?;
    page.until_says("#view", "rounded to 0.1°: 45.0, -93.3").await?;
    sheet::until_kept(&page, |record| {
        kept(record, "latitude") == "45.0" && kept(record, "longitude") == "-93.3"
    })
    .await?;
    let sent = page
        .run("return window.fetched.filter((one) => /45\\.0|93\\.|55401/.test(one)).length", vec![])
        .await?;
    assert_eq!(sent, serde_json::json!(0), "no place leaves the page");

    // A ZIP code that is none leads nowhere.
    page.write("job-0-zip", "00000").await?;
    page.press_in("#view", "Use the middle of ZIP area 000…").await?;
    page.until_says("#view", "00000 is not in the table.").await?;
    assert_eq!(page.value("job-0-latitude").await?, "45.0");
    Ok(())
}

/// Tent and heat: an order of magnitude with its cautions, and none where the air under the tent is too cold.
pub async fn tent_and_heat(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/hours").await?;
    page.open_all().await?;
    page.until_says("#view details", "Needed: what has to get warm").await?;
    page.press_at("[data-field=job-0-heat_what] .key-choice:has(input[value=slab])").await?;
    for (field, text) in [
        ("heat_area", "400"),
        ("heat_thickness", "4"),
        ("heat_from", "40"),
        ("heat_air", "80"),
        ("heat_outside", "30"),
        ("tent_area", "900"),
    ] {
        page.write(&format!("job-0-{field}"), text).await?;
    }
    page.until_says("#view details .lead", "h at 80 °F, about").await?;
    page.until_says("#view details .lead", "Btu/h: an order of magnitude.").await?;
    page.until_says("#view details", "An unvented heater wets the air.").await?;
    page.until_says("#view details", "Flames out while you spray.").await?;
    page.write("job-0-heat_air", "50").await?;
    page.until_says("#view details .lead", "At 50 °F it does not reach 60 °F").await?;
    Ok(())
}

/// Moist air: what is missing is named; an unvented heater in a small room is drawn against the coldest surface, more
/// air changes are never worse, and without its power nothing is drawn.
pub async fn moist_air(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/ready").await?;
    page.press_in("#view", "Moist air, rounds").await?;
    page.until_says("#view h1", "Moist air").await?;
    page.until_says(
        "#view .blame",
        "Needed: room length, room width, room height, air outdoors, humidity outdoors.",
    )
    .await?;
    for (field, text) in [
        ("room_length", "20"),
        ("room_width", "10"),
        ("room_height", "8"),
        ("outdoor_air", "45"),
        ("outdoor_humidity", "60"),
        ("coldest_surface", "50"),
        ("air_changes", "2"),
    ] {
        page.write(&format!("job-0-{field}"), text).await?;
    }
    page.press_at("[data-field=job-0-heater_fuel] .key-choice:has(input[value=propane])").await?;
    page.write("job-0-heater_power", "20000").await?;
    page.until_says("#view .blame .lead", "At 2 air changes an hour the dew point is").await?;
    page.until_says("#view .blame .lead", "The coldest surface (50 °F) is").await?;
    page.until_says("#view .rows", "Water of the unvented heater").await?;
    let bars = page
        .until("the drawing", "const said = document.querySelector('#view figure svg')?.getAttribute('aria-label') ?? ''; return [...said.matchAll(/([\\d.]+): (−?\\d+)°/g)].map((one) => [Number(one[1]), Number(one[2].replace('−', '-'))])")
        .await?;
    let bars: Vec<(f64, f64)> = serde_json::from_value(bars)?;
    let steady: Vec<f64> = bars.iter().filter(|one| one.0 > 0.0).map(|one| one.1).collect();
    assert!(steady.len() >= 5, "{bars:?}");
    assert!(steady.windows(2).all(|two| two[0] >= two[1]), "more air never makes it wetter: {bars:?}");
    seen.look(&page, "an unvented heater").await?;
    page.press_at("#view .rows a.fig").await?;
    page.until("the working", "return location.hash.startsWith('#/working/job/0/moisture.')").await?;
    page.until_says("#view .calc .lit", "1").await?;

    page.go("#/moist").await?;
    fits(&page).await?;
    page.write("job-0-heater_power", "").await?;
    page.until(
        "without its power it gives off nothing",
        "return !document.querySelector('#view main').textContent.includes('Water of the unvented heater')",
    )
    .await?;
    page.until_says("#view .say", "A vented, indirect or electric heater adds none.").await?;
    seen.told(&journey);
    Ok(())
}

/// Rounds: what was read is kept with its time, the boxes are blank again and the verdict knows no GO; the second round
/// says which of two things moved.
pub async fn rounds(journey: Arc<Journey>) -> Step {
    journey.beforehand(CLOCK).await?;
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/moist").await?;
    page.press_in("#view", "Keep this round, read anew").await?;
    page.until_says("#view", "Nothing has been read yet. Take the readings first.").await?;
    readiness::enter(&page, "75", "68", "40", "62").await?;
    readiness::flames_out(&page).await?;
    sheet::until_answer(&page, |answer| answer.verdict == "GO").await?;
    page.go("#/moist").await?;
    page.until_says("#view ol.rows", "62 °F").await?;
    page.press_in("#view", "Keep this round, read anew").await?;
    page.until_says("#view", "5 readings kept.").await?;
    sheet::until_answer(&page, |answer| answer.verdict == "NOT READ").await?;
    sheet::until_kept(&page, |record| record["job"]["rounds"].as_array().is_some_and(|all| all.len() == 5))
        .await?;

    // Two hours later the air is wetter: the dew point rose from 40 to 52 °F, the surface fell by half a degree.
    page.run("moveClock(120)", vec![]).await?;
    page.go("#/ready").await?;
    let ids = page.run("return [...document.querySelectorAll('#view input[id^=reading-][id$=temperature]')].map(one => one.id)", vec![]).await?;
    for (at, text) in ["75", "75", "68", "52", "61.5"].into_iter().enumerate() {
        page.write(ids[at].as_str().unwrap_or_default(), text).await?;
    }
    page.go("#/moist").await?;
    page.until_says("#view", "Which is to blame").await?;
    page.until_says(
        "#view",
        "The air took up moisture. Since the first round the dew point rose 12 °F, the surface fell 0.5 °F.",
    )
    .await?;
    page.until_says("#view", "9.5 °F above dew point").await?;
    page.until("the rounds are drawn", "return [...document.querySelectorAll('#view svg[role=img]')].some((one) => one.getAttribute('aria-label').replace(/\\s/g, ' ').includes('62 °F, 61.5 °F'))").await?;
    seen.look(&page, "two rounds").await?;
    fits(&page).await?;
    seen.told(&journey);
    Ok(())
}
