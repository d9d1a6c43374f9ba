// Rules and numbers that change with law or experience, kept as readable text in src/rules and
// built into the program.
//
//   for (const auto& row : read_table(rule_text("pace"))) use(row[0], row[1]);
//
// Text form: a line is a row; cells are separated by '|' and trimmed; '#' starts a comment that
// runs to the line's end; empty lines don't count.
// Rules: the tables are part of the program, so a missing one or a short row is our own mistake
// (std::logic_error names table and line); users never see it in a tested build.
#pragma once

#include <string_view>
#include <vector>

namespace loopwright {

using TableRow = std::vector<std::string_view>;

/// The whole text of src/rules/<name>.txt.
std::string_view rule_text(std::string_view name);

/// The rows of a table; cells point into the text.
std::vector<TableRow> read_table(std::string_view text);

/// A cell as a number. Throws std::logic_error when it isn't one.
double number_cell(const TableRow& row, std::size_t column);

}  // namespace loopwright
