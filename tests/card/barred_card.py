#!/usr/bin/python3
"""A card of a drive that is barred at its hour: written all the same, and told on standard error.

    tests/card/barred_card.py PROGRAM

In the invented town, whose Costard Road is shut at school times. The loop is made for a Saturday;
then its file is given a Monday morning, as one who edits it by hand would.
"""
import pathlib
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
PROGRAM = str(pathlib.Path(sys.argv[1]).resolve())
SAID = "Don't drive this card as printed at this time: at 08:3"


def run(folder, *words):
    done = subprocess.run([PROGRAM, *words], cwd=folder, capture_output=True, encoding="utf-8",
                          check=False)
    assert done.returncode == 0, f"{words}: exit {done.returncode}: {done.stderr}"
    return done


def plain_text(path, form):
    """The words of a file, its lines joined."""
    if form == "pdf":
        words = subprocess.run(["pdftotext", str(path), "-"], capture_output=True, encoding="utf-8",
                               check=True).stdout
    else:
        words = path.read_text(encoding="utf-8").replace("\n ", "").replace("&apos;", "'")
    return " ".join(words.split())


def refused(folder, text):
    """What doesn't hold isn't printed; the ending of a file's name is its form (a PDF begins with %PDF-, ISO 32000)."""
    false = re.sub(r'"metres": (\d)', r'"metres": 9\1', text, count=1)
    (folder / "false.json").write_text(false, encoding="utf-8")
    done = subprocess.run([PROGRAM, "card", "q.area", "false.json", "-o", "false.txt"], cwd=folder, capture_output=True,
                          encoding="utf-8", check=False)
    assert done.returncode == 3 and "nothing is written, since it doesn't hold" in done.stderr, done
    assert not (folder / "false.txt").exists()
    run(folder, "card", "q.area", "loops.json", "-o", "by-name.pdf")
    assert (folder / "by-name.pdf").read_bytes()[:5] == b"%PDF-"
    done = subprocess.run([PROGRAM, "card", "q.area", "loops.json", "--format", "text", "-o", "other.pdf"], cwd=folder,
                          capture_output=True, encoding="utf-8", check=False)
    assert done.returncode == 2 and done.stderr.count("\n") == 1 and not (folder / "other.pdf").exists(), done


def main():
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        run(folder, "build", str(ROOT / "maps" / "quillham.osm.pbf"), "-o", "q.area", "--region",
            "GB-ENG")
        run(folder, "loops", "q.area", "--home", "4 Lantern Row", "--through", "Costard Road",
            "--start", "2026-11-28T08:30", "-o", "loops.json")
        free = run(folder, "card", "q.area", "loops.json")
        assert "Don't drive" not in free.stdout + free.stderr, free.stderr
        text = (folder / "loops.json").read_text(encoding="utf-8")
        refused(folder, text)
        (folder / "loops.json").write_text(text.replace("2026-11-28T", "2026-11-30T"),
                                           encoding="utf-8")
        barred = run(folder, "card", "q.area", "loops.json")
        assert barred.stdout.splitlines()[1].startswith(SAID), barred.stdout[:400]
        for form in ("text", "gpx", "geojson"):
            done = run(folder, "card", "q.area", "loops.json", "--format", form, "-o", "card")
            assert done.stderr.startswith("loopwright: loops.json: loop 1: " + SAID), done.stderr
            assert done.stderr.count("\n") == 1 and done.stdout == "", done.stderr
            assert "Don't drive this card" in (folder / "card").read_text(encoding="utf-8"), form
        for form in ("html", "ics", "pdf"):
            done = run(folder, "card", "q.area", "loops.json", "--format", form, "-o", "card")
            assert done.stderr.startswith("loopwright: loops.json: loop 1: " + SAID), done.stderr
            assert "Don't drive this card" in plain_text(folder / "card", form), form


main()
