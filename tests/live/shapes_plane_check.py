"""Holds the areas of planes against shapely, live.

    cargo build                                           # the program that is asked
    python tests/live/shapes_plane_check.py target/debug/foamwright

Needs shapely 2.1.2 (the GEOS library), which knows nothing of walks, sides or pitches: it is given corners. Polygons
are walked from a random corner, either way around, half of them with the last edge left blank; triangles are given by
their three sides; of a hip roof shapely measures the four parts of the plan, each divided by its slope's cosine.
Crossing walks are made on purpose: what shapely calls not simple must be refused.
"""

import json
import math
import random
import subprocess
import sys

from shapely.geometry import LinearRing, Polygon

# Lengths are written to a billionth of an inch, turns to a billionth of a degree.
RELATIVE = 1e-7
CASES = 150


def entries(**texts):
    return [{"field": field, "text": text} for field, text in texts.items()]


def inches(length):
    return f"{length:.9f} in"


def walk(ring, blank):
    """Legs along these corners: a length, and the turn at its end."""
    count = len(ring)
    heading = []
    for at in range(count):
        (x, y), (u, v) = ring[at], ring[(at + 1) % count]
        heading.append((math.hypot(u - x, v - y), math.degrees(math.atan2(v - y, u - x))))
    legs = []
    for at, (length, toward) in enumerate(heading):
        turn = (heading[(at + 1) % count][1] - toward + 540.0) % 360.0 - 180.0
        texts = {"turn": "left" if turn >= 0 else "right", "angle": f"{abs(turn):.9f}"}
        if not (blank and at + 1 == count):
            texts["length"] = inches(length)
        legs.append(texts)
    return legs


def star(chance):
    """Corners around a middle, at uneven angles: concave, never crossing."""
    count = chance.randint(4, 14)
    angles = sorted(chance.uniform(0, 2 * math.pi) for _ in range(count))
    return [(r * math.cos(a), r * math.sin(a)) for a in angles for r in [chance.uniform(30, 500)]]


def turned(ring, chance):
    start = chance.randrange(len(ring))
    ring = ring[start:] + ring[:start]
    return ring[::-1] if chance.random() < 0.5 else ring


def cases(chance):
    """Surfaces with the area that shapely gives each; None for one that must be refused."""
    made = []
    while len(made) < CASES:
        ring = star(chance)
        edges = [math.dist(a, b) for a, b in zip(ring, ring[1:] + ring[:1])]
        if min(edges) < 1 or not LinearRing(ring).is_simple:
            continue
        made.append(("polygon", {}, walk(turned(ring, chance), chance.random() < 0.5), Polygon(ring).area))
    crossed = 0
    while crossed < CASES // 3:
        ring = [(chance.uniform(0, 400), chance.uniform(0, 400)) for _ in range(chance.randint(4, 8))]
        edges = [math.dist(a, b) for a, b in zip(ring, ring[1:] + ring[:1])]
        if min(edges) < 1:
            continue
        simple = LinearRing(ring).is_simple
        crossed += not simple
        made.append(("polygon", {}, walk(ring, False), Polygon(ring).area if simple else None))
    for _ in range(CASES):
        a, b, c = [(chance.uniform(0, 500), chance.uniform(0, 500)) for _ in range(3)]
        sides = {"length": inches(math.dist(a, b)), "side_b": inches(math.dist(b, c)), "side_c": inches(math.dist(c, a))}
        made.append(("triangle", sides, [], Polygon([a, b, c]).area))
    for _ in range(CASES):
        length, width, rise = chance.uniform(60, 1400), chance.uniform(60, 1400), chance.uniform(0, 24)
        run = min(length, width) / 2
        ends = [(run, run), (length - run, width - run)]
        (x, y), (u, v) = ends
        corners = [(0, 0), (length, 0), (length, width), (0, width)]
        top = [(x, y), (u, y), (u, v), (x, v)] if length >= width else [(x, y), (x, y), (x, v), (x, v)]
        plan = [Polygon([corners[i], corners[(i + 1) % 4], top[(i + 1) % 4], top[i]]) for i in range(4)]
        cosine = math.cos(math.atan2(rise, 12))
        texts = {"length": inches(length), "width": inches(width), "pitch": f"{rise:.9f}/12"}
        made.append(("hip_roof", texts, [], sum(part.area for part in plan) / cosine))
    return made


def main():
    made = cases(random.Random(20_260_704))
    surfaces, number = [], 1
    for shape, texts, legs, _ in made:
        surface = {"id": number, "shape": shape, "entries": entries(**texts), "legs": []}
        for at, leg in enumerate(legs, 1):
            surface["legs"].append({"id": number + at, "entries": entries(**leg)})
        surfaces.append(surface)
        number += 1 + len(legs)
    job = {"format": "foamwright-job", "version": 3, "id": "planes", "next_id": number, "surfaces": surfaces}
    asked = subprocess.run([sys.argv[1], "estimate", "-", "--now", "0"], input=json.dumps(job), capture_output=True, text=True)
    if asked.returncode:
        sys.exit(asked.stderr)
    found = json.loads(asked.stdout)["surfaces"]
    worst, refused, faults = 0.0, 0, []
    for (shape, _, _, area), given in zip(made, found, strict=True):
        if area is None:
            refused += 1
            if given["area"] is not None:
                faults.append(f"{given['id']}: a {shape} that crosses itself is taken")
        elif given["area"] is None:
            faults.append(f"{given['id']}: a sound {shape} of {area / 144:.3f} ft2 is refused")
        else:
            ours = given["area"]["gross_ft2"]["likely"] * 144
            apart = abs(ours - area) / max(area, 144.0)
            worst = max(worst, apart)
            if apart > RELATIVE:
                faults.append(f"{given['id']}: {shape} {ours} against {area}")
    print(f"shapely: {len(made)} planes, {refused} of them refused as they should, the others within {worst:.1e}")
    if faults or refused < 20:
        sys.exit("\n".join(faults) or "too few cross")


if __name__ == "__main__":
    main()
