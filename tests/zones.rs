//! Places against their climate zones, from the packed tables that the site ships.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::climate::{Found, Zone, find, position};
use std::collections::BTreeMap;
use std::path::Path;

struct Tables {
    zones: Vec<u8>,
    counties: Vec<u8>,
}

impl Tables {
    fn read() -> Self {
        let read = |name| {
            let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("www/app").join(name);
            std::fs::read(&file).unwrap_or_else(|fault| panic!("{}: {fault}", file.display()))
        };
        Tables { zones: read("zones.bin"), counties: read("counties.bin") }
    }

    fn find(&self, text: &str) -> Found {
        find(&self.zones, &self.counties, text)
    }

    fn zones(&self, text: &str) -> String {
        self.find(text).zones.iter().map(|zone| zone.name()).collect::<Vec<_>>().join(" ")
    }

    /// Names and zones of what a text finds.
    fn counties(&self, text: &str) -> String {
        let found = self.find(text);
        let shown = found
            .counties
            .iter()
            .map(|one| format!("{} {}", one.name, one.zone.map_or("none", |z| z.name())));
        shown.collect::<Vec<_>>().join("; ")
    }
}

/// Well-known places, by the printed map of 2006 to 2018 (International Energy Conservation Code, figure R301.1
/// and table R301.1).
const PLACES: [(&str, &str, &str); 37] = [
    ("Miami", "33130", "1a"),
    ("Honolulu", "96813", "1a"),
    ("San Juan, Puerto Rico", "00901", "1a"),
    ("Houston", "77002", "2a"),
    ("Orlando", "32801", "2a"),
    ("West Palm Beach", "33401", "2a"),
    ("Phoenix", "85003", "2b"),
    ("Atlanta", "30303", "3a"),
    ("Memphis", "38103", "3a"),
    ("Dallas", "75201", "3a"),
    ("Los Angeles", "90012", "3b"),
    ("Las Vegas", "89101", "3b"),
    ("El Paso", "79901", "3b"),
    ("San Francisco", "94103", "3c"),
    ("Oakland, one of the six counties overruled", "94612", "3c"),
    ("New York", "10001", "4a"),
    ("Baltimore", "21201", "4a"),
    ("Washington", "20001", "4a"),
    ("Raleigh", "27601", "4a"),
    ("Albuquerque", "87102", "4b"),
    ("Seattle", "98101", "4c"),
    ("Portland, Oregon", "97201", "4c"),
    ("Chicago", "60601", "5a"),
    ("Boston", "02108", "5a"),
    ("Columbus, Ohio", "43215", "5a"),
    ("Denver", "80202", "5b"),
    ("Boise", "83702", "5b"),
    ("Minneapolis", "55401", "6a"),
    ("Burlington, Vermont", "05401", "6a"),
    ("Madison, Wisconsin", "53703", "6a"),
    ("Helena", "59601", "6b"),
    ("Duluth", "55802", "7"),
    ("Fargo", "58102", "7"),
    ("Anchorage", "99501", "7"),
    ("Juneau", "99801", "7"),
    ("Petersburg, Alaska, in a borough younger than the crosswalk", "99833", "7"),
    ("Fairbanks", "99701", "8"),
];

#[test]
fn well_known_places_lie_where_the_map_has_them() {
    let tables = Tables::read();
    for (place, zip, zone) in PLACES {
        assert_eq!(tables.zones(zip), zone, "{place}");
        assert_eq!(find(&tables.zones, &[], &format!("{zip}-0001")).zones, tables.find(zip).zones, "{place}");
    }
    let missing: Vec<&str> =
        Zone::NAMES.into_iter().filter(|zone| !PLACES.iter().any(|place| place.2 == *zone)).collect();
    // The map of the older editions has no county in 5C.
    assert_eq!(missing, ["5c"]);
}

#[test]
fn a_zip_code_in_two_zones_asks_for_the_county() {
    let tables = Tables::read();
    assert_eq!(tables.zones("81230"), "6b 7");
    assert_eq!(tables.counties("81230"), "Gunnison, CO 7; Saguache, CO 6b");
    // Without the names there are zones all the same.
    let bare = find(&tables.zones, &[], "81230");
    assert_eq!((bare.zones.len(), bare.counties.len()), (2, 0));
    // A county that was chosen is found again by its code, with and without its name.
    assert_eq!(tables.counties("#08051"), "Gunnison, CO 7");
    let bare = find(&tables.zones, &[], "#08051");
    assert_eq!((bare.counties[0].county, bare.counties[0].name.as_str(), bare.zones.len()), (8_051, "", 1));
    for text in ["#08052", "#", "#8051", "#00000", "#99999"] {
        assert_eq!(tables.find(text), Found::default(), "{text}");
    }
}

