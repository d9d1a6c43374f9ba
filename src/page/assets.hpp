// The page's own files, built into the program (src/page/web).
#pragma once

#include <optional>
#include <string_view>

namespace loopwright::page {

struct Asset {
  std::string_view type;  ///< "text/css; charset=utf-8"
  std::string_view bytes;
};
/// Of a path of the page, "/" or "/desk.js"; none when there is no such file.
std::optional<Asset> asset(std::string_view path);

}  // namespace loopwright::page
