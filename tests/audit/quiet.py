"""Quiet residential streets, as far as tags leave no doubt.

DEVELOPERS.md, Law: a quiet residential street is residential, living street or unclassified in a built-up
area, limited to 30 at most, without a bus route. A limit of 30 tells of the built-up area.
"""
from functools import cache, cached_property

from limits import TYPES

CLASSES = ("residential", "living_street", "unclassified")
MOST = {"mph": 30, "km/h": 50}
BUS_ROUTES = {"bus", "trolleybus"}  # Relation:route


class Quiet:
    """Asks the limits' reader; every answer is True, False, or None where the tags leave it open."""

    def __init__(self, ground, limits):
        self.ground, self.limits = ground, limits

    @cached_property
    def bus_ways(self):
        return {ref for relation in self.ground.map.relations.values()
                if relation.tags.get("type") == "route" and relation.tags.get("route") in BUS_ROUTES
                for kind, ref, _ in relation.members if kind == "w"}

    @cache
    def of(self, way):
        if way not in self.ground.roads or self.ground.tags(way)["highway"] not in CLASSES:
            return False
        if way in self.bus_ways:
            return False
        slow = {self._is_slow(way, direction) for direction in ("along", "against")}
        return slow.pop() if len(slow) == 1 else False if False in slow else None

    def _is_slow(self, way, direction):
        able = self.limits.able(way, direction)
        if able is not None:
            said = {self._is_low(value, unit) for value, unit in able}
            return said.pop() if len(said) == 1 else None
        tags = self.ground.tags(way)
        kind = tags.get("maxspeed:type", tags.get("source:maxspeed", ""))
        return TYPES[kind] <= MOST["mph"] if kind in TYPES else None  # a default hangs on much else

    def _is_low(self, value, unit):
        """A bare number in Britain is nearly always a slip for mph (MAP-TAGS.md 1.1): it may be either."""
        as_mph = value <= MOST["mph"]
        doubtful = unit == "km/h" and self.ground.region.startswith("GB")
        return value <= MOST[unit] if not doubtful or as_mph == (value <= MOST[unit]) else None
