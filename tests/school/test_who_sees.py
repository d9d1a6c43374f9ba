#!/usr/bin/env python3
"""Who sees and changes what in a school's book: every command, and statements that no command of ours would make.

That the database holds them to it, and not the program, is tried by psql. UK GDPR article 5(1)(f): who needn't see a
pupil's record doesn't.
"""
import contextlib
import json
import pathlib
import re
import sqlite3
import subprocess
import sys
import tempfile

sys.path.append(str(pathlib.Path(__file__).resolve().parent.parent / "page"))
from served import served
from checks import planned
from server import Server, school

build, map_file = sys.argv[1:3]
program = f"{build}/loopwright"
failed = []
DAY = ["--today", "2026-11-28"]


def check(what, holds, told=""):
    if not holds:
        failed.append(what)
        print(f"FAILED: {what}\n{told}")


def run(*words):
    done = subprocess.run([program, *map(str, words)], capture_output=True, text=True)
    return done.returncode, done.stdout, done.stderr


def refused(what, said, *words):
    """said: what the one line of the error holds."""
    code, out, err = run(*words)
    check(what, code != 0 and said in err and err.count("\n") == 1, f"exit {code}: {out}{err}")


def done(what, *words):
    code, out, err = run(*words)
    check(what, code == 0, f"exit {code}: {out}{err}")
    return out


def refused_by_database(server, what, said, sql, login):
    try:
        told = server.sql(sql, login=login)
    except RuntimeError as error:
        check(what, said in str(error), str(error))
    else:
        check(what, said == "" and told in ("", "0"), told)


def by_every_command(server, area, book):
    """WREN is ash's; birch tries all that takes a pupil."""
    birch = server.address("birch")
    none = "there is no pupil WREN"
    here = ["--book", birch]
    drive = area.with_name("drive.gpx")
    drive.write_text('<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>' + "".join(
        f'<trkpt lat="54.297{k}" lon="2.5988"><time>2026-11-28T15:0{k}:00Z</time></trkpt>' for k in range(4)) + "</trkseg></trk></gpx>",
        encoding="utf-8")
    day_list = area.with_name("list.txt")
    day_list.write_text("09:00 60 WREN roundabouts\n", encoding="utf-8")
    door = ["--home", "54.2973,2.5988", "--length", "60", "--want", "roundabout=1"]
    tried = {
            "pupil show": ["pupil", "show", "WREN", *here],
            "pupil change": ["pupil", "change", "WREN", "--home", "1 Elsewhere", *here],
            "pupil export": ["pupil", "export", "WREN", *here],
            "pupil erase": ["pupil", "erase", "WREN", "--yes", *here],
            "pupil not-met": ["pupil", "not-met", "WREN", area, *here],
            "lesson list": ["lesson", "list", "WREN", *here],
            "lesson plan": ["lesson", "plan", "WREN", area, *door, "--start", "2026-11-28T15:00", *here],
            "lesson print": ["lesson", "print", "WREN", "--lesson", "1", *here],
            "lesson log": ["lesson", "log", "--yes", "WREN", "minutes 52", "--lesson", "1", *here],
            "lesson unlog": ["lesson", "unlog", "WREN", "--lesson", "1", *here],
            "lesson next": ["lesson", "next", "WREN", *here, *DAY],
            "lesson trace": ["lesson", "trace", "WREN", drive, "--area", area, *here],
            "lesson at-home": ["lesson", "at-home", "WREN", area, "--home", "54.2973,2.5988", *here],
            "lesson like-it": ["lesson", "like-it", "WREN", area, "--home", "54.2973,2.5988", *here],
            "lesson again": ["lesson", "again", "WREN", "--lesson", "1", "--start", "16:00", *here],
            "day": ["day", "2026-11-29", area, day_list, *here],
            "school hand": ["school", "hand", "WREN", "--to", "birch", *here]}
    for what, words in tried.items():
        refused(f"{what} of another's pupil", none, *words)
    # No deed of these commands is forgotten: all but those that name no pupil of the book, which are tried below.
    deeds = {f"{verb} {deed}" for verb in ("pupil", "lesson") for deed in re.findall(r"^  ([a-z-]+)\t", run(verb, "--help")[1], re.M)}
    check("every deed is tried", len(deeds) > 15 and deeds - set(tried) == {"pupil add", "pupil list", "pupil purge", "pupil backup", "pupil restore"},
          deeds - set(tried))
    for deed in (["backup", area.with_name("b.book")], ["restore", area.with_name("b.book"), "--yes"]):
        refused(f"{deed[0]} of a school's book", "is on a server", "pupil", *deed, *here)
    refused("another's code", "another pupil of the school has this code", "pupil", "add", "wren", *here)
    check("purge leaves another's pupil alone", "nobody is due" in done(
        "pupil purge", "pupil", "purge", "--today", "2031-01-01", "--yes", *here))
    check("pupil list without another's pupil", "WREN" not in done("pupil list", "pupil", "list", *here))
    check("nothing became of it", done("pupil export", "pupil", "export", "WREN", "--book", server.address("ash")) == book)


