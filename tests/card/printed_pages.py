#!/usr/bin/python3
"""Lessons on paper, as a reader of PDF files sees them: nothing cut, nothing overlapping, nothing too small.

    printed_pages.py PROGRAM

In the invented town, on A4, A5 and in large print. Poppler's pdftotext tells where each word stands, its
pdftohtml how large the letters are. Sizes: what is spoken at least 12 pt, nothing under 9 pt, and as many
card pages as rows / 14 rounded up: ours.
"""
import html
import itertools
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
PROGRAM = str(pathlib.Path(sys.argv[1]).resolve())
WISHES = [
    ["--home", "4 Lantern Row", "--minutes", "60", "--want", "roundabout=3", "--want",
     "level-crossing=1", "--brief", "4", "--new", "roundabout", "--talk", "4", "--independent", "10"],
    ["--home", "19 Cooper's Reach", "--minutes", "45", "--want", "turn-off:left=3", "--talk", "4"],
]
PAPERS = [(["--paper", "a4"], (210, 297), 14), (["--paper", "a5"], (148, 210), 7),
          (["--large-print"], (210, 297), 7)]
MM = 72 / 25.4
EDGE = 4 * MM         # no printer needs more of a margin
HEAD = 30 * MM        # the name of the page stands above this
LEAST_PT, SPOKEN_PT = 9, 12
CODE_PT = 18           # of the learner's code at the head of a page, in normal print
LARGE = math.sqrt(2)  # times as large are all letters in large print
STREETS_PT = 7.5      # names of streets on the map, which is looked at while parked


def run(*words):
    done = subprocess.run(words, capture_output=True, encoding="utf-8", check=False)
    assert done.returncode == 0, f"{words}: exit {done.returncode}: {done.stderr}"
    return done.stdout


def pages_of(pdf):
    """(width, height, [(left, top, right, bottom, word)]) of each page, in points."""
    xml = run("pdftotext", "-bbox", str(pdf), "-")
    xml = xml[xml.index("<doc>"):xml.index("</doc>") + len("</doc>")]
    pages = []
    for page in ET.fromstring(xml):
        words = [(*(float(w.get(k)) for k in ("xMin", "yMin", "xMax", "yMax")), w.text or "")
                 for w in page]
        pages.append((float(page.get("width")), float(page.get("height")), words))
    return pages


def check_edges(pages, size):
    for width, height, words in pages:
        assert math.isclose(width, size[0] * MM, abs_tol=0.5), width
        assert math.isclose(height, size[1] * MM, abs_tol=0.5), height
        for left, top, right, bottom, word in words:
            assert left >= EDGE and right <= width - EDGE, f"{word} is cut at a side"
            assert top >= EDGE and bottom <= height - EDGE, f"{word} is cut above or below"


def overlap(a, b):
    """Shares of both words' boxes that lie over each other. Boxes are as high as a line, letters less."""
    across = min(a[2], b[2]) - max(a[0], b[0])
    down = min(a[3], b[3]) - max(a[1], b[1])
    low = min(a[3] - a[1], b[3] - b[1])
    return across > 0.5 and down > 0.35 * low


def check_no_overlap(pages):
    for number, (_, _, words) in enumerate(pages, 1):
        if any(word[4] == "map" and word[1] < HEAD for word in words):  # slanted names; tests/draw looks after them
            continue
        for a, b in itertools.combinations(words, 2):
            assert not overlap(a, b), f"page {number}: {a[4]} and {b[4]} overlap"


def texts_by_page(pdf):
    """[(size in points, text)] of each page."""
    zoom = 3  # the most pdftohtml grants: sizes are whole numbers
    xml = run("pdftohtml", "-xml", "-i", "-stdout", "-zoom", str(zoom), str(pdf))
    sizes = {m[1]: int(m[2]) / zoom for m in re.finditer(r'<fontspec id="(\d+)" size="(\d+)"', xml)}
    for page in re.split(r"<page ", xml)[1:]:
        yield [(sizes[m[1]], html.unescape(re.sub("<[^>]*>", "", m[2])))
               for m in re.finditer(r'<text [^>]*font="(\d+)"[^>]*>(.*?)</text>', page)]


def check_least(pdf, larger):
    """No letters are smaller than the least, which large print makes so many times as large."""
    for texts in texts_by_page(pdf):
        is_map = any(text.strip() == "map" for _, text in texts)
        for size, text in texts:
            if text.strip() == "P":  # a mark within a drawing; the same row says it in words
                continue
            least = STREETS_PT if is_map else LEAST_PT
            assert size >= larger * least - 0.34, f"{text} has {size} pt"


def check_spoken(pages, spoken):
    """Each of the words spoken is in large letters on a page of the card. The code at the head, of a size
    that is known, tells how high the box of a word of so many points is."""
    large = []
    for _, _, words in pages:
        code = next(word for word in words if word[4] == "WREN")
        points = CODE_PT / (code[3] - code[1])  # as in normal print
        # Figures at the edge may come between two lines of one row.
        large += [word[4] for word in words
                  if (word[3] - word[1]) * points >= SPOKEN_PT - 0.1 and not word[4].isdigit()]
    large = " ".join(large)
    for words in spoken:
        assert words in large, f"not in large letters: {words}"