#[test]
fn a_code_that_is_no_place_has_no_zone() {
    let tables = Tables::read();
    // Never given out; a field post office; not five digits.
    for text in ["00000", "99999", "09012", "21300", "", "8123", "812300", "81230 12345", "-81230"] {
        assert_eq!(tables.find(text), Found::default(), "{text}");
    }
}

/// What a person may type, and the counties that it means.
#[test]
fn counties_are_found_by_name() {
    let tables = Tables::read();
    let fairfax = "Fairfax, VA 4a; Fairfax city, VA 4a";
    for (typed, wanted) in [
        ("Gunnison", "Gunnison, CO 7"),
        ("  gunnison,co ", "Gunnison, CO 7"),
        ("Gunnison CO", "Gunnison, CO 7"),
        ("GUNNISON COUNTY, Colorado", "Gunnison, CO 7"),
        ("gunnison colorado", "Gunnison, CO 7"),
        ("gunn", "Gunnison, CO 7"),
        ("St. Louis MN", "St. Louis, MN 7"),
        ("saint louis, minn", "St. Louis, MN 7"),
        ("St Louis MO", "St. Louis, MO 4a; St. Louis city, MO 4a"),
        ("Ste Genevieve", "Ste. Genevieve, MO 4a"),
        ("Sainte Genevieve", "Ste. Genevieve, MO 4a"),
        ("genevieve", "Ste. Genevieve, MO 4a"),
        ("fairbanks, ak", "Fairbanks North Star, AK 8"),
        ("Dona Ana", "Doña Ana, NM 3b"),
        ("DOÑA ANA, New Mexico", "Doña Ana, NM 3b"),
        ("dona ana new mexico", "Doña Ana, NM 3b"),
        // The tilde as a letter of its own, as some keyboards send it.
        ("Don\u{303}a Ana", "Doña Ana, NM 3b"),
        ("mayaguez", "Mayagüez, PR 1a"),
        ("Prince George's MD", "Prince George's, MD 4a"),
        ("prince georges", "Prince George's, MD 4a"),
        ("o brien", "O'Brien, IA 6a"),
        ("De Kalb, Ga", "DeKalb, GA 3a"),
        ("Fairfax VA", fairfax),
        ("fairfax county virginia", fairfax),
        ("Fairfax city", "Fairfax city, VA 4a"),
        ("Carson City", "Carson City, NV 5b"),
        ("Carson NV", "Carson City, NV 5b"),
        ("Orleans Parish", "Orleans, LA 2a; Orleans, NY 5a; Orleans, VT 6a"),
        ("fairbanks", "Fairbanks North Star, AK 8"),
        ("Kusilvak Census Area, AK", "Kusilvak, AK 8"),
        ("District of Columbia", "District of Columbia, DC 4a"),
        ("oglala lakota", "Oglala Lakota, SD 6a"),
        ("Broomfield", "Broomfield, CO 5b"),
        ("New York, NY", "New York, NY 4a"),
        ("Marin", "Marin, CA 3c"),
        ("Marin, IN", ""),
        ("Lake Indiana", "Lake, IN 5a"),
        ("Guam", "Guam, GU 1a"),
        ("Saipan", "Saipan, MP 1a"),
        ("American Samoa", "American Samoa, AS 1a"),
        // A state that is none, a name that is none, too little to go by, nothing.
        ("Gunnison, XX", ""),
        ("Atlantis", ""),
        ("x", ""),
        (", CO", ""),
        ("County", ""),
        ("...", ""),
    ] {
        assert_eq!(tables.counties(typed), wanted, "{typed}");
    }
}

/// The counties of the table and their zones, read by hand: the sections of `tests/oracles/zones.py` anew.
fn county_table(bytes: &[u8]) -> BTreeMap<u32, Option<&'static str>> {
    let mut at = 0;
    let mut number = || {
        let (mut number, mut shift) = (0, 0);
        loop {
            let byte = bytes[at];
            at += 1;
            number |= u32::from(byte & 127) << shift;
            shift += 7;
            if byte < 128 {
                return number;
            }
        }
    };
    let count = number();
    let mut code = 0;
    let codes: Vec<u32> = (0..count)
        .map(|_| {
            code += number();
            code
        })
        .collect();
    let zones = &bytes[at..];
    let name = |zone: &u8| (*zone != 16).then(|| Zone::NAMES[usize::from(*zone)]);
    codes.into_iter().zip(zones.iter().map(name)).collect()
}

