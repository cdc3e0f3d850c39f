//! A whole small takeoff without a pointer: Tab, Enter, typing.

use super::sheet;
use crate::Journey;
use driving::Step;
use std::sync::Arc;
use thirtyfour::Key;

/// 20 ft × 9 in × 3 in: 20 × 0.75 × 3 = 45 board feet.
pub async fn a_whole_takeoff(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("").await?;
    page.tab_to("Skip to the content", 3).await?;
    page.tab_to("Menu", 8).await?;
    page.keys(Key::Enter + "").await?;
    page.until(
        "the menu is open and has the focus",
        "return document.activeElement?.closest('#menu') !== null",
    )
    .await?;
    page.keys(Key::Escape + "").await?;
    page.until(
        "Escape closes the menu",
        "return document.getElementById('menu').hidden && document.activeElement.id === 'menu-press'",
    )
    .await?;
    page.keys(Key::Enter + "").await?;
    page.until("the menu is open again", "return document.activeElement?.closest('#menu') !== null").await?;
    page.tab_to("Jobs", 4).await?;
    page.keys(Key::Enter + "").await?;
    page.until("the jobs", "return location.hash === '#/jobs'").await?;
    page.until("the heading has the focus", "return document.activeElement?.tagName === 'H1'").await?;
    page.tab_to("New job", 12).await?;
    page.keys(Key::Enter + "").await?;
    page.until("the sheet of the new job", "return location.hash.replace(/^#\\/(sheet)?$/, '') === '' && !document.querySelector('#view h1')?.textContent.includes('Larkspur')").await?;
    page.tab_to("Add a surface", 20).await?;
    page.keys(Key::Enter + "").await?;
    let id = page
        .until("a surface's screen", "return Number(location.hash.match(/^#\\/surface\\/(\\d+)$/)?.[1])")
        .await?;
    page.tab_to(&format!("surface-{id}-name"), 12).await?;
    page.keys("Rim").await?;
    page.tab_to(&format!("surface-{id}-shape"), 2).await?;
    // A list's first letter chooses: the kinds of shape differ in theirs.
    for _ in 0..8 {
        if page.value(&format!("surface-{id}-shape")).await? == "rectangle" {
            break;
        }
        page.keys("R").await?;
    }
    assert_eq!(page.value(&format!("surface-{id}-shape")).await?, "rectangle");
    page.tab_to(&format!("surface-{id}-length"), 3).await?;
    page.keys("20 ft").await?;
    page.tab_to(&format!("surface-{id}-height"), 3).await?;
    page.keys("9 in").await?;
    page.until_says("#view", "15 ft²").await?;
    let on = page.run("return location.hash", vec![]).await?;
    assert!(on.as_str().is_some_and(|hash| hash.starts_with("#/surface/")));
    page.tab_to("Next: how deep", 40).await?;
    page.keys(Key::Enter + "").await?;
    page.until(
        "the depth's screen",
        "return location.hash.startsWith('#/depth/') && document.activeElement?.matches('#view h1')",
    )
    .await?;
    page.until_says("#view h1", "How deep").await?;
    page.tab_to(&format!("surface-{id}-depth"), 20).await?;
    page.keys("3").await?;
    sheet::until_answer(&page, |answer| answer.board_feet == "45").await?;

    // Whatever has the focus can be seen to have it.
    let ring = page
        .run("const style = getComputedStyle(document.activeElement.closest('.box') ?? document.activeElement); const own = getComputedStyle(document.activeElement); return [style.outlineStyle, own.outlineStyle, style.boxShadow, style.borderTopWidth]", vec![])
        .await?;
    assert!(
        ring[0] != "none" || ring[1] != "none" || ring[2] != "none" || ring[3].as_str() >= Some("3"),
        "{ring}"
    );
    Ok(())
}
