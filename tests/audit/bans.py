"""Turn restrictions of the raw map, held against a drive. OSM wiki, Relation:restriction.

A ban is a chain of ways (from, the vias, to) with the nodes at which they meet. `no_…` forbids the whole
chain; `only_…` forbids to leave its last via by another way than `to`. A relation whose ways don't begin
or end where they meet can't be used and is left out, as the wiki tells data users.
"""
import itertools
from collections import defaultdict, namedtuple

from clock import NO
from second_reader import words

CAR = ("motorcar", "motor_vehicle", "vehicle")
Ban = namedtuple("Ban", "relation only chain to node hours")  # chain: from and vias; node: before `to`


def texts_of(tags):
    """(text, hours or None) of what binds a car; the most special key decides."""
    for suffix in (":motorcar", ":motor_vehicle", ":vehicle", ""):
        key = "restriction" + suffix
        if key + ":conditional" in tags or key in tags:
            plain = [(tags[key], None)] if key in tags else []
            return plain + [(None, tags[key + ":conditional"])
                            for key in [key] if key + ":conditional" in tags]
    return []


def old_hours(tags):
    """The deprecated keys day_on, day_off, hour_on and hour_off, as a text of hours."""
    if "hour_on" not in tags or "hour_off" not in tags:
        return None
    days = f"{tags.get('day_on', 'Mo')[:2]}-{tags.get('day_off', 'Su')[:2]} "
    return f"{days}{tags['hour_on']}-{tags['hour_off']}"


class Bans:
    def __init__(self, ground):
        self.ground = ground
        self.by_end = defaultdict(list)  # (last way of the chain, node) -> bans
        for number, relation in ground.map.relations.items():
            if relation.tags.get("type", "").startswith("restriction"):
                for ban in self._bans_of(number, relation):
                    self.by_end[ban.chain[-1], ban.node].append(ban)

    def _bans_of(self, number, relation):
        if set(words(relation.tags.get("except", ""))) & set(CAR):
            return
        role = {name: [(t, ref) for t, ref, r in relation.members if r == name]
                for name in ("from", "via", "to")}
        for text, hours in self._texts(relation.tags):
            for start, end in itertools.product(role["from"], role["to"]):
                for chain, node in self._chains(start[1], role["via"], end[1]):
                    yield Ban(number, text.startswith("only_"), chain, end[1], node, hours)

    def _texts(self, tags):
        for text, conditional in texts_of(tags):
            if conditional is None:
                yield text, old_hours(tags)
            else:
                for value, condition in (part.split("@", 1) for part in [conditional] if "@" in part):
                    yield value.strip(), condition

    def ends_of(self, way):
        """The first and last node of a road."""
        nodes = self.ground.map.ways[way].nodes if way in self.ground.roads else []
        return set(nodes[:1] + nodes[-1:])

    def _chains(self, start, vias, end):
        """(ways up to the last via, the node before `to`) of a relation that can be used."""
        if [t for t, _ in vias] == ["n"]:
            node = vias[0][1]
            if node in self.ends_of(start) and node in self.ends_of(end):
                yield (start,), node
        elif vias and all(t == "w" for t, _ in vias):
            yield from self._over_ways(start, [ref for _, ref in vias], end)

    def _over_ways(self, start, vias, end):
        for order in {tuple(vias), tuple(reversed(vias))}:
            chain = (start,) + order
            meet = [self.ends_of(a) & self.ends_of(b) for a, b in zip(chain, chain[1:] + (end,))]
            if all(meet):
                for node in meet[-1]:
                    yield chain, node

    def check(self, tally, drive):
        """Every turn from way to way of a drive."""
        for i, run, node, onward in self._moves(drive):
            for ban in self.by_end.get((run[-1], node), ()):
                if tuple(run[-len(ban.chain):]) != ban.chain:
                    continue
                broken = (onward != ban.to) if ban.only else (onward == ban.to)
                tally.check("turn", not broken or self._sleeps(ban, drive.interval(i)),
                            f"stretch {i}: relation/{ban.relation} forbids the turn at node/{node}")
            tally.claims["turn"] += 1

    def _sleeps(self, ban, interval):
        return ban.hours is not None and self.ground.clock.holds(ban.hours, interval) == NO

    @staticmethod
    def _moves(drive):
        """(stretch, ways driven so far, node, way on) wherever the way changes or turns back."""
        run = []
        steps = drive.steps
        for (a, b, way, i), (_, c, onward, _) in zip(steps, steps[1:]):
            if not run or run[-1] != way:
                run.append(way)
            if onward != way or c == a:
                yield i, run, b, onward
                if onward == way:
                    run.append(way)
