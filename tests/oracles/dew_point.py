"""Remakes tests/published/dew_point.json: dew and frost points of a real-gas model of moist air.

Run it with CoolProp 8.0.0 installed: python tests/oracles/dew_point.py [FILE]

CoolProp's humid-air model is independent of the equations in the ASHRAE Handbook: water by IAPWS,
ice by the IAPWS equation for ice, air as a real gas with an enhancement factor, at 101 325 Pa. Its dew point
below freezing is the frost point, and its relative humidity below freezing is over ice.
"""

import json
import pathlib
import sys

import CoolProp
from CoolProp.HumidAirProp import HAPropsSI

HERE = pathlib.Path(__file__).resolve().parent
PRESSURE_PA = 101325.0


def kelvin(f):
    return (f + 459.67) / 1.8


def fahrenheit(k):
    return k * 1.8 - 459.67


def main():
    out = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else HERE.parent / "published" / "dew_point.json"
    rows = []
    for air_f in range(20, 111, 5):
        for humidity_pct in range(5, 101, 5):
            dew_k = HAPropsSI("D", "T", kelvin(air_f), "P", PRESSURE_PA, "R", humidity_pct / 100.0)
            rows.append([air_f, humidity_pct, round(fahrenheit(dew_k), 4)])
    head = {
        "tool": "CoolProp",
        "version": CoolProp.__version__,
        "what": "dew point of moist air at 101325 Pa; below 32 F the frost point; "
        "humidity over ice where the air is below freezing",
        "columns": ["air_f", "humidity_pct", "dew_or_frost_f"],
    }
    lines = ",\n".join("  " + json.dumps(row) for row in rows)
    text = json.dumps(head, indent=1)[:-2] + ',\n "rows": [\n' + lines + "\n ]\n}\n"
    json.loads(text)
    out.write_text(text)


if __name__ == "__main__":
    main()
