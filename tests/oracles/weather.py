"""Remakes tests/published/weather.json: the sun, a day's air, and what surfaces make of it.

    bash tests/oracles/run weather        (or, with pvlib 0.16.1 and scipy installed: python tests/oracles/weather.py FILE)

- The sun by pvlib's code of the full solar position algorithm (Reda and Andreas 2004): where its center stands 0.833°
  under the horizon, found by bisection through the local day.
- The air by Parton and Logan 1981. Three values of their form as it was published are those that an R package of
  microclimate holds its own code to, copied here; the form that reaches the next low is coded anew.
- Thick masonry as a complex wave in a body that goes on, instead of the closed form for its size and lag.
- A plate that is warmed on one face, to the mean that is wanted, by the exact series.
- A clear sky on a wall: Meinel's beam with Kasten and Young's air mass, coded anew.
"""

import cmath
import datetime
import importlib.util
import json
import math
import pathlib
import sys

import numpy as np
from scipy.optimize import brentq

HERE = pathlib.Path(__file__).resolve().parent


def referee():
    """pvlib's spa.py alone: the rest of pvlib would bring a table library and a network client along."""
    package = pathlib.Path(importlib.util.find_spec("pvlib").submodule_search_locations[0])
    spec = importlib.util.spec_from_file_location("spa", package / "spa.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


SPA = referee()
# Place, latitude, longitude, clock, date.
SKIES = [
    ("Minneapolis", 44.98, -93.27, -6, "2024-01-15"),
    ("Minneapolis, summer time", 44.98, -93.27, -5, "2025-06-21"),
    ("Phoenix", 33.45, -112.07, -7, "2025-10-01"),
    ("Fairbanks", 64.84, -147.72, -9, "2025-12-21"),
    ("Fairbanks, midsummer", 64.84, -147.72, -8, "2026-06-21"),
    ("Miami", 25.76, -80.19, -5, "2025-03-20"),
    ("Boston", 42.36, -71.06, -5, "2025-11-05"),
    ("Utqiagvik, polar night", 71.3, -156.8, -9, "2025-12-21"),
    ("Utqiagvik, polar day", 71.3, -156.8, -8, "2026-06-21"),
    ("Utqiagvik, first sunrise", 71.3, -156.8, -9, "2026-01-25"),
    ("Sydney", -33.87, 151.21, 11, "2026-12-21"),
    ("Quito", -0.18, -78.47, -5, "2026-09-22"),
    ("Reykjavik", 64.15, -21.94, 0, "2026-11-02"),
]
# Where, when and which way a wall looks, in degrees from north.
WALLS = [
    (44.98, -93.27, -6, "2025-01-15", 12, 180),
    (44.98, -93.27, -6, "2025-06-21", 9, 90),
    (42.36, -71.06, -5, "2025-10-15", 14, 225),
]


def days(date):
    return (datetime.date.fromisoformat(date) - datetime.date(1970, 1, 1)).days


def position(lat, lon, tz, date, hour):
    """Height without the air's bending, and azimuth, in degrees."""
    unixtime = np.array([(days(date) * 24 + hour - tz) * 3600.0])
    answer = SPA.solar_position_numpy(unixtime, lat, lon, 0.0, 1013.25, 12.0, 69.2, 0.5667, 1)
    return float(answer[3][0]), float(answer[4][0])


def sky(place, lat, lon, tz, date):
    def up(hour):
        return position(lat, lon, tz, date, hour)[0] + 0.833

    # The sun stands highest where the time that it takes to fall is as long as the time that it took to rise.
    def turned(hour):
        return math.sin(math.radians(position(lat, lon, tz, date, hour)[1] - (180 if lat > 23.5 else 0)))

    noon = brentq(turned, 9, 16, xtol=1e-7)
    rise = brentq(up, noon - 12, noon, xtol=1e-7) if up(noon) > 0 > up(noon - 12) else None
    set_ = brentq(up, noon, noon + 12, xtol=1e-7) if up(noon) > 0 > up(noon + 12) else None
    stays = None if rise is not None else "up" if up(noon) > 0 else "down"
    height, azimuth = position(lat, lon, tz, date, 10)
    return {
        "place": place, "latitude": lat, "longitude": lon, "clock_h": tz, "day": days(date), "stays": stays,
        "rise_h": rise and round(rise, 5), "noon_h": round(noon, 5), "set_h": set_ and round(set_, 5),
        "height_10h_deg": round(height, 4), "azimuth_10h_deg": round(azimuth, 4),
    }  # fmt: skip


def air(low, high, next_low, before, rise, sets, hour, after_noon=2.0, after_rise=0.3, falls=2.0):
    day = sets - rise

    def sine(low, high, hour):
        return low + (high - low) * math.sin(math.pi * (hour - rise - after_rise) / (day + 2 * (after_noon - after_rise)))

    def night(at_sunset, to, dark):
        q, left = math.exp(-falls), math.exp(-falls * dark / (24 - day + after_rise))
        return (to - at_sunset * q + (at_sunset - to) * left) / (1 - q)

    if hour < rise + after_rise:
        return night(sine(*before, sets), low, hour + 24 - sets)
    if hour <= sets:
        return sine(low, high, hour)
    return night(sine(low, high, sets), next_low, hour - sets)


COURSES = [
    # low, high, next low, the day before, sunrise, sunset: physics of a fall day, a short one, a turn to cold.
    ((44, 71, 46, (44, 68), 6.957, 18.029), (0, 3, 6, 7, 9, 12, 14, 15, 18, 21, 23.99)),
    ((12, 30, 5, (20, 33), 10.98, 14.98), (0, 8, 11.2, 13, 14.98, 15, 20, 24)),
    ((61, 92, 48, (58, 88), 5.44, 21.06), (2, 5.7, 10, 15.25, 21.06, 23)),
]


def wave(k, density, heat, film):
    """What a face makes of a daily wave in the air: 1 / (1 + k s / h), s the wave's root in the body."""
    root = cmath.sqrt(1j * 2 * math.pi / 86400 * density * heat / k)
    answer = 1 / (1 + k * root / film)
    return abs(answer), -cmath.phase(answer) / (2 * math.pi) * 24


def plate(k, density, heat, thick, film, start, to, warm):
    """Hours until the mean of a plate reaches `to`: x tan x = h L / k, two hundred roots."""
    bi = film * thick / k
    roots = [
        brentq(lambda x: x * math.sin(x) - bi * math.cos(x), n * math.pi, n * math.pi + math.pi / 2)
        for n in range(200)
    ]

    def left(hours):
        fo = k / (density * heat) * hours * 3600 / thick**2
        return sum(2 * bi**2 / (x**2 * (bi**2 + bi + x**2)) * math.exp(-(x**2) * fo) for x in roots)

    wanted = (warm - to) / (warm - start)
    return brentq(lambda hours: left(hours) - wanted, 1e-6, 2000)


def wall(lat, lon, tz, date, hour, looks):
    height, azimuth = position(lat, lon, tz, date, hour)
    s = math.sin(math.radians(height))
    mass = 1 / (s + 0.50572 * (height + 6.07995) ** -1.6364)
    beam = 1353 * 0.7 ** (mass**0.678)
    facing = math.cos(math.radians(height)) * max(0, math.cos(math.radians(azimuth - looks)))
    return beam * facing + 0.1 * beam / 2 + 0.2 * (beam * s + 0.1 * beam) / 2


CONCRETE, BRICK, WOOD, STEEL = (1.7, 2300, 900), (0.8, 1900, 840), (0.13, 650, 1600), (50, 7850, 490)


def main():
    published = dict(low=10, high=30, rise=6, set=18, after_noon=2.59, after_rise=1.55, falls=2.2)
    out = {
        "tool": "pvlib (spa.py), scipy",
        "version": "0.16.1, 1.17.1",
        "sun": [sky(*row) for row in SKIES],
        "on_wall": [
            dict(latitude=lat, longitude=lon, clock_h=tz, day=days(date), hour=hour, looks_deg=looks,
                 w_m2=round(wall(lat, lon, tz, date, hour, looks), 2))
            for lat, lon, tz, date, hour, looks in WALLS
        ],
        "air_as_published": [
            dict(published, hour=hour, air=value) for hour, value in ((11, 23.91954), (20, 20.46866), (3, 13.35971))
        ],
        "air": [
            dict(low=low, high=high, next_low=after, before=before, rise=rise, set=sets, hour=hour,
                 air=round(air(low, high, after, before, rise, sets, hour), 6))
            for (low, high, after, before, rise, sets), hours in COURSES for hour in hours
        ],
        "masonry": [
            dict(body=body, film=film, size=round(wave(*body, film)[0], 6), lag_h=round(wave(*body, film)[1], 6))
            for body, film in ((CONCRETE, 8), (CONCRETE, 17), (BRICK, 8), (WOOD, 8))
        ],
        "inner_face": [
            dict(outside=outside, outer_f=outer, room_f=room, face_f=round(outer + (room - outer) * outside / (outside + 0.12), 6))
            for outer, room, outside in ((30, 70, 0.11), (30, 70, 0.21), (10, 65, 0.21), (40, 68, 0.11), (85, 75, 0.21))
        ],
        "plate": [
            dict(body=body, inches=inches, start_f=start, to_f=to, warm_f=warm,
                 hours=round(plate(*body, inches * 0.0254, 8, start, to, warm), 5))
            for body, inches, start, to, warm in (
                (CONCRETE, 4, 40, 60, 90), (CONCRETE, 8, 46, 60.8, 75), (CONCRETE, 6, 35, 60, 66), (BRICK, 8, 40, 60, 80),
                (WOOD, 0.4375, 39.2, 60.8, 75), (STEEL, 0.0625, 39.2, 60.8, 75),
            )
        ],
    }  # fmt: skip
    file = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else HERE.parent / "published" / "weather.json"
    lists = [
        f' {json.dumps(name)}: ' + ("[\n  " + ",\n  ".join(json.dumps(row) for row in rows) + "\n ]" if isinstance(rows, list) else json.dumps(rows))
        for name, rows in out.items()
    ]  # fmt: skip
    file.write_text("{\n" + ",\n".join(lists) + "\n}\n")


if __name__ == "__main__":
    main()
