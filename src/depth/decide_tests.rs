//! Which rule decides: from marks to the aim, from a job to its marks, and what never may decide.

#![allow(clippy::expect_used, clippy::indexing_slicing, clippy::panic)]

use super::*;
use crate::climate::{Edition, Work, Zone, r_row, u_row};
use crate::findings::Trust;
use crate::job::{Now, field};
use proptest::prelude::*;
use serde_json::{Value, json};

const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

fn entries(all: &[(&str, &str)]) -> Vec<Value> {
    let filled = all.iter().filter(|(_, text)| !text.is_empty());
    filled.map(|(field, text)| json!({"field": field, "text": text})).collect()
}

/// One surface of 70 ft² of a foam that lists R-6 an inch up to 12 in. Layers: material, where, R.
fn job(
    way: &str,
    place: &[(&str, &str)],
    surface: &[(&str, &str)],
    permeance: &str,
    layers: &[(&str, &str, &str)],
) -> Job {
    let mut own = vec![("area", "70"), ("depth", "2"), ("framing_share", "20")];
    own.retain(|(field, _)| !surface.iter().any(|(other, _)| other == field));
    own.extend(surface);
    let layers: Vec<Value> = (50..)
        .zip(layers)
        .map(|(id, (made_of, position, r))| {
            json!({"id": id, "entries": entries(&[("made_of", made_of), ("position", position), ("layer_r", r)])})
        })
        .collect();
    let listed: Vec<Value> = (1..=12)
        .map(|inches: u32| {
            let (thickness, r) = (inches.to_string(), (6 * inches).to_string());
            json!({"id": 20 + inches, "entries": entries(&[("thickness", &thickness), ("r", &r)])})
        })
        .collect();
    let mut job_entries = entries(place);
    job_entries.extend(entries(&[("under_aim", "1/2"), ("over_aim", "1/4")]));
    serde_json::from_value(json!({
        "format": "foamwright-job", "version": 4, "id": "test", "next_id": 100, "foam": 10, "entries": job_entries,
        "surfaces": [{"id": 1, "shape": "typed_area", "entries": entries(&own), "layers": layers, "depth_way": way}],
        "foams": [{"id": 10, "entries": entries(&[("permeance", permeance)]), "r_at": listed}],
    }))
    .expect("a job")
}

fn depth(job: &Job) -> Option<Depth> {
    crate::estimate(job, NOW).surfaces[0].depth.clone()
}

fn find(depth: &Depth, rule: Rule) -> Option<&Mark> {
    depth.marks.iter().find(|mark| mark.rule == rule)
}

