"""What makes a junction of its kind, by the raw tags and shapes along one pass.

Each rule is asked for a pass (first and last stretch of a drive) and says whether the map bears it.
Sources stand beside the rules; "ours" is a judgement of this project. Angles have some leeway, since the
heading of a bent road can be taken in several ways; what is near the border isn't held against anyone.
"""
import re
from functools import cached_property

import rings
from second_claims import number_of
from second_kinds import Kinds
from second_reader import between, metres, words

RANKS = {name: rank for rank, names in enumerate((
    ("service",), ("living_street", "residential", "unclassified", "road"), ("tertiary",),
    ("secondary",), ("primary",), ("trunk",), ("motorway",))) for name in names}  # Key:highway
STRAIGHT_DEG = 65  # ours: a road goes on straight
TURN_DEG = 45      # DEVELOPERS.md, Places
LEEWAY_DEG = 25
ROUND_DEG = 125
SIGN_M = 40        # ours: a sign belongs to the junction so near (MAP-TAGS.md 1.8)
ACUTE_DEG = 120    # TRADE.md, catalogue row 11
STAGGER_M = 40     # TRADE.md, catalogue row 10
CYCLE_KINDS = ("lane", "track", "exclusive", "advisory", "opposite_lane", "opposite_track", "shared_lane")


TEES = {"emerge", "turn-off", "narrow-mouth", "acute-junction", "cycle-lane-mouth"}


class Pass:
    """One pass of a drive, with what its rules ask for."""

    def __init__(self, drive, row):
        self.drive, self.row, self.ground = drive, row, drive.ground
        self.first, self.last = row["first"], row["last"]
        self.kind, self.movement = row["kind"], row["movement"] or ""
        self.certain = row["confidence"] == "certain"

    @cached_property
    def inner(self):
        return self.drive.inner(self.first, self.last)

    @cached_property
    def nodes(self):
        return set().union(*self.drive.nodes[self.first:self.last + 1])

    @cached_property
    def ways(self):
        return {self.drive.way(i) for i in range(self.first, self.last + 1)}

    @cached_property
    def angle(self):
        return between(self.drive.heading_in(self.first), self.drive.heading_out(self.last))

    @cached_property
    def others(self):
        """Headings of the roads of the junction that the pass neither comes by nor leaves by."""
        taken = {self.drive.nodes[self.first][-2], self.drive.nodes[self.last][1]}
        return [self.ground.heading(line) for node in self.inner
                for _, _, line in self.ground.arms_at(node)
                if line[1] not in taken and line[1] not in self.inner]

    def approach(self, within):
        """The nodes on the last metres before the pass's first node, itself included."""
        end = self.ground.at(self.drive.nodes[self.first][-1])
        before = [n for i in range(max(0, self.first - 4), self.first + 1) for n in self.drive.nodes[i]]
        return {n for n in before if metres(self.ground.at(n), end) <= within}


def is_staggered_over(one):
    """Across: turned out one way, and back the other way into the road on the far side."""
    into, out = one.drive.heading_in(one.first), one.drive.heading_out(one.last)
    road = one.drive.heading_out(one.first + 1)
    return one.last > one.first + 1 and between(into, road) * between(road, out) < 0 or (
        abs(one.angle) < TURN_DEG + LEEWAY_DEG)


def side_of_third(one):
    """Left or right at a Y, where neither way turns: by the side of the other road on which it lies, as a
    driver sees it (trade: a turn at a junction is told as left or right of the other road)."""
    into, out = one.drive.heading_in(one.first), one.drive.heading_out(one.last)
    others = [between(into, heading) for heading in one.others]
    return {"left" if between(into, out) < other else "right" for other in others}


def movement_fits(one):
    if one.kind == "staggered-junction":
        return is_staggered_over(one)
    if one.kind.endswith("mini-roundabout") or one.kind == "double-mini":
        return rings.fits(one.movement, one.angle)
    if one.kind in TEES and abs(one.angle) < TURN_DEG + LEEWAY_DEG and one.movement in side_of_third(one):
        return True
    return {"left": one.angle < -TURN_DEG + LEEWAY_DEG, "right": one.angle > TURN_DEG - LEEWAY_DEG,
            "ahead": abs(one.angle) < TURN_DEG + LEEWAY_DEG, "round": abs(one.angle) > ROUND_DEG,
            "": True}[one.movement]


def metres_of(text):
    """A width: metres, or feet and inches as 12'6" (Key:width); 0 when it can't be read."""
    feet = re.match(r"^(\d+)'\s*(?:(\d+(?:\.\d+)?)\")?$", text)
    return int(feet[1]) * 0.3048 + float(feet[2] or 0) * 0.0254 if feet else number_of(text)


def width_of(tags):
    """Metres of the road to drive on, also where they are a guess; 0 when nothing says. Key:width."""
    return next(filter(None, (metres_of(tags.get(key, "")) for key in
                              ("width:carriageway", "width", "est_width"))), 0)


