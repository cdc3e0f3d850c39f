//! axe on every screen, in both themes and both languages, on a phone and at the desk.

use super::sheet::SCREENS;
use crate::Journey;
use driving::Step;
use driving::page::Page;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

const PHONE: (u32, u32) = (390, 844);
const DESK: (u32, u32) = (1280, 900);

pub async fn phone_paper(journey: Arc<Journey>) -> Step {
    every_screen(journey, PHONE, "paper", "en").await
}

pub async fn phone_crawl(journey: Arc<Journey>) -> Step {
    every_screen(journey, PHONE, "crawl", "es").await
}

pub async fn desk_paper(journey: Arc<Journey>) -> Step {
    every_screen(journey, DESK, "paper", "es").await
}

pub async fn desk_crawl(journey: Arc<Journey>) -> Step {
    every_screen(journey, DESK, "crawl", "en").await
}

async fn every_screen(journey: Arc<Journey>, size: (u32, u32), theme: &str, language: &str) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    journey.browser.viewport(Some(size)).await?;
    page.open_ready("").await?;
    page.run(
        "localStorage.setItem('foamwright.prefs', JSON.stringify({ theme: arguments[0], language: arguments[1] }))",
        vec![theme.into(), language.into()],
    )
    .await?;
    page.open_ready("").await?;
    let shown = page
        .run("return [document.documentElement.dataset.theme, document.documentElement.lang]", vec![])
        .await?;
    assert_eq!(shown, serde_json::json!([theme, language]));
    for screen in SCREENS {
        page.go(screen).await?;
        page.open_all().await?;
        seen.look(&page, screen).await?;
    }
    seen.told(&journey);
    Ok(())
}

/// What is not so on every visit: a text that is wrong, one with two meanings, an empty job, notices, the menu.
pub async fn other_states(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("#/surface/102").await?;
    page.write("surface-102-length", "a long wall").await?;
    page.write("surface-102-height", "5.11").await?;
    page.write("surface-102-spacing", "160").await?;
    page.until_told("surface-102-height", "two meanings").await?;
    seen.look(&page, "wrong and unclear texts, and a notice").await?;
    page.go("#/ready").await?;
    page.write("reading-111-temperature", "cold").await?;
    seen.look(&page, "a reading that is no number").await?;
    page.press("Menu").await?;
    seen.look(&page, "the menu").await?;
    page.press("Menu").await?;
    page.go("#/jobs").await?;
    page.press("New job").await?;
    page.until_says("#view h1", "without a name").await?;
    for screen in [
        "#/sheet",
        "#/before",
        "#/seal",
        "#/kits",
        "#/ready",
        "#/ahead",
        "#/warm",
        "#/hours",
        "#/moist",
        "#/people",
        "#/calendar",
        "#/spray",
        "#/day",
        "#/working",
        "#/surface/9999",
        "#/settings",
    ] {
        page.go(screen).await?;
        page.open_all().await?;
        seen.look(&page, &format!("{screen} of an empty job")).await?;
    }
    seen.told(&journey);
    Ok(())
}

/// What axe saw on the screens so far.
#[derive(Default)]
pub struct Seen {
    violations: BTreeSet<String>,
    undecided: BTreeMap<String, usize>,
}

impl Seen {
    pub async fn look(&mut self, page: &Page, at: &str) -> Step {
        let (violations, undecided) = page.axe().await?;
        self.violations.extend(violations.into_iter().map(|one| format!("{at}: {one}")));
        for rule in undecided {
            *self.undecided.entry(rule).or_default() += 1;
        }
        Ok(())
    }

    pub fn told(self, journey: &Journey) {
        for (rule, screens) in self.undecided {
            journey.say(format!("axe could not decide {rule} on {screens} screens"));
        }
        let all: Vec<String> = self.violations.into_iter().collect();
        assert!(all.is_empty(), "{} violations:\n{}", all.len(), all.join("\n"));
    }
}
