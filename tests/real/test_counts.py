#!/usr/bin/python3
"""Counts of what was found in an extract, held against osmium-tool and a plain reading.

usage: test_counts.py PROGRAMS EXTRACT REGION

For each kind: what osmium tags-filter counts, what was found, and for every object in between the
rule that explains why it isn't counted. An object without an explanation fails the test.
"""
import json
import sys
import tempfile
from collections import Counter

import networkx

from dump_text import built, dump
from opl import Map, osmium_count

RINGS = {"roundabout", "multi-lane-roundabout", "signal-roundabout", "mini-roundabout"}
CARS = {"motorcar", "motor_vehicle", "vehicle"}
# Lights that hold no junction: OSM wiki, Key:traffic_signals.
OTHER_LIGHTS = {"level_crossing", "blinker", "blink_mode", "emergency"}


class Compare:
    def __init__(self, extract, raw, area, report):
        self.extract, self.raw, self.area = extract, raw, area
        self.oddities = {(o["type"], o["id"], o["what"]): o["detail"] for o in report["oddities"]}
        self.counts = report["counts"]
        self.on_road = raw.road_nodes()
        self.failures = []

    def odd(self, kind, number, what):
        return (kind, number, what) in self.oddities

    def told(self, name, expression, all_ids, found, explain):
        """Prints the line of one kind; explain(id) tells why an object isn't among the found."""
        counted = osmium_count(self.extract, expression)
        if counted != len(all_ids):
            self.failures.append(f"{name}: osmium counts {counted}, a plain reading {len(all_ids)}")
        for number in sorted(found - all_ids):
            self.failures.append(f"{name}: {number} was found but isn't in the map")
        why = Counter()
        for number in sorted(all_ids - found):
            reason = explain(number)
            why[reason] += 1
            if reason is None:
                self.failures.append(f"{name}: {number} is missing without a rule that says why")
        rest = ", ".join(f"{count} {reason}" for reason, count in why.items())
        print(f"{name}: osmium {counted}, found {len(found)}" + (f", not: {rest}" if rest else ""))

    def tagged(self, key, value):
        return {n for n, tags in self.raw.nodes.items() if value in tags.get(key, "").split(";")}

    def flagged(self, flag):
        return {n for n, flags in self.area.nodes.items() if flag in flags}

    def signals(self):
        def explain(node):
            tags = self.raw.nodes[node]
            if node not in self.on_road:
                return "on no road"
            if tags.get("traffic_signals") in OTHER_LIGHTS or "railway" in tags:
                return "lights that hold no junction"
            return None
        self.told("traffic lights", "n/highway=*traffic_signals*",
                  self.tagged("highway", "traffic_signals"), self.flagged("signals"), explain)

    def level_crossings(self):
        rails = self.raw.rail_nodes()
        tagged = self.tagged("railway", "level_crossing")
        places = [set(p.nodes) & tagged for p in self.area.places if p.kind == "level-crossing"]
        found = set().union(*places)
        if sum(map(len, places)) != len(found):
            self.failures.append("level crossings: one node is in two places")

        def explain(node):
            if node not in self.on_road:
                return "on no road"
            return "without a railway in use" if node not in rails else None
        self.told("level crossings (tracks)", "n/railway=level_crossing", tagged, found, explain)
        print(f"  joined over several tracks: {len(places)} crossings")

    def minis(self):
        found = {p.source[1] for p in self.area.places
                 if p.kind == "mini-roundabout" and p.source[0] == "node"}

        def explain(node):
            if node not in self.on_road:
                return "on no road"
            for what in ("mini-roundabout at a road's end", "mini-roundabout on a roundabout's ring"):
                if self.odd("node", node, what):
                    return "reported: " + what
            return None
        self.told("mini-roundabouts", "n/highway=mini_roundabout",
                  self.tagged("highway", "mini_roundabout"), found, explain)

    def ring_ways(self):
        return {w for w, way in self.raw.ways.items()
                if way.tags.get("junction") in ("roundabout", "circular")}

    def cycles_of_rings(self):
        """Closed ways round, by a library: components of the ring ways' directed edges."""
        graph = networkx.DiGraph()
        for number in self.ring_ways():
            if not self.raw.is_road(number):
                continue
            way = self.raw.ways[number]
            nodes = way.nodes[::-1] if way.tags.get("oneway") == "-1" else way.nodes
            graph.add_edges_from(zip(nodes, nodes[1:]), way=number)
        for component in networkx.strongly_connected_components(graph):
            if len(component) > 1:
                ring = graph.subgraph(component)
                # Rings that touch in a node are one component and yet two roundabouts.
                touching = sum(ring.out_degree(n) - 1 for n in ring)
                yield {way for _, _, way in ring.edges.data("way")}, 1 + touching

    def rings(self):
        places = [p for p in self.area.places if p.kind in RINGS and p.ways]
        found = {way for place in places for way in place.ways}

        def explain(way):
            if not self.raw.is_road(way):
                return "on no road"
            for what in ("roundabout isn't closed", "circular road is open both ways"):
                if self.odd("way", way, what):
                    return "reported: " + what
            return None
        self.told("roundabout ways", "w/junction=roundabout,circular", self.ring_ways(), found,
                  explain)
        expected = sum(count for _, count in self.cycles_of_rings())
        print(f"  joined into {len(places)} rings; by networkx {expected}")
        if len(places) != expected:
            self.failures.append(f"rings: {len(places)} found, {expected} by networkx")

    def binds_no_car(self, relation):
        tags = relation.tags
        if CARS & {mode.strip() for mode in tags.get("except", "").split(";")}:
            return True
        keys = [key for key in tags if key.split(":")[0] == "restriction"]
        ours = [k for k in keys if set(k.split(":")[1:]) <= CARS | {"conditional"}]
        conditions = all("@" in tags[k] and "weight" in tags[k] for k in ours)
        return bool(keys) and conditions

    def unusable(self, relation, detail):
        """True when the reason given for leaving a restriction out holds."""
        roles = {role: [(t, ref) for t, ref, r in relation.members if r == role]
                 for role in ("from", "via", "to")}
        ways = [ref for t, ref, role in relation.members if t == "w" and role in roles]
        via_nodes = [ref for t, ref in roles["via"] if t == "n"]
        inside = [w for role in ("from", "to") for t, w in roles[role] if w in self.raw.ways
                  and via_nodes and via_nodes[0] in self.raw.ways[w].nodes[1:-1]]
        meets = all(via_nodes and via_nodes[0] in self.raw.ways[w].nodes for w in ways
                    if w in self.raw.ways)
        reasons = {
            "a from or to way is missing": not roles["from"] or not roles["to"],
            "it has several from ways": len(roles["from"]) > 1,
            "it has several to ways": len(roles["to"]) > 1,
            "via is both node and way": len({t for t, _ in roles["via"]}) > 1,
            "it has several via nodes": len(via_nodes) > 1,
            "it has no via": not roles["via"],
            "a way isn't a road of this extract": not all(map(self.raw.is_road, ways)),
            "its via node isn't on both ways": not meets,
            "a way isn't split at its via node": bool(inside),
            "from and to are the same way": roles["from"] == roles["to"],
            "its kind isn't known": not relation.tags.get("restriction", "").startswith(
                ("no_", "only_")),
            "its ways don't join": not via_nodes,
            "its ways join in more than one way": not via_nodes,
            "its ways join in too many ways": not via_nodes,
        }
        return reasons[detail]

    def restrictions(self):
        relations = {r: relation for r, relation in self.raw.relations.items()
                     if relation.tags.get("type", "").startswith("restriction")}
        what = "turn restriction can't be used"

        def explain(number):
            if self.odd("relation", number, what):
                detail = self.oddities[("relation", number, what)]
                return detail if self.unusable(relations[number], detail) else None
            return "for other vehicles" if self.binds_no_car(relations[number]) else None
        self.told("turn restrictions", "r/type=restriction*", set(relations), self.area.rules,
                  explain)
        if self.counts.get("turn restrictions", 0) != len(relations):
            self.failures.append("turn restrictions: the report counts otherwise")


def main():
    programs, extract, region = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        area_file, report_file = built(programs, extract, region, folder)
        area = dump(programs, area_file)
        report = json.loads(report_file.read_text())
    compare = Compare(extract, Map(extract), area, report)
    for check in (compare.rings, compare.minis, compare.level_crossings, compare.signals,
                  compare.restrictions):
        check()
    for failure in compare.failures:
        print(failure)
    return 1 if compare.failures else 0


if __name__ == "__main__":
    sys.exit(main())
