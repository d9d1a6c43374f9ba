#!/usr/bin/python3
"""Random wishes beside wishes that are related to them: what is claimed of both must go together.

usage: test_related_wishes.py PROGRAMS EXTRACT REGION SIDE [COUNT [SEED]]

Wishes are thrown as random_wishes.py throws them (seeded dice), every answer is proved, and each wish is
held against one other, in turn:
  again     the same words give the same bytes
  longer    a few minutes more, the loop found still filling enough of them: both proved the best, the
            value doesn't fall; and the longer one's bound isn't below the loop found
  relaxed   a want with a number, something avoided, a spacing or a cap less: its bound isn't below the
            stricter wish's value; both proved, nor is its value
  mirrored  on the map as a mirror shows it (mirror.py), driven on the other side: both proved, the same
            value; and no bound of the one below the loop of the other
SIDE is the side one drives on in REGION: left or right. With a SEED of one's own the wishes are others,
so that a long run may be spread over several. After each hundred wishes a line tells how far it is.
"""
import json
import random
import re
import subprocess
import sys
import tempfile
from collections import Counter
from pathlib import Path

import mirror
from dump_text import built
from opl import Map
from random_wishes import NO_ROAD_NEAR, SEED, Wishes

RELATIONS = ("again", "longer", "relaxed", "mirrored")
FILLED = 0.95  # of the minutes, at least: "window share" of src/rules/caps.txt
ROUNDING = 2   # milli-units: a mirrored length may differ in its last bits
SIDE = re.compile(r":(left|right)\b")


class Found:
    """What one loop file says of its first loop; nothing when there is none."""

    def __init__(self, path):
        self.bytes = Path(path).read_bytes()
        answer = json.loads(self.bytes)
        self.met = answer["shortfall"] is None and bool(answer["loops"])
        if not self.met:
            return
        loop = answer["loops"][0]
        known = loop["certificate"]
        self.seconds = loop["seconds"]["likely"]
        self.value, self.bound = known["value"], known["bound"]
        self.proved = known["state"] == "best possible"


class NoDoors:
    """The mirrored map is asked for the images of the plain one's wishes only."""

    @staticmethod
    def road_nodes():
        return []


def pairs_of(words):
    return list(zip(words[::2], words[1::2]))


def flat(pairs):
    return [word for pair in pairs for word in pair]


