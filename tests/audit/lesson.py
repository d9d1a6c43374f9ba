"""Who drives what of a lesson, its parts and its ramp. DEVELOPERS.md: Parts, Who drives, Easy first.

Quiet streets are judged by the raw tags (quiet.py), and only where these leave no doubt.
"""
from counts import MANOEUVRES, RUN_KINDS

PART_SHARE, PART_LEAST_S = 0.1, 120   # how far a part may be from its minutes
LINK_S = 300                          # of other roads to a part's own, and home
ROUNDING_S = 0.1
SEAT_M = 150 + 2                      # a place lies at most so far from its road
RAMP_FIRST, RAMP_LAST = 0.2, 0.1      # shares of the practice
EASY_LEAST, EASY_LAST = 2, 3          # hardness that is easy in any case; and in the last stretch home
BESIDE = ("bus-stop",)


def is_junction_like(kind):
    return kind not in RUN_KINDS and kind not in MANOEUVRES and kind not in BESIDE


def begin_row(row):
    """The stretch at whose beginning a pass begins: of a junction that behind its entry."""
    return row["first"] + (is_junction_like(row["kind"]) and row["last"] > row["first"])


def end_row(row):
    """The stretch at whose beginning it is over: of a junction its exit, else the one behind it."""
    return row["last"] + (not is_junction_like(row["kind"]) or row["last"] == row["first"])


class Lesson:
    """Of one loop; `quiet(way)` says True, False, or None where it can't tell."""

    def __init__(self, asked, drive, loop, quiet):
        self.asked, self.drive, self.loop, self.quiet = asked, drive, loop, quiet
        told = loop.get("practice", {"first": 0, "last": len(drive) - 1})
        self.first, self.last = told["first"], told["last"]
        self.parts = loop.get("parts", [])

    # --- times --------------------------------------------------------------------------------------

    def moment(self, row):
        """Likely seconds at the beginning of a stretch, stops counted; behind the last: at the end."""
        if row < len(self.drive):
            return self.drive.stretches[row]["arrive_s"]["likely"]
        return self.loop["seconds"]["likely"] + self.loop["stop_seconds"]

    def planned_s(self, first, end):
        return sum(stop["seconds"] for stop in self.loop["pull_ups"] if first <= stop["stretch"] < end)

    def lasts_s(self, first, end):
        """From the beginning of one stretch to that of another, without planned stops."""
        return self.moment(end) - self.moment(first) - self.planned_s(first, end)

    # --- who ----------------------------------------------------------------------------------------

    def is_practised(self, row):
        return self.first <= row["first"] and row["last"] <= self.last

    def touches(self, row, first, last):
        return begin_row(row) <= last and row["last"] >= first

    def part_of(self, row):
        """The number of the part in which a pass begins; None: of none."""
        return next((p for p, part in enumerate(self.parts)
                     if part["first"] <= begin_row(row) <= part["last"]), None)

    def check(self, tally):
        inside = 0 <= self.first <= self.last < len(self.drive)
        if not tally.check("practice: place", inside and ("practice" in self.loop or not (
                self.asked.drive_out or self.asked.drive_back)), self.first, self.last):
            return False
        self._seat(tally, self.asked.drive_out, self.first, self.first - 1)
        self._seat(tally, self.asked.drive_back, self.last + 1 - len(self.drive), self.last + 1)
        if not self._follow(tally):
            return False
        for p in range(len(self.parts)):
            self._minutes(tally, p)
            self._roads(tally, p)
            self._hardest(tally, p)
        return True

    def _seat(self, tally, place, instructors, row):
        """The place where seats are changed lies on a stretch next to the practice; without one the practice
        reaches to the end. `instructors`: not 0 when the instructor drives something there."""
        if place is None:
            tally.check("practice: whole", instructors == 0, "the instructor drives without having to")
        else:
            off = self.drive.off(row, place) if 0 <= row < len(self.drive) and instructors else None
            tally.check("practice: seats", off is not None and off <= SEAT_M,
                        f"stretch {row}: {off} m from {place}")

    def _follow(self, tally):
        """The parts follow each other over the practice without a gap."""
        first = self.first
        for part in self.parts:
            if not tally.check("part: place", part["first"] == first <= part["last"] <= self.last, part["first"],
                               part["last"]):
                return False
            first = part["last"] + 1
        return tally.check("parts", len(self.parts) == len(self.asked.part) and (
            not self.parts or first == self.last + 1), f"{len(self.parts)} up to {first - 1}")

    def _minutes(self, tally, p):
        part, asked_s = self.parts[p], 60 * self.asked.part[p].minutes
        leeway = max(PART_LEAST_S, PART_SHARE * asked_s) + ROUNDING_S
        lasts = self.lasts_s(part["first"], part["last"] + 1)
        is_last = p + 1 == len(self.parts)
        tally.check("part: minutes", lasts >= asked_s - leeway and (is_last or lasts <= asked_s + leeway),
                    f"part {p + 1}: {lasts:.0f} s, asked {asked_s}")

    def _roads(self, tally, p):
        """Roads surely not its own lie only in a link before them and, of the last part, in one behind."""
        roads, part = self.asked.part[p].roads, self.parts[p]
        if roads == "any":
            return
        rows = range(part["first"], part["last"] + 1)
        own = {row: self.quiet(self.drive.way(row)) for row in rows}
        if roads == "busier":
            own = {row: None if is_quiet is None else not is_quiet for row, is_quiet in own.items()}
        sure = [row for row in rows if own[row]]
        tally.check("part: roads", any(own[row] is not False for row in rows), f"part {p + 1}: none is {roads}")
        for row in (row for row in rows if own[row] is False):
            before = not any(r < row for r in sure) and self.lasts_s(
                part["first"], row + 1) <= LINK_S + ROUNDING_S
            behind = (p + 1 == len(self.parts) and not any(r > row for r in sure)
                      and self.lasts_s(row, part["last"] + 1) <= LINK_S + ROUNDING_S)
            tally.check("part: roads", before or behind,
                        f"part {p + 1}: way/{self.drive.way(row)} of stretch {row} isn't {roads}")

    def _hardest(self, tally, p):
        part = self.parts[p]
        for row in self.loop["passes"]:
            if row["kind"] != "independent-stretch" and self.touches(row, part["first"], part["last"]):
                tally.check("part: hardest", row["hardness"] <= self.asked.part[p].hardest,
                            f"part {p + 1}: {row['kind']} of {row['hardness']}")

    def off_ramp(self):
        """Passes too hard for where they are, in a lesson that is to be easy first."""
        if not self.asked.easy_first:
            return []
        begin, end = self.moment(self.first), self.moment(self.last + 1)
        early = max(self.asked.level or 3, EASY_LEAST)
        def most(row):
            by_begin = early if self.moment(begin_row(row)) < begin + RAMP_FIRST * (
                end - begin) - ROUNDING_S else 5
            late = self.moment(end_row(row)) > end - RAMP_LAST * (end - begin) + ROUNDING_S
            return min(by_begin, EASY_LAST) if late else by_begin
        return [row for row in self.loop["passes"] if self.touches(row, self.first, self.last)
                and row["kind"] != "independent-stretch" and row["hardness"] > most(row)]