/// From marks to the aim: the larger of the least with the tolerance over it and the mean; what is from memory or
/// worked out decides nothing. Half an inch under.
#[test]
fn from_marks_to_the_aim() {
    let mark = |rule, bound, at: f64, trust| Mark::new(rule, bound, Some(Inches(at)), trust);
    let least = |at| mark(Rule::CodeR, Bound::Least, at, Trust::Read);
    let roof = |at| mark(Rule::UnventedTable, Bound::Least, at, Trust::Read);
    let mean = |at| mark(Rule::CodeU, Bound::Mean, at, Trust::Retold);
    let out = |mark: Mark, stands| Mark { stands, ..mark };
    type Row = (Vec<Mark>, Option<(f64, Rule)>);
    let table: Vec<Row> = vec![
        (vec![], None),
        (vec![least(3.0)], Some((3.5, Rule::CodeR))),
        (vec![least(3.0), roof(3.25)], Some((3.75, Rule::UnventedTable))),
        (vec![least(3.0), roof(3.0)], Some((3.5, Rule::CodeR))),
        (vec![mean(3.0)], Some((3.0, Rule::CodeU))),
        (vec![mean(3.0), roof(2.0)], Some((3.0, Rule::CodeU))),
        (vec![mean(3.0), roof(2.5)], Some((3.0, Rule::UnventedTable))),
        (vec![mean(3.0), roof(2.75)], Some((3.25, Rule::UnventedTable))),
        (vec![least(0.0)], None),
        (vec![least(0.0), mean(1.0)], Some((1.0, Rule::CodeU))),
        (vec![out(least(4.0), Stands::NotChosen), roof(2.0)], Some((2.5, Rule::UnventedTable))),
        (vec![out(least(4.0), Stands::NotThisWork)], None),
        (vec![out(least(4.0), Stands::BeyondSheet)], None),
        (vec![mark(Rule::CodeU, Bound::Mean, 4.0, Trust::Memory)], None),
        (
            vec![mark(Rule::FillCavity, Bound::Least, 4.0, Trust::Memory), least(1.0)],
            Some((1.5, Rule::CodeR)),
        ),
        (vec![mark(Rule::UnventedShare, Bound::Least, 4.0, Trust::Derived)], None),
        (vec![mark(Rule::KitReach, Bound::Reach, 9.0, Trust::Read), least(1.0)], Some((1.5, Rule::CodeR))),
        (vec![mark(Rule::RimExposed, Bound::Most, 3.25, Trust::Read), least(4.0)], Some((4.5, Rule::CodeR))),
    ];
    for (marks, wanted) in table {
        let aim = marks::least_aim(window(&marks), Inches(0.5));
        assert_eq!(aim.map(|(aim, rule)| (aim.0, rule)), wanted, "{marks:?}");
    }
}

/// Every row of the table is asked of some job: between members with nothing else the least cavity part of the ways
/// that need nothing unbroken; unbroken the least of a way's parts that stand alone. Worked here from the row.
#[test]
fn every_row_is_asked_of_some_job() {
    let mut asked = 0;
    for edition in ["2009", "2012_2018", "2021", "2024"] {
        for zone in Zone::NAMES {
            for component in field(crate::job::Part::Surface, "component").expect("the field").choices {
                let of = |word| Edition::named(word).expect("an edition");
                let (of_zone, what) = (Zone::named(zone), Component::named(component));
                let row = r_row(of(edition), of_zone.expect("a zone"), what.expect("a component"));
                for runs in ["between", "across"] {
                    let place = [("work", "new"), ("zone", zone), ("edition", edition)];
                    let job = job("typed", &place, &[("component", component), ("runs", runs)], "", &[]);
                    let depth = depth(&job).expect("depths");
                    let mark = find(&depth, Rule::CodeR);
                    let Some(row) = row else {
                        assert_eq!(mark, None, "{edition} {zone} {component}");
                        continue;
                    };
                    let mark = mark.unwrap_or_else(|| panic!("{edition} {zone} {component}: no mark"));
                    assert_eq!((mark.printed, mark.trust), (row.printed, row.trust));
                    let across = runs == "across" && *component != "rim";
                    let alone = row.options.iter().filter_map(|one| match (one.cavity, one.continuous) {
                        (cavity, 0.0) => Some(cavity),
                        (0.0, continuous) if across => Some(continuous),
                        _ => None,
                    });
                    let least = alone.reduce(f64::min);
                    let wanted = match least {
                        None => (None, Stands::BeyondSheet),
                        Some(0.0) => (None, Stands::NotInZone),
                        Some(r) => (Some(r / 6.0), Stands::Applies),
                    };
                    let given = mark.at_in.map(|at| at.0);
                    let near = given.zip(wanted.0).is_none_or(|(a, b)| (a - b).abs() < 1e-9);
                    assert!(
                        near && given.is_some() == wanted.0.is_some() && mark.stands == wanted.1,
                        "{edition} {zone} {component} {runs}: {mark:?}, wanted {wanted:?}"
                    );
                    asked += 1;
                }
            }
        }
    }
    assert!(asked > 700, "{asked}");
}