class Related:
    def __init__(self, asked, imaged, image, folder):
        self.asked, self.imaged, self.mirror = asked, imaged, image
        self.folder, self.dice = Path(folder), asked.dice
        self.seen, self.failures = Counter(), []

    def answer(self, wishes, words):
        """Runs the wish and proves its answer. None when the door is refused."""
        file = self.folder / "loops.json"
        done = wishes.run("loops", *words, "-o", str(file))
        if done.returncode == 2 and any(text in done.stderr for text in NO_ROAD_NEAR):
            return None
        trouble = wishes.trouble_with(done, words, str(file))
        if trouble:
            self.failures.append(f"loops {' '.join(words)}\n    {trouble}")
            return None
        return Found(file)

    def wish(self):
        """Of random_wishes.py's, one loop, sometimes with spacing and caps."""
        pairs = [(word, "1" if word == "--alternatives" else value)
                 for word, value in pairs_of(self.asked.wish(self.asked.door()))]
        kinds = [value.split("=")[0].split(":")[0] for word, value in pairs if word == "--want"]
        if self.dice.random() < 0.3:
            pairs.append(("--spacing", f"{self.dice.choice(kinds)}={self.dice.randint(2, 8)}"))
        if self.dice.random() < 0.3:
            pairs.append(("--place-passes", str(self.dice.choice([1, 3, 6]))))
        return pairs

    def try_one(self, relation):
        pairs = self.wish()
        strict = self.answer(self.asked, flat(pairs))
        if strict is None:
            return
        self.seen[relation] += 1
        trouble = getattr(self, relation)(pairs, strict)
        if trouble:
            self.failures.append(f"{relation}: loops {' '.join(flat(pairs))}\n    {trouble}")

    def again(self, pairs, strict):
        other = self.answer(self.asked, flat(pairs))
        return "other bytes" if other is None or other.bytes != strict.bytes else None

    def not_less(self, told, pairs, strict):
        """A wish whose loops include the strict one's: what it says must leave room for that one."""
        wide = self.answer(self.asked, flat(pairs))
        if wide is None or not wide.met:
            return None  # a search may miss what is there; only claims are held
        if wide.bound is not None:
            self.seen["bounds held"] += 1
            if wide.bound < strict.value:
                return f"{told}: bound {wide.bound} is below {strict.value}, which was found"
        if strict.proved and wide.proved:
            self.seen["values held"] += 1
            if wide.value < strict.value:
                return f"{told}: value {wide.value} is below {strict.value}, both told to be the best"
        return None

    def longer(self, pairs, strict):
        minutes = int(dict(pairs)["--minutes"])
        # So much more that the loop found still fills its share.
        most = int(strict.seconds / 60 / FILLED - 0.05) if strict.met else 0
        if most <= minutes:
            return None
        return self.not_less(f"{most} minutes", [
            (word, str(most) if word == "--minutes" else value) for word, value in pairs], strict)

    def relaxed(self, pairs, strict):
        if not strict.met:
            return None
        able = [k for k, pair in enumerate(pairs) if self.can_go(pair, pairs)]
        if not able:
            return None
        gone = self.dice.choice(able)
        return self.not_less("without " + " ".join(pairs[gone]),
                             pairs[:gone] + pairs[gone + 1:], strict)

    @staticmethod
    def can_go(pair, pairs):
        """Without it every loop that met the wish meets it still, with no less value."""
        word, value = pair
        words = [other for other, _ in pairs]
        if word == "--want":  # naming a kind may let one drive what the level wouldn't
            return not value.endswith("=max") and words.count("--want") > 1 and \
                "--level" not in words
        if word == "--spacing":  # of a "max" want the usual two minutes take its place: no more
            return True
        if word == "--place-passes":  # the usual caps are 6, of a run of road 3
            return int(value) <= 3
        return word == "--avoid"

    def mirrored(self, pairs, strict):
        image = self.answer(self.imaged, self.image_of(pairs))
        if image is None or image.met != strict.met:
            return None  # a search may miss what is there; only claims are held
        if not strict.met:
            return None
        for told, one, other in (("its", image, strict), ("the plain", strict, image)):
            if one.bound is not None:
                self.seen["bounds held"] += 1
                if one.bound < other.value - ROUNDING:
                    return f"{told} bound {one.bound} is below {other.value}, which the other found"
        if strict.proved and image.proved:
            self.seen["values held"] += 1
            if abs(strict.value - image.value) > ROUNDING:
                return f"value {strict.value}, mirrored {image.value}, both told to be the best"
        return None

    def image_of(self, pairs):
        def imaged(word, value):
            if word in ("--home", "--end"):
                lat, lon = value.split(",")
                return f"{lat},{self.mirror.longitude(lon)}"
            return SIDE.sub(lambda side: ":" + mirror.SWAPPED[side[1]], value)
        return [part for word, value in pairs for part in (word, imaged(word, value))]


def main():
    programs, extract, region, side, *more = sys.argv[1:]
    count = int(more[0]) if more else len(RELATIONS)
    seed = int(more[1]) if len(more) > 1 else SEED + 1
    with tempfile.TemporaryDirectory() as folder:
        area, _ = built(programs, extract, region, folder)
        image = mirror.mirror_of(extract)
        mirror.write(image, Path(folder) / "mirrored.osm.pbf")
        image_area = Path(folder) / "mirrored.area"
        program = Path(programs) / "loopwright"
        subprocess.run([program, "build", Path(folder) / "mirrored.osm.pbf", "-o", image_area,
                        "--region", region, "--side", mirror.SWAPPED[side]],
                       check=True, stdout=subprocess.DEVNULL)
        dice = random.Random(seed)
        related = Related(Wishes(program, area, Map(extract), dice),
                          Wishes(program, image_area, NoDoors, dice), image, folder)
        for i in range(count):
            related.try_one(RELATIONS[i % len(RELATIONS)])
            if (i + 1) % 100 == 0:
                print(f"{i + 1} of {count} wishes, failed {len(related.failures)}",
                      file=sys.stderr, flush=True)
    print("\n".join(related.failures))
    told = ", ".join(f"{name} {number}" for name, number in sorted(related.seen.items()))
    print(f"{Path(extract).name}: {count} wishes and their relations, "
          f"failed {len(related.failures)}; {told}")
    sys.exit(1 if related.failures or not related.seen else 0)


if __name__ == "__main__":
    main()
