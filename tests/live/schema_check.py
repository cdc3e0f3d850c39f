"""Validates every job of tests/jobs against the published schema of its version, www/job-v*.schema.json.

    python tests/live/schema_check.py

Needs jsonschema 4.26. It also spoils a job in several ways and fails unless the schema refuses each.
"""

import copy
import json
import pathlib
import sys

from jsonschema import Draft202012Validator

ROOT = pathlib.Path(__file__).resolve().parents[2]


def load(path):
    return json.loads(path.read_text(encoding="utf-8"))


def spoiled(job):
    """The job with one fault each."""

    def fault(name, change):
        other = copy.deepcopy(job)
        change(other)
        return name, other

    yield fault("another format", lambda it: it.update(format="drawing"))
    yield fault("another version", lambda it: it.update(version=9))
    yield fault("no id", lambda it: it.pop("id"))
    yield fault("entries as numbers", lambda it: it.update(entries=[{"field": "site_age", "text": 120}]))
    yield fault("an unknown field", lambda it: it.update(entries=[{"field": "mood", "text": "1"}]))
    yield fault("a field of another part", lambda it: it.update(entries=[{"field": "label_yield", "text": "1"}]))
    yield fault("an unknown unit", lambda it: it.update(entries=[{"field": "site_age", "text": "1", "unit": "rod"}]))
    yield fault("a surface without a shape", lambda it: it.update(surfaces=[{"id": 1}]))
    yield fault("an unknown shape", lambda it: it.update(surfaces=[{"id": 1, "shape": "cone"}]))
    yield fault("a reading without a kind", lambda it: it.update(readings=[{"id": 1}]))
    yield fault("a stamp without its offset", lambda it: it.update(readings=[{"id": 1, "of": "air", "taken": {"ms": 1}}]))
    yield fault("half a kit", lambda it: it.update(purchase={"buy": [{"kit": 1, "count": 1.5}]}))


def catalogue_faults():
    """The schema of a catalogue file takes the samples that we ship and refuses what a reader refuses."""
    schema = load(ROOT / "www/catalogue-v1.schema.json")
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)

    def file(**over):
        sheets = {"foams": load(ROOT / "www/sample/foams.json"), "kits": load(ROOT / "www/sample/kits.json")}
        for one in sheets["foams"] + sheets["kits"]:
            one["sheet"] = one["sheet"].replace("sample-", "own-")
        return {"format": "foamwright-catalogue", "version": 1, **sheets, "owned": [], **over}

    kit = file()["kits"][0]
    spoiled = {
        "another format": file(format="foamwright-job"),
        "a newer version": file(version=2),
        "kits that are no list": file(kits={}),
        "a sheet without an id": file(kits=[{"version": 1}]),
        "the id of a sample": file(kits=[{**kit, "sheet": "sample-small-40"}]),
        "half a version": file(kits=[{**kit, "version": 1.5}]),
        "a number for a text": file(kits=[{**kit, "entries": [{"field": "price", "text": 92}]}]),
        "a field called __proto__": file(kits=[{**kit, "entries": [{"field": "__proto__", "text": "1"}]}]),
    }
    faults = [f"catalogue: {error.json_path}: {error.message}" for error in validator.iter_errors(file())]
    faults += [f"taken for a catalogue: {name}" for name, one in spoiled.items() if validator.is_valid(one)]
    return faults


def answers_faults():
    """The schema of an answer file takes what the page writes and refuses what its reader refuses."""
    schema = load(ROOT / "www/answers-v1.schema.json")
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    step = {"text": "5.11", "unit": "ft", "sense": "decimal_feet", "hints": 2, "shown": False}

    def file(**over):
        answers = [{"seed": "1-4-7f3a", "units": "metric", "seen": True, "steps": [step, {"text": "", "unit": "ft2", "hints": 0, "shown": True}]}]
        return {"format": "foamwright-answers", "version": 1, "units": "metric", "language": "es",
                "seeds": ["1-1-0b11", "1-4-7f3a"], "answers": answers, "saved": 1778590800000, **over}

    def one(**over):
        return file(answers=[{"seed": "1-4-7f3a", "units": "us", "steps": [{**step, **over}]}])

    spoiled = {
        "another format": file(format="foamwright-job"),
        "a newer version": file(version=2),
        "odd units": file(units="cubits"),
        "no exercises": file(seeds=[]),
        "an answer without units": file(answers=[{"seed": "1-4-7f3a", "steps": []}]),
        "an exercise twice": file(seeds=["1-1-0b11", "1-1-0b11"]),
        "a seed of another form": file(seeds=["1-1-0B11"]),
        "a number for a text": one(text=5.11),
        "half a hint": one(hints=0.5),
        "shown as text": one(shown="no"),
        "a unit with script": one(unit="<img>"),
    }
    faults = [f"answers: {error.json_path}: {error.message}" for error in validator.iter_errors(file())]
    faults += [f"taken for answers: {name}" for name, it in spoiled.items() if validator.is_valid(it)]
    return faults


def main():
    validators = {}
    for path in sorted((ROOT / "www").glob("job-v*.schema.json")):
        version = int(path.name.removeprefix("job-v").split(".")[0])
        schema = load(path)
        Draft202012Validator.check_schema(schema)
        validators[version] = Draft202012Validator(schema)
    validator = validators[max(validators)]
    faults = []
    files = sorted((ROOT / "tests/jobs").rglob("job.json"))
    for path in files:
        job = load(path)
        for error in validators[job["version"]].iter_errors(job):
            faults.append(f"{path.relative_to(ROOT)}: {error.json_path}: {error.message}")
    if not files:
        faults.append("no job in tests/jobs")
    kinds = 0
    for name, job in spoiled(load(ROOT / "tests/jobs/larkspur-lane/job.json")):
        kinds += 1
        if validator.is_valid(job):
            faults.append(f"taken for a job: {name}")
    faults += catalogue_faults() + answers_faults()
    if faults:
        sys.exit("\n".join(faults))
    print(f"schema: {len(files)} jobs valid, {kinds} spoiled ones refused")


if __name__ == "__main__":
    main()
