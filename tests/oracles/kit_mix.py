"""Remakes tests/published/kit_mix.json: the least-cost whole number of each kit size that is enough.

Run it with OR-Tools 9.15 and SciPy 1.17 installed: python tests/oracles/kit_mix.py [FILE]

Each case is a list of sizes (usable board feet, price in cents, most to buy or null) and a need. Usable board
feet and need are decimals, solved as whole ten-thousandths by the CP-SAT solver of OR-Tools, which is exact
on whole numbers: first the least cost, then the least usable board feet at that cost, then the fewest kits.
The least cost is solved a second time by HiGHS through scipy.optimize.milp; the two have to agree. Where
CP-SAT is not done in its share of work, HiGHS's cost stands alone. A case without an answer within its limits
has null.
"""

import json
import pathlib
import random
import sys

import numpy
import ortools
import scipy
from ortools.sat.python import cp_model
from scipy.optimize import Bounds, LinearConstraint, milp

HERE = pathlib.Path(__file__).resolve().parent
SEED = 20260116
CASES = 1200
PARTS = 10_000


def label_sizes(draw, count):
    """Sizes as on cartons: a label, a yield factor, a fixed loss, a price a board foot that falls with size."""
    factor = draw.choice([0.86, 0.93, 0.8, draw.randint(70, 100) / 100])
    loss = draw.choice([5, 5, 0, 2.5])
    sizes = []
    for _ in range(count):
        label = draw.choice([12, 15, 40, 160, 480, draw.randint(12, 700)])
        usable = round(max(label * factor - loss, 0.5) * PARTS)
        dollars = label * draw.uniform(1.4, 2.6)
        price = draw.choice([round(dollars) * 100, round(dollars) * 100 - 1, round(dollars * 100)])
        sizes.append([usable, max(price, 1)])
    return sizes


def odd_sizes(draw, count):
    """Sizes with any fraction and any price."""
    return [[draw.randint(10_000, 6_000_000), draw.randint(500, 120_000)] for _ in range(count)]


def even_sizes(draw, count):
    """Sizes at one price a board foot: nearly everything is a tie."""
    cents = draw.choice([150, 180, 200])
    return [[feet * PARTS, feet * cents] for feet in (draw.randint(2, 60) * 10 for _ in range(count))]


def case(draw):
    count = draw.randint(1, 6)
    make = draw.choices([label_sizes, odd_sizes, even_sizes], [6, 3, 1])[0]
    sizes = make(draw, count)
    for size in sizes:
        size.append(draw.choice([None, None, draw.randint(0, 12), draw.randint(0, 999)]))
    most = 3_000 if make is even_sizes else 20_000
    need = round(draw.uniform(1, most) * PARTS) if draw.random() < 0.7 else round(10 ** draw.uniform(0, 3)) * PARTS
    if draw.random() < 0.15:
        # Exactly what some kits give, or a ten-thousandth more.
        need = max(sum(draw.randint(0, 6) * usable for usable, _, _ in sizes) + draw.choice([0, 1]), 1)
    return sizes, need


def most_of(size, need):
    of_use = -(-need // size[0])
    return of_use if size[2] is None else min(of_use, size[2])


def cp_sat(sizes, need):
    """Cost, usable and kits of the best mix, each exact."""
    found = []
    for goal in range(3):
        model = cp_model.CpModel()
        counts = [model.new_int_var(0, most_of(size, need), "") for size in sizes]
        sums = [
            sum(size[1] * count for size, count in zip(sizes, counts)),
            sum(size[0] * count for size, count in zip(sizes, counts)),
            sum(counts),
        ]
        model.add(sums[1] >= need)
        for total, value in zip(sums, found):
            model.add(total == value)
        model.minimize(sums[goal])
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 1
        solver.parameters.max_deterministic_time = 0.4
        status = solver.solve(model)
        if status == cp_model.INFEASIBLE and goal == 0:
            return None
        if status != cp_model.OPTIMAL:
            return "open"
        found.append(round(solver.objective_value))
    return found


def highs(sizes, need):
    """The least cost, by mixed-integer linear programming."""
    usable = numpy.array([size[0] / PARTS for size in sizes])
    prices = numpy.array([float(size[1]) for size in sizes])
    answer = milp(
        prices,
        constraints=LinearConstraint(usable, lb=need / PARTS),
        bounds=Bounds(0, [most_of(size, need) for size in sizes]),
        integrality=numpy.ones(len(sizes)),
        options={"mip_rel_gap": 0.0, "node_limit": 200_000},
    )
    if answer.status == 2:
        return None
    if answer.status != 0:
        return "open"
    counts = [round(count) for count in answer.x]
    # Its own tolerance may take a mix that is short by less than a ten-thousandth.
    if sum(size[0] * count for size, count in zip(sizes, counts)) < need:
        return "short"
    return sum(size[1] * count for size, count in zip(sizes, counts))


def main():
    out = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else HERE.parent / "published" / "kit_mix.json"
    draw = random.Random(SEED)
    rows, both, cost_only, left_out = [], 0, 0, 0
    while len(rows) < CASES:
        sizes, need = case(draw)
        best = cp_sat(sizes, need)
        second = highs(sizes, need)
        usable_second = second not in ("open", "short")
        if best == "open" and not usable_second:
            left_out += 1
            continue
        if best == "open":
            cost_only += 1
            best = second and [second, None, None]
        elif usable_second:
            both += 1
            if second != (best and best[0]):
                raise SystemExit(f"the two solvers differ: {sizes} {need}: {best} {second}")
        rows.append([sizes, need, best])
    head = {
        "tool": "OR-Tools CP-SAT; least cost also by HiGHS through scipy.optimize.milp",
        "version": f"ortools {ortools.__version__}, scipy {scipy.__version__}",
        "what": "sizes [usable, cents, most or null], need, best [cents, usable, kits] or null; "
        "board feet in ten-thousandths",
        "seed": SEED,
        "solved by both": both,
        "cost by HiGHS alone": cost_only,
        "left out unsolved": left_out,
    }
    text = json.dumps(head, indent=1)[:-2] + ',\n "rows": [\n'
    text += ",\n".join("  " + json.dumps(row, separators=(",", ":")) for row in rows)
    out.write_text(text + "\n ]\n}\n")


if __name__ == "__main__":
    main()
