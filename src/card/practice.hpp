// What a drive practises, counted by kind and movement.
#pragma once

#include <map>
#include <vector>

#include "card/sections.hpp"

namespace loopwright::card {

/// Ordered as it was asked for, then by kind.
struct Practice {
  std::size_t order = 0;  ///< of the want it counts for
  road::Kind kind = road::Kind::roundabout;
  road::Movement movement = road::Movement::none;
  friend auto operator<=>(const Practice&, const Practice&) = default;
};

/// Passes of it within what counts as practice.
struct Counted {
  std::size_t passes = 0, inferred = 0;
  std::vector<std::size_t> rows;  ///< ascending, from 1
};

std::map<Practice, Counted> practice_of(const Subject& subject);

}  // namespace loopwright::card
