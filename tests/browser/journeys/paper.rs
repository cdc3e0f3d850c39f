//! What is printed: the sheet as it stands on the screen, and the papers.

use super::sheet;
use crate::Journey;
use driving::engines::Engine;
use driving::page::Page;
use driving::{Step, places};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
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
const skip = ['.vh, .on-screen, .on-screen *, title, desc, defs, defs *', ...arguments].join();
const texts = node => {
  const all = [];
  const walk = document.createTreeWalker(node, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const text = walk.currentNode.textContent.trim();
    if (text && !walk.currentNode.parentElement.closest(skip)) all.push(text);
  }
  return all;
};
const kinds = '.tb, .block, .on-paper figure, .paper-part h2, tbody tr, .calc > li, .steps > li, .say, p, .remarks, .signed div';
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
    ("beyond", "@page { margin: .3in .3in .7in; }"),
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
pub(super) struct Print<'a> {
    /// Where it is kept.
    pub(super) folder: &'a Path,
    /// The names and figures that have to be there.
    pub(super) must: &'a [String],
    /// How many pages it has to be, where each leaf has to stand on one.
    pub(super) pages: Option<usize>,
    /// What else is not printed, or not in the order in which it stands in the page.
    pub(super) skip: &'static [&'static str],
}

impl Print<'_> {
    /// Prints the open papers on a size of paper (centimeters), and says beside the file what stood there.
    pub(super) async fn take(&self, page: &Page, name: &str, size: (f64, f64), fault: &str) -> Step {
        let rows = page.run(ROWS, self.skip.iter().map(|one| json!(one)).collect()).await?;
        let parameters = PrintParameters {
            background: true,
            page: PrintPage { width: size.0, height: size.1 },
            ..PrintParameters::default()
        };
        let pdf = page.browser().driver.print_page(parameters).await?;
        std::fs::write(self.folder.join(format!("{name}.pdf")), &pdf)?;
        let points = [size.0, size.1].map(|cm| (cm / 2.54 * 72.0 * 10.0).round() / 10.0);
        let about =
            json!({ "size": points, "rows": rows, "must": self.must, "fault": fault, "pages": self.pages });
        std::fs::write(self.folder.join(format!("{name}.json")), about.to_string())?;
        Ok(())
    }
}

const LETTER: (f64, f64) = (21.59, 27.94);
const A4: (f64, f64) = (21.0, 29.7);
const BOTH: [(&str, (f64, f64)); 2] = [("letter", LETTER), ("a4", A4)];

/// From which theme, in which language and on which papers a job is printed.
#[derive(Clone, Copy)]
pub(super) struct Look {
    pub(super) theme: &'static str,
    pub(super) language: &'static str,
    pub(super) papers: &'static [(&'static str, (f64, f64))],
}

/// Where the PDFs of an engine are left for `paper_check.py`.
pub(super) fn folder_of(journey: &Journey) -> Step<PathBuf> {
    let folder = places::evidence().join("papers").join(journey.engine.name());
    std::fs::create_dir_all(&folder)?;
    Ok(folder)
}

/// Every paper of a job, on Letter and A4, from a theme, in a language: left for `paper_check.py`, which reads the
/// PDFs. Here it is held that the page itself shows them. With `spoiled`, the same with faults put into the style.
async fn printed(
    journey: &Journey,
    kind: &str,
    job: &Value,
    looks: &[Look],
    faults: &[(&str, &str)],
) -> Step {
    printed_from(
        journey,
        kind,
        job,
        looks,
        faults,
        ("#/paper/sheet/drawings/materials/loadout/day/emergency/working", 7, false),
    )
    .await
}

