"""What the audit read so far, over all long runs: a table that each run adds to while it goes on."""
import fcntl
from collections import Counter
from datetime import date

HEAD = """# What tools/long audit read so far, over all its runs, which add to it: each map's loops, millions of claims,
# differences (explained and mended since, unless a closing note tells of them as open), wishes thrown, wishes met,
# last day.
"""
COLUMNS = ("loops", "claims", "differences", "wishes", "met")
MILLION = 1_000_000


def read(text):
    """Each map's counts and its last day."""
    rows = {}
    for line in text.splitlines():
        if line.startswith("#") or not line.strip():
            continue
        name, loops, claims, differences, wishes, met, day = (cell.strip() for cell in line.split("|"))
        rows[name] = (Counter(loops=int(loops), claims=round(float(claims) * MILLION), differences=int(differences),
                              wishes=int(wishes), met=int(met)), day)
    return rows


def written(rows):
    return HEAD + "".join(
        f"{name:32} | {counts['loops']:6} | {counts['claims'] / MILLION:8.3f} | {counts['differences']:3} | "
        f"{counts['wishes']:6} | {counts['met']:6} | {day}\n" for name, (counts, day) in sorted(rows.items()))


def add(table, name, more):
    """Adds counts to a map's row. Two runs may do so at once."""
    with open(table, "a+", encoding="utf-8") as file:
        fcntl.flock(file, fcntl.LOCK_EX)
        file.seek(0)
        rows = read(file.read())
        counts = rows.get(name, (Counter(), ""))[0]
        rows[name] = (counts + more, date.today().isoformat())
        file.seek(0)
        file.truncate()
        file.write(written(rows))
