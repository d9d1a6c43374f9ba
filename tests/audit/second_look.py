"""A second look at a wish that wasn't met: is the reason told borne out by the raw map?

Times here are lower bounds: each road at its limit, no waiting. What can't be confirmed by the tags is
counted as told only (`shortfall: told`).
"""
import re
from functools import cache

import networkx

from counts import stands_for
from limits import parsed
from rings import FAMILY

MPS = {"mph": 0.44704, "km/h": 1 / 3.6}
FASTEST = 70 * 0.44704    # Highway Code 124: no road is faster
NO_SUCH = re.compile(r"^the map has no [a-z:-]+ in this area(; few gradients are mapped: .*)?$")
NEAREST = re.compile(r"^the nearest \S+ is (\d+) minutes? away; there and home takes (\d+) of (\d+) minutes?$")
FEWER = re.compile(r"^(\d+) of (\d+) \S+ found")
OF_PART = re.compile(r"^part \d+: ")
BARRED = re.compile(r"passes something|which is avoided|harder than|kept off|too hard")


def lacking(asked, answer, read):
    """What the answer falls short of, by what was read of its loops; empty: the wish is met."""
    if not answer["loops"]:
        return ["no loop"]
    first = answer["loops"][0]
    met = [m for part in [first, *first.get("parts", [])] for m in part["met"]]
    lacks = [m["kind"] for m in met if m["asked"] != "max" and m["got"] < m["asked"]]
    for one in read:
        loop = one.lesson.loop
        if "variant" not in loop:
            lacks += ["a planned stop"] * one.stops.without_place()
            lacks += [] if one.independent.is_long_enough() else ["independent driving"]
        lacks += [f"easy first, {row['kind']}" for row in one.lesson.off_ramp()]
    if asked.through and asked.minutes:
        away = first["seconds"]["likely"] + first["stop_seconds"]
        lacks += ["minutes"] if away > 60 * (asked.minutes - asked.reserve) else []
    # Which of them the loops take is looked at by off_limits.py.
    return lacks + [f"{name} not taken" for name in (answer["shortfall"] or {}).get("not_taken", [])]


