"""What a loop says it gives, against the words asked and the passes it lists. DECISIONS.md, Value of a loop.

The passes themselves are checked elsewhere; here they are only counted. In a lesson of parts a pass counts
for the wants of the part in which it begins; of one place as often as the caps allow, all parts together.
"""
from collections import Counter

from rings import FAMILY
from wish_told import wants_of

MET_BY = {"roundabout": FAMILY, "mini-roundabout": ("mini-roundabout", "double-mini"),
          "turn-off": ("turn-off", "narrow-mouth"), "narrow-road": ("narrow-road", "single-track")}
RUN_KINDS = {"narrow-road", "single-track", "meeting-traffic", "twenty-zone", "twenty-limit",
             "country-road", "bends", "brow", "downhill", "dual-carriageway", "slip-road", "motorway",
             "one-way", "bus-lane", "cycle-lane", "tram", "school", "independent-stretch"}
# Minutes one stops for each (src/rules/kinds.txt, from the trade's lessons; common practice, no source).
MANOEUVRES = {"uphill-start": 3, "move-off": 3, "bay-park": 8, "parallel-park": 6, "pull-up-right": 5,
              "turn-in-road": 5, "emergency-stop": 3}
PLACE_PASSES, RUN_PASSES = 6, 3   # of one place in a lesson
SPACING_S = 120                   # between passes that count for a `max` want
ROUNDING_S = 0.01
WORTH = (1000, 700, 500, 300, 200, 100)  # thousandths, of the k-th pass of a place and movement
WELCOME = 200
SHARE = 0.001  # two ways of measuring on the ellipsoid


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

    def __init__(self, lesson, places):
        self.lesson, self.asked, self.loop = lesson, lesson.asked, lesson.loop
        # Turning round is let, and has no worth.
        self.welcomes = any(kind != "turn-in-road" for kind in self.asked.welcome)
        self.places, self.rows = places.names(), lesson.loop["passes"]
        self.order = sorted(self.rows, key=lambda row: (row["first"], row["last"]))

    def groups(self):
        """(number of the part or None, its wants, what is told of them)."""
        if not self.lesson.parts:
            return [(None, self.asked.want, self.loop["met"])]
        return [(p, self.asked.part[p].wants, part["met"]) for p, part in enumerate(self.lesson.parts)]

    def begins(self, row):
        """Likely seconds at which a pass begins: its entry is come to the end of; a run is entered."""
        return self.lesson.moment(row["first"])

    def cap(self, row):
        if self.asked.place_passes is not None:
            return self.asked.place_passes
        return RUN_PASSES if row["kind"] in RUN_KINDS else PLACE_PASSES

    def spacing(self, want):
        """The longest spacing asked of the kind or of one it is a special form of."""
        return max((s for kind, s in self.asked.spacing if stands_for(want.kind, kind)), default=None)

    def may_count(self, row, want, part):
        return (fits(row, want) and self.lesson.is_practised(row) and self._leads_into(row, want)
                and (part is None or self.lesson.part_of(row) == part))

    def _leads_into(self, row, want):
        return not want.into or any(
            stands_for(other["kind"], want.into) and other["first"] <= row["last"] <= other["last"]
            for other in self.rows)

    def counted(self, part, want, places):
        """How many passes count for a want: those that fit, spaced, of one place at most so many. Earlier
        parts use up the caps of places first."""
        of_place, total = Counter(), 0
        for p, wants, _ in self.groups():
            if p is None or p <= part:
                total = sum(self._count(p, one, places, of_place) for one in wants
                            if one._replace(count=None) == want._replace(count=None))
        return total

    def _count(self, part, want, places, of_place):
        total, last, spaced = 0, None, self.spacing(want)
        for row in self.order:
            if not self.may_count(row, want, part):
                continue
            place = places[id(row)]
            if spaced and last is not None and self.begins(row) - last < spaced - ROUNDING_S:
                continue
            if of_place[place] >= self.cap(row):
                continue
            total, last = total + 1, self.begins(row)
            of_place[place] += 1
        return total

    def check(self, tally, again_m, minor_m):
        """`again_m`: metres the learner drives again; `minor_m`: on streets that may be quiet ones."""
        groups = self.groups()
        if self.lesson.parts:
            tally.check("met: wants", not self.loop["met"], "wants of the lesson, which has parts")
        for part, wants, met in groups:
            tally.check("met: wants", wants_of(met, "asked") == [tuple(want) for want in wants],
                        [m["kind"] for m in met])
            for want, told in zip(wants, met):
                self._met(tally, part, want, told)
        self._hardness(tally)
        self._avoided(tally)
        self._manoeuvres(tally)
        self._certificate(tally, again_m, minor_m)

    def _met(self, tally, part, want, told):
        least, most = sorted(self.counted(part, want, places) for places in self.places)
        tally.check("met: got", least <= told["got"] <= most, f"{want.kind} {want.movement}: got",
                    told["got"], "counted", least, "to", most)
        if want.count is None:
            self._practised(tally, part, want, told.get("practised", []))

    def _practised(self, tally, part, want, chosen):
        """The passes told to be worth something fit, are spaced, and no place has too many."""
        tally.check("practised: order", chosen == sorted(set(chosen)) and all(
            0 <= k < len(self.rows) for k in chosen), chosen)
        rows = [self.rows[k] for k in chosen if 0 <= k < len(self.rows)]
        tally.check("practised: fits", all(self.may_count(row, want, part) for row in rows), want.kind, chosen)
        own = self.spacing(want)
        least = SPACING_S if own is None else own
        gaps = [self.begins(b) - self.begins(a) for a, b in zip(rows, rows[1:])]
        tally.check("practised: spaced", all(gap >= least - ROUNDING_S for gap in gaps), want.kind,
                    min(gaps, default=0), "s")
        places = Counter(self.places[0][id(row)] for row in rows)
        moved = Counter((self.places[0][id(row)], row["movement"]) for row in rows)
        most = self.asked.place_passes or max(places.values(), default=0)
        tally.check("practised: caps", all(n <= most for n in places.values()) and all(
            n <= len(WORTH) for n in moved.values()), places)  # a seventh is worth nothing

    def _hardness(self, tally):
        """At most the level and one, unless a kind is asked for by name; never over `hardest`. What the
        instructor drives may be as hard as it is."""
        lesson = self.lesson
        free_of_level = self.asked.level is None or hasattr(self.asked, "free_of_level")
        for row in self.rows:
            part = lesson.part_of(row)
            named = self.asked.want if part is None else self.asked.part[part].wants
            asked = any(stands_for(row["kind"], want.kind) for want in named)
            free = row["kind"] == "independent-stretch" or not lesson.touches(row, lesson.first, lesson.last)
            most = 5 if free_of_level or asked else self.asked.level + 1
            tally.check("hardness", free or 1 <= row["hardness"] <= min(most, self.asked.hardest),
                        f"{row['kind']} {row['first']}-{row['last']}: {row['hardness']}")

    def _avoided(self, tally):
        for row in self.rows:
            tally.check("avoided", not any(
                stands_for(row["kind"], kind) and movement in ("", row["movement"])
                for kind, movement in self.asked.avoid),
                        f"{row['kind']} at stretches {row['first']}-{row['last']}")

    def _manoeuvres(self, tally):
        """Done only when asked for, and no more often."""
        for row in (row for row in self.rows if row["kind"] in MANOEUVRES):
            part = self.lesson.part_of(row)
            wants = self.asked.want if part is None else self.asked.part[part].wants
            tally.check("manoeuvre: wanted", any(row["kind"] == want.kind for want in wants), row["kind"])
            tally.check("manoeuvre: minutes", row.get("stop_s") == 60 * MANOEUVRES[row["kind"]],
                        row["kind"], row.get("stop_s"))
        for _, wants, met in self.groups():
            for want, told in zip(wants, met):
                if want.kind in MANOEUVRES and want.count is not None:
                    tally.check("manoeuvre: times", told["got"] <= want.count, want.kind, told["got"])

    def worth(self, places):
        """Milli-units of the passes told as practised."""
        total, seen = 0, Counter()
        for _, wants, met in self.groups():
            for want, told in zip(wants, met):
                chosen = told.get("practised", []) if want.count is None else []
                for row in (self.rows[k] for k in chosen if 0 <= k < len(self.rows)):
                    key = places[id(row)], row["movement"], want
                    total += WORTH[seen[key]] if seen[key] < len(WORTH) else 0
                    seen[key] += 1
        return total

    def _certificate(self, tally, again_m, minor_m):
        """Bound, gap and value are of one sum; quiet streets driven twice cost a milli-unit a metre, and
        there are at most `minor_m` metres of these."""
        told = self.loop["certificate"]
        value, bound, gap = told["value"], told["bound"], told["gap"]
        if bound is not None:
            tally.check("bound", bound >= value and (told["state"] != "best possible" or bound == value),
                        told)
        if bound is not None and gap is not None and value:
            tally.check("gap", abs(gap - (bound / value - 1)) < 1e-4, told)
        worthy = any(want.count is None for want in self.asked.all_wants) and not self.asked.through
        if worthy:
            least, most = sorted(map(self.worth, self.places))
            most += WELCOME * len(self.rows) if self.welcomes else 0
            tally.check("value", least - minor_m - 2 <= value <= most + 1, f"{value}, its passes are "
                        f"worth {least} to {most}, streets twice {minor_m:.0f} m")
        elif not self.welcomes or self.asked.through:
            tally.check("value", abs(value + again_m) <= 1 + SHARE * again_m, told)
