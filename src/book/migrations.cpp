// The statements that bring a book from each version to the next. A released step is never changed: books were
// made with it. Days are texts "2026-11-28", instants RFC 3339 with their offset, so that anyone can read them.
#include "loopwright/book/migrations.hpp"

#include <array>

namespace loopwright::book {
namespace {

// Pupils, what is ticked off, kept off, seen and aimed at.
constexpr const char* pupils = R"sql(
CREATE TABLE pupil (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE COLLATE NOCASE,
  scheme TEXT NOT NULL,
  added TEXT NOT NULL,
  home TEXT NOT NULL,
  test_day TEXT,
  my_your INTEGER NOT NULL
) STRICT;
CREATE TABLE tick (
  pupil INTEGER NOT NULL REFERENCES pupil ON DELETE CASCADE,
  what TEXT NOT NULL,
  day TEXT NOT NULL,
  PRIMARY KEY (pupil, what)
) STRICT;
CREATE TABLE avoided (
  pupil INTEGER NOT NULL REFERENCES pupil ON DELETE CASCADE,
  kind TEXT NOT NULL,
  PRIMARY KEY (pupil, kind)
) STRICT;
)sql";

// Lessons: the plan, and what came of it.
constexpr const char* lessons = R"sql(
CREATE TABLE lesson (
  id INTEGER PRIMARY KEY,
  pupil INTEGER NOT NULL REFERENCES pupil ON DELETE CASCADE,
  number INTEGER NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('planned', 'driven', 'not driven')),
  start TEXT NOT NULL,
  start_s INTEGER NOT NULL,
  length_minutes INTEGER NOT NULL,
  area TEXT NOT NULL, notes TEXT NOT NULL, terms TEXT NOT NULL,
  wish TEXT NOT NULL,
  loop_file TEXT NOT NULL,
  likely_s REAL NOT NULL,
  minutes INTEGER,
  light TEXT NOT NULL, weather TEXT NOT NULL, traffic TEXT NOT NULL,
  said TEXT NOT NULL,
  remark TEXT NOT NULL,
  private_minutes INTEGER NOT NULL,
  UNIQUE (pupil, number)
) STRICT;
CREATE TABLE pass (
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  at INTEGER NOT NULL,
  kind TEXT NOT NULL, movement TEXT NOT NULL,
  hardness INTEGER NOT NULL,
  place TEXT NOT NULL,
  driven INTEGER NOT NULL,
  level INTEGER CHECK (level BETWEEN 1 AND 5),
  help TEXT,
  PRIMARY KEY (lesson, at)
) STRICT;
CREATE TABLE road_minutes (
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  road TEXT NOT NULL,
  minutes REAL NOT NULL,
  PRIMARY KEY (lesson, road)
) STRICT;
CREATE TABLE fault (
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  heading TEXT NOT NULL,
  grade TEXT NOT NULL,
  count INTEGER NOT NULL,
  kind TEXT, movement TEXT
) STRICT;
CREATE TABLE intervention (
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  how TEXT NOT NULL,
  count INTEGER NOT NULL,
  kind TEXT, movement TEXT,
  why TEXT NOT NULL
) STRICT;
CREATE TABLE observation (
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  skill TEXT NOT NULL,
  day TEXT NOT NULL,
  level INTEGER NOT NULL CHECK (level BETWEEN 1 AND 5),
  said INTEGER NOT NULL
) STRICT;
CREATE TABLE goal (
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  text TEXT NOT NULL,
  reached_in INTEGER REFERENCES lesson ON DELETE SET NULL
) STRICT;
CREATE TABLE mock_test (
  lesson INTEGER PRIMARY KEY REFERENCES lesson ON DELETE CASCADE,
  day TEXT NOT NULL,
  driving INTEGER NOT NULL, serious INTEGER NOT NULL, dangerous INTEGER NOT NULL
) STRICT;
)sql";

// The streets that drives have used, over all pupils; and files that were written for one.
constexpr const char* streets_and_files = R"sql(
CREATE TABLE street_use (
  day TEXT NOT NULL,
  way INTEGER NOT NULL, node_a INTEGER NOT NULL, node_b INTEGER NOT NULL,
  times INTEGER NOT NULL,
  near_door INTEGER NOT NULL,
  pupil INTEGER REFERENCES pupil ON DELETE SET NULL,
  lesson INTEGER REFERENCES lesson ON DELETE SET NULL
) STRICT;
CREATE INDEX street_use_by_day ON street_use (day);
CREATE INDEX street_use_by_lesson ON street_use (lesson);
CREATE INDEX street_use_by_pupil ON street_use (pupil);
CREATE TABLE written_file (
  path TEXT PRIMARY KEY,
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  sha256 TEXT NOT NULL
) STRICT;
)sql";

// A file may hold the lessons of several pupils: one PDF of a day.
constexpr const char* files_of_several = R"sql(
CREATE TABLE written (
  path TEXT NOT NULL,
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  sha256 TEXT NOT NULL,
  PRIMARY KEY (path, lesson)
) STRICT;
INSERT INTO written SELECT path, lesson, sha256 FROM written_file;
DROP TABLE written_file;
ALTER TABLE written RENAME TO written_file;
)sql";

