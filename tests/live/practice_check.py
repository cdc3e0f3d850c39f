"""Works exercises out anew from what a student is given, live: question, data sheets, kits, readings.

    cargo build                                           # the program that is asked
    python tests/live/practice_check.py target/debug/foamwright

Needs shapely 2.1.2 (areas of drawn surfaces), psychrolib 2.5.0 (dew points), astral 3.2 (the sun behind a day's curve) and
scipy 1.17.1 (cylinders that warm, by tests/oracles/warm_up.py). No formula of ours is read: texts are read here by a reader
of its own, kits are counted in whole numbers, R between two rows is drawn straight, what the code asks stands here once more
as it is printed. Each scene has to be known here; each answer has to agree within half of what is let pass.
"""

import collections
import datetime
import itertools
import json
import math
import pathlib
import re
import subprocess
import sys
from fractions import Fraction

import psychrolib
from astral import Observer
from astral.sun import sun
from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "oracles"))
from warm_up import Cylinder, hours_until  # noqa: E402

# Exercises of each scene, in each system of units.
WANTED = 60
LEVELS = (1, 2, 3, 4)
RSI = 5.678263341
PERM = 57.2135
psychrolib.SetUnitSystem(psychrolib.IP)


# ---- reading what is written


def number(text):
    """`7 1/4`, `1/2`, `3.5`, exactly."""
    total = Fraction(0)
    for part in text.split():
        total += Fraction(part)
    return total


def length(text):
    """Inches, of `27' 6 1/2"`, `40 in`, `7 1/4 in`, `6.035 m`, `711 mm`."""
    text = text.strip()
    feet = re.fullmatch(r"(\d+)' ?(?:([\d /.]+)\")?", text)
    if feet:
        return float(int(feet[1]) * 12 + (number(feet[2]) if feet[2] else 0))
    amount, unit = re.fullmatch(r"([\d /.]+) ?(in|mm|cm|m|ft)", text).groups()
    return float(number(amount) * {"in": 1, "mm": Fraction(10, 254), "cm": Fraction(100, 254), "m": Fraction(10000, 254), "ft": 12}[unit])


def area(text):
    """Square feet."""
    amount, unit = re.fullmatch(r"([\d /.]+) ?(ft²|ft2|m²|m2)", text.strip()).groups()
    return float(number(amount)) * (1.0 if unit.startswith("ft") else 1 / 0.09290304)


def degrees(text):
    amount, unit = re.fullmatch(r"(-?[\d.]+) ?°?([FC])", text.strip()).groups()
    return float(amount) if unit == "F" else float(amount) * 1.8 + 32


def spread(text):
    amount, unit = re.fullmatch(r"([\d.]+) ?°?([FC])", text.strip()).groups()
    return float(amount) * (1 if unit == "F" else 1.8)


def resistance(text):
    kind, amount = re.fullmatch(r"(R-|RSI )([\d.]+)", text.strip()).groups()
    return float(amount) * (1 if kind == "R-" else RSI)


def pitch(text):
    rise, run = text.split("/")
    return float(Fraction(rise) / Fraction(run))


def minutes(text):
    amount, unit = re.fullmatch(r"([\d.]+) ?(min|h)", text.strip()).groups()
    return float(amount) * (60 if unit == "h" else 1)


