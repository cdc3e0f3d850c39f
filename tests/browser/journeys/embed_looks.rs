//! How the frame on a company's page looks: to axe and to a thumb in both themes and languages, and on paper.

use super::axe::Seen;
use super::embed_estimate::{block, framed, rim, settings};
use super::embedding::stands;
use super::sheet;
use crate::Journey;
use driving::page::Page;
use driving::{Step, places};
use serde_json::{Value, json};
use std::process::Command;
use std::sync::Arc;
use thirtyfour::common::print::{PrintPage, PrintParameters};

/// Of the window; a page's own margin takes 16 px of it.
const WIDTHS: [u32; 3] = [300, 360, 900];

pub async fn light(journey: Arc<Journey>) -> Step {
    every_state(&journey, false).await
}

pub async fn dark(journey: Arc<Journey>) -> Step {
    every_state(&journey, true).await
}

/// The frame as it is first seen, filled in, with everything open, with a text that cannot be read, and a working.
async fn every_state(journey: &Journey, dark: bool) -> Step {
    let mut seen = Seen::default();
    for language in ["en", "es"] {
        for width in WIDTHS {
            journey.browser.viewport(Some((width, 900))).await?;
            let sections =
                json!(["depth", "foam", "kits", "price", "print", "take", "readiness", "spraying"]);
            let company = framed(journey, json!({ "language": language, "sections": sections })).await?;
            let page = &company.page;
            let told = page
                .run("return [document.documentElement.lang, matchMedia('(prefers-color-scheme: dark)').matches]", vec![])
                .await?;
            assert_eq!(told, json!([language, dark]));
            let at = |state: &str| {
                format!("{state}, {language}, {width} px, {}", if dark { "dark" } else { "light" })
            };
            look(page, &mut seen, &at("first")).await?;
            rim(page).await?;
            page.press_at("[data-key=add]").await?;
            page.until("two surfaces", "return document.querySelectorAll('.card').length === 2").await?;
            let shape = page
                .run("return document.querySelector('.card:nth-of-type(2) select[id$=-shape]').id", vec![])
                .await?;
            sheet::choose(page, shape.as_str().unwrap_or_default(), "rectangle").await?;
            page.press_at(".card:nth-of-type(2) [data-key^=add-opening]").await?;
            page.run(
                "for (const one of document.querySelectorAll('details:not([open]) > summary')) one.click()",
                vec![],
            )
            .await?;
            page.until(
                "the link is made",
                "return document.querySelector('#take-link').value.includes('#/open/')",
            )
            .await?;
            look(page, &mut seen, &at("partly measured, all open")).await?;
            let first = page.run("return [...document.querySelectorAll('.card:nth-of-type(2) input[id^=surface-]')].find(one => visible(one) && one.dataset.mode)?.id", vec![]).await?;
            page.write(first.as_str().unwrap_or_default(), "a long wall").await?;
            page.settled().await?;
            look(page, &mut seen, &at("a text that cannot be read")).await?;
            page.press_at("main a.fig[href$='quantity.to_spray_up']").await?;
            page.until("its working", "return document.querySelectorAll('.working .calc > li').length > 1")
                .await?;
            look(page, &mut seen, &at("a working")).await?;
        }
    }
    seen.told(journey);
    Ok(())
}

async fn look(page: &Page, seen: &mut Seen, at: &str) -> Step {
    seen.look(page, at).await?;
    assert_eq!(page.misfits().await?, Vec::<String>::new(), "{at}");
    Ok(())
}

/// The demonstration page itself, and both of the frames on it.
pub async fn of_the_company(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    // The frames are 28 px narrower than the page, and the plain one has a scroll bar.
    for width in [330, 900] {
        journey.browser.viewport(Some((width, 900))).await?;
        page.open("company.html").await?;
        for frame in [
            "return document.querySelector('foamwright-estimate')?.shadowRoot?.querySelector('iframe') ?? null",
            "return document.querySelector('main iframe')",
        ] {
            journey.browser.driver.enter_default_frame().await?;
            page.until("there is a frame", &format!("const one = (() => {{ {frame} }})(); return !!one"))
                .await?;
            journey.browser.driver.execute(frame, vec![]).await?.element()?.enter_frame().await?;
            stands(&page).await?;
            look(&page, &mut seen, &format!("a frame of the page at {width} px")).await?;
        }
        journey.browser.driver.enter_default_frame().await?;
        seen.look(&page, &format!("the page at {width} px")).await?;
        let wide = page
            .run("return document.documentElement.scrollWidth - document.documentElement.clientWidth", vec![])
            .await?;
        assert!(wide.as_i64().unwrap_or(1) <= 0, "the page scrolls sideways by {wide} px at {width} px");
    }
    seen.told(&journey);
    Ok(())
}

/// What stands on the leaf, in its order, as `paper_check.py` reads it.
const ROWS: &str = r"
const texts = node => {
  const all = [];
  const walk = document.createTreeWalker(node, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const text = walk.currentNode.textContent.trim();
    if (text && !walk.currentNode.parentElement.closest('.vh, title, desc, defs')) all.push(text);
  }
  return all;
};
const kinds = 'header, h2, figure, tbody tr, .say, p';
return [...document.querySelectorAll('.printed ' + kinds.split(', ').join(', .printed '))]
  .filter(one => !one.parentElement.closest('header, figure, tbody tr, .say'))
  .map(one => ({ heading: one.matches('h2'), texts: texts(one) }));
