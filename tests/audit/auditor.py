"""One reading of a map, and loop files held against it and the words they were asked with."""
import json
from datetime import datetime

import ends
import limits
import measures
import wish_told
from asked import asked, wish_of
from beyond import Beyond, alternatives
from bans import Bans
from bus_lanes import BusLanes
from claims_road import barriers, is_street, joins, lies_on_its_way, opens, turning
from clock import Clock
from counts import Counts
from drive import Drive
from files_given import notes_of, terms_of
from ground import Ground
from independent import Independent
from lesson import Lesson
from missing import Missing
from missing_junctions import MissingJunctions
from noted import Bare, Noted
from off_limits import OffLimits, lesson_interval
from passes import Passes
from places import Places
from planned_stops import PlannedStops
from quiet import CLASSES, Quiet
from second_look import SecondLook
from variants import check_variants


class Auditor:
    """Reads an extract once. `npm` is the folder where opening_hours is installed."""

    def __init__(self, extract, region, npm):
        self.region, self.clock = region, None
        self.turn_round = "never"  # where the wish at hand lets the car be turned round
        self.true = set()  # stretches that were found to be as told
        self.ground = Ground(extract, region, None)
        self.clock = self.ground.clock = Clock(region, npm, self._middle())
        self.bans, self.limits = Bans(self.ground), limits.Limits(self.ground)
        self.quiet = Quiet(self.ground, self.limits).of
        self.passes = Passes(self.ground, self.quiet)
        self.missing, self.bus_lanes = Missing(self.passes), BusLanes(self.ground)
        self.missing_junctions = MissingJunctions(self.passes)
        self.off_limits = OffLimits(self.ground, self.quiet)
        self.second_look = SecondLook(self.ground, self.missing)

    def _middle(self):
        return next(iter(self.ground.map.places.values()))

    def audit(self, tally, words, answer, exit_code=None):
        """Checks a loop file, as JSON's plain data, against the wish's words and the exit code."""
        wish = asked(words)
        self._learn(wish)
        wanted = {want.kind for want in wish.all_wants} | set(answer["wish"].get("welcome", []))
        self.turn_round = "anywhere" if wish.through else "street ends" if "turn-in-road" in wanted else "never"
        wish_told.check(tally, answer["wish"], wish, self.region)
        wish_told.check_files(tally, answer, wish, self.region, self.quiet)
        check_variants(tally, wish, answer)
        read = [self._audit_loop(tally, loop, wish_of(wish, loop, answer["loops"][0]))
                for loop in answer["loops"]]
        self.second_look.check(tally, wish, answer, exit_code, [one for one in read if one])
        self.off_limits.check_takes(tally, wish, answer, [one.lesson.drive for one in read if one])
        if None not in read:
            alternatives(tally, [one.lesson.drive for one in read if "variant" not in one.lesson.loop])

    def _learn(self, wish):
        """What the files of this wish tell of the map and the days."""
        self.clock.terms = terms_of(wish.terms) if wish.terms else []
        notes = notes_of(wish.notes) if wish.notes else []
        self.ground.noted = Noted(self.ground, notes, lesson_interval(wish, self.region)) if notes else Bare()
        self.keep_off = self.off_limits.kept_off(wish)

    def _audit_loop(self, tally, loop, wish):
        """What was read of the loop; None when its road can't be read."""
        outer, tally.where = tally.where, f"{tally.where}loop {loop['id']}: "
        start = wish_told.start_of(wish, self.region)
        tally.check("start", datetime.fromisoformat(loop["start"]) == start, loop["start"])
        drive = self.audit_road(tally, loop["stretches"], start.timestamp())
        read = None if drive is None else self._audit_drive(tally, drive, loop, wish)
        tally.where = outer
        return read

    def audit_road(self, tally, stretches, start):
        """The drive, when each stretch lies on its way; every step and turn of it is looked at."""
        joins(tally, stretches)
        lying = [self._lies(tally, i, s) for i, s in enumerate(stretches)]
        if not all(lying):
            return None
        drive = Drive(self.ground, stretches, start)
        opens(self.ground, tally, drive)
        barriers(self.ground, tally, drive)
        turning(self.ground, tally, drive, self.turn_round)
        self.bans.check(tally, drive)
        self.ground.noted.check_road(tally, drive)
        self.off_limits.check_road(tally, drive, self.keep_off)
        return drive

    def _lies(self, tally, i, stretch):
        """A stretch, its street and its limit. Ways home tell the same ones again and again, so what
        was found true is only counted."""
        limit = stretch["limit"]
        key = (*(stretch[name] for name in PLACE), limit["value"], limit["unit"], limit["confidence"])
        if key in self.true and limit["confidence"] != "noted":
            tally.claims.update(STRETCH_CLAIMS)
            return True
        before = len(tally.differences)
        lies = lies_on_its_way(self.ground, tally, i, stretch)
        if lies:
            is_street(self.ground, tally, i, stretch)
            self.limits.check(tally, i, stretch)
        if len(tally.differences) == before:
            self.true.add(key)
        return lies

    def _audit_drive(self, tally, drive, loop, wish):
        lesson = Lesson(wish, drive, loop, self.quiet)
        read = Read(lesson, PlannedStops(lesson), Independent(lesson, self.passes.rings))
        ends.check(self.ground, tally, drive, wish)
        measures.check(tally, drive, loop, wish, self.region)
        rows = self.passes.check(tally, drive, loop["passes"])
        self.missing.check(tally, drive, rows)
        self.missing_junctions.check(tally, drive, rows)
        self.ground.noted.check(tally, drive, rows)
        self.bus_lanes.check(tally, drive, loop["bus_lanes"], rows)
        if len(rows) == len(loop["passes"]) and lesson.check(tally):
            self.off_limits.check(tally, lesson)
            read.stops.check(tally)
            read.independent.check(tally)
            self._count(tally, lesson, rows)
            Beyond(self.ground, drive, loop, self.audit_road).check(tally)
        return read

    def _count(self, tally, lesson, rows):
        drive = lesson.drive
        again_m = measures.driven_again(drive, lesson.first, lesson.last)
        minor_m = sum(s["metres"] for s in measures.stretches_again(drive)
                      if self.ground.tags(s["way"])["highway"] in CLASSES)
        Counts(lesson, Places(self.passes, drive, rows)).check(tally, again_m, minor_m)


class Read:
    """What the second look asks of a loop."""

    def __init__(self, lesson, stops, independent):
        self.lesson, self.stops, self.independent = lesson, stops, independent


PLACE = ("way", "from", "to", "from_index", "to_index", "direction", "street")
STRETCH_CLAIMS = ("way", "nodes", "direction", "street", "limit")


def read(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)
