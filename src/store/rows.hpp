// Finding the first row of a column that is not as it should be.
//
//   first.note(bad_row("turns", turns, "points outside another column", fits));
//
// Rules: private to store.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "loopwright/road/roads.hpp"

namespace loopwright::store {

using Columns = road::Columns<road::View>;
using Fault = std::optional<std::string>;

/// The first of several faults.
class FirstFault {
 public:
  void note(Fault fault) {
    if (!fault_) fault_ = std::move(fault);
  }
  [[nodiscard]] const Fault& fault() const { return fault_; }

 private:
  Fault fault_;
};

/// The first row for which `fits` is false: "row 7 of 'turns' " and `what`.
template <class Row, class Fits>
Fault bad_row(std::string_view name, road::View<Row> rows, std::string_view what, Fits fits) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (fits(rows[i])) continue;
    return "row " + std::to_string(i) + " of '" + std::string(name) + "' " + std::string(what);
  }
  return std::nullopt;
}

}  // namespace loopwright::store
