#!/usr/bin/env python3
"""Proposals in the night: several workers share the pupils, each is proposed for once, and a killed worker's are taken over.

    test_night.py BUILD MAP [PARTS]

PARTS: the folder of what the tests in a browser need; with it the page shows the same (night_page.mjs).
"""
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time

sys.path.append(str(pathlib.Path(__file__).resolve().parent.parent / "page"))
from served import served
from checks import Checks, planned
from server import Server, school

build, map_file = sys.argv[1:3]
parts = sys.argv[3] if len(sys.argv) > 3 else None
program = f"{build}/loopwright"
test = Checks(program)
check, done, refused = test.check, test.done, test.refused
DAY = ["--today", "2026-11-30"]
PUPILS = 12



def on_the_page(area, address, fresh, stale):
    """The sheets of two pupils on the page of who holds them, on 28 November 2026."""
    with served(program, area=area, more=("--book", address)) as page:
        done = subprocess.run(["node", pathlib.Path(__file__).with_name("night_page.mjs"), f"{page.origin}/?key={page.key}", fresh, stale],
                              capture_output=True, text=True, check=False, env={**os.environ, "PROGRAM": program, "PARTS": parts})
    check("the page opens", done.returncode == 0, done.stderr)
    if done.returncode:
        return
    said = json.loads(done.stdout)
    told = [" ".join(text.split()) for text in said["told"]]
    check("nothing to complain of", said["complaints"] == [], said["complaints"])
    check("the page shows what was proposed in the night, and when it was made", "Proposed in the night, 20" in told[0] and
          "with the school's map." in told[0] and "Take it into the lesson" in told[0], told[0])
    check("what is older than the record isn't shown there", "in the night" not in told[1] and "Take it into the lesson" in told[1], told[1])


with Server() as server, tempfile.TemporaryDirectory() as folder:
    school(server, program)
    area = pathlib.Path(folder) / "q.area"
    subprocess.run([program, "build", map_file, "-o", area, "--region", "GB-ENG"], check=True, capture_output=True)
    ash, birch, elm = (server.address(who) for who in ("ash", "birch", "elm"))
    for k in range(PUPILS):
        home = "nowhere at all" if k == 5 else "4 Lantern Row"
        server.sql(f"INSERT INTO pupil (code, scheme, added, home, my_your, holder) VALUES ('P{k}', 'car-27', '2026-11-01', '{home}', 0, "
                   f"'{('ash', 'birch')[k % 2]}')")
    # What is written of each pupil, by whom: told by a trigger of the test's own.
    server.sql("CREATE TABLE told (pupil UUID, pid INT); GRANT ALL ON told TO PUBLIC; CREATE FUNCTION tell() RETURNS TRIGGER LANGUAGE plpgsql AS "
               "$$ BEGIN INSERT INTO told VALUES (NEW.pupil, pg_backend_pid()); RETURN NEW; END $$; CREATE TRIGGER tell AFTER UPDATE ON "
               "proposal FOR EACH ROW EXECUTE FUNCTION tell()")
    words = [program, "school", "propose", area, *DAY, "--book", elm]
    workers = [subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True) for _ in range(3)]
    while server.sql("SELECT count(*) FROM told") in ("0", "1") and any(one.poll() is None for one in workers):
        time.sleep(0.02)
    killed = next((one for one in workers if one.poll() is None), None)
    check("one is killed at work", killed is not None)
    if killed:
        killed.kill()
    told = [one.communicate()[0] for one in workers]
    check("the others do all", all("none is left" in text for one, text in zip(workers, told) if one is not killed), told)
    check("each pupil once", server.sql("SELECT count(*), count(DISTINCT pupil) FROM told") == f"{PUPILS}|{PUPILS}")
    check("by more than one", int(server.sql("SELECT count(DISTINCT pid) FROM told")) > 1)
    check("nothing is left of it", "proposed for 0 pupils" in done("once more", "school", "propose", area, *DAY, "--book", elm))

    fresh = done("shown", "lesson", "next", "P0", *DAY, "--book", ash)
    check("it is shown with when it was made", "proposed in the night, 20" in fresh and "goal:" in fresh, fresh)
    on_map = done("on the same map", "lesson", "next", "P0", "--area", area, *DAY, "--book", ash)
    check("also on the map", "proposed in the night" in on_map, on_map)
    live = done("made anew", "lesson", "next", "P0", "--area", area, *DAY, "--ahead", "2", "--book", ash)
    check("it is what is proposed on that map", on_map[:on_map.index("plan it")] in live and "in the night" not in live, (on_map, live))
    check("of another day", "in the night" not in done("of another day", "lesson", "next", "P0", "--today", "2026-12-01", "--book", ash))
    check("a door the map lacks", "the map wasn't asked" in done("no door", "lesson", "next", "P5", *DAY, "--book", birch))
    wish = pathlib.Path(folder) / "wish.txt"
    done("its words are kept", "lesson", "next", "P0", *DAY, "--keep-wish", wish, "--book", ash)
    check("as a wish", "want " in wish.read_text(encoding="utf-8"))
    planned(server, "P0", ["2026-11-29T10:00"])
    check("a plan changes nothing", "in the night" in done("planned", "lesson", "next", "P0", *DAY, "--book", ash))
    done("the record moves on", "lesson", "log", "P0", "rest 4; minutes 50", "--book", ash)
    stale = done("stale", "lesson", "next", "P0", *DAY, "--book", ash)
    check("what is older than the record isn't shown", "is older than the record" in stale and "with the school's map" not in stale, stale)
    refused("another's proposal", "there is no pupil P1", "lesson", "next", "P1", *DAY, "--book", ash)
    check("nor by SQL", server.sql("SELECT count(*) FROM proposal", login="ash") == str(PUPILS // 2))
    check("an instructor proposes for their own", f"proposed for {PUPILS // 2} pupils" in done(
        "their own", "school", "propose", area, "--today", "2026-11-28", "--book", ash))
    if parts:
        done("the record moves on", "lesson", "log", "P4", "rest 4; minutes 50", "--start", "2026-11-27T10:00", "--book", ash)
        on_the_page(area, ash, "P2", "P4")
    else:
        print("the page isn't tried: it isn't in this build")
    refused("a stranger", "no member of the school", "school", "propose", area, *DAY, "--book", server.address("stranger"))
test.end("proposals in the night: each pupil once")