def by_the_page(server, area):
    """The page on the school's book shows each their own; a build without the page has none to ask."""
    if "without the page" in run("page", area, "--port", "1024", "--book", folder / "none" / "b.book")[2]:
        print("the page isn't tried: it isn't in this build")
        return
    for login, listed, status in (("ash", ["WREN"], 200), ("birch", [], 422)):
        with served(program, area=area, more=("--book", server.address(login))) as page:
            page.enter()
            codes = [one["code"] for one in json.loads(page.ask("GET", "/pupils")[2])["pupils"]]
            check(f"the page's pupils for {login}", codes == listed, codes)
            check(f"the page's record for {login}", page.ask("GET", "/pupils/WREN")[0] == status)


def all_rows(book):
    """Every row of every table of a file, by another reader, with codes and numbers in the place of keys."""
    with contextlib.closing(sqlite3.connect(book)) as rows:
        pupils = dict(rows.execute("SELECT id, code FROM pupil"))
        lessons = {key: (pupils[pupil], number) for key, pupil, number in rows.execute("SELECT id, pupil, number FROM lesson")}
        found = {}
        for (table,) in rows.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall():
            cursor = rows.execute(f"SELECT * FROM {table}")
            names = [column[0] for column in cursor.description]
            found[table] = sorted(repr([pupils.get(value) if name == "pupil" else lessons.get(value) if name in (
                "lesson", "reached_in") else value for name, value in zip(names, row) if name != "id"]) for row in cursor)
        return found


def same_columns(server, book):
    """What a file keeps, a school keeps: no column of one store is forgotten in the other."""
    with contextlib.closing(sqlite3.connect(book)) as rows:
        in_file = {(table, column[1]) for (table,) in rows.execute("SELECT name FROM sqlite_master").fetchall()
                   for column in rows.execute(f"PRAGMA table_info({table})")}
    on_server = {tuple(line.split("|")) for line in server.sql(
        "SELECT table_name, column_name FROM information_schema.columns WHERE table_schema = 'public'").split("\n")}
    other = {(table, column) for table, column in in_file ^ on_server
             if column not in ("rowid", "handed_by") and table not in ("act", "school_schema")}
    check("both stores have the same columns", not other, other)


