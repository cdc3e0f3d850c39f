//! Messages from whoever is not meant, and settings from whoever means no good.

use super::embed::{NORTH, first_field};
use super::embedding::{Company, EAR, fits, stands, until_heard};
use crate::Journey;
use driving::Step;
use driving::engines::lock;
use driving::page::Page;
use serde_json::{Value, json};
use std::sync::Arc;
use std::time::Duration;

const REST: Duration = Duration::from_millis(800);

/// Settings that would be seen at once if they were taken.
const TAKEN: &str = r#"{"foamwright":1,"sized":false,"language":"es","settings":{"format":"foamwright-embed","version":1,"company":"Planned Intruder","title":"Taken over"}}"#;

/// What a person sees of the frame, as text.
async fn seen(page: &Page) -> Step<Value> {
    let script = "return [document.title, document.documentElement.lang, document.documentElement.className, tidy(document.body.innerText)]";
    page.run(script, vec![]).await
}

/// A company's page with one element that stands and is at rest; inside its frame.
async fn standing(journey: &Journey) -> Step<Company> {
    journey.beforehand(EAR).await?;
    let company = Company::new(journey, &journey.built).await?;
    company.host.lay("north.json", NORTH);
    company.host.lay(
        "other",
        "<!doctype html><html lang=\"en\"><title>Another frame</title><p>Another frame</p></html>",
    );
    let policy = company.policy().replace("frame-src", "frame-src 'self'");
    company
        .open(&policy, "<foamwright-estimate id=\"one\" settings=\"north.json\"></foamwright-estimate><iframe id=\"other\" src=\"other\"></iframe><iframe id=\"bare\" src=\"other\" sandbox=\"allow-scripts\"></iframe>")
        .await?;
    company.stands("one").await?;
    company.leave().await?;
    company.at_rest(REST).await?;
    company.enter("one").await?;
    Ok(company)
}

/// Another frame, another window and the frame itself say what only the page around may say: nothing changes. The
/// same words from the page around are taken, so they would have been seen.
pub async fn strangers(journey: Arc<Journey>) -> Step {
    let company = standing(&journey).await?;
    let page = &company.page;
    let driver = &journey.browser.driver;
    let before = seen(page).await?;

    page.run("postMessage(JSON.parse(arguments[0]), '*')", vec![json!(TAKEN)]).await?;
    let send = "const inside = root => root.querySelector('foamwright-estimate').shadowRoot.querySelector('iframe').contentWindow;
        inside((opener ?? parent).document).postMessage(JSON.parse(arguments[0]), '*')";
    company.enter_plain("#other").await?;
    page.run(send, vec![json!(TAKEN)]).await?;
    company.leave().await?;
    let (first, address) = (driver.window().await?, company.host.address());
    page.run("window.other = open(arguments[0])", vec![json!(format!("{address}other"))]).await?;
    page.until(
        "another window",
        "return window.other.document.readyState === 'complete' && window.other.location.href !== 'about:blank'",
    )
    .await?;
    let windows = driver.windows().await?;
    let second = windows.iter().find(|one| **one != first).ok_or("no other window")?;
    driver.switch_to_window(second.clone()).await?;
    page.run(send, vec![json!(TAKEN)]).await?;
    driver.close_window().await?;
    driver.switch_to_window(first).await?;

    tokio::time::sleep(REST).await;
    company.enter("one").await?;
    assert_eq!(seen(page).await?, before);
    let strange = page
        .run("return saidHere.filter(one => one.data?.settings?.title === 'Taken over').length", vec![])
        .await?;
    assert_eq!(strange, json!(3), "not all of it arrived: nothing was tried");

    company.leave().await?;
    let script = "document.querySelector('#one').shadowRoot.querySelector('iframe').contentWindow.postMessage(JSON.parse(arguments[0]), '*')";
    page.run(script, vec![json!(TAKEN)]).await?;
    company.enter("one").await?;
    page.until_says("body", "Taken over").await
}

