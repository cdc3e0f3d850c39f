//! Before anything is measured: the walkthrough, and the list for air sealing alone.

use super::axe::Seen;
use super::sheet;
use crate::Journey;
use driving::Step;
use driving::page::Page;
use serde_json::json;
use std::sync::Arc;

const PHONE: (u32, u32) = (390, 844);

/// Presses an answer of a question.
async fn answer(page: &Page, question: &str, word: &str) -> Step {
    page.press_at(&format!("[data-field=job-0-{question}] .key-choice:has(input[value={word}])")).await
}

/// What stands under a question.
async fn after(page: &Page, question: &str) -> Step<String> {
    let script = "return tidy(document.querySelector(`[data-field=job-0-${arguments[0]}]`)?.closest('li')?.querySelector('.says')?.innerText ?? '')";
    Ok(page.run(script, vec![json!(question)]).await?.as_str().unwrap_or_default().to_owned())
}

async fn until_after(page: &Page, question: &str, text: &str) -> Step {
    page.until(
        &format!("“{text}” under {question}"),
        &format!(
            "return tidy(document.querySelector('[data-field=job-0-{question}]').closest('li').querySelector('.says').innerText).includes({})",
            json!(text)
        ),
    )
    .await?;
    Ok(())
}

/// Every question answered by a press, gravest first; what follows stands under it at once, on the job sheet, in the
/// verdict, in the message and on paper. Then everything in order: nothing follows, and still no GO.
pub async fn the_walk(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/sheet").await?;
    page.until_says("a[href='#/before']", "Nothing looked at yet").await?;
    page.press_at("a[href='#/before']").await?;
    page.until_says("#view h1", "Before foam").await?;
    page.until_says("#view header .side", "0 of 16 looked at").await?;
    seen.look(&page, "the walkthrough, nothing answered").await?;

    for (number, (question, word, follows)) in [
        ("closed_cavity", "yes", "Not with this kit: This foam is not for injection."),
        ("frame_gaps", "yes", "Not with this kit: Two-part foam can bow frames."),
        ("flues", "yes", "Do first: Close these gaps with metal and high-temperature sealant."),
        ("water", "yes", "Not yet: Foam over water traps it."),
        ("rot", "yes", "Do first: Cut out and replace rotten wood"),
        ("old_fill", "yes", "Do first: Take it out"),
        ("retarder", "both", "For the proposal: There is a retarder on the outer side."),
        ("knob_tube", "not_known", "Not known: taken as yes until somebody has looked."),
        ("open_boxes", "yes", "from memory: check your code book"),
        ("lights", "yes", "Do first: Box them off"),
        ("pipes", "yes", "Do first: Foam only on the cold side of the pipe."),
        ("fire_blocking", "yes", "Do first: Fire-block these runs first"),
        ("termites", "yes", "For the proposal: A termite inspection strip stays without foam."),
        ("asbestos", "not_known", "Not yet: Leave it alone and keep out of it."),
        ("old_paint", "yes", "40 CFR 745"),
        ("room_use", "storage", "For the proposal: Foam in this room gets a thermal barrier."),
    ]
    .into_iter()
    .enumerate()
    {
        assert_eq!(after(&page, question).await?, "", "nothing follows before {question} is answered");
        answer(&page, question, word).await?;
        until_after(&page, question, follows).await?;
        page.until_says("#view header .side", &format!("{} of 16 looked at", number + 1)).await?;
    }
    seen.look(&page, "the walkthrough, the gravest answers").await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");

    page.go("#/sheet").await?;
    page.until_says("a[href='#/before']", "Not with this kit, or not yet: Closed cavities · ").await?;
    page.go("#/ready").await?;
    page.until_says(".stamp .word", "HOLD").await?;
    page.until_says(".blame", "Not yet: water or a leak.").await?;
    page.go("#/move").await?;
    page.until_says("#view", "Not with this kit, or not yet: Closed cavities").await?;
    page.go("#/paper/sheet").await?;
    page.until_says(".leaf", "Leave closed cavities out, or open them first.").await?;

    // Kept as everything else, and undone by pressing the same answer again.
    sheet::until_kept(&page, |record| record.to_string().contains("room_use")).await?;
    page.reload().await?;
    page.go("#/before").await?;
    page.until_says("#view header .side", "16 of 16 looked at").await?;
    answer(&page, "water", "yes").await?;
    page.until_says("#view header .side", "15 of 16 looked at").await?;
    assert_eq!(after(&page, "water").await?, "");

    // All in order, as far as a press can say so: nothing stops any more, and nothing is passed.
    let questions = page
        .run(
            "return [...document.querySelectorAll('.walk [data-field]')].map(one => one.dataset.field.slice(6))",
            vec![],
        )
        .await?;
    for question in questions.as_array().into_iter().flatten().filter_map(|one| one.as_str()) {
        let word = match question {
            "retarder" => "none",
            "room_use" => "weather",
            _ => "no",
        };
        answer(&page, question, word).await?;
    }
    page.until_says("#view header .side", "16 of 16 looked at").await?;
    page.until_says("#view", "Nothing found so far that stops this kit.").await?;
    assert_eq!(page.count("#view .walk .say.hold").await?, 0);
    page.go("#/ready").await?;
    page.until_says(".stamp .word", "NOT READ").await?;
    seen.told(&journey);
    Ok(())
}

