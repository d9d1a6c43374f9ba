"""Independent driving: by signs or by directions told in advance. DEVELOPERS.md, Independent driving.

Destinations: Key:destination, Key:destination:ref. What hangs on a few degrees isn't held against anyone:
only what nobody would drive without being told needs a direction here.
"""
import re
from functools import cached_property

from lesson import is_junction_like
from second_reader import between, words

MOST_DIRECTIONS = 3   # common practice, no source
SURE_DEG = 65         # nobody goes round such a corner as the road ahead, where another road leaves
BACK_DEG = 110        # ours: what leads back is no choice; from 120 degrees on it may be the other half
LEEWAY_DEG = 25
ROUNDING_S = 0.5
ONE_JUNCTION_M = 8    # ours
SIGNED = ("motorway", "trunk", "primary", "secondary")  # numbers British signs give
EXITS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")
PRIVATE = ("access", "motor_vehicle", "vehicle", "motorcar")
SAID = re.compile(r"^(?:at the (?P<ring>roundabout|mini-roundabout) |at the end of the road )?"
                  r"(?:take (?:the (?P<exit>\w+) exit|exit number (?P<number>\d+))"
                  r"|(?:turn|bear) (?P<side>left|right)|(?P<ahead>follow the road ahead))"
                  r"(?:(?P<still>, still| into) (?P<street>.+))?$")


class Direction:
    """One direction in words; `said` is None when it isn't in the words of directions."""

    def __init__(self, text):
        self.said = SAID.match(text)

    def fits(self, one):
        """A choice of the drive is as the words say."""
        said = self.said
        exit_number = (EXITS.index(said["exit"]) + 1 if said["exit"] in EXITS else
                       int(said["number"]) if said["number"] else None)
        return ((said["ring"] is not None) == one.at_a_ring
                and (exit_number is None or exit_number in one.exits)
                and (said["street"] or "") in ("", one.street)
                and (said["side"] != "left" or one.angle < LEEWAY_DEG)
                and (said["side"] != "right" or one.angle > -LEEWAY_DEG))


class Choice:
    """From a stretch outside a junction to the next one outside."""

    def __init__(self, ways, begin, end):
        self.ways, self.drive, self.begin, self.end = ways, ways.drive, begin, end
        self.street = self.drive.stretches[end]["street"]
        self.angle = between(self.drive.heading_in(begin), self.drive.heading_out(end))

    @cached_property
    def at_a_ring(self):
        return any(self.ways.on_ring(i) for i in range(self.begin + 1, self.end)) or any(
            self.drive.ground.node(n).get("highway") == "mini_roundabout" for n in self.nodes)

    @cached_property
    def nodes(self):
        return [self.drive.nodes[i][-1] for i in range(self.begin, self.end)]

    @cached_property
    def exits(self):
        return {row["exit"] for row in self.ways.lesson.loop["passes"]
                if (row["first"], row["last"]) == (self.begin, self.end)}

    @cached_property
    def others(self):
        """(way, direction) of the public roads one could take instead."""
        ground, ways = self.drive.ground, {self.drive.way(i) for i in range(self.begin, self.end + 1)}
        into = self.drive.heading_in(self.begin)
        return [(way, away) for node in self.nodes for way, away, line in ground.arms_at(node)
                if way not in ways and way not in ground.in_ring and away in ground.directions(way)
                and ground.tags(way)["highway"] != "service" and not set(PRIVATE) & set(ground.tags(way))
                and abs(between(into, ground.heading(line))) < BACK_DEG]

    def must_be_told(self):
        return self.at_a_ring or abs(self.angle) > SURE_DEG and bool(self.others)


