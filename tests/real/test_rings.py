#!/usr/bin/python3
"""The roundabouts of an extract: the approved listing, and a count of exits by another program.

usage: test_rings.py PROGRAMS EXTRACT REGION

1. What `look AREA --roundabouts` prints is compared with tests/golden/TOWN-roundabouts.txt where
   there is one: each ring in it was looked at on a drawing (tools/draw-rings). A listing that
   differs is left in PROGRAMS/golden, where tools/approve finds it.
2. ring_count.py counts the exits of every ring by a plain rule. Where ours differ, the rules that
   account for it are applied to the plain count and named; a difference that is left fails.
"""
import difflib
import re
import subprocess
import sys
import tempfile
from pathlib import Path

from dump_text import built
from opl import Map
from ring_count import rings_of

GOLDEN = Path(__file__).resolve().parent.parent / "golden"
BANNED = "turn bans keep the ring's traffic off a way out"
MEET = "two ways out that meet again within 60 m are one exit"


def listing(programs, area):
    return subprocess.run([Path(programs) / "loopwright", "look", area, "--roundabouts"],
                          check=True, stdout=subprocess.PIPE, encoding="utf-8").stdout


def differs_from_approved(programs, extract, text):
    approved = GOLDEN / f"{Path(extract).name.split('.')[0]}-roundabouts.txt"
    if not approved.exists():
        return False
    old = approved.read_text(encoding="utf-8")
    if text == old:
        print(f"{approved.name}: as approved")
        return False
    sys.stdout.writelines(difflib.unified_diff(old.splitlines(True), text.splitlines(True),
                                               "approved", "now"))
    left = Path(programs) / "golden"
    left.mkdir(exist_ok=True)
    (left / approved.name).write_text(text, encoding="utf-8")
    return True


def exits_listed(text):
    """How many exits the signs count at each ring, by the least way."""
    counts = {}
    for block in re.split(r"^(?=way/|node/)", text, flags=re.M):
        head = re.match(r"way/(\d+) ", block)
        if head:
            arms = re.findall(r"^  arm .*$", block, flags=re.M)
            counts[int(head[1])] = sum(
                "way in only" not in arm and "not counted" not in arm for arm in arms)
    return counts


def is_banned(raw, ring, touch):
    """True when a turn ban forbids leaving the ring by this way."""
    for relation in raw.relations.values():
        kind = relation.tags.get("restriction", "")
        via = [ref for _, ref, role in relation.members if role == "via"]
        begins = [ref for _, ref, role in relation.members if role == "from"]
        leads_to = [ref for _, ref, role in relation.members if role == "to"]
        arrives = [w for w in begins if w in ring.ways and raw.ways[w].nodes[0] != touch.node]
        if via != [touch.node] or not arrives:
            continue
        if (touch.way in leads_to) == kind.startswith("no_"):
            return True
    return False


def exits_explained(raw, ring):
    """The plain count, and what further rules make of it, each by name."""
    exits, why = ring.exits(), []
    for arm in list(exits):
        if all(is_banned(raw, ring, t) for t in arm if t.leaves):
            exits.remove(arm)
            why.append(BANNED)
    for a, b in list(zip(exits, exits[1:])):
        outs = [next(t for t in arm if t.leaves) for arm in (a, b)]
        reached = [ring.streets.within(ring.streets.onward, t) for t in outs]
        if reached[0] & reached[1] and not any(t.comes for t in a):
            exits.remove(a)
            why.append(MEET)
    return len(exits), why


def main():
    programs, extract, region = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        area, _ = built(programs, extract, region, folder)
        text = listing(programs, area)
    failed = differs_from_approved(programs, extract, text)
    raw = Map(extract)
    rings, ours = rings_of(raw), exits_listed(text)
    for way in sorted(set(rings) ^ set(ours)):
        print(f"way/{way}: a roundabout for only one of both")
        failed = True
    differ = 0
    for way in sorted(set(rings) & set(ours)):
        plain = len(rings[way].exits())
        if plain == ours[way]:
            continue
        differ += 1
        explained, why = exits_explained(raw, rings[way])
        print(f"way/{way}: {ours[way]} exits, by the plain rule {plain}: "
              + ("; ".join(why) or "without a rule that says why"))
        failed = failed or explained != ours[way]
    print(f"{len(ours)} roundabouts, {sum(ours.values())} exits; another count differs at {differ}")
    return 1 if failed or not ours else 0


if __name__ == "__main__":
    sys.exit(main())
