"""What the tags alone say of each kind of practice: the second reader's claims.

A claim is a map object, or several that are one thing (the ways of a ring, the nodes of a cluster
of lights). Each rule names its page of the OSM wiki; "ours" is a judgement of this project.
"""
from functools import cached_property

from second_claims import Claims, SERVICE, each, inside, node, number_of, way
from second_reader import bearing, between, metres, words
from second_runs import Runs

HUMPS = {"bump", "hump", "table", "cushion", "dip", "double_dip", "mini_bumps",
         "dynamic_bump", "yes"}  # Key:traffic_calming
NARROWINGS = {"choker", "chicane"}  # Tag:traffic_calming=choker
TURNS = {"left", "right", "slight_left", "slight_right"}
LIGHTS_M = 40  # ours: lights of one junction
STOP_LINE_M = 15  # ours: lights as near as this stand at one stop line
TRACKS_M = 60  # ours: tracks of one level crossing
SERIES_M = 150  # Highways (Road Humps) Regulations: humps of one series are 20 to 150 m apart
BESIDE_M = 25  # ours: a stop beside a wide road
SAME_STOP_M = 40
ROOM = 20  # bays
MINIS_M = 60   # ours: two minis that are one
RING_ARM_M = 30  # ours: lights on the approach to a ring
AHEAD_DEG = 45
WELSH_30 = "a 30 in Wales may be the old 20 (Restricted Roads (20 mph) (Wales) Order 2022)"
TRAINS = {"rail", "light_rail", "narrow_gauge", "preserved"}  # Tag:railway=level_crossing
PEDESTRIAN_LIGHTS = {"pelican", "puffin", "toucan", "pegasus"}  # Key:crossing_ref


