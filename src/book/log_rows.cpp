// Method: a log is laid in the place of the planned passes, and lists of rows hang on the lesson. What the logs of a lesson saw on
// the ground bears a name made up for them, which tells of nobody once the lesson is erased: taking the log back takes back
// their sightings, and nobody else's.
#include <algorithm>

#include "book/lesson_rows.hpp"
#include "book/random_name.hpp"
#include "book/rows.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::book {
namespace {

/// The name that the lesson's log has among what was seen; empty when it saw nothing. On a server a look through all that was
/// seen meets everyone who saw something: of a log without a name nobody looks.
std::string seen_log_of(Database& db, const RowKey& lesson) {
  auto row = ask(db, "SELECT seen_log FROM lesson WHERE id = ?", lesson);
  row.next();
  return row.at(0).text();
}

void take_back_seen(Database& db, const RowKey& lesson) {
  const std::string log = seen_log_of(db, lesson);
  if (!log.empty()) run(db, "DELETE FROM seen WHERE log = ?", log);
}

/// A log of an older day doesn't take a later one's place.
void write_seen(Database& db, const RowKey& lesson, const std::vector<SeenFact>& facts) {
  if (facts.empty()) return;
  std::string log = seen_log_of(db, lesson);  // a lesson that is logged once more keeps its name
  if (log.empty()) {
    log = random_name();
    run(db, "UPDATE lesson SET seen_log = ? WHERE id = ?", log, lesson);
  }
  for (const SeenFact& one : facts)
    run(db,
        "INSERT INTO seen (what, object, map_text, day, says, log) VALUES (?, ?, ?, ?, ?, ?) ON "
        "CONFLICT (what, object) DO UPDATE SET map_text = excluded.map_text, day = excluded.day, "
        "says = excluded.says, log = excluded.log WHERE excluded.day >= seen.day",
        one.fact.what, one.fact.object, one.fact.map_text, day_text(one.day), one.says, log);
}

struct WhatColumns {
  std::optional<std::string> kind, movement;
};
WhatColumns columns_of(const std::optional<Practice>& what) {
  if (!what) return {};
  return {std::string(road::name(what->kind)), std::string(road::name(what->movement))};
}

void write_marks(Database& db, const RowKey& lesson, const Log& log) {
  for (const LessonFault& fault : log.faults) {
    const WhatColumns what = columns_of(fault.what);
    run(db, "INSERT INTO fault VALUES (?, ?, ?, ?, ?, ?)", lesson, fault.heading,
        std::string(name(fault.grade)), fault.count, what.kind, what.movement);
  }
  for (const LessonIntervention& stepped_in : log.interventions) {
    const WhatColumns what = columns_of(stepped_in.what);
    run(db, "INSERT INTO intervention VALUES (?, ?, ?, ?, ?, ?)", lesson,
        std::string(name(stepped_in.how)), stepped_in.count, what.kind, what.movement,
        stepped_in.why);
  }
  for (const Observation& seen : log.observations)
    run(db, "INSERT INTO observation VALUES (?, ?, ?, ?, ?)", lesson, seen.skill,
        day_text(seen.day), seen.level, seen.said ? 1 : 0);
}

/// Goals are told by their texts: one of this lesson that was there, since a later lesson reached it, stays reached; those of
/// other lessons of the pupil that this one reached are looked for.
void write_goals(Database& db, const RowKey& lesson, const Log& log) {
  std::vector<std::string> there;
  for (auto row = ask(db, "SELECT text FROM goal WHERE lesson = ?", lesson); row.next();)
    there.push_back(row.at(0).text());
  for (const std::string& goal : there)
    if (std::ranges::find(log.goals, goal) == log.goals.end())
      run(db, "DELETE FROM goal WHERE lesson = ? AND text = ?", lesson, goal);
  for (const std::string& goal : log.goals)
    if (std::ranges::find(there, goal) == there.end())
      run(db, "INSERT INTO goal (lesson, text) VALUES (?, ?)", lesson, goal);
  for (const std::string& goal : log.reached)
    run(db,
        "UPDATE goal SET reached_in = ?1 WHERE text = ?2 AND reached_in IS NULL AND lesson IN "
        "(SELECT id FROM lesson WHERE pupil = (SELECT pupil FROM lesson WHERE id = ?1))",
        lesson, goal);
}

/// True for a pupil of a day's copy.
bool is_taken_along(Database& db, const RowKey& lesson) {
  return ask(db,
             "SELECT 1 FROM pupil WHERE taken_from IS NOT NULL AND id = (SELECT pupil FROM lesson "
             "WHERE id = ?)",
             lesson)
      .next();
}

}  // namespace

