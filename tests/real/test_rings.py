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
from ring_count import rings_of, signed_exits

GOLDEN = Path(__file__).resolve().parent.parent / "golden"


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
        explained, why = signed_exits(raw, rings[way])
        print(f"way/{way}: {ours[way]} exits, by the plain rule {plain}: "
              + ("; ".join(why) or "without a rule that says why"))
        failed = failed or len(explained) != ours[way]
    print(f"{len(ours)} roundabouts, {sum(ours.values())} exits; another count differs at {differ}")
    return 1 if failed or not ours else 0


if __name__ == "__main__":
    sys.exit(main())
