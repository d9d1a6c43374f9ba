"""Random wishes from random doors: every loop written is proved, every wish not met says why.

The door lies beside a road, the wish is thrown with seeded dice, so a run can be repeated. Then:
exit 0 or 4 and a file; `proof` agrees with it; a want that isn't met has a reason, and `near` finds
nothing nearer than the shortfall says. A door too far from any road a learner may use is refused.
"""
import json
import math
import shlex
import subprocess
from collections import Counter
from pathlib import Path

SEED = 20261128
# Kinds and the movements each can be asked for by (include/loopwright/road/kind.hpp).
AROUND = ["", ":left", ":ahead", ":right", ":round"]
TURNS = ["", ":left", ":ahead", ":right"]
SIDES = ["", ":left", ":right"]
KINDS = {
    "roundabout": AROUND, "mini-roundabout": AROUND, "multi-lane-roundabout": AROUND,
    "signal-roundabout": AROUND, "emerge": SIDES, "turn-off": SIDES, "crossroads": TURNS,
    "signals": TURNS, "zebra": [""], "signal-crossing": [""], "level-crossing": [""],
    "narrow-road": [""], "single-track": [""], "twenty-zone": [""], "twenty-limit": [""],
    "limit-change": [""], "dual-carriageway": [""], "one-way": [""], "bus-lane": [""],
}
NO_ROAD_NEAR = ("from the nearest road a learner may use", "from any road a learner may use", "is not in this area", "itself lies there",
                "lies where the lesson ends anyway",
                "no road that a learner may drive lies within")
NEAR_TO_M = 40


class Wishes:
    same_hours = True  # few streets, if any, that the clock shuts: `near` keeps off those shut at any minute

    def __init__(self, program, area, raw, dice):
        self.program, self.area, self.dice = program, area, dice
        self.raw, self.nodes = raw, sorted(raw.road_nodes())
        self.answers, self.failures, self.kinds = Counter(), [], sorted(KINDS)

    def run(self, verb, *words):
        return subprocess.run([self.program, verb, self.area, *words], capture_output=True,
                              text=True, check=False)

    def door(self):
        lat, lon = self.raw.places[self.dice.choice(self.nodes)]
        off_m, way = self.dice.uniform(0, NEAR_TO_M), self.dice.uniform(0, 2 * math.pi)
        north = off_m * math.cos(way) / 111_000
        east = off_m * math.sin(way) / (111_000 * math.cos(math.radians(lat)))
        return f"{lat + north:.6f},{lon + east:.6f}"

    def wish(self, home):
        dice = self.dice
        words = ["--home", home, "--minutes", str(dice.choice([15, 25, 40, 60, 90])),
                 "--start", f"2026-{dice.randint(1, 12):02}-{dice.randint(1, 28):02}"
                            f"T{dice.randint(7, 21):02}:{dice.randint(0, 59):02}",
                 "--alternatives", str(dice.randint(1, 3))]
        for kind in dice.sample(self.kinds, min(len(self.kinds), dice.randint(1, 3))):
            count = dice.choice(["1", "2", "3", "5", "max"])
            words += ["--want", kind + dice.choice(KINDS[kind]) + "=" + count]
        if dice.random() < 0.3:
            words += ["--avoid", dice.choice(sorted(KINDS))]
        if dice.random() < 0.3:
            words += ["--level", str(dice.randint(1, 5))]
        if dice.random() < 0.2:
            words += ["--end", self.door()]
        return words

    def try_one(self, file):
        """Throws a wish and looks at its answer; (words, exit code) of what was answered."""
        words = self.wish(self.door())
        done = self.run("loops", *words, "-o", file)
        if done.returncode in (1, 2) and any(text in done.stderr for text in NO_ROAD_NEAR):
            self.answers["refused: no road near"] += 1
            return None
        trouble = self.trouble_with(done, words, file)
        if trouble:
            self.failures.append(f"loops {shlex.join(words)}\n    {trouble}")
            return None
        return words, done.returncode

    def trouble_with(self, done, words, file):
        if done.returncode not in (0, 4):
            return f"exit {done.returncode}: {done.stderr.strip()}"
        answer = json.loads(Path(file).read_text(encoding="utf-8"))
        self.answers["met" if done.returncode == 0 else "not met"] += 1
        self.answers["loops"] += len(answer["loops"])
        proof = self.run("proof", file)
        if proof.returncode != 0:
            return f"proof, exit {proof.returncode}: {proof.stderr.strip()}"
        if (done.returncode == 4) != (answer["shortfall"] is not None):
            return f"exit {done.returncode}, but the shortfall is {answer['shortfall']}"
        if done.returncode == 0:
            return None if answer["loops"] else "exit 0 without a loop"
        return self.trouble_with_shortfall(answer["shortfall"], words)

    def trouble_with_shortfall(self, shortfall, words):
        if not shortfall["why"]:
            return "the shortfall doesn't say why"
        for missing in shortfall.get("missing", []):
            if not missing["why"]:
                return f"no reason for {missing}"
            trouble = self.trouble_with_nearest(missing, words)
            if trouble:
                return trouble
        return None

    def trouble_with_nearest(self, missing, words):
        """`near` must find nothing nearer than the shortfall says, and the same when it can."""
        want = missing["kind"] + (":" + missing["movement"] if missing["movement"] else "")
        options = {word: value for word, value in zip(words, words[1:]) if word.startswith("--")}
        if {"--avoid", "--end", "--level", "--hardest", "--keep-off"} & set(options):   # near is told of none of these
            return None
        told = missing.get("nearest_minutes")
        near = self.run("near", "--home", options["--home"], "--want", want, "--within", "120",
                        "--start", options["--start"],
                        *(["--pace", options["--pace"]] if "--pace" in options else []))
        if near.returncode not in (0, 4):
            return f"near, exit {near.returncode}: {near.stderr.strip()}"
        found = None if near.returncode == 4 else float(near.stdout.splitlines()[1].split()[0])
        nearer = found is not None and (told is None or found < told - 0.06)
        farther = told is not None and (found is None or found > told + 0.06)
        if nearer or (farther and self.same_hours):
            return f"nearest {want}: the shortfall says {told} min, near says {found}"
        self.answers["nearest confirmed"] += 1
        return None

