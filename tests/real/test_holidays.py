#!/usr/bin/python3
"""Our bank holidays (src/rules/bank_holidays.txt) against the npm package date-holidays, 2024 to
2030, for the four nations and Ireland. Every difference must be one that is explained here.

Usage: test_holidays.py BUILD_FOLDER"""
import os
import pathlib
import subprocess
import sys

from hours_told import tell

HERE = pathlib.Path(__file__).parent
TABLE = HERE.parent.parent / "src" / "rules" / "bank_holidays.txt"

ST_ANDREW = "St Andrew's Day Bank Holiday (Scotland) Act 2007, s. 1: on a weekend the Monday instead"
ST_PATRICK = "Banking and Financial Dealings Act 1971, sch. 1 para 3, and GOV.UK's list: the substitute"
BOYNE = "yearly proclamation under the 1971 Act, GOV.UK's list: on a weekend the substitute only"
PROCLAIMED = "Royal Proclamation given on 3 February 2026 (Scottish Government, news of 5 February 2026)"
EXPLAINED = {
    ("GB-SCT", "2026-06-15"): PROCLAIMED,
    ("GB-SCT", "2024-11-30"): ST_ANDREW, ("GB-SCT", "2025-11-30"): ST_ANDREW,
    ("GB-SCT", "2030-11-30"): ST_ANDREW,
    ("GB-NIR", "2024-03-17"): ST_PATRICK, ("GB-NIR", "2029-03-17"): ST_PATRICK,
    ("GB-NIR", "2030-03-17"): ST_PATRICK,
    ("GB-NIR", "2025-07-12"): BOYNE, ("GB-NIR", "2026-07-12"): BOYNE,
}


def ours():
    days = set()
    for line in TABLE.read_text().splitlines():
        line = line.split("#")[0]
        if "|" not in line:
            continue
        day, regions, _name = (cell.strip() for cell in line.split("|"))
        days |= {(region, day) for region in regions.split() if "2024" <= day[:4] <= "2030"}
    return days


def theirs(build):
    environment = dict(os.environ, TZ="UTC", NODE_PATH=str(build / "npm" / "node_modules"))
    out = subprocess.run(["node", HERE / "holidays_npm.cjs"], env=environment, check=True,
                         capture_output=True, text=True).stdout
    return {tuple(line.split("\t")[:2]) for line in out.splitlines()}


def main():
    mine, package = ours(), theirs(pathlib.Path(sys.argv[1]))
    differ = mine ^ package
    lines = [f"bank holidays 2024 to 2030: {len(mine)} ours, {len(package)} date-holidays', "
             f"{len(mine & package)} the same, {len(differ)} differ"]
    for region, day in sorted(differ):
        where = "ours alone" if (region, day) in mine else "date-holidays alone"
        lines.append(f"  {region} {day}: {where}: {EXPLAINED.get((region, day), 'NOT EXPLAINED')}")
    tell(pathlib.Path(sys.argv[1]), "holidays", lines)
    stale = set(EXPLAINED) - differ
    if stale:
        print("explained, but no longer different:", sorted(stale))
    return 1 if stale or differ - set(EXPLAINED) else 0


sys.exit(main())
