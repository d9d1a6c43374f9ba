"""The raw map as a drive needs it: may a learner's car go here, in this direction, at this time?

Tags are read by the second reader (tests/real/second_reader.py); this adds the clock. Sources: OSM wiki
Key:access, Key:oneway, Key:barrier, Conditional restrictions.
"""
from functools import cache, cached_property

from geo import along
from second_reader import HEADING_M, MODES, OPEN, Reader, bearing, words

DOOR_M = 150


class Ground(Reader):
    def __init__(self, extract, region, clock):
        super().__init__(extract, region)
        self.clock = clock
        self.left = region.startswith("GB") or region == "IE"  # drives on the left

    @cache
    def door_steps(self, place):
        """(metres, a, b) of the steps a door may lie on, the nearest first: of streets in use at most 150 m
        away, else of service roads (DEVELOPERS.md, Place)."""
        near = {True: set(), False: set()}
        for off, way, a, b in self.steps_near(place, 3):
            if off <= DOOR_M and ((a, b) in self.joined or (b, a) in self.joined):
                near[self.tags(way)["highway"] != "service"].add((off, a, b))
        return sorted(near[True] or near[False])

    def heading(self, nodes):
        """The bearing in which a line of nodes leaves the first, over its first 15 metres."""
        places = [self.at(n) for n in nodes]
        return bearing(places[0], along(places, HEADING_M))

    def is_wall(self, node):
        """A ford is one, too, in an area that is built without them (Key:ford; README.md, build)."""
        return self.node(node).get("ford", "no") != "no" or super().is_wall(node)

    @cached_property
    def walls(self):
        """The nodes of roads that no car passes."""
        return frozenset(n for n in self.ways_at if self.is_wall(n))

    @cache
    def has_hours(self, way):
        """Some tag that a clock or a condition decides bears on driving it."""
        return any(key.endswith(":conditional") and key.split(":")[0] in MODES + ("oneway",)
                   for key in self.tags(way))

    @cache
    def always_open(self, way, direction):
        """By the plain tags alone: the last plain key of the walk decides (Key:access)."""
        if self.unsuited(way) or direction not in self.directions(way):
            return False
        return set(words(self.access(way, direction))) <= OPEN

    def may_drive(self, way, direction, interval):
        """True only when every reading of the tags lets us, all through the interval."""
        if not self.has_hours(way):
            return self.always_open(way, direction)
        if self.unsuited(way):
            return False
        return self._runs(way, direction, interval) and self._lets_in(way, direction, interval)

    def _runs(self, way, direction, interval):
        text = self.tags(way).get("oneway:conditional", "")
        plain = self.tags(way).get("oneway", "")
        return all(direction in self.of_one_way(way, plain if value is None else value)
                   for value in self.clock.values(text, interval))

    def _lets_in(self, way, direction, interval):
        """The most special key decides, a conditional before its plain one; a direction's own keys go
        before those of both."""
        tags = self.tags(way)
        for suffix in (":" + self.suffix(direction), ""):
            for mode in MODES:
                able = self.clock.values(tags.get(mode + suffix + ":conditional", ""), interval)
                if any(value is not None and not set(words(value)) <= OPEN for value in able):
                    return False
                if None not in able:
                    return True
                if mode + suffix in tags:
                    return set(words(tags[mode + suffix])) <= OPEN
        return True
