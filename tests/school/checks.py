"""What the tests of a school have in common: the program run, its words held to what they must be, and what failed told."""
import subprocess
import sys


class Checks:
    def __init__(self, program):
        self.program, self.failed = program, []

    def check(self, what, holds, told=""):
        if not holds:
            self.failed.append(what)
            print(f"FAILED: {what}\n{told}", flush=True)

    def run(self, *words, **more):
        done = subprocess.run([self.program, *map(str, words)], capture_output=True, text=True, check=False, **more)
        return done.returncode, done.stdout, done.stderr

    def done(self, what, *words):
        code, out, err = self.run(*words)
        self.check(what, code == 0, f"exit {code}: {out}{err}")
        return " ".join(out.split())

    def refused(self, what, said, *words):
        """said: what the one line of the error holds."""
        code, out, err = self.run(*words)
        self.check(what, code != 0 and said in err and err.count("\n") == 1, f"exit {code}: {out}{err}")

    def end(self, well):
        print(f"{len(self.failed)} failed" if self.failed else well)
        sys.exit(1 if self.failed else 0)


def planned(server, code, starts):
    """Lessons of a pupil as a plan leaves them, without an area: two passes, a street and a thing to look at. starts: such as
    2026-11-30T09:00."""
    for start in starts:
        server.sql(f"""
WITH one AS (INSERT INTO lesson (pupil, number, state, start, start_s, length_minutes, area, notes, terms, wish, loop_file,
  likely_s, light, weather, traffic, said, remark, private_minutes)
  SELECT id, (SELECT coalesce(max(number), 0) + 1 FROM lesson WHERE pupil = pupil.id), 'planned', '{start}:00+00:00',
    extract(epoch FROM TIMESTAMPTZ '{start}:00+00:00')::BIGINT, 60, '', '', '', 'home 54.2973,2.5988', '{{}}', 2700, '', '', '', '', '', 0
  FROM pupil WHERE code = '{code}' RETURNING id, pupil),
pass AS (INSERT INTO pass SELECT id, at, kind, '', 2, 'way/' || at, 0 FROM one, (VALUES (1, 'zebra'), (2, 'narrow-road')) AS
  two (at, kind)),
fact AS (INSERT INTO to_check SELECT id, 1, 'A', 'limit along', 'way/1', '30 mph' FROM one)
INSERT INTO street_use (day, way, node_a, node_b, times, near_door, pupil, lesson)
  SELECT '{start[:10]}', 7, 1, 2, 1, 0, pupil, id FROM one""")
