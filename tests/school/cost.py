#!/usr/bin/env python3
"""What a lesson costs a school's server: rows, bytes, the server's log, time. DEVELOPERS.md reckons with it.

    cost.py BUILD AREA [COPIES]

One lesson is planned on the area and logged by the commands. Its rows are then copied, 300 times, as so many lessons would
stand there, so that what a table or an index takes when it is empty counts for little.
"""
import subprocess
import sys
import time

from server import Server, school

build, area = sys.argv[1:3]
copies = int(sys.argv[3]) if len(sys.argv) > 3 else 300
COPY = """
DO $body$
DECLARE
  fresh UUID; one TEXT; rest TEXT;
BEGIN
  FOR k IN 1..%d LOOP
    fresh := gen_random_uuid();
    FOR one, rest IN SELECT table_name, string_agg(quote_ident(column_name), ', ') FILTER (WHERE column_name NOT IN
        ('id', 'number', 'lesson', 'rowid')) FROM information_schema.columns WHERE table_schema = 'public' AND
        table_name <> 'ledger' GROUP BY 1 HAVING bool_or(column_name = 'lesson') OR table_name = 'lesson'
        ORDER BY table_name <> 'lesson' LOOP
      IF one = 'lesson' THEN
        EXECUTE format('INSERT INTO lesson (id, number, %%s) SELECT $1, $2, %%s FROM lesson WHERE number = 1', rest, rest)
          USING fresh, k + 1;
      ELSE
        EXECUTE format('INSERT INTO %%I (lesson, %%s) SELECT $1, %%s FROM %%I WHERE lesson = (SELECT id FROM lesson WHERE '
          'number = 1)', one, rest, rest, one) USING fresh;
      END IF;
    END LOOP;
  END LOOP;
END $body$
"""

with Server("fsync = on\n") as server:
    school(server, f"{build}/loopwright")

    def run(*words):
        start = time.monotonic()
        done = subprocess.run([f"{build}/loopwright", *map(str, words), "--book", server.address("ash")], capture_output=True, text=True)
        if done.returncode:
            raise SystemExit(done.stderr)
        return time.monotonic() - start

    tables = server.sql("SELECT tablename FROM pg_tables WHERE schemaname = 'public'").split()

    def log_bytes():
        return int(server.sql("SELECT pg_current_wal_lsn() - '0/0'"))

    def counted():
        server.sql("VACUUM FULL")
        return ({table: int(server.sql(f"SELECT count(*) FROM {table}")) for table in tables},
                int(server.sql("SELECT sum(pg_total_relation_size(oid)) FROM pg_class WHERE relkind = 'r' AND "
                               "relnamespace = 'public'::regnamespace")))

    run("pupil", "add", "WREN", "--home", "54.2973,2.5988")
    server.sql("CHECKPOINT")
    before = log_bytes()
    plan_s = run("lesson", "plan", "WREN", area, "--start", "2026-11-28T15:00", "--length", "60", "--want", "roundabout=1")
    log_s = run("lesson", "log", "--yes", "WREN", "rest 3; minutes 44")
    written = log_bytes() - before
    rows, size = counted()
    # Files that were written for it stay one each.
    server.sql("DELETE FROM written_file")
    server.sql(COPY % copies)
    more_rows, more = counted()
    added = sorted((((more_rows[table] - rows[table]) / copies, table) for table in tables), reverse=True)
    print(f"a lesson: {sum(count for count, _ in added):.0f} rows, most in "
          + ", ".join(f"{table} {count:.0f}" for count, table in added[:4]))
    print(f"{(more - size) / copies:.0f} bytes in tables and indexes, {written} in the server's log from planning to logged")
    print(f"as a program: planned in {plan_s:.2f} s with the search, logged in {log_s:.2f} s; of {copies + 1} lessons "
          f"'lesson list' takes {run('lesson', 'list', 'WREN'):.2f} s, 'pupil show' {run('pupil', 'show', 'WREN'):.2f} s")
    # The ledger of the last 30 days, to which 50 instructors with 25 lessons a week add: what planning a lesson reads.
    lines = round(50 * 25 * 30 / 7 * (more_rows["street_use"] - rows["street_use"]) / copies)
    server.sql(f"INSERT INTO street_use SELECT to_char(DATE '2026-11-28' - k % 30, 'YYYY-MM-DD'), k % 20000, 1, 2, 1, 0, NULL, NULL "
               f"FROM generate_series(1, {lines}) AS k")
    server.sql("VACUUM ANALYZE street_use")
    print(f"the ledger of 50 instructors' month, {lines} lines, is counted for a plan in "
          f"{run('streets', area, '--today', '2026-11-28'):.2f} s")
