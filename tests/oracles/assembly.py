"""Remakes tests/published/assembly.json: U of framed walls by three methods.

Run it with scipy 1.17.1 installed: python tests/oracles/assembly.py [FILE]

Parallel paths and isothermal planes are the two methods of the ASHRAE Handbook—Fundamentals. Between them lies the heat
flow itself: conduction in the plan of one bay of 16 in, from the middle of a stud to the middle of the cavity, by finite
volumes, with the layers at their real thicknesses. Studs are as wide as the framing share asks for. The grid is halved
once, and the two answers are carried on to a grid without end (Richardson).
"""

import json
import pathlib
import sys

import numpy
import scipy
import scipy.sparse
import scipy.sparse.linalg

HERE = pathlib.Path(__file__).resolve().parent
BAY_IN = 16.0
WOOD = 1.25
OUTSIDE_FILM, INSIDE_FILM = 0.17, 0.68
SIDING, SHEATHING, GYPSUM = (0.5, 0.62), (0.4375, 0.62), (0.5, 0.45)
BOARD, BAND = (1.0, 5.0), (1.5, 1.875)

# A name; layers outside; what fills the cavity (inches, R, from the outside in); the member's depth; framing share; layers
# inside. A member that is deeper than the fill of a bay without layers inside stands free in the room.
WALLS = [
    ("R-13 in a 2x4", [SIDING, SHEATHING], [(3.5, 13.0)], 3.5, 0.25, [GYPSUM]),
    ("R-13 in a 2x4, R-5 outside", [SIDING, BOARD, SHEATHING], [(3.5, 13.0)], 3.5, 0.25, [GYPSUM]),
    ("R-20 in a 2x6", [SIDING, SHEATHING], [(5.5, 20.0)], 5.5, 0.25, [GYPSUM]),
    ("R-20 in a 2x6, R-5 outside", [SIDING, BOARD, SHEATHING], [(5.5, 20.0)], 5.5, 0.25, [GYPSUM]),
    ("R-20.4 of one kind in a 2x6", [SIDING, SHEATHING], [(5.5, 20.4)], 5.5, 0.25, [GYPSUM]),
    ("2 in of foam R-12.4 and R-8 in a 2x6", [SIDING, SHEATHING], [(2.0, 12.4), (3.5, 8.0)], 5.5, 0.25, [GYPSUM]),
    ("3.5 in of foam R-21.7 in a 2x4", [SIDING, SHEATHING], [(3.5, 21.7)], 3.5, 0.25, [GYPSUM]),
    ("rim, 3 in of foam R-18 in open bays", [SIDING, BAND], [(3.0, 18.0)], 9.25, 0.09375, []),
    ("rim, 2 in of foam R-12 in open bays", [SIDING, BAND], [(2.0, 12.0)], 9.25, 0.09375, []),
]


def series(wall):
    _, outside, fill, member, share, inside = wall
    both = OUTSIDE_FILM + sum(r for _, r in outside) + sum(r for _, r in inside) + INSIDE_FILM
    counts = member if inside else min(member, sum(inches for inches, _ in fill))
    return both, sum(r for _, r in fill), WOOD * counts, share


def parallel(wall):
    both, cavity, member, share = series(wall)
    return (1 - share) / (both + cavity) + share / (both + member)


def isothermal(wall):
    both, cavity, member, share = series(wall)
    return 1 / (both + 1 / ((1 - share) / cavity + share / member))


