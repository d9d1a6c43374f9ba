// Words that the tag rules share.
//
//   one_of(tags.get("oneway"), oneway_words);   tag_text(tags, "oneway") == "oneway=yes"
//
// Rules: private to mark.
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {

/// True when a value is one of the words.
template <std::size_t Count>
bool one_of(std::string_view value, const std::array<std::string_view, Count>& words) {
  return std::ranges::find(words, value) != words.end();
}

/// "key=value", as sources are told.
inline std::string tag_text(std::string_view key, std::string_view value) {
  return std::string(key).append("=").append(value);
}

/// The same of a key of these tags; empty when it isn't there.
inline std::string tag_text(const Tags& tags, std::string_view key) {
  return tags.has(key) ? tag_text(key, tags.get(key)) : std::string();
}

}  // namespace loopwright::mark
