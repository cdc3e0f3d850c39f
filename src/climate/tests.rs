//! The code's tables against their printed rows, and degree-days against both sets of thresholds.

use super::*;
use crate::findings::Trust;

const COMPONENTS: [Component; 11] = [
    Component::AtticFloor,
    Component::RoofDeck,
    Component::Wall,
    Component::Rim,
    Component::MassWallInside,
    Component::MassWallOutside,
    Component::Floor,
    Component::BasementWall,
    Component::CrawlWall,
    Component::ColdRoom,
    Component::Other,
];
const EDITIONS: [Edition; 4] = [Edition::Y2009, Edition::Y2012To2018, Edition::Y2021, Edition::Y2024];
/// The zones of the printed columns.
const COLUMNS: [&[&str]; 7] = [
    &["1a"],
    &["2a", "2b"],
    &["3a", "3b", "3c"],
    &["4a", "4b"],
    &["4c", "5a", "5b", "5c"],
    &["6a", "6b"],
    &["7", "8"],
];

fn zone(name: &str) -> Zone {
    Zone::named(name).expect("a zone")
}

/// What each zone of a column shows, which has to be the same.
fn shown<T: PartialEq + std::fmt::Debug>(column: &[&str], of: impl Fn(Zone) -> T) -> T {
    let mut all: Vec<T> = column.iter().map(|name| of(zone(name))).collect();
    let last = all.pop().expect("a zone");
    assert!(all.iter().all(|one| *one == last), "{column:?}: {all:?} {last:?}");
    last
}

/// IECC 2021 Table R402.1.3, IECC 2018 Table R402.1.2 and the ceilings and walls of 2009, as the national
/// laboratory's guide of minimum insulation requirements for new homes prints them; the walls of zones 5 and 6 of
/// 2009 are from memory. Basement, crawlspace: the guide's notes f and g left out.
#[test]
fn rows_as_printed() {
    let new = "30 or 20+5ci or 13+10ci or 0+20ci";
    let low = "15ci or 19 or 13+5ci";
    let printed: [(Edition, Component, [&str; 7]); 16] = [
        (Edition::Y2021, Component::AtticFloor, ["30", "49", "49", "60", "60", "60", "60"]),
        (
            Edition::Y2021,
            Component::Wall,
            ["13 or 0+10ci", "13 or 0+10ci", "20 or 13+5ci or 0+15ci", new, new, new, new],
        ),
        (
            Edition::Y2021,
            Component::MassWallInside,
            ["3/4", "4/6", "8/13", "8/13", "13/17", "15/20", "19/21"],
        ),
        (
            Edition::Y2021,
            Component::MassWallOutside,
            ["3/4", "4/6", "8/13", "8/13", "13/17", "15/20", "19/21"],
        ),
        (Edition::Y2021, Component::Floor, ["13", "13", "19", "19", "30", "30", "38"]),
        (Edition::Y2021, Component::BasementWall, ["0", "0", "5ci or 13", "10ci or 13", low, low, low]),
        (Edition::Y2021, Component::CrawlWall, ["0", "0", "5ci or 13", "10ci or 13", low, low, low]),
        (Edition::Y2012To2018, Component::RoofDeck, ["30", "38", "38", "49", "49", "49", "49"]),
        (
            Edition::Y2012To2018,
            Component::Rim,
            ["13", "13", "20 or 13+5", "20 or 13+5", "20 or 13+5", "20+5 or 13+10", "20+5 or 13+10"],
        ),
        (
            Edition::Y2012To2018,
            Component::MassWallInside,
            ["3/4", "4/6", "8/13", "8/13", "13/17", "15/20", "19/21"],
        ),
        (Edition::Y2012To2018, Component::Floor, ["13", "13", "19", "19", "30", "30", "38"]),
        (
            Edition::Y2012To2018,
            Component::BasementWall,
            ["0", "0", "5/13", "10/13", "15/19", "15/19", "15/19"],
        ),
        (Edition::Y2012To2018, Component::CrawlWall, ["0", "0", "5/13", "10/13", "15/19", "15/19", "15/19"]),
        (Edition::Y2009, Component::AtticFloor, ["30", "30", "30", "38", "38", "49", "49"]),
        (Edition::Y2009, Component::Wall, ["13", "13", "13", "13", "20 or 13+5", "20 or 13+5", "21"]),
        (Edition::Y2009, Component::Floor, ["13", "13", "19", "19", "30", "30", "38"]),
    ];
    for (edition, component, row) in printed {
        for (column, wanted) in COLUMNS.iter().zip(row) {
            let found = shown(column, |zone| r_row(edition, zone, component).map(|row| row.printed));
            assert_eq!(found, Some(wanted), "{edition:?} {component:?} {column:?}");
        }
    }
}

