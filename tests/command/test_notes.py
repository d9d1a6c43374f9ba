#!/usr/bin/python3
"""Notes as an instructor keeps them: `note add`, and what the other commands make of them.

    tests/command/test_notes.py PROGRAM

In the invented town. Empty, plain, odd, bad; each check names what would be wrong.
"""
import json
import pathlib
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
PROGRAM = str(pathlib.Path(sys.argv[1]).resolve())
HOME = "54.2973,2.5988"
START = "2026-11-28T15:00"


class Town:
    def __init__(self, folder):
        self.folder = folder
        map_file = ROOT / "maps" / "quillham.osm.pbf"
        self.run("build", str(map_file), "-o", "q.area", "--region", "GB-ENG")

    def run(self, *words, code=0):
        done = subprocess.run([PROGRAM, *words], cwd=self.folder, capture_output=True,
                              encoding="utf-8", check=False)
        assert code in (done.returncode, None), f"{words}: exit {done.returncode}: {done.stderr}"
        return done

    def add(self, *words, code=0):
        return self.run("note", "add", "notes.geojson", "--area", "q.area", "--seen", "2026-10-03",
                        *words, code=code)

    def near(self, want, *words, code=0):
        return self.run("near", "q.area", "--home", HOME, "--start", START, "--within", "3",
                        "--want", want, *words, code=code).stdout

    def loops(self, *words, code=0):
        self.run("loops", "q.area", "--home", HOME, "--start", START, "--minutes", "20", "-o",
                 "loops.json", *words, code=code)
        return json.loads((self.folder / "loops.json").read_text(encoding="utf-8"))


NOTES = ("--notes", "notes.geojson")


def points_of(town):
    """Where the loop leads, as LAT,LON."""
    points = json.loads(town.run("card", "q.area", "loops.json", "--format", "geojson").stdout)
    line = next(f["geometry"]["coordinates"] for f in points["features"]
                if f["geometry"]["type"] == "LineString")
    return [f"{lat},{lon}" for lon, lat in line]


def noted_hump(town):
    before = town.near("calming", code=None)
    said = town.add("--at", HOME, "--says", "hump").stdout
    assert said == "notes.geojson: note 1 written: hump\n", said
    after = town.near("calming", *NOTES)
    assert "noted" in after and "noted 2026-10-03: hump" in after, after
    assert before != after and "noted" not in before, before


