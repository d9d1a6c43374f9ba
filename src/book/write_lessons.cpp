// Method: each act is one transaction over the rows of a lesson (lesson_rows.hpp).
#include "book/connection.hpp"
#include "book/lesson_rows.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/traced.hpp"

namespace loopwright::book {
namespace {

void write_trace(Database& db, const RowKey& lesson, const Traced& traced) {
  run(db, "INSERT INTO trace VALUES (?, ?, ?, ?, ?, ?)", lesson, write_time(traced.start),
      traced.seconds, traced.standing_s, traced.metres, traced.recording);
  for (const TracedTime& time : traced.times)
    run(db, "INSERT INTO trace_time VALUES (?, ?, ?, ?, ?)", lesson,
        std::string(road::name(time.control)), time.count, time.expected_s, time.took_s);
}

/// Throws when it was driven. then: what is to be said of that.
void need_plan(Database& db, const RowKey& lesson, const char* then) {
  auto row = ask(db, "SELECT state, number FROM lesson WHERE id = ?", lesson);
  row.next();
  if (row.at(0).text() == "driven")
    throw InputError("lesson " + row.at(1).text() + " is driven and logged; " + then);
}

/// Two who plan at once, each not knowing of the other: the first plan stays.
void need_free_start(Database& db, const RowKey& pupil, const Plan& plan) {
  auto row =
      ask(db, "SELECT number FROM lesson WHERE pupil = ? AND start_s = ? AND state = 'planned'",
          pupil, plan.start.unix_s);
  if (!row.next()) return;
  throw InputError("lesson " + row.at(0).text() +
                   " was planned for this start at this moment by somebody else: it stays, and "
                   "nothing is written; 'loopwright lesson list' shows it");
}

/// Another plan in the place of what the lesson has.
void put_plan(Database& db, const RowKey& pupil, const RowKey& lesson, const PlanWithStreets& to) {
  run(db, "UPDATE lesson SET state = 'planned' WHERE id = ?", lesson);
  clear(db, lesson, {"pass", "road_minutes", "limit_minutes", "to_check", "street_use"});
  write_plan(db, lesson, to.plan);
  write_streets(db, pupil, lesson, to.streets);
}

}  // namespace

int plan_lesson(Book& book, std::string_view code, const Plan& plan,
                const std::vector<StreetDriven>& streets) {
  return book.connection().write([&](Database& db) {
    const RowKey pupil = row_of_pupil(db, code);
    need_no_copy(db, pupil);
    need_free_start(db, pupil, plan);
    const RowKey lesson = add_row(db, pupil, plan);
    write_streets(db, pupil, lesson, streets);
    return number_of(db, lesson);
  });
}

void replan_lesson(Book& book, const LessonRead& of, const PlanWithStreets& to) {
  book.connection().write([&](Database& db) {
    const RowKey pupil = row_of_pupil(db, of.code), lesson = row_of_lesson(db, of.code, of.number);
    need_no_copy(db, pupil);
    need_as_read(db, pupil, of.number, of.mark);
    need_plan(db, lesson, "it can't be planned again");
    put_plan(db, pupil, lesson, to);
  });
}

void log_lesson(Book& book, const LessonRead& of, const Log& log) {
  book.connection().write([&](Database& db) {
    const RowKey lesson = row_of_lesson(db, of.code, of.number);
    need_as_read(db, row_of_pupil(db, of.code), of.number, of.mark);
    clear_log(db, lesson);
    write_log(db, lesson, log);
    drop_earlier_drives(db, lesson);
    keep_entry(db, lesson);
  });
}

int log_traced(Book& book, const LessonRead& of, const TracedLesson& lesson) {
  return book.connection().write([&](Database& db) {
    const RowKey pupil = row_of_pupil(db, of.code);
    const RowKey row =
        of.number == 0 ? add_row(db, pupil, lesson.plan) : row_of_lesson(db, of.code, of.number);
    if (of.number != 0) {
      need_as_read(db, pupil, of.number, of.mark);
      clear_log(db, row);
      clear(db, row, {"trace", "trace_time", "street_use", "road_minutes", "limit_minutes"});
      write_roads(db, row, lesson.plan);
      drop_earlier_drives(db, row);
    }
    write_log(db, row, lesson.log);
    write_trace(db, row, lesson.traced);
    write_streets(db, pupil, row, lesson.streets);
    keep_entry(db, row);
    return number_of(db, row);
  });
}

int add_driven_lesson(Book& book, std::string_view code, const Plan& plan, const Log& log) {
  return book.connection().write([&](Database& db) {
    const RowKey lesson = add_row(db, row_of_pupil(db, code), plan);
    write_log(db, lesson, log);
    keep_entry(db, lesson);
    return number_of(db, lesson);
  });
}

void drop_lesson(Book& book, const LessonRead& of) {
  book.connection().write([&](Database& db) {
    const RowKey lesson = row_of_lesson(db, of.code, of.number);
    need_as_read(db, row_of_pupil(db, of.code), of.number, of.mark);
    need_plan(db, lesson, "take that back first ('loopwright lesson unlog')");
    write_not_driven(db, lesson);
    keep_entry(db, lesson);
  });
}

void unlog_lesson(Book& book, const LessonRead& of, const AsPlanned& planned) {
  book.connection().write([&](Database& db) {
    const RowKey pupil = row_of_pupil(db, of.code), lesson = row_of_lesson(db, of.code, of.number);
    need_as_read(db, pupil, of.number, of.mark);
    write_unlogged(db, lesson, planned.passes);
    if (planned.again) put_plan(db, pupil, lesson, *planned.again);
    keep_entry(db, lesson);
  });
}

}  // namespace loopwright::book
