//! A whole estimate in the frame on a company's page: figures and their working, taken into the full tool, sent.

use super::embedding::{Company, EAR, stands};
use super::sheet;
use crate::Journey;
use driving::page::Page;
use driving::{Step, places};
use serde_json::{Value, json};
use std::sync::Arc;
use thirtyfour::Key;

/// The settings of the demonstration page, with other values for some keys.
pub fn settings(changes: Value) -> Step<String> {
    let file = places::package().join("www/company-settings.json");
    let mut all: Value = serde_json::from_str(&std::fs::read_to_string(file)?)?;
    for (key, value) in changes.as_object().into_iter().flatten() {
        all[key] = value.clone();
    }
    Ok(all.to_string())
}

/// A page of another origin with one estimator `one` under these settings, gone into.
pub async fn framed(journey: &Journey, changes: Value) -> Step<Company> {
    let company = Company::new(journey, &journey.built).await?;
    company.host.lay("settings.json", &settings(changes)?);
    company
        .open(
            &company.policy(),
            "<foamwright-estimate id=\"one\" settings=\"settings.json\"></foamwright-estimate>",
        )
        .await?;
    company.stands("one").await?;
    Ok(company)
}

/// The field of a surface that ends so, of the surface at this place on the sheet.
async fn field_of(page: &Page, surface: usize, name: &str) -> Step<String> {
    let script = format!(
        "const all = [...document.querySelectorAll('.card')][{surface}]?.querySelectorAll('[id^=surface-], [id^=opening-]') ?? [];
         return [...all].find(one => one.id.endsWith('-{name}') && one.matches('input, select, textarea') && visible(one))?.id"
    );
    Ok(page.until(&format!("a field {name}"), &script).await?.as_str().unwrap_or_default().to_owned())
}

/// A rim joist of 148 ft around by keyboard, 9¼ in high (it stands there already), 3 in deep.
pub async fn rim(page: &Page) -> Step {
    let around = field_of(page, 0, "perimeter").await?;
    page.write(&around, "148").await?;
    page.press_in(".card", "3 in").await
}

/// What the block of the answer says: its large figures.
pub async fn block(page: &Page) -> Step<Vec<String>> {
    let script = "return [...document.querySelectorAll('.total .block b')].map(one => tidy(one.textContent))";
    let all = page.run(script, vec![]).await?;
    Ok(all.as_array().into_iter().flatten().filter_map(|one| one.as_str().map(str::to_owned)).collect())
}

/// Waits until the block's first figure is another one than this, and a figure; gives the block.
async fn block_after(page: &Page, before: &str) -> Step<Vec<String>> {
    let script = format!(
        "const first = tidy(document.querySelector('.total .block b')?.textContent); return /^[\\d,]+$/.test(first) && first !== {}",
        json!(before)
    );
    page.until("the answer follows", &script).await?;
    page.settled().await?;
    block(page).await
}

/// The frame of the first element on the demonstration page.
const FRAME: &str =
    "return document.querySelector('foamwright-estimate')?.shadowRoot?.querySelector('iframe')";

/// Goes into that frame.
async fn enter(page: &Page) -> Step {
    let driver = &page.browser().driver;
    driver.enter_default_frame().await?;
    driver.execute(FRAME, vec![]).await?.element()?.enter_frame().await?;
    Ok(())
}

