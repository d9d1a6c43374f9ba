"""What a claim of the second reader is, and what all its kinds need."""
from dataclasses import dataclass, field
from typing import Callable

from second_reader import words

SERVICE = "a service road, no street (Tag:highway=service)"
RING = "the ring of a roundabout (Tag:junction=roundabout)"
LINK = "a slip road or turning lane (Tag:highway=trunk_link)"
HALF = "one half of a divided road: its opposite is beside it (Tag:dual_carriageway=yes)"


@dataclass
class Claims:
    groups: list               # sets of objects, each one thing
    page: str                  # where the rule is from
    kinds: tuple = ()          # names in the report, when not the claim's own
    key_of: Callable = None    # the group of a finding; None: by its object
    reasons: dict = field(default_factory=dict)    # to leave one out: text -> test of an object
    listed: set = frozenset()  # the groups that the program lists too
    only_here: dict = field(default_factory=dict)  # for what tags alone do not say


def way(number):
    return f"way/{number}"


def node(number):
    return f"node/{number}"


def each(objects):
    return [frozenset([one]) for one in objects]


def inside(point, shape):
    """Even-odd rule."""
    odd = False
    for (y, x), (v, u) in zip(shape, shape[1:]):
        if (y > point[0]) != (v > point[0]) and point[1] < x + (point[0] - y) * (u - x) / (v - y):
            odd = not odd
    return odd


def number_of(text):
    digits = ""
    for c in text.strip():
        if not c.isdigit() and c != ".":
            break
        digits += c
    return float(digits) if digits.strip(".") else 0


class Claimant:
    """A reader of kinds: one method a kind, its name that of the kind with hyphens."""

    def __init__(self, reader):
        self.r = reader
        self.road_nodes = set(reader.ways_at)
        self.tagged_nodes = self.road_nodes & set(reader.map.nodes)

    def nodes_with(self, key, *values):
        return {n for n in self.tagged_nodes
                if set(words(self.r.node(n).get(key, ""))) & set(values)}

    def ways_where(self, test):
        return {w for w in self.r.roads if test(self.r.tags(w))}

    def ways_with(self, key, *values):
        return self.ways_where(lambda tags: set(words(tags.get(key, ""))) & set(values))

    def two_way(self, w):
        return len(self.r.directions(w)) == 2

    def on_service(self, name):
        return name.startswith("node/") and all(
            self.r.tags(w)["highway"] == "service" for w in self.r.ways_at[int(name[5:])])

    def is_service(self, name):
        return self.r.tags(int(name[4:]))["highway"] == "service"

    def is_link(self, name):
        return self.r.tags(int(name[4:]))["highway"].endswith("_link")

    def is_ring(self, name):
        return int(name[4:]) in self.r.in_ring

    def is_half(self, name):
        return self.r.beside_its_opposite(int(name[4:]))