";

const PAPERS: [(&str, &str, (f64, f64)); 2] = [("en", "letter", (21.59, 27.94)), ("es", "a4", (21.0, 29.7))];

/// What a browser prints of itself before anything was entered or pressed: the sheet, without its presses.
async fn as_it_stands(journey: &Journey, page: &Page) -> Step {
    page.open("embed.html").await?;
    stands(page).await?;
    // The leaf of a frame without sheets of a company says that foam and kits are examples.
    page.run("window.print = () => dispatchEvent(new Event('beforeprint'))", vec![]).await?;
    page.press("Print the estimate").await?;
    page.until(
        "examples are called so",
        "return /foam and the kits here are examples/.test(document.querySelector('.printed').textContent)",
    )
    .await?;
    page.open("embed.html").await?;
    stands(page).await?;
    let pdf = journey.browser.driver.print_page(PrintParameters::default()).await?;
    let file = places::scratch(&format!("printed-embed-{}", journey.engine.name()))?.join("sheet.pdf");
    std::fs::write(&file, &pdf)?;
    let Ok(read) = Command::new("pdftotext").arg("-layout").arg(&file).arg("-").output() else {
        journey
            .cannot("pdftotext is not there: the printed text was not read (apt-get install poppler-utils)");
        return Ok(());
    };
    let text = String::from_utf8_lossy(&read.stdout).split_whitespace().collect::<Vec<_>>().join(" ");
    for part in ["How much foam is that?", "People and pets out.", "licensed practice govern"] {
        assert!(text.contains(part), "“{part}” is not printed: {text}");
    }
    for press in ["Add another surface", "Print the estimate", "Take this with me", "Remove"] {
        assert!(!text.contains(press), "a press is printed: {press}");
    }
    Ok(())
}

/// The leaf of the frame alone, from either theme, left for `paper_check.py`: every figure of the sheet, company and
/// date, the cautions, our disclaimer and theirs.
pub async fn on_paper(journey: Arc<Journey>) -> Step {
    let built = journey.built.copy(&format!("embed-paper-{}", journey.engine.name()))?;
    let site = built.serve().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((360, 740))).await?;
    let folder = places::evidence().join("papers").join(journey.engine.name());
    std::fs::create_dir_all(&folder)?;
    for old in std::fs::read_dir(&folder)?.flatten() {
        if old.file_name().to_string_lossy().starts_with("embed-") {
            std::fs::remove_file(old.path())?;
        }
    }
    as_it_stands(&journey, &page).await?;
    for (language, paper, size) in PAPERS {
        std::fs::write(built.folder.join("paper.json"), settings(json!({ "language": language }))?)?;
        for theme in ["paper", "crawl"] {
            page.open("embed.html?settings=paper.json").await?;
            stands(&page).await?;
            page.run("document.documentElement.dataset.theme = arguments[0]", vec![json!(theme)]).await?;
            assert_eq!(page.run("return document.documentElement.lang", vec![]).await?, json!(language));
            rim(&page).await?;
            page.until(
                "the answer follows",
                "return /^[\\d,]+$/.test(tidy(document.querySelector('.total .block b').textContent))",
            )
            .await?;
            let mut must = block(&page).await?;
            let said = "return [tidy(document.querySelector('h1').textContent), ...[...document.querySelectorAll('footer .note')].slice(0, 2).map(one => tidy(one.textContent))]";
            must.extend(serde_json::from_value::<Vec<String>>(page.run(said, vec![]).await?)?);
            let rim = if language == "es" { "Viga de borde" } else { "Rim joist" };
            must.extend(["Quillfeather Insulation", "Quillfeather closed-cell", rim].map(str::to_owned));
            let words: Value = serde_json::from_str(&std::fs::read_to_string(
                places::package().join(format!("www/words/{language}/embed_ways.json")),
            )?)?;
            must.push(words["paper_is"].as_str().unwrap_or("no words").to_owned());
            page.run("window.printed = 0; window.print = () => { window.printed += 1; dispatchEvent(new Event('beforeprint')) }", vec![]).await?;
            page.press_at("[data-key=print]").await?;
            page.until(
                "it prints",
                "return window.printed === 1 && document.querySelectorAll('.printed tbody tr').length > 1",
            )
            .await?;
            let rows = page.run(ROWS, vec![]).await?;
            let parameters = PrintParameters {
                background: true,
                page: PrintPage { width: size.0, height: size.1 },
                ..PrintParameters::default()
            };
            let pdf = journey.browser.driver.print_page(parameters).await?;
            let name = format!("embed-{theme}-{language}-{paper}");
            std::fs::write(folder.join(format!("{name}.pdf")), &pdf)?;
            let points = [size.0, size.1].map(|cm| (cm / 2.54 * 72.0 * 10.0).round() / 10.0);
            let about = json!({ "size": points, "rows": rows, "must": must, "fault": "", "pages": null, "least": 12 });
            std::fs::write(folder.join(format!("{name}.json")), about.to_string())?;
        }
    }
    Ok(())
}