/// The whole way on the demonstration page, on a phone: a rim joist, a wall with an opening, every figure opened to
/// its working and back, and the job in the full tool by link and by file.
pub async fn a_whole_estimate(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((360, 740))).await?;
    page.open("company.html").await?;
    page.until("the element has a frame", &format!("{FRAME} ? true : false")).await?;
    enter(&page).await?;
    stands(&page).await?;
    assert_eq!(
        block(&page).await?.first().map(String::as_str),
        Some("–"),
        "nothing is totaled before it is measured"
    );
    rim(&page).await?;
    let one = block_after(&page, "–").await?;

    // 148 ft × 9¼ in = 114.08 ft², less what the framing takes where it is counted; a second surface by the press.
    page.press("Add another surface").await?;
    page.until("a second surface", "return document.querySelectorAll('.card').length === 2").await?;
    let shape = field_of(&page, 1, "shape").await?;
    sheet::choose(&page, &shape, "rectangle").await?;
    let length = field_of(&page, 1, "length").await?;
    page.write(&length, "24 ft").await?;
    page.keys(Key::Tab + "").await?;
    let height = field_of(&page, 1, "height").await?;
    page.write(&height, "7' 6\"").await?;
    page.press_at(".card:nth-of-type(2) [data-key^=add-opening]").await?;
    let width = field_of(&page, 1, "width").await?;
    page.until("the opening has the focus", &format!("return document.activeElement?.id === '{width}'"))
        .await?;
    page.write(&width, "3 ft").await?;
    let tall = width.replace("-width", "-height");
    page.write(&tall, "4 ft").await?;
    // 24 × 7½ − 3 × 4 = 168 ft².
    page.until_says(".card:nth-of-type(2)", "168 ft²").await?;
    let two = block_after(&page, &one[0]).await?;
    assert!(two.len() >= 3, "board feet, kits and price: {two:?}");

    opened_to_their_working(&page).await?;
    assert_eq!(block(&page).await?, two, "looking at the working changes nothing");
    assert_eq!(page.misfits().await?, Vec::<String>::new());

    // Taken along: the link, and the file.
    page.press("Take this with me").await?;
    let script = "const link = document.querySelector('#take-link').value; return link.includes('/index.html#/open/') && document.querySelector('[data-key=take-open]').href === link ? link : ''";
    let link = page.until("the link is made", script).await?.as_str().unwrap_or_default().to_owned();
    let about = page
        .run(
            "const { target, rel } = document.querySelector('[data-key=take-open]'); return [target, rel]",
            vec![],
        )
        .await?;
    assert_eq!(about, json!(["_blank", "noopener"]));
    page.until_says(".take", "characters long").await?;
    assert_eq!(page.misfits().await?, Vec::<String>::new());
    page.press_in(".take", "Save it as a file").await?;
    let file = page.downloaded(".foamwright.json").await?;
    // A change makes another link.
    page.write(&tall, "5 ft").await?;
    page.until(
        "another link",
        &format!("return document.querySelector('#take-link').value !== {}", json!(link)),
    )
    .await?;
    journey.browser.driver.enter_default_frame().await?;

    page.run("location.href = arguments[0]", vec![json!(link)]).await?;
    page.ready().await?;
    let by_link = taken(&page, &two).await?;
    assert_eq!(
        by_link["name"],
        json!("Estimate, Quillfeather Insulation"),
        "nothing that the visitor did not enter"
    );
    assert_eq!((&by_link["place"], &by_link["note"]), (&json!(""), &json!("")));
    let elsewhere = journey.site().await?;
    let fresh = journey.page(&elsewhere);
    fresh.open_ready("").await?;
    sheet::take_in(&fresh, &file).await?;
    let by_file = taken(&fresh, &two).await?;
    assert_eq!(by_link, by_file, "link and file hold the same job");
    Ok(())
}

/// Each figure of the sheet leads to its working and back to itself, and the page around goes nowhere by it.
async fn opened_to_their_working(page: &Page) -> Step {
    page.browser().driver.enter_default_frame().await?;
    let place = "return [location.href, history.length]";
    let around = page.run(place, vec![]).await?;
    enter(page).await?;
    let inside = page.run(place, vec![]).await?;
    let figures = page
        .run("return [...new Set([...document.querySelectorAll('main a.fig')].filter(visible).map(one => one.getAttribute('href')))]", vec![])
        .await?;
    let figures: Vec<String> = serde_json::from_value(figures)?;
    assert!(figures.len() >= 7, "areas, R, board feet, kits, price and its parts: {figures:?}");
    for figure in figures {
        page.press_at(&format!("main a.fig[href='{figure}']")).await?;
        page.until(
            &format!("the working of {figure} has the focus"),
            "return document.activeElement?.matches('.working h1') && document.querySelectorAll('.working .calc > li').length > 1",
        )
        .await?;
        let said = page.text(".working").await?;
        assert!(!said.contains("working.") && !said.contains('{'), "words are missing: {said}");
        let lit = page.count(".working .calc > .lit").await?;
        assert!(lit == 1, "{figure}: {lit} of its steps are lit: {said}");
        // No way but the one back, and nothing of the sheet beside it.
        assert_eq!(page.count("a[href], .card").await?, 1, "{figure}");
        assert_eq!(page.misfits().await?, Vec::<String>::new(), "{figure}");
        page.press_in(".working", "The estimate").await?;
        page.until(
            "the figure has the focus again",
            &format!("return document.activeElement?.getAttribute('href') === {} && visible(document.activeElement)", json!(figure)),
        )
        .await?;
    }
    assert_eq!(page.run(place, vec![]).await?, inside, "the frame's own address");
    page.browser().driver.enter_default_frame().await?;
    assert_eq!(page.run(place, vec![]).await?, around, "the address and history of the page around");
    enter(page).await
}