/// What is done to the building comes first. A cavity of 5½ in that an alteration opens is filled, from memory.
#[test]
fn the_kind_of_work_comes_first() {
    for (work, opened, code, also, least) in [
        ("new", "", Stands::Applies, None, Some(20.0 / 6.0)),
        ("addition", "yes", Stands::Applies, None, Some(20.0 / 6.0)),
        ("", "", Stands::NotSaid, None, None),
        ("alteration", "yes", Stands::NotThisWork, Some((Rule::FillCavity, Stands::Applies)), None),
        ("alteration", "no", Stands::NotThisWork, Some((Rule::NoLeast, Stands::Applies)), None),
        ("alteration", "", Stands::NotThisWork, Some((Rule::FillCavity, Stands::NotSaid)), None),
        ("insulation_only", "yes", Stands::NotThisWork, Some((Rule::FillCavity, Stands::Applies)), None),
        ("insulation_only", "no", Stands::NotThisWork, Some((Rule::NoLeast, Stands::Applies)), None),
    ] {
        let place = [("work", work), ("zone", "5a"), ("edition", "2012_2018")];
        let surface = [("component", "wall"), ("cavity", "2x6"), ("cavity_opened", opened)];
        let depth = depth(&job("typed", &place, &surface, "", &[])).expect("depths");
        assert_eq!(find(&depth, Rule::CodeR).map(|mark| mark.stands), Some(code), "{work} {opened}");
        for rule in [Rule::FillCavity, Rule::NoLeast] {
            let wanted = also.filter(|(one, _)| *one == rule).map(|(_, stands)| stands);
            assert_eq!(find(&depth, rule).map(|mark| mark.stands), wanted, "{work} {opened} {rule:?}");
        }
        if let Some(fill) = find(&depth, Rule::FillCavity) {
            assert_eq!((fill.at_in, fill.trust), (Some(Inches(5.5)), Trust::Memory));
        }
        assert_eq!(depth.window.least_in.map(|at| at.0), least, "{work} {opened}");
    }
}

/// Fill in front counts for the cavity's part, unbroken board for the continuous part; a rim is cut by its joists
/// whatever is said. Zone 6 of 2018 asks 20+5 or 13+10, zone 5 of 2021 for a basement 15ci or 19 or 13+5ci.
#[test]
fn what_else_is_there_counts() {
    let batt = |r| ("batt", "cavity", r);
    let board = |r| ("rigid_board", "outside", r);
    for (component, zone, edition, runs, layers, wanted) in [
        ("wall", "6a", "2012_2018", "between", vec![], None),
        ("wall", "6a", "2012_2018", "between", vec![board("5")], Some(20.0)),
        ("wall", "6a", "2012_2018", "between", vec![board("10")], Some(13.0)),
        ("wall", "6a", "2012_2018", "between", vec![board("10"), batt("11")], Some(2.0)),
        ("wall", "6a", "2012_2018", "across", vec![batt("13")], Some(10.0)),
        ("wall", "6a", "2012_2018", "across", vec![batt("20")], Some(5.0)),
        ("rim", "6a", "2012_2018", "across", vec![], None),
        ("rim", "5a", "2021", "across", vec![], Some(30.0)),
        ("wall", "5a", "2021", "across", vec![], Some(20.0)),
        ("basement_wall", "5a", "2021", "across", vec![], Some(15.0)),
        ("basement_wall", "5a", "2021", "between", vec![], Some(19.0)),
        ("basement_wall", "5a", "2021", "between", vec![board("5")], Some(13.0)),
        ("roof_deck", "5a", "2012_2018", "between", vec![batt("38")], Some(11.0)),
        ("roof_deck", "5a", "2012_2018", "between", vec![batt("60")], Some(0.0)),
    ] {
        let place = [("work", "new"), ("zone", zone), ("edition", edition)];
        let job = job("typed", &place, &[("component", component), ("runs", runs)], "", &layers);
        let depth = depth(&job).expect("depths");
        let mark = find(&depth, Rule::CodeR).expect("the row");
        assert_eq!(mark.asks, wanted, "{component} {zone} {runs} {layers:?}");
        assert_eq!(mark.at_in.map(|at| (at.0 * 6e6).round() / 1e6), wanted, "{component} {zone} {runs}");
    }
}

