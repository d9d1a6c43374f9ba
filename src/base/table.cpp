// Method:
// 1. Cut the text into lines, and each line at '#'.
// 2. Skip what is empty then; cut the rest at '|' and trim the cells.
// rule_text is in the file that src/rules/embed.cmake writes at build time.
#include "loopwright/base/table.hpp"

#include <stdexcept>
#include <string>

#include "loopwright/base/text.hpp"

namespace loopwright {
namespace {

std::string row_text(const TableRow& row) {
  std::string text;
  for (const std::string_view cell : row) text.append(text.empty() ? "" : " | ").append(cell);
  return text;
}

}  // namespace

std::vector<TableRow> read_table(std::string_view text) {
  std::vector<TableRow> rows;
  for (const std::string_view line : split(text, '\n')) {
    const std::string_view content = trim(line.substr(0, line.find('#')));
    if (!content.empty()) rows.push_back(split(content, '|'));
  }
  return rows;
}

double number_cell(const TableRow& row, std::size_t column) {
  const std::string where = " in table row '" + row_text(row) + "'";
  if (column >= row.size()) {
    throw std::logic_error("no column " + std::to_string(column + 1) + where);
  }
  const std::optional<double> number = read_number(row[column]);
  if (!number) throw std::logic_error("'" + std::string(row[column]) + "' is no number" + where);
  return *number;
}

}  // namespace loopwright
