//! The printed sheet.

use super::sheet;
use crate::Journey;
use driving::{Step, places};
use std::process::Command;
use std::sync::Arc;

/// The whole sheet prints, whatever is open on the screen, with the figures that the page shows.
pub async fn the_whole_sheet(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/").await?;
    sheet::until_answer(&page, |answer| answer.board_feet == "812").await?;
    let answer = sheet::answer(&page).await?;
    let pdf =
        journey.browser.driver.print_page(thirtyfour::common::print::PrintParameters::default()).await?;
    let file = places::scratch(&format!("printed-{}", journey.engine.name()))?.join("sheet.pdf");
    std::fs::write(&file, &pdf)?;
    let Ok(read) = Command::new("pdftotext").arg("-layout").arg(&file).arg("-").output() else {
        journey
            .cannot("pdftotext is not there: the printed text was not read (apt-get install poppler-utils)");
        return Ok(());
    };
    let text = String::from_utf8_lossy(&read.stdout).split_whitespace().collect::<Vec<_>>().join(" ");
    for part in [
        "Larkspur Lane bungalow",
        "Rim joist",
        "North wall",
        "Garage ceiling",
        "124.3",
        "322.6",
        "248.6",
        "217",
        "Large",
        "$1,500",
        "63 °F",
        "HOLD",
    ] {
        assert!(text.contains(part), "“{part}” is not printed; printed: {text}");
    }
    for figure in [&answer.board_feet, &answer.kits, &answer.passes] {
        assert!(text.contains(figure.as_str()), "“{figure}” is not printed");
    }
    for section in page
        .run(
            "return [...document.querySelectorAll('#view .sheet .what')].map(one => tidy(one.textContent))",
            vec![],
        )
        .await?
        .as_array()
        .into_iter()
        .flatten()
    {
        let section = section.as_str().unwrap_or_default();
        assert!(
            text.to_lowercase().contains(&section.to_lowercase()),
            "the section “{section}” is not printed"
        );
    }
    for press in ["Undo", "Print this sheet", "Add a surface", "Menu"] {
        assert!(!text.contains(press), "a press is printed: {press}");
    }
    Ok(())
}