class Junctions:
    def __init__(self, ground):
        self.ground, self.claims = ground, Kinds(ground)

    def rank(self, way):
        return RANKS[self.ground.tags(way)["highway"].removesuffix("_link")]

    def arms(self, nodes):
        """(way, direction, bearing) of the roads that lead away from a junction of several nodes."""
        return [(way, away, self.ground.heading(line)) for node in nodes
                for way, away, line in self.ground.arms_at(node) if line[1] not in nodes]

    def signed(self, one, *signs):
        """A sign on the approach, or on the way out's mouth, for who comes from there."""
        near = one.approach(SIGN_M) | one.inner
        return any(self.ground.node(n).get("highway") in signs for n in near)

    def crosses(self, one):
        """The road one comes out onto goes on the other way, too."""
        out = one.drive.heading_out(one.last)
        return any(abs(between(out + 180, arm)) < STRAIGHT_DEG for _, _, arm in self.arms(one.inner))

    def goes_by(self, one):
        """The road one comes by goes straight on."""
        into = one.drive.heading_in(one.first)
        return any(abs(between(into, arm)) < STRAIGHT_DEG for _, _, arm in self.arms(one.inner))

    def emerge(self, one):
        entry, exit_ = one.drive.way(one.first), one.drive.way(one.last)
        return (self.signed(one, "give_way", "stop") or self.rank(entry) < self.rank(exit_)
                or self.crosses(one))

    def turn_off(self, one):
        entry, exit_ = one.drive.way(one.first), one.drive.way(one.last)
        mouth = set(one.drive.nodes[one.last][:3]) | set(one.drive.nodes[min(one.last + 1, len(
            one.drive) - 1)][:2])
        signed = any(self.ground.node(n).get("highway") in ("give_way", "stop") for n in mouth)
        return signed or self.rank(exit_) < self.rank(entry) or self.goes_by(one)

    def narrow_mouth(self, one):
        """Narrow, or no wider further on: the mouth is looked at over its first 30 m (ours)."""
        return self.turn_off(one) and any(self.is_narrow(one.drive.way(i)) for i in range(
            one.last, min(one.last + 3, len(one.drive))))

    def is_narrow(self, way):
        """Under two cars' room (Manual for Streets figure 7.1), or taken up by parked cars."""
        return (f"way/{way}" in self.narrow_ways or 0 < width_of(self.ground.tags(way)) < 4.8
                or any(self.ground.node(n).get("highway") == "passing_place"
                       for n in self.ground.line(way)))

    @cached_property
    def narrow_ways(self):
        claims = self.claims
        told = set().union(frozenset(), *claims.narrow_road().groups,
                           *claims.meeting_traffic().groups)
        return told

    def crossroads(self, one):
        return len(self.arms(one.inner)) >= 4

    def staggered_junction(self, one):
        nodes = [n for n in one.nodes if len(self.arms({n})) >= 3]
        return any(metres(self.ground.at(a), self.ground.at(b)) <= STAGGER_M * 1.2
                   for a in nodes for b in nodes if a != b) or len(nodes) >= 1 and len(one.inner) == 1

    def acute_junction(self, one):
        return abs(one.angle) >= ACUTE_DEG - LEEWAY_DEG

    def stop_line(self, one):
        return self.signed(one, "stop")

    def signals(self, one):
        return bool(self.lights & (one.inner | one.approach(SIGN_M)))

    @cached_property
    def lights(self):
        return self.claims.nodes_with("highway", "traffic_signals") | self.claims.lit_crossings()

    def filter_lane(self, one):
        """Arrows of a lane of its own on the way in, lights at its end. Key:turn."""
        keys = ("turn:lanes", "turn:lanes:" + self.ground.suffix(one.drive.direction(one.first)))
        texts = [self.ground.tags(w).get(key, "") for w in one.ways for key in keys]
        return any({"left", "right", "slight_left", "slight_right"} & set(text.split("|"))
                   for text in texts) and bool(self.lights & (one.inner | one.approach(60)))

    def advanced_stop_line(self, one):
        return any(self.ground.node(n).get("cycleway") == "asl" for n in one.nodes)

    def box_junction(self, one):
        boxes = set().union(frozenset(), *self.claims.box_junction().groups)
        return any(f"node/{n}" in boxes for n in one.nodes)

    def cycle_lane_mouth(self, one):
        """A cycle lane or track along the road one leaves or joins: Key:cycleway; one drawn by itself is
        a highway=cycleway."""
        ends = (one.drive.way(one.first), one.drive.way(one.last))
        tagged = any(key.split(":")[0] == "cycleway" and set(words(value)) & set(CYCLE_KINDS)
                     for way in ends for key, value in self.ground.tags(way).items())
        return tagged or not one.certain

    def mini_roundabout(self, one):
        return any(self.ground.node(n).get("highway") == "mini_roundabout" for n in one.inner) or any(
            self.ground.tags(w).get("central_island:traversable") == "yes" for w in one.ways)

    def double_mini(self, one):
        """Two minis joined by at most 60 m of road: Highway Code 189."""
        minis = [n for n in one.inner if self.ground.node(n).get("highway") == "mini_roundabout"]
        others = self.claims.nodes_with("highway", "mini_roundabout")
        return len(minis) > 1 or any(
            set(self.ground.near_by_road(n, 62)) & others - {n} for n in minis)

