//! Places against their climate zones, from the packed tables that the site ships.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use foamwright::climate::{Found, find};
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
    let missing: Vec<&str> = foamwright::climate::Zone::NAMES
        .into_iter()
        .filter(|zone| !PLACES.iter().any(|place| place.2 == *zone))
        .collect();
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