/// The same from a fragment that leads to so many leaves; with `each`, every leaf has to stand on one page, and the
/// inspector's has to say what the depth screen of its surface says.
async fn printed_from(
    journey: &Journey,
    kind: &str,
    job: &Value,
    looks: &[Look],
    faults: &[(&str, &str)],
    (fragment, leaves, each): (&str, usize, bool),
) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    let folder = folder_of(journey)?;
    let start = format!("{kind}-");
    for old in std::fs::read_dir(&folder)?.flatten() {
        if faults.is_empty() && old.file_name().to_string_lossy().starts_with(&start) {
            std::fs::remove_file(old.path())?;
        }
    }
    page.open_ready("#/").await?;
    sheet::take_in(
        &page,
        &sheet::written(
            &format!("{kind}-{}.foamwright.json", journey.engine.name()),
            job.to_string().as_bytes(),
        )?,
    )
    .await?;
    let name = job["name"].clone();
    sheet::until_kept(&page, |record| record["job"]["name"] == name).await?;
    let mut must: Vec<String> = job["surfaces"]
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|one| one["name"].as_str())
        .chain(job["place"].as_str())
        .filter(|name| !name.is_empty())
        .map(str::to_owned)
        .collect();
    for (at, &Look { theme, language, papers }) in looks.iter().enumerate() {
        page.run(
            "localStorage.setItem('foamwright.prefs', JSON.stringify({ theme: arguments[0], language: arguments[1] }))",
            vec![theme.into(), language.into()],
        )
        .await?;
        page.open_ready("#/").await?;
        page.until_says("#view h1", job["name"].as_str().unwrap_or_default()).await?;
        if at == 0 && !each {
            let answer = sheet::answer(&page).await?;
            must.extend([answer.board_feet, answer.kits, answer.passes]);
        }
        let inspected = each && fragment.ends_with("inspector");
        let shown = if inspected { Some(on_the_screens(&page, job).await?) } else { None };
        page.go(fragment).await?;
        page.until(
            &format!("{leaves} papers"),
            &format!("return document.querySelectorAll('.leaf').length === {leaves}"),
        )
        .await?;
        page.settled().await?;
        if let Some(shown) = shown {
            let missing = page.run(MISSING, vec![shown]).await?;
            assert_eq!(missing, json!([]), "what the depth screens say and the papers do not");
        }
        let shown = page
            .run("return [document.documentElement.dataset.theme, document.documentElement.lang]", vec![])
            .await?;
        assert_eq!(shown, json!([theme, language]));
        let print = Print { folder: &folder, must: &must, pages: each.then_some(leaves), skip: &[] };
        for &(fault, style) in faults {
            page.run("const rules = new CSSStyleSheet(); rules.replaceSync(arguments[0]); globalThis.before = [...document.adoptedStyleSheets]; document.adoptedStyleSheets = [...globalThis.before, rules]", vec![json!(style)]).await?;
            print.take(&page, &format!("spoiled-{fault}"), LETTER, fault).await?;
            page.run("document.adoptedStyleSheets = globalThis.before", vec![]).await?;
        }
        if faults.is_empty() {
            for &(paper, size) in papers {
                print.take(&page, &format!("{start}{theme}-{language}-{paper}"), size, "").await?;
            }
        }
    }
    journey.say(format!(
        "the papers lie in {}",
        folder.strip_prefix(places::package()).unwrap_or(&folder).display()
    ));
    Ok(())
}

const LIGHT_ENGLISH: Look = Look { theme: "paper", language: "en", papers: &BOTH };
const DARK_ENGLISH: Look = Look { theme: "crawl", language: "en", papers: &BOTH };
const DARK_SPANISH: Look = Look { theme: "crawl", language: "es", papers: &BOTH };
/// Longer jobs, from the dark theme, which has more to go wrong: each language on its countries' paper.
pub(super) const LONGER: [Look; 2] =
    [Look { papers: &[("letter", LETTER)], ..DARK_ENGLISH }, Look { papers: &[("a4", A4)], ..DARK_SPANISH }];

pub async fn of_the_sample(journey: Arc<Journey>) -> Step {
    printed(&journey, "light", &serde_json::from_str(&sheet::sample()?)?, &[LIGHT_ENGLISH], &[]).await
}

pub async fn from_the_dark(journey: Arc<Journey>) -> Step {
    printed(&journey, "dark", &serde_json::from_str(&sheet::sample()?)?, &[DARK_ENGLISH], &[]).await
}

pub async fn in_spanish(journey: Arc<Journey>) -> Step {
    printed(&journey, "spanish", &serde_json::from_str(&sheet::sample()?)?, &[DARK_SPANISH], &[]).await
}

pub async fn of_the_barn(journey: Arc<Journey>) -> Step {
    printed(&journey, "barn", &job_of("barn-every-shape")?, &LONGER, &[]).await
}

pub async fn of_every_shape(journey: Arc<Journey>) -> Step {
    printed(&journey, "shapes", &job_of("crawl-every-new-shape")?, &LONGER, &[]).await
}

