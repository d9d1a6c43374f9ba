// libFuzzer: any bytes as lines to put in the place of lines of our own table of words.
//
// 1. A table is refused, or a card can be spoken with it.
// 2. A line that begins with a key of ours takes the place of that row; others are added. Else no
//    input would ever have all the rows a table needs.
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"
#include "town.hpp"
#include "town_loop.hpp"
#include "trial.hpp"
#include "verbs.hpp"

namespace {

using namespace loopwright;

/// Our rows by key, some replaced by the lines of the text.
std::string table_with(std::string_view text) {
  std::map<std::string_view, std::string_view> rows;
  for (const std::string_view all : {rule_text("words"), text})
    for (const std::string_view line : split(all, '\n'))
      rows[trim(line.substr(0, line.find('|')))] = line;
  std::string table;
  for (const auto& [key, line] : rows) table.append(line).append("\n");
  return table;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const std::string words = fuzz::scratch_file("words.txt", table_with(text)).string();
  fuzz::run_verb(
      {"card", fuzz::town_area().string(), fuzz::town_loop().string(), "--words", words});
  return 0;
}