/// The page around says what is no message of ours: nothing changes, nothing is thrown, the estimate goes on.
pub async fn junk(journey: Arc<Journey>) -> Step {
    let company = standing(&journey).await?;
    let page = &company.page;
    let before = seen(page).await?;
    company.leave().await?;
    let script = "const to = document.querySelector('#one').shadowRoot.querySelector('iframe').contentWindow;
        const ours = JSON.parse(arguments[0]), deep = {};
        let at = deep;
        for (let depth = 0; depth < 400; depth += 1) at = at.settings = {};
        const all = [undefined, null, 0, NaN, true, '', 'ready', JSON.stringify(ours), 7n, [], [ours], new Date(), /x/, new Map([['foamwright', 1]]),
          new Set([ours]), new Blob(['x']), new ArrayBuffer(8), new Error('planned'), new ImageData(1, 1), {}, { settings: ours.settings },
          ...[0, 2, -1, 1.5, '1', true, null, [1], { valueOf: 1 }, 1n].map(foamwright => ({ ...ours, foamwright })),
          JSON.parse('{\"__proto__\":{\"foamwright\":1,\"settings\":{}}}'), { constructor: { foamwright: 1 } }, deep,
          'x'.repeat(5000000), Object.assign([], ours)];
        for (const one of all) to.postMessage(one, '*');
        const channel = new MessageChannel();
        to.postMessage({ ...ours, foamwright: 0 }, '*', [channel.port1]);
        return all.length";
    let sent = page.run(script, vec![json!(TAKEN)]).await?.as_u64().unwrap_or(0);
    company.enter("one").await?;
    page.until("all of it arrived", &format!("return saidHere.filter(one => one.kind === 'message' && one.data?.language !== 'en').length >= {sent}")).await?;
    tokio::time::sleep(REST).await;
    assert_eq!(seen(page).await?, before);
    works(page).await
}

/// Says settings to the frame, as the page around.
const SEND: &str = "document.querySelector('#one').shadowRoot.querySelector('iframe').contentWindow.postMessage({ foamwright: 1, sized: true, language: 'en', settings: arguments[0] }, '*')";

/// Sends settings: the frame stands, nothing of them has become markup or run, and no text is without an end.
async fn shown_as_text(company: &Company, settings: &Value) -> Step {
    let page = &company.page;
    company.leave().await?;
    page.run(SEND, vec![settings.clone()]).await?;
    tokio::time::sleep(Duration::from_millis(300)).await;
    company.enter("one").await?;
    stands(page).await?;
    let script = "return [typeof globalThis.planned, document.querySelectorAll('img, b b, script:not([src])').length,
        [...document.querySelectorAll('a[href]')].filter(one => /^javascript/i.test(one.href)).length, Object.keys(Object.prototype).length, {}.foamwright === undefined]";
    let shown: String = settings.to_string().chars().take(120).collect();
    assert_eq!(page.run(script, vec![]).await?, json!(["undefined", 0, 0, 0, true]), "{shown}");
    let most = page.run("return document.body.innerText.length", vec![]).await?.as_u64().unwrap_or(0);
    assert!(most > 100 && most < 60_000, "{most} letters for {shown}");
    Ok(())
}

/// Settings whose every text is markup, huge, or of another kind: shown as text or not at all.
pub async fn poisoned(journey: Arc<Journey>) -> Step {
    for part in ["Foamwright", "settings"] {
        journey.provokes(part);
    }
    let company = standing(&journey).await?;
    let page = &company.page;
    let markup =
        "<img src=x onerror=\"globalThis.planned=1\"><script>globalThis.planned=1</script><b>Bold</b>";
    let huge = "x".repeat(300_000);
    let with = |text: &str| {
        json!({"format": "foamwright-embed", "version": 1, "company": text, "title": text, "disclaimer": text,
            "language": text, "units": text, "sales_tax": text, "delivery": text, "sections": [text], "surfaces": [text],
            "depths": [text], "colors": {"light": {"ground": text, "accent": text}}, "contact": {"name": text, "link": text},
            "start": [{"shape": text, "name": text, "entries": [{"field": text, "text": text, "unit": text}]}],
            "foams": [{"name": text, "entries": [{"field": text, "text": text}]}], "kits": [{"name": text}], "send": text})
    };
    let mut link = with("Planned Link Company");
    link["contact"] = json!({"name": "Write to us", "link": "javascript:globalThis.planned=1"});
    let mut keys = with("Planned Key Company");
    keys["sections"] = json!(["__proto__", "constructor", "toString"]);
    keys["surfaces"] = json!(["__proto__", "hasOwnProperty"]);
    keys["start"] = json!([{"shape": "constructor", "name": "x", "entries": [{"field": "__proto__", "text": "1", "unit": "toString"}]}]);
    let many = json!({"format": "foamwright-embed", "version": 1, "company": "Planned Many Company",
        "start": vec![json!({"shape": "rim_run", "name": "n", "entries": []}); 1000], "depths": vec!["2 in"; 1000]});
    for settings in [with(markup), with(&huge), link, keys] {
        shown_as_text(&company, &settings).await?;
    }
    shown_as_text(&company, &many).await?;
    page.until("no more than twelve stand", "return document.querySelectorAll('.card').length === 12")
        .await?;
    let script = "return [...document.querySelectorAll('.card:first-child .keys-row label')].filter(one => tidy(one.innerText).startsWith('2')).length";
    let depths = page.run(script, vec![]).await?.as_u64().unwrap_or(0);
    assert!((1..=6).contains(&depths), "no more than six depths: {depths}");

    // Each value of another kind than it should be: the defaults stand, and the owner is told.
    let kinds = [json!(null), json!(7), json!("text"), json!([]), json!([1]), json!(true), json!({})];
    let defaults = |title: &str| {
        format!(
            "const title = tidy(document.querySelector('h1')?.innerText), all = document.querySelectorAll('.card').length,
             shapes = document.querySelectorAll('.card select[id$=-shape] option').length;
             return title === {} && all === 1 && shapes === 7 && document.documentElement.lang === 'en'",
            json!(title)
        )
    };
    for kind in &kinds {
        lock(&journey.browser.heard).clear();
        let mut settings = with("x");
        for (key, value) in settings.as_object_mut().into_iter().flatten() {
            if key != "format" && key != "version" {
                *value = kind.clone();
            }
        }
        settings["company"] = json!(format!("Planned {kind}"));
        shown_as_text(&company, &settings).await?;
        let title = kind.as_str().unwrap_or("How much foam is that?");
        page.until(&format!("the defaults for {kind}"), &defaults(title)).await?;
        for key in ["units", "language"] {
            until_heard(&journey, &format!("Foamwright settings, {key}: ")).await?;
        }
        let refused = lock(&journey.browser.heard).iter().any(|line| line.contains("the whole file"));
        assert!(!refused, "{kind}: refused as a whole, so that no value was looked at");
    }
    for kind in &kinds {
        lock(&journey.browser.heard).clear();
        shown_as_text(&company, kind).await?;
        page.until(&format!("the defaults for {kind}"), &defaults("How much foam is that?")).await?;
        until_heard(&journey, "Foamwright settings, the whole file: ").await?;
    }
    // After all of it, settings that are sound are taken.
    company.leave().await?;
    page.run(SEND, vec![serde_json::from_str(NORTH)?]).await?;
    company.enter("one").await?;
    page.until_says("body", "How much for the north?").await?;
    works(page).await?;
    company.leave().await?;
    company.at_rest(REST).await?;
    company.enter("one").await?;
    fits(page).await
}

