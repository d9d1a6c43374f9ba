// The order in which an area keeps its chances and run facts.
#pragma once

#include <tuple>

#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

inline auto order_of(const road::Chance& c) {
  return std::tuple(c.entry, c.place, c.exit, c.kind, c.movement, c.exit_number);
}

inline auto order_of(const road::RunFact& f) {
  return std::tuple(f.stretch, f.kind);
}

}  // namespace loopwright::mark
