//! Settings that come late, again or in part, and the language where the page around says none.

use super::embed::{NORTH, first_field};
use super::embedding::{Company, EAR, stands, until_heard};
use crate::Journey;
use driving::Step;
use driving::host::Host;
use driving::page::Page;
use serde_json::{Value, json};
use std::sync::Arc;
use std::time::Duration;

/// Longer than a frame waits for its settings.
const SLOW: Duration = Duration::from_secs(7);

/// A settings file that comes after the frame has stopped waiting: the usual ones stand until then.
pub async fn after_the_wait(journey: Arc<Journey>) -> Step {
    journey.provokes("sent no settings within 4 s");
    let company = Company::new(&journey, &journey.built).await?;
    company.host.lay_slow("north.json", SLOW, NORTH);
    company
        .open(
            &company.policy(),
            "<foamwright-estimate id=\"one\" settings=\"north.json\"></foamwright-estimate>",
        )
        .await?;
    company.stands("one").await?;
    until_heard(&journey, "sent no settings within 4 s").await?;
    let page = &company.page;
    assert!(!page.text("body").await?.contains("How much for the north?"), "the file was not slow");
    page.until_says("body", "How much for the north?").await
}

/// A plain frame whose file is slow, or there: a message with settings outruns the file, one without leaves it.
pub async fn file_and_message(journey: Arc<Journey>) -> Step {
    let site = Host::of(&journey.built.folder)?;
    let file = NORTH.replace("\"language\":\"en\"", "\"language\":\"visitor\"");
    site.lay_slow("slow.json", Duration::from_secs(3), &file);
    site.lay("north.json", &file);
    let around = Host::start()?;
    let page = Page::new(journey.browser.clone(), around.address());
    let company = Company { site: journey.site().await?, host: around, page };
    let page = &company.page;
    let title = "How much for the north?";
    // What is said as soon as the frame listens, the file, and what stands in the end in which language.
    for (message, name, says, language) in [
        (
            json!({"settings": serde_json::from_str::<Value>(&file.replace(title, "By message"))?}),
            "slow.json",
            "By message",
            "en",
        ),
        (json!({"sized": true}), "slow.json", title, "en"),
        (json!({"sized": false, "language": "es"}), "slow.json", title, "es"),
        (json!({"sized": true, "language": "es"}), "north.json", title, "es"),
    ] {
        let mut ours = message.clone();
        ours["foamwright"] = json!(1);
        company.host.lay("", &format!(
            "<!doctype html><html lang=\"en\"><title>A company</title>
             <script>addEventListener('message', ({{ data, source }}) => {{ if (data?.event === 'ready') source.postMessage({ours}, '*'); }})</script>
             <iframe id=\"plain\" src=\"{}embed.html?settings={name}\" title=\"Foam\" width=\"600\" height=\"900\"></iframe></html>",
            site.address()
        ));
        page.open("").await?;
        company.enter_plain("#plain").await?;
        stands(page).await?;
        page.until_says("body", says).await?;
        // The file has come by now, if it was on its way.
        tokio::time::sleep(Duration::from_millis(if name == "slow.json" { 3500 } else { 500 })).await;
        assert!(page.text("body").await?.contains(says), "{message}");
        assert_eq!(
            page.run("return document.documentElement.lang", vec![]).await?,
            json!(language),
            "{message}"
        );
        if message["sized"] == json!(true) {
            // The same again once it stands: nothing is wiped.
            company.leave().await?;
            page.run("document.querySelector('#plain').contentWindow.postMessage({ foamwright: 1, sized: true }, '*')", vec![]).await?;
            company.enter_plain("#plain").await?;
            tokio::time::sleep(Duration::from_millis(300)).await;
            assert!(page.text("body").await?.contains(says), "{message}");
        }
    }
    assert!(site.asked().iter().any(|path| path == "slow.json"), "{:?}", site.asked());
    Ok(())
}

/// A host that sets an equal object again while a measure is typed changes nothing; another one leaves the field, its
/// text and what can be undone.
pub async fn set_again(journey: Arc<Journey>) -> Step {
    journey.beforehand(EAR).await?;
    let company = Company::new(&journey, &journey.built).await?;
    company.open(&company.policy(), "<foamwright-estimate id=\"one\"></foamwright-estimate>").await?;
    let page = &company.page;
    let set =
        "document.querySelector('#one').settings = { ...JSON.parse(arguments[0]), title: arguments[1] }";
    page.until("the element is defined", "return !!customElements.get('foamwright-estimate')").await?;
    page.run(set, vec![json!(NORTH), json!("First")]).await?;
    company.stands("one").await?;
    page.until_says("body", "First").await?;
    let field = first_field(page).await?;
    page.write(&field, "14").await?;
    page.run("document.activeElement.marked = true; document.querySelector('details').open = true", vec![])
        .await?;
    let heard = "return saidHere.filter(one => one.data?.settings).length";
    let before = page.run(heard, vec![]).await?;
    let at = "const one = document.activeElement; return [one.id, one.value, one.selectionStart, one.marked === true]";

    company.leave().await?;
    page.run(set, vec![json!(NORTH), json!("First")]).await?;
    company.enter("one").await?;
    tokio::time::sleep(Duration::from_millis(500)).await;
    assert_eq!(page.run(heard, vec![]).await?, before, "an equal object is not sent again");
    // And a host with a script of its own, which sends it all the same.
    company.leave().await?;
    let send = "const one = document.querySelector('#one');
        one.shadowRoot.querySelector('iframe').contentWindow.postMessage({ foamwright: 1, language: 'en', settings: one.settings }, '*')";
    page.run(send, vec![]).await?;
    company.enter("one").await?;
    page.until("it arrived", &format!("return saidHere.filter(one => one.data?.settings).length > {before}"))
        .await?;
    tokio::time::sleep(Duration::from_millis(500)).await;
    assert_eq!(page.run(at, vec![]).await?, json!([field, "14", 2, true]));

    company.leave().await?;
    page.run(set, vec![json!(NORTH), json!("Second")]).await?;
    company.enter("one").await?;
    page.until_says("body", "Second").await?;
    assert_eq!(
        page.run(at, vec![]).await?,
        json!([field, "14", 2, false]),
        "laid out anew, the field is in hand"
    );
    assert_eq!(page.run("return document.querySelector('details').open", vec![]).await?, json!(true));
    page.keys(" ft").await?;
    assert_eq!(page.value(&field).await?, "14 ft");
    page.press("Undo").await?;
    page.until(
        "the last step is undone",
        &format!("return document.getElementById('{field}').value === '14'"),
    )
    .await?;
    page.press("Undo").await?;
    page.until("the one before, too", &format!("return document.getElementById('{field}').value === ''"))
        .await?;
    Ok(())
}

