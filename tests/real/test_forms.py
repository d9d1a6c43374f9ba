#!/usr/bin/python3
"""One extract in every form it may come in gives one and the same area.

usage: test_forms.py PROGRAMS EXTRACT REGION

osmium-tool writes the forms; a shuffle with a fixed seed makes the unsorted one.
"""
import random
import subprocess
import sys
import tempfile
from pathlib import Path

from dump_text import built, printed

FORMS = ["osm", "osm.gz", "osm.bz2", "opl"]


def main():
    programs, extract, region = sys.argv[1:]
    different = []
    with tempfile.TemporaryDirectory() as folder:
        expected = printed(programs, built(programs, extract, region, folder)[0])
        files = []
        for form in FORMS:
            files.append(Path(folder) / f"town.{form}")
            subprocess.run(["osmium", "cat", extract, "-o", files[-1]], check=True,
                           stderr=subprocess.DEVNULL)
        lines = files[-1].read_text().splitlines(keepends=True)
        random.Random(1).shuffle(lines)
        files.append(Path(folder) / "shuffled.opl")
        files[-1].write_text("".join(lines))
        for file in files:
            if printed(programs, built(programs, file, region, folder)[0]) != expected:
                different.append(file.name)
    print(f"{len(expected.splitlines())} lines of dump; {len(files)} other forms, "
          f"{len(different)} differ {' '.join(different)}")
    return 1 if different else 0


if __name__ == "__main__":
    sys.exit(main())
