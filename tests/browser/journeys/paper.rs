//! What is printed: the sheet as it stands on the screen, and the papers.

use super::sheet;
use crate::Journey;
use driving::engines::Engine;
use driving::page::Page;
use driving::{Step, places};
use serde_json::{Value, json};
use std::path::Path;
use std::process::Command;
use std::sync::Arc;
use thirtyfour::common::print::{PrintPage, PrintParameters};

/// The whole sheet prints, whatever is open on the screen, with the figures that the page shows.
pub async fn the_whole_sheet(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/").await?;
    sheet::until_answer(&page, |answer| answer.board_feet == "812").await?;
    let answer = sheet::answer(&page).await?;
    let pdf = journey.browser.driver.print_page(PrintParameters::default()).await?;
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
    for press in ["Undo", "Papers to print", "Add a surface", "Menu"] {
        assert!(!text.contains(press), "a press is printed: {press}");
    }
    Ok(())
}

/// What stands on the papers, in their order: each row's texts, without what only a screen or a reader's ear gets.
const ROWS: &str = r"
const skip = '.vh, .on-screen, .on-screen *, title, desc, defs, defs *';
const texts = node => {
  const all = [];
  const walk = document.createTreeWalker(node, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const text = walk.currentNode.textContent.trim();
    if (text && !walk.currentNode.parentElement.closest(skip)) all.push(text);
  }
  return all;
};
const kinds = '.tb, .block, .on-paper figure, .paper-part > h2, tbody tr, .calc > li, .say, p, .signed div';
return [...document.querySelectorAll('.leaf')].flatMap(leaf => [...leaf.querySelectorAll(kinds)]
  .filter(one => !one.parentElement.closest('.tb, .block, figure, tbody tr, .calc > li, .say, .on-screen'))
  .map(one => ({ heading: one.matches('h2, .grp'), texts: texts(one) })));
";

/// Faults put into the style of a paper, and what the reader has to say of each.
const SPOILED: [(&str, &str); 5] = [
    (
        "cut",
        ".leaf tr, .leaf .say, .leaf .calc > li, .leaf p { break-inside: auto !important; orphans: 1 !important; widows: 1 !important; } .leaf .calc .body > *, .leaf small { padding-bottom: 31pt; }",
    ),
    ("light", ".leaf table.t small { color: #999 !important; }"),
    ("beyond", ".leaf table.t { width: 11in !important; }"),
    ("ground", ".leaf { background: #10161b !important; }"),
    ("lost", ".leaf tbody tr:nth-child(2) { display: none; }"),
];

/// A job of so many surfaces: the sample's, again and again under names of their own.
fn long(count: usize) -> Step<Value> {
    let mut job: Value = serde_json::from_str(&sheet::sample()?)?;
    let kinds = job["surfaces"].as_array().cloned().unwrap_or_default();
    let mut next = 5_000_u64;
    let surfaces: Vec<Value> = kinds
        .iter()
        .cycle()
        .take(count)
        .enumerate()
        .map(|(at, kind)| {
            let mut surface = kind.clone();
            surface["name"] = json!(format!("Surface {} of the long house", at + 1));
            surface["id"] = json!(next);
            next += 1;
            for opening in surface["openings"].as_array_mut().into_iter().flatten() {
                opening["id"] = json!(next);
                next += 1;
            }
            surface
        })
        .collect();
    job["surfaces"] = json!(surfaces);
    job["id"] = json!("a-long-house");
    job["name"] = json!("A long house");
    job["next_id"] = json!(next);
    Ok(job)
}

/// What a print is of.
struct Print<'a> {
    /// Where it is kept.
    folder: &'a Path,
    /// The names and figures that have to be there.
    must: &'a [String],
}

impl Print<'_> {
    /// Prints the open papers on a size of paper (centimeters), and says beside the file what stood there.
    async fn take(&self, page: &Page, name: &str, size: (f64, f64), fault: &str) -> Step {
        let rows = page.run(ROWS, vec![]).await?;
        let parameters = PrintParameters {
            background: true,
            page: PrintPage { width: size.0, height: size.1 },
            ..PrintParameters::default()
        };
        let pdf = page.browser().driver.print_page(parameters).await?;
        std::fs::write(self.folder.join(format!("{name}.pdf")), &pdf)?;
        let points = [size.0, size.1].map(|cm| (cm / 2.54 * 72.0 * 10.0).round() / 10.0);
        let about = json!({ "size": points, "rows": rows, "must": self.must, "fault": fault });
        std::fs::write(self.folder.join(format!("{name}.json")), about.to_string())?;
        Ok(())
    }
}