/// State by state: its number, its counties (Census Bureau, as of 2020; Connecticut's eight), and the zones that
/// the printed map of 2006 to 2018 has in it (table R301.1, from memory).
const STATES: [(u32, usize, &str); 52] = [
    (1, 67, "2a 3a"),
    (2, 30, "7 8"),
    (4, 15, "2b 3b 4b 5b"),
    (5, 75, "3a 4a"),
    (6, 58, "2b 3b 3c 4b 4c 5b 6b"),
    (8, 64, "4b 5b 6b 7"),
    (9, 8, "5a"),
    (10, 3, "4a"),
    (11, 1, "4a"),
    (12, 67, "1a 2a"),
    (13, 159, "2a 3a 4a"),
    (15, 5, "1a"),
    (16, 44, "5b 6b"),
    (17, 102, "4a 5a"),
    (18, 92, "4a 5a"),
    (19, 99, "5a 6a"),
    (20, 105, "4a 5a"),
    (21, 120, "4a"),
    (22, 64, "2a 3a"),
    (23, 16, "6a 7"),
    (24, 24, "4a 5a"),
    (25, 14, "5a"),
    (26, 83, "5a 6a 7"),
    (27, 87, "6a 7"),
    (28, 82, "2a 3a"),
    (29, 115, "4a 5a"),
    (30, 56, "6b"),
    (31, 93, "5a"),
    (32, 17, "3b 5b"),
    (33, 10, "5a 6a"),
    (34, 21, "4a 5a"),
    (35, 33, "3b 4b 5b"),
    (36, 62, "4a 5a 6a"),
    (37, 100, "3a 4a 5a"),
    (38, 53, "6a 7"),
    (39, 88, "4a 5a"),
    (40, 77, "3a 4b"),
    (41, 36, "4c 5b"),
    (42, 67, "4a 5a 6a"),
    (44, 5, "5a"),
    (45, 46, "3a"),
    (46, 66, "5a 6a"),
    (47, 95, "3a 4a"),
    (48, 254, "2a 2b 3a 3b 4b"),
    (49, 29, "3b 5b 6b"),
    (50, 14, "6a"),
    (51, 133, "4a"),
    (53, 39, "4c 5b 6b"),
    (54, 55, "4a 5a"),
    (55, 72, "6a 7"),
    (56, 23, "5b 6b 7"),
    (72, 78, "1a"),
];

#[test]
fn each_state_has_all_its_counties_and_the_zones_of_the_printed_map() {
    let tables = Tables::read();
    let counties = county_table(&tables.zones);
    for (state, count, zones) in STATES {
        let own: Vec<_> = counties.iter().filter(|(code, _)| *code / 1000 == state).collect();
        assert_eq!(own.len(), count, "counties of state {state}");
        let mut there: Vec<&str> = own.iter().filter_map(|(_, zone)| **zone).collect();
        there.sort_unstable();
        there.dedup();
        assert_eq!(there.join(" "), zones, "zones of state {state}");
    }
    assert_eq!(STATES.iter().map(|state| state.1).sum::<usize>(), 3_143 + 78);
    // No more than the islands of the territories is left: Samoa, Guam, three of the Marianas, three Virgin Islands.
    assert_eq!(counties.len(), 3_143 + 78 + 8);
    // Where the map draws a line inside a state around a few counties, they are just these.
    for (state, zone, wanted) in [
        (1, "2a", &[1_003, 1_097][..]),
        (6, "2b", &[6_025]),
        (6, "4c", &[6_015, 6_023]),
        (6, "6b", &[6_003, 6_051]),
        (12, "1a", &[12_011, 12_086, 12_087]),
        (23, "7", &[23_003]),
        (24, "5a", &[24_023]),
        (32, "3b", &[32_003]),
        (40, "4b", &[40_007, 40_025, 40_139]),
        (49, "3b", &[49_053]),
    ] {
        let there: Vec<u32> = counties
            .iter()
            .filter(|(code, at)| **code / 1000 == state && **at == Some(zone))
            .map(|(code, _)| *code)
            .collect();
        assert_eq!(there, wanted, "{zone} in state {state}");
    }
}

#[test]
fn a_county_is_found_by_its_code_and_a_zip_code_by_its_counties() {
    let tables = Tables::read();
    let counties = county_table(&tables.zones);
    for (code, zone) in counties.iter().step_by(61) {
        let found = tables.find(&format!("#{code:05}"));
        assert_eq!(found.counties.len(), 1, "{code}");
        assert_eq!(
            (found.counties[0].county, found.counties[0].zone.map(Zone::name)),
            (*code, *zone),
            "{code}"
        );
        // Found by its own name it is among those of that name.
        let name = &found.counties[0].name;
        let again = tables.find(name);
        assert!(again.counties.iter().any(|one| one.county == *code), "{code} {name}: {again:?}");
    }
    // Every county of a ZIP code in several zones brings a zone of its set, and together they bring them all.
    let several: Vec<(String, Found)> = (0..100_000)
        .step_by(29)
        .map(|zip| format!("{zip:05}"))
        .map(|zip| (zip.clone(), find(&tables.zones, &[], &zip)))
        .filter(|(_, bare)| bare.zones.len() > 1)
        .map(|(zip, _)| (zip.clone(), tables.find(&zip)))
        .collect();
    assert!(several.len() > 25, "{}", several.len());
    for (zip, found) in several {
        let mut brought: Vec<Zone> = found.counties.iter().filter_map(|one| one.zone).collect();
        brought.sort_unstable();
        brought.dedup();
        assert_eq!(brought, found.zones, "{zip}");
        assert!(found.counties.iter().all(|one| one.name.contains(", ")), "{zip}: {found:?}");
    }
}