class Question:
    """What a student sees of an exercise."""

    def __init__(self, exercise):
        self.exercise = exercise
        self.job = exercise["job"]
        self.metric = self.job["units"] == "metric"
        self.given = {one["key"]: one for one in exercise["given"]}
        self.shown = collections.defaultdict(list)
        for one in exercise["shown"]:
            self.shown[one["what"]].append(one)

    def text(self, key):
        return self.given[key]["text"]

    def value(self, key):
        one = self.given[key]
        assert not one["text"], (key, one)
        return one["value"]

    def inches(self, key):
        return length(self.text(key))

    def share(self, key):
        return self.value(key) / 100

    def read_off(self, key, value):
        """What stands in the key for a step that is read off a drawn curve, if it is about this value."""
        (at,) = (n for n, step in enumerate(self.exercise["steps"]) if step["key"] == key)
        ours = self.exercise["solved"][at]["value"]
        return ours if abs(ours - value) <= half(self.exercise["steps"][at], ours) else value

    def sheet(self):
        """The foam's card: rows of depth and R, and what else stands on it."""
        assert self.shown["foam"], "no data sheet is shown"
        (foam,) = self.job["foams"]
        rows = []
        for row in foam["r_at"]:
            of = {one["field"]: one["text"] for one in row["entries"]}
            rows.append((length(of["thickness"]), resistance(of["r"])))
        return rows, {one["field"]: one["text"] for one in foam["entries"]}

    def kits(self):
        """Label, price in cents, smallest first."""
        assert self.shown["kits"], "no shelf is shown"
        kits = []
        for kit in self.job["kits"]:
            of = {one["field"]: one["text"] for one in kit["entries"]}
            kits.append((Fraction(of["label_yield"]), round(Fraction(of["price"]) * 100)))
        return sorted(kits)

    def readings(self):
        """Kind, value, minutes ago."""
        assert self.shown["readings"], "no readings are shown"
        found = []
        for one in self.job["readings"]:
            of = {entry["field"]: entry["text"] for entry in one["entries"]}
            value = degrees(of["temperature"]) if "temperature" in of else float(of["humidity"])
            found.append((one["of"], value, (self.exercise["now"]["ms"] - one["taken"]["ms"]) / 60000))
        return found


# ---- arithmetic of the trade, once more


def feet2(inches2):
    return inches2 / 144


def exact(value):
    return Fraction(value).limit_denominator(10**9)


def up(value):
    return math.ceil(round(value, 9))


def usable(label, factor, loss):
    return exact(label) * exact(factor) / 100 - exact(loss)


def depth_for(rows, r):
    """Straight between the rows; below the first along its line from nothing."""
    rows = [(0.0, 0.0), *rows]
    for (thin, less), (thick, more) in zip(rows, rows[1:]):
        if r <= more + 1e-9:
            return thin + (thick - thin) * (r - less) / (more - less)
    raise AssertionError(f"R {r} is beyond the sheet")


def r_at(rows, inches):
    rows = [(0.0, 0.0), *rows]
    for (thin, less), (thick, more) in zip(rows, rows[1:]):
        if inches <= thick + 1e-9:
            return less + (more - less) * (inches - thin) / (thick - thin)
    raise AssertionError(f"{inches} in is beyond the sheet")


def dew(air, humidity):
    """Over water, as a meter that is not below freezing shows it."""
    return psychrolib.GetTDewPointFromRelHum(air, humidity / 100)


def gable(width, slope):
    return Polygon([(0, 0), (width, 0), (width / 2, width / 2 * slope)])


def cents(value):
    """Half a cent and more is a cent."""
    return math.floor(Fraction(value) + Fraction(1, 2))


def cheapest(need, kits):
    """The least cost of any number of kits of two sizes."""
    (small, small_price), (large, large_price) = kits
    best = None
    for many in range(up(need / large) + 1):
        rest = max(0, need - many * large)
        few = math.ceil(round(rest / small, 9))
        cost = many * large_price + few * small_price
        best = cost if best is None else min(best, cost)
    return best


# ---- the scenes


def tape(q):
    lines = []
    for one in q.shown["tape"]:
        at, *held = one["at"]
        lines.append(at - (held[0] if held else 0))
    if lines and len(q.shown["tape"][2]["at"]) == 2:
        assert abs(q.shown["tape"][2]["at"][1] - q.inches("held")) < 1e-9
    first, second, third = lines
    return {"reading/first": first, "reading/second": second, "reading/third": third, "readings_sum": sum(lines)}


