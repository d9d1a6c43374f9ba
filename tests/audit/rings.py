"""Roundabouts of the raw map, and what a pass of one may claim: ring, kind, movement, number of the exit.

Arms and exits are those of tests/real/ring_count.py (Tag:junction=roundabout; exits as British signs
count them). Lights and lanes: Tag:highway=traffic_signals, Key:lanes; 30 m: MAP-TAGS.md 1.2, ours.
"""
from functools import cache

from ring_count import MEETS_WITHIN_M, rings_of, signed_exits
from second_claims import number_of
from second_reader import bearing, between, metres

FAMILY = ("roundabout", "multi-lane-roundabout", "signal-roundabout")
LIGHTS_M = 30
EVEN_DEG = 45    # DEVELOPERS.md, Places: ahead is up to 45 degrees
ROUND_DEG = 135
HALVES_DEG = 90  # ours: so far apart may the halves of one divided road lie
LEEWAY_DEG = 50  # ours: the middle of a ring and the heading of a bent arm can be taken in several ways


class Rings:
    def __init__(self, ground, lights):
        self.ground, self.lights = ground, lights
        self.by_way = {way: ring for ring in rings_of(ground.map).values() for way in ring.ways}

    def of(self, way):
        return self.by_way.get(way)

    def runs(self, drive):
        """(ring, entry, exit) of each drive through a ring: the stretches before and after it."""
        i = 1
        while i < len(drive):
            ring = self.of(drive.way(i))
            entry = i - 1
            while i < len(drive) and ring is not None and self.of(drive.way(i)) is ring:
                i += 1
            if ring is not None and i < len(drive) and self.of(drive.way(entry)) is not ring:
                yield ring, entry, i
            i += 1 if ring is None else 0

    def is_drawn_right(self, ring):
        """Clockwise where one drives on the left; else the map is wrong and nobody practises there
        (MAP-TAGS.md 4, trap 4)."""
        places = [self.ground.at(n) for n in ring.nodes]
        turned = sum((b[1] - a[1]) * (b[0] + a[0] - 2 * places[0][0])
                     for a, b in zip(places, places[1:] + places[:1]))
        return (turned > 0) == self.ground.left

    def is_traversable(self, ring):
        """A ring whose island one may drive over is a mini (Key:central_island:traversable)."""
        return any(self.ground.tags(w).get("central_island:traversable") == "yes" for w in ring.ways)

    @staticmethod
    def arm_at(ring, drive, i, comes):
        """The arm that a stretch comes in by, or leaves by."""
        node, beside = drive.nodes[i][-1:-3:-1] if comes else drive.nodes[i][:2]
        return next((arm for arm in ring.arms if any(
            (t.way, t.node, t.beside) == (drive.way(i), node, beside) for t in arm)), None)

    def exit_number(self, ring, drive, entry, last):
        """As signs count: public roads one may leave by, from the first after the way in. From the plain
        rule to the signs' further ones, which differ where two ways out meet again soon: which of the
        two counts is the signs' choice. None when the arms can't be told."""
        arm_in = self.arm_at(ring, drive, entry, True)
        arm_out = self.arm_at(ring, drive, last, False)
        if arm_in is None or arm_out is None:
            return None
        at = ring.arms.index(arm_in)
        order = ring.arms[at + 1:] + ring.arms[:at + 1]
        # What leaves the ring where the way in meets it is passed when the car has gone all the way round.
        here = {t.node for t in arm_in}
        order.sort(key=lambda arm: {t.node for t in arm} <= here)
        passed = order[:order.index(arm_out) + 1]
        counts = [sum(arm in exits for arm in passed) for exits in self.exits_of(ring)]
        return set(range(min(counts), max(counts) + 1))

    @cache
    def exits_of(self, ring):
        """The arms that are exits, by the plain rule and by the signs'."""
        return ring.exits(), signed_exits(self.ground.map, ring)[0]

    def is_round(self, ring, drive, entry, last):
        """Out by the arm one came by."""
        arm_in = self.arm_at(ring, drive, entry, True)
        return arm_in is not None and arm_in is self.arm_at(ring, drive, last, False)

    def has_lanes(self, ring):
        """Two lanes or more on the ring or on a way in."""
        if any(number_of(self.ground.tags(w).get("lanes", "")) >= 2 for w in ring.ways):
            return True
        return any(self.lanes_in(t) >= 2 for arm in ring.arms for t in arm if t.comes)

    def lanes_in(self, touch):
        """Mapped lanes of a way towards the ring."""
        tags, line = self.ground.tags(touch.way), self.ground.line(touch.way)
        towards = "along" if line[-1] == touch.node else "against"
        suffix = self.ground.suffix(towards)
        told = number_of(tags.get("lanes:" + suffix, ""))
        both = number_of(tags.get("lanes", ""))
        for_buses = any(key.startswith(("lanes:bus", "lanes:psv")) and suffix in key for key in tags)
        one_way = len(self.ground.directions(touch.way)) == 1
        turns = tags.get("turn:lanes:" + suffix, tags.get("turn:lanes", "") if one_way else "")
        lanes = max(told or (both if one_way else both // 2), turns.count("|") + 1 if turns else 0)
        return lanes - for_buses  # a bus lane is none for a car (Bus_lanes)

    @cache
    def has_lights(self, ring):
        """Lights on the ring, or within 30 m on at least half of the ways in."""
        if any(n in self.lights for n in ring.nodes):
            return True
        ways_in = [t for arm in ring.arms for t in arm if t.comes]
        lit = sum(bool(set(self.ground.near_by_road(t.node, LIGHTS_M)) & self.lights &
                       set(self.ground.line(t.way))) for t in ways_in)
        return bool(ways_in) and 2 * lit >= len(ways_in)

    def kind(self, ring):
        return (FAMILY[2] if self.has_lights(ring) else
                FAMILY[1] if self.has_lanes(ring) else FAMILY[0])

    def movement_fits(self, ring, drive, told):
        """The movement told of a pass, against arms and headings."""
        entry, last = told["first"], told["last"]
        one_road = self.is_one_road(drive, entry, last)
        if self.is_round(ring, drive, entry, last):
            furthest = "right" if self.ground.left else "left"  # out just before where one came in
            return told["movement"] == "round" or not one_road and told["movement"] == furthest
        by_road = between(drive.heading_in(entry), drive.heading_out(last))
        angles = by_road, self.by_place(ring, drive, entry, last)
        if told["movement"] == "round":
            return one_road and max(map(abs, angles)) > HALVES_DEG
        return any(fits(told["movement"], angle) for angle in angles)

    def is_one_road(self, drive, entry, last):
        """Halves of a divided road that lie apart: one name or number, or without either one way in and
        one out of one class that come within 60 m of each other (ring_count.py)."""
        one, other = drive.tags(entry), drive.tags(last)
        if any(key in one or key in other for key in ("name", "ref")):
            return any(key in one and one[key] == other.get(key) for key in ("name", "ref"))
        halves = all(len(self.ground.directions(drive.way(i))) == 1 for i in (entry, last))
        return halves and one["highway"] == other["highway"] and any(
            metres(self.ground.at(a), self.ground.at(b)) < MEETS_WITHIN_M
            for a in self.ground.line(drive.way(entry))[:-1]
            for b in self.ground.line(drive.way(last))[1:])

    def by_place(self, ring, drive, entry, last):
        """The change of direction by where the two arms lie round the middle, as a sign draws it."""
        places = [self.ground.at(n) for n in ring.nodes]
        middle = tuple(sum(p[k] for p in places) / len(places) for k in (0, 1))
        into, out = (bearing(middle, self.ground.at(drive.nodes[i][end]))
                     for i, end in ((entry, -1), (last, 0)))
        return between(into + 180, out)


def fits(movement, angle):
    """With leeway; beyond three quarters of a circle the side can't be told by the angle."""
    return {"left": angle < -EVEN_DEG + LEEWAY_DEG or angle > ROUND_DEG,
            "right": angle > EVEN_DEG - LEEWAY_DEG or angle < -ROUND_DEG,
            "ahead": abs(angle) < EVEN_DEG + LEEWAY_DEG, "round": abs(angle) > ROUND_DEG}[movement]
