"""Reads what loopwright_dump prints, and runs the programs that make it."""
import subprocess
from collections import namedtuple
from pathlib import Path

Piece = namedtuple("Piece", "way length_m points")
Place = namedtuple("Place", "kind source nodes ways")


def ids(text):
    return [] if text == "-" else [int(i) for i in text.split(",")]


class Dump:
    def __init__(self, text):
        self.pieces, self.nodes, self.places = [], {}, []
        self.rules, self.moves, self.pairs = set(), [], []
        for line in text.splitlines():
            word, *rest = line.split()
            getattr(self, "_" + word)(rest)

    def _piece(self, row):
        points = [tuple(int(n) * 1e-7 for n in at.split(",")) for at in row[3:]]
        self.pieces.append(Piece(int(row[1]), float(row[2]), points))

    def _node(self, row):
        self.nodes[int(row[0])] = set(row[1:])

    def _place(self, row):
        self.places.append(Place(row[0], (row[1], int(row[2])), ids(row[3]), ids(row[4])))

    def _rule(self, row):
        self.rules.add(int(row[0]))

    def _move(self, row):
        self.moves.append(tuple(map(int, row)))

    def _pair(self, row):
        self.pairs.append(tuple(map(int, row)))


def built(programs, extract, region, folder):
    """Builds an area from the extract; returns its file and the report's file."""
    area = Path(folder) / (Path(extract).name + ".area")
    report = Path(folder) / (Path(extract).name + ".report.json")
    subprocess.run([Path(programs) / "loopwright", "build", extract, "-o", area,
                    "--region", region, "--report", report],
                   check=True, stdout=subprocess.DEVNULL)
    return area, report


def printed(programs, area, pairs=0):
    """The dump of an area, as text."""
    return subprocess.run([Path(programs) / "tests" / "loopwright_dump", area, str(pairs)],
                          check=True, stdout=subprocess.PIPE, text=True).stdout


def dump(programs, area, pairs=0):
    return Dump(printed(programs, area, pairs))
