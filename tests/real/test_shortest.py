#!/usr/bin/python3
"""Shortest times and lengths, held against independent libraries.

usage: test_shortest.py PROGRAMS EXTRACT REGION

networkx (Debian python3-networkx) searches the same turn graph for the same pairs; GeographicLib
(Debian python3-geographiclib) measures the same lines by Karney's geodesics.
"""
import random
import sys
import tempfile

import networkx
from geographiclib.geodesic import Geodesic

from dump_text import built, dump

PAIRS = 1000
TIMES_WITHIN = 1e-6   # relative
LENGTHS_WITHIN = 1e-4
LINES = 2000          # measured at most; a seeded choice


def differing_times(area):
    graph = networkx.DiGraph()
    for before, after, ms in area.moves:
        graph.add_edge(before, after, ms=ms)
    wrong = []
    for start, end, ours in area.pairs:
        try:
            theirs = networkx.bidirectional_dijkstra(graph, start, end, weight="ms")[0]
        except (networkx.NetworkXNoPath, networkx.NodeNotFound):
            theirs = -1 if start != end else 0
        if abs(ours - theirs) > TIMES_WITHIN * max(abs(theirs), 1):
            wrong.append((start, end, ours, theirs))
    return wrong


def differing_lengths(area):
    pieces = area.pieces
    if len(pieces) > LINES:
        pieces = random.Random(1).sample(pieces, LINES)
    wrong = []
    for piece in pieces:
        theirs = sum(Geodesic.WGS84.Inverse(*a, *b)["s12"]
                     for a, b in zip(piece.points, piece.points[1:]))
        # A millimetre on top: the dump's points are whole units of 1e-7 degree.
        if abs(piece.length_m - theirs) > LENGTHS_WITHIN * theirs + 1e-3:
            wrong.append((piece.way, piece.length_m, theirs))
    return wrong, len(pieces)


def main():
    programs, extract, region = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        area = dump(programs, built(programs, extract, region, folder)[0], PAIRS)
    assert len(area.pairs) == PAIRS, f"{len(area.pairs)} pairs"
    joined = sum(1 for pair in area.pairs if pair[2] >= 0)
    assert joined > PAIRS / 2, f"only {joined} pairs have a way"
    times = differing_times(area)
    lengths, measured = differing_lengths(area)
    for start, end, ours, theirs in times[:10]:
        print(f"from state {start} to {end}: {ours} ms here, {theirs} ms by networkx")
    for way, ours, theirs in lengths[:10]:
        print(f"a piece of way {way}: {ours} m here, {theirs} m by GeographicLib")
    print(f"{PAIRS} pairs ({joined} with a way), {len(times)} differ; "
          f"{measured} lines, {len(lengths)} differ")
    return 1 if times or lengths else 0


if __name__ == "__main__":
    sys.exit(main())
