#!/usr/bin/env python3
"""What a lesson costs a school's server: rows, bytes, log, time. Printed; DEVELOPERS.md reckons with it.

    cost.py BUILD AREA [LESSONS]

Each lesson is planned on the area, with the ledger over all before it, and logged; as commands do it, a program each.
"""
import statistics
import subprocess
import sys
import time

from server import Server, school

build, area = sys.argv[1:3]
lessons = int(sys.argv[3]) if len(sys.argv) > 3 else 20
program = f"{build}/loopwright"
with Server("fsync = on\n") as server:
    school(server, program)
    book = ["--book", server.address("ash")]

    def run(*words):
        start = time.monotonic()
        done = subprocess.run([program, *map(str, words), *book], capture_output=True, text=True)
        if done.returncode:
            raise SystemExit(done.stderr)
        return time.monotonic() - start

    tables = server.sql("SELECT tablename FROM pg_tables WHERE schemaname = 'public'").split()

    def counted():
        server.sql("VACUUM ANALYZE")
        rows = {table: int(server.sql(f"SELECT count(*) FROM {table}")) for table in tables}
        size = int(server.sql("SELECT sum(pg_total_relation_size(oid)) FROM pg_class WHERE relkind = 'r' AND "
                              "relnamespace = 'public'::regnamespace"))
        return rows, size, int(server.sql("SELECT pg_current_wal_lsn() - '0/0'"))

    run("pupil", "add", "WREN", "--home", "54.2973,2.5988")
    before, size, log = counted()
    plans, logs = [], []
    for k in range(lessons):
        day = f"2026-{10 + k // 28:02}-{k % 28 + 1:02}"
        plans.append(run("lesson", "plan", "WREN", area, "--start", f"{day}T15:00", "--length", "60", "--want", "roundabout=1"))
        logs.append(run("lesson", "log", "WREN", "rest 3; minutes 44"))
    shown = run("pupil", "show", "WREN")
    after, larger, later = counted()
    print(f"{lessons} lessons, each planned and logged:")
    added = sorted((((after[table] - before[table]) / lessons, table) for table in tables), reverse=True)
    print(f"rows a lesson: {sum(count for count, _ in added):.0f}; most in "
          + ", ".join(f"{table} {count:.0f}" for count, table in added[:4]))
    print(f"bytes a lesson in tables and indexes: {(larger - size) / lessons:.0f}; in the server's log: {(later - log) / lessons:.0f}")
    print(f"seconds in the middle, as a program: plan {statistics.median(plans):.2f}, log {statistics.median(logs):.2f}, "
          f"pupil show with {lessons} lessons {shown:.2f}")
