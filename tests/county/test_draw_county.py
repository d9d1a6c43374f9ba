#!/usr/bin/env python3
"""draw-county as it is used: its words, its exit codes, its one-line errors. Words: the program."""
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM = pathlib.Path(sys.argv.pop(1)).resolve()
ROAD = "road A residential 0,0 90,0 first=closed last=closed\n"


class DrawCounty(unittest.TestCase):
    def setUp(self):
        scratch = tempfile.TemporaryDirectory()
        self.addCleanup(scratch.cleanup)
        self.folder = pathlib.Path(scratch.name)

    def run_on(self, plan, *words):
        (self.folder / "x.plan").write_text(plan, encoding="utf-8")
        return subprocess.run([PROGRAM, "x.plan", *words], cwd=self.folder, text=True,
                              capture_output=True, check=False)

    def fails(self, code, text, plan, *words):
        done = self.run_on(plan, *words)
        self.assertEqual((done.returncode, done.stdout, done.stderr), (code, "", text))
        self.assertEqual([p.name for p in self.folder.iterdir()], ["x.plan"])

    def test_a_map_is_written_whole_and_nothing_beside_it(self):
        done = self.run_on(ROAD, "--map", "x.osm.pbf")
        self.assertEqual(done.stderr, "")
        self.assertEqual(done.stdout,
                         "x.osm.pbf: 1 ways for cars, 0 km; 2 nodes, 1 ways, 0 relations\n")
        self.assertEqual(sorted(p.name for p in self.folder.iterdir()), ["x.osm.pbf", "x.plan"])

    def test_quiet_prints_nothing(self):
        done = self.run_on(ROAD, "--map", "x.opl", "--quiet")
        self.assertEqual((done.returncode, done.stdout, done.stderr), (0, "", ""))

    def test_what_a_plan_gets_wrong_is_told_with_its_line(self):
        self.fails(1, "draw-county: x.plan line 2: there is no command 'rode'; tools/county/plan.hpp"
                   " lists them\n", ROAD + "rode\n", "--map", "x.opl")
        self.fails(1, "draw-county: x.plan line 2: there is no road within 30 m of 500,0\n",
                   ROAD + "at 500,0 a=b\n", "--map", "x.opl")

    def test_wrong_words_are_told_before_anything_is_drawn(self):
        self.fails(2, "draw-county: --map is required; draw-county --help tells how\n", ROAD)
        self.fails(2, "draw-county: a map is called FILE.osm.pbf or FILE.opl, not 'x.osm'\n", ROAD,
                   "--map", "x.osm")
        done = self.run_on(ROAD, "--map", "x.opl", "--counties", "0")
        self.assertEqual((done.returncode, len(done.stderr.splitlines())), (2, 1))

    def test_files_that_cannot_be_read_or_written(self):
        done = subprocess.run([PROGRAM, "none.plan", "--map", "x.opl"], cwd=self.folder, text=True,
                              capture_output=True, check=False)
        self.assertEqual((done.returncode, done.stderr),
                         (1, "draw-county: none.plan: there is no such file to read; check its name\n"))
        done = self.run_on(ROAD, "--map", "none/x.opl")
        self.assertEqual((done.returncode, len(done.stderr.splitlines())), (1, 1))

    def test_two_counties_are_sorted_whole_and_the_same_each_time(self):
        for name in ("a.osm.pbf", "b.osm.pbf"):
            done = self.run_on("origin 54.3 2.6\n"
                               "road A primary 0,0 8500,900 first=closed last=edge\n",
                               "--map", name, "--counties", "2", "--seed", "3")
            self.assertEqual(done.stderr, "")
            self.assertIn("2 counties that meet at 1 points", done.stdout)
        a, b = self.folder / "a.osm.pbf", self.folder / "b.osm.pbf"
        self.assertEqual(a.read_bytes(), b.read_bytes())
        checked = subprocess.run(["osmium", "check-refs", "--check-relations", a],
                                 capture_output=True, check=False)
        self.assertEqual(checked.returncode, 0)

    def test_counties_drawn_apart_share_no_point(self):
        done = self.run_on("origin 54.3 2.6\n"
                           "road A primary 0,0 8500,900 first=closed last=edge\n",
                           "--map", "apart.opl", "--counties", "2", "--seed", "3", "--apart")
        self.assertEqual(done.stderr, "")
        self.assertIn("2 counties without roads between them", done.stdout)
        for line in (self.folder / "apart.opl").read_text().splitlines():
            if line.startswith("w"):
                nodes = line.rsplit(" N", 1)[1].split(",")
                # Ids of a county are 10,000,000 higher than those of the one before.
                self.assertEqual(1, len({int(n[1:]) // 10_000_000 for n in nodes}), line)


if __name__ == "__main__":
    unittest.main()
