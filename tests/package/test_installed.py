#!/usr/bin/python3
"""`cmake --install` into a folder of its own, and the three examples.

    tests/package/test_installed.py BUILD SOURCES

What is installed must do the main job from there, find its reader of elevation grids, and serve CMake's find_package:
the first example is built against it. What the examples print is held to the county's truth table, to the caps of
src/rules/caps.txt and to the program's own proof. The whole, in a clean Debian: tools/package."""
import csv
import pathlib
import re
import subprocess
import sys
import tempfile

BUILD, SOURCES = (pathlib.Path(word).resolve() for word in sys.argv[1:3])
MAP = SOURCES / "maps/quillham.osm.pbf"
HOME = ("54.2973", "2.5988")


def run(*words, **more):
    done = subprocess.run([str(word) for word in words], stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                          encoding="utf-8", check=False, **more)
    assert done.returncode == 0, f"{words}: exit {done.returncode}\n{done.stdout[-2000:]}"
    return done.stdout


def test_installed(folder, area):
    prefix = folder / "prefix"
    for part in ("program", "heights", "development"):
        run("cmake", "--install", BUILD, "--prefix", prefix, "--component", part)
    program = prefix / "bin/loopwright"
    assert run(program, "--version") == run(BUILD / "loopwright", "--version")
    (folder / "N54E002.hgt").write_bytes(bytes(2 * 1201 * 1201))  # SRTM, three seconds: a sea that is flat everywhere
    heights = prefix / "lib/loopwright/modules/loopwright_heights.so"
    run(program, "build", MAP, "-o", area, "--region", "GB-ENG", "--motorways", "--fords",
        *(("--heights", folder / "N54E002.hgt") if heights.exists() else ()))
    run(program, "look", area, "4 Lantern Row", "--verify")
    for file in ("share/man/man1/loopwright-loops.1.gz", "share/bash-completion/completions/loopwright",
                 "share/fish/vendor_completions.d/loopwright.fish", "share/doc/loopwright/copyright"):
        assert (prefix / file).stat().st_size > 100, file
    made = folder / "made"
    run("cmake", "-S", SOURCES / "tools/examples", "-B", made, f"-DCMAKE_PREFIX_PATH={prefix}", "-DCMAKE_BUILD_TYPE=Debug")
    assert f"loopwright_DIR:PATH={prefix}" in (made / "CMakeCache.txt").read_text()
    run("cmake", "--build", made, "--target", "what_is_there")
    assert run(made / "what_is_there", area) == run(BUILD / "tools/examples/what_is_there", area)


def truth():
    """Of each kind that has a line of its own at a point: how many must be found, how many may be besides."""
    counts = {}
    with open(SOURCES / "maps/quillham-truth.tsv", encoding="utf-8") as lines:
        for row in csv.reader(lines, delimiter="\t", quoting=csv.QUOTE_NONE):
            if len(row) > 2 and row[2] == "at":
                for kind in row[1].split("+"):
                    must, may = counts.get(kind, (0, 0))
                    alone = row[0] == "must" and "+" not in row[1]
                    counts[kind] = (must + alone, may + (not alone))
    return counts


def test_what_is_there(area):
    printed = {kind: int(places) for kind, places, _ in
               (line.split() for line in run(BUILD / "tools/examples/what_is_there", area).splitlines())}
    for kind, (must, may) in truth().items():
        if must:
            # Points close together are one place: half as many at least.
            assert must / 2 <= printed.get(kind, 0) <= must + may, (kind, printed.get(kind), must, may)


def test_loop_in_words(area):
    lines = run(BUILD / "tools/examples/loop_in_words", area, *HOME, "2026-11-28T15:00").splitlines()
    assert lines[0].startswith("Plan when parked."), lines[0]
    assert sum("roundabout" in line for line in lines) >= 2, lines
    assert lines[-2].startswith("pull up on the left"), lines[-2]
    assert int(re.fullmatch(r"(\d+) claims proved", lines[-1])[1]) > 1000, lines[-1]


def test_fair_day(area):
    caps = (SOURCES / "src/rules/caps.txt").read_text(encoding="utf-8")
    cap = int(re.search(r"^street passes a day *\| *(\d+)", caps, re.MULTILINE)[1])
    without, kept = run(BUILD / "tools/examples/fair_day", area, *HOME, "2026-11-26").splitlines()
    most = [int(re.search(r"driven (\d+) times$", line)[1]) for line in (without, kept)]
    assert without.startswith("without memory: 8 of 8 lessons met"), without
    assert kept.startswith("with memory: 8 of 8 lessons met"), kept
    assert most[1] <= cap < most[0], (most, cap)


with tempfile.TemporaryDirectory() as name:
    area_file = pathlib.Path(name, "quillham.area")
    test_installed(pathlib.Path(name), area_file)
    test_what_is_there(area_file)
    test_loop_in_words(area_file)
    test_fair_day(area_file)
print("installed, it does its job from there; the examples say what is so")
