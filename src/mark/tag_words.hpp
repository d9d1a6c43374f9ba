// Words that the tag rules share.
//
//   one_of(tags.get("oneway"), oneway_words);   tag_text(tags, "oneway") == "oneway=yes"
//
// Rules: private to mark.
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
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

/// The same where a node on the way bears it, and the way is named as the source: "key=value (node/7)".
inline std::string tag_on_node(std::string_view tag, std::int64_t node) {
  return std::string(tag).append(" (node/").append(std::to_string(node)).append(")");
}

/// The tag that makes a node or way a box of yellow lines; empty when none does. No tag for it is
/// settled; these three are in use.
inline std::string box_junction_tag(const Tags& tags) {
  if (tags.is("road_marking", "box_junction")) return "road_marking=box_junction";
  if (tags.is("junction", "yellow_box")) return "junction=yellow_box";
  return tags.is("box_junction", "yes") ? "box_junction=yes" : "";
}

/// True for water over the road.
inline bool has_ford(const Tags& tags) {
  return tags.has("ford") && !tags.is("ford", "no");
}

}  // namespace loopwright::mark
