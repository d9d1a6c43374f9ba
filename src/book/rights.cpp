// Erasing: in one transaction the ledger's lines near the door go and the pupil with all that hangs on it; the other
// lines lose their pupil by the foreign key. Then the store sees to it that no byte stays.
#include "loopwright/book/rights.hpp"

#include <nlohmann/json.hpp>

#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::book {
namespace {

using Json = nlohmann::ordered_json;

struct ExportTable {
  const char* name;
  const char* sql;  ///< ?1: the pupil's row
};

/// Every table of the book but `seen` and `centre`, which are of no pupil: a test holds this list to the schema.
constexpr ExportTable tables[] = {
    {"pupil", "SELECT code, scheme, added, home, test_day, my_your FROM pupil WHERE id = ?1"},
    {"tick", "SELECT what, day FROM tick WHERE pupil = ?1 ORDER BY what"},
    {"avoided", "SELECT kind FROM avoided WHERE pupil = ?1 ORDER BY kind"},
    {"lesson",
     "SELECT number, state, start, length_minutes, area, notes, terms, wish, likely_s, minutes, "
     "light, weather, "
     "traffic, said, remark, private_minutes, loop_file FROM lesson WHERE pupil = ?1 ORDER BY "
     "number"},
    {"pass",
     "SELECT number AS lesson, kind, movement, hardness, place, driven, level, help, traced FROM "
     "pass JOIN "
     "lesson ON "
     "lesson.id = pass.lesson WHERE pupil = ?1 ORDER BY number, at"},
    {"road_minutes",
     "SELECT number AS lesson, road, road_minutes.minutes FROM road_minutes JOIN lesson ON "
     "lesson.id = "
     "road_minutes.lesson WHERE pupil = ?1 ORDER BY number, road"},
    {"limit_minutes",
     "SELECT number AS lesson, value, unit, limit_minutes.minutes FROM limit_minutes JOIN lesson "
     "ON lesson.id = limit_minutes.lesson WHERE pupil = ?1 ORDER BY number, unit, value"},
    {"fault",
     "SELECT number AS lesson, heading, grade, count, kind, movement FROM fault JOIN lesson ON "
     "lesson.id = "
     "fault.lesson WHERE pupil = ?1 ORDER BY number, fault.rowid"},
    {"intervention",
     "SELECT number AS lesson, how, count, kind, movement, why FROM intervention JOIN lesson ON "
     "lesson.id = "
     "intervention.lesson WHERE pupil = ?1 ORDER BY number, intervention.rowid"},
    {"observation",
     "SELECT number AS lesson, skill, day, level, observation.said FROM observation JOIN lesson ON "
     "lesson.id = "
     "observation.lesson WHERE pupil = ?1 ORDER BY number, observation.rowid"},
    {"goal",
     "SELECT lesson.number AS lesson, text, reached.number AS reached_in FROM goal JOIN lesson ON "
     "lesson.id = "
     "goal.lesson LEFT JOIN lesson AS reached ON reached.id = goal.reached_in WHERE lesson.pupil = "
     "?1 ORDER BY "
     "lesson.number, goal.rowid"},
    {"mock_test",
     "SELECT number AS lesson, day, driving, serious, dangerous FROM mock_test JOIN lesson ON "
     "lesson.id = "
     "mock_test.lesson WHERE pupil = ?1 ORDER BY number"},
    {"trace",
     "SELECT number AS lesson, trace.start, seconds, standing_s, metres, recording FROM trace JOIN "
     "lesson ON lesson.id = trace.lesson WHERE pupil = ?1 ORDER BY number"},
    {"trace_time",
     "SELECT number AS lesson, control, count, expected_s, took_s FROM trace_time JOIN lesson ON "
     "lesson.id = trace_time.lesson WHERE pupil = ?1 ORDER BY number, control"},
    {"to_check",
     "SELECT number AS lesson, letter, what, object, map_text FROM to_check JOIN lesson ON "
     "lesson.id "
     "= to_check.lesson WHERE pupil = ?1 ORDER BY number, at"},
    {"street_use",
     "SELECT day, way, node_a, node_b, times, near_door FROM street_use WHERE pupil = ?1 ORDER BY "
     "rowid"},
    {"log_entry",
     "SELECT number AS lesson, log_entry.id AS entry, log_entry.state, mark FROM log_entry JOIN "
     "lesson ON lesson.id = log_entry.lesson WHERE pupil = ?1 ORDER BY number, log_entry.rowid"},
    {"proposal", "SELECT day, made, area, mark, says, wish FROM proposal WHERE pupil = ?1"},
    {"written_file",
     "SELECT path, number AS lesson, sha256 FROM written_file LEFT JOIN lesson ON lesson.id = "
     "written_file.lesson WHERE written_file.pupil = ?1 ORDER BY path"},
};

Json value_in(const Column& column) {
  return std::visit(
      [](const auto& value) -> Json {
        if constexpr (std::is_same_v<std::decay_t<decltype(value)>, std::monostate>)
          return nullptr;
        else
          return value;
      },
      column.value());
}

Json rows_of(Database& db, const ExportTable& table, const RowKey& pupil) {
  Json rows = Json::array();
  for (auto row = ask(db, table.sql, pupil); row.next();) {
    Json one = Json::object();
    for (int k = 0; k < row.columns(); ++k) one[row.at(k).name()] = value_in(row.at(k));
    rows.push_back(std::move(one));
  }
  return rows;
}

void delete_rows(Database& db, std::string_view code) {
  const RowKey pupil = row_of_pupil(db, code);
  run(db, "DELETE FROM street_use WHERE pupil = ? AND near_door = 1", pupil);
  run(db, "DELETE FROM pupil WHERE id = ?", pupil);
}

}  // namespace

