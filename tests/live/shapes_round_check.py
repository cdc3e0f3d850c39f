"""Holds round and boxed shapes, and the foam around them, against scipy and shapely, live.

    cargo build                                           # the program that is asked
    python tests/live/shapes_round_check.py target/debug/foamwright

Needs scipy 1.17.1 and shapely 2.1.2 (the GEOS library). Nothing of our closed forms is repeated here: an arc's length
and a dome's area are integrals over y = sqrt(r^2 - x^2), an arc's circle is found by a root, foam around a box duct
is the area that shapely grows around its foamed sides, foam around a pipe or in a tank is an integral of
circumferences, and one kit around a pipe a root of that.
"""

import json
import math
import random
import subprocess
import sys

from scipy.integrate import quad
from scipy.optimize import brentq
from shapely.geometry import LineString, box

# Lengths are written to a billionth of an inch; scipy's integrals are asked for ten digits.
RELATIVE = 1e-7
# Round corners as shapely draws them, by 4096 straight pieces each.
CORNERS = 1e-6
CASES = 60


def entries(**texts):
    return [{"field": field, "text": text} for field, text in texts.items()]


def inches(length):
    return f"{length:.9f} in"


def over_circle(radius, low, high, of):
    """Integral over the angle x = r sin(a) of a circle, between two heights' angles."""
    return quad(lambda a: of(radius * math.sin(a)) * radius, low, high, epsabs=0, epsrel=1e-11)[0]


def circle_through(half, rise):
    """The circle over a chord: its radius, and the angle from its crown to an end, both by roots."""
    # Half the angle a at which r sin(a) = half and r (1 - cos(a)) = rise.
    angle = brentq(lambda a: half * (1 - math.cos(a)) - rise * math.sin(a), 1e-9, math.pi - 1e-9, xtol=1e-15)
    return rise / (1 - math.cos(angle)), angle


def arch(chance):
    span, length = chance.uniform(20, 600), chance.uniform(20, 900)
    rise = span * chance.uniform(0.02, 2.0)
    radius, angle = circle_through(span / 2, rise)
    texts = {"span": inches(span), "length": inches(length), "depth": "1 in"}
    if rise < span / 2 and chance.random() < 0.5:
        texts["radius"] = inches(radius)
    else:
        texts["rise"] = inches(rise)
    area = over_circle(radius, -angle, angle, lambda _: 1.0) * length / 144
    return "arch", texts, area, area


def dome(chance):
    half = chance.uniform(20, 300)
    rise = half * chance.uniform(0.05, 2.5)
    radius, angle = circle_through(half, rise)
    area = over_circle(radius, 0, angle, lambda x: 2 * math.pi * x) / 144
    return "dome", {"diameter": inches(2 * half), "rise": inches(rise), "depth": "1 in"}, area, area


def round_foam(radius, length, low, high):
    """Foam between two distances from the middle: circumference by circumference."""
    return abs(quad(lambda r: 2 * math.pi * r * length, radius + low, radius + high, epsrel=1e-12)[0]) / 144


def across(texts, radius, chance):
    if chance.random() < 0.5:
        texts["diameter"] = inches(2 * radius)
    else:
        texts["circumference"] = inches(2 * math.pi * radius)


def cylinder(chance):
    radius, depth = chance.uniform(6, 200), chance.uniform(0.5, 5.5)
    low, tall = chance.choice([0, chance.uniform(0, 60)]), chance.uniform(5, 200)
    inside = chance.random() < 0.5
    texts = {"side": "inside" if inside else "outside", "depth": inches(depth)}
    texts |= {"from_height": inches(low), "to_height": inches(low + tall)}
    across(texts, radius, chance)
    foam = round_foam(radius, tall, 0, -depth if inside else depth)
    return "cylinder", texts, 2 * math.pi * radius * tall / 144, foam


def round_duct(chance):
    radius, length, depth = chance.uniform(0.5, 20), chance.uniform(10, 600), chance.uniform(0.5, 4)
    texts = {"length": inches(length), "depth": inches(depth)}
    across(texts, radius, chance)
    if chance.random() < 0.4:
        old = chance.uniform(0.1, 0.9) * depth
        texts |= {"existing": inches(old), "existing_same": "yes"}
        foam = round_foam(radius, length, old, depth)
    else:
        foam = round_foam(radius, length, 0, depth)
    return "round_duct", texts, 2 * math.pi * radius * length / 144, foam