// What a recorded drive told: of each pass, of the lesson, and how long each kind of junction took; the recording itself
// only when asked for.
constexpr const char* traces = R"sql(
ALTER TABLE pass ADD COLUMN traced INTEGER NOT NULL DEFAULT 0;
CREATE TABLE trace (
  lesson INTEGER PRIMARY KEY REFERENCES lesson ON DELETE CASCADE,
  start TEXT NOT NULL,
  seconds REAL NOT NULL, standing_s REAL NOT NULL,
  metres REAL NOT NULL,
  recording TEXT NOT NULL
) STRICT;
CREATE TABLE trace_time (
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  control TEXT NOT NULL,
  count INTEGER NOT NULL,
  expected_s REAL NOT NULL, took_s REAL NOT NULL,
  PRIMARY KEY (lesson, control)
) STRICT;
)sql";

// Which speed limits were driven under: of lessons before it nobody knows.
constexpr const char* limits = R"sql(
CREATE TABLE limit_minutes (
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  value INTEGER NOT NULL,
  unit TEXT NOT NULL,
  minutes REAL NOT NULL,
  PRIMARY KEY (lesson, unit, value)
) STRICT;
)sql";

// What a lesson's sheet asks to look at on the ground, by letter; and what the instructor saw there, which is of no pupil.
constexpr const char* ground = R"sql(
CREATE TABLE to_check (
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  at INTEGER NOT NULL,
  letter TEXT NOT NULL,
  what TEXT NOT NULL, object TEXT NOT NULL, map_text TEXT NOT NULL,
  PRIMARY KEY (lesson, at)
) STRICT;
CREATE TABLE seen (
  what TEXT NOT NULL, object TEXT NOT NULL, map_text TEXT NOT NULL,
  day TEXT NOT NULL,
  says TEXT NOT NULL,
  PRIMARY KEY (what, object)
) STRICT;
)sql";

// A file is of a pupil, and may be of no lesson: all that is kept on one.
constexpr const char* files_of_pupils = R"sql(
CREATE TABLE written (
  path TEXT NOT NULL,
  pupil INTEGER NOT NULL REFERENCES pupil ON DELETE CASCADE,
  lesson INTEGER REFERENCES lesson ON DELETE SET NULL,
  sha256 TEXT NOT NULL,
  PRIMARY KEY (path, pupil)
) STRICT;
INSERT OR REPLACE INTO written SELECT path, pupil, lesson, sha256 FROM written_file JOIN lesson ON lesson.id = lesson;
DROP TABLE written_file;
ALTER TABLE written RENAME TO written_file;
)sql";

// What the ledger counts by; on a school's server it shows the lines of all instructors.
constexpr const char* ledger = R"sql(
CREATE VIEW ledger AS SELECT day, way, node_a, node_b, times, lesson FROM street_use;
)sql";

// Which log saw a thing on the ground, by a name made up for it that tells of nobody; what a day's copy of a school's book
// knows of where it was taken from; logs that are kept in it until they are handed in; and what was proposed in the night.
// `holder` is a login, and empty in a file: statements that look at it are the same in both stores.
constexpr const char* away_from_the_school = R"sql(
ALTER TABLE seen ADD COLUMN log TEXT NOT NULL DEFAULT '';
ALTER TABLE lesson ADD COLUMN seen_log TEXT NOT NULL DEFAULT '';
ALTER TABLE lesson ADD COLUMN taken_from TEXT;
ALTER TABLE lesson ADD COLUMN taken_mark TEXT;
ALTER TABLE pupil ADD COLUMN taken_from TEXT;
ALTER TABLE pupil ADD COLUMN holder TEXT NOT NULL DEFAULT '';
CREATE TABLE log_entry (
  id TEXT PRIMARY KEY,
  lesson INTEGER NOT NULL REFERENCES lesson ON DELETE CASCADE,
  state TEXT NOT NULL CHECK (state IN ('kept', 'handed in', 'set aside')),
  mark TEXT NOT NULL
) STRICT;
CREATE INDEX log_entry_by_lesson ON log_entry (lesson);
CREATE TABLE proposal (
  pupil INTEGER PRIMARY KEY REFERENCES pupil ON DELETE CASCADE,
  day TEXT NOT NULL,
  made TEXT NOT NULL,
  area TEXT NOT NULL,
  mark TEXT NOT NULL,
  says TEXT NOT NULL,
  wish TEXT NOT NULL
) STRICT;
)sql";

// Surroundings of test centres and the hours of tests, from a day on; of no pupil.
constexpr const char* centres_kept = R"sql(
CREATE TABLE centre (
  name TEXT NOT NULL,
  outline TEXT NOT NULL,
  hours TEXT NOT NULL,
  since TEXT NOT NULL,
  PRIMARY KEY (name, since)
) STRICT;
)sql";

// Who keeps a centre in a school: a login, and empty in a file, as `holder` of a pupil.
constexpr const char* centres_of_whom = R"sql(
ALTER TABLE centre ADD COLUMN kept_by TEXT NOT NULL DEFAULT '';
)sql";

constexpr std::array<const char*, 12> steps{
    pupils,       lessons,        streets_and_files, files_of_several, traces,
    limits,       ground,         files_of_pupils,   ledger,           away_from_the_school,
    centres_kept, centres_of_whom};

}  // namespace

std::span<const char* const> migrations() {
  return steps;
}

}  // namespace loopwright::book
