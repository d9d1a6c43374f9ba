"""Writes a town as OPL: one object a line, nodes first, ids from a range no real map uses."""
import math
import re

from town.line import Line

STAMP = "2026-11-12T09:00:00Z"
FIRST_NODE, FIRST_WAY, FIRST_RELATION = 9_000_000_000_001, 9_100_000_000_001, 9_200_000_000_001


class Writer:
    """Numbers what was drawn and writes it as OPL."""

    def __init__(self, town):
        self.town, self.nodes, self.ways = town, {}, {}
        lat = math.radians(town.origin[0])
        # Metres a degree at the origin, from the radii of curvature of WGS 84.
        w2 = 1 - 0.00669437999014 * math.sin(lat) ** 2
        self.lat_m = math.radians(6378137.0 * (1 - 0.00669437999014) / w2 ** 1.5)
        self.lon_m = math.radians(6378137.0 / math.sqrt(w2) * math.cos(lat))

    def node(self, place):
        return self.nodes.setdefault(place, FIRST_NODE + len(self.nodes))

    def text(self, members, routes):
        town = self.town
        shapes = [(line, line.points, line.tags) for line in town.lines]
        shapes += [(id(corners), corners, tags) for corners, tags in town.areas]
        way_lines, relation_lines = [], []
        for key, points, tags in shapes:
            self.ways[key] = FIRST_WAY + len(self.ways)
            refs = ",".join(f"n{self.node(p)}" for p in points)
            way_lines.append(f"w{self.ways[key]}{head()}{written(tags)} N{refs}")
        for place, tags in town.spots:
            town.node_tags[place].update(tags)
            self.node(place)
        for i, (parts, tags) in enumerate(members + routes):
            refs = ",".join(f"{self.ref(part)}@{role}" for part, role in parts)
            relation_lines.append(f"r{FIRST_RELATION + i}{head()}{written(tags)} M{refs}")
        return "\n".join([*self.node_lines(), *way_lines, *relation_lines]) + "\n"

    def ref(self, part):
        return f"w{self.ways[part]}" if isinstance(part, Line) else f"n{self.node(part)}"

    def node_lines(self):
        lat, lon = self.town.origin
        for place, number in self.nodes.items():
            tags = self.town.node_tags.get(place, {})
            yield (f"n{number}{head()}{written(tags)} x{lon + place[0] / self.lon_m:.7f}"
                   f" y{lat + place[1] / self.lat_m:.7f}")



def head():
    return f" v1 t{STAMP}"


def written(tags):
    return "" if not tags else " T" + ",".join(f"{escaped(k)}={escaped(v)}" for k, v in tags.items())


def escaped(text):
    """OPL writes characters that would end a field as %hex%."""
    return re.sub(r"[ ,=@%\n]", lambda m: f"%{ord(m.group()):x}%", text)