def closed_road(town):
    """A loop without notes, then one street of it closed: the new loop keeps off, the proof too."""
    town.loops("--want", "roundabout=1")
    points = points_of(town)
    at = points[len(points) // 2]
    town.run("proof", "q.area", "loops.json")
    town.add("--at", at, "--says", "closed", "--from", "2026-11-02", "--until", "2026-12-18")
    done = town.run("proof", "q.area", "loops.json", *NOTES, code=1)
    assert done.stderr == ("loopwright: loops.json: was made without notes; leave --notes out, or "
                           "make it again\n"), done.stderr
    again = town.loops("--want", "roundabout=1", *NOTES)
    assert again["notes"]["file"] == "notes.geojson" and len(again["notes"]["sha256"]) == 64
    town.run("proof", "q.area", "loops.json", *NOTES)
    for verb in ("card", "lanes", "proof"):
        town.run(verb, "q.area", "loops.json", *NOTES)
        done = town.run(verb, "q.area", "loops.json", code=1)
        assert done.stderr == ("loopwright: loops.json: was made with notes; give --notes "
                               "notes.geojson\n"), done.stderr
    said = town.run("look", "q.area", at, "--start", START, *NOTES).stdout
    assert "a learner may drive this way" not in said, said
    said = town.run("look", "q.area", at, "--start", "2027-01-04T10:00", *NOTES).stdout
    assert "a learner may drive this way" in said, said


def along_a_road(town):
    """A note from one point to another follows the road between them, bends and all."""
    town.loops("--want", "roundabout=1")
    points = points_of(town)
    town.run("note", "add", "line.geojson", "--area", "q.area", "--seen", "2026-10-03", "--at",
             points[5], "--to", points[11], "--says", "narrow", "--along")
    note, = json.loads((town.folder / "line.geojson").read_text(encoding="utf-8"))["features"]
    line = [f"{lat},{lon}" for lon, lat in note["geometry"]["coordinates"]]
    assert note["properties"]["way"] == "along" and len(line) > 2, line
    assert sum(point in line for point in points[5:12]) >= 5, (line, points[5:12])


def other_notes(town):
    town.loops("--want", "roundabout=1", *NOTES)
    town.add("--at", HOME, "--says", "hump")
    done = town.run("card", "q.area", "loops.json", *NOTES, code=1)
    assert "was made with other notes (notes.geojson, SHA-256 " in done.stderr, done.stderr


def listed_and_checked(town):
    listed = town.run("note", "list", "notes.geojson").stdout.splitlines()
    assert listed[0].split() == ["note", "says", "where", "seen", "remark"] and len(listed) == 4
    fine = town.run("note", "check", "notes.geojson", "q.area", "--today", "2026-11-28").stdout
    assert re.fullmatch(r"note 3 \(hump, \S+\): changes nothing here: another of your notes says it here "
                        r"already\nnotes.geojson: notes 3, nothing to say of 2\n", fine), fine
    old = town.run("note", "check", "notes.geojson", "q.area", "--today", "2028-01-01").stdout
    assert old.count("more than a year ago") == 3 and "can be deleted: over since 2026-12-18" in old


def remark_of_another(town):
    """What steers a terminal in a file from elsewhere is shown as a mark (ECMA-48: ESC [)."""
    file = town.folder / "odd.geojson"
    file.write_text(json.dumps({"type": "FeatureCollection", "features": [{
        "type": "Feature", "geometry": {"type": "Point", "coordinates": [2.5988, 54.2973]},
        "properties": {"says": "never", "hours": "Mo \u001b[2J", "seen": "2026-10-03", "remark": "a\nb\u001b[31m"}}]}),
        encoding="utf-8")
    listed = town.run("note", "list", "odd.geojson").stdout
    assert "\u001b" not in listed and "a b\ufffd[31m" in listed and len(listed.splitlines()) == 2, listed


def unlaid(town):
    """A note on no road of the area is told with each command, and does no harm."""
    file = town.folder / "far.geojson"
    file.write_text(json.dumps({"type": "FeatureCollection", "features": [{
        "type": "Feature", "geometry": {"type": "Point", "coordinates": [2.7, 54.2]},
        "properties": {"says": "closed", "from": "2026-11-02", "seen": "2026-10-03"}}]}),
        encoding="utf-8")
    done = town.run("look", "q.area", HOME, "--notes", "far.geojson")
    assert done.stderr == ("loopwright: far.geojson: note 1 (closed) is left out: no road that it "
                           "fits within 30 m\n"), done.stderr


def bad(town):
    before = (town.folder / "notes.geojson").read_bytes()
    for words, line in (
            (("--at", HOME, "--says", "wide"),
             "--says takes narrow, pull-up, never, closed, hump, plate, limit, practice or not, not "
             "'wide'"),
            (("--at", HOME, "--says", "narrow", "--hours", "Mo"),
             "--hours has no meaning for a note that says narrow"),
            (("--at", HOME, "--says", "plate"), "a note that says plate needs --hours"),
            (("--at", HOME, "--says", "limit", "--limit", "fast"),
             "--limit takes a number and mph or km/h, not 'fast'"),
            (("--at", HOME, "--says", "practice", "--kind", "zebras"),
             "there is no kind 'zebras'; did you mean zebra?"),
            (("--at", "54.2,2.6", "--says", "hump"),
             "not written, it would change nothing: no road that it fits within 30 m")):
        done = town.add(*words, code=2)
        assert done.stderr == f"loopwright: {line}\n", done.stderr
    done = town.run("look", "q.area", HOME, "--notes", "none.geojson", code=1)
    assert done.stderr == ("loopwright: none.geojson: no such file; make it with 'loopwright note "
                           "add'\n"), done.stderr
    done = town.run("note", "burn", code=2)
    assert done.stderr == "loopwright: note takes add, change, drop, list or check, not 'burn'\n", done.stderr
    assert (town.folder / "notes.geojson").read_bytes() == before


def told_shut(town):
    """A street noted as never driven is listed by lanes, and a home set elsewhere for it is told."""
    street = HOME
    town.run("note", "add", "never.geojson", "--area", "q.area", "--at", street, "--says", "never",
             "--hours", "Mo-Su 10:00-16:00", "--seen", "2026-10-03")
    notes = ("--notes", "never.geojson")
    for at, verdict in (("2026-11-30T12:00", "keep out"), ("2026-11-30T17:00", "may be driven")):
        said = town.run("lanes", "q.area", "--near", street, "--at", at, *notes).stdout
        said = " ".join(said.split())
        assert f"never Mo-Su 10:00-16:00: {verdict}" in said, said
    said = town.run("lanes", "q.area", "--near", street, "--day", "2026-11-30", *notes).stdout
    assert "never Mo-Su 10:00-16:00" in said, said
    done = town.run("loops", "q.area", "--home", street, "--minutes", "20", "--start",
                    "2026-11-30T12:00", "-o", "never.json", *notes)
    assert "home is set on " in done.stdout, done.stdout
    assert "since your notes keep you off " in done.stdout, done.stdout


def named_by_look(town):
    """A street that one's own note shuts says so when it is looked at, and no other street does."""
    notes = ("--notes", "never.geojson")
    for at, verdict in (("2026-11-30T12:00", "keep out"), ("2026-11-30T17:00", "may be driven")):
        said = " ".join(town.run("look", "q.area", HOME, "--start", at, *notes).stdout.split())
        assert f"your note: Lantern Row, never Mo-Su 10:00-16:00: {verdict}" in said, said
    said = town.run("look", "q.area", "Bine Close", "--start", "2026-11-30T12:00", *notes).stdout
    assert "your note" not in said, said


def plate_by_street(town):
    """A plate is noted along the only bus lane of a street that is named; of several none is guessed."""
    add = ("note", "add", "plate.geojson", "--area", "q.area", "--says", "plate", "--seen",
           "2026-10-03", "--hours", "Mo-Sa 07:00-10:00")
    said = town.run(*add, "--at", "Station Road").stdout
    assert "set along Station Road, going " in said and "note 1 written: plate" in said, said
    noted = json.loads((town.folder / "plate.geojson").read_text(encoding="utf-8"))
    assert noted["features"][0]["geometry"]["type"] == "LineString", noted
    said = town.run("lanes", "q.area", "--all", "--at", "2026-11-30T12:00", "--notes",
                    "plate.geojson").stdout
    assert said.count("Station Road, going ") == 1, said
    assert "noted 2026-10-03: plate" in " ".join(said.split()), said
    done = town.run(*add, "--at", "Bine Close", code=2)
    assert done.stderr == ("loopwright: --at: 'Bine Close': no bus lane is mapped on that street\n"
                           ), done.stderr


def main():
    with tempfile.TemporaryDirectory() as scratch:
        town = Town(pathlib.Path(scratch))
        for check in (noted_hump, closed_road, along_a_road, other_notes, listed_and_checked,
                      remark_of_another, unlaid, bad, told_shut, named_by_look, plate_by_street):
            check(town)
            print(check.__name__, "holds")


main()
