#!/usr/bin/python3
"""Streets and houses of a real map are found by what people type.

usage: test_places.py PROGRAMS EXTRACT REGION

Truth comes from osmium-tool's text of the extract, not from our area: every street name finds a
street of that name; with one letter changed, left out, doubled or swapped (fixed seed) it is among
the first three for at least 97 in 100; and 500 houses drawn at random are found within 1 m of where
the map has them (a way: the middle of the box round it, as is documented for features). Streets of one
name are all offered, also one on which the number is only inferred; one of them must be the house.
"""
import random
import re
import subprocess
import sys
import tempfile
import unicodedata
from pathlib import Path

from dump_text import built
from opl import Map

SEED, HOUSES, LEAST_SHARE = 20261128, 500, 0.97
# One metre, in units of 1e-7 degree to the north; to the east it is less by the latitude.
METRE_E7 = 1e7 / 111320


def plain(name):
    """Letters and digits alone, small, without accents: what all ways of writing share."""
    letters = unicodedata.normalize("NFKD", name.casefold())
    return re.sub(r"[^a-z0-9]", "", letters)


def asked(programs, area, lines):
    """(microseconds, meant, [(lat, lon, name)]) for each line."""
    text = subprocess.run([Path(programs) / "tests" / "loopwright_places", area],
                          input="".join(line + "\n" for line in lines), check=True,
                          stdout=subprocess.PIPE, text=True).stdout
    answers = []
    for line in text.splitlines():
        micros, meant, *found = line.split("\t")
        spots = []
        for candidate in found:
            at, name = candidate.split(" ", 1)
            spots.append((*map(int, at.split(",")), name))
        answers.append((int(micros), int(meant), spots))
    assert len(answers) == len(lines), (len(answers), len(lines))
    return answers


def slip(name, draw):
    """The name with one slip of the finger in its letters."""
    places = [i for i, letter in enumerate(name) if letter.isalpha()]
    at = draw.choice(places)
    kind = draw.choice(["change", "drop", "swap"])
    if kind == "swap" and at + 1 < len(name) and name[at + 1] not in (name[at], " "):
        return name[:at] + name[at + 1] + name[at] + name[at + 2:]
    if kind == "drop":
        return name[:at] + name[at + 1:]
    others = [letter for letter in "abcdefghijklmnopqrstuvwxyz" if letter != name[at].lower()]
    return name[:at] + draw.choice(others) + name[at + 1:]


def street_names(town):
    """Distinct names of roads at least two of whose points are in the extract."""
    return sorted({way.tags["name"] for number, way in town.ways.items()
                   if town.is_road(number) and "name" in way.tags
                   and sum(node in town.places for node in way.nodes) >= 2})


def middle(town, way):
    spots = [town.places[node] for node in way.nodes if node in town.places]
    lats, lons = [lat for lat, _ in spots], [lon for _, lon in spots]
    return (min(lats) + max(lats)) / 2, (min(lons) + max(lons)) / 2


def houses_of(town):
    """{(number, street): [(lat, lon)]} of nodes and ways with plain numbers, or lists of them."""
    houses = {}
    tagged = [(tags, town.places[number]) for number, tags in town.nodes.items()]
    tagged += [(way.tags, middle(town, way)) for way in town.ways.values()
               if any(node in town.places for node in way.nodes)]
    for tags, at in tagged:
        street = tags.get("addr:street", "")
        for number in re.split("[;,]", tags.get("addr:housenumber", "")):
            if street and re.fullmatch(r"[0-9]+[A-Za-z]?", number.strip()):
                houses.setdefault((number.strip(), street), []).append(at)
    return houses


def near(spot, at):
    return (abs(spot[0] - at[0] * 1e7) <= METRE_E7 and abs(spot[1] - at[1] * 1e7) <= METRE_E7)


def main():
    programs, extract, region = sys.argv[1:]
    town, draw = Map(extract), random.Random(SEED)
    names = street_names(town)
    slips = [slip(name, draw) for name in names]
    houses = houses_of(town)
    drawn = draw.sample(sorted(houses), min(HOUSES, len(houses)))
    with tempfile.TemporaryDirectory() as folder:
        area, _ = built(programs, extract, region, folder)
        exact = asked(programs, area, names)
        slipped = asked(programs, area, slips)
        housed = asked(programs, area, [f"{number} {street}" for number, street in drawn])
    lost = [name for name, (_, meant, spots) in zip(names, exact)
            if not meant or plain(name) not in {plain(found) for *_, found in spots[:meant]}]
    found = [plain(name) in {plain(spot[2]) for spot in spots[:3]}
             for name, (_, _, spots) in zip(names, slipped)]
    astray = [key for key, (_, meant, spots) in zip(drawn, housed)
              if not any(near(spot, at) for at in houses[key] for spot in spots[:meant])]
    times = sorted(micros for micros, _, _ in exact + slipped + housed)
    share = sum(found) / max(len(found), 1)
    print(f"{len(names)} streets, {len(lost)} not found by their name {lost[:5]}; with a slip "
          f"{100 * share:.2f} % among the first three; {len(drawn)} houses of {len(houses)}, "
          f"{len(astray)} not where the map has them {astray[:5]}; a look-up took "
          f"{times[len(times) // 2] / 1000:.1f} ms, at most {times[-1] / 1000:.1f} ms")
    for name, typed, ok in zip(names, slips, found):
        if not ok:
            print(f"  not among the first three: {typed} ({name})")
    return 1 if lost or astray or share < LEAST_SHARE or not drawn else 0


if __name__ == "__main__":
    sys.exit(main())