std::vector<SeenFact> seen_by(Database& db, const RowKey& lesson) {
  std::vector<SeenFact> facts;
  const std::string log = seen_log_of(db, lesson);
  if (log.empty()) return facts;
  for (auto row = ask(db, "SELECT what, object, map_text, day, says FROM seen WHERE log = ?", log);
       row.next();)
    facts.push_back({{row.at(0).text(), row.at(1).text(), row.at(2).text()},
                     day_in(row.at(3)),
                     row.at(4).text()});
  return facts;
}

void clear_log(Database& db, const RowKey& lesson) {
  clear(db, lesson, {"fault", "intervention", "observation", "mock_test"});
  run(db, "DELETE FROM goal WHERE lesson = ? AND reached_in IS NULL", lesson);
  run(db, "UPDATE goal SET reached_in = NULL WHERE reached_in = ?", lesson);
}

void drop_earlier_drives(Database& db, const RowKey& lesson) {
  run(db,
      "UPDATE lesson SET loop_file = '' WHERE state = 'driven' AND id <> ?1 AND pupil = (SELECT "
      "pupil "
      "FROM lesson WHERE id = ?1)",
      lesson);
}

void write_log(Database& db, const RowKey& lesson, const Log& log) {
  clear(db, lesson, {"pass"});
  run(db,
      "UPDATE lesson SET state = 'driven', minutes = ?, light = ?, weather = ?, "
      "traffic = ?, said "
      "= ?, remark = ?, "
      "private_minutes = ? WHERE id = ?",
      log.minutes, log.conditions.light, log.conditions.weather, log.conditions.traffic, log.said,
      log.remark, log.private_minutes, lesson);
  write_passes(db, lesson, log.passes);
  write_marks(db, lesson, log);
  write_goals(db, lesson, log);
  write_seen(db, lesson, log.seen);
  if (log.mock)
    run(db, "INSERT INTO mock_test VALUES (?, ?, ?, ?, ?)", lesson, day_text(log.mock->day),
        log.mock->faults.driving, log.mock->faults.serious, log.mock->faults.dangerous);
}

void write_not_driven(Database& db, const RowKey& lesson) {
  clear(db, lesson, {"street_use"});
  run(db, "UPDATE lesson SET state = 'not driven' WHERE id = ?", lesson);
}

void write_unlogged(Database& db, const RowKey& lesson,
                    const std::optional<std::vector<LessonPass>>& planned) {
  take_back_seen(db, lesson);
  clear_log(db, lesson);
  clear(db, lesson, {"trace", "trace_time"});
  if (planned) {
    clear(db, lesson, {"pass"});
    write_passes(db, lesson, *planned);
  } else {
    run(db,
        "UPDATE pass SET driven = 0, level = NULL, help = NULL, traced = 0 WHERE lesson = ? AND "
        "place <> ''",
        lesson);
    run(db,
        "DELETE FROM pass WHERE lesson = ? AND (place = '' OR lesson IN (SELECT id FROM lesson "
        "WHERE wish = ''))",
        lesson);
  }
  run(db,
      "DELETE FROM street_use WHERE lesson = ? AND lesson IN (SELECT id FROM lesson WHERE wish = "
      "'')",
      lesson);
  run(db,
      "UPDATE lesson SET state = CASE WHEN wish = '' THEN 'not driven' ELSE 'planned' END, minutes "
      "= NULL, light = '', weather = '', traffic = '', said = '', remark = '', private_minutes = "
      "0, "
      "seen_log = '' WHERE id = ?",
      lesson);
}

void keep_entry(Database& db, const RowKey& lesson) {
  if (is_taken_along(db, lesson))
    run(db, "INSERT INTO log_entry (id, lesson, state, mark) VALUES (?, ?, 'kept', '')",
        random_name(), lesson);
}

}  // namespace loopwright::book
