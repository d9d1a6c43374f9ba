"""A map whose roads, nodes and turns have got random tags: what mappers somewhere write, in every mixture.

usage: sprinkle.py EXTRACT TO.osm.pbf [SEED]

Keys, values and hours are those of the OSM wiki (pages Key:access, Key:maxspeed, Key:lanes, Bus_lanes,
Conditional_restrictions, Key:barrier, Key:traffic_calming, Relation:restriction), some of them slips as
they occur. Where things lie stays as it was. SEED throws the dice (random_wishes.py's unless told).
"""
import random
import subprocess
import sys

from mirror import escaped
from opl import ROADS, tags_of
from random_wishes import SEED

HOURS = ["Mo-Fr 07:00-09:30,16:00-18:30", "Mo-Sa 07:00-19:00", "Mo-Fr 08:15-09:15; PH off", "24/7", "Sa,Su",
         "Mo-Fr 07:30-09:30; SH off", "22:00-06:00", "sunset-sunrise", "Nov-Mar", "PH,Su 10:00-18:00",
         "Mo-Fr 16:00-18:00; Dec 24-26 off"]
MODES = ["motor_vehicle", "access", "motorcar", "vehicle"]
TURNS = ["no_left_turn", "no_right_turn", "no_straight_on", "no_u_turn", "only_straight_on",
         "only_left_turn", "only_right_turn", "no_entry", "no_exit"]
# A share of the roads open both ways, and what they get; {hours} is thrown anew each time.
TWO_WAY = [
    (.01, {"lanes": "3", "lanes:forward": "2", "lanes:backward": "1", "bus:lanes:forward": "designated|yes",
           "vehicle:lanes:forward": "no|yes"}),
    (.01, {"lanes": "3", "lanes:forward": "2", "lanes:backward": "1", "lanes:bus:forward": "1",
           "bus:lanes:forward:conditional": "designated|yes @ ({hours})"}),
    (.01, {"lanes": "3", "lanes:forward": "2", "lanes:backward": "1", "lanes:psv:forward": "1",
           "lanes:psv:forward:conditional": "1 @ ({hours})"}),
    (.01, {"busway:left": "lane"}), (.005, {"oneway:conditional": "yes @ ({hours})"}),
    (.005, {"oneway:conditional": "-1 @ ({hours})"}), (.005, {"oneway": "yes"}), (.005, {"oneway": "-1"}),
    (.005, {"oneway": "reversible"}), (.01, {"maxspeed:forward": "20 mph", "maxspeed:backward": "40 mph"})]
ONE_WAY = [
    (.01, {"lanes": "2", "bus:lanes": "designated|yes"}),
    (.01, {"lanes": "2", "bus:lanes:conditional": "designated|yes @ ({hours})"}),
    (.01, {"oneway:bus": "no", "busway:right": "opposite_lane"})]
ANY_ROAD = ([(.02, {mode + ":conditional": value + " @ ({hours})"}) for mode, value in zip(
                MODES, ["no", "private", "destination", "delivery"])] +
            [(.005, {mode: value}) for mode, value in zip(MODES, ["destination", "private", "no", "permit"])] +
            [(.01, {"maxspeed": value}) for value in (
                "20 mph", "40 mph", "60 mph", "national", "none", "walk", "30", "20 mph;30 mph")] +
            [(.01, {key: value}) for key, value in (
                ("width", "3.5"), ("width", "6'6\""), ("est_width", "2.8"), ("width:carriageway", "4.6"),
                ("maxwidth", "2.2"), ("maxheight", "3.5"), ("lanes", "1"), ("passing_places", "yes"),
                ("parking:both", "lane"), ("parking:left", "half_on_kerb"), ("incline", "10%"),
                ("traffic_calming", "table"), ("hazard", "school_zone"), ("cycleway:left", "lane"),
                ("surface", "gravel"), ("ford", "yes"), ("toll", "yes"), ("maxspeed:type", "GB:nsl_single"),
                ("maxspeed:type", "GB:zone20"), ("turn:lanes:forward", "left|through|none"))] +
            [(.02, {"maxspeed:conditional": "20 mph @ ({hours})"}), (.01, {"maxspeed:conditional": "20 mph @ flashing"}),
             (.01, {"parking:both:restriction:conditional": "no_stopping @ ({hours})"}),
             (.002, {"highway": "construction"}), (.002, {"highway": "pedestrian"}), (.002, {"highway": "busway"})])
JUNCTIONS = [(.03, {"highway": "mini_roundabout"}), (.02, {"highway": "traffic_signals"}),
             (.01, {"highway": "stop"}), (.01, {"highway": "give_way"})]
