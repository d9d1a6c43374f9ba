#!/usr/bin/env python3
"""A day without a network: a copy is taken along, lessons are logged in it, and the logs are handed in: once each.

    test_day_copy.py BUILD [KILLS]

Handing in is killed at random moments (12, or KILLS), done again, and done from two computers at once; then each way in which
the school's book may have moved on meanwhile. Rows are looked at by psql, which is no code of ours.
"""
import contextlib
import json
import pathlib
import random
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import time

from checks import Checks, planned
from server import Server, school

build = sys.argv[1]
kills = int(sys.argv[2]) if len(sys.argv) > 2 else 12
program = f"{build}/loopwright"
test = Checks(program)
check, run, done, refused = test.check, test.run, test.done, test.refused
HOURS = [f"2026-11-27T{hour:02}:00" for hour in range(8, 18)]


def waits(what, said, *words):
    code, out, err = run(*words)
    told = " ".join(out.split())
    check(what, code == 1 and "waits: " + said in told, f"exit {code}: {out}{err}")


def killed_again_and_again(server, copy, ash):
    """Each log is there once in the end, whatever was killed."""
    for number in range(1, 10):
        done("logging in the copy", "lesson", "log", "WREN", f"minutes {40 + number}; rest 3; goal: goal {number}; seen A", "--lesson", number,
             "--book", copy)
    done("not driven", "lesson", "log", "WREN", "not driven", "--lesson", "10", "--book", copy)
    done("a lesson besides", "lesson", "log", "WREN", "minutes 33; zebra x2 4", "--start", "2026-11-27T19:00", "--book", copy)
    other = copy.with_name("other.book")
    shutil.copy(copy, other)  # the same copy on another computer
    random.seed(7)
    start = time.monotonic()
    subprocess.run([program, "school", "bring", other, "--book", server.address("birch")], capture_output=True, check=False)
    whole_s = time.monotonic() - start
    check("another's login hands nothing in", server.sql("SELECT count(*) FROM log_entry") == "0")
    between = 0
    for k in range(kills):
        running = subprocess.Popen([program, "school", "bring", (copy, other)[k % 2], "--book", ash], stdout=subprocess.DEVNULL,
                                   stderr=subprocess.DEVNULL)
        if k % 2:  # when one more log is in, wherever it is by then
            before = server.sql("SELECT count(*) FROM log_entry")
            while running.poll() is None and server.sql("SELECT count(*) FROM log_entry") == before:
                pass
        else:
            time.sleep(random.random() * whole_s)
        between += running.poll() is None
        running.kill()
        running.wait()
    check("some were killed in the midst", between > 0, between)
    landed = server.sql("SELECT count(*) FROM log_entry")
    both = [subprocess.Popen([program, "school", "bring", one, "--book", ash], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
            for one in (copy, other)]
    for one in both:
        out, _ = one.communicate()
        check("two at once", one.returncode == 0, out)
    check("nothing waits any more", "no log waits" in done("once more", "school", "bring", copy, "--book", ash))
    check("each log is there once", server.sql("SELECT count(*), count(DISTINCT lesson) FROM log_entry") == "11|11")
    check("no lesson twice", server.sql("SELECT string_agg(number || ' ' || state || ' ' || coalesce(minutes, 0), ', ' ORDER BY number) "
          "FROM lesson") == ", ".join(f"{n} driven {40 + n}" for n in range(1, 10)) + ", 10 not driven 0, 11 driven 33")
    check("marks are there once", server.sql("SELECT count(*) FROM pass") == str(9 * 2 + 2 + 2) and server.sql(
        "SELECT count(*) FROM goal") == "9")
    check("what was seen is there", server.sql("SELECT what, day FROM seen") == "limit along|2026-11-27")
    check("streets of the one that wasn't driven don't count", server.sql("SELECT count(*) FROM street_use") == "9")
    there, here = (json.loads(done("export", "pupil", "export", "WREN", "--book", book)) for book in (ash, copy))
    for table in ("lesson", "pass", "observation", "goal", "street_use", "to_check"):
        check(f"{table}: the copy and the school's book say the same", there[table] == here[table], (there[table], here[table]))
    print(f"{kills} times killed, {between} of them in the midst, when {landed} of 11 logs were in")


def only_logs_change(copy):
    for what, words in {"adding a pupil": ["pupil", "add", "FINCH"], "changing one": ["pupil", "change", "WREN", "--home", "x"],
                        "erasing one whose log waits": ["pupil", "erase", "WREN", "--yes"],
                        "keeping a test centre": ["centre", "keep", "Eastgate", "--outline", "54.30,2.60;54.30,2.61;54.31,2.61", "--hours", "Mo-Fr"]}.items():
        refused(what, "is a day's copy of a school's book", *words, "--book", copy)
    refused("moving it", "is a day's copy; 'loopwright school bring'", "school", "move", copy, copy.with_name("c.book"))
    check("a move that failed leaves nothing behind", not copy.with_name("c.book").exists())


def what_waits(server, copy, ash):
    """Lessons of FINCH, each with another thing that happened to it meanwhile."""
    done("pupil add", "pupil", "add", "FINCH", "--book", ash)
    planned(server, "FINCH", HOURS)
    done("taken along anew", "school", "take", copy, "--book", ash)
    for number in range(1, 8):
        done("logging", "lesson", "log", "FINCH", f"minutes {50 + number}; rest 4", "--lesson", number, "--book", copy)
    refused("taking along what isn't handed in", "7 logged lessons that aren't handed in", "school", "take", copy, "--book", ash)
    done("besides", "lesson", "log", "FINCH", "minutes 20", "--start", "2026-11-28T08:00", "--book", copy)
    # 1 is logged there, 2 not driven, 3 moved, 4 planned anew, 5 and 6 as they were, 7 logged twice here.
    done("logged there", "lesson", "log", "FINCH", "minutes 11", "--lesson", "1", "--book", ash)
    done("not driven there", "lesson", "log", "FINCH", "not driven", "--lesson", "2", "--book", ash)
    server.sql("UPDATE lesson SET start = '2026-11-29T10:00:00+00:00', start_s = start_s + 7200 WHERE minutes IS NULL AND number = 3 "
               "AND pupil = (SELECT id FROM pupil WHERE code = 'FINCH')")
    server.sql("UPDATE pass SET hardness = 4 WHERE kind = 'zebra' AND lesson = (SELECT lesson.id FROM lesson JOIN pupil ON "
               "pupil.id = pupil WHERE number = 4 AND code = 'FINCH')")
    planned(server, "FINCH", ["2026-11-28T08:00"])
    done("logged anew here", "lesson", "log", "FINCH", "minutes 58; rest 2", "--lesson", "7", "--book", copy)
    bring = ["school", "bring", copy, "--book", ash]
    code, out, err = run(*bring)
    told = " ".join(out.split())
    check("what waits is told", code == 1 and all(one in told for one in (
        "FINCH, lesson 1 waits: it is logged in the school's book already, otherwise; '--instead FINCH:1' puts yours in its place",
        "FINCH, lesson 2 waits: the school's book says meanwhile that it wasn't driven",
        "FINCH, lesson 3 waits: it was moved to 2026-11-29 10:00 in the school's book",
        "FINCH, lesson 4 waits: it was planned anew in the school's book",
        "FINCH, lesson 11 waits: the school's book has lesson 11 at that time, planned")) and told.count("handed in") == 3, out + err)

    def minutes():
        return server.sql("SELECT string_agg(number || ':' || minutes, ' ' ORDER BY number) FROM lesson JOIN pupil ON pupil.id = "
                          "pupil WHERE code = 'FINCH' AND minutes IS NOT NULL")

    check("nothing was laid over", minutes() == "1:11 5:55 6:56 7:58", minutes())
    refused("a decision on what doesn't wait", "lesson 5 of FINCH has no log in this copy that waits", *bring, "--instead", "FINCH:5")
    refused("a decision without a lesson", "takes a pupil and a lesson", *bring, "--instead", "FINCH")
    run(*bring, "--instead", "FINCH:1", "--set-aside", "FINCH:2", "--instead", "FINCH:3")
    check("decided", minutes() == "1:51 3:53 5:55 6:56 7:58", minutes())
    check("moved to when it was driven", server.sql("SELECT start FROM lesson WHERE minutes = 53") == f"{HOURS[2]}:00+00:00")
    # Handed over, and erased: what is left of the logs is told to whom it may concern.
    done("handing over", "school", "hand", "FINCH", "--to", "birch", "--book", ash)
    waits("another's pupil", "the school's book shows you no such pupil any more", *bring)
    done("erased", "pupil", "erase", "FINCH", "--yes", "--book", server.address("birch"))
    waits("erased", "the school's book shows you no such pupil any more", *bring)
    check("nothing came back", server.sql("SELECT count(*) FROM pupil WHERE code = 'FINCH'") == "0")
    check("all is decided", "set aside" in done("set aside", *bring, "--set-aside", "FINCH:4", "--set-aside", "FINCH:11"))


def logged_and_taken_back(server, copy, ash):
    done("pupil add", "pupil", "add", "PIPIT", "--book", ash)
    planned(server, "PIPIT", HOURS[:2])
    done("taken along", "school", "take", copy, "--book", ash)
    for number in (1, 2):
        done("logged", "lesson", "log", "PIPIT", "minutes 40", "--lesson", number, "--book", copy)
    done("taken back before", "lesson", "unlog", "PIPIT", "--lesson", "1", "--book", copy)
    before = copy.with_name("before.book")
    shutil.copy(copy, before)
    told = done("handed in", "school", "bring", copy, "--book", ash)
    check("one is taken back, one handed in", "lesson 1: logged and taken back" in told and "lesson 2: handed in" in told, told)
    # The answer was lost (the copy of before), and then it was logged anew.
    done("logged anew", "lesson", "log", "PIPIT", "minutes 41", "--lesson", "2", "--book", before)
    check("its own log of before is known", "lesson 2: handed in" in done("handed in", "school", "bring", before, "--book", ash))
    check("the last one counts", server.sql("SELECT minutes FROM lesson JOIN pupil ON pupil.id = pupil WHERE code = 'PIPIT' AND "
                                            "number = 2") == "41")
    done("taken back after", "lesson", "unlog", "PIPIT", "--lesson", "2", "--book", before)
    done("handed in", "school", "bring", before, "--book", ash)
    check("taken back there, too", server.sql("SELECT count(*) FROM lesson JOIN pupil ON pupil.id = pupil WHERE code = 'PIPIT' AND "
                                              "state = 'planned'") == "2")
    done("logged once more", "lesson", "log", "PIPIT", "minutes 44; rest 3; remark: calm", "--lesson", "2", "--book", before)
    done("handed in", "school", "bring", before, "--book", ash)
    done("taken back", "lesson", "unlog", "PIPIT", "--lesson", "2", "--book", before)
    done("it didn't happen", "lesson", "log", "PIPIT", "not driven", "--lesson", "2", "--book", before)
    done("handed in", "school", "bring", before, "--book", ash)
    check("nothing of the log is left there", server.sql(
        "SELECT state, minutes, remark, (SELECT count(*) FROM pass WHERE lesson = lesson.id AND level IS NOT NULL) FROM lesson JOIN pupil ON "
        "pupil.id = pupil WHERE code = 'PIPIT' AND number = 2") == "not driven|||0")


def files_of_the_copy(server, copy, ash):
    """What is written from a copy is known to the school's book afterwards, and goes with the pupil."""
    done("pupil add", "pupil", "add", "DUNNOCK", "--home", "4 Lantern Row", "--book", ash)
    planned(server, "DUNNOCK", HOURS[:1])
    done("taken along", "school", "take", copy, "--book", ash)
    for k, brings in enumerate((["school", "bring", copy], ["school", "take", copy])):
        page = copy.with_name(f"page{k}.pdf")
        done("a page from the copy", "pupil", "show", "DUNNOCK", "-o", page, "--book", copy)
        done("back", *brings, "--book", ash)
        check(f"the school's book knows of it after {brings[1]}", server.sql(f"SELECT count(*) FROM written_file WHERE path = '{page}'") == "1")
    copy.unlink()
    told = done("erased", "pupil", "erase", "DUNNOCK", "--yes", "--book", ash)
    check("they go with the pupil", told.count("deleted") == 2 and not any(copy.with_name(f"page{k}.pdf").exists() for k in (0, 1)), told)


def damaged_rows(server, copy, ash):
    """Rows of five lessons are damaged in the copy, by Python's own SQLite: what is whole is handed in, the others are told one by one."""
    done("pupil add", "pupil", "add", "SISKIN", "--book", ash)
    planned(server, "SISKIN", HOURS[:8])
    done("taken along", "school", "take", copy, "--book", ash)
    for number in range(1, 9):
        done("logging", "lesson", "log", "SISKIN", f"minutes {30 + number}; rest 3", "--lesson", number, "--book", copy)
    whole = copy.with_name("whole.book")
    shutil.copy(copy, whole)
    lesson = "(SELECT lesson.id FROM lesson JOIN pupil ON pupil.id = pupil WHERE code = 'SISKIN' AND number = %d)"
    with contextlib.closing(sqlite3.connect(copy)) as db, db:
        db.execute(f"UPDATE pass SET kind = 'flying' WHERE lesson = {lesson % 1} AND at = 1")
        db.execute(f"UPDATE lesson SET start = 'soon' WHERE id = {lesson % 3}")
        db.execute(f"UPDATE log_entry SET id = 'x' WHERE lesson = {lesson % 4}")
        db.execute(f"UPDATE lesson SET said = CAST(X'FF' AS TEXT) WHERE id = {lesson % 5}")
        db.execute(f"DELETE FROM lesson WHERE id = {lesson % 7}")
    bring = ["school", "bring", copy, "--book", ash]
    for what in ("brought", "brought again"):
        code, out, err = run(*bring)
        told = " ".join(out.split())
        check(f"{what}: each damaged one is told", code == 1 and err == "" and all(one in told for one in (
            "SISKIN, lesson 1 has a damaged row, and its log stays in the copy: the book holds 'flying' as kind, which no Loopwright writes; log it "
            "in the school's book, then '--set-aside SISKIN:1'", "SISKIN, lesson 3 has a damaged row, and its log stays in the copy: the book holds "
            "'soon' as start", "SISKIN, lesson 4 has a damaged row", "uuid", "SISKIN, lesson 5 has a damaged row",
            "a log that names no lesson of this copy")) and told.count("handed in") == (4 if what == "brought" else 1), out + err)
    minutes = ("SELECT string_agg(number || ':' || minutes, ' ' ORDER BY number) FROM lesson JOIN pupil ON pupil.id = pupil WHERE code = "
               "'SISKIN' AND state = 'driven'")
    check("what is whole is there", server.sql(minutes) == "2:32 6:36 8:38", server.sql(minutes))
    done("logged in the school's book", "lesson", "log", "SISKIN", "minutes 41", "--lesson", "1", "--book", ash)
    code, out, _ = run(*bring, "--set-aside", "SISKIN:1")
    check("one is set aside", code == 1 and "lesson 1: set aside" in out and "lesson 1 has" not in out, out)
    # The same copy before it was damaged, found again.
    code, out, _ = run("school", "bring", whole, "--book", ash)
    check("nothing twice", code == 1 and out.count("was handed in before") == 3 and "lesson 1 waits: it is logged" in " ".join(out.split()), out)
    check("all are there once", server.sql(minutes) == "1:41 2:32 3:33 4:34 5:35 6:36 7:37 8:38", server.sql(minutes))


with Server() as server, tempfile.TemporaryDirectory() as folder:
    copy = pathlib.Path(folder) / "day.book"
    school(server, program)
    ash = server.address("ash")
    for code in ("WREN", "LARK"):
        done("pupil add", "pupil", "add", code, "--home", "4 Lantern Row", "--book", ash)
    planned(server, "WREN", HOURS)
    check("taking along", "1 pupil, 10 planned lessons" in done("taking along", "school", "take", copy, "--book", ash))
    check("all of them", "2 pupils, 10 planned" in done("all", "school", "take", copy, "--all", "--book", ash))
    check("it is for its owner alone", copy.stat().st_mode & 0o777 == 0o600)
    check("the school's book knows where it lies", server.sql("SELECT DISTINCT path FROM written_file") == str(copy))
    own = copy.with_name("own.book")
    run("pupil", "add", "WREN", "--book", own)
    refused("a book of one's own", "is a book of its own", "school", "take", own, "--book", ash)
    refused("handing in a book of one's own", "is no day's copy", "school", "bring", own, "--book", ash)
    refused("from a file", "a school's book is on a server", "school", "take", copy, "--book", own)
    refused("onto a server", "a day's copy is a file", "school", "take", ash, "--book", ash)
    refused("no server", "can't be reached", "school", "take", copy.with_name("n.book"), "--book", f"postgresql:///b?host={folder}")
    check("nothing is left behind", not copy.with_name("n.book").exists())
    only_logs_change(copy)
    killed_again_and_again(server, copy, ash)
    what_waits(server, copy, ash)
    logged_and_taken_back(server, copy, ash)
    copy.unlink()
    files_of_the_copy(server, copy, ash)
    damaged_rows(server, copy, ash)
test.end("a day's copy: every log is there once")
