#!/usr/bin/env python3
"""A school's day on a server of its own: three instructors and the office, and what each of them may see.

    demo.py BUILD AREA        what tools/demo --school shows; all that it makes is gone afterwards
"""
import pathlib
import subprocess
import sys
import tempfile

from server import Server, school

build, area = (str(pathlib.Path(word).resolve()) for word in sys.argv[1:3])
PUPILS = {"ash": [("WREN", "4 Lantern Row"), ("PIPIT", "8 Signal Terrace")], "birch": [("FINCH", "19 Cooper's Reach")],
          "cedar": [("LARK", "61 Ostler Street")]}

with Server() as server:
    def say(login, *words, shown=True):
        """As that login, whose service file is spared: its name stands for the address."""
        if shown:
            print(f"\n{login}$ loopwright {' '.join(words).replace(area, sys.argv[2])}", flush=True)
        done = subprocess.run([f"{build}/loopwright", *words, "--book", server.address(login)], capture_output=True, text=True)
        if shown:
            print((done.stdout + done.stderr).replace(server.address(login), f"postgresql:///?service={login}").rstrip(), flush=True)
        return done.stdout

    print("A server of its own, the school's book in it, three instructors and the office:")
    server.sql("CREATE ROLE cedar LOGIN")
    school(server, f"{build}/loopwright")
    say(server.owner, "school", "admit", "cedar")
    print("\nEach instructor adds pupils, plans a lesson for the afternoon, drives and logs it:")
    for login, pupils in PUPILS.items():
        for k, (code, home) in enumerate(pupils):
            say(login, "pupil", "add", code, "--home", home, "--today", "2026-11-28")
            say(login, "lesson", "plan", code, area, "--start", f"2026-11-28T{14 + k}:00", "--length", "60", "--want",
                "roundabout=1", shown=False)
            say(login, "lesson", "log", "--yes", code, "rest 3; minutes 44", shown=k == 0)
    print("\nWhat each may see:")
    for login in (*PUPILS, "elm"):
        say(login, "pupil", "list")
    print("\nAnother's pupil is not there, whatever is tried:")
    say("birch", "pupil", "show", "WREN")
    say("birch", "pupil", "erase", "WREN", "--yes")
    say("birch", "pupil", "add", "WREN", "--home", "19 Cooper's Reach")
    print("\nThe same asked of the database itself, by birch:")
    for sql in ("SELECT code, home FROM pupil", "SELECT count(*) FROM lesson", "UPDATE pupil SET holder = 'birch'; SELECT code FROM pupil"):
        print(f"birch=> {sql}\n{server.sql(sql, login='birch')}", flush=True)
    print("\nHow often the streets were driven, all see alike, and not by whom:")
    counts = {login: say(login, "streets", area, "--today", "2026-11-28", "--rows", "3", shown=login == "birch") for login in PUPILS}
    print(f"the same for all three: {'yes' if len(set(counts.values())) == 1 else 'no'}")
    print("\nWREN changes hands, with all lessons:")
    say("ash", "school", "hand", "WREN", "--to", "birch")
    say("ash", "pupil", "list")
    say("birch", "lesson", "list", "WREN")
    print("\nThe office keeps a test centre, which mock tests of all keep off; nobody else takes it out:")
    say("elm", "centre", "keep", "Eastgate", "--outline", "54.307,2.605;54.307,2.62;54.3,2.62", "--hours", "Mo-Fr 08:30-16:30", "--since", "2026-09-01")
    say("birch", "centre", "drop", "Eastgate")
    print("\nCedar drives where the network doesn't reach, with a copy, and hands the logs in afterwards, twice. Meanwhile the office has logged one of "
          "the lessons, which cedar told it by telephone:")
    for start in ("2026-11-29T10:00", "2026-11-29T14:00"):
        say("cedar", "lesson", "plan", "LARK", area, "--start", start, "--length", "60", "--want", "roundabout=1", shown=False)
    with tempfile.TemporaryDirectory() as folder:
        def tell(*words):
            print(f"\ncedar$ loopwright {' '.join(words)}", flush=True)
            done = subprocess.run([f"{build}/loopwright", *words, *(["--book", server.address("cedar")] if words[0] == "school" else [])],
                                  capture_output=True, text=True, cwd=folder)
            print((done.stdout + done.stderr).rstrip(), flush=True)

        tell("school", "take", "day.book")
        tell("lesson", "print", "LARK", "--lesson", "2", "--book", "day.book", "-o", "lark.pdf")
        tell("lesson", "log", "LARK", "rest 4; minutes 52", "--lesson", "2", "--yes", "--book", "day.book")
        tell("lesson", "log", "LARK", "rest 3; minutes 45", "--lesson", "3", "--yes", "--book", "day.book")
        say("elm", "lesson", "log", "LARK", "minutes 45", "--lesson", "3", "--yes")
        tell("school", "bring", "day.book")
        tell("school", "bring", "day.book", "--instead", "LARK:3")
        tell("school", "bring", "day.book")
    print("\nIn the night the office's computers propose for all pupils; in the morning each instructor has it:")
    say("elm", "school", "propose", area, "--today", "2026-11-30")
    say("cedar", "lesson", "next", "LARK", "--today", "2026-11-30")
