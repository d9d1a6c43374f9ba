// Method: who is due is found by the last lesson's day; what is kept of the lessons are the columns that accounts need.
#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/book/rights.hpp"

namespace loopwright::book {
namespace {

/// The same day so many months before; of a month without it its last.
Date months_before(Date day, int months) {
  const int all = day.year * 12 + day.month - 1 - months;
  Date before{all / 12, all % 12 + 1, day.day};
  while (before.day > 28 && !read_date(day_text(before))) --before.day;
  return before;
}

/// ?1: the last day that is due. The last lesson's day is that of one driven or planned; without any, when the pupil was
/// put into the book.
constexpr const char* due = R"sql(
SELECT code, last FROM (
  SELECT pupil.id AS id, code, home, coalesce(
    (SELECT max(substr(start, 1, 10)) FROM lesson WHERE pupil = pupil.id AND state <> 'not driven'), added) AS last
  FROM pupil) AS one
WHERE last <= ?1 AND (home <> ''
  OR EXISTS (SELECT 1 FROM tick WHERE tick.pupil = id)
  OR EXISTS (SELECT 1 FROM lesson WHERE lesson.pupil = id AND (wish <> '' OR said <> '' OR remark <> ''
    OR EXISTS (SELECT 1 FROM pass WHERE pass.lesson = lesson.id)
    OR EXISTS (SELECT 1 FROM trace WHERE trace.lesson = lesson.id))))
ORDER BY code
)sql";

constexpr const char* details[] = {"pass",         "road_minutes", "limit_minutes", "fault",
                                   "intervention", "observation",  "goal",          "mock_test",
                                   "trace",        "trace_time",   "to_check"};

void delete_details(Database& db, std::string_view code) {
  const RowKey pupil = row_of_pupil(db, code);
  for (const char* table : details)
    run(db,
        "DELETE FROM " + std::string(table) +
            " WHERE lesson IN (SELECT id FROM lesson WHERE pupil = ?)",
        pupil);
  run(db,
      "UPDATE lesson SET area = '', notes = '', terms = '', wish = '', loop_file = '', likely_s = "
      "0, minutes = NULL, light = '', weather = '', traffic = '', said = '', remark = '', "
      "private_minutes = 0, seen_log = '' WHERE pupil = ?",
      pupil);
  for (const char* table : {"tick", "avoided", "written_file", "proposal"})
    run(db, "DELETE FROM " + std::string(table) + " WHERE pupil = ?", pupil);
  run(db, "UPDATE pupil SET home = '', test_day = NULL, my_your = 0 WHERE id = ?", pupil);
  run(db, "DELETE FROM street_use WHERE pupil = ? AND near_door = 1", pupil);
  // Written anew rather than changed: nobody sees whose a nameless line was, not even who makes it one.
  run(db,
      "INSERT INTO street_use (day, way, node_a, node_b, times, near_door) SELECT day, way, "
      "node_a, "
      "node_b, times, near_door FROM street_use WHERE pupil = ?",
      pupil);
  run(db, "DELETE FROM street_use WHERE pupil = ?", pupil);
}

}  // namespace

std::vector<DuePupil> due_for_purge(const Book& book, Date today, int months) {
  return book.connection().read([&](Database& db) {
    std::vector<DuePupil> all;
    for (auto row = ask(db, due, day_text(months_before(today, months))); row.next();)
      all.push_back({row.at(0).text(), day_in(row.at(1))});
    return all;
  });
}

void purge_pupil(Book& book, std::string_view code) {
  book.connection().write([&](Database& db) { delete_details(db, code); });
  book.connection().leave_no_byte();
}

}  // namespace loopwright::book
