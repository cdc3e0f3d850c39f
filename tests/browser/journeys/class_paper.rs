//! A class sheet and its key on paper.

use super::paper::{LONGER, Look, Print, folder_of};
use super::practice;
use crate::Journey;
use driving::Step;
use serde_json::Value;
use std::sync::Arc;

/// Curves as tables are for the screen; a drawing of a tape or a curve writes more than falls into it.
const FOLDED: &[&str] = &["details", "details *", "svg *"];

/// A class sheet and its key, an exercise of each level and one out of the book.
pub async fn printed(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    let folder = folder_of(&journey)?;
    let mut seeds = vec!["1-0-0001".to_owned()];
    for (scene, level) in [("tape", 1), ("gable", 2), ("warm_up", 3), ("crawl", 4)] {
        seeds.push(practice::seed_of(&journey, scene, level)?);
    }
    for Look { theme, language, papers } in LONGER {
        let units = if language == "es" { "metric" } else { "us" };
        page.open_ready("").await?;
        let prefs = "localStorage.setItem('foamwright.prefs', JSON.stringify({ theme: arguments[0], language: arguments[1], units: arguments[2] }))";
        page.run(prefs, vec![theme.into(), language.into(), units.into()]).await?;
        page.open_ready("#/practice").await?;
        let exercises = practice::keys(&journey, &seeds, units)?;
        let title = |exercise: &Value| {
            let scene = exercise["scene"].as_str().unwrap_or_default();
            practice::phrase(language, "exercises", &format!("scene.{scene}.title"))
        };
        let mut must: Vec<String> = exercises.iter().map(title).collect::<Step<_>>()?;
        must.extend(seeds.iter().cloned());
        for part in ["print", "key"] {
            page.go(&format!("#/class/{}/{part}", seeds.join(","))).await?;
            page.until("the paper", "return document.querySelectorAll('.leaf').length === 1").await?;
            page.settled().await?;
            let written = page.text(".leaf").await?;
            // The worksheet gives no answer away; the key has the slips by name.
            let slip = practice::phrase(language, "practice", "slip.openings_forgotten")?;
            assert_eq!(written.contains(&slip), part == "key", "{part}: “{slip}”");
            let print = Print { folder: &folder, must: &must, pages: None, skip: FOLDED };
            for &(paper, size) in papers {
                print.take(&page, &format!("class-{part}-{theme}-{language}-{paper}"), size, "").await?;
            }
        }
    }
    Ok(())
}
