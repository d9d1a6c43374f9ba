#include "book/rows.hpp"


#include "loopwright/base/error.hpp"

namespace loopwright::book {
namespace {

[[noreturn]] void odd(const SQLite::Column& column) {
  throw InputError("the book holds '" + column.getString() + "' as " + column.getName() +
                   ", which no Loopwright writes; take your copy of it");
}

}  // namespace

Date day_in(const SQLite::Column& column) {
  const auto day = read_date(column.getString());
  if (!day) odd(column);
  return *day;
}

Instant instant_in(const SQLite::Column& column) {
  const auto time = read_time(column.getString());
  if (!time || !time->offset_s) odd(column);
  return {civil_seconds(time->civil) - *time->offset_s, *time->offset_s};
}

Practice practice_in(const SQLite::Column& kind, const SQLite::Column& movement) {
  const auto of = road::parse_kind(kind.getString());
  if (!of) odd(kind);
  if (movement.getString().empty()) return {*of, road::Movement::none};
  const auto way = road::parse_movement(movement.getString());
  if (!way) odd(movement);
  return {*of, *way};
}

std::int64_t row_of_pupil(SQLite::Database& db, std::string_view code) {
  auto row = ask(db, "SELECT id FROM pupil WHERE code = ?", std::string(code));
  if (row.executeStep()) return row.getColumn(0).getInt64();
  throw InputError("there is no pupil " + std::string(code) +
                   " in the book; 'loopwright pupil list' shows who is");
}

std::int64_t row_of_lesson(SQLite::Database& db, std::string_view code, int number) {
  const std::int64_t pupil = row_of_pupil(db, code);
  auto row = ask(db, "SELECT id FROM lesson WHERE pupil = ? AND number = ?", pupil, number);
  if (row.executeStep()) return row.getColumn(0).getInt64();
  throw InputError(std::string(code) + " has no lesson " + std::to_string(number) +
                   "; 'loopwright lesson list " + std::string(code) + "' shows them");
}

}  // namespace loopwright::book
