//! The job that is in order, and the changes to it that several cases share.

use foamwright::job::Now;
use serde_json::{Value, json};
use std::path::Path;

/// The instant at which every case is worked out.
pub const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

pub fn sample() -> Value {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/jobs/larkspur-lane/job.json");
    let mut job: Value =
        serde_json::from_str(&std::fs::read_to_string(path).expect("the sample job")).expect("json");
    set(&mut job, "flames_out", "yes");
    // In order: cylinder B warm, every reading five minutes old and well inside its window.
    for reading in job["readings"].as_array_mut().expect("readings") {
        reading["taken"] = json!({ "ms": NOW.ms - 300_000.0, "offset_min": -300 });
        if reading["of"] != "humidity" {
            reading["entries"] = json!([{ "field": "temperature", "text": "75 F" }]);
        }
    }
    job
}

pub fn set(list: &mut Value, field: &str, text: &str) {
    let entries = list["entries"].as_array_mut().expect("entries");
    entries.retain(|entry| entry["field"] != field);
    entries.push(json!({ "field": field, "text": text }));
}

pub fn read(job: &mut Value, of: &str, text: &str) {
    let readings = job["readings"].as_array_mut().expect("readings");
    let reading = readings.iter_mut().find(|one| one["of"] == of).expect("a reading of that kind");
    let field = if of == "humidity" { "humidity" } else { "temperature" };
    reading["entries"] = json!([{ "field": field, "text": text }]);
}

pub fn drop_reading(job: &mut Value, of: &str) {
    job["readings"].as_array_mut().expect("readings").retain(|one| one["of"] != of);
}

pub fn dew_point(job: &mut Value, text: &str) {
    job["readings"].as_array_mut().expect("readings").push(json!({
        "id": 190, "of": "dew_point", "name": "", "entries": [{ "field": "temperature", "text": text }],
        "taken": { "ms": NOW.ms - 300_000.0, "offset_min": -300 }
    }));
}

/// Answers about the first surface that was read.
pub fn spot(job: &mut Value, answers: &[(&str, &str)]) {
    let readings = job["readings"].as_array_mut().expect("readings");
    let reading = readings.iter_mut().find(|one| one["of"] == "surface").expect("a surface");
    for (field, text) in answers {
        set(reading, field, text);
    }
}

/// One kit at hand, and nothing known of it but this.
pub fn owned(job: &mut Value, entries: &[(&str, &str)]) {
    let entries: Vec<_> =
        entries.iter().map(|(field, text)| json!({ "field": field, "text": text })).collect();
    job["stock"] = json!([{ "id": 193, "name": "From last week", "entries": entries }]);
}

/// One reading more, of a kind that the sample has not.
pub fn another(job: &mut Value, of: &str, field: &str, text: &str) {
    job["readings"].as_array_mut().expect("readings").push(json!({
        "id": 192, "of": of, "name": "", "entries": [{ "field": field, "text": text }],
        "taken": { "ms": NOW.ms - 300_000.0, "offset_min": -300 }
    }));
}

/// The rim as a plane that is walked along its edges: the length of each, and the turn at its end.
pub fn walk(job: &mut Value, legs: &[(&str, &str)]) {
    job["surfaces"][0]["shape"] = json!("polygon");
    let leg = |(at, (length, turn)): (usize, &(&str, &str))| {
        json!({ "id": 170 + at, "entries": [
            { "field": "length", "text": length }, { "field": "turn", "text": turn }
        ] })
    };
    job["surfaces"][0]["legs"] = legs.iter().enumerate().map(leg).collect();
}

/// A new house in a zone, by a book; an edition may be left open.
pub fn house(job: &mut Value, zone: &str, edition: &str) {
    for (field, text) in [("work", "new"), ("zone", zone), ("edition", edition)] {
        set(job, field, text);
    }
}

/// The first surface as the underside of a roof deck of 600 ft², with batts below the foam.
pub fn roof(job: &mut Value, zone: &str, edition: &str) {
    house(job, zone, edition);
    job["surfaces"][0]["shape"] = json!("typed_area");
    set(&mut job["surfaces"][0], "area", "600 ft2");
    set(&mut job["surfaces"][0], "component", "roof_deck");
}

