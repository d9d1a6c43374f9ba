"""Arms and exits of every roundabout, counted from the map by the plain rule of the OSM wiki and
the trade (Tag:junction=roundabout; exits as British signs count them). Shares nothing with the
program under test.

1. A ring is a closed way round along one-way ring ways; rings that share a node are left apart by
   following each way on by itself or by the way that begins where it ends.
2. Where a road touches a node of the ring, traffic may come in, leave, or both.
3. A way out and the way in next to it in driving order are one arm when they meet again within
   60 m, or have one name or ref.
4. An exit is an arm one may leave by that is neither a service road nor private.
"""
import math
from collections import defaultdict, namedtuple

from opl import ROADS, NO_ROAD_OF_THEIR_OWN

MEETS_WITHIN_M = 60
BANNED = "turn bans keep the ring's traffic off a way out"
MEET = "two ways out that meet again within 60 m are one exit"
SHUT = {"no", "private", "customers", "permit", "delivery", "agricultural", "forestry"}

# way, node, may traffic come in, may it leave, is the road public, the way's next node
Touch = namedtuple("Touch", "way node comes leaves public beside")


def is_ring(tags):
    return tags.get("junction") in ("roundabout", "circular")


def ways_open(tags):
    """Whether traffic goes along the way, and against it."""
    told = tags.get("oneway")
    if told in ("yes", "1", "true"):
        return True, False
    if told in ("-1", "reverse"):
        return False, True
    one_way = is_ring(tags) or tags["highway"] in ("motorway", "motorway_link")
    return True, told == "no" or not one_way


def is_public(tags):
    for key in ("motorcar", "motor_vehicle", "vehicle", "access"):
        if key in tags:
            return tags["highway"] != "service" and tags[key] not in SHUT
    return tags["highway"] != "service"


class Streets:
    """Which node traffic gets to from which, by which way, and how far that is."""

    def __init__(self, raw):
        self.raw = raw
        self.onward, self.back = defaultdict(list), defaultdict(list)
        for number in filter(raw.is_road, raw.ways):
            way = raw.ways[number]
            along, against = ways_open(way.tags)
            for a, b in zip(way.nodes, way.nodes[1:]):
                if a in raw.places and b in raw.places:
                    self._add(number, a, b, along, against)

    def _add(self, way, a, b, along, against):
        metres = self._metres(a, b)
        for start, end, is_open in ((a, b, along), (b, a, against)):
            if is_open:
                self.onward[start].append((end, way, metres))
                self.back[end].append((start, way, metres))

    def _metres(self, a, b):
        (lat0, lon0), (lat1, lon1) = self.raw.places[a], self.raw.places[b]
        wide = math.cos(math.radians(lat0))
        return 111195 * math.hypot(lat1 - lat0, (lon1 - lon0) * wide)

    def within(self, steps, touch):
        """Nodes within the limit, starting from a ring's node by one way; no ring is entered."""
        reached, waiting = {}, [(touch.node, 0.0, touch.way)]
        while waiting:
            node, metres, by = waiting.pop()
            for to, way, more in steps[node]:
                far = metres + more
                first_on_other_way = metres == 0 and (way, to) != (by, touch.beside)
                if first_on_other_way or far > MEETS_WITHIN_M or is_ring(self.raw.ways[way].tags):
                    continue
                if far < reached.get(to, math.inf):
                    reached[to] = far
                    waiting.append((to, far, way))
        return set(reached)


