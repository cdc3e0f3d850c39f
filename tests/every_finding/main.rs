//! Every finding code is raised by a case: one change to a job that is in order. The sound job raises none of them.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod jobs;
mod people;

use foamwright::findings::{Code, Severity};
use foamwright::job::Job;
use jobs::{
    NOW, another, days, dew_point, dew_point_only, drop_reading, hard_catalogue, house, kit_on, layers,
    opening, owned, read, roof, sample, set, shelf, spot, walk, warming,
};
use serde_json::{Value, json};

/// The change that raises each code.
fn change(code: Code, job: &mut Value) {
    let rim = |job: &mut Value, field: &str, text: &str| set(&mut job["surfaces"][0], field, text);
    let foam = |job: &mut Value, field: &str, text: &str| set(&mut job["foams"][0], field, text);
    match code {
        Code::Needed => rim(job, "length", ""),
        Code::TwoMeanings => rim(job, "length", "5.11"),
        Code::NotANumber => rim(job, "length", "wide"),
        Code::Negative => rim(job, "length", "-5 ft"),
        Code::ZeroBelowTheLine => rim(job, "length", "1/0"),
        Code::WrongUnit => rim(job, "length", "12 lb"),
        Code::TooLarge => rim(job, "length", &"9".repeat(60)),
        Code::TooLong => rim(job, "length", &"1".repeat(300)),
        Code::NotWhole => set(opening(job, 0), "count", "1.5"),
        Code::NoSuchDay => set(job, "spray_date", "2026-02-30"),
        Code::NotTaken => rim(job, "length", "10e2"),
        Code::BelowLimit => set(&mut job["kits"][0], "label_yield", "1/2"),
        Code::AboveLimit => rim(job, "depth", "40 in"),
        Code::Unlikely => rim(job, "length", "236 ft"),
        Code::Several => rim(job, "length", "40' x 28'"),
        Code::ThreeLengths => {
            job["surfaces"][0]["shape"] = json!("typed_area");
            rim(job, "area", "10'x14'x8'");
        }
        Code::RunTogether => rim(job, "existing", "3/8,1,7/8"),
        Code::RulesCross => {
            rim(job, "exposure", "exposed");
            rim(job, "spot", "rim");
            rim(job, "target_r", "R-20");
        }
        Code::ExposedTooThick => {
            rim(job, "exposure", "exposed");
            rim(job, "spot", "rim");
            rim(job, "depth", "3 5/16 in");
        }
        Code::ExposedOverTested => {
            rim(job, "exposure", "exposed");
            rim(job, "spot", "rim");
            foam(job, "tested_thickness", "2 in");
        }
        Code::ExposedNotAvailable | Code::ExposedBlank => {
            rim(job, "exposure", "exposed");
            rim(job, "spot", "rim");
            foam(job, "smoke", "");
        }
        Code::ExposedOutside => {
            rim(job, "exposure", "exposed");
            rim(job, "spot", "rim");
            foam(job, "density", "2.1");
        }
        Code::NoToleranceLeft => {
            rim(job, "exposure", "exposed");
            rim(job, "spot", "rim");
            rim(job, "depth", "3 1/8 in");
            rim(job, "most", "");
        }
        // A rim may stand bare by its own rule; a wall may not.
        Code::CoverAsked => set(&mut job["surfaces"][1], "exposure", "exposed"),
        Code::IgnitionAsked => {
            set(&mut job["surfaces"][1], "exposure", "exposed");
            set(&mut job["surfaces"][1], "room", "service");
        }
        Code::BareInWeather => {
            set(&mut job["surfaces"][1], "exposure", "exposed");
            set(&mut job["surfaces"][1], "room", "weather");
        }
        // An ignition barrier where things are stored.
        Code::CoverNotEnough => {
            set(&mut job["surfaces"][1], "room", "storage");
            set(&mut job["surfaces"][1], "cover", "thin_gypsum");
        }
        Code::CoverByReport => set(&mut job["surfaces"][1], "cover", "tested_coating"),
        Code::CoverSinceNewer => {
            set(job, "edition", "2012_2018");
            set(&mut job["surfaces"][1], "room", "living");
            set(&mut job["surfaces"][1], "cover", "wood_panel");
        }
        Code::CoverUnclear => {
            set(&mut job["surfaces"][1], "exposure", "covered");
            set(&mut job["surfaces"][1], "cover", "none");
        }
        Code::BurnsTooFast => foam(job, "flame", "80"),
        Code::OldFoam => rim(job, "existing", "3/8, 1, 7/8"),
        Code::NothingToAdd => rim(job, "existing", "3 to 4"),
        Code::PatchesExceed => {
            job["surfaces"][0]["patches"] = json!([{ "id": 195, "entries": [
                { "field": "area", "text": "900 ft2" }, { "field": "depth", "text": "4 in" }
            ] }]);
        }
        Code::NothingLeft => {
            for surface in job["surfaces"].as_array_mut().expect("surfaces") {
                surface["depth_way"] = json!("left_over");
            }
        }
        Code::OpeningsExceed => set(opening(job, 0), "count", "40"),
        Code::OpeningOutside => set(opening(job, 0), "from_left", "23 ft"),
        Code::OpeningsOverlap => set(opening(job, 0), "from_left", "12 ft"),
        Code::HeightsCross => {
            job["surfaces"][0]["shape"] = json!("band");
            rim(job, "from_height", "4 ft");
            rim(job, "to_height", "2 ft");
        }
        Code::PipeFillsHole => {
            job["surfaces"][0]["shape"] = json!("penetrations");
            for (field, text) in [("holes", "6"), ("hole_size", "2 in"), ("pipe_size", "2 in")] {
                rim(job, field, text);
            }
        }
        Code::SidesCannotMeet => {
            job["surfaces"][0]["shape"] = json!("triangle");
            for (side, text) in [("length", "10 ft"), ("side_b", "4 ft"), ("side_c", "6 ft")] {
                rim(job, side, text);
            }
        }
        Code::LegsFew => walk(job, &[("10 ft", "left"), ("10 ft", "left")]),
        Code::LegsOpen => {
            walk(job, &[("20 ft", "left"), ("10 ft", "left"), ("19 ft", "left"), ("10 ft", "left")]);
        }
        Code::LegsSpread => {
            walk(job, &[("20 ft", "left"), ("10 ft", "left"), ("19' 11\"", "left"), ("10 ft", "left")]);
        }
        Code::LegsClosed => {
            walk(job, &[("20 ft", "left"), ("10 ft", "left"), ("20 ft", "left"), ("", "left")])
        }
        Code::LegsCross => {
            walk(
                job,
                &[("20 ft", "left"), ("10 ft", "left"), ("10 ft", "left"), ("15 ft", "left"), ("", "left")],
            );
        }
        Code::RadiusTooShort => {
            job["surfaces"][0]["shape"] = json!("arch");
            rim(job, "span", "9 ft");
            rim(job, "radius", "4 ft");
        }
        Code::NoSideFoamed => {
            job["surfaces"][0]["shape"] = json!("box_duct");
            for side in ["side_top", "side_bottom", "side_left", "side_right"] {
                rim(job, side, "no");
            }
        }
        Code::DeeperThanRound => {
            job["surfaces"][0]["shape"] = json!("cylinder");
            rim(job, "diameter", "4 in");
            rim(job, "to_height", "10 ft");
            rim(job, "side", "inside");
        }
        Code::ProfileImpossible => {
            for (field, text) in [("ground", "wave"), ("rib_pitch", "3 in"), ("rib_depth", "2 in")] {
                rim(job, field, text);
            }
        }
        Code::ContourNotCounted => {
            rim(job, "ground", "stone");
            rim(job, "stone_way", "follow");
        }
        Code::PocketsRuleLifts => {
            for (field, text) in [("ground", "stone"), ("stone_way", "fill"), ("pockets", "0, 3 1/2, 1")] {
                rim(job, field, text);
            }
        }
        Code::JoistsNotSaid => rim(job, "joists_land", ""),
        Code::ParallelOutOfReach => rim(job, "first_parallel", "out_of_reach"),
        Code::OpeningNotPlaced => set(opening(job, 0), "from_left", ""),
        Code::NoSheet => job["surfaces"][0]["foam"] = json!(77),
        Code::TargetBeyondSheet => set(&mut job["surfaces"][2], "target_r", "R-60"),
        // A rim of the 2018 table in zone 5: R-20, 3.33 in of the sample's foam.
        Code::CodeShort => {
            house(job, "5a", "2012_2018");
            rim(job, "depth", "3 in");
        }
        // 4 perm at 1 in is 1 perm at 4 in: a rule against water, which no edition is needed for.
        Code::CodeNotAsked => {
            roof(job, "5a", "");
            foam(job, "permeance", "4");
            job["surfaces"][0]["depth_way"] = json!("rules");
        }
        // 20+5 or 13+10 in zone 6: foam between joists reaches neither without unbroken insulation.
        Code::CodeOutOfReach => house(job, "6a", "2012_2018"),
        Code::NoLeastHere => {
            house(job, "5a", "2012_2018");
            rim(job, "code_path", "none");
            job["surfaces"][0]["depth_way"] = json!("rules");
        }
        Code::WayFromMemory => {
            for (field, text) in [("work", "new"), ("zone", "5a"), ("edition", "2012_2018")] {
                set(job, field, text);
            }
            for (field, text) in [("component", "wall"), ("code_path", "u_factor")] {
                rim(job, field, text);
            }
        }
        Code::CodeShortMemory => {
            set(job, "work", "alteration");
            for (field, text) in [("component", "wall"), ("cavity_opened", "yes"), ("cavity", "2x6")] {
                rim(job, field, text);
            }
        }
        Code::CodeUShort => {
            house(job, "5a", "2021");
            rim(job, "code_path", "u_factor");
            layers(job, &[("plywood_1_2", "outside", "")]);
            rim(job, "framing_share", "0");
            rim(job, "depth", "2 in");
        }
        Code::EditionPartly => house(job, "5a", "2024"),
        Code::SmallCeilingTooLarge => {
            roof(job, "5a", "2012_2018");
            rim(job, "code_path", "small_ceiling");
        }
        Code::UnventedShort | Code::ShareShort => {
            roof(job, "5a", "2012_2018");
            layers(job, &[("batt", "cavity", "R-38")]);
            rim(job, "depth", "2 in");
        }
        Code::FoamTooOpen => {
            roof(job, "5a", "2012_2018");
            foam(job, "permeance", "4");
            rim(job, "depth", "2 in");
        }
        Code::FoamPermeanceBlank => {
            roof(job, "5a", "2012_2018");
            foam(job, "permeance", "");
        }
        Code::ClassThreeShort => {
            house(job, "5a", "2012_2018");
            rim(job, "component", "wall");
            rim(job, "inner_retarder", "class_3");
            foam(job, "permeance", "1.2");
            layers(job, &[("batt", "cavity", "R-13")]);
            rim(job, "depth", "1 in");
        }
        Code::RetarderNotAllowed => {
            house(job, "1a", "2012_2018");
            rim(job, "component", "wall");
            rim(job, "inner_retarder", "class_1");
        }
        Code::NoListedR => job["foams"][0]["r_at"] = json!([]),
        Code::BelowListed => {
            rim(job, "depth", "1 in");
            rim(job, "promise", "1/4 in");
        }
        Code::DeeperThanCavity => rim(job, "cavity", "2 in"),
        Code::WholeShort | Code::WholeOutOfReach => {
            job["surfaces"][0]["layers"] = json!([{ "id": 195, "entries": [
                { "field": "made_of", "text": "hollow_siding" }, { "field": "position", "text": "outside" }
            ] }]);
            rim(job, "framing_share", "10 %");
            rim(job, "depth", "1 in");
            rim(job, "whole_r", if code == Code::WholeShort { "R-10" } else { "R-90" });
        }
        Code::FillSqueezed => {
            job["surfaces"][0]["layers"] = json!([{ "id": 195, "entries": [
                { "field": "made_of", "text": "batt" }, { "field": "position", "text": "cavity" },
                { "field": "thickness", "text": "3 1/2 in" }, { "field": "layer_r", "text": "R-13" }
            ] }]);
            rim(job, "cavity", "5 1/2 in");
        }
        Code::SteelFraming | Code::ShareNotSaid => {
            job["surfaces"][0]["layers"] = json!([{ "id": 195, "entries": [
                { "field": "made_of", "text": "hollow_siding" }, { "field": "position", "text": "outside" }
            ] }]);
            job["surfaces"][0]["deduct_framing"] = json!(false);
            rim(job, "component", "wall");
            rim(job, "framing", if code == Code::SteelFraming { "steel" } else { "wood" });
        }
        Code::DepthsCross => rim(job, "promise", "5 in"),
        Code::ThinnerThanLift => rim(job, "depth", "1/4 in"),
        Code::LiftsCross => {
            foam(job, "largest_lift", "1 in");
            foam(job, "least_lift", "0.9 in");
            rim(job, "depth", "1.25 in");
        }
        Code::ThickLift => foam(job, "largest_lift", "3 in"),
        Code::KitUnusable => set(&mut job["kits"][0], "price", ""),
        Code::NotEnoughKits => {
            for kit in job["kits"].as_array_mut().expect("kits") {
                set(kit, "limit", "1");
            }
        }
        Code::ChosenTooLittle => {
            job["purchase"] = json!({ "buy": [{ "kit": 30, "count": 1 }], "reason": "" });
        }
        Code::ChosenDearer => {
            job["purchase"] = json!({ "buy": [{ "kit": 32, "count": 4 }], "reason": "only size in stock" });
        }
        Code::StockUnknown => shelf(job, &[("state", "opened"), ("opened", "2026-10-01")]),
        Code::StockPastDate => shelf(job, &[("state", "sealed"), ("expires", "2026-10-13")]),
        Code::StockOpenTooLong => shelf(job, &[("opened", "2026-09-01"), ("a_left", "50"), ("b_left", "50")]),
        Code::StockDayAhead => shelf(job, &[("opened", "2026-10-20"), ("a_left", "50"), ("b_left", "50")]),
        Code::StockOverWeight => {
            shelf(job, &[("state", "opened"), ("a_label", "40 lb"), ("a_weight", "60 lb")])
        }
        Code::StockPurgeDue => shelf(job, &[("opened", "2026-10-01"), ("last_purge", "2026-10-02")]),
        Code::StockStorage => shelf(job, &[("state", "sealed"), ("storage", "40 F")]),
        Code::StockNoDate => shelf(job, &[("state", "sealed")]),
        Code::TooBig => rim(job, "depth", "20 in"),
        Code::LiftEarly => {
            let lift = |id: u32, lift: u32, minutes_ago: f64| {
                json!({
                    "id": id, "what": "lift", "surface": 101, "lift": lift,
                    "at": { "ms": NOW.ms - minutes_ago * 60_000.0, "offset_min": -300 }
                })
            };
            job["events"] = json!([lift(150, 1, 20.0), lift(151, 2, 14.0)]);
        }
        Code::KitGaveLess => {
            kit_on(job, "75 F");
            job["events"].as_array_mut().expect("events").push(json!({
                "id": 151, "what": "kit_off", "at": { "ms": NOW.ms - 60_000.0, "offset_min": -300 }, "entries": [
                    { "field": "sprayed_area", "text": "60 ft2" }, { "field": "mean_depth", "text": "1 in" }
                ]
            }));
        }
        Code::KitCold => kit_on(job, "63 F"),
        Code::KitHot => kit_on(job, "96 F"),
        Code::EventAhead => {
            kit_on(job, "75 F");
            job["events"][0]["at"]["ms"] = json!(NOW.ms + 3_600_000.0);
        }
        Code::MassShort => set(&mut job["kits"][2], "net_weight", "40 lb"),
        Code::CylinderNotRead => drop_reading(job, "cylinder_a"),
        Code::AirNotRead => drop_reading(job, "air"),
        Code::SurfaceNotRead => drop_reading(job, "surface"),
        Code::HumidityNotRead => drop_reading(job, "humidity"),
        Code::ReadingOld => job["readings"][0]["taken"]["ms"] = json!(NOW.ms - 61.0 * 60_000.0),
        Code::ReadingUntimed => job["readings"][0]["taken"]["ms"] = json!(NOW.ms + 3_600_000.0),
        Code::CylinderCold => read(job, "cylinder_b", "63"),
        Code::CylinderHot => read(job, "cylinder_b", "95"),
        Code::CylinderDanger => read(job, "cylinder_b", "121 F"),
        Code::AirCold => read(job, "air", "50"),
        Code::AirHot => read(job, "air", "95"),
        Code::SurfaceCold => read(job, "surface", "50"),
        Code::SurfaceHot => read(job, "surface", "95"),
        Code::DewTooClose => read(job, "humidity", "95"),
        Code::DewWithinMeterError => {
            // 75 °F and 80 % make a dew point near 68.4 °F; with 85 % and 76 °F it is near 71.2.
            read(job, "humidity", "80");
        }
        Code::Unanswered => set(job, "flames_out", ""),
        Code::InfraredOnMetal => spot(job, &[("material", "metal"), ("how", "infrared")]),
        Code::MetalSkin => spot(job, &[("material", "metal"), ("how", "contact")]),
        Code::MasonryDamp => spot(job, &[("material", "masonry"), ("masonry_dry", "no")]),
        Code::MoistureNotRead => spot(job, &[("material", "wood")]),
        Code::WoodWet => another(job, "wood_moisture", "moisture", "19 %"),
        Code::WindNotRead => {
            foam(job, "wind_most", "12 mph");
            set(job, "outdoors", "yes");
        }
        Code::WindOver => {
            foam(job, "wind_most", "12 mph");
            set(job, "outdoors", "yes");
            another(job, "wind", "wind", "20 km/h");
        }
        Code::WindNotOnSheet => set(job, "outdoors", "yes"),
        Code::NightCold => another(job, "night_low", "temperature", "41 F"),
        Code::NightColdHeated => {
            another(job, "night_low", "temperature", "41 F");
            set(job, "heat_kept", "yes");
        }
        Code::CureNotOnSheet => {
            another(job, "night_low", "temperature", "65 F");
            foam(job, "cure", "");
        }
        Code::FlamesLit => set(job, "flames_out", "no"),
        Code::NotThisKit => set(job, "closed_cavity", "yes"),
        Code::NotYet => set(job, "asbestos", "not_known"),
        Code::HeaterLit => set(job, "heater_lit", "vented"),
        Code::HeaterMoist => set(job, "heater_lit", "unvented"),
        Code::WarmTooShort => warming(job, 5.0, "60 F"),
        // 26 h in a room that reaches the label's least only in the long run.
        Code::CoreCold => warming(job, 26.0, "70.2 F"),
        Code::StorageTooHot => another(job, "storage", "temperature", "125 F"),
        Code::HeaterWets
        | Code::OccupantsIn
        | Code::ExtraCare
        | Code::Sensitized
        | Code::NotIsolated
        | Code::AirHandlerOn
        | Code::FluePulled
        | Code::VehicleOver => people::change(code, job),
        Code::KitNotKnown => owned(job, &[("expires", "2027-01-31")]),
        Code::KitDateNotRead => owned(job, &[("state", "sealed"), ("label_yield", "40")]),
        Code::KitPastDay => {
            owned(job, &[("state", "sealed"), ("label_yield", "40"), ("expires", "2026-01-31")])
        }
        Code::Close => read(job, "cylinder_b", "71"),
        Code::CylindersApart => read(job, "cylinder_b", "82"),
        Code::Frost => dew_point_only(job, "27 F"),
        Code::DewAboveAir => dew_point_only(job, "80 F"),
        Code::ForecastCrossed => days(job, &[("2026-10-16", "60", "50")]),
        Code::ForecastTwice => days(job, &[("2026-10-16", "40", "60"), ("Oct 16 2026", "41", "62")]),
        Code::PlaceOffClock => {
            // Minneapolis, east of Greenwich: the sun would stand highest half an hour after midnight.
            set(job, "latitude", "44.98");
            set(job, "longitude", "93.27");
            days(job, &[("2026-10-16", "40", "60")]);
        }
        Code::HotInSun => {
            set(job, "latitude", "51.5");
            set(job, "longitude", "0.1");
            set(job, "spray_date", "2026-07-16");
            days(job, &[("2026-07-16", "60", "84")]);
            job["forecast"][0]["offset_min"] = json!(60);
        }
        Code::WindowCrossed => foam(job, "air_least", "95 F"),
        Code::TargetNotPromised => {
            // Between listed thicknesses: 3.33 in for R-20, but the sheet lists R-18 at 3 in and R-21 at 3½.
            set(&mut job["surfaces"][2], "target_r", "R-20");
        }
        Code::ThicknessTwice => set(&mut job["foams"][0]["r_at"][1], "thickness", "1/2 in"),
        Code::RFalls => set(&mut job["foams"][0]["r_at"][7], "r", "R-9"),
        Code::NoKits => job["kits"] = json!([]),
        Code::LeastNotProved => hard_catalogue(job, true),
        Code::TieNotProved => hard_catalogue(job, false),
        Code::ChosenOverLimit => {
            set(&mut job["kits"][2], "limit", "2");
            job["purchase"] = json!({ "buy": [{ "kit": 32, "count": 4 }], "reason": "" });
        }
        Code::SpotNotRead => {
            job["readings"].as_array_mut().expect("readings").push(json!({
                "id": 191, "of": "surface", "name": "Attic hatch", "entries": []
            }));
        }
        Code::BelowDewPoint => {
            drop_reading(job, "humidity");
            dew_point(job, "74.9 F");
            read(job, "surface", "74 F");
        }
    }
}

fn codes(job: &Value) -> Vec<Code> {
    let job: Job = serde_json::from_value(job.clone()).expect("a job");
    foamwright::estimate(&job, NOW).findings.into_iter().map(|finding| finding.code).collect()
}

#[test]
fn a_sound_job_stops_at_nothing() {
    let job: Job = serde_json::from_value(sample()).expect("a job");
    let estimate = foamwright::estimate(&job, NOW);
    let stops: Vec<_> = estimate.findings.iter().filter(|one| one.severity == Severity::Stop).collect();
    assert!(stops.is_empty(), "{stops:#?}");
    assert_eq!(estimate.readiness.verdict, foamwright::readiness::Verdict::Go);
}

#[test]
fn every_code_is_raised_by_its_case() {
    let sound = codes(&sample());
    let mut faults = Vec::new();
    for &code in Code::ALL {
        let mut job = sample();
        change(code, &mut job);
        if sound.contains(&code) {
            faults.push(format!("{code:?}: the sound job raises it already"));
        }
        if !codes(&job).contains(&code) {
            faults.push(format!("{code:?}: its case does not raise it"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
