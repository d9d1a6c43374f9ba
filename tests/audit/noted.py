"""The instructor's notes laid on the raw map: what they bear out, take away and shut. DEVELOPERS.md, NOTES FILE.

A note may lie 30 m off its road. `near` asks for no more than that, so that it never denies what a note may
mean; `speaks_of` asks for more than laying a note does, so that what it says is beyond doubt.
"""
from datetime import date, datetime
from functools import cached_property
from zoneinfo import ZoneInfo

from clock import zone_of
from counts import RUN_KINDS, stands_for
from geo import along
from missing import told
from second_reader import bearing, between, metres

REACH_M = 30
STEP_M = 10
SURE_M = 2            # the next road is farther off by so much
SHUT_M = 40           # of a road that is shut 20 m are enough: so many are beyond doubt
SURE_SHARE = 0.8      # of its line or of the road: half is enough
HEADING_DEG, PARALLEL_DEG = 40, 25
RUN_M = 105           # DECISIONS.md: a run of at least 100 m, with leeway
LIMIT_KINDS = ("twenty-zone", "twenty-limit", "limit-change")
ADDED = {"narrow": "narrow-road", "hump": "calming"}


def added_by(note):
    """The kind of practice that a note adds, or for `not` takes."""
    return note.own.get("kind") if note.says in ("practice", "not") else ADDED.get(note.says)


def tag_of(note):
    return f"noted {note.own['seen']}: {note.own['kind'] if note.says == 'practice' else note.says}"


def steps_along(line):
    if len(line) == 1:
        return line
    length = sum(metres(a, b) for a, b in zip(line, line[1:]))
    return [along(line, STEP_M * k) for k in range(int(length / STEP_M) + 1)]