/// A way that was chosen and that the part does not have leaves the row itself; one that was chosen and holds takes
/// its place; with the house traded off as a whole nothing of the table decides.
#[test]
fn the_way_chosen_decides() {
    let floor = [("component", "floor"), ("cavity", "2x8")];
    let roof = [("component", "roof_deck")];
    let wall = [("component", "wall")];
    for (surface, path, decides) in [
        (&floor[..], "r_value", Some((Rule::CodeR, 5.0))),
        (&floor[..], "fill", Some((Rule::FillFloor, 7.25))),
        (&floor[..], "small_ceiling", Some((Rule::CodeR, 5.0))),
        (&roof[..], "small_ceiling", Some((Rule::SmallCeiling, 5.0))),
        (&roof[..], "fill", Some((Rule::CodeR, 49.0 / 6.0))),
        (&wall[..], "small_ceiling", Some((Rule::CodeR, 20.0 / 6.0))),
        (&wall[..], "accepted", None),
        (&wall[..], "none", None),
        (&wall[..], "u_factor", None),
    ] {
        let place = [("work", "new"), ("zone", "5a"), ("edition", "2012_2018")];
        let surface = [surface, &[("code_path", path)]].concat();
        let depth = depth(&job("typed", &place, &surface, "", &[])).expect("depths");
        let least = depth.window.least_by.zip(depth.window.least_in.map(|at| at.0));
        assert_eq!(least, decides, "{surface:?}");
    }
}

/// Old foam of another kind lies under all of the new at its thickest; of the sheet's own it counts.
#[test]
fn over_old_foam() {
    for (same, least) in [("no", 20.0 / 6.0 + 1.5), ("yes", 20.0 / 6.0)] {
        let place = [("work", "new"), ("zone", "5a"), ("edition", "2012_2018")];
        let surface = [("component", "wall"), ("existing", "1/2 to 1 1/2"), ("existing_same", same)];
        let depth = depth(&job("rules", &place, &surface, "", &[])).expect("depths");
        assert!((depth.promised_in.0 - least).abs() < 1e-9, "{same}: {:?}", depth.promised_in);
        assert!((depth.aim_in.likely.0 - least - 0.5).abs() < 1e-9);
        assert_eq!((depth.aim_by, depth.promised_by), (AimBy::Rules, DepthBy::Rules));
        assert_eq!(depth.promised_r, Some(RValue(18.0)), "R-18 is the last listed up to 3.33 in");
    }
}

/// A basement wall in a warm and humid county of zone 3 owes nothing; anywhere else it does.
#[test]
fn warm_and_humid_basements() {
    for (edition, zone, humid, component, stands) in [
        ("2012_2018", "3a", "yes", "basement_wall", Stands::NotInZone),
        ("2012_2018", "3a", "no", "basement_wall", Stands::Applies),
        ("2012_2018", "3a", "", "basement_wall", Stands::Applies),
        // The note of 2021 is from memory.
        ("2021", "3a", "yes", "basement_wall", Stands::Applies),
        ("2012_2018", "4a", "yes", "basement_wall", Stands::Applies),
        ("2012_2018", "3a", "yes", "crawl_wall", Stands::Applies),
        ("2012_2018", "2a", "no", "basement_wall", Stands::NotInZone),
    ] {
        let place = [("work", "new"), ("zone", zone), ("edition", edition), ("warm_humid", humid)];
        let depth = depth(&job("typed", &place, &[("component", component)], "", &[])).expect("depths");
        assert_eq!(find(&depth, Rule::CodeR).map(|mark| mark.stands), Some(stands), "{zone} {humid}");
    }
}

