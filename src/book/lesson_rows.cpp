// Method: what a plan writes is here, what a log writes in log_rows.cpp. What is written anew is first taken away; a lesson that is
// just added has nothing to take away, and isn't looked through: on a server such a look meets everyone who adds one.
#include "book/lesson_rows.hpp"

#include "book/rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/record_mark.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::book {
namespace {

int next_number(Database& db, const RowKey& pupil) {
  auto row = ask(db, "SELECT coalesce(max(number), 0) + 1 FROM lesson WHERE pupil = ?", pupil);
  row.next();
  return row.at(0).number();
}

void write_to_check(Database& db, const RowKey& lesson, const std::vector<LetteredFact>& facts) {
  int at = 0;
  for (const LetteredFact& one : facts)
    run(db, "INSERT INTO to_check VALUES (?, ?, ?, ?, ?, ?)", lesson, ++at, one.letter,
        one.fact.what, one.fact.object, one.fact.map_text);
}

}  // namespace

void clear(Database& db, const RowKey& lesson, std::initializer_list<std::string_view> tables) {
  for (const std::string_view table : tables)
    run(db, "DELETE FROM " + std::string(table) + " WHERE lesson = ?", lesson);
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

void write_roads(Database& db, const RowKey& lesson, const Plan& plan) {
  for (const Plan::Road& road : plan.roads)
    run(db, "INSERT INTO road_minutes VALUES (?, ?, ?)", lesson, road.name, road.minutes);
  for (const Plan::Limit& limit : plan.limits)
    run(db, "INSERT INTO limit_minutes VALUES (?, ?, ?, ?)", lesson, limit.value,
        std::string(name(limit.unit)), limit.minutes);
}

void write_streets(Database& db, const RowKey& pupil, const RowKey& lesson,
                   const std::vector<StreetDriven>& streets) {
  auto day = ask(db, "SELECT substr(start, 1, 10) FROM lesson WHERE id = ?", lesson);
  day.next();
  for (const StreetDriven& street : streets)
    run(db, "INSERT INTO street_use VALUES (?, ?, ?, ?, ?, ?, ?, ?)", day.at(0).text(), street.way,
        street.node_a, street.node_b, street.times, street.near_door ? 1 : 0, pupil, lesson);
}

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

void need_as_read(Database& db, const RowKey& pupil, int number, std::string_view mark) {
  if (mark.empty()) return;
  const Lesson now = read_lesson(db, pupil, number);
  if (mark_of(now) == mark) return;
  const std::string which = "lesson " + std::to_string(number);
  if (now.state == LessonState::driven)
    throw InputError(which +
                     " was logged at this moment by somebody else: that log stays, and nothing is "
                     "written; 'loopwright lesson list' shows it, log it anew if it isn't right");
  throw InputError(which +
                   " was planned anew, moved or taken out at this moment by somebody else: that "
                   "stays, and nothing is written; look at it ('loopwright lesson list') and try "
                   "again");
}

void need_no_copy(Database& db, const RowKey& pupil) {
  if (!ask(db, "SELECT 1 FROM pupil WHERE id = ? AND taken_from IS NOT NULL", pupil).next()) return;
  throw InputError(
      "this is a day's copy of a school's book: lessons are logged in it; what else is to change "
      "is "
      "changed in the school's book, when it can be reached");
}

}  // namespace loopwright::book
