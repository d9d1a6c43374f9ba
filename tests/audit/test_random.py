#!/usr/bin/python3
"""Loops of random wishes, each claim of each held against the raw map by tools/audit's reader.

usage: test_random.py PROGRAMS EXTRACT REGION LOOPS [SEED]

Wishes are thrown with seeded dice (dice.py) until LOOPS loops were read; with a SEED of one's own they
are longer lessons, too. A want that isn't met has a reason, and the program proves each answer
(random_wishes.py). Fails on any difference, and when fewer than 60 % of the wishes of a whole town
are met. What differs is kept, with the files of its wish, in PROGRAMS/audit.
"""
import random
import shutil
import sys
import tempfile
from pathlib import Path

from auditor import Auditor, read
from dice import Dice, kinds_on
from dump_text import built
from random_wishes import SEED
from tally import Tally, told

LEAST_MET = 0.6
TOWN_KM = 50        # a clip of a few streets is no town: what is wished for lies outside it
SHORT = (15, 20, 30)
ALL = (15, 25, 40, 60, 90)


def is_town(ground):
    return sum(metres for _, _, metres in ground.net.edges.data("metres")) / 1000 > TOWN_KM


def run(auditor, dice, loops, keep):
    """Throws and reads until so many loops were read, or as many wishes were thrown; the tally. `keep`: the
    folder where the files of a wish that differs are kept."""
    tally, read_so_far = Tally(), 0
    file = dice.files.folder / "loops.json"
    for number in range(loops):
        if read_so_far >= loops:
            break
        answered = dice.try_one(str(file))
        if answered is None:
            continue
        words, exit_code = answered
        answer = read(file)
        tally.where = f"wish {number}: {' '.join(words)}\n    "
        before = len(tally.differences)
        auditor.audit(tally, words, answer, exit_code)
        if len(tally.differences) > before:
            shutil.copytree(dice.files.folder, keep / str(number), dirs_exist_ok=True)
        read_so_far += len(answer["loops"])
    return tally, read_so_far


def main():
    programs, extract, region, *more = sys.argv[1:]
    loops = int(more[0])
    auditor = Auditor(extract, region, Path(programs) / "npm")
    kinds = kinds_on(auditor.ground, auditor.passes.junctions.claims)
    with tempfile.TemporaryDirectory() as folder:
        area, _ = built(programs, extract, region, folder)
        wish_files = Path(folder) / "wish"
        wish_files.mkdir()
        dice = Dice(Path(programs) / "loopwright", area, auditor.ground.map,
                    random.Random(int(more[1]) if len(more) > 1 else SEED), kinds,
                    ALL if len(more) > 1 else SHORT, wish_files)
        tally, count = run(auditor, dice, loops, Path(programs) / "audit" / Path(extract).stem)
    met, unmet = dice.answers["met"], dice.answers["not met"]
    share = met / max(1, met + unmet)
    enough = share >= LEAST_MET or not is_town(auditor.ground)
    print("\n".join(dice.failures + list(told(tally, count))))
    print(f"{Path(extract).name}: {met} of {met + unmet} wishes met ({share:.0%}), "
          f"{len(dice.failures)} failed; {dice.answers['nearest confirmed']} nearest confirmed")
    sys.exit(1 if dice.failures or tally.differences or not count or not enough else 0)


if __name__ == "__main__":
    main()
