#!/usr/bin/python3
"""The tiles of the page against the raw map: decoded by another reader (npm @mapbox/vector-tile), the map read by
osmium-tool, the projection worked out here from its definition (EPSG:3857, spherical Mercator).

    tests/page/test_tiles.py PROGRAM PARTS [TILES [EXTRACT REGION]]

TILES: how many random ones (500). Of each tile all roads must be those of the map, in the map's place to a unit of the
tile and cut at its margin, with the map's names; and practice, bus lanes and pull-up places must lie on their roads.
"""
import json
import math
import pathlib
import random
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "real"))
from opl import Map  # noqa: E402
from served import ROOT, served  # noqa: E402

PROGRAM, PARTS = sys.argv[1:3]
TILES = int(sys.argv[3]) if len(sys.argv) > 3 else 500
EXTRACT, REGION = sys.argv[4:6] if len(sys.argv) > 5 else (ROOT / "maps" / "quillham.osm.pbf", "GB-ENG")
AT = "2026-11-28T15:00"
EXTENT, MARGIN = 4096, 128
ROUNDING = 1.1  # units: half a unit each way, and the map's own 1e-7 degree


def projected(lat, lon):
    """Into the square of the world, 0 to 1 from its north-west corner."""
    y = math.log(math.tan(math.pi / 4 + math.radians(lat) / 2))
    return (lon + 180) / 360, (1 - y / math.pi) / 2


class Ground:
    """Roads of the raw map as lines in the square of the world, found by tile of zoom 14."""

    def __init__(self, extract):
        self.map = Map(extract)
        self.ways = {number: way for number, way in self.map.ways.items()
                     if self.map.is_road(number) and len(way.nodes) > 1}
        self.lines = {number: [projected(*self.map.places[n]) for n in way.nodes if n in self.map.places]
                      for number, way in self.ways.items()}

    def in_tile(self, number, tile):
        zoom, column, row = tile
        return [((x * 2 ** zoom - column) * EXTENT, (y * 2 ** zoom - row) * EXTENT) for x, y in self.lines[number]]


def cut(a, b, low, high):
    """The part of a segment inside a square (Liang and Barsky 1984); none when there is none."""
    first, last = 0.0, 1.0
    for k in (0, 1):
        step = b[k] - a[k]
        if step == 0:
            if not low <= a[k] <= high:
                return None
            continue
        t0, t1 = sorted(((low - a[k]) / step, (high - a[k]) / step))
        first, last = max(first, t0), min(last, t1)
    return (first, last) if first < last else None


def length(line):
    return sum(math.dist(a, b) for a, b in zip(line, line[1:]))


def length_inside(line, margin):
    total = 0
    for a, b in zip(line, line[1:]):
        part = cut(a, b, -margin, EXTENT + margin)
        if part:
            total += math.dist(a, b) * (part[1] - part[0])
    return total


def off_line(point, line):
    best = math.inf
    for a, b in zip(line, line[1:]):
        step = (b[0] - a[0], b[1] - a[1])
        square = step[0] ** 2 + step[1] ** 2
        t = 0 if square == 0 else max(0, min(1, ((point[0] - a[0]) * step[0] + (point[1] - a[1]) * step[1]) / square))
        best = min(best, math.dist(point, (a[0] + t * step[0], a[1] + t * step[1])))
    return best


def random_tiles(page, dice):
    """Of every zoom there is, most near, over the area and just outside of it."""
    west, south, east, north = json.loads(page.ask("GET", "/area")[2])["extent"]
    tiles = set()
    while len(tiles) < TILES:
        zoom = dice.choice([9, 10, 11, 12, 13, 14, 14, 15, 15, 16, 16, 16])
        x, y = projected(south + dice.uniform(-0.05, 1.05) * (north - south), west + dice.uniform(-0.05, 1.05) * (east - west))
        tiles.add((zoom, int(x * 2 ** zoom), int(y * 2 ** zoom)))
        if zoom < 12 and dice.random() < 0.5:
            tiles.add((14, int(x * 2 ** 14), int(y * 2 ** 14)))
    return sorted(tiles)


