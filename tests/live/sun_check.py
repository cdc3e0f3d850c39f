"""Holds our sunrise and sunset against astral, live.

    cargo test --test sun_grid                                  # writes the grid
    python tests/live/sun_check.py target/tmp/sun_grid.json

Needs astral 3.2, which works sunrise and sunset out by equations of the same kind, coded independently. At each event of
ours the sun has to stand 0.833° under the horizon by astral, and by the minute the two are compared where it crosses the
horizon at a fair angle: where it grazes along, a hundredth of a degree is minutes. Days without an event are held to the
height at noon or midnight.
"""

import datetime
import json
import math
import sys

from astral import Observer
from astral.sun import elevation, sunrise, sunset

UTC = datetime.timezone.utc
# A minute, where the sun crosses the horizon at a fair angle.
TOLERANCE_MIN = 1.0
# Degrees by which the height of the sun at an event of ours may miss −0.833 by astral.
TOLERANCE_DEG = 0.02


def apart(event, observer, near, at):
    """Minutes between ours and the event that astral files under a date; it may file none there."""
    try:
        return abs((event(observer, date=near.date(), tzinfo=at.tzinfo) - at).total_seconds()) / 60
    except ValueError:
        return math.inf


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        rows = json.load(file)["rows"]
    worst, worst_deg, compared, graze, polar = 0.0, 0.0, 0, 0, 0
    for north, east, offset, day, sun, *ours in rows:
        observer = Observer(north, east, 0.0)
        start = datetime.datetime(1970, 1, 1, tzinfo=UTC) + datetime.timedelta(days=day, minutes=-offset)
        clock = datetime.timezone(datetime.timedelta(minutes=offset))
        if sun != "rises":
            # Down: at noon. Up: at one of the two midnights at least; on the day on which it goes or comes at the other.
            noon = start + datetime.timedelta(minutes=(ours[0] + ours[1]) / 2)
            turns = (-12, 12) if sun == "up" else (0,)
            height = max(elevation(observer, noon + datetime.timedelta(hours=turn), with_refraction=False) for turn in turns)
            if (height > -0.833) != (sun == "up") and abs(height + 0.833) > TOLERANCE_DEG:
                sys.exit(f"{north} {east} {day}: {sun}, astral has the sun at {height:.3f}°")
            polar += 1
            continue
        for minute, event in zip(ours, (sunrise, sunset)):
            at = (start + datetime.timedelta(minutes=minute)).astimezone(clock)
            height = elevation(observer, at, with_refraction=False)
            worst_deg = max(worst_deg, abs(height + 0.833))
            before = elevation(observer, at - datetime.timedelta(minutes=5), with_refraction=False)
            a_minute = abs(height - before) / 5
            if a_minute < 0.08:
                graze += 1
                continue
            off = min(apart(event, observer, at + datetime.timedelta(days=turn), at) for turn in (-1, 0, 1))
            worst = max(worst, off)
            compared += 1
    print(f"astral: {compared} events within {worst:.2f} min; height at all of ours within {worst_deg:.3f}° of −0.833°; "
          f"{graze} graze the horizon, {polar} days without an event")  # fmt: skip
    if compared < 8000 or polar < 500:
        sys.exit("the grid is too small to say anything")
    if not (worst <= TOLERANCE_MIN and worst_deg <= TOLERANCE_DEG):
        sys.exit(f"further apart than {TOLERANCE_MIN} min or {TOLERANCE_DEG}°")


if __name__ == "__main__":
    main()
