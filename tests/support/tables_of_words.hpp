// Tables of words: our own, and one as a translator's would be.
#pragma once

#include <string>

#include "loopwright/base/table.hpp"
#include "loopwright/say/words.hpp"

namespace loopwright::test {

inline const say::Words& our_words() {
  static const say::Words words;
  return words;
}

/// Our own table with a mark, "x", before each text, as another language would have other words there.
inline std::string foreign_table() {
  std::string table;
  for (const TableRow& row : read_table(rule_text("words"))) {
    table.append(row[0]);
    for (std::size_t i = 1; i < row.size(); ++i) table.append(" | x").append(row[i]);
    table += '\n';
  }
  return table;
}

}  // namespace loopwright::test
