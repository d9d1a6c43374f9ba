// Tags that speak of one side of a road: parking:left=…, parking:both=…
//
//   value_of_side(tags, {"parking:", ":restriction"}, "left").value == "no_parking"
//
// Rules: private to mark. The side's own key comes before that of both sides.
#pragma once

#include <string>
#include <string_view>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {

/// The value, and the key it was found under; both empty when there is none.
struct SideValue {
  std::string key;
  std::string_view value;
};

/// What stands before and after the side in a key.
struct SideKey {
  std::string_view before, after;
};

/// Whether any key begins so. Most roads have none of a family of keys, and then none need be spelled.
inline bool has_key_with(const Tags& tags, std::string_view beginning) {
  bool found = false;
  tags.each(
      [&](std::string_view key, std::string_view) { found = found || key.starts_with(beginning); });
  return found;
}

inline SideValue value_of_side(const Tags& tags, const SideKey& key, std::string_view side) {
  for (const std::string_view which : {side, std::string_view("both")}) {
    std::string name = std::string(key.before).append(which).append(key.after);
    if (const auto value = tags.get(name); !value.empty()) return {std::move(name), value};
  }
  return {};
}

}  // namespace loopwright::mark
