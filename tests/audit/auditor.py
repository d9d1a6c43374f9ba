"""One reading of a map, and loop files held against it and the words they were asked with."""
import json
from datetime import datetime

import ends
import limits
import measures
import wish_told
from asked import asked
from beyond import Beyond, alternatives
from bans import Bans
from bus_lanes import BusLanes
from claims_road import barriers, is_street, joins, lies_on_its_way, opens, turning
from clock import Clock
from counts import Counts
from drive import Drive
from ground import Ground
from missing import Missing
from missing_junctions import MissingJunctions
from passes import Passes
from places import Places
from second_look import SecondLook


class Auditor:
    """Reads an extract once. `npm` is the folder where opening_hours is installed."""

    def __init__(self, extract, region, npm):
        self.region, self.clock = region, None
        self.true = set()  # stretches that were found to be as told
        self.ground = Ground(extract, region, None)
        self.clock = self.ground.clock = Clock(region, npm, self._middle())
        self.bans, self.limits = Bans(self.ground), limits.Limits(self.ground)
        self.passes = Passes(self.ground)
        self.missing, self.bus_lanes = Missing(self.passes), BusLanes(self.ground)
        self.missing_junctions = MissingJunctions(self.passes)
        self.second_look = SecondLook(self.ground, self.missing)

    def _middle(self):
        return next(iter(self.ground.map.places.values()))

    def audit(self, tally, words, answer, exit_code=None):
        """Checks a loop file, as JSON's plain data, against the wish's words and the exit code."""
        wish = asked(words)
        wish_told.check(tally, answer["wish"], wish, self.region)
        self.second_look.check(tally, wish, answer, exit_code)
        drives = [self._audit_loop(tally, loop, wish) for loop in answer["loops"]]
        if None not in drives:
            alternatives(tally, drives)

    def _audit_loop(self, tally, loop, wish):
        outer, tally.where = tally.where, f"{tally.where}loop {loop['id']}: "
        start = wish_told.start_of(wish, self.region)
        tally.check("start", datetime.fromisoformat(loop["start"]) == start, loop["start"])
        drive = self.audit_road(tally, loop["stretches"], start.timestamp())
        if drive is not None:
            self._audit_drive(tally, drive, loop, wish)
        tally.where = outer
        return drive

    def audit_road(self, tally, stretches, start):
        """The drive, when each stretch lies on its way; every step and turn of it is looked at."""
        joins(tally, stretches)
        lying = [self._lies(tally, i, s) for i, s in enumerate(stretches)]
        if not all(lying):
            return None
        drive = Drive(self.ground, stretches, start)
        opens(self.ground, tally, drive)
        barriers(self.ground, tally, drive)
        turning(self.ground, tally, drive)
        self.bans.check(tally, drive)
        return drive

    def _lies(self, tally, i, stretch):
        """A stretch, its street and its limit. Ways home tell the same ones again and again, so what
        was found true is only counted."""
        limit = stretch["limit"]
        key = (*(stretch[name] for name in PLACE), limit["value"], limit["unit"], limit["confidence"])
        if key in self.true:
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
        ends.check(self.ground, tally, drive, wish)
        measures.check(tally, drive, loop, wish, self.region)
        rows = self.passes.check(tally, drive, loop["passes"])
        self.missing.check(tally, drive, rows)
        self.missing_junctions.check(tally, drive, rows)
        self.bus_lanes.check(tally, drive, loop["bus_lanes"], rows)
        if len(rows) == len(loop["passes"]):
            Counts(wish, drive, loop, Places(self.passes, drive, rows)).check(tally, minor_twice(drive))
            Beyond(self.ground, drive, loop, self.audit_road).check(tally)


PLACE = ("way", "from", "to", "from_index", "to_index", "direction", "street")
STRETCH_CLAIMS = ("way", "nodes", "direction", "street", "limit")
QUIET = ("residential", "living_street", "unclassified")  # DECISIONS.md, quiet residential street


def minor_twice(drive):
    """Metres driven again on streets of the classes that may be quiet ones."""
    met, again = set(), 0.0
    for i, stretch in enumerate(drive.stretches):
        key = stretch["way"], *sorted((stretch["from_index"], stretch["to_index"]))
        if key in met and drive.tags(i)["highway"] in QUIET:
            again += stretch["metres"]
        met.add(key)
    return again


def read(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)
