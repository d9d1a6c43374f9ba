"""Is each pass of a loop really driven, distinct, tight and of its kind? Is none missing?

DECISIONS.md, Kinds and passes: `passes` lists every chance the loop drives, each once, under its most
special kind, with first and last stretch tight round it.
"""
import re
from functools import cached_property

from beside import Points, Runs
from counts import MANOEUVRES
from junctions import Junctions, Pass, movement_fits
from rings import FAMILY, Rings
from second_reader import words

JUNCTIONS = {"emerge", "turn-off", "narrow-mouth", "crossroads", "staggered-junction", "acute-junction",
             "stop-line", "signals", "filter-lane", "advanced-stop-line", "box-junction",
             "cycle-lane-mouth", "mini-roundabout", "double-mini"}
RUNS = {"twenty-zone", "twenty-limit", "country-road", "one-way", "dual-carriageway", "narrow-road",
        "single-track", "meeting-traffic", "cycle-lane", "bus-lane", "tram", "downhill", "motorway",
        "slip-road", "brow", "independent-stretch", "bends"}
POINTS = {"zebra", "signal-crossing", "level-crossing", "tram-crossing", "calming", "pinch-point", "ford",
          "limit-change", "lanes-merge", "bus-stop", "school"}
MOVED = {"emerge", "turn-off", "narrow-mouth", "crossroads", "signals", "filter-lane", "box-junction",
         "stop-line", "acute-junction", "staggered-junction", "mini-roundabout", "double-mini"}
LONG_ENOUGH_M = 100  # DECISIONS.md: a run of at least 100 m; these are met in a moment:
ANY_LENGTH = {"bus-lane", "tram", "brow", "school", "bends", "slip-road", "downhill"}
PLAIN_TAG = re.compile(r"^([a-z_]+(?::[a-z_:]+)?)=([^ ]+)(?: \(node/(\d+)\))?$")


