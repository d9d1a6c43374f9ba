"""Briefs and talks: where and how long one stops, and the moment to drive on. DEVELOPERS.md, Planned stops."""
from asked import kept_for_stops_s
from counts import stands_for
from lesson import begin_row

BRIEF_BEFORE_S = 300  # of driving at most from a brief to the pass it is for
TALK_BEFORE_S = 600   # and from the talk to the end
ROUNDING_S = 0.05


class PlannedStops:
    """Of one loop."""

    def __init__(self, lesson):
        self.lesson, self.asked = lesson, lesson.asked
        self.stops = lesson.loop["pull_ups"]
        self.brief_s = 60 * self.asked.brief

    def first_passes(self):
        """The stretches at whose beginning the first pass of each new kind begins, of those practised."""
        rows = [row for row in self.lesson.loop["passes"] if self.lesson.is_practised(row)]
        first = [min((begin_row(row) for row in rows if stands_for(row["kind"], kind)), default=None)
                 for kind in self.asked.new]
        return [row for row in first if row is not None]

    def driving_s(self, stop, row):
        """The least driving from a stop to a stretch's beginning: that from the end of its own stretch."""
        begin = min(stop["stretch"] + 1, row)
        return self.lesson.lasts_s(begin, row)

    def brief_before(self, row):
        """The last brief before a stretch, when it is near enough; by its number."""
        briefs = [k for k, stop in enumerate(self.stops) if stop["for"] == "brief" and stop["stretch"] < row]
        near = briefs and self.driving_s(self.stops[briefs[-1]], row) <= BRIEF_BEFORE_S + ROUNDING_S
        return briefs[-1] if near else None

    def check(self, tally):
        serves = [self.brief_before(row) for row in self.first_passes()]
        for k, stop in enumerate(self.stops):
            name = f"stop {k}:"
            tally.check("stop: for", stop["for"] in (None, "brief", "talk")
                        and (stop["for"] is None) == (stop["seconds"] == 0), name, stop["for"], stop["seconds"])
            if stop["for"] is not None:
                tally.check("stop: place", 0 < stop["stretch"] < len(self.lesson.drive) - 1, name,
                            "on the stretch of the door")
            if stop["for"] == "brief":
                briefs = stop["seconds"] / self.brief_s
                tally.check("stop: brief", briefs == int(briefs) and 1 <= briefs <= serves.count(k), name,
                            f"{stop['seconds']} s, before {serves.count(k)} new kinds")
            if stop["for"] == "talk":
                self._talk(tally, k, stop)
            self._leave_by(tally, k, stop)

    def _talk(self, tally, k, stop):
        """Behind all briefs, near the end, as long as asked."""
        behind = [later for later in self.stops[k + 1:] if later["for"] is not None]
        left = self.driving_s(stop, len(self.lesson.drive))
        tally.check("stop: talk", not behind and left <= TALK_BEFORE_S + ROUNDING_S
                    and stop["seconds"] == 60 * self.asked.talk, f"stop {k}: {stop['seconds']} s, {left:.0f} s "
                    f"before the end, {len(behind)} stops behind it")

    def _leave_by(self, tally, k, stop):
        """The end of the minutes, less the likely rest of the drive from there and the stops behind; of a
        planned stop from the end of the stay."""
        told, lesson = stop["leave_by_s"], self.lesson
        if self.asked.minutes is None:
            tally.check("stop: leave by", told is None, f"stop {k}: {told}, without minutes")
            return
        on = [other for other in self.stops if other["stretch"] == stop["stretch"]]
        before = sum(o["seconds"] for o in on if o["at_m"] < stop["at_m"])
        begin = lesson.moment(stop["stretch"]) + before
        end = lesson.moment(stop["stretch"] + 1) - sum(o["seconds"] for o in on if o["at_m"] >= stop["at_m"])
        spare = 60 * (self.asked.minutes - self.asked.reserve) - lesson.moment(len(lesson.drive))
        least, most = (at + stop["seconds"] + spare for at in (begin, end))
        tally.check("stop: leave by", told is not None and least - ROUNDING_S <= told <= most + ROUNDING_S,
                    f"stop {k}: {told}, by sums {least:.0f} to {most:.0f}")

    def without_place(self):
        """How many stops that were asked for the loop doesn't hold."""
        if not kept_for_stops_s(self.asked):
            return 0
        room = {k: round(stop["seconds"] / self.brief_s) for k, stop in enumerate(self.stops)
                if stop["for"] == "brief"}
        missing = 0
        for row in self.first_passes():
            brief = self.brief_before(row)
            missing += brief is None or room[brief] == 0
            if brief is not None and room[brief]:
                room[brief] -= 1
        talk = any(stop["for"] == "talk" for stop in self.stops)
        return missing + (self.asked.talk > 0 and not talk)
