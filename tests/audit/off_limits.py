"""What a wish keeps off, streets driven often enough, and points of one's own drive. DEVELOPERS.md: Keeping off,
Spacing and caps, Place."""
import math
from collections import Counter, defaultdict
from functools import cache

import networkx

from files_given import use_of
from second_reader import metres, off_line
from wish_told import start_of

AT_JUNCTION_M, STREET_M, GAP_M = 5, 150, 500
STREET_CELLS = 3      # of 57 metres or more below 59 degrees: so far STREET_M reaches
SURE_M = 1            # what is nearer to a border isn't held against anyone
OWN_DRIVE_MIN = 180   # a drive through points says no minutes; three hours hold any lesson
QUIET_PASSES, DAY_PASSES, MONTH_PASSES, FREE_M = 2, 6, 20, 500
ALLEYS = {"driveway", "parking_aisle", "alley", "drive-through", "drive_through", "emergency_access"}


def lesson_interval(asked, region):
    """Instants between which a lesson may be on the road: its minutes, a tenth of them and two more."""
    minutes = asked.minutes or OWN_DRIVE_MIN
    begin = start_of(asked, region).timestamp()
    return begin, begin + 60 * (minutes + math.ceil(minutes / 10) + 2)


class OffLimits:
    """Of one map."""

    def __init__(self, ground, quiet):
        self.ground, self.quiet = ground, quiet

    def kept_off(self, asked):
        """Those of a wish whose hours touch the lesson, or can't be told for it."""
        interval = lesson_interval(asked, self.ground.region)
        return [one for one in asked.keep_off
                if not one.hours or self.ground.clock.states(one.hours, interval) != "C"]

    def check_road(self, tally, drive, kept_off):
        for one in kept_off:
            self._keep_off(tally, drive, one)

    def check(self, tally, lesson):
        if lesson.asked.through:
            self._through(tally, lesson.drive, lesson.asked.through)
        else:
            self._streets(tally, lesson.drive, lesson)

    # --- keeping off --------------------------------------------------------------------------------

    def _keep_off(self, tally, drive, one):
        if len(one.outline) > 1:
            for i in range(len(drive)):
                tally.check("kept off", not self._inside(one.outline, drive.nodes[i]),
                            f"stretch {i} lies in {one.outline}")
            return
        point = one.outline[0]
        nodes = self.junctions_at(tuple(point))
        if nodes:
            passed = {drive.nodes[i][-1] for i in range(len(drive) - 1)}
            tally.check("kept off", not nodes & passed, f"goes through {nodes & passed}")
            return
        street = self.street_at(tuple(point))
        for i in range(len(drive)):
            tally.check("kept off", drive.way(i) not in street,
                        f"stretch {i}: way/{drive.way(i)} is of the street at {point}")

    # --- what must be taken -------------------------------------------------------------------------

    def check_takes(self, tally, asked, answer, drives):
        """Each loop takes it, or the answer says that it doesn't; of a place without a sure street or junction
        nothing is said."""
        told = (answer["shortfall"] or {}).get("not_taken", [])
        tally.check("not taken", set(told) <= {name for name, _ in asked.take}, told)
        for name, point in asked.take:
            nodes, street = self.junctions_at(tuple(point)), self.street_at(tuple(point))
            if not nodes and not street:
                continue
            names = {self.known_as(way) for way in street}
            for drive in drives:
                taken = any(nodes & {drive.nodes[i][-1]} for i in range(len(drive) - 1)) or any(
                    self.known_as(drive.way(i)) in names for i in range(len(drive)))
                tally.check("taken", taken or name in told, f"{name} isn't driven")

    def _inside(self, outline, nodes):
        """Some node lies inside, surely: by the edges a ray to the east meets."""
        ring = list(zip(outline, outline[1:] + outline[:1]))
        def inside(at):
            near = min(off_line(at, a, b) for a, b in ring)
            met = sum((a[0] <= at[0]) != (b[0] <= at[0]) and at[1] < a[1] + (at[0] - a[0]) * (
                b[1] - a[1]) / (b[0] - a[0]) for a, b in ring)
            return near > SURE_M and met % 2 == 1
        return any(inside(self.ground.at(node)) for node in nodes)

    @cache
    def junctions_at(self, point):
        """The nearest node where three roads meet within 5 m of a point, if there is one."""
        near = {(metres(self.ground.at(n), point), n) for off, _, a, b in self.ground.steps_near(point)
                for n in (a, b) if off < AT_JUNCTION_M}
        return frozenset([n for off, n in sorted(near) if off < AT_JUNCTION_M and self._is_junction(n)][:1])

    def _is_junction(self, node):
        return sum(self.ground.tags(way).get("service") not in ALLEYS
                   for way, _, _ in self.ground.arms_at(node)) > 2

    @cache
    def street_at(self, point):
        """The ways that surely are the street at a point: the nearest in use by a metre at least, and those of
        its name (its number) whose ends lie within 500 m of ends of it."""
        near = sorted((off, way) for off, way, a, b in self.ground.steps_near(point, STREET_CELLS) if off < STREET_M - SURE_M
                      and ((a, b) in self.ground.joined or (b, a) in self.ground.joined))
        if not near or self.ground.tags(near[0][1])["highway"] == "service":
            return frozenset()
        name = self.known_as(near[0][1])
        rivals = [off for off, way in near if (self.known_as(way) or way) != (name or near[0][1])]
        if rivals and rivals[0] < near[0][0] + SURE_M or not name:
            return frozenset()  # of a road without a name only a part, from junction to junction, is meant
        ways = [way for way in self.ground.roads if self.known_as(way) == name and len(self.ground.line(way)) > 1]
        links = networkx.Graph()
        links.add_nodes_from(ways)
        for k, way in enumerate(ways):
            links.add_edges_from((way, other) for other in ways[:k] if self._gap(way, other) < GAP_M - SURE_M)
        return frozenset(networkx.node_connected_component(links, near[0][1]))

    def known_as(self, way):
        tags = self.ground.tags(way)
        return tags.get("name") or tags.get("ref", "")

    def _gap(self, one, other):
        a, b = self.ground.line(one), self.ground.line(other)
        return min(metres(self.ground.at(x), self.ground.at(y)) for x in (a[0], a[-1]) for y in (b[0], b[-1]))

    # --- quiet streets ------------------------------------------------------------------------------

    def _streets(self, tally, drive, lesson):
        """A piece of quiet street is driven so often at most; the ledger may leave less, but near a door."""
        asked, driven = lesson.asked, Counter()
        day = start_of(asked, self.ground.region).date()
        uses = use_of(asked.driven, day) if asked.driven else defaultdict(lambda: (0, 0))
        doors = [asked.home, asked.end or asked.home]
        most = QUIET_PASSES if asked.street_passes is None else asked.street_passes
        for i in range(lesson.first, lesson.last + 1):
            if self.quiet(drive.way(i)) is not True:
                continue
            stretch = drive.stretches[i]
            key = stretch["way"], *sorted((stretch["from_index"], stretch["to_index"]))
            driven[key] += 1
            today, month = uses.get(stretch["way"], (0, 0))
            left = max(0, min(most, DAY_PASSES - today, MONTH_PASSES - month))
            at_door = any(drive.off(i, door) <= FREE_M + SURE_M for door in doors)
            tally.check("quiet streets", driven[key] <= (max(most, 2) if at_door else left),
                        f"stretch {i}: way/{stretch['way']} is driven {driven[key]} times")

    # --- one's own drive ----------------------------------------------------------------------------

    def _through(self, tally, drive, points):
        row = 0
        for k, point in enumerate(points):
            row = next((i for i in range(row, len(drive)) if drive.off(i, point) <= STREET_M + SURE_M), None)
            if not tally.check("through", row is not None, f"point {k} at {point}"):
                return
