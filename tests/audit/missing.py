"""Chances a loop drives that its passes must list: found by the raw tags along the drive.

Only what a tag alone decides is looked for, with the reasons to leave one out that the second reader of
kinds knows (tests/real/second_kinds.py), each with its source.
"""
from functools import cache, cached_property

from drive import TELLING_M
from houses import Houses
from rings import FAMILY
from second_reader import between, metres, words

NESTED = {  # DECISIONS.md, Kinds and passes: what may stand for what
    "mini-roundabout": ("mini-roundabout", "double-mini"),
    "twenty-limit": ("twenty-limit", "twenty-zone"),
    "narrow-road": ("narrow-road", "single-track"), "turn-off": ("turn-off", "narrow-mouth"),
    "signals": ("signals", "signal-crossing") + FAMILY}
POINTS = ("zebra", "level-crossing", "tram-crossing", "calming", "ford", "box-junction")
RUNS = ("twenty-zone", "one-way", "cycle-lane", "bus-lane", "narrow-road", "country-road",
        "dual-carriageway")
ANY_LENGTH = {"bus-lane"}
LEAST_M = 100
SERIES_M = 150
LEEWAY = 1.05     # of lengths that are measured in two ways
FLARE_M = 25      # second_runs.py: no street
AHEAD_DEG = 45
AHEAD_LEEWAY_DEG = 10


def told(rows, kind, first, last=None):
    """A pass of the kind, or of what may stand for it, that covers the stretches."""
    kinds = NESTED.get(kind, (kind,))
    last = first if last is None else last
    return any(row["kind"] in kinds and row["first"] <= first and last <= row["last"] for row in rows)


