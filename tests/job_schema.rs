//! The published JSON Schema of the job document, `www/job-v4.schema.json`, against the types and the table
//! of fields that it describes. That real jobs validate is `tests/live/schema_check.py`'s.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::job::{DepthWay, document::JOB_FORMAT};
use foamwright::job::{EventOf, Job, Part, ReadingOf, Shape, fields};
use foamwright::measure::{Sense, Unit, Units};
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::path::Path;

fn schema() -> Value {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("www/job-v4.schema.json");
    serde_json::from_str(&std::fs::read_to_string(file).expect("the schema")).expect("JSON")
}

fn words(list: &Value) -> Vec<String> {
    let list = list.as_array().unwrap_or_else(|| panic!("no list: {list}"));
    list.iter().map(|word| word.as_str().expect("a word").to_owned()).collect()
}

/// The words of an enumeration, from what its decoder says that it expected.
fn variants<T: DeserializeOwned>() -> Vec<String> {
    let error = serde_json::from_value::<T>(json!("no such word")).err().expect("refused").to_string();
    error.split('`').skip(1).step_by(2).skip(1).map(str::to_owned).collect()
}

#[test]
fn every_field_of_every_part() {
    let schema = schema();
    for (part, at) in [
        (Part::Job, "/properties"),
        (Part::Surface, "/$defs/surface/properties"),
        (Part::Opening, "/$defs/opening/properties"),
        (Part::Foam, "/$defs/foam_sheet/properties"),
        (Part::RRow, "/$defs/r_at_thickness/properties"),
        (Part::Kit, "/$defs/kit_sheet/properties"),
        (Part::Patch, "/$defs/patch/properties"),
        (Part::Leg, "/$defs/leg/properties"),
        (Part::Layer, "/$defs/layer/properties"),
        (Part::Owned, "/$defs/owned_kit/properties"),
        (Part::Reading, "/$defs/site_reading/properties"),
        (Part::Warming, "/$defs/warming/properties"),
        (Part::WarmReading, "/$defs/warm_reading/properties"),
        (Part::Forecast, "/$defs/forecast_day/properties"),
        (Part::Event, "/$defs/event/properties"),
    ] {
        let listed = schema.pointer(&format!("{at}/entries/items/allOf/1/properties/field/enum"));
        let table: Vec<_> =
            fields().iter().filter(|row| row.part == part).map(|row| row.field.to_owned()).collect();
        assert!(!table.is_empty(), "{part:?}");
        assert_eq!(words(listed.unwrap_or(&Value::Null)), table, "{part:?}");
    }
    assert!(fields().iter().all(|row| row.part != Part::Purchase), "the purchase has entries now: list them");
}

#[test]
fn every_word_of_every_enumeration() {
    let schema = schema();
    for (at, expected) in [
        ("/properties/units", variants::<Units>()),
        ("/$defs/entered/properties/unit", variants::<Unit>()),
        ("/$defs/entered/properties/sense", variants::<Sense>()),
        ("/$defs/surface/properties/shape", variants::<Shape>()),
        ("/$defs/surface/properties/depth_way", variants::<DepthWay>()),
        ("/$defs/site_reading/properties/of", variants::<ReadingOf>()),
        ("/$defs/event/properties/what", variants::<EventOf>()),
    ] {
        assert!(expected.len() > 1, "{at}");
        assert_eq!(words(&schema.pointer(at).expect(at)["enum"]), expected, "{at}");
    }
    assert_eq!(schema.pointer("/properties/format/const"), Some(&json!(JOB_FORMAT)));
    assert_eq!(schema.pointer("/properties/version/const"), Some(&json!(foamwright::job::JOB_VERSION)));
}

