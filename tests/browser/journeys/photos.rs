//! Photos: added through the file input, kept, opened large, removed and put back; refused and without room.

use super::sheet;
use crate::Journey;
use driving::Step;
use driving::beforehand::{FULL_BASE, NO_BASE};
use driving::page::Page;
use serde_json::{Value, json};
use std::path::PathBuf;
use std::sync::Arc;
use thirtyfour::By;

/// Reads the data base beside the page: how many photos it holds, of how many jobs, and the longest side and the
/// kind of the first picture.
const HELD: &str = "const asked = indexedDB.open('foamwright.photos');
asked.onsuccess = async () => {
  const all = asked.result.transaction(['photos', 'pictures']);
  const photos = all.objectStore('photos').getAll(), pictures = all.objectStore('pictures').getAll();
  await new Promise(resolve => { all.oncomplete = resolve; });
  const first = pictures.result[0] && new Uint8Array(pictures.result[0]);
  done({ photos: photos.result.length, pictures: pictures.result.length, jobs: [...new Set(photos.result.map(one => one.job))],
    jpeg: !!first && first[0] === 0xff && first[1] === 0xd8 });
  asked.result.close();
};";

/// A picture of 2400 × 1800 dots, its left half red and its right half blue, painted by the browser.
async fn painted(journey: &Journey, page: &Page) -> Step<PathBuf> {
    let script = "const canvas = document.createElement('canvas');
        canvas.width = 2400; canvas.height = 1800;
        const brush = canvas.getContext('2d');
        brush.fillStyle = '#e01010'; brush.fillRect(0, 0, 1200, 1800);
        brush.fillStyle = '#1010e0'; brush.fillRect(1200, 0, 1200, 1800);
        canvas.toBlob(async blob => done([...new Uint8Array(await blob.arrayBuffer())]), 'image/png');";
    let bytes: Vec<u8> = serde_json::from_value(page.run_async(script, vec![]).await?)?;
    assert_eq!(bytes.get(1..4), Some(b"PNG".as_slice()));
    sheet::written(&format!("{}-wall.png", journey.engine.name()), &bytes)
}

/// Chooses a file in the place for photos.
async fn add(page: &Page, file: &std::path::Path) -> Step {
    page.until("a place for photos", "return !!document.querySelector('.photo-part input[type=file]')")
        .await?;
    let input = page.browser().driver.find(By::Css(".photo-part input[type=file]")).await?;
    input.send_keys(file.to_string_lossy()).await?;
    Ok(())
}

/// Waits until the strips of the screen hold so many photos that can be seen.
async fn until_photos(page: &Page, count: u64) -> Step {
    let script = format!(
        "const all = [...document.querySelectorAll('.photos img')];
         return document.querySelector('.photo-part') && all.length === {count} && all.every(one => one.complete && one.naturalWidth === 320 && visible(one))"
    );
    page.until(&format!("{count} photos"), &script).await?;
    Ok(())
}

/// Opens the first photo large and gives its size and the colors at its left and right.
async fn large(page: &Page) -> Step<Value> {
    page.press_at(".photos button").await?;
    page.until(
        "the picture is large",
        "const one = document.querySelector('dialog[open] img'); if (!one?.complete || !one.naturalWidth) return null;
         const canvas = document.createElement('canvas'); canvas.width = one.naturalWidth; canvas.height = one.naturalHeight;
         const brush = canvas.getContext('2d'); brush.drawImage(one, 0, 0);
         const at = x => { const [r, , b] = brush.getImageData(x, one.naturalHeight / 2, 1, 1).data; return r > 180 && b < 60 ? 'red' : b > 180 && r < 60 ? 'blue' : `${r} ${b}`; };
         return [one.naturalWidth, one.naturalHeight, at(100), at(one.naturalWidth - 100)]",
    )
    .await
}

