// Method: the rows of the lessons, then each table of what hangs on them, once for all of them: on a server a question
// costs its way there and back. Lists are in the order in which they were written.
#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "book/connection.hpp"
#include "book/damaged.hpp"
#include "book/lesson_rows.hpp"
#include "book/rows.hpp"
#include "loopwright/book/lessons.hpp"

namespace loopwright::book {
namespace {

/// An enum by the name that stands in a column.
template <class Enum>
Enum named_in(const Column& column, std::optional<Enum> (*parse)(std::string_view)) {
  if (const auto value = parse(column.text())) return *value;
  odd_value(column);
}

std::optional<Practice> what_in(Rows& row, int kind) {
  if (row.at(kind).is_null()) return std::nullopt;
  return practice_in(row.at(kind), row.at(kind + 1));
}

/// A pupil's lessons, or one of them.
class Reading {
 public:
  /// number: 0 for all.
  Reading(Database& db, RowKey pupil, int number)
      : db_(db), pupil_(std::move(pupil)), number_(number) {
    read_rows();
    read_plans();
    read_passes();
    read_marks();
    read_goals();
  }
  /// By number.
  [[nodiscard]] std::vector<Lesson> taken() { return std::move(lessons_); }

 private:
  static constexpr std::string_view whose =
      " WHERE lesson.pupil = ?1 AND (?2 = 0 OR lesson.number = ?2) ORDER BY lesson.number";

  /// Behind each row's lesson, by number, its columns. by: the column that names the lesson.
  Rows of(std::string_view table, std::string_view columns, std::string_view order,
          std::string_view by = "lesson") {
    const std::string name(table);
    return ask(db_,
               "SELECT lesson.number, " + std::string(columns) + " FROM " + name +
                   " JOIN lesson ON lesson.id = " + name + "." + std::string(by) +
                   std::string(whose) + ", " + name + "." + std::string(order),
               pupil_, number_);
  }

  Lesson& lesson_in(const Rows& row) {
    return *std::lower_bound(
        lessons_.begin(), lessons_.end(), row.at(0).number(),
        [](const Lesson& lesson, int number) { return lesson.number < number; });
  }

  /// All but the loop file.
  void read_rows() {
    for (auto row = ask(db_,
                        "SELECT number, state, start, length_minutes, area, notes, terms, wish, "
                        "likely_s, minutes, light, weather, traffic, said, remark, "
                        "private_minutes FROM lesson" +
                            std::string(whose),
                        pupil_, number_);
         row.next();) {
      Lesson& lesson = lessons_.emplace_back();
      lesson.number = row.at(0).number();
      lesson.state = named_in(row.at(1), parse_lesson_state);
      lesson.plan = {.start = instant_in(row.at(2)),
                     .length_minutes = row.at(3).number(),
                     .area = row.at(4).text(),
                     .notes = row.at(5).text(),
                     .terms = row.at(6).text(),
                     .wish = row.at(7).text(),
                     .loop_file = {},
                     .likely_s = row.at(8).real(),
                     .passes = {},
                     .roads = {},
                     .limits = {}};
      lesson.log.minutes = number_or_none(row.at(9));
      lesson.log.conditions = {row.at(10).text(), row.at(11).text(), row.at(12).text()};
      lesson.log.said = row.at(13).text();
      lesson.log.remark = row.at(14).text();
      lesson.log.private_minutes = row.at(15).number();
    }
  }

  void read_plans() {
    for (auto row = of("road_minutes", "road, road_minutes.minutes", "rowid"); row.next();)
      lesson_in(row).plan.roads.push_back({row.at(1).text(), row.at(2).real()});
    for (auto row = of("limit_minutes", "value, unit, limit_minutes.minutes", "unit, value");
         row.next();)
      lesson_in(row).plan.limits.push_back(
          {row.at(1).number(), named_in(row.at(2), parse_speed_unit), row.at(3).real()});
    for (auto row = of("to_check", "letter, what, object, map_text", "at"); row.next();)
      lesson_in(row).plan.to_check.push_back(
          {row.at(1).text(), {row.at(2).text(), row.at(3).text(), row.at(4).text()}});
  }

  void read_passes() {
    for (auto row =
             of("pass", "kind, movement, hardness, place, driven, level, help, traced", "at");
         row.next();) {
      LessonPass pass{practice_in(row.at(1), row.at(2)), row.at(3).number(), row.at(4).text(),
                      row.at(5).number() != 0, number_or_none(row.at(6))};
      if (!row.at(7).is_null()) pass.help = named_in(row.at(7), parse_help);
      pass.traced = row.at(8).number() != 0;
      Lesson& lesson = lesson_in(row);
      (lesson.state == LessonState::driven ? lesson.log.passes : lesson.plan.passes)
          .push_back(std::move(pass));
    }
  }

  void read_marks() {
    for (auto row = of("fault", "heading, grade, count, kind, movement", "rowid"); row.next();)
      lesson_in(row).log.faults.push_back({row.at(1).text(), named_in(row.at(2), parse_grade),
                                           row.at(3).number(), what_in(row, 4)});
    for (auto row = of("intervention", "how, count, kind, movement, why", "rowid"); row.next();)
      lesson_in(row).log.interventions.push_back({named_in(row.at(1), parse_intervention),
                                                  row.at(2).number(), what_in(row, 3),
                                                  row.at(5).text()});
    for (auto row = of("observation", "skill, day, level, observation.said", "rowid"); row.next();)
      lesson_in(row).log.observations.push_back(
          {row.at(1).text(), day_in(row.at(2)), row.at(3).number(), row.at(4).number() != 0});
  }

  void read_goals() {
    // Of a lesson whose log was taken back the goals stay that a later one reached: they aren't its own until it is logged.
    for (auto row = of("goal", "text", "rowid"); row.next();)
      if (Lesson& lesson = lesson_in(row); lesson.state == LessonState::driven)
        lesson.log.goals.push_back(row.at(1).text());
    for (auto row = of("goal", "text", "rowid", "reached_in"); row.next();)
      lesson_in(row).log.reached.push_back(row.at(1).text());
    for (auto row = of("mock_test", "day, driving, serious, dangerous", "day"); row.next();)
      lesson_in(row).log.mock =
          MockTest{day_in(row.at(1)), {row.at(2).number(), row.at(3).number(), row.at(4).number()}};
  }

  Database& db_;
  RowKey pupil_;
  int number_;
  std::vector<Lesson> lessons_;
};

}  // namespace

std::vector<Lesson> read_lessons(Database& db, const RowKey& pupil) {
  return Reading(db, pupil, 0).taken();
}

Lesson read_lesson(Database& db, const RowKey& pupil, int number) {
  return Reading(db, pupil, number).taken().at(0);
}

std::vector<Lesson> lessons_of(const Book& book, std::string_view code) {
  return book.connection().read(
      [&](Database& db) { return read_lessons(db, row_of_pupil(db, code)); });
}

Lesson lesson_of(const Book& book, std::string_view code, int number) {
  return book.connection().read([&](Database& db) {
    const RowKey id = row_of_lesson(db, code, number);
    Lesson lesson = read_lesson(db, row_of_pupil(db, code), number);
    auto loop = ask(db, "SELECT loop_file FROM lesson WHERE id = ?", id);
    loop.next();
    lesson.plan.loop_file = loop.at(0).text();
    return lesson;
  });
}

}  // namespace loopwright::book
