#!/usr/bin/python3
"""A wish kept in a file asks for the same lesson again; what is wrong in it is told with its line.

    tests/command/test_wish_files.py PROGRAM
"""
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
PROGRAM = str(pathlib.Path(sys.argv.pop(1)).resolve())
START = "2026-11-28T15:00"


class WishFiles(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.scratch = tempfile.TemporaryDirectory()
        cls.folder = pathlib.Path(cls.scratch.name)
        done = cls.run_words("build", str(ROOT / "maps/quillham.osm.pbf"), "-o", "q.area", "--region", "GB-ENG")
        assert done.returncode == 0, done.stderr

    @classmethod
    def tearDownClass(cls):
        cls.scratch.cleanup()

    @classmethod
    def run_words(cls, *words):
        return subprocess.run([PROGRAM, *words], cwd=cls.folder, capture_output=True, encoding="utf-8",
                              check=False)

    def write(self, name, text):
        (self.folder / name).write_text(text, encoding="utf-8")

    def asked(self, name):
        return json.loads((self.folder / name).read_text(encoding="utf-8"))["wish"]

    def refused(self, wish, *words):
        """What is said of a wish file with these lines."""
        self.write("bad.wish", wish)
        done = self.run_words("loops", "q.area", "--wish", "bad.wish", "-o", "never.json", *words)
        self.assertFalse((self.folder / "never.json").exists())
        return done.returncode, done.stderr

    def test_a_kept_wish_gives_the_same_loops(self):
        first = self.run_words(
            "loops", "q.area", "--home", "4 Lantern Row", "--minutes", "40", "--want", "roundabout=1",
            "--welcome", "zebra", "--avoid", "dual-carriageway", "--keep-off", "Mill Street @ Mo-Fr 08:00-09:00",
            "--spacing", "roundabout=3", "--hardest", "4", "--start", START, "--keep-wish", "kept.wish",
            "-o", "first.json")
        self.assertIn(first.returncode, (0, 4), first.stderr)
        self.assertTrue(first.stdout.endswith("kept.wish: written; --wish kept.wish asks for the same again\n"))
        self.assertEqual(
            (self.folder / "kept.wish").read_text(encoding="utf-8"),
            "# A wish for 'loopwright loops AREA --wish': a word of the command line a line.\n"
            "home 4 Lantern Row\nminutes 40\nwant roundabout=1\nwelcome zebra\navoid dual-carriageway\n"
            "keep-off Mill Street @ Mo-Fr 08:00-09:00\nspacing roundabout=3\nhardest 4\n")
        again = self.run_words("loops", "q.area", "--wish", "kept.wish", "--start", START, "-o", "again.json")
        self.assertEqual(again.returncode, first.returncode, again.stderr)
        self.assertEqual((self.folder / "again.json").read_bytes(), (self.folder / "first.json").read_bytes())

    def test_the_command_line_wins_and_lists_add(self):
        self.write("b.wish", "# by hand\r\n\nminutes 20\nhome   4 Lantern Row\nwant\tzebra=1\nlevel 4\n")
        done = self.run_words("loops", "q.area", "--wish", "b.wish", "--minutes", "25", "--want", "emerge=1",
                              "--start", START, "-o", "b.json")
        self.assertIn(done.returncode, (0, 4), done.stderr)
        asked = self.asked("b.json")
        self.assertEqual(asked["minutes"], 25)
        self.assertEqual([want["kind"] for want in asked["wants"]], ["zebra", "emerge"])
        self.assertEqual((asked["level"], asked["level_given"]), (4, True))

    def test_what_is_wrong_is_told_with_its_line(self):
        told = "loopwright: bad.wish, line "
        self.assertEqual(self.refused("# mine\nhome 4 Lantern Row\nminutes 5\n"),
                         (1, told + "3: minutes takes a whole number from 10 to 600, not '5'\n"))
        self.assertEqual(self.refused("home 4 Lantern Row\nminutes 20\nwant roundabuot=3\n"),
                         (1, told + "3: there is no practice kind 'roundabuot'; did you mean 'roundabout'?\n"))
        self.assertEqual(self.refused("home 4 Lantern Row\nminutes 20\nminutes 30\n"),
                         (1, told + "3: 'minutes' was said before, in bad.wish, line 2\n"))
        self.assertEqual(self.refused("home\nminutes 20\n"),
                         (1, told + "1: 'home' stands alone; write behind it what it is\n"))
        code, error = self.refused("home 4 Lantern Row\nwnat zebra\n")
        self.assertEqual(code, 1)
        self.assertTrue(error.startswith(told + "2: there is no word 'wnat'; a wish has home, end, drive-out, drive-back, minutes, "), error)
        self.assertEqual(self.refused("home Nowhere At All Street\nminutes 20\n")[1].split(";")[0][:len(told) + 8],
                         told + "1: home:")

    def test_a_word_that_stands_alone(self):
        told = "loopwright: bad.wish, line "
        self.assertEqual(self.refused("home 4 Lantern Row\nminutes 20\nvariants yes\n"),
                         (1, told + "3: 'variants' stands alone, without 'yes'\n"))
        self.assertEqual(self.refused("home 4 Lantern Row\nvariants\nminutes 20\nvariants\n"),
                         (1, told + "4: 'variants' was said before, in bad.wish, line 2\n"))
        self.assertEqual(self.refused("home 4 Lantern Row\nminutes 20\nindependent 25\n"),
                         (1, told + "3: independent is a part of --minutes: give no more than 20\n"))

    def test_what_the_command_line_has_wrong_names_no_line(self):
        self.assertEqual(self.refused("home 4 Lantern Row\nminutes 20\n", "--minutes", "5"),
                         (2, "loopwright: --minutes takes a whole number from 10 to 600, not '5'\n"))
        self.assertEqual(self.refused("minutes 20\n"),
                         (2, "loopwright: --home is required; see 'loopwright loops --help'\n"))

    def test_files_that_are_none_or_would_be_lost(self):
        done = self.run_words("loops", "q.area", "--wish", "no.wish", "-o", "never.json")
        self.assertEqual((done.returncode, done.stderr),
                         (1, "loopwright: no.wish: no such file; make it with 'loopwright loops --keep-wish'\n"))
        self.write("own.wish", "home 4 Lantern Row\nminutes 20\n")
        done = self.run_words("loops", "q.area", "--wish", "own.wish", "--keep-wish", "own.wish", "-o", "never.json")
        self.assertEqual((done.returncode, done.stderr),
                         (2, "loopwright: own.wish: the command reads this file too; give another name to write "
                             "to\n"))

    def test_keep_off_is_refused_plainly(self):
        said = lambda text: self.refused("home 4 Lantern Row\nminutes 20\n", "--keep-off", text)
        self.assertEqual(said("Mill Street @ Mo-Fr 08:00-"),
                         (2, said("Mill Street @ Mo-Fr 08:00-")[1]))
        self.assertTrue(said("Mill Street @ noon to one")[1].startswith(
            "loopwright: --keep-off: the hours 'noon to one' can't be read at character "))
        self.assertEqual(said("54.1,2.5;54.2,2.6"),
                         (2, "loopwright: --keep-off: an area has three corners or more, LAT,LON;LAT,LON;LAT,LON, "
                             "not '54.1,2.5;54.2,2.6'\n"))
        self.assertEqual(said("54.1,2.5;54.2,2.6;Mill Street"),
                         (2, "loopwright: --keep-off: the corners of an area are LAT,LON each, not 'Mill Street'\n"))
        self.assertEqual(said("Lantern Row"),
                         (2, "loopwright: --keep-off 'Lantern Row': home itself lies there; leave it out, or give "
                             "hours outside the lesson\n"))

    def test_a_bad_ledger_is_told_with_its_line(self):
        self.write("driven.txt", "2026-11-27 123 2\nyesterday 123 2\n")
        self.assertEqual(self.refused("home 4 Lantern Row\nminutes 20\n", "--driven", "driven.txt"),
                         (1, "loopwright: driven.txt, line 2: takes a day, an OSM way and how often it was driven "
                             "(1 to 100), such as 2026-11-28 123456 2, not 'yesterday 123 2'\n"))


if __name__ == "__main__":
    unittest.main()