/// IECC 2021 Table R402.1.2 as a public source file quotes its ceilings, walls and floors; the other columns and
/// all of 2018 Table R402.1.4 are from memory.
#[test]
fn u_factors_as_printed() {
    let printed: [(Edition, Component, [f64; 7]); 8] = [
        (Edition::Y2021, Component::RoofDeck, [0.035, 0.026, 0.026, 0.024, 0.024, 0.024, 0.024]),
        (Edition::Y2021, Component::Wall, [0.084, 0.084, 0.060, 0.045, 0.045, 0.045, 0.045]),
        (Edition::Y2021, Component::Floor, [0.064, 0.064, 0.047, 0.047, 0.033, 0.033, 0.028]),
        (Edition::Y2021, Component::MassWallOutside, [0.197, 0.165, 0.098, 0.098, 0.082, 0.060, 0.057]),
        (Edition::Y2021, Component::BasementWall, [0.360, 0.360, 0.091, 0.059, 0.050, 0.050, 0.050]),
        (Edition::Y2021, Component::CrawlWall, [0.477, 0.477, 0.136, 0.065, 0.055, 0.055, 0.055]),
        (Edition::Y2012To2018, Component::AtticFloor, [0.035, 0.030, 0.030, 0.026, 0.026, 0.026, 0.026]),
        (Edition::Y2012To2018, Component::Rim, [0.084, 0.084, 0.060, 0.060, 0.060, 0.045, 0.045]),
    ];
    for (edition, component, row) in printed {
        for (column, wanted) in COLUMNS.iter().zip(row) {
            let found = shown(column, |zone| u_row(edition, zone, component).map(|row| row.most));
            assert_eq!(found, Some(wanted), "{edition:?} {component:?} {column:?}");
        }
    }
}

/// The two U-factor tables differ in ceilings from zone 2 up and in walls of zones 4 and 5 with marine 4, and
/// nowhere else: there 2018 is the looser.
#[test]
fn the_u_tables_differ_where_said() {
    for zone in Zone::all() {
        for component in COMPONENTS {
            let most = |edition| u_row(edition, zone, component).map(|row| row.most);
            let (older, newer) = (most(Edition::Y2012To2018), most(Edition::Y2021));
            let differ = match component {
                Component::AtticFloor | Component::RoofDeck => zone.number() >= 2,
                Component::Wall | Component::Rim => matches!(zone.number(), 4 | 5),
                _ => false,
            };
            assert_eq!(older != newer, differ, "{zone:?} {component:?}");
            assert!(older >= newer);
        }
    }
}

/// A colder zone never asks for less: U never rises, and neither the cavity's nor the continuous R falls.
#[test]
fn colder_zones_ask_for_more() {
    let columns: Vec<Zone> = COLUMNS.iter().map(|column| zone(column[0])).collect();
    for pair in columns.windows(2) {
        for component in COMPONENTS {
            for edition in [Edition::Y2009, Edition::Y2012To2018, Edition::Y2021] {
                let most = |zone| u_row(edition, zone, component).map(|row| row.most);
                assert!(most(pair[0]) >= most(pair[1]), "{edition:?} {component:?} {pair:?}");
                let least = |zone, of: fn(&ROption) -> f64| {
                    let row = r_row(edition, zone, component)?;
                    let alone = row.options.iter().map(of).filter(|r| *r > 0.0);
                    Some(alone.fold(f64::INFINITY, f64::min)).filter(|r| r.is_finite())
                };
                let alone: [fn(&ROption) -> f64; 2] = [
                    |one| if one.continuous > 0.0 { 0.0 } else { one.cavity },
                    |one| if one.cavity > 0.0 { 0.0 } else { one.continuous },
                ];
                for of in alone {
                    if let Some((warmer, colder)) = least(pair[0], of).zip(least(pair[1], of)) {
                        assert!(warmer <= colder, "{edition:?} {component:?} {pair:?}");
                    }
                }
            }
        }
    }
}

