#!/usr/bin/python3
"""The audit is itself tested: planted falsehoods, each found by the name of its claim.

usage: test_falsehoods.py PROGRAMS MAP

A loop of the invented county is made and read: no difference. Then one thing of it, or of its wish, is
made false at a time (falsehoods_*.py), and the audit must name the claim that broke.
"""
import subprocess
import sys
import tempfile
from pathlib import Path

import falsehoods_passes
import falsehoods_road
import falsehoods_wish
from auditor import Auditor, read
from dump_text import built
from falsehood import PLANTED, World
from tally import Tally, told

WISH = ("--home 54.300000,2.600000 --minutes 40 --start 2026-11-27T08:10 --want roundabout=max "
        "--want bus-lane:in-force=1 --want level-crossing=1 --want mini-roundabout=1 --want zebra=1 "
        "--want twenty-zone=1").split()
MODULES = (falsehoods_passes, falsehoods_road, falsehoods_wish)
LEAST = 60  # kinds of falsehood


def made(programs, area, folder):
    """The answer to WISH and the exit code."""
    file = Path(folder) / "good.json"
    done = subprocess.run([Path(programs) / "loopwright", "loops", area, *WISH, "-o", file],
                          stdout=subprocess.DEVNULL, check=False)
    return read(file), done.returncode


def is_found(auditor, world, claim):
    tally = Tally()
    auditor.audit(tally, world.words, world.answer, world.exit_code)
    return claim in tally.by_claim()


def main():
    programs, extract = sys.argv[1:]
    auditor = Auditor(extract, "GB-ENG", Path(programs) / "npm")
    with tempfile.TemporaryDirectory() as folder:
        area, _ = built(programs, extract, "GB-ENG", folder)
        answer, exit_code = made(programs, area, folder)
    tally = Tally()
    auditor.audit(tally, WISH, answer, exit_code)
    print("\n".join(told(tally, len(answer["loops"]))))
    missed = []
    for claim, what, spoil in PLANTED:
        world = World(auditor.ground, auditor.bans, WISH, answer, exit_code)
        try:
            spoil(world)
        except (StopIteration, ValueError, IndexError) as error:
            missed.append(f"can't be planted in this loop: {what} ({claim}): {error!r}")
            continue
        if not is_found(auditor, world, claim):
            missed.append(f"not found: {what} ({claim})")
    print("\n".join(missed))
    print(f"{len(PLANTED)} falsehoods planted, {len(PLANTED) - len(missed)} found by their claim")
    sys.exit(1 if missed or tally.differences or len(PLANTED) < LEAST else 0)


if __name__ == "__main__":
    main()