class Kinds(Runs):
    def roundabout(self):
        rings = [frozenset(map(way, ring)) for ring in self.r.ring_cycles]
        return Claims(rings, "Tag:junction=roundabout", (
            "roundabout", "multi-lane-roundabout", "signal-roundabout"), key_of=self.ring_of,
            reasons={"a mini: one may drive over its island (Key:central_island:traversable)":
                     self.over_its_island})

    def ring_of(self, finding):
        """The ring round the point of a finding."""
        for ring in self.r.ring_cycles:
            middle, radius = self.r.circle(ring)
            if metres(middle, finding["at"]) < radius:
                return frozenset(map(way, ring))
        return None

    def over_its_island(self, name):
        tags = self.r.map.ways[int(name[4:])].tags if name.startswith("way/") else {}
        return tags.get("central_island:traversable") == "yes"

    def mini_roundabout(self):
        minis = self.nodes_with("highway", "mini_roundabout")
        def at_an_end(name):
            return len(list(self.r.arms_at(int(name[5:])))) == 1
        return Claims(
            each(map(node, minis)), "Tag:highway=mini_roundabout",
            ("mini-roundabout", "double-mini"),
            reasons={"at a road's end, no junction (Tag:highway=mini_roundabout)": at_an_end,
                     "on the ring of a roundabout (Tag:highway=mini_roundabout)": self.on_a_ring},
            only_here={"a ring whose island one may drive over (Key:central_island:traversable)":
                       self.over_its_island})

    def double_mini(self):
        minis = self.nodes_with("highway", "mini_roundabout")
        pairs = [c for c in self.r.clusters(minis, MINIS_M) if len(c) > 1]
        return Claims([frozenset(map(node, c)) for c in pairs], "Highway Code 189")

    def level_crossing(self):
        rails = {n for w in self.r.map.ways.values() if w.tags.get("railway") in TRAINS
                 for n in w.nodes}
        nodes = self.nodes_with("railway", "level_crossing") & rails
        groups = self.r.clusters(nodes, TRACKS_M)
        return Claims([frozenset(map(node, g)) for g in groups], "Tag:railway=level_crossing")

    def tram_crossing(self):
        return Claims(each(map(node, self.nodes_with("railway", "tram_level_crossing"))),
                      "Tag:railway=tram_level_crossing")

    def has_lights(self, tags):
        return (tags.get("crossing") == "traffic_signals" or tags.get("crossing:signals") == "yes"
                or tags.get("crossing_ref") in PEDESTRIAN_LIGHTS
                or tags.get("crossing") in PEDESTRIAN_LIGHTS)

    def lit_crossings(self):
        return {n for n in self.tagged_nodes
                if "crossing" in words(self.r.node(n).get("highway", ""))
                and self.has_lights(self.r.node(n))}

    def signals(self):
        lights = self.nodes_with("highway", "traffic_signals") | self.lit_crossings()
        groups = [frozenset(map(node, group)) for group in self.r.clusters(
            lights, LIGHTS_M, STOP_LINE_M)]
        return Claims(groups, "Tag:highway=traffic_signals",
                      ("signals", "signal-roundabout", "signal-crossing"),
                      reasons={"the lights of a fire station (Key:traffic_signals)":
                               self.for_emergencies,
                               "on a roundabout, or within 30 m of one: its own lights (ours)":
                               self.at_a_ring})

    def for_emergencies(self, name):
        return self.r.node(int(name[5:])).get("traffic_signals") == "emergency"

    def at_a_ring(self, name):
        near = self.r.near_by_road(int(name[5:]), RING_ARM_M)
        return any(self.r.ways_at[n] & self.r.in_ring for n in near)

    def zebra(self):
        def striped(tags):
            marks = tags.get("crossing:markings", "")
            return ("crossing" in words(tags.get("highway", "")) and not self.has_lights(tags) and (
                "zebra" in (tags.get("crossing"), tags.get("crossing_ref"))
                or "zebra" in words(marks) or marks == "yes"
                or marks == "" and tags.get("crossing") in ("marked", "uncontrolled")))
        nodes = {n for n in self.tagged_nodes if striped(self.r.node(n))}
        return Claims(each(map(node, nodes)), "Key:crossing", reasons={
            "on a service road, without legal force (Highway Code 195)":
            self.on_service})

    def stop_line(self):
        return Claims(each(map(node, self.nodes_with("highway", "stop"))), "Tag:highway=stop")

    def advanced_stop_line(self):
        return Claims(each(map(node, self.nodes_with("cycleway", "asl"))), "Key:cycleway")

    def box_junction(self):
        boxes = (self.nodes_with("road_marking", "box_junction") |
                 self.nodes_with("junction", "yellow_box") | self.nodes_with("box_junction", "yes"))
        return Claims(each(map(node, boxes)), "no settled tag")

    def calming(self):
        series = self.r.clusters(self.nodes_with("traffic_calming", *HUMPS), SERIES_M)
        ways = self.ways_with("traffic_calming", *HUMPS)
        return Claims([frozenset(map(node, group)) for group in series] + each(map(way, ways)),
                      "Key:traffic_calming", reasons={
            "traffic_calming=yes doesn't say what is there (Key:traffic_calming)":
            lambda name: name in set(map(way, self.ways_with("traffic_calming", "yes"))) | set(
                map(node, self.nodes_with("traffic_calming", "yes"))),
            SERVICE: self.on_service})

    def pinch_point(self):
        nodes = self.nodes_with("traffic_calming", *NARROWINGS) | self.nodes_with(
            "priority", "forward", "backward")
        ways = self.ways_with("traffic_calming", *NARROWINGS) | self.ways_with(
            "priority", "forward", "backward") | self.one_lane_bridges()
        return Claims(each(list(map(node, nodes)) + list(map(way, ways))),
                      "Tag:traffic_calming=choker, Key:priority")

    def one_lane_bridges(self):
        """One lane or under 4 m, and traffic both ways: Key:bridge, Key:lanes, Key:width."""
        return {w for w in self.ways_where(lambda t: t.get("bridge", "no") != "no") if
                self.two_way(w) and (self.r.tags(w).get("lanes") == "1" or
                                     0 < number_of(self.r.tags(w).get("width", "")) < 4)}

    def ford(self):
        nodes = self.nodes_with("ford", "yes", "stepping_stones")
        ways = self.ways_with("ford", "yes")
        return Claims(each(list(map(node, nodes)) + list(map(way, ways))), "Key:ford")

    def limit(self, w, direction):
        tags = self.r.tags(w)
        return tags.get("maxspeed:" + self.r.suffix(direction), tags.get("maxspeed"))

    def limit_change(self):
        def changes(n, test=lambda way: True):
            return any(abs(angle) <= AHEAD_DEG and self.limit(a, into) and self.limit(b, out)
                       and self.limit(a, into) != self.limit(b, out) and test(a) and test(b)
                       for a, into, b, out, angle in self.r.moves_over(n))
        nodes = {n for n in self.road_nodes if len(self.r.ways_at[n]) > 1 and changes(n)}
        return Claims(each(map(node, nodes)), "Key:maxspeed", reasons={
            "on a roundabout: its ring has no limit of its own (ours)": self.on_a_ring,
            "from or to a service road (ours)": self.to_service,
            "from or to a road that can't be driven into and out of (DEVELOPERS.md, roads)":
            lambda name: not changes(int(name[5:]), self.r.is_driven),
            WELSH_30: lambda name: self.welsh_change(name) == {"20 mph", "30 mph"}},
            only_here={WELSH_30: lambda name: "30 mph" in self.welsh_change(name)})

    def on_a_ring(self, name):
        return bool(self.r.ways_at[int(name[5:])] & self.r.in_ring)

    def to_service(self, name):
        """Without the service roads there is nothing that changes."""
        ways = [w for w in self.r.ways_at[int(name[5:])] if self.r.tags(w)["highway"] != "service"]
        return len({self.limit(w, d) for w in ways for d in ("along", "against")} - {None}) < 2

    def welsh_change(self, name):
        """The limits at a node in Wales, where a 30 mapped in a street before 2023 is a 20 now."""
        limits = {self.limit(w, d) for w in self.r.ways_at[int(name[5:])]
                  for d in ("along", "against")}
        return limits - {None} if self.r.region == "GB-WLS" else set()

    def filter_lane(self):
        lights = self.nodes_with("highway", "traffic_signals") | self.lit_crossings()
        def has_own_lane(tags):
            for key in ("turn:lanes", "turn:lanes:forward", "turn:lanes:backward"):
                lanes = tags.get(key, "").split("|")
                if len(set(lanes)) > 1 and set(lanes) & TURNS:
                    return True
            return False
        ways = {w for w in self.ways_where(has_own_lane) if set(self.r.line(w)) & lights}
        return Claims(each(map(way, ways)), "Key:turn")

    def bus_stop(self):
        stops = {n for n, tags in self.r.map.nodes.items() if tags.get("highway") == "bus_stop"}
        def far(name):
            return self.r.nearest_road(self.r.at(int(name[5:])))[0] > BESIDE_M
        def beside_no_street(name):
            nearest = self.r.nearest_road(self.r.at(int(name[5:])))[1]
            return self.r.tags(nearest)["highway"] == "service" or not self.r.is_driven(nearest)
        def beside_a_shut_side(name):
            point = self.r.at(int(name[5:]))
            _, w, a, b = min(self.r.steps_near(point))
            on_right = between(bearing(self.r.at(a), self.r.at(b)),
                               bearing(self.r.at(a), point)) > 0
            along = on_right != self.r.region.startswith("GB")  # Britain drives on the left
            return ((a, b) if along else (b, a)) not in self.r.joined
        claims = Claims(each(map(node, stops)), "Tag:highway=bus_stop")
        def told_again(name):
            n, own = int(name[5:]), self.r.node(int(name[5:])).get("name")
            twins = {other for other in stops - {n}
                     if metres(self.r.at(n), self.r.at(other)) < SAME_STOP_M
                     and (own is None or self.r.node(other).get("name") in (own, None))}
            return any(frozenset([node(twin)]) in claims.listed for twin in twins)
        claims.reasons = {
            "over 25 m from any road (Tag:highway=bus_stop: beside the road)": far,
            "beside a service road, or one not driven (Tag:highway=bus_stop)": beside_no_street,
            "beside the side that can't be driven (Tag:highway=bus_stop)": beside_a_shut_side,
            "mapped again: another of its name within 40 m (Tag:highway=bus_stop)": told_again}
        return claims

    def lanes_merge(self):
        """A lane fewer in the direction driven, where one road becomes another."""
        def narrows(n):
            return any(abs(angle) <= AHEAD_DEG and a != b
                       and 0 < self.lanes(b, out) < self.lanes(a, into)
                       and self.r.ways_on(n, a, into) == 1  # else the lane may leave by another
                       for a, into, b, out, angle in self.r.moves_over(n))
        nodes = {n for n in self.road_nodes if len(self.r.ways_at[n]) > 1 and narrows(n)}
        return Claims(each(map(node, nodes)), "Key:lanes", only_here={
            "over a junction with lights (ours)": self.by_lights},
            reasons={"another road joins, and no arrows say whose lane ends (Key:turn)":
                     self.joins_without_arrows})

    def joins_without_arrows(self, name):
        ways = self.r.ways_at[int(name[5:])]
        return len(ways) > 2 and not any("turn:lanes" in self.r.tags(w) for w in ways)

    def by_lights(self, name):
        near = self.r.near_by_road(int(name[5:]), RING_ARM_M * 2)
        return bool(set(near) & (self.nodes_with("highway", "traffic_signals") |
                                 self.lit_crossings()))

    def lanes(self, w, direction):
        """Lanes in a direction; 0 when the tags don't say. Key:lanes."""
        tags = self.r.tags(w)
        if not self.two_way(w):
            return number_of(tags.get("lanes", ""))
        told = number_of(tags.get("lanes:" + self.r.suffix(direction), ""))
        all_lanes = number_of(tags.get("lanes", ""))
        return told or (all_lanes // 2 if all_lanes % 2 == 0 else 0)

    def bay_park(self):
        """On the surface, open to all, with room for 20 or aisles."""
        def has_room(w):
            return number_of(self.r.map.ways[w].tags.get("capacity", "")) >= ROOM or any(
                self.r.map.ways[one].tags.get("service") == "parking_aisle"
                for one in self.service_inside(w))
        def is_surface(w, *access):
            tags = self.r.map.ways[w].tags
            return tags.get("amenity") == "parking" and tags.get(
                "parking") == "surface" and tags.get("access") in access
        open_to_all = ("yes", "permissive", "public")
        parks = {w for w in self.r.map.ways if is_surface(w, *open_to_all) and has_room(w)}
        others = {w for w in self.r.map.ways if is_surface(w, None, "customers", *open_to_all)}
        roads_of = {w: self.service_net(w) for w in parks | others}
        def shares_its_way_in(name):
            own = roads_of[int(name[4:])]
            return any(w != int(name[4:]) and own & roads_of[w] for w in others)
        return Claims(each(map(way, parks)), "Tag:amenity=parking", reasons={
            "another car park has the same way in (Tag:amenity=parking)": shares_its_way_in})

    def service_inside(self, park):
        """The service ways with a node inside a car park."""
        shape = [self.r.at(n) for n in self.r.line(park)]
        (south, west), (north, east) = map(min, zip(*shape)), map(max, zip(*shape))
        return {w for w, places in self.service_places.items() if any(
            south <= y <= north and west <= x <= east and inside((y, x), shape)
            for y, x in places)}

    @cached_property
    def service_places(self):
        return {w: [self.r.at(n) for n in self.r.line(w)] for w, one in self.r.map.ways.items()
                if one.tags.get("highway") == "service"}

    @cached_property
    def service_parts(self):
        """Each service way's number of the net of service ways that it hangs together with."""
        return {w: number for number, (group, _) in enumerate(
            self.r.connected(self.service_places)) for w in group}

    def service_net(self, park):
        return {self.service_parts[w] for w in self.service_inside(park)}