class Ring:
    def __init__(self, streets, ways, nodes):
        self.streets, self.raw, self.ways, self.nodes = streets, streets.raw, ways, nodes
        touches = [t for n in nodes for t in self._touches(n)]
        self.arms = self._arms(touches)

    def _touches(self, node):
        found = {}
        for steps, sense in ((self.streets.back, 0), (self.streets.onward, 1)):
            for to, way, _ in steps[node]:
                if not is_ring(self.raw.ways[way].tags) and not self._inside(node, way):
                    found.setdefault((way, to), [False, False])[sense] = True
        return [Touch(w, node, *senses, is_public(self.raw.ways[w].tags), to)
                for (w, to), senses in sorted(found.items())]

    def _inside(self, node, way):
        """True when the way goes on into the island: its next node there lies inside the ring."""
        nodes = self.raw.ways[way].nodes
        at = nodes.index(node)
        beside = [nodes[i] for i in (at - 1, at + 1) if 0 <= i < len(nodes)]
        middle = [sum(self.raw.places[n][i] for n in self.nodes) / len(self.nodes) for i in (0, 1)]

        def off(n):
            lat, lon = self.raw.places[n]
            return math.hypot(lat - middle[0], (lon - middle[1]) * math.cos(math.radians(lat)))
        return all(off(n) < off(node) for n in beside)

    def _named_alike(self, a, b):
        x, y = self.raw.ways[a.way].tags, self.raw.ways[b.way].tags
        return any(key in x and x[key] == y.get(key) for key in ("name", "ref"))

    def _one_arm(self, a, b):
        if a.comes or b.leaves or not a.leaves or not b.comes:
            return False
        onward = self.streets.within(self.streets.onward, a)
        return bool(onward & self.streets.within(self.streets.back, b)) or self._named_alike(a, b)

    def _arms(self, touches):
        arms = [[t] for t in touches]
        at = 0
        while at < len(arms) and len(arms) > 1:
            after = (at + 1) % len(arms)
            if self._one_arm(arms[at][-1], arms[after][0]):
                more = arms.pop(after)
                arms[at - (after < at)] += more
            at += 1
        return arms

    def exits(self):
        return [arm for arm in self.arms if any(t.leaves and t.public for t in arm)]


def rings_of(raw):
    """Each ring by the least id of its ways."""
    streets = Streets(raw)
    begins = defaultdict(list)
    ring_ways = [w for w in raw.ways if raw.is_road(w) and is_ring(raw.ways[w].tags)]
    for number in ring_ways:
        begins[raw.ways[number].nodes[0]].append(number)
    rings = {}
    for number in sorted(ring_ways):
        ways, nodes = [number], list(raw.ways[number].nodes)
        while nodes[0] != nodes[-1] and len(begins[nodes[-1]]) == 1 and len(ways) < 50:
            ways.append(begins[nodes[-1]][0])
            nodes += raw.ways[ways[-1]].nodes[1:]
        if nodes[0] == nodes[-1]:
            rings.setdefault(min(ways), Ring(streets, ways, nodes[:-1]))
    return rings


def is_banned(raw, ring, touch):
    """True when a turn ban forbids leaving the ring by this way."""
    for relation in raw.relations.values():
        kind = relation.tags.get("restriction", "")
        via = [ref for _, ref, role in relation.members if role == "via"]
        begins = [ref for _, ref, role in relation.members if role == "from"]
        leads_to = [ref for _, ref, role in relation.members if role == "to"]
        arrives = [w for w in begins if w in ring.ways and raw.ways[w].nodes[0] != touch.node]
        if via != [touch.node] or not arrives:
            continue
        if (touch.way in leads_to) == kind.startswith("no_"):
            return True
    return False


def signed_exits(raw, ring):
    """The arms that are exits by the plain rule and two further ones, and which of these were needed."""
    exits, why = ring.exits(), []
    for arm in list(exits):
        if all(is_banned(raw, ring, t) for t in arm if t.leaves):
            exits.remove(arm)
            why.append(BANNED)
    for a, b in list(zip(exits, exits[1:])):
        outs = [next(t for t in arm if t.leaves) for arm in (a, b)]
        reached = [ring.streets.within(ring.streets.onward, t) for t in outs]
        if reached[0] & reached[1] and not any(t.comes for t in a):
            exits.remove(a)
            why.append(MEET)
    return exits, why
