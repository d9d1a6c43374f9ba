"""`tools/bench search`: how fast the search answers and how good its answers are, beside the targets.

Runs tests/bench/search_times.cpp on two maps and prints a line a wish, then a line a target: what was
measured, and MET or MISSED. Times at an effort count when its answer is there: a gap "within 2 s" is
the closest that any effort reached in that time.
"""
import dataclasses
import os
import statistics
import subprocess
from pathlib import Path

HERE = Path(__file__).resolve().parent
WISHES = HERE / "search_wishes.txt"
COUNTIES = 100


@dataclasses.dataclass
class Effort:
    name: str
    ms: float
    value: int | None
    bound: int | None
    state: str

    def gap(self):
        """Per cent by which a better loop could be better, at most; none without a bound or of a value
        that is no sum of passes (less the metres driven twice)."""
        if self.value is None or self.value <= 0 or self.bound is None:
            return None
        return 100 * (self.bound - self.value) / self.value

    def told_gap(self):
        if self.value is None or self.bound is None:
            return "-"
        return f"{self.bound - self.value} m" if self.gap() is None else f"{self.gap():.0f}%"


@dataclasses.dataclass
class Wish:
    name: str
    minutes: int
    kind: str  # "counts" or "max"
    candidates: int
    sweep_ms: float
    loops: str
    efforts: list = dataclasses.field(default_factory=list)

    def found(self):
        return self.efforts[0].value is not None

    def certificate(self):
        """The first effort that proves the best, else the last one."""
        proved = [effort for effort in self.efforts if effort.state == "best possible"]
        return proved[0] if proved else self.efforts[-1]

    def proved_ms(self):
        known = self.certificate()
        return known.ms if known.state == "best possible" else float("inf")

    def gap_within(self, ms):
        gaps = [e.gap() for e in self.efforts if e.ms <= ms and e.gap() is not None]
        return min(gaps, default=float("inf"))


@dataclasses.dataclass
class Area:
    name: str
    states: int = 0
    memory_kb: int = 0
    wishes: list = dataclasses.field(default_factory=list)


def number(cell):
    return None if cell == "-" else int(cell)


def timed(program, area_file, name, *how):
    """What search_times found in an area."""
    told = subprocess.run([program, area_file, WISHES, name, *how], check=True, text=True,
                          stdout=subprocess.PIPE).stdout
    area = Area(name)
    for line in told.splitlines():
        what, *cells = line.split("\t")
        if what == "area":
            area.states = int(cells[0])
        elif what == "wish":
            area.wishes.append(Wish(cells[0], int(cells[1]), cells[2], int(cells[3]),
                                    float(cells[4]), cells[6]))
        elif what == "effort":
            area.wishes[-1].efforts.append(
                Effort(cells[0], float(cells[1]), number(cells[2]), number(cells[3]), cells[4]))
        elif what == "memory":
            area.memory_kb = int(cells[0])
    return area


def print_area(area):
    sweep = statistics.median(wish.sweep_ms for wish in area.wishes)
    print(f"\n{area.name}: {area.states} states, a plain sweep {sweep:.2f} ms; times in ms, and in "
          "sweeps (x)")
    print(f"{'wish':25} min cand  first      x   certif.     x    value    bound    gap state")
    for wish in area.wishes:
        first, known = wish.efforts[0], wish.certificate()
        print(f"{wish.name:25} {wish.minutes:3} {max(wish.candidates, 0):4} {first.ms:6.0f} "
              f"{first.ms / wish.sweep_ms:6.0f} {known.ms:9.0f} {known.ms / wish.sweep_ms:5.0f} "
              f"{'-' if known.value is None else known.value:>8} "
              f"{'-' if known.bound is None else known.bound:>8} "
              f"{known.told_gap():>6} {known.state}")


class Targets:
    def __init__(self):
        self.missed = 0

    def row(self, what, measured, met):
        """A target and what was measured; met None: nothing to measure it on, or not measured here."""
        only_hoped = what.startswith("  ambition")
        mark = {True: "met", False: "not reached" if only_hoped else "MISSED", None: "-"}[met]
        self.missed += met is False and not only_hoped
        print(f"  {what:54} {measured:>17}  {mark}")

    def least_share(self, what, values, most, share):
        """So large a share of the values must be at most `most`."""
        within = sum(value <= most for value in values)
        self.row(what, f"{within} of {len(values)}", within >= share * len(values) if values else None)

    def median(self, what, values, most, unit):
        middle = statistics.median(values) if values else None
        measured = "none such" if middle is None else \
            "half have none" if middle == float("inf") else f"{middle:.2f} {unit}"
        self.row(what, measured, None if middle is None else middle <= most)


