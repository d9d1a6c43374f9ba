#!/usr/bin/python3
"""Odd clocks and zones: the same answer whatever the computer's zone, and days that are hard to count.

usage: test_clock.py PROGRAMS EXTRACT REGION
"""
import os
import sys

from trial import Trial

ZONES = [{"TZ": None}, {"TZ": "Mars/Olympus"}, {"TZ": ":/etc/passwd"}, {"TZ": "XYZ-25:61:61"},
         {"TZ": "Pacific/Kiritimati"}, {"LC_ALL": "tr_TR.UTF-8"}, {"LC_ALL": "none"}, {"LANG": None, "HOME": None}]
# What a lesson's start may be: src/command/arguments.cpp. Clocks go forward on 29 March 2026 at 01:00 and back on 25 October at 02:00 (Summer Time Act 1972);
# 2100 is no leap year, 2000 and 2400 are.
STARTS = ["2026-03-29T00:50", "2026-03-29T01:30", "2026-10-25T00:45", "2026-10-25T01:30", "2026-10-25T02:00",
          "2028-02-29T08:00", "2028-02-28T23:55", "2027-12-31T23:55", "1973-01-01T00:00", "1976-02-29T12:00",
          "2000-02-29T12:00", "2038-01-19T03:10", "2100-02-28T23:55", "2400-02-29T12:00", "9998-12-31T23:55"]
NO_DAYS = ["1970-01-01T00:00", "1972-12-31T23:59", "9999-01-01T00:00", "2100-02-29T08:00", "2027-02-29T08:00", "2026-13-01T08:00", "2026-11-31T08:00", "2026-11-30T24:30",
           "0000-01-01T00:00", "-1-01-01T00:00", "99999-01-01T00:00"]
CLOCKS = {"0": "1970", "951825600": "2000", "1774745940": "2026", "4107542100": "2100", "4102444799": "2099"}


def zones(trial):
    """Areas, loop files and cards are the same in any zone."""
    to, right = trial.folder / "zone.out", {}
    commands = {"build": trial.build(to), "loops": trial.wish(to), "card text": trial.card("text", to),
                "card ics": trial.card("ics", to)}
    for name, words in commands.items():
        trial.must(words)
        right[name] = to.read_bytes()
    for zone in ZONES:
        environment = {key: value for key, value in os.environ.items() if key not in zone}
        environment |= {key: value for key, value in zone.items() if value is not None}
        for name, words in commands.items():
            if name == "build" and "TZ" not in zone:
                continue
            trial.must(words, env=environment)
            trial.count("answers in odd zones")
            trial.expect(to.read_bytes() == right[name], f"{name} with {zone}: another answer")


def starts(trial):
    """Lessons on odd days are found, proved and written; days that don't exist, or no lesson is given on, are refused."""
    loops, to = trial.folder / "odd.json", trial.folder / "odd.out"
    for start in STARTS:
        words = trial.wish(loops)
        words[words.index("--start") + 1] = start
        code, _, err = trial.run(words)
        trial.count("lessons on odd days")
        trial.expect(code in (0, 4), f"a lesson at {start}: exit {code}: {err!r}")
        trial.must(["proof", str(trial.area), str(loops)])
        trial.must(["card", str(trial.area), str(loops), "--format", "ics", "-o", str(to)])
    for start in NO_DAYS:
        words = trial.wish(loops)
        words[words.index("--start") + 1] = start
        code, _, err = trial.run(words)
        trial.count("days refused")
        trial.told_in_one_line(f"a lesson at {start}", code, err, (2,))


def clocks(trial):
    """Without a start the computer's clock counts, however wrong it goes."""
    loops = trial.folder / "now.json"
    for seconds, year in CLOCKS.items():
        words = trial.wish(loops)
        at = words.index("--start")
        del words[at:at + 2]
        environment = dict(os.environ, LD_PRELOAD=str(trial.shim), FAULT_CLOCK=seconds)
        code, _, err = trial.run(words, env=environment)
        trial.count("clocks that go wrong")
        trial.expect(code in (0, 4), f"a clock in {year}: exit {code}: {err!r}")
        trial.expect(code not in (0, 4) or f'"{year}-' in loops.read_text(), f"a clock in {year}: another year")


def main():
    trial = Trial(*sys.argv[1:4])
    zones(trial)
    starts(trial)
    clocks(trial)
    return trial.end("clocks and zones")


if __name__ == "__main__":
    sys.exit(main())