std::string export_pupil(const Book& book, std::string_view code) {
  return book.connection().read([&](Database& db) {
    const RowKey pupil = row_of_pupil(db, code);
    Json all{{"format", "loopwright-pupil"}, {"version", 1}};
    for (const ExportTable& table : tables) all[table.name] = rows_of(db, table, pupil);
    return all.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
  });
}

void note_written(Book& book, std::string_view code, int number, const WrittenFile& file) {
  book.connection().write([&](Database& db) {
    const RowKey pupil = row_of_pupil(db, code);
    std::optional<RowKey> lesson;
    if (number != 0) lesson = row_of_lesson(db, code, number);
    run(db, "DELETE FROM written_file WHERE path = ? AND (sha256 <> ? OR pupil = ?)",
        file.path.string(), file.sha256, pupil);
    run(db, "INSERT INTO written_file VALUES (?, ?, ?, ?)", file.path.string(), pupil, lesson,
        file.sha256);
  });
}

std::vector<WrittenFile> written_files(const Book& book, std::string_view code) {
  return book.connection().read([&](Database& db) {
    std::vector<WrittenFile> files;
    auto row = ask(db, "SELECT path, sha256 FROM written_file WHERE pupil = ? ORDER BY path",
                   row_of_pupil(db, code));
    while (row.next()) files.push_back({row.at(0).text(), row.at(1).text()});
    return files;
  });
}

std::vector<std::string> others_of_file(const Book& book, std::string_view code,
                                        const std::filesystem::path& path) {
  return book.connection().read([&](Database& db) {
    std::vector<std::string> codes;
    auto row =
        ask(db,
            "SELECT code FROM written_file JOIN pupil ON pupil.id = written_file.pupil WHERE "
            "path = ? AND pupil.id <> ? ORDER BY lower(code)",
            path.string(), row_of_pupil(db, code));
    while (row.next()) codes.push_back(row.at(0).text());
    return codes;
  });
}

void erase_pupil(Book& book, std::string_view code) {
  book.connection().write([&](Database& db) { delete_rows(db, code); });
  book.connection().leave_no_byte();
}

}  // namespace loopwright::book
