// A row that holds what no Loopwright writes, or that can't be read: its owner is told which value of which column, and whoever
// reads many rows may go on with the others.
#pragma once

#include <string>
#include <utility>

#include "book/database.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::book {

/// One row is damaged; those besides it may be whole.
class DamagedRow : public InputError {
 public:
  /// text: with what to do as a rule; wrong: without, for who knows something better.
  DamagedRow(const std::string& text, std::string wrong)
      : InputError(text), wrong_(std::move(wrong)) {}
  explicit DamagedRow(const std::string& wrong) : DamagedRow(wrong, wrong) {}
  [[nodiscard]] const std::string& wrong() const { return wrong_; }

 private:
  std::string wrong_;
};

/// Throws DamagedRow: the column holds what doesn't belong there.
[[noreturn]] void odd_value(const Column& column);

}  // namespace loopwright::book