def finite(wall, per_in):
    _, outside, fill, member, share, inside = wall
    # Cells from the outside in: thickness, resistance of an inch in the bay (none: air of the room) and in the member.
    thick, in_bay, in_member = [], [], []

    def layer(inches, bay, framed):
        count = max(1, round(inches * per_in))
        thick.extend([inches / count] * count)
        in_bay.extend([bay] * count)
        in_member.extend([WOOD if framed else bay] * count)

    for inches, r in outside:
        layer(inches, r / inches, False)
    for inches, r in fill:
        layer(inches, r / inches, True)
    free = member - sum(inches for inches, _ in fill)
    if free > 0:
        layer(free, numpy.nan, True)
    for inches, r in inside:
        layer(inches, r / inches, False)
    # Along the wall: half a member, half a cavity.
    wide = []
    for inches in (share * BAY_IN / 2, (1 - share) * BAY_IN / 2):
        count = round(inches * per_in)
        wide += [inches / count] * count
    half = round(share * BAY_IN / 2 * per_in)
    dx, dy = numpy.array(wide), numpy.array(thick)
    is_member = (numpy.arange(len(dx)) < half)[:, None]
    rho = numpy.where(is_member, numpy.array(in_member)[None, :], numpy.array(in_bay)[None, :])
    solid = ~numpy.isnan(rho)
    at = numpy.full(rho.shape, -1)
    at[solid] = numpy.arange(solid.sum())
    one, other, conductance = [], [], []
    # To the room, and to the outside: conductances of each cell.
    room, cold = numpy.zeros(solid.sum()), numpy.zeros(solid.sum())
    nx, ny = rho.shape
    for i in range(nx):
        cold[at[i, 0]] += dx[i] / (OUTSIDE_FILM + rho[i, 0] * dy[0] / 2)
        for j in range(ny):
            if not solid[i, j]:
                continue
            across, along = rho[i, j] * dy[j] / 2, rho[i, j] * dx[i] / 2
            if j + 1 < ny and solid[i, j + 1]:
                one.append(at[i, j])
                other.append(at[i, j + 1])
                conductance.append(dx[i] / (across + rho[i, j + 1] * dy[j + 1] / 2))
            else:
                room[at[i, j]] += dx[i] / (INSIDE_FILM + across)
            if i + 1 < nx and solid[i + 1, j]:
                one.append(at[i, j])
                other.append(at[i + 1, j])
                conductance.append(dy[j] / (along + rho[i + 1, j] * dx[i + 1] / 2))
            elif i + 1 < nx:
                room[at[i, j]] += dy[j] / (INSIDE_FILM + along)
    diagonal = room + cold
    numpy.add.at(diagonal, one, conductance)
    numpy.add.at(diagonal, other, conductance)
    size = len(diagonal)
    links = scipy.sparse.coo_matrix((conductance, (one, other)), shape=(size, size)).tocsr()
    field = scipy.sparse.linalg.spsolve((scipy.sparse.diags(diagonal) - links - links.T).tocsc(), room)
    return float(numpy.sum(cold * field) / numpy.sum(dx))


def main():
    out = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else HERE.parent / "published" / "assembly.json"
    rows = []
    for wall in WALLS:
        coarse, fine = finite(wall, 8), finite(wall, 16)
        name, outside, fill, member, share, inside = wall
        rows.append(
            {
                "wall": name,
                "outside_r": round(sum(r for _, r in outside), 4),
                "fill_r": round(sum(r for _, r in fill), 4),
                "fill_in": sum(inches for inches, _ in fill),
                "member_in": member,
                "framing_share": share,
                "inside_r": sum(r for _, r in inside) if inside else None,
                "parallel": round(parallel(wall), 6),
                "isothermal": round(isothermal(wall), 6),
                "finite_volumes": round(fine + (fine - coarse) / 3, 5),
            }
        )
    head = {
        "tool": "finite volumes of our own, solved by scipy",
        "version": scipy.__version__,
        "what": "U of framed walls by parallel paths, by isothermal planes and by conduction in the plan of one bay; films 0.17 "
        "and 0.68, wood R-1.25 an inch; without layers inside the bay stands open",
    }
    lines = ",\n".join("  " + json.dumps(row, ensure_ascii=False) for row in rows)
    text = json.dumps(head, indent=1, ensure_ascii=False)[:-2] + ',\n "rows": [\n' + lines + "\n ]\n}\n"
    json.loads(text)
    out.write_text(text)


if __name__ == "__main__":
    main()
