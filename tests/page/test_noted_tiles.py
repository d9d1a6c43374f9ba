#!/usr/bin/python3
"""The map on the screen as notes change it: each note is written through the page, and the next tile has it, read by another
reader (npm @mapbox/vector-tile); where a road lies is the raw map's to say (osmium-tool).

    tests/page/test_noted_tiles.py PROGRAM PARTS
"""
import json
import math
import pathlib
import subprocess
import sys
import tempfile
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "real"))
from opl import Map  # noqa: E402
from served import ROOT, served  # noqa: E402

PROGRAM, PARTS = sys.argv[1:3]
MAP = Map(ROOT / "maps" / "quillham.osm.pbf")
MONDAY, SATURDAY = "2026-11-30T08:30", "2026-11-28T15:00"


def street(name):
    """A way of that name that is no dead end's stub, and the middle of its longest part."""
    way = max((way for way in MAP.ways.values() if way.tags.get("name") == name and "highway" in way.tags), key=lambda way: len(way.nodes))
    places = [MAP.places[node] for node in way.nodes]
    a, b = max(zip(places, places[1:]), key=lambda pair: math.dist(*pair))
    number = next(number for number, each in MAP.ways.items() if each is way)
    return number, ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)


def tile_of(place, zoom=16):
    lat, lon = place
    y = math.log(math.tan(math.pi / 4 + math.radians(lat) / 2))
    return zoom, int((lon + 180) / 360 * 2 ** zoom), int((1 - y / math.pi) / 2 * 2 ** zoom)


