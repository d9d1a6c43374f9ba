"""The files a wish may name, read from their plain forms (DEVELOPERS.md: NOTES FILE, --terms, the ledger)."""
import hashlib
import json
from collections import namedtuple
from datetime import date, timedelta

MONTH_DAYS = 30  # DEVELOPERS.md, Spacing and caps: the 30 days that end with the lesson's

# number in its file from 1; says; points (lat, lon); properties
Note = namedtuple("Note", "number says line own")


def notes_of(path):
    """The notes of a GeoJSON file (RFC 7946: longitude first), in its order."""
    features = json.loads(path.read_text(encoding="utf-8"))["features"]
    notes = []
    for number, feature in enumerate(features, 1):
        shape, own = feature["geometry"], feature["properties"]
        points = [shape["coordinates"]] if shape["type"] == "Point" else shape["coordinates"]
        notes.append(Note(number, own["says"], [(lat, lon) for lon, lat, *_ in points], own))
    return notes


def sha256_of(path):
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _lines(path):
    """The words of each line that says something."""
    text = path.read_text(encoding="utf-8-sig")
    return [words for words in (line.split("#")[0].split() for line in text.splitlines()) if words]


def terms_of(path):
    """(first, last) school day of each part of a term, as dates, in order."""
    return [tuple(map(date.fromisoformat, words[:2])) for words in _lines(path)]


def use_of(path, day):
    """way -> (today, month): drives on other lessons of that day, and of the 30 days that end with it."""
    uses = {}
    for when, way, times in _lines(path):
        ago = day - date.fromisoformat(when)
        if timedelta(0) <= ago < timedelta(MONTH_DAYS):
            today, month = uses.get(int(way), (0, 0))
            uses[int(way)] = today + (int(times) if not ago else 0), month + int(times)
    return uses
