"""Gives every object of a map another id, so that ids say nothing of where things lie: a country's map is so, since its
roads were drawn over twenty years, while a drawn county's ids run along its streets.

    scatter(Path("town.osm.pbf"), Path("scattered.osm.pbf"))

Method: an id times a number that isn't a multiple of the prime 2^31 - 1, modulo that prime: no two ids of a kind meet that
lie less than the prime apart.
The map is written and read as OPL (osmium-tool), a line an object.
"""
import re
import subprocess

PRIME, FACTOR = (1 << 31) - 1, 1103515245
REF = re.compile(r"(?<![^ ,NM])([nwr])(\d+)")


def other(kind_and_id):
    kind, number = kind_and_id.groups()
    return f"{kind}{int(number) * FACTOR % PRIME + 1}"


def scattered(line):
    """Ids stand first in the line, and in the lists of a way's nodes (N…) and a relation's members (M…)."""
    fields = line.split(" ")
    lists = {"w": "N", "r": "M"}.get(line[:1])
    return " ".join(REF.sub(other, field) if place == 0 or field[:1] == lists else field
                    for place, field in enumerate(fields))


def scatter(extract, to):
    plain = to.with_suffix(".opl")
    read = subprocess.Popen(["osmium", "cat", extract, "-f", "opl", "-o", "-"], stdout=subprocess.PIPE, text=True)
    with open(plain, "w", encoding="utf-8") as out:
        out.writelines(scattered(line) for line in read.stdout)
    if read.wait():
        raise SystemExit(f"{extract}: osmium can't read it")
    subprocess.run(["osmium", "sort", plain, "-o", to, "--overwrite"], check=True)
    plain.unlink()
