"""The tables of every whole job, read by Python's own csv module (strict), against the figures on the page.

python tests/live/csv_check.py target/tests/site
"""

import csv
import io
import json
import subprocess
import sys
from fractions import Fraction

PARTS = {"⅛": "1/8", "¼": "1/4", "⅜": "3/8", "½": "1/2", "⅝": "5/8", "¾": "3/4", "⅞": "7/8"}


def number(written):
    """The number within a figure as the page writes it, read in another way than the page's own."""
    text = written.replace("RSI", "").replace("R-", "").replace("U-", "").replace("$", "").replace(",", "").replace("−", "-")
    for sign, part in PARTS.items():
        text = text.replace(sign, " " + part)
    words = text.replace("\u202f", "").split()
    total = Fraction(0)
    unit = ""
    for word in words:
        try:
            total += Fraction(word)
        except ValueError:
            unit = word
    return total * 1000 if unit == "m" else total


answer = subprocess.run(["node", "tests/checks/tables.mjs", sys.argv[1]], check=True, capture_output=True)
figures = texts = 0
for table in json.loads(answer.stdout):
    where = f"{table['job']}, {table['language']}, {table['table']}"
    raw = table["csv"]
    assert raw.startswith("\ufeff") and raw.endswith("\r\n"), where
    rows = list(csv.reader(io.StringIO(raw[1:], newline=""), strict=True))
    assert len(rows) == len(table["rows"]) + 1, f"{where}: {len(rows)} rows"
    assert all(len(row) == len(rows[0]) for row in rows), f"{where}: rows of several lengths"
    assert all(rows[0]) and len(set(rows[0])) == len(rows[0]), f"{where}: heads {rows[0]}"
    for row, wanted in zip(rows[1:], table["rows"]):
        assert len(row) == len(wanted), f"{where}: {row} against {wanted}"
        for cell, (kind, written) in zip(row, wanted):
            assert not cell[:1] in tuple("=+@\t\r\n") or not cell, f"{where}: {cell!r} may be a formula"
            if kind == "text":
                plain = cell[1:] if cell[:1] == "'" and cell[1:2] in tuple("=+-@\t\r\n") else cell
                assert plain == written, f"{where}: {cell!r} against {written!r}"
                texts += 1
            elif written in ("", "–"):
                assert cell == "", f"{where}: {cell!r} where nothing is known"
            else:
                assert Fraction(cell) == number(written), f"{where}: {cell} against {written!r}"
                figures += 1
assert figures > 300 and texts > 100, (figures, texts)
print(f"{figures} figures and {texts} texts in the tables are those of the page")