def wall(q):
    whole = box(0, 0, q.inches("length"), q.inches("height"))
    window, door = q.inches("window_wide") * q.inches("window_high"), q.inches("door_wide") * q.inches("door_high")
    gross, holes = feet2(whole.area), feet2(2 * window + door)
    net = gross - holes
    return {"gross_area": gross, "openings_area": holes, "net_area": net, "board_feet": net * q.inches("depth")}


def board_feet(q):
    one, other = (area(q.text(key)) * q.inches(f"{key}_depth") for key in ("wall", "ceiling"))
    return {"board_feet/wall": one, "board_feet/ceiling": other, "board_feet_sum": one + other}


def passes(depth, most, wait):
    count = up(depth / most)
    return count, depth / count, (count - 1) * wait


def lifts(q):
    _, label = q.sheet()
    count, each, waits = passes(q.inches("depth"), length(label["largest_lift"]), minutes(label["wait"]))
    return {"lifts": count, "lift_each": each, "wait_total": waits, "first_to_last": waits + count * q.value("spraying")}


def members(run, spacing, thick):
    """Where members stand along a run: one against each end, the others centered on the spacing from the left end."""
    at = [(0, thick), (run - thick, run)]
    center = spacing
    while center < run - 1e-9:
        at.append((center - thick / 2, center + thick / 2))
        center += spacing
    return at


def framed(q):
    run, height, thick, plates = q.inches("length"), q.inches("height"), q.inches("member"), int(q.value("plates"))
    stands = members(run, q.inches("spacing"), thick)
    studs = unary_union([box(left, 0, right, height) for left, right in stands])
    # Plates one on another: one at the foot, the others at the head.
    rows = [0] * min(plates, 1) + [height - thick * (n + 1) for n in range(plates - 1)]
    lying = [box(0, low, run, low + thick) for low in rows]
    wood = unary_union([studs, *lying]).intersection(box(0, 0, run, height))
    gross, taken = feet2(run * height), feet2(wood.area)
    return {
        "gross_area": gross, "stud_count": len(stands), "bay_width": q.inches("spacing") - thick, "framing_area": taken,
        "net_area": gross - taken, "board_feet": (gross - taken) * q.inches("depth"),
    }  # fmt: skip


def gable_end(q):
    shape = gable(q.inches("length"), pitch(q.text("pitch")))
    hole = feet2(q.inches("window_wide") * q.inches("window_high"))
    whole = feet2(shape.area)
    return {"peak_height": shape.bounds[3], "gable_area": whole, "openings_area": hole, "net_area": whole - hole}


def gable_kits(q):
    answers = gable_end(q)
    answers["board_feet"] = answers["net_area"] * q.inches("depth")
    one = usable(q.value("label"), q.value("factor"), q.value("loss"))
    return {**answers, "usable": one, "kits": up(answers["board_feet"] / float(one))}


def slope(run, rise):
    return LineString([(0, 0), (run, run * rise)]).length


def roof(q):
    run = q.inches("span") / 2
    along = slope(run, pitch(q.text("pitch")))
    plane = feet2(q.inches("length") * along)
    return {"plan_run": run, "slope_length": along, "roof_area/one_plane": plane, "roof_area/both_planes": 2 * plane}


def hip_planes(long, wide, rise):
    """The four planes of a hip roof in plan, each as large as its slope makes it."""
    half = wide / 2
    near = Polygon([(0, 0), (long, 0), (long - half, half), (half, half)])
    end = Polygon([(0, 0), (half, half), (0, wide)])
    return 2 * (near.area + end.area) / math.cos(math.atan(rise))


def hip(q):
    long, wide, rise = q.inches("length"), q.inches("width"), pitch(q.text("pitch"))
    if long < wide:
        long, wide = wide, long
    whole = feet2(hip_planes(long, wide, rise))
    return {
        "plan_area": feet2(long * wide), "slope_factor": slope(1, rise), "roof_area": whole, "board_feet": whole * q.inches("depth"),
    }  # fmt: skip


