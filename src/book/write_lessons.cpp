// Method: a lesson is a row, and lists of rows that hang on it; what is written anew is first taken away. A lesson that is just
// added has nothing to take away, and isn't looked through: on a server such a look meets everyone who adds one.
#include <initializer_list>
#include <string_view>

#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/traced.hpp"

namespace loopwright::book {
namespace {

int next_number(Database& db, const RowKey& pupil) {
  auto row = ask(db, "SELECT coalesce(max(number), 0) + 1 FROM lesson WHERE pupil = ?", pupil);
  row.next();
  return row.at(0).number();
}

void write_passes(Database& db, const RowKey& lesson, const std::vector<LessonPass>& passes) {
  int at = 0;
  for (const LessonPass& pass : passes) {
    std::optional<std::string> help;
    if (pass.help) help = std::string(name(*pass.help));
    run(db, "INSERT INTO pass VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", lesson, ++at,
        std::string(road::name(pass.what.kind)), std::string(road::name(pass.what.movement)),
        pass.hardness, pass.place, pass.driven ? 1 : 0, pass.level, help, pass.traced ? 1 : 0);
  }
}

void write_streets(Database& db, const RowKey& pupil, const RowKey& lesson,
                   const std::vector<StreetDriven>& streets) {
  auto day = ask(db, "SELECT substr(start, 1, 10) FROM lesson WHERE id = ?", lesson);
  day.next();
  for (const StreetDriven& street : streets)
    run(db, "INSERT INTO street_use VALUES (?, ?, ?, ?, ?, ?, ?, ?)", day.at(0).text(), street.way,
        street.node_a, street.node_b, street.times, street.near_door ? 1 : 0, pupil, lesson);
}

void write_roads(Database& db, const RowKey& lesson, const Plan& plan) {
  for (const Plan::Road& road : plan.roads)
    run(db, "INSERT INTO road_minutes VALUES (?, ?, ?)", lesson, road.name, road.minutes);
  for (const Plan::Limit& limit : plan.limits)
    run(db, "INSERT INTO limit_minutes VALUES (?, ?, ?, ?)", lesson, limit.value,
        std::string(name(limit.unit)), limit.minutes);
}

void write_to_check(Database& db, const RowKey& lesson, const std::vector<LetteredFact>& facts) {
  int at = 0;
  for (const LetteredFact& one : facts)
    run(db, "INSERT INTO to_check VALUES (?, ?, ?, ?, ?, ?)", lesson, ++at, one.letter,
        one.fact.what, one.fact.object, one.fact.map_text);
}

/// A log of an older day doesn't take a later one's place.
void write_seen(Database& db, const std::vector<SeenFact>& facts) {
  for (const SeenFact& one : facts)
    run(db,
        "INSERT INTO seen VALUES (?, ?, ?, ?, ?) ON CONFLICT (what, object) DO UPDATE SET map_text "
        "= excluded.map_text, day = excluded.day, says = excluded.says WHERE excluded.day >= "
        "seen.day",
        one.fact.what, one.fact.object, one.fact.map_text, day_text(one.day), one.says);
}

void clear(Database& db, const RowKey& lesson, std::initializer_list<std::string_view> tables) {
  for (const std::string_view table : tables)
    run(db, "DELETE FROM " + std::string(table) + " WHERE lesson = ?", lesson);
}

/// The plan's values in a row that is there, and has no lists.
void write_plan(Database& db, const RowKey& lesson, const Plan& plan) {
  run(db,
      "UPDATE lesson SET start = ?, start_s = ?, length_minutes = ?, area = ?, notes = ?, terms = "
      "?, wish = ?, "
      "loop_file = ?, likely_s = ? WHERE id = ?",
      write_time(plan.start), plan.start.unix_s, plan.length_minutes, plan.area, plan.notes,
      plan.terms, plan.wish, plan.loop_file, plan.likely_s, lesson);
  write_roads(db, lesson, plan);
  write_passes(db, lesson, plan.passes);
  write_to_check(db, lesson, plan.to_check);
}

RowKey add_row(Database& db, const RowKey& pupil, const Plan& plan) {
  auto row =
      ask(db,
          "INSERT INTO lesson (pupil, number, state, start, start_s, length_minutes, area, notes, "
          "terms, wish, "
          "loop_file, likely_s, light, weather, traffic, said, remark, private_minutes) "
          "VALUES (?, ?, 'planned', '', 0, 0, '', '', '', '', '', 0, '', '', '', '', '', 0) "
          "RETURNING id",
          pupil, next_number(db, pupil));
  row.next();
  const RowKey lesson = row.at(0).key();
  write_plan(db, lesson, plan);
  return lesson;
}

int number_of(Database& db, const RowKey& lesson) {
  auto row = ask(db, "SELECT number FROM lesson WHERE id = ?", lesson);
  row.next();
  return row.at(0).number();
}

void clear_log(Database& db, const RowKey& lesson) {
  clear(db, lesson, {"fault", "intervention", "observation", "goal", "mock_test"});
  run(db, "UPDATE goal SET reached_in = NULL WHERE reached_in = ?", lesson);
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

/// Goals are told by their texts, so those of another lesson of the pupil are looked for.
void write_goals(Database& db, const RowKey& lesson, const Log& log) {
  for (const std::string& goal : log.goals)
    run(db, "INSERT INTO goal (lesson, text) VALUES (?, ?)", lesson, goal);
  for (const std::string& goal : log.reached)
    run(db,
        "UPDATE goal SET reached_in = ?1 WHERE text = ?2 AND reached_in IS NULL AND lesson IN "
        "(SELECT id FROM "
        "lesson WHERE pupil = (SELECT pupil FROM lesson WHERE id = ?1))",
        lesson, goal);
}

/// A drive that is over isn't printed again, and its loop file gives the door away: it goes with the pupil's next log. Until
/// then the log may be a mistake that is taken back.
void drop_earlier_drives(Database& db, const RowKey& lesson) {
  run(db,
      "UPDATE lesson SET loop_file = '' WHERE state = 'driven' AND id <> ?1 AND pupil = (SELECT "
      "pupil "
      "FROM lesson WHERE id = ?1)",
      lesson);
}

/// In the place of the planned passes, of a lesson without a log.
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
  write_seen(db, log.seen);
  if (log.mock)
    run(db, "INSERT INTO mock_test VALUES (?, ?, ?, ?, ?)", lesson, day_text(log.mock->day),
        log.mock->faults.driving, log.mock->faults.serious, log.mock->faults.dangerous);
}

void write_trace(Database& db, const RowKey& lesson, const Traced& traced) {
  run(db, "INSERT INTO trace VALUES (?, ?, ?, ?, ?, ?)", lesson, write_time(traced.start),
      traced.seconds, traced.standing_s, traced.metres, traced.recording);
  for (const TracedTime& time : traced.times)
    run(db, "INSERT INTO trace_time VALUES (?, ?, ?, ?, ?)", lesson,
        std::string(road::name(time.control)), time.count, time.expected_s, time.took_s);
}

/// Throws when it was driven.
void need_plan(Database& db, const RowKey& lesson) {
  auto row = ask(db, "SELECT state, number FROM lesson WHERE id = ?", lesson);
  row.next();
  if (row.at(0).text() == "driven")
    throw InputError("lesson " + row.at(1).text() +
                     " is driven and logged; it can't be planned again");
}

}  // namespace

int plan_lesson(Book& book, std::string_view code, const Plan& plan,
                const std::vector<StreetDriven>& streets) {
  return book.connection().write([&](Database& db) {
    const RowKey pupil = row_of_pupil(db, code), lesson = add_row(db, pupil, plan);
    write_streets(db, pupil, lesson, streets);
    return number_of(db, lesson);
  });
}

void replan_lesson(Book& book, std::string_view code, int number, const Plan& plan,
                   const std::vector<StreetDriven>& streets) {
  book.connection().write([&](Database& db) {
    const RowKey lesson = row_of_lesson(db, code, number);
    need_plan(db, lesson);
    run(db, "UPDATE lesson SET state = 'planned' WHERE id = ?", lesson);
    clear(db, lesson, {"pass", "road_minutes", "limit_minutes", "to_check", "street_use"});
    write_plan(db, lesson, plan);
    write_streets(db, row_of_pupil(db, code), lesson, streets);
  });
}

void log_lesson(Book& book, std::string_view code, int number, const Log& log) {
  book.connection().write([&](Database& db) {
    const RowKey lesson = row_of_lesson(db, code, number);
    clear_log(db, lesson);
    write_log(db, lesson, log);
    drop_earlier_drives(db, lesson);
  });
}

int log_traced(Book& book, std::string_view code, int number, const TracedLesson& lesson) {
  return book.connection().write([&](Database& db) {
    const RowKey pupil = row_of_pupil(db, code);
    const RowKey row =
        number == 0 ? add_row(db, pupil, lesson.plan) : row_of_lesson(db, code, number);
    if (number != 0) {
      clear_log(db, row);
      clear(db, row, {"trace", "trace_time", "street_use", "road_minutes", "limit_minutes"});
      write_roads(db, row, lesson.plan);
      drop_earlier_drives(db, row);
    }
    write_log(db, row, lesson.log);
    write_trace(db, row, lesson.traced);
    write_streets(db, pupil, row, lesson.streets);
    return number_of(db, row);
  });
}

int add_driven_lesson(Book& book, std::string_view code, const Plan& plan, const Log& log) {
  return book.connection().write([&](Database& db) {
    const RowKey lesson = add_row(db, row_of_pupil(db, code), plan);
    write_log(db, lesson, log);
    return number_of(db, lesson);
  });
}

void drop_lesson(Book& book, std::string_view code, int number) {
  book.connection().write([&](Database& db) {
    const RowKey lesson = row_of_lesson(db, code, number);
    need_plan(db, lesson);
    run(db, "DELETE FROM street_use WHERE lesson = ?", lesson);
    run(db, "UPDATE lesson SET state = 'not driven' WHERE id = ?", lesson);
  });
}

void unlog_lesson(Book& book, std::string_view code, int number) {
  book.connection().write([&](Database& db) {
    const RowKey lesson = row_of_lesson(db, code, number);
    // What was seen on its day is asked for again: another lesson's sheet may have seen it, too, but that isn't known.
    run(db,
        "DELETE FROM seen WHERE day = (SELECT substr(start, 1, 10) FROM lesson WHERE id = ?1) AND "
        "EXISTS (SELECT 1 FROM to_check WHERE lesson = ?1 AND to_check.what = seen.what AND "
        "to_check.object = seen.object)",
        lesson);
    run(db,
        "UPDATE pass SET driven = 0, level = NULL, help = NULL, traced = 0 WHERE lesson = ? AND "
        "place <> ''",
        lesson);
    run(db, "DELETE FROM pass WHERE lesson = ? AND place = ''", lesson);
    clear_log(db, lesson);
    clear(db, lesson, {"trace", "trace_time"});
    run(db,
        "DELETE FROM street_use WHERE lesson = ? AND lesson IN (SELECT id FROM lesson WHERE wish = "
        "'')",
        lesson);
    run(db,
        "UPDATE lesson SET state = CASE WHEN wish = '' THEN 'not driven' ELSE 'planned' END, "
        "minutes "
        "= NULL, light = '', weather = '', traffic = '', said = '', remark = '', private_minutes = "
        "0 "
        "WHERE id = ?",
        lesson);
  });
}

}  // namespace loopwright::book