/// Every cell says in its options what it prints.
#[test]
fn options_say_what_is_printed() {
    let mut seen = std::collections::BTreeSet::new();
    for (edition, zone, component) in
        EDITIONS.iter().flat_map(|e| Zone::all().flat_map(move |z| COMPONENTS.map(|c| (*e, z, c))))
    {
        let Some(row) = r_row(edition, zone, component) else { continue };
        seen.insert(row.printed);
        let mass = matches!(component, Component::MassWallInside | Component::MassWallOutside);
        let mut wanted = Vec::new();
        let number = |text: &str| text.parse::<f64>().expect("a number");
        for part in row.printed.split(" or ") {
            let one = match (part.split_once('/'), part.split_once('+'), part.strip_suffix("ci")) {
                (Some((outside, inside)), ..) if mass => {
                    let r = number(if component == Component::MassWallInside { inside } else { outside });
                    vec![(r, 0.0), (0.0, r)]
                }
                (Some((unbroken, cavity)), ..) => vec![(0.0, number(unbroken)), (number(cavity), 0.0)],
                (None, Some((cavity, unbroken)), _) => {
                    vec![(number(cavity), number(unbroken.trim_end_matches("ci")))]
                }
                (None, None, Some(unbroken)) => vec![(0.0, number(unbroken))],
                (None, None, None) => vec![(number(part), 0.0)],
            };
            wanted.extend(one);
        }
        let mut found: Vec<(f64, f64)> = row.options.iter().map(|one| (one.cavity, one.continuous)).collect();
        // A plain first figure may run unbroken too, where no lower unbroken figure is printed.
        if let Some(first) = row.printed.split(" or ").next().and_then(|text| text.parse::<f64>().ok())
            && first > 0.0
            && !row.printed.contains("ci")
        {
            assert_eq!(found.pop(), Some((0.0, first)), "{}", row.printed);
        }
        assert_eq!(found, wanted, "{}", row.printed);
    }
    assert_eq!(seen.len(), 28, "{seen:?}");
}

/// What may decide a depth: what was read or retold, and nothing of 2024.
#[test]
fn what_is_from_memory_decides_nothing() {
    let decides = |edition, at, component| r_row(edition, zone(at), component).map(|row| row.trust.decides());
    for at in Zone::all().map(Zone::name) {
        for component in COMPONENTS {
            for edition in [Edition::Y2012To2018, Edition::Y2021] {
                let none = matches!(component, Component::ColdRoom | Component::Other);
                assert_eq!(decides(edition, at, component), (!none).then_some(true));
            }
            assert_ne!(decides(Edition::Y2024, at, component), Some(true));
            let u = |edition| u_row(edition, zone(at), component).map(|row| row.trust.decides());
            assert_ne!(u(Edition::Y2012To2018), Some(true));
            assert_eq!(u(Edition::Y2009), None);
            let retold = matches!(
                component,
                Component::AtticFloor
                    | Component::RoofDeck
                    | Component::Wall
                    | Component::Rim
                    | Component::Floor
            );
            assert_eq!(u(Edition::Y2021) == Some(true), retold);
        }
    }
    for (at, wanted) in [("1a", true), ("4b", true), ("4c", false), ("5a", false), ("6b", false), ("7", true)]
    {
        assert_eq!(decides(Edition::Y2009, at, Component::Wall), Some(wanted), "{at}");
        assert_eq!(decides(Edition::Y2009, at, Component::AtticFloor), Some(true));
        assert_eq!(decides(Edition::Y2009, at, Component::Floor), Some(false));
    }
    assert_eq!(decides(Edition::Y2024, "6a", Component::Floor), Some(false));
    assert_eq!(decides(Edition::Y2024, "4a", Component::BasementWall), None);
    assert_eq!(decides(Edition::Y2024, "5a", Component::AtticFloor), None);
}