def target(q):
    rows, _ = q.sheet()
    under = q.inches("under")
    depth = depth_for(rows, resistance(q.text("target")))
    promise = q.inches("aim") - under
    listed = [r for inches, r in rows if inches <= promise + 1e-9]
    return {
        "depth_for_r/wall": depth, "aim/wall": depth + under, "promise/ceiling": promise, "promised_r/ceiling": listed[-1],
    }  # fmt: skip


def allowances(q):
    place = area(q.text("area")) * q.inches("depth")
    over, waste = place * q.share("over_depth"), place * q.share("other_waste")
    return {"board_feet": place, "over_depth_feet": over, "waste_feet": waste, "to_spray": place + over + waste}


def shelf(q):
    need, factor, loss = (q.value(key) for key in ("to_spray", "yield_factor", "fixed_loss"))
    sizes = [(usable(label, factor, loss), price) for label, price in q.kits()]
    answers = {}
    for of, (each, price) in zip(("small_kit", "large_kit"), sizes):
        count = math.ceil(exact(need) / each)
        answers |= {f"usable/{of}": each, f"kits/{of}": count, f"kits_cost/{of}": count * price}
    return {**answers, "least_cost": cheapest(exact(need), sizes)}


def bill(q):
    net = feet2(q.inches("length") * q.inches("height"))
    place = net * q.inches("depth")
    spray = place * (1 + q.share("over_depth"))
    ((label, price),) = q.kits()
    each = usable(label, q.value("yield_factor"), q.value("fixed_loss"))
    count = up(spray / float(each))
    tax = cents(exact(q.value("sales_tax")) / 100 * count * price)
    return {
        "net_area": net, "board_feet": place, "to_spray": spray, "usable": each, "kits": count, "kits_cost": count * price,
        "sales_tax": tax, "total": count * price + tax + q.value("delivery"),
    }  # fmt: skip


def rim(q):
    long, wide, band, thick = (q.inches(key) for key in ("length", "width", "band", "member"))
    around = LineString([(0, 0), (long, 0), (long, wide), (0, wide), (0, 0)]).length
    ends = 2 * len(members(long, q.inches("spacing"), thick))
    whole, wood, lap = feet2(around * band), feet2(ends * thick * band), feet2(around * q.inches("lap"))
    net = whole + lap - wood
    ((label, _),) = q.kits()
    each = usable(label, q.value("yield_factor"), q.value("fixed_loss"))
    place = net * q.inches("depth")
    return {
        "perimeter": around, "band_area": whole, "landing_ends": ends, "members_area": wood, "lap_area": lap, "net_area": net,
        "board_feet": place, "usable": each, "kits": up(place / float(each)),
    }  # fmt: skip


def readings(q):
    """Moist air over surfaces: one (level 1) or two, against the label's windows."""
    read = q.readings()
    _, label = q.sheet()
    of = {kind: value for kind, value, _ in read}
    surfaces = [value for kind, value, _ in read if kind == "surface"]
    point = dew(of["air"], of["humidity"])
    least = point + spread(q.text("spread"))
    window = {field: degrees(text) for field, text in label.items()}

    def outside(name, value):
        return not window[f"{name}_least"] - 1e-9 <= value <= window[f"{name}_most"] + 1e-9

    wrong = [kind for kind in ("cylinder_a", "cylinder_b") if outside("cylinder", of[kind])]
    wrong += ["air"] if outside("air", of["air"]) else []
    wrong += [f"surface_{n}" for n, value in enumerate(surfaces, 1) if outside("surface", value) or value < least]
    answers = {
        "dew_point": point, "least_surface": least, "margin": min(surfaces) - point,
        "verdict": "hold" if wrong else "go",
    }  # fmt: skip
    if len(surfaces) > 1:
        assert len(wrong) < 2, f"more than one thing is wrong: {wrong}"
        answers["surface_limit"] = max(least, window["surface_least"])
        answers["governing"] = wrong[0] if wrong else "none"
    return answers


