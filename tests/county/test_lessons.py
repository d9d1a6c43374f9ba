#!/usr/bin/python3
"""Asks the county for each lesson of lessons.txt from doors, all five of them when none is said.

    tests/county/test_lessons.py PROGRAM COUNTY.area [--quick] [DOOR…]

A lesson is met, and `proof` agrees with its file, or it falls short, with a reason that `near` bears
out (tests/real/random_wishes.py says how); with --quick first answers are held to the same. Prints a table: how many loops' passes, or what is missing.
"""
import json
import pathlib
import random
import shlex
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "real"))
from random_wishes import Wishes  # noqa: E402

DOORS = ("4 Lantern Row", "19 Cooper's Reach", "2 Mill Orchard", "61 Ostler Street",
         "8 Signal Terrace")
MINUTES = "60"


class NoMap:
    """The wishes are written down: no door is thrown with dice."""

    @staticmethod
    def road_nodes():
        return []


def lessons():
    for line in (HERE / "lessons.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            name, start, words = (part.strip() for part in line.split("|"))
            yield name, ["--minutes", MINUTES, "--start", start, *shlex.split(words)]


def told(answer):
    """What a cell of the table says."""
    if answer["shortfall"] is None:
        return f"met, {len(answer['loops'][0]['passes'])} passes"
    missing = [f"{m['kind']} {m['got']}" for m in answer["shortfall"]["missing"]]
    return "short: " + (", ".join(missing) or "time")


def main():
    asked = Wishes(str(pathlib.Path(sys.argv[1]).resolve()), sys.argv[2], NoMap, random.Random(0))
    quick = [word for word in sys.argv[3:] if word == "--quick"]
    doors = [word for word in sys.argv[3:] if word != "--quick"] or DOORS
    failures = []
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "loops.json"
        for name, words in lessons():
            print(name)
            for door in doors:
                done = asked.run("loops", "--home", door, *words, *quick, "-o", str(file))
                trouble = asked.trouble_with(done, ["--home", door, *words], str(file))
                if trouble:
                    failures.append(f"{name}, {door}: {trouble}")
                else:
                    answer = json.loads(file.read_text(encoding="utf-8"))
                    print(f"    {door:18} {told(answer)}")
    print(f"{asked.answers['met']} met, {asked.answers['not met']} with a true shortfall, "
          f"{len(failures)} wrong")
    print("\n".join(failures))
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