ON_THE_WAY = [(.004, {"highway": value}) for value in ("traffic_signals", "crossing", "passing_place")] + [
    (.002, {"highway": "stop", "direction": "forward"}), (.004, {"highway": "crossing", "crossing": "zebra"}),
    (.001, {"barrier": "gate"}), (.001, {"barrier": "bollard"}), (.001, {"barrier": "width_restrictor"}),
    (.001, {"barrier": "lift_gate", "motor_vehicle": "yes"}), (.002, {"barrier": "cattle_grid"}),
    (.003, {"traffic_calming": "hump"}), (.003, {"traffic_calming": "choker"}), (.001, {"ford": "yes"})]
RESTRICTED = 0.02  # a share of the junctions
OVER_A_WAY, BY_THE_HOUR, FOR_OTHERS = 0.2, 0.2, 0.2  # shares of their restrictions
FIRST_RELATION = 9_000_000_000


class Sprinkler:
    def __init__(self, extract, seed):
        self.dice = random.Random(seed)
        lines = subprocess.run(["osmium", "cat", extract, "-f", "opl"], check=True,
                               stdout=subprocess.PIPE, text=True).stdout.splitlines()
        self.rows = [line.split(" ") for line in lines]
        self.roads = {row[0][1:]: [ref.split("x")[0][1:] for ref in row[-1][1:].split(",")]
                      for row in self.rows if row[0][0] == "w" and self.tags(row).get("highway") in ROADS}
        self.ends = {}
        for way, nodes in self.roads.items():
            for node in (nodes[0], nodes[-1]):
                self.ends.setdefault(node, []).append(way)
        self.inner = {node for nodes in self.roads.values() for node in nodes[1:-1]}

    @staticmethod
    def tags(row):
        return tags_of(next(field for field in row if field[0] == "T")[1:])

    def hours(self):
        return self.dice.choice(HOURS)

    def thrown(self, tags, choices):
        """The tags and what the dice add to them."""
        for share, added in choices:
            if self.dice.random() < share:
                tags.update({key: value.replace("{hours}", self.hours()) for key, value in added.items()})
        return tags

    def retagged(self, row):
        kind, number, tags = row[0][0], row[0][1:], self.tags(row)
        if kind == "w" and number in self.roads:
            ring = tags.get("junction") == "roundabout"
            self.thrown(tags, [] if ring else ONE_WAY if tags.get("oneway") == "yes" else TWO_WAY)
            self.thrown(tags, ANY_ROAD)
        elif kind == "n" and len(self.ends.get(number, [])) > 2:
            self.thrown(tags, JUNCTIONS)
        elif kind == "n" and number in self.inner:
            self.thrown(tags, ON_THE_WAY)
        field = "T" + ",".join(f"{escaped(key)}={escaped(value)}" for key, value in tags.items())
        return " ".join(field if old[0] == "T" else old for old in row)

    def restriction(self, number, via):
        arriving, leaving = self.dice.sample(self.ends[via], 2)
        turn, at, chance = self.dice.choice(TURNS), f"n{via}", self.dice.random()
        if turn == "no_u_turn":
            leaving = arriving
        elif self.dice.random() < OVER_A_WAY:
            far = next(n for n in (self.roads[leaving][0], self.roads[leaving][-1]) if n != via or
                       self.roads[leaving][0] == self.roads[leaving][-1])
            beyond = [way for way in self.ends[far] if way != leaving]
            if beyond:
                at, leaving = f"w{leaving}", self.dice.choice(beyond)
        tags = ({"restriction:conditional": f"{turn} @ ({self.hours()})"} if chance < BY_THE_HOUR else
                {"restriction": turn, "except": "psv;bicycle"} if chance < BY_THE_HOUR + FOR_OTHERS else
                {"restriction": turn})
        field = ",".join(f"{escaped(k)}={escaped(v)}" for k, v in {"type": "restriction", **tags}.items())
        return (f"r{number} v1 dV c0 t i0 u T{field} "
                f"Mw{arriving}@from,{at}@via,w{leaving}@to")

    def lines(self):
        yield from map(self.retagged, self.rows)
        junctions = sorted(node for node, ways in self.ends.items() if len(ways) > 2)
        for k, via in enumerate(self.dice.sample(junctions, int(len(junctions) * RESTRICTED))):
            yield self.restriction(FIRST_RELATION + k, via)


def sprinkle(extract, to, seed=SEED):
    text = "\n".join(Sprinkler(extract, seed).lines()) + "\n"
    subprocess.run(["osmium", "cat", "-F", "opl", "-", "-o", to, "--overwrite"], input=text, text=True,
                   check=True)


if __name__ == "__main__":
    sprinkle(*sys.argv[1:3], *map(int, sys.argv[3:4]))