/// The job that the full tool took in, where the same figures have to stand.
async fn taken(page: &Page, block: &[String]) -> Step<Value> {
    let record = sheet::until_kept(page, |record| {
        record["job"]["surfaces"].as_array().is_some_and(|all| all.len() == 2)
    })
    .await?;
    page.go("#/").await?;
    sheet::until_answer(page, |answer| answer.board_feet == block[0] && answer.kits == block[1]).await?;
    page.go("#/kits").await?;
    page.until_says("#view", &block[2]).await?;
    Ok(record["job"].clone())
}

/// The totals go to the page around once a press, not before, and without anything that was typed.
pub async fn sent(journey: Arc<Journey>) -> Step {
    journey.beforehand(EAR).await?;
    let company = framed(&journey, json!({ "language": "en" })).await?;
    let page = &company.page;
    assert_eq!(
        page.run("return document.querySelector('[data-key=send]').getAttribute('aria-disabled')", vec![])
            .await?,
        json!("true")
    );
    page.until_says(".send", "nothing to send yet").await?;
    page.press("Send to Quillfeather Insulation").await?;
    rim(page).await?;
    let alone = block_after(page, "–").await?;
    // Surfaces have names where there are several.
    page.press("Add another surface").await?;
    let shape = field_of(page, 1, "shape").await?;
    sheet::choose(page, &shape, "typed_area").await?;
    for (surface, name, text) in
        [(0, "name", "Zenobia Trial’s cellar"), (1, "name", "Zenobia Trial’s cabin"), (1, "area", "61.5")]
    {
        let field = field_of(page, surface, name).await?;
        page.write(&field, text).await?;
    }
    let block = block_after(page, &alone[0]).await?;
    page.until_says(".send", "Nothing is sent until you press").await?;
    let kits = page.run("return [...document.querySelectorAll('.total .rows:first-child > li')].map(one => tidy(one.textContent))", vec![]).await?;
    company.leave().await?;
    let said = company.said("message").await?;
    assert!(said.iter().all(|one| one["data"]["event"] != "estimate"), "sent before the press: {said:?}");
    for press in 1..=2 {
        company.enter("one").await?;
        page.press("Send to Quillfeather Insulation").await?;
        page.until_says(".send [role=status]", &format!("{} board feet", block[0])).await?;
        company.leave().await?;
        page.until(
            "it is heard",
            &format!("return saidHere.filter(one => one.kind === 'estimate').length >= {press}"),
        )
        .await?;
        let heard = company.said("estimate").await?;
        assert_eq!(heard.len(), press, "once a press: {heard:?}");
        let estimate = &heard[press - 1]["data"]["estimate"];
        assert_eq!(heard[press - 1]["data"]["version"], json!(1));
        assert_eq!(estimate["version"], json!(1));
        assert_eq!(
            (&estimate["complete"], &estimate["surfaces"], &estimate["of"]),
            (&json!(true), &json!(2), &json!(2))
        );
        assert_eq!(estimate["board_feet"].to_string(), block[0].replace(',', ""));
        // 148 ft × 9¼ in ÷ 12 and 61.5 ft².
        assert_eq!(estimate["area_ft2"], json!(175.6));
        let count: u64 =
            estimate["kits"].as_array().into_iter().flatten().filter_map(|kit| kit["count"].as_u64()).sum();
        assert_eq!(count.to_string(), block[1]);
        for kit in estimate["kits"].as_array().into_iter().flatten() {
            assert!(kits.to_string().contains(kit["name"].as_str().unwrap_or("?")), "{kit} is not in {kits}");
        }
        let price = &estimate["price"];
        let cents = |key: &str| price[key].as_i64().unwrap_or(-1);
        assert_eq!(cents("kits") + cents("tax") + cents("delivery"), cents("total"), "{price}");
        let shown: i64 = block[2].chars().filter(char::is_ascii_digit).collect::<String>().parse()?;
        assert_eq!(cents("total"), if block[2].contains('.') { shown } else { shown * 100 }, "{}", block[2]);
        assert!(
            !heard[press - 1].to_string().contains("Zenobia") && !estimate.to_string().contains("148"),
            "{estimate}"
        );
    }
    // A later change says that what the page has is of before.
    company.enter("one").await?;
    let around = field_of(page, 0, "perimeter").await?;
    page.write(&around, "150 ft").await?;
    page.until_says(".send [role=status]", "before your last change").await?;
    company.leave().await?;
    assert_eq!(company.said("estimate").await?.len(), 2);

    // A host that does not ask for it: no press.
    let without = framed(&journey, json!({ "language": "en", "send": false })).await?;
    assert_eq!(without.page.count("[data-key=send], .send").await?, 0);
    rim(&without.page).await?;
    block_after(&without.page, "–").await?;
    without.leave().await?;
    assert_eq!(without.said("estimate").await?, Vec::<Value>::new());
    Ok(())
}

