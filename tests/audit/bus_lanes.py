"""Bus lanes: hours by the raw tags, the verdict by the outside reader of hours. OSM wiki, Bus_lanes;
DECISIONS.md: usable, in force, or check the plate, through the whole interval of passing."""
from datetime import datetime
from zoneinfo import ZoneInfo

from clock import clauses_of, zone_of

MINUTE = 60


class BusLanes:
    def __init__(self, ground):
        self.ground, self.zone = ground, ZoneInfo(zone_of(ground.region))

    def check(self, tally, drive, rows, passes):
        for row in rows:
            name = f"bus lane {row['first']}-{row['last']}:"
            inside = 0 <= row["first"] <= row["last"] < len(drive)
            if tally.check("bus lane: place", inside, name):
                self._check_one(tally, drive, row, name)
        for one in passes:
            if one["kind"] == "bus-lane":
                self._verdict_of_pass(tally, one, rows)

    def _check_one(self, tally, drive, row, name):
        interval = (drive.interval(row["first"])[0], drive.interval(row["last"])[1])
        told = [self._clock(t) for t in interval]
        tally.check("bus lane: arrive", self._same_times(row["arrive"], told), name, row["arrive"], told)
        tags = self.ground.tags(row["source"]["id"]) if row["source"]["type"] == "way" else {}
        hours = self._hours(tags)
        if row["hours"] is not None:
            hours |= self.ground.noted.plates(drive, row["first"], row["last"])
            tally.check("bus lane: hours", row["hours"] in hours, name, row["hours"], sorted(hours))
        # Widened to whole minutes, so that one who may come at 9:59:30 isn't told what holds until ten (DEVELOPERS.md,
        # Bus lanes).
        widened = (interval[0], -(-interval[1] // MINUTE) * MINUTE)
        states = None if row["hours"] is None else self.ground.clock.states(row["hours"], widened)
        right = "in force" if self._runs_against_us(tags) else {
            "O": "in force", "C": "usable"}.get(states, "check the plate")
        doubt = row["verdict"] == "check the plate" and (
            self._in_doubt(row["hours"]) or self._says_always_too(tags, row["hours"]))
        tally.check("bus lane: verdict", row["verdict"] == right or doubt, name,
                    f"{row['verdict']}; {row['hours']} says {states}")

    def _runs_against_us(self, tags):
        """A lane of a one-way street for who comes the other way is none to use at any hour (Bus_lanes:
        contraflow; Highway Code 143)."""
        against = any(key.startswith(("lanes:bus:backward", "lanes:psv:backward")) or
                      value == "opposite_lane" for key, value in tags.items())
        return against and tags.get("oneway") == "yes"

    @staticmethod
    def _says_always_too(tags, hours):
        """A plain key beside its own hours says that they are all hours: the mapper contradicts himself
        (MAP-TAGS.md 1.5)."""
        return any(key.endswith(":conditional") and hours in value
                   and tags.get(key.removesuffix(":conditional"), "0") not in ("0", "no")
                   for key, value in tags.items() if hours)

    @staticmethod
    def _in_doubt(hours):
        """Texts whose letter and meaning may differ, or that hang on what nobody told (DEVELOPERS.md,
        HOURS): replaced rules, an open end, school holidays, a comment, a fallback."""
        return any(mark in (hours or "") for mark in (";", "+", "SH", '"', "||"))

    @staticmethod
    def _hours(tags):
        """All hours that a conditional tag or hours key of the way gives."""
        hours = set()
        for key, value in tags.items():
            if key.endswith(":conditional"):
                hours |= {when.strip().removeprefix("(").removesuffix(")").strip()
                          for _, when in clauses_of(value)}
            if key.endswith((":times", ":hours")) or key == "opening_hours":
                hours.add(value)
        return hours

    def _clock(self, instant):
        return datetime.fromtimestamp(instant, self.zone)

    @staticmethod
    def _same_times(told, moments):
        """To the minute, either way of rounding."""
        def minutes(text):
            return int(text[:2]) * 60 + int(text[3:5])
        return all(abs((minutes(text) - (at.hour * 60 + at.minute) + 720) % 1440 - 720) <= 1
                   for text, at in zip(told, moments))

    @staticmethod
    def _verdict_of_pass(tally, one, rows):
        """Of all lanes along it: the same, else check the plate."""
        along = {row["verdict"] for row in rows
                 if row["first"] <= one["last"] and one["first"] <= row["last"]}
        tally.check("bus lane: of the pass", one.get("verdict") in along | {"check the plate"},
                    one.get("verdict"), along)
