"""What makes a point or a run of road of its kind, by the raw tags along one pass.

The claims of tests/real/second_kinds.py (each with its page of the OSM wiki) say which objects are of a
kind; here they are looked for along a drive. A rule answers whether one stretch, or one pass, bears it.
"""
from functools import cache, cached_property

from junctions import width_of
from second_claims import number_of
from second_reader import off_line
from second_runs import LANE_ON_ROAD, TWO_CARS_M

AT_NODES = {"zebra": ("zebra",), "level-crossing": ("level-crossing",), "tram-crossing": ("tram-crossing",),
            "calming": ("calming",), "pinch-point": ("pinch-point",), "ford": ("ford",)}
SCHOOL_M = 60 + 15  # MAP-TAGS.md 1.8: a gate or the fence within 60 m; and half a road's width
STOP_M = 25         # a stop beside a wide road (ours)
SIDE_TAGS = ("cycleway", "cycleway:left", "cycleway:right", "cycleway:both")


class Points:
    """Kinds that a node decides: the pass goes over it."""

    def __init__(self, ground, claims):
        self.ground, self.claims = ground, claims

    @cache
    def objects(self, kind):
        """Names of the objects that say so."""
        return frozenset().union(*getattr(self.claims, kind.replace("-", "_"))().groups)

    def bears(self, one):
        """A node or way of the pass is one of the kind's objects."""
        named = self.objects(one.kind)
        return (any(f"node/{n}" in named for n in one.nodes)
                or any(f"way/{w}" in named for w in one.ways))

    def signal_crossing(self, one):
        """Lights for people on foot, or lights where no roads meet. Key:crossing."""
        return any("traffic_signals" in self.ground.node(n).get("highway", "")
                   or self.claims.has_lights(self.ground.node(n)) for n in one.nodes)

    def tram_crossing(self, one):
        """A mapped crossing, or a node that road and tram share."""
        return self.bears(one) or bool(one.nodes & self.tram_nodes)

    @cached_property
    def tram_nodes(self):
        return {n for w in self.ground.map.ways.values() if w.tags.get("railway") == "tram"
                for n in w.nodes}

    def limit_change(self, one):
        """The limits told before and after differ (they themselves are checked, limits.py)."""
        before, after = (one.drive.stretches[i]["limit"]["value"] for i in (one.first, one.last))
        return before != after

    def lanes_merge(self, one):
        """Fewer lanes in our direction behind it, or an arrow that merges. Key:lanes, Key:turn."""
        lanes = [self.claims.lanes(one.drive.way(i), one.drive.direction(i)) -
                 (f"way/{one.drive.way(i)}" in self.objects("bus-lane"))  # no car's (Bus_lanes)
                 for i in (one.first, one.last)]
        tags = self.ground.tags(one.drive.way(one.first))
        merges = any("merge" in value for key, value in tags.items() if key.startswith("turn:lanes"))
        return merges or 0 < lanes[1] < lanes[0]

    def bus_stop(self, one):
        """The stop stands within 25 m of the road of the pass. Tag:highway=bus_stop."""
        stop = one.row["source"]["id"]
        return self.ground.node(stop).get("highway") == "bus_stop" and self.off(one, [stop]) <= STOP_M

    def school(self, one):
        """Told by a hazard, or a school's gate or fence is near. Tag:amenity=school."""
        if self.bears(one):
            return True
        source = one.row["source"]
        nodes = ([source["id"]] if source["type"] == "node" else
                 self.ground.map.ways[source["id"]].nodes if source["type"] == "way" else
                 [n for t, w, _ in self.ground.map.relations[source["id"]].members
                  if t == "w" and w in self.ground.map.ways for n in self.ground.map.ways[w].nodes])
        return self.off(one, nodes) <= SCHOOL_M

    def off(self, one, nodes):
        """Metres from the nearest of some nodes to the road of the pass."""
        places = [self.ground.at(n) for n in nodes if n in self.ground.map.places]
        steps = [(self.ground.at(a), self.ground.at(b)) for i in range(one.first, one.last + 1)
                 for a, b in zip(one.drive.nodes[i], one.drive.nodes[i][1:])]
        return min((off_line(place, a, b) for place in places for a, b in steps),
                   default=float("inf")) if len(places) > 1 else min(
            (off_line(place, a, b) for place in places for a, b in steps), default=float("inf"))


