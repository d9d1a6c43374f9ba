"""Houses of the raw map: where some stand along a road it may be built up. Key:building, Key:addr:housenumber."""
from collections import defaultdict
from functools import cached_property

CELL_DEG = 0.001
BESIDE_M = 45  # ours: 40 m is beside, and some way between the middle of a house and its wall


class Houses:
    def __init__(self, ground):
        self.ground = ground

    @cached_property
    def by_cell(self):
        cells, places = defaultdict(list), self.ground.map.places
        def keep(tags, node):
            if ("building" in tags or "addr:housenumber" in tags) and node in places:
                at = places[node]
                cells[int(at[0] / CELL_DEG), int(at[1] / CELL_DEG)].append(at)
        for node, tags in self.ground.map.nodes.items():
            keep(tags, node)
        for way in self.ground.map.ways.values():
            for node in way.nodes:
                keep(way.tags, node)
        return cells

    def stand_beside(self, drive, i):
        """Some house stands within 45 m of a stretch."""
        places = [self.ground.at(n) for n in drive.nodes[i]]
        (south, west), (north, east) = (tuple(f(p[k] for p in places) for k in (0, 1)) for f in (min, max))
        rows = range(int(south / CELL_DEG) - 1, int(north / CELL_DEG) + 2)
        columns = range(int(west / CELL_DEG) - 1, int(east / CELL_DEG) + 2)
        return any(drive.off(i, at) <= BESIDE_M for row in rows for column in columns
                   for at in self.by_cell.get((row, column), ()))