class Noted:
    """Notes of one file, for one lesson (instants between which it may be on the road)."""

    def __init__(self, ground, notes, interval):
        self.ground, self.notes, self.interval = ground, notes, interval
        zone = ZoneInfo(zone_of(ground.region))
        self.days = [datetime.fromtimestamp(t, zone).date() for t in interval]
        self.steps = {note.number: steps_along(note.line) for note in notes}
        self.known = {}

    # --- where --------------------------------------------------------------------------------------

    def near(self, note, drive, i):
        """The note may mean the stretch."""
        key = "near", note.number, tuple(drive.nodes[i])
        if key not in self.known:
            self.known[key] = min(drive.off(i, at) for at in self.steps[note.number]) <= REACH_M + SURE_M
        return self.known[key]

    def near_any(self, note, drive, first, last):
        return any(self.near(note, drive, i) for i in range(first, last + 1))

    def speaks_of(self, note, drive, i):
        """The note surely means the stretch in the direction it is driven."""
        key = "of", note.number, tuple(drive.nodes[i])
        if key not in self.known:
            self.known[key] = self.near(note, drive, i) and self._surely(note, drive, i)
        return self.known[key]

    def _surely(self, note, drive, i):
        steps = self.steps[note.number]
        met = [k for k, at in enumerate(steps) if self._is_nearest(drive, i, at)
               and self._is_meant(note, drive, i, k)]
        if len(steps) == 1:
            return bool(met)
        least = min(drive.length(i), sum(metres(a, b) for a, b in zip(note.line, note.line[1:])))
        shuts = note.says in ("never", "closed")
        return STEP_M * len(met) >= (SHUT_M if shuts else max(SHUT_M, SURE_SHARE * least))

    def _is_nearest(self, drive, i, at):
        """The nearest road that is driven is this stretch, by some metres."""
        own = drive.off(i, at)
        nodes = set(drive.nodes[i])
        others = [off for off, way, a, b in self.ground.steps_near(at)
                  if self.ground.open_ways(way) and not (way == drive.way(i) and {a, b} <= nodes)]
        return own <= REACH_M - SURE_M and own + SURE_M <= min(others, default=2 * REACH_M)

    def _is_meant(self, note, drive, i, k):
        """The heading in which the stretch passes the point is the note's."""
        steps, places = self.steps[note.number], [self.ground.at(n) for n in drive.nodes[i]]
        a, b = min(zip(places, places[1:]), key=lambda step: metres(
            steps[k], ((step[0][0] + step[1][0]) / 2, (step[0][1] + step[1][1]) / 2)))
        driven = bearing(a, b)
        if len(steps) == 1:
            told_deg = note.own.get("heading")
            return told_deg is None or abs(between(told_deg, driven)) <= HEADING_DEG
        k = min(k, len(steps) - 2)
        apart = abs(between(bearing(steps[k], steps[k + 1]), driven))
        both = note.own.get("way", "both") == "both"
        return apart <= PARALLEL_DEG or both and apart >= 180 - PARALLEL_DEG

    # --- what ---------------------------------------------------------------------------------------

    def may_shut(self, note):
        """Its hours or days touch the lesson, or can't be told for it."""
        if note.says not in ("closed", "never"):
            return False
        first = date.fromisoformat(note.own.get("from", "0001-01-01"))
        last = date.fromisoformat(note.own.get("until", "9999-12-31"))
        if first > self.days[1] or self.days[0] > last:
            return False
        hours = note.own.get("hours")
        return note.says == "closed" or not hours or self.ground.clock.states(hours, self.interval) != "C"

    @cached_property
    def shut_ways(self):
        """Ways of which a note may shut a part, from junction to junction, wherever on them it lies."""
        return {way for note in self.notes if self.may_shut(note) for at in self.steps[note.number]
                for off, way, _, _ in self.ground.steps_near(at) if off <= REACH_M}

    def adds(self, kind, drive, first, last):
        """The notes by which a pass of the kind may be had there."""
        return [note for note in self.notes if note.says != "not" and self.near_any(note, drive, first, last)
                and (added_by(note) and stands_for(kind, added_by(note))
                     or note.says == "limit" and kind in LIMIT_KINDS)]

    def takes(self, kind, drive, i):
        """Some note may take the kind from the stretch."""
        return any(self.near(note, drive, i) for note in self.notes if (
            note.says == "limit" and kind in (*LIMIT_KINDS, "country-road") or note.says == "not" and (
                stands_for(kind, added_by(note)) or stands_for(added_by(note), kind))))

    def limits(self, drive, i):
        """(value, unit) of the limits noted within reach of a stretch."""
        return {(note.own["limit"], note.own["unit"]) for note in self.notes
                if note.says == "limit" and self.near(note, drive, i)}

    def plates(self, drive, first, last):
        return {note.own["hours"] for note in self.notes
                if note.says == "plate" and self.near_any(note, drive, first, last)}

    # --- claims -------------------------------------------------------------------------------------

    def check_road(self, tally, drive):
        """Limits that are noted, and roads that notes shut."""
        for i, stretch in enumerate(drive.stretches):
            limit = stretch["limit"]
            if limit["confidence"] == "noted":
                tally.check("noted: limit", (limit["value"], limit["unit"]) in self.limits(drive, i),
                            f"stretch {i}: {limit}")
            for note in (note for note in self.notes if self.speaks_of(note, drive, i)):
                self._used(tally, drive, i, note)

    def check(self, tally, drive, rows):
        for row in (row for row in rows if row["confidence"] == "noted"):
            notes = self.adds(row["kind"], drive, row["first"], row["last"])
            tally.check("noted: pass", row["source"]["tag"] in map(tag_of, notes) or self._is_noted_in_part(row, notes),
                        f"{row['kind']} {row['first']}-{row['last']}: {row['source']['tag']}")
        for note in self.notes:
            self._run(tally, drive, rows, note)

    def _is_noted_in_part(self, row, notes):
        """A run is as sure as its least sure part: a tag of the map may name its special form where a note
        says the plain one of another part (DEVELOPERS.md, Notes and passes)."""
        tags = self.ground.tags(row["source"]["id"]) if row["source"]["type"] == "way" else {}
        return any(added_by(note) not in (None, row["kind"]) for note in notes) and all(
            tags.get(key) == value for key, _, value in (
                word.partition("=") for word in row["source"]["tag"].split(" ")))

    def _used(self, tally, drive, i, note):
        """What a note surely says of a stretch is so, whoever drives it."""
        name = f"stretch {i}, note {note.number} ({note.says}):"
        if note.says in ("never", "closed"):
            tally.check("noted: shut", not self.may_shut(note), name, "it is shut in the lesson")
        if note.says == "limit":
            limit = drive.stretches[i]["limit"]
            tally.check("noted: limit", (limit["value"], limit["unit"]) in self.limits(drive, i), name, limit)

    def _run(self, tally, drive, rows, note):
        """A noted run of road that is long enough is passed where the drive surely has it; none is where a
        note surely denies it."""
        kind = added_by(note)
        if kind not in RUN_KINDS:
            return
        had = [i for i in range(1, len(drive) - 1) if self.speaks_of(note, drive, i)]
        if note.says == "not":
            for i in had:
                tally.check("noted: not", bool(self.adds(kind, drive, i, i)) or not any(
                    stands_for(row["kind"], kind) and row["first"] <= i <= row["last"] for row in rows),
                    f"stretch {i}, note {note.number}: {kind}")
            return
        if any(other.says == "not" for other in self.notes):
            return
        while had:
            run = [had.pop(0)]
            while had and had[0] == run[-1] + 1:
                run.append(had.pop(0))
            if sum(drive.stretches[i]["metres"] for i in run) > RUN_M:
                tally.check("noted: run", any(told(rows, kind, i) for i in run),
                            f"note {note.number}: {kind} on stretches {run[0]} to {run[-1]}")


class Bare:
    """No notes at all."""
    notes = ()
    shut_ways = frozenset()

    def adds(self, *_):
        return []

    def takes(self, *_):
        return False

    def limits(self, *_):
        return set()

    plates = limits

    def check(self, *_):
        """Nothing is noted, so nothing may be told as noted: passes.py and limits.py find that."""

    check_road = check
