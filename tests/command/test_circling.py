#!/usr/bin/python3
"""No minutes are used up by going round and round: on a roundabout a drive comes back to where it came onto it once at
most, all the way round. Nobody can say "the tenth exit" (common practice, no source).

    tests/command/test_circling.py PROGRAM

Read from the raw map: which ways are rings by their tags (OSM wiki, Tag:junction=roundabout and Tag:junction=circular).
"""
import json
import pathlib
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
COUNTY = ROOT / "maps" / "quillham.osm.pbf"
WISHES = [("30", "roundabout=max"), ("60", "roundabout=max"), ("60", "emerge=max", "roundabout=4")]


def rings():
    """Ways of the map that are rings."""
    text = subprocess.run(["osmium", "tags-filter", COUNTY, "w/junction=roundabout,circular", "-R", "-f", "opl"],
                          capture_output=True, encoding="utf-8", check=True).stdout
    return {int(re.match(r"w(\d+) ", line)[1]) for line in text.splitlines()}


def circlings(loop, ring):
    onto, count = None, 0
    for row in loop["stretches"]:
        here = row["way"], row["from"], row["to"]
        if row["way"] not in ring:
            onto = None
        elif onto is None:
            onto = here
        elif here == onto:
            count += 1
    return count


def main():
    program, ring, failures = pathlib.Path(sys.argv[1]).resolve(), rings(), []
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run([program, "build", COUNTY, "-o", "q.area", "--region", "GB-ENG"], cwd=folder,
                       stdout=subprocess.DEVNULL, check=True)
        for minutes, *wants in WISHES:
            words = [word for want in wants for word in ("--want", want)]
            subprocess.run([program, "loops", "q.area", "--home", "4 Lantern Row", "--start", "2026-11-28T15:00",
                            "--minutes", minutes, *words, "--soon", "-o", "loops.json"], cwd=folder,
                           stdout=subprocess.DEVNULL, check=True)
            loops = json.loads(pathlib.Path(folder, "loops.json").read_text(encoding="utf-8"))["loops"]
            rows = sum(row["way"] in ring for loop in loops for row in loop["stretches"])
            if not rows:
                failures.append(f"{minutes} min, {wants}: no roundabout is driven, so nothing is tried")
            for loop in loops:
                if count := circlings(loop, ring):
                    failures.append(f"{minutes} min, {wants}: loop {loop['id']} goes round {count} times too often")
    print("\n".join(failures) or "no roundabout is driven round more than once")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
