//! The estimator where much is forbidden: storage refused, sandboxes, servers without headers, pages whose policy
//! does not know it, settings named by an address.

use super::embed::{NORTH, first_field};
use super::embed_estimate::{framed, rim};
use super::embedding::{Company, EAR, fits, stands, until_heard};
use crate::Journey;
use driving::Step;
use driving::engines::lock;
use driving::host::Host;
use driving::page::Page;
use driving::site::UNDER;
use serde_json::json;
use std::sync::Arc;
use std::time::Duration;

/// Keeps a list of everything that would stay on the device and is touched by a page.
const TOUCHES: &str = r"() => {
  globalThis.touched = [];
  const note = (of, name) => {
    const at = Object.getOwnPropertyDescriptor(of, name);
    if (!at?.get) { touched.push(`${name} cannot be watched`); return; }
    Object.defineProperty(of, name, { ...at,
      get() { touched.push(name); return at.get.call(this); },
      ...at.set && { set(value) { touched.push(`${name} =`); at.set.call(this, value); } } });
  };
  for (const name of ['localStorage', 'sessionStorage', 'indexedDB', 'caches']) if (name in globalThis) note(Object.hasOwn(globalThis, name) ? globalThis : Object.getPrototypeOf(globalThis), name);
  note(Document.prototype, 'cookie');
  for (const name of ['serviceWorker', 'storage']) if (name in Navigator.prototype) note(Navigator.prototype, name);
}";

/// Nobody waits for an answer.
const HURRIED: &str = r"() => {
  const real = setTimeout;
  globalThis.setTimeout = (act, ms, ...rest) => real(act, ms === 15000 || ms === 20000 ? 1 : ms, ...rest);
}";

/// Keeps what was shown in place of the frame, in the page around, and of the estimate, in the frame.
const SHOWN_FIRST: &str = r"() => {
  globalThis.shownFirst = [];
  globalThis.plainShown = false;
  const look = () => {
    const root = document.querySelector('foamwright-estimate')?.shadowRoot;
    if (root?.querySelector('slot')) shownFirst.push(root.firstElementChild.style.display);
    else requestAnimationFrame(look);
  };
  if (parent === window) look();
  else new MutationObserver(() => { plainShown ||= !!document.querySelector('.plain'); }).observe(document, { childList: true, subtree: true });
}";

/// Everything that can be done with the estimate, with storage refused and everything that is kept watched: none of it
/// is touched, and the server is asked for nothing but files of the site.
pub async fn nothing_kept(journey: Arc<Journey>) -> Step {
    // One engine asks the policy of the page around before a file may be saved.
    for part in ["blob:http", "frame-src blob"] {
        journey.provokes(part);
    }
    journey.beforehand(TOUCHES).await?;
    journey.beforehand(EAR).await?;
    let sections = json!(["depth", "foam", "kits", "price", "print", "take", "readiness", "spraying"]);
    let company = framed(&journey, json!({ "language": "en", "send": true, "sections": sections })).await?;
    let page = &company.page;
    rim(page).await?;
    page.until("readiness and spraying stand", "return visible(document.querySelector('.sprayers .verdict-word')) && document.querySelectorAll('.sprayers h2').length === 2").await?;
    page.run("window.print = () => dispatchEvent(new Event('beforeprint'))", vec![]).await?;
    page.press_at("[data-key=print]").await?;
    page.until("the paper is laid out", "return document.querySelectorAll('.printed tbody tr').length > 0")
        .await?;
    page.press("Take this with me").await?;
    page.until("the link is made", "return document.querySelector('#take-link').value.includes('#/open/')")
        .await?;
    page.press("Copy the link").await?;
    page.until_says(".take [role=status]", "link is").await?;
    page.press("Save it as a file").await?;
    page.until_says(".take [role=status]", "file").await?;
    page.press_at("main a.fig[href$='quantity.to_spray_up']").await?;
    page.until("its working", "return document.querySelectorAll('.working .calc > li').length > 1").await?;
    page.press_at(".working .back").await?;
    page.press("Send to Quillfeather Insulation").await?;
    page.until_says(".send [role=status]", "board feet").await?;
    page.settled().await?;
    tokio::time::sleep(Duration::from_secs(1)).await;
    assert_eq!(page.run("return touched", vec![]).await?, json!([]));
    // What watches is able to see.
    let probe = "try { localStorage } catch { } document.cookie; navigator.serviceWorker; return touched";
    assert_eq!(page.run(probe, vec![]).await?, json!(["localStorage", "cookie", "serviceWorker"]));

    let asked = company.site.asked()?;
    assert!(asked.iter().any(|line| line.contains("embed.html")) && asked.len() > 5, "{asked:?}");
    for line in asked {
        let mut words = line.split(' ').filter(|word| !word.is_empty());
        let status = words.next().unwrap_or_default();
        let target = words.find(|word| word.starts_with('/'));
        let name = target.and_then(|target| target.strip_prefix(UNDER)).unwrap_or("outside the site");
        assert!(status == "200" && !name.contains('?'), "{line}");
        assert!(journey.built.folder.join(name).is_file(), "{line}");
        assert!(!name.ends_with("sw.js"), "{line}");
        // Which page is around is told with the script that this page itself asks for, and not again.
        assert!(name == "embed.js" || !line.contains("localhost"), "{line}");
    }
    assert_eq!(
        company.host.asked().iter().filter(|path| *path != "favicon.ico").collect::<Vec<_>>(),
        ["", "settings.json"]
    );
    Ok(())
}

