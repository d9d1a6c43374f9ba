#!/usr/bin/python3
"""Everything of a real extract that has hours, with its verdict at three minutes.

usage: test_listed_hours.py PROGRAMS EXTRACT REGION

What `lanes AREA --all` prints for a Saturday at 15:00, a Monday at 08:30 and a bank holiday that
falls on a Monday (28 December 2026, for Boxing Day) is compared with tests/golden/TOWN-hours.txt,
which was checked by hand against the tags. A listing that differs is left in PROGRAMS/golden, where
tools/approve finds it.
"""
import difflib
import subprocess
import sys
import tempfile
from pathlib import Path

from dump_text import built

GOLDEN = Path(__file__).resolve().parent.parent / "golden"
MINUTES = ("2026-11-28T15:00", "2026-11-30T08:30", "2026-12-28T08:30")


def listing(programs, area):
    return "".join(
        subprocess.run([Path(programs) / "loopwright", "lanes", area, "--all", "--at", minute],
                       check=True, stdout=subprocess.PIPE, encoding="utf-8").stdout
        for minute in MINUTES)


def main():
    programs, extract, region = sys.argv[1:4]
    approved = GOLDEN / f"{Path(extract).name.split('.')[0]}-hours.txt"
    with tempfile.TemporaryDirectory() as folder:
        text = listing(programs, built(programs, extract, region, folder)[0])
    old = approved.read_text(encoding="utf-8")
    if text == old:
        print(f"{approved.name}: as approved, {text.count(chr(10))} lines")
        return
    sys.stdout.writelines(difflib.unified_diff(old.splitlines(True), text.splitlines(True),
                                               "approved", "now"))
    left = Path(programs) / "golden"
    left.mkdir(exist_ok=True)
    (left / approved.name).write_text(text, encoding="utf-8")
    sys.exit(1)


if __name__ == "__main__":
    main()
