#!/usr/bin/python3
"""The audit is itself tested: planted falsehoods, each found by the name of its claim.

usage: test_falsehoods.py PROGRAMS MAP

Answers to some wishes on the invented county are made and read: no difference. Then one thing of one, or of
its wish, is made false at a time (falsehoods_*.py), and the audit must name the claim that broke.
"""
import json
import shlex
import subprocess
import sys
import tempfile
from collections import namedtuple
from pathlib import Path

import falsehoods_files
import falsehoods_lesson
import falsehoods_own_way
import falsehoods_passes
import falsehoods_road
import falsehoods_wish
from auditor import Auditor
from dump_text import built
from falsehood import PLANTED, World
from tally import Tally, lines, told

DOOR = "--home 54.300000,2.600000 --start 2026-11-27T08:10 "
WISHES = {
    "good": DOOR + "--minutes 40 --want roundabout=max --want bus-lane:in-force=1 --want level-crossing=1 "
                   "--want mini-roundabout=1 --want zebra=1 --want twenty-zone=1",
    "parts": DOOR + "--minutes 35 --part '8 quiet: turn-off:left=1' --part '15 busier: crossroads=1' "
                    "--drive-out 54.303000,2.597000 --drive-back 54.299610,2.610190",
    "stops": DOOR + "--minutes 40 --want roundabout=2 --want parallel-park=1 --new roundabout --talk 4",
    "independent": DOOR + "--minutes 30 --want roundabout=2 --independent 6 --variants",
    "files": DOOR + "--minutes 45 --want zebra=2 --notes {}/notes.geojson --terms {}/terms.txt "
                    "--driven {}/driven.txt --keep-off '54.310000,2.580000 @ Mo-Fr 08:00-10:00'",
    "own": DOOR + "--through 54.303000,2.597000;54.305000,2.610000;54.295000,2.605000",
}
NOTES = """{"type": "FeatureCollection", "features": [{"type": "Feature",
 "geometry": {"type": "Point", "coordinates": [2.5988, 54.2973]},
 "properties": {"says": "hump", "seen": "2026-10-03"}}]}"""
TERMS = "2026-09-02 2026-10-23\n2026-11-02 2026-12-18\n"
MODULES = (falsehoods_passes, falsehoods_road, falsehoods_wish, falsehoods_lesson, falsehoods_own_way,
           falsehoods_files)
LEAST = 60          # kinds of falsehood
WAYS_HOME_KEPT = 2  # all are read once, in the good answer; few are enough to spoil

Good = namedtuple("Good", "words text exit_code")  # text: the loop file's


def write_files(auditor, folder):
    """Notes, terms and a ledger of streets that are quiet, and some that aren't."""
    (folder / "notes.geojson").write_text(NOTES, encoding="utf-8")
    (folder / "terms.txt").write_text(TERMS, encoding="utf-8")
    ways = [way for way in sorted(auditor.ground.roads) if auditor.quiet(way) is not None][::40]
    (folder / "driven.txt").write_text("".join(f"2026-11-2{way % 7} {way} 2\n" for way in ways),
                                       encoding="utf-8")


def made(programs, area, name, folder):
    """The answer to a wish and the exit code."""
    words = shlex.split(WISHES[name].replace("{}", str(folder)))
    file = folder / f"{name}.json"
    done = subprocess.run([Path(programs) / "loopwright", "loops", area, *words, "-o", file],
                          stdout=subprocess.DEVNULL, check=False)
    return Good(words, file.read_text(encoding="utf-8"), done.returncode)


def shortened(good):
    answer = json.loads(good.text)
    for loop in answer["loops"]:
        loop["ways_home"] = loop["ways_home"][:WAYS_HOME_KEPT]
    return good._replace(text=json.dumps(answer))


def is_found(auditor, world, claim):
    tally = Tally()
    auditor.audit(tally, world.words, world.answer, world.exit_code)
    return claim in tally.by_claim()


def missed_of(auditor, goods, folder):
    """A line for each falsehood that can't be planted, or isn't found."""
    for claim, name, what, spoil in PLANTED:
        world = World(auditor, goods[name], folder)
        try:
            spoil(world)
        except (StopIteration, ValueError, IndexError, KeyError) as error:
            yield f"can't be planted in '{name}': {what} ({claim}): {error!r}"
            continue
        if not is_found(auditor, world, claim):
            yield f"not found in '{name}': {what} ({claim})"


def main():
    programs, extract = sys.argv[1:]
    auditor = Auditor(extract, "GB-ENG", Path(programs) / "npm")
    tally = Tally()
    with tempfile.TemporaryDirectory() as made_in:
        folder = Path(made_in)
        area, _ = built(programs, extract, "GB-ENG", folder)
        write_files(auditor, folder)
        goods = {name: made(programs, area, name, folder) for name in WISHES}
        loops = 0
        for name, good in goods.items():
            tally.where, answer = name + ": ", json.loads(good.text)
            auditor.audit(tally, good.words, answer, good.exit_code)
            loops += len(answer["loops"])
        print("\n".join([*lines(tally.differences), *told(tally, loops)]))
        goods = {name: shortened(good) for name, good in goods.items()}
        missed = list(missed_of(auditor, goods, folder))
    print("\n".join(missed))
    print(f"{len(PLANTED)} falsehoods planted, {len(PLANTED) - len(missed)} found by their claim")
    sys.exit(1 if missed or tally.differences or len(PLANTED) < LEAST else 0)


if __name__ == "__main__":
    main()
