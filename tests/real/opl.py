"""A plain reading of OPL text (one map object a line; manual of libosmium, "OPL file format"),
and counts by osmium-tool. Shares nothing with the program under test."""
import re
import subprocess
from collections import namedtuple

Way = namedtuple("Way", "nodes tags")
Relation = namedtuple("Relation", "members tags")  # members: (type, id, role)

# Ways cars use: the task's own list, from the OSM wiki page Key:highway.
CLASSES = ["motorway", "trunk", "primary", "secondary", "tertiary"]
ROADS = set(CLASSES) | {c + "_link" for c in CLASSES} | {
    "unclassified", "residential", "living_street", "service", "road"}
NO_ROAD_OF_THEIR_OWN = {"driveway", "parking_aisle", "drive-through", "drive_through",
                        "emergency_access"}
RAILWAYS_IN_USE = {"rail", "light_rail", "narrow_gauge", "preserved"}


def plain(text):
    return re.sub(r"%([0-9a-f]+)%", lambda code: chr(int(code[1], 16)), text)


def tags_of(field):
    return {plain(k): plain(v) for k, v in (tag.split("=", 1) for tag in field.split(",") if tag)}


class Map:
    def __init__(self, extract):
        self.places, self.nodes, self.ways, self.relations = {}, {}, {}, {}
        text = subprocess.run(["osmium", "cat", extract, "-f", "opl"], check=True,
                              stdout=subprocess.PIPE, text=True).stdout
        for line in text.splitlines():
            fields = {field[0]: field[1:] for field in line.split(" ")}
            getattr(self, "_" + line[0])(fields)

    def _n(self, fields):
        number = int(fields["n"])
        self.places[number] = (float(fields["y"]), float(fields["x"]))
        if fields["T"]:
            self.nodes[number] = tags_of(fields["T"])

    def _w(self, fields):
        nodes = [int(ref[1:].split("x")[0]) for ref in fields["N"].split(",") if ref]
        self.ways[int(fields["w"])] = Way(nodes, tags_of(fields["T"]))

    def _r(self, fields):
        members = []
        for member in fields["M"].split(","):
            if member:
                ref, role = member.split("@", 1)
                members.append((ref[0], int(ref[1:]), plain(role)))
        self.relations[int(fields["r"])] = Relation(members, tags_of(fields["T"]))

    def is_road(self, way):
        tags = self.ways[way].tags if way in self.ways else {}
        minor = tags.get("highway") == "service" and tags.get("service") in NO_ROAD_OF_THEIR_OWN
        return tags.get("highway") in ROADS and tags.get("area") != "yes" and not minor

    def road_nodes(self):
        return {n for way in self.ways if self.is_road(way) for n in self.ways[way].nodes
                if n in self.places}

    def rail_nodes(self):
        return {n for way in self.ways.values() if way.tags.get("railway") in RAILWAYS_IN_USE
                for n in way.nodes}


def osmium_count(extract, expression):
    """How many objects osmium tags-filter finds, without those they refer to."""
    found = subprocess.run(["osmium", "tags-filter", extract, expression, "-R", "-f", "opl"],
                           check=True, stdout=subprocess.PIPE, text=True).stdout
    return len(found.splitlines())