def by_statements(server):
    """What no command of ours would send."""
    pupil, lesson = server.sql("SELECT id FROM pupil"), server.sql("SELECT id FROM lesson")
    server.sql(f"INSERT INTO log_entry VALUES (gen_random_uuid(), '{lesson}', 'handed in', ''); INSERT INTO proposal VALUES ('{pupil}', "
               "'2026-11-28', '', '', '', '', '')")
    tables = server.sql("SELECT tablename FROM pg_tables WHERE schemaname = 'public' ORDER BY 1").split()
    # Every table but four is of pupils, and shows nothing of another's.
    for table in tables:
        if table in ("school_schema", "act", "seen", "centre"):
            continue
        check(f"{table} has rows to hide", server.sql(f"SELECT count(*) > 0 FROM {table}") == "t" or table in (
            "trace", "trace_time"))
        refused_by_database(server, f"reading {table}", "", f"SELECT count(*) FROM {table}", "birch")
        refused_by_database(server, f"emptying {table}", "",
                            f"WITH gone AS (DELETE FROM {table} RETURNING 1) SELECT count(*) FROM gone", "birch")
        check(f"{table}'s policy is on", server.sql(
            f"SELECT relrowsecurity FROM pg_class WHERE relname = '{table}'") == "t")
    for what, sql in {
            "a lesson of another's pupil": f"INSERT INTO tick VALUES ('{pupil}', 'licence-seen', '2026-11-28')",
            "a pass in another's lesson": f"INSERT INTO pass VALUES ('{lesson}', 99, 'zebra', 'none', 1, '', 1)",
            "a street of another's pupil": f"INSERT INTO street_use VALUES ('2026-11-28', 1, 1, 2, 1, 0, '{pupil}', NULL)",
            "a pupil for another": "INSERT INTO pupil (code, scheme, added, home, my_your, holder) "
                                   "VALUES ('X', 'car-27', '2026-11-28', '', 0, 'ash')",
            "giving a pupil away": "UPDATE pupil SET holder = 'ash'",
    }.items():
        refused_by_database(server, what, "row-level security" if "giving" not in what else "", sql, "birch")
    # Of birch's own pupil, but with another's lesson in it.
    own = ("BEGIN; INSERT INTO pupil (id, code, scheme, added, home, my_your) VALUES ('00000000-0000-4000-a000-000000000001', 'OWN', "
           "'car-27', '2026-11-28', '', 0); INSERT INTO lesson SELECT '00000000-0000-4000-a000-000000000002', "
           "'00000000-0000-4000-a000-000000000001', 1, 'planned', '2026-11-28T10:00:00+00:00', 1, 60, '', '', '', '', '', 0, NULL, '', '', '', "
           "'', '', 0; ")
    mine = "'00000000-0000-4000-a000-000000000001'"
    for what, sql in {
            "a goal that another's lesson reached": "INSERT INTO goal (lesson, text, reached_in) VALUES "
                                                    f"('00000000-0000-4000-a000-000000000002', 'x', '{lesson}')",
            "a file of another's lesson": f"INSERT INTO written_file VALUES ('/x', {mine}, '{lesson}', '')",
            "a street of another's lesson": f"INSERT INTO street_use VALUES ('2026-11-28', 1, 1, 2, 1, 0, {mine}, '{lesson}')",
            "an entry of another's lesson": f"INSERT INTO log_entry VALUES (gen_random_uuid(), '{lesson}', 'handed in', '')",
            "a proposal for another's pupil": f"INSERT INTO proposal VALUES ('{pupil}', '2026-11-28', '', '', '', '', '')",
    }.items():
        refused_by_database(server, what, "row-level security", own + sql, "birch")
    # What all see is held to what it can be.
    for what, sql in {"a sighting on no day": "INSERT INTO seen VALUES ('place', 'way/1', '', 'soon', '')",
                      "a street on no day": "INSERT INTO street_use VALUES ('2026-02-31', 1, 1, 2, 1, 0, NULL, NULL)",
                      "a street driven a million times": "INSERT INTO street_use VALUES ('2026-11-28', 1, 1, 2, 1000000, 0, NULL, NULL)"
                      }.items():
        refused_by_database(server, what, "", "DO $$ BEGIN " + sql + "; END $$; SELECT 'taken'", "birch")
    server.sql("INSERT INTO street_use VALUES ('2026-11-28', 1, 1, 2, 1, 0, NULL, NULL)", login="birch")
    refused_by_database(server, "nobody's lines but through the ledger", "", "SELECT count(*) FROM street_use", "birch")
    check("the ledger has them", server.sql("SELECT count(*) FROM ledger WHERE way = 1", login="birch") == "1")
    server.sql("DELETE FROM street_use WHERE way = 1")
    refused_by_database(server, "a stranger", "permission denied", "SELECT count(*) FROM pupil", "stranger")
    refused_by_database(server, "making a table", "permission denied", "CREATE TABLE public.mine (a INT)", "birch")
    server.sql("DELETE FROM log_entry; DELETE FROM proposal")