def check_first_passes(plan):
    """The plan names the first pass of what is asked for by the row that its own list of what is practised has first."""
    told = re.findall(r"first ([a-z -]+?) \(row (\d+)\)", plan)
    assert told, plan
    for kind, row in told:
        listed = [each for each in re.findall(r"(?<!-)\b%s([a-z -]*) \d+(?:, \d+ of them inferred)? \(rows? (\d+)" % kind, plan)
                  if "all the way round" not in each[0]]  # which counts for no want
        assert int(row) == min(int(first) for _, first in listed), (kind, row, listed)


def spoken_in(text):
    """The first lines of the rows of the card as plain text."""
    rows = re.findall(r"^[┌│└ ] +\d+  (.*?)(?:  +(?:limit|no limit|hard).*)?$", text, re.M)
    return [row.rstrip() for row in rows]


def check(folder, wish, number):
    area = str(folder / "q.area")
    loops = str(folder / f"{number}.json")
    run(PROGRAM, "loops", area, *wish, "--start", "2026-11-28T15:00", "-o", loops)
    text = run(PROGRAM, "card", area, loops)
    rows = int(re.search(r"(\d+) rows", text)[1])
    for words, size, per_page in PAPERS:
        pdf = folder / "lesson.pdf"
        run(PROGRAM, "card", area, loops, "--format", "pdf", "--pupil", "WREN", *words, "-o", str(pdf))
        pages = pages_of(pdf)
        check_edges(pages, size)
        check_no_overlap(pages)
        check_least(pdf, LARGE if "--large-print" in words else 1)
        check_spoken(pages, spoken_in(text))
        card = [" ".join(w[4] for w in page[2]) for page in pages]
        check_first_passes(" ".join(card))
        shown = [page for page in card if re.search(r"card \d+ of \d+", page)]
        stops = sum(page.count("drive on by") for page in shown)
        assert len(shown) == math.ceil((rows + stops) / per_page), (words, len(shown), rows, stops)
        for page in card:
            assert "WREN" in page and "OpenStreetMap" in page and "overrule" in page, page[:200]
        print(f"{' '.join(words)}: {len(pages)} pages, {len(shown)} of them the card of {rows} rows")


def check_turning_last(folder):
    """A turn in the road directly before the last row, into whose place it comes, is told by its own row."""
    area, loops, pdf = (str(folder / name) for name in ("q.area", "turned.json", "turned.pdf"))
    run(PROGRAM, "loops", area, "--home", "Nether Osk", "--through", "Nether Osk;54.30429,2.67222", "--end",
        "Zenith End", "--start", "2026-11-28T15:00", "-o", loops)
    rows = re.findall(r"^[┌│└ ] +(\d+)  (.*)$", run(PROGRAM, "card", area, loops), re.M)
    assert rows[-2][1].startswith("Turn the car round"), rows
    run(PROGRAM, "card", area, loops, "--format", "pdf", "--sheet", "plan", "-o", pdf)
    plan = " ".join(run("pdftotext", pdf, "-").split())
    told = re.findall(r"the car is turned round where the road ends, a manoeuvre \(row (\d+)\)", plan)
    assert told == [rows[-2][0]], (told, rows)


def check_at_home(folder):
    """The sheet for the family: the same pages, without the instructor's boxes."""
    book = ["--book", str(folder / "b.book")]
    area = str(folder / "q.area")
    run(PROGRAM, "pupil", "add", "WREN", *book, "--home", "4 Lantern Row", "--today", "2026-09-01")
    run(PROGRAM, "lesson", "plan", "WREN", area, *book, "--start", "2026-11-27T10:00", "--want", "turn-off:left=4")
    run(PROGRAM, "lesson", "log", "--yes", "WREN", *book, "rest 4; seen A: Mo-Fr 07:00-09:30")
    words = ["lesson", "at-home", "WREN", area, *book, "--start", "2026-11-29T09:00"]
    text = run(PROGRAM, *words)
    for paper, size, _ in PAPERS:
        pdf = folder / "home.pdf"
        run(PROGRAM, *words, *paper, "-o", str(pdf))
        pages = pages_of(pdf)
        check_edges(pages, size)
        check_no_overlap(pages)
        check_least(pdf, LARGE if "--large-print" in paper else 1)
        check_spoken(pages, spoken_in(text))
        for page in (" ".join(w[4] for w in page[2]) for page in pages):
            assert "WREN" in page and "OpenStreetMap" in page and "No dual controls" in page, page[:200]
            if re.search(r"card \d+ of \d+", page):
                assert not re.search(r"\bdual\b(?! controls)|\bhard \d", page), page
        print(f"at home, {' '.join(paper)}: {len(pages)} pages")


def main():
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        run(PROGRAM, "build", str(ROOT / "maps" / "quillham.osm.pbf"), "-o", str(folder / "q.area"),
            "--region", "GB-ENG")
        for number, wish in enumerate(WISHES):
            check(folder, wish, number)
        check_turning_last(folder)
        check_at_home(folder)


main()
