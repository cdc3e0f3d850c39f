//! A class: a teacher draws a sheet, students answer it on their own devices, files come back and are marked.

use super::practice::{at_exercise, fill_all, key, keys, phrase, seed_of, typed};
use super::sheet;
use crate::Journey;
use driving::Step;
use driving::page::Page;
use serde_json::{Value, json};
use std::path::Path;
use std::sync::Arc;
use thirtyfour::By;

/// Opens answer files on the screen that marks them.
async fn hand_in(page: &Page, files: &[&Path]) -> Step {
    page.until("the place for files", "return !!document.querySelector('#answer-files')").await?;
    let input = page.browser().driver.find(By::Id("answer-files")).await?;
    let paths: Vec<String> = files.iter().map(|file| file.to_string_lossy().into_owned()).collect();
    input.send_keys(paths.join("\n")).await?;
    Ok(())
}

/// Drawn by dice, one exchanged; its link holds nothing but numbers and gives the same sheet elsewhere.
pub async fn drawn_and_handed_out(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/practice").await?;
    page.press_in("#view", &phrase("en", "practice", "make_class")?).await?;
    page.until_says("#view h1", &phrase("en", "practice", "class")?).await?;
    let ticked = page
        .run("return [1, 2, 3, 4].filter(one => document.getElementById(`level-${one}`).checked)", vec![])
        .await?;
    for level in [1, 2] {
        if !ticked.as_array().is_some_and(|all| all.contains(&json!(level))) {
            page.press_in("#view", &format!("Level {level}")).await?;
        }
    }
    for level in ticked.as_array().into_iter().flatten().filter_map(Value::as_u64).filter(|level| *level > 2)
    {
        page.press_in("#view", &format!("Level {level}")).await?;
    }
    page.write("count", "0").await?;
    page.press_in("#view", "Draw the exercises").await?;
    page.until_told("count", "1 to 20").await?;
    page.write("count", "4").await?;
    page.press_in("#view", "Draw the exercises").await?;
    let drawn = "return [...document.querySelectorAll('#view .drawn small')].map(one => one.textContent.match(/1-[1-4]-[0-9a-f]{4}/)?.[0])";
    page.until("four exercises", &format!("{drawn}.length === 4")).await?;
    let first = page.run(drawn, vec![]).await?;
    let levels: Vec<&str> =
        first.as_array().into_iter().flatten().filter_map(|one| one.as_str()?.get(2..3)).collect();
    assert_eq!(levels, ["1", "1", "2", "2"], "{first}");
    // The second is exchanged for another of its level; the others stay.
    page.press_at("#view [data-key=another-1]").await?;
    page.until(
        "another one",
        &format!("const all = (() => {{ {drawn} }})(); return all[1] !== {}", first[1]),
    )
    .await?;
    let second = page.run(drawn, vec![]).await?;
    assert_eq!((&second[0], &second[2], &second[3]), (&first[0], &first[2], &first[3]));
    page.press_at("#view [data-key=down-0]").await?;
    let moved = page.run(drawn, vec![]).await?;
    assert_eq!((&moved[0], &moved[1]), (&second[1], &second[0]));

    page.press_in("#view", "Open the class sheet").await?;
    page.until("the sheet", "return location.hash.startsWith('#/class/1-')").await?;
    page.open_all().await?;
    let link = page.value("class-link").await?;
    let seeds: Vec<&str> = moved.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    assert!(link.ends_with(&format!("#/class/{}", seeds.join(","))), "{link}");

    let elsewhere = journey.site().await?;
    let student = journey.page(&elsewhere);
    student.open_ready(&link[link.find('#').unwrap_or_default()..]).await?;
    student.until("four rows", "return document.querySelectorAll('#view ol.rows li').length === 4").await?;
    let titles = "return [...document.querySelectorAll('#view ol.rows li')].map(one => tidy(one.innerText))";
    assert_eq!(student.run(titles, vec![]).await?, page.run(titles, vec![]).await?);
    // Seeds that are none, twice or too many are said and left out.
    student.go(&format!("#/class/{},{},9-1-0000,nothing", seeds[0], seeds[0])).await?;
    for why in ["twice", "newer", "form"] {
        student.until_says("#view", &phrase("en", "practice", &format!("refused.{why}"))?).await?;
    }
    assert_eq!(student.count("#view ol.rows li").await?, 1);
    Ok(())
}

