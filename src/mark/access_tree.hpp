// What the access keys alone say to a car, of a way or of a node on it.
//
//   access_keys(tags).along.access == Access::destination
//
// Rules: private to mark. One-way, class and size are not looked at here (access.cpp, one_way.cpp).
#pragma once

#include <string>
#include <string_view>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {

struct KeyAccess {
  Access access = Access::yes;
  bool mapped = false;                ///< some access key of the tree is there
  std::string tag;                    ///< "motor_vehicle=private", empty when nothing is there
  std::string timed_key, timed_text;  ///< of a condition that may shut or open it at times
};

struct BothAccess {
  KeyAccess along, against;
};
BothAccess access_keys(const Tags& tags);

/// The more shut of two.
constexpr Access stricter(Access a, Access b) {
  return a < b ? b : a;
}

}  // namespace loopwright::mark