def whose_centre(server, area):
    """A test centre is kept off by all; who kept it, and the office, change it. EASTGATE is ash's of before."""
    ash, birch, elm = (server.address(who) for who in ("ash", "birch", "elm"))
    zone = ["--outline", "54.30,2.60;54.30,2.61;54.31,2.61", "--hours", "Mo-Fr 09:00-16:00"]
    taken = "the test centre EASTGATE is kept by ash: who keeps it, or the office, changes it or takes it out; nothing is changed"
    refused("changing another's centre", taken, "centre", "keep", "EASTGATE", *zone, "--since", "2026-09-01", "--book", birch)
    refused("another's centre from a later day on", taken, "centre", "keep", "EASTGATE", *zone, "--since", "2026-12-01", "--book", birch)
    refused("taking another's centre out", taken, "centre", "drop", "EASTGATE", "--book", birch)
    for what, said, sql in (
            ("deleting another's centre", "", "WITH gone AS (DELETE FROM centre RETURNING 1) SELECT count(*) FROM gone"),
            ("changing it", "", "WITH other AS (UPDATE centre SET hours = '' RETURNING 1) SELECT count(*) FROM other"),
            ("one more of that name", "row-level security", "INSERT INTO centre VALUES ('eastgate', '', '', '2027-01-01')"),
            ("one in another's name", "row-level security", "INSERT INTO centre VALUES ('Mine', '', '', '2027-01-01', 'ash')"),
            ("one since no day", "", "DO $$ BEGIN INSERT INTO centre VALUES ('Mine', '', '', 'soon'); END $$; SELECT 'taken'")):
        refused_by_database(server, what, said, sql, "birch")
    done("who keeps it changes it", "centre", "keep", "eastgate", "--outline", "54.307,2.605;54.307,2.62;54.3,2.62", "--hours", "Mo-Fr 08:00-17:00",
         "--since", "2026-09-01", "--book", ash)
    check("it is one still, by its first name", server.sql("SELECT name, hours, kept_by FROM centre") == "Eastgate|Mo-Fr 08:00-17:00|ash")
    done("birch keeps one", "centre", "keep", "Stavely", *zone, "--since", "2026-09-01", "--book", birch)
    done("the office takes it out", "centre", "drop", "STAVELY", "--book", elm)
    done("the office goes on with ash's", "centre", "keep", "Eastgate", *zone, "--since", "2027-01-01", "--book", elm)
    refused("then it is the office's, too", "another instructor's pupil or test centre", "centre", "drop", "Eastgate", "--book", ash)
    listed = done("who keeps what", "centre", "list", "--book", birch)
    check("who keeps what is listed", "kept by" in listed and "ash" in listed and "elm" in listed, listed)
    server.sql("DELETE FROM centre WHERE kept_by = 'elm'")
    # A mock test of another instructor keeps off it, and what none can read stops nobody's.
    server.sql("INSERT INTO centre VALUES ('Rubbish', 'nowhere', 'Mo-Fr', '2026-09-01', 'ash')")
    done("pupil add", "pupil", "add", "MOCK", "--home", "54.2973,2.5988", "--book", birch)
    for day, says in (("2026-12-14", "keeps off the surroundings of the test centre Eastgate, Mo-Fr 08:00-17:00"),
                      ("2026-12-12", "no tests in this lesson at Eastgate, Mo-Fr 08:00-17:00: its surroundings aren't kept off")):
        code, out, err = run("lesson", "plan", "MOCK", area, "--mock", "--quick", "--start", f"{day}T10:00", "--length", "60", "--book", birch)
        told = " ".join(out.split())
        check(f"a mock test on {day}", says in told and "not kept off, look at it with 'loopwright centre list': Rubbish: " in told, f"{code}: {out}{err}")
    copy = area.with_name("day.book")
    done("taking along", "school", "take", copy, "--book", birch)
    check("centres come along", "Eastgate" in done("in the copy", "centre", "list", "--book", copy))
    kept = json.loads(done("export", "pupil", "export", "MOCK", "--book", copy))["lesson"]
    check("the mock test in the copy keeps off it", len(kept) == 2 and all("keep-off 54.307,2.605;54.307,2.62;54.3,2.62 @ Mo-Fr 08:00-17:00" in one["wish"]
                                                                     for one in kept), [one["wish"] for one in kept])
    refused("a plan in the copy", "is a day's copy of a school's book", "lesson", "plan", "MOCK", area, "--mock", "--start", "2026-12-15T10:00", "--book", copy)
    done("taken along again", "school", "take", copy, "--book", birch)
    own = area.with_name("own.book")
    done("a centre of one's own book", "centre", "keep", "Stavely", *zone, "--book", own)
    refused("isn't lost to a copy", "is a book of its own", "school", "take", own, "--book", birch)
    copy.unlink()
    done("the pupil goes", "pupil", "erase", "MOCK", "--yes", "--book", birch)
    server.sql("DELETE FROM centre WHERE name = 'Rubbish'")


