"""Holds our metal profiles against their arc length, integrated numerically.

    cargo test --test ground_grid                               # writes the grid
    python tests/live/ground_check.py target/tmp/ground_grid.json

Needs scipy 1.17.1 and numpy 2.3.5. Each profile is built here from its outline alone, as y(x) with its slope, and
its length is scipy.integrate.quad of sqrt(1 + y'^2); upright flanks are added as the jumps that they are. The arcs
of a wave come from their circle's equation, its center found by bisection.
"""

import json
import sys

import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq

TOLERANCE = 1e-8


def straight(run, rise):
    """A straight piece: upright ones have no run."""
    if run <= 1e-12:
        return abs(rise)
    return quad(lambda _: np.hypot(1.0, rise / run), 0.0, run)[0]


def ribbed(pitch, depth, top, bottom):
    web = (pitch - top - bottom) / 2.0
    return straight(top, 0) + straight(web, -depth) + straight(bottom, 0) + straight(web, depth)


def wave(pitch, depth):
    half, rise = pitch / 4.0, depth / 2.0
    if rise == 0.0:
        return pitch
    # The circle through both ends of the chord and the crest: its center lies `down` under the chord.
    down = brentq(lambda at: np.hypot(half, at) - (at + rise), 0.0, half * half / rise + 1.0, xtol=1e-15)
    radius = down + rise

    def piece(s):
        # x = half - s^2, from the crest (s = sqrt(half)) to the end of the chord: a steep end is then no pole.
        x = half - s * s
        under = (radius - x) * (radius + x)
        return 2.0 * s * np.sqrt(1.0 + x * x / under) if s > 0.0 else 2.0 * radius / np.sqrt(2.0 * radius)

    return 4.0 * quad(piece, 0.0, np.sqrt(half), epsabs=1e-13, epsrel=1e-12, limit=200)[0]


def ribs(pitch, depth):
    return straight(pitch, 0) + straight(0, depth) + straight(0, depth)


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        rows = json.load(file)["rows"]
    worst, kinds = 0.0, {}
    for on, pitch, depth, top, bottom, length, more in rows:
        if on == "ribbed":
            wanted = ribbed(pitch, depth, top, bottom)
        else:
            wanted = {"wave": wave, "ribs": ribs}[on](pitch, depth)
        kinds[on] = kinds.get(on, 0) + 1
        worst = max(worst, abs(length / wanted - 1.0), abs(more / 100.0 - (wanted / pitch - 1.0)))
    print(f"profiles: {kinds}, within {worst:.2e}")
    if min(kinds.get(on, 0) for on in ("ribbed", "wave", "ribs")) < 40:
        sys.exit("the grid is too small to say anything")
    if not worst <= TOLERANCE:
        sys.exit(f"further apart than {TOLERANCE}")


if __name__ == "__main__":
    main()
