#!/usr/bin/python3
"""Little memory, and no thread to be had: one line and exit 1, or the right answer; never a crash.

usage: test_memory.py PROGRAMS EXTRACT REGION [STEPS]

Each command runs with STEPS sizes of its address space, from the least that the system's loader can do with
to more than the command needs. Then once where no thread can be begun.
"""
import os
import sys

from trial import MEGABYTE, Trial, address_space, without_core

MOST = 400 * MEGABYTE    # a card on paper: 330 MB, most of it for stacks that are never touched


def commands(trial, to):
    return {"build": trial.build(to), "loops": trial.wish(to),
            "card text": trial.card("text", to), "card html": trial.card("html", to),
            "card pdf": trial.card("pdf", to)}


def least_to_load(trial):
    """The least address space, to a megabyte, in which the program is loaded at all."""
    low, high = 16, MOST // MEGABYTE
    while high - low > 1:
        middle = (low + high) // 2
        code, _, _ = trial.run(["--version"], before=address_space(middle * MEGABYTE))
        low, high = (low, middle) if code == 0 else (middle, high)
    return high * MEGABYTE


def check(trial, name, words, to, right, **more):
    to.unlink(missing_ok=True)
    code, _, err = trial.run(words, **more)
    if code == 0:
        trial.count("done all the same")
        trial.expect(to.read_bytes() == right, f"{name}: another file than with much memory")
    else:
        trial.count("refused in one line")
        trial.told_in_one_line(name, code, err)
        trial.expect(not to.exists(), f"{name}: failed, and left a file")
    trial.expect(not trial.parts(), f"{name}: left {trial.parts()}")
    return code == 0


def main():
    programs, extract, region, *more = sys.argv[1:]
    steps = int(more[0]) if more else 6
    trial = Trial(programs, extract, region)
    to = trial.folder / "to.out"
    least = least_to_load(trial)
    for name, words in commands(trial, to).items():
        trial.must(words)
        right = to.read_bytes()
        done = [check(trial, f"{name} in {size // MEGABYTE} MB", words, to, right, before=address_space(size))
                for size in (least + (MOST - least) * step // (steps - 1) for step in range(steps))]
        trial.expect(done[-1] and not done[0], f"{name}: sizes from too little to enough weren't tried: {done}")
        no_threads = dict(os.environ, LD_PRELOAD=str(trial.shim), FAULT_NO_THREADS="1")
        alone = check(trial, f"{name} without threads", words, to, right, env=no_threads, before=without_core)
        trial.expect(alone or name != "loops", "loops can't do with one thread")
    return trial.end("little memory")


if __name__ == "__main__":
    sys.exit(main())
