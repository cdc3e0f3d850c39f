//! The estimator on a company's page: two of them under a strict policy, the height, the life of an element.

use super::embedding::{Company, EAR, fits, stands, until_heard};
use crate::Journey;
use driving::Step;
use driving::engines::lock;
use serde_json::{Value, json};
use std::sync::Arc;
use std::time::Duration;

const REST: Duration = Duration::from_millis(1200);

/// Settings of two companies that have nothing in common.
pub const NORTH: &str = r##"{"format":"foamwright-embed","version":1,"company":"Northfield Trial Insulation","title":"How much for the north?",
 "language":"en","sales_tax":"7.25","delivery":"45"}"##;
pub const SOUTH: &str = r##"{"format":"foamwright-embed","version":1,"company":"Southfield Trial Foam","title":"¿Cuánto para el sur?",
 "language":"es","units":"metric","sections":["depth","foam"]}"##;

/// Two on one page of another origin, under a policy that names nothing but the site: each has its own settings,
/// language and entries, each is as high as what is in it, and the console has nothing to say.
pub async fn two_on_a_page(journey: Arc<Journey>) -> Step {
    journey.beforehand(EAR).await?;
    let company = Company::new(&journey, &journey.built).await?;
    company.host.lay("north.json", NORTH);
    company.host.lay("south.json", SOUTH);
    company
        .open(
            &company.policy(),
            "<foamwright-estimate id=\"north\" settings=\"north.json\" title=\"The north\"></foamwright-estimate>
             <foamwright-estimate id=\"south\" settings=\"./south.json\"></foamwright-estimate>",
        )
        .await?;
    let page = &company.page;
    for (id, title, language) in
        [("north", "How much for the north?", "en"), ("south", "¿Cuánto para el sur?", "es")]
    {
        company.stands(id).await?;
        page.until_says("body", title).await?;
        let lang = page.run("return [document.documentElement.lang, document.title]", vec![]).await?;
        assert_eq!(lang, json!([language, title]));
    }
    company.leave().await?;
    company.at_rest(REST).await?;
    for id in ["north", "south"] {
        company.enter(id).await?;
        fits(page).await?;
    }

    // What is typed into one is not in the other, and changes nothing there.
    company.enter("south").await?;
    let south = page.text("body").await?;
    company.enter("north").await?;
    let north = page.text("body").await?;
    let field = first_field(page).await?;
    page.write(&field, "77 ft").await?;
    page.until("the estimate follows", &format!("return tidy(document.body.innerText) !== {}", json!(north)))
        .await?;
    company.enter("south").await?;
    assert_eq!(page.text("body").await?, south);

    // Without a title of its own a frame is called what it is, in the page's language.
    company.leave().await?;
    let titles = page
        .run("return [...document.querySelectorAll('foamwright-estimate')].map(one => one.shadowRoot.querySelector('iframe').title)", vec![])
        .await?;
    assert_eq!(titles, json!(["The north", "Foam estimate"]));
    for ready in company.said("ready").await? {
        assert_eq!((&ready["data"], &ready["bubbles"]), (&json!({"version": 1}), &json!(true)));
    }
    let ready: Vec<Value> = company.said("ready").await?.iter().map(|one| one["of"].clone()).collect();
    assert_eq!(ready.len(), 2, "{ready:?}");
    // Frames that stand say how high they are and nothing else.
    for said in company.said("message").await? {
        assert_eq!(said["data"]["foamwright"], json!(1));
        assert!(["ready", "height"].iter().any(|event| said["data"]["event"] == *event), "{said}");
    }
    Ok(())
}

/// The first field that can be typed into.
pub async fn first_field(page: &driving::page::Page) -> Step<String> {
    let script =
        "return [...document.querySelectorAll('input[type=text]')].find(one => visible(one) && one.id)?.id";
    let id = page.until("there is a field", script).await?;
    Ok(id.as_str().unwrap_or_default().to_owned())
}

/// Narrow, wide and narrow again: a handful of heights each time, the same height at the same width, no scroll bar.
pub async fn resized(journey: Arc<Journey>) -> Step {
    journey.beforehand(EAR).await?;
    let company = Company::new(&journey, &journey.built).await?;
    company.host.lay("north.json", NORTH);
    company
        .open(&company.policy(), "<foamwright-estimate id=\"north\" settings=\"north.json\"></foamwright-estimate><p>Below it.</p>")
        .await?;
    let page = &company.page;
    company.stands("north").await?;
    company.leave().await?;
    let mut seen: Vec<(u32, f64)> = Vec::new();
    let mut before = 0;
    for width in [360, 1100, 360, 700, 1100] {
        journey.browser.viewport(Some((width, 800))).await?;
        page.settled().await?;
        let said = company.at_rest(REST).await?;
        // One for the width, and few more for what is drawn anew to fit it.
        assert!(said - before <= 6, "{} heights at {width} px", said - before);
        journey.say(format!("{width} px: {} heights", said - before));
        before = said;
        company.enter("north").await?;
        fits(page).await?;
        company.leave().await?;
        let height = company.height("north").await?;
        if let Some((_, then)) = seen.iter().find(|(one, _)| *one == width) {
            assert!((height - then).abs() < 1.5, "{height} px at {width} px wide, {then} px before");
        }
        seen.push((width, height));
    }
    assert!(seen[0].1 > seen[1].1, "narrow is higher than wide, or nothing was tried: {seen:?}");
    let heights = company.said("height").await?;
    assert!(heights.iter().all(|one| one["data"]["height"].as_u64().is_some_and(|height| height > 0)));
    assert_eq!(
        heights.last().map(|one| one["data"].clone()),
        Some(json!({"version": 1, "height": company.height("north").await? as u64}))
    );
    Ok(())
}

