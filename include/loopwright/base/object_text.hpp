// An object of the map as people and its website write it: "way/123".
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "loopwright/base/ids.hpp"

namespace loopwright {

inline std::string text_of(const OsmObject& object) {
  constexpr std::array<std::string_view, 3> types{"node/", "way/", "relation/"};
  return std::string(types[static_cast<std::size_t>(object.type)]) + std::to_string(object.id);
}

}  // namespace loopwright
