"""The published schema of an embed's settings and the page's own reader agree on what is of the form.

    python tests/live/embed_settings_check.py

Needs jsonschema 4.26 and node. Thousands of settings are given to both: each key with each of a list of values, and one to
three things spoiled at random (the same ones in every run). What a schema cannot say, the reader alone refuses: those reasons are listed in BEYOND.
"""

import copy
import json
import pathlib
import random
import subprocess
import sys

from jsonschema import Draft202012Validator
from referencing import Registry, Resource

ROOT = pathlib.Path(__file__).resolve().parents[2]
DEMOS = ["company-settings.json", "company-crawl-settings.json"]
ROUNDS = 3000

# Reasons that only the reader knows: an id that stands twice, a color that is too pale, a link that no browser follows.
BEYOND = {"twice", "pale", "link"}

WORDS = [
    "", " ", "kits", "price", "en", "es", "visitor", "us", "metric", "dome", "rim_run", "cone", "in", "rod", "sum", "#0b5c6b", "#0B5C6B", "#fff",
    "#12345g", "2 in", "foamwright-embed", "foamwright-job", "https://example.com/", "http://example.com/", "HTTPS://example.com/",
    "javascript:alert(1)", "mailto:a@example.com", "tel:", "tel:1", " tel:1", "x" * 41, "x" * 81, "x" * 121, "x" * 301, "x" * 601,
    "a\nb", "a\u202eb", "a\u200bb", "\u00a0", "ñandú ½″", "__proto__", "sample-x", "own-x", "a b",
]
VALUES = [None, True, False, 0, 1, 2, 1.5, -1, 10**10, [], {}, [[]], [None], {"en": "a"}, {"es": "a", "en": 1}, {"fr": "a"}, {"en": " "}, {"en": "a", "es": "x" * 81}, *WORDS]
KEYS = [
    "company", "title", "language", "units", "foams", "kits", "sales_tax", "delivery", "sections", "surfaces", "start", "depths", "colors",
    "contact", "disclaimer", "send", "owned", "light", "dark", "ground", "accent", "name", "link", "shape", "entries", "field", "text", "unit",
    "sense", "sheet", "version", "format", "en", "es", "$schema", "constructor", "__proto__",
]


def load(name):
    return json.loads((ROOT / "www" / name).read_text(encoding="utf-8"))


def validator():
    schema = load("embed-settings-v1.schema.json")
    Draft202012Validator.check_schema(schema)
    beside = ["catalogue-v1.schema.json", "job-v4.schema.json"]
    registry = Registry().with_resources([(name, Resource.from_contents(load(name))) for name in beside])
    return Draft202012Validator(schema, registry=registry)


def places(value):
    """Every object and list below a value, itself first."""
    yield value
    for one in value.values() if isinstance(value, dict) else value:
        if isinstance(one, (dict, list)):
            yield from places(one)


def spoil(settings, dice):
    """Changes one thing somewhere: a value, a key, the length of a list."""
    place = dice.choice(list(places(settings)))
    if isinstance(place, dict):
        key = dice.choice(sorted(place) or KEYS)
        way = dice.randrange(4)
        if way == 0:
            place.pop(key, None)
        elif way == 1:
            place[dice.choice(KEYS)] = copy.deepcopy(dice.choice(VALUES))
        else:
            place[key] = copy.deepcopy(dice.choice(VALUES))
    elif place:
        at = dice.randrange(len(place))
        way = dice.randrange(4)
        if way == 0:
            del place[at]
        elif way == 1:
            # Longer than most lists may be.
            place.extend(copy.deepcopy(place[at]) for _ in range(dice.randrange(1, 45)))
        else:
            place[at] = copy.deepcopy(dice.choice(VALUES))
    else:
        place.append(copy.deepcopy(dice.choice(VALUES)))


def short(settings):
    """The same with few entries, so that what is spoiled lies everywhere alike."""
    for sheet in settings["foams"] + settings["kits"]:
        sheet["entries"] = sheet["entries"][:2]
        sheet["r_at"] = sheet["r_at"][:1] if "r_at" in sheet else []
    return {**settings, "foams": settings["foams"][:1], "kits": settings["kits"][:2]}


def spoiled():
    dice = random.Random(20)
    demos = [short(load(name)) for name in DEMOS]
    for key in demos[0]:
        yield from ({**demos[0], key: value} for value in VALUES)
    for _ in range(ROUNDS):
        settings = copy.deepcopy(dice.choice(demos))
        for _ in range(dice.randrange(1, 4)):
            spoil(settings, dice)
        yield settings


def read(all_settings):
    """What the reader finds wrong with each of them."""
    lines = "".join(json.dumps(one) + "\n" for one in all_settings)
    answer = subprocess.run(["node", ROOT / "tests/checks/embed_read.mjs"], input=lines, capture_output=True, text=True, check=True)
    return [json.loads(line) for line in answer.stdout.splitlines()]


def main():
    valid = validator()
    faults = [f"{name}: {error.json_path}: {error.message}" for name in DEMOS for error in valid.iter_errors(load(name))]
    all_settings = list(spoiled())
    found = read(all_settings)
    if len(found) != len(all_settings):
        sys.exit(f"{len(found)} answers for {len(all_settings)} settings")
    refused = taken = beyond = 0
    for settings, told in zip(all_settings, found):
        plain = [(at, why) for at, why in told if why not in BEYOND]
        errors = [f"{error.json_path}: {error.message[:80]}" for error in valid.iter_errors(settings)]
        refused += bool(errors)
        taken += not errors and not told
        beyond += len(told) > len(plain)
        # Where the schema refuses, the reader has to name a place, and the other way round.
        if bool(errors) != bool(plain):
            faults.append(f"schema {errors[:3]}, reader {told[:3]}")
    if min(refused, taken, beyond) < 50:
        faults.append(f"the settings are too much alike: {refused} refused, {taken} taken, {beyond} beyond the schema")
    if faults:
        sys.exit("\n".join(faults[:20]) + f"\n{len(faults)} faults")
    print(f"settings of an embed: {len(found)} spoiled ones, {refused} refused by schema and reader, {taken} taken by both")


if __name__ == "__main__":
    main()
