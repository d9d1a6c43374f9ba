#!/usr/bin/env python3
"""Members come and go, two prepare a school at once, and what a member's own settings can't change.

    test_members.py BUILD
"""
import subprocess
import sys
import threading

from checks import Checks, planned
from server import Server, school

build = sys.argv[1]
program = f"{build}/loopwright"
test = Checks(program)
check, run, done, refused = test.check, test.run, test.done, test.refused


def prepared_twice_at_once(server):
    """In a database of its own; a third one is made beside it, for another school."""
    for name in ("first", "second"):
        server.sql(f"CREATE DATABASE {name}")
    here = server.address(server.owner, "first")
    running = [subprocess.Popen([program, "school", "prepare", "--book", here], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
               for _ in range(3)]
    told = [one.communicate()[0] for one in running]
    check("three prepare at once", all(one.returncode == 0 for one in running) and sum("ready" in one for one in told) == 1, told)
    done("another school", "school", "prepare", "--book", server.address(server.owner, "second"))


def come_and_go(server):
    owner, first = server.address(server.owner, "first"), server.address("finch", "first")
    server.sql("CREATE ROLE finch LOGIN")
    refused("not yet", "no member of the school", "pupil", "list", "--book", first)
    for name in ("first", "second"):
        done("admitted", "school", "admit", "finch", "--book", server.address(server.owner, name))
    done("their pupil", "pupil", "add", "WREN", "--book", first)
    left = done("leaving", "school", "leave", "finch", "--book", owner)
    check("the pupil stays", "1 pupil is still held by it: the office hands them over" in left, left)
    refused("who left sees nothing", "no member of the school", "pupil", "list", "--book", first)
    done("the other school stays theirs", "pupil", "list", "--book", server.address("finch", "second"))
    refused("leaving twice", "is no member of this school", "school", "leave", "finch", "--book", owner)
    refused("leaving by a member", "only the database's owner", "school", "leave", "finch", "--book", server.address("finch", "second"))
    # Another person's login of that name.
    server.sql("DROP OWNED BY finch", database="first")
    server.sql("DROP OWNED BY finch", database="second")
    server.sql("DROP ROLE finch; CREATE ROLE finch LOGIN; CREATE ROLE elm LOGIN")
    refused("a login made anew", "holds 1 of the school's pupils, and may have been another person's", "school", "admit", "finch", "--book", owner)
    done("the office", "school", "admit", "elm", "--office", "--book", owner)
    done("the same person", "school", "admit", "finch", "--same-person", "--book", owner)
    check("has the pupil again", "WREN" in done("list", "pupil", "list", "--book", first))
    done("admitted again", "school", "admit", "finch", "--book", owner)


def disk_is_waited_for(server):
    """Whatever a login's settings say, what is acknowledged is on the disk: told by a trigger of the test's own."""
    server.sql("ALTER ROLE ash SET synchronous_commit = off; CREATE TABLE told (setting TEXT); GRANT ALL ON told TO PUBLIC; CREATE FUNCTION "
               "tell() RETURNS TRIGGER LANGUAGE plpgsql AS $$ BEGIN INSERT INTO told VALUES (current_setting('synchronous_commit')); RETURN "
               "NEW; END $$; CREATE TRIGGER tell AFTER INSERT ON lesson FOR EACH ROW EXECUTE FUNCTION tell()")
    done("a write", "lesson", "log", "WREN", "minutes 40", "--start", "2026-11-20T10:00", "--book", server.address("ash"))
    check("the login's own setting", server.sql("SHOW synchronous_commit", login="ash") == "off")
    check("within a write", server.sql("SELECT setting FROM told") == "on")


def at_the_same_moment(server):
    """Two log one lesson, each having read it as planned: the first stays, the second is told. A lock of the test's own holds both up
    until they have read it."""
    planned(server, "WREN", ["2026-11-21T10:00"])
    number = server.sql("SELECT number FROM lesson WHERE state = 'planned'")
    holding = subprocess.Popen([server.psql(), "-X", "-q", "-A", "-t", "-h", server.socket, "-U", server.owner, "-d", "postgres"],
                               stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    holding.stdin.write("BEGIN; LOCK TABLE act IN EXCLUSIVE MODE; SELECT 'held';\n")
    holding.stdin.flush()
    holding.stdout.readline()
    told = {}

    def log(minutes):
        told[minutes] = run("lesson", "log", "WREN", f"minutes {minutes}", "--lesson", number, "--book", server.address("ash"))

    both = [threading.Thread(target=log, args=(minutes,)) for minutes in (41, 42)]
    for one in both:
        one.start()
    while server.sql("SELECT count(*) FROM pg_locks WHERE NOT granted AND relation = 'act'::regclass") != "2":
        pass
    holding.communicate("COMMIT;\n")
    for one in both:
        one.join()
    well = [minutes for minutes, (code, _, _) in told.items() if code == 0]
    check("one is taken", len(well) == 1 and server.sql(f"SELECT minutes FROM lesson WHERE number = {number}") == str(well[0]), told)
    check("the other is told", any("was logged at this moment by somebody else" in err for _, _, err in told.values()), told)


def brought_up_to_date(server):
    """A book of version 3, whose test centres were anybody's, keeps them; from now on the office alone changes those."""
    owner, ash, elm = (server.address(who) for who in (server.owner, "ash", "elm"))
    server.sql("INSERT INTO centre VALUES ('Before', '54.30,2.60;54.30,2.61;54.31,2.61', 'Mo-Fr 09:00-16:00', '2026-09-01'); ALTER TABLE centre DROP "
               "CONSTRAINT centre_since; ALTER TABLE centre DROP COLUMN kept_by CASCADE; UPDATE school_schema SET version = 3")
    refused("an older book", "was made by an older Loopwright (book version 3", "centre", "list", "--book", ash)
    check("is brought up to date", "ready" in done("preparing", "school", "prepare", "--book", owner))
    refused("what was anybody's", "is kept by the office", "centre", "drop", "Before", "--book", ash)
    check("the office has it", "taken out" in done("the office", "centre", "drop", "Before", "--book", elm))


def odd_rows(server):
    """What somebody writes by SQL into what all see, before there was a rule against it, stops nobody."""
    owner = server.address(server.owner)
    rules = "SELECT count(*) FROM pg_constraint WHERE conname IN ('seen_day', 'street_use_day', 'street_use_times', 'centre_since') AND convalidated"
    check("a new book warrants its rules", server.sql(rules) == "4")
    server.sql("ALTER TABLE seen DROP CONSTRAINT seen_day; INSERT INTO seen VALUES ('place', 'way/1', '', 'soon', ''); ALTER TABLE street_use "
               "DROP CONSTRAINT street_use_times; INSERT INTO street_use VALUES ('2026-11-22', 7, 1, 2, 5000000000, 0, NULL, NULL); ALTER TABLE "
               "seen ADD CONSTRAINT seen_day CHECK (make_date(substr(day, 1, 4)::INT, 1, 1) IS NOT NULL) NOT VALID; ALTER TABLE street_use ADD "
               "CONSTRAINT street_use_times CHECK (times BETWEEN 1 AND 1000) NOT VALID")
    told = done("preparing again", "school", "prepare", "--book", owner)
    check("who prepares is told of each", "yours to delete: table seen, day 'soon', rows: 1" in told and
          "table street_use, times '5000000000', rows: 1" in told and server.sql(rules) == "2", told)
    done("printing", "lesson", "list", "WREN", "--book", server.address("ash"))
    done("logging", "lesson", "log", "WREN", "minutes 40", "--start", "2026-11-22T10:00", "--book", server.address("ash"))
    server.sql("DELETE FROM seen WHERE day = 'soon'; DELETE FROM street_use WHERE times > 1000")
    check("once they are gone the rules are warranted", "yours to delete" not in done("and again", "school", "prepare", "--book", owner) and
          server.sql(rules) == "4")


with Server() as server:
    prepared_twice_at_once(server)
    come_and_go(server)
with Server() as server:
    school(server, program)
    done("a pupil", "pupil", "add", "WREN", "--book", server.address("ash"))
    disk_is_waited_for(server)
    at_the_same_moment(server)
    brought_up_to_date(server)
    odd_rows(server)
test.end("members, settings, two at once: all as it must be")