class Runs:
    """Kinds that are a run of road: does one stretch bear it? None when the tags leave it open."""

    def __init__(self, ground, claims):
        self.ground, self.claims = ground, claims

    @cache
    def named(self, kind):
        return frozenset().union(*getattr(self.claims, kind.replace("-", "_"))().groups)

    def twenty_zone(self, drive, i):
        return f"way/{drive.way(i)}" in self.named("twenty-zone")

    def twenty_limit(self, drive, i):
        """A 20 told for a stretch that is no zone; in Wales also the law's (checked as a limit)."""
        limit = drive.stretches[i]["limit"]
        return limit["value"] == 20 and limit["unit"] == "mph"

    def country_road(self, drive, i):
        """A national limit of single roads, outside streets."""
        limit, unit = (drive.stretches[i]["limit"][k] for k in ("value", "unit"))
        return limit >= (60 if unit == "mph" else 80) and drive.tags(i)["highway"] != "residential"

    def one_way(self, drive, i):
        return len(self.ground.directions(drive.way(i))) == 1

    def dual_carriageway(self, drive, i):
        way, tags = drive.way(i), drive.tags(i)
        return (f"way/{way}" in self.named("dual-carriageway") or tags.get("dual_carriageway") != "no"
                and len(self.ground.directions(way)) == 1 and self.beside_other_half(way))

    @cache
    def beside_other_half(self, way):
        return self.ground.beside_its_opposite(way)

    def narrow_road(self, drive, i):
        """Two cars don't fit by the tags or by the cars parked; one way, a car alone is tight: under
        2.75 m (MAP-TAGS.md 1.3)."""
        way, tags = drive.way(i), drive.tags(i)
        if not self.claims.two_way(way):
            return 0 < self.left_over(tags) < 2.75
        return (f"way/{way}" in self.named("narrow-road") | self.named("meeting-traffic")
                or 0 < self.left_over(tags) < TWO_CARS_M)

    @staticmethod
    def left_over(tags):
        """Metres of a mapped width that parked cars leave: 2 m a side (MAP-TAGS.md 1.3)."""
        sides = {key.removeprefix("parking:lane:").removeprefix("parking:")
                 for key, value in tags.items()
                 if key.startswith("parking:") and value in ("lane", "parallel")}
        parked = 2 if "both" in sides else len(sides & {"left", "right"})
        return width_of(tags) - 2.0 * parked

    def single_track(self, drive, i):
        """One lane for both ways, passing places, or under 4.1 m (Manual for Streets, figure 7.1)."""
        tags = drive.tags(i)
        a_place_to_pass = any(self.ground.node(n).get("highway") == "passing_place"
                              for n in self.ground.line(drive.way(i)))  # Tag:highway=passing_place
        return self.claims.two_way(drive.way(i)) and (
            tags.get("lanes") == "1" or tags.get("passing_places") == "yes" or a_place_to_pass
            or 0 < width_of(tags) < 4.1 or f"way/{drive.way(i)}" in self.named("narrow-road"))

    def meeting_traffic(self, drive, i):
        """Parked cars by the tags; terraces are inferred, and no tag's word."""
        return True if f"way/{drive.way(i)}" in self.named("meeting-traffic") else None

    def cycle_lane(self, drive, i):
        tags = drive.tags(i)
        return any(tags.get(key) in LANE_ON_ROAD for key in SIDE_TAGS)

    def bus_lane(self, drive, i):
        """Bus_lanes; and a lane that cycles share with buses (Key:cycleway=share_busway)."""
        tags = drive.tags(i)
        return (f"way/{drive.way(i)}" in self.named("bus-lane")
                or any(tags.get(key) == "share_busway" for key in SIDE_TAGS)
                or any(":lanes" in key and "no" in value for key, value in tags.items()))

    def tram(self, drive, i):
        return True if f"way/{drive.way(i)}" in self.named("tram") else None

    def downhill(self, drive, i):
        """8 % and more, down in the driving direction. Key:incline."""
        text = drive.tags(i).get("incline", "")
        if not text.endswith("%"):
            return None
        down = text.startswith("-") == (drive.direction(i) == "along")
        return down and number_of(text.lstrip("-")) >= 8

    def motorway(self, drive, i):
        return drive.tags(i)["highway"] == "motorway"

    def slip_road(self, drive, i):
        return drive.tags(i)["highway"].endswith("_link") or None

    def brow(self, drive, i):
        return None

    def independent_stretch(self, drive, i):
        """Signed to a place, or a road number (its own or its next roads')."""
        return None

    def bends(self, drive, i):
        """The road turns by 30 degrees at least somewhere along it (ours)."""
        return None

