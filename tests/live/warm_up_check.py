"""Holds our film on a plate against the `ht` package and our shells against scipy's series for a cylinder, live.

    cargo test --test warm_up                                   # writes the grid
    python tests/live/warm_up_check.py target/tmp/warm_up_grid.json

Needs ht 1.2.0, which has Churchill and Chu's correlation for an upright plate, and scipy 1.17.1. The properties of air
are ours, as its number takes them; the series has its 60 roots by bracketing between the zeros of Bessel functions.
"""

import json
import sys

from ht.conv_free_immersed import Nu_vertical_plate_Churchill
from scipy.optimize import brentq
from scipy.special import j0, j1, jn_zeros
from math import exp

FILM_TOLERANCE = 1e-6
# Of the whole difference between start and air: 0.07 °F of 35.
SERIES_TOLERANCE = 0.002


def film(difference, height, mean):
    kelvin = mean + 273.15
    conductivity, viscosity, prandtl = 0.0242 + 7e-5 * mean, 1.5233e-5 * (kelvin / 295.65) ** 1.75, 0.71
    grashof = 9.81 / kelvin * difference * height**3 / viscosity**2
    return Nu_vertical_plate_Churchill(prandtl, grashof) * conductivity / height


def center(bi, fo):
    total, low = 0.0, 0.0
    for high, end in zip(jn_zeros(0, 60), jn_zeros(1, 60)):
        root = brentq(lambda x: x * j1(x) - bi * j0(x), low + 1e-12, high - 1e-12)
        total += 2 * j1(root) / (root * (j0(root) ** 2 + j1(root) ** 2)) * exp(-(root**2) * fo)
        low = end
    return total


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        grid = json.load(file)
    films = max(abs(ours / film(*given) - 1) for *given, ours in grid["films"])
    centers = max(abs(ours - center(*given)) for *given, ours in grid["centers"])
    print(f"{len(grid['films'])} films within {films:.1e} of ht, {len(grid['centers'])} centers within {centers:.5f} of the series")
    if len(grid["films"]) < 50 or len(grid["centers"]) < 40:
        sys.exit("the grid is too small to say anything")
    if not (films <= FILM_TOLERANCE and centers <= SERIES_TOLERANCE):
        sys.exit(f"further apart than {FILM_TOLERANCE} and {SERIES_TOLERANCE}")


if __name__ == "__main__":
    main()
