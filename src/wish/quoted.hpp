// A word of a wish as errors name it.
#pragma once

#include <string>
#include <string_view>

namespace loopwright::wish {

/// 'word'
inline std::string quoted(std::string_view text) {
  return "'" + std::string(text) + "'";
}

}  // namespace loopwright::wish
