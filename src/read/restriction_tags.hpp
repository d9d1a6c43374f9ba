// What the tags of a turn restriction ask of a learner's car.
//
//   for (const Demand& d : demands_of(relation.tags).of_the_car) resolve(d);
//
// Source: OSM wiki Relation:restriction, Conditional_restrictions.
#pragma once

#include <string>
#include <vector>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::read {

/// "no_right_turn", always or by the hour.
struct Demand {
  std::string value;      ///< begins with no_ or only_
  std::string text;       ///< the tag that says so
  std::string condition;  ///< empty: always
  [[nodiscard]] bool only() const { return value.starts_with("only_"); }
  [[nodiscard]] bool u_turn() const { return value.ends_with("_u_turn"); }
};

struct Demands {
  std::vector<Demand> of_the_car;
  bool of_others = false;  ///< binds other vehicles only; false with no demand: can't be read
};

Demands demands_of(const mark::Tags& tags);

}  // namespace loopwright::read