/// The notes: floors that fill their cavity, small ceilings, warm-humid basements.
#[test]
fn notes() {
    assert_eq!(floor_fill(Edition::Y2012To2018), (19.0, Trust::Read));
    assert_eq!(floor_fill(Edition::Y2021), (19.0, Trust::Memory));
    let small = small_ceiling(Edition::Y2012To2018);
    assert_eq!((small.least_r, small.most_ft2, small.trust), (30.0, 500.0, Trust::Read));
    assert!(!small_ceiling(Edition::Y2021).trust.decides());
    let frees = |edition, at, component| warm_humid_frees(edition, zone(at), component);
    assert_eq!(frees(Edition::Y2012To2018, "3a", Component::BasementWall), Some(Trust::Read));
    assert_eq!(frees(Edition::Y2021, "3a", Component::BasementWall), Some(Trust::Memory));
    assert_eq!(frees(Edition::Y2021, "3a", Component::CrawlWall), Some(Trust::Memory));
    assert_eq!(frees(Edition::Y2012To2018, "3a", Component::CrawlWall), None);
    assert_eq!(frees(Edition::Y2021, "4a", Component::BasementWall), None);
    assert_eq!(frees(Edition::Y2021, "3a", Component::Wall), None);
}

/// IRC 2021 Table R702.7(3), 2018 Table R702.7.1: over 2×4 and over 2×6.
#[test]
fn class_three_as_printed() {
    let rows = [
        ("4c", Some((2.5, 3.75))),
        ("5a", Some((5.0, 7.5))),
        ("5c", Some((5.0, 7.5))),
        ("6b", Some((7.5, 11.25))),
        ("7", Some((10.0, 15.0))),
        ("8", Some((12.5, 20.0))),
        ("4a", None),
        ("3c", None),
        ("1a", None),
    ];
    for (at, wanted) in rows {
        let r = |deep| class_three(zone(at), deep).map(|one| one.least_r);
        assert_eq!(r(false).zip(r(true)), wanted, "{at}");
    }
    assert!(Zone::all().filter_map(|zone| class_three(zone, true)).all(|one| one.trust.decides()));
}

/// IRC 2021 Table R702.7(2): classes I, II and III by zone; all but zone 1 from memory.
#[test]
fn inner_classes() {
    for (names, wanted) in [
        (&["1a", "2a", "2b"][..], [false, false, true]),
        (&["3a", "3b", "3c", "4a", "4b"], [false, true, true]),
        (&["4c", "5a", "5b", "5c", "6a", "6b", "7", "8"], [true, true, true]),
    ] {
        for at in names {
            let found = [1, 2, 3].map(|class| inner_class(zone(at), class).map(|one| one.0));
            assert_eq!(found, wanted.map(Some), "{at}");
            let decides = inner_class(zone(at), 2).is_some_and(|one| one.1.decides());
            assert_eq!(decides, *at == "1a");
        }
    }
    assert_eq!(inner_class(zone("5a"), 4), None);
}

/// IRC Table R806.5, alike from 2012 to 2021: 5, 10, 15, 20, 25, 30, 35; nothing under tile in 2B and 3B.
#[test]
fn unvented_as_printed() {
    for (names, r) in [
        (&["1a", "2a", "2b", "3a", "3b", "3c"][..], 5.0),
        (&["4c"], 10.0),
        (&["4a", "4b"], 15.0),
        (&["5a", "5b", "5c"], 20.0),
        (&["6a", "6b"], 25.0),
        (&["7"], 30.0),
        (&["8"], 35.0),
    ] {
        for at in names {
            let row = unvented(zone(at), false);
            assert_eq!((row.least_r, row.trust), (r, Trust::Read), "{at}");
            let whole = if zone(at).number() <= 3 { 38.0 } else { 49.0 };
            assert_eq!(row.share, (100.0 * r / whole).round() / 100.0, "{at}");
            let tile = unvented(zone(at), true);
            match *at {
                "2b" | "3b" => assert_eq!((tile.least_r, tile.trust), (0.0, Trust::Memory)),
                _ => assert_eq!(tile, row),
            }
        }
    }
}

