#!/usr/bin/python3
"""Kills `build` and `loops` at random moments; what the file named by -o holds is whole.

usage: test_kills.py PROGRAMS EXTRACT REGION [COUNT [SEED]]

Half the kills come at any moment of the run, half in the moments in which the file beside it is
written. Before each there is an older file under that name, or none: afterwards it is that one, none or
the new one, byte for byte as an undisturbed run makes it. No part that was left is taken for an area, and
the next run gives the right file and leaves no part.
"""
import random
import sys
import time

from trial import Trial, kill

BETWEEN_RERUNS = 10     # a rerun takes as long as three kills


class Victim:
    """One command that writes one file: its words, the older file and the new one."""

    def __init__(self, trial, name, older, words):
        self.trial, self.name, self.words = trial, name, words
        self.file = trial.folder / f"{name}.out"
        trial.must(older(self.file))
        self.older = self.file.read_bytes()
        began = time.monotonic()
        trial.must(words(self.file))
        self.seconds = time.monotonic() - began
        self.newer = self.file.read_bytes()
        trial.expect(self.older != self.newer, f"{name}: both files are the same, so that nothing is tested")

    def die(self, dice):
        """One kill; what is there before and afterwards is checked."""
        older = dice.random() < 0.5
        self.file.unlink(missing_ok=True)
        if older:
            self.file.write_bytes(self.older)
        left_before = set(self.trial.parts())
        program = self.trial.start(self.words(self.file))
        if dice.random() < 0.5:
            time.sleep(dice.random() * self.seconds * 1.1)
        else:
            self.wait_for_part(program, left_before)
            time.sleep(dice.random() * 0.02)
        kill(program)
        self.check(older, program.returncode)

    def wait_for_part(self, program, left_before):
        while program.poll() is None and set(self.trial.parts()) <= left_before:
            time.sleep(0.0005)

    def check(self, older, code):
        there = self.file.read_bytes() if self.file.exists() else None
        kind = {None: "absent", self.older: "older", self.newer: "new"}.get(there, "half")
        self.trial.count(f"kills of {self.name} that left it {kind}")
        good = {"new", "older"} if older else {"new", "absent"}
        if code == 0:       # it was done before the kill came
            good = {"new"}
        self.trial.expect(kind in good, f"{self.name}: {kind} after a kill, not one of {good}")

    def rerun(self):
        """Parts are refused as areas or are whole; the rerun is right and tidies up."""
        for part in self.trial.parts():
            self.trial.count("parts left")
            if part.read_bytes() != self.newer:
                code, _, err = self.trial.run(["look", str(part), "Mill Street", "--verify"])
                self.trial.told_in_one_line(f"{part.name} opened as an area", code, err)
        self.trial.must(self.words(self.file))
        self.trial.count("reruns")
        self.trial.expect(self.file.read_bytes() == self.newer, f"{self.name}: another answer after kills")
        self.trial.expect(not self.trial.parts(), f"{self.name}: parts stay: {self.trial.parts()}")


def main():
    programs, extract, region, *more = sys.argv[1:]
    count = int(more[0]) if more else 30
    dice = random.Random(int(more[1]) if len(more) > 1 else 8)
    trial = Trial(programs, extract, region)
    victims = [Victim(trial, "build", lambda file: trial.build(file, "--side", "right"), trial.build),
               Victim(trial, "loops", lambda file: trial.wish(file, minutes=11), trial.wish)]
    per_victim = count // len(victims)
    for victim in victims:
        for number in range(1, per_victim + 1):
            victim.die(dice)
            if number % BETWEEN_RERUNS == 0 or number == per_victim:
                victim.rerun()
    return trial.end(f"{count} kills")


if __name__ == "__main__":
    sys.exit(main())
