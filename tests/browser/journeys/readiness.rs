//! Go, hold or not read.

use super::sheet;
use crate::Journey;
use driving::Step;
use driving::beforehand::CLOCK;
use driving::page::Page;
use serde_json::json;
use std::sync::Arc;

/// Enters the readings of an empty job on the readiness screen: cylinders, air, dew point and one surface.
pub async fn enter(page: &Page, cylinder: &str, air: &str, dew_point: &str, surface: &str) -> Step {
    page.go("#/ready").await?;
    for (press, text) in [
        ("cylinder_a", cylinder),
        ("cylinder_b", cylinder),
        ("air", air),
        ("dew_point", dew_point),
        ("surface", surface),
    ] {
        let id = new_reading(page, press).await?;
        page.write(&id, text).await?;
    }
    Ok(())
}

/// Presses the entry of a reading and gives the DOM id of its field.
async fn new_reading(page: &Page, of: &str) -> Step<String> {
    let known = page
        .run("return [...document.querySelectorAll('#view input[id^=reading-]')].map(one => one.id)", vec![])
        .await?;
    match of {
        "cylinder_a" => page.press_under("Cylinder A", "Enter it").await?,
        "cylinder_b" => page.press_under("Cylinder B", "Enter it").await?,
        "air" => page.press_under("Air", "Enter it").await?,
        "dew_point" => page.press_in("#view", "Enter dew point").await?,
        _ => page.press_in("#view", "Add a surface reading").await?,
    }
    let script = format!(
        "const known = {known}; const id = document.activeElement?.id ?? '';
         return /^reading-\\d+-(temperature|humidity)$/.test(id) && !known.includes(id) ? id : ''"
    );
    Ok(page
        .until(&format!("a field for {of} has the focus"), &script)
        .await?
        .as_str()
        .unwrap_or_default()
        .to_owned())
}

/// Answers that flames, pilots and glowing elements are out.
pub async fn flames_out(page: &Page) -> Step {
    page.run("document.querySelector('[data-field=job-0-flames_out] input[value=yes]').click()", vec![])
        .await?;
    Ok(())
}

async fn verdict_is(page: &Page, verdict: &str) -> Step {
    page.until_says(".stamp .word", verdict).await
}

/// Case A05: air 42.4 °F, dew point 27 °F, surface 29.2 °F. 29.2 − 27 = 2.2 °F, less than 5; the surface is furthest
/// outside its window (60 − 29.2 = 30.8), the air 17.6. Then fresh readings inside: GO; two hours and more later:
/// NOT READ, and only new readings lift that.
pub async fn hold_go_not_read(journey: Arc<Journey>) -> Step {
    journey.beforehand(CLOCK).await?;
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/ready").await?;
    verdict_is(&page, "NOT READ").await?;

    enter(&page, "75", "42.4", "27", "29.2").await?;
    verdict_is(&page, "HOLD").await?;
    page.until_says(".blame", "29.2 °F").await?;
    page.until_says("#view", "2.2 °F").await?;

    // Celsius is understood beside Fahrenheit: 21 °C is 69.8 °F.
    let ids = page.run("return [...document.querySelectorAll('#view input[id^=reading-][id$=temperature]')].map(one => one.id)", vec![]).await?;
    let field = |at: usize| ids[at].as_str().unwrap_or_default().to_owned();
    page.write(&field(2), "21 C").await?;
    page.until_told(&field(2), "69.8").await?;
    page.write(&field(4), "68").await?;
    page.write(&field(3), "48").await?;
    // All read and inside: what is left to answer is whether flames are out, and no blank is a pass.
    verdict_is(&page, "NOT READ").await?;
    flames_out(&page).await?;
    verdict_is(&page, "GO").await?;
    sheet::until_answer(&page, |answer| answer.verdict == "GO").await?;

    // An hour and a half later the cylinders are old, and say so when the page comes back to the front.
    page.run("moveClock(90); document.dispatchEvent(new Event('visibilitychange'))", vec![]).await?;
    verdict_is(&page, "NOT READ").await?;
    page.until_says(".blame", "was read 1 h 3").await?;

    // Still so after loading again; a forecast or a reload lifts nothing, a new reading does.
    sheet::until_kept(&page, |record| record.to_string().contains("21 C")).await?;
    page.reload().await?;
    page.ready().await?;
    verdict_is(&page, "NOT READ").await?;
    for at in [0, 1] {
        page.write(&field(at), "76").await?;
    }
    verdict_is(&page, "GO").await?;
    page.run("moveClock(35); document.dispatchEvent(new Event('visibilitychange'))", vec![]).await?;
    verdict_is(&page, "NOT READ").await?;
    Ok(())
}

/// A blank never counts as a pass: each missing reading keeps GO away.
pub async fn a_blank_is_no_pass(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    enter(&page, "75", "70", "45", "68").await?;
    verdict_is(&page, "NOT READ").await?;
    flames_out(&page).await?;
    verdict_is(&page, "GO").await?;
    let ids = page.run("return [...document.querySelectorAll('#view input[id^=reading-][id$=temperature]')].map(one => one.id)", vec![]).await?;
    for id in ids.as_array().into_iter().flatten().filter_map(|id| id.as_str()) {
        let before = page.value(id).await?;
        page.write(id, "").await?;
        page.until(
            &format!("no GO without {id}"),
            "return !document.querySelector('.stamp .word').textContent.includes('GO')",
        )
        .await?;
        page.write(id, &before).await?;
        verdict_is(&page, "GO").await?;
    }
    assert_eq!(ids.as_array().map(Vec::len), Some(5), "{}", json!(ids));
    Ok(())
}