/// A student's file carries answers and no name; a teacher opens it with a foreign, a torn and a newer one.
pub async fn saved_and_marked(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    let seeds = [seed_of(&journey, "board_feet", 1)?, seed_of(&journey, "allowances", 2)?];
    let sheet_of = seeds.join(",");
    let exercises = keys(&journey, &seeds, "us")?;
    page.open_ready(&format!("#/class/{sheet_of}")).await?;
    page.until("two rows", "return document.querySelectorAll('#view ol.rows li').length === 2").await?;
    at_exercise(&page, &seeds[0]).await?;
    fill_all(&page, &exercises[0]).await?;
    at_exercise(&page, &seeds[1]).await?;
    // Cubic feet in place of board feet, and nothing more.
    let cubic = exercises[1]["slips"]
        .as_array()
        .into_iter()
        .flatten()
        .find(|one| one["slip"] == "cubic_feet" && one["step"] == 0);
    let cubic = cubic.and_then(|one| one["value"].as_f64()).ok_or("no such slip")?;
    page.write("ex-1", &typed(&exercises[1]["steps"][0], cubic)?).await?;
    page.go(&format!("#/class/{sheet_of}")).await?;
    page.until_says("#view", "4 of 7").await?;
    page.press_in("#view", "Save my answers").await?;
    let file = page.downloaded(".json").await?;
    let saved: Value = serde_json::from_str(&std::fs::read_to_string(&file)?)?;
    let mut fields: Vec<&String> = saved.as_object().ok_or("no object")?.keys().collect();
    fields.sort();
    assert_eq!(fields, ["answers", "format", "language", "saved", "seeds", "units", "version"]);
    assert_eq!(saved["seeds"], json!(seeds));

    // On the teacher's device, where nothing is known of it.
    let elsewhere = journey.site().await?;
    let teacher = journey.page(&elsewhere);
    teacher.open_ready("#/marks").await?;
    let engine = journey.engine.name();
    let text = saved.to_string();
    let foreign = sheet::written(&format!("{engine}-foreign.json"), br#"{"format":"another"}"#)?;
    let torn = sheet::written(&format!("{engine}-torn.json"), &text.as_bytes()[..text.len() / 2])?;
    let newer = sheet::written(
        &format!("{engine}-newer.json"),
        text.replace("\"version\":1", "\"version\":7").as_bytes(),
    )?;
    let other = text.replace("\"hints\":0", "\"hints\":1");
    assert_ne!(other, text);
    let hinted =
        sheet::written(&format!("{engine}-<b>hinted.json").replace(['<', '>'], "_"), other.as_bytes())?;
    hand_in(&teacher, &[&file, &foreign, &torn, &newer, &hinted]).await?;
    teacher.until_says("#view", "Points, 2 files").await?;
    for (file, why) in [(&foreign, "foreign"), (&torn, "damaged"), (&newer, "newer")] {
        let name = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        teacher.until_says("#view .says", &name).await?;
        let reason = phrase("en", "practice", &format!("file.{why}"))?;
        teacher.until_says("#view .says", reason.split('{').next().unwrap_or_default().trim()).await?;
    }
    // Three of seven; with a hint taken at each answered step two and a quarter.
    let rows =
        teacher.run("return [...document.querySelectorAll('#view table')][0].innerText", vec![]).await?;
    let rows = rows.as_str().unwrap_or_default();
    assert!(rows.contains('3') && rows.contains("2.25"), "{rows}");
    teacher.until_says("#view", &phrase("en", "practice", "slip.cubic_feet")?).await?;
    assert!(
        teacher.kept().await?.iter().all(|(_, text)| !text.contains(&seeds[1])),
        "a student's file is kept"
    );
    Ok(())
}

/// The page's own marks of a sheet are those of the program: one exercise of every scene, all steps right.
pub async fn every_scene_is_right(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/practice").await?;
    for (scene, level) in
        [("framed", 2), ("gable", 2), ("roof", 2), ("shelf", 2), ("hip", 3), ("bill", 3), ("rim", 3)]
    {
        let seed = seed_of(&journey, scene, level)?;
        let exercise = key(&journey, &seed, "us")?;
        at_exercise(&page, &seed).await?;
        fill_all(&page, &exercise).await?;
        page.press_in("#view", "Mark my steps").await?;
        let steps = exercise["steps"].as_array().map_or(0, Vec::len);
        page.until_says("#view .ex-score", &format!("{steps} of {steps}")).await?;
    }
    Ok(())
}
