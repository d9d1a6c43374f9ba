#!/usr/bin/python3
"""Every kind of practice that a tag alone decides, held against a second reader.

usage: test_kinds.py PROGRAMS EXTRACT REGION

The second reader (second_kinds.py) says what the map's tags mean, object by object. Each object
that the program leaves out must have a reason with a source that holds on the raw tags, and each
thing the program calls certain must be in the second reader's list; else the test fails. The table
goes to PROGRAMS/kinds/, for tools/test to print: ours, the second reader's, the explained between.
Kinds that a rule infers (slip roads, bends, emerging ...) are not decided by a tag, so not here.
"""
import json
import sys
import tempfile
from collections import Counter
from pathlib import Path

from dump_text import built, dump
from kinds_left_out import LeftOut
from second_kinds import Kinds
from second_reader import Reader

# "signals" are lights of every sort: junctions, rings and crossings.
KINDS = [
    "roundabout", "mini-roundabout", "double-mini", "level-crossing", "signals", "zebra",
    "stop-line", "filter-lane", "advanced-stop-line", "box-junction", "school", "calming",
    "pinch-point", "narrow-road", "meeting-traffic", "twenty-zone", "twenty-limit", "limit-change",
    "country-road", "brow", "downhill", "dual-carriageway", "motorway", "one-way", "bus-lane",
    "cycle-lane", "lanes-merge", "bus-stop", "tram", "tram-crossing", "ford", "bay-park",
    "independent-stretch"]


# Kinds whose findings name the road that says so: the second reader compares where it is.
BY_NODE = {"limit-change", "lanes-merge"}


def found_in(report, places):
    """The report's findings; those of BY_NODE by the nodes of their places."""
    rows = [row for row in report["found"] if row["kind"] not in BY_NODE]
    return rows + [{"kind": place.kind, "confidence": "certain",
                    "objects": [f"node/{node}" for node in place.nodes]}
                   for place in places if place.kind in BY_NODE]


class Row:
    """One kind on one map."""

    def __init__(self, kind, claims, findings):
        self.kind, self.claims = kind, claims
        self.theirs = set(claims.groups)
        by_object = {name: group for group in claims.groups for name in group}
        kinds = claims.kinds or (kind,)
        self.ours = set()
        for finding in findings:
            if finding["kind"] in kinds:
                objects = finding.get("objects", [finding.get("object")])
                own = (claims.key_of(finding) if claims.key_of else
                       next((by_object[name] for name in objects if name in by_object), None))
                if own or finding["confidence"] == "certain":  # an inferred one is no tag's word
                    self.ours.add(own or frozenset(objects))
        claims.listed = self.ours
        self.why, self.unexplained = Counter(), []

    def explain(self, reasons):
        for group in sorted(self.theirs ^ self.ours, key=sorted):
            side = "left out" if group in self.theirs else "only here"
            holds = (text for text, test in reasons[side] if all(map(test, group)))
            text = next(holds, None)
            if text:
                self.why[text] += 1
            else:
                self.unexplained.append(f"{self.kind}: {side}: {' '.join(sorted(group))}")

    def lines(self):
        explained = sum(self.why.values())
        counts = f"{len(self.ours):6}{len(self.theirs):6}{explained:6}"
        yield f"{self.kind:22}{counts}  {self.claims.page}"
        for text, count in sorted(self.why.items()):
            yield f"{count:42}  {text}"


def compared(reader, findings):
    kinds, left_out = Kinds(reader), LeftOut(reader)
    for kind in KINDS:
        claims = getattr(kinds, kind.replace("-", "_"))()
        row = Row(kind, claims, findings)
        why = list(claims.reasons.items()) + list(left_out.reasons(kind))
        counted = [group for group in claims.groups
                   if not any(all(map(test, group)) for _, test in why)]
        row.explain({"left out": why + left_out.shortness(kind, counted),
                     "only here": list(claims.only_here.items())})
        yield row


def main():
    programs, extract, region = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        area, report = built(programs, extract, region, folder)
        findings = found_in(json.loads(report.read_text()), dump(programs, area).places)
    rows = list(compared(Reader(extract, region), findings))
    head = f"{Path(extract).name}\n{'kind':22}{'ours':>6}{'2nd':>6}{'expl.':>6}  by"
    table = "\n".join([head] + [line for row in rows for line in row.lines()])
    folder = Path(programs) / "kinds"
    folder.mkdir(exist_ok=True)
    (folder / (Path(extract).stem + ".txt")).write_text(table + "\n")
    print(table)
    unexplained = [line for row in rows for line in row.unexplained]
    print(*unexplained, sep="\n")
    return 1 if unexplained else 0


if __name__ == "__main__":
    sys.exit(main())