/// A sandbox that lets it run and nothing else: presses do nothing, and the link stands in its field to be copied.
pub async fn taken_out_of_a_sandbox(journey: Arc<Journey>) -> Step {
    for part in
        ["andbox", "frame-src blob", "allow-popups", "allow-downloads", "allow-modals", "Download", "blob:"]
    {
        journey.provokes(part);
    }
    let company = Company::new(&journey, &journey.built).await?;
    company.host.lay("settings.json", &settings(json!({ "language": "en" }))?);
    company
        .open(
            &company.policy(),
            "<foamwright-estimate id=\"one\" settings=\"settings.json\" sandbox=\"allow-scripts allow-same-origin\"></foamwright-estimate>",
        )
        .await?;
    company.stands("one").await?;
    let page = &company.page;
    rim(page).await?;
    block_after(page, "–").await?;
    page.press("Take this with me").await?;
    page.until("the link is made", "return document.querySelector('#take-link').value.includes('#/open/')")
        .await?;
    page.press("Open it in the full tool").await?;
    page.press("Save it as a file").await?;
    page.until_says(".take [role=status]", "If no file appears").await?;
    page.press("Copy the link").await?;
    page.until_says(".take [role=status]", "link is").await?;
    let said = page.text(".take [role=status]").await?;
    assert!(said == "The link is copied." || said == "The link is marked: copy it by hand.", "{said}");
    let marked = "const { selectionStart, selectionEnd, value } = document.querySelector('#take-link'); return selectionEnd - selectionStart === value.length";
    if said.contains("marked") {
        assert_eq!(page.run(marked, vec![]).await?, json!(true));
    }
    // Printing is refused too, and said.
    page.press("Print the estimate").await?;
    page.until_says("main", "does not let the estimate print").await?;
    assert_eq!(journey.browser.driver.windows().await?.len(), 1, "no tab was opened");
    company.leave().await?;
    assert_eq!(page.run("return location.hash", vec![]).await?, json!(""));
    Ok(())
}

/// A homeowner is not told whether to spray: no word of readiness stands in the frame, in its working or on its
/// paper, unless the host switches that on.
pub async fn no_verdict(journey: Arc<Journey>) -> Step {
    for language in ["en", "es"] {
        let words =
            std::fs::read_to_string(places::package().join(format!("www/words/{language}/ready.json")))?;
        let words: Value = serde_json::from_str(&words)?;
        let verdicts: Vec<&str> = ["go", "hold", "not_read"]
            .iter()
            .filter_map(|one| words[format!("verdict_{one}")].as_str())
            .collect();
        assert_eq!(verdicts.len(), 3);
        // Everything in the frame, hidden or not, and the names that only a reader's ear gets.
        let stand = "const text = [document.body.textContent, ...[...document.querySelectorAll('[aria-label]')].map(one => one.getAttribute('aria-label'))].join(' ');
            return arguments[0].filter(one => new RegExp(`(?<![\\\\p{L}])${one}(?![\\\\p{L}])`, 'u').test(text))";
        let company = framed(&journey, json!({ "language": language })).await?;
        let page = &company.page;
        rim(page).await?;
        block_after(page, "–").await?;
        page.run("window.print = () => dispatchEvent(new Event('beforeprint'))", vec![]).await?;
        page.press_at("[data-key=print]").await?;
        page.until(
            "the paper is laid out",
            "return document.querySelectorAll('.printed tbody tr').length > 1",
        )
        .await?;
        assert_eq!(page.run(stand, vec![json!(verdicts)]).await?, json!([]), "{language}");
        for figure in ["quantity.to_spray_up", "purchase.buy.left"] {
            page.press_at(&format!("main a.fig[href$='{figure}']")).await?;
            page.until("its working", "return document.querySelectorAll('.working .calc > li').length > 1")
                .await?;
            assert_eq!(
                page.run(stand, vec![json!(verdicts)]).await?,
                json!([]),
                "{language}, working of {figure}"
            );
            page.press_at(".working .back").await?;
        }

        let company =
            framed(&journey, json!({ "language": language, "sections": ["depth", "kits", "readiness"] }))
                .await?;
        rim(&company.page).await?;
        company.page.until_says("body", verdicts[2]).await?;
    }
    Ok(())
}