class Independent:
    """Of one loop."""

    def __init__(self, lesson, rings):
        self.lesson, self.drive, self.rings = lesson, lesson.drive, rings

    def on_ring(self, i):
        return self.rings.of(self.drive.way(i)) is not None or self.drive.tags(i).get("junction") in (
            "roundabout", "circular")

    @cached_property
    def inside(self):
        """Stretches inside junctions: on a ring, or between entry and exit of a pass that moves."""
        return {i for i in range(len(self.drive)) if self.on_ring(i)}.union(
            *(range(row["first"] + 1, row["last"]) for row in self.lesson.loop["passes"]
              if row["movement"] and is_junction_like(row["kind"])))

    def choices(self, first, last):
        outside = [i for i in range(first, last + 1) if i not in self.inside]
        return [Choice(self, a, b) for a, b in zip(outside, outside[1:])]

    def names(self, way, direction):
        """What a road is signed to in a direction, and its own number when it is one of the big."""
        tags, suffix = self.drive.ground.tags(way), ":" + self.drive.ground.suffix(direction)
        keys = ("destination", "destination" + suffix, "destination:ref", "destination:ref" + suffix)
        named = {name for key in keys for name in words(tags.get(key, ""))}
        big = tags["highway"] in SIGNED  # a slip road's number is that of the road it leads to or from
        return named | set(words(tags.get("ref", ""))[:1] if big else [])

    def leads(self, i, name):
        return name in self.names(self.drive.way(i), self.drive.direction(i))

    def check(self, tally):
        told, asked_s = self.lesson.loop.get("independent", []), 60 * self.lesson.asked.independent
        tally.check("independent: one", len(told) <= (1 if asked_s else 0), f"{len(told)} stretches")
        for one in told:
            first, last = one["first"], one["last"]
            if not tally.check("independent: place", self.lesson.first <= first <= last <= self.lesson.last
                               and not {first, last} & self.inside, first, last):
                continue
            if one["follow"] is None:
                self._directions(tally, one)
            else:
                self._signs(tally, one)

    def is_long_enough(self):
        """The loop has as many minutes as asked for; stops don't count."""
        asked_s = 60 * self.lesson.asked.independent
        return not asked_s or any(
            self.seconds(one) >= asked_s - ROUNDING_S for one in self.lesson.loop.get("independent", []))

    def seconds(self, one):
        manoeuvres = sum(row.get("stop_s", 0) for row in self.lesson.loop["passes"]
                         if one["first"] <= row["last"] <= one["last"])
        return self.lesson.lasts_s(one["first"], one["last"] + 1) - manoeuvres

    def _signs(self, tally, one):
        name = one["follow"]
        tally.check("independent: signed", self.leads(one["first"], name) and self.leads(one["last"], name)
                    and not one["directions"], name, "isn't signed at both ends")
        for choice in self.choices(one["first"], one["last"]):
            away = [way for way, direction in choice.others if name in self.names(way, direction)]
            tally.check("independent: only way", not away and (
                not choice.must_be_told() or self.leads(choice.end, name)),
                f"stretch {choice.begin}: {name} is signed by {away}, or not by the way taken")

    def _directions(self, tally, one):
        told = [Direction(text) for text in one["directions"]]
        known = all(direction.said for direction in told)
        if not tally.check("independent: directions", known and len(told) <= MOST_DIRECTIONS,
                           one["directions"]):
            return
        choices = self.choices(one["first"], one["last"])
        tally.check("independent: ways", self._explained(told, choices), one["directions"],
                    [(c.begin, round(c.angle), c.street) for c in choices if c.must_be_told()])

    def _explained(self, told, choices):
        """Each direction is for a choice, in order, and no choice that must be told is without one."""
        if not choices:
            return not told
        here, rest = choices[0], choices[1:]
        # Two corners a car's length apart are one junction: the direction may name the street behind the second.
        is_one = bool(rest) and rest[0].begin == here.end and self.drive.stretches[here.end]["metres"] < ONE_JUNCTION_M
        if is_one and told and told[0].fits(rest[0]) and self._explained(told[1:], rest[1:]):
            return True
        taken = told and told[0].fits(here) and self._explained(told[1:], rest)
        return bool(taken) or not here.must_be_told() and self._explained(told, rest)
