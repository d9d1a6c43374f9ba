"""What a loop file says beside the loop itself: ways home, places to pull up, stops, other loops.

Where one may pull up is judged by the map; a place that the instructor noted is the instructor's word.
"""
from collections import Counter

from geo import along, metres

JUNCTION_M = 10   # Highway Code 243: not within 10 m of a junction
ROUNDING_M = 1
ROUNDING_S = 0.01
SHARED = 0.4      # DECISIONS.md: alternatives share less of their length, by way and direction,
EXEMPT_M = 500    # the first and last metres not counted
HARD = 3          # LOOP-FILE.md: stops_after tells of each pass so hard
PULL_UP_S = 240


class Beyond:
    """Of one loop. `audit_road` checks that a list of stretches may be driven."""

    def __init__(self, ground, drive, loop, audit_road):
        self.ground, self.drive, self.loop, self.audit_road = ground, drive, loop, audit_road

    def check(self, tally):
        self._ways_home(tally)
        for k, one in enumerate(self.loop["pull_ups"]):
            self._pull_up(tally, k, one)
        self._stops_after(tally)

    def _ways_home(self, tally):
        for k, home in enumerate(self.loop["ways_home"]):
            name, left = f"way home {k}:", home["from_stretch"]
            if not tally.check("way home: place", 0 <= left < len(self.drive), name, left):
                continue
            stretches = [self.drive.stretches[left]] + home["stretches"]
            self._way_home(tally, name, home, stretches)

    def _way_home(self, tally, name, home, stretches):
        end, last = self.drive.stretches[-1], stretches[-1]
        tally.check("way home: end", {last["from"], last["to"]} == {end["from"], end["to"]}
                    or last["way"] == end["way"], name, f"ends on way/{last['way']}")
        moments = [s["arrive_s"]["likely"] for s in stretches]
        tally.check("way home: time", all(a <= b + ROUNDING_S for a, b in zip(moments, moments[1:]))
                    and home["seconds"] >= moments[-1] - moments[1] - ROUNDING_S
                    if len(moments) > 1 else home["seconds"] >= 0, name, home["seconds"])
        outer, tally.where = tally.where, tally.where + name + " "
        self.audit_road(tally, stretches, self.drive.start)
        tally.where = outer

    def _pull_up(self, tally, k, one):
        """On the near side, on its stretch, ten metres from any junction: Highway Code 239, 243."""
        name, i = f"pull-up {k}:", one["stretch"]
        length = self.drive.length(i) if 0 <= i < len(self.drive) else -1
        if not tally.check("pull-up: place", -ROUNDING_M <= one["at_m"] <= length + ROUNDING_M, name,
                           f"{one['at_m']} m of {length:.0f}"):
            return
        tally.check("pull-up: side", one["side"] == ("left" if self.ground.left else "right"), name)
        point = along([self.ground.at(n) for n in self.drive.nodes[i]], one["at_m"])
        if one["why_legal"].startswith("noted"):
            tally.check("pull-up: noted", any(
                note.says == "pull-up" and self.ground.noted.near(note, self.drive, i)
                for note in self.ground.noted.notes), name, one["why_legal"])
            return
        near = [n for n in self.drive.nodes[i] if self._is_junction(n)
                and metres(self.ground.at(n), point) < JUNCTION_M - ROUNDING_M]
        tally.check("pull-up: clear of junctions", not near, name, near)
        tally.check("pull-up: no crossing", not any(
            self.ground.node(n).get("highway") == "crossing" or
            self.ground.node(n).get("railway") == "level_crossing" for n in self.drive.nodes[i]
            if metres(self.ground.at(n), point) < JUNCTION_M - ROUNDING_M), name)

    def _is_junction(self, node):
        streets = [w for w, _, _ in self.ground.arms_at(node)
                   if self.ground.tags(w)["highway"] != "service"]
        return len(streets) > 2

    def _stops_after(self, tally):
        """Each hard pass has a row; the pull-up told lies behind it and is come to in time."""
        hard = [k for k, row in enumerate(self.loop["passes"]) if row["hardness"] >= HARD]
        rows = self.loop["stops_after"]
        told = [row["pass"] for row in rows]
        tally.check("stops after: passes", told == hard, f"{len(told)} of {len(hard)}")
        for row in rows:
            known = 0 <= row["pass"] < len(self.loop["passes"])
            if known and row["pull_up"] is not None and row["pull_up"] < len(self.loop["pull_ups"]):
                place = self.loop["pull_ups"][row["pull_up"]]
                behind = place["stretch"] >= self.loop["passes"][row["pass"]]["first"]
                tally.check("stops after: behind", behind and row["seconds"] <= PULL_UP_S + ROUNDING_S,
                            row)


def directed(drive, exempt):
    """Metres of each stretch driven, by way and direction, without the first and last `exempt`."""
    total = sum(s["metres"] for s in drive.stretches)
    spans, so_far = Counter(), 0
    for stretch in drive.stretches:
        begin, so_far = so_far, so_far + stretch["metres"]
        inside = max(0, min(so_far, total - exempt) - max(begin, exempt))
        spans[stretch["way"], stretch["from_index"], stretch["to_index"]] += inside
    return spans, total


def alternatives(tally, drives):
    for k, one in enumerate(drives):
        for other in drives[:k]:
            own, total = directed(one, EXEMPT_M)
            theirs, their_total = directed(other, EXEMPT_M)
            shared = sum(min(own[span], theirs[span]) for span in own)
            tally.check("alternatives", shared <= SHARED * max(total, their_total) + 1,
                        f"loops {drives.index(other) + 1} and {k + 1} share {shared:.0f} m of "
                        f"{total:.0f} and {their_total:.0f}")
