#include "book/rows.hpp"

#include "book/damaged.hpp"

namespace loopwright::book {

Date day_in(const Column& column) {
  const auto day = read_date(column.text());
  if (!day) odd_value(column);
  return *day;
}

Instant instant_in(const Column& column) {
  const auto time = read_time(column.text());
  if (!time || !time->offset_s) odd_value(column);
  return {civil_seconds(time->civil) - *time->offset_s, *time->offset_s};
}

Practice practice_in(const Column& kind, const Column& movement) {
  const auto of = road::parse_kind(kind.text());
  if (!of) odd_value(kind);
  if (movement.text().empty()) return {*of, road::Movement::none};
  const auto way = road::parse_movement(movement.text());
  if (!way) odd_value(movement);
  return {*of, *way};
}

RowKey row_of_pupil(Database& db, std::string_view code) {
  auto row = ask(db, "SELECT id FROM pupil WHERE lower(code) = lower(?)", std::string(code));
  if (row.next()) return row.at(0).key();
  throw InputError("there is no pupil " + std::string(code) +
                   " in the book; 'loopwright pupil list' shows who is");
}

RowKey row_of_lesson(Database& db, std::string_view code, int number) {
  const RowKey pupil = row_of_pupil(db, code);
  auto row = ask(db, "SELECT id FROM lesson WHERE pupil = ? AND number = ?", pupil, number);
  if (row.next()) return row.at(0).key();
  throw InputError(std::string(code) + " has no lesson " + std::to_string(number) +
                   "; 'loopwright lesson list " + std::string(code) + "' shows them");
}

}  // namespace loopwright::book
