#!/usr/bin/python3
"""The pupils' book behind the page: what is asked over HTTP is what the commands do, and nothing else gets through.

    tests/page/test_book_routes.py PROGRAM

What the page answers is held against the same command run beside it, and against the book itself (SQLite, read by
Python's own module). RFC 9110 for what a status means.
"""
import contextlib
import json
import pathlib
import sqlite3
import subprocess
import sys
import tempfile
import time
import unittest

from served import served

PROGRAM = sys.argv[1]
START = "2026-11-28T15:00"
WISH = [["home", "4 Lantern Row"], ["start", START], ["minutes", "40"], ["reserve", "5"], ["want", "zebra=1"], ["alternatives", "2"]]


class BookRoutes(unittest.TestCase):
    def setUp(self):
        self.scratch = tempfile.TemporaryDirectory()
        self.book = pathlib.Path(self.scratch.name) / "pupils.book"
        self.run_it("pupil", "add", "WREN", "--home", "4 Lantern Row", "--today", "2026-09-01")

    def tearDown(self):
        self.scratch.cleanup()

    def run_it(self, *words):
        done = subprocess.run([PROGRAM, *words, "--book", self.book], capture_output=True, encoding="utf-8", check=False)
        self.assertEqual(done.returncode, 0, done.stderr)
        return done.stdout

    def rows(self, text):
        with contextlib.closing(sqlite3.connect(self.book)) as db:
            return db.execute(text).fetchall()

    def served(self, *more):
        return served(PROGRAM, more=("--book", self.book, *more))

    @staticmethod
    def post(page, target, body):
        status, _, reply = page.ask("POST", target, body if isinstance(body, str) else json.dumps(body), Origin=page.origin)
        return status, json.loads(reply)

    @staticmethod
    def get(page, target):
        status, headers, body = page.ask("GET", target)
        return status, headers, body

    def over(self, page, begun):
        status, reply = begun
        self.assertEqual(status, 200, reply)
        while (state := json.loads(page.ask("GET", f"/jobs/{reply['job']}")[2]))["stage"] in ("waiting", "working"):
            time.sleep(0.03)
        self.assertEqual((state["stage"], state["trouble"]), ("over", ""))
        return reply["job"], state

    def test_a_loop_that_was_found_is_kept_as_it_was(self):
        with self.served() as page:
            page.enter()
            job, _ = self.over(page, self.post(page, "/loops", {"words": WISH, "effort": "quick"}))
            answer = json.loads(self.get(page, f"/jobs/{job}/loops")[2])
            found = answer["loops"]
            self.assertNotIn("street_use", answer["wish"], "nothing was driven yet")
            for body in ({"pupil": "WREN"}, {"pupil": "--yes", "loop": 1}, {"pupil": "WREN", "loop": "1"}, {"pupil": "WREN", "loop": -1},
                         {"pupil": "WREN", "loop": 1, "length": "-o"}, [], "x"):
                self.assertEqual(self.post(page, f"/jobs/{job}/keep", body)[0], 400, body)
            self.assertEqual(self.post(page, "/jobs/77/keep", {"pupil": "WREN", "loop": 1})[0], 404)
            self.assertEqual(self.post(page, f"/jobs/{job}/keep", {"pupil": "WREN", "loop": 9})[0], 422)
            self.assertEqual(self.post(page, f"/jobs/{job}/keep", {"pupil": "NOBODY", "loop": 1})[0], 422)
            self.assertEqual(self.rows("SELECT count(*) FROM lesson"), [(0,)])
            status, kept = self.post(page, f"/jobs/{job}/keep", {"pupil": "WREN", "loop": len(found), "length": 50})
            self.assertEqual((status, kept["code"], kept["lesson"]), (200, "WREN", 1), kept)
            (text,) = self.rows("SELECT loop_file FROM lesson")[0]
            drive = json.loads(text)["loops"]
            self.assertEqual([[row["way"], row["from"], row["to"]] for row in drive[0]["stretches"]],
                             [[row["way"], row["from"], row["to"]] for row in found[-1]["stretches"]])
            job_then, _ = self.over(page, self.post(page, "/loops", {"words": WISH, "effort": "quick"}))
            use = json.loads(self.get(page, f"/jobs/{job_then}/loops")[2])["wish"]["street_use"]
            ways = {way for (way,) in self.rows("SELECT DISTINCT way FROM ledger")}
            self.assertTrue(use and {each["way"] for each in use} <= ways, "what the book's lessons drive counts")
            _, headers, pdf = self.get(page, "/pupils/WREN/card?lesson=1&form=pdf")
            self.assertEqual((headers["Content-Type"], pdf[:5]), ("application/pdf", b"%PDF-"))
            self.assertEqual(self.rows("SELECT count(*) FROM written_file"), [(0,)], "what the browser gets lies nowhere")
            self.assertEqual(self.get(page, "/pupils/WREN/card?lesson=7&form=pdf")[0], 422)
            self.assertEqual(self.get(page, "/pupils/WREN/card?lesson=-o&form=pdf")[0], 400)
            self.assertEqual(self.post(page, "/pupils/WREN/log", {"line": "rest 4", "lesson": "1"})[0], 400)
            self.assertEqual(self.post(page, "/pupils/WREN/log", {"line": "rest 4", "lesson": 7})[0], 422)
            _, state = self.over(page, self.post(page, "/pupils/WREN/again", {"words": [["lesson", "1"], ["start", "2026-11-28T15:10"]]}))
            self.assertIn("the same drive as before", " ".join(state["said"].split()))
            self.assertIn("2026-11-28 15:10", self.run_it("lesson", "list", "WREN"))
            self.assertEqual(self.post(page, "/pupils/WREN/unlog", {"lesson": 1})[0], 422, "nothing is logged")
            self.assertEqual(self.post(page, "/pupils/WREN/log", {"line": "rest 4", "lesson": 1})[0], 200)
            self.assertEqual(self.post(page, "/pupils/WREN/unlog", {"lesson": "1"})[0], 400)
            status, back = self.post(page, "/pupils/WREN/unlog", {"lesson": 1})
            self.assertEqual((status, "as it was" in " ".join(back["said"].split())), (200, True), back)
            self.assertEqual(self.rows("SELECT state, length(loop_file) > 0 FROM lesson"), [("planned", 1)])
            self.run_it("pupil", "change", "WREN", "--home", "19 Cooper's Reach")
            status, far = self.post(page, f"/jobs/{job}/keep", {"pupil": "WREN", "loop": 1})
            self.assertEqual(status, 422)
            self.assertRegex(far["trouble"], r"begins \d+ m from the home of WREN")
            self.assertEqual(self.post(page, f"/jobs/{job}/keep", {"pupil": "WREN", "loop": 1, "elsewhere": True})[0], 200)

    def test_a_street_that_very_many_lessons_drove_stops_no_search(self):
        with contextlib.closing(sqlite3.connect(self.book)) as db, db:
            # Streets near the door; a school's own street is driven by all its cars.
            for way, day, times in ((9100000000093, "2026-11-20", 150), (9100000000093, START[:10], 130), (9100000000097, "2026-11-20", 99)):
                db.execute("INSERT INTO street_use (day, way, node_a, node_b, times, near_door) VALUES (?, ?, 1, 2, ?, 0)", (day, way, times))
        with self.served() as page:
            page.enter()
            job, _ = self.over(page, self.post(page, "/loops", {"words": WISH, "effort": "quick"}))
            use = json.loads(self.get(page, f"/jobs/{job}/loops")[2])["wish"]["street_use"]
            self.assertEqual({row["way"]: row["month"] > 20 for row in use}, {9100000000093: True, 9100000000097: True})

    def test_lists_without_end_are_refused_and_the_page_goes_on(self):
        deep = "[" * 300_000 + "]" * 300_000
        with self.served() as page:
            page.enter()
            for target, body in (("/day", f'{{"lines": [], "day": {deep}}}'), ("/loops", f'{{"words": [], "effort": {deep}}}'),
                                 ("/pupils/WREN/log", deep), ("/notes/drop", deep), ("/day", "[" * 600_000)):
                status, reply = self.post(page, target, body)
                self.assertEqual((status, reply["trouble"]), (400, "lists in what was sent lie too deep in each other"), target)
            self.assertEqual(self.get(page, "/area")[0], 200)

    @staticmethod
    def stat_of(pid):
        """State and parent of a process (proc_pid_stat(5)); nothing when it is gone."""
        try:
            return pathlib.Path(f"/proc/{pid}/stat").read_text(encoding="utf-8", errors="replace").rpartition(") ")[2].split()[:2]
        except OSError:
            return ["X", "0"]

    def children_of(self, parent):
        return [int(path.name) for path in pathlib.Path("/proc").iterdir() if path.name.isdigit() and self.stat_of(path.name)[1] == str(parent)]

    def runs(self, pid):
        return self.stat_of(pid)[0] not in "XZ"

    def test_a_page_that_is_killed_leaves_nothing_running(self):
        killed = []
        with contextlib.suppress(AssertionError), self.served() as page:  # killed, it can't tidy its folder
            page.enter()
            wish = [["home", "4 Lantern Row"], ["start", START], ["minutes", "180"], ["want", "zebra=max"], ["want", "emerge=max"]]
            self.post(page, "/loops", {"words": wish, "effort": "thorough"})
            deadline = time.monotonic() + 20
            while not killed and time.monotonic() < deadline:
                killed = self.children_of(page.process.pid)
            page.process.kill()
            page.process.wait()
        self.assertTrue(killed, "no search was begun")
        deadline = time.monotonic() + 10
        while any(map(self.runs, killed)) and time.monotonic() < deadline:
            time.sleep(0.02)
        self.assertEqual(list(filter(self.runs, killed)), [])

    def test_a_day_is_planned_from_rows_and_told(self):
        self.run_it("pupil", "add", "FINCH", "--home", "19 Cooper's Reach", "--today", "2026-09-01")
        with self.served() as page:
            page.enter()
            for body in ({"day": "2026-11-28", "lines": ["09:00 30 WREN zebra\n10:00 30 WREN"]}, {"day": "--help", "lines": []},
                         {"day": 7, "lines": []}, {"day": "2026-11-28"}, {"day": "2026-11-28", "lines": ["x" * 500]},
                         {"day": "2026-11-28", "lines": ["09:00 30 WREN"] * 41}):
                self.assertEqual(self.post(page, "/day", body)[0], 400, body)
            _, state = self.over(page, self.post(page, "/day", {"day": "2026-11-28", "lines": ["09:00 45 WREN", "09:30 45 FINCH"]}))
            self.assertIn("they overlap by 15 min", " ".join(state["said"].split()))
            self.assertEqual(self.rows("SELECT count(*) FROM lesson"), [(0,)])
            job, state = self.over(page, self.post(page, "/day", {"day": "2026-11-28", "lines": ["09:00 40 WREN zebra", "10:00 40 FINCH zebra=1"]}))
            sheet = json.loads(self.get(page, f"/jobs/{job}/day")[2])
            self.assertEqual([(one["code"], one["start"], one["end"], one["state"]) for one in sheet["lessons"]],
                             [("WREN", "09:00", "09:40", "planned"), ("FINCH", "10:00", "10:40", "planned")])
            self.assertEqual((sheet["between"][0]["free_minutes"], sheet["between"][0]["clash"]), (20, ""))
            again, _ = self.over(page, self.post(page, "/day", {"day": "2026-11-28", "lines": []}))
            self.assertEqual(json.loads(self.get(page, f"/jobs/{again}/day")[2]), sheet)
            self.assertEqual(self.get(page, f"/jobs/{again}/paper")[0], 404)
            _, headers, pdf = self.get(page, "/day?day=2026-11-28")
            self.assertEqual((headers["Content-Type"], pdf[:5]), ("application/pdf", b"%PDF-"))
            self.assertEqual(self.get(page, "/day?day=2026-11-29")[0], 422)
            self.assertEqual(self.get(page, "/day?day=-o")[0], 400)

    def test_a_day_that_is_broken_off_keeps_what_was_planned_until_then(self):
        lines = [f"{8 + k:02}:00 45 WREN roundabout=max" for k in range(8)]
        with self.served() as page:
            page.enter()
            job = self.post(page, "/day", {"day": "2026-11-28", "lines": lines})[1]["job"]
            deadline = time.monotonic() + 300
            while "WREN, lesson 1" not in json.loads(self.get(page, f"/jobs/{job}")[2])["said"]:
                self.assertLess(time.monotonic(), deadline)
                time.sleep(0.02)
            self.assertEqual(page.ask("DELETE", f"/jobs/{job}", Origin=page.origin)[0], 200)
            self.assertEqual(json.loads(self.get(page, f"/jobs/{job}")[2])["stage"], "broken off")
            time.sleep(0.2)
            (kept,) = self.rows("SELECT count(*) FROM lesson")[0]
            self.assertTrue(1 <= kept < 8, kept)
            again, _ = self.over(page, self.post(page, "/day", {"day": "2026-11-28", "lines": []}))
            sheet = json.loads(self.get(page, f"/jobs/{again}/day")[2])
            self.assertEqual([one["start"] for one in sheet["lessons"]], [f"{8 + k:02}:00" for k in range(kept)])

    def test_a_pupil_comes_is_told_of_and_goes(self):
        with self.served() as page:
            page.enter()
            self.assertEqual(self.post(page, "/pupils/ROBIN/add", {"words": [["home", "8 Signal Terrace"], ["test", "2027-02-03"]]})[0], 200)
            self.assertEqual(self.post(page, "/pupils/ROBIN/add", {"words": []})[0], 422, "there is one")
            status, nowhere = self.post(page, "/pupils/RUFF/add", {"words": [["home", "4 No Such Street"]]})
            self.assertEqual((status, "No Such Street" in nowhere["trouble"]), (422, True), nowhere)
            for words in ([["book", "/tmp/x"]], [["yes", ""]], [["home", "x\ny"]], [["home"]]):
                self.assertEqual(self.post(page, "/pupils/WREN/change", {"words": words})[0], 400, words)
            for code in ("--yes", "-o", "A_B", "ABCDEFGHIJKLM"):
                self.assertEqual(self.post(page, f"/pupils/{code}/add", {"words": []})[0], 404, code)
            self.assertEqual(self.post(page, "/pupils/ROBIN/change", {"words": [["test", "none"], ["avoid", "tram"]]})[0], 200)
            record = json.loads(self.get(page, "/pupils/ROBIN")[2])
            self.assertEqual((record["home"], record["test"], record["avoids"]), ("8 Signal Terrace", None, ["tram"]))
            self.assertEqual(self.post(page, "/pupils/ROBIN/next", {"words": [["loops", "x"]]})[0], 400)
            for task in ("next", "not-met"):
                told = {"next": ("lesson", "next", "ROBIN", "--today", "2026-11-28"), "not-met": None}[task]
                job, state = self.over(page, self.post(page, f"/pupils/ROBIN/{task}", {"words": [["today", "2026-11-28"]] if told else [["start", START]]}))
                self.assertIn("ROBIN", state["said"])
                if told:
                    words = json.loads(self.get(page, f"/jobs/{job}/wish")[2])["words"]
                    self.assertIn(["avoid", "tram"], words)
                    self.assertTrue([one for one in words if one[0] == "want"])
            _, state = self.over(page, self.post(page, "/pupils/ROBIN/at-home", {"words": []}))
            self.assertEqual(state["code"], 4, "nothing is at level 4 yet")
            self.assertEqual(self.get(page, "/pupils/ROBIN/progress")[0], 422, "no lesson yet")
            _, headers, text = self.get(page, "/pupils/ROBIN/export?form=json")
            self.assertEqual(text.decode(), self.run_it("pupil", "export", "ROBIN"))
            self.assertIn("attachment", headers["Content-Disposition"])
            self.assertEqual(self.get(page, "/pupils/ROBIN/export?form=pdf")[2][:5], b"%PDF-")
            for typed in ({"code": "WREN"}, {"code": ""}, {}, {"code": 7}):
                self.assertEqual(self.post(page, "/pupils/ROBIN/erase", typed)[0], 400, typed)
            self.assertEqual(page.ask("POST", "/pupils/ROBIN/erase", json.dumps({"code": "ROBIN"}))[0], 403, "from elsewhere")
            self.assertEqual(self.rows("SELECT code FROM pupil ORDER BY code"), [("ROBIN",), ("WREN",)])
            self.assertEqual(self.post(page, "/pupils/ROBIN/erase", {"code": "robin"})[0], 200)
            self.assertEqual(self.rows("SELECT code FROM pupil"), [("WREN",)])
            self.assertEqual(self.get(page, "/pupils/ROBIN")[0], 422)

    def test_a_test_centre_is_kept_listed_kept_off_by_a_mock_test_and_taken_out(self):
        outline = "54.3070,2.6050;54.3070,2.6200;54.3000,2.6200;54.3000,2.6050"
        words = [["outline", outline], ["hours", "Mo-Fr 08:30-16:30"], ["since", "2026-11-01"]]
        self.run_it("lesson", "log", "WREN", "--yes", "--start", "2026-11-10T10:00", "roundabout right x3 4; signals x4 4; emerge left x4 4")
        with self.served() as page:
            page.enter()
            self.assertEqual(json.loads(self.get(page, "/centres")[2]), {"centres": []})
            for body in ({"words": words}, {"name": "", "words": words}, {"name": "--yes", "words": words}, {"name": "Quill Lane", "words": [["book", "x"]]},
                         {"name": 7, "words": words}, [], "x"):
                self.assertEqual(self.post(page, "/centres/keep", body)[0], 400, body)
            for wrong in (["outline", "54.3,2.6;54.4,2.7"], ["hours", "sometimes"], ["since", "soon"]):
                changed = [wrong if one[0] == wrong[0] else one for one in words]
                self.assertEqual(self.post(page, "/centres/keep", {"name": "Quill Lane", "words": changed})[0], 422, wrong)
            self.assertEqual(self.post(page, "/centres/keep", {"name": "Quill Lane", "words": words})[0], 200)
            self.assertEqual(json.loads(self.get(page, "/centres")[2])["centres"],
                             [{"name": "Quill Lane", "outline": [[54.307, 2.605], [54.307, 2.62], [54.3, 2.62], [54.3, 2.605]],
                               "hours": "Mo-Fr 08:30-16:30", "since": "2026-11-01"}])
            self.assertIn("Quill Lane", self.run_it("centre", "list"))
            _, state = self.over(page, self.post(page, "/pupils/WREN/mock", {"words": [["start", "2026-12-01T10:15"], ["length", "60"]]}))
            self.assertIn("keeps off the surroundings of the test centre Quill Lane", " ".join(state["said"].split()))
            drive = json.loads(self.get(page, "/pupils/WREN/card?lesson=2&form=geojson")[2])
            line = next(one["geometry"]["coordinates"] for one in drive["features"] if one["properties"]["what"] == "drive")
            # Without the centre a mock test at that hour goes through here (tests/golden/lesson/mock.txt).
            self.assertEqual([(lat, lon) for lon, lat in line if 54.3000 < lat < 54.3070 and 2.6050 < lon < 2.6200], [])
            self.assertEqual(self.post(page, "/centres/drop", {"name": "Quill"})[0], 422)
            self.assertEqual(self.post(page, "/centres/drop", {"name": "Quill Lane"})[0], 200)
            self.assertEqual(json.loads(self.get(page, "/centres")[2]), {"centres": []})
            self.assertEqual([self.get(page, "/centres/keep")[0], self.get(page, "/centres/x")[0], self.post(page, "/centres", {})[0]], [405, 404, 405])

    def test_a_book_that_is_not_there_is_made(self):
        new = pathlib.Path(self.scratch.name) / "new.book"
        with served(PROGRAM, more=("--book", new)) as page:
            page.enter()
            self.assertEqual(json.loads(self.get(page, "/pupils")[2]), {"pupils": []})
            self.assertEqual(self.post(page, "/pupils/ROBIN/add", {"words": []})[0], 200)
            self.assertEqual(new.stat().st_mode & 0o777, 0o600)

    def test_without_a_book_it_is_said(self):
        with served(PROGRAM) as page:
            page.enter()
            self.assertEqual(self.get(page, "/pupils")[0], 409)
            self.assertEqual(self.get(page, "/centres")[0], 409)
            self.assertEqual(self.get(page, "/day?day=2026-11-28")[0], 409)
            self.assertEqual(self.post(page, "/day", {"day": "2026-11-28", "lines": []})[0], 409)
            self.assertEqual(self.post(page, "/jobs/1/keep", {"pupil": "WREN", "loop": 1})[0], 409)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
