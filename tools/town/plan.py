"""Reads a plan and draws its town (tools/draw-town lists the commands)."""
import math
import re
import shlex
import sys
from collections import Counter, defaultdict

from town.line import Line, cross, nearest_of
from town.shape import angle_of, apart, bend, beside, cm, on_circle, towards

JOIN_M = 30.0    # an end this near to a road is meant to meet it
CARRIAGEWAY_M = 7.0   # from the middle of a dual carriageway to the middle of either side
FLARE_M, FLARE_HALF_M = 38.0, 8.0   # length and half width of a splitter island
FRONT_M, CORNER_M = 9.0, 12.0   # house fronts from the middle of the street, and from its corners
KERB_M = 5.0     # a bus stop's pole from the middle of the road
END_MARKS = {    # tags, and how far before the end they stand
    "give_way": ({"highway": "give_way"}, 6.0),
    "stop": ({"highway": "stop"}, 6.0),
    "signals": ({"highway": "traffic_signals"}, 9.0),
    "turning_circle": ({"highway": "turning_circle"}, 0.0),
    "edge": ({}, 0.0),   # leads off the map
}
POINT = re.compile(r"(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)(~?)$")


class Town:
    """Everything drawn so far."""

    def __init__(self):
        self.sets, self.rings, self.lines = {}, {}, []
        self.node_tags = defaultdict(dict)   # by point
        self.crossings, self.bans, self.buses = [], [], []
        self.areas, self.spots = [], []
        self.late = []                       # signs, put down once the roads are joined
        self.origin = (0.0, 0.0)
        self.troubles = []                   # what the plan says that can't be drawn

    # --- reading the plan ------------------------------------------------------------------------

    def read(self, text):
        for number, line in enumerate(text.splitlines(), 1):
            words = shlex.split(line, comments=True)
            if not words:
                continue
            try:
                getattr(self, "do_" + words[0])(words[1:])
            except (AttributeError, KeyError, ValueError, IndexError) as trouble:
                sys.exit(f"line {number}: {line.strip()}: {trouble!r}")

    def tags_in(self, words):
        tags = {}
        for word in words:
            key, equals, value = word.partition("=")
            tags.update({key: value} if equals else self.sets[word])
        return tags

    def points_and_tags(self, words):
        count = 0
        while count < len(words) and (POINT.match(words[count]) or words[count][0] == "@"):
            count += 1
        return words[:count], self.tags_in(words[count:])

    @staticmethod
    def point(word):
        x, y, _ = POINT.match(word).groups()
        return cm(float(x), float(y))

    def do_origin(self, words):
        self.origin = (float(words[0]), float(words[1]))

    def do_set(self, words):
        self.sets[words[0]] = self.tags_in(words[1:])

    def do_ring(self, words):
        centre, radius = self.point(words[1]), float(words[2])
        turns = [on_circle(centre, radius, -math.radians(15 * i)) for i in range(24)]
        tags = {"junction": "roundabout"} | self.tags_in(words[3:])
        ring = Line("ring", turns + turns[:1], tags)
        ring.centre, ring.radius, ring.signals = centre, radius, tags.pop("signals", "no") == "yes"
        self.rings[words[0]] = ring
        self.lines.append(ring)

    def do_road(self, words):
        points, tags = self.points_and_tags(words[2:])
        named = {} if words[0] == "-" else {"name": words[0]}
        self.add_road(points, named | {"highway": words[1]} | tags)

    def do_dual(self, words):
        points, tags = self.points_and_tags(words[2:])
        tags = {"name": words[0], "highway": words[1], "oneway": "yes"} | tags
        inner = [self.point(p) for p in points[1:-1]]
        for way_points, names in ((inner, points), (inner[::-1], points[::-1])):
            left = beside(way_points, CARRIAGEWAY_M)
            start = self.meet(names[0], way_points[0], -1, CARRIAGEWAY_M)
            end = self.meet(names[-1], way_points[-1], +1, CARRIAGEWAY_M)
            self.lines.append(Line("road", bend([start] + left + [end]), dict(tags)))

    def do_rail(self, words):
        points, tags = self.points_and_tags(words[1:])
        middle = [self.point(p) for p in points]
        for side in [0.0] if words[0] == "1" else [1.9, -1.9]:
            line = [middle[0]] + beside(middle, side)[1:-1] + [middle[-1]]
            self.lines.append(Line("rail", bend(line), {"railway": "rail"} | tags))

    def do_crossing(self, words):
        self.crossings.append((self.point(words[0]), self.tags_in(words[1:])))

    def do_at(self, words):
        self.late.append((self.put_sign, self.point(words[0]), self.tags_in(words[1:])))

    def do_junction(self, words):
        self.late.append((self.put_control, self.point(words[0]), self.tags_in(words[1:])))

    def do_ban(self, words):
        self.bans.append((words[0], words[1:4], self.tags_in(words[4:])))

    def do_bus(self, words):
        self.buses.append((words[0], words[1:]))

    def do_area(self, words):
        points, tags = self.points_and_tags(words)
        corners = [self.point(p) for p in points]
        self.areas.append((corners + corners[:1], tags))

    def do_spot(self, words):
        self.spots.append((self.point(words[0]), self.tags_in(words[1:])))

    def do_houses(self, words):
        self.late.append((self.put_houses, words[0], float(words[1]), self.tags_in(words[2:])))

    def do_stop(self, words):
        side = {"bus": +1, "back": -1}[words[2]]
        self.late.append((self.put_stop, words[0], self.point(words[1]), side))

    # --- roads and rings -------------------------------------------------------------------------

    def meet(self, word, from_point, inward, half_m):
        """Where a one-way side of a road meets a ring: to the left of whoever drives in."""
        ring = self.rings[word.strip("@^")]
        angle = angle_of(ring.centre, from_point) - inward * math.asin(half_m / ring.radius)
        place = on_circle(ring.centre, ring.radius, angle)
        distance, segment, _ = ring.nearest(place)
        assert distance < 2
        if inward > 0 and ring.signals:
            self.late.append((self.put_ring_signal, ring, angle))
        return ring.add(segment, place, 3.0)

    def add_road(self, words, tags):
        """One road, its forks at rings included."""
        points = [None if w[0] == "@" else self.point(w) for w in words]
        for end, beyond in ((0, 1), (-1, -2)):
            if words[end][0] != "@":
                continue
            if words[end].endswith("^"):
                points[end] = self.fork(words[end], points[beyond], tags)
            else:
                points[end] = self.meet(words[end], points[beyond], +1, 0.0)
        kind = "service" if tags["highway"] == "service" else "road"
        self.lines.append(Line(kind, bend(points), dict(tags)))

    def fork(self, word, from_point, tags):
        """Both sides of a splitter island; returns the point where they part."""
        ring = self.rings[word.strip("@^")]
        part = towards(ring.centre, from_point, ring.radius + FLARE_M)
        kept = {k: v for k, v in tags.items() if k in ("name", "highway", "ref", "maxspeed",
                                                       "maxspeed:type", "lit")}
        for inward in (+1, -1):
            place = self.meet(word, part, inward, FLARE_HALF_M)
            line = Line("road", [part, place][::inward], kept | {"oneway": "yes"})
            if inward > 0 and ring.signals:
                line.ends[-1] = "signals"
            self.lines.append(line)
        return part

    def put_ring_signal(self, ring, angle):
        """The light on the ring that holds back those who drive round, just before an entry."""
        place = on_circle(ring.centre, ring.radius, angle + 7.0 / ring.radius)
        _, segment, at = ring.nearest(place)
        self.node_tags[ring.add(segment, at, 2.0)]["highway"] = "traffic_signals"

    # --- joining ---------------------------------------------------------------------------------

    def join(self):
        roads = [line for line in self.lines if line.kind != "rail"]
        for line in roads:
            for end in (0, -1):
                if line.kind != "ring":
                    self.join_end(line, end, roads)
        for i, line in enumerate(roads):
            for other in roads[i + 1:]:
                if line.layer == other.layer:
                    cross(line, other)
        self.cross_rails(roads)
        for line in roads:
            for end, mark in line.ends.items():
                if mark:
                    self.put_end_mark(line, end, mark)

    def join_end(self, line, end, roads):
        point = line.points[end]
        others = [r for r in roads if r is not line and r.layer == 0]
        if any(point in other.points for other in roads if other is not line):
            return
        (distance, segment, at), other = nearest_of(others, point)
        if distance > JOIN_M:
            if line.ends[end] in ("turning_circle", "edge"):
                return
            self.troubles.append(f"{line.tags.get('name')}: its end {point} meets nothing (nearest:"
                                 f" {other.tags.get('name')}, {distance:.0f} m)")
            return
        if len(line.points) > 2:   # the curve may have overshot: draw its last bit again
            inner = line.points[1] if end == 0 else line.points[-2]
            if apart(inner, at) < JOIN_M:
                line.points.pop(1 if end == 0 else -2)
        line.points[end] = other.add(segment, at)

    def cross_rails(self, roads):
        wanted = list(self.crossings)
        for rail in (line for line in self.lines if line.kind == "rail"):
            for road in (r for r in roads if r.layer == rail.layer):
                for place in cross(rail, road, 0.5):
                    near = [tags for at, tags in wanted if apart(at, place) < 40]
                    if not near:
                        self.troubles.append(f"{road.tags.get('name')} crosses the railway at {place}")
                        continue
                    self.node_tags[place].update({"railway": "level_crossing"} | near[0])

    # --- signs -----------------------------------------------------------------------------------

    def put_end_mark(self, line, end, mark):
        tags, before_m = END_MARKS[mark]
        if before_m == 0:
            self.node_tags[line.points[end]].update(tags)
            return
        inner = line.points[1] if end == 0 else line.points[-2]
        place = towards(line.points[end], inner, min(before_m, apart(line.points[end], inner) / 2))
        line.points.insert(1 if end == 0 else len(line.points) - 1, place)
        key = "traffic_signals:direction" if mark == "signals" else "direction"
        self.node_tags[place].update(tags | {key: "backward" if end == 0 else "forward"})

    def put_sign(self, point, tags):
        roads = [line for line in self.lines if line.kind in ("road", "service")]
        (distance, segment, at), line = nearest_of(roads, point)
        if distance > JOIN_M:
            self.troubles.append(f"no road at {point} for {tags}")
            return
        self.node_tags[line.add(segment, at, 2.0)].update(tags)

    def put_houses(self, street, step_m, tags):
        """House numbers along a street, from the first metres of its first road on."""
        number = 1
        for line in (l for l in self.lines if l.tags.get("name") == street):
            for metres in range(int(CORNER_M), int(line.length() - CORNER_M), 1):
                if (metres - int(CORNER_M)) % step_m >= 1:
                    continue
                for side in (+1, -1):
                    house = {"addr:housenumber": str(number), "addr:street": street} | tags
                    self.spots.append((line.beside(metres, side * FRONT_M), house))
                    number += 1

    def put_stop(self, name, point, side):
        roads = [line for line in self.lines if line.kind == "road"]
        (distance, segment, at), line = nearest_of(roads, point)
        if distance > JOIN_M:
            self.troubles.append(f"no road at {point} for the bus stop {name}")
            return
        place = line.beside(line.along(segment, at), side * KERB_M)
        self.spots.append((place, {"highway": "bus_stop", "name": name}))

    def put_control(self, point, tags):
        self.node_tags[self.junction_near(point)].update(tags)

    def junction_near(self, point):
        uses = Counter(p for line in self.lines if line.kind in ("road", "service", "ring")
                       for p in set(line.points))
        place = min((p for p, count in uses.items() if count > 1),
                    key=lambda p: (apart(p, point), p))
        if apart(place, point) > JOIN_M:
            self.troubles.append(f"no junction at {point} (nearest: {place})")
        return place

    # --- turn bans and bus routes ----------------------------------------------------------------

    def split_at(self, place):
        """Cuts every road that runs on through a point."""
        for line in list(self.lines):
            if line.kind == "road" and place in line.points[1:-1]:
                at = line.points.index(place)
                rest = Line(line.kind, line.points[at:], dict(line.tags))
                rest.layer = line.layer
                line.points = line.points[:at + 1]
                self.lines.insert(self.lines.index(line) + 1, rest)

    def road_through(self, word, *places):
        """The road nearest to a point of the plan among those that end at the given places."""
        point = self.point(word)
        ways = [line for line in self.lines if line.kind == "road"
                and all(p in (line.points[0], line.points[-1]) for p in places)]
        return min(ways, key=lambda line: line.nearest(point)[0])

    def distance_to_road(self, word, place):
        return self.road_through(word, place).nearest(self.point(word))[0]

    def resolve_bans(self):
        """Members of each restriction, as (line or point, role)."""
        found = []
        for _, (_, via, _), _ in self.bans:
            if via.endswith("~"):
                road = self.road_through(via)
                self.split_at(road.points[0])
                self.split_at(road.points[-1])
            else:
                self.split_at(self.junction_near(self.point(via)))
        for kind, (start, via, end), tags in self.bans:
            if via.endswith("~"):
                road = self.road_through(via)
                places = (road.points[0], road.points[-1])
                first = min(places, key=lambda p: self.distance_to_road(start, p))
                second = places[1] if first == places[0] else places[0]
                members = [(self.road_through(start, first), "from"), (road, "via"),
                           (self.road_through(end, second), "to")]
            else:
                place = self.junction_near(self.point(via))
                members = [(self.road_through(start, place), "from"), (place, "via"),
                           (self.road_through(end, place), "to")]
            found.append((members, ban_tags(kind, tags)))
        return found

    def resolve_buses(self):
        routes = []
        for ref, names in self.buses:
            ways = [line for name in names for line in self.lines if line.tags.get("name") == name]
            routes.append(([(way, "") for way in ways],
                           {"type": "route", "route": "bus", "ref": ref}))
        return routes


def ban_tags(kind, tags):
    tags = {"type": "restriction"} | tags
    hours = tags.pop("hours", None)
    if hours:
        return tags | {"restriction:conditional": f"{kind} @ ({hours})"}
    return tags | {"restriction": kind}