/// Heights from a stranger, and heights that are none: the frame stays as high as it is.
pub async fn heights(journey: Arc<Journey>) -> Step {
    let company = standing(&journey).await?;
    let page = &company.page;
    company.leave().await?;
    let before = company.height("one").await?;
    let said = company.said("height").await?.len();
    let send = "for (const height of arguments[0]) parent.postMessage({ foamwright: 1, event: 'height', height }, '*');
        parent.postMessage({ foamwright: 1, event: 'ready' }, '*');
        parent.postMessage({ foamwright: 1, event: 'estimate', estimate: { version: 1 } }, '*')";
    // One of the page's own origin, and one without any, as a frame of ours may be.
    for stranger in ["#other", "#bare"] {
        company.enter_plain(stranger).await?;
        page.run(send, vec![json!([5, 777])]).await?;
    }
    company.leave().await?;
    page.run("postMessage({ foamwright: 1, event: 'height', height: 777 }, '*')", vec![]).await?;

    company.enter("one").await?;
    let send = "for (const height of [0, -1, -500, 1.5, 1e9, 20001, NaN, Infinity, '300', '300px', null, undefined, true, [300], { valueOf: 300 }, 300n])
          parent.postMessage({ foamwright: 1, event: 'height', height }, '*');
        for (const foamwright of [0, 2, '1', true, [1]]) parent.postMessage({ foamwright, event: 'height', height: 777 }, '*');
        for (const event of ['HEIGHT', 'toString', '__proto__', 1, null, ['height']]) parent.postMessage({ foamwright: 1, event, height: 777 }, '*');
        for (const estimate of [undefined, null, 1, 'text']) parent.postMessage({ foamwright: 1, event: 'estimate', estimate }, '*');
        for (const other of [null, 1, 'height', [], undefined]) parent.postMessage(other, '*')";
    page.run(send, vec![]).await?;
    company.leave().await?;
    page.until("all of it arrived", "return saidHere.filter(one => one.kind === 'message').length >= 34")
        .await?;
    tokio::time::sleep(REST).await;
    assert_eq!(company.height("one").await?.to_bits(), before.to_bits());
    assert_eq!(company.said("height").await?.len(), said);
    assert_eq!(company.said("estimate").await?.len(), 0);
    assert_eq!(company.said("ready").await?.len(), 1);

    // What the frame itself says is taken.
    company.enter("one").await?;
    page.run("parent.postMessage({ foamwright: 1, event: 'height', height: 777 }, '*')", vec![]).await?;
    company.leave().await?;
    page.until(
        "the height is taken",
        "return document.querySelector('#one').shadowRoot.querySelector('iframe').offsetHeight === 777",
    )
    .await?;
    Ok(())
}

/// The estimate can still be worked with.
async fn works(page: &Page) -> Step {
    let before = page.text("body").await?;
    let field = first_field(page).await?;
    page.write(&field, "91 ft").await?;
    let script = format!("return tidy(document.body.innerText) !== {}", json!(before));
    page.until("the estimate follows", &script).await?;
    Ok(())
}
