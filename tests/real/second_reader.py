"""A second reading of a map: what a learner's car may do on its roads, from the raw tags alone.

Written from the OSM wiki pages named beside each rule, and from nothing of the program under test.
Roads are ways; an object is named as in the report of a build: "way/5", "node/7".
"""
import itertools
import math
import re
from collections import defaultdict
from functools import cache, cached_property

import networkx

from opl import Map
from second_grounds import Grounds

OPEN = {"yes", "designated", "permissive", "official"}  # Key:access
UNSEALED = {"unpaved", "gravel", "fine_gravel", "dirt", "earth", "ground", "mud", "grass", "sand",
            "compacted", "pebblestone", "wood", "rock"}  # Key:surface
ROUGH = {"bad", "very_bad", "horrible", "very_horrible", "impassable"}  # Key:smoothness
ON = OPEN | {"destination"}  # Key:access: a road that leads on, for some at least
MODES = ("motorcar", "motor_vehicle", "vehicle", "access")  # the most special first
FAVOURS = {"delivery", "disabled", "loading", "customers", "agricultural", "forestry", "emergency",
           "staff"}  # ours: hours given to these alone are given to nobody else
OTHERS = re.compile(r"weight|length|width|height|axle|trailer|stay|hgv|bus|psv|taxi|delivery")
CLAUSE = re.compile(r"([^;@]+)@\s*(\([^()]*(?:\([^()]*\)[^()]*)*\)|[^;]*)")
WALLS = {"bollard", "block", "chain", "jersey_barrier", "bus_trap", "sump_buster", "cycle_barrier",
         "gate", "lift_gate", "swing_gate", "yes", "bump_gate"}
NO_THROUGH = {"driveway", "parking_aisle", "drive-through", "drive_through", "emergency_access"}  # Key:service
WORKS = {"no", "minor", "widening"}  # Key:construction: these let traffic by
PARTNER_M = 50  # ours: the other half of a divided road
PARTNER_DEG = 145
HEADING_M = 15
ISLAND_DEG = 120  # ours: only turning round is so sharp
STRAIGHT_DEG, GAP_M, GAP_OF_ONE_NAME_M = 60, 40, 20  # ours: gaps in a reservation (DEVELOPERS.md, roads)
BACK = {"along": "against", "against": "along"}
TOWN_KM = 20  # a part of the net as long as this is a town of its own (DEVELOPERS.md, roads)


def off_line(point, a, b):
    """Metres from a point to the line from a to b."""
    east = 111_195 * math.cos(math.radians(point[0]))
    (ax, ay), (bx, by) = (((p[1] - point[1]) * east, (p[0] - point[0]) * 111_195) for p in (a, b))
    length = (bx - ax) ** 2 + (by - ay) ** 2
    along = 0 if length == 0 else max(0, min(1, (ax * (ax - bx) + ay * (ay - by)) / length))
    return math.hypot(ax + along * (bx - ax), ay + along * (by - ay))


def clauses(text):
    """(value, condition) of each clause of a conditional text."""
    return [(value.strip(), when.strip()) for value, when in CLAUSE.findall(text)]


def words(text):
    return [word.strip() for word in text.split(";") if word.strip()]


def metres(a, b):
    """Between two (lat, lon), on a ball; good to half a per cent at these lengths."""
    middle = math.radians((a[0] + b[0]) / 2)
    north, east = a[0] - b[0], (a[1] - b[1]) * math.cos(middle)
    return 111_195 * math.hypot(north, east)


def bearing(a, b):
    east = (b[1] - a[1]) * math.cos(math.radians((a[0] + b[0]) / 2))
    return math.degrees(math.atan2(east, b[0] - a[0]))


def between(a, b):
    """The angle from bearing a to bearing b, -180 to 180; positive to the right."""
    return (b - a + 540) % 360 - 180