/// That a roof under tile owes nothing in 2B and 3B is from memory: its row stays, is not held against the depth,
/// and decides nothing; anywhere else tile changes nothing.
#[test]
fn tile_frees_from_memory_only() {
    let batts = [("batt", "cavity", "R-38")];
    for (zone, tile, decides) in [
        ("2b", "yes", false),
        ("3b", "yes", false),
        ("3b", "no", true),
        ("3a", "yes", true),
        ("5b", "yes", true),
    ] {
        let place = [("work", "new"), ("zone", zone)];
        let depth =
            depth(&job("typed", &place, &[("component", "roof_deck"), ("tile_roof", tile)], "", &batts));
        let depth = depth.expect("depths");
        let mark = find(&depth, Rule::UnventedTable).expect("the row");
        assert_eq!((mark.stands, mark.trust.decides()), (Stands::Applies, decides), "{zone} {tile}");
        assert_eq!(depth.window.least_by == Some(Rule::UnventedTable), decides, "{zone} {tile}");
    }
}

/// The table of all zones is what the surface itself would be asked in each of them.
#[test]
fn all_zones_are_what_each_zone_says() {
    let layers = [("batt", "cavity", "R-19")];
    for (edition, component, path) in [
        ("2012_2018", "wall", "r_value"),
        ("2021", "roof_deck", "r_value"),
        ("2021", "rim", "u_factor"),
        ("", "roof_deck", "r_value"),
    ] {
        let surface =
            [("component", component), ("code_path", path), ("spot", "rim"), ("exposure", "exposed")];
        let at = |zone: &str| {
            let place = [("work", "new"), ("zone", zone), ("edition", edition)];
            job("typed", &place, &surface, "4", &layers)
        };
        let table = by_zone(&at(""), 1);
        assert_eq!(table.len(), 16);
        let mut some = 0;
        for row in &table {
            let zone = row.zone.name();
            let open = depth(&at(zone)).expect("depths").window;
            let least = marks::least_aim(open, Inches(0.0));
            assert_eq!(row.least_in.zip(row.least_by), least, "{edition} {component} {zone}");
            assert_eq!(
                (row.most_in, row.most_by),
                (open.most_in, open.most_by),
                "{edition} {component} {zone}"
            );
            let missing: &[&str] = if edition.is_empty() { &["edition"] } else { &[] };
            assert_eq!(row.missing, missing);
            assert_eq!(by_zone(&at("8"), 1), table, "the job's own zone changes nothing");
            some += usize::from(row.least_in.is_some());
        }
        assert!(some > 8, "{edition} {component}: {some}");
    }
    assert_eq!(by_zone(&at_nothing(), 77), vec![]);
}

fn at_nothing() -> Job {
    job("typed", &[], &[], "", &[])
}

fn pick(part: crate::job::Part, name: &str) -> impl Strategy<Value = &'static str> {
    let mut all = field(part, name).expect("the field").choices.to_vec();
    all.push("");
    proptest::sample::select(all)
}

fn any_job() -> impl Strategy<Value = Job> {
    use crate::job::Part::{Job as J, Surface as S};
    let place = (pick(J, "work"), pick(J, "zone"), pick(J, "edition"), pick(J, "warm_humid"));
    let part = (pick(S, "component"), pick(S, "cavity_opened"), pick(S, "runs"), pick(S, "code_path"));
    let room = (pick(S, "inner_retarder"), pick(S, "tile_roof"), pick(S, "framing"), pick(S, "exposure"));
    let cavity = proptest::sample::select(vec!["", "2x4", "2x6", "2x12"]);
    let permeance = proptest::sample::select(vec!["", "0.8", "1.6", "6"]);
    let layers = proptest::sample::subsequence(
        vec![
            ("rigid_board", "outside", "5"),
            ("osb_7_16", "outside", ""),
            ("batt", "cavity", "13"),
            ("loose_fill", "inside", "30"),
            ("gypsum_1_2", "inside", ""),
        ],
        0..=5,
    );
    let ways = proptest::sample::select(vec!["typed", "rules"]);
    (place, part, room, cavity, permeance, layers, ways).prop_map(
        |(place, part, room, cavity, permeance, layers, way)| {
            let of = [("work", place.0), ("zone", place.1), ("edition", place.2), ("warm_humid", place.3)];
            let surface = [
                ("component", part.0),
                ("cavity_opened", part.1),
                ("runs", part.2),
                ("code_path", part.3),
                ("inner_retarder", room.0),
                ("tile_roof", room.1),
                ("framing", room.2),
                ("exposure", room.3),
                ("cavity", cavity),
            ];
            job(way, &of, &surface, permeance, &layers)
        },
    )
}