/// Sandboxes that let it run: with an origin of its own, and without one from a server that sends the header.
pub async fn sandboxed(journey: Arc<Journey>) -> Step {
    journey.beforehand(EAR).await?;
    let company = Company::new(&journey, &journey.built).await?;
    company.host.lay("north.json", NORTH);
    company
        .open(
            &company.policy(),
            "<foamwright-estimate id=\"opaque\" settings=\"north.json\" sandbox=\"allow-scripts\"></foamwright-estimate>
             <foamwright-estimate id=\"own\" settings=\"north.json\" sandbox=\"allow-scripts allow-same-origin\"></foamwright-estimate>",
        )
        .await?;
    let page = &company.page;
    for (id, origin) in [("opaque", "null".to_owned()), ("own", company.site.origin())] {
        company.stands(id).await?;
        assert_eq!(page.run("return self.origin", vec![]).await?, json!(origin));
        page.until_says("body", "How much for the north?").await?;
        let before = page.text("body").await?;
        let field = first_field(page).await?;
        page.write(&field, "77 ft").await?;
        let script = format!("return tidy(document.body.innerText) !== {}", json!(before));
        page.until("the estimate follows", &script).await?;
        company.leave().await?;
        company.at_rest(Duration::from_millis(1200)).await?;
        company.enter(id).await?;
        fits(page).await?;
    }
    Ok(())
}

/// A server that sends no header for frames without an origin: a plain line and the way to the full tool.
pub async fn without_the_header(journey: Arc<Journey>) -> Step {
    for part in [
        "CORS",
        "Cross-Origin",
        "ERR_FAILED",
        "Foamwright: the modules",
        "blocked",
        "preload",
        "failed",
        "Failed",
    ] {
        journey.provokes(part);
    }
    let bare = Host::of(&journey.built.folder)?;
    let around = Host::start()?;
    around.lay("", &format!(
        "<!doctype html><html lang=\"en\"><title>A company</title><iframe sandbox=\"allow-scripts\" src=\"{}embed.html\"></iframe></html>",
        bare.address()
    ));
    let page = Page::new(journey.browser.clone(), around.address());
    page.open("").await?;
    let company = Company { site: journey.site().await?, host: around, page };
    company.enter_plain("iframe").await?;
    let page = &company.page;
    page.until_says("body", "cannot run in this frame").await?;
    let link = page
        .run(
            "const { href, target, rel } = document.querySelector('.plain a'); return [href, target, rel]",
            vec![],
        )
        .await?;
    assert_eq!(link, json!([bare.address(), "_blank", "noopener"]));
    page.until_says("body", &bare.address()).await?;
    until_heard(&journey, "Access-Control-Allow-Origin: *").await?;
    Ok(())
}

/// Scripts off in the frame: the page says so and names the full tool.
pub async fn without_scripts(journey: Arc<Journey>) -> Step {
    for part in ["Blocked script", "sandbox", "scripts"] {
        journey.provokes(part);
    }
    // Of the site's own origin, so that the page around can read what stands in the frame.
    let built = journey.built.copy(&format!("no-scripts-{}", journey.engine.name()))?;
    std::fs::write(
        built.folder.join("around.html"),
        "<!doctype html><html lang=\"en\"><title>A company</title><iframe sandbox=\"allow-same-origin\" src=\"embed.html\"></iframe></html>",
    )?;
    let site = built.serve().await?;
    let page = journey.page(&site);
    page.open("around.html").await?;
    let script = "const inside = document.querySelector('iframe').contentDocument;
        const line = inside?.querySelector('noscript');
        return line && line.getClientRects().length > 0 ? [tidy(line.innerText), line.querySelector('a')?.href ?? ''] : null";
    let said = page.until("the line for a page without scripts", script).await?;
    assert!(said[0].as_str().is_some_and(|text| text.contains("JavaScript")), "{said}");
    assert_eq!(said[1], json!(site.address()));
    Ok(())
}

