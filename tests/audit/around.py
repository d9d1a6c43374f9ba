"""What there is to practise round a door, by the second reader: what an instructor there would ask for.

Roads are measured from junction to junction both ways, since who drives there must come home. What no tag
decides (who emerges, who turns off) is told where classes and angles leave no doubt (missing_junctions.py).
"""
from collections import defaultdict
from functools import cache

import networkx

from missing_junctions import CLEAR_DEG
from random_wishes import KINDS
from rings import FAMILY

QUIET = ("quiet street", "")
METRES_A_MINUTE = 400  # ours: 15 mph, waiting counted
OUT_SHARE = 0.3        # of the minutes for the way to the farthest; the rest to get home, and to spare
TURN_DEG = 60          # beyond doubt no way ahead, and none round
BACK_DEG = 130
AHEAD_DEG = 30
# Kinds by how hard they are (src/rules/kinds.txt; TRADE.md, catalogue): what a level, or --hardest, rules out.
HARD = {5: ("signal-roundabout", "motorway"),
        4: ("multi-lane-roundabout", "dual-carriageway", "country-road", "single-track", "level-crossing",
            "double-mini", "tram", "tram-crossing", "ford")}
BESIDE_M = 60          # of the nearest road, a door's own street lies no farther off


class Around:
    """Of one map; `auditor` has read it."""

    def __init__(self, auditor):
        self.ground, self.passes, self.quiet = auditor.ground, auditor.passes, auditor.quiet
        self.public = auditor.missing_junctions.public
        self.offers = defaultdict(set)  # (kind, movement or "") -> nodes
        for kind in KINDS:
            self._by_tags(kind)
        self._rings()
        for node in self.ground.ways_at:
            if self.ground.is_driven_over(node):
                self._junction(node)
        self.quiet_nodes = {n for way in self.ground.roads if self.quiet(way) and self.ground.is_driven(way)
                            for n in self.ground.line(way)}
        self.ahead = self.ground.joined and self.ground.moves  # laid out with what is joined
        self.back = self.ahead.reverse(copy=False)

    def kinds(self):
        return sorted({kind for kind, _ in self.offers})

    # --- what there is ------------------------------------------------------------------------------

    def _by_tags(self, kind):
        """Objects that a tag makes one of the kind, less those there is a reason to leave out."""
        claimed = getattr(self.passes.junctions.claims, kind.replace("-", "_"), None)
        if claimed is None or kind in FAMILY + ("emerge", "turn-off", "crossroads"):
            return
        claims = claimed()
        claims.listed = set(claims.groups)
        for name in frozenset().union(*claims.groups):
            if not any(test(name) for test in claims.reasons.values()):
                self.offers[kind, ""] |= self._nodes_of(name)
        if not self.offers[kind, ""]:
            del self.offers[kind, ""]

    def _nodes_of(self, name):
        """The nodes that are driven over, of a node or of a road that is driven all along."""
        what, number = name.split("/")
        if what == "node":
            return {int(number)} if self.ground.is_driven_over(int(number)) else set()
        line = self.ground.line(int(number)) if int(number) in self.ground.roads else []
        driven = all((a, b) in self.ground.joined or (b, a) in self.ground.joined for a, b in zip(line, line[1:]))
        return set(line) if line and driven else set()

    def _rings(self):
        for ring in set(self.passes.rings.by_way.values()):
            nodes = {n for n in ring.nodes if self.ground.is_driven_over(n)}
            if not nodes or len(ring.arms) < 3 or self.passes.rings.is_traversable(ring) or (
                    not self.passes.rings.is_drawn_right(ring)):
                continue
            for kind in ("roundabout", self.passes.rings.kind(ring)):
                self.offers[kind, ""] |= nodes

    def _junction(self, node):
        arms = self.public(node)
        if arms is None or len(arms) not in (3, 4):
            return
        rank = self.passes.junctions.rank
        for way, _, other, _, angle in self.ground.moves_over(node):
            side = "ahead" if abs(angle) < AHEAD_DEG else None
            if TURN_DEG < abs(angle) < BACK_DEG:
                side = "left" if angle < 0 else "right"
            if side is None:
                continue
            if len(arms) == 4:
                self._offer("crossroads", side, node)
            elif side != "ahead" and abs(angle) > CLEAR_DEG:
                third = [w for w, _ in arms if w not in (way, other)]
                if len(third) == 1 and rank(way) < rank(other) == rank(third[0]):
                    self._offer("emerge", side, node)
                if len(third) == 1 and rank(other) < rank(way) == rank(third[0]):
                    self._offer("turn-off", side, node)

    def _offer(self, kind, movement, node):
        self.offers[kind, movement].add(node)
        self.offers[kind, ""].add(node)

    # --- round a door -------------------------------------------------------------------------------

    @cache
    def street_at(self, door):
        """The way a door lies on, or None."""
        off, way = self.ground.nearest_road(self._place(door))
        return way if off < BESIDE_M else None

    def is_quiet_at(self, door):
        """The door's own street is a quiet one: where beginners begin."""
        way = self.street_at(door)
        return way is not None and self.quiet(way) is True

    @staticmethod
    def _place(door):
        lat, lon = door.split(",")
        return float(lat), float(lon)

    def harder_than(self, most):
        """Kinds harder than that."""
        return [kind for grade, kinds in HARD.items() if grade > most for kind in kinds]

    def near(self, door, minutes, without=()):
        """(kind, movement) -> how many nodes of it can be driven to and home from, in order; past no node of
        the kinds of `without`. Streets where one may stop are told as ("quiet street", "")."""
        steps = self.ground.door_steps(self._place(door))
        shut = set().union(*(self.offers.get((kind, ""), set()) for kind in without))
        seeds = {n for n in steps[0][1:] if n in self.ground.net and n not in shut} if steps else set()
        if not seeds:
            return {}
        within = METRES_A_MINUTE * minutes * OUT_SHARE
        there, home = ({node for step, _ in networkx.multi_source_dijkstra_path_length(
            moves, {move for move in moves if move[0][end] in seeds and move[0] in self.ground.joined}, within,
            weight=lambda _, move, __: None if shut & set(move[0]) else self.ground.net.edges[move[0]]["metres"])
            for node in step} for moves, end in ((self.ahead, 0), (self.back, 1)))
        both = there & home
        found = {what: len(nodes & both) for what, nodes in sorted(self.offers.items()) if nodes & both}
        return {**found, QUIET: len(self.quiet_nodes & both)} if self.quiet_nodes & both else found
