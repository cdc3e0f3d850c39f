"""Holds our dew points against psychrolib, live.

    cargo test --test dew_grid                                  # writes the grid
    python tests/live/psychrolib_check.py target/tmp/dew_grid.json

Needs psychrolib 2.5.0, which codes the same equations of the ASHRAE Handbook (2017) independently. Its dew
point is the frost point below freezing, and its humidity is over ice where the air is below freezing: the
column `dew_or_frost_f` follows it. `dew_over_water_f` is compared where the two are the same.
"""

import json
import sys

import psychrolib

# psychrolib ends its search at 0.001 °F, ours at 1e-10 K.
TOLERANCE_F = 0.001
# Where psychrolib changes from ice to water.
TRIPLE_POINT_F = 32.018


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


if __name__ == "__main__":
    main()