/// A photo of a surface of the sample, which becomes the person's own job: smaller, kept over a reload, removed,
/// put back, and gone with the job. Neither the job nor what is on the shelf knows of it.
pub async fn of_a_surface(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((360, 800))).await?;
    page.open_ready("#/surface/101").await?;
    let file = painted(&journey, &page).await?;
    add(&page, &file).await?;
    until_photos(&page, 1).await?;
    let record = sheet::until_kept(&page, |_| true).await?;
    assert!(!record.to_string().contains("photo"), "a photo is no part of the job: {record}");
    let job = &record["id"];
    let held = page.run_async(HELD, vec![]).await?;
    assert_eq!(held, json!({ "photos": 1, "pictures": 1, "jobs": [job], "jpeg": true }));

    page.open_ready("#/surface/101").await?;
    page.reload().await?;
    until_photos(&page, 1).await?;
    assert_eq!(
        large(&page).await?,
        json!([1600, 1200, "red", "blue"]),
        "half as large again is left: 1600 long"
    );
    let (faults, _) = page.axe().await?;
    assert!(faults.is_empty(), "the open picture: {faults:?}");
    assert!(page.misfits().await?.is_empty(), "the open picture does not fit");
    page.press_in("dialog", "Close").await?;
    page.until("closed", "return !document.querySelector('dialog')").await?;
    let focus = page.run("return document.activeElement.closest('.photos') !== null", vec![]).await?;
    assert_eq!(focus, json!(true), "the focus is back on the photo");

    large(&page).await?;
    page.press_in("dialog", "Remove").await?;
    until_photos(&page, 0).await?;
    page.press_in("[data-notice=photo-removed]", "Put it back").await?;
    until_photos(&page, 1).await?;
    assert_eq!(large(&page).await?, json!([1600, 1200, "red", "blue"]));
    page.press_in("dialog", "Remove").await?;
    until_photos(&page, 0).await?;
    page.reload().await?;
    page.until_says(".photo-part", "No photo yet").await?;
    assert_eq!(page.run_async(HELD, vec![]).await?["pictures"], json!(0));

    // A file that is no picture is said where it was chosen.
    add(&page, &sheet::written(&format!("{}-no-picture.png", journey.engine.name()), b"no picture")?).await?;
    page.until_says(".photo-part [role=status]", "no-picture.png could not be read").await?;

    // One of the job as a whole, and the way of all photos when the job is deleted.
    page.go("#/photos").await?;
    add(&page, &file).await?;
    until_photos(&page, 1).await?;
    page.until_says("#view", "This job: 1 photo").await?;
    page.go("#/jobs").await?;
    page.press_in("#view .job", "Delete").await?;
    let wanted =
        |count: u64| format!("const wanted = {count}; const count = () => {{ {HELD_COUNT} }}; count();");
    page.run_async(&wanted(0), vec![]).await?;
    page.press_in("[data-notice=deleted]", "Put it back").await?;
    page.run_async(&wanted(1), vec![]).await?;
    page.go("#/photos").await?;
    until_photos(&page, 1).await?;
    Ok(())
}

/// Waits until the data base holds as many photos as `wanted`.
const HELD_COUNT: &str = "const asked = indexedDB.open('foamwright.photos');
asked.onsuccess = () => {
  const number = asked.result.transaction('photos').objectStore('photos').count();
  number.onsuccess = () => { asked.result.close(); if (number.result === wanted) done(true); else setTimeout(count, 50); };
};";

/// The browser refuses its data base.
pub async fn blocked(journey: Arc<Journey>) -> Step {
    journey.beforehand(NO_BASE).await?;
    goes_on(journey, "refuses to keep photos").await
}

/// The data base has no room.
pub async fn full(journey: Arc<Journey>) -> Step {
    journey.beforehand(FULL_BASE).await?;
    goes_on(journey, "no room left for photos").await
}

/// Storage refused by the person's settings. Where that leaves the data base open, nothing is put into it: the job
/// is not kept either.
pub async fn refused(journey: Arc<Journey>) -> Step {
    goes_on(journey, "refuses to keep photos").await
}

/// What is not kept is shown as long as the page is open, said once, and nothing else is touched by it.
async fn goes_on(journey: Arc<Journey>, said: &str) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/101").await?;
    let file = painted(&journey, &page).await?;
    add(&page, &file).await?;
    until_photos(&page, 1).await?;
    page.until_says("[data-notice=photos]", said).await?;
    assert_eq!(large(&page).await?, json!([1600, 1200, "red", "blue"]));
    page.press_in("dialog", "Close").await?;
    page.press_in("[data-notice=photos]", "Put away").await?;
    add(&page, &file).await?;
    until_photos(&page, 2).await?;
    assert_eq!(page.count("[data-notice=photos]").await?, 0, "said once");
    page.until_says(".photo-part [role=status]", said).await?;
    // 2 × (120 + 30) ft × 9¼ in: 231.25 ft² before joist ends.
    page.write("surface-101-length", "120 ft").await?;
    page.until_says("#view", "231.3 ft²").await?;
    page.reload().await?;
    page.go("#/surface/101").await?;
    page.until_says(".photo-part", "No photo yet").await
}
