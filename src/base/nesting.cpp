// Brackets are counted as they open and close, but for those within a string; a backslash takes what follows it along.
#include "loopwright/base/nesting.hpp"

namespace loopwright {

bool nests_deeper(std::string_view json, int levels) {
  int depth = 0;
  bool in_string = false;
  for (std::size_t k = 0; k < json.size(); ++k) {
    const char c = json[k];
    if (in_string && c == '\\') ++k;
    if (c == '"') in_string = !in_string;
    if (in_string) continue;
    if ((c == '[' || c == '{') && ++depth > levels) return true;
    if (c == ']' || c == '}') --depth;
  }
  return false;
}

}  // namespace loopwright
