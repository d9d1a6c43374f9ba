#!/usr/bin/python3
"""Building a part of an extract, and bringing an extract up to date, as README.md tells it.

    tests/command/test_cut.py PROGRAM

The same outline said in three ways gives the same area. A lesson in it is proved. Changes of a map (.osc) are refused as
a map, and taken when osmium-tool, a reader and writer of the same files from outside this project, has laid them on one."""
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

PROGRAM = pathlib.Path(sys.argv[1]).resolve()
MAP = pathlib.Path(__file__).resolve().parents[2] / "maps/quillham.osm.pbf"
SOUTH, WEST, NORTH, EAST = 54.285, 2.58, 54.31, 2.62
CORNERS = [(SOUTH, WEST), (SOUTH, EAST), (NORTH, EAST), (NORTH, WEST), (SOUTH, WEST)]


def run(*words, code=0):
    done = subprocess.run([str(word) for word in words], stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                          encoding="utf-8", check=False)
    assert done.returncode == code, f"{words}: exit {done.returncode}\n{done.stdout[-1500:]}"
    return done.stdout


def build(folder, name, *words, map_file=MAP):
    """The first line without the file's name: region, side, id."""
    area = folder / f"{name}.area"
    return run(PROGRAM, "build", map_file, "-o", area, "--region", "GB-ENG", *words).splitlines()[0].split(": ", 1)[1]


def test_one_outline_three_ways(folder):
    (folder / "a.poly").write_text("a\n1\n" + "".join(f"  {lon} {lat}\n" for lat, lon in CORNERS) + "END\nEND\n")
    ring = [[lon, lat] for lat, lon in CORNERS]
    (folder / "a.geojson").write_text(json.dumps({"type": "Polygon", "coordinates": [ring]}))
    bounds = build(folder, "bounds", "--bounds", f"{NORTH},{WEST};{SOUTH},{EAST}")
    assert bounds == build(folder, "poly", "--outline", folder / "a.poly")
    assert bounds == build(folder, "geojson", "--outline", folder / "a.geojson")
    assert bounds != build(folder, "whole")
    assert (folder / "bounds.area").stat().st_size < 0.7 * (folder / "whole.area").stat().st_size


def test_lesson(folder):
    area, loops = folder / "bounds.area", folder / "l.json"
    run(PROGRAM, "loops", area, "--home", "4 Lantern Row", "--minutes", "40", "--start", "2026-11-28T15:00", "--quick",
        "--want", "roundabout=2", "-o", loops)
    run(PROGRAM, "proof", area, loops)
    run(PROGRAM, "card", area, loops, "--format", "geojson", "-o", folder / "l.geojson")
    driven = [at for feature in json.loads((folder / "l.geojson").read_text())["features"]
              if feature["geometry"]["type"] == "LineString" for at in feature["geometry"]["coordinates"]]
    assert len(driven) > 100
    for lon, lat in driven:
        assert SOUTH <= lat <= NORTH and WEST <= lon <= EAST, (lat, lon)


def test_changes(folder):
    if not shutil.which("osmium"):
        print("osmium isn't installed: passed over")
        return
    found = run("osmium", "tags-filter", "-R", MAP, "w/name=Lantern Row", "-f", "osm", "-o", "-")
    start = found.index("<way ")
    way = found[start:found.index("</way>", start) + len("</way>")]
    number = way.split('id="')[1].split('"')[0]
    later, changed = re.subn('(k="maxspeed" v=")[^"]*', r"\g<1>15 mph", way.replace('version="1"', 'version="2"'))
    assert changed == 1, way
    changes = folder / "day.osc"
    changes.write_text(f'<osmChange version="0.6" generator="test"><modify>{later}</modify></osmChange>\n')
    line = run(PROGRAM, "build", changes, "-o", folder / "no.area", "--region", "GB-ENG", code=1)
    assert line == (f"loopwright: {changes}: holds changes, not a map; lay them on the map they belong to with "
                    "'osmium apply-changes' and build from that\n"), line
    run("osmium", "apply-changes", MAP, changes, "-o", folder / "new.osm.pbf")
    build(folder, "new", map_file=folder / "new.osm.pbf")
    assert "limit: 15 mph" not in run(PROGRAM, "look", folder / "whole.area", f"way/{number}")
    assert "limit: 15 mph" in run(PROGRAM, "look", folder / "new.area", f"way/{number}")


with tempfile.TemporaryDirectory() as name:
    test_one_outline_three_ways(pathlib.Path(name))
    test_lesson(pathlib.Path(name))
    test_changes(pathlib.Path(name))
print("a part of an extract, and one brought up to date, build as they should")
