#!/usr/bin/env python3
"""What a lesson, a day's copy and a night's proposals cost a school's server: rows, bytes, the server's log, time. DEVELOPERS.md
reckons with it.

    cost.py BUILD AREA [COPIES]

One lesson is planned on the area and logged by the commands. Its rows are then copied, 300 times, as so many lessons would
stand there, so that what a table or an index takes when it is empty counts for little; but for the loop file, which goes when the
next lesson is logged.
"""
import pathlib
import subprocess
import sys
import tempfile
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
# So many pupils with seven lessons like WREN's first; the seventh is still to come.
COPY_PUPIL = """
DO $body$
DECLARE
  pupil_of UUID; fresh UUID; one TEXT; rest TEXT; of_pupil BOOLEAN;
BEGIN
  FOR k IN 1..%d LOOP
    INSERT INTO pupil (code, scheme, added, home, my_your, holder) SELECT 'C' || k, scheme, added, home, my_your, holder FROM pupil
      WHERE code = 'WREN' RETURNING id INTO pupil_of;
    FOR n IN 1..7 LOOP
      fresh := gen_random_uuid();
      FOR one, rest, of_pupil IN SELECT table_name, string_agg(quote_ident(column_name), ', ') FILTER (WHERE column_name NOT IN
          ('id', 'number', 'lesson', 'pupil', 'rowid')), bool_or(column_name = 'pupil') FROM information_schema.columns WHERE
          table_schema = 'public' AND table_name NOT IN ('ledger', 'log_entry') GROUP BY 1 HAVING bool_or(column_name = 'lesson') OR
          table_name = 'lesson' ORDER BY table_name <> 'lesson' LOOP
        IF one = 'lesson' THEN
          EXECUTE format('INSERT INTO lesson (id, number, pupil, %%s) SELECT $1, $2, $3, %%s FROM lesson JOIN (SELECT id AS wren FROM pupil '
            'WHERE code = ''WREN'') AS her ON pupil = wren WHERE number = 1', rest, rest) USING fresh, n, pupil_of;
        ELSE
          EXECUTE format('INSERT INTO %%I (lesson, %%s%%s) SELECT $1, %%s%%s FROM %%I WHERE lesson = (SELECT lesson.id FROM lesson JOIN pupil ON '
            'pupil.id = pupil WHERE number = 1 AND code = ''WREN'')', one, CASE WHEN of_pupil THEN 'pupil, ' ELSE '' END, rest, CASE WHEN
            of_pupil THEN '$2, ' ELSE '' END, rest, one) USING fresh, pupil_of;
        END IF;
      END LOOP;
    END LOOP;
  END LOOP;
  UPDATE lesson SET state = 'planned', minutes = NULL, loop_file = kept.loop_file FROM kept WHERE number = 7 AND pupil IN (SELECT id FROM pupil WHERE code LIKE 'C%%');
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
    # Files that were written for it stay one each.
    server.sql("DELETE FROM written_file")
    drive = int(server.sql("SELECT length(loop_file) FROM lesson"))
    server.sql("CREATE TABLE kept AS SELECT loop_file FROM lesson; UPDATE lesson SET loop_file = ''")
    rows, size = counted()
    server.sql(COPY % copies)
    more_rows, more = counted()
    added = sorted((((more_rows[table] - rows[table]) / copies, table) for table in tables), reverse=True)
    print(f"a lesson: {sum(count for count, _ in added):.0f} rows, most in "
          + ", ".join(f"{table} {count:.0f}" for count, table in added[:4]))
    print(f"{(more - size) / copies:.0f} bytes in tables and indexes, {written} in the server's log from planning to logged")
    print(f"the drive of the lesson to come, kept until the next is logged: {drive / 1000:.0f} kB of text")
    print(f"as a program: planned in {plan_s:.2f} s with the search, logged in {log_s:.2f} s; of {copies + 1} lessons "
          f"'lesson list' takes {run('lesson', 'list', 'WREN'):.2f} s, 'pupil show' {run('pupil', 'show', 'WREN'):.2f} s")
    # What a day's copy of one instructor, and a night, take: pupils with the record of WREN's first six lessons each.
    pupils = 20
    server.sql(COPY_PUPIL % pupils)
    with tempfile.TemporaryDirectory() as folder:
        copy = f"{folder}/day.book"
        took = run("school", "take", copy)
        for k in range(1, pupils + 1):
            subprocess.run([f"{build}/loopwright", "lesson", "log", f"C{k}", "rest 3; minutes 44", "--lesson", "7", "--yes", "--book", copy],
                           check=True, capture_output=True)
        brought = run("school", "bring", copy)
        handed = int(server.sql("SELECT count(*) FROM log_entry"))
        if handed != pupils:
            raise SystemExit(f"{handed} of {pupils} logs were handed in")
        print(f"a day's copy of {pupils} pupils of seven lessons each: taken along in {took:.2f} s ({pathlib.Path(copy).stat().st_size / pupils / 1000:.0f} kB "
              f"a pupil), one log of each handed in in {brought:.2f} s ({1000 * brought / pupils:.0f} ms a log)")
    server.sql("DELETE FROM pupil WHERE code = 'WREN'")
    night = run("school", "propose", area, "--today", "2026-12-07")
    print(f"a night's proposals: {1000 * night / pupils:.0f} ms a pupil by one worker, in {night:.2f} s")
    # The ledger of the last 30 days, to which 50 instructors with 25 lessons a week add: what planning a lesson reads.
    lines = round(50 * 25 * 30 / 7 * (more_rows["street_use"] - rows["street_use"]) / copies)
    server.sql(f"INSERT INTO street_use SELECT to_char(DATE '2026-11-28' - k % 30, 'YYYY-MM-DD'), k % 20000, 1, 2, 1, 0, NULL, NULL "
               f"FROM generate_series(1, {lines}) AS k")
    server.sql("VACUUM ANALYZE street_use")
    print(f"the ledger of 50 instructors' month, {lines} lines, is counted for a plan in "
          f"{run('streets', area, '--today', '2026-11-28'):.2f} s")