/// Presses a kind of the list and gives the id of its new line.
async fn add(page: &Page, kind: &str) -> Step<String> {
    page.press_at(&format!("[data-key=add-{kind}]")).await?;
    let id = page
        .until(
            &format!("a line of {kind}"),
            "return document.activeElement?.id.match(/^surface-(\\d+)-/)?.[1] ?? ''",
        )
        .await?;
    Ok(id.as_str().unwrap_or_default().to_owned())
}

/// 120 ft of top plate at 4 in × 1 in are 120 × ⅓ ft² × 1 in = 40 board feet. Ten 3 in holes around 2 in pipes, 2 in
/// deep: 10 × π/4 × (9 − 4) in² = 39.3 in² = 0.273 ft², × 2 in = 0.5 board feet. A chase without its size is
/// named, and the rest goes on.
pub async fn air_sealing(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let mut seen = Seen::default();
    journey.browser.viewport(Some(PHONE)).await?;
    page.open_ready("").await?;
    page.go("#/jobs").await?;
    page.press("New job").await?;
    page.until_says("#view h1", "without a name").await?;
    page.press_in("#view", "Air sealing only: a list").await?;
    page.until_says("#view h1", "Air sealing only").await?;
    page.until_says("#view", "No R is claimed.").await?;
    for refused in ["Chimney and flue gaps are refused.", "Closed cavities are refused."] {
        page.until_says("#view", refused).await?;
    }
    seen.look(&page, "the list, empty").await?;

    let plates = add(&page, "top_plates").await?;
    page.write(&format!("surface-{plates}-length"), "120").await?;
    page.until_says("#view .takes", "40 ft² · 40 bd ft · no R").await?;

    let chase = add(&page, "chases").await?;
    page.write(&format!("surface-{chase}-times"), "3").await?;
    page.until("the missing size is named", "return [...document.querySelectorAll('.takes')].some(one => tidy(one.innerText).includes('Around one missing'))").await?;

    let holes = add(&page, "holes").await?;
    for (field, text) in [("holes", "10"), ("hole_size", "3"), ("pipe_size", "2"), ("depth", "2")] {
        page.write(&format!("surface-{holes}-{field}"), text).await?;
    }
    page.until("what the holes take", "return [...document.querySelectorAll('.takes')].some(one => /0\\.27\\d? ft² · 0\\.5 bd ft · no R/.test(tidy(one.innerText)))").await?;
    sheet::until_answer(&page, |answer| answer.board_feet == "41").await?;
    seen.look(&page, "the list with lines").await?;
    let misfits = page.misfits().await?;
    assert!(misfits.is_empty(), "{misfits:?}");

    // Another of a kind is another line; each is an ordinary surface of the job.
    add(&page, "top_plates").await?;
    page.go("#/sheet").await?;
    for name in ["Top plates", "Chases", "Holes around pipes and wires", "Top plates 2"] {
        page.until_says("#inside-measure", name).await?;
    }
    page.go("#/seal").await?;
    assert_eq!(page.value(&format!("surface-{plates}-length")).await?, "120");
    seen.told(&journey);
    Ok(())
}
