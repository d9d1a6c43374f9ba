"""The speed limit told of each stretch, from the raw tags. OSM wiki, Key:maxspeed, Key:maxspeed:type;
Highway Code rule 124; the Restricted Roads (20 mph Speed Limit) (Wales) Order 2022.
"""
import re
from functools import cache

from second_reader import clauses

NUMBER = re.compile(r"^\s*(\d+(?:\.\d+)?)\s*(mph|km/h|kmh|kph)?\s*$", re.I)
WELSH_20 = "2023-09-17"
# Car limits by what the type says (Highway Code rule 124), mph.
TYPES = {"GB:nsl_single": 60, "GB:nsl_dual": 70, "GB:motorway": 70, "GB:zone20": 20, "GB:zone30": 30,
         "GB:zone40": 40}
DEFAULTS = {"mph": {20, 30, 60, 70}, "km/h": {7, 50, 80, 100, 120}}


def parsed(text):
    """(value, unit) of a number on a sign; a bare one is km/h by the wiki."""
    said = NUMBER.match(text)
    if not said:
        return None
    return float(said[1]), "mph" if (said[2] or "").lower() == "mph" else "km/h"


class Limits:
    def __init__(self, ground):
        self.ground = ground

    @cache
    def told(self, way, direction):
        """(text of the plain limit, texts of the conditional ones) in a direction."""
        tags, suffix = self.ground.tags(way), ":" + self.ground.suffix(direction)
        plain = tags.get("maxspeed" + suffix, tags.get("maxspeed"))
        hours = [tags[key] for key in ("maxspeed" + suffix + ":conditional", "maxspeed:conditional")
                 if key in tags]
        return plain, hours

    @cache
    def able(self, way, direction):
        """Values that the tags bear, as (value, unit), None when they leave it to a default."""
        plain, hours = self.told(way, direction)
        texts = [plain] + [value for text in hours for value, _ in clauses(text)]
        return [number for number in map(parsed, filter(None, texts)) if number] or None

    def is_borne_out(self, way, direction, limit):
        told = limit["value"], limit["unit"]
        if limit["confidence"] == "noted":
            return bool(self.ground.noted.notes)  # by which one: noted.py
        tags = self.ground.tags(way)
        able = self.able(way, direction)
        plain, _ = self.told(way, direction)
        if plain == "walk" and told in ((5, "mph"), (7, "km/h")):
            # Walking pace (Key:maxspeed), a limit that British law doesn't know: never certain there.
            return not self.ground.region.startswith("GB") or limit["confidence"] == "check"
        # Outside its hours a default; and where the number can't be read.
        if able is None or (told not in able and not parsed(plain or "")):
            kind = tags.get("maxspeed:type", tags.get("source:maxspeed", ""))
            if kind in TYPES:
                return told == (TYPES[kind], "mph")
            return told[0] in DEFAULTS[told[1]]
        if told in able:
            return True
        if self.ground.region == "GB-WLS" and limit["confidence"] == "check":
            return told == (20, "mph") and (30.0, "mph") in able
        # A bare number in Britain is nearly always a slip for mph (MAP-TAGS.md 1.1): never certain.
        return limit["confidence"] == "check" and told[0] in {value for value, _ in able}

    def check(self, tally, i, stretch):
        way, direction = stretch["way"], stretch["direction"]
        tally.check("limit", self.is_borne_out(way, direction, stretch["limit"]),
                    f"stretch {i}: {stretch['limit']}, way/{way} says {self.told(way, direction)}")