/// Whether what a rule hangs on holds, told from the entries and not from the marks; `true` for rules that are not
/// of the code or of moisture.
fn may_apply(rule: Rule, job: &Job, estimate: &crate::Estimate) -> bool {
    let said = |name| crate::job::entry(&job.surfaces[0].entries, name).map_or("", |one| one.text.as_str());
    let (place, component) = (estimate.place, said("component"));
    let new = matches!(place.work, Some(Work::New | Work::Addition));
    let standing = matches!(place.work, Some(Work::Alteration | Work::InsulationOnly));
    let zone = place.zone.map_or(0, Zone::number);
    let cold = zone >= 5;
    let cold_or_marine = cold || place.zone.is_some_and(Zone::is_marine_4);
    let front = |airy: bool| {
        job.surfaces[0].layers.iter().any(|layer| {
            let of = |name| crate::job::entry(&layer.entries, name).map_or("", |one| one.text.as_str());
            matches!(of("made_of"), "batt" | "loose_fill") && (airy || of("position") == "cavity")
        })
    };
    let path = said("code_path");
    let table = new && place.zone.is_some() && place.edition.is_some();
    match rule {
        Rule::CodeR => {
            // A part of the building without a U-factor row stays with its R.
            let row = place.edition.zip(place.zone).zip(Component::named(component));
            let by_u = row.is_some_and(|((edition, zone), part)| u_row(edition, zone, part).is_some());
            table && !matches!(path, "accepted" | "none") && !(path == "u_factor" && by_u)
        }
        Rule::CodeU => {
            table && path == "u_factor" && said("framing") != "steel" && !job.surfaces[0].layers.is_empty()
        }
        Rule::FillFloor => {
            table && path == "fill" && component == "floor" && zone >= 4 && !said("cavity").is_empty()
        }
        Rule::SmallCeiling => table && path == "small_ceiling" && component == "roof_deck",
        Rule::FillCavity => standing && said("cavity_opened") == "yes" && !said("cavity").is_empty(),
        Rule::NoLeast => standing && said("cavity_opened") == "no",
        Rule::UnventedTable | Rule::UnventedShare => component == "roof_deck" && zone > 0 && front(true),
        Rule::FoamRetarder => component == "roof_deck" && cold && estimate.foams[0].permeance_1_in.is_some(),
        Rule::ClassThree => {
            let walls = matches!(component, "wall" | "rim");
            let sheet = estimate.foams[0].permeance_1_in.is_some();
            walls && cold_or_marine && front(true) && said("inner_retarder") == "class_3" && sheet
        }
        Rule::InnerRetarder => {
            matches!(component, "wall" | "rim") && zone > 0 && said("inner_retarder").starts_with("class")
        }
        _ => true,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    /// No mark applies where what it hangs on does not hold.
    #[test]
    fn nothing_applies_where_its_condition_fails(job in any_job()) {
        let estimate = crate::estimate(&job, NOW);
        let Some(depth) = estimate.surfaces[0].depth.as_ref() else { return Ok(()) };
        for mark in depth.marks.iter().filter(|mark| mark.stands == Stands::Applies) {
            prop_assert!(may_apply(mark.rule, &job, &estimate), "{mark:?}");
            prop_assert!(mark.at_in.is_some() || mark.bound == Bound::Condition, "{mark:?}");
        }
        let code = [Rule::CodeR, Rule::CodeU, Rule::FillFloor, Rule::SmallCeiling];
        let chosen = depth.marks.iter().filter(|one| code.contains(&one.rule) && one.stands == Stands::Applies);
        prop_assert!(chosen.count() <= 1, "one way through the code at a time: {:?}", depth.marks);
    }

    /// What is from memory, or worked out, never decides a depth: without it the window and the aim are the same.
    #[test]
    fn memory_never_decides(job in any_job()) {
        let Some(depth) = depth(&job) else { return Ok(()) };
        let known: Vec<Mark> = depth.marks.iter().filter(|mark| mark.trust.decides()).cloned().collect();
        prop_assert_eq!(window(&known), depth.window);
        let by = |rule: Option<Rule>| rule.and_then(|rule| {
            depth.marks.iter().find(|one| one.rule == rule && one.stands == Stands::Applies)
        });
        for rule in [depth.window.least_by, depth.window.most_by, depth.window.mean_by] {
            prop_assert!(by(rule).is_none_or(|mark| mark.trust.decides()));
        }
        if depth.way == DepthWay::Rules {
            prop_assert_eq!(marks::least_aim(window(&known), depth.under_in).map(|(aim, _)| aim), Some(depth.aim_in.likely));
            prop_assert!(depth.window.least_in.is_none_or(|least| depth.promised_in.0 >= least.0 - 1e-9));
            prop_assert!(depth.window.mean_in.is_none_or(|mean| depth.aim_in.likely.0 >= mean.0 - 1e-9));
        }
    }

    /// Thicker foam is never worth less: promised R, R for planning and R of the whole.
    #[test]
    fn thicker_is_never_less(job in any_job(), thin in 4_u32..90, more in 1_u32..30) {
        let at = |eighths: u32| {
            let mut job = job.clone();
            job.surfaces[0].depth_way = DepthWay::Typed;
            for one in job.surfaces[0].entries.iter_mut().filter(|one| one.field == "depth") {
                one.text = format!("{eighths}/8");
            }
            depth(&job).expect("depths")
        };
        let (thin, thick) = (at(thin), at(thin + more));
        prop_assert!(thick.promised_r >= thin.promised_r && thick.planning_r >= thin.planning_r);
        let whole = |one: &Depth| one.assembly.as_ref().map(|whole| whole.effective_r);
        prop_assert!(whole(&thick) >= whole(&thin));
        // What the rules ask does not hang on the aim.
        prop_assert_eq!((thick.window.least_in, thick.window.mean_in), (thin.window.least_in, thin.window.mean_in));
    }
}

/// The U row is met at the depth that its mark names, and not a sixteenth below it.
#[test]
fn the_mean_meets_the_u_row() {
    let place = [("work", "new"), ("zone", "5a"), ("edition", "2021")];
    let surface =
        [("component", "wall"), ("code_path", "u_factor"), ("cavity", "2x6"), ("framing_share", "20")];
    let layers = [("rigid_board", "outside", "5"), ("gypsum_1_2", "inside", "")];
    let asked = depth(&job("rules", &place, &surface, "", &layers)).expect("depths");
    let most =
        u_row(Edition::Y2021, Zone::named("5a").expect("a zone"), Component::Wall).expect("a row").most;
    assert_eq!(asked.aim_by, AimBy::RulesMean);
    let u_at = |inches: f64| {
        let typed = inches.to_string();
        let surface = [&surface[..], &[("depth", typed.as_str())]].concat();
        depth(&job("typed", &place, &surface, "", &layers)).expect("depths").assembly.expect("a whole").u
    };
    let mean = asked.aim_in.likely.0;
    assert!(u_at(mean + 1e-6) <= most && u_at(mean - 1.0 / 16.0) > most, "{mean} {most}");
}