def box_duct(chance):
    wide, high, length = chance.uniform(4, 40), chance.uniform(4, 30), chance.uniform(20, 600)
    depth = chance.uniform(0.5, 3.5)
    on = [chance.random() < 0.7 for _ in range(4)]
    if not any(on):
        on[chance.randrange(4)] = True
    corners = [(0, 0), (wide, 0), (wide, high), (0, high)]
    sides = [LineString([corners[at], corners[(at + 1) % 4]]) for at in range(4)]
    duct = box(0, 0, wide, high)
    foam, bare = None, 0.0
    for at, (side, is_on) in enumerate(zip(sides, on)):
        if not is_on:
            continue
        bare += side.length
        # Straight off the side, and round where the next foamed side begins.
        piece = side.buffer(-depth, single_sided=True)
        foam = piece if foam is None else foam.union(piece)
        if on[(at + 1) % 4]:
            x, y = corners[(at + 1) % 4]
            disc = LineString([(x, y), (x, y + 1e-12)]).centroid.buffer(depth, quad_segs=4096)
            # Only the quarter outside the corner: beyond both sides.
            sx, sy = (1 if x > 0 else -1), (1 if y > 0 else -1)
            quarter = box(min(x, x + sx * depth * 2), min(y, y + sy * depth * 2), max(x, x + sx * depth * 2), max(y, y + sy * depth * 2))
            foam = foam.union(disc.intersection(quarter))
    foam = foam.difference(duct)
    texts = {"width": inches(wide), "height": inches(high), "length": inches(length), "depth": inches(depth)}
    texts |= {f"side_{name}": "yes" if is_on else "no" for name, is_on in zip(["bottom", "right", "top", "left"], on)}
    return "box_duct", texts, bare * length / 144, foam.area * length / 144


def main():
    chance = random.Random(20)
    with open("tests/jobs/round-every-shape/job.json", encoding="utf-8") as file:
        job = json.load(file)
    kinds = [arch, dome, cylinder, round_duct, box_duct]
    cases = [kind(chance) for kind in kinds for _ in range(CASES)]
    common = {"deduct_framing": False, "openings": [], "patches": [], "depth_kit": 0, "foam": 0}
    surfaces = []
    for number, (shape, texts, _, _) in enumerate(cases):
        one = {"id": 1000 + number, "name": "", "shape": shape, "entries": entries(**texts), "depth_way": "typed"}
        surfaces.append(common | one)
    # One Small kit around each of these pipes: 40 x 86 % - 5.
    pipes = [(chance.uniform(0.5, 8), chance.uniform(60, 300), chance.choice([0, 0, 0.5])) for _ in range(CASES)]
    for number, (radius, length, old) in enumerate(pipes):
        texts = {"diameter": inches(2 * radius), "length": inches(length)} | ({"existing": inches(old)} if old else {})
        one = {"id": 5000 + number, "name": "", "shape": "round_duct", "entries": entries(**texts)}
        surfaces.append(common | one | {"depth_way": "one_kit", "depth_kit": 30})
    job["surfaces"], job["next_id"] = surfaces, 9000
    answer = subprocess.run([sys.argv[1], "estimate", "-", "--now", "0"], input=json.dumps(job), capture_output=True, text=True, check=True)
    found = json.loads(answer.stdout)["surfaces"]
    worst = 0.0
    for (shape, texts, area, foam), one in zip(cases, found):
        for what, wanted, given in [("area", area, one["area"]["net_ft2"]["likely"]), ("foam", foam, one["in_place"]["likely"])]:
            apart = abs(given - wanted) / wanted
            if not apart <= (CORNERS if shape == "box_duct" else RELATIVE):
                sys.exit(f"{shape} {texts}: {what} {given}, not {wanted}")
            worst = max(worst, apart)
    for (radius, length, old), one in zip(pipes, found[len(cases):]):
        wanted = brentq(lambda depth: round_foam(radius, length, old, depth) - 29.4, old, 1000)
        given = one["depth"]["aim_in"]["likely"] if one["depth"] else None
        if wanted > 36:
            continue
        if given is None or abs(given - wanted) > 1e-7 * wanted:
            sys.exit(f"one kit around a pipe {radius} x {length} over {old}: {given}, not {wanted}")
    print(f"scipy and shapely: {len(cases)} shapes and their foam, {len(pipes)} kits around pipes, within {worst:.1e}")


if __name__ == "__main__":
    main()
