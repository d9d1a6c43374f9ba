#!/usr/bin/python3
"""The same extract gives the same area, byte for byte, and the same wish the same loops: on one thread and on
several, on one core and on all, and by a program that another compiler made.

usage: test_same.py PROGRAMS EXTRACT REGION MAP [WISHES [MINUTES [OTHER_PROGRAMS]]]

WISHES of tests/bench/search_wishes.txt for MAP are looked for (4), for MINUTES (20; 0: as long as they say).
"""
import difflib
import os
import shlex
import sys
from pathlib import Path

from trial import Trial

WISHES = Path(__file__).resolve().parent.parent / "bench" / "search_wishes.txt"


def wishes_of(town, count, minutes):
    """Words of `loops` behind the area."""
    rows = [[cell.strip() for cell in line.split("|")] for line in WISHES.read_text().splitlines()
            if line.count("|") == 4 and not line.startswith("#")]
    return [["--home", home, "--minutes", str(minutes) if minutes else length, *shlex.split(words),
             *([] if "--start" in words else ["--start", "2026-11-30T10:00"])]
            for name, _, home, length, words in rows if name == town][:count]


def on_one_core():
    os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})


class Ways:
    """Ways to run the program that must not change what it writes."""

    def __init__(self, trial, other):
        self.program, self.other = trial.program, other
        alone = dict(os.environ, OSMIUM_POOL_THREADS="1")
        self.plain = {}
        self.odd = {"one core and one thread to read": {"env": alone, "before": on_one_core},
                    "four threads to read": {"env": dict(os.environ, OSMIUM_POOL_THREADS="4")}}
        self.lone = {"no thread but the first":
                     {"env": dict(os.environ, LD_PRELOAD=str(trial.shim), FAULT_NO_THREADS="1")}}

    def for_verb(self, verb):
        ways = dict(self.odd) if verb == "build" else {**self.lone, "one core": {"before": on_one_core}}
        return ways | ({"another compiler": {"program": self.other}} if self.other else {})


def compare(trial, ways, words, file, what):
    """Runs it each way; the first, plain one is what all are held against."""
    code, _, err = trial.run(words)
    trial.expect(code in (0, 4), f"{what}: exit {code}: {err}")
    right = file.read_bytes() if file.exists() else b""
    for way, how in ways.for_verb(words[0]).items():
        file.unlink(missing_ok=True)
        trial.program = how.get("program", ways.program)
        code_so, _, err = trial.run(words, **{key: how[key] for key in ("env", "before") if key in how})
        trial.program = ways.program
        there = file.read_bytes() if file.exists() else b""
        trial.count(f"files of {words[0]}, {way}")
        trial.expect(code_so == code and there == right, f"{what}, {way}: exit {code_so}, {err}{first_change(right, there)}")


def first_change(right, there):
    if b"\0" in right[:4096]:
        at = next((i for i, (a, b) in enumerate(zip(right, there)) if a != b), min(len(right), len(there)))
        return f"{len(right)} and {len(there)} bytes, different from byte {at}"
    lines = difflib.unified_diff(right.decode().splitlines(), there.decode().splitlines(), lineterm="", n=0)
    return "\n    ".join(line for _, line in zip(range(8), lines))


def main():
    programs, extract, region, town, *more = sys.argv[1:]
    count, minutes = int(more[0]) if more else 4, int(more[1]) if len(more) > 1 else 20
    other = str(Path(more[2]).resolve() / "loopwright") if len(more) > 2 else None
    trial = Trial(programs, extract, region, make_loops=False)
    ways = Ways(trial, other)
    area, loops = trial.folder / "same.area", trial.folder / "same.json"
    compare(trial, ways, trial.build(area), area, "the area")
    for words in wishes_of(town, count, minutes):
        compare(trial, ways, ["loops", str(trial.area), *words, "-o", str(loops)], loops, shlex.join(words))
    return trial.end(f"{town}: the same bytes")


if __name__ == "__main__":
    sys.exit(main())
