"""What the tags alone say of runs of road: the second reader's claims."""
from second_claims import Claimant, Claims, HALF, LINK, RING, SERVICE, each, node, number_of, way
from second_reader import words

FLARE_M = 25
TWO_CARS_M = 4.8  # Manual for Streets, figure 7.1
LANE_ON_ROAD = {"lane", "exclusive", "advisory"}  # Key:cycleway


class Runs(Claimant):
    def twenty_zone(self):
        return Claims(each(map(way, self.ways_where(
            lambda t: t.get("maxspeed:type", t.get("source:maxspeed")) == "GB:zone20"
            or t.get("zone:maxspeed") == "GB:20"))), "Tag:maxspeed:type=GB:zone20")

    def twenty_limit(self):
        zones = set().union(*self.twenty_zone().groups)
        twenty = self.ways_where(
            lambda t: "20 mph" in (t.get("maxspeed"), t.get("maxspeed:forward"),
                                   t.get("maxspeed:backward")))
        return Claims(each(set(map(way, twenty)) - zones), "Key:maxspeed",
                      reasons={RING: self.is_ring, LINK: self.is_link})

    def country_road(self):
        """The national limit of single roads, by its type or by its number."""
        number = "60 mph" if self.r.region.startswith("GB") else "80"
        national = self.ways_where(
            lambda t: {"GB:nsl_single", "GB:rural", "GB:national"} &
            {t.get("maxspeed:type"), t.get("source:maxspeed")} or t.get("maxspeed") == number)
        return Claims(each(map(way, national)), "Key:maxspeed:type", reasons={
            "a residential street: built up (Tag:highway=residential)":
            lambda name: self.r.tags(int(name[4:]))["highway"] == "residential",
            SERVICE: self.is_service, HALF: self.is_half})

    def motorway(self):
        return Claims(each(map(way, self.ways_with("highway", "motorway"))), "Tag:highway=motorway")

    def dual_carriageway(self):
        dual = self.ways_where(
            lambda t: t.get("dual_carriageway") == "yes"
            or "GB:nsl_dual" in (t.get("maxspeed:type"), t.get("source:maxspeed")))
        return Claims(each(map(way, dual)), "Key:dual_carriageway, Key:maxspeed:type")

    def one_way(self):
        return Claims(each(map(way, self.ways_with("oneway", "yes", "1", "true", "-1"))),
                      "Key:oneway", reasons={
            SERVICE: self.is_service, HALF: self.is_half, RING: self.is_ring,
            "under 25 m: a flare, no street (ours)":
            lambda name: self.r.length(int(name[4:])) < FLARE_M,
            LINK: self.is_link})

    def bus_lane(self):
        def has_bus_lane(tags):
            counted = any(key.split(":")[0] == "lanes" and key.split(":")[1:2] in (["bus"], ["psv"])
                          for key in tags)
            listed = any(key.split(":")[:2] in (["bus", "lanes"], ["psv", "lanes"])
                         and "designated" in value for key, value in tags.items())
            sided = any(key in ("busway", "busway:left", "busway:right", "busway:both")
                        and value in ("lane", "opposite_lane") for key, value in tags.items())
            return counted or listed or sided
        return Claims(each(map(way, self.ways_where(has_bus_lane))), "Bus_lanes")

    def cycle_lane(self):
        keys = ("cycleway", "cycleway:left", "cycleway:right", "cycleway:both")
        return Claims(each(map(way, self.ways_where(
            lambda t: any(t.get(key) in LANE_ON_ROAD for key in keys)))), "Key:cycleway")

    def narrow_road(self):
        def narrow(w):
            t = self.r.tags(w)
            width = number_of(t.get("width", ""))
            return self.two_way(w) and (0 < width < TWO_CARS_M or t.get("narrow") == "yes"
                                        or number_of(t.get("lanes", "")) in (1, 1.5)
                                        or t.get("passing_places") == "yes")
        return Claims(each(map(way, filter(narrow, self.r.roads))),
                      "Key:width, Key:lanes, Key:narrow", ("narrow-road", "single-track"))

    def meeting_traffic(self):
        def parked(tags):
            return any(key.split(":")[0] == "parking" and value in (
                "lane", "half_on_kerb", "parallel", "diagonal", "perpendicular")
                for key, value in tags.items())
        return Claims(each(map(way, self.ways_where(parked))), "Street parking")

    def tram(self):
        tracks = {n for w in self.r.map.ways.values() if w.tags.get("railway") == "tram"
                  for n in w.nodes}
        shared = {w for w in self.r.roads if len(set(self.r.line(w)) & tracks) > 1}
        embedded = self.ways_where(lambda t: "tram" in words(t.get("embedded_rails", "")))
        return Claims(each(map(way, shared | embedded)), "Tag:railway=tram")

    def school(self):
        return Claims(each(map(way, self.ways_with("hazard", "school_zone", "children"))) +
                      each(map(node, self.nodes_with("hazard", "school_zone", "children"))),
                      "Key:hazard")

    def downhill(self):
        def steep(tags):
            text = tags.get("incline", "").lstrip("-")
            return text.endswith("%") and number_of(text) >= 8
        return Claims(each(map(way, self.ways_where(steep))), "Key:incline")

    def brow(self):
        return Claims(each(map(way, self.ways_with("bridge", "humpback"))) +
                      each(map(node, self.nodes_with("hazard", "crest", "hump_bridge",
                                                     "humpback_bridge"))), "Key:bridge")

    def independent_stretch(self):
        keys = ("destination", "destination:forward", "destination:backward", "destination:ref")
        return Claims(each(map(way, self.ways_where(lambda t: any(k in t for k in keys)))),
                      "Key:destination")