class Checks:
    def __init__(self, ground):
        self.ground, self.wrong, self.checked = ground, [], 0

    def that(self, is_so, tile, text):
        self.checked += 1
        if not is_so:
            self.wrong.append(f"tile {'/'.join(map(str, tile))}: {text}")

    def tile(self, tile, layers):
        drawn = {}
        for road in layers.get("roads", []):
            drawn.setdefault(road["values"]["way"], []).extend(road["lines"])
            self.road(tile, road)
        if tile[0] >= 14:
            self.none_missing(tile, drawn)
        for layer in ("practice", "bus_lanes", "pull_ups"):
            for feature in layers.get(layer, []):
                self.lies_on_its_road(tile, layer, feature)
        for place in layers.get("places", []):
            self.place(tile, place)

    def road(self, tile, road):
        number, values = road["values"]["way"], road["values"]
        known = number in self.ground.ways
        self.that(known, tile, f"way/{number} is no road of the map")
        if not known:
            return
        tags = self.ground.ways[number].tags
        self.that(values["class"] == tags["highway"], tile, f"way/{number} is a {tags['highway']}")
        for key in ("name", "ref"):
            self.that(values.get(key, "") == tags.get(key, ""), tile, f"way/{number}: {key} {values.get(key)!r}, the map has {tags.get(key)!r}")
        self.lies_on_its_road(tile, "roads", road)

    def none_missing(self, tile, drawn):
        """What of the map's roads lies in the tile is drawn, whole."""
        for number in self.ground.ways:
            line = self.ground.in_tile(number, tile)
            xs, ys = [x for x, _ in line], [y for _, y in line]
            if max(xs) < 0 or min(xs) > EXTENT or max(ys) < 0 or min(ys) > EXTENT:
                continue
            wanted = length_inside(line, MARGIN)
            if length_inside(line, 0) < 4:
                continue
            got = sum(length(part) for part in drawn.get(number, []))
            # A line of short steps is rounded at each of them; what is shorter than a unit is dropped.
            leeway = 2 + 1.5 * len(line)
            self.that(abs(got - wanted) <= leeway, tile, f"way/{number}: {got:.0f} units drawn, the map has {wanted:.0f}")

    def lies_on_its_road(self, tile, layer, feature):
        number = feature["values"]["way"]
        if number not in self.ground.lines:
            self.that(False, tile, f"{layer}: way/{number} is no road of the map")
            return
        line = self.ground.in_tile(number, tile)
        far = max(off_line(point, line) for part in feature["lines"] for point in part)
        self.that(far <= ROUNDING, tile, f"{layer}: way/{number} lies {far:.1f} units off")
        reach = max(abs(value - EXTENT / 2) for part in feature["lines"] for point in part for value in point)
        self.that(reach <= EXTENT / 2 + MARGIN + 1, tile, f"{layer}: way/{number} reaches out of the margin")

    def place(self, tile, place):
        values, [[point]] = place["values"], place["lines"]
        node = self.ground.map.places.get(values["source"])
        if values["kind"] not in ("zebra", "mini-roundabout") or node is None:
            return
        x, y = projected(*node)
        zoom, column, row = tile
        spot = ((x * 2 ** zoom - column) * EXTENT, (y * 2 ** zoom - row) * EXTENT)
        self.that(math.dist(spot, point) <= ROUNDING, tile, f"{values['kind']} of node/{values['source']} is elsewhere")


def main():
    checks, took, worked = Checks(Ground(EXTRACT)), [], []
    with tempfile.TemporaryDirectory() as folder, served(PROGRAM, EXTRACT, REGION) as page:
        page.enter()
        for tile in random_tiles(page, random.Random(20261129)):
            begin, before = time.perf_counter(), page.worked_ms()
            status, headers, body = page.ask("GET", "/tiles/{}/{}/{}?at={}&minutes=60".format(*tile, AT))
            took.append((1000 * (time.perf_counter() - begin), tile))
            worked.append(page.worked_ms() - before)
            assert (status, headers["Content-Type"]) == (200, "application/vnd.mapbox-vector-tile"), (tile, status)
            if body:
                (pathlib.Path(folder) / ("-".join(map(str, tile)) + ".mvt")).write_bytes(body)
        here = pathlib.Path(__file__).resolve().parent
        told = subprocess.run(["node", here / "decode_tiles.mjs", PARTS, folder], check=True, stdout=subprocess.PIPE, encoding="utf-8").stdout
        full = 0
        for line in told.splitlines():
            name, layers = json.loads(line)
            full += 1
            checks.tile(tuple(map(int, name.split("-"))), layers)
    took.sort()
    worked.sort()
    print(f"{len(took)} tiles, {full} not empty, {checks.checked} facts of them checked, {len(checks.wrong)} wrong; "
          f"a tile took {took[len(took) // 2][0]:.1f} ms by the median, {took[len(took) * 95 // 100][0]:.1f} in 95 of 100, {took[-1][0]:.0f} ms at most ({'/'.join(map(str, took[-1][1]))}), connection and all; "
          f"processor time {worked[len(worked) // 2]:.1f}, {worked[len(worked) * 95 // 100]:.1f}, {worked[-1]:.1f} ms")
    print("\n".join(checks.wrong[:30]))
    return 1 if checks.wrong or full < len(took) / 3 else 0


if __name__ == "__main__":
    sys.exit(main())
