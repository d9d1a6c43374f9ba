"""What a loop says it gives, against the words asked and the passes it lists. DECISIONS.md, Value of a loop.

The passes themselves are checked elsewhere; here they are only counted.
"""
from collections import Counter

from rings import FAMILY

MET_BY = {"roundabout": FAMILY, "mini-roundabout": ("mini-roundabout", "double-mini"),
          "turn-off": ("turn-off", "narrow-mouth"), "narrow-road": ("narrow-road", "single-track")}
RUN_KINDS = {"narrow-road", "single-track", "meeting-traffic", "twenty-zone", "twenty-limit",
             "country-road", "bends", "brow", "downhill", "dual-carriageway", "slip-road", "motorway",
             "one-way", "bus-lane", "cycle-lane", "tram", "school", "independent-stretch"}
PLACE_PASSES, RUN_PASSES = 6, 3   # of one place in a lesson
SPACING_S = 120                   # between passes that count for a `max` want
WORTH = (1000, 700, 500, 300, 200, 100)  # thousandths, of the k-th pass of a place and movement
WELCOME = 200


def stands_for(kind, wanted):
    return kind in MET_BY.get(wanted, (wanted,))


def fits(row, want):
    """A pass counts for a want: kind, movement (any but `round` where none is named), verdict."""
    movement = row["movement"] or ""
    return (stands_for(row["kind"], want.kind)
            and (movement == want.movement if want.movement else movement != "round")
            and (not want.verdict or row.get("verdict") == want.verdict))


class Counts:
    """Of one loop."""

    def __init__(self, asked, drive, loop, places):
        self.asked, self.drive, self.loop, self.places = asked, drive, loop, places.names()
        self.rows = loop["passes"]

    def begins(self, row):
        """Likely seconds at which a pass begins: its entry is come to the end of; a run is entered."""
        i = row["first"]
        return self.drive.stretches[i]["arrive_s"]["likely"]

    def cap(self, row):
        if self.asked.place_passes is not None:
            return self.asked.place_passes
        return RUN_PASSES if row["kind"] in RUN_KINDS else PLACE_PASSES

    def counted(self, want, places):
        """How many passes count for a want: those that fit, spaced, of one place at most so many."""
        spaced = [seconds for kind, seconds in self.asked.spacing if stands_for(want.kind, kind)
                  or stands_for(kind, want.kind)]
        total, last, of_place = 0, None, Counter()
        for row in self.rows:
            if not fits(row, want) or not self._leads_into(row, want):
                continue
            place = places[id(row)]
            if of_place[place] >= self.cap(row):
                continue
            if spaced and last is not None and self.begins(row) - last < max(spaced):
                continue
            total, last = total + 1, self.begins(row)
            of_place[place] += 1
        return total

    def _leads_into(self, row, want):
        return not want.into or any(
            stands_for(other["kind"], want.into) and other["first"] <= row["last"] <= other["last"]
            for other in self.rows)

    def check(self, tally, minor_m):
        """`minor_m`: metres driven again on streets that may be quiet ones."""
        met = self.loop["met"]
        tally.check("met: wants", [(m["kind"], m["movement"] or "", m["asked"]) for m in met] ==
                    [(w.kind, w.movement, "max" if w.count is None else w.count)
                     for w in self.asked.want], [m["kind"] for m in met])
        for want, told in zip(self.asked.want, met):
            least, most = sorted(self.counted(want, places) for places in self.places)
            tally.check("met: got", least <= told["got"] <= most, f"{want.kind} {want.movement}: got",
                        told["got"], "counted", least, "to", most)
            if want.count is None:
                self._practised(tally, want, told.get("practised", []))
        self._hardness(tally)
        self._avoided(tally)
        self._certificate(tally, minor_m)

    def _practised(self, tally, want, chosen):
        """The passes told to be worth something fit, are spaced, and no place has too many."""
        tally.check("practised: order", chosen == sorted(set(chosen)) and all(
            0 <= k < len(self.rows) for k in chosen), chosen)
        rows = [self.rows[k] for k in chosen if 0 <= k < len(self.rows)]
        tally.check("practised: fits", all(fits(row, want) for row in rows), want.kind, chosen)
        own = [seconds for kind, seconds in self.asked.spacing if stands_for(want.kind, kind)]
        least = max(own) if own else SPACING_S
        gaps = [self.begins(b) - self.begins(a) for a, b in zip(rows, rows[1:])]
        tally.check("practised: spaced", all(gap >= least - 0.01 for gap in gaps), want.kind,
                    min(gaps, default=0), "s")
        places = Counter(self.places[0][id(row)] for row in rows)
        moved = Counter((self.places[0][id(row)], row["movement"]) for row in rows)
        most = self.asked.place_passes or max(places.values(), default=0)
        tally.check("practised: caps", all(n <= most for n in places.values()) and all(
            n <= len(WORTH) for n in moved.values()), places)  # a seventh is worth nothing

    def _hardness(self, tally):
        """At most the level and one, unless a kind is asked for by name; never over `hardest`."""
        named = [want.kind for want in self.asked.want]
        for row in self.rows:
            free = row["kind"] == "independent-stretch"
            asked = any(stands_for(row["kind"], kind) for kind in named)
            most = 5 if self.asked.level is None or asked else self.asked.level + 1
            tally.check("hardness", free or 1 <= row["hardness"] <= min(most, self.asked.hardest),
                        f"{row['kind']} {row['first']}-{row['last']}: {row['hardness']}")

    def _avoided(self, tally):
        for row in self.rows:
            tally.check("avoided", not any(stands_for(row["kind"], kind) for kind in self.asked.avoid),
                        f"{row['kind']} at stretches {row['first']}-{row['last']}")

    def worth(self, places):
        """Milli-units of the passes told as practised."""
        total, seen = 0, Counter()
        for want, told in zip(self.asked.want, self.loop["met"]):
            chosen = told.get("practised", []) if want.count is None else []
            for row in (self.rows[k] for k in chosen if 0 <= k < len(self.rows)):
                key = places[id(row)], row["movement"], want
                total += WORTH[seen[key]] if seen[key] < len(WORTH) else 0
                seen[key] += 1
        return total

    def _certificate(self, tally, minor_m):
        """Bound, gap and value are of one sum; quiet streets driven twice cost a milli-unit a metre, and
        there are at most `minor_m` metres of these."""
        told = self.loop["certificate"]
        value, bound, gap = told["value"], told["bound"], told["gap"]
        if bound is not None:
            tally.check("bound", bound >= value and (told["state"] != "best possible" or bound == value),
                        told)
        if bound is not None and gap is not None and value:
            tally.check("gap", abs(gap - (bound / value - 1)) < 1e-4, told)
        if any(want.count is None for want in self.asked.want):
            least, most = sorted(map(self.worth, self.places))
            most += WELCOME * len(self.rows) if self.asked.welcome else 0
            tally.check("value", least - minor_m - 2 <= value <= most + 1, f"{value}, its passes are "
                        f"worth {least} to {most}, streets twice {minor_m:.0f} m")
        elif not self.asked.welcome:
            tally.check("value", abs(value + self.loop["metres_twice"]) <= 1, told)