def uneven(q):
    (probed,) = (one["at"] for one in q.shown["probes"])
    assert len(probed) == q.value("parts")
    rows, _ = q.sheet()
    mean = sum(probed) / len(probed)
    true = len(probed) / sum(1 / r_at(rows, inches) for inches in probed)
    return {"mean_depth": mean, "mean_r": r_at(rows, mean), "true_r": true}


# R of materials and films as ASHRAE's handbook and makers print them (tests/oracles/assembly.py); wood an inch.
LAYERS = {
    "hollow_siding": 0.62, "bevel_siding": 0.80, "osb_7_16": 0.62, "plywood_1_2": 0.62, "fiberboard_1_2": 1.32, "gypsum_1_2": 0.45,
}  # fmt: skip
FILM_OUTSIDE, FILM_INSIDE, WOOD = 0.17, 0.68, 1.25


def across_framing(q):
    rows, _ = q.sheet()
    surface = q.job["surfaces"][0]
    both = FILM_OUTSIDE + FILM_INSIDE
    for layer in surface["layers"]:
        of = {one["field"]: one["text"] for one in layer["entries"]}
        both += LAYERS[of["made_of"]]
    foam = both + r_at(rows, q.inches("depth"))
    stud = both + WOOD * q.inches("cavity")
    share = q.share("framing")
    u = (1 - share) / foam + share / stud
    return {
        "foam_path_r": foam, "stud_path_r": stud, "u_value": u * (RSI if q.metric else 1), "whole_r": 1 / u,
        "framing_loss": (1 - 1 / u / foam) * 100,
    }  # fmt: skip


# What tables R402.1.2 (2012 to 2018) and R402.1.3 (2021) print of the rows that are asked for: ways of (cavity, continuous).
CODE = {
    ("wall", "2021"): {2: [(13, 0), (0, 10)], 3: [(20, 0), (13, 5), (0, 15)], 4: [(30, 0), (20, 5), (13, 10), (0, 20)]},
    ("wall", "2012_2018"): {3: [(20, 0), (13, 5)], 6: [(20, 5), (13, 10)]},
    ("rim", "2021"): {3: [(20, 0), (13, 5), (0, 15)], 4: [(30, 0), (20, 5), (13, 10), (0, 20)]},
    ("basement_wall", "2021"): {4: [(13, 0), (0, 10)], 5: [(19, 0), (13, 5), (0, 15)]},
    ("basement_wall", "2012_2018"): {4: [(13, 0), (0, 10)], 5: [(19, 0), (0, 15)]},
    ("crawl_wall", "2021"): {4: [(13, 0), (0, 10)], 5: [(19, 0), (13, 5), (0, 15)]},
    ("crawl_wall", "2012_2018"): {4: [(13, 0), (0, 10)], 5: [(19, 0), (0, 15)]},
    ("floor", "2021"): {4: [(19, 0)], 5: [(30, 0)]},
    ("floor", "2012_2018"): {3: [(19, 0)]},
}


def asked(component, edition, zone, across, board):
    """The least that foam has to give: between the framing beside a board that is there, or across it alone."""
    found = []
    for cavity, continuous in CODE[component, edition][zone]:
        if across and cavity == 0:
            found.append(continuous - board)
        elif not across and continuous <= board:
            found.append(cavity)
        elif across and continuous <= board:
            found.append(cavity)
    return min(one for one in found if one > 0)


def code(q):
    rows, label = q.sheet()
    job = {one["field"]: one["text"] for one in q.job["entries"]}
    surface = {one["field"]: one["text"] for one in q.job["surfaces"][0]["entries"]}
    board = resistance(q.text("board")) if "board" in q.given else 0
    r = asked(surface["component"], job["edition"], int(job["zone"][0]), surface["runs"] == "across", board)
    depth = depth_for(rows, r)
    perm = float(label["permeance"]) / (PERM if q.metric else 1) / depth
    return {
        "code_r": r, "depth_code": depth, "aim": depth + q.inches("under"), "permeance": perm,
        "retarder": "class_3" if perm > 1.0 else "class_2",
    }  # fmt: skip


