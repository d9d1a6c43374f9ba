#!/usr/bin/python3
"""Loops of random wishes, each claim of each held against the raw map by tools/audit's reader.

usage: test_random.py PROGRAMS EXTRACT REGION LOOPS [SEED [TABLE]]

Wishes are thrown with seeded dice (dice.py) until LOOPS loops were read; with a SEED of one's own they
are longer lessons, too. With a TABLE what was read is counted there (counted.py). A want that isn't met has a reason, and the program proves each answer
(random_wishes.py). Fails on any difference, and when fewer than 60 % of the wishes are met. What differs is
kept, with the files of its wish, in PROGRAMS/audit.
"""
import random
import shlex
import shutil
import sys
import tempfile
from collections import Counter
from pathlib import Path

import counted
from auditor import Auditor, read
from around import Around
from dice import Dice
from dump_text import built
from random_wishes import SEED
from tally import Tally, lines, told

LEAST_MET = 0.6
SHORT = (15, 20, 30)
ALL = (15, 15, 20, 20, 25, 30, 40, 60, 90)  # most are short: what takes long is the search
# Of a hundred wishes looked for as usual, only for the first answer, for about a second, thoroughly: a claim is the
# same either way, and the first answer costs a twentieth.
EFFORTS = (20, 60, 18, 2)
AGAIN = 30  # minutes at most of a lesson that is looked at again: a thorough search takes minutes
ONE_IN = 3  # of these that is: each costs as much as dozens of loops read
OFTEN = 50  # loops after which the table is written


class Run:
    """Throws wishes and reads the loops. `keep`: the folder where the files of a wish that differs are kept;
    `table`: where what was read is counted, if anywhere."""

    def __init__(self, auditor, dice, keep, table):
        self.auditor, self.dice, self.keep, self.table = auditor, dice, keep, table
        self.tally, self.loops, self.unmet, self.counted = Tally(), 0, 0, Counter()

    def throw(self, loops, twice):
        """Until so many loops were read, or twice as many wishes were thrown. `twice`: of the wishes that aren't met
        some are looked at thoroughly, too, unless they are long: a shortfall must not come of a search that gave up."""
        for number in range(2 * loops):
            self.count(OFTEN)
            if self.loops >= loops:
                return
            file = self.dice.files.folder / "loops.json"
            answered = self.dice.try_one(str(file))
            if answered is None:
                continue
            words, exit_code = answered
            self.read(f"wish {number}: {shlex.join(words)}", words, file, exit_code)
            if exit_code == 4 and not self.is_met_as_usual(number, words) and twice:
                self.look_again(number, words, read(file)["wish"]["minutes"] or AGAIN)

    def is_met_as_usual(self, number, words):
        """What only the first answer fell short of is met by what the page shows next."""
        usual = [word for word in words if word not in ("--quick", "--soon")]
        if len(usual) == len(words) or not self.ask(f"wish {number}, as usual", usual):
            return False
        self.dice.answers["not met"] -= 1
        self.dice.answers["met"] += 1
        return True

    def look_again(self, number, words, minutes):
        if minutes > AGAIN:
            return
        self.unmet += 1
        if self.unmet % ONE_IN != 1:
            return
        words = [word for word in words if word not in ("--quick", "--soon", "--thorough")] + ["--thorough"]
        self.dice.answers["looked at again"] += 1
        if self.ask(f"wish {number}, again", words):
            self.dice.answers["met when looked at again"] += 1
            print(f"met when looked at again: {shlex.join(words)}")

    def ask(self, name, words):
        """Reads the answer to a wish that was thrown before; whether it is met."""
        file, name = self.dice.files.folder / "again.json", f"{name}: {shlex.join(words)}"
        done = self.dice.run("loops", *words, "-o", file)
        if done.returncode in (0, 4):
            self.read(name, words, file, done.returncode)
        else:
            self.dice.failures.append(f"{name}\n    exit {done.returncode}: {done.stderr.strip()}")
        return done.returncode == 0

    def count(self, least):
        """What was read since the last time, when it is so many loops."""
        met, unmet = self.dice.answers["met"], self.dice.answers["not met"]
        now = Counter(loops=self.loops, claims=sum(self.tally.claims.values()), wishes=met + unmet, met=met,
                      differences=len(self.tally.differences))
        if self.table is None or now["loops"] - self.counted["loops"] < least:
            return
        counted.add(self.table, self.keep.name, now - self.counted)
        self.counted = now

    def read(self, name, words, file, exit_code):
        self.tally.where = name + "\n    "
        before, answer = len(self.tally.differences), read(file)
        self.auditor.audit(self.tally, words, answer, exit_code)
        if len(self.tally.differences) > before:
            print("\n".join(lines(self.tally.differences[before:])), flush=True)
            shutil.copytree(self.dice.files.folder, self.keep / name.split(":")[0], dirs_exist_ok=True)
        self.loops += len(answer["loops"])


def main():
    programs, extract, region, *more = sys.argv[1:]
    loops = int(more[0])
    auditor = Auditor(extract, region, Path(programs) / "npm")
    with tempfile.TemporaryDirectory() as folder:
        area, _ = built(programs, extract, region, folder)
        wish_files = Path(folder) / "wish"
        wish_files.mkdir()
        dice = Dice(Path(programs) / "loopwright", area, Around(auditor),
                    random.Random(int(more[1]) if len(more) > 1 else SEED),
                    ALL if len(more) > 1 else SHORT, EFFORTS, wish_files)
        run = Run(auditor, dice, Path(programs) / "audit" / Path(extract).stem, more[2] if len(more) > 2 else None)
        run.throw(loops, len(more) > 1)
        run.count(0)
    report(run, extract)


def report(run, extract):
    """Prints what was read and met, and says by the exit code whether it is as it must be."""
    dice, tally = run.dice, run.tally
    met, unmet = dice.answers["met"], dice.answers["not met"]
    share = met / max(1, met + unmet)
    print("\n".join(dice.failures + list(told(tally, run.loops))))
    print(f"{Path(extract).name}: {met} of {met + unmet} wishes met ({share:.0%}), "
          f"{len(dice.failures)} failed; {dice.answers['nearest confirmed']} nearest confirmed; "
          f"{dice.answers['looked at again']} looked at again, {dice.answers['met when looked at again']} "
          f"of these met")
    sys.exit(1 if dice.failures or tally.differences or not run.loops or share < LEAST_MET else 0)


if __name__ == "__main__":
    main()
