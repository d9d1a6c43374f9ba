// The words of a wish, as the page sends them, as a wish file (DEVELOPERS.md, WISH FILE).
#pragma once

#include <string>
#include <string_view>

namespace loopwright::page {

struct WishLines {
  std::string text;     ///< the file
  std::string effort;   ///< "quick", "thorough"; empty: the usual
  std::string trouble;  ///< why it is none; else empty
};
/// body: {"words": [["home", "4 Lantern Row"], ["easy-first", ""], …], "effort": "quick"}. What the words say is for
/// the command to check.
WishLines wish_lines(std::string_view body);

}  // namespace loopwright::page