def warm_up(q):
    _, label = q.sheet()
    (group,) = q.job["warming"]
    of = {one["field"]: one["text"] for one in group["entries"]}
    start, room, least = degrees(q.text("start")), degrees(q.text("room")), degrees(label["cylinder_least"])
    cylinder = Cylinder(of["cylinder"], start, room)
    # The slow curve: liquid that does not stir itself at all. The likely one: as if it led heat four times as well.
    hours = hours_until(cylinder.run(1), "core", start, room, least)
    likely = cylinder.run(4)
    steel = hours_until(likely, "wall", start, room, least)
    said = minutes(label["conditioning"])
    # Whoever reads hours off the curve goes on from what he reads.
    plan = math.ceil(round(max(said, q.read_off("hours_core", hours * 60)) / 60, 6))
    begins = q.value("time")
    days = math.ceil(round((plan * 60 - begins) / 1440, 9))
    return {
        "hours_label": said, "core_then": room - (room - start) * likely(steel)["core"], "hours_core": hours * 60, "hours_plan": plan,
        "days_before": days, "in_room_by": begins + days * 1440 - plan * 60,
    }  # fmt: skip


def course(low, high, next_low, before, rise, sets, hour):
    """The air by Parton and Logan: half a sine by day, falling off by night; the highest two hours after noon."""
    day = sets - rise

    def sine(low, high, hour):
        return low + (high - low) * math.sin(math.pi * (hour - rise - 0.3) / (day + 3.4))

    def night(at_sunset, to, dark):
        q, left = math.exp(-2), math.exp(-2 * dark / (24 - day + 0.3))
        return (to - at_sunset * q + (at_sunset - to) * left) / (1 - q)

    if hour < rise + 0.3:
        return night(sine(*before, sets), low, hour + 24 - sets)
    return sine(low, high, hour) if hour <= sets else night(sine(low, high, sets), next_low, hour - sets)


def forecast(q):
    _, label = q.sheet()
    days = [{one["field"]: one["text"] for one in day["entries"]} for day in q.job["forecast"]]
    place = {one["field"]: float(one["text"]) for one in q.job["entries"] if one["field"] in ("latitude", "longitude")}
    offset = q.job["forecast"][1]["offset_min"]
    date = datetime.date.fromisoformat(days[1]["date"])
    zone = datetime.timezone(datetime.timedelta(minutes=offset))
    seen = sun(Observer(place["latitude"], place["longitude"]), date=date, tzinfo=zone)
    rise, sets = (at.hour + at.minute / 60 + at.second / 3600 for at in (seen["sunrise"], seen["sunset"]))
    low, high = degrees(days[1]["low"]), degrees(days[1]["high"])
    before = degrees(days[0]["low"]), degrees(days[0]["high"])
    least = degrees(label["air_least"])
    inside = [minute for minute in range(1440) if course(low, high, degrees(days[2]["low"]), before, rise, sets, minute / 60) >= least]
    first, last = inside[0], inside[-1]
    edge = q.value("edge")
    return {
        "air_from": first, "air_to": last, "inside_for": last - first, "sure_from": first + edge, "sure_to": last - edge,
        "least_surface": degrees(days[1]["dew"]) + spread(q.text("spread")),
    }  # fmt: skip


