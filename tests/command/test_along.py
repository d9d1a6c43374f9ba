#!/usr/bin/python3
"""The instructor's own route: places by the words they were typed with, the exact minute of a better
start, the street that a place is set on, and what was kept out of by the clock.

    tests/command/test_along.py PROGRAM

Checked against the program's own refusals: at the start it names there is a drive, at every minute
nearer to the one asked, earlier or later, there is none.
"""
import pathlib
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
COSTARD = "54.29685,2.58185;54.2964,2.58443;54.29667,2.58644;54.29775,2.58998"
INTO_FRIARS = "54.3060,2.6007;Friars Row"
failures = []


def along(program, folder, route, start, *more):
    done = subprocess.run([program, "lanes", "q.area", "--along", route, "--start", start, *more],
                          cwd=folder, capture_output=True, encoding="utf-8", check=False)
    return done.returncode, " ".join((done.stdout + done.stderr).split())


def expect(holds, what, text):
    if not holds:
        failures.append(f"{what}\n    {text}")


def clock(minutes):
    return f"{minutes // 60:02}:{minutes % 60:02}"


def check_exact_minute(program, folder, route, day, asked):
    """asked: minutes after midnight."""
    code, text = along(program, folder, route, f"{day}T{clock(asked)}")
    told = re.search(r"leave .* (earlier|later), at (\d\d):(\d\d), and there is one", text)
    expect(code == 4 and told, f"{route} at {clock(asked)}: no other start", text)
    if not told:
        return
    other = int(told[2]) * 60 + int(told[3])
    off = abs(other - asked)
    code, text = along(program, folder, route, f"{day}T{clock(other)}")
    expect(code == 0, f"{route}: no drive at {clock(other)}, which is said to have one", text)
    for nearer in {asked - off + 1, asked + off - 1, asked - off // 2, asked + off // 2}:
        code, text = along(program, folder, route, f"{day}T{clock(nearer)}")
        expect(code == 4, f"{route}: {clock(nearer)} is nearer than {clock(other)}", text)


def check_names(program, folder):
    code, text = along(program, folder, "54.3060,2.6007;Friars Row;54.2990,2.6025", "2026-11-30T08:30")
    expect(code == 4 and "no way from 54.3060,2.6007 to Friars Row that a learner may drive;" in text,
           "the places aren't called as they were typed", text)
    code, text = along(program, folder, INTO_FRIARS, "2026-11-30T08:30")
    expect(code == 4 and "the road at Friars Row can't be driven: Friars Row is shut" in text,
           "the last place isn't called as it was typed", text)
    code, text = along(program, folder, "Friars Row;54.2990,2.6025", "2026-11-30T08:30")
    expect("home" not in text and "the end" not in text and "point" not in text,
           "home, point and end are nothing the instructor typed", text)
    code, text = along(program, folder, "54.3060,2.6007;54.4,2.7;54.2990,2.6025", "2026-11-30T08:30")
    expect(code == 2 and "--along: 54.4,2.7 is over 150 m from any road a learner may use" in text,
           "a place off the roads isn't refused by its name", text)


# A place at the corner J, in metres: Shut Street goes north, Down Lane comes back from its end, so that
# it is only reached by Shut Street. Fore Street cuts a corner of Main Road.
NODES = {"A": (-600, 0), "J": (0, 0), "B": (300, 0), "E": (900, 0), "F": (900, -500), "C": (0, -900),
         "N": (-5, 200)}
WAYS = [("Main Road", "AJB", {}), ("Main Road", "BEFCA", {}),
        ("Shut Street", "JN", {"motor_vehicle:conditional": "no @ (Mo-Fr 08:00-09:00)"}),
        ("Down Lane", "NJ", {"oneway": "yes"}), ("Fore Street", "BF", {})]


def degrees(x, y):
    return 54.3 + y / 111_200, 2.6 + x / 64_890


def place(x, y):
    return "%.6f,%.6f" % degrees(x, y)


def town(fore, relation=""):
    lines = ['<osm version="0.6">']
    ids = {name: k + 1 for k, name in enumerate(NODES)}
    for name, at in NODES.items():
        lines.append('<node id="%d" version="1" lat="%.7f" lon="%.7f"/>' % (ids[name], *degrees(*at)))
    lines.append('<node id="20" version="1" lat="%.7f" lon="%.7f"/>' % degrees(15, 100))
    for k, (name, letters, tags) in enumerate(WAYS):
        nodes = [ids[letter] for letter in letters]
        if name == "Down Lane":
            nodes.insert(1, 20)
        tags = {"highway": "residential", "name": name, **tags, **(fore if name == "Fore Street" else {})}
        lines.append(f'<way id="{k + 1}" version="1">' + "".join(f'<nd ref="{n}"/>' for n in nodes) +
                     "".join(f'<tag k="{key}" v="{value}"/>' for key, value in tags.items()) + "</way>")
    return "\n".join([*lines, relation, "</osm>"])


BAN = ('<relation id="1" version="1"><member type="way" ref="1" role="from"/><member type="node" '
       'ref="3" role="via"/><member type="way" ref="5" role="to"/><tag k="type" v="restriction"/>'
       '<tag k="restriction:conditional" v="no_right_turn @ (Mo-Fr 07:00-10:00)"/></relation>')


def drawn(program, folder, text):
    (folder / "town.osm").write_text(text, encoding="utf-8")
    subprocess.run([program, "build", "town.osm", "-o", "q.area", "--region", "GB-ENG"], cwd=folder,
                   check=True, stdout=subprocess.DEVNULL)


def check_place_beside(program, folder):
    """Down Lane is as near to the place as Shut Street, but only reached by it: Main Road is right."""
    drawn(program, folder, town({}))
    corner = f"{place(-300, 0)};{place(-2, 4)};{place(200, 0)}"
    code, text = along(program, folder, corner, "2026-11-30T08:30")
    expect(code == 0 and f"{place(-2, 4)} is set on Main Road, since Shut Street is shut Monday to "
           "Friday, eight till nine" in text, "the place isn't set where the drive can go on", text)
    code, text = along(program, folder, corner, "2026-11-30T09:30")
    expect(code == 0 and "is set on" not in text, "an open street is left", text)


def check_avoided(program, folder):
    route = f"{place(100, 0)};{place(900, -600)}"
    shut = {"motor_vehicle:conditional": "no @ (Mo-Fr 08:00-09:30)"}
    doubtful = {"motor_vehicle:conditional": "no @ (Mo-Fr 08:00-09:30; SH off)"}
    for fore, relation, said in (
            (shut, "", "kept out of Fore Street, which is shut until 09:30; that way is "),
            (doubtful, "", "kept out of Fore Street, which may be shut until 09:30; that way is "),
            ({}, BAN, "kept out of the turn into Fore Street, which is banned until 10:00; that way is ")):
        drawn(program, folder, town(fore, relation))
        code, text = along(program, folder, route, "2026-11-30T08:30")
        expect(code == 0 and said in text, "what was kept out of isn't told", text)
        code, text = along(program, folder, route, "2026-11-30T10:30")
        expect(code == 0 and "kept out" not in text and "Fore Street" in text,
               "kept out of an open street", text)
    code, text = along(program, folder, f"{place(-300, 0)};{place(-100, 0)}", "2026-11-30T08:30")
    expect(code == 0 and "kept out" not in text, "kept out of a street not on the way", text)


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        county = ROOT / "maps" / "quillham.osm.pbf"
        subprocess.run([program, "build", county, "-o", "q.area", "--region", "GB-ENG"], cwd=folder,
                       check=True, stdout=subprocess.DEVNULL)
        check_names(program, folder)
        check_exact_minute(program, folder, COSTARD, "2026-11-30", 8 * 60 + 33)
        check_exact_minute(program, folder, INTO_FRIARS, "2026-11-30", 8 * 60 + 31)
        check_place_beside(program, folder)
        check_avoided(program, folder)
    for failure in failures:
        print(failure)
    print(f"own routes: failed {len(failures)}")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
