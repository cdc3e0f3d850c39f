"""The calendar file of every whole job, opened by two parsers that know nothing of the page.

python tests/live/calendar_check.py target/tests/site

Python's icalendar reads the file here, Mozilla's ical.js in tests/checks/calendars.mjs. Both have to find each date of
the estimate that is still ahead, at its time, what is withdrawn as cancelled, and nothing else; what comes again is told
by dateutil and by ical.js.
"""

import datetime
import json
import math
import subprocess
import sys

import icalendar
from dateutil.rrule import rrulestr

EPOCH = datetime.datetime(1970, 1, 1)
DAY = datetime.timedelta(days=1)


def ahead(dates):
    """What is not behind us; kits that should be in the warm room are still to be moved while nothing was sprayed."""
    sprayed = any(one["of"] == "spray" and one["past"] for one in dates)
    return [one for one in dates if not one["past"] or (one["of"] == "warm_up" and not sprayed)]


def moment(minutes, rounded):
    return EPOCH + datetime.timedelta(minutes=rounded(minutes))


def plain(text):
    """As it comes back: line breaks are one kind, controls are blanks."""
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    return "".join(" " if (ord(char) < 32 and char not in "\t\n") or ord(char) == 127 else char for char in text)


answer = subprocess.run(["node", "tests/checks/calendars.mjs", *sys.argv[1:]], check=True, capture_output=True)
words = {}
for language in ("en", "es"):
    with open(f"www/words/{language}/calendar.json", encoding="utf-8") as file:
        words[language] = json.load(file)
events = times = rings = withdrawn = 0
kinds = set()
uids = {}
for file in json.loads(answer.stdout):
    where = f"{file['job']}, {file['language']}"
    raw = file["text"].encode("utf-8")
    assert all(len(line) <= 75 for line in raw.split(b"\r\n")), f"{where}: a line is too long"
    assert raw.endswith(b"\r\n") and raw.count(b"\n") == raw.count(b"\r\n") == raw.count(b"\r"), where
    calendar = icalendar.Calendar.from_ical(raw)
    assert not calendar.errors and str(calendar["VERSION"]) == "2.0" and calendar["PRODID"], where
    theirs = calendar.walk("VEVENT")
    wanted = ahead(file["dates"]) + file["gone"]
    assert len(theirs) == len(file["events"]) == len(wanted), f"{where}: {len(theirs)} events of {len(wanted)} dates"
    for date, one, other in zip(wanted, theirs, file["events"]):
        assert not one.errors, f"{where}: {one.errors}"
        uid = f"{file['id']}-{date['of']}-{date['part']}-{date['id']}@foamwright"
        assert str(one["UID"]) == other["uid"] == uid, f"{where}: {one['UID']}"
        said = words[file["language"]]
        summary = said[date["of"]]
        gone = date.get("gone", False)
        if gone:
            summary = said["gone"].replace("{what}", summary)
        # What is withdrawn carries the name of the event that it takes away, and no other does.
        assert one.get("STATUS") == other["status"] == ("CANCELLED" if gone else None), f"{where}: {other['status']}"
        # RFC 5545, section 3.8.7.4: a later file has a greater number.
        assert int(one["SEQUENCE"]) == other["edition"] == max(0, file["now"]["ms"] // 1000 - 1_767_225_600), where
        withdrawn += gone
        if date["name"]:
            summary = said["of"].replace("{what}", summary).replace("{name}", date["name"])
        assert str(one["SUMMARY"]) == other["summary"] == plain(summary), f"{where}: {other['summary']!r}, {summary!r}"
        assert str(one["DESCRIPTION"]) == other["description"] and "{" not in other["description"], where
        place = plain(file["place"].strip())
        assert str(one.get("LOCATION", "")) == (other["location"] or "") == place, f"{where}: {other['location']!r}"
        stamp = datetime.datetime.fromtimestamp(file["now"]["ms"] // 60_000 * 60, datetime.timezone.utc)
        assert one["DTSTAMP"].dt == stamp and other["stamp"] == stamp.strftime("%Y-%m-%dT%H:%M:%SZ"), where
        start = one["DTSTART"].dt
        assert other["day"] == date["all_day"] == (not isinstance(start, datetime.datetime)), where
        assert other["zone"] == "floating" and getattr(start, "tzinfo", None) is None, f"{where}: {start}, {other['zone']}"
        first = moment(date["at"], math.floor if date["of"] == "warm_up" or date["all_day"] else math.ceil)
        each = [first]
        if date.get("every_days"):
            last = moment(date["until"], math.floor)
            each = [first + DAY * math.floor(date["every_days"]) * n for n in range(500)]
            each = [at for at in each if at <= last]
            begins = datetime.datetime.combine(start, datetime.time())
            told = list(rrulestr(one["RRULE"].to_ical().decode(), dtstart=begins))
            assert told == each, f"{where}: {told}, {each}"
        else:
            assert "RRULE" not in one, where
        assert start == (first.date() if date["all_day"] else first), f"{where}: {start} against {first}"
        form = "%Y-%m-%d" if date["all_day"] else "%Y-%m-%dT%H:%M:%S"
        assert other["times"] == [at.strftime(form) for at in each], f"{where}: {other['times']} against {each}"
        alarms = one.walk("VALARM")
        assert len(alarms) == (date["of"] == "warm_up") == (other["rings"] == "-PT1H"), f"{where}: {other['rings']}"
        assert all(alarm["TRIGGER"].dt == datetime.timedelta(hours=-1) for alarm in alarms), where
        # One name in both languages, and for nothing else of this job.
        assert uids.setdefault((where, uid), date) is date, f"{where}: {uid} stands twice"
        kinds.add(date["of"])
        events += 1
        times += len(each)
        rings += len(alarms)
every = {key[: -len("_why")] for key in words["en"] if key.endswith("_why")}
assert kinds == every, f"never seen: {every - kinds}"
assert events > 500 and times > events and rings and withdrawn, (events, times, rings, withdrawn)
print(f"{events} events at {times} times, read alike by icalendar and ical.js, are the dates of the estimates")