/// A page whose policy does not know the frame: the owner is told what it lacks, the visitor sees what the element
/// holds, or a link.
pub async fn policy_without_it(journey: Arc<Journey>) -> Step {
    for part in
        ["<foamwright-estimate>", "refused by policy", "Content Security Policy", "Content-Security-Policy"]
    {
        journey.provokes(part);
    }
    let company = Company::new(&journey, &journey.built).await?;
    let policy = company.policy().replace(&format!("frame-src {};", company.site.origin()), "");
    company
        .open(
            &policy,
            "<foamwright-estimate id=\"own\"><a href=\"tel:0\">Call us</a></foamwright-estimate>
            <foamwright-estimate id=\"bare\" lang=\"es-MX\">
            </foamwright-estimate>",
        )
        .await?;
    let page = &company.page;
    until_heard(&journey, &format!("frame-src {0};", company.site.origin())).await?;
    let own = page
        .until(
            "what the element holds is shown",
            "const one = document.querySelector('#own a'); return visible(one) && tidy(one.innerText)",
        )
        .await?;
    assert_eq!(own, json!("Call us"));
    let script = "const root = document.querySelector('#bare').shadowRoot, link = root.querySelector('a');
        return link && visible(link) && !visible(root.querySelector('iframe')) && [tidy(link.innerText), link.href, link.target, link.rel]";
    let link = page.until("a link is shown", script).await?;
    assert_eq!(link, json!(["Abrir el estimador de espuma", company.site.address(), "_blank", "noopener"]));
    assert!(
        !company.site.asked()?.iter().any(|line| line.contains("embed.html")),
        "the policy has no effect"
    );
    Ok(())
}

/// A frame that answers late or never: given up after a while, and taken back when it does answer.
pub async fn no_answer(journey: Arc<Journey>) -> Step {
    for part in ["<foamwright-estimate>", "404"] {
        journey.provokes(part);
    }
    // The patience of element and frame is over at once; everything else waits as it does.
    journey.beforehand(HURRIED).await?;
    journey.beforehand(SHOWN_FIRST).await?;
    let body = "<foamwright-estimate id=\"one\">Call us</foamwright-estimate>";
    let company = Company::new(&journey, &journey.built).await?;
    company.open(&company.policy(), body).await?;
    let page = &company.page;
    until_heard(&journey, "the frame has not answered").await?;
    company.stands("one").await?;
    let line = page.run("return [plainShown, document.querySelectorAll('.plain').length]", vec![]).await?;
    assert_eq!(line, json!([true, 0]), "the plain line came and went");
    company.leave().await?;
    assert_eq!(page.run("return shownFirst", vec![]).await?, json!(["none"]), "it was never given up");
    let script = "const root = document.querySelector('#one').shadowRoot; return [root.childElementCount, visible(root.firstElementChild)]";
    assert_eq!(page.run(script, vec![]).await?, json!([1, true]));

    let torn = journey.built.copy(&format!("no-frame-{}", journey.engine.name()))?;
    std::fs::remove_file(torn.folder.join("embed.html"))?;
    let company = Company::new(&journey, &torn).await?;
    company.open(&company.policy(), body).await?;
    let page = &company.page;
    page.until("what the element holds is shown", "return document.querySelector('#one').shadowRoot.querySelector('slot')?.assignedNodes().length === 1 && !visible(document.querySelector('#one').shadowRoot.querySelector('iframe'))").await?;
    Ok(())
}

/// Settings by an address in the query of a plain frame: a file of the site's own origin is taken, any other is
/// refused, said, and not asked for.
pub async fn by_address(journey: Arc<Journey>) -> Step {
    journey.provokes("Foamwright: settings");
    let built = journey.built.copy(&format!("by-address-{}", journey.engine.name()))?;
    std::fs::write(built.folder.join("north.json"), NORTH)?;
    let company = Company::new(&journey, &built).await?;
    company.host.lay("planned.json", NORTH);
    let page = &company.page;
    let foreign = format!("{}planned.json", company.host.address());
    for (address, taken) in [
        ("north.json".to_owned(), true),
        (format!("{}north.json", company.site.address()), true),
        (foreign.clone(), false),
        (foreign.replace("http:", ""), false),
        ("data:application/json,{}".to_owned(), false),
        ("javascript:alert(1)".to_owned(), false),
    ] {
        lock(&journey.browser.heard).clear();
        let query = address.replace('&', "%26").replace('{', "%7B").replace('}', "%7D");
        let frame = format!(
            "<iframe id=\"plain\" src=\"{}embed.html?settings={query}\" title=\"Foam\" width=\"600\" height=\"900\"></iframe>",
            company.site.address()
        );
        company.open(&company.policy(), &frame).await?;
        company.enter_plain("#plain").await?;
        stands(page).await?;
        let title = page.text("body").await?.contains("How much for the north?");
        assert_eq!(title, taken, "{address}");
        if taken {
            let heard = lock(&journey.browser.heard).clone();
            assert!(!heard.iter().any(|line| line.contains("Foamwright: settings")), "{address}: {heard:?}");
        } else {
            until_heard(&journey, "Foamwright: settings").await?;
        }
    }
    assert!(!company.host.asked().iter().any(|path| path.contains("planned")), "{:?}", company.host.asked());
    Ok(())
}