/// What the first surface is built of: material, where it lies, its R where that is typed.
pub fn layers(job: &mut Value, all: &[(&str, &str, &str)]) {
    let layer = |(at, (made_of, position, r)): (usize, &(&str, &str, &str))| {
        let entries = [("made_of", *made_of), ("position", *position), ("layer_r", *r)];
        let entries: Vec<_> =
            entries.iter().map(|(field, text)| json!({ "field": field, "text": text })).collect();
        json!({ "id": 180 + at, "entries": entries })
    };
    job["surfaces"][0]["layers"] = all.iter().enumerate().map(layer).collect();
}

pub fn opening(job: &mut Value, of: usize) -> &mut Value {
    &mut job["surfaces"][1]["openings"][of]
}

/// A Medium kit opened an hour ago, its cylinder A at this temperature.
pub fn kit_on(job: &mut Value, cylinder_a: &str) {
    job["events"] = json!([{
        "id": 150, "what": "kit_on", "key": "31", "at": { "ms": NOW.ms - 3_600_000.0, "offset_min": -300 },
        "entries": [{ "field": "cylinder_a", "text": cylinder_a }]
    }]);
}

/// A Medium 160 on the shelf, opened unless said otherwise.
pub fn shelf(job: &mut Value, entries: &[(&str, &str)]) {
    let mut kit =
        json!({ "id": 150, "name": "Medium 160", "entries": [{ "field": "label_yield", "text": "160" }] });
    set(&mut kit, "state", "opened");
    for (field, text) in entries {
        set(&mut kit, field, text);
    }
    job["stock"] = json!([kit]);
}

/// One each of many sizes, so that finding the sum that just reaches the need is the subset-sum problem and the
/// search runs into its bound. Either all cost nearly the same a board foot, so that the least cost is open,
/// or all cost the same a kit, so that only what is left over is.
pub fn hard_catalogue(job: &mut Value, cost_open: bool) {
    let mut seed = 12_345_u32;
    let kits = (0..40_u32).map(|index| {
        seed = seed.wrapping_mul(1_103_515_245).wrapping_add(12_345);
        let tens = 20_000 + (seed >> 8) % 80_000;
        let off = if index > 30 { 1 } else { 0 };
        let label = format!("{}.{:02}", tens / 10, tens % 10 * 10 + off);
        let (label, price) = if cost_open {
            (label, format!("${tens}.0{}", 2 * off))
        } else {
            (format!("506.{:02}", tens % 100), "$500".to_owned())
        };
        json!({ "id": 30 + index, "name": format!("Kit {index}"), "entries": [
            { "field": "label_yield", "text": label }, { "field": "price", "text": price },
            { "field": "limit", "text": if cost_open { "1" } else { "2" } },
        ] })
    });
    job["kits"] = kits.collect();
    set(job, "yield_factor", "100");
    set(job, "fixed_loss", "0");
    set(job, "over_depth", "0");
    job["surfaces"] = json!([{ "id": 101, "name": "Floor", "shape": "typed_area", "depth_way": "typed", "entries": [
        { "field": "area", "text": if cost_open { "70000.05 ft2" } else { "7459.05 ft2" } }, { "field": "depth", "text": "1 in" }
    ] }]);
}

pub fn dew_point_only(job: &mut Value, text: &str) {
    drop_reading(job, "humidity");
    dew_point(job, text);
}

/// A forecast: date, low and high of each day.
pub fn days(job: &mut Value, days: &[(&str, &str, &str)]) {
    let day = |(at, (date, low, high)): (usize, &(&str, &str, &str))| {
        json!({ "id": 300 + at, "entries": [
            { "field": "date", "text": date }, { "field": "low", "text": low }, { "field": "high", "text": high }
        ] })
    };
    job["forecast"] = days.iter().enumerate().map(day).collect();
}

/// A group of cold kits that came in so many hours ago, into a room at this temperature.
pub fn warming(job: &mut Value, hours: f64, room: &str) {
    job["warming"] = json!([{
        "id": 194, "name": "Second set", "moved_in": { "ms": NOW.ms - hours * 3_600_000.0, "offset_min": -300 },
        "entries": [{ "field": "start", "text": "40 F" }, { "field": "room", "text": room }]
    }]);
}