class SecondLook:
    def __init__(self, ground, missing):
        self.ground, self.missing = ground, missing

    def check(self, tally, asked, answer, exit_code, read):
        """`read`: what was read of each loop."""
        shortfall = answer["shortfall"]
        if exit_code is not None:
            tally.check("exit code", exit_code == (4 if shortfall else 0), exit_code)
        lacks = lacking(asked, answer, read)
        if shortfall is None:
            tally.check("met", not lacks, lacks, "and no shortfall says so")
            return
        tally.check("shortfall: why", bool(shortfall["why"]))
        tally.check("shortfall: of something", bool(lacks), "all is met")
        tally.check("shortfall: not easy", shortfall["why"].startswith("not easy") == any(
            one.lesson.off_ramp() for one in read), shortfall["why"])
        self._stops(tally, shortfall.get("stops", []), read)
        for missing in shortfall.get("missing", []):
            self._missing(tally, asked, missing)

    @staticmethod
    def _stops(tally, told, read):
        """A line for each planned stop that has no place, of each loop that is no variant."""
        for one in read:
            name = f"loop {one.lesson.loop['id']}: "
            if "variant" not in one.lesson.loop:
                lines = sum(text.startswith(name) for text in told)
                tally.check("shortfall: stops", lines == one.stops.without_place(), name, told)

    def _missing(self, tally, asked, missing):
        name = f"{missing['kind']} {missing['movement'] or ''}:"
        most = 1 if missing["asked"] == "max" else missing["asked"]
        tally.check("shortfall: missing", bool(missing["why"]) and missing["got"] < most and any(
            (want.kind, want.movement or None) == (missing["kind"], missing["movement"])
            for want in asked.all_wants), name, missing)
        self._reason(tally, asked, missing, name)
        if missing["nearest"] is not None:
            self._nearest(tally, asked, missing, name)

    def _reason(self, tally, asked, missing, name):
        why = OF_PART.sub("", missing["why"])
        said = NEAREST.match(why)
        if NO_SUCH.match(why):
            tally.check("shortfall: no such", not self._driven(missing["kind"]), name,
                        sorted(self._driven(missing["kind"]))[:3])
        elif said:
            tally.check("shortfall: too far", int(said[2]) > int(said[3]) or
                        missing["needs_minutes"] > int(said[3]) - 1, name, why)
        elif FEWER.match(why):
            got, wanted = map(int, FEWER.match(why).groups())
            tally.check("shortfall: fewer", (got, wanted) == (missing["got"], missing["asked"]), name, why)
        elif why.endswith("wanted and avoided by the same wish"):
            tally.check("shortfall: avoided", any(
                (stands_for(missing["kind"], kind) or stands_for(kind, missing["kind"]))
                and movement in ("", missing["movement"]) for kind, movement in asked.avoid), name, asked.avoid)
        elif BARRED.search(why):
            tally.check("shortfall: barred", bool(asked.avoid or asked.keep_off or asked.hardest < 5
                                                  or asked.level is not None), name, why)
        else:
            tally.claims["shortfall: told"] += 1

    @cache
    def _driven(self, kind):
        """Nodes and rings of a kind, by tags, that roads in use lead over; only of kinds a tag decides and
        that no movement narrows."""
        if kind in FAMILY:
            return {min(ring.ways) for ring in self.missing.rings.by_way.values()
                    if stands_for(self.missing.rings.kind(ring), kind)
                    and any(self.ground.is_driven(w) for w in ring.ways)} if kind == "roundabout" else set()
        if kind in ("zebra", "level-crossing"):
            return {n for n in self.missing.objects(kind) if self.ground.is_driven_over(n)}
        return set()

    # --- how far ------------------------------------------------------------------------------------

    @cache
    def _seconds(self, way):
        """Seconds a metre at the way's limit."""
        number = parsed(self.ground.tags(way).get("maxspeed", ""))
        return 1 / (number[0] * MPS[number[1]] if number and number[0] > 0 else FASTEST)

    def _least_seconds(self, place):
        """From a door to every node, at the least."""
        near = self.ground.door_steps(place)
        if not near:
            return {}
        seeds = {node for off, a, b in near if off <= near[0][0] + 60 for node in (a, b)
                 if node in self.ground.net}
        return networkx.multi_source_dijkstra_path_length(
            self.ground.net, seeds, weight=lambda a, b, edge: edge["metres"] * self._seconds(edge["way"]))

    def _road_nodes(self, place):
        """Nodes of the road that a place is on, or of those beside a car park's outline."""
        number, roads = place["id"], self.ground.roads
        if place["type"] == "node":
            return [number]
        if place["type"] == "way" and number in roads:
            return self.ground.line(number)
        ways = {"way": self.ground.map.ways, "relation": self.ground.map.relations}[place["type"]]
        if number not in ways or ways[number].tags.get("amenity") != "parking":
            return []
        outline = (ways[number].nodes if place["type"] == "way" else
                   [n for t, w, _ in ways[number].members
                    if t == "w" and w in self.ground.map.ways for n in self.ground.map.ways[w].nodes])
        beside = {self.ground.nearest_road(self.ground.at(n))[1]
                  for n in outline if n in self.ground.map.places}
        return [n for w in beside - {None} for n in self.ground.line(w)]

    def _nearest(self, tally, asked, missing, name):
        nearest = missing["nearest"]
        nodes = self._road_nodes(nearest)
        if not tally.check("shortfall: nearest", bool(nodes), name, nearest):
            return
        reached = self._least_seconds(asked.home)
        least = min((reached[n] for n in nodes if n in reached), default=None)
        if least is not None and missing["nearest_minutes"] is not None:
            longest_m = 1000  # a way's own length may lie between its node and the place on it
            tally.check("shortfall: nearest minutes", missing["nearest_minutes"] * 60 >=
                        least - longest_m / FASTEST * (nearest["type"] == "way") - 4, name,
                        f"{missing['nearest_minutes']} min, at the limits {least / 60:.1f}")
        if missing["needs_minutes"] is not None and missing["nearest_minutes"] is not None:
            tally.check("shortfall: needs", missing["needs_minutes"] >= missing["nearest_minutes"], name)
