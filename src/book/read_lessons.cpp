// Method: the rows of a lesson, then the lists that hang on it, each in the order in which it was written.
#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"

namespace loopwright::book {
namespace {

/// An enum by the name that stands in a column.
template <class Enum>
Enum named_in(const SQLite::Column& column, std::optional<Enum> (*parse)(std::string_view)) {
  if (const auto value = parse(column.getString())) return *value;
  throw InputError("the book holds '" + column.getString() + "' as " + column.getName() +
                   ", which no Loopwright writes; take your copy of it");
}

std::optional<Practice> what_in(SQLite::Statement& row, int kind) {
  if (row.getColumn(kind).isNull()) return std::nullopt;
  return practice_in(row.getColumn(kind), row.getColumn(kind + 1));
}

std::vector<LessonPass> passes_of(SQLite::Database& db, std::int64_t lesson) {
  std::vector<LessonPass> passes;
  auto row = ask(db,
                 "SELECT kind, movement, hardness, place, driven, level, help, traced FROM pass "
                 "WHERE lesson = ? "
                 "ORDER BY at",
                 lesson);
  while (row.executeStep()) {
    LessonPass pass{practice_in(row.getColumn(0), row.getColumn(1)), row.getColumn(2).getInt(),
                    row.getColumn(3).getString(), row.getColumn(4).getInt() != 0,
                    number_or_none(row.getColumn(5))};
    if (!row.getColumn(6).isNull()) pass.help = named_in(row.getColumn(6), parse_help);
    pass.traced = row.getColumn(7).getInt() != 0;
    passes.push_back(std::move(pass));
  }
  return passes;
}

void read_marks(SQLite::Database& db, std::int64_t lesson, Log& log) {
  for (auto row = ask(db,
                      "SELECT heading, grade, count, kind, movement FROM fault WHERE lesson = ? "
                      "ORDER BY rowid",
                      lesson);
       row.executeStep();)
    log.faults.push_back({row.getColumn(0).getString(), named_in(row.getColumn(1), parse_grade),
                          row.getColumn(2).getInt(), what_in(row, 3)});
  for (auto row = ask(db,
                      "SELECT how, count, kind, movement, why FROM intervention WHERE lesson = ? "
                      "ORDER BY rowid",
                      lesson);
       row.executeStep();)
    log.interventions.push_back({named_in(row.getColumn(0), parse_intervention),
                                 row.getColumn(1).getInt(), what_in(row, 2),
                                 row.getColumn(4).getString()});
  for (auto row = ask(
           db, "SELECT skill, day, level, said FROM observation WHERE lesson = ? ORDER BY rowid",
           lesson);
       row.executeStep();)
    log.observations.push_back({row.getColumn(0).getString(), day_in(row.getColumn(1)),
                                row.getColumn(2).getInt(), row.getColumn(3).getInt() != 0});
}

void read_goals(SQLite::Database& db, std::int64_t lesson, Log& log) {
  for (auto row = ask(db, "SELECT text FROM goal WHERE lesson = ? ORDER BY rowid", lesson);
       row.executeStep();)
    log.goals.push_back(row.getColumn(0).getString());
  for (auto row = ask(db, "SELECT text FROM goal WHERE reached_in = ? ORDER BY rowid", lesson);
       row.executeStep();)
    log.reached.push_back(row.getColumn(0).getString());
  auto mock =
      ask(db, "SELECT day, driving, serious, dangerous FROM mock_test WHERE lesson = ?", lesson);
  if (mock.executeStep())
    log.mock = MockTest{
        day_in(mock.getColumn(0)),
        {mock.getColumn(1).getInt(), mock.getColumn(2).getInt(), mock.getColumn(3).getInt()}};
}

Plan read_plan(SQLite::Database& db, SQLite::Statement& row) {
  Plan plan{.start = instant_in(row.getColumn(3)),
            .length_minutes = row.getColumn(4).getInt(),
            .area = row.getColumn(5).getString(),
            .notes = row.getColumn(6).getString(),
            .terms = row.getColumn(7).getString(),
            .wish = row.getColumn(8).getString(),
            .loop_file = {},
            .likely_s = row.getColumn(9).getDouble(),
            .passes = {},
            .roads = {},
            .limits = {}};
  auto road = ask(db, "SELECT road, minutes FROM road_minutes WHERE lesson = ? ORDER BY rowid",
                  row.getColumn(0).getInt64());
  while (road.executeStep())
    plan.roads.push_back({road.getColumn(0).getString(), road.getColumn(1).getDouble()});
  auto limit = ask(db,
                   "SELECT value, unit, minutes FROM limit_minutes WHERE lesson = ? ORDER BY unit, "
                   "value",
                   row.getColumn(0).getInt64());
  while (limit.executeStep())
    plan.limits.push_back({limit.getColumn(0).getInt(),
                           named_in(limit.getColumn(1), parse_speed_unit),
                           limit.getColumn(2).getDouble()});
  auto check =
      ask(db, "SELECT letter, what, object, map_text FROM to_check WHERE lesson = ? ORDER BY at",
          row.getColumn(0).getInt64());
  while (check.executeStep())
    plan.to_check.push_back({check.getColumn(0).getString(),
                             {check.getColumn(1).getString(), check.getColumn(2).getString(),
                              check.getColumn(3).getString()}});
  return plan;
}

/// All but the loop file.
Lesson read_lesson(SQLite::Database& db, SQLite::Statement& row) {
  const std::int64_t id = row.getColumn(0).getInt64();
  Lesson lesson{row.getColumn(1).getInt(),
                named_in(row.getColumn(2), parse_lesson_state),
                read_plan(db, row),
                {}};
  lesson.log.minutes = number_or_none(row.getColumn(10));
  lesson.log.conditions = {row.getColumn(11).getString(), row.getColumn(12).getString(),
                           row.getColumn(13).getString()};
  lesson.log.said = row.getColumn(14).getString();
  lesson.log.remark = row.getColumn(15).getString();
  lesson.log.private_minutes = row.getColumn(16).getInt();
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
  return book.connection().read([&](SQLite::Database& db) {
    std::vector<Lesson> lessons;
    for (auto row = ask(db, lessons_of_pupil, row_of_pupil(db, code), 0); row.executeStep();)
      lessons.push_back(read_lesson(db, row));
    return lessons;
  });
}

Lesson lesson_of(const Book& book, std::string_view code, int number) {
  return book.connection().read([&](SQLite::Database& db) {
    const std::int64_t id = row_of_lesson(db, code, number);
    auto row = ask(db, lessons_of_pupil, row_of_pupil(db, code), number);
    row.executeStep();
    Lesson lesson = read_lesson(db, row);
    auto loop = ask(db, "SELECT loop_file FROM lesson WHERE id = ?", id);
    loop.executeStep();
    lesson.plan.loop_file = loop.getColumn(0).getString();
    return lesson;
  });
}

}  // namespace loopwright::book