class Missing:
    def __init__(self, passes):
        self.ground, self.rings = passes.ground, passes.rings
        self.claims, self.lights = passes.junctions.claims, passes.junctions.lights
        self.runs, self.houses = passes.runs, Houses(passes.ground)

    def check(self, tally, drive, rows):
        self._rings(tally, drive, rows)
        self._minis(tally, drive, rows)
        for kind in POINTS:
            self._points(tally, drive, rows, kind)
        for kind in RUNS:
            self._runs(tally, drive, rows, kind)
        self._limit_changes(tally, drive, rows)

    def _rings(self, tally, drive, rows):
        for ring, entry, exit_ in self.rings.runs(drive):
            if not self.rings.is_drawn_right(ring):
                continue
            if drive.nodes[entry][-1] == drive.nodes[exit_][0] and not self.rings.is_round(
                    ring, drive, entry, exit_):
                continue  # past its own way out and all the way round: no chance a place offers
            kinds = ("mini-roundabout", "double-mini") if self.rings.is_traversable(ring) else FAMILY
            found = any(row["kind"] in kinds and (row["first"], row["last"]) == (entry, exit_)
                        for row in rows) or self.ground.noted.takes("roundabout", drive, entry)
            tally.check("none missing: roundabout", found, f"stretches {entry} to {exit_}: a ring")

    def _minis(self, tally, drive, rows):
        for i in range(len(drive) - 1):
            node = drive.nodes[i][-1]
            if (self.ground.node(node).get("highway") == "mini_roundabout"
                    and len(list(self.ground.arms_at(node))) > 2
                    and not self.ground.ways_at[node] & self.ground.in_ring):
                tally.check("none missing: mini-roundabout",
                            told(rows, "mini-roundabout", i, i + 1)
                            or self.ground.noted.takes("mini-roundabout", drive, i), f"stretch {i}: node/{node}")

    @cache
    def objects(self, kind):
        """Nodes that are one of the kind, less those there is a reason to leave out."""
        claims = getattr(self.claims, kind.replace("-", "_"))()
        claims.listed = set(claims.groups)
        return {int(name[5:]) for group in claims.groups for name in group
                if name.startswith("node/") and not any(test(name) for test in claims.reasons.values())}

    def _points(self, tally, drive, rows, kind):
        nodes = self.objects(kind)
        for i, line in enumerate(drive.nodes):
            inside = line[1:-1] if i + 1 == len(drive) else line[1:]
            for node in set(inside) & nodes:
                if kind == "zebra" and self._by_service_road(drive, i):
                    continue
                if kind == "calming" and self._begins_or_ends_among(drive, i, node, nodes):
                    continue
                if self._bears_on_us(drive, i, node) and not self.ground.noted.takes(kind, drive, i):
                    tally.check("none missing: " + kind, told(rows, kind, i),
                                f"stretch {i}: node/{node}")

    def _by_service_road(self, drive, i):
        """Into or out of a car park over its stripes: the rules for zebras are about roads (Highway Code 195)."""
        return any(self.ground.tags(drive.way(k)).get("highway") == "service"
                   for k in (i, min(i + 1, len(drive) - 1)))

    @cached_property
    def series(self):
        """Humps by each of them: those within 150 m of each other are one place (Highways (Road Humps) Regulations
        1999, as councils sum them up)."""
        return {int(name[5:]): {int(other[5:]) for other in group if other.startswith("node/")}
                for group in self.claims.calming().groups for name in group if name.startswith("node/")}

    def _begins_or_ends_among(self, drive, i, node, humps):
        """Who begins or ends between two of a series, or has met none but these since, doesn't drive it whole."""
        ours = self.series[node]
        for door, rows in ((drive.nodes[0], range(i + 1)), (drive.nodes[-1], range(i, len(drive)))):
            beside = any(hump != node and min(metres(self.ground.at(hump), self.ground.at(n)) for n in door) < SERIES_M
                         for hump in ours)
            if beside and {n for k in rows for n in drive.nodes[k]} & humps <= ours:
                return True
        return False

    def _bears_on_us(self, drive, i, node):
        """Not at a bend of the drive that turns back before it; not meant for who comes the other way
        (Key:direction)."""
        told = self.ground.node(node).get("direction", "both")
        other = {"along": "backward", "against": "forward"}[drive.direction(i)]
        return told != other

    def _runs(self, tally, drive, rows, kind):
        for first, last in self._runs_of(drive, kind):
            length = self._road_m(drive, first, last)
            if kind in ANY_LENGTH or length > LEAST_M * LEEWAY:
                tally.check("none missing: " + kind,
                            any(told(rows, kind, i) for i in range(first, last + 1)),
                            f"stretches {first} to {last}, {length:.0f} m")

    @staticmethod
    def _road_m(drive, first, last):
        """Metres of road: who turns round at a dead end drives no longer run."""
        pieces = {(s["way"], *sorted((s["from_index"], s["to_index"]))): s["metres"]
                  for s in drive.stretches[first:last + 1]}
        return sum(pieces.values())

    def _runs_of(self, drive, kind):
        """(first, last) of the longest runs of stretches that surely bear the kind."""
        start = None
        for i in range(len(drive) + 1):
            bears = 0 < i < len(drive) - 1 and self._surely(drive, i, kind)
            if bears and start is None:
                start = i
            if not bears and start is not None:
                yield start, i - 1
                start = None

    def _surely(self, drive, i, kind):
        return not self.ground.noted.takes(kind, drive, i) and getattr(self, "_is_" + kind.replace("-", "_"))(drive, i)

    def _is_twenty_zone(self, drive, i):
        return self.runs.twenty_zone(drive, i)

    def _is_one_way(self, drive, i):
        """A street, no half of a divided road, no ring, link or flare (second_runs.py)."""
        way, name = drive.way(i), f"way/{drive.way(i)}"
        return (drive.tags(i).get("oneway") in ("yes", "1", "true", "-1")
                and drive.tags(i)["highway"] != "service" and not self.claims.is_link(name)
                and self.rings.of(way) is None and "junction" not in drive.tags(i)
                and not self.claims.is_half(name) and self.ground.length(way) >= FLARE_M)

    def _is_narrow_road(self, drive, i):
        return (f"way/{drive.way(i)}" in self.runs.named("narrow-road")
                and drive.tags(i)["highway"] != "service")

    def _is_country_road(self, drive, i):
        """The national limit told by its type, outside built-up streets. Key:maxspeed:type."""
        return (drive.tags(i).get("maxspeed:type") == "GB:nsl_single"
                and drive.tags(i)["highway"] not in ("residential", "service")
                and "junction" not in drive.tags(i) and not self.houses.stand_beside(drive, i))

    def _is_dual_carriageway(self, drive, i):
        return (drive.tags(i).get("dual_carriageway") == "yes" and "junction" not in drive.tags(i)
                and not drive.tags(i)["highway"].startswith("motorway"))

    def _is_cycle_lane(self, drive, i):
        """A lane on our own side, or on both. Key:cycleway."""
        tags = drive.tags(i)
        if drive.tags(i)["highway"] == "service":
            return False
        near = "left" if (drive.direction(i) == "along") == self.ground.left else "right"
        return "lane" in (tags.get("cycleway:both"), tags.get("cycleway:" + near))

    def _is_bus_lane(self, drive, i):
        """Counted or listed in our direction. Bus_lanes."""
        tags, suffix = drive.tags(i), ":" + self.ground.suffix(drive.direction(i))
        counted = any(tags.get(key + suffix, "0") not in ("0", "") for key in ("lanes:bus", "lanes:psv"))
        return counted or "designated" in words(tags.get("bus:lanes" + suffix, "").replace("|", ";"))

    def _limit_changes(self, tally, drive, rows):
        """Certain limits that differ from one road to the next, straight on; a ring has none of its own
        (second_kinds.py)."""
        for i in range(1, len(drive) - 2):
            one, other = (drive.stretches[k]["limit"] for k in (i, i + 1))
            if (one["value"] == other["value"] or {one["confidence"], other["confidence"]} != {"certain"}
                    or any(drive.tags(k)["highway"] == "service" or drive.way(k) in self.ground.in_ring
                           or "junction" in drive.tags(k) for k in (i, i + 1))):
                continue
            if min(drive.length(i), drive.length(i + 1)) < TELLING_M:
                continue  # inside a junction; where it heads alone nobody can tell
            angle = between(drive.heading_in(i), drive.heading_out(i + 1))
            if abs(angle) <= AHEAD_DEG - AHEAD_LEEWAY_DEG and not self.ground.noted.takes(
                    "limit-change", drive, i):
                tally.check("none missing: limit-change", told(rows, "limit-change", i, i + 1),
                            f"stretch {i}: {one['value']}, then {other['value']}")
