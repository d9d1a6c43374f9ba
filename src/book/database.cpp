#include "book/database.hpp"

#include <cassert>
#include <limits>

#include "book/damaged.hpp"
#include "loopwright/base/printable.hpp"

namespace loopwright::book {

void odd_value(const Column& column) {
  constexpr std::size_t shown = 40;
  const std::string wrong = "the book holds '" + printable(column.text().substr(0, shown)) +
                            "' as " + column.name() + ", which no Loopwright writes";
  throw DamagedRow(wrong + "; take your copy of it", wrong);
}

std::string Column::text() const {
  if (const auto* text = std::get_if<std::string>(value_)) return *text;
  if (const auto* number = std::get_if<std::int64_t>(value_)) return std::to_string(*number);
  if (const auto* number = std::get_if<double>(value_)) return std::to_string(*number);
  return {};
}

std::int64_t Column::wide_number() const {
  if (const auto* number = std::get_if<std::int64_t>(value_)) return *number;
  odd_value(*this);
}

int Column::number() const {
  const std::int64_t wide = wide_number();
  if (wide < std::numeric_limits<int>::min() || wide > std::numeric_limits<int>::max())
    odd_value(*this);
  return static_cast<int>(wide);
}

double Column::real() const {
  if (const auto* number = std::get_if<double>(value_)) return *number;
  return static_cast<double>(wide_number());
}

bool Rows::next() {
  if (row_ * names_.size() >= values_.size()) return false;
  ++row_;
  return true;
}

Column Rows::at(int k) const {
  const auto column = static_cast<std::size_t>(k);
  assert(row_ > 0 && column < names_.size());
  return {names_[column], values_[(row_ - 1) * names_.size() + column]};
}

std::vector<Value> Rows::values() const {
  std::vector<Value> all;
  for (int k = 0; k < columns(); ++k) all.push_back(at(k).value());
  return all;
}

std::optional<int> number_or_none(const Column& column) {
  if (column.is_null()) return std::nullopt;
  return column.number();
}

}  // namespace loopwright::book
