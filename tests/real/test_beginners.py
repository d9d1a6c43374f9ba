#!/usr/bin/python3
"""An hour for a beginner from random doors in residential streets: had from the door, or somewhere is named to begin.

usage: test_beginners.py PROGRAMS EXTRACT REGION [DOORS [SEED]]

The wish is a first lesson's: turning left off and onto roads, at level 1 and at level 2. That the instructor drives
a learner who isn't fit for the roads round the door to easier ones is common practice (no source). Where the program
names a place, the same wish is asked for with its words, which must give a loop that meets it, and `proof` must
agree; the named kerb must lie beside a road of the name it has, by the raw map. Where it says that roads easy enough
are nowhere long enough, the minutes it names must be too few. Fails too when fewer than three in four are helped.
"""
import json
import math
import random
import re
import shlex
import subprocess
import sys
import tempfile
from collections import Counter
from pathlib import Path

from dump_text import built
from opl import Map
from random_wishes import SEED

MINUTES = 60
HELPED = 0.75
BY_NAME = {"turn-off", "narrow-mouth", "emerge"}  # what is asked for by name may be as hard as it is (README)
BESIDE_M = 20  # of the line of its road, where the raw map has a bend every few metres
BEGUN = re.compile(r"begun in (.+?) near (.+?), where you drive \(\d+ min there, \d+ back\), [^:]*it is met: "
                   r"(--drive-out (\S+) --drive-back \S+(?: --street-passes 6)?)")
TOO_LITTLE = re.compile(r"the most is some (\d+) min of driving, begun in (.+?) near .+?, where you drive "
                        r"\((\d+) min there and back\)")


def run(program, *words):
    return subprocess.run([str(word) for word in (program, *words)], capture_output=True, text=True, check=False)


def metres(one, other):
    north = (one[0] - other[0]) * 111_195
    return math.hypot(north, (one[1] - other[1]) * 111_195 * math.cos(math.radians(one[0])))


def off_line(at, a, b):
    """Metres from a point to a straight line between two."""
    steps = 1 + int(metres(a, b))
    return min(metres(at, tuple(p + (q - p) * k / steps for p, q in zip(a, b))) for k in range(steps + 1))


class Beginners:
    def __init__(self, programs, extract, region, folder):
        self.program = Path(programs) / "loopwright"
        self.area, _ = built(programs, extract, region, folder)
        self.map, self.file = Map(extract), Path(folder) / "loops.json"
        self.counts, self.failures = Counter(), []

    def doors(self, count, dice):
        nodes = sorted({node for way in self.map.ways.values()
                        if way.tags.get("highway") == "residential" and "name" in way.tags
                        for node in way.nodes if node in self.map.places})
        return ["{:.6f},{:.6f}".format(*self.map.places[node]) for node in dice.sample(nodes, count)]

    def ask(self, door, level):
        words = ["--home", door, "--minutes", MINUTES, "--level", level, "--start", "2026-12-02T10:00",
                 "--want", "turn-off:left=3", "--want", "emerge:left=3", "--quick", "-o", self.file]
        done = run(self.program, "loops", self.area, *words)
        said = " ".join(done.stdout.split())
        trouble = self.trouble(done, said, words)
        if trouble:
            self.failures.append(f"{door} level {level}: {trouble}\n    {said}")

    def trouble(self, done, said, words):
        if done.returncode not in (0, 4):
            return f"exit {done.returncode}: {done.stderr}"
        begun, too_little = BEGUN.search(said), TOO_LITTLE.search(said)
        if begun:
            self.counts["begun elsewhere"] += 1
            return self.trouble_with_begun(begun, words)
        if done.returncode == 0:
            self.counts["from the door"] += 1
            return None
        if too_little:
            self.counts["nowhere long enough"] += 1
            most, _, away = too_little.groups()
            return None if int(most) + int(away) < MINUTES else "that would have been long enough"
        self.counts["not helped"] += 1
        print(f"not helped: {shlex.join(map(str, words))}\n    {said}")
        return None

    def trouble_with_begun(self, begun, words):
        street, corner, more, out = begun.groups()
        for name in (street, corner):
            if not self.has_road(tuple(map(float, out.split(","))), name, BESIDE_M if name == street else 250):
                return f"no {name} there"
        done = run(self.program, "loops", self.area, *words, *more.split())
        if done.returncode != 0:
            return f"with these words: exit {done.returncode}: {done.stdout} {done.stderr}"
        proof = run(self.program, "proof", self.area, self.file)
        if proof.returncode != 0:
            return f"proof: {proof.stderr}"
        hardest = max((one["hardness"] for one in self.practised() if one["kind"] not in BY_NAME), default=0)
        level = int(words[words.index("--level") + 1])
        return None if hardest <= level + 1 else f"a pass as hard as {hardest}"

    def practised(self):
        """Passes that the learner drives."""
        loop = json.loads(self.file.read_text(encoding="utf-8"))["loops"][0]
        first, last = loop["practice"]["first"], loop["practice"]["last"]
        return [one for one in loop["passes"] if first <= one["first"] and one["last"] <= last]

    def has_road(self, at, name, within_m):
        return any(off_line(at, self.map.places[a], self.map.places[b]) <= within_m
                   for way in self.map.ways.values() if name in (way.tags.get("name"), way.tags.get("ref"))
                   for a, b in zip(way.nodes, way.nodes[1:])
                   if a in self.map.places and b in self.map.places
                   and metres(at, self.map.places[a]) < 1000 + within_m)


def main():
    programs, extract, region, *more = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        asked = Beginners(programs, extract, region, folder)
        for door in asked.doors(int(more[0]) if more else 12, random.Random(int(more[1]) if len(more) > 1 else SEED)):
            for level in (1, 2):
                asked.ask(door, level)
    counts = asked.counts
    helped = (counts["from the door"] + counts["begun elsewhere"]) / max(1, sum(counts.values()))
    print("\n".join(asked.failures))
    print(f"{Path(extract).name}: " + ", ".join(f"{said} {count}" for said, count in sorted(counts.items())) +
          f"; {len(asked.failures)} failed")
    sys.exit(1 if asked.failures or helped < HELPED else 0)


if __name__ == "__main__":
    main()
