// Method: the rows of a lesson, then the lists that hang on it, each in the order in which it was written.
#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"

namespace loopwright::book {
namespace {

/// An enum by the name that stands in a column.
template <class Enum>
Enum named_in(const Column& column, std::optional<Enum> (*parse)(std::string_view)) {
  if (const auto value = parse(column.text())) return *value;
  throw InputError("the book holds '" + column.text() + "' as " + column.name() +
                   ", which no Loopwright writes; take your copy of it");
}

std::optional<Practice> what_in(Rows& row, int kind) {
  if (row.at(kind).is_null()) return std::nullopt;
  return practice_in(row.at(kind), row.at(kind + 1));
}

std::vector<LessonPass> passes_of(Database& db, const RowKey& lesson) {
  std::vector<LessonPass> passes;
  auto row = ask(db,
                 "SELECT kind, movement, hardness, place, driven, level, help, traced FROM pass "
                 "WHERE lesson = ? "
                 "ORDER BY at",
                 lesson);
  while (row.next()) {
    LessonPass pass{practice_in(row.at(0), row.at(1)), row.at(2).number(), row.at(3).text(),
                    row.at(4).number() != 0, number_or_none(row.at(5))};
    if (!row.at(6).is_null()) pass.help = named_in(row.at(6), parse_help);
    pass.traced = row.at(7).number() != 0;
    passes.push_back(std::move(pass));
  }
  return passes;
}

void read_marks(Database& db, const RowKey& lesson, Log& log) {
  for (auto row = ask(db,
                      "SELECT heading, grade, count, kind, movement FROM fault WHERE lesson = ? "
                      "ORDER BY rowid",
                      lesson);
       row.next();)
    log.faults.push_back(
        {row.at(0).text(), named_in(row.at(1), parse_grade), row.at(2).number(), what_in(row, 3)});
  for (auto row = ask(db,
                      "SELECT how, count, kind, movement, why FROM intervention WHERE lesson = ? "
                      "ORDER BY rowid",
                      lesson);
       row.next();)
    log.interventions.push_back({named_in(row.at(0), parse_intervention), row.at(1).number(),
                                 what_in(row, 2), row.at(4).text()});
  for (auto row = ask(
           db, "SELECT skill, day, level, said FROM observation WHERE lesson = ? ORDER BY rowid",
           lesson);
       row.next();)
    log.observations.push_back(
        {row.at(0).text(), day_in(row.at(1)), row.at(2).number(), row.at(3).number() != 0});
}

void read_goals(Database& db, const RowKey& lesson, Log& log) {
  for (auto row = ask(db, "SELECT text FROM goal WHERE lesson = ? ORDER BY rowid", lesson);
       row.next();)
    log.goals.push_back(row.at(0).text());
  for (auto row = ask(db, "SELECT text FROM goal WHERE reached_in = ? ORDER BY rowid", lesson);
       row.next();)
    log.reached.push_back(row.at(0).text());
  auto mock =
      ask(db, "SELECT day, driving, serious, dangerous FROM mock_test WHERE lesson = ?", lesson);
  if (mock.next())
    log.mock = MockTest{day_in(mock.at(0)),
                        {mock.at(1).number(), mock.at(2).number(), mock.at(3).number()}};
}

Plan read_plan(Database& db, Rows& row) {
  Plan plan{.start = instant_in(row.at(3)),
            .length_minutes = row.at(4).number(),
            .area = row.at(5).text(),
            .notes = row.at(6).text(),
            .terms = row.at(7).text(),
            .wish = row.at(8).text(),
            .loop_file = {},
            .likely_s = row.at(9).real(),
            .passes = {},
            .roads = {},
            .limits = {}};
  auto road = ask(db, "SELECT road, minutes FROM road_minutes WHERE lesson = ? ORDER BY rowid",
                  row.at(0).key());
  while (road.next()) plan.roads.push_back({road.at(0).text(), road.at(1).real()});
  auto limit = ask(db,
                   "SELECT value, unit, minutes FROM limit_minutes WHERE lesson = ? ORDER BY unit, "
                   "value",
                   row.at(0).key());
  while (limit.next())
    plan.limits.push_back(
        {limit.at(0).number(), named_in(limit.at(1), parse_speed_unit), limit.at(2).real()});
  auto check =
      ask(db, "SELECT letter, what, object, map_text FROM to_check WHERE lesson = ? ORDER BY at",
          row.at(0).key());
  while (check.next())
    plan.to_check.push_back(
        {check.at(0).text(), {check.at(1).text(), check.at(2).text(), check.at(3).text()}});
  return plan;
}

/// All but the loop file.
Lesson read_lesson(Database& db, Rows& row) {
  const RowKey id = row.at(0).key();
  Lesson lesson{
      row.at(1).number(), named_in(row.at(2), parse_lesson_state), read_plan(db, row), {}};
  lesson.log.minutes = number_or_none(row.at(10));
  lesson.log.conditions = {row.at(11).text(), row.at(12).text(), row.at(13).text()};
  lesson.log.said = row.at(14).text();
  lesson.log.remark = row.at(15).text();
  lesson.log.private_minutes = row.at(16).number();
  (lesson.state == LessonState::driven ? lesson.log.passes : lesson.plan.passes) =
      passes_of(db, id);
  read_marks(db, id, lesson.log);
  read_goals(db, id, lesson.log);
  return lesson;
}

constexpr const char* lessons_of_pupil =
    "SELECT id, number, state, start, length_minutes, area, notes, terms, wish, likely_s, minutes, "
    "light, weather, "
    "traffic, said, remark, private_minutes FROM lesson WHERE pupil = ?1 AND (?2 = 0 OR number = "
    "?2) ORDER BY number";

}  // namespace

std::vector<Lesson> lessons_of(const Book& book, std::string_view code) {
  return book.connection().read([&](Database& db) {
    std::vector<Lesson> lessons;
    for (auto row = ask(db, lessons_of_pupil, row_of_pupil(db, code), 0); row.next();)
      lessons.push_back(read_lesson(db, row));
    return lessons;
  });
}

Lesson lesson_of(const Book& book, std::string_view code, int number) {
  return book.connection().read([&](Database& db) {
    const RowKey id = row_of_lesson(db, code, number);
    auto row = ask(db, lessons_of_pupil, row_of_pupil(db, code), number);
    row.next();
    Lesson lesson = read_lesson(db, row);
    auto loop = ask(db, "SELECT loop_file FROM lesson WHERE id = ?", id);
    loop.next();
    lesson.plan.loop_file = loop.at(0).text();
    return lesson;
  });
}

}  // namespace loopwright::book
