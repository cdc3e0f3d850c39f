//! The dates of a job, and the file for the calendar of a phone.

use super::sheet;
use crate::Journey;
use driving::Step;
use driving::page::Page;
use std::sync::Arc;

/// 2099-10-16 is a Friday (proleptic Gregorian calendar): far enough ahead for any clock that a test runs under.
const DAY: &str = "2099-10-16";

/// The lines of a file, put together again as RFC 5545, section 3.1, says.
async fn written(page: &Page) -> Step<String> {
    page.press_in("#view", "Write a calendar file").await?;
    let text = std::fs::read_to_string(page.downloaded(".ics").await?)?;
    assert!(text.lines().all(|line| line.len() <= 75), "{text}");
    assert_eq!(text.matches('\n').count(), text.matches("\r\n").count(), "{text}");
    Ok(text.replace("\r\n ", ""))
}

/// From the sheet to the dates: nothing yet, then the day; an hour without its half is asked; the file holds both.
pub async fn dates_and_a_file(journey: Arc<Journey>) -> Step {
    let site = journey.site().await?;
    let page = journey.page(&site);
    journey.browser.viewport(Some((390, 844))).await?;
    page.open_ready("").await?;
    sheet::new_job_with_surface(&page, "rectangle").await?;
    page.go("#/ready").await?;
    page.press_in("#view", "Ready in time").await?;
    page.until_says("#view h1", "Ready in time").await?;
    // Where nothing was entered, that is what the lines say.
    for line in ["No kits that warm", "No forecast", "no time is given", "No dates yet"] {
        page.until_says("#view", line).await?;
    }
    assert_eq!(page.misfits().await?, Vec::<String>::new());
    page.go("#/calendar").await?;
    page.until_says("#view", "No dates yet").await?;
    // The press says what is missing, and leads there.
    page.press_in("#view", "Write a calendar file").await?;
    page.until_says("#view", "Nothing to write").await?;
    page.until("the day is asked", "return document.activeElement?.id === 'job-0-spray_date'").await?;

    page.open_all().await?;
    page.write("job-0-spray_date", DAY).await?;
    page.until_says("#view .dates", "Spraying").await?;
    page.write("job-0-spray_time", "1:30").await?;
    page.until_told("job-0-spray_time", "two meanings").await?;
    page.press_in("#view", "1:30 pm (after noon)").await?;
    page.until_says("#view .dates", "Fri, Oct 16, 1:30").await?;
    page.until_says("#view .dates", "Certificate and receipt due").await?;
    let text = written(&page).await?;
    for line in [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "SUMMARY:Spraying",
        "DTSTART:20991016T133000",
        "DTSTART;VALUE=DATE:20991016",
    ] {
        assert!(text.lines().any(|one| one == line), "{line} in {text}");
    }
    let uid =
        |text: &str| text.lines().find(|line| line.contains("-spray-job-0@foamwright")).map(str::to_owned);
    let first = uid(&text);
    assert!(first.is_some(), "{text}");
    assert_eq!(page.misfits().await?, Vec::<String>::new());

    page.go("#/ahead").await?;
    page.until_says("#view", "Spraying: Fri, Oct 16, 1:30").await?;

    // Moved to another hour it is the same event.
    page.go("#/calendar").await?;
    page.open_all().await?;
    page.write("job-0-spray_time", "14:15").await?;
    page.until_says("#view .dates", "2:15").await?;
    let text = written(&page).await?;
    assert!(text.contains("DTSTART:20991016T141500"), "{text}");
    assert_eq!(uid(&text), first);
    Ok(())
}