/// A change whose words do not arrive: what stood before goes on standing, and the owner is told.
pub async fn words_missing(journey: Arc<Journey>) -> Step {
    for part in ["Foamwright: these settings could not be taken", "404"] {
        journey.provokes(part);
    }
    let torn = journey.built.copy(&format!("no-spanish-{}", journey.engine.name()))?;
    std::fs::remove_file(torn.folder.join(torn.here()?).join("words/es/embed-first.json"))?;
    let company = Company::new(&journey, &torn).await?;
    company.host.lay("north.json", NORTH);
    company
        .open(
            &company.policy(),
            "<foamwright-estimate id=\"one\" settings=\"north.json\"></foamwright-estimate>",
        )
        .await?;
    company.stands("one").await?;
    let page = &company.page;
    page.until_says("body", "How much for the north?").await?;
    let field = first_field(page).await?;
    page.write(&field, "14 ft").await?;
    let set = "document.querySelector('#one').settings = { ...JSON.parse(arguments[0]), title: arguments[1], language: arguments[2] }";
    company.leave().await?;
    page.run(set, vec![json!(NORTH), json!("Spanish"), json!("es")]).await?;
    until_heard(&journey, "these settings could not be taken").await?;
    company.enter("one").await?;
    assert!(page.text("body").await?.contains("How much for the north?"));
    assert_eq!((page.count(".plain").await?, page.value(&field).await?), (0, "14 ft".to_owned()));
    company.leave().await?;
    page.run(set, vec![json!(NORTH), json!("English again"), json!("en")]).await?;
    company.enter("one").await?;
    page.until_says("body", "English again").await?;
    assert_eq!(page.value(&field).await?, "14 ft");
    Ok(())
}

/// A visitor who reads Spanish, on pages without a language, in one that we do not speak, and in English; with forms
/// around the element whose controls are called like the methods of an element.
pub async fn languages(journey: Arc<Journey>) -> Step {
    let company = Company::new(&journey, &journey.built).await?;
    company.host.lay("north.json", &NORTH.replace("\"language\":\"en\"", "\"language\":\"visitor\""));
    let one = "<foamwright-estimate id=\"one\" settings=\"north.json\"></foamwright-estimate>";
    let names = ["parentElement", "getAttribute", "closest", "getRootNode", "host", "lang"]
        .map(|name| format!("<input name=\"{name}\">"))
        .concat();
    let form = format!("<form name=\"host\" {{}}>{names}{one}</form>");
    let page = &company.page;
    for (lang, body, language, title) in [
        ("", one.to_owned(), "es", "Cálculo de espuma"),
        (" lang=\"de\"", one.to_owned(), "es", "Cálculo de espuma"),
        (" lang=\"\"", one.to_owned(), "es", "Cálculo de espuma"),
        (" lang=\"en-GB\"", one.to_owned(), "en", "Foam estimate"),
        (" lang=\"en-GB\"", form.replace("{}", ""), "en", "Foam estimate"),
        ("", form.replace("{}", ""), "es", "Cálculo de espuma"),
        ("", form.replace("{}", "lang=\"EN\""), "en", "Foam estimate"),
    ] {
        let html = company.html(&body).replacen(" lang=\"en\"", lang, 1);
        company.host.lay_under("", &company.policy(), &html);
        page.open("").await?;
        company.stands("one").await?;
        page.until_says("body", "How much for the north?").await?;
        assert_eq!(
            page.run("return document.documentElement.lang", vec![]).await?,
            json!(language),
            "{html}"
        );
        company.leave().await?;
        let named = "return document.querySelector('#one').shadowRoot.querySelector('iframe').title";
        assert_eq!(page.run(named, vec![]).await?, json!(title), "{html}");
    }
    // Within another element's shadow the language is that of the element around.
    page.run(
        "const around = document.querySelector('form').appendChild(document.createElement('div'));
         around.attachShadow({ mode: 'open' }).append(document.querySelector('#one'));
         document.querySelector('form').lang = 'es';",
        vec![],
    )
    .await?;
    let script = "const frame = document.querySelector('form div').shadowRoot.querySelector('#one').shadowRoot.querySelector('iframe'); return frame.title";
    assert_eq!(page.run(script, vec![]).await?, json!("Foam estimate"));
    Ok(())
}
