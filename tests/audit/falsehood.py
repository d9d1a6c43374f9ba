"""What planted falsehoods share: a good answer to spoil, and the raw map to find rare things in."""
import json
import math

PLANTED = []  # (claim that must be found false, the answer it is planted in, what is planted, how)
FAR_DEG = 0.01


def plants(claim, answer="good"):
    """Names the claim by which the falsehood below must be found, and the answer to spoil."""
    def keep(spoil):
        PLANTED.append((claim, answer, spoil.__doc__, spoil))
        return spoil
    return keep


class World:
    """A good answer read anew, its wish's words and its exit code, to be spoilt. `folder`: for files."""

    def __init__(self, auditor, good, folder):
        self.ground, self.bans, self.quiet = auditor.ground, auditor.bans, auditor.quiet
        self.words, self.exit_code, self.folder = list(good.words), good.exit_code, folder
        self.answer = json.loads(good.text)

    @property
    def loop(self):
        return self.answer["loops"][0]

    @property
    def stretches(self):
        return self.loop["stretches"]

    @property
    def passes(self):
        return self.loop["passes"]

    def tags(self, stretch):
        return self.ground.tags(stretch["way"])

    def say(self, word, value):
        """Gives a word of the command line another value, or adds it."""
        if word in self.words:
            self.words[self.words.index(word) + 1] = value
        else:
            self.words += [word, value]

    def a_pass(self, test):
        return next(row for row in self.passes if test(row))

    def a_stretch(self, test, begin=3):
        """The first stretch, not next to a door, of which a test holds."""
        return next(s for s in self.stretches[begin:-begin] if test(s))

    def is_long(self, stretch):
        return stretch["metres"] > 50 and "partial_m" not in stretch

    def is_far(self, stretch):
        """Over a kilometre from the door, or nearly."""
        door = [float(part) for part in self.words[self.words.index("--home") + 1].split(",")]
        return math.dist(door, self.ground.at(stretch["from"])) > FAR_DEG

    def a_way(self, test):
        """The least road of the map, of two nodes at least, of whose tags a test holds."""
        return min(w for w in self.ground.roads if test(self.ground.tags(w))
                   and len(self.ground.line(w)) > 1)

    def drive_instead(self, *pieces):
        """Puts (way, from index, to index) in the place of as many stretches, right in the middle."""
        at = len(self.stretches) // 2
        for k, (way, a, b) in enumerate(pieces):
            nodes = self.ground.map.ways[way].nodes
            self.stretches[at + k].update({
                "way": way, "from": nodes[a], "to": nodes[b], "from_index": a, "to_index": b,
                "direction": "along" if a < b else "against"})
        return at

    def drive_along(self, way, to_direction="along"):
        last = len(self.ground.map.ways[way].nodes) - 1
        ends = (0, last) if to_direction == "along" else (last, 0)
        return self.drive_instead((way, *ends))

    def piece_to(self, way, node, arrives):
        """The whole way into a node at one of its ends (arrives), or out of it."""
        nodes = self.ground.map.ways[way].nodes
        last = len(nodes) - 1
        into_last = nodes[-1] == node
        return (way, 0, last) if into_last == arrives else (way, last, 0)

    def drive_ban(self, ban):
        """Drives what a ban of one node or one way in between forbids."""
        onward = ban.to
        if ban.only:
            onward = next(w for w in self.ground.ways_at[ban.node] if w not in ban.chain and w != ban.to
                          and ban.node in self.bans.ends_of(w))
        pieces = [self.piece_to(ban.chain[-1], ban.node, True)]
        for before, after in zip(ban.chain[-2::-1], ban.chain[:0:-1]):
            meet = min(self.bans.ends_of(before) & self.bans.ends_of(after))
            pieces.insert(0, self.piece_to(before, meet, True))
        return self.drive_instead(*pieces, self.piece_to(onward, ban.node, False))

    def a_ban(self, test):
        return next(ban for key in sorted(self.bans.by_end) for ban in self.bans.by_end[key] if test(ban))