/// A job in which every member of every type stands, once.
fn full() -> Value {
    let entries = |field: &str| json!([{ "field": field, "text": "1", "unit": "in", "sense": "sum" }]);
    json!({
        "format": "foamwright-job", "version": 4, "id": "full", "next_id": 16, "units": "us",
        "name": "", "place": "", "note": "", "entries": entries("under_aim"), "foam": 3,
        "surfaces": [{
            "id": 1, "name": "", "shape": "framed_wall", "entries": entries("depth"), "deduct_framing": true,
            "openings": [{ "id": 2, "name": "", "entries": entries("sill") }],
            "patches": [{ "id": 7, "name": "", "entries": entries("depth") }],
            "legs": [{ "id": 10, "entries": entries("turn") }],
            "layers": [{ "id": 11, "name": "", "entries": entries("thickness") }],
            "depth_way": "one_kit", "depth_kit": 5, "foam": 3
        }],
        "foams": [{
            "id": 3, "sheet": "", "version": 1, "name": "", "entries": entries("largest_lift"),
            "r_at": [{ "id": 4, "entries": entries("thickness") }]
        }],
        "kits": [{ "id": 5, "sheet": "", "version": 1, "name": "", "entries": entries("limit") }],
        "stock": [{ "id": 8, "sheet": "", "version": 1, "name": "", "entries": entries("label_yield") }],
        "purchase": { "buy": [{ "kit": 5, "count": 2 }], "reason": "" },
        "readings": [{
            "id": 6, "of": "surface", "name": "", "entries": entries("temperature"),
            "taken": { "ms": 0.0, "offset_min": 0 }
        }],
        "rounds": [{
            "id": 12, "of": "surface", "name": "", "entries": entries("temperature"),
            "taken": { "ms": 0.0, "offset_min": 0 }
        }],
        "warming": [{
            "id": 13, "name": "", "entries": entries("room"), "moved_in": { "ms": 0.0, "offset_min": 0 },
            "moved_out": { "ms": 0.0, "offset_min": 0 },
            "log": [{ "id": 14, "entries": entries("skin"), "taken": { "ms": 0.0, "offset_min": 0 } }]
        }],
        "forecast": [{ "id": 15, "entries": entries("low"), "offset_min": -300 }],
        "events": [{
            "id": 9, "what": "lift", "at": { "ms": 0.0, "offset_min": 0 }, "key": "", "surface": 1, "lift": 1,
            "name": "", "entries": entries("temperature")
        }]
    })
}

/// Every object of the document with the schema that describes it: (where it is, its schema).
fn objects(value: &Value, at: &str, schema: &Value, root: &Value, found: &mut Vec<(String, Value)>) {
    let resolved = match schema.get("$ref").and_then(Value::as_str) {
        Some(path) => root.pointer(path.trim_start_matches('#')).expect(path),
        None => schema.pointer("/allOf/0").map_or(schema, |first| {
            root.pointer(first["$ref"].as_str().expect("a reference").trim_start_matches('#')).expect("there")
        }),
    };
    match value {
        Value::Array(list) => {
            for (position, one) in list.iter().enumerate() {
                objects(one, &format!("{at}/{position}"), &resolved["items"], root, found);
            }
        }
        Value::Object(members) => {
            found.push((at.to_owned(), resolved.clone()));
            for (name, one) in members {
                objects(one, &format!("{at}/{name}"), &resolved["properties"][name], root, found);
            }
        }
        _ => {}
    }
}

#[test]
fn every_member_of_every_type_and_no_other() {
    let (root, full) = (schema(), full());
    let written =
        serde_json::to_value(serde_json::from_value::<Job>(full.clone()).expect("decodes")).unwrap();
    assert_eq!(written, full, "the job in this test leaves a member out");
    let mut found = Vec::new();
    objects(&full, "", &root, &root, &mut found);
    let described = 1 + root["$defs"].as_object().unwrap().len();
    let kinds: BTreeSet<_> = found.iter().map(|(_, schema)| schema["description"].to_string()).collect();
    assert_eq!(kinds.len(), described, "a definition that no job reaches");
    for (at, schema) in found {
        let members: BTreeSet<_> = full.pointer(&at).unwrap().as_object().unwrap().keys().collect();
        let listed: BTreeSet<_> = schema["properties"].as_object().unwrap().keys().collect();
        assert_eq!(members, listed, "{at}");
        let required = words(&schema["required"]);
        for name in members {
            let mut without = full.clone();
            without.pointer_mut(&at).unwrap().as_object_mut().unwrap().remove(name);
            let refused = serde_json::from_value::<Job>(without).is_err();
            assert_eq!(refused, required.contains(name), "{at}: {name}");
        }
    }
}

#[test]
fn a_member_of_a_later_build_is_allowed_and_ignored() {
    let mut later = full();
    later["surfaces"][0]["from_a_later_build"] = json!({ "anything": [1, 2] });
    assert_eq!(
        serde_json::from_value::<Job>(later).expect("decodes"),
        serde_json::from_value::<Job>(full()).expect("decodes")
    );
    assert!(!schema().to_string().contains("additionalProperties"));
}
