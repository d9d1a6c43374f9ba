#!/usr/bin/python3
"""Files cut short: an area before it is opened and while it is in use, a map while it is read.

usage: test_cut.py PROGRAMS EXTRACT REGION [CUTS [SEED]]

An area that was cut before is refused in one line; so is one of another version, which says how to build
it again. One that is cut, or written over in place, while a command uses it ends that in one line and
with no file, or the answer was there before and is right.
"""
import random
import shutil
import struct
import sys
import time

from trial import Trial

FORMAT_AT = 8     # the format number lies behind the eight bytes of magic (src/store/layout.hpp)


def users(trial, area, to):
    return [trial.wish(to, area=area),
            ["card", str(area), str(trial.loops), "--format", "pdf", "-o", str(to)],
            ["near", str(area), "--home", "54.2973,2.5988", "--want", "roundabout", "--within", "8",
             "--start", "2026-11-30T10:00"],
            ["look", str(area), "Mill Street", "--verify"]]


def cut_before(trial, dice, cuts):
    area, whole = trial.folder / "cut.area", trial.area.read_bytes()
    lengths = [0, 1, 7, 8, 63, len(whole) - 1, len(whole) - 4096] + [dice.randrange(len(whole)) for _ in range(cuts)]
    for length in lengths:
        area.write_bytes(whole[:length])
        for words in (["look", str(area), "Mill Street"], ["look", str(area), "Mill Street", "--verify"]):
            code, _, err = trial.run(words)
            trial.count("areas cut before")
            trial.told_in_one_line(f"area of {length} bytes", code, err)
    number = struct.unpack_from("<I", whole, FORMAT_AT)[0]
    area.write_bytes(whole[:FORMAT_AT] + struct.pack("<I", number - 1) + whole[FORMAT_AT + 4:])
    code, _, err = trial.run(["look", str(area), "Mill Street"])
    trial.told_in_one_line("an area of an older version", code, err)
    trial.expect("another version" in err and "build it again with 'loopwright build'" in err,
                 f"an area of an older version: {err!r}")


class User:
    """A command, how long it takes, and what it says and writes undisturbed of either area."""

    def __init__(self, trial, words, area, other, to):
        self.trial, self.words, self.area, self.to = trial, words, area, to
        self.seconds, self.answer = self.undisturbed(trial.area)
        _, self.other_answer = self.undisturbed(other)

    def undisturbed(self, area):
        shutil.copyfile(area, self.area)
        self.to.unlink(missing_ok=True)
        began = time.monotonic()
        code, out, _ = self.trial.run(self.words)
        return time.monotonic() - began, (code, out, self.written())

    def written(self):
        return self.to.read_bytes() if self.to.exists() else None

    def disturb(self, dice, what, spoil):
        shutil.copyfile(self.trial.area, self.area)
        self.to.unlink(missing_ok=True)
        program = self.trial.start(self.words)
        time.sleep(dice.random() * self.seconds)
        spoil(self.area)
        out, err = program.communicate(timeout=300)
        where, written = f"{self.words[0]}, its area {what}", self.written()
        if (program.returncode, out.decode(), written) in (self.answer, self.other_answer):
            self.trial.count(f"areas {what}: answered all the same")    # before it, or after it
            return
        self.trial.count(f"areas {what}: refused")
        self.trial.told_in_one_line(where, program.returncode, err.decode())
        self.trial.expect(written in (None, self.answer[2]), f"{where}: failed, and left a file of its own")


def cut_while_used(trial, dice, cuts):
    area, to = trial.folder / "used.area", trial.folder / "to.out"
    length = trial.area.stat().st_size
    other = trial.folder / "other.area"
    trial.must(trial.build(other, "--side", "right"))

    def cut(path):
        with open(path, "r+b") as file:
            file.truncate(dice.choice([0, length - 1, dice.randrange(length)]))

    for words in users(trial, area, to):
        user = User(trial, words, area, other, to)
        for _ in range(cuts):
            user.disturb(dice, "cut while in use", cut)
            user.disturb(dice, "written over while in use", lambda path: shutil.copyfile(other, path))


def cut_map(trial, dice, cuts):
    """A map that is cut before or while it is read."""
    extract, whole = trial.folder / "cut.osm.pbf", open(trial.extract, "rb").read()
    area = trial.folder / "of-cut.area"
    words = ["build", str(extract), "--region", trial.region, "-o", str(area)]
    extract.write_bytes(whole)
    trial.must(words)
    expected = area.read_bytes()  # an area names its map's file
    area.unlink()
    for number in range(cuts):
        extract.write_bytes(whole)
        if number % 2 == 0:
            extract.write_bytes(whole[:dice.randrange(1, len(whole))])
        program = trial.start(words)
        time.sleep(dice.random() * 0.1)
        with open(extract, "r+b") as file:
            file.truncate(dice.randrange(len(whole) // 2))
        _, err = program.communicate(timeout=300)
        if program.returncode == 0:
            trial.count("maps cut: read before")
            trial.expect(area.read_bytes() == expected, "a cut map: another area")
        else:
            trial.count("maps cut: refused")
            trial.told_in_one_line("a cut map", program.returncode, err.decode())
            trial.expect(not area.exists(), "a cut map: an area all the same")
        area.unlink(missing_ok=True)


def main():
    programs, extract, region, *more = sys.argv[1:]
    cuts = int(more[0]) if more else 4
    dice = random.Random(int(more[1]) if len(more) > 1 else 8)
    trial = Trial(programs, extract, region)
    cut_before(trial, dice, cuts)
    cut_while_used(trial, dice, cuts)
    cut_map(trial, dice, cuts)
    return trial.end("files cut short")


if __name__ == "__main__":
    sys.exit(main())