def two_sizes(q, spray):
    """As many of the large kits as are used up, small ones for the rest."""
    (small, small_price), (large, large_price) = (
        (usable(label, q.value("yield_factor"), q.value("fixed_loss")), price) for label, price in q.kits()
    )
    many = math.floor(round(spray / float(large), 9))
    few = up((spray - many * float(large)) / float(small))
    cost = many * large_price + few * small_price
    assert cost == cheapest(exact(spray), [(small, small_price), (large, large_price)]), "another mix costs less"
    total = cost + cents(exact(q.value("sales_tax")) / 100 * cost) + q.value("delivery")
    return {"usable/large": large, "usable/small": small, "kits_large": many, "kits_small": few, "total": total}


def under_roof(q, slope_length, roof_area, net):
    rows, label = q.sheet()
    aim = depth_for(rows, resistance(q.text("target"))) + q.inches("under")
    place = net * aim
    spray = place * (1 + q.share("over_depth"))
    return {
        "slope_length": slope_length, "roof_area": roof_area, "aim/roof": aim, "board_feet": place, "to_spray": spray,
        "lifts": up(aim / length(label["largest_lift"])), **two_sizes(q, spray),
    }  # fmt: skip


def attic(q):
    rise = pitch(q.text("pitch"))
    hole = feet2(q.inches("hole_width") * q.inches("hole_height"))
    gables = 2 * (feet2(gable(q.inches("width"), rise).area) - hole)
    along = slope(q.inches("run"), rise)
    planes = feet2(2 * q.inches("length") * along)
    return {"gables_area": gables, **under_roof(q, along, planes, gables + planes)}


def attic_hip(q):
    long, wide, rise = q.inches("length"), q.inches("width"), pitch(q.text("pitch"))
    if long < wide:
        long, wide = wide, long
    planes = feet2(hip_planes(long, wide, rise))
    net = planes - int(q.text("holes")) * feet2(q.inches("hole_width") * q.inches("hole_height"))
    return {"net_area/roof": net, **under_roof(q, slope(wide / 2, rise), planes, net)}


def crawl(q):
    rows, label = q.sheet()
    long, wide, height, band = (q.inches(key) for key in ("length", "width", "height", "band"))
    around = 2 * (long + wide)
    holes = int(q.text("vents")) * q.inches("vent_width") * q.inches("vent_height") + q.inches("hatch_width") * q.inches("hatch_height")
    rim_area, walls = feet2(around * band), feet2(around * height - holes)
    job = {one["field"]: one["text"] for one in q.job["entries"]}
    aim = depth_for(rows, asked("crawl_wall", job["edition"], 5, True, 0)) + q.inches("under")
    rim_feet, wall_feet = rim_area * q.inches("rim_depth"), walls * aim
    spray = (rim_feet + wall_feet) * (1 + q.share("over_depth"))
    ((size, price),) = q.kits()
    each = usable(size, q.value("yield_factor"), q.value("fixed_loss"))
    count = up(spray / float(each))
    layers, _, waits = passes(aim, length(label["largest_lift"]), minutes(label["wait"]))
    read = q.readings()
    of = {kind: value for kind, value, _ in read}
    point = dew(of["air"], of["humidity"])
    window = {field: degrees(text) for field, text in label.items() if field.endswith(("_least", "_most"))}
    surfaces = [value for kind, value, _ in read if kind == "surface"]
    found = []
    if any(value < max(point + spread(q.text("spread")), window["surface_least"]) for value in surfaces):
        found.append("surface_near_dew")
    if any(value < window["cylinder_least"] for kind, value, _ in read if kind.startswith("cylinder")):
        found.append("cylinder_cold")
    if any(age > q.value("cylinder_age" if kind.startswith("cylinder") else "site_age") for kind, _, age in read):
        found.append("readings_old")
    if abs(q.value("sheet") / feet2(around * height) - 1) > 0.02:
        found.append("wall_twice")
    (trouble,) = found
    verdict = {"readings_old": "not_read", "wall_twice": "go"}.get(trouble, "hold")
    return {
        "band_area": rim_area, "net_area/walls": walls, "aim/walls": aim, "board_feet/rim": rim_feet, "board_feet/walls": wall_feet,
        "to_spray": spray, "usable": each, "kits": count, "kits_cost": count * price, "lifts/walls": layers, "wait_total/walls": waits,
        "dew_point": point, "verdict": verdict, "trouble": trouble,
    }  # fmt: skip