def whose_day(server, area):
    """A lesson that lasts over midnight meets the next day's of the same instructor, and no other instructor's."""
    ash, elm = server.address("ash"), server.address("elm")
    for code, who in (("LATE", "ash"), ("EARLY", "ash"), ("OTHER", "birch")):
        done("pupil add", "pupil", "add", code, "--home", "54.2973,2.5988", "--book", server.address(who))
    planned(server, "LATE", ["2026-12-10T23:30"])
    plan = ["--start", "2026-12-11T00:15", "--length", "60", "--want", "roundabout=1"]
    told = " ".join(done("after midnight", "lesson", "plan", "EARLY", area, *plan, "--book", ash).split())
    check("a clash over midnight", "clash: LATE's lesson 1 23:30 to 00:30, EARLY 00:15: they overlap by 15 min" in told, told)
    told = done("the office plans", "lesson", "plan", "OTHER", area, *plan, "--book", elm)
    check("another instructor's lesson is no clash", "clash" not in told, told)
    refused("whose day it is", "--of: the lessons of 2026-12-11 are several instructors'", "day", "2026-12-11", area, "--book", elm)
    told = " ".join(done("ash's day", "day", "2026-12-11", area, "--of", "LATE", "--book", elm).split())
    check("the day tells what clashes over midnight first", told.startswith(
        "clash: LATE's lesson 1 23:30 to 00:30, EARLY's lesson 1 00:15: they overlap by 15 min") and "OTHER" not in told, told)
    told = " ".join(done("the evening before", "day", "2026-12-10", area, "--book", ash).split())
    check("from its evening, too", told.startswith("clash: LATE's lesson 1 23:30 to 00:30, EARLY's lesson 1 00:15"), told)
    day_list = area.with_name("day.txt")
    day_list.write_text("09:00 60 EARLY roundabouts\n11:00 60 OTHER roundabouts\n", encoding="utf-8")
    refused("a list of two instructors' pupils", "line 2: OTHER is another instructor's than EARLY", "day", "2026-12-12", area, day_list,
            "--book", elm)