/// A page that makes itself narrow where the frame is low and wide where it is high swings a few times and rests.
pub async fn a_swing(journey: Arc<Journey>) -> Step {
    journey.beforehand(EAR).await?;
    let company = Company::new(&journey, &journey.built).await?;
    company
        .open(&company.policy(), "<div><foamwright-estimate id=\"one\"></foamwright-estimate></div>")
        .await?;
    let page = &company.page;
    company.stands("one").await?;
    company.leave().await?;
    company.at_rest(REST).await?;
    let script = "const one = document.querySelector('foamwright-estimate'), around = one.parentElement;
        around.style.width = arguments[0] + 'px';
        const rest = () => saidHere.at(-1).at < performance.now() - 1200 ? done(one.shadowRoot.querySelector('iframe').offsetHeight) : setTimeout(rest, 50);
        saidHere.push({ kind: 'start', at: performance.now() });
        rest()";
    let wide = page.run_async(script, vec![json!(900)]).await?.as_u64().unwrap_or(0);
    let narrow = page.run_async(script, vec![json!(300)]).await?.as_u64().unwrap_or(0);
    assert!(narrow > wide, "{narrow} px at 300 px, {wide} px at 900 px: nothing to swing between");
    let before = company.said("height").await?.len();
    let script = "const around = document.querySelector('foamwright-estimate').parentElement, middle = arguments[0];
        addEventListener('foamwright-height', event => { around.style.width = event.detail.height > middle ? '900px' : '300px'; });
        around.style.width = '900px'";
    page.run(script, vec![json!((wide + narrow) / 2)]).await?;
    let began = format!("return saidHere.filter(one => one.kind === 'height').length > {before}");
    page.until("it swings", &began).await?;
    company.at_rest(REST).await?;
    let said = company.said("height").await?.len() - before;
    assert!((2..=12).contains(&said), "{said} heights");
    assert_eq!(company.height("one").await? as u64, narrow, "the larger one stays: nothing is cut off");
    Ok(())
}

