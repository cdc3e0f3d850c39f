"""Remakes tests/published/moist_people.json: moist air in a room that gives off water, and air through a zone.

    python tests/oracles/moist_people.py [FILE]

Needs psychrolib (the equations of the ASHRAE Handbook, coded apart), chemicals (heats of formation of the CRC Handbook
and stoichiometry), numpy and scipy. What settles is found by integrating the room's balance in time until it stands
still, not by the closed form; what is left of a contaminant by integrating its decay.
"""

import json
import math
import pathlib
import sys

import chemicals
import numpy as np
import psychrolib
import scipy
from chemicals.combustion import HHV_stoichiometry, combustion_stoichiometry
from chemicals.elements import simple_formula_parser
from chemicals.reaction import Hfg, Hfl
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

HERE = pathlib.Path(__file__).resolve().parent
PA = 101325.0
RATIO = 0.621945
# NIST SP 811: kJ in a Btu of the international table, grams in a pound.
KJ_BTU, G_LB, WATER_G = 1.05505585262, 453.59237, 18.01528


def celsius(f):
    return (f - 32.0) / 1.8


def fahrenheit(c):
    return c * 1.8 + 32.0


def over_water(f):
    """ASHRAE Handbook 2017, chapter 1, equation 6, carried on below freezing; as meters show humidity."""
    k = celsius(f) + 273.15
    return math.exp(
        -5.8002206e3 / k + 1.3914993 - 4.8640239e-2 * k + 4.1764768e-5 * k * k - 1.4452093e-8 * k**3
        + 6.5459673 * math.log(k)
    )


def dew_of(ratio):
    vapor = PA * ratio / (RATIO + ratio)
    return brentq(lambda f: over_water(f) - vapor, -140.0, 212.0, xtol=1e-11, rtol=1e-14)


def settled(outside, water, volume, changes, hours=None):
    """Pounds of water to the pound of air, by integrating d(ratio)/dt = water/(0.075 V) - n (ratio - outside)."""
    until = hours if hours is not None else 60.0 / changes
    slope = lambda _, ratio: water / (0.075 * volume) - changes * (ratio - outside)
    run = solve_ivp(slope, (0.0, until), [outside], method="DOP853", rtol=1e-12, atol=1e-14)
    return float(run.y[0, -1])


def heaters():
    rows = []
    for word, cas, formula, of in [
        ("propane", "74-98-6", "C3H8", Hfg),
        ("natural_gas", "74-82-8", "CH4", Hfg),
        ("kerosene", "112-40-3", "C12H26", Hfl),
    ]:
        burnt = combustion_stoichiometry(simple_formula_parser(formula))
        gross = -HHV_stoichiometry(burnt, of(cas, method="CRC")) / 1000.0
        water = 100_000.0 * KJ_BTU / gross * burnt["H2O"] * WATER_G / G_LB
        rows.append({"fuel": word, "kj_mol": round(gross, 3), "lb_100000_btu": round(water, 5)})
    return rows


def rooms():
    """Air, humidity, water in pounds an hour, volume, changes: the dew point that it settles at; last, after one sealed hour."""
    rows = []
    for air, humidity, water, volume, changes in [
        (30, 80, 7.5, 12000, 0.5), (30, 80, 7.5, 12000, 1), (30, 80, 7.5, 12000, 2), (30, 80, 7.5, 12000, 4),
        (0, 70, 2.0, 9600, 0.5), (45, 90, 1.2, 2400, 3), (70, 50, 3.0, 4800, 8), (95, 40, 0.9, 1500, 0.35),
        (-20, 60, 4.0, 20000, 1), (60, 100, 12.0, 30000, 2),
    ]:
        outside = RATIO * (vapor := humidity / 100.0 * over_water(air)) / (PA - vapor)
        ratio = settled(outside, water, volume, changes)
        sealed = settled(outside, water, volume, 0.0, hours=1.0)
        row = {
            "air_f": air, "humidity_pct": humidity, "water_lb_hr": water, "volume_ft3": volume, "changes": changes,
            "ratio": round(ratio, 10), "dew_f": round(dew_of(ratio), 5), "sealed_dew_f": round(dew_of(sealed), 5),
        }
        # psychrolib takes humidity over ice below freezing: it is the second witness above.
        if air > 33 and fahrenheit_dew(ratio) > 32.1:
            row["psychrolib_dew_f"] = round(fahrenheit_dew(ratio), 3)
            theirs = psychrolib.GetHumRatioFromRelHum(celsius(air), humidity / 100.0, PA)
            assert abs(theirs - outside) < 1e-8, (theirs, outside)
        rows.append(row)
    return rows


def fahrenheit_dew(ratio):
    return fahrenheit(psychrolib.GetTDewPointFromHumRatio(60.0, ratio, PA))


def wet_bulbs():
    rows = []
    for air, humidity in [(70, 50), (90, 80), (60, 40), (40, 90), (75, 35), (100, 30), (50, 100), (110, 10), (85, 60)]:
        wet = psychrolib.GetTWetBulbFromRelHum(celsius(air), humidity / 100.0, PA)
        rows.append({"air_f": air, "humidity_pct": humidity, "wet_bulb_f": round(fahrenheit(wet), 3)})
    return rows


def purges():
    """Volume, flow, K, percent left: minutes, by integrating the decay until so much is left."""
    rows = []
    for volume, flow, mixing, left in [
        (2400, 350, 1, 5), (2400, 350, 3, 5), (1200, 200, 1, 1), (1200, 200, 1, 0.1), (9600, 900, 4, 0.5),
        (640, 55, 10, 50), (30000, 2500, 2.5, 1),
    ]:
        there = lambda _, share: share[0] - left / 100.0
        there.terminal = True
        run = solve_ivp(
            lambda _, share: -flow / (volume * mixing) * share, (0.0, 1e5), [1.0], events=there, method="DOP853",
            rtol=1e-12, atol=1e-16, max_step=volume * mixing / flow,
        )
        rows.append({"volume_ft3": volume, "flow_cfm": flow, "mixing": mixing, "left_pct": left,
                     "minutes": round(float(run.t_events[0][0]), 6)})
    return rows


def leaks():
    """Flow through a sharp-edged hole: 0.65 A sqrt(2 p / rho), air at 1.204 kg/m3, from square inches and pascals."""
    rows = []
    for in2, pa in [(20, 5.0), (144, 249.09), (60, 5.0), (8, 5.0), (500, 5.0)]:
        m3_s = 0.65 * in2 * 0.0254**2 * float(np.sqrt(2.0 * pa / 1.204))
        rows.append({"in2": in2, "pa": pa, "cfm": round(m3_s / 0.3048**3 * 60.0, 4)})
    return rows


def main():
    psychrolib.SetUnitSystem(psychrolib.SI)
    out = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else HERE.parent / "published" / "moist_people.json"
    parts = {"heaters": heaters(), "rooms": rooms(), "wet_bulbs": wet_bulbs(), "purges": purges(), "leaks": leaks()}
    lines = [f' "tools": {json.dumps(["psychrolib 2.5.0", f"chemicals {chemicals.__version__}", f"numpy {np.__version__}", f"scipy {scipy.__version__}"])}']
    for name, rows in parts.items():
        body = ",\n".join("  " + json.dumps(row) for row in rows)
        lines.append(f' "{name}": [\n{body}\n ]')
    text = "{\n" + ",\n".join(lines) + "\n}\n"
    json.loads(text)
    out.write_text(text)


if __name__ == "__main__":
    main()
