"""Stretches of a loop file laid on the raw map, step by step from node to node."""
from functools import cached_property

from geo import metres
from second_reader import off_line

TELLING_M = 8   # a shorter one has no heading of its own


class Drive:
    """What a list of stretches drives; only of stretches that lie on their ways (claims_road.py)."""

    def __init__(self, ground, stretches, start):
        self.ground, self.stretches, self.start = ground, stretches, start
        self.nodes = [self._nodes(s) for s in stretches]

    def _nodes(self, stretch):
        nodes = self.ground.map.ways[stretch["way"]].nodes
        a, b = stretch["from_index"], stretch["to_index"]
        return nodes[a:b + 1] if a <= b else nodes[b:a + 1][::-1]

    def __len__(self):
        return len(self.stretches)

    def way(self, i):
        return self.stretches[i]["way"]

    def direction(self, i):
        return self.stretches[i]["direction"]

    def tags(self, i):
        return self.ground.tags(self.way(i))

    def length(self, i):
        """Metres of the whole stretch, by its nodes."""
        return sum(metres(self.ground.at(a), self.ground.at(b))
                   for a, b in zip(self.nodes[i], self.nodes[i][1:]))

    @cached_property
    def steps(self):
        """(a, b, way, stretch) of each step."""
        return [(a, b, self.way(i), i) for i, nodes in enumerate(self.nodes)
                for a, b in zip(nodes, nodes[1:])]

    def off(self, i, place):
        """Metres from a place to the road of a stretch."""
        places = [self.ground.at(n) for n in self.nodes[i]]
        return min(off_line(place, a, b) for a, b in zip(places, places[1:]))

    def interval(self, i):
        """The instants from the earliest at which it is come to until the latest at which it is left."""
        later = self.stretches[min(i + 1, len(self) - 1)]["arrive_s"]["high"]
        own = self.stretches[i]["arrive_s"]
        return self.start + own["low"], self.start + max(later, own["high"])

    def heading_in(self, i):
        """The bearing in which the end of a stretch is come to, over its last metres and those before."""
        before = [n for part in self.nodes[max(0, i - 3):i] for n in part[:-1]]
        return (self._heading(self.nodes[i][::-1], before[::-1]) + 180) % 360

    def heading_out(self, i):
        """The bearing in which a stretch is begun."""
        behind = [n for part in self.nodes[i + 1:i + 4] for n in part[1:]]
        return self._heading(self.nodes[i], behind)

    def _heading(self, own, more):
        """Over the first metres of a stretch; of one too short to tell, also of what is driven beyond it."""
        long_m = sum(metres(self.ground.at(a), self.ground.at(b)) for a, b in zip(own, own[1:]))
        short = long_m < TELLING_M and more[:1] != own[-2:-1]
        return self.ground.heading(own + (more if short else []))

    def inner(self, first, last):
        """The nodes between the stretches of a pass: from the first one's end to the last one's begin."""
        if first == last:
            return set(self.nodes[first][1:-1])
        return {self.nodes[first][-1]}.union(*(self.nodes[i] for i in range(first + 1, last)))
