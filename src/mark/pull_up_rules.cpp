// Columns of the table: name | value.
#include "pull_up_rules.hpp"

#include <stdexcept>
#include <string>

#include "loopwright/base/table.hpp"

namespace loopwright::mark {

PullUpRules::PullUpRules() {
  for (const TableRow& row : read_table(rule_text("pull_ups"))) {
    rows_.emplace(row.at(0), number_cell(row, 1));
  }
}

double PullUpRules::at(std::string_view name) const {
  const auto found = rows_.find(name);
  if (found == rows_.end())
    throw std::logic_error("pull_ups.txt has no row '" + std::string(name) + "'");
  return found->second;
}

}  // namespace loopwright::mark
