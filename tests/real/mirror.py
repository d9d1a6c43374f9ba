"""A map as a mirror shows it, east and west changed over: for a country that drives on the other side.

usage: mirror.py EXTRACT TO.osm.pbf

Nodes are mirrored about the middle of the map, to the last of their seven decimals; left and right
change over in keys and in values that aren't words for people, lists of lanes run the other way, and
bearings and the sense of a ring are turned. The order of a way's nodes stays: a ring that went
clockwise goes anticlockwise then, as it must.
"""
import re
import subprocess
import sys

from opl import plain

# Keys whose values are words for people, numbers of other registers or the like.
FOR_PEOPLE = re.compile(
    r"(name|addr|ref|note|description|source|operator|website|url|destination|fixme|inscription|"
    r"opening_hours|naptan:(?!Bearing))")
SWAPPED = {"left": "right", "right": "left", "clockwise": "anticlockwise",
           "anticlockwise": "clockwise", "counterclockwise": "clockwise"}
WORD = re.compile(r"(?<![a-zA-Z])(left|right|clockwise|anticlockwise|counterclockwise)(?![a-zA-Z])")
BEARING = re.compile(r"[NESW]{1,3}$")
PER_E7 = 10_000_000


def other_way(text):
    return WORD.sub(lambda word: SWAPPED[word[0]], text)


def mirrored_bearing(value):
    if BEARING.match(value):
        return value.translate(str.maketrans("EW", "WE"))
    return str((360 - int(value)) % 360) if value.isdigit() else other_way(value)


def mirrored_lanes(value):
    """'left|through' and 'yes|no @ (Mo-Fr)': the list the other way, its condition as it is."""
    def turned(rule):
        lanes, at, condition = rule.partition("@")
        blank = " " if lanes.endswith(" ") else ""
        return "|".join(reversed(other_way(lanes).rstrip().split("|"))) + blank + at + condition
    # Semicolons part rules only behind a condition; in a plain list they part arrows of one lane.
    return ";".join(turned(rule) for rule in re.split(r"(?<=\));", value))


def mirrored_tag(key, value):
    parts = key.split(":")
    new_key = ":".join(SWAPPED.get(part, part) for part in parts)
    if "lanes" in parts[1:] and "|" in value:
        return new_key, mirrored_lanes(value)
    if FOR_PEOPLE.match(key):
        return new_key, value
    if parts[-1] in ("direction", "Bearing"):
        return new_key, mirrored_bearing(value)
    return new_key, other_way(value)


def escaped(text):
    """As OPL wants it: all but plain letters, digits and a few signs as %code%."""
    return "".join(c if c.isascii() and (c.isalnum() or c in "-_:.;|()/'+*&!?[]<>~^") else
                   f"%{ord(c):x}%" for c in text)


def mirrored_field(field):
    tags = (tag.split("=", 1) for tag in field[1:].split(",") if tag)
    pairs = (mirrored_tag(plain(key), plain(value)) for key, value in tags)
    return "T" + ",".join(f"{escaped(key)}={escaped(value)}" for key, value in pairs)


def in_e7(text):
    return round(float(text) * PER_E7)


class Mirror:
    """Mirrors the lines of an OPL text, and points beside them."""

    def __init__(self, lines):
        self.lines = lines
        east = [in_e7(x[1]) for x in map(re.compile(r" x(-?[0-9.]+)").search, lines) if x]
        self.sum_e7 = min(east) + max(east)

    def longitude(self, text):
        return f"{(self.sum_e7 - in_e7(text)) / PER_E7:.7f}"

    def line(self, line):
        def field(text):
            if text.startswith("T"):
                return mirrored_field(text)
            if line[0] == "n" and text.startswith("x") and len(text) > 1:
                return "x" + self.longitude(text[1:])
            return text
        return " ".join(field(text) for text in line.split(" "))

    def text(self):
        return "".join(self.line(line) + "\n" for line in self.lines)


def mirror_of(extract):
    text = subprocess.run(["osmium", "cat", extract, "-f", "opl"], check=True,
                          stdout=subprocess.PIPE, text=True).stdout
    return Mirror(text.splitlines())


def write(mirror, path):
    subprocess.run(["osmium", "cat", "-F", "opl", "-", "-o", path, "--overwrite"], check=True,
                   input=mirror.text(), text=True)


if __name__ == "__main__":
    write(mirror_of(sys.argv[1]), sys.argv[2])
