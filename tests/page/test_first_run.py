#!/usr/bin/python3
"""The page where there is no area yet: it takes an extract, builds it, opens on it; and leaves nothing of what goes wrong.

    tests/page/test_first_run.py PROGRAM

What the area must be is what `build` makes of the same extract; where it lies is the XDG Base Directory Specification's.
"""
import contextlib
import json
import os
import pathlib
import random
import re
import resource
import signal
import socket
import subprocess
import sys
import tempfile
import time
import unittest
import urllib.parse

from random_requests import random_request
from served import ROOT, Served

PROGRAM = sys.argv[1]
COUNTY = (ROOT / "maps" / "quillham.osm.pbf").read_bytes()


class Begun(Served):
    """A page that was begun in a folder of its own, as the person's data folder; its key is traded."""

    def __init__(self, folder, words=(), before=None):
        self.data = folder / "data"
        process = subprocess.Popen([PROGRAM, "page", *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8",
                                   env={"TMPDIR": str(folder), "XDG_DATA_HOME": str(self.data), "PATH": "/usr/bin:/bin"}, preexec_fn=before)
        line = process.stdout.readline()
        told = re.match(r"http://127\.0\.0\.1:(\d+)/\?key=([0-9a-f]{64})  ", line)
        assert told, line + process.stderr.read()
        super().__init__(process, int(told.group(1)), told.group(2))
        self.enter()

    def end(self, how=signal.SIGTERM):
        self.process.send_signal(how)
        self.process.wait(timeout=20)
        self.process.stdout.close()
        self.process.stderr.close()

    def send(self, body, name="county.osm.pbf", region="GB-ENG", **headers):
        words = urllib.parse.urlencode({"name": name, "region": region})
        status, _, told = self.ask("POST", f"/extract?{words}", body, **{"Origin": self.origin, **headers})
        return status, json.loads(told)

    def state(self):
        status, _, told = self.ask("GET", "/build")
        assert status == 200, told
        return json.loads(told)

    def over(self):
        deadline = time.monotonic() + 60
        while (state := self.state())["stage"] in ("waiting", "working"):
            assert time.monotonic() < deadline, state
            time.sleep(0.05)
        return state


@contextlib.contextmanager
def begun(words=(), before=None):
    with tempfile.TemporaryDirectory() as name:
        page = Begun(pathlib.Path(name), words, before)
        try:
            yield page
        finally:
            if page.process.poll() is None:
                page.end()


def files_in(folder):
    """What lies there, besides what the page has for itself while it runs, and the empty book."""
    return sorted(str(path.relative_to(folder)) for path in folder.rglob("*")
                  if path.is_file() and path.name != "alive" and not path.name.startswith("pupils.book"))


class FirstRun(unittest.TestCase):
    def test_an_extract_is_taken_and_the_page_opens_on_it(self):
        with begun() as page, tempfile.TemporaryDirectory() as other:
            self.assertIn(b"extract", page.ask("GET", "/")[2])
            self.assertNotIn(b"http", page.ask("GET", "/")[2], "addresses are words, and nothing comes from elsewhere")
            self.assertEqual(page.ask("GET", "/area")[0], 404)
            state = page.state()
            self.assertEqual((state["stage"], state["area"]), ("none", str(page.data / "loopwright" / "roads.area")))
            self.assertEqual(page.send(COUNTY, "quillham.osm.pbf")[0], 200)
            self.assertEqual(self.stages(page), ("over", ""))
            self.assertEqual(json.loads(page.ask("GET", "/area")[2])["region"], "GB-ENG")
            self.assertIn(b"/desk.js", page.ask("GET", "/")[2])
            made = pathlib.Path(other) / "roads.area"
            subprocess.run([PROGRAM, "build", ROOT / "maps" / "quillham.osm.pbf", "-o", made, "--region", "GB-ENG"], check=True, stdout=subprocess.DEVNULL)
            self.assertEqual((page.data / "loopwright" / "roads.area").read_bytes(), made.read_bytes())
            self.assertEqual(page.send(COUNTY)[0], 409, "there is one now")
            self.assertEqual((page.data / "loopwright").stat().st_mode & 0o777, 0o700)
            page.end()
            self.assertEqual(sorted(path.name for path in (page.data / "loopwright").iterdir()), ["pupils.book", "roads.area"])
            again = Begun(page.data.parent)
            told = json.loads(again.ask("GET", "/area")[2])
            self.assertEqual((told["file"], told["notes"], told["book"]), ("roads.area", True, True), "the next start finds it, with book and notes")
            note = {"words": [["at", "54.29732,2.60003"], ["says", "narrow"], ["seen", "2026-11-20"]]}
            self.assertEqual(again.ask("POST", "/notes", json.dumps(note), Origin=again.origin)[0], 200)
            self.assertTrue((page.data / "loopwright" / "notes.geojson").is_file())
            again.end()

    def stages(self, page):
        """How it ended; on the way each step told must be one of a build's, at 0 to 100 per cent."""
        while (state := page.state())["stage"] in ("waiting", "working"):
            self.assertIn(state["step"], ("", "reading the map", "reading outlines", "reading roads", "reading points", "joining roads", "finding practice"))
            self.assertTrue(0 <= state["percent"] <= 100, state)
            time.sleep(0.01)
        return state["stage"], state["trouble"]

    def test_what_is_no_extract_is_told_in_a_line_and_leaves_nothing(self):
        with begun() as page:
            for body, name, region, status, line in (
                    (COUNTY, "county.shp", "GB-ENG", 415, "ends in .osm.pbf"), (COUNTY, "", "GB-ENG", 415, "ends in .osm.pbf"),
                    (COUNTY, "county.osm.pbf", "", 400, "GB-ENG, GB-WLS"), (COUNTY, "county.osm.pbf", "GB", 400, "GB-ENG, GB-WLS"),
                    (COUNTY, "county.osm.pbf", "../x", 400, "GB-ENG, GB-WLS")):
                told = page.send(body, name, region)
                self.assertEqual(told[0], status, (name, region))
                before = page.ask("GET", "/extract?" + urllib.parse.urlencode({"name": name, "region": region, "length": len(body)}))
                self.assertEqual((before[0], json.loads(before[2])), told, "the same before it is sent")
                self.assertIn(line, told[1]["trouble"])
            for body, name in ((COUNTY[:150000], "half.osm.pbf"), (b"\x89PNG\r\n\x1a\n" * 5000, "picture.osm.pbf"), (b"", "empty.osm.pbf"),
                               (b"<osm version='0.6'><node id='1'", "broken.osm"), (b"<html></html>", "page.osm"), (COUNTY, "named wrong.osm")):
                self.assertEqual(page.send(body, name)[0], 200, name)
                state = page.over()
                self.assertEqual(state["stage"], "over")
                self.assertRegex(state["trouble"], r"\S", name)
                self.assertNotRegex(state["trouble"], "\n|loopwright-page|loopwright:", name)
                self.assertEqual(files_in(page.data), [], name)
            self.assertEqual(page.send(COUNTY)[0], 200, "and one that is whole is taken all the same")
            self.assertEqual(page.over()["trouble"], "")

    def test_who_has_no_key_or_comes_from_elsewhere_writes_nothing(self):
        with begun() as page:
            for headers, status in (({"Cookie": ""}, 401), ({"Origin": None}, 403), ({"Origin": "http://evil.example"}, 403),
                                    ({"Host": "evil.example"}, 403), ({"Sec_Fetch_Site": "cross-site"}, 403)):
                self.assertEqual(page.send(COUNTY, **headers)[0], status, headers)
                self.assertEqual(files_in(page.data.parent), [])
            self.assertEqual(page.ask("DELETE", "/build")[0], 403)
            self.assertEqual(page.ask("POST", "/none", b"x" * (2 << 20), Origin=page.origin)[0], 413, "a megabyte is all else's limit")
            self.assertEqual(page.ask("PUT", "/extract", Origin=page.origin)[0], 405)

    def test_too_large_is_refused_before_it_is_sent(self):
        with begun() as page:
            most = page.state()["most_bytes"]
            for size, status in ((most + 1, b"413"), (10 ** 18, b"413"), (most, b"507"), (-1, b"400")):
                room = os.statvfs(page.data)
                if status == b"507" and room.f_bavail * room.f_frsize > 3 * most:
                    continue  # a disk with room for that
                with socket.create_connection(("127.0.0.1", page.port), timeout=20) as sender:
                    sender.sendall((f"POST /extract?name=a.osm.pbf&region=IE HTTP/1.1\r\nHost: 127.0.0.1:{page.port}\r\nCookie: {page.cookie}\r\n"
                                    f"Origin: {page.origin}\r\nContent-Length: {size}\r\n\r\n").encode())
                    self.assertEqual(sender.recv(2000).split()[1], status, size)
            self.assertEqual(files_in(page.data), [])

    def test_a_full_disk_is_told_and_leaves_nothing(self):
        def limit():
            signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
            resource.setrlimit(resource.RLIMIT_FSIZE, (200_000, 200_000))
        with begun(before=limit) as page:
            status, told = page.send(COUNTY)
            self.assertEqual((status, told), (507, {"trouble": "the disk is full; make room, then try again"}))
            self.assertEqual(files_in(page.data), [])

        def room_for_the_extract():
            signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
            resource.setrlimit(resource.RLIMIT_FSIZE, (len(COUNTY) + 1000,) * 2)
        with begun(before=room_for_the_extract) as page:
            self.assertEqual(page.send(COUNTY)[0], 200)
            self.assertRegex(page.over()["trouble"], r"^built\.area: .*(full|large)")
            self.assertEqual(files_in(page.data), [])

    def test_broken_off_in_the_middle_leaves_nothing(self):
        with begun() as page:
            with socket.create_connection(("127.0.0.1", page.port)) as sender:
                sender.sendall((f"POST /extract?name=a.osm.pbf&region=IE HTTP/1.1\r\nHost: 127.0.0.1:{page.port}\r\nCookie: {page.cookie}\r\n"
                                f"Origin: {page.origin}\r\nContent-Length: {len(COUNTY)}\r\n\r\n").encode() + COUNTY[:200000])
                deadline = time.monotonic() + 10
                while not files_in(page.data):
                    self.assertLess(time.monotonic(), deadline)
            while files_in(page.data):
                self.assertLess(time.monotonic(), deadline, "the half of it goes with its sender")
                time.sleep(0.02)
            self.assertEqual(page.send(COUNTY)[0], 200)
            self.assertEqual(page.send(COUNTY)[0], 409, "one at a time")
            self.assertEqual(page.ask("DELETE", "/build", Origin=page.origin)[0], 200)
            self.assertEqual((page.over()["stage"], page.state()["trouble"]), ("broken off", ""))
            self.assertEqual(files_in(page.data), [])
            self.assertEqual(page.send(COUNTY)[0], 200)
            page.end()  # while it is built
            self.assertEqual([path.name for path in (page.data / "loopwright").iterdir() if path.name not in ("roads.area", "pupils.book")], [])

    def test_what_a_killed_page_left_goes_with_the_next(self):
        with begun() as page:
            self.assertEqual(page.send(COUNTY)[0], 200)
            page.end(signal.SIGKILL)
            again = Begun(page.data.parent)
            deadline = time.monotonic() + 30  # the build that went on by itself ends
            while len(list((page.data / "loopwright").glob("loopwright-page-*"))) > 2 or files_in(page.data) not in ([], ["loopwright/roads.area"]):
                self.assertLess(time.monotonic(), deadline, files_in(page.data))
                time.sleep(0.1)
            self.assertEqual(again.send(COUNTY)[0], 200)
            self.assertEqual(again.over()["trouble"], "")
            again.end()
            self.assertEqual(sorted(path.name for path in (page.data / "loopwright").iterdir()), ["pupils.book", "roads.area"])

    def test_an_extract_passes_by_the_memory(self):
        with begun() as page:
            before = page.resident_kb()
            self.assertEqual(page.send(bytes(150 << 20), "large.osm.pbf")[0], 200)
            self.assertLess(page.resident_kb() - before, 30_000)
            self.assertRegex(page.over()["trouble"], "large.osm.pbf")

    def test_random_requests_before_there_is_an_area_do_no_harm(self):
        dice = random.Random(20261130)
        with begun() as page:
            for _ in range(500):
                request = random_request(dice, page.cookie, page.port)
                with socket.create_connection(("127.0.0.1", page.port), timeout=60) as connection:
                    with contextlib.suppress(OSError):
                        connection.sendall(request)
                        connection.shutdown(socket.SHUT_WR)
                        reply = connection.recv(200)
                        self.assertNotRegex(reply, rb"^HTTP/1\.1 500 ", request[:300])
                        if page.cookie.encode() not in request:
                            self.assertNotRegex(reply, rb"^HTTP/1\.1 200 ", request[:300])
            self.assertEqual(page.over()["stage"] in ("none", "over"), True)
            self.assertEqual(files_in(page.data), [])
            self.assertEqual(page.send(COUNTY)[0], 200)
            self.assertEqual(page.over()["trouble"], "")

    def test_a_named_area_is_built_where_it_is_named(self):
        with tempfile.TemporaryDirectory() as folder:
            area = pathlib.Path(folder) / "mine.area"
            with begun([str(area)]) as page:
                self.assertEqual(page.state()["area"], str(area))
                self.assertEqual(page.send(COUNTY)[0], 200)
                self.assertEqual(page.over()["trouble"], "")
                page.end()
                self.assertFalse(page.data.exists())
            self.assertEqual([path.name for path in pathlib.Path(folder).iterdir()], ["mine.area"])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
