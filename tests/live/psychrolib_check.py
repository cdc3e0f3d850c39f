"""Holds our dew points, and the air of rooms that give off water, against psychrolib, live.

    cargo test --test dew_grid --test moist_people                                  # writes both grids
    python tests/live/psychrolib_check.py target/tmp/dew_grid.json target/tmp/room_grid.json

Needs psychrolib 2.5.0, which codes the same equations of the ASHRAE Handbook (2017) independently. Its dew
point is the frost point below freezing, and its humidity is over ice where the air is below freezing: the
column `dew_or_frost_f` follows it. `dew_over_water_f` is compared where the two are the same. A room's dew point is that of
the humidity ratio outdoors and of the water taken up; the wet bulbs are worked out over our saturation pressures.
"""

import json
import sys

import psychrolib

# psychrolib ends its search at 0.001 °F, ours at 1e-10 K.
TOLERANCE_F = 0.001
# Where psychrolib changes from ice to water.
TRIPLE_POINT_F = 32.018
# One standard atmosphere in pounds-force a square inch.
ATMOSPHERE_PSI = 101325.0 / 6894.757


def rooms(grid):
    """The worst difference over all rooms, and over all wet bulbs; the fewest of either is demanded."""
    dews, wets = [], []
    for air_f, humidity_pct, rise, dew_f in grid["rooms"]:
        outside = psychrolib.GetHumRatioFromRelHum(air_f, humidity_pct / 100.0, ATMOSPHERE_PSI)
        wanted = psychrolib.GetTDewPointFromHumRatio(200.0, outside + rise, ATMOSPHERE_PSI)
        if wanted > TRIPLE_POINT_F:
            dews.append(abs(wanted - dew_f))
    # The constants of the wet bulb's equation are rounded apart in the two systems: ours are those of SI.
    psychrolib.SetUnitSystem(psychrolib.SI)
    for air_f, humidity_pct, wet_f in grid["wet_bulbs"]:
        wanted = psychrolib.GetTWetBulbFromRelHum((air_f - 32.0) / 1.8, humidity_pct / 100.0, 101325.0) * 1.8 + 32.0
        if wanted > TRIPLE_POINT_F:
            wets.append(abs(wanted - wet_f))
    print(f"rooms: {len(dews)} within {max(dews):.5f} °F; wet bulbs: {len(wets)} within {max(wets):.5f} °F")
    if len(dews) < 500 or len(wets) < 120:
        sys.exit("the grid of rooms is too small to say anything")
    # It ends its search at 0.001 °C.
    if not (max(dews) <= TOLERANCE_F and max(wets) <= 0.0018):
        sys.exit("rooms or wet bulbs are further apart")


def main():
    psychrolib.SetUnitSystem(psychrolib.IP)
    with open(sys.argv[1], encoding="utf-8") as file:
        rows = json.load(file)["rows"]
    worst, compared, water = 0.0, 0, 0
    for air_f, humidity_pct, dew_f, dew_or_frost_f in rows:
        wanted = psychrolib.GetTDewPointFromRelHum(air_f, humidity_pct / 100.0)
        worst = max(worst, abs(wanted - dew_or_frost_f))
        compared += 1
        if wanted > TRIPLE_POINT_F:
            worst = max(worst, abs(wanted - dew_f))
            water += 1
    print(f"psychrolib: {compared} points, {water} of them over water, within {worst:.5f} °F")
    if len(rows) < 1000 or water < 500:
        sys.exit("the grid is too small to say anything")
    if not worst <= TOLERANCE_F:
        sys.exit(f"further apart than {TOLERANCE_F} °F")
    with open(sys.argv[2], encoding="utf-8") as file:
        rooms(json.load(file))


if __name__ == "__main__":
    main()
