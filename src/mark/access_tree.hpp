// What the access keys alone say to a car, of a way or of a node on it.
//
//   access_keys(tags).along.access == Access::destination
//
// Rules: private to mark. One-way, class and size are not looked at here (access.cpp, one_way.cpp).
// Of clauses only those are kept that bind a learner's car at times; the last that holds wins.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loopwright/mark/on_hours.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {

struct KeyAccess {
  Access access = Access::yes;    ///< when no clause holds
  bool mapped = false;            ///< some access key of the tree is there
  std::string tag;                ///< "motor_vehicle=private", empty when nothing is there
  std::vector<OnClause> clauses;  ///< on: a car may drive; the first differs from `access`
  std::string clause_tags;        ///< the tags they come from
  std::string lets_in;  ///< buses and others that are let in where cars are shut out: "bus;taxi"

  /// It may be driven at some hours, and at others not.
  [[nodiscard]] bool timed() const { return !clauses.empty(); }
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