SCENES = {
    "tape": tape, "wall": wall, "board_feet": board_feet, "lifts": lifts, "readings": readings, "framed": framed, "gable": gable_end,
    "roof": roof, "target": target, "allowances": allowances, "shelf": shelf, "uneven": uneven, "gable_kits": gable_kits, "hip": hip,
    "bill": bill, "rim": rim, "forecast": forecast, "across_framing": across_framing, "code": code, "code_board": code,
    "warm_up": warm_up, "crawl": crawl, "attic": attic, "attic_hip": attic_hip,
}  # fmt: skip


# ---- asking and comparing


def ask(program, seeds, units, *switches):
    line = [program, "exercise", *seeds, "--units", units, "--json", *switches]
    answer = subprocess.run(line, capture_output=True, text=True, check=True)
    return [json.loads(line) for line in answer.stdout.splitlines()]


def chosen(program):
    """Seeds of each scene, spread over the numbers."""
    found = collections.defaultdict(list)
    for level in LEVELS:
        for start in range(0, 1200, 200):
            seeds = [f"1-{level}-{n * 40503 % 65536:04x}" for n in range(start, start + 200)]
            for exercise in ask(program, seeds, "us"):
                if len(found[exercise["scene"]]) < WANTED:
                    found[exercise["scene"]].append(exercise["seed"])
    return found


def half(step, right):
    """Half of what is let pass."""
    return max(step["within"], step["within_pct"] / 100 * abs(right)) / 2


def compared(exercise):
    """The largest difference, as a share of what is let pass, and what is beyond the half of it."""
    wanted = SCENES[exercise["scene"]](Question(exercise))
    steps = {step["key"] + ("/" + step["of"] if step["of"] else ""): at for at, step in enumerate(exercise["steps"])}
    assert steps.keys() == wanted.keys(), f"steps {sorted(steps.keys() ^ wanted.keys())} are on one side only"
    faults, worst = [], 0.0
    for key, at in steps.items():
        step, solved = exercise["steps"][at], exercise["solved"][at]
        ours, theirs = solved["value"], wanted[key]
        if step["choices"]:
            if step["choices"][int(ours)] != theirs:
                faults.append(f"{key}: {step['choices'][int(ours)]}, here {theirs}")
            continue
        allowed = half(step, ours)
        off = abs(ours - float(theirs))
        worst = max(worst, off / allowed / 2 if allowed else off)
        if off > allowed + 1e-9 * max(1, abs(ours)):
            faults.append(f"{key}: {ours}, here {float(theirs)}, allowed {allowed:.4g}")
    return worst, faults


def main():
    program = sys.argv[1]
    found = chosen(program)
    if missing := SCENES.keys() ^ found.keys():
        sys.exit(f"scenes that are not on both sides: {sorted(missing)}")
    faults = []
    for scene, seeds in sorted(found.items()):
        if len(seeds) < 50:
            sys.exit(f"only {len(seeds)} exercises of {scene}")
        worst = 0.0
        for units, exercise in itertools.chain.from_iterable(
            ((units, one) for one in ask(program, seeds, units, "--key")) for units in ("us", "metric")
        ):
            try:
                most, found_here = compared(exercise)
            except AssertionError as error:
                most, found_here = 0.0, [str(error)]
            worst = max(worst, most)
            faults += [f"{exercise['seed']} {units} {scene} {fault}" for fault in found_here]
        print(f"{scene}: {len(seeds)} seeds in both units, apart at most by {worst:.1%} of what is let pass")
    for fault in faults[:60]:
        print(fault)
    if faults:
        sys.exit(f"{len(faults)} answers differ")


if __name__ == "__main__":
    main()
