"""Reads the papers that a browser printed, with a PDF library that knows nothing of the page.

    python tests/browser/paper_check.py target/browser/papers

Beside each PDF the journey leaves a JSON with what stood on the page: its rows in order, the names and figures
that have to be there, the size of the paper. Held here: the page's size; each row wholly on one page and in its
order; a heading never alone at the foot of a page; text dark on white and inside the margins; no dark ground;
every name and figure there; where a leaf is one page, as many pages
as leaves. PDFs whose name begins with `spoiled-` were printed with a fault put into their style:
each of them has to be refused, for the reason that its JSON names. Needs pdfplumber.
"""

import json
import logging
import pathlib
import sys
import unicodedata

import pdfplumber

logging.getLogger("pdfminer").setLevel(logging.ERROR)

MARGIN = 0.45 * 72
"""Nothing but the line at the foot stands nearer to the edge: points."""
FOOT = 0.68 * 72
"""Room of the foot line and the page's number: points from the lower edge."""
GAP = 90
"""Characters that may stand between two texts of one row: what the style adds, a head repeated."""


JOBS = ("light", "dark", "spanish", "barn", "shapes", "patches", "long", "inspector", "emergency", "much", "class", "embed")
"""The jobs whose papers every engine prints; the last is the leaf of an embedded estimate."""


def plain(text):
    """Without space and without forms that a font may join or split."""
    return "".join(unicodedata.normalize("NFKC", text).replace("\u00ad", "").split())


def luminance(color):
    """Relative luminance of a color of the PDF (WCAG 2.2): gray, RGB or CMYK parts of 0 to 1; a pattern has none."""
    if color is None:
        return 0.0
    parts = color if isinstance(color, (tuple, list)) else [color]
    if any(isinstance(one, str) for one in parts):
        return None
    parts = [float(one) for one in parts]
    if len(parts) == 1:
        parts *= 3
    if len(parts) == 4:
        parts = [(1 - one) * (1 - parts[3]) for one in parts[:3]]
    line = [one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in parts[:3]]
    return sum(weight * one for weight, one in zip((0.2126, 0.7152, 0.0722), line))


def contrast(color):
    """Contrast of a color on white."""
    light = luminance(color)
    return 1.0 if light is None else 1.05 / (light + 0.05)


def within(char, shape):
    across, down = (char["x0"] + char["x1"]) / 2, (char["top"] + char["bottom"]) / 2
    return shape["x0"] < across < shape["x1"] and shape["top"] < down < shape["bottom"]


class Read:
    """A PDF as read: the text of its pages, in the order in which it is painted, and the faults of its looks."""

    def __init__(self, file, size):
        self.faults, self.text, self.page_at = [], "", []
        with pdfplumber.open(file) as pdf:
            self.pages = len(pdf.pages)
            for number, page in enumerate(pdf.pages, 1):
                self.take(number, page, size)

    def fault(self, kind, text):
        self.faults.append((kind, text))

    def take(self, number, page, size):
        width, height = float(page.width), float(page.height)
        if abs(width - size[0]) > 1.5 or abs(height - size[1]) > 1.5:
            self.fault("size", f"page {number} is {width:.1f} × {height:.1f} points, not {size[0]} × {size[1]}")
        light, beyond = [], []
        # A small dark flag is a ground of its own.
        flags = [one for one in page.rects if one.get("fill") and contrast(one["non_stroking_color"]) >= 4.5]
        for char in page.chars:
            letter = plain(char["text"])
            if not letter:
                continue
            flagged = any(within(char, flag) for flag in flags)
            if not flagged and contrast(char["non_stroking_color"]) < 4.5:
                light.append(letter)
            foot = char["top"] > height - FOOT
            if char["x0"] < MARGIN or char["x1"] > width - MARGIN or char["top"] < MARGIN or char["bottom"] > height - 10:
                beyond.append(letter)
            if not foot:
                self.text += letter
                self.page_at += [number] * len(letter)
        if light:
            self.fault("light", f"page {number}: light text: {''.join(light)[:60]}")
        if beyond:
            self.fault("beyond", f"page {number}: text outside the margins: {''.join(beyond)[:60]}")
        for shape in page.rects + page.curves:
            area = (shape["x1"] - shape["x0"]) * (shape["bottom"] - shape["top"])
            shade = luminance(shape["non_stroking_color"])
            if shape.get("fill") and area > 72 * 72 and shade is not None and shade < 0.4:
                self.fault("ground", f"page {number}: a dark ground of {area / 5184:.1f} in²")
                break

    def rows(self, rows):
        """Each row in its order, wholly on one page; a heading with the row after it."""
        at, heading = 0, None
        for row in rows:
            texts = [one for one in map(plain, row["texts"]) if one]
            if not texts:
                continue
            shown = " ".join(row["texts"])[:70]
            first = self.text.find(texts[0], at)
            if first < 0:
                self.fault("lost", f"not printed: {shown}")
                continue
            here, page = first, self.page_at[first]
            for text in texts:
                found = self.text.find(text, here, here + len(text) + GAP)
                if found < 0:
                    self.fault("lost", f"page {page}: “{text[:40]}” is missing in: {shown}")
                    break
                here = found + len(text)
                if self.page_at[here - 1] != page:
                    self.fault("cut", f"cut between pages {page} and {self.page_at[here - 1]}: {shown}")
                    break
            if heading and heading[1] != page:
                self.fault("alone", f"a heading alone on page {heading[1]}: {heading[0]}")
            heading = (shown, page) if row["heading"] else None
            at = max(at, here)


def faults_of(file, about):
    read = Read(file, about["size"])
    read.rows(about["rows"])
    if about.get("pages") and read.pages != about["pages"]:
        read.fault("pages", f"{read.pages} pages for {about['pages']} leaves that have to stand on one each")
    for must in about["must"]:
        if plain(must) not in read.text:
            read.fault("lost", f"“{must}” is nowhere")
    return read


def main(folder):
    wrong, sound, pages, rows, refused = [], 0, 0, 0, 0
    for file in sorted(folder.rglob("*.pdf")):
        name = f"{file.parent.name}/{file.stem}"
        beside = file.with_suffix(".json")
        if not beside.exists():
            wrong.append(f"{name}: nothing says what stood on the page")
            continue
        about = json.loads(beside.read_text(encoding="utf-8"))
        read = faults_of(file, about)
        if file.stem.startswith("spoiled-"):
            if any(kind == about["fault"] for kind, _ in read.faults):
                refused += 1
            else:
                wrong.append(f"{name} passes: {about['fault']} is not seen")
            continue
        sound += 1
        pages += read.pages
        rows += len(about["rows"])
        if len(about["rows"]) < about.get("least", 20) or len(about["must"]) < (1 if about.get("pages") else 4):
            wrong.append(f"{name}: next to nothing was asked")
        wrong += [f"{name}: {text}" for _, text in read.faults]
    if not sound:
        wrong.append(f"no PDF in {folder}: the browser part prints them")
    for engine in sorted(one for one in folder.iterdir() if one.is_dir()) if folder.is_dir() else []:
        there = {file.stem.split("-")[0] for file in engine.glob("*.pdf")}
        wrong += [f"{engine.name}: no paper of {job}" for job in JOBS if job not in there]
    if (folder / "chromium").is_dir() and refused < 6:
        wrong.append(f"only {refused} spoiled papers were refused")
    print("\n".join(wrong[:60] or [f"{sound} PDFs, {pages} pages, {rows} rows hold; {refused} spoiled ones refused"]))
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(pathlib.Path(sys.argv[1])))
