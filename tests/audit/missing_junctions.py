"""Junctions and stops a loop drives that its passes must list, where the raw tags leave no doubt.

A minor road that ends at one of a higher class gives way to it (Highway Code 170 to 172; class: Key:highway);
four roads at a point are a crossroads. Roads a learner sees as roads are public and no service roads.
Lights: Tag:highway=traffic_signals. Stops: Tag:highway=bus_stop.
"""
from collections import defaultdict
from functools import cache

from missing import told
from second_reader import bearing, between, metres, off_line

CLEAR_DEG = 60      # ours: a turn that nobody takes for going ahead
BACK_DEG = 140      # ours: turning back
LIGHTS_M = 45       # lights so near make another junction of it (MAP-TAGS.md 1.8: 40)
WIDE_M = 90         # ours: one turns back over a junction of dual carriageways within this
STOP_M = 12         # ours: a stop that surely is beside this road
SAME_STOP_M = 40    # second_kinds.py: mapped again


class MissingJunctions:
    def __init__(self, passes):
        self.ground, self.junctions, self.rings = passes.ground, passes.junctions, passes.rings
        self.stops = self._stops_by_way()

    def check(self, tally, drive, rows):
        driven, total = 0.0, sum(s["metres"] for s in drive.stretches)
        for i in range(1, len(drive) - 2):
            driven += drive.stretches[i - 1]["metres"]
            if LIGHTS_M < driven and driven + drive.stretches[i]["metres"] < total - WIDE_M:  # else the door itself may lie among the lights
                self._lights(tally, drive, rows, i)
            self._junction(tally, drive, rows, i)
            self._stops(tally, drive, rows, i)

    def _lights(self, tally, drive, rows, i):
        node = drive.nodes[i][-1]
        tags = self.ground.node(node)
        against = {"along": "backward", "against": "forward"}[drive.direction(i)]
        told_for = tags.get("traffic_signals:direction", tags.get("direction"))
        one_way = len(self.ground.directions(drive.way(i))) == 1
        faces_us = one_way if told_for is None else told_for != against  # else by where it stands
        if (tags.get("highway") == "traffic_signals" and faces_us
                and tags.get("traffic_signals") != "emergency" and not self._turns_back(drive, i)
                and not self._only_service(node) and not self._at_a_ring(node)):
            near, before = self._near(drive, i), self._before(drive, i)
            if any(abs(between(drive.heading_in(j), drive.heading_out(k))) > BACK_DEG
                   for j in before for k in self._near(drive, i, WIDE_M)[1:]):
                return  # back through the lights to where one came from: no practice anyone asks for
            tally.check("none missing: signals", any(told(rows, "signals", k) for k in near)
                        or self.ground.noted.takes("signals", drive, i),
                        f"stretch {i}: node/{node}")

    @cache
    def _at_a_ring(self, node):
        """A roundabout's own lights, also for who drives through its island (second_kinds.py)."""
        return self.junctions.claims.at_a_ring(f"node/{node}")

    @staticmethod
    def _near(drive, i, within=LIGHTS_M):
        """The stretch and those behind it over the next metres: the lights of an approach are their
        junction's, and one pass of it."""
        near, on = [i], 0.0
        while near[-1] + 1 < len(drive) and on < within:
            on += drive.length(near[-1] + 1)
            near.append(near[-1] + 1)
        return near

    @staticmethod
    def _before(drive, i):
        """The stretch and those over the last 45 m before it: where the junction was come to."""
        before, back = [i], drive.length(i)
        while before[-1] > 0 and back < LIGHTS_M:
            before.append(before[-1] - 1)
            back += drive.length(before[-1])
        return before

    def _only_service(self, node):
        return sum(self.ground.tags(w)["highway"] != "service" for w, _, _ in
                   self.ground.arms_at(node)) < 2

    @staticmethod
    def _turns_back(drive, i):
        return drive.nodes[i + 1][1] == drive.nodes[i][-2]

    @cache
    def public(self, node):
        """(way, next node) of the roads at a node that a driver counts; None where lights, rings or minis
        make it something else, or a road has no two ways."""
        arms = [(way, line[1]) for way, _, line in self.ground.arms_at(node)
                if self.ground.tags(way)["highway"] != "service"
                and not {"access", "motor_vehicle", "vehicle", "motorcar"} & set(self.ground.tags(way))]
        odd = any(len(self.ground.directions(way)) == 1 or "link" in self.ground.tags(way)["highway"]
                  or "junction" in self.ground.tags(way) or self.ground.has_hours(way)
                  or "construction" in self.ground.tags(way)  # being built: no arm yet (Key:construction)
                  for way, _ in arms)
        near = set(self.ground.near_by_road(node, LIGHTS_M))
        lit = near & self.junctions.lights or any(
            self.ground.node(n).get("highway") == "mini_roundabout" for n in near)
        every = len(list(self.ground.arms_at(node)))
        signs = any(self.ground.node(n).get("highway") in ("give_way", "stop") for n in near)
        return None if odd or lit or signs or every != len(arms) else arms

    def _junction(self, tally, drive, rows, i):
        node = drive.nodes[i][-1]
        arms = self.public(node)
        if arms is None or self._turns_back(drive, i) or len(arms) not in (3, 4):
            return
        if len(arms) == 4:
            tally.check("none missing: crossroads", told(rows, "crossroads", i, i + 1)
                        or self.ground.noted.takes("crossroads", drive, i), f"stretch {i}: node/{node}")
            return
        kind = self._of_three(drive, i, arms)
        if kind:
            tally.check("none missing: " + kind, told(rows, kind, i, i + 1)
                        or self.ground.noted.takes(kind, drive, i), f"stretch {i}: node/{node}")

    def _of_three(self, drive, i, arms):
        """Emerging or turning off, where classes and the angle leave no doubt; else nothing."""
        into, out = drive.way(i), drive.way(i + 1)
        taken = {drive.nodes[i][-2], drive.nodes[i + 1][1]}
        third = [way for way, onward in arms if onward not in taken]
        angle = between(drive.heading_in(i), drive.heading_out(i + 1))
        if len(third) != 1 or abs(angle) < CLEAR_DEG:
            return None
        ranks = [self.junctions.rank(way) for way in (into, out, third[0])]
        if ranks[0] < ranks[1] == ranks[2]:
            return "emerge"
        return "turn-off" if ranks[1] < ranks[0] == ranks[2] else None

    def _stops(self, tally, drive, rows, i):
        """A stop on our side, nearer to this road than to any other."""
        if drive.tags(i)["highway"] == "service":
            return
        for stop in self.stops[drive.way(i)]:
            point = self.ground.at(stop)
            side = self._side(drive, i, point)
            if side and not self._listed(rows, drive, i, stop) and not self.ground.noted.takes(
                    "bus-stop", drive, i):
                tally.check("none missing: bus-stop", False, f"stretch {i}: node/{stop}")
            elif side:
                tally.claims["none missing: bus-stop"] += 1

    def _stops_by_way(self):
        """Stops that lie at most 12 m off the way they are nearest to, and well away from its ends."""
        beside = defaultdict(list)
        for stop, tags in self.ground.map.nodes.items():
            if tags.get("highway") != "bus_stop" or stop in self.ground.ways_at:
                continue
            point = self.ground.at(stop)
            off, way = self.ground.nearest_road(point)
            if off <= STOP_M and all(metres(point, self.ground.at(end)) > SAME_STOP_M / 2
                                     for end in self.ground.line(way)[::len(self.ground.line(way)) - 1]):
                beside[way].append(stop)
        return beside

    def _side(self, drive, i, point):
        """The stop lies beside one of the stretch's own steps, on the side one drives on."""
        for a, b in zip(drive.nodes[i], drive.nodes[i][1:]):
            here, there = self.ground.at(a), self.ground.at(b)
            off = off_line(point, here, there)
            if 2 < off <= STOP_M and min(metres(point, here), metres(point, there)) > off * 1.05:
                on_right = between(bearing(here, there), bearing(here, point)) > 0
                return on_right != self.ground.left
        return False

    def _listed(self, rows, drive, i, stop):
        """Itself, or another of the same place that is mapped again within 40 m."""
        return any(row["kind"] == "bus-stop" and row["first"] <= i + 1 and i - 1 <= row["last"] and metres(
            self.ground.at(row["source"]["id"]), self.ground.at(stop)) < SAME_STOP_M for row in rows)