/// An element as frameworks treat it: made before its script came, moved, taken out and put in again, its
/// attributes and its property changed, the script there twice.
pub async fn a_life(journey: Arc<Journey>) -> Step {
    journey.beforehand(EAR).await?;
    let company = Company::new(&journey, &journey.built).await?;
    company.host.lay("north.json", NORTH);
    company.host.lay("south.json", SOUTH);
    let again = format!("<script type=\"module\" src=\"{}embed.js?again\"></script>", company.site.address());
    let body = format!("<div id=\"a\"></div><div id=\"b\"></div>{again}");
    company.open(&company.policy(), &body).await?;
    let page = &company.page;
    page.until("the element is defined", "return !!customElements.get('foamwright-estimate')").await?;

    // Made by a script, with a property before it is anywhere.
    let script = "const one = document.createElement('foamwright-estimate');
        one.id = 'one'; one.settings = { ...JSON.parse(arguments[0]), title: 'By property' };
        document.querySelector('#a').append(one)";
    page.run(script, vec![json!(NORTH)]).await?;
    company.stands("one").await?;
    page.until_says("body", "By property").await?;
    company.leave().await?;

    // Moved: a fresh frame, with the same settings.
    page.run("document.querySelector('#b').append(document.querySelector('#one'))", vec![]).await?;
    company.stands("one").await?;
    page.until_says("body", "By property").await?;
    company.leave().await?;

    if page.run("return 'moveBefore' in Element.prototype", vec![]).await? == json!(true) {
        company.enter("one").await?;
        let field = first_field(page).await?;
        page.write(&field, "66 ft").await?;
        company.leave().await?;
        page.run("document.querySelector('#a').moveBefore(document.querySelector('#one'), null)", vec![])
            .await?;
        company.enter("one").await?;
        assert_eq!(page.value(&field).await?, "66 ft", "moved in one piece, the frame is as it was");
        company.leave().await?;
    } else {
        journey.cannot("this engine moves nothing in one piece");
    }

    // Taken out: nothing of it is left that listens; put in again it stands again.
    let script = "window.kept = document.querySelector('#one'); window.kept.remove(); return [window.kept.shadowRoot.childElementCount, frames.length]";
    assert_eq!(page.run(script, vec![]).await?, json!([0, 0]));
    page.run("document.querySelector('#a').append(window.kept)", vec![]).await?;
    company.stands("one").await?;
    company.leave().await?;

    // The property gives way to the file, by attribute and by a text as property; then the file changes.
    let script = "const one = document.querySelector('#one'); one.settings = undefined; one.settings = 'north.json'; return one.getAttribute('settings')";
    assert_eq!(page.run(script, vec![]).await?, json!("north.json"));
    company.enter("one").await?;
    page.until_says("body", "How much for the north?").await?;
    company.leave().await?;
    page.run("document.querySelector('#one').setAttribute('settings', 'south.json')", vec![]).await?;
    company.enter("one").await?;
    page.until_says("body", "¿Cuánto para el sur?").await?;
    company.leave().await?;
    page.run("document.querySelector('#one').title = 'Called so'", vec![]).await?;
    let named = "return document.querySelector('#one').shadowRoot.querySelector('iframe').title";
    assert_eq!(page.run(named, vec![]).await?, json!("Called so"));
    // A sandbox holds for what is loaded after it: a fresh frame.
    page.run(
        "document.querySelector('#one').setAttribute('sandbox', 'allow-scripts allow-same-origin')",
        vec![],
    )
    .await?;
    company.stands("one").await?;
    page.until_says("body", "¿Cuánto para el sur?").await?;
    company.leave().await?;
    let all = page.run("return document.querySelector('#one').shadowRoot.childElementCount", vec![]).await?;
    assert_eq!(all, json!(1));

    // There before its script, with settings given to what was no element yet.
    company.host.lay_under(
        "late",
        &company.policy(),
        "<!doctype html><html lang=\"es\"><title>Late</title><foamwright-estimate id=\"late\">Llámenos</foamwright-estimate></html>",
    );
    page.open("late").await?;
    page.until_says("body", "Llámenos").await?;
    let script = "document.querySelector('#late').settings = { ...JSON.parse(arguments[0]), title: 'Given early', language: 'visitor' }; import(arguments[1])";
    page.run(script, vec![json!(NORTH), json!(format!("{}embed.js", company.site.address()))]).await?;
    company.stands("late").await?;
    page.until_says("body", "Given early").await?;
    assert_eq!(page.run("return document.documentElement.lang", vec![]).await?, json!("es"));
    Ok(())
}

/// Settings that cannot be had: said to the owner, and the visitor gets the usual ones.
pub async fn settings_refused(journey: Arc<Journey>) -> Step {
    journey.beforehand(EAR).await?;
    let company = Company::new(&journey, &journey.built).await?;
    for part in ["<foamwright-estimate>", "404"] {
        journey.provokes(part);
    }
    let other = format!("{}planned.json", company.site.address());
    company.host.lay("broken.json", "{\"format\":");
    company.host.lay("heavy.json", &format!("{{\"company\":\"{}\"}}", "x".repeat(200_001)));
    company
        .open(
            &company.policy(),
            "<foamwright-estimate id=\"one\" settings=\"gone.json\"></foamwright-estimate>",
        )
        .await?;
    let page = &company.page;
    company.stands("one").await?;
    company.leave().await?;
    until_heard(&journey, "settings gone.json: the server answers 404").await?;
    let set = "document.querySelector('#one').setAttribute('settings', arguments[0])";
    for (address, reason) in [
        (other.as_str(), "only a file of http://localhost"),
        ("//127.0.0.1/x.json", "only a file of http://localhost"),
        ("data:application/json,{}", "only a file of http://localhost"),
        ("javascript:alert(1)", "only a file of http://localhost"),
        ("http://[", "URL"),
        ("broken.json", "JSON"),
        ("heavy.json", "more than 200 kB"),
    ] {
        page.run(set, vec![json!(address)]).await?;
        let line = until_heard(&journey, &format!("settings {address}: ")).await?;
        assert!(line.contains(reason) && line.contains("the usual ones are used"), "{line}");
    }
    // The engines say it each in its own words.
    for (given, reasons) in [
        ("const ring = {}; ring.ring = ring; return ring", ["circular", "cyclic"]),
        ("return { company: 'x'.repeat(200001) }", ["more than 200 kB"; 2]),
        ("return 10n", ["BigInt"; 2]),
    ] {
        lock(&journey.browser.heard).clear();
        let script = format!("document.querySelector('#one').settings = (() => {{ {given} }})()");
        page.run(&script, vec![]).await?;
        let line = until_heard(&journey, "the property settings: ").await?;
        assert!(reasons.iter().any(|reason| line.contains(reason)), "{line}");
    }
    assert!(
        !company.site.asked()?.iter().any(|line| line.contains("planned.json")),
        "another origin was asked"
    );
    company.enter("one").await?;
    stands(page).await
}