/// What a depth screen says: its three figures, the marks of its ruler and every rule below it, each without space.
const SCREEN: &str = r"
const bare = node => node.textContent.replace(/\s+/g, '');
const of = (root, kind) => [...document.querySelectorAll(root)].flatMap(one => [...one.querySelectorAll(kind)]).map(bare);
const figures = [...of('#view .steps3', 'span[role=status]'), ...of('#view .rows.plain', '.v')];
const marks = [...document.querySelectorAll('#view figure svg text')].filter(one => one.classList.contains('lg')).map(bare);
return { figures: figures.filter(Boolean), marks };
";

/// What is said on a screen and missing on the leaf of its surface, the drawing on paper counted, that for the screen not.
const MISSING: &str = r"
const [screens] = arguments;
return [...document.querySelectorAll('.leaf')].flatMap((leaf, at) => {
  const paper = leaf.cloneNode(true);
  for (const one of paper.querySelectorAll('.on-screen')) one.remove();
  const drawn = paper.querySelector('.on-paper').textContent.replace(/\s+/g, '');
  const all = paper.textContent.replace(/\s+/g, '');
  const { figures, marks } = screens[at];
  return [...figures.filter(one => !all.includes(one)), ...marks.filter(one => !drawn.includes(one)), ...(figures.length < 3 || marks.length < 3 ? ['next to nothing'] : [])];
});
";

/// What the depth screen of each surface says.
async fn on_the_screens(page: &Page, job: &Value) -> Step<Value> {
    let mut all = Vec::new();
    for surface in job["surfaces"].as_array().into_iter().flatten() {
        page.go(&format!("#/depth/{}", surface["id"])).await?;
        page.until_says("#view h1", surface["name"].as_str().unwrap_or_default()).await?;
        page.settled().await?;
        all.push(page.run(SCREEN, vec![]).await?);
    }
    Ok(json!(all))
}

/// The sheets for the inspector of a rim whose rules cross, a page a surface, with the figures of the depth screens; and refused where
/// the type is kept so large that a leaf runs over its page.
pub async fn inspector(journey: Arc<Journey>) -> Step {
    let job = job_of("rim-crossing-by-u")?;
    let leaves = job["surfaces"].as_array().map_or(0, Vec::len);
    let route = ("#/paper/inspector", leaves, true);
    printed_from(&journey, "inspector", &job, &[LIGHT_ENGLISH, DARK_SPANISH], &[], route).await?;
    if journey.engine == Engine::Chromium {
        let fault = [("pages", ".leaf.fit { --type: 14pt !important; --small: 13pt !important; }")];
        printed_from(&journey, "spoiled", &job, &[LIGHT_ENGLISH], &fault, route).await?;
    }
    Ok(())
}

/// A surface with every answer and a dozen layers still stands on one page, in the longer language.
pub async fn inspector_of_much(journey: Arc<Journey>) -> Step {
    let mut job: Value = serde_json::from_str(&sheet::sample()?)?;
    for (field, text) in
        [("work", "new"), ("zip", "55401"), ("county", "27053"), ("zone", "6a"), ("edition", "2021")]
    {
        put(&mut job["entries"], field, text);
    }
    let wall = &mut job["surfaces"][1];
    for (field, text) in [
        ("component", "wall"),
        ("runs", "between"),
        ("framing_share", "25"),
        ("framing", "wood"),
        ("over_edges", "no"),
        ("exposure", "covered"),
        ("inner_retarder", "class_3"),
        ("room", "living"),
        ("cover", "gypsum"),
        ("cover_price", "0.85"),
        ("target_r", "R-20"),
    ] {
        put(&mut wall["entries"], field, text);
    }
    let layer = |id: u32, material: &str, position: &str, r: &str| {
        json!({ "id": id, "entries": [
            { "field": "made_of", "text": material }, { "field": "position", "text": position },
            { "field": "thickness", "text": "1" }, { "field": "layer_r", "text": r } ] })
    };
    let layers: Vec<Value> = (0..12)
        .map(|at| match at {
            0..5 => layer(300 + at, "bevel_siding", "outside", "0.8"),
            5..8 => layer(300 + at, "batt", "cavity", "3"),
            _ => layer(300 + at, "gypsum_1_2", "inside", "0.45"),
        })
        .collect();
    wall["layers"] = json!(layers);
    job["surfaces"] = json!([wall.clone()]);
    job["next_id"] = json!(400);
    job["name"] = json!("A wall of everything");
    job["id"] = json!("a-wall-of-everything");
    printed_from(&journey, "much", &job, &LONGER, &[], ("#/paper/inspector", 1, true)).await
}