const LETTER: (f64, f64) = (21.59, 27.94);
const A4: (f64, f64) = (21.0, 29.7);

/// Every paper of a small job and of long ones, on Letter and A4, from either theme, in both languages: left for
/// `paper_check.py`, which reads the PDFs. Here it is held that the page itself offers and shows them.
pub async fn the_papers(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    let folder = places::evidence().join("papers").join(journey.engine.name());
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder)?;
    page.open_ready("#/").await?;
    page.press_in("#view", "Papers to print").await?;
    page.until(
        "the job sheet as it prints",
        "return document.querySelectorAll('.leaf[data-paper=sheet] tbody tr').length > 10",
    )
    .await?;

    let jobs = [
        ("small", serde_json::from_str(&sheet::sample()?)?),
        ("barn", job_of("barn-every-shape")?),
        ("long", long(40)?),
    ];
    for (kind, job) in &jobs {
        sheet::take_in(
            &page,
            &sheet::written(&format!("{kind}.foamwright.json"), job.to_string().as_bytes())?,
        )
        .await?;
        let name = job["name"].clone();
        sheet::until_kept(&page, |record| record["job"]["name"] == name).await?;
        page.go("#/").await?;
        page.until_says("#view h1", job["name"].as_str().unwrap_or_default()).await?;
        // Both themes on the small job; the long ones from the dark one, which has more to go wrong.
        let themes: &[&str] = if *kind == "small" { &["Paper", "Crawlspace"] } else { &["Crawlspace"] };
        for &theme in themes {
            page.go("#/settings").await?;
            page.press_in("#view", theme).await?;
            for language in ["English", "Español"] {
                if language == "Español" && theme == "Paper" {
                    continue;
                }
                page.go("#/settings").await?;
                page.press_in("#view", language).await?;
                page.until(
                    "the language",
                    &format!(
                        "return document.documentElement.lang === '{}'",
                        if language == "English" { "en" } else { "es" }
                    ),
                )
                .await?;
                page.go("#/").await?;
                page.settled().await?;
                let answer = sheet::answer(&page).await?;
                let mut must: Vec<String> = job["surfaces"]
                    .as_array()
                    .into_iter()
                    .flatten()
                    .filter_map(|one| one["name"].as_str())
                    .filter(|name| !name.is_empty())
                    .map(str::to_owned)
                    .collect();
                must.extend([answer.board_feet, answer.kits, answer.passes]);
                page.go("#/paper/sheet/materials/day/working").await?;
                page.until("four papers", "return document.querySelectorAll('.leaf').length === 4").await?;
                page.settled().await?;
                let print = Print { folder: &folder, must: &must };
                let short = if language == "English" { "en" } else { "es" };
                for (paper, size) in [("letter", LETTER), ("a4", A4)] {
                    print.take(&page, &format!("{kind}-{theme}-{short}-{paper}"), size, "").await?;
                }
                if *kind == "small"
                    && theme == "Crawlspace"
                    && short == "en"
                    && journey.engine == Engine::Chromium
                {
                    for (fault, style) in SPOILED {
                        page.run("const rules = new CSSStyleSheet(); rules.replaceSync(arguments[0]); globalThis.before = [...document.adoptedStyleSheets]; document.adoptedStyleSheets = [...globalThis.before, rules]", vec![json!(style)]).await?;
                        print.take(&page, &format!("spoiled-{fault}"), LETTER, fault).await?;
                        page.run("document.adoptedStyleSheets = globalThis.before", vec![]).await?;
                    }
                }
            }
            page.go("#/settings").await?;
            page.press_in("#view", "English").await?;
            page.until("English again", "return document.documentElement.lang === 'en'").await?;
        }
    }
    journey.say(format!(
        "the papers lie in {}",
        folder.strip_prefix(places::package()).unwrap_or(&folder).display()
    ));
    Ok(())
}

/// A job of `tests/jobs`.
fn job_of(name: &str) -> Step<Value> {
    let file = places::package().join("tests/jobs").join(name).join("job.json");
    Ok(serde_json::from_str(&std::fs::read_to_string(file)?)?)
}
