#!/usr/bin/python3
"""Random wishes on maps with random tags (sprinkle.py): each answer is one that the program's own proof
agrees with, or says why there is none; no map makes it fault.

usage: test_sprinkled.py PROGRAMS EXTRACT REGION [WISHES [SEED [MAPS]]]

The proof reads the area, as the search does, and shares no line with it (DEVELOPERS.md, proof). That an area
says what its map says is the audit's to check.
"""
import random
import subprocess
import sys
import tempfile
from pathlib import Path

from dump_text import built
from opl import Map
from random_wishes import SEED, Wishes
from sprinkle import sprinkle


class Sooner(Wishes):
    """The first answer only: it is proved like any other, and costs a tenth."""
    same_hours = False

    def wish(self, home):
        return [*super().wish(home), "--quick"]


def tried(programs, extract, region, count, seed):
    """Answers and failures on one map sprinkled with a seed."""
    with tempfile.TemporaryDirectory() as folder:
        town = Path(folder) / "sprinkled.osm.pbf"
        sprinkle(extract, town, seed)
        area, _ = built(programs, town, region, folder)
        wishes = Sooner(Path(programs) / "loopwright", area, Map(town), random.Random(seed))
        for _ in range(count):
            wishes.try_one(str(Path(folder) / "loops.json"))
    return wishes.answers, [f"seed {seed}: {failure}" for failure in wishes.failures]


def main():
    programs, extract, region, *more = sys.argv[1:]
    count, seed, maps = map(int, (*more, *("8", str(SEED), "1")[len(more):]))
    failed = []
    for k in range(maps):
        answers, failures = tried(programs, extract, region, count, seed + k)
        failed += failures
        told = ", ".join(f"{name} {number}" for name, number in sorted(answers.items()))
        print(f"{Path(extract).name}, seed {seed + k}: {told}", flush=True)
        if not answers["loops"]:
            failed.append(f"seed {seed + k}: no loop at all")
    print("\n".join(failed + [f"failed: {len(failed)}"]))
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
