#!/usr/bin/python3
"""Sheets for practice at home, as the family gets them: nothing new on the way, a quiet hour, never the door.

    tests/command/test_at_home.py PROGRAM

The law on who may sit beside a learner: "practising with family or friends", gov.uk (read in a copy). Quiet hours are those
of src/rules/at_home.txt, read here by other code.
"""
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
PROGRAM = str(pathlib.Path(sys.argv[1]).resolve())
DOORS = ["4 Lantern Row", "61 Ostler Street"]
# What a pupil of some thirty hours does alone, each seen once.
ALL = ["emerge left", "emerge right", "turn-off left", "turn-off right", "crossroads left", "crossroads ahead",
       "crossroads right", "narrow-mouth left", "narrow-mouth right", "acute-junction left", "acute-junction right",
       "signals left", "signals ahead", "mini-roundabout left", "mini-roundabout ahead", "zebra", "signal-crossing",
       "calming", "twenty-limit", "twenty-zone", "limit-change", "narrow-road", "meeting-traffic", "one-way", "school",
       "bus-stop", "bus-lane", "downhill"]
DAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"]
# Minutes of the day by weekday; bank holidays are left out of the days tried.
QUIET = {**{day: [(600, 690), (1140, 1230)] for day in DAYS[:5]}, "Saturday": [(480, 600)], "Sunday": [(480, 720)]}


def unfolded(text):
    """A sheet's paragraphs in one line each: what is indented more goes on."""
    return re.sub(r"\n {4,}", " ", text)


class AtHome(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.scratch = tempfile.TemporaryDirectory()
        cls.folder = pathlib.Path(cls.scratch.name)
        subprocess.run([PROGRAM, "build", ROOT / "maps" / "quillham.osm.pbf", "-o", cls.folder / "q.area", "--region",
                        "GB-ENG"], check=True, stdout=subprocess.DEVNULL)

    @classmethod
    def tearDownClass(cls):
        cls.scratch.cleanup()

    def run_it(self, *words, code=0):
        done = subprocess.run([PROGRAM, *words, "--book", f"{self.id()}.book"], cwd=self.folder, capture_output=True,
                              encoding="utf-8", check=False)
        self.assertEqual(done.returncode, code, done.stdout + done.stderr)
        return done.stdout + done.stderr

    def pupil(self, below=(), home=DOORS[0]):
        """WREN, who does all of it alone but what is below: that at level 3."""
        said = "; ".join(f"{one} {3 if one in below else 4}" for one in ALL)
        self.run_it("pupil", "add", "WREN", "--home", home, "--today", "2026-09-01")
        self.run_it("lesson", "log", "--yes", "WREN", "--start", "2026-11-20T10:00", said)

    def sheet(self, *words, code=0):
        return self.run_it("lesson", "at-home", "WREN", "q.area", *words, code=code)

    def test_nothing_on_the_way_is_new(self):
        for door, below in ((DOORS[0], ()), (DOORS[1], ("crossroads right", "mini-roundabout ahead"))):
            self.pupil(below, door)
            text = unfolded(self.sheet("--start", "2026-11-29T09:00"))
            alone = re.search(r"does without help\n(.*?)\n  All else", text, re.S)[1]
            alone = {one.strip(" .") for line in alone.splitlines() for one in line.split(": ", 1)[1].split(", ")}
            self.assertEqual(len(alone), len(ALL) - len(below))
            drives = re.findall(r"On the way: (.*?)\.\n", text)
            self.assertTrue(drives)
            for drive in drives:
                self.assertLessEqual({re.sub(r" \d+$", "", one) for one in drive.split(", ")}, alone)
            self.assertNotIn("Turn the car round", text)
            self.assertNotIn(door, text)
            self.run_it("pupil", "erase", "WREN", "--yes")

    def test_what_stands_in_the_way_is_told(self):
        self.pupil([one for one in ALL if one not in ("emerge left", "turn-off left")])
        said = unfolded(self.sheet("--start", "2026-11-29T09:00", code=4))
        self.assertIn("no drive near the door holds only what WREN does alone (practices: 2)", said)
        self.assertRegex(said, r"would need this as well: .*\(level 3, 4 is needed\)")

    def test_the_next_quiet_hour_is_by_daylight(self):
        self.pupil()
        text = self.sheet()
        day, when = re.search(r"Practice at home, (\w+) \d+ \w+ \d{4}, (\d\d:\d\d)", text).groups()
        minute = int(when[:2]) * 60 + int(when[3:])
        self.assertTrue(any(first <= minute and minute + 20 <= last for first, last in QUIET[day]), (day, when))

    def test_the_law_and_the_cautions_are_told(self):
        self.pupil()
        text = unfolded(self.sheet("--start", "2026-11-29T09:00"))
        self.assertIn("must be 21 or over, qualified to drive that type of car, and have held a full licence for 3 years",
                      text)
        for word in ("insured to drive this very car", "L plates at the front and at the back", "uses no phone",
                     "There are no dual controls", "Signs, markings, signals and police overrule", "before you drive off"):
            self.assertIn(word, text)

    def test_a_sheet_goes_with_the_pupil_unless_it_was_changed(self):
        self.pupil()
        for name in ("home.pdf", "changed.txt"):
            self.sheet("--start", "2026-11-29T09:00", "-o", name)
        (self.folder / "changed.txt").write_text("mine", encoding="utf-8")
        said = self.run_it("pupil", "erase", "WREN", "--yes", code=1)
        self.assertFalse((self.folder / "home.pdf").exists())
        self.assertIn("changed.txt: was written for the pupil, but is changed since; it is left", said)

    def test_a_place_of_ones_own(self):
        self.pupil()
        said = self.sheet("--start", "2026-11-29T09:00", "--at", "Steep Street", "-o", "own.txt")
        self.assertRegex(said, r"from [^,]* near\s[^,]*, \d+ m from the door")
        self.assertIn("Begin and end in ", (self.folder / "own.txt").read_text(encoding="utf-8"))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