class Reader:
    def __init__(self, extract, region):
        self.map = Map(extract)
        self.region = region
        self.grounds = Grounds(self.map)
        self.roads = {w for w in self.map.ways if self.map.is_road(w)}
        self.ways_at = defaultdict(set)
        for way in self.roads:
            for node in self.line(way):
                self.ways_at[node].add(way)
        self.ring_cycles = list(self._ring_cycles())
        self.in_ring = {way for ring in self.ring_cycles for way in ring}
        self.net = self._net()
        self.joined = self._joined()

    def tags(self, way):
        return self.map.ways[way].tags

    def node(self, number):
        return self.map.nodes.get(number, {})

    def at(self, node):
        return self.map.places[node]

    @cache
    def line(self, way):
        """The nodes of a way that the extract knows."""
        return [n for n in self.map.ways[way].nodes if n in self.map.places]

    def length(self, way):
        line = self.line(way)
        return sum(metres(self.at(a), self.at(b)) for a, b in zip(line, line[1:]))

    @staticmethod
    def suffix(direction):
        return "forward" if direction == "along" else "backward"

    # --- driving ---------------------------------------------------------------------------------

    def of_one_way(self, way, one_way):
        if one_way in ("yes", "1", "true"):
            return {"along"}
        if one_way in ("-1", "reverse"):
            return {"against"}
        if one_way == "reversible":
            return set()
        tags = self.tags(way)
        ring = tags.get("junction") in ("roundabout", "circular")
        motorway = tags.get("highway") in ("motorway", "motorway_link")
        return {"along"} if one_way not in ("no", "0", "false", "alternating") and (
            ring or motorway) else {"along", "against"}

    def directions(self, way):
        """Where traffic may go: "along" the nodes, "against" them. Key:oneway."""
        return self.of_one_way(way, self.tags(way).get("oneway", ""))

    def directions_by_hour(self, way):
        """Where traffic may go at some hour."""
        hours = clauses(self.tags(way).get("oneway:conditional", ""))
        return self.directions(way).union(*(self.of_one_way(way, value) for value, _ in hours))

    def access(self, way, direction):
        """The access tree of a motor car (Key:access): the most special key that is there. A service road in a
        school's, a car park's or such grounds is as good as private."""
        if self.grounds.hold(way):
            return "private"
        tags, value = self.tags(way), "yes"
        for suffix in ("", ":" + self.suffix(direction)):
            for mode in MODES:
                if mode + suffix in tags:
                    value = tags[mode + suffix]
                    break
        return value

    def ever_open(self, way, direction):
        """Some hour lets a car drive it (Conditional restrictions: a clause that holds beats the
        plain tag; a general one opens nothing that a special tag shuts)."""
        tags, value = self.tags(way), self.access(way, direction)
        suffixes = ("", ":" + self.suffix(direction))
        plain = [level for level, mode in enumerate(MODES) for s in suffixes if mode + s in tags]
        said = [what for level, mode in enumerate(MODES[:plain[0] + 1] if plain else MODES)
                for s in suffixes
                for what, when in clauses(tags.get(mode + s + ":conditional", ""))
                if not OTHERS.search(when)]
        if not plain and FAVOURS & set(said):
            value = "no"
        return any(set(words(one)) <= OPEN for one in [value, *said])

    def unsuited(self, way):
        """Legal, and no place for a lesson: DEVELOPERS.md, roads."""
        tags = self.tags(way)
        return (tags["highway"] in ("living_street", "motorway", "motorway_link", "road")
                or tags.get("surface") in UNSEALED or tags.get("smoothness") in ROUGH
                or tags.get("service") in NO_THROUGH
                or tags.get("construction", "no") not in WORKS or tags.get("ford", "no") != "no" or tags.get("toll", "no") != "no")

    @cache
    def open_ways(self, way):
        """The directions in which a learner may drive a road at some hour, by its tags."""
        if self.unsuited(way) or self.grounds.hold(way):
            return set()
        return {d for d in self.directions_by_hour(way) if self.ever_open(way, d)}

    def is_wall(self, node):
        """A barrier no car passes; access on the node outranks its kind. Key:barrier. Access on a point that is
        neither barrier nor crossing is that of a gate of unknown kind."""
        tags = self.node(node)
        another = {"crossing", "amenity", "entrance", "public_transport"} & set(tags) or tags.get("highway") == "crossing"
        if tags.get("barrier") not in WALLS:
            told = next((tags[mode] for mode in MODES if mode in tags), "yes")
            return "barrier" not in tags and not another and not set(words(told)) & OPEN
        for mode in MODES:
            if mode in tags:
                return tags[mode] not in OPEN
        return True

    def _net(self):
        """Every drivable step from node to node, with its way."""
        net = networkx.DiGraph()
        for way in self.roads:
            line = self.line(way)
            for direction in self.open_ways(way):
                steps = line if direction == "along" else line[::-1]
                for a, b in zip(steps, steps[1:]):
                    net.add_edge(a, b, way=way, metres=metres(self.at(a), self.at(b)))
        return net

    def binding(self):
        """(from way, via node, to way) -> forbidden, (from way, via node) -> the only way on.

        Relation:restriction; those with hours bind at times only, and are left out like those
        with ways as via.
        """
        banned, only = set(), {}
        for relation in self.map.relations.values():
            tags = relation.tags
            text = tags.get("restriction:motorcar", tags.get("restriction", ""))
            hours = {"restriction:conditional", "day_on", "hour_on"} & set(tags)
            if hours or set(words(tags.get("except", ""))) & {"motorcar", "motor_vehicle", "vehicle"}:
                continue
            by_role = {role: [(t, ref) for t, ref, r in relation.members if r == role]
                       for role in ("from", "via", "to")}
            if [t for t, _ in by_role["via"]] != ["n"]:
                continue
            via = by_role["via"][0][1]
            for start, end in itertools.product(by_role["from"], by_role["to"]):
                if {start[1], end[1]} <= self.ways_at.get(via, set()):  # else it can't be used
                    if text.startswith("no_"):
                        banned.add((start[1], via, end[1]))
                    if text.startswith("only_"):
                        only[start[1], via] = end[1]
        return banned, only

    def round_an_island(self, a, way, b, onward, c):
        """From one half of a divided road into its other half round the tip of the island, which no lesson
        does, nor back by a second way over the same nodes (DEVELOPERS.md, roads)."""
        if way == onward or c == a:
            return way != onward
        one, other = self.tags(way), self.tags(onward)
        return (all(len(self.directions(w)) == 1 for w in (way, onward))
                and all(one.get(key) == other.get(key) for key in ("highway", "name", "ref"))
                and abs(between(bearing(self.at(a), self.at(b)), bearing(self.at(b), self.at(c))))
                > ISLAND_DEG)

    def is_dead_end(self, back, node):
        """Nothing but private roads leads on from where one came to: there, and before a wall, one may turn
        round. A road that isn't sealed, or is for access alone, goes on for others, and so does one that
        the extract cuts off (DEVELOPERS.md, roads)."""
        if self.is_wall(node):
            return True
        def goes_on(way, away, line):
            return line[1] != back and bool(set(words(self.access(way, away))) & ON)
        return not any(goes_on(*arm) for arm in self.arms_at(node)) and not self._is_cut(node)

    def _is_cut(self, node):
        """A way goes on from here to a node that the extract doesn't know."""
        for way in self.ways_at[node]:
            nodes = self.map.ways[way].nodes
            for a, b in zip(nodes, nodes[1:]):
                if node in (a, b) and not {a, b} <= self.map.places.keys():
                    return True
        return False

    def is_half(self, way):
        return len(self.directions(way)) == 1 and self.tags(way).get("junction") not in ("roundabout", "circular")

    def one_road(self, way, other):
        """Of one class, and of one name or number."""
        one, two = self.tags(way), self.tags(other)
        same = [one.get(key) == two.get(key) for key in ("name", "ref")]
        named = any(s and one.get(key) for s, key in zip(same, ("name", "ref")))
        return one["highway"] == two["highway"] and (all(same) or named)

    def behind_a_half(self, step, gap, onward, choice):
        """What is remembered on a step behind one half of a road: that half, metres since, metres of them on the
        road itself, whether one could go elsewhere; None when nothing, False where one would turn back along
        the other half, which no lesson does (DEVELOPERS.md, roads)."""
        half, gap_m, own_m, chose = gap or (step, 0, 0, False)
        way, then = self.net.edges[half]["way"], self.net.edges[onward]["way"]
        if not self.is_half(way) or self.tags(then).get("junction") in ("roundabout", "circular"):
            return None
        change = abs(between(bearing(*map(self.at, half)), bearing(*map(self.at, onward))))
        own, chose = self.one_road(way, then), chose or choice
        if own and self.is_half(then) and gap and then != way and change > ISLAND_DEG:
            return False if chose and gap_m <= (GAP_OF_ONE_NAME_M if own_m else GAP_M) else None
        if own and self.is_half(then) and change < STRAIGHT_DEG:
            return None
        step_m = self.net.edges[onward]["metres"]
        return (half, gap_m + step_m, own_m + own * step_m, chose) if gap_m + step_m <= GAP_M else None

    def _joined(self):
        """Steps that can be driven into and out of, without turning round but at a dead end: the
        largest such part of the net, and other towns."""
        banned, only = self.binding()
        moves = networkx.DiGraph()
        states = [(step, None) for step in self.net.edges]
        moves.add_nodes_from(states)
        for step, gap in states:  # grows on the way
            a, b = step
            way, dead_end = self.net.edges[step]["way"], self.is_dead_end(a, b)
            open_to = [c for c in self.net.succ[b] if c != a]
            for c in ([a] if dead_end else self.net.succ[b]):
                onward = self.net.edges[b, c]["way"] if self.net.has_edge(b, c) else None
                if onward is None or (c == a and not dead_end) or (way, b, onward) in banned:
                    continue
                if self.round_an_island(a, way, b, onward, c):
                    continue
                behind = None if c == a else self.behind_a_half(step, gap, (b, c), len(open_to) > 1)
                if behind is False or only.get((way, b), onward) != onward:
                    continue
                if ((b, c), behind) not in moves:
                    states.append(((b, c), behind))
                moves.add_edge((step, gap), ((b, c), behind))
        self.moves = moves
        parts = [{step for step, _ in part} for part in networkx.strongly_connected_components(moves)]
        sizes = [sum(self.net.edges[step]["metres"] for step in part) for part in parts]
        return set().union(*(part for size, part in zip(sizes, parts)
                             if size == max(sizes) or size >= TOWN_KM * 1000))

    @cache
    def is_driven(self, way):
        """Some step of the way can be driven, into and out of."""
        line = self.line(way)
        return any((a, b) in self.joined or (b, a) in self.joined for a, b in zip(line, line[1:]))

    def is_driven_over(self, node):
        return any((before, node) in self.joined for before in self.net.pred.get(node, ()))

    def arms_at(self, node):
        """(way, direction) of each road that leads away from a node, whatever its access."""
        for way in sorted(self.ways_at[node]):
            line = self.line(way)
            for i, here in enumerate(line):
                if here == node and i + 1 < len(line):
                    yield way, "along", line[i:]
                if here == node and i > 0:
                    yield way, "against", line[i::-1]

    def heading(self, nodes):
        """The bearing in which a road leaves its first node, over its first metres."""
        start = self.at(nodes[0])
        for node in nodes[1:]:
            if metres(start, self.at(node)) >= HEADING_M:
                return bearing(start, self.at(node))
        return bearing(start, self.at(nodes[-1]))

    def moves_over(self, node):
        """(way in, direction, way out, direction, angle) of each drive over a node, by the tags."""
        arms = [(w, d, self.heading(nodes)) for w, d, nodes in self.arms_at(node)]
        for way, away, out in arms:
            inward = BACK[away]
            if inward not in self.open_ways(way):
                continue
            for other, onward, heading in arms:
                if (other, onward) != (way, away) and onward in self.open_ways(other):
                    yield way, inward, other, onward, between(out + 180, heading)

    def ways_on(self, node, way, into):
        """How many roads lead on from a way into a node, open to us or not."""
        return sum(1 for other, onward, _ in self.arms_at(node)
                   if onward in self.directions(other) and (other, onward) != (way, BACK[into]))

    # --- rings -----------------------------------------------------------------------------------

    def ring_steps(self):
        graph = networkx.DiGraph()
        for way in self.roads:
            if self.tags(way).get("junction") not in ("roundabout", "circular"):
                continue
            line = self.line(way)
            for direction in self.directions(way):
                steps = line if direction == "along" else line[::-1]
                for a, b in zip(steps, steps[1:]):
                    if len(self.directions(way)) == 1:
                        graph.add_edge(a, b, way=way)
        return graph

    def _ring_cycles(self):
        """The ways of each closed ring (Tag:junction=roundabout)."""
        graph = self.ring_steps()
        for cycle in networkx.simple_cycles(graph):
            if len(cycle) > 2:
                yield frozenset(graph.edges[a, b]["way"]
                                for a, b in zip(cycle, cycle[1:] + cycle[:1]))

    def circle(self, ring):
        """Middle and radius of a ring: a circle round the box of its nodes."""
        places = [self.at(n) for w in ring for n in self.line(w)]
        low, high = map(min, zip(*places)), map(max, zip(*places))
        middle = tuple((a + b) / 2 for a, b in zip(low, high))
        return middle, max(metres(middle, place) for place in places)

    # --- distance by road ------------------------------------------------------------------------

    @cached_property
    def by_road(self):
        """Roads as one graph without direction, in metres."""
        graph = networkx.Graph()
        for way in self.roads:
            line = self.line(way)
            for a, b in zip(line, line[1:]):
                graph.add_edge(a, b, metres=metres(self.at(a), self.at(b)))
        return graph

    @cached_property
    def steps_by_cell(self):
        """The steps of all roads, by the cells of 0.001 degree that their boxes touch."""
        cells = defaultdict(set)
        for way in self.roads:
            line = self.line(way)
            for a, b in zip(line, line[1:]):
                rows, columns = (sorted(int(self.at(n)[k] * 1000) for n in (a, b)) for k in (0, 1))
                for row in range(rows[0], rows[1] + 1):
                    for column in range(columns[0], columns[1] + 1):
                        cells[row, column].add((way, a, b))
        return cells

    def steps_near(self, point, cells=1):
        """(metres, way, a, b) of the steps of roads up to so many cells away (some 60 metres each), and some
        more."""
        row, column = (int(degrees * 1000) for degrees in point)
        for i, j in itertools.product(range(-cells, cells + 1), repeat=2):
            for way, a, b in self.steps_by_cell.get((row + i, column + j), ()):
                yield off_line(point, self.at(a), self.at(b)), way, a, b

    def nearest_road(self, point):
        return min(self.steps_near(point), default=(math.inf, None))[:2]

    @cache
    def beside_its_opposite(self, way):
        """A one-way road with another one beside it that leads back: Tag:dual_carriageway=yes."""
        if len(self.directions(way)) != 1:
            return False
        line = self.line(way)
        for a, b in zip(line, line[1:]):
            middle = tuple((p + q) / 2 for p, q in zip(self.at(a), self.at(b)))
            ahead = self.traffic_bearing(way, a, b)
            for off, other, c, d in self.steps_near(middle):
                if other != way and off < PARTNER_M and len(self.directions(other)) == 1 and abs(
                        between(ahead, self.traffic_bearing(other, c, d))) > PARTNER_DEG:
                    return True
        return False

    def traffic_bearing(self, way, a, b):
        along = "along" in self.directions(way)
        return bearing(self.at(a), self.at(b)) if along else bearing(self.at(b), self.at(a))

    def near_by_road(self, node, within):
        return networkx.single_source_dijkstra_path_length(self.by_road, node, within, "metres")

    def clusters(self, nodes, within, crow_m=0):
        """Nodes joined by at most `within` metres of road, or `crow_m` of air, from one to the
        next."""
        links = networkx.Graph()
        links.add_nodes_from(nodes)
        for node in nodes:
            links.add_edges_from((node, other) for other in self.near_by_road(node, within)
                                 if other in nodes)
            links.add_edges_from((node, other) for other in nodes
                                 if metres(self.at(node), self.at(other)) < crow_m)
        return [frozenset(part) for part in networkx.connected_components(links)]

    def connected(self, ways):
        """Ways in groups that share nodes, each group with its length in metres."""
        links = networkx.Graph()
        for way in ways:
            for node in self.line(way):
                links.add_edge(("way", way), ("node", node))
        for part in networkx.connected_components(links):
            group = frozenset(number for what, number in part if what == "way")
            yield group, sum(self.driven_length(way) for way in group)

    def driven_length(self, way):
        line = self.line(way)
        return sum(metres(self.at(a), self.at(b)) for a, b in zip(line, line[1:])
                   if (a, b) in self.joined or (b, a) in self.joined)