class NotedTiles(unittest.TestCase):
    def layers(self, page, place, at):
        status, _, body = page.ask("GET", "/tiles/{}/{}/{}?at={}&minutes=60".format(*tile_of(place), at))
        self.assertEqual(status, 200, body)
        with tempfile.TemporaryDirectory() as folder:
            (pathlib.Path(folder) / "tile.mvt").write_bytes(body)
            here = pathlib.Path(__file__).resolve().parent
            return json.loads(subprocess.run(["node", here / "decode_tiles.mjs", PARTS, folder], check=True, stdout=subprocess.PIPE).stdout)[1]

    def values(self, page, place, at, number, key):
        return {road["values"].get(key) for road in self.layers(page, place, at)["roads"] if road["values"]["way"] == number}

    def note(self, page, place, *words):
        body = json.dumps({"words": [["at", f"{place[0]:.7f},{place[1]:.7f}"], ["seen", "2026-11-20"], *map(list, words)]})
        status, _, told = page.ask("POST", "/notes", body, Origin=page.origin)
        self.assertEqual(status, 200, told)

    def change_and_drop(self, page, notes, place, way):
        """The second note is dated anew, says something else, and goes; of the file nothing else is lost."""
        file = json.loads(notes.read_text(encoding="utf-8"))
        file["features"][1]["properties"]["by"] = "somebody's editor"
        notes.write_text(json.dumps(file), encoding="utf-8")
        was = json.loads(page.ask("GET", "/notes")[2])["features"][1]

        def post(target, body):
            return page.ask("POST", target, json.dumps(body), Origin=page.origin)[0]

        self.assertEqual(post("/notes/change", {"number": 1, "was": was, "words": [["limit", "40 mph"]]}), 409, "it is the second")
        self.assertEqual(post("/notes/change", {"number": 2, "was": was, "words": [["at", "54.3,2.6"]]}), 400, "where it is stays")
        self.assertEqual(post("/notes/change", {"number": 2, "was": was, "words": [["without", "limit"]]}), 422, "without it says nothing")
        self.assertEqual(post("/notes/change", {"number": 2, "was": was, "words": [["limit", "40 mph"], ["seen", "2026-11-22"]]}), 200)
        now = json.loads(page.ask("GET", "/notes")[2])["features"]
        self.assertEqual([each["properties"]["says"] for each in now], ["never", "limit"])
        self.assertEqual(now[1]["properties"], {"says": "limit", "limit": 40, "unit": "mph", "seen": "2026-11-22", "by": "somebody's editor"})
        self.assertEqual(now[1]["geometry"], was["geometry"])
        self.assertIn("40 mph", self.values(page, place, SATURDAY, way, "noted_limit"))
        self.assertEqual(post("/notes/drop", {"number": 2, "was": was}), 409, "it says something else by now")
        self.assertEqual(post("/notes/change", {"number": 2, "was": now[1], "words": [["remark", "new signs"]]}), 200)
        remarked = json.loads(page.ask("GET", "/notes")[2])["features"][1]
        self.assertEqual(remarked["properties"]["remark"], "new signs")
        self.assertEqual(post("/notes/change", {"number": 2, "was": remarked, "words": [["without", "remark"]]}), 200)
        self.assertEqual(json.loads(page.ask("GET", "/notes")[2])["features"][1], now[1], "as it was without one")
        self.assertEqual(post("/notes/drop", {"number": 2, "was": now[1]}), 200)
        self.assertNotIn("40 mph", self.values(page, place, SATURDAY, way, "noted_limit"))
        self.note(page, place, ("says", "limit"), ("limit", "20 mph"))

    def test_questions_are_answered_as_the_commands_answer_them(self):
        with tempfile.TemporaryDirectory() as folder:
            area, notes = pathlib.Path(folder) / "q.area", pathlib.Path(folder) / "n.geojson"
            subprocess.run([PROGRAM, "build", ROOT / "maps" / "quillham.osm.pbf", "-o", area, "--region", "GB-ENG"], check=True, stdout=subprocess.DEVNULL)
            with served(PROGRAM, area=area, more=["--notes", notes]) as page:
                page.enter()
                self.ask_all(page, str(area))

    def ask_all(self, page, area):
        for target, words in (("near?home=4+Lantern+Row&want=roundabout:right&within=4&start=2026-11-28T15:00",
                               ["near", area, "--home", "4 Lantern Row", "--want", "roundabout:right", "--within", "4", "--start", "2026-11-28T15:00"]),
                              ("ground?near=54.29793,2.60031&at=2026-11-28T15:00", ["lanes", area, "--near", "54.29793,2.60031", "--at", "2026-11-28T15:00"])):
            status, _, body = page.ask("GET", f"/told/{target}")
            said = subprocess.run([PROGRAM, *words], check=True, capture_output=True, encoding="utf-8").stdout
            self.assertEqual((status, json.loads(body)["said"]), (200, said))
        self.assertEqual(json.loads(page.ask("GET", "/told/notes")[2]), {"said": ""}, "there is none yet")
        self.assertEqual(page.ask("GET", "/told/near?home=nowhere+at+all&want=zebra")[0], 422)
        self.assertEqual(page.ask("GET", "/told/near?home=x&output=/tmp/x")[0], 400)
        self.assertEqual(page.ask("GET", "/told/build")[0], 404)
        self.assertEqual(page.ask("GET", "/told/streets")[0], 409, "there is no book")

    def test_the_next_tile_has_a_note_in_its_hours(self):
        with tempfile.TemporaryDirectory() as folder:
            notes = pathlib.Path(folder) / "n.geojson"
            with served(PROGRAM, more=["--notes", notes]) as page:
                page.enter()
                shut, at_shut = street("Ostler Street")
                slow, at_slow = street("Tanner Street")
                self.assertEqual(self.values(page, at_shut, MONDAY, shut, "shut"), {None})
                self.note(page, at_shut, ("says", "never"), ("hours", "Mo-Fr 08:45-09:15"))
                self.assertIn("whole", self.values(page, at_shut, MONDAY, shut, "shut"))
                self.assertEqual(self.values(page, at_shut, SATURDAY, shut, "shut"), {None}, "not on a Saturday")
                self.assertNotIn("20 mph", self.values(page, at_slow, SATURDAY, slow, "noted_limit"))
                self.note(page, at_slow, ("says", "limit"), ("limit", "20 mph"))
                self.assertIn("20 mph", self.values(page, at_slow, SATURDAY, slow, "noted_limit"))
                self.assertIn("whole", self.values(page, at_shut, MONDAY, shut, "shut"), "the first one holds on")
                self.change_and_drop(page, notes, at_slow, slow)
                begin = time.perf_counter()
                for minute in range(10, 40):
                    self.assertEqual(page.ask("GET", "/tiles/{}/{}/{}?at=2026-11-28T15:{}&minutes=60".format(*tile_of(at_slow), minute))[0], 200)
                print(f"a tile of a lesson whose notes weren't laid yet took {(time.perf_counter() - begin) * 1000 / 30:.0f} ms by the mean of 30")
                notes.write_text("{}")
                status, _, told = page.ask("GET", "/tiles/{}/{}/{}?at={}&minutes=60".format(*tile_of(at_slow), SATURDAY))
                self.assertEqual(status, 422, "roads drawn without the notes would mislead")
                self.assertIn("n.geojson", json.loads(told)["trouble"])
                notes.unlink()
                self.assertEqual(self.values(page, at_shut, MONDAY, shut, "shut"), {None}, "no notes, no changes")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
