"""`tools/bench page`: ratios of import and queries on real towns and on growing maps, as tables of Markdown.

Reads and builds alternate in one run and their medians are compared, since machines differ and are shared. A whole
command's time holds the start of the program. Pages are those of the area file that the system held after the command
when it held none before (fincore(1)): what was read ahead is counted too. Memory is the largest resident set.
"""
import json
import os
import statistics
import subprocess
import time
from pathlib import Path

import scatter_ids

SHARED = Path("../shared/maps")
PLAN = Path("maps/quillham.plan")
HOME, NAME = "54.29738,2.59972", "Lantern Row"
WISH = ["--minutes", "60", "--start", "2026-11-30T10:00", "--want", "roundabout=3",
        "--want", "mini-roundabout=1"]
PAGE_BYTES = 4096


class Run:
    """One run of a program: seconds, megabytes, and what it printed."""

    def __init__(self, command, allowed=(0,)):
        before = time.perf_counter()
        child = subprocess.Popen(list(map(str, command)), stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        self.out = child.stdout.read().decode()
        told = child.stderr.read().decode()
        _, status, usage = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
        self.s = time.perf_counter() - before
        self.cpu_s = usage.ru_utime + usage.ru_stime
        self.mb = usage.ru_maxrss / 1024
        if child.returncode not in allowed:
            raise SystemExit(f"{' '.join(map(str, command))}: exit {child.returncode}: {told}")


def forget(file):
    """Lets the system forget what it holds of a file."""
    with open(file, "rb") as opened:
        os.fsync(opened.fileno())
        os.posix_fadvise(opened.fileno(), 0, 0, os.POSIX_FADV_DONTNEED)


def pages_held(file):
    held = subprocess.run(["fincore", "--bytes", "--noheadings", "--output", "RES", file],
                          check=True, text=True, stdout=subprocess.PIPE).stdout
    return int(held) // PAGE_BYTES


class Import:
    """Alternating bare reads and builds of one extract."""

    def __init__(self, build, extract, region, area, runs):
        bare = [build / "tests" / "bare_read", extract]
        Run(bare)  # so that the first that counts finds the file in memory too
        reads, builds = [], []
        for _ in range(runs):
            reads.append(Run(bare))
            builds.append(Run([build / "loopwright", "build", extract, "-o", area, "--region", region]))
        self.read_s, self.build_s = (statistics.median(r.s for r in rows) for rows in (reads, builds))
        self.read_cpu_s, self.build_cpu_s = (
            statistics.median(r.cpu_s for r in rows) for rows in (reads, builds))
        self.mb = max(run.mb for run in builds)
        self.extract_mb = os.path.getsize(extract) / 1e6
        self.area_mb = os.path.getsize(area) / 1e6

    def row(self, name):
        return (f"| {name} | {self.extract_mb:.1f} | {self.read_s:.2f} | {self.build_s:.2f} | "
                f"{self.build_s / self.read_s:.1f} | {self.build_cpu_s / max(self.read_cpu_s, 0.001):.1f} | "
                f"{self.mb:.0f} | {self.area_mb:.1f} |")


IMPORT_HEAD = ("| extract | MB | bare read s | build s | build / read | the same of CPU time | peak MB | area MB |\n"
               "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |")


class Queries:
    """Whole commands at one home: seconds, pages of the area, memory."""

    def __init__(self, build, area, folder, home):
        self.rows, self.area = [], area
        program, loops = build / "loopwright", folder / "loops.json"
        start = ["--start", "2026-11-30T10:00"]
        self.ask("near", [program, "near", area, "--home", home, "--want", "roundabout", *start])
        self.ask("first loop", [program, "loops", area, "--home", home, *WISH, "--quick", "-o", loops], (0, 4))
        self.ask("loops", [program, "loops", area, "--home", home, *WISH, "-o", loops], (0, 4))
        self.loops = json.loads(loops.read_text())["loops"]
        self.ask("certificate: every claim checked", [program, "proof", area, loops])
        self.ask("card as text", [program, "card", area, loops, "--format", "text", "-o", folder / "card.txt"])
        self.ask("card as PDF", [program, "card", area, loops, "--format", "pdf", "-o", folder / "card.pdf"])
        self.ask("what the map says at a place", [program, "look", area, home])

    def ask(self, name, command, allowed=(0,)):
        forget(self.area)
        cold = Run(command, allowed)
        pages = pages_held(self.area)
        again = 3 if cold.s < 2 else 1
        warm = statistics.median(Run(command, allowed).s for _ in range(again))
        self.rows.append((name, warm, cold.mb, pages))

    def seconds_of(self, name):
        return next(row[1] for row in self.rows if row[0] == name)

    def print(self):
        print("| command | s | peak MB | pages of the area |\n| --- | ---: | ---: | ---: |")
        for name, seconds, megabytes, pages in self.rows:
            print(f"| {name} | {seconds:.2f} | {megabytes:.0f} | {pages} |")


def singles(build, area, home, name):
    """Milliseconds of single questions to an open area, by name."""
    lines = Run([build / "tests" / "query_times", area, home, name]).out.splitlines()
    return {what: float(ms) for what, ms in (line.split("\t") for line in lines)}


def drawn(build, root, folder, count):
    """So many counties, joined as a country is; drawn anew unless COUNTIES names a folder where they are kept."""
    kept = Path(os.environ.get("COUNTIES", folder))
    extract = kept / f"joined-{count}.osm.pbf"
    if not extract.exists():
        Run([build / "draw-county", root / PLAN, "--map", extract, "--counties", count, "--quiet"])
    return extract


def growth(build, root, folder, counts):
    """The same home in more and more counties; true when it is answered alike in all. Alone a county lacks the roads
    that lead out of it, so that loops are held to those of the first map that has neighbours; `tools/bench search` holds
    a county alone to a hundred that no road joins."""
    print("\n" + IMPORT_HEAD.replace("| extract |", "| counties |"), flush=True)
    told, first, alike = [], None, True
    for count in counts:
        area = folder / f"{count}.area"
        made = Import(build, drawn(build, root, folder, count), "GB-ENG", area, 3 if count <= 10 else 1)
        print(made.row(count), flush=True)
        queries = Queries(build, area, folder, HOME)
        if count > 1:
            first = first or queries
            alike = alike and queries.loops == first.loops
        told.append((count, queries, singles(build, area, HOME, NAME)))
        area.unlink()
    names = list(told[0][2])
    print("\n| counties | loops s | pages | same loops | " + " | ".join(f"{n} ms" for n in names) + " |")
    print("| ---: " * (4 + len(names)) + "|")
    for count, queries, asked in told:
        pages = next(row[3] for row in queries.rows if row[0] == "loops")
        same = "–" if count == 1 else "yes" if queries.loops == first.loops else "NO"
        print(f"| {count} | {queries.seconds_of('loops'):.2f} | {pages} | {same} | "
              + " | ".join(f"{asked[n]:.2f}" for n in names) + " |")
    return alike


def scattered(build, root, folder, count):
    """Queries in so many counties whose ids say nothing of where things lie, as a country's."""
    extract, area = folder / "scattered.osm.pbf", folder / "scattered.area"
    scatter_ids.scatter(drawn(build, root, folder, count), extract)
    Run([build / "loopwright", "build", extract, "-o", area, "--region", "GB-ENG"])
    Queries(build, area, folder, HOME).print()


def real_imports(build, root, folder):
    """Of Newport and the scale tile; returns Newport's area."""
    print(f"{IMPORT_HEAD}", flush=True)
    newport = folder / "newport.area"
    for file, region, area in (("newport-2023.osm.pbf", "GB-WLS", newport),
                               ("scale-tile-2017.osm.pbf", "GB-ENG", folder / "tile.area")):
        if (root / SHARED / file).exists():
            print(Import(build, root / SHARED / file, region, area, 5).row(file), flush=True)
    return newport


def imports(build, root, folder, counts):
    """Imports alone, of so many counties too."""
    real_imports(build, root, folder)
    for count in counts:
        made = Import(build, drawn(build, root, folder, count), "GB-ENG", folder / "joined.area", 3 if count <= 10 else 1)
        print(made.row("1 county" if count == 1 else f"{count} counties"), flush=True)


def run(build, root, folder, counts):
    newport = real_imports(build, root, folder)
    if newport.exists():
        print()
        Queries(build, newport, folder, "51.5877,-2.9984").print()
    return growth(build, root, folder, counts)

