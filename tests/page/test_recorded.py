#!/usr/bin/python3
"""Recorded drives on the page: told before anything is written, logged as `lesson trace` logs them; rubbish and strangers.

    tests/page/test_recorded.py PROGRAM

What is told and kept must be what the command tells and keeps of the same recording.
"""
import json
import pathlib
import shutil
import socket
import subprocess
import sys
import tempfile
import time
import unittest
import urllib.parse

from served import ROOT, served

sys.path.insert(0, str(ROOT / "tests" / "command"))
from recorded_drive import gpx_of, recorded, track_of  # noqa: E402

PROGRAM = str(pathlib.Path(sys.argv[1]).resolve())
START = 1795878000  # 2026-11-28T15:00:00Z


def run(folder, *words):
    done = subprocess.run([PROGRAM, *words], cwd=folder, capture_output=True, encoding="utf-8", check=False)
    assert done.returncode == 0, (words, done.stdout + done.stderr)
    return done.stdout


class Recorded(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.scratch = tempfile.TemporaryDirectory()
        cls.folder = pathlib.Path(cls.scratch.name)
        cls.area, cls.book = cls.folder / "quillham.area", cls.folder / "b.book"
        run(cls.folder, "build", ROOT / "maps" / "quillham.osm.pbf", "-o", cls.area, "--region", "GB-ENG")
        run(cls.folder, "pupil", "add", "WREN", "--book", cls.book, "--home", "4 Lantern Row", "--today", "2026-09-01")
        run(cls.folder, "lesson", "plan", "WREN", cls.area, "--book", cls.book, "--start", "2026-11-28T15:00", "--length", "60",
            "--want", "roundabout:right=2", "-o", "plan.json")
        run(cls.folder, "card", cls.area, "plan.json", "--format", "gpx", "-o", "plan.gpx")
        cls.track = track_of((cls.folder / "plan.gpx").read_text())
        cls.drive = gpx_of(recorded(cls.track, START + 120, 44))
        cls.later = gpx_of(recorded(cls.track, START - 7 * 86400, 44))

    @classmethod
    def tearDownClass(cls):
        cls.scratch.cleanup()

    def setUp(self):
        self.copy = self.folder / "copy.book"  # each test has its own
        shutil.copy(self.book, self.copy)

    def tearDown(self):
        for path in self.folder.glob("copy.book*"):
            path.unlink()

    def page(self):
        return served(PROGRAM, area=self.area, more=["--book", self.copy])

    def ask(self, page, target, body, **headers):
        status, _, told = page.ask("POST", target, body, **{"Origin": page.origin, **headers})
        return status, json.loads(told)

    def send(self, page, body, code="WREN", lesson="", name="wren.gpx", **headers):
        words = urllib.parse.urlencode({"code": code, "lesson": lesson, "name": name})
        return self.ask(page, f"/recorded?{words}", body, **headers)

    def over(self, page, begun):
        status, told = begun
        self.assertEqual(status, 200, told)
        deadline = time.monotonic() + 60
        while (state := json.loads(page.ask("GET", f"/jobs/{told['job']}")[2]))["stage"] in ("waiting", "working"):
            self.assertLess(time.monotonic(), deadline)
            time.sleep(0.05)
        return told["job"], state

    def exported(self):
        return json.loads(run(self.folder, "pupil", "export", "WREN", "--book", self.copy))

    def test_a_drive_is_told_as_the_command_tells_it_and_then_logged(self):
        (self.folder / "wren.gpx").write_text(self.drive)
        theirs = run(self.folder, "lesson", "trace", "WREN", "wren.gpx", "--book", self.copy, "--only-tell")
        with self.page() as page:
            page.enter()
            before = self.copy.read_bytes()
            job, state = self.over(page, self.send(page, self.drive))
            self.assertEqual((state["trouble"], state["warned"]), ("", []))
            self.assertEqual(state["said"].split("\n", 1)[1], theirs.split("\n", 1)[1])
            self.assertIn("planned passes driven: ", state["said"])
            self.assertEqual(self.copy.read_bytes(), before, "nothing is written")
            job, state = self.over(page, self.ask(page, f"/recorded/{job}", json.dumps({"line": "rest nine"})))
            self.assertIn("'rest nine'", state["trouble"])
            self.assertEqual(self.exported()["lesson"][0]["state"], "planned")
            job, state = self.over(page, self.ask(page, f"/recorded/{job}", json.dumps({"line": "roundabout right 2 pedals; rest 4"})))
            self.assertEqual(state["trouble"], "")
            self.assertIn("WREN, lesson 1 is logged", state["said"])
        by_page = self.exported()
        shutil.copy(self.book, self.copy)
        run(self.folder, "lesson", "trace", "WREN", "wren.gpx", "roundabout right 2 pedals; rest 4", "--book", self.copy)
        by_command = self.exported()
        for table in ("lesson", "pass", "trace", "trace_time", "intervention"):
            self.assertEqual(by_page[table], by_command[table], table)
        self.assertEqual(by_page["trace"][0]["recording"], "")

    def test_a_lesson_that_wasnt_planned_is_logged_on_this_area_and_kept_when_asked(self):
        with self.page() as page:
            page.enter()
            job, state = self.over(page, self.send(page, self.later))
            self.assertEqual(state["trouble"], "")
            _, state = self.over(page, self.ask(page, f"/recorded/{job}", json.dumps({"line": "", "keep": True})))
            self.assertIn("WREN, lesson 2 is logged", state["said"])
            self.assertEqual(self.ask(page, f"/recorded/{job}", json.dumps({"line": ""}))[0], 404, "it went on to the next job")
        self.assertEqual([one["recording"] for one in self.exported()["trace"]], [self.later])

    def test_what_is_no_drive_is_told_in_a_line(self):
        with self.page() as page:
            page.enter()
            for body in (bytes(range(256)) * 40, b"15:00 north", b"<gpx><wpt lat='1' lon='1'/></gpx>", b"",
                         gpx_of(recorded([(51.0, 0.1), (51.02, 0.1)], START, 10)).encode()):
                _, state = self.over(page, self.send(page, body))
                self.assertRegex(state["trouble"], r"^wren\.gpx: \S")
                self.assertNotIn("\n", state["trouble"])
            _, state = self.over(page, self.send(page, self.drive, code="FINCH"))
            self.assertIn("FINCH", state["trouble"])
            _, state = self.over(page, self.send(page, self.drive, lesson="7"))
            self.assertRegex(state["trouble"], "7")
            for words, status in (({"code": "Jenny Wren of Mill Street"}, 400), ({"code": ""}, 400), ({"lesson": "-1"}, 400), ({"lesson": "1 --keep"}, 400)):
                self.assertEqual(self.send(page, self.drive, **words)[0], status, words)
            job, _ = self.over(page, self.send(page, self.drive, name="../../etc/x.gpx"))
            for body, status in (("", 400), ("[]", 400), ('{"line": 7}', 400), ('{"line": "--keep"}', 400)):
                self.assertEqual(self.ask(page, f"/recorded/{job}", body)[0], status, body)
            self.assertEqual(self.ask(page, "/recorded/999", '{"line": ""}')[0], 404)
            self.assertEqual(page.ask("GET", "/recorded", Origin=page.origin)[0], 405)
            self.assertEqual(self.exported()["lesson"][0]["state"], "planned")

    def test_strangers_and_what_is_too_large_are_refused_unread(self):
        with self.page() as page:
            page.enter()
            for headers, status in (({"Cookie": ""}, 401), ({"Origin": None}, 403), ({"Origin": "http://evil.example"}, 403), ({"Host": "evil.example"}, 403)):
                self.assertEqual(self.send(page, self.drive, **headers)[0], status, headers)
            with socket.create_connection(("127.0.0.1", page.port), timeout=20) as sender:
                sender.sendall((f"POST /recorded?code=WREN HTTP/1.1\r\nHost: 127.0.0.1:{page.port}\r\nCookie: {page.cookie}\r\n"
                                f"Origin: {page.origin}\r\nContent-Length: {(256 << 20) + 1}\r\n\r\n").encode())
                self.assertEqual(sender.recv(2000).split()[1], b"413")
        with served(PROGRAM, area=self.area) as page:
            page.enter()
            status, told = self.send(page, self.drive)
            self.assertEqual((status, told["trouble"]), (409, "drives are logged in a book: open the page with --book FILE"))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
