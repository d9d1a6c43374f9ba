#!/usr/bin/python3
"""Recorded drives as they are read, told and logged; GPX by another program's hand (gpsbabel), and rubbish.

    tests/command/test_trace.py PROGRAM
"""
import contextlib
import json
import pathlib
import re
import sqlite3
import subprocess
import sys
import tempfile
import unittest

from recorded_drive import gpx_of, recorded, track_of

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
PROGRAM = str(pathlib.Path(sys.argv[1]).resolve())
START = 1795878000  # 2026-11-28T15:00:00Z


def run(folder, *words, code=0):
    done = subprocess.run([PROGRAM, *words], cwd=folder, capture_output=True, encoding="utf-8", check=False)
    assert done.returncode == code, (words, done.returncode, done.stdout + done.stderr)
    return done.stdout + done.stderr


class TestTrace(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.scratch = tempfile.TemporaryDirectory()
        cls.folder = pathlib.Path(cls.scratch.name)
        run(cls.folder, "build", ROOT / "maps" / "quillham.osm.pbf", "-o", "q.area", "--region", "GB-ENG")
        run(cls.folder, "pupil", "add", "WREN", "--book", "b.book", "--home", "4 Lantern Row", "--today", "2026-09-01")
        cls.plan("2026-11-28T15:00", "--want", "roundabout:right=2")
        run(cls.folder, "loops", "q.area", "--home", "4 Lantern Row", "--start", "2026-11-28T15:00", "--minutes", "40",
            "--want", "level-crossing", "-o", "other.json")
        cls.tracks = {}
        for name in ("plan", "other"):
            run(cls.folder, "card", "q.area", f"{name}.json", "--format", "gpx", "-o", f"{name}.gpx")
            cls.tracks[name] = track_of((cls.folder / f"{name}.gpx").read_text())

    @classmethod
    def tearDownClass(cls):
        cls.scratch.cleanup()

    @classmethod
    def plan(cls, start, *words):
        return run(cls.folder, "lesson", "plan", "WREN", "q.area", "--book", "b.book", "--start", start, "--length", "60",
                   *words, "-o", "plan.json")

    def write(self, name, points):
        (self.folder / name).write_text(gpx_of(points))

    def trace(self, *words, code=0):
        return run(self.folder, "lesson", "trace", "WREN", *words, "--book", "b.book", code=code)

    def seen(self):
        with contextlib.closing(sqlite3.connect(self.folder / "b.book")) as db:
            return db.execute("SELECT what, object, day, says FROM seen ORDER BY what, object").fetchall()

    def exported(self):
        return json.loads(run(self.folder, "pupil", "export", "WREN", "--book", "b.book"))

    def test_1_a_drive_as_planned_is_told_and_nothing_is_written_when_only_told(self):
        self.write("a.gpx", recorded(self.tracks["plan"], START + 120, 44))
        before = (self.folder / "b.book").read_bytes()
        said = self.trace("a.gpx", "--only-tell")
        self.assertRegex(said, r"driven 15:02 to 15:46, 44 min")
        self.assertIn("nowhere left it", said)
        passes = re.search(r"planned passes driven: (\d+) of (\d+)", said)
        self.assertGreaterEqual(int(passes[1]), int(passes[2]) - 1)
        self.assertIn("nothing is written", said)
        self.assertEqual((self.folder / "b.book").read_bytes(), before)
        self.assertIn("limit", self.trace("a.gpx", "--only-tell", "--speeds"))
        self.assertNotIn("mph", said)

    def test_2_another_drive_than_planned_is_told(self):
        self.write("o.gpx", recorded(self.tracks["other"], START, 40))
        said = self.trace("o.gpx", "--only-tell")
        self.assertIn("; off it:", said)
        self.assertRegex(said, r"another way, .* of the plan left")
        self.assertIn("not driven: ", said)
        self.assertIn("driven besides: ", said)

    def test_3_gpx_of_another_program_reads_the_same(self):
        self.write("a.gpx", recorded(self.tracks["plan"], START + 120, 44))
        subprocess.run(["gpsbabel", "-t", "-i", "gpx", "-f", "a.gpx", "-o", "gpx,gpxver=1.0", "-F", "b10.gpx"],
                       cwd=self.folder, check=True)
        ours, theirs = self.trace("a.gpx", "--only-tell"), self.trace("b10.gpx", "--only-tell")
        self.assertEqual(ours.replace("a.gpx", "b10.gpx"), theirs)

    def test_4_the_lesson_is_logged_with_what_is_said_of_it(self):
        self.write("a.gpx", recorded(self.tracks["plan"], START + 120, 44))
        said = self.trace("a.gpx", "roundabout right 2 pedals: late for a lorry; rest 4; seen all")
        self.assertIn("WREN, lesson 1 is logged", said)
        seen = self.seen()
        self.assertTrue(seen)
        self.assertIn("the recording isn't kept", said)
        all_of = self.exported()
        self.assertEqual(all_of["lesson"][0]["state"], "driven")
        self.assertEqual(all_of["lesson"][0]["minutes"], 44)
        self.assertEqual(all_of["trace"][0]["recording"], "")
        self.assertTrue(all_of["trace_time"])
        rings = [one for one in all_of["pass"] if (one["kind"], one["movement"]) == ("roundabout", "right")]
        self.assertTrue(rings and all(one["traced"] == 1 for one in rings))
        self.assertTrue(all(one["level"] == 2 for one in rings if one["driven"]))
        # Once more, by the file alone: what was said stays.
        self.trace("a.gpx")
        self.assertEqual(self.exported()["intervention"], all_of["intervention"])
        self.assertEqual(len(self.exported()["trace"]), 1)
        self.assertEqual(self.seen(), seen)

    def test_5_a_lesson_that_wasnt_planned_needs_an_area(self):
        self.write("later.gpx", recorded(self.tracks["other"], START + 7 * 86400, 40))
        said = self.trace("later.gpx", code=2)
        self.assertIn("no lesson of WREN is planned about Saturday 5 December 2026, 15:00", said)
        said = self.trace("later.gpx", "rest 3", "--area", "q.area", "--keep", "--yes")
        self.assertIn("WREN, lesson 2 is logged", said)
        self.assertIn("level-crossing", said)
        self.assertIn("the recording is kept", said)
        kept = [one for one in self.exported()["trace"] if one["lesson"] == 2]
        self.assertEqual(kept[0]["recording"], (self.folder / "later.gpx").read_text())

    def test_6_only_a_part_of_a_recording_counts(self):
        self.write("p.gpx", recorded(self.tracks["plan"], START, 40))
        said = self.trace("p.gpx", "--lesson", "1", "--from", "15:10", "--to", "15:20", "--only-tell")
        self.assertRegex(said, r"driven 15:10 to 15:(19|20)")
        said = self.trace("p.gpx", "--lesson", "1", "--from", "18:00", "--to", "18:10", "--only-tell", code=2)
        self.assertIn("holds 0 points between 18:00 and 18:10", said)

    def test_7_what_cant_be_used_is_told_in_a_line(self):
        away = recorded([(51.0, 0.1), (51.02, 0.1)], START, 10)
        self.write("away.gpx", away)
        self.assertIn("lies by a road of", self.trace("away.gpx", "--lesson", "1", code=1))
        for name, bytes_ in (("noise.gpx", bytes(range(256)) * 40), ("empty.gpx", b""), ("text.gpx", b"15:00 north"),
                             ("other.gpx", b"<gpx><wpt lat='1' lon='1'/></gpx>")):
            (self.folder / name).write_bytes(bytes_)
            said = self.trace(name, code=1)
            self.assertEqual(said.count("\n"), 1, said)
            self.assertTrue(said.startswith(f"loopwright: {name}: "), said)
        self.assertIn("no such file", self.trace("none.gpx", code=1))
        whole = (self.folder / "a.gpx").read_text()
        (self.folder / "cut.gpx").write_text(whole[:len(whole) // 2])
        self.assertIn("it breaks off at line", self.trace("cut.gpx", "--lesson", "1", "--only-tell"))
        self.assertIn("'rest nine'", self.trace("a.gpx", "rest nine", code=2))

    def test_8_nothing_is_left_of_a_kept_recording_when_the_pupil_is_erased(self):
        self.assertIn(b"<trkpt", (self.folder / "b.book").read_bytes())
        run(self.folder, "pupil", "erase", "WREN", "--book", "b.book", "--yes")
        for file in self.folder.glob("b.book*"):
            self.assertNotIn(b"<trkpt", file.read_bytes())


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