class Passes:
    def __init__(self, ground, quiet):
        self.ground, self.quiet = ground, quiet
        self.junctions = Junctions(ground)
        self.points = Points(ground, self.junctions.claims)
        self.runs = Runs(ground, self.junctions.claims)
        self.rings = Rings(ground, self.junctions.lights)

    def check(self, tally, drive, rows):
        good = [p for i, p in enumerate(rows) if self._is_placed(tally, drive, i, p)]
        self._distinct(tally, good)
        for row in good:
            self._check_one(tally, Pass(drive, row))
        return good

    def _is_placed(self, tally, drive, i, row):
        return tally.check("pass: place", 0 <= row["first"] <= row["last"] < len(drive),
                           f"pass {i}: {row['first']} to {row['last']}") and tally.check(
            "pass: kind", row["kind"] in JUNCTIONS | RUNS | POINTS | set(FAMILY) | set(MANOEUVRES),
            f"pass {i}: {row['kind']}")

    @staticmethod
    def _distinct(tally, rows):
        seen = set()
        for row in rows:
            key = (row["kind"], row["movement"], row["first"], row["last"],
                   row["source"]["type"], row["source"]["id"])
            tally.check("pass: distinct", key not in seen, key)
            seen.add(key)

    def _check_one(self, tally, one):
        name = f"{one.kind} {one.movement} {one.first}-{one.last} by {one.row['source']}:"
        self._source(tally, one, name)
        if one.row["confidence"] == "noted":
            tally.check("pass: noted", bool(self.ground.noted.notes), name)  # by which one: noted.py
            return
        if one.kind in MANOEUVRES:
            self._manoeuvre(tally, one, name)
            return
        if one.kind in FAMILY:
            self._ring(tally, one, name)
            return
        if one.kind in MOVED:
            tally.check("pass: movement", movement_fits(one), name, f"{one.angle:.0f} degrees")
        if one.kind in RUNS:
            self._run(tally, one, name)
        else:
            rule = self._rule(one.kind)
            tally.check("pass: of its kind", rule(one), name, "the map doesn't say so")
            self._tight(tally, one, name)

    def _manoeuvre(self, tally, one, name):
        """A spot on one quiet stretch; a car park to bay-park in lies beside its road; one starts uphill
        where nothing tells of a fall (src/rules/pull_ups.txt, which names what each needs)."""
        fits = one.first == one.last and (
            one.kind in ("bay-park", "uphill-start") or self.quiet(one.drive.way(one.first)) is not False)
        if one.kind == "bay-park":
            fits &= self.ground.map.ways[one.row["source"]["id"]].tags.get("amenity") == "parking"
        if one.kind == "uphill-start":
            fits &= self.runs.downhill(one.drive, one.first) is not True
        tally.check("pass: of its kind", fits, name, "the map doesn't bear it")

    def _rule(self, kind):
        name = kind.replace("-", "_")
        return getattr(self.junctions if kind in JUNCTIONS else self.points, name, self.points.bears)

    def _source(self, tally, one, name):
        """The object named is in the map and bears the tag told."""
        source = one.row["source"]
        kept = {"way": self.ground.map.ways, "node": self.ground.map.places,
                "relation": self.ground.map.relations}[source["type"]]
        if not tally.check("pass: source", source["id"] in kept, name, "no such object"):
            return
        tags = self.ground.node(source["id"]) if source["type"] == "node" else kept[source["id"]].tags
        said = PLAIN_TAG.match(source["tag"])
        if said and said[3]:  # borne by a node on the way
            tags = self.ground.node(int(said[3])) if int(said[3]) in self.ground.line(
                source["id"]) else {}
        if said and one.certain:
            tally.check("pass: tag", said[2] in [tags.get(said[1])] + words(tags.get(said[1], "")), name, f"it has {tags}")

    def _tight(self, tally, one, name):
        """A junction or point is passed by what touches it: entry and exit are outside of it."""
        if one.kind in MOVED:
            short = one.drive.length(one.first + 1) if one.last > one.first + 1 else 0
            between_m = sum(one.drive.length(i) for i in range(one.first + 1, one.last))
            tally.check("pass: tight", one.last > one.first and between_m <= 150, name,
                        f"{between_m:.0f} m between entry and exit, {short:.0f}")

    def _run(self, tally, one, name):
        rule = getattr(self.runs, one.kind.replace("-", "_"))
        said = [rule(one.drive, i) for i in range(one.first, one.last + 1)]
        if one.kind == "single-track" and True in said:  # the special part of a narrow run names it
            said = [has or self.runs.narrow_road(one.drive, i)
                    for i, has in enumerate(said, one.first)]
        tally.check("pass: of its kind", False not in said, name,
                    f"stretch {one.first + said.index(False) if False in said else ''} isn't one")

    def _goes_off_at_once(self, one):
        """Two arms at one node of the ring: out by the next one, another road, nothing of the ring driven."""
        return (one.last == one.first + 1 and one.drive.way(one.first) != one.drive.way(one.last)
                and any(self.rings.of(w) for w in self.ground.ways_at[one.drive.nodes[one.first][-1]]))

    def _ring(self, tally, one, name):
        if self._goes_off_at_once(one):
            return
        ring = self.rings.of(one.drive.way(one.first + 1)) if one.last > one.first + 1 else None
        if not tally.check("pass: of its kind", ring is not None, name, "no ring behind its entry"):
            return
        inside = [self.rings.of(one.drive.way(i)) is ring for i in range(one.first, one.last + 1)]
        tally.check("pass: tight", not inside[0] and not inside[-1] and all(inside[1:-1]), name,
                    "entry, ring only, exit")
        tally.check("pass: most special kind", self.rings.kind(ring) == one.kind, name,
                    f"the map says {self.rings.kind(ring)}")
        tally.check("pass: movement", self.rings.movement_fits(ring, one.drive, one.row), name,
                    f"{one.angle:.0f} degrees")
        numbers = self.rings.exit_number(ring, one.drive, one.first, one.last)
        tally.check("pass: exit", numbers is None or one.row["exit"] in numbers | {None}, name,
                    f"exit {one.row['exit']}, counted {numbers}")

    def cluster_of(self, light):
        """The name of the cluster of lights that a light is of (second_kinds.py, signals)."""
        return self.clusters.get(f"node/{light}", light)

    @cached_property
    def clusters(self):
        return {name: min(group) for group in self.junctions.claims.signals().groups for name in group}
