//! A framed wall with openings: areas, drawing, and the drawing as the way to its fields.

use super::sheet;
use crate::Journey;
use driving::Step;
use serde_json::json;
use std::sync::Arc;

/// The sample's north wall by hand (`tests/jobs/larkspur-lane`): 24 ft × 7½ ft = 180; openings 3 × 4 + 4½ × 4 = 30;
/// framing counted piece by piece 25.7; net 124.3 ft².
pub async fn areas_and_drawing(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/102").await?;
    for figure in ["180 ft²", "30 ft²", "25.7 ft²", "124.3 ft²"] {
        page.until_says("#view", figure).await?;
    }
    // The drawing is to scale and comes from the same members as the figure: what stays tinted is the net area.
    let drawn = page
        .run(
            "const svg = [...document.querySelectorAll('#view svg')].find(one => one.querySelector('.wood'));
             const area = rects => rects.reduce((sum, one) => sum + Number(one.getAttribute('width')) * Number(one.getAttribute('height')), 0);
             const whole = svg.querySelector('rect.cut');
             return { pieces: svg.querySelectorAll('.wood').length, openings: svg.querySelectorAll('rect.void').length,
               ratio: Number(whole.getAttribute('width')) / Number(whole.getAttribute('height')),
               net: (area([whole]) - area([...svg.querySelectorAll('.wood')]) - area([...svg.querySelectorAll('rect.void')])) / area([whole]) * 180 }",
            vec![],
        )
        .await?;
    assert_eq!(drawn["openings"], json!(2), "{drawn}");
    assert!(
        drawn["pieces"].as_u64().unwrap_or(0) > 20,
        "studs, kings, jacks, headers, sills, cripples: {drawn}"
    );
    let (ratio, net) = (drawn["ratio"].as_f64().unwrap_or(0.0), drawn["net"].as_f64().unwrap_or(0.0));
    assert!((ratio - 24.0 / 7.5).abs() < 0.01, "drawn to scale: {drawn}");
    // Coordinates are rounded to 0.01 px: about forty edges of 105 px on a wall of 36 thousand px².
    assert!((net - 124.3).abs() < 0.3, "the tinted area is the net area: {drawn}");
    Ok(())
}

/// Pressing a dimension focuses its field; the field that has the focus lights its dimension.
pub async fn dimension_and_field(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("#/surface/102").await?;
    for (field, name) in [
        ("opening-104-from_left", "from left"),
        ("surface-102-length", "length"),
        ("surface-102-height", "height"),
    ] {
        page.press_at(&format!("[role=button][data-at='{field}'] text")).await?;
        page.until(
            &format!("{field} has the focus"),
            &format!("return document.activeElement?.id === '{field}'"),
        )
        .await?;
        page.until(
            &format!("the dimension of {name} is lit"),
            &format!("return !!document.querySelector(\"[data-at='{field}'] .on\")"),
        )
        .await?;
        let inside = page
            .run("const box = document.activeElement.getBoundingClientRect(); return box.top >= 0 && box.bottom <= innerHeight", vec![])
            .await?;
        assert_eq!(inside, json!(true), "{field} can be seen when it has the focus");
    }
    // Whoever presses a figure presses its own dimension and not a neighbor's.
    page.run("document.querySelector('#view svg').scrollIntoView({ block: 'start' })", vec![]).await?;
    let stolen = page
        .run(
            "return [...document.querySelectorAll('#view [data-at] text')].filter(visible).map(one => {
               const box = one.getBoundingClientRect();
               const hit = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2)?.closest('[data-at]');
               return hit === one.closest('[data-at]') ? '' : `${one.textContent} leads to ${hit?.dataset.at ?? 'nothing'}` }).filter(Boolean)",
            vec![],
        )
        .await?;
    assert_eq!(stolen, json!([]), "each figure leads to its own field");
    // By keyboard too.
    page.run("document.querySelector(\"[data-at='opening-103-from_left']\").focus()", vec![]).await?;
    page.keys(thirtyfour::Key::Enter + "").await?;
    page.until("Enter leads to the field", "return document.activeElement?.id === 'opening-103-from_left'")
        .await?;

    // Moving the window moves it on the drawing: 18 of 288 in from the left end.
    page.write("opening-103-from_left", "1' 6\"").await?;
    let place = "const whole = document.querySelector('#view rect.cut'), hole = document.querySelector('#view rect.void');
         const of = (one, name) => Number(one.getAttribute(name));
         return Math.abs((of(hole, 'x') - of(whole, 'x')) / of(whole, 'width') - 18 / 288) < 0.001";
    page.until("the window is drawn 1' 6\" from the left end", place).await?;
    page.until_says("#view", "30 ft²").await?;
    // Without framing taken out: 180 − 30.
    page.press_at("label.switch").await?;
    page.until_says("#view", "150 ft²").await?;
    Ok(())
}

/// Openings can be added and removed; an opening that does not fit says so at its own field.
pub async fn openings(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    page.open_ready("#/surface/102").await?;
    page.press_in("#view", "Add an opening").await?;
    let id = page
        .until(
            "the new opening's width has the focus",
            "return Number(document.activeElement?.id.match(/^opening-(\\d+)-width$/)?.[1])",
        )
        .await?;
    page.write(&format!("opening-{id}-width"), "3'").await?;
    page.write(&format!("opening-{id}-height"), "6' 8\"").await?;
    // 30 + 20 = 50 ft² of openings.
    page.until_says("#view", "50 ft²").await?;
    page.write(&format!("opening-{id}-from_left"), "22'").await?;
    page.write(&format!("opening-{id}-sill"), "0").await?;
    // Named as on the drawing, where it has no name of its own: the third is C.
    page.until_says("#view", "C reaches 12 in past the edge").await?;
    page.press("Undo").await?;
    sheet::until_kept(&page, |record| record.to_string().contains("6' 8")).await?;
    Ok(())
}