/// A table of the same map by another hand, where it lies beside the project; nothing of it is kept here.
#[test]
fn the_counties_agree_with_another_table_of_the_same_map() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/climate-zones-by-county.csv");
    let Ok(text) = std::fs::read_to_string(&file) else {
        println!("skipped: {} is not there", file.display());
        return;
    };
    let ours = county_table(&Tables::read().zones);
    let mut lines = text.lines();
    let head: Vec<&str> = lines.next().unwrap().trim_start_matches('\u{feff}').split(';').collect();
    let column = |name| head.iter().position(|one| *one == name).unwrap();
    let (code, number, letter) = (column("GEOID"), column("IECC15"), column("MOISTURE15"));
    let mut compared = 0;
    let mut off = Vec::new();
    for line in lines {
        let cells: Vec<&str> = line.split(';').collect();
        let code: u32 = cells[code].trim_start_matches('G').parse().unwrap();
        let letter =
            if matches!(cells[number], "7" | "8") { String::new() } else { cells[letter].to_lowercase() };
        let theirs = format!("{}{letter}", cells[number]);
        let here = ours.get(&code).copied();
        if theirs.is_empty() && code / 1000 == 72 {
            // Puerto Rico is blank there.
            continue;
        }
        compared += 1;
        if here != Some(Some(theirs.as_str())) {
            off.push((code, here.flatten().unwrap_or("").to_owned(), theirs));
        }
    }
    println!("{compared} counties compared, {} differ: {off:?}", off.len());
    assert!(compared > 3_100, "{compared}");
    let known = [
        // Aleutians West: the printed table has it in zone 7 (from memory), and so have all seven ZIP areas in it.
        (2_016, "7", "8"),
        // Kusilvak, formerly Wade Hampton: blank there; the printed table has Wade Hampton in zone 8.
        (2_158, "8", ""),
        // Valdez-Cordova was divided in 2019 into Chugach and Copper River: ours are both in zone 7.
        (2_261, "", "7"),
        // Bristol, Virginia: no letter there; all of Virginia is moist.
        (51_520, "4a", "4"),
    ];
    off.sort();
    assert_eq!(off, known.map(|(code, ours, theirs)| (code, ours.to_owned(), theirs.to_owned())));
    // The county list that ours was made from has six counties otherwise; ZIP areas drawn independently overrule
    // it (see the program that makes the table), and this third table says the same.
    for (code, zone) in [
        (6_001, "3c"),  // Alameda: 3B in that list, 3C by all 41 ZIP areas in the county alone
        (6_069, "3c"),  // San Benito: 3B there, 3C by all three
        (22_059, "3a"), // La Salle, Louisiana: 2A there, 3A by all three
        (48_049, "3a"), // Brown, Texas: 3B there, 3A by both
        (48_171, "3a"), // Gillespie, Texas: 3B there, 3A by both
        (48_429, "3a"), // Stephens, Texas: 3B there, 3A by six of the nine that reach into it
    ] {
        assert_eq!(ours[&code], Some(zone), "{code}");
    }
    assert_eq!((ours[&2_063], ours[&2_066]), (Some("7"), Some("7")));
}

/// Coordinates of cities as published (gazetteers agree to a tenth of a degree), against what the table has for a ZIP
/// code of theirs: a degree is four minutes of sunrise, and no run of codes spans more than two.
#[test]
fn a_zip_code_lies_about_where_its_city_does() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("www/app/places.bin");
    let places = std::fs::read(file).unwrap();
    for (zip, north, east) in [
        ("55401", 44.98, -93.27),
        ("02108", 42.36, -71.06),
        ("33101-1234", 25.76, -80.19),
        ("85001", 33.45, -112.07),
        ("60601", 41.88, -87.63),
        ("98101", 47.61, -122.33),
        ("96813", 21.31, -157.86),
        ("00901", 18.47, -66.11),
        ("10001", 40.71, -74.01),
        ("99950", 55.34, -131.65),
        ("99701", 64.84, -147.72),
    ] {
        let (lat, long) = position(&places, zip).unwrap_or_else(|| panic!("{zip}: no place"));
        assert!((lat - north).abs() <= 1.1 && (long - east).abs() <= 1.1, "{zip}: {lat}, {long}");
    }
    for none in ["", "5540", "00001", "09012", "Boston"] {
        assert_eq!(position(&places, none), None, "{none}");
    }
}