/// 2018 Table R301.3(2), read; the thresholds of 2021 as public sources retell ASHRAE 169-2013. The limit belongs
/// to the warmer zone of heating and to the colder of cooling.
#[test]
fn degree_days() {
    for (heating, cooling, region, older, newer) in [
        (500.0, 9_001.0, "a", "1a", "1a"),
        (500.0, 9_000.0, "a", "2a", "2a"),
        (500.0, 6_301.0, "b", "2b", "2b"),
        (2_980.0, 5_000.0, "a", "3a", "3a"),
        // The boundary between 3 and 4 is where the editions part.
        (3_600.0, 4_500.0, "a", "4a", "3a"),
        (3_601.0, 4_501.0, "a", "3a", "4a"),
        (3_600.0, 4_501.0, "b", "3b", "3b"),
        (3_601.0, 4_500.0, "b", "4b", "4b"),
        (3_600.0, 2_000.0, "c", "3c", "3c"),
        (3_601.0, 2_000.0, "c", "4c", "4c"),
        (5_400.0, 3_000.0, "a", "4a", "4a"),
        (5_401.0, 4_600.0, "a", "5a", "5a"),
        (7_200.0, 3_000.0, "b", "5b", "5b"),
        (7_201.0, 3_000.0, "b", "6b", "6b"),
        (9_000.0, 2_000.0, "a", "6a", "6a"),
        (9_001.0, 2_000.0, "", "7", "7"),
        (12_600.0, 1_000.0, "b", "7", "7"),
        (12_601.0, 1_000.0, "", "8", "8"),
    ] {
        let found = degree_days::classified(heating, cooling, region);
        assert_eq!(found, Some([Some(older), Some(newer)]), "{heating} {cooling} {region}");
    }
    assert_eq!(degree_days::classified(500.0, 10_801.0, "a"), Some([Some("1a"), None]));
    assert_eq!(degree_days::classified(500.0, 9_001.0, "b"), Some([None, None]));
    assert_eq!(degree_days::classified(5_500.0, 3_000.0, ""), None);
}

/// A job's own degree-days, through the table of fields.
#[test]
fn typed_degree_days() {
    let place = |entries: &[(&str, &str)]| {
        let entries: Vec<_> =
            entries.iter().map(|(field, text)| serde_json::json!({"field": field, "text": text})).collect();
        let job: Job = serde_json::from_value(serde_json::json!({
            "format": "foamwright-job", "version": 4, "id": "test", "next_id": 1, "entries": entries,
        }))
        .expect("a job");
        super::place(&job, &mut Reader::new(crate::measure::Units::Us))
    };
    let days = [("hdd65", "3601"), ("cdd50", "4600"), ("moist_region", "a")];
    let found = place(&days).by_degree_days.expect("a zone");
    assert_eq!((found.up_to_2018, found.from_2021), (Zone::named("3a"), Zone::named("4a")));
    assert_eq!(place(&days[..2]).by_degree_days, None);
    assert_eq!(place(&days[1..]).by_degree_days, None);
}

/// Published advice for basements and crawlspaces: R-5 unbroken in zone 3, R-10 in 4, R-15 in marine 4 and colder.
/// For rims, in guides to editions before 2021: R-13 in zones 1 to 4, R-20 in colder ones.
#[test]
fn foundations_and_rims() {
    let unbroken = |edition, component, at| {
        let row = r_row(edition, zone(at), component).expect("a row");
        row.options.iter().find(|one| one.cavity == 0.0).expect("unbroken alone").continuous
    };
    let wanted =
        [("3a", 5.0), ("4a", 10.0), ("4c", 15.0), ("5a", 15.0), ("6a", 15.0), ("7", 15.0), ("8", 15.0)];
    for (at, r) in wanted {
        for edition in [Edition::Y2012To2018, Edition::Y2021] {
            assert_eq!(unbroken(edition, Component::BasementWall, at), r, "{at}");
            assert_eq!(unbroken(edition, Component::CrawlWall, at), r, "{at}");
        }
    }
    let cavity = |at| r_row(Edition::Y2009, zone(at), Component::Rim).expect("a row").options[0].cavity;
    for (at, r) in [("1a", 13.0), ("2b", 13.0), ("3a", 13.0), ("4b", 13.0), ("5a", 20.0), ("6a", 20.0)] {
        assert_eq!(cavity(at), r, "{at}");
    }
}
