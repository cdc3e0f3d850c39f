//! What the person's device asks for, without a setting of the page.

use crate::Journey;
use driving::Step;
use serde_json::json;
use std::sync::Arc;

/// A dark system and a Spanish browser: so is the first visit; the paper theme and English can be chosen, and stay.
pub async fn dark_and_spanish(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    let dark = "const ground = [document.body, document.documentElement].map(one => getComputedStyle(one).backgroundColor).find(one => one.startsWith('rgb('));
        const [r, g, b] = ground.match(/\\d+/g).map(Number);
        return r + g + b < 200";
    assert_eq!(page.run(dark, vec![]).await?, json!(true), "the page is light in a dark system");
    assert_eq!(page.run("return document.documentElement.lang", vec![]).await?, json!("es"));
    let (violations, _) = page.axe().await?;
    assert!(violations.is_empty(), "{violations:?}");

    page.go("#/settings").await?;
    page.press_in("#view", "English").await?;
    page.until("the page speaks English", "return document.documentElement.lang === 'en' && document.querySelector('#view h1')?.textContent.includes('ettings')")
        .await?;
    page.press_in("#view", "Paper").await?;
    page.until("the page is light", &format!("return !(() => {{ {dark} }})()")).await?;
    page.reload().await?;
    page.ready().await?;
    assert_eq!(page.run("return document.documentElement.lang", vec![]).await?, json!("en"));
    assert_eq!(page.run(dark, vec![]).await?, json!(false));
    Ok(())
}