/// The emergency sheet stands on one page, with a long address and three foams to be named, in both languages.
pub async fn emergency(journey: Arc<Journey>) -> Step {
    let mut job: Value = serde_json::from_str(&sheet::sample()?)?;
    job["surfaces"] = json!([]);
    job["name"] = json!("A house at the end of a long road");
    job["id"] = json!("a-house-far-out");
    job["place"] = json!(
        "14275 County Road 117 North, second drive after the bridge, gate 4471, back door to the crawlspace"
    );
    for (at, name) in [(900, "Sample closed-cell with a long name"), (901, "Sample open-cell for the attic")]
    {
        if let Some(foams) = job["foams"].as_array_mut() {
            foams.push(json!({ "id": at, "name": name, "entries": [], "r_at": [] }));
        }
    }
    job["next_id"] = json!(910);
    let looks = [LIGHT_ENGLISH, DARK_SPANISH];
    printed_from(&journey, "emergency", &job, &looks, &[], ("#/paper/emergency", 1, true)).await
}

/// Puts an answer among entries.
fn put(entries: &mut Value, field: &str, text: &str) {
    if let Some(all) = entries.as_array_mut() {
        all.retain(|one| one["field"] != field);
        all.push(json!({ "field": field, "text": text }));
    }
}

/// Old foam, patches, left-over foam and a kit from the shelf.
pub async fn of_patches(journey: Arc<Journey>) -> Step {
    let mut job = job_of("patches-and-old-foam")?;
    job["stock"] = job_of("two-kits-on-the-shelf")?["stock"].clone();
    printed(&journey, "patches", &job, &LONGER, &[]).await
}

pub async fn of_a_long_house(journey: Arc<Journey>) -> Step {
    printed(&journey, "long", &long(40)?, &LONGER[1..], &[]).await
}

/// Papers with a fault in their style, which `paper_check.py` has to refuse: it is the reader that is tried here, so
/// one engine is enough.
pub async fn spoiled(journey: Arc<Journey>) -> Step {
    if journey.engine != Engine::Chromium {
        return Ok(());
    }
    let job = serde_json::from_str(&sheet::sample()?)?;
    printed(&journey, "spoiled", &job, &[DARK_ENGLISH], &SPOILED).await
}

/// The screens that have a paper lead to it: none prints itself instead.
pub async fn the_ways_to_them(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/").await?;
    for (from, press, paper) in [
        ("#/", "Papers to print", "sheet"),
        ("#/drawings", "Print the drawings", "drawings"),
        ("#/kits", "Print the materials list", "materials"),
        ("#/spray", "Print the day sheet", "day"),
        ("#/day", "Print the day sheet", "day"),
        ("#/day", "Print the emergency sheet", "emergency"),
        ("#/people", "Print the load-out list", "loadout"),
        ("#/people", "Print the emergency sheet", "emergency"),
        ("#/working", "Print the working sheet", "working"),
        ("#/move", "Print the sheet", "sheet"),
        ("#/depth/101", "Print the inspector’s sheet", "inspector"),
    ] {
        page.go(from).await?;
        page.press_in("#view", press).await?;
        page.until(
            &format!("the {paper} alone, from {from}"),
            &format!("return [...new Set([...document.querySelectorAll('.leaf')].map(one => one.dataset.paper))].join() === '{paper}'"),
        )
        .await?;
    }
    page.go("#/").await?;
    page.press("Menu").await?;
    page.press("Print the sheet").await?;
    page.until(
        "the job sheet, from the menu",
        "return document.querySelectorAll('.leaf[data-paper=sheet] tbody tr').length > 10 && document.querySelectorAll('.leaf').length === 1",
    )
    .await?;
    Ok(())
}

/// A job of `tests/jobs`.
fn job_of(name: &str) -> Step<Value> {
    let file = places::package().join("tests/jobs").join(name).join("job.json");
    Ok(serde_json::from_str(&std::fs::read_to_string(file)?)?)
}
