//! Phone, tablet and desk: nothing scrolls sideways, everything to press is large enough for a glove.

use super::sheet::{self, SCREENS};
use crate::Journey;
use driving::Step;
use driving::page::Page;
use std::sync::Arc;

/// What does not fit on the screens of the open job, at a size.
async fn misfits(journey: &Journey, page: &Page, size: (u32, u32), screens: &[&str]) -> Step<Vec<String>> {
    journey.browser.viewport(Some(size)).await?;
    let mut faults = Vec::new();
    for screen in screens {
        page.go(screen).await?;
        page.open_all().await?;
        for misfit in page.misfits().await? {
            // On the narrowest screens drawings shrink as a whole; there only the page's width counts.
            if size.0 >= 360 || misfit.starts_with("scrolls") {
                faults.push(format!("{screen} at {} px: {misfit}", size.0));
            }
        }
    }
    Ok(faults)
}

pub async fn every_screen(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("").await?;
    let mut faults = Vec::new();
    for size in [(320, 700), (360, 800), (390, 844), (1280, 900)] {
        faults.extend(misfits(&journey, &page, size, &SCREENS).await?);
    }
    assert!(faults.is_empty(), "{} misfits:\n{}", faults.len(), faults.join("\n"));
    Ok(())
}

/// Names without a place to break, in Spanish, and the largest figures that a site can hold.
pub async fn long_names(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((360, 800))).await?;
    page.open_ready("").await?;
    let long = "Donaudampfschifffahrtsgesellschaftskajütenwand".repeat(2);
    let mut job = sheet::sample()?;
    for text in [
        "Larkspur Lane bungalow",
        "12 Larkspur Lane",
        "Rim joist",
        "Garage ceiling",
        "Large 480",
        "Sample closed-cell A",
        "Rim, north",
    ] {
        job = job.replace(&format!("\"{text}\""), &format!("\"{long}\""));
    }
    job = job.replace("148 ft", "9876 ft 11 15/16 in").replace("sample-larkspur-lane", "planned-long-names");
    sheet::take_in(&page, &sheet::written(&format!("{}-long.json", journey.engine.name()), job.as_bytes())?)
        .await?;
    page.until_says("#view h1", "Donaudampf").await?;
    page.run("localStorage.setItem('foamwright.prefs', JSON.stringify({ ...JSON.parse(localStorage.getItem('foamwright.prefs')), language: 'es' }))", vec![])
        .await?;
    page.open_ready("").await?;
    page.until_says("#view h1", "Donaudampf").await?;
    let faults = misfits(&journey, &page, (360, 800), &SCREENS).await?;
    assert!(faults.is_empty(), "{} misfits:\n{}", faults.len(), faults.join("\n"));
    Ok(())
}