with Server() as server, tempfile.TemporaryDirectory() as folder:
    folder = pathlib.Path(folder)
    school(server, program)
    area = folder / "q.area"
    subprocess.run([program, "build", map_file, "-o", area, "--region", "GB-ENG"], check=True, capture_output=True)
    ash, birch, elm, owner = (server.address(who) for who in ("ash", "birch", "elm", "head"))
    refused("a stranger", "no member of the school", "pupil", "list", "--book", server.address("stranger"))
    done("pupil add", "pupil", "add", "WREN", "--home", "54.2973,2.5988", "--licence-seen", "2026-09-01", "--avoid", "level-crossing", "--book", ash)
    done("keeping a test centre", "centre", "keep", "Eastgate", "--outline", "54.307,2.605;54.307,2.62;54.3,2.62", "--hours",
         "Mo-Fr 08:30-16:30", "--since", "2026-09-01", "--book", ash)
    check("it is all instructors'", "Eastgate" in done("listing test centres", "centre", "list", "--book", birch))
    done("lesson plan", "lesson", "plan", "WREN", area, "--length", "60", "--want", "roundabout=1", "--start", "2026-11-28T15:00", "-o", folder / "w.json", "--book", ash)
    done("lesson log", "lesson", "log", "--yes", "WREN", "rest 3; minutes 38; fault junction-observation x2; roundabout 2 pedals: late; "
         "goal: roundabouts without pedals; mock unplanned; seen all; said: the big ones; remark: shorter", "--book", ash)
    book = done("pupil export", "pupil", "export", "WREN", "--book", ash)
    by_every_command(server, area, book)
    by_the_page(server, area)
    by_statements(server)
    counts = [done("streets", "streets", area, "--today", "2026-11-28", "--book", who) for who in (ash, birch, elm)]
    check("all see the ledger's counts", counts[0] == counts[1] == counts[2] and counts[0].count("\n") > 1, counts[1])
    check("whose a line is stays ash's", server.sql("SELECT count(lesson) FROM ledger", login="birch") == "0" != server.sql(
        "SELECT count(lesson) FROM ledger", login="ash"))
    check("the office sees all", "WREN" in done("pupil list", "pupil", "list", "--book", elm))
    refused("handing over to no instructor", "no instructor", "school", "hand", "WREN", "--to", "stranger", "--book", ash)
    done("handing over", "school", "hand", "wren", "--to", "birch", "--book", ash)
    refused("what was handed over", "there is no pupil WREN", "pupil", "show", "WREN", "--book", ash)
    now, before = (json.loads(text) for text in (done("pupil export", "pupil", "export", "WREN", "--book", birch), book))
    check("files on another's computer are no longer known", before["written_file"] and not now["written_file"])
    check("who holds it now sees all else of it", {**now, "written_file": before["written_file"]} == before)
    for group in ("loopwright_instructor", "loopwright_office"):
        refused("handing over to a group", "one instructor of this school", "school", "hand", "WREN", "--to", group, "--book", birch)
        refused("admitting a group", "no such login", "school", "admit", group, "--book", owner)
    done("the office hands over", "school", "hand", "WREN", "--to", "ash", "--book", elm)
    done("pupil show", "pupil", "show", "WREN", "-o", folder / "anew.pdf", "--book", ash)
    book = done("pupil export", "pupil", "export", "WREN", "--book", ash)

    # A book moved into a file and back is the same.
    done("moving into a file", "school", "move", ash, folder / "a.book")
    check("the file", done("pupil export", "pupil", "export", "WREN", "--book", folder / "a.book") == book)
    refused("moving it twice", "has a pupil WREN already", "school", "move", folder / "a.book", ash)
    refused("moving it to another", "has this code", "school", "move", folder / "a.book", birch)
    check("erasing says what stays", "replicas and backups" in done(
        "erasing", "pupil", "erase", "WREN", "--yes", "--book", ash))
    check("nothing of it is left", server.sql("SELECT count(*) FROM lesson") == "0")
    done("moving back", "school", "move", folder / "a.book", birch)
    done("moving into another file", "school", "move", birch, folder / "c.book")
    rows = all_rows(folder / "a.book")
    check("every row is the same there and back", rows == all_rows(folder / "c.book"))
    for table in ("tick", "avoided", "lesson", "pass", "road_minutes", "limit_minutes", "fault", "intervention", "observation",
                  "goal", "mock_test", "to_check", "street_use", "seen", "centre", "written_file"):
        check(f"{table} was moved", rows[table])
    same_columns(server, folder / "a.book")
    check("moved back", done("pupil export", "pupil", "export", "WREN", "--book", birch) == book)

    whose_centre(server, area)
    whose_day(server, area)
    refused("a password in the address", "can be read by others", "pupil", "list", "--book", "postgresql://ash:pw@localhost/b")
    refused("a parameter that is none", "can't be read", "pupil", "list", "--book", "postgresql:///b?passwort=x")
    refused("no server", "can't be reached", "pupil", "list", "--book", f"postgresql:///b?host={folder}")
    refused("no such database", "does not exist", "pupil", "list", "--book", server.address("ash", "none"))
    server.sql("CREATE DATABASE empty")
    refused("a database without a book", "holds no school's book", "pupil", "list", "--book", server.address("ash", "empty"))
    refused("preparing by a member", "only the database's owner", "school", "prepare", "--book", ash)
    server.sql("UPDATE school_schema SET version = 0")
    refused("an older schema", "was made by an older Loopwright", "pupil", "list", "--book", ash)
    server.sql("UPDATE school_schema SET version = 7, oldest_program = 1")
    for table in server.sql("SELECT tablename FROM pg_tables WHERE schemaname = 'public'").split():
        server.sql(f"ALTER TABLE {table} ADD COLUMN later TEXT NOT NULL DEFAULT ''")
    done("a newer schema that older programs may use", "pupil", "list", "--book", birch)
    done("writing into it", "lesson", "log", "--yes", "WREN", "rest 4; minutes 20; mock 1 0 0", "--start", "2026-11-29T10:00", "--book", birch)
    done("planning into it", "lesson", "plan", "WREN", area, "--length", "60", "--want", "roundabout=1", "--start",
         "2026-12-05T15:00", "--book", birch)
    done("moving out of it", "school", "move", birch, folder / "d.book")
    server.sql("UPDATE school_schema SET oldest_program = 7")
    refused("a newer schema", "needs a newer Loopwright", "pupil", "list", "--book", ash)

print(f"{len(failed)} failed" if failed else "who sees what: all as it must be")
sys.exit(1 if failed else 0)