def print_targets(areas):
    targets = Targets()
    print("\nTargets, and what was measured in this run:")
    for area in areas:
        print(f" {area.name}")
        found = [wish for wish in area.wishes if wish.found()]
        targets.row("wishes with a loop", f"{len(found)} of {len(area.wishes)}", None)
        first = [wish.efforts[0].ms for wish in area.wishes]
        targets.least_share("first loops within 300 ms, nine in ten", first, 300, 0.9)
        targets.least_share("  ambition: within 100 ms", first, 100, 0.9)
        counts = [wish for wish in found if wish.kind == "counts"]
        targets.row("counts only, proved the best possible",
                    f"{sum(w.proved_ms() < float('inf') for w in counts)} of {len(counts)}", None)
        few = [w.proved_ms() / 1000 for w in counts if w.candidates <= 80]
        targets.median("counts only, to 80 candidates: proved, median 1 s", few, 1, "s")
        targets.least_share("counts only, to 80: proved in 5 s, nine in ten", few, 5, 0.9)
        more = [w.proved_ms() / 1000 for w in counts if w.candidates <= 120]
        targets.median("counts only, to 120 candidates: proved, median 5 s", more, 5, "s")
        most = [wish for wish in found if wish.kind == "max"]
        targets.least_share("max: a bound within 1 s, gap at most 25 %",
                            [w.gap_within(1000) for w in most], 25, 1)
        targets.least_share("max: within 10 s at most 15 %, nine in ten",
                            [w.gap_within(10000) for w in most], 15, 0.9)
        targets.median("  ambition: median gap 5 % at 2 s",
                       [w.gap_within(2000) for w in most], 5, "%")
        targets.median("  ambition: median gap 2 % at 10 s",
                       [w.gap_within(10000) for w in most], 2, "%")
        targets.least_share("  ambition: a third of max wishes proved",
                            [w.proved_ms() for w in most], 1e9, 1 / 3)
        memory = area.memory_kb / 1000
        targets.row("memory beyond the mapped area, under 300 MB", f"{memory:.0f} MB", memory < 300)
    return targets


def print_many_counties(targets, one, many):
    """The same homes in one county and among a hundred that no road joins, so that as much is in
    reach: only what is found first, the same way."""
    print(f" the county among {COUNTIES} ({one.states} and {many.states} states)")
    same = sum(a.loops == b.loops for a, b in zip(one.wishes, many.wishes))
    targets.row("same loops", f"{same} of {len(one.wishes)}", same == len(one.wishes))
    ratios = [b.efforts[0].ms / a.efforts[0].ms for a, b in zip(one.wishes, many.wishes)]
    ratio = statistics.median(ratios)
    targets.row("time within 20 %, median of the wishes", f"{100 * (ratio - 1):+.0f} %", ratio <= 1.2)


def built(loopwright, extract, region, to):
    subprocess.run([loopwright, "build", extract, "-o", to, "--region", region], check=True,
                   stdout=subprocess.DEVNULL)
    return to


def run(build, root, newport, folder):
    """Prints the table. Returns the number of targets missed."""
    loopwright, program = build / "loopwright", build / "tests" / "search_times"
    load = os.getloadavg()[0]
    print(f"{os.cpu_count()} cores, load {load:.1f} at the start"
          + ("" if load < 0.5 else ": others were at work, so times are too long"))
    county = built(loopwright, root / "maps" / "quillham.osm.pbf", "GB-ENG", folder / "county.area")
    areas = [timed(program, county, "county")]
    if newport.exists():
        areas.append(timed(program, built(loopwright, newport, "GB-WLS", folder / "newport.area"),
                           "newport"))
    else:
        print(f"newport: no {newport}, so the county alone")
    for area in areas:
        print_area(area)
    targets = print_targets(areas)
    subprocess.run([build / "draw-county", root / "maps" / "quillham.plan", "--map",
                    folder / "many.osm.pbf", "--counties", str(COUNTIES), "--apart", "--quiet"],
                   check=True)
    many = built(loopwright, folder / "many.osm.pbf", "GB-ENG", folder / "many.area")
    # One straight after the other, so that both meet the same load.
    print_many_counties(targets, timed(program, county, "county", "quick"),
                        timed(program, many, "county", "quick"))
    print(" not timed here: small cases against a general solver, published instances (tools/test);\n"
          " properties on random wishes (tools/long wishes 5000)")
    return targets.missed
