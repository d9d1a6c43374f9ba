"""Which passes of a loop are of one place: what tells how often a place is used and how it is worth.

A ring is a place, and so is a cluster of lights, a mini or any other junction by its nodes; a run of road
is one by the ways it shares with another pass of its kind. DECISIONS.md, Kinds and passes.
"""
from functools import cached_property

import networkx

from counts import RUN_KINDS
from rings import FAMILY
from second_kinds import LIGHTS_M

FAMILIES = {"narrow-road": "narrow-road", "single-track": "narrow-road", "turn-off": "turn-off",
            "narrow-mouth": "turn-off", "mini-roundabout": "mini", "double-mini": "mini"}


class Places:
    """Of the passes of one loop; a name is shared by passes of one place."""

    def __init__(self, passes, drive, rows):
        self.passes, self.drive, self.rows = passes, drive, rows
        self.strict = self._names(rows, self._source)
        self.loose = self._names(rows, lambda row: self._parts(row) + self._around(row))

    @staticmethod
    def _names(rows, parts_of):
        links = networkx.Graph()
        for k, row in enumerate(rows):
            links.add_node(("pass", k))
            links.add_edges_from((("pass", k), part) for part in parts_of(row))
        return {id(rows[k[0]]): number
                for number, group in enumerate(networkx.connected_components(links))
                for what, *k in group if what == "pass"}

    def names(self):
        """Two readings of what is one place: by the object that says so, and by all that may join two
        passes into one place, such as roads that aren't driven. What a loop counts lies between."""
        return self.strict, self.loose

    def _source(self, row):
        if row["kind"] in FAMILY:
            return self._parts(row)
        name = row["kind"], row["source"]["type"], row["source"]["id"]
        if row["kind"] in RUN_KINDS:
            return [name]
        return [name + (min(self.drive.inner(row["first"], row["last"]), default=0),)]

    def _around(self, row):
        """The net of roads a run of road is of: a road not driven may join two runs into one."""
        kind = FAMILIES.get(row["kind"], row["kind"])
        if row["kind"] in RUN_KINDS:
            return [("net", kind)]
        nodes = self.drive.inner(row["first"], row["last"])
        if row["kind"] == "signals":
            return [("corner", self._corners[n]) for n in nodes]
        return [("near", kind, n) for n in nodes]

    @cached_property
    def _corners(self):
        """Nodes passed under lights, those of one junction by one name: two ways over it may have none in common."""
        nodes = {n for row in self.rows if row["kind"] == "signals"
                 for n in self.drive.inner(row["first"], row["last"])}
        return {n: min(group) for group in self.passes.ground.clusters(nodes, LIGHTS_M) for n in group}

    def _parts(self, row):
        """What a pass is of: names of rings, ways, nodes and clusters."""
        kind = FAMILIES.get(row["kind"], row["kind"])
        if row["kind"] in FAMILY:
            ring = self.passes.rings.of(self.drive.way(row["first"] + 1))
            return [("ring", min(ring.ways) if ring else row["source"]["id"])]
        if row["kind"] in RUN_KINDS:
            return [("way", kind, self.drive.way(i)) for i in range(row["first"], row["last"] + 1)]
        if row["kind"] in ("bus-stop",):
            return [("node", kind, row["source"]["id"])]
        nodes = self.drive.inner(row["first"], row["last"])
        own = [("node", kind, n) for n in nodes]
        if row["source"]["type"] == "node":
            own.append(("node", kind, row["source"]["id"]))
        if row["kind"] in ("signals", "signal-crossing"):
            # Those that say so may stand before the first node that is passed over.
            lights = nodes | ({row["source"]["id"]} if row["source"]["type"] == "node" else set())
            own += [("lights", self.passes.cluster_of(n)) for n in lights & self.passes.junctions.lights]
        return own
