"""Somebody's own grounds, read a second time: service roads in schools, car parks and the like (OSM wiki, Tag:highway=service,
"access road to, or within"). What counts as such, half of a road or 30 m of it, is ours (DEVELOPERS.md, roads)."""
import math
from collections import Counter, defaultdict

GROUNDS = {"school", "kindergarten", "college", "hospital", "parking", "fuel", "bus_station",
           "fire_station"}
BESIDE_OR_BELOW = {"underground", "street_side", "lane", "layby", "on_kerb", "half_on_kerb",
                   "shoulder"}
CELL_DEG = 0.005


def is_inside(point, lines):
    """Even-odd rule over all lines of an outline."""
    odd = False
    for line in lines:
        for (y, x), (v, u) in zip(line, line[1:]):
            if (y > point[0]) != (v > point[0]) and point[1] < x + (point[0] - y) * (u - x) / (v - y):
                odd = not odd
    return odd


def cell(point):
    return math.floor(point[0] / CELL_DEG), math.floor(point[1] / CELL_DEG)


class Grounds:
    def __init__(self, osm):
        self.osm, self.at, self.known = osm, defaultdict(list), {}
        for way in osm.ways.values():
            self._add(way.tags, [way.nodes])
        for relation in osm.relations.values():
            if relation.tags.get("type") == "multipolygon":
                self._add(relation.tags, [osm.ways[ref].nodes for kind, ref, _ in relation.members
                                          if kind == "w" and ref in osm.ways])

    def _places(self, nodes):
        return [self.osm.places[n] for n in nodes if n in self.osm.places]

    def _add(self, tags, lines):
        if tags.get("amenity") not in GROUNDS or tags.get("parking") in BESIDE_OR_BELOW:
            return
        lines = [line for line in map(self._places, lines) if line]
        ends = Counter(end for line in lines for end in (line[0], line[-1]))
        if not ends or any(count % 2 for count in ends.values()):
            return
        (south, west), (north, east) = (tuple(map(of, zip(*(p for line in lines for p in line))))
                                        for of in (min, max))
        low, high = cell((south, west)), cell((north, east))
        for y in range(low[0], high[0] + 1):
            for x in range(low[1], high[1] + 1):
                self.at[y, x].append(lines)

    def hold(self, way):
        if way not in self.known:
            self.known[way] = self._holds(way)
        return self.known[way]

    def _holds(self, way):
        if self.osm.ways[way].tags.get("highway") != "service":
            return False
        line, inside, whole = self._places(self.osm.ways[way].nodes), Counter(), 0
        for (y, x), (v, u) in zip(line, line[1:]):
            leg = 111_195 * math.hypot(y - v, (x - u) * math.cos(math.radians((y + v) / 2)))
            looks, whole = max(1, int(leg / 5)), whole + leg
            for k in range(looks):
                share = (k + 0.5) / looks
                point = y + share * (v - y), x + share * (u - x)
                for lines in self.at[cell(point)]:
                    if is_inside(point, lines):
                        inside[id(lines)] += leg / looks
        return any(metres >= min(30, whole / 2) for metres in inside.values())
